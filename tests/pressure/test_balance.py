"""The pressures of a net against a general root finder, by hand and at random."""

import math
from dataclasses import replace

import pytest
from fluids import Reynolds, dP_from_K
from fluids.friction import Churchill_1977
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq, root

from hoopwright.pressure import balance
from hoopwright.pressure.balance import AirBalance, balance_air
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.hose import AIR_KG_M3, AIR_PA_S, Hose, driven_flow, pressure_loss
from hoopwright.pressure.net import AirCell, AirNet, Feed, Jump, joined_ways, split_joined


def _hose(bore_m: float, length_m: float) -> Hose:
    return Hose(bore_m, length_m, roughness_m=0.0005, loss_k=1.5)


FAN = FanCurve(((0.0, 150.0), (0.02, 120.0), (0.045, 0.0)))
NET = AirNet(
    cells=(
        AirCell("roof", 4e-6 * 420),
        AirCell("left", 6e-6 * 45),
        AirCell("right", 6e-6 * 45),
        AirCell("end", 6e-6 * 30),
    ),
    jumps=(
        Jump("roof", "left", _hose(0.0508, 1.2)),
        Jump("roof", "right", _hose(0.0508, 1.2)),
        Jump("left", "end", _hose(0.0381, 1.0)),
    ),
    feeds=(Feed("roof", _hose(0.0762, 1.0)),),
    fan=FAN,
)


@st.composite
def nets(draw: st.DrawFn) -> AirNet:
    """Draw a net of up to eight cells: a tree and some more hoses, tight and leaky cells."""
    leak = st.one_of(st.just(0.0), st.floats(-7.0, -2.0).map(lambda power: 10.0**power))
    exponent = st.sampled_from([0.5, 0.65, 0.8, 1.0])
    count = draw(st.integers(1, 8))
    cells = tuple(AirCell(f"c{at}", draw(leak), draw(exponent)) for at in range(count))
    hose = st.builds(
        Hose,
        bore_m=st.floats(0.02, 0.15),
        length_m=st.floats(0.2, 15.0),
        roughness_m=st.sampled_from([0.0, 0.0005]),
        loss_k=st.sampled_from([0.0, 1.5, 10.0]),
    )
    jumps = [
        Jump(f"c{draw(st.integers(0, at - 1))}", f"c{at}", draw(hose)) for at in range(1, count)
    ]
    place = st.integers(0, count - 1)
    for _ in range(draw(st.integers(0, 4)) if count > 1 else 0):
        one = draw(place)
        other = draw(place.filter(lambda at, one=one: at != one))
        jumps.append(Jump(f"c{one}", f"c{other}", draw(hose)))
    feed = st.builds(
        Feed,
        into=place.map(lambda at: f"c{at}"),
        hose=hose,
        damper_k=st.sampled_from([0.0, 5.0, 1000.0]),
    )
    feeds = tuple(draw(st.lists(feed, min_size=1, max_size=2)))
    most_pa, most_m3_s = draw(st.floats(50.0, 800.0)), draw(st.floats(0.005, 0.15))
    middle = draw(st.sampled_from([0.4, 0.5, 0.75]))
    points = ((0.0, most_pa), (most_m3_s / 2, middle * most_pa), (most_m3_s, 0.0))
    return AirNet(cells, tuple(jumps), feeds, FanCurve(points))


def _gains(net: AirNet, found: AirBalance) -> dict[str, float]:
    """Return what each cell gets more than it gives, m3/s, from the flows of the result."""
    gains = dict.fromkeys(found.cells, 0.0)
    for feed, flow in zip(net.feeds, found.feed_flows_m3_s, strict=True):
        gains[feed.into] += flow
    for jump, flow in zip(net.jumps, found.jump_flows_m3_s, strict=True):
        gains[jump.from_cell] -= flow
        gains[jump.to_cell] += flow
    for cell, leak in zip(found.cells, found.leaks_m3_s, strict=True):
        gains[cell] -= leak
    return gains


