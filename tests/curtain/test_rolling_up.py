"""Height of the bar and bend of the joint on a bow that leans in, drawn to scale."""

import math
from dataclasses import replace

import pytest
import shapely

from hanging import FREE, bar, crank, hung, round_tube, sided, span
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.rolling_up import bar_height, joint_angle_at
from hoopwright.farm import EvenBows, Frame, RoundBow, SideBoards
from hoopwright.survey import survey_frame

RADIUS_M = 4.0
HIP_M, SHUT_M = 1.6, 0.4


def _leaning(side: int) -> HungCurtain:
    """Return a curtain on a half circle that rises from the ground, shut at 0.4 m."""
    boards = SideBoards(hip_height_m=HIP_M, baseboard_height_m=SHUT_M)
    frame = Frame(
        profile=RoundBow(span_m=2 * RADIUS_M, leg_height_m=0.0, peak_height_m=RADIUS_M),
        tube_diameter_m=0.0,
        length_m=12.0,
        bows=EvenBows(count=9, spacing_m=1.5),
        boards=(boards, boards),
    )
    arc_m = RADIUS_M * (math.asin(HIP_M / RADIUS_M) - math.asin(SHUT_M / RADIUS_M))
    plain = hung(span(40, 4), bar(round_tube(1.375, 0.058)), crank(12), FREE)
    hanging = replace(plain.span, side=side, hang_m=arc_m)
    return replace(sided(plain, shut_height_m=SHUT_M), span=hanging, survey=survey_frame(frame))


@pytest.mark.parametrize("side", [0, 1])
@pytest.mark.parametrize("share", [0.0, 0.3, 1.0])
def test_bar_climbs_along_the_drawn_bow(side: int, share: float) -> None:
    curtain = _leaning(side)
    bow = shapely.Point(0, 0).buffer(RADIUS_M, quad_segs=20000).exterior
    above = shapely.LineString([p for p in bow.coords if p[1] >= 0 and p[0] >= 0])
    rising = above if above.coords[0][1] < above.coords[-1][1] else above.reverse()
    low_m = RADIUS_M * math.asin(SHUT_M / RADIUS_M)
    expected_m = rising.interpolate(low_m + share * curtain.travel_m).y
    assert bar_height(curtain, share * curtain.travel_m) == pytest.approx(expected_m, abs=1e-6)


def test_joint_bends_by_what_the_handle_lies_below_the_leaning_bar() -> None:
    # Worked by hand: open at 1.6 m, handle at 1 m, pipe of 1.5 m: sine 0.4.
    curtain = _leaning(0)
    assert joint_angle_at(curtain, curtain.travel_m) == pytest.approx(math.asin(0.4))
    assert work_curtain(curtain).joint_angles_rad[0] == pytest.approx(math.asin(0.6 / 1.5))
