"""The drawing area with a hand and keys on it.

Mouse: click picks, drag moves a handle, wheel zooms along the length, the middle button (or the
space bar with the left) pans, a double click shows all. Alt or Shift while dragging frees the
handle from the bows, Ctrl moves the hip seam of one side alone.
"""

from PySide6.QtCore import QEvent, QPointF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QFont, QHelpEvent, QKeyEvent, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from hoopwright.desktop.canvas.hand import Hand, wheel_factor
from hoopwright.desktop.canvas.picking import handles_of, nearest_handle, nearest_mark
from hoopwright.desktop.canvas.stage import Stage
from hoopwright.desktop.canvas.strip import Strip
from hoopwright.papers.scene import Handle

LEFT, MIDDLE = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton


class Board(Stage):
    """The drawing area as hands and keys find it.

    Signals:
        dragged(QPointF at): While a handle is dragged, and where the hand is, px.
        released(str text): When a hand let go of a handle; the text says what was moved, or is
            empty when nothing was.
        crank_clicked(str mark): When a crank was clicked.
        typed(str text): When a position is to be typed for the picked handle; the text is the
            figure that was typed, or empty.
        key_pressed(QKeyEvent event): For keys that act on the drawing; it is accepted when it did.
        asked(str mark, QPoint at): When the pointer rests on something, on the screen.
        handle_reached(str mark): When the Tab key came to a handle.
    """

    dragged = Signal(QPointF)
    released = Signal(str)
    crank_clicked = Signal(str)
    typed = Signal(str)
    key_pressed = Signal(QKeyEvent)
    asked = Signal(str, object)
    handle_reached = Signal(str)

    def __init__(self, hand: Hand, font: QFont, parent: QWidget | None = None) -> None:
        """Give the drawing to a hand."""
        super().__init__(font, parent)
        self.hand = hand
        self.picked = ""
        self._space = False
        self._pan_from: QPointF | None = None
        self._pan_strip: Strip | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.viewport().setMouseTracking(True)

    def handles(self) -> list[Handle]:
        """Return the handles in reading order, each once."""
        found: dict[str, Handle] = {}
        for strip in self.strips.values():
            for handle in handles_of(strip.view):
                found.setdefault(handle.mark, handle)
        return list(found.values())

    def grip_of(self, mark: str) -> tuple[Strip, Handle] | None:
        """Return a view in which a handle is drawn, and the handle."""
        for strip in self.strips.values():
            for handle in handles_of(strip.view):
                if handle.mark == mark:
                    return strip, handle
        return None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Pan, take a handle, or pick."""
        at = event.position()
        strip = self.strip_at(at)
        event.accept()
        if strip is None:
            return
        if event.button() == MIDDLE or (event.button() == LEFT and self._space):
            self._pan_from, self._pan_strip = at, strip
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
        elif event.button() == LEFT:
            self.hand.press(strip, event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Pan, drag, or show what could be taken."""
        at = event.position()
        event.accept()
        if self._pan_from is not None and self._pan_strip is not None:
            away = at - self._pan_from
            self._pan_from = at
            self.pan(self._pan_strip, away.x(), away.y())
        elif self.hand.drag is not None:
            if self.hand.move(event):
                self.dragged.emit(at)
        else:
            self.viewport().setCursor(self.hand.cursor(self.strip_at(at), at))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Let go."""
        event.accept()
        if self._pan_from is not None:
            self._pan_from = self._pan_strip = None
            self.viewport().setCursor(Qt.CursorShape.ArrowCursor)
            return
        if event.button() != LEFT:
            return
        crank, self.hand.crank = self.hand.crank, ""
        if crank and self._crank_under(event.position()) == crank:
            self.crank_clicked.emit(crank)
        elif self.hand.drag is not None:
            self.released.emit(self.hand.release())

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Ask for a position on a grip, else show all."""
        event.accept()
        strip = self.strip_at(event.position())
        if strip is None or event.button() != LEFT or self._crank_under(event.position()):
            return
        point = strip.to_metres(event.position())
        if nearest_handle(strip.view, point, strip.px_per_m) is not None:
            self.typed.emit("")
        else:
            self.fit_all()

    def _crank_under(self, at: QPointF) -> str:
        strip = self.strip_at(at)
        if strip is None:
            return ""
        mark = nearest_mark(strip.view, strip.to_metres(at), strip.px_per_m)
        return mark if mark.endswith("/crank") else ""

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom about the pointer."""
        if self.hand.drag is None:
            self.zoom(wheel_factor(event), event.position())
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Leave it to the toolkit; the library's own habit needs a mouse that it never had."""
        QWidget.leaveEvent(self, event)

    def viewportEvent(self, event: QEvent) -> bool:
        """Ask for the name of what the pointer rests on."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            strip = self.strip_at(QPointF(event.pos()))
            mark = ""
            if strip is not None and self.hand.drag is None:
                point = strip.to_metres(QPointF(event.pos()))
                handle = nearest_handle(strip.view, point, strip.px_per_m)
                mark = nearest_mark(strip.view, point, strip.px_per_m)
                if handle is not None and not mark.endswith("/crank"):
                    mark = handle.mark
            self.asked.emit(mark, event.globalPos())
            return True
        return bool(super().viewportEvent(event))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Pan with the space bar; everything else is for the canvas."""
        if event.key() == Qt.Key.Key_Space:
            self._space = True
            if not event.isAutoRepeat():
                self.viewport().setCursor(Qt.CursorShape.OpenHandCursor)
            event.accept()
            return
        event.ignore()
        self.key_pressed.emit(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Take the hand off when the space bar comes up."""
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = False
            self.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        event.accept()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Forget a space bar that comes up elsewhere."""
        self._space = False
        super().focusOutEvent(event)

    def focusNextPrevChild(self, ahead: bool) -> bool:
        """Walk the handles with Tab; after the last one the focus goes on."""
        marks = [handle.mark for handle in self.handles()]
        if self.picked in marks:
            index = marks.index(self.picked) + (1 if ahead else -1)
        else:
            index = 0 if ahead else len(marks) - 1
        if 0 <= index < len(marks):
            self.handle_reached.emit(marks[index])
            return True
        return bool(super().focusNextPrevChild(ahead))
