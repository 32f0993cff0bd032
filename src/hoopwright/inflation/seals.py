"""The seals that close the edges of an inflated curtain.

A curtain that is a sheet of its own is sealed all round. In one sheet the curtain has no edge at
the hip: there the clamp of the hip board closes it. The edges of a roof are gripped in channel, and
so are both sides of a cross seam; none of them is sealed.
"""

from typing import Literal

from hoopwright.cover.cover import CurtainSpan
from hoopwright.farm import Bench
from hoopwright.farm.skin import Covering
from hoopwright.inflation.inflation import Seal
from hoopwright.quantity.working import DERIVED, ENTERED, Term, Working

Edge = Literal["top", "bottom", "front", "back"]

EDGES: dict[Covering, tuple[Edge, ...]] = {
    "roof_and_sides": ("top", "bottom", "front", "back"),
    "one_sheet": ("bottom", "front", "back"),
}


def seal_edges(
    span: CurtainSpan, covering: Covering, passes: int, bench: Bench
) -> tuple[Seal, ...]:
    """Return the seals of one inflated curtain, edge by edge.

    Args:
        span: The curtain.
        covering: How the skin is laid.
        passes: Seals along each edge.
        bench: How fast seals are made.

    Source:
        Each figure keeps its own working.
    """
    length_of: dict[Edge, float] = {
        "top": span.length_m,
        "bottom": span.length_m,
        "front": span.cut_height_m,
        "back": span.cut_height_m,
    }
    return tuple(_seal(span.mark, edge, length_of[edge], passes, bench) for edge in EDGES[covering])


def seal_minutes(total_m: float, bench: Bench) -> float:
    """Return the bench time for one edge, minutes.

    Args:
        total_m: All passes along the edge, m.
        bench: Sealing rate and set-up for one edge.

    Source:
        Derived here; rate and set-up: the user's entry.
    """
    return total_m / bench.seal_rate_m_min + bench.set_up_min


def _seal(mark: str, edge: Edge, length_m: float, passes: int, bench: Bench) -> Seal:
    total_m = length_m * passes
    count = Term("passes", passes, "count")
    rate = Term("sealing rate", bench.seal_rate_m_min, "m/min")
    set_up = Term("set-up", bench.set_up_min, "min")
    of = "length" if edge in ("top", "bottom") else "cut height"
    length = Term(f"{of} of the curtain", length_m, "m")
    total = Term("seal", total_m, "m")
    return Seal(
        mark=mark,
        edge=edge,
        length_m=length_m,
        passes=passes,
        total_m=total_m,
        minutes=seal_minutes(total_m, bench),
        workings=(
            Working("length_m", f"The {edge} edge is as long as the {of} of the sheet.", (length,)),
            Working("passes", "Seals along each edge, side by side.", (count,), ENTERED),
            Working("total_m", "Length of the edge times passes.", (length, count)),
            Working(
                "minutes",
                "Seal over sealing rate, and set-up for the edge.",
                (total, rate, set_up),
                f"{DERIVED}; rate and set-up: {ENTERED}",
            ),
        ),
    )
