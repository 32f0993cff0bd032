"""The farm that is open, its plan, what is picked, and every step that can be undone.

A step keeps the farm before and after. While the hand drags, the farm is previewed; letting go
makes one step of it. Views listen to the signals and read `session.farm` and `session.plan`.
"""

from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from hoopwright.farm import Farm, Tunnel
from hoopwright.farm.change import with_tunnel
from hoopwright.plan import Plan, TunnelPlan, plan, preview
from hoopwright.proposal import Proposal
from hoopwright.quantity.units import Units

UNDO_LIMIT = 500


class Session(QObject):
    """One open farm.

    Signals:
        farm_changed(Farm before, Farm after): After every edit, preview, undo and redo. The plan
            is already the new one; letting go of a drag sends the same farm twice, with a plan
            that is settled.
        mark_picked(str mark): When something else is picked; "" for nothing.
        tunnel_shown(int index): When another tunnel is shown.
        noticed(str severity, str text): When the user must be told something; severity is
            `note`, `caution` or `fault`.
        file_changed(): When path or unsaved state may have changed.
        proposal_changed(): When splits are proposed, taken or dropped.
    """

    farm_changed = Signal(object, object)
    mark_picked = Signal(str)
    tunnel_shown = Signal(int)
    noticed = Signal(str, str)
    file_changed = Signal()
    proposal_changed = Signal()

    def __init__(self, farm: Farm, path: Path | None = None, parent: QObject | None = None) -> None:
        """Open a farm that was read, or one that has no file yet (path None)."""
        super().__init__(parent)
        self.stack = QUndoStack(self)
        self.stack.setUndoLimit(UNDO_LIMIT)
        # A method of its own lets go by itself: the stack is still emptied after the session ends.
        self.stack.cleanChanged.connect(self.on_clean_changed)
        self.path = path
        self.digest: str | None = None
        self.mark = ""
        self._before: Farm | None = None
        self._farm = farm
        self._plan = plan(farm)
        self._index = 0
        self._proposal: Proposal | None = None

    def on_clean_changed(self, _clean: bool) -> None:
        """Tell that the farm as shown was saved, or no longer is what is on disk."""
        self.file_changed.emit()

    @property
    def farm(self) -> Farm:
        """The farm as shown."""
        return self._farm

    @property
    def plan(self) -> Plan:
        """The plan of the farm as shown."""
        return self._plan

    @property
    def index(self) -> int:
        """Which tunnel is shown."""
        return self._index

    @property
    def tunnel(self) -> Tunnel:
        """The tunnel that is shown."""
        return self._farm.tunnels[self._index]

    @property
    def tunnel_plan(self) -> TunnelPlan:
        """The plan of the tunnel that is shown."""
        return self._plan.tunnels[self._index]

    @property
    def units(self) -> Units:
        """The farm's units for showing."""
        return self._farm.units

    @property
    def dragging(self) -> bool:
        """Whether a drag is being previewed."""
        return self._before is not None

    @property
    def proposal(self) -> Proposal | None:
        """Splits proposed for the tunnel that is shown, or None; every edit drops them."""
        return self._proposal

    def load(self, farm: Farm, path: Path | None, digest: str | None) -> None:
        """Put another farm in place; what was undone before is forgotten."""
        self.cancel()
        self.stack.clear()
        self.path, self.digest = path, digest
        self._index = 0
        self._show(farm)
        self.pick("")
        self.tunnel_shown.emit(0)
        self.file_changed.emit()

    def saved(self, path: Path, digest: str) -> None:
        """Note that the farm as shown is on disk."""
        self.path, self.digest = path, digest
        self.stack.setClean()
        self.file_changed.emit()

    def apply(self, farm: Farm, text: str, gesture: str = "") -> None:
        """Make one undo step; steps of the same gesture in a row become one."""
        if farm != self._farm:
            self.stack.push(_Step(self, self._farm, farm, text, gesture))

    def apply_tunnel(self, tunnel: Tunnel, text: str, gesture: str = "") -> None:
        """Make one undo step of a change to the tunnel that is shown."""
        self.apply(with_tunnel(self._farm, self._index, tunnel), text, gesture)

    def propose(self, proposal: Proposal | None) -> None:
        """Show proposed splits of the tunnel that is shown, or drop them."""
        if proposal is not self._proposal:
            self._proposal = proposal
            self.proposal_changed.emit()

    def take_proposal(self) -> None:
        """Make one undo step of what is proposed."""
        proposal = self._proposal
        if proposal is not None:
            words = self.tr("Take proposed splits on {side}")
            name = self.tunnel.sides[proposal.side].name
            self.propose(None)
            self.apply_tunnel(proposal.tunnel, words.format(side=name))

    def begin(self) -> None:
        """Start a drag."""
        self._before = self._farm

    def preview(self, tunnel: Tunnel) -> None:
        """Show the tunnel as it would be if the hand let go now."""
        assert self._before is not None, "preview belongs between begin and commit"
        self._show(with_tunnel(self._before, self._index, tunnel))

    def commit(self, text: str) -> None:
        """End a drag with one undo step, or with none when nothing changed."""
        before, self._before = self._before, None
        if before is None:
            return
        if before == self._farm:
            self._show(before)
        else:
            self.stack.push(_Step(self, before, self._farm, text, ""))

    def cancel(self) -> None:
        """End a drag and put everything back."""
        before, self._before = self._before, None
        if before is not None:
            self._show(before)

    def pick(self, mark: str) -> None:
        """Pick something by its mark; "" picks nothing."""
        if mark != self.mark:
            self.mark = mark
            self.mark_picked.emit(mark)

    def show_tunnel(self, index: int) -> None:
        """Show another tunnel."""
        if index != self._index and 0 <= index < len(self._farm.tunnels):
            self.propose(None)
            self._index = index
            self.pick("")
            self.tunnel_shown.emit(index)

    def _show(self, farm: Farm) -> None:
        if farm is self._farm and self._plan.settled:
            return
        self.propose(None)
        before, self._farm = self._farm, farm
        self._plan = preview(farm, self._plan) if self.dragging else plan(farm)
        count = len(farm.tunnels)
        moved = self._index >= count or count != len(before.tunnels)
        self._index = min(self._index, count - 1)
        self.farm_changed.emit(before, farm)
        if moved:
            self.tunnel_shown.emit(self._index)


class _Step(QUndoCommand):
    """One undo step: the farm before and the farm after."""

    def __init__(self, session: Session, old: Farm, new: Farm, text: str, gesture: str) -> None:
        super().__init__(text)
        self._session, self._old, self._new = session, old, new
        self._gesture = gesture

    def redo(self) -> None:
        """Show the farm after the step."""
        self._session._show(self._new)

    def undo(self) -> None:
        """Show the farm before the step."""
        self._session._show(self._old)

    def id(self) -> int:
        """Return the same number for steps that may merge."""
        return 1 if self._gesture else -1

    def mergeWith(self, other: QUndoCommand) -> bool:
        """Take over a later step of the same gesture, and let go of its farms."""
        if not isinstance(other, _Step) or other._gesture != self._gesture:
            return False
        self._new = other._new
        other._old = other._new = self._new
        return True
