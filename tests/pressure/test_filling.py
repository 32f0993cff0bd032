"""The course of filling against a general integrator and a closed sum."""

import math

import pytest
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.filling import Filling, fill_net, outlet_pressure
from hoopwright.pressure.hose import Hose, driven_flow
from hoopwright.pressure.net import AirCell, AirNet, Feed, Jump

FAN = FanCurve(((0.0, 300.0), (0.04, 0.0)))
OPEN = Hose(1.0, 0.1, roughness_m=0.0, loss_k=0.0)
NARROW = Hose(0.05, 1.2)
TIGHT = AirNet((AirCell("roof", 0.0),), (), (Feed("roof", OPEN),), FAN)
PAIR = AirNet(
    (AirCell("roof", 8e-4), AirCell("side", 2e-4), AirCell("shed", 1e-4)),
    (Jump("side", "roof", NARROW),),
    (Feed("roof", Hose(0.075, 1.0)), Feed("roof", Hose(0.05, 2.0))),
    FAN,
)


# Worked by hand: with x = V / 40 the pressure is 60 x**3 and the line gives 0.04 (1 - x**3 / 5), so
# 40 dx / (0.04 (1 - x**3 / 5)) from 0 to 1 is 1000 (1 + 1/20 + 1/175 + 1/1250 + ...) = 1057 s.
def test_tight_cell_on_a_line_agrees_with_the_hand_sum() -> None:
    found = fill_net(TIGHT, (40.0,), 60.0, filled_share=60 / 300)
    (minutes,) = found.minutes
    assert minutes is not None
    assert 60 * minutes == pytest.approx(1057, abs=0.5)
    series = 1000 * sum(5.0**-k / (3 * k + 1) for k in range(30))
    assert 60 * minutes == pytest.approx(series, rel=2e-4)


def test_tight_cell_needs_the_integral_of_its_filling() -> None:
    found = fill_net(TIGHT, (40.0,), 60.0)
    goal = (0.95 * 300 / 60) ** (1 / 3)
    seconds, _ = quad(lambda x: 40 / (0.04 * (1 - x**3 / 5)), 0, goal)
    assert found.minutes[0] == pytest.approx(seconds / 60, rel=1e-3)


def _rates(_: float, volumes: list[float]) -> list[float]:
    roof, side = (
        60 * (max(v, 0.0) / whole) ** 3 for v, whole in zip(volumes, (35, 4), strict=True)
    )
    hoses = [feed.hose for feed in PAIR.feeds]
    outlet = brentq(
        lambda pa: FAN.flow_m3_s(pa) - sum(driven_flow(h, pa - roof) for h in hoses), -1, 301
    )
    across = driven_flow(NARROW, side - roof)
    fed = sum(driven_flow(hose, outlet - roof) for hose in hoses)
    return [fed + across - 8e-4 * roof**0.65, -across - 2e-4 * side**0.65]


def test_course_is_that_of_a_general_integrator() -> None:
    found = fill_net(PAIR, (35.0, 4.0, 5.0), 60.0)
    times = found.times_s[5::7]
    sure = solve_ivp(_rates, (0, found.times_s[-1]), [0, 0], "LSODA", times, rtol=1e-8, atol=1e-10)
    for at, cell in enumerate(("roof", "side")):
        ours = [volumes[at] for volumes in found.volumes_m3[5::7]]
        assert ours == pytest.approx(list(sure.y[at]), rel=2e-3, abs=1e-3), cell


@pytest.mark.parametrize("at", [0, 1])
def test_minutes_are_when_a_cell_is_at_its_share(at: int) -> None:
    found = fill_net(PAIR, (35.0, 4.0, 5.0), 60.0)
    minutes = found.minutes[at]
    assert minutes is not None
    goal_pa = 0.95 * found.final_pa[at]
    course = list(zip(found.times_s, found.pressures_pa, strict=True))
    assert max(pa[at] for t, pa in course if t < 60 * minutes) <= goal_pa
    assert min(pa[at] for t, pa in course if t > 60 * minutes) >= goal_pa


def _final_course() -> Filling:
    return fill_net(PAIR, (35.0, 4.0, 5.0), 60.0, filled_share=0.999)


def test_course_ends_at_the_balance() -> None:
    found = _final_course()
    assert found.pressures_pa[-1][:2] == pytest.approx(found.final_pa[:2], rel=2e-3)


def test_cell_without_air_stays_flat() -> None:
    found = _final_course()
    assert found.minutes[2] is None
    assert all(volumes[2] == 0 for volumes in found.volumes_m3)


def test_time_that_is_up_is_said() -> None:
    found = fill_net(TIGHT, (40.0,), 60.0, limit_s=120.0)
    assert found.minutes == (None,)
    assert found.times_s[-1] == pytest.approx(120.0)
    # Hardly any pressure yet: the cell holds what the blower gives freely.
    assert found.volumes_m3[-1][0] == pytest.approx(120 * 0.04, rel=0.01)


def test_twice_the_volume_takes_twice_the_time() -> None:
    once = fill_net(TIGHT, (20.0,), 60.0).minutes[0]
    twice = fill_net(TIGHT, (40.0,), 60.0).minutes[0]
    assert once is not None
    assert twice == pytest.approx(2 * once, rel=1e-3)


def test_outlet_stands_where_blower_and_feeds_agree() -> None:
    feeds = [(NARROW, 20.0), (Hose(0.03, 2.0), 90.0)]
    sure = brentq(
        lambda pa: FAN.flow_m3_s(pa) - sum(driven_flow(h, pa - far) for h, far in feeds), 20, 300
    )
    assert outlet_pressure(feeds, FAN) == pytest.approx(sure, rel=1e-6)
    assert math.isclose(outlet_pressure([(NARROW, 300.0)], FAN), 300.0)


@pytest.mark.parametrize(
    ("volumes_m3", "design_pa", "share", "field"),
    [
        ((0.0,), 60.0, 0.95, "volumes_m3"),
        ((40.0, 3.0), 60.0, 0.95, "volumes_m3"),
        ((40.0,), 0.0, 0.95, "design_pa"),
        ((40.0,), 60.0, 1.0, "filled_share"),
    ],
)
def test_filling_refuses_what_cannot_be(
    volumes_m3: tuple[float, ...], design_pa: float, share: float, field: str
) -> None:
    with pytest.raises(ValueError, match=f"^{field}"):
        fill_net(TIGHT, volumes_m3, design_pa, share)
