"""The cells of a whole tunnel under pressure: a general root finder, a graph library, by hand."""

import math
from dataclasses import fields
from decimal import Decimal

import networkx as nx
import pytest
from fluids.friction import Churchill_1977
from scipy.optimize import brentq, root

from hoopwright.farm import Bench, Climate, EvenBows, PlacedJumper
from hoopwright.inflation import Inflation
from hoopwright.pressure.held import Held
from hoopwright.pressure.holding import filling
from hoopwright.quantity.working import words
from inflated import filled, with_ends
from samples import double_tunnel, round_profile, tunnel

# Dry air at 20 degC, as in handbook tables.
DENSITY, VISCOSITY = 1.204, 1.82e-5
BORE_M, ROUGH_M = 0.0508, 0.0005


def _loss_pa(flow: float, length_m: float) -> float:
    """Return what a hose of the small catalogue takes, with the library's friction factor."""
    speed = abs(flow) / (math.pi / 4 * BORE_M**2)
    reynolds = max(DENSITY * speed * BORE_M / VISCOSITY, 1e-6)
    factor = Churchill_1977(reynolds, ROUGH_M / BORE_M)
    loss = (factor * length_m / BORE_M + 1.5) * DENSITY / 2 * speed * speed
    return math.copysign(loss, flow)


def _rooted(inflation: Inflation, open_share: float) -> dict[str, float]:
    """Return the cells' pressures by a general root finder over pressures and flows."""
    # 150 + b q + a q^2 is 120 at 0.02 and 0 at 0.045, so b + 0.02 a = -1500 and
    # b + 0.045 a = -3333.3; that makes a = -73333.3 and b = -33.3.
    bend, tilt = -220000 / 3, -100 / 3
    marks = [cell.mark for cell in inflation.cells]
    count = len(marks)

    def spare(unknown: list[float]) -> list[float]:
        pressures = dict(zip(marks, unknown[:count], strict=True))
        flows = [value / 1e3 for value in unknown[count:]]
        given = flows[-1]
        gains = {
            c.mark: -c.unit_leak_m3_s * abs(pressures[c.mark]) ** 0.65 for c in inflation.cells
        }
        gains["cell/roof/0"] += given
        drops = []
        for jumper, flow in zip(inflation.jumpers, flows, strict=False):
            gains[jumper.from_cell] -= flow
            gains[jumper.to_cell] += flow
            drop = pressures[jumper.from_cell] - pressures[jumper.to_cell]
            drops.append(drop - _loss_pa(flow, 0.9))
        speed = given / (math.pi / 4 * BORE_M**2)
        damper = (1 / open_share**2 - 1) * DENSITY / 2 * speed * speed
        fan = 150 + tilt * given + bend * given**2
        drops.append(fan - _loss_pa(given, 1.5) - damper - pressures["cell/roof/0"])
        return [gain * 1e3 for gain in gains.values()] + drops

    guess = [20.0] * count + [1.0] * len(inflation.jumpers) + [10.0]
    found = root(spare, guess, tol=1e-12)
    assert found.success
    return dict(zip(marks, found.x, strict=False))


@pytest.mark.parametrize("open_share", [1.0, 0.6])
@pytest.mark.parametrize("ends", [False, True])
def test_pressures_are_those_of_a_general_root_finder(ends: bool, open_share: float) -> None:
    made = filled(with_ends(double_tunnel()) if ends else double_tunnel(), open_share=open_share)
    held = made.held()
    expected = _rooted(made.inflation, open_share)
    assert len(held.cells) == (7 if ends else 5)
    for cell in held.cells:
        assert cell.pressure_pa == pytest.approx(expected[cell.mark], abs=0.02)


def test_what_the_blower_gives_is_what_leaks() -> None:
    held = filled().held()
    assert held.fan_flow_m3_s == pytest.approx(held.leak_m3_s, rel=1e-6)
    assert held.leak_m3_s == pytest.approx(sum(cell.leak_m3_s for cell in held.cells))
    fed = max(cell.pressure_pa for cell in held.cells)
    assert held.fan_pressure_pa - held.feed_loss_pa == pytest.approx(fed)
    assert (held.low_pa, held.high_pa) == (min(c.pressure_pa for c in held.cells), fed)


