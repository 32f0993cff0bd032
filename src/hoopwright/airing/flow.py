"""Air the tunnel: from how far the curtains open to how often the air inside is changed.

Only the open sides count; doors and gable vents are left out. On the way up a curtain is taken to
open from the bottom, a drop-down one from the top, evenly with its travel.
"""

import math
from typing import NamedTuple

from hoopwright.airing.airing import Airing
from hoopwright.airing.draught import Gap, warmth_flow, wind_flow
from hoopwright.airing.workings import explain_airing
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm import Side, Weather
from hoopwright.quantity.factors import HOUR_S
from hoopwright.survey.survey import Survey

COURSE_STEPS = 10


class _Opened(NamedTuple):
    """Both sides at one place of the travel.

    Attributes:
        openings_m2: Clear opening of each side, m2.
        wind_m3_s: Air by wind, m3/s.
        warmth_m3_s: Air by warmth, m3/s.
    """

    openings_m2: tuple[float, float]
    wind_m3_s: float
    warmth_m3_s: float

    @property
    def flow_m3_s(self) -> float:
        """Wind and warmth together, m3/s."""
        return math.hypot(self.wind_m3_s, self.warmth_m3_s)


def air_tunnel(
    survey: Survey,
    sides: tuple[Side, Side],
    curtains: tuple[CurtainWork, ...],
    weather: Weather,
) -> Airing:
    """Return what opens and what air passes with all curtains open.

    Args:
        survey: The frame as built.
        sides: Both sides as chosen.
        curtains: How the curtains of both sides work.
        weather: The day of airing.

    Source:
        Each figure keeps its own working.
    """
    floor_m2 = survey.floor_area_m2
    course = [
        _opened(survey, sides, curtains, weather, step / COURSE_STEPS)
        for step in range(COURSE_STEPS + 1)
    ]
    whole = course[-1]
    opening_m2 = sum(whole.openings_m2)
    airing = Airing(
        openings_m2=whole.openings_m2,
        opening_m2=opening_m2,
        floor_share=opening_m2 / floor_m2,
        side_shares=(whole.openings_m2[0] / floor_m2, whole.openings_m2[1] / floor_m2),
        wind_m3_s=whole.wind_m3_s,
        warmth_m3_s=whole.warmth_m3_s,
        flow_m3_s=whole.flow_m3_s,
        changes_per_h=whole.flow_m3_s / survey.volume_m3 * HOUR_S,
        per_floor_m3_s_m2=whole.flow_m3_s / floor_m2,
        course=tuple(
            (step / COURSE_STEPS, sum(at.openings_m2) / floor_m2, at.flow_m3_s)
            for step, at in enumerate(course)
        ),
    )
    return explain_airing(airing, survey, sides, weather)


def _opened(
    survey: Survey,
    sides: tuple[Side, Side],
    curtains: tuple[CurtainWork, ...],
    weather: Weather,
    share: float,
) -> _Opened:
    openings_m2: list[float] = []
    areas_m2: list[float] = []
    gaps: list[Gap] = []
    for n, side in enumerate(sides):
        own = [work for work in curtains if work.side == n]
        opening_m2, gap = _gap(survey, n, side, own, share)
        openings_m2.append(opening_m2)
        areas_m2.append(opening_m2 * side.screen_flow_share)
        gaps.append(gap._replace(width_m=gap.width_m * side.screen_flow_share))
    return _Opened(
        (openings_m2[0], openings_m2[1]),
        wind_flow((areas_m2[0], areas_m2[1]), weather.wind_m_s, weather.wind_from),
        warmth_flow(tuple(gaps), weather.inside_k, weather.outside_k),
    )


def clear_height(work: CurtainWork, side_m: float, share: float) -> float:
    """Return how far a curtain is open along the bow, m.

    Args:
        work: The curtain.
        side_m: From hip board to baseboard top along the bow, m.
        share: Share of its travel behind it.

    Source:
        Derived here: what it opens in all, less what is still to be travelled.
    """
    whole_m = min(side_m, work.travel_m) - work.diameters_m[2]
    return max(0.0, whole_m - (1 - share) * work.travel_m)


def _gap(
    survey: Survey, n: int, side: Side, curtains: list[CurtainWork], share: float
) -> tuple[float, Gap]:
    """Return the opening of one side, m2, and the side as one gap as wide as all its curtains."""
    side_m = survey.side_m[n]
    base_m = survey.curve.point_at(survey.base_at_m[n])[1]
    hip_m = survey.curve.point_at(survey.hip_at_m[n])[1]
    opening_m2 = clear_m = 0.0
    for work in curtains:
        whole_m, now_m = (clear_height(work, side_m, at) for at in (1.0, share))
        if now_m > 0:
            opening_m2 += work.opening_m2 * now_m / whole_m
            clear_m = max(clear_m, now_m)
    if clear_m == 0:
        return 0.0, Gap(0.0, base_m, base_m)
    high_m = clear_m * (hip_m - base_m) / side_m
    low_m = hip_m - high_m if side.kind == "drop_down" else base_m
    return opening_m2, Gap(opening_m2 / clear_m, low_m, low_m + high_m)
