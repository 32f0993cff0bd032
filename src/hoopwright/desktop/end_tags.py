"""Words about what stands on an end wall: the tag of a drag, what was moved."""

from hoopwright.cover.cover import Piece
from hoopwright.cover.end_laid import Crossing, EndLaid, Opening
from hoopwright.farm import Tunnel
from hoopwright.plan import TunnelPlan
from hoopwright.quantity.units import Units, format_length

HAIR_M = 1e-4


def end_lines(mark: str, plan: TunnelPlan, units: Units) -> tuple[str, ...]:
    """Return the lines of the tag of something that is moved on an end wall.

    Args:
        mark: Mark of a door, vent, fan opening, rail or seam.
        plan: Plan of the tunnel as it is now.
        units: Units of the figures.
    """
    found = _found(mark, plan)
    wall = _wall(mark, plan)
    if isinstance(found, Opening):
        return _opening_lines(found, units)
    if found is None:
        return ()
    lines = [f"{_title(mark)} at {format_length(found.at_m, units)}"]
    if found in wall.seams:
        on = any(abs(rail.at_m - found.at_m) < HAIR_M for rail in wall.rails)
        lines.append("on a rail" if on else "on no rail")
        lines += [_sheet(piece, units) for piece in _sheets(wall, plan)]
    return tuple(lines)


def _opening_lines(opening: Opening, units: Units) -> tuple[str, ...]:
    left, sill = (format_length(x, units) for x in (opening.box.left_m, opening.box.low_m))
    lines = [f"{opening.use.capitalize()} {opening.number + 1} · left edge {left} from the middle"]
    if opening.use != "door":
        lines.append(f"Sill {sill} above the ground")
    if not opening.inside:
        lines.append("sticks out of the end wall")
    if opening.meets:
        lines.append("overlaps another opening")
    return tuple(lines)


def _sheets(wall: EndLaid, plan: TunnelPlan) -> list[Piece]:
    surface = f"end{wall.mark[-1]}"
    return [
        piece
        for piece in plan.chosen.cover.pieces
        if piece.areas[0].surface == surface and piece.layer != "inner"
    ]


def _sheet(piece: Piece, units: Units) -> str:
    width, length = (format_length(x, units) for x in (piece.width_m, piece.length_m))
    return f"{piece.name}: {width} × {length}"


def end_act_text(mark: str, tunnel: Tunnel, act: str) -> str:
    """Return what moving or removing something on an end wall is called in the undo steps."""
    end = tunnel.ends[int(mark.split("/")[1])]
    name = _title(mark).lower()
    if mark.split("/")[2] == "cut":
        name = "fan opening" if end.cuts[int(mark.split("/")[3])].kind == "fan" else "vent"
    return f"{act} {name} on {end.name}"


def _title(mark: str) -> str:
    """Return what a thing on an end wall is called by its mark."""
    return mark.split("/")[2].capitalize()


def _wall(mark: str, plan: TunnelPlan) -> EndLaid:
    return plan.chosen.cover.ends[int(mark.split("/")[1])]


def _found(mark: str, plan: TunnelPlan) -> Opening | Crossing | None:
    wall = _wall(mark, plan)
    things: tuple[Opening | Crossing, ...] = (*wall.openings, *wall.rails, *wall.seams)
    return next((thing for thing in things if thing.mark == mark), None)
