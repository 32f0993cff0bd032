"""What stands beside the long views: the end section, or an end wall from outside."""

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication, Qt, Signal
from PySide6.QtWidgets import QComboBox, QWidget

from hoopwright.papers.views import Beside

CHOICES: tuple[tuple[Beside, object], ...] = (
    ("section", QT_TRANSLATE_NOOP("Chooser", "End section")),
    ("front_end", QT_TRANSLATE_NOOP("Chooser", "Front end from outside")),
    ("back_end", QT_TRANSLATE_NOOP("Chooser", "Back end from outside")),
)


class Chooser(QComboBox):
    """A small choice above the view beside the long ones.

    Signals:
        chosen(str beside): When another view is to be shown.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        """Begin with the section."""
        super().__init__(parent)
        self.setObjectName("beside")
        self.setAccessibleName(
            QCoreApplication.translate("Chooser", "View beside the sides and the plan")
        )
        self.setToolTip(
            QCoreApplication.translate("Chooser", "End section, front end or back end (E)")
        )
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        for beside, text in CHOICES:
            self.addItem(QCoreApplication.translate("Chooser", str(text)), beside)
        self.currentIndexChanged.connect(self.on_index_changed)

    @property
    def beside(self) -> Beside:
        """The view that is chosen."""
        return CHOICES[self.currentIndex()][0]

    def show_beside(self, beside: Beside) -> None:
        """Choose a view."""
        self.setCurrentIndex([name for name, _ in CHOICES].index(beside))

    def show_next(self) -> None:
        """Choose the next view, after the last the first."""
        self.setCurrentIndex((self.currentIndex() + 1) % len(CHOICES))

    def on_index_changed(self, index: int) -> None:
        """Tell which view is chosen."""
        self.chosen.emit(CHOICES[index][0])