@settings(deadline=None)
@given(net=nets())
def test_every_cell_gives_what_it_gets(net: AirNet) -> None:
    found = balance_air(net)
    most = net.fan.most_m3_s
    assert all(abs(gain) <= 1e-7 * most for gain in _gains(net, found).values())
    assert sum(found.feed_flows_m3_s) == pytest.approx(found.fan_flow_m3_s, abs=1e-7 * most)
    assert sum(found.leaks_m3_s) == pytest.approx(found.fan_flow_m3_s, abs=1e-6 * most)


@settings(deadline=None)
@given(net=nets())
def test_every_hose_and_the_blower_keep_to_their_laws(net: AirNet) -> None:
    found = balance_air(net)
    near = 1e-5 * net.fan.most_pa
    for jump, flow in zip(net.jumps, found.jump_flows_m3_s, strict=True):
        drop_pa = found.pressure_pa(jump.from_cell) - found.pressure_pa(jump.to_cell)
        assert pressure_loss(jump.hose, flow) == pytest.approx(drop_pa, abs=near)
    for feed, flow in zip(net.feeds, found.feed_flows_m3_s, strict=True):
        drop_pa = found.fan_pressure_pa - found.pressure_pa(feed.into)
        assert pressure_loss(feed.damped, flow) == pytest.approx(drop_pa, abs=near)
    held_pa = net.fan.pressure_pa(found.fan_flow_m3_s)
    assert held_pa == pytest.approx(found.fan_pressure_pa, abs=near)


@settings(deadline=None)
@given(net=nets())
def test_no_pressure_passes_the_blower_and_no_leak_its_flow(net: AirNet) -> None:
    found = balance_air(net)
    assert all(0 <= pa <= net.fan.most_pa for pa in found.pressures_pa)
    assert all(leak <= found.fan_flow_m3_s * (1 + 1e-6) + 1e-9 for leak in found.leaks_m3_s)
    assert -1e-9 <= found.fan_flow_m3_s <= net.fan.most_m3_s


# Worked by hand, as a chain from the end cell: with the end at p the left hose carries the end's
# leak, and so on up to the blower: roof 46.3, left 38.1, right 42.6, end 33.9 Pa, 0.02807 m3/s.
# Written out as a march with the library's friction factor, for one unknown alone.
def _library_loss(hose: Hose, flow_m3_s: float) -> float:
    speed = flow_m3_s / (math.pi / 4 * hose.bore_m**2)
    reynolds = Reynolds(D=hose.bore_m, V=speed, rho=AIR_KG_M3, mu=AIR_PA_S)
    factor = Churchill_1977(Re=reynolds, eD=hose.roughness_m / hose.bore_m)
    return float(dP_from_K(K=factor * hose.length_m / hose.bore_m + 1.5, rho=AIR_KG_M3, V=speed))


def _march(end_pa: float) -> tuple[float, float, float, float, float]:
    """Return the left, right and roof pressures, the whole flow and the blower's spare."""
    end_flow = 6e-6 * 30 * end_pa**0.65
    left_pa = end_pa + _library_loss(NET.jumps[2].hose, end_flow)
    left_flow = end_flow + 6e-6 * 45 * left_pa**0.65
    roof_pa = left_pa + _library_loss(NET.jumps[0].hose, left_flow)
    right_pa = brentq(
        lambda pa: pa + _library_loss(NET.jumps[1].hose, 6e-6 * 45 * pa**0.65) - roof_pa,
        1e-3,
        roof_pa,
    )
    flow = left_flow + 6e-6 * 45 * right_pa**0.65 + 4e-6 * 420 * roof_pa**0.65
    outlet_pa = roof_pa + _library_loss(NET.feeds[0].hose, flow)
    # The parabola through (0, 150), (0.02, 120), (0.045, 0): Lagrange's form.
    held_pa = 150 * (flow - 0.02) * (flow - 0.045) / (0.02 * 0.045)
    held_pa += 120 * flow * (flow - 0.045) / (0.02 * (0.02 - 0.045))
    return left_pa, right_pa, roof_pa, flow, held_pa - outlet_pa


