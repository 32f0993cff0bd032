"""The canvas: the drawing of the shown tunnel, to pick from, to drag on, and to type into."""

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QKeyEvent
from PySide6.QtWidgets import QToolTip, QVBoxLayout, QWidget

from hoopwright.desktop.air_words import held_states
from hoopwright.desktop.canvas.board import Board
from hoopwright.desktop.canvas.hand import Hand
from hoopwright.desktop.canvas.keys import ARROWS, Steps
from hoopwright.desktop.canvas.moves import kind_of, place_of, range_of, ways_of
from hoopwright.desktop.canvas.notes import Entry, Tag
from hoopwright.desktop.cranks import panel_of
from hoopwright.desktop.end_moves import end_kind
from hoopwright.desktop.jumpers import tunnel_in_hand
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.session import Session
from hoopwright.desktop.tags import drag_tag, place_name
from hoopwright.farm import Farm
from hoopwright.papers.views import Beside, draw_tunnel, drawn_marks
from hoopwright.quantity.units import format_length

KEY_ZOOM = 1.25
PAN_SHARE = 0.1
LEAST_SIZE = (420, 260)
ENDS: tuple[Beside, Beside] = ("front_end", "back_end")
QUESTIONS = {
    "split": "Split, from the front bow",
    "seam": "Cross seam, from the front bow",
    "hip": "Hip seam, above the ground, both sides",
    "jumper": "Jumper hose, from the front bow",
    "door": "Door, left edge from the middle",
    "cut": "Opening, left edge from the middle",
    "rail": "Rail, above the ground",
    "end seam": "Seam, above the ground",
}


