"""Twist, play and uneven winding against a solved shaft, a wound pair of tapes and a walk."""

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.integrate import quad, solve_bvp

from hanging import FOOT_M, INCH_M, bar, chosen, crank, hung, round_tube, span, square_tube
from hoopwright.curtain.bar import SHEAR_PA, bar_torsion_constant
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.trailing import bar_twist, far_joints, joint_play, uneven_climb
from hoopwright.farm import Bar, Limits
from hoopwright.farm.side import CrankPlace

RAIL = bar(round_tube(1.375, 0.058))
SQUARE = bar(square_tube(1.5, 0.0625), "aluminium")
SLIT = RAIL.but(slit=True)


def _solved_twist(work: CurtainWork, roll_bar: Bar, crank_at_m: float) -> float:
    """Solve the shaft on one side of its crank, the free end at the far end of the bar.

    Torque falls by the same amount with each metre and is zero at the free end.
    """
    stiffness_nm2 = SHEAR_PA[roll_bar.material] * bar_torsion_constant(roll_bar)
    line_torque_n = work.torques_nm[2] / work.length_m
    reach_m = work.length_m - crank_at_m

    def slopes(_: NDArray[np.float64], state: NDArray[np.float64]) -> NDArray[np.float64]:
        twist_rate = state[1] / stiffness_nm2
        return np.vstack((twist_rate, np.full_like(twist_rate, -line_torque_n)))

    def ends(at_crank: NDArray[np.float64], at_free: NDArray[np.float64]) -> NDArray[np.float64]:
        return np.array([at_crank[0], at_free[1]])

    mesh = np.linspace(0, reach_m, 11)
    solved = solve_bvp(slopes, ends, mesh, np.zeros((2, mesh.size)), tol=1e-8)
    assert solved.success
    return float(solved.sol(reach_m)[0])


@pytest.mark.parametrize("place", ["front", "middle"])
@pytest.mark.parametrize("roll_bar", [RAIL, SQUARE, SLIT], ids=["round", "square", "slit"])
def test_twist_is_that_of_a_shaft_solved_numerically(roll_bar: Bar, place: CrankPlace) -> None:
    limits = Limits(rubbing_share=0.2, uneven_winding_m=0.0)
    curtain = hung(span(100, 5, layers=2), roll_bar, crank(12), limits, wrap_ft=1)
    work = work_curtain(chosen(curtain, crank_end=place))
    crank_at_m = work.length_m / 2 if place == "middle" else 0.0
    expected_rad = _solved_twist(work, roll_bar, crank_at_m)
    assert work.twist_rad == pytest.approx(expected_rad, rel=1e-6)
    assert work.trailing_m == pytest.approx(expected_rad * work.diameters_m[2] / 2, rel=1e-6)


def test_crank_in_the_middle_quarters_the_twist_and_turns_as_hard() -> None:
    curtain = hung(span(100, 5, layers=2), RAIL, crank(12), wrap_ft=1)
    end, middle = (work_curtain(chosen(curtain, crank_end=at)) for at in ("back", "middle"))
    assert middle.twist_rad == pytest.approx(end.twist_rad / 4)
    assert middle.hardest_n == end.hardest_n
    assert middle.bar_sticks == end.bar_sticks
    assert middle.trailing_length_m == pytest.approx(2 * end.trailing_length_m)


# Worked by hand: the weight of a bare thin tube is in proportion to D t, its torsion constant to
# D^3 t, so the wall falls out of weight over stiffness. A heavier gauge is more to lift and hangs
# behind as far, a rule often missed when it is bought against trailing.
def test_heavier_wall_does_not_cut_the_trailing_of_a_bare_bar() -> None:
    thin, thick = (
        work_curtain(hung(span(100, 0.5, mils=1), bar(round_tube(1.375, wall_in)), crank(12)))
        for wall_in in (0.049, 0.083)
    )
    assert thick.weights_n[2] > 1.6 * thin.weights_n[2]
    assert thick.twist_trailing_m == pytest.approx(thin.twist_trailing_m, rel=0.06)
    assert thick.twist_trailing_m > thin.twist_trailing_m


# Worked by hand, 1-3/8 in rail of 0.058 in, slit: middle line pi x 1.317 in = 4.137 in, times
# 0.058^3 / 3 = 2.691e-4 in4, against 0.1043 in4 closed: 387 times softer.
def test_slit_bar_twists_some_four_hundred_times_more() -> None:
    closed, slit = (
        work_curtain(hung(span(100, 5), roll_bar, crank(7))) for roll_bar in (RAIL, SLIT)
    )
    assert slit.hardest_n == closed.hardest_n
    assert slit.twist_rad / closed.twist_rad == pytest.approx(387, rel=2e-3)


