"""What floats over the drawing: the tag beside the hand, and the field for a typed position."""

from PySide6.QtCore import QPoint, QPointF, QRect, Qt, QTimer, Signal
from PySide6.QtGui import QKeyEvent, QPalette
from PySide6.QtWidgets import QFrame, QLabel, QLineEdit, QVBoxLayout, QWidget

from hoopwright.desktop.palette import colour, is_dark
from hoopwright.quantity.units import LengthReading, ReadError, Units, read_length

BESIDE_PX = 18
STAYS_MS = 2500
FIELD_PX = 170


class Tag(QLabel):
    """A tag of a few lines beside the hand."""

    def __init__(self, parent: QWidget) -> None:
        """Stay hidden until there is something to say."""
        super().__init__(parent)
        self.setObjectName("tag")
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFrameShape(QFrame.Shape.Box)
        self.setMargin(5)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.ToolTipBase)
        self.setForegroundRole(QPalette.ColorRole.ToolTipText)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._ends = QTimer(self)
        self._ends.setSingleShot(True)
        self._ends.timeout.connect(self.hide)
        self.hide()

    def say(self, lines: tuple[str, ...], at: QPointF, stays: bool) -> None:
        """Show lines beside a place of the canvas.

        Args:
            lines: The lines.
            at: The place, px.
            stays: Whether it stays until it is hidden; else it goes by itself.
        """
        self.setText("\n".join(lines))
        self.adjustSize()
        self.move(_beside(self, at))
        self.show()
        self.raise_()
        if stays:
            self._ends.stop()
        else:
            self._ends.start(STAYS_MS)


class Entry(QFrame):
    """A small field for the position of a handle.

    Signals:
        entered(float place_m): When a length that can be read was confirmed.
        closed(): When the field is gone.
    """

    entered = Signal(float)
    closed = Signal()

    def __init__(self, parent: QWidget) -> None:
        """Stay hidden until a handle asks for a number."""
        super().__init__(parent)
        self.setObjectName("entry")
        self.setFrameShape(QFrame.Shape.Box)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.ToolTipBase)
        self.name = QLabel(self)
        self.field = QLineEdit(self)
        self.field.setObjectName("entry_field")
        self.echo = QLabel(self)
        self.echo.setObjectName("entry_echo")
        self.echo.setWordWrap(True)
        box = self._box = QVBoxLayout(self)
        box.setContentsMargins(8, 6, 8, 6)
        box.setSpacing(3)
        for widget in (self.name, self.field, self.echo):
            widget.setMinimumWidth(FIELD_PX)
            box.addWidget(widget)
        self._units: Units = "metric"
        self.field.textChanged.connect(self.on_text_changed)
        self.field.returnPressed.connect(self.on_return_pressed)
        self.hide()

    def ask(self, name: str, text: str, units: Units, at: QPointF, chosen: bool) -> None:
        """Open beside a place of the canvas.

        Args:
            name: What is asked for.
            text: What stands in the field.
            units: Units of a number without one.
            at: The place, px.
            chosen: Whether the text is marked, so that typing replaces it.
        """
        self._units = units
        self.name.setText(name)
        self.field.setAccessibleName(name)
        self.field.setText(text)
        self.on_text_changed(text)
        self._place(at)
        self.show()
        self.raise_()
        self.field.setFocus(Qt.FocusReason.OtherFocusReason)
        if chosen:
            self.field.selectAll()

    def refuse(self, why: str) -> None:
        """Say why a length cannot be had; the text stays."""
        self._say(why, wrong=True)

    def leave(self) -> None:
        """Close without entering anything."""
        if self.isVisible():
            self.hide()
            self.closed.emit()

    def on_text_changed(self, text: str) -> None:
        """Say at once how the text is read, or why it cannot be."""
        try:
            reading = read_length(text, self._units)
        except ReadError as error:
            self._say(str(error), wrong=True)
            return
        self._say(f"Read as {reading.echo}{_doubt(reading)}", wrong=False)

    def on_return_pressed(self) -> None:
        """Enter the length, or keep the text and say why not."""
        try:
            reading = read_length(self.field.text(), self._units)
        except ReadError as error:
            self._say(str(error), wrong=True)
            return
        self.entered.emit(reading.value_m)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Close on Escape; no other key goes on to the drawing."""
        if event.key() == Qt.Key.Key_Escape:
            self.leave()
        event.accept()

    def _say(self, text: str, *, wrong: bool) -> None:
        palette = self.echo.palette()
        tone = colour("fault" if wrong else "text", is_dark(self.palette()))
        palette.setColor(QPalette.ColorRole.WindowText, tone)
        self.echo.setPalette(palette)
        self.echo.setText(text)
        self.field.setAccessibleDescription(text)
        if self.isVisible():
            self._place(QPointF(self.pos()), moved=True)

    def _place(self, at: QPointF, *, moved: bool = False) -> None:
        self._box.activate()
        wide = max(FIELD_PX + 16, self.sizeHint().width())
        high = self._box.totalHeightForWidth(wide)
        self.resize(wide, max(high, self._box.totalMinimumSize().height()))
        self.move(_inside(self, at.toPoint()) if moved else _beside(self, at))


def _doubt(reading: LengthReading) -> str:
    return "; write the unit to be sure" if reading.doubtful else ""


def _beside(widget: QWidget, at: QPointF) -> QPoint:
    """Return a place right of a point, or left of it where there is no room."""
    area = _area(widget)
    spot = QPointF(at.x() + BESIDE_PX, at.y() - widget.height() - BESIDE_PX / 2)
    if spot.x() + widget.width() > area.width():
        spot.setX(at.x() - BESIDE_PX - widget.width())
    if spot.y() < 0:
        spot.setY(at.y() + BESIDE_PX)
    return _inside(widget, spot.toPoint())


def _area(widget: QWidget) -> QRect:
    parent = widget.parentWidget()
    assert parent is not None, "a note floats over the canvas"
    return parent.rect()


def _inside(widget: QWidget, spot: QPoint) -> QPoint:
    area = _area(widget)
    return QPoint(
        max(0, min(spot.x(), area.width() - widget.width())),
        max(0, min(spot.y(), area.height() - widget.height())),
    )
