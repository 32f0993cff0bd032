"""Degree-days of another base against published ones and an invented year."""

import math
import random

import pytest

from hoopwright.farm import Climate
from hoopwright.heat.winter import days_working, degree_days_at, told_base
from hoopwright.quantity.factors import FAHRENHEIT_K, ZERO_FAHRENHEIT_K
from hoopwright.quantity.working import words

# Western Regional Climate Center, General Climate Summary, Heating Degree Days: degF days of a
# year to each base, degF. Beside it the coldest outside, degF, from memory for the region.
STATIONS = {
    "Wausaukee, Wisconsin": (-17.0, {50: 4543, 55: 5643, 57: 6119, 60: 6884, 65: 8307}),
    "Dallesport, Washington": (14.0, {50: 1633, 55: 2515, 57: 2918, 60: 3572, 65: 4802}),
    "Ephrata, Washington": (5.0, {50: 2540, 55: 3500, 57: 3925, 60: 4606, 65: 5859}),
}


def _kelvin(degree_f: float) -> float:
    return ZERO_FAHRENHEIT_K + degree_f * FAHRENHEIT_K


def _climate(base_f: float, days_f: float, coldest_f: float) -> Climate:
    return Climate(
        base_k=_kelvin(base_f),
        degree_days=days_f * FAHRENHEIT_K,
        design_outside_k=_kelvin(coldest_f),
    )


@pytest.mark.parametrize("station", STATIONS)
def test_published_bases_follow_from_each_other(station: str) -> None:
    coldest_f, printed = STATIONS[station]
    for base_f in (55, 57, 60):
        found = degree_days_at(_climate(base_f, printed[base_f], coldest_f), _kelvin(50))
        assert found / FAHRENHEIT_K == pytest.approx(printed[50], rel=0.05)
        found = degree_days_at(_climate(base_f, printed[base_f], coldest_f), _kelvin(65))
        assert found / FAHRENHEIT_K == pytest.approx(printed[65], rel=0.05)


# A straight proportion, or none at all, would be far off: the cube is needed.
@pytest.mark.parametrize("station", STATIONS)
def test_published_bases_rule_out_a_proportion(station: str) -> None:
    coldest_f, printed = STATIONS[station]
    proportion = printed[50] * (65 - coldest_f) / (50 - coldest_f)
    assert proportion < 0.75 * printed[65]


def test_invented_year_of_a_sine_and_chance_agrees() -> None:
    chance = random.Random(7)
    means_k = [
        282.0 - 13.0 * math.cos(2 * math.pi * day / 365) + chance.gauss(0.0, 4.5)
        for day in range(365 * 20)
    ]
    hours_k = sorted(k + 4.5 * math.cos(math.pi * h / 6) for k in means_k for h in range(12))
    coldest_k = hours_k[len(hours_k) // 250]
    counted = {
        base_k: sum(max(0.0, base_k - k) for k in means_k) / 20 for base_k in (277.0, 280.0, 284.0)
    }
    climate = Climate(base_k=280.0, degree_days=counted[280.0], design_outside_k=coldest_k)
    for base_k in (277.0, 284.0):
        assert degree_days_at(climate, base_k) == pytest.approx(counted[base_k], rel=0.06)


# Worked by hand: 20 K over the coldest become 25 K, (25 / 20)**3 = 1.953125.
def test_cube_agrees_with_the_hand_sum() -> None:
    climate = Climate(base_k=280.0, degree_days=1000.0, design_outside_k=260.0)
    assert degree_days_at(climate, 285.0) == pytest.approx(1953.125)
    assert degree_days_at(climate, 280.0) == 1000.0


def test_heater_that_starts_below_the_coldest_never_runs() -> None:
    climate = Climate(base_k=280.0, degree_days=1000.0, design_outside_k=265.0)
    assert degree_days_at(climate, 265.0) == 0.0
    assert degree_days_at(climate, 260.0) == 0.0


def test_base_below_the_coldest_leaves_them_as_entered_and_says_so() -> None:
    climate = Climate(base_k=268.0, degree_days=300.0, design_outside_k=270.0)
    assert degree_days_at(climate, 285.0) == 300.0
    told = told_base(climate, 285.0)
    assert told is not None
    assert "used as entered" in words(told, "metric")


def test_another_base_is_told_and_the_same_is_not() -> None:
    climate = Climate(base_k=280.15, degree_days=1000.0, design_outside_k=260.15)
    assert told_base(climate, 280.15) is None
    assert told_base(climate.but(degree_days=0.0), 285.15) is None
    told = told_base(climate, 285.15)
    assert told is not None
    said = words(told, "metric")
    assert "7.0 °C" in said
    assert "12.0 °C" in said
    assert "1,953 K·day" in said


def test_days_tell_both_bases() -> None:
    working = days_working(Climate(), 283.15, 3.0)
    assert {t.name for t in working.inputs} >= {"to a base of", "kept inside", "coldest outside"}