# Worked by hand: 100 ft of 21 ft sticks that lose 4 in take 5, so 4 joints. A clearance of 0.02 in
# at the outside of a 1.375 in tube is 0.02 / 0.6875 = 0.02909 rad; four are 0.1164 rad, on a roll
# of 0.7663 in radius 0.0892 in. Cranked in the middle two joints lie on each side: half of that.
def test_play_of_four_joints_agrees_with_the_hand_sum() -> None:
    loose = RAIL.but(joint_play_m=0.02 * INCH_M)
    curtain = hung(span(100, 5), loose, crank(7))
    end, middle = (work_curtain(chosen(curtain, crank_end=at)) for at in ("front", "middle"))
    assert end.play_trailing_m / INCH_M == pytest.approx(0.0892, abs=1e-4)
    assert middle.play_trailing_m / INCH_M == pytest.approx(0.0446, abs=1e-4)


def test_odd_joints_of_a_bar_cranked_in_the_middle_count_on_the_side_that_has_more() -> None:
    assert [far_joints(n, middle=True) for n in (0, 1, 2, 3)] == [0, 1, 1, 2]
    assert [far_joints(n, middle=False) for n in (0, 1, 2, 3)] == [0, 1, 2, 3]


# Worked by hand: 5 ft of 6 mil film turn a 1-3/8 in rail (0.7663 - 0.6875) / 0.006 = 13.14 times;
# where the bar winds 1/32 in further out it climbs 2 pi x 13.14 / 32 = 2.58 in more.
def test_uneven_winding_agrees_with_the_hand_sum() -> None:
    limits = Limits(rubbing_share=0.0, uneven_winding_m=INCH_M / 32)
    work = work_curtain(hung(span(100, 5), RAIL, crank(7), limits))
    assert work.uneven_trailing_m / INCH_M == pytest.approx(2.58, abs=5e-3)


def test_uneven_winding_is_what_two_tapes_on_two_radii_differ_by() -> None:
    # Turned by the same angle, each tape winds the integral of its own radius.
    film_m, apart_m = 0.0003, 0.0004

    def wound(start_m: float, turns: float) -> float:
        length_m, _ = quad(lambda a: start_m + film_m * a / (2 * math.pi), 0, 2 * math.pi * turns)
        return length_m

    difference_m = wound(0.02 + apart_m, 9.0) - wound(0.02, 9.0)
    assert uneven_climb(9.0, apart_m) == pytest.approx(difference_m)


def test_trailing_is_its_three_parts_together() -> None:
    limits = Limits(rubbing_share=0.2, uneven_winding_m=0.0003)
    loose = RAIL.but(joint_play_m=0.0004)
    work = work_curtain(hung(span(100, 5), loose, crank(7), limits))
    parts_m = (work.twist_trailing_m, work.play_trailing_m, work.uneven_trailing_m)
    assert min(parts_m) > 0
    assert work.trailing_m == pytest.approx(math.fsum(parts_m))


@given(
    limit_m=st.floats(0.002, 0.3),
    play_m=st.floats(0.0, 0.004),
    uneven_m=st.floats(0.0, 0.001),
    place=st.sampled_from(("front", "middle")),
    stick_ft=st.sampled_from((10.5, 21.0)),
)
def test_longest_trailing_bar_is_the_last_that_a_walk_finds_within_the_limit(
    limit_m: float, play_m: float, uneven_m: float, place: CrankPlace, stick_ft: float
) -> None:
    limits = Limits(trailing_m=limit_m, uneven_winding_m=uneven_m)
    loose = RAIL.but(joint_play_m=play_m)

    def worked(length_m: float) -> CurtainWork:
        curtain = hung(span(length_m / FOOT_M, 5, layers=2), loose, crank(7), limits, wrap_ft=1)
        curtain = replace(curtain, stick_m=stick_ft * FOOT_M)
        return work_curtain(chosen(curtain, crank_end=place))

    longest_m = worked(1.0).trailing_length_m
    if longest_m == 0:
        assert worked(0.01).trailing_m >= limit_m
        return
    assert worked(longest_m * (1 - 1e-6)).trailing_m <= limit_m * (1 + 1e-9)
    assert worked(longest_m * (1 + 1e-6)).trailing_m >= limit_m * (1 - 1e-5)


def test_small_rules_by_hand() -> None:
    # 0.4 N m/m over 10 m on 80 GPa x 5e-8 m4: 0.4 x 100 / 8000 = 0.005 rad. Three joints of 1 mm
    # on a tube of 40 mm turn 0.15 rad, on a roll of 30 mm radius 4.5 mm.
    assert bar_twist(0.4, 10.0, 80e9, 5e-8) == pytest.approx(0.005)
    assert joint_play(3, 0.001, 0.04, 0.03) == pytest.approx(0.0045)
