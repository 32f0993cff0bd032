"""Lay shade cloth over the film: its size, its widths and what ties it down."""

import math
from typing import NamedTuple

from hoopwright.farm import Shade, Side
from hoopwright.outfit.outfit import Laid, ShadeLaid
from hoopwright.outfit.widths import count_widths
from hoopwright.quantity.working import (
    DERIVED,
    ENTERED,
    PRACTICE,
    LaterWorkings,
    Term,
    Working,
)
from hoopwright.survey.survey import Survey

NOTHING = 1e-9


class _Widths(NamedTuple):
    """Widths laid one way.

    Attributes:
        cloth_m: Cloth off the roll, m.
        widths: How many.
        laid: Which way.
        cut_m: Length of each, m.
    """

    cloth_m: float
    widths: int
    laid: Laid
    cut_m: float


def lay_shade(survey: Survey, sides: tuple[Side, Side], shade: Shade) -> ShadeLaid:
    """Return the shade cloth over a stretch of the tunnel.

    Args:
        survey: The frame as built.
        sides: Both sides as chosen.
        shade: The cloth as entered.

    Source:
        Each figure keeps its own working.
    """
    bows_m = survey.bows_m
    from_m = bows_m[(shade.from_bow or 1) - 1]
    to_m = bows_m[(shade.to_bow or len(bows_m)) - 1]
    over = _over(survey, sides, shade)
    along_m = to_m - from_m + 2 * shade.hang_m
    across_m = sum(float(term.value) for term in over) + 2 * shade.hang_m
    chosen = min(
        _lay("along", along_m, across_m, shade),
        _lay("across", across_m, along_m, shade),
    )
    edge_along = math.ceil(along_m / shade.tie_step_m - NOTHING)
    edge_across = math.ceil(across_m / shade.tie_step_m - NOTHING)
    seam = math.ceil(chosen.cut_m / shade.tie_step_m - NOTHING)
    laid = ShadeLaid(
        part=shade.part,
        from_m=from_m,
        to_m=to_m,
        along_m=along_m,
        across_m=across_m,
        laid=chosen.laid,
        widths=chosen.widths,
        cut_m=chosen.cut_m,
        cloth_m=chosen.cloth_m,
        area_m2=along_m * across_m,
        edge_ties=2 * (edge_along + edge_across),
        hooks=2 * edge_along,
        seam_ties=(chosen.widths - 1) * seam,
        floor_share=(to_m - from_m) / survey.length_m,
        shade_share=shade.shade_share,
        workings=LaterWorkings(
            lambda: (
                *_size_workings(laid, over, shade),
                *_width_workings(laid, shade),
                *_tie_workings(laid, shade),
                *_share_workings(laid, survey, shade),
            )
        ),
    )
    return laid


def _over(survey: Survey, sides: tuple[Side, Side], shade: Shade) -> tuple[Term, ...]:
    """Return what the size over the tunnel adds up from, hanging edges apart."""
    roof = Term("roof from hip to hip", survey.roof_girth_m, "m")
    if shade.over == "roof":
        return (roof,)
    return (roof, *(_down(n, survey, side) for n, side in enumerate(sides)))


def _down(n: int, survey: Survey, side: Side) -> Term:
    """Return how far the cloth goes down a side below the hip."""
    if side.kind == "fixed":
        return Term(f"{side.name} down to the baseboard", survey.side_m[n], "m")
    foot_m = survey.curve.position_at_height(side.shut_height_m, n)
    return Term(f"{side.name} down to the shut bar", abs(survey.hip_at_m[n] - foot_m), "m")


def _lay(laid: Laid, cut_m: float, over_m: float, shade: Shade) -> _Widths:
    widths = count_widths(over_m, shade.cloth_width_m, shade.lap_m)
    return _Widths(widths * cut_m, widths, laid, cut_m)


def _size_workings(laid: ShadeLaid, over: tuple[Term, ...], shade: Shade) -> tuple[Working, ...]:
    hang = Term("hangs past each edge", shade.hang_m, "m")
    first, last = Term("first bow", laid.from_m, "m"), Term("last bow", laid.to_m, "m")
    along, across = Term("along", laid.along_m, "m"), Term("across", laid.across_m, "m")
    return (
        Working("from_m", "Where its first bow stands.", (first,), ENTERED),
        Working("to_m", "Where its last bow stands.", (last,), ENTERED),
        Working(
            "along_m", "From bow to bow, and what hangs past at each end.", (first, last, hang)
        ),
        Working("across_m", "Along the bow, and what hangs past at each edge.", (*over, hang)),
        Working("area_m2", "Size along times size across.", (along, across)),
    )


def _width_workings(laid: ShadeLaid, shade: Shade) -> tuple[Working, ...]:
    widths = Term("widths", laid.widths, "count")
    covered_m = laid.across_m if laid.laid == "along" else laid.along_m
    return (
        Working(
            "widths",
            "Size to cover less one lap, over the width less one lap, rounded up. Laid "
            f"{laid.laid} the tunnel, which takes no more cloth than the other way.",
            (
                Term("to cover", covered_m, "m"),
                Term("width of the cloth", shade.cloth_width_m, "m"),
                Term("lap", shade.lap_m, "m"),
            ),
        ),
        Working("cut_m", f"Its size {laid.laid}.", (Term("size", laid.cut_m, "m"),)),
        Working(
            "cloth_m",
            "Widths times the length of each.",
            (widths, Term("length of each", laid.cut_m, "m")),
        ),
    )


def _tie_workings(laid: ShadeLaid, shade: Shade) -> tuple[Working, ...]:
    step = Term("from tie to tie", shade.tie_step_m, "m")
    along, across = Term("along", laid.along_m, "m"), Term("across", laid.across_m, "m")
    return (
        Working(
            "edge_ties",
            "Each edge over the step, rounded up; a tie in a corner serves both.",
            (along, across, step),
            PRACTICE,
        ),
        Working("hooks", "One for each tie along the two sides.", (along, step), PRACTICE),
        Working(
            "seam_ties",
            "The length of each lap over the step, rounded up.",
            (
                Term("laps", laid.widths - 1, "count"),
                Term("length of each", laid.cut_m, "m"),
                step,
            ),
            PRACTICE,
        ),
    )


def _share_workings(laid: ShadeLaid, survey: Survey, shade: Shade) -> tuple[Working, ...]:
    return (
        Working(
            "floor_share",
            "Bows under it over the length of the tunnel.",
            (
                Term("under it", laid.to_m - laid.from_m, "m"),
                Term("tunnel", survey.length_m, "m"),
            ),
            DERIVED,
        ),
        Working(
            "shade_share",
            "What the cloth takes of the light, as its seller states it.",
            (Term("shade", shade.shade_share, "share"),),
            ENTERED,
        ),
    )
