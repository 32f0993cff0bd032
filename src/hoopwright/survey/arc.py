"""The length of a flat arc over its chord.

Half the arc's angle is twice the angle whose tangent is rise over half the chord, so the arc
follows from chord and rise alone.
"""

import math

# An arc this flat is its chord to the last digit, and its radius would pass all bounds.
FLAT = 1e-9


def arc_over_chord(chord_m: float, rise_m: float) -> float:
    """Return the length of a circle arc over a chord.

    Args:
        chord_m: Straight distance between the ends, m, above zero.
        rise_m: Greatest distance of the arc from the chord, m, zero or more.

    Returns:
        Length along the arc, m; the chord itself when nothing rises.

    Source:
        Circle geometry: R = (c2/4 + h2) / 2h, arc = 4 R atan(2h / c).
    """
    if rise_m <= FLAT * chord_m:
        return chord_m
    radius_m = (chord_m**2 / 4 + rise_m**2) / (2 * rise_m)
    return 4 * radius_m * math.atan2(2 * rise_m, chord_m)
