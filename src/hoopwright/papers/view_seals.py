"""One inflated sheet laid flat on the bench: its edges, and the seals along them.

A curtain lies with its front end at the left and its bar edge below, seen from outside. Each pass
of the sealer is a line along its edge, with a tick where a stroke of a sealing bar begins. Seals
lie a finger's width apart, too close to be seen on a whole curtain: where they are drawn wider
apart the title says so.
"""

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from hoopwright.cover.cover import CurtainSpan
from hoopwright.inflation.inflation import Seal
from hoopwright.inflation.seals import Edge
from hoopwright.papers.scene import (
    Box,
    Dimension,
    Label,
    Line,
    Polygon,
    Segment,
    Shape,
    View,
    bounds,
    rectangle,
)
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_section import draw_end_wall
from hoopwright.quantity.units import show

SEEN_OF_LENGTH, SEEN_OF_HEIGHT = 1 / 150, 1 / 25
TEXT_M, TICK_SHARE = 0.12, 0.4
NOTES_AT, EDGES_AT, ENDS_SHARE = 0.25, 0.75, 0.35


class _Flat(NamedTuple):
    """A sheet laid flat.

    Attributes:
        shapes: The sheet without its seals.
        box: Left, bottom, right and top, m.
        foot: Stretches of its lower edge, m along it: all of it, or what doors leave.
        free_m: From what height to what height texts stand, m.
    """

    shapes: tuple[Shape, ...]
    box: Box
    foot: tuple[tuple[float, float], ...]
    free_m: tuple[float, float]


def draw_seals(subject: Subject, mark: str) -> View:
    """Return one inflated curtain or end wall laid flat, with its seals.

    Args:
        subject: What is drawn.
        mark: Mark of the curtain or end wall, for example `side/0/panel/1` or `end/0`.

    Raises:
        ValueError: No edge of it is sealed.
    """
    seals = [seal for seal in subject.chosen.inflation.seals if seal.mark == mark]
    if not seals:
        raise ValueError(f"mark: no edge of {mark!r} is sealed; inflate it, or pick another one")
    spans = [span for span in subject.chosen.cover.curtains if span.mark == mark]
    flat = _curtain(subject, spans[0]) if spans else _end_wall(subject, int(mark.split("/")[1]))
    step_m = drawn_spacing(seals, flat.box)
    name = next(c.name for c in subject.chosen.inflation.cells if c.place == mark)
    apart = _told_spacing(subject, seals, step_m)
    told = "; ".join(edge_words(subject, seal) for seal in seals)
    return View(
        name="seals",
        title=f"{name} laid flat, seen from outside · {apart}",
        described=f"{name} laid flat on the bench: {told}. {apart.capitalize()}.",
        box=flat.box,
        shapes=(
            *flat.shapes,
            *(shape for seal in seals for shape in _passes(seal, flat, step_m)),
            *(_edge_label(subject, seal, flat, step_m) for seal in seals),
        ),
    )


def edge_words(subject: Subject, seal: Seal) -> str:
    """Return an edge as a text: its name, its length, its seals and their strokes."""
    each = "1 seal" if seal.passes == 1 else f"{seal.passes} seals"
    strokes = f" of {seal.strokes // seal.passes} strokes" if seal.strokes else ""
    return f"{seal.edge} · {subject.size(seal.length_m)} · {each}{strokes}"


def drawn_spacing(seals: Sequence[Seal], box: Box) -> float:
    """Return how far apart seals are drawn, m: as they are, or just far enough to be told apart.

    Args:
        seals: Seals of one sheet.
        box: The sheet: left, bottom, right and top, m.
    """
    left, bottom, right, top = box
    least_m = max(SEEN_OF_LENGTH * (right - left), SEEN_OF_HEIGHT * (top - bottom))
    most_m = (top - bottom) / (4 * max(seal.passes for seal in seals))
    return max(max(seal.spacing_m for seal in seals), min(least_m, most_m))


def _told_spacing(subject: Subject, seals: Sequence[Seal], step_m: float) -> str:
    spacing_m = max(seal.spacing_m for seal in seals)
    if not spacing_m:
        return "one seal along each edge"
    apart = f"seals {show(spacing_m, 'm_thin', subject.units)} apart"
    return f"{apart}, drawn wider apart" if step_m > spacing_m else apart


