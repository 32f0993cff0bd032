"""The keyboard on the drawing: handles step by step, cranks, zoom."""

from itertools import count

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from hoopwright.desktop.canvas.moves import (
    FAR_BOWS,
    Grasp,
    kind_of,
    move_to,
    next_place,
    ways_of,
)
from hoopwright.desktop.cranks import crank_text, panel_of, turn_crank
from hoopwright.desktop.end_moves import Way
from hoopwright.desktop.jumpers import tunnel_in_hand
from hoopwright.desktop.session import Session
from hoopwright.desktop.tags import move_text
from hoopwright.plan import TunnelPlan

FINE_KEYS = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
ARROWS: dict[int, tuple[Way, int]] = {
    Qt.Key.Key_Left: ("along", -1),
    Qt.Key.Key_Right: ("along", 1),
    Qt.Key.Key_Down: ("up", -1),
    Qt.Key.Key_Up: ("up", 1),
}


class Steps:
    """Moves a picked handle by keys; a key that is held down makes one undo step.

    Attributes:
        before: Plan of the tunnel when the key went down.
        refusal: Why the last step cannot be had.
    """

    def __init__(self, session: Session) -> None:
        """Work on a session."""
        self._session = session
        self._gestures = count(1)
        self._gesture = ""
        self.before: TunnelPlan = session.tunnel_plan
        self.refusal = ""

    def take(self, mark: str, event: QKeyEvent) -> bool:
        """Move a handle by an arrow key; return whether the key was for it."""
        way, sign = ARROWS.get(event.key(), ("along", 0))
        if not sign or not kind_of(mark) or way not in ways_of(mark):
            return False
        if not event.isAutoRepeat() or not self._gesture:
            self._gesture = f"{mark} {next(self._gestures)}"
            self.before = self._session.tunnel_plan
        far = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        fine = bool(event.modifiers() & FINE_KEYS)
        grasp = Grasp(mark, self._session.units, fine=fine, way=way)
        tunnel = tunnel_in_hand(self._session, mark)
        self._apply(grasp, next_place(tunnel, grasp, sign * (FAR_BOWS if far else 1)))
        return True

    def _apply(self, grasp: Grasp, place_m: float) -> None:
        session, self.refusal = self._session, ""
        try:
            tunnel = move_to(tunnel_in_hand(session, grasp.mark), grasp, place_m)
        except ValueError as refusal:
            self.refusal = str(refusal)
            return
        session.apply_tunnel(tunnel, move_text(grasp.mark, tunnel), self._gesture)

    def enter(self, mark: str, place_m: float) -> None:
        """Put a handle at a typed place.

        Raises:
            ValueError: It cannot be there; the text says why.
        """
        self._gesture = ""
        self.before = self._session.tunnel_plan
        tunnel = tunnel_in_hand(self._session, mark)
        tunnel = move_to(tunnel, Grasp(mark, self._session.units), place_m)
        self._session.apply_tunnel(tunnel, move_text(mark, tunnel))

    def turn(self, mark: str) -> str:
        """Move the crank of the curtain of a mark to its next place; return what was done."""
        panel = panel_of(mark)
        if not panel:
            return ""
        tunnel = turn_crank(self._session.tunnel, self._session.farm.catalogue, panel)
        text = crank_text(panel, tunnel)
        self._session.apply_tunnel(tunnel, text)
        return text
