"""Air the tunnel: from how far the curtains open to how often the air inside is changed.

Only the open sides count; doors and gable vents are left out. All curtains are taken to move at
once, each with the same share of its travel behind it.
"""

import math
from functools import cache
from typing import NamedTuple

from hoopwright.airing.airing import Airing, AiringStep
from hoopwright.airing.draught import Gap, warmth_flow, wind_flow
from hoopwright.airing.workings import explain_airing
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.way import clear_opening
from hoopwright.farm import Side, Weather
from hoopwright.quantity.factors import HOUR_S
from hoopwright.survey.survey import Survey

COURSE_STEPS = 4


class _Opened(NamedTuple):
    """Both sides at one place of the travel.

    Attributes:
        openings_m2: Clear opening of each side, m2.
        areas_m2: What each is worth for the air behind its screen, m2.
        wind_m3_s: Air by wind, m3/s.
        warmth_m3_s: Air by warmth, m3/s.
    """

    openings_m2: tuple[float, float]
    areas_m2: tuple[float, float]
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
    whole = _opened(sides, curtains, weather, 1.0)
    opening_m2 = sum(whole.openings_m2)
    free_m2 = sum(whole.areas_m2)
    airing = Airing(
        openings_m2=whole.openings_m2,
        opening_m2=opening_m2,
        floor_share=opening_m2 / floor_m2,
        side_shares=(whole.openings_m2[0] / floor_m2, whole.openings_m2[1] / floor_m2),
        free_m2=free_m2,
        free_share=free_m2 / floor_m2,
        wind_m3_s=whole.wind_m3_s,
        warmth_m3_s=whole.warmth_m3_s,
        flow_m3_s=whole.flow_m3_s,
        changes_per_h=whole.flow_m3_s / survey.volume_m3 * HOUR_S,
        per_floor_m3_s_m2=whole.flow_m3_s / floor_m2,
        course_made=cache(lambda: _course(survey, sides, curtains, weather)),
    )
    return explain_airing(airing, survey, sides, weather)


def _course(
    survey: Survey,
    sides: tuple[Side, Side],
    curtains: tuple[CurtainWork, ...],
    weather: Weather,
) -> tuple[AiringStep, ...]:
    """Return what opens and what air passes on the way from shut to open."""
    shares = tuple(step / COURSE_STEPS for step in range(COURSE_STEPS + 1))
    opened = (_opened(sides, curtains, weather, share) for share in shares)
    return tuple(
        (share, sum(at.openings_m2) / survey.floor_area_m2, at.flow_m3_s)
        for share, at in zip(shares, opened, strict=True)
    )


def _opened(
    sides: tuple[Side, Side],
    curtains: tuple[CurtainWork, ...],
    weather: Weather,
    share: float,
) -> _Opened:
    openings_m2, areas_m2 = [0.0, 0.0], [0.0, 0.0]
    gaps = []
    for work in curtains:
        screen = sides[work.side].screen_flow_share
        opening_m2, gap = open_gap(work, share)
        openings_m2[work.side] += opening_m2
        areas_m2[work.side] += opening_m2 * screen
        gaps.append(gap._replace(width_m=gap.width_m * screen))
    return _Opened(
        (openings_m2[0], openings_m2[1]),
        (areas_m2[0], areas_m2[1]),
        wind_flow((areas_m2[0], areas_m2[1]), weather.wind_m_s, weather.wind_from),
        warmth_flow(tuple(gaps), weather.inside_k, weather.outside_k),
    )


def open_gap(work: CurtainWork, share: float) -> tuple[float, Gap]:
    """Return the clear opening of a curtain on its way, m2, and where the air finds it.

    Args:
        work: The curtain.
        share: Share of its travel behind it.

    Source:
        Derived here; the square of a roll's diameter grows evenly with the film on it.
    """
    hung = work.hung
    moved_m = share * work.travel_m
    radius_m = hung.bar.section.outside_m / 2 if hung.drops else _radius(work, share)
    opening_m2 = clear_opening(hung, moved_m, radius_m)
    width_m = hung.span.open_to_m - hung.span.open_from_m
    if opening_m2 <= 0:
        return 0.0, Gap(0.0, 0.0, 0.0)
    low_m = min(hung.covered_m, hung.side_m)
    if hung.drops:
        low_m = opening_m2 / width_m
    high_m = low_m - opening_m2 / width_m
    return opening_m2, Gap(width_m, hung.height_m(low_m), hung.height_m(high_m))


def _radius(work: CurtainWork, share: float) -> float:
    """Return the radius of the roll on its way, m; a shut one has yet to wind its slack."""
    _, half_m, open_m = work.diameters_m
    return math.sqrt(half_m**2 + (open_m**2 - half_m**2) * (2 * share - 1)) / 2
