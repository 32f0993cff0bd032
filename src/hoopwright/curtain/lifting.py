"""What it takes to lift a curtain on its bar, and what the bar does under it.

The film leaves the roll as a tangent and the weight acts on the axis, so the lever arm is the
radius of the roll. That holds for a wall that stands upright; on a bow that leans in the bar also
rubs. Rope, stiff film and a leaning bow are covered by one share of rubbing, which is an entry.
"""

from hoopwright.quantity.factors import G_M_S2


def hanging_weight(line_mass_kg_m: float, length_m: float, extra_mass_kg: float) -> float:
    """Return what hangs on the film of a curtain, N.

    Args:
        line_mass_kg_m: Bar, cap and the film wound on them, kg for each metre of bar.
        length_m: Length of the bar, m.
        extra_mass_kg: What the bar carries of crank and joint, kg.

    Source:
        Derived here: mass times standard gravity.
    """
    return G_M_S2 * (line_mass_kg_m * length_m + extra_mass_kg)


def winding_torque(weight_n: float, radius_m: float, rubbing_share: float) -> float:
    """Return the torque at the cranked end of the bar, N m.

    Args:
        weight_n: What hangs on the film, N.
        radius_m: Radius of the roll, m.
        rubbing_share: Added for rubbing, a share of the torque.

    Source:
        Derived here: weight times lever arm.
    """
    return weight_n * radius_m * (1 + rubbing_share)


def hand_force(torque_nm: float, arm_m: float, ratio: float, efficiency: float) -> float:
    """Return the force at the handle of the crank, N.

    Args:
        torque_nm: Torque at the bar, N m.
        arm_m: From axle to hand grip, m, above zero.
        ratio: Turns of the handle for one turn of the bar, above zero.
        efficiency: Share of the hand's work that reaches the bar, above 0 and up to 1.

    Raises:
        ValueError: Arm, ratio or efficiency is outside its limits.

    Source:
        Derived here: work of the hand times efficiency is work at the bar.
    """
    if arm_m <= 0 or ratio <= 0 or not 0 < efficiency <= 1:
        raise ValueError(
            "arm and ratio must be above zero and the efficiency above 0 and up to 1, "
            f"not {arm_m!r} m, {ratio!r} and {efficiency!r}"
        )
    return torque_nm / (arm_m * ratio * efficiency)


def longest_by_force(torque_limit_nm: float, line_torque_n: float, extra_torque_nm: float) -> float:
    """Return the longest bar that a torque can lift, m; 0 when the crank alone is too heavy.

    Args:
        torque_limit_nm: Torque at the bar that the hand manages, N m.
        line_torque_n: Torque that each metre of the bar takes, N m/m.
        extra_torque_nm: Torque for crank and joint carried by the bar, N m.

    Source:
        Derived here: `winding_torque` solved for the length.
    """
    return max(0.0, (torque_limit_nm - extra_torque_nm) / line_torque_n)


def raised_energy(shut_mass_kg: float, hanging_film_kg: float, climb_m: float) -> float:
    """Return the energy kept in a raised curtain, J: an upper bound of what a let-go handle gets.

    Args:
        shut_mass_kg: All that climbs the whole way: bar, crank and the film on the bar when the
            climb begins, kg.
        hanging_film_kg: Film that hangs between hip board and bar then, kg. It climbs half as far
            on average.
        climb_m: How far the bar climbs, m.

    Source:
        Derived here: weight times height.
    """
    return G_M_S2 * climb_m * (shut_mass_kg + hanging_film_kg / 2)
