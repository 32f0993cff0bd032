"""The roll against layers counted one by one and against a smooth spiral."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from hoopwright.curtain.rolling import roll_radius, wound_turns

BAR_M = 0.0175
FILM_M = 0.0003


def _counted(bar_m: float, film_m: float, turns: int) -> tuple[float, float]:
    """Wind whole turns, each on its middle line; return the film used and the radius reached."""
    used_m, radius_m = 0.0, bar_m
    for _ in range(turns):
        used_m += 2 * math.pi * (radius_m + film_m / 2)
        radius_m += film_m
    return used_m, radius_m


@pytest.mark.parametrize("turns", [1, 7, 20])
def test_roll_is_as_thick_as_its_layers_counted(turns: int) -> None:
    used_m, radius_m = _counted(BAR_M, FILM_M, turns)
    reached_m = roll_radius(BAR_M, FILM_M, used_m)
    assert reached_m == pytest.approx(radius_m, rel=1e-9)
    assert wound_turns(used_m, BAR_M, reached_m) == pytest.approx(turns, rel=1e-9)


def test_roll_is_as_thick_as_a_smooth_spiral() -> None:
    # The spiral steps over the edge of the film once a turn and so lies half a layer further out,
    # at most film / 2 over the radius of the bar: 0.9 %.
    turns = 12.5

    def line(angle: float) -> float:
        radius_m = BAR_M + FILM_M / 2 + FILM_M * angle / (2 * math.pi)
        return math.hypot(radius_m, FILM_M / (2 * math.pi))

    used_m, _ = quad(line, 0, 2 * math.pi * turns)
    assert wound_turns(used_m, BAR_M, roll_radius(BAR_M, FILM_M, used_m)) == pytest.approx(
        turns, rel=FILM_M / 2 / BAR_M
    )


def test_bare_bar_is_as_thick_as_itself() -> None:
    assert roll_radius(BAR_M, FILM_M, 0.0) == pytest.approx(BAR_M, rel=1e-15)
    assert wound_turns(0.0, BAR_M, BAR_M) == 0.0


@given(st.floats(0.005, 0.2), st.floats(1e-5, 2e-3), st.floats(0.0, 5.0), st.floats(0.01, 5.0))
def test_winding_in_two_goes_turns_as_often_as_in_one(
    bar_m: float, film_m: float, first_m: float, more_m: float
) -> None:
    middle_m = roll_radius(bar_m, film_m, first_m)
    end_m = roll_radius(bar_m, film_m, first_m + more_m)
    assert end_m > middle_m >= bar_m
    apart = wound_turns(first_m, bar_m, middle_m) + wound_turns(more_m, middle_m, end_m)
    assert apart == pytest.approx(wound_turns(first_m + more_m, bar_m, end_m), rel=1e-9)


@pytest.mark.parametrize("sizes", [(0.0, FILM_M, 1.0), (BAR_M, 0.0, 1.0), (BAR_M, FILM_M, -0.1)])
def test_roll_refuses_sizes_that_cannot_be(sizes: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="must be above zero"):
        roll_radius(*sizes)
