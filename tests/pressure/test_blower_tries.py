"""Blowers tried on the small tunnel: verdicts, and dampers against the whole net settled again."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from hoopwright.farm import Blower, Climate, FanPoint
from hoopwright.pressure.blower_tries import power_cost
from hoopwright.pressure.held import BlowerTry, Held
from inflated import Filled, filled


def _blower(key: str, most_pa: float, most_m3_s: float) -> Blower:
    curve = (
        FanPoint(flow_m3_s=0.0, pressure_pa=most_pa),
        FanPoint(flow_m3_s=most_m3_s, pressure_pa=0.0),
    )
    return Blower(key=key, name=key, curve=curve, power_w=100.0, part="blower")


WEAK, STRONG, HUGE = _blower("w", 40.0, 0.03), _blower("s", 500.0, 0.1), _blower("h", 4e3, 1.0)


def _run(blower: Blower, **air: object) -> tuple[Held, BlowerTry]:
    """Return the tunnel held by a blower, and how the same blower was tried on it."""
    held = _with(blower, **air).held()
    return held, held.tries[0]


def _with(blower: Blower, **air: object) -> Filled:
    return filled(blower=blower.key, **air).with_catalogue(blowers=(blower,))


def test_verdicts_of_blowers_from_weak_to_huge() -> None:
    tight = {"leak_roof": 1e-6, "leak_curtain": 1e-6}
    made = filled(**tight).with_catalogue(blowers=(WEAK, STRONG, HUGE))
    verdicts = [tried.verdict for tried in made.held().tries]
    assert verdicts == ["too weak", "fits with the damper", "too strong"]
    assert [tried.chosen for tried in made.held().tries] == [False] * 3


@pytest.mark.parametrize("order", [(WEAK, STRONG, HUGE), (HUGE, STRONG, WEAK)])
def test_cheapest_blower_that_fits_is_the_one_of_least_power_among_them(
    order: tuple[Blower, ...],
) -> None:
    # A blower that fits costs its power; one that does not is out however little it takes.
    spare = STRONG.but(key="spare", power_w=150.0)
    made = filled(leak_roof=1e-6, leak_curtain=1e-6).with_catalogue(blowers=(spare, *order))
    found = made.held().fitting
    assert found is not None
    assert (found.key, found.verdict) == ("s", "fits with the damper")
    none = filled(leak_roof=1e-6, leak_curtain=1e-6).with_catalogue(blowers=(WEAK, HUGE))
    assert none.held().fitting is None


def test_a_blower_that_fits_keeps_its_damper_open() -> None:
    held, tried = _run(STRONG, low_pa=40.0, high_pa=400.0)
    assert (tried.verdict, tried.open_share) == ("fits", 1.0)
    assert tried.low_pa == pytest.approx(held.low_pa)
    assert tried.high_pa == pytest.approx(held.high_pa)
    assert tried.flow_m3_s == pytest.approx(held.fan_flow_m3_s)


# The second way: the damper told is set on the tunnel, and the whole net is settled with it.
@settings(deadline=None, max_examples=40)
@given(
    most_pa=st.floats(100.0, 900.0),
    most_m3_s=st.floats(0.02, 0.2),
    leak=st.floats(1e-6, 1e-5),
    low_pa=st.floats(20.0, 60.0),
)
def test_the_damper_told_holds_what_was_told(
    most_pa: float, most_m3_s: float, leak: float, low_pa: float
) -> None:
    wanted = {"leak_roof": leak, "low_pa": low_pa, "high_pa": 1.5 * low_pa}
    blower = _blower("b", most_pa, most_m3_s)
    held, tried = _run(blower, **wanted)
    if tried.verdict in ("too weak", "never fills"):
        assert held.low_pa < low_pa
        assert held.high_pa <= 1.5 * low_pa * (1 + 1e-6)
    if tried.verdict == "too strong":
        assert held.high_pa > 1.5 * low_pa
        shut, _ = _run(blower, open_share=0.05, **wanted)
        assert not (shut.low_pa >= low_pa and shut.high_pa <= 1.5 * low_pa)
    if tried.verdict == "fits with the damper":
        assert held.high_pa > 1.5 * low_pa
        damped, _ = _run(blower, open_share=tried.open_share, **wanted)
        assert low_pa * (1 - 1e-4) <= damped.low_pa <= damped.high_pa <= 1.5 * low_pa * (1 + 1e-4)
        assert damped.low_pa == pytest.approx(tried.low_pa, rel=1e-4)
        assert damped.high_pa == pytest.approx(tried.high_pa, rel=1e-4)
        assert damped.fan_flow_m3_s == pytest.approx(tried.flow_m3_s, rel=1e-4)


def test_the_damper_is_where_a_root_finder_puts_the_cells_in_the_middle() -> None:
    def off_middle(open_share: float) -> float:
        held = _with(STRONG, open_share=open_share).held()
        return (held.low_pa + held.high_pa) / 2 - 62.5

    expected = brentq(off_middle, 0.1, 1.0, xtol=1e-9)
    assert _run(STRONG)[1].open_share == pytest.approx(expected, rel=2e-3)


def test_no_damper_helps_where_thin_hoses_keep_the_curtains_low() -> None:
    made = _with(STRONG, leak_curtain=1e-4)
    thin = made.catalogue.hoses[0].but(bore_m=0.02)
    wide = made.catalogue.hoses[0].but(key="wide", bore_m=0.0762)
    held = made.with_catalogue(hoses=(thin, wide)).held()
    assert held.tries[0].verdict == "too strong"
    assert held.tries[0].low_pa < 50 < 75 < held.tries[0].high_pa


def test_without_leaks_no_damper_can_take_pressure_off_still_air() -> None:
    tight = {"leak_roof": 0.0, "leak_curtain": 0.0}
    held, tried = _run(STRONG, **tight)
    assert (tried.verdict, tried.open_share) == ("too strong", 1.0)
    assert held.high_pa == pytest.approx(500.0)


@pytest.mark.parametrize(
    "hoses", [{}, {"leak_exponent": 0.5, "jumper_hose_m": 30.0, "leak_curtain": 1e-5}]
)
def test_a_window_as_narrow_as_the_cells_still_fits(hoses: dict[str, float]) -> None:
    def above_top(open_share: float) -> float:
        return _with(STRONG, open_share=open_share, **hoses).held().high_pa - 75.0

    top_share = brentq(above_top, 0.1, 1.0, xtol=1e-9)
    lowest_pa = _with(STRONG, open_share=top_share, **hoses).held().low_pa
    _, tried = _run(STRONG, low_pa=lowest_pa - 1e-3, high_pa=75.0, **hoses)
    assert tried.verdict == "fits with the damper"
    assert tried.low_pa >= lowest_pa - 1e-3
    _, narrower = _run(STRONG, low_pa=lowest_pa + 1e-2, high_pa=75.0, **hoses)
    assert narrower.verdict == "too strong"


# 100 W for 1000 h are 100 kWh; at 0.123 each 12.30.
def test_power_is_paid_by_the_hour() -> None:
    climate = Climate(power_price=Decimal("0.123"), blower_hours=1000.0)
    assert power_cost(100.0, climate) == (pytest.approx(100.0), Decimal("12.30"))
