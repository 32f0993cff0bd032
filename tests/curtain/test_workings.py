"""A working carries what its figure is got from: the figures worked again from it by hand."""

import math
from dataclasses import fields

import pytest

from hanging import (
    FOOT_M,
    bar,
    boarded,
    chosen,
    crank,
    drum,
    geared,
    hung,
    round_tube,
    sided,
    span,
    square_tube,
)
from hoopwright.curtain import CurtainWork
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.hung import HungCurtain
from hoopwright.farm import Limits
from hoopwright.farm.catalogue import Drive
from hoopwright.quantity.working import ENTERED, Units, explain

G_M_S2 = 9.80665
UNEXPLAINED = {"mark", "side", "index", "kind", "cranked", "bound_by", "hung", "workings"}
LIMITS = Limits(rubbing_share=0.2, uneven_winding_m=0.0002)


def _rolling(drive: Drive | None = None) -> HungCurtain:
    return boarded(
        hung(
            span(60, 5, layers=2),
            bar(round_tube(1.66, 0.065), cap_lb_ft=0.25).but(
                joint_play_m=0.0005, max_length_m=60.0
            ),
            drive or crank(12, ratio=2.0, efficiency=0.8, mass_kg=2.0, extension_m=2.0),
            LIMITS,
            wrap_ft=1,
            slack_ft=0.25,
            rope_step_ft=4.0,
        ),
        gutter_drop_m=0.1,
    )


def _dropping(holds: bool = False) -> HungCurtain:
    curtain = hung(
        span(60, 5),
        bar(square_tube(1.5, 0.0625), "aluminium"),
        drum(12, 3, ratio=2.0, efficiency=0.8, holds=holds, max_length_m=50.0),
        LIMITS,
        wrap_ft=0.5,
        kind="drop_down",
    )
    return sided(curtain, bunch_m=0.3)


CASES = {
    "hand crank": _rolling(),
    "geared crank": _rolling(geared(12)),
    "in the middle": chosen(_rolling(geared(12, holds=False)), crank_end="middle"),
    "winding into": chosen(_rolling(), winding="into", rope="none"),
    "straps": chosen(_rolling(), rope="straps"),
    "a leg in each bay": sided(_rolling(), rope_step_m=None),
    "a strap at each bow": sided(chosen(_rolling(), rope="straps"), rope_step_m=None),
    "drop-down": _dropping(),
    "drop-down that holds": boarded(chosen(_dropping(True), rope="straps"), gutter_drop_m=0.1),
}


def _inputs(work: CurtainWork, figure: str) -> dict[str, float]:
    return {
        t.name: float(t.value) for t in work.working(figure).inputs if not isinstance(t.value, str)
    }


@pytest.mark.parametrize("curtain", CASES.values(), ids=CASES)
@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_every_figure_says_how_it_was_got(curtain: HungCurtain, units: Units) -> None:
    work = work_curtain(curtain)
    figures = {field.name for field in fields(work)} - UNEXPLAINED
    assert sorted(w.figure for w in work.workings) == sorted(figures)
    for working in work.workings:
        assert working.source in explain(working, units)
        assert working.inputs or working.source == ENTERED


@pytest.mark.parametrize("curtain", CASES.values(), ids=CASES)
def test_figure_without_inputs_is_one_that_this_curtain_has_not(curtain: HungCurtain) -> None:
    work = work_curtain(curtain)
    for working in work.workings:
        if working.inputs or working.figure == "trailing_length_m":
            continue
        figure = getattr(work, working.figure)
        plain = 1.0 if working.figure == "joint_swing" else 0
        assert figure in (None, plain, (0.0, 0.0, 0.0))


def test_energy_follows_from_its_working() -> None:
    work = work_curtain(_rolling())
    given = _inputs(work, "energy_j")
    line_kg_m = given["bar with what grips the film"] + given["film, all layers"] * (
        given["film on the bar when it lifts"] + given["climb of the bar"] / 2
    )
    mass_kg = line_kg_m * given["length of the bar"] + given["crank and joint on the bar"]
    assert work.energy_j == pytest.approx(G_M_S2 * mass_kg * given["climb of the bar"])


def test_energy_of_a_rod_follows_from_its_working() -> None:
    work = work_curtain(_dropping())
    given = _inputs(work, "energy_j")
    way_m = given["way of the rod"]
    carried_m = (
        given["film hanging from the rod when shut"] + given["film wrapped on the rod"] - way_m / 2
    )
    line_kg_m = given["bar with what grips the film"] + given["film, all layers"] * carried_m
    assert work.energy_j == pytest.approx(G_M_S2 * line_kg_m * given["length of the bar"] * way_m)


