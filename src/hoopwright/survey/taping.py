"""Put the readings of a frame together: girths, heights, lengths, and what a bent frame costs."""

import math

from hoopwright.farm import Frame
from hoopwright.farm.tape import Tape
from hoopwright.quantity.working import DERIVED, ENTERED, LaterWorkings, Term, Working
from hoopwright.survey.bent import Skew, deepest_dip, dip_cost, find_skew, lean_costs
from hoopwright.survey.bow_curve import BowCurve
from hoopwright.survey.girths import girth_spread
from hoopwright.survey.heights import Along, Spots, along_side, side_line
from hoopwright.survey.taped import Taped

SQUARED = f"{DERIVED}: s = (d1^2 - d2^2) / 4 l of sides of one length l"


def tape_frame(frame: Frame, curve: BowCurve, bows_m: Spots) -> tuple[Taped, tuple[Along, Along]]:
    """Return the readings put together, and where the boards lie on each bow.

    Args:
        frame: The frame as entered.
        curve: Outside of a bow by its profile.
        bows_m: Where the bows stand, m.
    """
    tape = frame.tape
    lines = (side_line(frame, bows_m, 0), side_line(frame, bows_m, 1))
    along = (along_side(curve, lines[0], 0), along_side(curve, lines[1], 1))
    length_m, length_line = max(
        ((length_m, line) for line, length_m in _lengths(tape)), default=(bows_m[-1], "")
    )
    skew = find_skew(tape, length_m)
    leans_m = lean_costs(tape)
    dip_m = deepest_dip(tape)
    chord_m, rise_m = _roof_chord(curve, along)
    taped = Taped(
        hips=girth_spread(tape, "hips", along),
        baseboards=girth_spread(tape, "baseboards", along),
        lines=lines,
        length_m=length_m,
        length_line=length_line,
        skew_m=None if skew is None else skew.offset_m,
        skew_cost_m=0.0 if skew is None else skew.cost_m,
        lean_costs_m=leans_m,
        lean_cost_m=sum(leans_m),
        dip_m=dip_m,
        dip_cost_m=dip_cost(chord_m, rise_m, dip_m),
        workings=LaterWorkings(
            lambda: (
                _length_working(tape, bows_m[-1]),
                *_skew_workings(tape, skew),
                *_lean_workings(tape, leans_m),
                *_dip_workings(tape, chord_m, rise_m, dip_m),
            )
        ),
    )
    return taped, along


def _roof_chord(curve: BowCurve, along: tuple[Along, Along]) -> tuple[float, float]:
    """Return the chord from hip to hip at the front and the rise of the ridge over it, m."""
    (x0, y0), (x1, y1) = (curve.point_at(side.hips_m[0]) for side in along)
    x, y = curve.point_at(curve.ridge_m)
    chord_m = math.hypot(x1 - x0, y1 - y0)
    rise_m = ((x1 - x0) * (y - y0) - (x - x0) * (y1 - y0)) / chord_m if chord_m else 0.0
    return chord_m, max(0.0, rise_m)


def _lengths(tape: Tape) -> list[tuple[str, float]]:
    """Return the lengths read along both sides, each with the words for its line."""
    lines = [
        f"{board} of the {side} side"
        for board in ("hip", "baseboard")
        for side in ("first", "second")
    ]
    values_m = (*tape.hip_lengths_m, *tape.base_lengths_m)
    return [(line, x) for line, x in zip(lines, values_m, strict=True) if x is not None]


def _length_working(tape: Tape, listed_m: float) -> Working:
    read = [Term(line, value_m, "m") for line, value_m in _lengths(tape)]
    if not read:
        return Working(
            "length_m",
            "No length along a side was read: the position of the last bow from the first.",
            (Term("last bow", listed_m, "m"),),
            ENTERED,
        )
    return Working(
        "length_m", "The longest of the lengths read along both sides.", tuple(read), ENTERED
    )


def _skew_workings(tape: Tape, skew: Skew | None) -> tuple[Working, ...]:
    read = tuple(
        Term(f"diagonal from the front corner of the {name} side", value_m, "m")
        for name, value_m in zip(("first", "second"), tape.diagonals_m, strict=True)
        if value_m is not None
    )
    if skew is None:
        told = "Both diagonals are needed to tell; without them the ends are taken as square."
        return (Working("skew_m", told, read), Working("skew_cost_m", told, read))
    sides = tuple(
        Term(f"length of the {name} side", length_m, "m")
        for name, length_m in zip(("first", "second"), skew.sides_m, strict=True)
    )
    return (
        Working(
            "skew_m",
            "Squares of both diagonals, one less the other, over twice the two sides together: "
            "how far the second side runs ahead of the first, at the front and at the back on the "
            "average.",
            (*read, *sides),
            SQUARED,
        ),
        Working(
            "skew_cost_m",
            "A sheet cut square must reach from the foremost to the hindmost corner: what that is "
            "longer than the longer side.",
            (Term("second side ahead", skew.offset_m, "m"), *sides),
            DERIVED,
        ),
    )


def _lean_workings(tape: Tape, costs_m: tuple[float, float]) -> tuple[Working, ...]:
    ends = ("front", "back")
    read = tuple(
        Term(f"{name} ridge outside its feet", lean_m, "m")
        for name, lean_m in zip(ends, tape.leans_m, strict=True)
        if lean_m is not None
    )
    each = tuple(
        Term(f"{name} end", cost_m, "m") for name, cost_m in zip(ends, costs_m, strict=True)
    )
    return (
        Working(
            "lean_costs_m",
            "A sheet cut square must reach as far as the ridge of an end bow that leans out; one "
            "that leans in costs nothing, and one not read is taken as plumb. Counted whole, "
            "though a length read at the hips has part of it in it.",
            read,
            DERIVED,
        ),
        Working("lean_cost_m", "Both ends together.", each),
    )


def _dip_workings(tape: Tape, chord_m: float, rise_m: float, dip_m: float) -> tuple[Working, ...]:
    read = tuple(
        Term(f"bow {r.bow}, ridge below the string", r.dip_m, "m")
        for r in tape.bows
        if r.dip_m is not None
    )
    return (
        Working(
            "dip_m", "The deepest of the dips read; nothing where none was read.", read, ENTERED
        ),
        Working(
            "dip_cost_m",
            "Arc over the line from hip to hip at the height of the ridge, less the arc with the "
            "ridge lower by the dip. It is told, and not taken off any width: other bows stand "
            "higher.",
            (
                Term("hip to hip", chord_m, "m"),
                Term("ridge above that line", rise_m, "m"),
                Term("dip", dip_m, "m"),
            ),
            f"{DERIVED}; both as circle arcs",
        ),
    )
