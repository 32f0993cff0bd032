"""One side in the end section: film, bar and roll, board, gutter and lower edge, all to scale.

The film of a curtain hangs as far off the bows as the hip board holds it; pocket film lies on
them. A roll lies on one side of the film or the other. Shut it is drawn full; where it lies when
the curtain is open it is an outline, so that one sees what it comes near to. Widths of gutter,
hem and bunched film are for the picture only.
"""

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

from hoopwright.cover.cover import CurtainSpan
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.drive import GearedCrank
from hoopwright.papers.scene import (
    Handle,
    Line,
    Point,
    Polygon,
    Polyline,
    Shape,
    Style,
    Symbol,
    SymbolKind,
    circle,
    rectangle,
)
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_curtain import EDGE_M, open_at, shut_heights
from hoopwright.survey.bow_curve import BowCurve
from hoopwright.survey.segment import Arc

STEP_M = 0.25
LEAST_STEPS = 4
BOARD_M = 0.06
HIP_REACH_M = 0.25
GUTTER_M = 0.12
HEM_SHARE = 1.4
FOLD_M = 0.06
PIPE_OFF_M = 0.06
PROFILE_M = (0.02, 0.04)


@lru_cache(maxsize=256)
def path_along(curve: BowCurve, from_m: float, to_m: float) -> tuple[Point, ...]:
    """Return points of a curve between two positions along it: corners, and arcs in steps, m."""
    stops, start_m = [from_m], 0.0
    for segment in curve.segments:
        low_m, high_m = max(from_m, start_m), min(to_m, start_m + segment.length_m)
        start_m += segment.length_m
        if high_m > low_m:
            arc = isinstance(segment, Arc)
            steps = max(LEAST_STEPS, math.ceil((high_m - low_m) / STEP_M)) if arc else 1
            stops += [low_m + (high_m - low_m) * k / steps for k in range(1, steps + 1)]
    return tuple(curve.point_at(stop_m) for stop_m in stops)


def pushed_out(path: Sequence[Point], away_m: Sequence[float]) -> tuple[Point, ...]:
    """Return a path that runs from left to right, each point moved outward by its own way, m."""
    last, found = len(path) - 1, []
    for k, (x, y) in enumerate(path):
        (x0, y0), (x1, y1) = path[max(0, k - 1)], path[min(last, k + 1)]
        lift = away_m[k] / (math.dist((x0, y0), (x1, y1)) or 1)
        found.append((x - (y1 - y0) * lift, y + (x1 - x0) * lift))
    return tuple(found)


