"""Figures of a curtain that rolls up, worked again by hand from their workings."""

import math

import pytest

from hanging import geared, inputs_of, rolling
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.roll_workings import HOLDS, NO_GUIDE, NO_JOINT

G_M_S2 = 9.80665


def test_energy_follows_from_its_working() -> None:
    work = work_curtain(rolling())
    given = inputs_of(work, "energy_j")
    line_kg_m = given["bar with what grips the film"] + given["film, all layers"] * (
        given["film on the bar when it lifts"] + given["climb of the bar"] / 2
    )
    mass_kg = line_kg_m * given["length of the bar"] + given["crank and joint on the bar"]
    assert work.energy_j == pytest.approx(G_M_S2 * mass_kg * given["climb of the bar"])


def test_longest_bar_for_the_hand_follows_from_its_working() -> None:
    work = work_curtain(rolling())
    given = inputs_of(work, "hand_length_m")
    torque_nm = given["hand force limit"] * given["crank arm"] * given["ratio"]
    lifted_n = torque_nm * given["efficiency"] / (given["roll open"] / 2) / (1 + given["rubbing"])
    line_kg_m = (
        given["bar with what grips the film"]
        + given["film, all layers"] * given["film on the bar open"]
    )
    expected_m = (lifted_n / G_M_S2 - given["crank and joint on the bar"]) / line_kg_m
    assert work.hand_length_m == pytest.approx(expected_m)


def test_turns_and_opening_follow_from_their_workings() -> None:
    work = work_curtain(rolling())
    given = inputs_of(work, "turns")
    wound_m = given["film on the bar open"] - given["film on the bar shut"]
    mean_m = (given["roll shut"] + given["roll open"]) / 2
    assert work.turns == pytest.approx(wound_m / (math.pi * mean_m))
    given = inputs_of(work, "opening_m2")
    above_m = min(0.0, given["side along the bow"] - given["hip to shut bar"])
    height_m = given["climb of the bar"] + above_m - given["roll open"] / 2
    assert work.opening_m2 == pytest.approx(height_m * given["clear length"])


def test_runaway_follows_from_its_working() -> None:
    work = work_curtain(rolling())
    given = inputs_of(work, "runaway_m_s")
    radius_m = given["roll when the bar lifts"] / 2
    falling_kg = (
        given["bar with what grips the film"] * given["length of the bar"]
        + given["crank and joint on the bar"]
    )
    turning = (
        given["inertia of a metre of bar"] * given["length of the bar"]
        + given["inertia of the crank"] * given["ratio"] ** 2
    )
    expected_m_s = math.sqrt(2 * given["energy"] / (falling_kg + turning / radius_m**2))
    assert work.runaway_m_s == pytest.approx(expected_m_s)
    given = inputs_of(work, "runaway_handle_m_s")
    turned_rad_s = given["speed of the bar"] / (given["roll or drum"] / 2)
    assert work.runaway_handle_m_s == pytest.approx(
        turned_rad_s * given["ratio"] * given["crank arm"]
    )


def test_guide_and_gutter_follow_from_their_workings() -> None:
    work = work_curtain(rolling(geared(12)))
    assert work.guide_m == pytest.approx(sum(inputs_of(work, "guide_m").values()))
    given = inputs_of(work, "gutter_gap_m")
    assert work.gutter_gap_m == pytest.approx(
        given["bar stops below the hip"] - given["roll open"] / 2 - given["gutter below the hip"]
    )


def test_figure_that_a_drive_has_not_says_why() -> None:
    cranked, held = work_curtain(rolling()), work_curtain(rolling(geared(12)))
    assert cranked.working("guide_m").rule == NO_GUIDE
    assert held.working("joint_angles_rad").rule == NO_JOINT
    assert held.working("runaway_m_s").rule == HOLDS
