"""Words about places of the drawing: the tag beside a dragging hand, names, what was done.

Every figure comes from the plan; only differences to the plan before are taken here.
"""

from decimal import Decimal

from hoopwright.cover.cover import CurtainSpan
from hoopwright.curtain import CurtainWork
from hoopwright.desktop.air_words import (
    cell_name,
    jumper_name,
    jumper_tag,
    least_pressure,
    pressure_words,
)
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.end_tags import end_act_text, end_lines
from hoopwright.farm import Farm, Tunnel
from hoopwright.plan import TunnelPlan
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import Units, format_length, show

FILM = "film/"
HAIR_M = 1e-4


def drag_tag(
    mark: str, farm: Farm, tunnel: Tunnel, before: TunnelPlan, now: TunnelPlan, one_side: bool
) -> tuple[str, ...]:
    """Return the lines of the tag that goes with a dragged handle.

    Args:
        mark: Mark of the handle.
        farm: The farm, for units and currency.
        tunnel: The tunnel as it is now.
        before: Plan of the tunnel when the drag began.
        now: Plan of the tunnel as it is now.
        one_side: Whether the hip seam of one side alone is moved.
    """
    parts = mark.split("/")
    if parts[2:3] == ["split"]:
        return _split_tag(int(parts[1]), int(parts[3]), farm, tunnel, before, now)
    if parts[:2] == ["roof", "seam"]:
        return _seam_tag(int(parts[2]), farm, tunnel, before, now)
    if parts[0] == "jumper":
        return jumper_tag(mark, now, farm.units)
    if parts[0] == "end":
        return (*end_lines(mark, now, farm.units), _cost_line(farm, before, now))
    return _hip_tag(int(parts[1]), farm, tunnel, before, now, one_side)


def _split_tag(
    side: int, index: int, farm: Farm, tunnel: Tunnel, before: TunnelPlan, now: TunnelPlan
) -> tuple[str, ...]:
    units = farm.units
    lines = [f"Split at {format_length(tunnel.sides[side].splits[index].at_m, units)}"]
    for number in (index, index + 1):
        panel = f"side/{side}/panel/{number}"
        span = _span(now, panel)
        work = next((w for w in now.chosen.curtains if w.mark == panel), None)
        if span is not None and work is not None:
            lines.append(f"Curtain {number + 1}: {_worked(work, span.length_m, units)}")
    least = least_pressure(now)
    if least is not None:
        lines.append(f"Least pressure {', '.join(pressure_words(least.mark, now, units))}")
    return (*lines, _cost_line(farm, before, now))


def _worked(work: CurtainWork, length_m: float, units: Units) -> str:
    """Return size, hand force and trailing of a curtain, and what sets its greatest length."""
    size, longest = (format_length(x, units) for x in (length_m, work.longest_m))
    force, hangs = show(work.hardest_n, "N", units), show(work.trailing_m, "m_thin", units)
    over = " (too long)" if work.length_m > work.longest_m + HAIR_M else ""
    limit = f"at most {longest} by {choice_words(work.bound_by)}"
    return f"{size}{over} · {force} at the hand · trails {hangs} · {limit}"


def _seam_tag(
    index: int, farm: Farm, tunnel: Tunnel, before: TunnelPlan, now: TunnelPlan
) -> tuple[str, ...]:
    at_m = tunnel.skin.cross_seams_m[index]
    lines = [f"Cross seam at {format_length(at_m, farm.units)}"]
    for piece in now.chosen.cover.pieces:
        ends = [x for a in piece.areas if a.surface == "roof" for x in (a.from_m, a.to_m)]
        near = ends and min(abs(x - at_m) for x in ends) <= tunnel.skin.allowances.seam_lap_m
        if near and piece.layer != "inner":
            lines.append(f"{piece.name}: {format_length(piece.length_m, farm.units)}")
    change = _film(now) - _film(before)
    return (*lines, f"Film {_change(change, farm.money.currency)}")


def _hip_tag(
    side: int,
    farm: Farm,
    tunnel: Tunnel,
    before: TunnelPlan,
    now: TunnelPlan,
    one_side: bool,
) -> tuple[str, ...]:
    units, cover = farm.units, now.chosen.cover
    which = tunnel.sides[side].name if one_side else "both sides (Ctrl for one)"
    height = format_length(tunnel.frame.boards[side].hip_height_m, units)
    lines = [f"Hip seam {height} · {which}"]
    lines.append(f"Roof film {format_length(cover.sheet_width_m, units)} wide")
    if cover.side_height_m[side] > 0:
        lines.append(f"Curtain film {format_length(cover.side_height_m[side], units)} high")
    airing = now.chosen.airing
    opening, share = show(airing.opening_m2, "m2", units), show(airing.floor_share, "share", units)
    lines.append(f"Opening {opening} · {share} of the floor")
    return (*lines, _cost_line(farm, before, now))


def _cost_line(farm: Farm, before: TunnelPlan, now: TunnelPlan) -> str:
    change = now.chosen.cost.to_pay - before.chosen.cost.to_pay
    return f"Cost {_change(change, farm.money.currency)}"


