"""The tab of the readings: a grid for those at the bows, a form for those of the whole frame."""

from collections.abc import Sequence

from PySide6.QtCore import QCoreApplication, QModelIndex, Qt
from PySide6.QtWidgets import QComboBox, QLabel, QSizePolicy

from hoopwright.desktop.bow_measuring import BowMeasuringDialog
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_parts import PartedTab
from hoopwright.desktop.table_rows import Row, tip_text
from hoopwright.desktop.table_tab import Tab
from hoopwright.desktop.table_tape_frame import FrameReadingsTab
from hoopwright.desktop.table_tape_model import TapeModel
from hoopwright.desktop.table_tape_rows import (
    bows_to_measure,
    girths_told,
    tape_columns,
    tape_rows,
)
from hoopwright.desktop.table_tape_view import TapeView
from hoopwright.desktop.table_view import RowsView
from hoopwright.farm import bow_positions

TOLD_LINES = 2


class BowsTab(Tab):
    """Readings at the bows, typed row by row as they stand on the measuring sheet."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty grid."""
        self.scope = QComboBox()
        self.scope.addItem(QCoreApplication.translate("Tables", "Bows to measure"))
        self.scope.addItem(QCoreApplication.translate("Tables", "All bows"))
        self.scope.setAccessibleName(QCoreApplication.translate("Tables", "Readings of"))
        self.readings = TapeModel(session)
        super().__init__(session, title, self.readings.columns, self._bows, model=self.readings)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setTextFormat(Qt.TextFormat.PlainText)
        self.told.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.told.setFixedHeight(TOLD_LINES * self.told.fontMetrics().lineSpacing())
        self.bar.insertWidget(0, self.told, 1)
        self.bar.setStretch(1, 0)
        self.bar.addWidget(self.scope)
        words = QCoreApplication.translate("Tables", "Measure a bow…")
        self.measure_button = self.add_act(words, self.measure_bow)
        self.scope.activated.connect(lambda _at: self.refresh())
        grid = self.grid
        grid.selectionModel().currentChanged.connect(self.on_current_changed)
        grid.delegate.typing.connect(self.on_typing)
        self.readings.dataChanged.connect(self.tell)

    def make_view(self) -> RowsView:
        """Return the grid."""
        return TapeView(self.readings, self.title, self)

    @property
    def grid(self) -> TapeView:
        """The grid of the readings."""
        assert isinstance(self.view, TapeView)
        return self.view

    def refresh(self) -> None:
        """Show the readings as they are now."""
        self.readings.set_columns(tape_columns(self.session))
        super().refresh()
        self.grid.begin()
        self.tell()

    def tell(self) -> None:
        """Say below the grid what there is to say of the current box, else of all girths."""
        at = self.grid.currentIndex()
        told = self.readings.told(at) if at.isValid() else ""
        taped = self.session.tunnel_plan.survey.taped
        self.told.setText(told or girths_told(taped, self.session.units))
        spreads = [spread for spread in (taped.hips, taped.baseboards) if spread is not None]
        tips = [tip_text(w, self.session.units) for spread in spreads for w in spread.workings]
        self.told.setToolTip(told or "\n\n".join(tips))

    def on_current_changed(self, _now: QModelIndex, _before: QModelIndex) -> None:
        """Speak of another box."""
        self.tell()

    def on_typing(self, text: str) -> None:
        """Say how a text is read so far when that is in doubt."""
        self.told.setText(self.readings.echo(text))

    def measure_bow(self) -> None:
        """Ask for the lengths of a bow; what they make is one undo step."""
        session = self.session
        dialog = BowMeasuringDialog(session.tunnel, session.units, self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setModal(True)
        dialog.accepted.connect(lambda: self.take_bow(dialog))
        dialog.show()

    def take_bow(self, dialog: BowMeasuringDialog) -> None:
        """Make one undo step of a measured bow."""
        assert dialog.tunnel is not None
        step = QCoreApplication.translate("Tables", "Measure a bow")
        self.session.apply_tunnel(dialog.tunnel, step)

    def _bows(self, session: Session) -> Sequence[Row]:
        count = len(bow_positions(session.tunnel.frame.bows))
        if self.scope.currentIndex() == 1:
            return tape_rows(session, range(1, count + 1))
        waiting = [bow for bow, _column in self.readings.waiting if bow <= count]
        return tape_rows(session, bows_to_measure(session.tunnel, waiting))


class TapeTab(PartedTab):
    """The readings of the frame as it stands."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        spoken = QCoreApplication.translate("Tables", "Parts of the readings")
        super().__init__(session, title, spoken)

    def make_parts(self) -> tuple[Tab, ...]:
        """Return the parts in the order of the measuring sheet."""
        bows = QCoreApplication.translate("Tables", "At the bows")
        frame = QCoreApplication.translate("Tables", "Along and across")
        return BowsTab(self.session, bows), FrameReadingsTab(self.session, frame)
