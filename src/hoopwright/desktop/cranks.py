"""Where a crank goes next, and what moving it is called."""

from hoopwright.farm import Catalogue, Tunnel
from hoopwright.farm import change as edit
from hoopwright.farm.drive import GearedCrank, LineDrum
from hoopwright.farm.side import CrankPlace


def panel_of(mark: str) -> str:
    """Return the mark of the curtain that a mark belongs to, or an empty text."""
    parts = mark.split("/")
    return "/".join(parts[:4]) if len(parts) >= 4 and parts[2] == "panel" else ""


def numbers_in(mark: str) -> tuple[int, ...]:
    """Return the numbers in a mark: side and index of `side/0/split/1`."""
    return tuple(int(part) for part in mark.split("/") if part.isdigit())


def next_place(tunnel: Tunnel, catalogue: Catalogue, side: int, index: int) -> CrankPlace:
    """Return where the crank of a curtain goes next: front, back, middle, and front again.

    Only a geared crank, which climbs with the bar, or a drum on its line shaft can stand in the
    middle.
    """
    panel = tunnel.sides[side].panels[index]
    anywhere = isinstance(catalogue.drive(panel.drive), GearedCrank | LineDrum)
    if panel.crank_end == "front":
        return "back"
    return "middle" if panel.crank_end == "back" and anywhere else "front"


def turn_crank(tunnel: Tunnel, catalogue: Catalogue, mark: str) -> Tunnel:
    """Return the tunnel with the crank of a curtain (`side/0/panel/1`) at its next place."""
    side, index = numbers_in(mark)[:2]
    return edit.set_crank_end(tunnel, side, index, next_place(tunnel, catalogue, side, index))


def crank_text(mark: str, tunnel: Tunnel) -> str:
    """Return what moving a crank is called in the list of undo steps."""
    side, index = numbers_in(mark)[:2]
    chosen = tunnel.sides[side]
    end = chosen.panels[index].crank_end
    return f"Move crank of curtain {index + 1} on {chosen.name} to the {end}"