def test_critical_hoses_are_the_bridges_of_the_graph_library() -> None:
    placed = (
        PlacedJumper(surface="first_side", at_m=4.0),
        PlacedJumper(surface="first_side", at_m=8.0),
        PlacedJumper(surface="first_side", at_m=20.0),
        PlacedJumper(surface="second_side", at_m=4.0),
    )
    made = filled(jumpers=placed)
    held = made.held()
    # A graph has one edge between two places, so hoses side by side are two edges by a place of
    # their own.
    graph = nx.Graph()
    for jumper in made.inflation.jumpers:
        nx.add_path(graph, [jumper.from_cell, jumper.mark, jumper.to_cell])
    bridges = {place for edge in nx.bridges(graph) for place in edge}
    assert [hose.critical for hose in held.hoses] == [hose.mark in bridges for hose in held.hoses]
    assert [hose.critical for hose in held.hoses] == [False, False, True, True]
    assert held.hoses[2].cuts_off == ("cell/side/0/panel/1",)
    assert held.hoses[0].flow_m3_s == pytest.approx(held.hoses[1].flow_m3_s)


def test_a_cell_without_a_hose_is_not_fed_and_counts_for_no_window() -> None:
    placed = tuple(
        PlacedJumper(surface=surface, at_m=at_m)
        for surface, at_m in (("first_side", 4.0), ("first_side", 20.0), ("second_side", 4.0))
    )
    made = filled(jumpers=placed)
    held = made.held()
    (alone,) = made.inflation.no_feed
    states = {cell.mark: cell for cell in held.cells}
    assert (states[alone].state, states[alone].pressure_pa) == ("not fed", 0.0)
    assert states[alone].minutes is None
    assert held.low_pa == min(c.pressure_pa for c in held.cells if c.mark != alone)
    assert held.tries[0].low_pa > 10


@pytest.mark.parametrize(
    ("low_pa", "high_pa", "state"),
    [(100.0, 120.0, "low"), (20.0, 120.0, "in range"), (20.0, 30.0, "high")],
)
def test_cells_are_told_against_the_pressures_wanted(
    low_pa: float, high_pa: float, state: str
) -> None:
    held = filled(low_pa=low_pa, high_pa=high_pa).held()
    assert {cell.state for cell in held.cells} == {state}
    assert "wanted" in words(held.told, "metric")


def test_leaks_greater_than_the_blower_never_fill() -> None:
    held = filled(leak_roof=1e-3).held()
    assert held.never_fills
    assert {cell.state for cell in held.cells} == {"flat"}
    assert held.fill_min is None
    assert held.tries[0].verdict == "never fills"
    assert held.high_pa < 10
    assert "before any cell is filled" in words(held.told, "metric")


def test_without_a_blower_nothing_stands_but_all_blowers_are_tried() -> None:
    with_one = filled().held()
    held = filled(blower=None).held()
    assert {cell.state for cell in held.cells} == {"not fed"}
    assert held.power_w == held.fan_flow_m3_s == held.high_pa == held.seal_need_n_m == 0
    assert (held.yearly_cost, held.pulls, held.never_fills) == (Decimal(0), (), False)
    assert filling(held) is None
    assert held.tries[0].low_pa == with_one.tries[0].low_pa
    assert not held.tries[0].chosen
    assert with_one.tries[0].chosen


@pytest.mark.parametrize("missing", ["blowers", "hoses"])
def test_a_catalogue_without_blower_or_hose_holds_nothing(missing: str) -> None:
    held = filled().with_catalogue(**{missing: ()}).held()
    assert {cell.state for cell in held.cells} == {"not fed"}
    assert (held.tries, held.pulls, held.fill_min) == ((), (), None)
    assert held.slack_m > 0


def test_one_layer_has_no_cell_and_keeps_its_slack() -> None:
    held = filled(tunnel()).held(bench=Bench(coupon_n_m=400.0))
    assert (held.cells, held.hoses, held.tries, held.leaks) == ((), (), (), ())
    assert (held.low_pa, held.fan_flow_m3_s, held.seal_share) == (0.0, 0.0, 0.0)
    assert held.slack_m > 0
    assert "No part" in words(held.told, "metric")


