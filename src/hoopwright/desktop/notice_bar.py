"""The line at the foot of the window: what just happened, how severe it is, what to do."""

from typing import cast

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.signs import severity_icon
from hoopwright.quantity.finding import Severity

CAUTION = (
    "Figures are estimates for planning. Local codes, makers' instructions and licensed practice "
    "come first."
)
NOTE_STAYS_MS = 12_000
SIGN_PX = 18


class NoticeBar(QFrame):
    """Shows the last notice: a note goes by itself, a caution or a fault stays until put away.

    An offer stays until it is taken or left.

    Signals:
        taken(): When the offer is taken.
        left(): When it is left.
    """

    taken = Signal()
    left = Signal()

    def __init__(self, resting: str, parent: QWidget | None = None) -> None:
        """Show a text while there is nothing to tell."""
        super().__init__(parent)
        self._resting = resting
        self._offer = ""
        self.severity: Severity | None = None
        self.sign, self.text = QLabel(), QLabel()
        self.text.setWordWrap(True)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self.text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.text.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.away = QToolButton()
        self.away.setText("×")
        self.away.setAutoRaise(True)
        self.away.setToolTip(self.tr("Put this notice away"))
        self.away.setAccessibleName(self.tr("Put this notice away"))
        self.away.clicked.connect(self.rest)
        self.take, self.leave = QPushButton(self.tr("Take")), QPushButton(self.tr("Leave"))
        self.take.clicked.connect(self.taken)
        self.leave.clicked.connect(self.left)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 2, 4, 2)
        row.addWidget(self.sign)
        row.addWidget(self.text, 1)
        for button in (self.take, self.leave, self.away):
            row.addWidget(button)
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(NOTE_STAYS_MS)
        self._later.timeout.connect(self.rest)
        self.rest()

    def show_notice(self, severity: str, text: str) -> None:
        """Show a notice and have it read aloud."""
        self.severity = cast(Severity, severity)
        word = {"fault": self.tr("Fault"), "caution": self.tr("Caution")}.get(severity, "")
        self.text.setText(f"{word}: {text}" if word else text)
        self._let_choose(False)
        self._show_sign()
        if severity == "note":
            self._later.start()
        else:
            self._later.stop()
        told = QAccessibleAnnouncementEvent(self, self.text.text())
        QAccessible.updateAccessibility(told)

    def show_offer(self, text: str) -> None:
        """Show an offer with its two answers and have it read aloud."""
        self._offer = text
        self.show_notice("note", text)
        self.rest()

    def drop_offer(self) -> None:
        """Take the offer away."""
        if self._offer:
            self._offer = ""
            self.rest()

    def _let_choose(self, choose: bool) -> None:
        self.take.setVisible(choose)
        self.leave.setVisible(choose)
        self.away.setVisible(not choose)

    def rest(self) -> None:
        """Put the notice away; an offer that is still open comes back."""
        self._later.stop()
        self.severity = "note" if self._offer else None
        self.text.setText(self._offer or self._resting)
        self._let_choose(bool(self._offer))
        self.away.hide()
        self._show_sign()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange:
            self._show_sign()

    def _show_sign(self) -> None:
        icon = severity_icon(self.severity or "caution", is_dark(self.palette()))
        self.sign.setPixmap(icon.pixmap(SIGN_PX, SIGN_PX))
