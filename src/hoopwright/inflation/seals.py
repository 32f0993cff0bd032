"""The seals that close the edges of inflated curtains and end walls.

A curtain that is a sheet of its own is sealed all round. In one sheet the curtain has no edge at
the hip: there the clamp of the hip board closes it. The edges of a roof are gripped in channel, and
so are both sides of a cross seam; none of them is sealed. An end wall is gripped in channel over
the bow and round its openings; its foot is not, and is sealed.

A sealer either runs on along the edge, or a bar closes stroke by stroke: the first stroke seals the
length of the bar, each further one what it does not lap over the stroke before.
"""

import math
from typing import Literal

from hoopwright.cover.cover import CurtainSpan
from hoopwright.cover.end_laid import EndLaid
from hoopwright.farm import Bench
from hoopwright.farm.skin import Covering
from hoopwright.inflation.inflation import Seal
from hoopwright.quantity.working import DERIVED, ENTERED, LaterWorkings, Term, Working

Edge = Literal["top", "bottom", "front", "back"]

EDGES: dict[Covering, tuple[Edge, ...]] = {
    "roof_and_sides": ("top", "bottom", "front", "back"),
    "one_sheet": ("bottom", "front", "back"),
}
EXACT = 1e-9


def seal_edges(
    span: CurtainSpan, covering: Covering, passes: int, bench: Bench
) -> tuple[Seal, ...]:
    """Return the seals of one inflated curtain, edge by edge.

    Args:
        span: The curtain.
        covering: How the skin is laid.
        passes: Seals along each edge.
        bench: How seals are made.

    Source:
        Each figure keeps its own working.
    """
    along = Term("length of the curtain", span.length_m, "m")
    up = Term("cut height of the curtain", span.cut_height_m, "m")
    return tuple(
        _seal(
            span.mark,
            edge,
            span.length_m if edge in ("top", "bottom") else span.cut_height_m,
            passes,
            bench,
            Working(
                "length_m",
                f"The {edge} edge is as long as that side of the sheet.",
                (along if edge in ("top", "bottom") else up,),
            ),
        )
        for edge in EDGES[covering]
    )


def seal_foot(wall: EndLaid, passes: int, bench: Bench) -> tuple[Seal, ...]:
    """Return the seal along the foot of an inflated end wall; none where doors take it all.

    Args:
        wall: The end wall as laid.
        passes: Seals along the foot.
        bench: How seals are made.

    Source:
        The edges of openings are gripped in channel: common practice, no published source.
    """
    if wall.foot_m <= EXACT:
        return ()
    told = wall.working("foot_m")
    foot = Working("length_m", told.rule, told.inputs, told.source)
    return (_seal(wall.mark, "bottom", wall.foot_m, passes, bench, foot),)


def count_strokes(length_m: float, bench: Bench) -> int:
    """Return the strokes of the bar for one pass along an edge; 0 with a sealer that runs on.

    Args:
        length_m: Length of the edge, m.
        bench: Sealer, length of its bar and overlap of two strokes.

    Source:
        Derived here: n strokes reach n x bar less (n - 1) x overlap.
    """
    if bench.sealer == "running":
        return 0
    advance_m = bench.bar_m - bench.bar_overlap_m
    return max(1, math.ceil((length_m - bench.bar_overlap_m) / advance_m - EXACT))


def seal_minutes(total_m: float, strokes: int, bench: Bench) -> float:
    """Return the bench time for one edge, minutes.

    Args:
        total_m: All passes along the edge, m.
        strokes: Strokes of the bar for all passes.
        bench: Sealer, its rate or the time of a stroke, and set-up for one edge.

    Source:
        Derived here; rate, stroke and set-up: the user's entry.
    """
    if bench.sealer == "running":
        return total_m / bench.seal_rate_m_min + bench.set_up_min
    return strokes * bench.stroke_s / 60 + bench.set_up_min


def _seal(
    mark: str, edge: Edge, length_m: float, passes: int, bench: Bench, length: Working
) -> Seal:
    total_m = length_m * passes
    strokes = passes * count_strokes(length_m, bench)
    return Seal(
        mark=mark,
        edge=edge,
        length_m=length_m,
        passes=passes,
        spacing_m=bench.spacing_m if passes > 1 else 0.0,
        total_m=total_m,
        strokes=strokes,
        minutes=seal_minutes(total_m, strokes, bench),
        workings=LaterWorkings(lambda: (length, *_seal_workings(length_m, passes, strokes, bench))),
    )


def _seal_workings(length_m: float, passes: int, strokes: int, bench: Bench) -> tuple[Working, ...]:
    edge, count = Term("edge", length_m, "m"), Term("passes", passes, "count")
    spacing = Term("between two seals", bench.spacing_m, "m_thin")
    return (
        Working("passes", "Seals along each edge, side by side.", (count,), ENTERED),
        Working("spacing_m", "From one seal to the next; none with one.", (spacing,), ENTERED),
        Working("total_m", "Length of the edge times passes.", (edge, count)),
        _stroke_working(edge, count, bench),
        _minute_working(Term("seal", length_m * passes, "m"), strokes, bench),
    )


def _stroke_working(edge: Term, count: Term, bench: Bench) -> Working:
    if bench.sealer == "running":
        return Working("strokes", "The sealer runs on and makes no strokes.", (count,), ENTERED)
    return Working(
        "strokes",
        "Edge less the overlap, over the bar less the overlap, rounded up, times passes.",
        (
            edge,
            Term("bar", bench.bar_m, "m"),
            Term("overlap", bench.bar_overlap_m, "m_thin"),
            count,
        ),
        f"{DERIVED}; bar and overlap: {ENTERED}",
    )


def _minute_working(total: Term, strokes: int, bench: Bench) -> Working:
    set_up = Term("set-up", bench.set_up_min, "min")
    if bench.sealer == "running":
        return Working(
            "minutes",
            "Seal over sealing rate, and set-up for the edge.",
            (total, Term("sealing rate", bench.seal_rate_m_min, "m/min"), set_up),
            f"{DERIVED}; rate and set-up: {ENTERED}",
        )
    return Working(
        "minutes",
        "Strokes times the time of one, and set-up for the edge.",
        (Term("strokes", strokes, "count"), Term("one stroke", bench.stroke_s, "s"), set_up),
        f"{DERIVED}; stroke and set-up: {ENTERED}",
    )
