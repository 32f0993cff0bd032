"""How film winds on a bar.

Seen from the end, film of thickness t and length L covers the area t L. Wound on a bar of radius
r0 the same area lies between the bar and the outside of the roll of radius r:

    pi (r**2 - r0**2) = t L    so    r = sqrt(r0**2 + t L / pi)

While L is wound the radius grows by t with each turn: turns = (r - r0) / t. Winding a little
film dL turns the bar by dL / r. Air caught between the turns is not counted.
"""

import math


def roll_radius(bar_radius_m: float, film_thickness_m: float, wound_length_m: float) -> float:
    """Return the radius of the roll after some film is wound on the bare bar, m.

    Args:
        bar_radius_m: Radius of the bare bar, m, above zero.
        film_thickness_m: All layers wound together, m, above zero.
        wound_length_m: Film on the bar, m, zero or more.

    Raises:
        ValueError: A size is not above zero or the length is negative.

    Source:
        Derived here: equal areas, see the module.
    """
    if bar_radius_m <= 0 or film_thickness_m <= 0 or wound_length_m < 0:
        raise ValueError(
            "bar radius and film thickness must be above zero and the wound length zero or more, "
            f"not {bar_radius_m!r}, {film_thickness_m!r} and {wound_length_m!r} m"
        )
    return math.sqrt(bar_radius_m**2 + film_thickness_m * wound_length_m / math.pi)


def wound_turns(length_m: float, low_radius_m: float, high_radius_m: float) -> float:
    """Return the turns of the bar that wind some film between two radii of the roll.

    The mean of both radii is exact, as the area of a ring is mean outline times width.

    Args:
        length_m: Film wound, m.
        low_radius_m: Radius of the roll before, m.
        high_radius_m: Radius of the roll after, m.

    Returns:
        Turns; 0 for no film.

    Source:
        Derived here: (r - r0) / t = L / (pi (r + r0)), see the module.
    """
    return length_m / (math.pi * (low_radius_m + high_radius_m))
