"""Round bows from two lengths taken on their bend."""

import math
from dataclasses import dataclass

from hoopwright.farm.entry_error import EntryError
from hoopwright.farm.profile import RoundBow
from hoopwright.quantity.working import Explained, Term, Working
from hoopwright.survey.tapes import string_radius, tape_radius

CIRCLE = "geometry of the circle"


@dataclass(frozen=True, slots=True, kw_only=True)
class TapedBow(Explained):
    """A round bow from two lengths taken on its bend.

    Attributes:
        bow: The bow.
        radius_m: Radius of the bend, m.
        rise_m: Ridge above the tops of the legs, m.
    """

    bow: RoundBow
    radius_m: float
    rise_m: float


def bow_from_string(
    span_m: float, leg_height_m: float, chord_m: float, offset_m: float
) -> TapedBow:
    """Return the round bow whose bend has the offset under a string at its middle.

    Args:
        span_m: From foot to foot, tube centre to tube centre, m.
        leg_height_m: Straight part below the bend, m.
        chord_m: Length of the string, from tube to tube, m.
        offset_m: From the middle of the string to the tube, m.

    Raises:
        ValueError: No such bow stands over the span; the field is named.

    Source:
        Circle geometry: R = c2 / 8m + m / 2, rise = R - sqrt(R2 - (S / 2)2).
    """
    radius_m = string_radius(chord_m, offset_m)
    if 2 * radius_m < span_m:
        raise EntryError(
            "offset_m",
            "a bend of {radius} radius is too tight for a span of {span}; measure string and "
            "offset again, or correct the span",
            radius=(radius_m, "m"),
            span=(span_m, "m"),
        )
    inputs = (
        Term("string", chord_m, "m"),
        Term("offset at its middle", offset_m, "m"),
        Term("span", span_m, "m"),
    )
    rule = "R = c² / 8m + m / 2; rise = R - √(R² - (S / 2)²)"
    rise_m = radius_m - math.sqrt(radius_m**2 - (span_m / 2) ** 2)
    return _taped(span_m, leg_height_m, radius_m, rise_m, (rule, inputs))


def bow_from_tape(leg_height_m: float, along_m: float, chord_m: float) -> TapedBow:
    """Return the round bow whose whole bend is as long, and as wide, as the tapes read.

    Args:
        leg_height_m: Straight part below the bend, m.
        along_m: Along the tube from the top of one leg to the top of the other, m.
        chord_m: Straight across between the same places, m.

    Raises:
        ValueError: There is no such bend; the field is named.

    Source:
        Circle geometry: sin(u) / u = c / L, R = L / 2u, rise = R (1 - cos u).
    """
    radius_m = tape_radius(along_m, chord_m)
    rise_m = radius_m * (1 - math.cos(along_m / (2 * radius_m)))
    inputs = (Term("along the tube", along_m, "m"), Term("straight across", chord_m, "m"))
    rule = "sin u / u = across / along, found by halving; R = along / 2u; rise = R (1 - cos u)"
    return _taped(chord_m, leg_height_m, radius_m, rise_m, (rule, inputs))


def _taped(
    span_m: float,
    leg_height_m: float,
    radius_m: float,
    rise_m: float,
    told: tuple[str, tuple[Term, ...]],
) -> TapedBow:
    bow = RoundBow(span_m=span_m, leg_height_m=leg_height_m, peak_height_m=leg_height_m + rise_m)
    workings = tuple(Working(name, *told, CIRCLE) for name in ("radius_m", "rise_m"))
    return TapedBow(bow=bow, radius_m=radius_m, rise_m=rise_m, workings=workings)