# Castilla, Greenhouse Technology and Management, 7.3.1: 250 W for each 1000 m2. A floor of 30 by
# 96 ft is 9.144 x 29.2608 m = 267.6 m2, which makes 66.9 W.
def test_power_of_the_textbook_for_a_floor_of_30_by_96_feet() -> None:
    made = tunnel(round_profile().but(span_m=9.144))
    made = made.but(
        frame=made.frame.but(length_m=29.2608, bows=EvenBows(count=25, spacing_m=1.2192))
    )
    held = filled(made).held()
    assert held.book_power_w == pytest.approx(66.9, abs=0.05)


# 60 W the year round are 0.06 kW x 8760 h = 525.6 kWh, at 0.16 each 84.096.
def test_power_for_a_year_by_hand() -> None:
    held = filled().held(climate=Climate(power_price=Decimal("0.16"), blower_hours=8760.0))
    assert held.yearly_kwh == pytest.approx(525.6)
    assert held.yearly_cost == held.tries[0].yearly_cost == Decimal("84.10")
    assert held.power_per_area_w_m2 == pytest.approx(60 / (8 * 24))


# 24 m, film 1.8e-4 and steel 1.2e-5 for each kelvin, 35 K colder: 24 x 1.68e-4 x 35 = 0.14112 m.
def test_slack_by_hand_and_its_sag_by_a_root_finder() -> None:
    held = filled().held(climate=Climate(install_k=288.15, coldest_k=253.15))
    assert held.slack_m == pytest.approx(0.14112)
    share = 0.14112 / 24

    def spare(rise: float) -> float:
        radius = (1.5**2 / 4 + rise**2) / (2 * rise)
        return 2 * radius * math.asin(0.75 / radius) / 1.5 - 1 - share

    assert held.sag_m == pytest.approx(brentq(spare, 1e-3, 0.7), rel=1e-6)
    warm = filled().held(climate=Climate(install_k=253.15, coldest_k=288.15))
    assert (warm.slack_m, warm.sag_m) == (0.0, 0.0)


def test_the_course_of_filling_comes_to_the_pressures_and_is_remembered() -> None:
    held = filled().held()
    course = filling(held)
    assert course is not None
    assert course.final_pa == pytest.approx([cell.pressure_pa for cell in held.cells])
    assert course is filling(held)
    for cell, minutes in zip(held.cells, course.minutes, strict=True):
        assert cell.minutes == pytest.approx(minutes, rel=0.03)
    assert held.fill_min == max(c.minutes for c in held.cells if c.minutes is not None)


def test_hoses_take_what_lies_between_their_cells() -> None:
    held = filled().held()
    pressures = {cell.mark: cell.pressure_pa for cell in held.cells}
    for hose, jumper in zip(held.hoses, filled().inflation.jumpers, strict=True):
        drop_pa = pressures[jumper.from_cell] - pressures[jumper.to_cell]
        assert hose.loss_pa == drop_pa == pytest.approx(_loss_pa(hose.flow_m3_s, 0.9), rel=1e-4)


def _unexplained(held: Held) -> list[str]:
    unsaid = {
        "mark",
        "name",
        "key",
        "chosen",
        "told",
        "told_window",
        "workings",
        "cell",
        "taken_on",
    }
    unsaid |= {"net", "volumes_m3", "full_pa", "readings", "baseline_on"}
    nested = {"cells", "hoses", "tries_made", "fitting_made", "pulls", "leaks"}
    missing = []
    for one in (held, *held.cells, *held.hoses, *held.tries, *held.pulls, *held.leaks):
        told = {working.figure for working in one.workings}
        missing += [
            f"{type(one).__name__}.{field.name}"
            for field in fields(one)
            if field.name not in told | unsaid | nested
        ]
    return missing


def test_every_figure_says_how_it_was_got() -> None:
    held = filled(with_ends(double_tunnel())).held(bench=Bench(coupon_n_m=400.0))
    assert len(held.pulls) == 6
    assert _unexplained(held) == []
