"""What is open and free: against strips of film and boards drawn to scale."""

import pytest
import shapely

from hanging import (
    FOOT_M,
    INCH_M,
    bar,
    boarded,
    chosen,
    crank,
    drum,
    hung,
    round_tube,
    sided,
    span,
)
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.side import Winding

RAIL = bar(round_tube(1.375, 0.058))


def _opened(shut_ft: float = 1.0, stop_m: float = 0.0) -> CurtainWork:
    """Return 60 ft over a side from 1 ft to 6 ft whose bar shuts at a height."""
    curtain = hung(span(60, 6 - shut_ft), RAIL, crank(7))
    curtain = boarded(curtain, baseboard_height_m=1 * FOOT_M)
    return work_curtain(sided(curtain, shut_height_m=shut_ft * FOOT_M, stop_m=stop_m))


@pytest.mark.parametrize("stop_m", [0.0, 0.2])
def test_opening_is_what_a_drawn_roll_leaves_free(stop_m: float) -> None:
    work = _opened(stop_m=stop_m)
    wall = shapely.box(0, 1 * FOOT_M, 60 * FOOT_M, 6 * FOOT_M)
    axis = shapely.LineString([(-1, 6 * FOOT_M - stop_m), (60 * FOOT_M + 1, 6 * FOOT_M - stop_m)])
    roll = axis.buffer(work.diameters_m[2] / 2, cap_style="flat")
    above = shapely.box(-1, 6 * FOOT_M - stop_m, 60 * FOOT_M + 1, 9)
    assert work.opening_m2 == pytest.approx(wall.difference(roll).difference(above).area)


def test_bar_that_shuts_above_the_baseboard_opens_no_more_than_it_climbs() -> None:
    # Worked by hand: shut at 2 ft it climbs 4 ft of the 5 ft side, less its roll's radius.
    work = _opened(shut_ft=2.0)
    height_m = 4 * FOOT_M - work.diameters_m[2] / 2
    assert work.opening_m2 == pytest.approx(60 * FOOT_M * height_m)


def test_bar_that_stops_early_climbs_less_and_winds_less() -> None:
    whole, stopped = _opened(), _opened(stop_m=0.3)
    assert whole.travel_m - stopped.travel_m == pytest.approx(0.3)
    assert stopped.turns < whole.turns
    assert stopped.hardest_n < whole.hardest_n


def test_roll_outside_the_film_leaves_the_stand_off_and_one_inside_takes_its_thickness() -> None:
    curtain = boarded(hung(span(60, 5), RAIL, crank(7)), stand_off_m=1.5 * INCH_M)

    def gap_in(winding: Winding) -> float:
        return work_curtain(chosen(curtain, winding=winding)).pocket_gap_m / INCH_M

    # Worked by hand: a roll of 2 x 0.7663 in behind a board of 1.5 in rubs by 0.033 in.
    assert gap_in("out") == pytest.approx(1.5)
    assert gap_in("into") == pytest.approx(1.5 - 1.5326, abs=1e-4)


def test_gutter_is_met_by_the_upper_edge_of_the_roll() -> None:
    # Worked by hand: the axis stops 6 in below the hip, the roll reaches 0.7663 in up (a bit less
    # with 6 in less film: sqrt(0.6875^2 + 54 x 0.006 / pi) = 0.7588 in), the gutter hangs 4 in.
    curtain = sided(hung(span(60, 5), RAIL, crank(7)), stop_m=6 * INCH_M)
    assert work_curtain(curtain).gutter_gap_m is None
    work = work_curtain(boarded(curtain, gutter_drop_m=4 * INCH_M))
    assert work.gutter_gap_m is not None
    assert work.gutter_gap_m / INCH_M == pytest.approx(6 - 0.7588 - 4, abs=1e-4)


def test_rod_of_a_drop_down_curtain_opens_from_the_hip() -> None:
    # Worked by hand: 60 ft x (5 ft - 0.6875 in); the rod hangs half its thickness nearer.
    curtain = hung(span(60, 5), RAIL, drum(12, 3), kind="drop_down")
    work = work_curtain(boarded(curtain, stand_off_m=1.5 * INCH_M, gutter_drop_m=4 * INCH_M))
    assert work.opening_m2 / FOOT_M**2 == pytest.approx(60 * (5 - 0.6875 / 12))
    assert work.pocket_gap_m / INCH_M == pytest.approx(1.5 - 0.6875)
    assert work.gutter_gap_m is not None
    assert work.gutter_gap_m / INCH_M == pytest.approx(60 - 0.6875 - 4)
