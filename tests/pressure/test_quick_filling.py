"""The quick time of filling against the march and against a general integrator."""

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from hoopwright.pressure.balance import balance_air
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.filling import fill_net
from hoopwright.pressure.hose import Hose
from hoopwright.pressure.net import AirCell, AirNet, Feed, Jump
from hoopwright.pressure.quick_filling import fill_minutes

FAN = FanCurve(((0.0, 150.0), (0.02, 120.0), (0.045, 0.0)))
NET = AirNet(
    cells=(AirCell("roof", 1.2e-3), AirCell("left", 1.5e-4), AirCell("right", 1.5e-4)),
    jumps=(
        Jump("roof", "left", Hose(0.0508, 0.9)),
        Jump("right", "roof", Hose(0.0508, 0.9)),
    ),
    feeds=(Feed("roof", Hose(0.0762, 1.5)),),
    fan=FAN,
)
VOLUMES = (40.0, 3.0, 3.0)


def _quick(net: AirNet, volumes: tuple[float, ...]) -> dict[str, float]:
    return fill_minutes(net, balance_air(net), volumes, 60.0)


# One tight cell behind a hose that takes nothing, a straight curve from 300 Pa to 0.04 m3/s: it
# comes to 300 Pa with 40 (300 / 60)^(1/3) m3; while it holds the share s of that, the blower gives
# 0.04 (1 - s^3). A general integrator adds up ds over that to 95 % of the pressure.
def test_one_tight_cell_agrees_with_a_general_integrator() -> None:
    net = AirNet(
        (AirCell("one", 0.0),),
        (),
        (Feed("one", Hose(0.5, 0.1, 0.0, 0.0)),),
        FanCurve(((0.0, 300.0), (0.04, 0.0))),
    )
    full_m3 = 40 * 5 ** (1 / 3)
    seconds, _ = quad(lambda s: full_m3 / (0.04 * (1 - s**3)), 0, 0.95 ** (1 / 3))
    assert _quick(net, (40.0,))["one"] == pytest.approx(seconds / 60, rel=1e-3)


@settings(deadline=None, max_examples=12)
@given(
    leak=st.floats(1e-4, 2e-3),
    bore_m=st.floats(0.05, 0.1),
    most_pa=st.floats(80.0, 300.0),
)
def test_wide_hoses_fill_all_cells_together(leak: float, bore_m: float, most_pa: float) -> None:
    net = replace(
        NET,
        cells=(AirCell("roof", leak), *NET.cells[1:]),
        feeds=(Feed("roof", Hose(bore_m, 1.5)),),
        fan=FanCurve(((0.0, most_pa), (0.045, 0.0))),
    )
    marched = fill_net(net, VOLUMES, 60.0).minutes
    quick = _quick(net, VOLUMES)
    for cell, minutes in zip(net.cells, marched, strict=True):
        assert quick[cell.mark] == pytest.approx(minutes, rel=0.05)


@pytest.mark.parametrize("bore_m", [0.008, 0.012])
def test_a_thin_hose_makes_its_cell_late(bore_m: float) -> None:
    net = replace(NET, jumps=(Jump("roof", "left", Hose(bore_m, 0.9)), NET.jumps[1]))
    net = replace(net, cells=(NET.cells[0], AirCell("left", 1e-5), NET.cells[2]))
    marched = dict(zip(net.marks, fill_net(net, VOLUMES, 60.0).minutes, strict=True))
    quick = _quick(net, VOLUMES)
    assert quick["left"] > 1.5 * quick["right"]
    assert quick["left"] == pytest.approx(marched["left"], rel=0.35)
    assert quick["right"] == pytest.approx(marched["right"], rel=0.1)


def test_twice_the_air_takes_twice_the_time() -> None:
    once, twice = _quick(NET, VOLUMES), _quick(NET, tuple(2 * volume for volume in VOLUMES))
    assert {mark: 2 * minutes for mark, minutes in once.items()} == pytest.approx(twice)


def test_cells_that_stay_flat_have_no_time() -> None:
    alone = replace(NET, jumps=NET.jumps[:1])
    assert set(_quick(alone, VOLUMES)) == {"roof", "left"}
    leaking = replace(NET, cells=(AirCell("roof", 1.0), *NET.cells[1:]))
    assert _quick(leaking, VOLUMES) == {}


def test_a_damper_makes_it_slower() -> None:
    damped = replace(NET, feeds=(replace(NET.feeds[0], damper_k=30.0),))
    assert _quick(damped, VOLUMES)["roof"] > _quick(NET, VOLUMES)["roof"]
    assert all(math.isfinite(minutes) for minutes in _quick(damped, VOLUMES).values())
