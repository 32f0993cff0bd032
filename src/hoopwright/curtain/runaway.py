"""What happens when the handle is let go at the top: a warning, not a prediction.

Nothing rubs, so all energy of the raised curtain becomes speed. With v the speed of the bar, it
turns at v / r and the crank `ratio` times faster:

    E = (m v**2 + (I_bar + I_crank ratio**2) (v / r)**2) / 2

Film is left out of what moves, which makes the speed higher.
"""

import math

from hoopwright.farm.drive import Drive


def runaway_speed(
    energy_j: float, falling_kg: float, bar_kg_m2: float, crank_kg_m2: float, radius_m: float
) -> float:
    """Return the speed at the bottom when nothing holds or rubs, m/s.

    Args:
        energy_j: Energy of the raised curtain, J.
        falling_kg: What falls, without film, kg.
        bar_kg_m2: Inertia of the bar about its axis, kg m2.
        crank_kg_m2: Inertia of the crank as felt at the bar, so times the ratio squared, kg m2.
        radius_m: Radius of the roll at the bottom, or of the drum, m.

    Source:
        Derived here, see the module.
    """
    return math.sqrt(2 * energy_j / (falling_kg + (bar_kg_m2 + crank_kg_m2) / radius_m**2))


def handle_speed(speed_m_s: float, radius_m: float, drive: Drive) -> float:
    """Return the speed of the handle while the curtain moves, m/s.

    Args:
        speed_m_s: Speed of the bar or of the lines, m/s.
        radius_m: Radius of the roll or of the drum, m.
        drive: What the handle belongs to.

    Source:
        Derived here: one turning.
    """
    return speed_m_s / radius_m * drive.ratio * drive.arm_m
