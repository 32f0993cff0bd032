"""What the menus do to the farm and to the tunnel that is shown. Every act is one undo step."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QDialog, QWidget

from hoopwright.desktop.cranks import crank_text, panel_of, turn_crank
from hoopwright.desktop.details_air import add_jumper_text
from hoopwright.desktop.end_moves import end_kind, remove_from_end
from hoopwright.desktop.end_tags import end_act_text
from hoopwright.desktop.filing import Filing
from hoopwright.desktop.jumpers import (
    add_jumper_on,
    is_jumper,
    remove_jumper_at,
    tunnel_in_hand,
    with_placed,
    work_out_jumpers,
)
from hoopwright.desktop.proposing import propose_on, side_in_hand
from hoopwright.desktop.session import Session
from hoopwright.farm import Catalogue, EvenBows, Tunnel, change
from hoopwright.farm.skin import Covering
from hoopwright.files.storage import demo_catalogue
from hoopwright.proposal import Aim
from hoopwright.quantity.units import Units

if TYPE_CHECKING:
    from hoopwright.desktop.begin_dialog import BeginDialog


class Acts(QObject):
    """The acts of the menus. A ValueError says in words what cannot be done."""

    def __init__(self, session: Session, filing: Filing, window: QWidget) -> None:
        """Act on a session; questions are asked in front of a window."""
        super().__init__(window)
        self._session, self._filing, self._window = session, filing, window

    def begin_dialog(
        self, catalogue: Catalogue, name: str, with_farm: bool = False
    ) -> "BeginDialog | None":
        """Ask the five questions; return the answered dialog, or None when the user turned back."""
        # Loaded when it is asked for: the window must not wait for it to start.
        from hoopwright.desktop.begin_dialog import BeginDialog

        units = self._session.units
        dialog = BeginDialog(catalogue, units, name, self._window, with_farm)
        answered = dialog.exec() == QDialog.DialogCode.Accepted
        dialog.deleteLater()
        return dialog if answered else None

    def new_farm(self) -> None:
        """Begin a farm of one tunnel by five questions."""
        if not self._filing.may_leave():
            return
        answered = self.begin_dialog(demo_catalogue(), self.tr("Tunnel 1"), with_farm=True)
        if answered is not None:
            self._filing.begin(answered.farm())

    def add_tunnel(self) -> None:
        """Add a tunnel by five questions, and show it."""
        farm = self._session.farm
        name = change.free_name(farm, self.tr("Tunnel"))
        answered = self.begin_dialog(farm.catalogue, name)
        if answered is not None and answered.tunnel is not None:
            self._add(answered.tunnel, self.tr("Add tunnel"))

    def copy_tunnel(self) -> None:
        """Add a copy of the tunnel that is shown, and show it."""
        self._add(self._session.tunnel, self.tr("Copy tunnel"))

    def _add(self, tunnel: Tunnel, text: str) -> None:
        farm = change.add_tunnel(self._session.farm, tunnel)
        self._session.apply(farm, text)
        self._session.show_tunnel(len(farm.tunnels) - 1)

    def rename_tunnel(self) -> None:
        """Ask for another name of the tunnel that is shown."""
        tunnel = self._session.tunnel
        name = self._filing.questions.tunnel_name(tunnel.name)
        if name is not None:
            self._session.apply_tunnel(tunnel.but(name=name), self.tr("Rename tunnel"))

    def remove_tunnel(self) -> None:
        """Take the tunnel that is shown out of the farm."""
        farm = change.remove_tunnel(self._session.farm, self._session.index)
        self._session.apply(farm, self.tr("Remove tunnel"))

    def add_split(self, side: int) -> None:
        """Split the longest curtain of a side on a bow near its middle, and pick the split."""
        before = self._session.tunnel
        if before.sides[side].kind == "fixed":
            words = self.tr("{side} is fixed film and has no curtain to split.")
            raise ValueError(words.format(side=before.sides[side].name))
        tunnel = change.add_split(before, side)
        words = self.tr("Add split on {side}").format(side=before.sides[side].name)
        self._session.apply_tunnel(tunnel, words)
        old = before.sides[side].splits
        index = next(i for i, s in enumerate(tunnel.sides[side].splits) if s not in old)
        self._session.pick(f"side/{side}/split/{index}")

    def add_seam(self) -> None:
        """Halve the longest roof sheet by a cross seam on a bow, and pick the seam."""
        before = self._session.tunnel
        tunnel = change.add_seam(before)
        self._session.apply_tunnel(tunnel, self.tr("Add cross seam"))
        seams = tunnel.skin.cross_seams_m
        new = next((i for i, x in enumerate(seams) if x not in before.skin.cross_seams_m), None)
        if new is not None:
            self._session.pick(f"roof/seam/{new}")

    def remove_picked(self) -> None:
        """Remove the split, cross seam, jumper, or thing on an end wall that is picked."""
        tunnel, parts = self._session.tunnel, self._session.mark.split("/")
        if parts[2:3] == ["split"]:
            changed = change.remove_split(tunnel, int(parts[1]), int(parts[3]))
            text = self.tr("Remove split on {side}")
            text = text.format(side=tunnel.sides[int(parts[1])].name)
        elif parts[:2] == ["roof", "seam"]:
            changed = change.remove_seam(tunnel, int(parts[2]))
            text = self.tr("Remove cross seam")
        elif is_jumper(self._session.mark):
            placed = tunnel_in_hand(self._session, self._session.mark)
            changed = remove_jumper_at(placed, int(parts[1]))
            text = self.tr("Remove jumper")
        elif end_kind(self._session.mark):
            changed = remove_from_end(tunnel, self._session.mark)
            text = end_act_text(self._session.mark, tunnel, self.tr("Remove"))
        else:
            raise ValueError(
                self.tr(
                    "Pick a split, a cross seam, a jumper, or what stands on an end wall first."
                )
            )
        self._session.pick("")
        self._session.apply_tunnel(changed, text)

    def add_jumper(self, surface: int) -> None:
        """Add a jumper where the longest stretch has none, and pick it."""
        session = self._session
        tunnel = add_jumper_on(with_placed(session.tunnel, session.tunnel_plan), surface)
        session.apply_tunnel(tunnel, add_jumper_text(session, surface))
        number = len(tunnel.air.jumpers or ()) - 1
        if number in session.tunnel_plan.chosen.inflation.idle:
            words = self.tr("The jumper joins no two cells there. Inflate what it is to fill.")
            session.noticed.emit("caution", words)
        else:
            session.pick(f"jumper/{number}")

    def work_out_jumpers(self) -> None:
        """Work out the jumpers instead of those placed by hand."""
        self._session.pick("")
        tunnel = work_out_jumpers(self._session.tunnel)
        self._session.apply_tunnel(tunnel, self.tr("Work out the jumpers"))

    def turn_crank(self) -> None:
        """Move the crank of the picked curtain to its next place."""
        panel = panel_of(self._session.mark)
        if not panel:
            raise ValueError(self.tr("Pick a curtain first."))
        tunnel = turn_crank(self._session.tunnel, self._session.farm.catalogue, panel)
        self._session.apply_tunnel(tunnel, crank_text(panel, tunnel))

    def propose(self, aim: Aim) -> None:
        """Propose splits on the side that is picked, else on that of the hardest crank."""
        propose_on(self._session, side_in_hand(self._session), aim)

    def cover(self, covering: Covering) -> None:
        """Choose one sheet, or roof and sides apart."""
        path = ("skin", "covering")
        tunnel = change.with_tunnel_value(self._session.tunnel, path, covering)
        text = self.tr("Cover with one sheet")
        if covering == "roof_and_sides":
            text = self.tr("Cover roof and sides apart")
        self._session.apply_tunnel(tunnel, text)

    def list_bows(self) -> None:
        """Write even bows out as a list of positions, or space listed ones evenly again."""
        tunnel = self._session.tunnel
        if isinstance(tunnel.frame.bows, EvenBows):
            text = self.tr("List bows one by one")
            self._session.apply_tunnel(change.with_listed_bows(tunnel), text)
        else:
            text = self.tr("Space bows evenly")
            self._session.apply_tunnel(change.with_even_bows(tunnel), text)

    def set_units(self, units: Units) -> None:
        """Show feet and inches, or metres; no stored number changes."""
        text = self.tr("Show metres") if units == "metric" else self.tr("Show feet and inches")
        self._session.apply(self._session.farm.but(units=units), text)