def draw_section_side(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield the film of one side, its boards, and its first curtain with its bar.

    Args:
        subject: What is drawn.
        side: 0 for the first side (at the left), 1 for the second.
    """
    spans = [span for span in subject.chosen.cover.curtains if span.side == side]
    for fixed in subject.chosen.cover.fixed:
        if fixed.side == side and "/strip/" not in fixed.mark:
            survey = subject.survey
            ends = sorted((survey.base_at_m[side], survey.hip_at_m[side]))
            yield Polyline(fixed.mark, "pocket", path_along(survey.curve, *ends))
            break
    yield from _films(subject, side, spans)
    yield from _boards(subject, side)
    if spans:
        work = next(w for w in subject.chosen.curtains if w.mark == spans[0].mark)
        yield from _works(subject, side, work)


def _films(subject: Subject, side: int, spans: list[CurtainSpan]) -> Iterator[Shape]:
    """Yield the film of all curtains of a side, shut; the first lies on top."""
    if not spans:
        return
    curve = subject.survey.curve
    low_m = shut_heights(subject, side)[0]
    foot_m = curve.position_at_height(low_m, side)
    path = _hung(subject, side, *sorted((foot_m, subject.survey.hip_at_m[side])))
    inflated = {cell.place for cell in subject.chosen.inflation.cells}
    for span in reversed(spans):
        style: Style = "inflated curtain" if span.mark in inflated else "curtain"
        yield Polyline(span.mark, style, path)


def _hung(subject: Subject, side: int, from_m: float, to_m: float) -> tuple[Point, ...]:
    """Return where curtain film hangs between two positions along the bow, m."""
    path = path_along(subject.survey.curve, from_m, to_m)
    stand_off_m = subject.tunnel.frame.boards[side].stand_off_m
    return pushed_out(path, (stand_off_m,) * len(path))


def _place(subject: Subject, side: int, at_m: float, out_m: float = 0.0) -> Point:
    """Return a place in the plane of the curtain film, or so far outside it, m.

    Args:
        subject: What is drawn.
        side: 0 or 1.
        at_m: Position along the bow from its left base, m.
        out_m: Outward from the film, m; below 0 on its tunnel side.
    """
    curve, reach_m = subject.survey.curve, 1e-3
    path = tuple(curve.point_at(at_m + step_m) for step_m in (-reach_m, 0.0, reach_m))
    away_m = subject.tunnel.frame.boards[side].stand_off_m + out_m
    return pushed_out(path, (away_m,) * 3)[1]


def _boards(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield baseboard, hip board with what it stands off, and gutter."""
    survey, boards = subject.survey, subject.tunnel.frame.boards[side]
    hip = survey.curve.point_at(survey.hip_at_m[side])
    base = survey.curve.point_at(survey.base_at_m[side])
    out, mark = (-1 if side == 0 else 1), f"side/{side}/hip"
    left_m, right_m = sorted((base[0] - out * BOARD_M, base[0]))
    corners = rectangle(left_m, 0.0, right_m, boards.baseboard_height_m)
    yield Polygon(f"side/{side}/baseboard", "board", corners)
    edge_m = hip[0] + out * boards.stand_off_m
    if boards.gutter_drop_m is not None:
        left_m, right_m = sorted((edge_m, edge_m + out * GUTTER_M))
        corners = rectangle(left_m, hip[1] - boards.gutter_drop_m, right_m, hip[1])
        yield Polygon(mark, "board", corners)
    yield Line(mark, "hip", (hip[0] - out * HIP_REACH_M, hip[1], edge_m, hip[1]))
    ends = (hip[0] - HIP_REACH_M, hip[1], hip[0] + HIP_REACH_M, hip[1])
    yield Handle(mark, "hip", ends, hip, "hip", "up")


def _works(subject: Subject, side: int, work: CurtainWork) -> Iterator[Shape]:
    """Yield bar and roll, shut and open, or rod and bunched film; and the guide pipe."""
    if work.kind == "drop_down":
        yield from _dropped(subject, side, work)
        return
    panel = subject.tunnel.sides[side].panels[work.index]
    low_m = shut_heights(subject, side)[0]
    foot_m = subject.survey.curve.position_at_height(low_m, side)
    lies = -1 if panel.winding == "into" else 1
    shut_m, _half_m, open_m = (diameter_m / 2 for diameter_m in work.diameters_m)
    at = _place(subject, side, foot_m, lies * shut_m)
    if work.kind == "woven":
        yield from _woven_edges(subject, side, work, at, shut_m)
    yield from _lower_edge(subject, side, work, at, shut_m)
    yield Polygon(work.mark, "bar", circle(at, shut_m))
    opened = _place(subject, side, open_at(subject, work), lies * open_m)
    yield Polygon(work.mark, "open", circle(opened, open_m))
    yield from _guide(work, at[0] + (-1 if side == 0 else 1) * (shut_m + PIPE_OFF_M))
    kind: SymbolKind = "roll into" if panel.winding == "into" else "roll out"
    yield Symbol(work.mark, "bar", at, kind, -1 if side == 0 else 1)


def _woven_edges(
    subject: Subject, side: int, work: CurtainWork, at: Point, shut_m: float
) -> Iterator[Shape]:
    """Yield the profile that the top of a woven curtain slides into, and the hem at the bar."""
    x, y = _place(subject, side, subject.survey.hip_at_m[side])
    half_m, high_m = PROFILE_M[0] / 2, PROFILE_M[1]
    yield Polygon(work.mark, "board", rectangle(x - half_m, y - high_m, x + half_m, y))
    yield Polygon(work.mark, "curtain", circle(at, HEM_SHARE * shut_m))


def _lower_edge(
    subject: Subject, side: int, work: CurtainWork, at: Point, shut_m: float
) -> Iterator[Shape]:
    """Yield what closes the gap under the shut bar."""
    bottom, low_m = subject.tunnel.sides[side].panels[work.index].bottom, at[1] - shut_m
    if bottom == "skirt":
        yield Line(work.mark, "curtain", (at[0], low_m, at[0], 0.0))
    elif bottom == "seal_profile":
        yield Line(work.mark, "bar", (at[0], low_m, at[0], max(0.0, low_m - EDGE_M)))
    elif bottom == "hat_purlin":
        corners = rectangle(at[0] - shut_m, max(0.0, low_m - EDGE_M), at[0] + shut_m, low_m)
        yield Polygon(work.mark, "board", corners)


def _guide(work: CurtainWork, x_m: float) -> Iterator[Shape]:
    drive = work.hung.drive
    if isinstance(drive, GearedCrank):
        foot_m = -drive.guide_buried_m
        yield Line(f"{work.mark}/crank", "crank", (x_m, foot_m, x_m, foot_m + work.guide_m))


def _dropped(subject: Subject, side: int, work: CurtainWork) -> Iterator[Shape]:
    """Yield rod and lift line of a drop-down curtain, and rod and bunched film when it is open."""
    survey, rod_m = subject.survey, work.hung.bar.section.outside_m / 2
    hip_m, opened_m = survey.hip_at_m[side], open_at(subject, work)
    line = _hung(subject, side, *sorted((opened_m, hip_m)))
    yield Polyline(work.mark, "rope", line)
    yield Polygon(work.mark, "bar", circle(_place(subject, side, hip_m), rod_m))
    yield Polygon(work.mark, "open", circle(_place(subject, side, opened_m), rod_m))
    yield Polyline(work.mark, "open", _folds(subject, side, opened_m))


def _folds(subject: Subject, side: int, opened_m: float) -> tuple[Point, ...]:
    """Return bunched film as folds between the baseboard and the rod of an open curtain, m."""
    base_m, count = subject.survey.base_at_m[side], 6
    spots = [base_m + (opened_m - base_m) * k / count for k in range(count + 1)]
    inner = [
        _place(subject, side, (a + b) / 2, FOLD_M if k % 2 else -FOLD_M / 2)
        for k, (a, b) in enumerate(pairwise(spots))
    ]
    return (_place(subject, side, base_m), *inner, _place(subject, side, opened_m))
