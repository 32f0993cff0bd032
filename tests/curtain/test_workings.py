"""A working carries what its figure is got from: the figures worked again from it by hand."""

import math
from dataclasses import fields

import pytest

from hanging import bar, crank, hung, round_tube, span
from hoopwright.curtain import CurtainWork
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.workings import NO_ROPE
from hoopwright.farm import Limits
from hoopwright.quantity.working import Units, explain

G_M_S2 = 9.80665
NAMES = {"side", "index"}


def _work(rope_step_ft: float = 4.0) -> CurtainWork:
    return work_curtain(
        hung(
            span(60, 5, layers=2),
            bar(round_tube(1.66, 0.065), cap_lb_ft=0.25),
            crank(12, ratio=2.0, efficiency=0.8, mass_kg=2.0),
            Limits(rubbing_share=0.2),
            wrap_ft=1,
            slack_ft=0.25,
            rope_step_ft=rope_step_ft,
        )
    )


def _inputs(work: CurtainWork, figure: str) -> dict[str, float]:
    return {
        t.name: float(t.value) for t in work.working(figure).inputs if not isinstance(t.value, str)
    }


@pytest.mark.parametrize("rope_step_ft", [0.0, 4.0])
@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_every_figure_says_how_it_was_got(rope_step_ft: float, units: Units) -> None:
    work = _work(rope_step_ft)
    figures = {f.name for f in fields(work) if isinstance(getattr(work, f.name), float | int)} | {
        "diameters_m",
        "weights_n",
        "torques_nm",
        "hand_forces_n",
    }
    assert sorted(w.figure for w in work.workings) == sorted(figures - NAMES)
    for working in work.workings:
        assert working.source in explain(working, units)
        assert working.inputs or working.rule == NO_ROPE


def test_energy_follows_from_its_working() -> None:
    work = _work()
    given = _inputs(work, "energy_j")
    line_kg_m = given["bar with cap"] + given["film, all layers"] * (
        given["film on the bar when it lifts"] + given["climb of the bar"] / 2
    )
    mass_kg = line_kg_m * given["length of the bar"] + given["crank and joint on the bar"]
    assert work.energy_j == pytest.approx(G_M_S2 * mass_kg * given["climb of the bar"])


def test_longest_bar_for_the_hand_follows_from_its_working() -> None:
    work = _work()
    given = _inputs(work, "hand_length_m")
    torque_nm = given["hand force limit"] * given["crank arm"] * given["ratio"]
    lifted_n = torque_nm * given["efficiency"] / (given["roll open"] / 2) / (1 + given["rubbing"])
    line_kg_m = given["bar with cap"] + given["film, all layers"] * given["film on the bar open"]
    expected_m = (lifted_n / G_M_S2 - given["crank and joint on the bar"]) / line_kg_m
    assert work.hand_length_m == pytest.approx(expected_m)


def test_twist_and_longest_trailing_follow_from_their_workings() -> None:
    work = _work()
    given = _inputs(work, "twist_rad") | _inputs(work, "trailing_length_m")
    inside_m = given["outside of the bar"] - 2 * given["wall"]
    polar_m4 = math.pi * (given["outside of the bar"] ** 4 - inside_m**4) / 32
    stiffness_nm2 = 77e9 * polar_m4
    line_nm = given["torque of one metre of bar, open"]
    length_m = given["length of the bar"]
    assert work.twist_rad == pytest.approx(line_nm * length_m**2 / (2 * stiffness_nm2))
    expected_m = math.sqrt(
        2 * stiffness_nm2 * given["trailing limit"] / (line_nm * given["roll open"] / 2)
    )
    assert work.trailing_length_m == pytest.approx(expected_m)


def test_turns_and_opening_follow_from_their_workings() -> None:
    work = _work()
    given = _inputs(work, "turns")
    mean_m = (given["roll shut"] + given["roll open"]) / 2
    assert work.turns == pytest.approx(given["film from hip seam to bar"] / (math.pi * mean_m))
    given = _inputs(work, "opening_m2")
    height_m = min(given["climb of the bar"], given["side along the bow"]) - given["roll open"]
    assert work.opening_m2 == pytest.approx(height_m * given["clear length"])
