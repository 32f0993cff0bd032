"""Air in plan and elevation: blower with its hose, jumpers with the way their air takes, pressures.

A jumper is drawn where it hangs, with an arrow the way its air goes and, where some cell has no
other way to its air, a ring round it. Arrow and ring have a size that can be seen, not their own.
"""

import math
from collections.abc import Iterator

from hoopwright.inflation.inflation import Cell, Jumper
from hoopwright.papers.scene import (
    Handle,
    Label,
    Line,
    Point,
    Polygon,
    Polyline,
    Shape,
    Style,
    Symbol,
    circle,
    rectangle,
)
from hoopwright.papers.subject import Subject

CELL_INSET_M, END_CELL_M = 0.3, 0.2
RING_M, ARROW_OFF_M, ARROW_M, BARB_M = 0.5, 0.7, 0.8, 0.25
SLOPE_SHARE, FED_SHARE, ROOF_SHARE = 0.75, 0.5, 0.25
NO_FLOW_M3_S = 1e-7
END_TEXT_M = 4.5


def draw_side_air(subject: Subject, side: int, hip_m: float) -> Iterator[Shape]:
    """Yield the jumpers that fill the curtains of a side, in its elevation.

    Args:
        subject: What is drawn.
        side: 0 for the first side, 1 for the second.
        hip_m: Height of the hip, m.
    """
    for jumper in subject.chosen.inflation.jumpers:
        if _hangs_over(jumper) == side:
            yield from _jumper(subject, jumper, (jumper.at_m, hip_m), (0.0, -1.0))


def draw_plan_air(subject: Subject, hips_m: tuple[float, float]) -> Iterator[Shape]:
    """Yield cells of roof and end walls, blower and jumpers, in the plan.

    Args:
        subject: What is drawn.
        hips_m: Hip lines of the first (above) and second side (below), m up the paper.
    """
    inflation = subject.chosen.inflation
    for cell in inflation.cells:
        if cell.place == "roof":
            yield from _roof_cell(subject, cell, hips_m)
        elif cell.place.startswith("end/"):
            yield from _end_cell(subject, cell, hips_m)
    yield from _blower(subject, hips_m)
    for jumper in inflation.jumpers:
        yield from _plan_jumper(subject, jumper, hips_m)


def pressure_label(subject: Subject, mark: str, at: Point, room_m: float) -> Iterator[Label]:
    """Yield the pressure of a cell as a text, when pressures are asked for."""
    text = subject.pressure(mark)
    if text:
        yield Label(mark, "cell", at, text, room_m)


def _hangs_over(jumper: Jumper) -> int | None:
    """Return the side whose curtain a jumper fills; None for one over the roof or at an end."""
    return jumper.side if jumper.to_cell.startswith("cell/side/") else None


def _roof_cell(subject: Subject, cell: Cell, hips_m: tuple[float, float]) -> Iterator[Shape]:
    (top_m, bottom_m), d = hips_m, CELL_INSET_M
    corners = rectangle(cell.from_m + d, bottom_m + d, cell.to_m - d, top_m - d)
    yield Polyline(cell.mark, "cell", (*corners, corners[0]))
    at = ((cell.from_m + cell.to_m) / 2, ROOF_SHARE * top_m)
    yield from pressure_label(subject, cell.mark, at, cell.to_m - cell.from_m)


def _end_cell(subject: Subject, cell: Cell, hips_m: tuple[float, float]) -> Iterator[Shape]:
    """Yield the cell of an end wall, which stands on edge: a line inside the wall."""
    top_m, bottom_m = hips_m
    inward = 1 if cell.place == "end/0" else -1
    at_m = cell.from_m + inward * END_CELL_M
    yield Line(cell.mark, "cell", (at_m, bottom_m, at_m, top_m))
    at = (cell.from_m + inward * END_TEXT_M / 2, SLOPE_SHARE * bottom_m)
    yield from pressure_label(subject, cell.mark, at, END_TEXT_M)


def _blower(subject: Subject, hips_m: tuple[float, float]) -> Iterator[Shape]:
    """Yield the blower at the front of the cell it feeds, and its hose into that cell."""
    inflation = subject.chosen.inflation
    fed = next((cell for cell in inflation.cells if cell.fed), None)
    if inflation.blower is None or fed is None:
        return
    at = (fed.from_m, FED_SHARE * hips_m[0])
    into = (fed.from_m + max(subject.survey.bows_m[1], 2 * ARROW_OFF_M), at[1])
    yield Polyline("air/blower", "blower", _arrow(at, into))
    yield Symbol("air/blower", "blower", at, "blower")


def _plan_jumper(subject: Subject, jumper: Jumper, hips_m: tuple[float, float]) -> Iterator[Shape]:
    over = _hangs_over(jumper)
    if over is not None:
        yield from _jumper(subject, jumper, (jumper.at_m, hips_m[over]), (0.0, 1.0 - 2.0 * over))
        return
    across_m = 0.0 if jumper.side is None else SLOPE_SHARE * hips_m[jumper.side]
    forward = -1.0 if jumper.to_cell == "cell/end/0" else 1.0
    yield from _jumper(subject, jumper, (jumper.at_m, across_m), (forward, 0.0))


def _jumper(subject: Subject, jumper: Jumper, at: Point, way: Point) -> Iterator[Shape]:
    """Yield one jumper.

    Args:
        subject: What is drawn.
        jumper: The jumper.
        at: Where it hangs, m.
        way: From the cell it comes from to the cell it fills, as a step of 1 m.
    """
    mark, hose = jumper.mark, subject.hose(jumper.mark)
    style: Style = "jumper"
    if hose is not None and hose.critical:
        yield Polygon(mark, style, circle(at, RING_M))
    if hose is not None and abs(hose.flow_m3_s) > NO_FLOW_M3_S:
        turned = math.copysign(1.0, hose.flow_m3_s)
        off_x, off_y = abs(way[1]) * ARROW_OFF_M, abs(way[0]) * ARROW_OFF_M
        half_x, half_y = turned * way[0] * ARROW_M / 2, turned * way[1] * ARROW_M / 2
        middle_x, middle_y = at[0] + off_x, at[1] + off_y
        tail, tip = (middle_x - half_x, middle_y - half_y), (middle_x + half_x, middle_y + half_y)
        yield Polyline(mark, style, _arrow(tail, tip))
    yield Symbol(mark, style, at, "jumper")
    if not jumper.to_cell.startswith("cell/end/"):
        yield Handle(mark, style, (*at, *at), at, "jumper", "along")


def _arrow(tail: Point, tip: Point) -> tuple[Point, ...]:
    """Return a line with a head at its end, m."""
    away = math.atan2(tail[1] - tip[1], tail[0] - tip[0])
    barbs = [
        (tip[0] + BARB_M * math.cos(away + turn), tip[1] + BARB_M * math.sin(away + turn))
        for turn in (math.pi / 6, -math.pi / 6)
    ]
    return tail, tip, barbs[0], tip, barbs[1]
