"""The wind rope against a line drawn from eye to eye."""

import pytest
from shapely.geometry import LineString

from hanging import FOOT_M, bar, crank, hung, round_tube, span
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.rope import ROPE_END_M, rope_legs, zigzag_rope


def _drawn(length_m: float, height_m: float, legs: int) -> float:
    step_m = length_m / legs
    return LineString([(k * step_m, height_m * (k % 2)) for k in range(legs + 1)]).length


# Worked by hand: 48 ft by steps of 2 ft: 24 legs of sqrt(4 + 4.5^2) = 4.924 ft, 118.19 ft.
def test_rope_agrees_with_the_hand_sum() -> None:
    legs = rope_legs(48 * FOOT_M, 2 * FOOT_M)
    ends_m = 2 * ROPE_END_M
    assert legs == 24
    rope_m = zigzag_rope(48 * FOOT_M, 4.5 * FOOT_M, legs)
    assert (rope_m - ends_m) / FOOT_M == pytest.approx(118.19, abs=0.01)


@pytest.mark.parametrize(("length_m", "step_m"), [(14.3, 1.2), (0.9, 1.2), (30.0, 0.61)])
def test_rope_is_as_long_as_the_zigzag_drawn(length_m: float, step_m: float) -> None:
    legs = rope_legs(length_m, step_m)
    assert length_m / legs <= step_m
    assert legs == 1 or length_m / (legs - 1) > step_m
    rope_m = zigzag_rope(length_m, 1.25, legs)
    assert rope_m - 2 * ROPE_END_M == pytest.approx(_drawn(length_m, 1.25, legs))


def test_eyes_are_one_more_than_legs() -> None:
    # Legs of 4 ft on 33 ft: 9 of 3.667 ft over a height of 4 ft, 10 eyes.
    curtain = hung(span(33, 4), bar(round_tube(1.66, 0.065)), crank(12), rope_step_ft=4)
    work = work_curtain(curtain)
    assert (work.rope_legs, work.eyes) == (9, 10)
    drawn_m = _drawn(33 * FOOT_M, 4 * FOOT_M, 9)
    assert work.rope_m == pytest.approx(drawn_m + 2 * ROPE_END_M)


def test_tail_and_knot_take_two_feet_at_each_end() -> None:
    # Common practice, no published source: about 2 ft.
    assert pytest.approx(2 * FOOT_M, abs=0.02) == ROPE_END_M


def test_curtain_without_a_rope_has_no_eyes() -> None:
    work = work_curtain(hung(span(33, 4), bar(round_tube(1.66, 0.065)), crank(12)))
    assert (work.rope_m, work.rope_legs, work.eyes) == (0.0, 0, 0)
    assert work.working("rope_m").rule == "No wind rope is chosen."
