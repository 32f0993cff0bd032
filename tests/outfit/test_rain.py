"""Rain carried away: the published yield of a tunnel, outlets, fall and tank by hand."""

import pytest

from hoopwright.farm import Rain, RoundBow, Tunnel
from hoopwright.outfit import Gutter, RainWork, told_rain
from hoopwright.quantity.units import show
from hoopwright.quantity.working import explain, words
from outfit.fitted import fitted, published_tunnel, with_gutters
from samples import tunnel

GALLON_M3 = 231 * 0.0254**3
HALF_INCH_M = 0.0127


def _rain(made: Tunnel, **changes: object) -> RainWork:
    work = fitted(made.but(rain=Rain(**changes))).rain  # type: ignore[arg-type]
    assert work is not None
    return work


def _gutter(**changes: object) -> Gutter:
    (gutter,) = _rain(with_gutters(tunnel(), 0), **changes).gutters
    return gutter


def test_half_an_inch_on_30_by_96_ft_gives_the_published_yield() -> None:
    # Iowa State University Extension (2012): about 900 gal. By hand 30 x 96 / 24 ft3, a US gallon
    # being 231 cubic inches: 897.7 gal.
    work = _rain(published_tunnel(), depth_m=HALF_INCH_M, runoff_share=1.0)
    assert work.water_m3 / GALLON_M3 == pytest.approx(897.7, abs=0.1)
    assert work.water_m3 / GALLON_M3 == pytest.approx(900, rel=0.01)
    assert show(work.water_m3, "m3_water", "imperial") == "898 gal"


def test_a_gutter_on_one_side_catches_half_the_roof() -> None:
    both = _rain(with_gutters(tunnel(), 0, 1))
    (one,) = _rain(with_gutters(tunnel(), 1)).gutters
    assert [g.side for g in both.gutters] == [0, 1]
    assert (one.side, one.mark) == (1, "side/1/hip")
    # Half the span and half the tube outside it, over 24 m.
    assert one.plan_area_m2 == pytest.approx((4.0 + 0.024) * 24.0)
    assert both.plan_area_m2 == pytest.approx(2 * one.plan_area_m2)
    assert both.water_m3 == pytest.approx(0.0127 * 0.95 * both.plan_area_m2)


def test_roof_that_bulges_past_the_hip_is_caught_as_wide_as_it_is() -> None:
    # Legs of 1 m, an arc of 4.2 m rise over a span of 8 m: its radius is (16 + 17.64) / 8.4 m, its
    # centre 1.195 m up, so it is widest below the hip at 1.5 m; lowered legs put it above.
    wide = RoundBow(span_m=8.0, leg_height_m=1.0, peak_height_m=5.2)
    low = RoundBow(span_m=8.0, leg_height_m=1.5, peak_height_m=6.0)
    for profile in (wide, low):
        made = with_gutters(tunnel(profile), 0)
        rise_m = profile.peak_height_m - profile.leg_height_m
        radius_m = (16 + rise_m**2) / (2 * rise_m) + 0.024
        centre_m = profile.peak_height_m - radius_m + 0.024
        half_m = radius_m if centre_m > 1.5 else (radius_m**2 - (1.5 - centre_m) ** 2) ** 0.5
        (gutter,) = _rain(made).gutters
        assert gutter.plan_area_m2 == pytest.approx(half_m * 24.0, rel=1e-3)


def test_outlets_for_flow_and_for_reach() -> None:
    # 28e-6 m/s on 0.95 of 96.576 m2 are 2.569e-3 m3/s; an outlet of 76.2 mm under 40 mm takes
    # 76.2^2 x 40^0.5 / 15000 = 2.448 l/s, so two; 24 m in runs of 12 m are two as well.
    plain = _gutter()
    assert plain.rain_m3_s == pytest.approx(2.569e-3, rel=1e-3)
    assert plain.outlet_m3_s == pytest.approx(2.448e-3, rel=1e-3)
    assert (plain.outlets_needed, plain.outlets, plain.run_m) == (2, 2, 12.0)
    assert _gutter(outlet_reach_m=7.9).outlets == 4
    assert _gutter(rate_m_s=2e-4).outlets == 8
    few = _gutter(outlets=1)
    assert (few.outlets_needed, few.outlets, few.run_m) == (2, 1, 24.0)


def test_without_a_gutter_no_amounts_are_told() -> None:
    told = told_rain(_rain(tunnel()))
    assert told.terms == ()
    assert words(told, "metric").startswith("No gutter hangs")


def test_fall_and_pipes() -> None:
    gutter = _gutter(fall_share=0.005)
    assert gutter.fall_m == pytest.approx(0.06)
    assert gutter.whole_fall_m == pytest.approx(0.12)
    assert gutter.downpipe_m == pytest.approx(1.5 - 0.15)


def test_fewer_outlets_ask_for_a_larger_gutter() -> None:
    two, one = _gutter(), _gutter(outlets=1)
    assert one.section_m2 / two.section_m2 == pytest.approx(2**0.8)


def test_tank_fills_and_runs_over() -> None:
    made = with_gutters(tunnel(), 0, 1)
    water_m3 = _rain(made).water_m3
    large, small = _rain(made, tank_m3=5.0), _rain(made, tank_m3=1.0)
    assert large.rains_to_fill == pytest.approx(5.0 / water_m3)
    assert large.overflow_m3 == 0.0
    assert small.overflow_m3 == pytest.approx(water_m3 - 1.0)
    without = _rain(made)
    assert (without.rains_to_fill, without.overflow_m3) == (None, None)


def test_rain_without_gutters_carries_nothing() -> None:
    work = _rain(tunnel(), tank_m3=2.0)
    assert (work.gutters, work.water_m3, work.rain_m3_s) == ((), 0.0, 0.0)
    assert work.rains_to_fill is None


def test_no_rain_entered_works_nothing_out() -> None:
    assert fitted(with_gutters(tunnel(), 0)).rain is None


def test_every_number_says_how_it_was_got() -> None:
    work = _rain(with_gutters(tunnel(), 0, 1), tank_m3=5.0)
    for thing, entered in ((work, {"gutters"}), (work.gutters[0], {"mark", "side"})):
        told = {w.figure for w in thing.workings}
        assert told == set(type(thing).__dataclass_fields__) - entered - {"workings"}
        for working in thing.workings:
            assert "Source: " in explain(working, "imperial")
    said = words(told_rain(work), "metric")
    assert "qualified engineer" in said
    assert show(work.water_m3, "m3_water", "metric") in said
