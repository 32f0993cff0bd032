"""The wind pressure of a storm that the wind rope is looked at with.

For reference only. It is the velocity pressure of a gust, without the shape of the tunnel, and no
design of rope, eyes or frame: that follows the local code.
"""

import math
from typing import NamedTuple

from hoopwright.farm.weather import Exposure
from hoopwright.quantity.factors import FOOT_M

LEAST_HEIGHT_M = 15 * FOOT_M
DIRECTION_SHARE = 0.85
PRESSURE_KG_M3 = 0.613
"""Half the density of air at sea level and 15 degrees Celsius, as the standard rounds it."""


class _Ground(NamedTuple):
    """How the wind grows with height over a kind of ground.

    Attributes:
        top_m: Height above which it no longer grows, m.
        power: Exponent of the power law, upside down.
    """

    top_m: float
    power: float


GROUND: dict[Exposure, _Ground] = {
    "B": _Ground(1200 * FOOT_M, 7.0),
    "C": _Ground(900 * FOOT_M, 9.5),
    "D": _Ground(700 * FOOT_M, 11.5),
}


def exposure_factor(height_m: float, exposure: Exposure) -> float:
    """Return the share of the reference pressure at a height over a kind of ground.

    Args:
        height_m: Height above the ground, m; the lowest 15 ft count as 15 ft.
        exposure: Ground around.

    Source:
        ASCE 7-05 to 7-16, velocity pressure exposure coefficient Kz = 2.01 (z / zg)**(2 / alpha),
        constants as in reproductions of the standard. ASCE 7-22 has other constants.
    """
    ground = GROUND[exposure]
    height_m = min(max(height_m, LEAST_HEIGHT_M), ground.top_m)
    return 2.01 * math.pow(height_m / ground.top_m, 2 / ground.power)


def storm_pressure(gust_m_s: float, height_m: float, exposure: Exposure) -> float:
    """Return the velocity pressure of a gust, Pa.

    Args:
        gust_m_s: Three-second gust 10 m above open ground, m/s.
        height_m: Height above the ground, m.
        exposure: Ground around.

    Source:
        ASCE 7-05 to 7-16: q = 0.613 Kz Kzt Kd V**2 with Kzt 1 (no hill) and Kd 0.85; for reference
        only.
    """
    factor = exposure_factor(height_m, exposure) * DIRECTION_SHARE
    return PRESSURE_KG_M3 * factor * gust_m_s**2
