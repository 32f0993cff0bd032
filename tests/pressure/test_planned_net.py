"""The net as it is laid out from a tunnel: its damper, its blower's curve, its hoses."""

import pytest
from fluids import dP_from_K
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.farm import Blower, FanPoint
from hoopwright.pressure.planned_net import damper_loss, fan_curve, plan_net
from inflated import filled


def _blower(*points: tuple[float, float]) -> Blower:
    curve = tuple(FanPoint(flow_m3_s=flow, pressure_pa=pressure) for flow, pressure in points)
    return Blower(key="b", name="blower", curve=curve, power_w=50.0, part="p")


# Worked by hand: air in half the bore runs twice as fast and has four velocity pressures of the
# full bore; three more than before.
def test_a_damper_half_open_takes_three_velocity_pressures() -> None:
    assert damper_loss(0.5) == 3.0
    assert damper_loss(1.0) == 0.0


# What the same air costs as velocity pressure in the narrow place, less that in the full bore;
# the library turns velocity pressures into a loss.
@given(open_share=st.floats(0.05, 1.0), speed=st.floats(0.5, 20.0))
def test_a_damper_takes_the_growth_of_the_velocity_pressure(
    open_share: float, speed: float
) -> None:
    growth_pa = 0.602 * (speed / open_share) ** 2 - 0.602 * speed**2
    taken_pa = dP_from_K(K=damper_loss(open_share), rho=1.204, V=speed)
    assert taken_pa == pytest.approx(growth_pa, abs=1e-9)


def test_a_curve_keeps_the_points_entered() -> None:
    line = fan_curve(_blower((0.0, 100.0), (0.04, 20.0)))
    assert line.pressure_pa(0.02) == pytest.approx(60.0)
    bent = fan_curve(_blower((0.0, 150.0), (0.02, 120.0), (0.045, 0.0)))
    assert bent.pressure_pa(0.02) == pytest.approx(120.0)


def test_hoses_have_the_lengths_and_bores_chosen() -> None:
    made = filled(jumper_hose_m=1.2, feed_hose_m=2.5, open_share=0.5, feed_hose="wide")
    hose = made.catalogue.hoses[0]
    wide = hose.but(key="wide", bore_m=0.1)
    net = plan_net(made.inflation, made.tunnel.air, (hose, wide), made.catalogue.blowers[0])
    assert net is not None
    assert {(jump.hose.bore_m, jump.hose.length_m) for jump in net.jumps} == {(0.0508, 1.2)}
    (feed,) = net.feeds
    assert (feed.into, feed.hose.bore_m, feed.hose.length_m) == ("cell/roof/0", 0.1, 2.5)
    assert feed.damper_k == 3.0


def test_a_net_without_hose_or_cell_is_none() -> None:
    made = filled()
    blower = made.catalogue.blowers[0]
    assert plan_net(made.inflation, made.tunnel.air, (), blower) is None
    bare = made.tunnel.air.but(inflated_sides=(False, False))
    from_one = filled(made.tunnel.but(skin=made.tunnel.skin.but(roof=made.tunnel.skin.pockets)))
    assert from_one.inflation.no_feed
    assert plan_net(from_one.inflation, bare, made.catalogue.hoses, blower) is None
