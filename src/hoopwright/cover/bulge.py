"""How much longer the outer layer must be so that air can lift it off the inner one.

Both layers are held along the same two lines. Under air the outer one stands as a circle arc
over the chord between them.
"""

from hoopwright.survey.arc import arc_over_chord


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