def _curtain(subject: Subject, span: CurtainSpan) -> _Flat:
    """Return the sheet of a curtain with its tail, its wrap and its sizes."""
    mark, allowances = span.mark, subject.tunnel.skin.allowances
    long_m, high_m, wrap_m = span.length_m, span.cut_height_m, allowances.bar_wrap_m
    apart = subject.chosen.cover.covering == "roof_and_sides"
    tail_m = allowances.curtain_top_tail_m if apart else 0.0
    hip = "tail above the hip board" if apart else "hip board; the sheet goes on over the roof"
    level, notes_m = high_m - tail_m, NOTES_AT * long_m
    shapes: list[Shape] = [
        Polygon(mark, "inflated curtain", rectangle(0.0, 0.0, long_m, high_m)),
        Polygon(mark, "tail", rectangle(0.0, 0.0, long_m, wrap_m)),
        Line(mark, "hip", (0.0, level, long_m, level)),
        Line(mark, "bar", (0.0, wrap_m, long_m, wrap_m)),
        Label(mark, "label", (notes_m, level - TEXT_M), hip, long_m / 2),
        Label(mark, "label", (notes_m, wrap_m + TEXT_M), "wrap on the bar below", long_m / 2),
        Dimension(mark, (0.0, 0.0, long_m, 0.0), 1, subject.size(long_m)),
        Dimension(mark, (0.0, 0.0, 0.0, high_m), -2, subject.size(high_m)),
        Dimension(mark, (0.0, 0.0, 0.0, wrap_m), -1, subject.size(wrap_m)),
    ]
    if tail_m:
        shapes.append(Polygon(mark, "tail", rectangle(0.0, level, long_m, high_m)))
        shapes.append(Dimension(mark, (0.0, level, 0.0, high_m), -1, subject.size(tail_m)))
    box = (0.0, 0.0, long_m, high_m)
    return _Flat(tuple(shapes), box, ((0.0, long_m),), (wrap_m, level))


def _end_wall(subject: Subject, number: int) -> _Flat:
    """Return an end wall with its doors, its width at the ground and its height."""
    mark, wall = f"end/{number}", tuple(draw_end_wall(subject, number))
    box, foot_m = bounds(wall), abs(subject.survey.curve.point_at(0.0)[0])
    openings = [bounds((s,)) for s in wall if isinstance(s, Polygon) and s.style == "door"]
    doors = sorted(box for box in openings if box[1] <= 0.0)
    stops = (-foot_m, *(x for door in doors for x in (door[0], door[2])), foot_m)
    width = Dimension(mark, (-foot_m, 0.0, foot_m, 0.0), 1, subject.size(2 * foot_m))
    height = Dimension(mark, (-foot_m, 0.0, 0.0, box[3]), -1, subject.size(box[3]))
    foot = tuple(zip(stops[::2], stops[1::2], strict=True))
    return _Flat((*wall, width, height), box, foot, (0.0, box[3]))


def _passes(seal: Seal, flat: _Flat, step_m: float) -> Iterator[Shape]:
    """Yield the passes along one edge, the first nearest to it, each with its strokes."""
    count = seal.strokes // seal.passes
    for number in range(1, seal.passes + 1):
        lines = _pass_lines(seal.edge, flat, number * step_m)
        yield from (Line(seal.mark, "seal", ends) for ends in lines)
        yield from _ticks(seal.mark, lines, count, TICK_SHARE * step_m)


def _pass_lines(edge: Edge, flat: _Flat, in_m: float) -> tuple[Segment, ...]:
    """Return one pass, so far in from its edge, as long as the edge, m."""
    left, bottom, right, top = flat.box
    if edge == "top":
        return ((left, top - in_m, right, top - in_m),)
    if edge == "bottom":
        return tuple((x1, bottom + in_m, x2, bottom + in_m) for x1, x2 in flat.foot)
    at_m = left + in_m if edge == "front" else right - in_m
    return ((at_m, bottom, at_m, top),)


def _ticks(mark: str, lines: Sequence[Segment], count: int, half_m: float) -> Iterator[Line]:
    """Yield a tick where each stroke of a pass begins, the strokes shared evenly along it."""
    whole_m = sum(math.dist(ends[:2], ends[2:]) for ends in lines)
    starts_m = [whole_m * k / count for k in range(count)]
    done_m = 0.0
    for x1, y1, x2, y2 in lines:
        long_m = math.dist((x1, y1), (x2, y2))
        for start_m in starts_m:
            if done_m <= start_m < done_m + long_m:
                share = (start_m - done_m) / long_m
                x, y = x1 + share * (x2 - x1), y1 + share * (y2 - y1)
                level = y1 == y2
                half_x, half_y = (0.0, half_m) if level else (half_m, 0.0)
                yield Line(mark, "rope", (x - half_x, y - half_y, x + half_x, y + half_y))
        done_m += long_m


def _edge_label(subject: Subject, seal: Seal, flat: _Flat, step_m: float) -> Label:
    """Return the text of an edge, inside its seals."""
    left, bottom, right, top = flat.box
    low_m, high_m = flat.free_m
    in_m, wide_m = (seal.passes + 1) * step_m, right - left
    ends_m = ENDS_SHARE * wide_m
    at, room_m = {
        "top": ((left + EDGES_AT * wide_m, min(top - in_m, high_m) - TEXT_M), wide_m / 2),
        "bottom": ((left + EDGES_AT * wide_m, max(bottom + in_m, low_m) + TEXT_M), wide_m / 2),
        "front": ((left + ends_m / 2 + in_m, (bottom + top) / 2), ends_m),
        "back": ((right - ends_m / 2 - in_m, (bottom + top) / 2), ends_m),
    }[seal.edge]
    return Label(seal.mark, "label", at, edge_words(subject, seal), room_m)
