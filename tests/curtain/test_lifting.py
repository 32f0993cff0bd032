"""Torque and hand against work, and at their limits."""

import numpy as np
import pytest
from scipy.integrate import quad

from hanging import LBF_N, bar, crank, hung, round_tube, span, square_tube
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.hung import HungCurtain
from hoopwright.curtain.lift import lift_at
from hoopwright.curtain.lifting import (
    hand_force,
    hanging_weight,
    longest_by_force,
    raised_energy,
    winding_torque,
)
from hoopwright.farm import Bar, Limits

RAIL = bar(round_tube(1.375, 0.058))
SQUARE = bar(square_tube(1.5, 0.0625), "aluminium")


@pytest.mark.parametrize("slack_ft", [0.0, 0.5])
@pytest.mark.parametrize("roll_bar", [RAIL, SQUARE], ids=["round steel", "square aluminium"])
def test_work_of_the_crank_is_the_energy_of_the_raised_curtain(
    roll_bar: Bar, slack_ft: float
) -> None:
    curtain = hung(
        span(60, 5, layers=2), roll_bar, crank(12, mass_kg=3.0), wrap_ft=1, slack_ft=slack_ft
    )

    def torque_by_angle(wound_m: float) -> float:
        lift = lift_at(curtain, wound_m)
        return lift.torque_nm / lift.radius_m

    top_m = curtain.wound_m[2]
    work_j, _ = quad(torque_by_angle, top_m - curtain.travel_m, top_m)
    assert work_curtain(curtain).energy_j == pytest.approx(work_j, rel=1e-9)


def test_handle_is_hardest_at_the_top() -> None:
    curtain = hung(span(60, 5, layers=2), RAIL, crank(12, mass_kg=2.0), wrap_ft=1, slack_ft=0.2)
    low_m, _, high_m = curtain.wound_m
    through = [lift_at(curtain, float(m)).hand_n for m in np.linspace(low_m, high_m, 200)]
    assert work_curtain(curtain).hardest_n == max(through)


def test_rubbing_makes_everything_that_turns_harder_and_nothing_heavier() -> None:
    free = work_curtain(hung(span(60, 5), RAIL, crank(12)))
    rubbed = work_curtain(hung(span(60, 5), RAIL, crank(12), Limits(rubbing_share=0.25)))
    assert rubbed.weights_n == free.weights_n
    assert rubbed.energy_j == free.energy_j
    assert rubbed.hardest_n == pytest.approx(1.25 * free.hardest_n)
    assert rubbed.twist_rad == pytest.approx(1.25 * free.twist_rad)


def test_gears_trade_force_for_turns() -> None:
    plain = work_curtain(hung(span(60, 5), RAIL, crank(12)))
    geared = work_curtain(hung(span(60, 5), RAIL, crank(12, ratio=3.0, efficiency=0.75)))
    assert geared.turns == plain.turns
    assert geared.handle_turns == pytest.approx(3 * plain.handle_turns)
    assert geared.hardest_n == pytest.approx(plain.hardest_n / (3 * 0.75))


@pytest.mark.parametrize("change", [{"arm_m": 0.0}, {"ratio": 0.0}, {"efficiency": 1.01}])
def test_hand_force_refuses_a_crank_that_cannot_be(change: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="must be above zero"):
        hand_force(10.0, **{"arm_m": 0.3, "ratio": 1.0, "efficiency": 0.9, **change})


def _as_long_as(curtain: HungCurtain, length_m: float) -> HungCurtain:
    longer = span(length_m / 0.3048, curtain.span.hang_m / 0.3048)
    return hung(longer, curtain.bar, curtain.drive, curtain.limits, wrap_ft=1)


def test_longest_bar_for_the_hand_just_meets_its_limit() -> None:
    limits = Limits(hand_force_n=60.0, trailing_m=0.02, rubbing_share=0.2)
    curtain = hung(span(60, 5), RAIL, crank(12, mass_kg=2.0, efficiency=0.9), limits, wrap_ft=1)
    work = work_curtain(curtain)
    by_hand = work_curtain(_as_long_as(curtain, work.hand_length_m))
    assert by_hand.hardest_n == pytest.approx(60.0)


def test_crank_too_heavy_for_the_hand_lifts_no_bar() -> None:
    assert longest_by_force(1.0, 2.0, 1.5) == 0.0
    assert longest_by_force(5.0, 2.0, 1.0) == 2.0


def test_small_rules_by_hand() -> None:
    # 10 m of 1.5 kg/m and 2 kg: 17 kg; on a radius of 20 mm with a quarter of rubbing;
    # raised 2 m with 4 kg of film hanging: (17 + 2) x 2 m.
    weight_n = hanging_weight(1.5, 10.0, 2.0)
    assert weight_n == pytest.approx(166.713, abs=5e-4)
    assert winding_torque(weight_n, 0.02, 0.25) == pytest.approx(4.1678, abs=5e-5)
    assert raised_energy(17.0, 4.0, 2.0) == pytest.approx(372.65, abs=5e-3)
    assert hand_force(3.0, 0.3, 2.0, 0.5) == pytest.approx(10.0)
    assert pytest.approx(4.448222, abs=5e-7) == LBF_N
