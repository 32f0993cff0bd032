"""A curtain on its way: against its three places, against work and against a level line."""

from dataclasses import fields

import numpy as np
import pytest

from hanging import (
    FOOT_M,
    bar,
    boarded,
    crank,
    drum,
    geared,
    hung,
    round_tube,
    sided,
    span,
)
from hoopwright.curtain import Course, CurtainWork, course
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.hung import HungCurtain
from hoopwright.farm import Limits
from hoopwright.farm.drive import Drive

RAIL = bar(round_tube(1.375, 0.058)).but(joint_play_m=0.0005)
FREE = Limits(rubbing_share=0.0)


def _rolling(drive: Drive | None = None) -> HungCurtain:
    return hung(span(60, 5, layers=2), RAIL, drive or crank(12, mass_kg=2.0), FREE, 1, 0.25)


def _dropping() -> HungCurtain:
    curtain = hung(span(60, 5), RAIL, drum(12, 3, ratio=2.0), FREE, 0.5, kind="drop_down")
    return sided(curtain, bunch_m=0.3)


BOTH = pytest.mark.parametrize("curtain", [_rolling(), _dropping()], ids=["rolls", "drops"])


def _followed(curtain: HungCurtain, steps: int = 40) -> tuple[CurtainWork, Course]:
    work = work_curtain(curtain)
    return work, course(work, steps)


@BOTH
def test_course_passes_the_three_places_of_the_work(curtain: HungCurtain) -> None:
    work, way = _followed(curtain)
    places = (0, 20, 40)
    assert way.shares[20] == 0.5
    assert [way.weights_n[k] for k in places] == pytest.approx(work.weights_n)
    assert [way.torques_nm[k] for k in places] == pytest.approx(work.torques_nm)
    assert [way.hand_forces_n[k] for k in places] == pytest.approx(work.hand_forces_n)
    assert [2 * way.radii_m[k] for k in places] == pytest.approx(work.diameters_m)
    assert [way.joint_angles_rad[k] for k in places] == pytest.approx(work.joint_angles_rad)
    assert max(way.hand_forces_n) == pytest.approx(work.hardest_n)
    assert way.trailing_m[-1] == pytest.approx(work.trailing_m)
    assert way.openings_m2[-1] == pytest.approx(work.opening_m2)
    assert way.minutes[-1] == pytest.approx(work.minutes)
    assert (way.minutes[0], way.openings_m2[0]) == (0.0, 0.0)


@BOTH
@pytest.mark.parametrize("steps", [1, 7])
def test_every_row_is_as_long_as_its_shares(curtain: HungCurtain, steps: int) -> None:
    _, way = _followed(curtain, steps)
    assert {len(getattr(way, field.name)) for field in fields(way)} == {steps + 1}
    assert np.diff(way.shares) == pytest.approx(1 / steps)


@BOTH
def test_curtain_that_opens_further_never_shuts(curtain: HungCurtain) -> None:
    _, way = _followed(curtain)
    assert (np.diff(way.openings_m2) >= 0).all()
    assert (np.diff(way.minutes) > 0).all()


def test_rolling_trails_more_and_more_and_pulls_harder() -> None:
    _, way = _followed(_rolling())
    assert (np.diff(way.trailing_m) > 0).all()
    assert (np.diff(way.hand_forces_n) > 0).all()


def test_bar_climbs_an_upright_side_evenly_from_baseboard_to_hip() -> None:
    # The side is upright from 1 ft, where the bar shuts, to the hip 4.75 ft above.
    _, way = _followed(_rolling())
    assert way.heights_m == pytest.approx(np.linspace(1.0, 5.75, 41) * FOOT_M)


def test_rod_goes_down_evenly_from_the_hip_to_its_bunch() -> None:
    _, way = _followed(_dropping())
    assert way.heights_m == pytest.approx(np.linspace(6 * FOOT_M, FOOT_M + 0.3, 41))


@BOTH
def test_hand_does_the_work_of_the_climb(curtain: HungCurtain) -> None:
    # Force times the way of the hand through the travel, by trapezes; from the bar's first lift
    # on, as the slack is wound level.
    work, way = _followed(curtain, 400)
    turned = np.array(way.minutes) * curtain.limits.handle_rate_per_min
    hand_m = 2 * np.pi * curtain.drive.arm_m * turned
    lifted = slice(1, None) if not curtain.drops else slice(None)
    done_j = abs(np.trapezoid(np.array(way.hand_forces_n)[lifted], hand_m[lifted]))
    assert done_j == pytest.approx(work.energy_j, rel=3e-3)


def test_geared_crank_has_no_bent_joint_on_the_way() -> None:
    _, way = _followed(_rolling(geared(12)))
    assert set(way.joint_angles_rad) == {0.0}


def test_bar_below_the_baseboard_opens_only_above_it() -> None:
    low = boarded(_rolling(), baseboard_height_m=1.5 * FOOT_M)
    work = work_curtain(low)
    assert course(work).openings_m2[-1] == pytest.approx(work.opening_m2)


def test_course_needs_a_step() -> None:
    with pytest.raises(ValueError, match="steps: a course needs at least one step, not 0"):
        course(work_curtain(_rolling()), 0)
