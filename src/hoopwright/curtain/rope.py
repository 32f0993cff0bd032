"""What keeps the wind from lifting a curtain: a rope that zigzags over it, or straight straps.

The rope runs from eyes in the hip board to eyes below, the straps straight down over the curtain.
In a storm the wind pulls the curtain outward against them. A leg takes the pull of its patch, one
step wide and as high as the curtain, spread evenly along the leg:

    w = share * pressure * step * height / leg

Under an even load a slack line hangs in a parabola. With its bow b in the middle the pull along
the chord is H = w leg**2 / (8 b), and at an eye, where the line meets the load of half a leg,

    T = sqrt(H**2 + (w leg / 2)**2)
"""

import math

ROPE_END_M = 0.6
STRAP_END_M = 0.3
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


def strap_count(length_m: float, step_m: float) -> int:
    """Return the straps of a curtain: one at each end, the others between no farther apart.

    Args:
        length_m: Length of the curtain, m, above zero.
        step_m: Wanted distance from strap to strap, m.

    Returns:
        Straps, at least 2. Each has an eye at the top and one at the bottom.

    Source:
        Derived here.
    """
    return rope_legs(length_m, step_m) + 1


def strap_rope(count: int, height_m: float) -> float:
    """Return the webbing or rope of all straps with their ends, m.

    Args:
        count: Straps.
        height_m: Between the rows of eyes, m.

    Source:
        Derived here; 0.3 m for knot or buckle and tail at each end of a strap: common practice, no
        published source.
    """
    return count * (height_m + 2 * STRAP_END_M)


def leg_pull(
    pressure_pa: float,
    share: float,
    step_m: float,
    height_m: float,
    leg_m: float,
    bow_m: float,
    legs_at_eye: int = 2,
) -> tuple[float, float]:
    """Return the pull in a leg of rope and what it pulls an eye straight out, both N.

    Args:
        pressure_pa: Wind pressure outward on the curtain, Pa.
        share: Share of it that the rope carries.
        step_m: Step of the rope or of the straps, m.
        height_m: Between the rows of eyes, m.
        leg_m: Length of a leg from eye to eye, m; of a strap its height.
        bow_m: How far a leg bows out in its middle under load, m, above zero.
        legs_at_eye: Legs that meet at an eye: 2 inside a zigzag, 1 at its ends and at a strap.

    Raises:
        ValueError: The leg does not bow: no finite pull holds a straight line.

    Source:
        Derived here: parabola under an even load, see the module.
    """
    if bow_m <= 0:
        raise ValueError(f"bow_m: a leg that bows {bow_m!r} m has no finite pull; enter above zero")
    load_n = share * pressure_pa * step_m * height_m
    along_n = load_n * leg_m / (8 * bow_m)
    return math.hypot(along_n, load_n / 2), load_n * legs_at_eye / 2
