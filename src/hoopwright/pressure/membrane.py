"""How a film bows, pulls, stretches and shrinks between the lines that hold it.

Between two lines a distance c apart (the chord: two bows, or two seal lines) a film under even
pressure p stands as a circle arc of rise h and radius R = (c**2 / 4 + h**2) / (2 h). Half its
angle is 2 atan(2 h / c). A strip one metre wide is pulled with T = p R all along.

**Stretch.** With slack e0 and a strain from the pull, arc / c = (1 + e0) (1 + p R / (E t)). The
left grows with h, the right falls, so there is one rise; shallow and without slack it is
c (3 p c / (64 E t))**(1/3). Elastic, new, pulled one way; creep makes it larger with time.

Source:
    Circle geometry; T = p R (Laplace; any text on thin shells); the rest is derived here.
"""

import math

from hoopwright.survey.arc import arc_over_chord

# Growth of steel per kelvin, as a share of its length (textbook).
STEEL_1_K = 1.2e-5
# A half circle is the most a film bows between two lines; its arc is pi / 2 of the chord.
MOST_SLACK = math.pi / 2 - 1

_ROUNDS = 80
_CLOSE = 1e-13


def billow_radius(chord_m: float, rise_m: float) -> float:
    """Return the radius of a bowed film, m; infinite when it lies flat.

    Args:
        chord_m: Between the lines that hold it, m, above zero.
        rise_m: Greatest distance from the chord, m, from zero to half the chord.

    Raises:
        ValueError: A size is out of its range.

    Source:
        Circle geometry.
    """
    _check_bow(chord_m, rise_m)
    return math.inf if rise_m == 0 else (chord_m**2 / 4 + rise_m**2) / (2 * rise_m)


def billow_rise(chord_m: float, slack_share: float) -> float:
    """Return how far a film with slack bows when it hardly stretches, m.

    Args:
        chord_m: Between the lines that hold it, m, above zero.
        slack_share: How much longer than the chord it is, from 0 to 0.57.

    Raises:
        ValueError: A size is out of its range.

    Source:
        Circle geometry, solved by Newton's steps, halving where one leaves the hem.
    """
    return _rise(chord_m, 0.0, slack_share)


def film_pull(pressure_pa: float, radius_m: float) -> float:
    """Return the pull in a strip one metre wide, N/m.

    Args:
        pressure_pa: Pressure difference, Pa, zero or more.
        radius_m: Radius of the bow, m, above zero.

    Raises:
        ValueError: A figure is out of its range, or the film is flat and cannot carry pressure.

    Source:
        T = p R, see the module.
    """
    if not 0 <= pressure_pa < math.inf:
        raise ValueError(f"pressure_pa must be zero or more, not {pressure_pa!r} Pa. Mend it.")
    if not 0 < radius_m < math.inf:
        raise ValueError(
            f"radius_m must be above zero and finite, not {radius_m!r} m. A flat film carries no "
            "pressure; give it a rise."
        )
    return pressure_pa * radius_m


def film_stress(pull_n_m: float, thickness_m: float) -> float:
    """Return the stress in a film, Pa.

    Args:
        pull_n_m: Pull in a strip one metre wide, N/m.
        thickness_m: Thickness of the layer, m, above zero.

    Raises:
        ValueError: The thickness is not above zero.

    Source:
        Force over area.
    """
    _check_above_zero("thickness_m", thickness_m, "Enter the thickness of one layer.")
    return pull_n_m / thickness_m


def stretched_rise(
    chord_m: float,
    pressure_pa: float,
    thickness_m: float,
    modulus_pa: float,
    slack_share: float = 0.0,
) -> float:
    """Return the rise of a film that stretches under pressure, m.

    Args:
        chord_m: Between the lines that hold it, m, above zero.
        pressure_pa: Pressure difference, Pa, zero or more.
        thickness_m: Thickness of the layer, m, above zero.
        modulus_pa: Modulus of the film, Pa, above zero.
        slack_share: How much longer than the chord it is without pull, from 0 to 0.57.

    Returns:
        Rise, at most half the chord.

    Raises:
        ValueError: A figure is out of its range, or the film would bow past a half circle.

    Source:
        See the module; solved like `billow_rise`.
    """
    _check_above_zero("thickness_m", thickness_m, "Enter the thickness of one layer.")
    _check_above_zero("modulus_pa", modulus_pa, "Enter the modulus of the film.")
    if not 0 <= pressure_pa < math.inf:
        raise ValueError(f"pressure_pa must be zero or more, not {pressure_pa!r} Pa. Mend it.")
    return _rise(chord_m, pressure_pa / (modulus_pa * thickness_m), slack_share)