class Canvas(QWidget):
    """The drawing of the shown tunnel: three long views on one length axis, and an end beside them.

    It listens to the session and shows; what a hand or a key does goes back to the session.
    """

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Draw the tunnel that a session shows."""
        super().__init__(parent)
        self._session = session
        self._hand, self._steps = Hand(session), Steps(session)
        self.board = Board(self._hand, self.font(), self)
        self.board.setObjectName("drawing")
        self.tag, self.entry = Tag(self), Entry(self)
        self._asked_for = ""
        self._pressures = True
        self._shown: tuple[str, ...] = ()
        box = QVBoxLayout(self)
        box.setContentsMargins(0, 0, 0, 0)
        box.addWidget(self.board)
        self.setFocusProxy(self.board)
        self.setMinimumSize(*LEAST_SIZE)
        self._listen()
        self._take_look()
        self.on_tunnel_shown(session.index)
        self.on_mark_picked(session.mark)

    def _listen(self) -> None:
        session, board = self._session, self.board
        session.farm_changed.connect(self.on_farm_changed)
        session.tunnel_shown.connect(self.on_tunnel_shown)
        session.mark_picked.connect(self.on_mark_picked)
        session.proposal_changed.connect(self.on_proposal_changed)
        board.dragged.connect(self.on_dragged)
        board.released.connect(self.on_released)
        board.crank_clicked.connect(self.on_crank_clicked)
        board.typed.connect(self.on_typed)
        board.key_pressed.connect(self.on_key_pressed)
        board.asked.connect(self.on_asked)
        board.handle_reached.connect(self.on_handle_reached)
        board.chooser.chosen.connect(self.on_beside_chosen)
        self.entry.entered.connect(self.on_entered)
        self.entry.closed.connect(self.on_entry_closed)

    def show_pressures(self, shown: bool) -> None:
        """Tint cells by their pressure and write it in, or leave it away."""
        if shown != self._pressures:
            self._pressures = shown
            self._draw()

    def fit_all(self) -> None:
        """Show the whole tunnel, as large as it fits."""
        self.board.fit_all()

    def zoom_picked(self) -> None:
        """Show what is picked large, in the middle."""
        self.board.zoom_to(self._drawn((self._session.mark,)))

    def zoom_in(self) -> None:
        """Show less, larger."""
        self.board.zoom(KEY_ZOOM)

    def zoom_out(self) -> None:
        """Show more, smaller."""
        self.board.zoom(1 / KEY_ZOOM)

    def show_marks(self, marks: tuple[str, ...]) -> None:
        """Light some places, for example those of a table's row, and bring them into view."""
        self._shown = marks
        self._light()
        if marks:
            self.board.bring_into_view(self._drawn(marks))

    def show_beside(self, beside: Beside) -> None:
        """Show the end section or an end wall beside the long views."""
        self.board.chooser.show_beside(beside)

    def on_beside_chosen(self, _beside: str) -> None:
        """Draw another view beside the long ones."""
        self._hand.cancel()
        self.tag.hide()
        self.entry.leave()
        self._draw()
        self.board.fit_beside()

    def set_dark(self, dark: bool) -> None:
        """Take the colours of a light or a dark window."""
        self.board.set_look(self._session.units, dark)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette."""
        if event.type() == QEvent.Type.PaletteChange:
            self._take_look()
        super().changeEvent(event)

    def _take_look(self) -> None:
        self.set_dark(is_dark(self.palette()))

    def on_farm_changed(self, before: Farm, after: Farm) -> None:
        """Draw what changed."""
        if before.units != after.units:
            self._take_look()
        self._draw()

    def on_tunnel_shown(self, _index: int) -> None:
        """Draw another tunnel, all of it."""
        self._hand.drag = None
        self.tag.hide()
        self.entry.leave()
        self._shown = ()
        self._draw()
        self.board.fit_all()

    def on_proposal_changed(self) -> None:
        """Draw splits that are proposed, or take them away."""
        if not self._session.dragging:
            self._draw()

    def on_mark_picked(self, mark: str) -> None:
        """Light what is picked."""
        self.board.picked = mark
        if self.entry.isVisible() and mark != self._asked_for:
            self.entry.leave()
        self._light()
        if mark and self._hand.drag is None:
            if end_kind(mark):
                self.show_beside(ENDS[int(mark.split("/")[1])])
            self.board.bring_into_view(self._drawn((mark,)))

    def _draw(self) -> None:
        session = self._session
        proposal = session.proposal
        spots = () if proposal is None else tuple((proposal.side, x) for x in proposal.spots_m)
        shown = self._pressures
        views = draw_tunnel(
            session.tunnel,
            session.tunnel_plan,
            session.units,
            spots,
            pressures=shown,
            beside=self.board.chooser.beside,
        )
        self.board.show_views(views, held_states(session.tunnel_plan) if shown else None)
        told = " ".join(
            view.described
            for view in (views.first_side, views.plan, views.second_side, views.section)
        )
        self.board.setAccessibleName(f"Drawing of {session.tunnel.name}")
        self.board.setAccessibleDescription(told)
        self._light()

    def _light(self) -> None:
        picked, shown = self._drawn((self._session.mark,)), self._drawn(self._shown)
        self.board.show_marks(picked, shown)

    def _drawn(self, marks: tuple[str, ...]) -> tuple[str, ...]:
        plan = self._session.tunnel_plan
        return tuple(place for mark in marks for place in drawn_marks(mark, plan))

    def on_dragged(self, at: QPointF) -> None:
        """Show beside the hand what the drag changes."""
        drag = self._hand.drag
        if drag is None:
            return
        session = self._session
        lines = drag_tag(
            drag.handle.mark,
            session.farm,
            session.tunnel,
            drag.before,
            session.tunnel_plan,
            drag.grasp.one_side,
        )
        self.tag.say((*lines, drag.refusal) if drag.refusal else lines, at, stays=True)

    def on_released(self, text: str) -> None:
        """Say what was moved."""
        self.tag.hide()
        if text:
            self._announce(f"{text}. {self._name(self._session.mark)}")

    def on_crank_clicked(self, mark: str) -> None:
        """Move a crank to its next place."""
        self._announce(self._steps.turn(mark))

    def on_handle_reached(self, mark: str) -> None:
        """Pick the handle that the Tab key came to."""
        self._session.pick(mark)
        self._announce(self._name(mark))

    def on_asked(self, mark: str, at: QPoint) -> None:
        """Show the name and size of what the pointer rests on."""
        text = self._name(mark)
        if text:
            QToolTip.showText(at, text, self.board)
        else:
            QToolTip.hideText()

    def on_key_pressed(self, event: QKeyEvent) -> None:
        """Do what a key says; one that says nothing goes on to the window."""
        if event.key() == Qt.Key.Key_Escape:
            self._escape()
            event.accept()
        elif self._hand.drag is None:
            event.setAccepted(self._step(event) or self._type(event) or self._show_by(event))

    def _escape(self) -> None:
        if self._hand.cancel():
            self.tag.hide()
            self._announce("Put back.")
        elif self._shown:
            self.show_marks(())
        else:
            self._session.pick("")

    def _step(self, event: QKeyEvent) -> bool:
        """Move the picked handle by an arrow key."""
        mark = self._handle_mark()
        if not mark or not self._steps.take(mark, event):
            return False
        session, found = self._session, self.board.grip_of(mark)
        if found is not None:
            self.board.bring_into_view((mark,))
            lines = drag_tag(
                mark, session.farm, session.tunnel, self._steps.before, session.tunnel_plan, False
            )
            if self._steps.refusal:
                lines = (*lines, self._steps.refusal)
            self.tag.say(lines, found[0].to_pixels(found[1].grip), stays=False)
            self._announce(". ".join(lines))
        return True

    def _type(self, event: QKeyEvent) -> bool:
        """Open the field for a position with the first figure typed."""
        if not self._handle_mark():
            return False
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.on_typed("")
        elif event.text().isdigit() and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.on_typed(event.text())
        else:
            return False
        return True

    def _show_by(self, event: QKeyEvent) -> bool:
        """Zoom, pan, or turn the picked crank."""
        key = event.key()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            return False
        acts = {
            Qt.Key.Key_Home: self.fit_all,
            Qt.Key.Key_0: self.fit_all,
            Qt.Key.Key_Plus: self.zoom_in,
            Qt.Key.Key_Equal: self.zoom_in,
            Qt.Key.Key_Minus: self.zoom_out,
            Qt.Key.Key_Z: self.zoom_picked,
            Qt.Key.Key_E: self.board.chooser.show_next,
        }
        if key in acts:
            acts[Qt.Key(key)]()
        elif key == Qt.Key.Key_C and panel_of(self._session.mark):
            self._announce(self._steps.turn(self._session.mark))
        elif key in ARROWS:
            way, sign = ARROWS[key]
            strip = self.board.strips["plan"]
            step_px = strip.frame[2] * PAN_SHARE
            along, up = (-sign * step_px, 0.0) if way == "along" else (0.0, sign * step_px)
            self.board.pan(strip, along, up)
        else:
            return False
        return True

    def _handle_mark(self) -> str:
        """Return the picked mark when it is a handle that is drawn."""
        mark = self._session.mark
        return mark if kind_of(mark) and self.board.grip_of(mark) is not None else ""

    def on_typed(self, text: str) -> None:
        """Ask for the position of the picked handle."""
        mark = self._handle_mark()
        found = self.board.grip_of(mark) if mark else None
        if found is None:
            return
        self._hand.cancel()
        self.tag.hide()
        self._asked_for = mark
        session = self._session
        place_m = place_of(tunnel_in_hand(session, mark), mark, ways_of(mark)[0])
        now = format_length(place_m, session.units)
        at = found[0].to_pixels(found[1].grip)
        self.entry.ask(QUESTIONS[kind_of(mark)], text or now, session.units, at, not text)

    def on_entered(self, place_m: float) -> None:
        """Put the handle at the typed place, or say why it cannot be there."""
        mark, session = self._asked_for, self._session
        low_m, high_m = range_of(tunnel_in_hand(session, mark), mark)
        if not low_m - 1e-6 <= place_m <= high_m + 1e-6:
            least, most = (format_length(x, session.units) for x in (low_m, high_m))
            self.entry.refuse(f"It must be from {least} to {most}.")
            return
        try:
            self._steps.enter(mark, place_m)
        except ValueError as refusal:
            self.entry.refuse(str(refusal))
            return
        self.entry.leave()
        self._announce(self._name(mark))

    def on_entry_closed(self) -> None:
        """Go back to the drawing."""
        self.board.setFocus(Qt.FocusReason.OtherFocusReason)

    def _name(self, mark: str) -> str:
        if not mark:
            return ""
        session = self._session
        return place_name(mark, session.tunnel, session.tunnel_plan, session.units)

    def _announce(self, text: str) -> None:
        """Have a text read aloud where somebody listens."""
        if text:
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self.board, text))
