"""Areas between arcs over one chord, for the air between two layers.

An arc over a chord c with rise h has the radius R = (c**2 / 4 + h**2) / (2 h) and the half angle
d = 2 atan(2 h / c). The area between chord and arc is R**2 (d - sin d cos d); for a shallow arc
that is close to 2/3 c h.
"""

import math


def segment_area(chord_m: float, rise_m: float) -> float:
    """Return the area between a chord and the arc over it, m2.

    Args:
        chord_m: Length of the chord, m, above zero.
        rise_m: Greatest distance of the arc from the chord, m, zero or more.

    Raises:
        ValueError: The chord is not above zero or the rise is negative.

    Source:
        Segment of a circle (textbook), see the module.
    """
    if chord_m <= 0 or rise_m < 0:
        raise ValueError(
            f"the chord must be above zero and the rise zero or more, not {chord_m!r} and "
            f"{rise_m!r} m"
        )
    if rise_m == 0:
        return 0.0
    radius_m = (chord_m**2 / 4 + rise_m**2) / (2 * rise_m)
    half_rad = 2 * math.atan2(2 * rise_m, chord_m)
    return radius_m**2 * (half_rad - math.sin(half_rad) * math.cos(half_rad))


def gap_area(chord_m: float, rise_m: float, gap_m: float) -> float:
    """Return the area between two arcs over one chord, m2.

    Args:
        chord_m: Length of the chord, m.
        rise_m: Rise of the inner arc, m; 0 when the inner layer hangs flat.
        gap_m: Between both arcs in the middle, m.

    Source:
        Derived here: the difference of two segments.
    """
    return segment_area(chord_m, rise_m + gap_m) - segment_area(chord_m, rise_m)
