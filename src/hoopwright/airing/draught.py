"""How wind and warmth drive air through open sides.

Wind blows in through one side and out through the other. What comes in is the wind over the
opening, less what the edges of the opening and its slant to the wind take away; the lesser side
decides, and with one side shut nothing blows through.

Warmth works through an open side alone: warm air leaves at the top of the opening while fresh air
comes in below. At the neutral level inside and outside press alike; at a height z from it the
speed is sqrt(2 g z (Ti - To) / Ti). Both sides of a tunnel share one neutral level. Over a width W
between the heights a and b above it the outflow is

    Cd W sqrt(2 g (Ti - To) / Ti) (2/3) (b**1.5 - a**1.5)

and the inflow below likewise. One opening of height h has its neutral level in the middle, which
makes (Cd / 3) W h sqrt(g h (Ti - To) / Ti).
"""

import math
from typing import NamedTuple

from hoopwright.farm.weather import WindSide
from hoopwright.quantity.factors import G_M_S2

WIND_SHARE: dict[WindSide, float] = {"square_on": 0.55, "diagonal": 0.30}
WIND_SOURCE = (
    "ASHRAE Handbook Fundamentals, flow by wind Q = Cv A U, Cv 0.5 to 0.6 square on (as quoted in "
    "secondary texts) and 0.25 to 0.35 diagonally (from memory); the middle of each range is used"
)
WARMTH_SOURCE = (
    "ASHRAE Handbook Fundamentals 1997, chapter 25: flow by warmth (equation 37), integrated over "
    "the height of the opening here, with Cd = 0.40 + 0.0045 times the difference (equation 38), "
    "as quoted in secondary texts"
)
TOGETHER_SOURCE = (
    "ASHRAE Handbook Fundamentals: wind and warmth together as the root of the sum of squares, as "
    "quoted in secondary texts"
)
HALVINGS = 30
ALIKE_M = 1e-6


class Gap(NamedTuple):
    """An open side as the air finds it.

    Attributes:
        width_m: Width that the air has, m; less than it looks behind a screen.
        low_m: Height of its lower edge, m.
        high_m: Height of its upper edge, m.
    """

    width_m: float
    low_m: float
    high_m: float

    @property
    def is_shut(self) -> bool:
        """Whether no air passes."""
        return self.width_m <= 0 or self.high_m <= self.low_m


def wind_flow(areas_m2: tuple[float, float], wind_m_s: float, wind_from: WindSide) -> float:
    """Return the air that wind drives in at one side and out at the other, m3/s.

    Args:
        areas_m2: Opening of each side for the air, m2.
        wind_m_s: Wind, m/s.
        wind_from: Whether the wind meets the side square on or slantwise.

    Source:
        `WIND_SOURCE`; that the lesser side decides is derived here.
    """
    return WIND_SHARE[wind_from] * min(areas_m2) * wind_m_s


def discharge_share(inside_k: float, outside_k: float) -> float:
    """Return Cd: what a tall opening lets through of the flow without losses.

    Source:
        `WARMTH_SOURCE`, equation 38.
    """
    return 0.40 + 0.0045 * (inside_k - outside_k)


def warmth_flow(gaps: tuple[Gap, ...], inside_k: float, outside_k: float) -> float:
    """Return the air that warmth drives through open sides, m3/s; 0 when it is no warmer inside.

    Args:
        gaps: The open sides.
        inside_k: Air inside, K.
        outside_k: Air outside, K.

    Source:
        `WARMTH_SOURCE`; one neutral level for all sides is derived here, see the module.
    """
    open_gaps = tuple(gap for gap in gaps if not gap.is_shut)
    if inside_k <= outside_k or not open_gaps:
        return 0.0
    level_m = neutral_level(open_gaps)
    lift = 2 * G_M_S2 * (inside_k - outside_k) / inside_k
    share = discharge_share(inside_k, outside_k) * math.sqrt(lift) * 2 / 3
    return share * sum(_above(gap, level_m) for gap in open_gaps)


def neutral_level(gaps: tuple[Gap, ...]) -> float:
    """Return the height at which inside and outside press alike, m.

    Args:
        gaps: Open sides, at least one.

    Source:
        Derived here: as much air comes in below the level as leaves above it.
    """
    low_m, high_m = min(gap.low_m for gap in gaps), max(gap.high_m for gap in gaps)
    level_m = (low_m + high_m) / 2
    if all(max(gap.low_m - low_m, high_m - gap.high_m) < ALIKE_M for gap in gaps):
        return level_m
    for _ in range(HALVINGS):
        if _excess(gaps, level_m) > 0:
            low_m = level_m
        else:
            high_m = level_m
        level_m = (low_m + high_m) / 2
    return level_m


def _above(gap: Gap, level_m: float) -> float:
    """Return the outflow over the speed one metre from the level and 2/3, m2.5."""
    top_m, foot_m = max(0.0, gap.high_m - level_m), max(0.0, gap.low_m - level_m)
    return gap.width_m * (top_m * math.sqrt(top_m) - foot_m * math.sqrt(foot_m))


def _excess(gaps: tuple[Gap, ...], level_m: float) -> float:
    """Return the outflow of all gaps less their inflow, likewise.

    It is asked for at every halving, so both are told from the sign of the height over the level.
    """
    excess = 0.0
    for width_m, low_m, high_m in gaps:
        top_m, foot_m = high_m - level_m, low_m - level_m
        top = top_m * math.sqrt(abs(top_m))
        foot = foot_m * math.sqrt(abs(foot_m))
        above = width_m * (max(0.0, top) - max(0.0, foot))
        excess += above - width_m * (max(0.0, -foot) - max(0.0, -top))
    return excess
