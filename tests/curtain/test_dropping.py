"""A curtain that opens downward: against work, hand sums and its own course."""

import math

import numpy as np
import pytest
from scipy.integrate import quad

from hanging import FOOT_M, INCH_M, LBF_IN_NM, LBF_N, bar, chosen, drum, hung, round_tube, sided
from hanging import span as curtain_span
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.dropping import drop_at
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lines import DRUM_WRAPS, KNOT_M, LONGEST_SIDE_M, REACH_M
from hoopwright.farm import Limits
from hoopwright.farm.drive import LineDrum

ROD = bar(round_tube(1.375, 0.058))
FREE = Limits(rubbing_share=0.0)


def _dropping(
    drive: LineDrum | None = None, limits: Limits = FREE, wrap_ft: float = 0.0
) -> HungCurtain:
    """Return 60 ft of one 6 mil layer on a side of 5 ft that bunches in half a foot."""
    curtain = hung(
        curtain_span(60, 5), ROD, drive or drum(12, 3), limits, wrap_ft=wrap_ft, kind="drop_down"
    )
    return sided(curtain, bunch_m=0.5 * FOOT_M)


# Worked by hand: rod 0.817 lb/ft, film 0.0287 lb/ft2. Shut 5 ft of film hang: 0.9605 lb/ft x 60 =
# 57.6 lbf; down 4.5 ft, half a foot is left: 0.831 x 60 = 49.9. On a 3 in drum 86.4 lbf in, on a
# 12 in handle 7.20 lbf; 4.5 ft over pi x 3 in: 5.73 turns.
def test_rod_of_sixty_feet_agrees_with_the_hand_sum() -> None:
    work = work_curtain(_dropping())
    assert work.travel_m / FOOT_M == pytest.approx(4.5)
    assert work.weights_n[0] / LBF_N == pytest.approx(57.6, abs=0.05)
    assert work.weights_n[2] / LBF_N == pytest.approx(49.9, abs=0.05)
    assert work.torques_nm[0] / LBF_IN_NM == pytest.approx(86.4, abs=0.1)
    assert work.hardest_n / LBF_N == pytest.approx(7.20, abs=0.01)
    assert work.turns == pytest.approx(5.73, abs=5e-3)


def test_handle_is_hardest_when_the_curtain_is_shut() -> None:
    curtain = _dropping()
    work = work_curtain(curtain)
    through = [drop_at(curtain, float(m)).hand_n for m in np.linspace(0, curtain.travel_m, 50)]
    assert work.hardest_n == work.hand_forces_n[0] == max(through)


@pytest.mark.parametrize("wrap_ft", [0.0, 0.5])
def test_work_of_the_drum_is_the_energy_of_the_rod_at_the_hip(wrap_ft: float) -> None:
    curtain = _dropping(wrap_ft=wrap_ft)
    work = work_curtain(curtain)
    radius_m = 1.5 * INCH_M
    lifted_j, _ = quad(
        lambda angle: drop_at(curtain, curtain.travel_m - angle * radius_m).torque_nm,
        0,
        curtain.travel_m / radius_m,
    )
    assert work.energy_j == pytest.approx(lifted_j, rel=1e-9)


def test_film_wrapped_on_the_rod_is_lifted_with_it() -> None:
    # Worked by hand: a foot of wrap on 60 ft is 60 x 0.0287 = 1.72 lbf more at every place.
    bare, wrapped = (work_curtain(_dropping(wrap_ft=wrap_ft)) for wrap_ft in (0.0, 1.0))
    for less_n, more_n in zip(bare.weights_n, wrapped.weights_n, strict=True):
        assert (more_n - less_n) / LBF_N == pytest.approx(1.72, abs=0.01)


def test_rod_let_go_falls_no_faster_than_freely() -> None:
    # Torricelli, the square root of 2 g h, holds for a rod alone; film lifted with it adds energy
    # and is left out of what moves: at most the root of the share of both.
    fixed = work_curtain(_dropping(drum(12, 3, holds=True)))
    loose = work_curtain(_dropping(drum(12, 3, holds=False, inertia_kg_m2=0.0)))
    heavier = work_curtain(_dropping(drum(12, 3, holds=False, inertia_kg_m2=0.01)))
    free_m_s = math.sqrt(2 * 9.80665 * 4.5 * FOOT_M)
    assert fixed.runaway_m_s == 0.0
    assert free_m_s < loose.runaway_m_s < free_m_s * math.sqrt(0.9605 / 0.817)
    assert heavier.runaway_m_s < loose.runaway_m_s


def test_longest_rod_for_the_hand_just_meets_its_limit() -> None:
    limits = Limits(hand_force_n=40.0, rubbing_share=0.2)
    longest_m = work_curtain(_dropping(limits=limits)).hand_length_m
    longest = hung(curtain_span(longest_m / FOOT_M, 5), ROD, drum(12, 3), limits, kind="drop_down")
    assert work_curtain(longest).hardest_n == pytest.approx(40.0)


def test_rod_on_lines_does_not_trail_and_nothing_rolls() -> None:
    work = work_curtain(_dropping())
    assert (work.trailing_m, work.twist_rad) == (0.0, 0.0)
    assert work.diameters_m == work.joint_angles_rad == (0.0, 0.0, 0.0)
    assert (work.joint_swing, work.guide_m) == (1.0, 0.0)
    assert work.trailing_length_m == LONGEST_SIDE_M
    assert work.bound_by == "hand force"


# Worked by hand: 60 ft with bows at 4 ft from 0: bows at 4, 8 .. 56 ft stand between the ends, 14,
# and the two ends: 16 lines. A line of 4.5 ft + 0.3 m + 2 x 0.15 m = 1.9716 m. The cable: 60 ft +
# 4.5 ft + from the hip at 6 ft down to the handle at 1 m, 0.8288 m, + 3 turns of a 3 in drum,
# 0.7182 m: 21.2066 m. In all 16 x 1.9716 + 21.2066 = 52.752 m; 16 pulleys and one at the drum.
def test_lift_lines_agree_with_the_hand_sum() -> None:
    assert (REACH_M, KNOT_M, DRUM_WRAPS) == (0.3, 0.15, 3)
    work = work_curtain(_dropping())
    assert work.lift_lines == 16
    assert work.pulleys == 17
    assert work.lift_line_m == pytest.approx(52.752, abs=1e-3)


def test_drum_in_the_middle_has_two_runs_of_cable() -> None:
    end, middle = (
        work_curtain(chosen(_dropping(), crank_end=place)) for place in ("front", "middle")
    )
    assert middle.lift_lines == end.lift_lines
    assert middle.pulleys == end.pulleys + 1
    assert middle.lift_line_m - end.lift_line_m == pytest.approx(
        4.5 * FOOT_M + 0.8288 + 0.7182, abs=1e-3
    )


def test_bunch_as_high_as_the_side_opens_nothing() -> None:
    work = work_curtain(sided(_dropping(), bunch_m=1.9))
    assert (work.travel_m, work.turns, work.opening_m2) == (0.0, 0.0, 0.0)