def test_longest_bar_for_the_hand_follows_from_its_working() -> None:
    work = work_curtain(_rolling())
    given = _inputs(work, "hand_length_m")
    torque_nm = given["hand force limit"] * given["crank arm"] * given["ratio"]
    lifted_n = torque_nm * given["efficiency"] / (given["roll open"] / 2) / (1 + given["rubbing"])
    line_kg_m = (
        given["bar with what grips the film"]
        + given["film, all layers"] * given["film on the bar open"]
    )
    expected_m = (lifted_n / G_M_S2 - given["crank and joint on the bar"]) / line_kg_m
    assert work.hand_length_m == pytest.approx(expected_m)


def test_twist_follows_from_its_working() -> None:
    work = work_curtain(chosen(_rolling(), crank_end="middle"))
    given = _inputs(work, "twist_rad")
    inside_m = given["outside of the bar"] - 2 * given["wall"]
    stiffness_nm2 = 77e9 * math.pi * (given["outside of the bar"] ** 4 - inside_m**4) / 32
    line_nm = given["torque of one metre of bar, open"]
    reach_m = given["reach from the crank"]
    assert work.twist_rad == pytest.approx(line_nm * reach_m**2 / (2 * stiffness_nm2))


def test_trailing_follows_from_its_workings() -> None:
    work = work_curtain(_rolling())
    twist, play = _inputs(work, "twist_trailing_m"), _inputs(work, "play_trailing_m")
    uneven = _inputs(work, "uneven_trailing_m")
    by_play_m = (
        play["joints up to there"]
        * play["play in a joint"]
        / play["outside of the bar"]
        * play["roll open"]
    )
    by_uneven_m = 2 * math.pi * uneven["turns of the bar"] * uneven["uneven winding"]
    by_twist_m = twist["twist"] * twist["roll open"] / 2
    assert work.trailing_m == pytest.approx(by_twist_m + by_play_m + by_uneven_m)
    assert work.trailing_m == pytest.approx(sum(_inputs(work, "trailing_m").values()))


def test_turns_and_opening_follow_from_their_workings() -> None:
    work = work_curtain(_rolling())
    given = _inputs(work, "turns")
    wound_m = given["film on the bar open"] - given["film on the bar shut"]
    mean_m = (given["roll shut"] + given["roll open"]) / 2
    assert work.turns == pytest.approx(wound_m / (math.pi * mean_m))
    given = _inputs(work, "opening_m2")
    above_m = min(0.0, given["side along the bow"] - given["hip to shut bar"])
    height_m = given["climb of the bar"] + above_m - given["roll open"] / 2
    assert work.opening_m2 == pytest.approx(height_m * given["clear length"])


def test_runaway_follows_from_its_working() -> None:
    work = work_curtain(_rolling())
    given = _inputs(work, "runaway_m_s")
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
    given = _inputs(work, "runaway_handle_m_s")
    turned_rad_s = given["speed of the bar"] / (given["roll or drum"] / 2)
    assert work.runaway_handle_m_s == pytest.approx(
        turned_rad_s * given["ratio"] * given["crank arm"]
    )


def test_guide_and_gutter_follow_from_their_workings() -> None:
    work = work_curtain(_rolling(geared(12)))
    assert work.guide_m == pytest.approx(sum(_inputs(work, "guide_m").values()))
    given = _inputs(work, "gutter_gap_m")
    assert work.gutter_gap_m == pytest.approx(
        given["bar stops below the hip"] - given["roll open"] / 2 - given["gutter below the hip"]
    )


def test_lines_of_a_drop_down_curtain_follow_from_their_working() -> None:
    work = work_curtain(_dropping())
    given = _inputs(work, "lift_line_m")
    line_m = given["way of the rod"] + given["reach to the cable"] + 2 * given["knot"]
    run_m = given["way of the rod"] + given["down to the drum"] + given["turns left on the drum"]
    cable_m = given["length of the curtain"] + given["runs of cable from the drum"] * run_m
    assert work.lift_line_m == pytest.approx(given["lift lines"] * line_m + cable_m)


def test_longest_bar_is_the_least_of_its_inputs() -> None:
    for curtain in CASES.values():
        work = work_curtain(curtain)
        assert work.longest_m == min(_inputs(work, "longest_m").values())


def test_pull_on_rope_and_eye_follows_from_its_working() -> None:
    work = work_curtain(chosen(_rolling(), rope="straps"))
    given = _inputs(work, "rope_tension_n")
    load_n = given["pressure of the storm"] * given["share taken"] * given["step"]
    load_n *= given["between the rows of eyes"]
    along_n = load_n * given["leg"] / (8 * given["bow"])
    assert work.rope_tension_n == pytest.approx(math.hypot(along_n, load_n / 2))
    assert work.eye_load_n == pytest.approx(load_n / 2)
    assert _inputs(work, "rope_m")["between the rows of eyes"] == pytest.approx(4.75 * FOOT_M)
