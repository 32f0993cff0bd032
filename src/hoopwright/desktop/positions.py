"""A field for a list of running positions, one in each line, as they are read off a tape."""

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from hoopwright.desktop.field import Field
from hoopwright.desktop.fields import write_length
from hoopwright.quantity.typed import ReadError
from hoopwright.quantity.units import Units, read_length

SHOWN_LINES = 6


class PositionsField(Field):
    """A list of lengths; leaving it or Ctrl+Enter enters it, Escape puts it back."""

    def __init__(self, name: str, units: Units, parent: QWidget | None = None) -> None:
        """Make an empty list in a system of units."""
        self.text = QPlainTextEdit()
        super().__init__(name, self.text, parent)
        self._units: Units = units
        self._value: tuple[float, ...] = ()
        self.text.setTabChangesFocus(True)
        self.text.setLineWrapMode(QPlainTextEdit.LineWrapMode.NoWrap)
        line_px = self.text.fontMetrics().lineSpacing()
        self.text.setFixedHeight(SHOWN_LINES * line_px + 2 * self.text.frameWidth() + 8)
        self.text.installEventFilter(self)

    def set_value(self, value: object) -> None:
        """Show positions, m, unless a text stands there that is still to be mended."""
        assert isinstance(value, tuple)
        changed, self._value = value != self._value, value
        if not self.text.document().isModified() and (changed or not self.text.toPlainText()):
            self._show_value()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enter or restore on the keys for it, and enter when the focus leaves."""
        if watched is self.text:
            if isinstance(event, QFocusEvent) and event.type() == QEvent.Type.FocusOut:
                self.enter()
            elif isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
                return self._take_key(event)
        return super().eventFilter(watched, event)

    def enter(self) -> None:
        """Enter the positions, or say which line cannot be read and keep the text."""
        if not self.text.document().isModified():
            return
        try:
            spots = self._read()
        except ReadError as error:
            self.say(str(error), faulty=True)
            return
        if spots == self._value:
            self._show_value()
            return
        self.refused = False
        self.entered.emit(spots)
        if not self.refused:
            self._value = spots
            self._show_value()

    def _take_key(self, event: QKeyEvent) -> bool:
        if event.key() == Qt.Key.Key_Escape and self.text.document().isModified():
            self._show_value()
            return True
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.enter()
            return True
        return False

    def _read(self) -> tuple[float, ...]:
        """Return the positions, m; a line that still shows what it showed keeps its exact value."""
        exact = dict(zip(self._lines(), self._value, strict=True))
        spots = []
        for number, line in enumerate(self.text.toPlainText().splitlines(), start=1):
            if not line.strip():
                continue
            try:
                spots.append(exact.get(line) or read_length(line, self._units).value_m)
            except ReadError as error:
                words = QCoreApplication.translate("Field", "Line {number}: {fault}")
                raise ReadError(words.format(number=number, fault=error)) from error
        return tuple(spots)

    def _lines(self) -> list[str]:
        return [write_length(spot_m, self._units) for spot_m in self._value]

    def _show_value(self) -> None:
        self.text.setPlainText("\n".join(self._lines()))
        self.text.document().setModified(False)
        self.say("")
