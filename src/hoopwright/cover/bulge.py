"""How much longer the outer layer must be so that air can lift it off the inner one.

Both layers are held along the same two lines. Under air the outer one stands as a circle arc
over the chord between them. Half the arc's angle is twice the angle whose tangent is rise over
half the chord, so the arc follows from chord and rise alone.
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


def bulge_extra(chord_m: float, rise_m: float, gap_m: float) -> float:
    """Return what the outer layer needs more than the inner one.

    Args:
        chord_m: Straight distance between the lines that hold both layers, m.
        rise_m: What the inner layer rises above the chord, m; 0 when it lies flat.
        gap_m: Air wanted between the layers in the middle, m.

    Returns:
        Extra width of the outer layer, m.

    Source:
        Derived here: the arc raised by the gap less the arc at rest, both as circle arcs.
    """
    return arc_over_chord(chord_m, rise_m + gap_m) - arc_over_chord(chord_m, rise_m)