def test_tree_agrees_with_a_march_from_its_end() -> None:
    end_pa = brentq(lambda pa: _march(pa)[-1], 1.0, 60.0, xtol=1e-11)
    left_pa, right_pa, roof_pa, flow, _ = _march(end_pa)
    found = balance_air(NET)
    assert found.pressures_pa == pytest.approx((roof_pa, left_pa, right_pa, end_pa), rel=1e-7)
    assert found.fan_flow_m3_s == pytest.approx(flow, rel=1e-7)
    assert (roof_pa, left_pa, right_pa, end_pa) == pytest.approx((46.3, 38.1, 42.6, 33.9), abs=0.05)
    assert flow == pytest.approx(0.02807, abs=1e-5)


def _spare(net: AirNet, pressures: list[float]) -> list[float]:
    """Return what each cell and the blower's outlet get more than they give, m3/s."""
    held = [max(pa, 0.0) for pa in pressures]
    spare = [-cell.leak_m3_s(pa) for cell, pa in zip(net.cells, held, strict=False)]
    spare.append(net.fan.flow_m3_s(held[-1]))
    for one, other, hose in joined_ways(net, net.cells):
        flow = driven_flow(hose, pressures[one] - pressures[other])
        spare[one] -= flow
        spare[other] += flow
    return spare


# A ring: no march from an end solves it.
RING = replace(
    NET,
    jumps=(*NET.jumps, Jump("end", "right", _hose(0.03, 2.5)), Jump("roof", "end", _hose(0.02, 4))),
    feeds=(*NET.feeds, Feed("right", _hose(0.04, 3.0), damper_k=3.0)),
)


@pytest.mark.parametrize("net", [NET, RING])
def test_pressures_are_those_of_a_general_root_finder(net: AirNet) -> None:
    found = balance_air(net)
    other_way = root(lambda p: _spare(net, list(p)), [60, 40, 50, 30, 90], method="hybr", tol=1e-12)
    assert max(abs(gain) for gain in other_way.fun) < 1e-10
    assert list(other_way.x) == pytest.approx(
        [*found.pressures_pa, found.fan_pressure_pa], rel=1e-6
    )


@settings(deadline=None, max_examples=40)
@given(net=nets())
def test_pressures_of_any_net_are_those_of_a_general_root_finder(net: AirNet) -> None:
    found = balance_air(net)
    # Started beside the answer: the finder has to come back to it by its own steps.
    start = [pa * 0.98 + 0.01 for pa in (*found.pressures_pa, found.fan_pressure_pa)]
    other_way = root(lambda p: _spare(net, list(p)), start, method="hybr", tol=1e-12)
    assume(other_way.success)
    # Above the most it holds the curve has no air at any pressure, so that a tight net would be at
    # rest at all of them.
    assume(max(other_way.x) <= net.fan.most_pa * (1 + 1e-6))
    near = 1e-3 * net.fan.most_pa
    assert list(other_way.x[:-1]) == pytest.approx(list(found.pressures_pa), abs=near)


@settings(deadline=None, max_examples=40)
@given(net=nets())
def test_going_half_of_the_way_comes_to_the_same_pressures(net: AirNet) -> None:
    found = balance_air(net)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(balance, "_PATIENCE", 0)
        slowly = balance_air(net)
    assert found.is_settled
    assert slowly.is_settled
    near = 1e-5 * net.fan.most_pa
    assert slowly.pressures_pa == pytest.approx(found.pressures_pa, abs=near)


def test_search_that_does_not_rest_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(balance, "_ROUNDS", 2)
    assert not balance_air(NET).is_settled


# A tight cell takes no air, so nothing is lost on the way and it stands at the blower's most.
def test_tight_cells_stand_at_the_most_the_blower_holds() -> None:
    tight = replace(NET, cells=tuple(replace(c, unit_leak_m3_s=0.0) for c in NET.cells))
    found = balance_air(tight)
    assert found.pressures_pa == pytest.approx((150.0,) * 4)
    assert found.fan_flow_m3_s == pytest.approx(0.0, abs=1e-9)


