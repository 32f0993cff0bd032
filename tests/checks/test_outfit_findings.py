"""Every check of gutters, shade cloth and screens: found, told, mended, else silent."""

from collections.abc import Callable

import pytest

from checks.looked import assert_mended, assert_told, found, rich_farm, sound_tunnel, with_panel
from hoopwright.farm import Farm, Rain, Screen, Shade, Tunnel
from hoopwright.plan import plan
from hoopwright.quantity.working import words
from outfit.fitted import with_gutters
from samples import double_tunnel, small_farm

SCREEN = Screen(part="crank", flow_share=0.5)
SHADE = Shade(part="crank")


def rain_without_gutters() -> Farm:
    return rich_farm(sound_tunnel().but(rain=Rain()))


def one_outlet_for_two() -> Farm:
    return rich_farm(with_gutters(sound_tunnel(), 0, 1).but(rain=Rain(outlets=1)))


def gutters_with_rain() -> Farm:
    return rich_farm(with_gutters(sound_tunnel(), 0).but(rain=Rain()))


def screen_that_takes_nothing() -> Farm:
    screened = with_panel().but(screen=SCREEN.but(flow_share=1.0))
    return rich_farm(sound_tunnel(screened))


def screen_on_a_fixed_side() -> Farm:
    return rich_farm(sound_tunnel(with_panel().but(kind="fixed", screen=SCREEN)))


def cloth_on_air() -> Farm:
    return small_farm(double_tunnel().but(shade=SHADE))


def cloth_over_curtains() -> Farm:
    return rich_farm(sound_tunnel().but(shade=SHADE.but(over="roof_and_sides")))


Maker = Callable[[], Farm]

MENDED: tuple[tuple[str, str, Maker], ...] = (
    ("rain.no_gutter", "note", rain_without_gutters),
    ("rain.outlets_few", "caution", one_outlet_for_two),
    ("screen.no_opening", "note", screen_on_a_fixed_side),
    ("shade.over_opening", "caution", cloth_over_curtains),
)
TOLD: tuple[tuple[str, str, Maker], ...] = (
    ("rain.gutter_load", "note", gutters_with_rain),
    ("screen.no_loss", "caution", screen_that_takes_nothing),
    ("shade.scratches", "note", cloth_on_air),
)
NEARLY: tuple[tuple[str, Tunnel], ...] = (
    ("rain.no_gutter", with_gutters(sound_tunnel(), 1).but(rain=Rain())),
    ("rain.outlets_few", with_gutters(sound_tunnel(), 0).but(rain=Rain(outlets=2))),
    ("rain.gutter_load", with_gutters(sound_tunnel(), 0)),
    ("screen.no_loss", sound_tunnel(with_panel().but(screen=SCREEN.but(flow_share=0.99)))),
    ("screen.no_opening", sound_tunnel(with_panel().but(screen=SCREEN))),
    ("shade.scratches", sound_tunnel().but(shade=SHADE)),
    ("shade.over_opening", sound_tunnel().but(shade=SHADE)),
)


@pytest.mark.parametrize(("code", "severity", "make"), MENDED + TOLD)
def test_fault_is_found_with_its_reason(code: str, severity: str, make: Maker) -> None:
    assert_told(found(make(), code), severity)


@pytest.mark.parametrize(("code", "severity", "make"), MENDED)
def test_mend_takes_the_fault_away(code: str, severity: str, make: Maker) -> None:
    assert_told(found(make(), code), severity)
    assert_mended(make(), code)


@pytest.mark.parametrize(("code", "made"), NEARLY)
def test_tunnel_that_just_has_not_the_fault_is_not_told_of_it(code: str, made: Tunnel) -> None:
    assert found(rich_farm(made), code) == []


def test_nothing_is_told_of_a_flat_roof_of_two_layers() -> None:
    flat = double_tunnel()
    flat = flat.but(air=flat.air.but(blower=None), shade=SHADE)
    assert found(small_farm(flat), "shade.scratches") == []


def test_each_gutter_is_told_of_its_outlets() -> None:
    farm = one_outlet_for_two()
    first, second = found(farm, "rain.outlets_few")
    assert (first.where, second.where) == ("side/0/hip", "side/1/hip")
    # 24 m of gutter with a reach of 12 m: two outlets; all 24 m run to the one there is.
    assert "outlets: 1; it takes 2." in words(first.what, "metric")
    assert "drain 24.000 m of gutter" in words(first.why, "metric")
    assert words(first.mend, "metric") == "Give each gutter 2 outlets."


def test_where_it_is_the_water_a_larger_bore_mends_it_too() -> None:
    # 0.00005 m/s on half the roof of 8 m by 24 m, and 0.95 of it runs off.
    rain = Rain(outlets=1, outlet_reach_m=30.0, rate_m_s=5e-5, outlet_bore_m=0.05)
    farm = rich_farm(with_gutters(sound_tunnel(), 0).but(rain=rain))
    (told,) = found(farm, "rain.outlets_few")
    gutter = plan(farm).tunnels[0].chosen.outfit.rain.gutters[0]
    assert gutter.run_m <= 30.0
    said = words(told.mend, "metric")
    assert "or those there are a bore of" in said
    bore_mm = float(said.split("a bore of ")[1].split(" mm")[0])
    wide = rain.but(outlet_bore_m=(bore_mm + 0.1) / 1000)
    wider = rich_farm(with_gutters(sound_tunnel(), 0).but(rain=wide))
    assert found(wider, "rain.outlets_few") == []
    narrow = rain.but(outlet_bore_m=(bore_mm - 1) / 1000)
    assert found(rich_farm(with_gutters(sound_tunnel(), 0).but(rain=narrow)), "rain.outlets_few")


def test_engineer_is_named_where_a_gutter_loads_the_frame() -> None:
    (told,) = found(gutters_with_rain(), "rain.gutter_load")
    assert "qualified engineer" in words(told.mend, "metric")
    assert told.mended is None
