"""How far a bow stands from its ridge line at a height, for the least that a girth can be."""

import math
from itertools import pairwise

from hoopwright.farm.measured_bow import MeasuredBow
from hoopwright.farm.profile import GothicBow, Profile, RoundBow, StraightRafters


def half_width(profile: Profile, height_m: float, side: int) -> float:
    """Return the distance across from the ridge to the bow at a height, never too much, m.

    Args:
        profile: Shape of the bow.
        height_m: Above the ground line, m.
        side: 0 for the first side, 1 for the second.

    Source:
        Circle and line geometry; over a bend, and between measured points, the chord, which lies
        inside the bow.
    """
    if isinstance(profile, MeasuredBow):
        return _measured(profile, height_m, side)
    if height_m <= profile.leg_height_m and not isinstance(profile, StraightRafters):
        return profile.span_m / 2
    if isinstance(profile, RoundBow):
        return _round(profile, height_m)
    if isinstance(profile, GothicBow):
        return _gothic(profile, height_m)
    return _rafters(profile, height_m)


def _round(bow: RoundBow, height_m: float) -> float:
    half_m, rise_m = bow.span_m / 2, bow.peak_height_m - bow.leg_height_m
    radius_m = (half_m**2 + rise_m**2) / (2 * rise_m)
    up_m = height_m - (bow.peak_height_m - radius_m)
    return math.sqrt(max(0.0, radius_m**2 - up_m**2))


def _gothic(bow: GothicBow, height_m: float) -> float:
    half_m, rise_m = bow.span_m / 2, bow.peak_height_m - bow.leg_height_m
    chord_m = math.hypot(half_m, rise_m)
    radius_m = bow.arc_radius_m if bow.arc_radius_m is not None else chord_m**2 / (2 * half_m)
    turn_rad = math.asin(min(1.0, chord_m / (2 * radius_m)))
    slope_rad = math.atan2(rise_m, half_m) + turn_rad
    centre_x_m = half_m - radius_m * math.sin(slope_rad)
    centre_y_m = bow.leg_height_m - radius_m * math.cos(slope_rad)
    across_m = math.sqrt(max(0.0, radius_m**2 - (height_m - centre_y_m) ** 2))
    return max(0.0, centre_x_m + across_m)


def _rafters(bow: StraightRafters, height_m: float) -> float:
    half_m, rise_m = bow.span_m / 2, bow.peak_height_m - bow.leg_height_m
    pitch_rad = math.atan2(rise_m, half_m)
    bend_m = bow.corner_radius_m * math.tan((math.pi / 2 - pitch_rad) / 2)
    corners = (
        (half_m, 0.0),
        (half_m, bow.leg_height_m - bend_m),
        (
            half_m - bend_m * math.cos(pitch_rad),
            bow.leg_height_m + bend_m * math.sin(pitch_rad),
        ),
        (0.0, bow.peak_height_m),
    )
    return _between(corners, height_m)


def _measured(bow: MeasuredBow, height_m: float, side: int) -> float:
    spots = bow.spots
    top = max(range(len(spots)), key=lambda n: spots[n][1])
    ridge_x_m = spots[top][0]
    half = spots[: top + 1] if side == 0 else tuple(reversed(spots[top:]))
    return _between(tuple((abs(x - ridge_x_m), y) for x, y in half), height_m)


def _between(rising: tuple[tuple[float, float], ...], height_m: float) -> float:
    """Return the distance across where a chain that rises reaches a height, m."""
    for (x0, y0), (x1, y1) in pairwise(rising):
        if y0 <= height_m <= y1 and y1 > y0:
            return x0 + (x1 - x0) * (height_m - y0) / (y1 - y0)
    return 0.0