def test_damper_takes_as_much_as_its_velocity_pressures() -> None:
    damped = replace(NET, feeds=(replace(NET.feeds[0], damper_k=8.0),))
    longer = Hose(0.0762, 1.0, roughness_m=0.0005, loss_k=9.5)
    assert balance_air(damped) == balance_air(replace(NET, feeds=(Feed("roof", longer),)))
    assert balance_air(damped).pressures_pa[0] < balance_air(NET).pressures_pa[0]


def test_cells_alike_share_alike() -> None:
    cells = (AirCell("hub", 1e-4), *(AirCell(mark, 2e-4) for mark in "abc"))
    jumps = tuple(Jump("hub", mark, _hose(0.05, 1.0)) for mark in "abc")
    found = balance_air(AirNet(cells, jumps, (Feed("hub", _hose(0.075, 1.0)),), FAN))
    assert found.jump_flows_m3_s == pytest.approx((found.jump_flows_m3_s[0],) * 3)


def test_order_of_cells_does_not_matter() -> None:
    turned = replace(NET, cells=NET.cells[::-1], jumps=NET.jumps[::-1])
    found, other = balance_air(NET), balance_air(turned)
    assert other.pressures_pa == pytest.approx(found.pressures_pa[::-1])


def test_cell_without_hose_is_listed_and_stays_flat() -> None:
    net = replace(
        NET,
        cells=(AirCell("porch", 1e-4), *NET.cells, AirCell("shed", 1e-4)),
        jumps=(Jump("porch", "shed", _hose(0.05, 1.0)), *NET.jumps),
    )
    found = balance_air(net)
    assert found.unjoined == ("porch", "shed")
    assert found.pressure_pa("shed") == 0.0
    assert found.jump_flows_m3_s[0] == 0.0
    assert found.jump_flows_m3_s[1:] == balance_air(NET).jump_flows_m3_s
    assert found.pressures_pa[1:5] == balance_air(NET).pressures_pa
    assert [cell.mark for cell in split_joined(net)[0]] == ["roof", "left", "right", "end"]


def test_leaks_that_take_all_never_fill() -> None:
    torn = replace(NET, cells=(AirCell("roof", 0.05), *NET.cells[1:]))
    found = balance_air(torn)
    assert found.never_fills
    assert found.unfilled == NET.marks
    assert not balance_air(NET).never_fills
    assert balance_air(NET, fills_at_pa=35.0).unfilled == ("end",)
    # Nearly all of what the blower gives freely, 0.045 m3/s, runs out of the tear.
    assert found.leaks_m3_s[0] == pytest.approx(0.045, rel=0.3)


# Between the curve's first flow and none the blower is held at its first pressure.
def test_blower_is_held_where_its_curve_begins() -> None:
    net = replace(NET, fan=FanCurve(((0.05, 100.0), (0.08, 20.0))))
    found = balance_air(net)
    assert found.fan_pressure_pa == pytest.approx(100.0)
    assert 0 < found.fan_flow_m3_s < 0.05


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"feeds": ()}, "feeds: the blower feeds no cell"),
        ({"cells": (AirCell("roof", -1.0),)}, "unit_leak_m3_s of 'roof' must be zero or more"),
        ({"cells": (AirCell("roof", 1.0, 1.2),)}, "exponent of 'roof' must be from 0.5 to 1"),
        ({"feeds": (Feed("roof", _hose(0.05, 1.0), -1.0),)}, "damper_k into 'roof' must be zero"),
        ({"feeds": (Feed("loft", _hose(0.05, 1.0)),)}, "fed: 'loft' is no cell"),
        ({"jumps": (Jump("roof", "roof", _hose(0.05, 1.0)),)}, "both ends"),
    ],
)
def test_net_refuses_what_cannot_be(change: dict[str, tuple[object, ...]], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        balance_air(replace(NET, **change))
