"""What all fields of the window have in common: nothing typed is lost, nothing is changed unasked.

A field is filled with `set_value`, which sends nothing. What is entered goes out by `entered`; who
listens may refuse it with `show_refusal`, and then the text stays to be mended. Text that was not
changed makes no edit, so a length that was rounded for showing is never rounded in the farm.
"""

import math
import re

from msgspec import Struct
from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from hoopwright.desktop.palette import COLOURS, is_dark
from hoopwright.desktop.signs import severity_icon
from hoopwright.farm.entry_error import EntryError
from hoopwright.quantity.typed import ReadError
from hoopwright.quantity.units import Units

LEAST_LINE_PX = 84
LONG_UNIT = 13
"""Letters above which a unit stands below its field."""
_FIELD_NAME = re.compile(r"^[a-z_]+(?:\[\d+\])?: ")


class LimitError(ReadError):
    """A typed value can be read and lies outside the limits of its field."""


class Reading(Struct, frozen=True):
    """What a field made of a text.

    Attributes:
        value: The value.
        echo: How it was read, when that is worth saying, else "".
    """

    value: object
    echo: str = ""


class Between(Struct, frozen=True):
    """Inclusive limits of a number, in the unit of its code.

    Attributes:
        low: Least value.
        high: Greatest value.
    """

    low: float = -math.inf
    high: float = math.inf


UNLIMITED = Between()


def refusal_words(error: ValueError, units: Units) -> str:
    """Return what the model says against a value, in the reader's units, without the field."""
    said = error.told(units) if isinstance(error, EntryError) else _FIELD_NAME.sub("", str(error))
    return said[:1].upper() + said[1:]