def held_pull(
    pull_n_m: float,
    change_k: float,
    thickness_m: float,
    modulus_pa: float,
    film_1_k: float,
    frame_1_k: float,
) -> float:
    """Return the pull in a film held at both ends after a change of temperature, N/m.

    An upper bound in the cold: polyethylene relaxes. In the warmth it goes slack, never below
    zero; a film cannot push.

    Args:
        pull_n_m: Pull when it was put on, N/m, zero or more.
        change_k: Temperature less that when it was put on, K; negative when colder.
        thickness_m: Thickness of the layer, m, above zero.
        modulus_pa: Modulus of the film, Pa, above zero.
        film_1_k: Growth of the film, 1/K.
        frame_1_k: Growth of the frame, 1/K.

    Raises:
        ValueError: A figure is out of its range.

    Source:
        Strain held back times modulus and thickness (textbook).
    """
    _check_above_zero("thickness_m", thickness_m, "Enter the thickness of one layer.")
    _check_above_zero("modulus_pa", modulus_pa, "Enter the modulus of the film.")
    held_back = modulus_pa * thickness_m * (film_1_k - frame_1_k) * change_k
    return max(0.0, pull_n_m - held_back)


def slack_to_leave(
    installed_k: float,
    coldest_k: float,
    film_1_k: float,
    frame_1_k: float,
) -> float:
    """Return the slack with which a film is just taut in the coldest hour, as a share.

    Args:
        installed_k: Temperature when it is put on, K.
        coldest_k: Temperature of the coldest hour, K.
        film_1_k: Growth of the film, 1/K.
        frame_1_k: Growth of the frame, 1/K.

    Returns:
        Share of the length, never below zero.

    Source:
        Thermal expansion (textbook); the difference of both.
    """
    return max(0.0, (film_1_k - frame_1_k) * (installed_k - coldest_k))


def _rise(chord_m: float, strain_1_m: float, slack_share: float) -> float:
    """Return the rise at which the arc is as long as the film pulled, m.

    Args:
        chord_m: Between the lines that hold it, m.
        strain_1_m: Strain for each metre of radius: pressure over modulus and thickness, 1/m.
        slack_share: How much longer than the chord the film is without pull.
    """
    _check_above_zero("chord_m", chord_m, "Enter the distance between the lines that hold it.")
    if not 0 <= slack_share <= MOST_SLACK:
        raise ValueError(
            f"slack_share must be from 0 to {MOST_SLACK:.2f}, not {slack_share!r}. More would "
            "hang past a half circle; take slack out."
        )
    if strain_1_m == 0 and slack_share == 0:
        return 0.0

    def spare(rise_m: float) -> float:
        pulled = strain_1_m * (chord_m**2 / 4 + rise_m**2) / (2 * rise_m)
        return (1 + slack_share) * (1 + pulled) * chord_m - arc_over_chord(chord_m, rise_m)

    low, high = 0.0, chord_m / 2
    if spare(high) > 1e-12 * chord_m:
        raise ValueError(
            "pressure_pa: the film would bow past a half circle. Lower the pressure, take out "
            "slack or choose a thicker film."
        )
    shallow = max(math.cbrt(3 * strain_1_m * chord_m / 64), math.sqrt(3 * slack_share / 8))
    rise_m = min(shallow * chord_m, high)
    for _ in range(_ROUNDS):
        left = spare(rise_m)
        if left > 0:
            low = rise_m
        else:
            high = rise_m
        fall = _fall(chord_m, strain_1_m * (1 + slack_share), rise_m)
        there = rise_m + left / fall if fall > 0 else high
        if abs(there - rise_m) <= _CLOSE * chord_m:
            break
        rise_m = there if low < there < high else (low + high) / 2
    return rise_m


def _fall(chord_m: float, strain_1_m: float, rise_m: float) -> float:
    """Return how fast the spare length falls as the film rises: the slope of `spare`, negated."""
    growth = 0.5 - chord_m**2 / (8 * rise_m**2)
    arc_growth = 4 * growth * math.atan2(2 * rise_m, chord_m) + chord_m / rise_m
    return arc_growth - strain_1_m * chord_m * growth


def _check_bow(chord_m: float, rise_m: float) -> None:
    _check_above_zero("chord_m", chord_m, "Enter the distance between the lines that hold it.")
    if not 0 <= rise_m <= chord_m / 2:
        raise ValueError(
            f"rise_m must be from 0 to half the chord, not {rise_m!r} m over {chord_m!r} m. More "
            "would hang past a half circle."
        )


def _check_above_zero(field: str, figure: float, mend: str) -> None:
    """Refuse a figure that is not above zero."""
    if not 0 < figure < math.inf:
        raise ValueError(f"{field} must be above zero, not {figure!r}. {mend}")
