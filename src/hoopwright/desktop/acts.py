"""What the menus do to the tunnel and the farm. Every act is one undo step."""

from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QDialog, QWidget

from hoopwright.desktop.begin_dialog import BeginDialog
from hoopwright.desktop.filing import Filing
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm, Tunnel, change
from hoopwright.files.storage import open_farm


class Acts(QObject):
    """The acts of the menus; ValueError says in words what cannot be done."""

    def __init__(self, session: Session, filing: Filing, window: QWidget) -> None:
        """Act on a session."""
        super().__init__(window)
        self.session, self.filing, self._window = session, filing, window

    def new_farm(self) -> None:
        """Begin a farm of one tunnel by five questions; catalogue and units stay."""
        if not self.filing.may_leave():
            return
        tunnel = self.ask_tunnel(self.tr("Tunnel 1"))
        if tunnel is not None:
            farm = self.session.farm
            fresh = Farm(
                name=self.tr("My farm"),
                units=farm.units,
                note="",
                tunnels=(tunnel,),
                catalogue=farm.catalogue,
                limits=farm.limits,
                bench=farm.bench,
                money=farm.money,
            )
            self.filing.show_farm(fresh, None, None)
            self.session.stack.resetClean()

    def add_tunnel(self) -> None:
        """Add a tunnel by five questions, and show it."""
        session = self.session
        name = change.free_name(session.farm, self.tr("Tunnel 1"))
        tunnel = self.ask_tunnel(name)
        if tunnel is not None:
            farm = change.add_tunnel(session.farm, tunnel)
            session.apply(farm, self.tr("Add tunnel"))
            session.show_tunnel(len(farm.tunnels) - 1)

    def ask_tunnel(self, name: str) -> Tunnel | None:
        """Ask the five questions; return the tunnel, or None when the user turned back."""
        farm = self.session.farm
        dialog = BeginDialog(farm.catalogue, farm.units, name, self._window)
        answered = dialog.exec() == QDialog.DialogCode.Accepted
        dialog.deleteLater()
        return dialog.tunnel if answered else None

    def split_side(self, side: int) -> None:
        """Split the longest curtain of a side on the bow nearest its middle."""
        session = self.session
        if session.tunnel.sides[side].kind != "roll_up":
            raise ValueError(f"{session.tunnel.sides[side].name} is fixed and has no curtain")
        session.apply_tunnel(change.add_split(session.tunnel, side), self.tr("Add split"))

    def add_seam(self) -> None:
        """Halve the longest roof sheet by a cross seam on a bow."""
        self.session.apply_tunnel(change.add_seam(self.session.tunnel), self.tr("Add cross seam"))

    def remove_picked(self) -> None:
        """Remove the split or the cross seam that is picked."""
        session, parts = self.session, self.session.mark.split("/")
        if len(parts) >= 4 and parts[2] == "split":
            tunnel = change.remove_split(session.tunnel, int(parts[1]), int(parts[3]))
            session.apply_tunnel(tunnel, self.tr("Remove split"))
        elif parts[:2] == ["roof", "seam"]:
            tunnel = change.remove_seam(session.tunnel, int(parts[2]))
            session.apply_tunnel(tunnel, self.tr("Remove cross seam"))
        else:
            raise ValueError("Pick a split or a cross seam first")
        session.pick("")

    def turn_crank(self) -> None:
        """Move the crank of the picked curtain to its other end."""
        session, parts = self.session, self.session.mark.split("/")
        if len(parts) < 4 or parts[2] != "panel":
            raise ValueError("Pick a curtain first")
        side, panel = int(parts[1]), int(parts[3])
        now = session.tunnel.sides[side].panels[panel].crank_end
        tunnel = change.set_crank_end(
            session.tunnel, side, panel, "back" if now == "front" else "front"
        )
        session.apply_tunnel(tunnel, self.tr("Move crank"))

    def cover(self, covering: str) -> None:
        """Choose one sheet, or roof and sides apart."""
        tunnel = change.with_tunnel_value(self.session.tunnel, ("skin", "covering"), covering)
        self.session.apply_tunnel(tunnel, self.tr("Choose covering"))

    def list_bows(self) -> None:
        """Write the even bows out as a list that can be edited one by one."""
        tunnel = change.with_listed_bows(self.session.tunnel)
        self.session.apply_tunnel(tunnel, self.tr("List bows"))

    def set_units(self, units: str) -> None:
        """Show feet and inches, or metres; no stored number changes."""
        farm = self.session.farm
        self.session.apply(farm.but(units=units), self.tr("Change units"))

    def open_sample(self, path: Path) -> None:
        """Show a sample farm as one that has no file of its own."""
        if self.filing.may_leave():
            farm, _ = open_farm(path)
            self.filing.show_farm(farm, None, None)
