"""A curtain let go at the top, against its motion solved step by step."""

import math

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from hanging import FOOT_M, INCH_M, bar, chosen, crank, drum, geared, hung, round_tube, span
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.runaway import handle_speed, runaway_speed

G_M_S2 = 9.80665
RAIL = bar(round_tube(1.375, 0.058))


def _fallen_speed(ratio: float) -> float:
    """Return the speed at the bottom of 100 ft of rail and 5 ft of film, solved step by step.

    With z the height of the bar the film on it is m = mu z and the roll's radius r(z). Lagrange's
    equation of one coordinate, kinetic energy M(z) v^2 / 2 with M = m_bar + (I_bar + I_crank
    ratio^2) / r^2 and potential g (m_bar z + mu z^2 / 2):

        M a + M' v^2 / 2 = -g (m_bar + mu z)
    """
    length_m, height_m = 100 * FOOT_M, 5 * FOOT_M
    film_m = 6 * 2.54e-5
    outside_m, inside_m = 1.375 * INCH_M / 2, (1.375 / 2 - 0.058) * INCH_M
    bar_kg = 7850 * math.pi * (outside_m**2 - inside_m**2) * length_m
    film_kg_m = 920 * film_m * length_m
    turning = bar_kg * (outside_m**2 + inside_m**2) / 2 + 0.013 * ratio**2

    def square_radius(z: float) -> float:
        return outside_m**2 + film_m * z / math.pi

    def motion(_: float, state: NDArray[np.float64]) -> list[float]:
        z, v = state
        moving = bar_kg + turning / square_radius(z)
        slope = -turning * (film_m / math.pi) / square_radius(z) ** 2
        return [v, (-G_M_S2 * (bar_kg + film_kg_m * z) - slope * v**2 / 2) / moving]

    def at_bottom(_: float, state: NDArray[np.float64]) -> float:
        return float(state[0])

    at_bottom.terminal = True  # type: ignore[attr-defined]  # read by solve_ivp
    solved = solve_ivp(motion, (0, 60), [height_m, 0.0], events=at_bottom, rtol=1e-10, atol=1e-12)
    return -float(solved.y_events[0][0][1])


@pytest.mark.parametrize("ratio", [1.0, 3.0])
def test_speed_at_the_bottom_is_that_of_the_motion_solved(ratio: float) -> None:
    work = work_curtain(hung(span(100, 5), RAIL, crank(7, ratio=ratio)))
    assert work.runaway_m_s == pytest.approx(_fallen_speed(ratio), rel=1e-6)


# Worked by hand for the same rail: 602 J; bar 0.817 lb/ft x 100 ft = 37.06 kg; gyration radius
# sqrt((0.6875^2 + 0.6295^2) / 2) = 0.659 in = 0.01674 m, so 37.06 x 0.01674^2 = 0.01039 kg m2, and
# 0.013 of the crank, over 0.01746^2: 76.7 kg; sqrt(2 x 602 / (37.06 + 76.7)) = 3.25 m/s; handle
# 7 in / 0.6875 in times that: 33.1 m/s.
def test_rail_let_go_agrees_with_the_hand_sum() -> None:
    work = work_curtain(hung(span(100, 5), RAIL, crank(7)))
    assert work.runaway_m_s == pytest.approx(3.25, abs=0.005)
    assert work.runaway_handle_m_s == pytest.approx(33.1, abs=0.05)


def test_drive_that_holds_lets_nothing_run() -> None:
    for drive in (crank(7, holds=True), geared(7)):
        work = work_curtain(hung(span(100, 5), RAIL, drive))
        assert (work.runaway_m_s, work.runaway_handle_m_s) == (0.0, 0.0)
    assert work_curtain(hung(span(100, 5), RAIL, geared(7, holds=False))).runaway_m_s > 0


def test_gears_slow_the_fall_and_whip_the_handle() -> None:
    slow, fast = (
        work_curtain(hung(span(100, 5), RAIL, crank(7, ratio=ratio))) for ratio in (4.0, 1.0)
    )
    assert slow.runaway_m_s < fast.runaway_m_s
    assert slow.runaway_handle_m_s > fast.runaway_handle_m_s


def test_without_anything_that_turns_it_falls_freely() -> None:
    # Torricelli: the square root of 2 g h.
    assert runaway_speed(10.0 * G_M_S2 * 1.5, 10.0, 0.0, 0.0, 0.02) == pytest.approx(
        math.sqrt(2 * G_M_S2 * 1.5)
    )


def test_where_the_crank_stands_changes_nothing() -> None:
    curtain = hung(span(100, 5), RAIL, crank(7))
    end, middle = (work_curtain(chosen(curtain, crank_end=at)) for at in ("front", "middle"))
    assert middle.runaway_m_s == end.runaway_m_s


def test_handle_of_a_drum_turns_with_it() -> None:
    # Lines at 2 m/s on a drum of 2 in radius turn it at 39.37 rad/s; three times that at 10 in.
    speed_m_s = handle_speed(2.0, 2 * INCH_M, drum(10, 4, ratio=3.0))
    assert speed_m_s == pytest.approx(39.37 * 3 * 0.254, rel=1e-4)
