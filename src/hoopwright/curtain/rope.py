"""The wind rope that zigzags over a curtain, from eyes in the hip board to eyes below."""

import math

ROPE_END_M = 0.6
ROUNDING = 1e-9


def rope_legs(length_m: float, step_m: float) -> int:
    """Return the legs of the zigzag: the fewest whose step is not longer than wanted.

    Args:
        length_m: Length of the curtain, m, above zero.
        step_m: Wanted distance along the side from a top eye to the next bottom eye, m.

    Returns:
        Legs, at least 1. There is one eye more than legs.

    Source:
        Derived here.
    """
    return max(1, math.ceil(length_m / step_m - ROUNDING))


def zigzag_rope(length_m: float, height_m: float, legs: int) -> float:
    """Return the rope of one zigzag with a tail and a knot at each end, m.

    Args:
        length_m: Length of the curtain, m.
        height_m: Between the rows of eyes, m.
        legs: Legs of the zigzag.

    Source:
        Derived here; 0.6 m for tail and knot at each end: common practice, no published source.
    """
    return legs * math.hypot(length_m / legs, height_m) + 2 * ROPE_END_M