def _film(plan: TunnelPlan) -> Decimal:
    lines = (line.total for line in plan.chosen.order.lines if line.key.startswith(FILM))
    return sum(lines, Decimal(0))


def _change(amount: Decimal, currency: str) -> str:
    if amount == 0:
        return "as before"
    return f"{'+' if amount > 0 else '−'}{format_money(abs(amount), currency)}"


def _span(plan: TunnelPlan, mark: str) -> CurtainSpan | None:
    return next((c for c in plan.chosen.cover.curtains if c.mark == mark), None)


def place_name(mark: str, tunnel: Tunnel, plan: TunnelPlan, units: Units) -> str:
    """Return the name and size of what a mark shows, for tooltips and for reading aloud."""
    parts = mark.split("/")
    if parts[0] == "side" and len(parts) > 1:
        return _side_name(parts, tunnel, plan, units)
    if parts[0] == "bow":
        at_m = plan.survey.bows_m[int(parts[1])]
        return f"Bow {int(parts[1]) + 1} at {format_length(at_m, units)}"
    if parts[0] == "piece":
        piece = next((p for p in plan.chosen.cover.pieces if p.mark == mark), None)
        if piece is not None:
            width, length = (format_length(x, units) for x in (piece.width_m, piece.length_m))
            return f"{piece.name}: {width} × {length}"
    if parts[:2] == ["roof", "seam"]:
        at_m = tunnel.skin.cross_seams_m[int(parts[2])]
        return f"Cross seam {int(parts[2]) + 1} at {format_length(at_m, units)}"
    return _whole_name(parts, tunnel, plan, units)


def _whole_name(parts: list[str], tunnel: Tunnel, plan: TunnelPlan, units: Units) -> str:
    """Return the name of what is neither a side, a bow nor a sheet."""
    if parts[0] == "end":
        return _end_name(parts, tunnel, units)
    if parts[0] == "jumper":
        return jumper_name("/".join(parts), plan, units)
    if parts[0] == "cell":
        return cell_name("/".join(parts), plan, units)
    if parts[0] == "frame":
        width, height = plan.survey.width_m, plan.survey.height_m
        return f"Frame: {format_length(width, units)} wide, {format_length(height, units)} high"
    return {"air": "Inflation blower", "roof": "Roof film past the end bow"}.get(parts[0], "")


def _end_name(parts: list[str], tunnel: Tunnel, units: Units) -> str:
    end, rest = tunnel.ends[int(parts[1])], parts[2:]
    if not rest:
        return end.name
    index = int(rest[1])
    if rest[0] in ("rail", "seam"):
        at_m = (end.rails_m if rest[0] == "rail" else end.seams_m)[index]
        return f"{end.name}, {rest[0]} {index + 1} at {format_length(at_m, units)}"
    opening = end.doors[index] if rest[0] == "door" else end.cuts[index]
    size = f"{format_length(opening.width_m, units)} × {format_length(opening.height_m, units)}"
    what = "door" if rest[0] == "door" else "opening"
    return f"{end.name}, {what} {index + 1}: {size}"


def _side_name(parts: list[str], tunnel: Tunnel, plan: TunnelPlan, units: Units) -> str:
    number = int(parts[1])
    side, boards = tunnel.sides[number], tunnel.frame.boards[number]
    rest = parts[2:]
    if not rest:
        return side.name
    if rest[0] == "hip":
        return f"{side.name}, hip board at {format_length(boards.hip_height_m, units)}"
    if rest[0] == "baseboard":
        return f"{side.name}, baseboard at {format_length(boards.baseboard_height_m, units)}"
    if rest[0] == "split":
        at_m = side.splits[int(rest[1])].at_m
        return f"{side.name}, split {int(rest[1]) + 1} at {format_length(at_m, units)}"
    if rest[0] == "panel":
        return _panel_name(parts, side.name, plan, units)
    span = next((f for f in plan.chosen.cover.fixed if f.mark == "/".join(parts)), None)
    words = {"pocket": f"{rest[-1]} pocket", "strip": "fixed strip", "fixed": "fixed film"}
    size = f": {format_length(span.to_m - span.from_m, units)}" if span is not None else ""
    return f"{side.name}, {words.get(rest[0], rest[0])}{size}"


def _panel_name(parts: list[str], side: str, plan: TunnelPlan, units: Units) -> str:
    mark, number = "/".join(parts[:4]), int(parts[3]) + 1
    if parts[4:] == ["crank"]:
        return f"{side}, crank of curtain {number}: click to move it to its next place"
    span = _span(plan, mark)
    size = f": {format_length(span.length_m, units)}" if span is not None else ""
    return f"{side}, curtain {number}{size}"


def move_text(mark: str, tunnel: Tunnel, one_side: bool = False) -> str:
    """Return what moving a handle is called in the list of undo steps."""
    parts = mark.split("/")
    if parts[0] == "roof":
        return "Move cross seam"
    if parts[0] == "jumper":
        return "Move jumper"
    if parts[0] == "end":
        return end_act_text(mark, tunnel, "Move")
    name = tunnel.sides[int(parts[1])].name
    if parts[2] == "split":
        return f"Move split on {name}"
    return f"Move hip seam on {name}" if one_side else "Move hip seam on both sides"