class Field(QWidget):
    """A value that can be entered, its unit beside it and a message below.

    Signals:
        entered(object value): When somebody entered another value.
    """

    entered = Signal(object)

    def __init__(self, name: str, editor: QWidget, parent: QWidget | None = None) -> None:
        """Put the widget that is typed into, or chosen from, under a name for reading aloud."""
        super().__init__(parent)
        self.editor = editor
        self.refused = False
        self.unit = QLabel(self)
        self.unit.hide()
        self.message = QLabel(self)
        self.message.setWordWrap(True)
        self.message.setTextFormat(Qt.TextFormat.PlainText)
        self.message.hide()
        self._row, self._box = QHBoxLayout(), QVBoxLayout(self)
        self._row.addWidget(editor, 1)
        self._row.addWidget(self.unit)
        self._box.setContentsMargins(0, 0, 0, 0)
        self._box.setSpacing(2)
        self._box.addLayout(self._row)
        self._box.addWidget(self.message)
        self.setFocusProxy(editor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        editor.setAccessibleName(name)

    def set_value(self, value: object) -> None:
        """Show a value and send nothing."""
        raise NotImplementedError

    def set_unit(self, text: str) -> None:
        """Show a unit beside the field; a long one below it, so that the field keeps its room."""
        self.unit.setText(text)
        if len(text) > LONG_UNIT:
            self._row.removeWidget(self.unit)
            self._box.insertWidget(1, self.unit)
        self.unit.setVisible(bool(text))

    def show_refusal(self, text: str) -> None:
        """Say why the value just entered cannot be."""
        self.refused = True
        self.say(text, faulty=True)

    def say(self, text: str, faulty: bool = False) -> None:
        """Show a message below the field and tell it to readers; "" takes it away."""
        self.message.setText(text)
        self.message.setVisible(bool(text))
        self.message.setStyleSheet(self._ink() if faulty else "")
        self.editor.setAccessibleDescription(text)
        self.editor.setToolTip(text)
        self.editor.setProperty("faulty", faulty)

    def _ink(self) -> str:
        return f"color: {COLOURS['fault'][is_dark(self.palette())]};"


class LineField(Field):
    """A field to type into: Enter or leaving it enters the text, Escape puts it back."""

    def __init__(self, name: str, optional: bool = False, parent: QWidget | None = None) -> None:
        """Make an empty field; an optional one reads empty text as no value."""
        self.line = QLineEdit()
        super().__init__(name, self.line, parent)
        self.line.setMinimumWidth(LEAST_LINE_PX)
        self._optional = optional
        self._value: object = None
        self._sign: QAction | None = None
        self.line.installEventFilter(self)
        self.line.textEdited.connect(self.on_text_edited)
        self.line.editingFinished.connect(self.on_editing_finished)

    @property
    def value(self) -> object:
        """The value as last set or entered."""
        return self._value

    def set_value(self, value: object) -> None:
        """Show a value, unless a text stands there that is still to be mended."""
        self._value = value
        if not self.line.isModified():
            self._show_value()

    def read(self, text: str) -> Reading:
        """Return what a text means; ReadError says why it means nothing."""
        return Reading(text.strip())

    def write(self, value: object) -> str:
        """Return how a value is written, so that it can be typed back."""
        return str(value)

    def on_text_edited(self, text: str) -> None:
        """Say how the text is read so far; a text that is not finished is left in peace."""
        try:
            self._note(self._read(text).echo)
        except LimitError as error:
            self._fault(str(error))
        except ReadError as error:
            if self.line.property("faulty"):
                self._fault(str(error))
            else:
                self._note("")

    def on_editing_finished(self) -> None:
        """Enter the text, or mark what is wrong with it and keep it."""
        text = self.line.text()
        if not self.line.isModified() or text == self._written():
            self._show_value()
            return
        try:
            value = self._read(text).value
        except ReadError as error:
            self._fault(str(error))
            return
        if value == self._value:
            self._show_value()
        else:
            self._enter(value, text)

    def restore(self) -> None:
        """Put back the value and forget what was typed."""
        self._show_value()
        self.line.selectAll()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take Escape while there is something to put back, and leave undo to the window."""
        if watched is self.line and isinstance(event, QKeyEvent):
            if event.type() == QEvent.Type.ShortcutOverride:
                return self._override(event)
            escape = event.type() == QEvent.Type.KeyPress and event.key() == Qt.Key.Key_Escape
            if escape and self.line.isModified():
                self.restore()
                return True
        return super().eventFilter(watched, event)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and self.line.property("faulty"):
            self._fault(self.message.text())

    def show_refusal(self, text: str) -> None:
        """Say why the text just entered cannot be, and keep it."""
        self.refused = True
        self._fault(text)

    def _override(self, event: QKeyEvent) -> bool:
        """Keep undo and redo from the line while nothing was typed, and Escape for it else."""
        if self.line.isModified():
            if event.key() == Qt.Key.Key_Escape:
                event.accept()
                return True
            return False
        for key in (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo):
            if event.matches(key):
                event.ignore()
                return True
        return False

    def _read(self, text: str) -> Reading:
        if self._optional and not text.strip():
            return Reading(None)
        return self.read(text)

    def _written(self) -> str:
        return "" if self._value is None else self.write(self._value)

    def _enter(self, value: object, text: str) -> None:
        before, self._value = self._value, value
        self.refused = False
        self.line.setModified(False)
        self.entered.emit(value)
        if self.refused:
            self._value = before
            self.line.setText(text)
            self.line.setModified(True)
        else:
            self._show_value()

    def _show_value(self) -> None:
        text = self._written()
        if self.line.text() != text:
            self.line.setText(text)
            self.line.setCursorPosition(0)
        self.line.setModified(False)
        self._note("")

    def _note(self, text: str) -> None:
        self.say(text)
        self.line.setStyleSheet("")
        if self._sign is not None:
            self.line.removeAction(self._sign)
            self._sign = None

    def _fault(self, text: str) -> None:
        dark = is_dark(self.palette())
        self.say(text, faulty=True)
        self.line.setStyleSheet(f"QLineEdit {{ border: 2px solid {COLOURS['fault'][dark]}; }}")
        if self._sign is None:
            place = QLineEdit.ActionPosition.TrailingPosition
            self._sign = self.line.addAction(severity_icon("fault", dark), place)
