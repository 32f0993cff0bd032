"""The mouse on the drawing: picking, dragging handles, turning cranks, zooming and panning."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent

from hoopwright.desktop.canvas.moves import Grasp, kind_of, move_to, place_of, snap
from hoopwright.desktop.canvas.picking import nearest_handle, nearest_mark
from hoopwright.desktop.canvas.strip import Strip
from hoopwright.desktop.cranks import panel_of
from hoopwright.desktop.end_moves import move_both_ways
from hoopwright.desktop.jumpers import tunnel_in_hand
from hoopwright.desktop.session import Session
from hoopwright.desktop.tags import move_text
from hoopwright.farm import Tunnel
from hoopwright.papers.scene import GripWay, Handle
from hoopwright.plan import TunnelPlan

DRAG_PX = 3.0
WHEEL_NOTCH = 120.0
NOTCH_ZOOM = 1.2
FINE_KEYS = Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.ShiftModifier
CURSORS: dict[GripWay, Qt.CursorShape] = {
    "along": Qt.CursorShape.SizeHorCursor,
    "up": Qt.CursorShape.SizeVerCursor,
    "both": Qt.CursorShape.SizeAllCursor,
}
ONE_SIDE_KEY = Qt.KeyboardModifier.ControlModifier


@dataclass(slots=True)
class Drag:
    """A handle in the hand.

    Attributes:
        strip: View in which it was taken.
        handle: The handle.
        pressed: Where the button went down, px.
        from_m: Where the handle was, m.
        from_up_m: How high it was, where it goes both ways, m.
        tunnel: The tunnel before.
        before: Its plan.
        moved: Whether the hand has moved far enough for a drag.
        grasp: How it is held now.
        refusal: Why the last place cannot be had.
    """

    strip: Strip
    handle: Handle
    pressed: QPointF
    from_m: float
    tunnel: Tunnel
    before: TunnelPlan
    grasp: Grasp
    from_up_m: float = 0.0
    moved: bool = False
    refusal: str = ""


class Hand:
    """What the mouse does. It knows places and the session, not how anything is drawn."""

    def __init__(self, session: Session) -> None:
        """Work on a session."""
        self._session = session
        self.drag: Drag | None = None
        self.crank = ""

    def press(self, strip: Strip, event: QMouseEvent) -> None:
        """Take the handle under the pointer, or pick what lies there."""
        at = event.position()
        point = strip.to_metres(at)
        mark = nearest_mark(strip.view, point, strip.px_per_m)
        handle = nearest_handle(strip.view, point, strip.px_per_m)
        if handle is not None and not mark.endswith("/crank"):
            session = self._session
            tunnel = tunnel_in_hand(session, handle.mark)
            self.drag = Drag(
                strip=strip,
                handle=handle,
                pressed=at,
                from_m=place_of(tunnel, handle.mark),
                from_up_m=place_of(tunnel, handle.mark, "up") if handle.way == "both" else 0.0,
                tunnel=tunnel,
                before=session.tunnel_plan,
                grasp=Grasp(handle.mark, session.units),
            )
            session.pick(handle.mark)
            return
        self.crank = mark if mark.endswith("/crank") else ""
        self._session.pick(panel_of(mark) if self.crank else mark)

    def move(self, event: QMouseEvent) -> bool:
        """Move the handle in the hand along; return whether something is dragged."""
        drag = self.drag
        if drag is None:
            return False
        away = event.position() - drag.pressed
        if not drag.moved:
            if max(abs(away.x()), abs(away.y())) < DRAG_PX:
                return False
            drag.moved = True
            self._session.begin()
        keys = event.modifiers()
        drag.grasp = Grasp(
            drag.handle.mark,
            self._session.units,
            fine=bool(keys & FINE_KEYS),
            one_side=kind_of(drag.handle.mark) == "hip" and bool(keys & ONE_SIDE_KEY),
        )
        try:
            tunnel = _moved(drag, away)
        except ValueError as refusal:
            drag.refusal = str(refusal)
            return True
        drag.refusal = ""
        self._session.preview(tunnel)
        return True

    def release(self) -> str:
        """Let go; return what was done, or nothing when nothing was moved."""
        drag, self.drag = self.drag, None
        if drag is None or not drag.moved:
            return ""
        text = move_text(drag.handle.mark, self._session.tunnel, drag.grasp.one_side)
        self._session.commit(text)
        return text

    def cancel(self) -> bool:
        """Put the handle back; return whether one was in the hand."""
        drag, self.drag, self.crank = self.drag, None, ""
        if drag is None:
            return False
        if drag.moved:
            self._session.cancel()
        return True

    def cursor(self, strip: Strip | None, at: QPointF) -> Qt.CursorShape:
        """Return the pointer that says what can be done at a place."""
        if strip is None:
            return Qt.CursorShape.ArrowCursor
        point = strip.to_metres(at)
        mark = nearest_mark(strip.view, point, strip.px_per_m)
        handle = nearest_handle(strip.view, point, strip.px_per_m)
        if handle is not None and not mark.endswith("/crank"):
            return CURSORS[handle.way]
        return Qt.CursorShape.PointingHandCursor if mark else Qt.CursorShape.ArrowCursor


def _moved(drag: Drag, away: QPointF) -> Tunnel:
    """Return the tunnel with the handle moved along with the hand, px."""
    px_per_m = drag.strip.px_per_m
    way_px = -away.y() if drag.handle.way == "up" else away.x()
    place_m = snap(drag.tunnel, drag.grasp, drag.from_m + way_px / px_per_m)
    if drag.handle.way != "both":
        return move_to(drag.tunnel, drag.grasp, place_m)
    up_m = snap(drag.tunnel, drag.grasp, drag.from_up_m - away.y() / px_per_m)
    return move_both_ways(drag.tunnel, drag.grasp.mark, place_m, up_m)


def wheel_factor(event: QWheelEvent) -> float:
    """Return by how much a turn of the wheel zooms."""
    turned = event.angleDelta().y() or event.angleDelta().x()
    return float(NOTCH_ZOOM ** (turned / WHEEL_NOTCH))
