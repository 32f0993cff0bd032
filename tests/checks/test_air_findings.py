"""Every check of the air between two layers: found, told, mended, silent where all is well."""

from collections.abc import Callable

import pytest

from checks.looked import assert_mended, assert_told, found
from hoopwright.farm import AirReading, Blower, FanPoint, Farm, Hose, PlacedJumper, Tunnel
from hoopwright.plan import plan
from hoopwright.quantity.working import words
from samples import double_tunnel, small_farm, with_double_ends

WIDE = Hose(key="wide", name="wide hose", bore_m=0.12, roughness_m=0.0005, part="jumper_hose")


def blower(key: str, most_pa: float, most_m3_s: float) -> Blower:
    curve = (
        FanPoint(flow_m3_s=0.0, pressure_pa=most_pa),
        FanPoint(flow_m3_s=most_m3_s, pressure_pa=0.0),
    )
    return Blower(key=key, name=f"{key} blower", curve=curve, power_w=60.0, part="blower")


def inflated(**air: object) -> Tunnel:
    made = double_tunnel()
    changes = {"inflated_sides": (True, True), "blower": "fair", **air}
    return made.but(air=made.air.but(**changes))


def airy_farm(made: Tunnel | None = None, coupon_n_m: float | None = 2000.0) -> Farm:
    """Return a farm with blowers from tiny to strong, a wide hose, and a coupon that held."""
    farm = small_farm()
    blowers = (
        blower("tiny", 40.0, 0.002),
        blower("weak", 60.0, 0.03),
        blower("fair", 100.0, 0.06),
        blower("strong", 300.0, 0.12),
    )
    return farm.but(
        tunnels=(made or inflated(),),
        catalogue=farm.catalogue.but(blowers=blowers, hoses=(*farm.catalogue.hoses, WIDE)),
        bench=farm.bench.but(coupon_n_m=coupon_n_m),
    )


def blower_weaker_than_the_leaks() -> Farm:
    return airy_farm(inflated(blower="tiny"))


def blower_too_weak() -> Farm:
    return airy_farm(inflated(blower="weak"))


def blower_too_strong() -> Farm:
    return airy_farm(inflated(blower="strong"))


def curtain_without_a_jumper() -> Farm:
    west = PlacedJumper(surface="first_side", at_m=12.0)
    return airy_farm(inflated(jumpers=(west,)))


def jumper_into_nothing() -> Farm:
    places = (("first_side", 12.0), ("second_side", 12.0), ("back_end", 24.0))
    jumpers = tuple(PlacedJumper(surface=s, at_m=at_m) for s, at_m in places)
    return airy_farm(inflated(jumpers=jumpers))


def damp_air() -> Farm:
    return airy_farm(inflated(outside_air=False))


def end_over_a_flat_roof() -> Farm:
    made = with_double_ends(inflated(inflated_ends=(True, True)))
    skin = made.skin
    return airy_farm(made.but(skin=skin.but(roof=skin.roof.but(count=1))))


def no_hoses() -> Farm:
    farm = airy_farm()
    return farm.but(catalogue=farm.catalogue.but(hoses=()))


def thin_film() -> Farm:
    farm = airy_farm()
    films = tuple(f.but(yield_pa=1e6, thickness_m=2e-5) for f in farm.catalogue.films)
    return farm.but(catalogue=farm.catalogue.but(films=films))


def seals_without_a_coupon() -> Farm:
    return airy_farm(coupon_n_m=None)


def seals_that_peel() -> Farm:
    return airy_farm(coupon_n_m=60.0)


def narrow_hoses() -> Farm:
    farm = airy_farm(inflated(leak_curtain=6e-5))
    narrow = farm.catalogue.hoses[0].but(bore_m=0.02)
    return farm.but(catalogue=farm.catalogue.but(hoses=(narrow, WIDE)))


def seams_in_a_row() -> Farm:
    made = inflated()
    return airy_farm(made.but(skin=made.skin.but(cross_seams_m=(7.5, 15.0))))


def leak_since_the_baseline() -> Farm:
    sound = AirReading(
        taken_on="2025-11-20",
        cell="cell/roof/0",
        pressure_pa=60.0,
        flow_m3_s=0.02,
        baseline=True,
    )
    later = sound.but(taken_on="2026-03-02", pressure_pa=45.0, flow_m3_s=0.03, baseline=False)
    return airy_farm(inflated(readings=(sound, later)))


Maker = Callable[[], Farm]

MENDED: tuple[tuple[str, str, Maker], ...] = (
    ("air.pressure_low", "caution", blower_too_weak),
    ("air.pressure_high", "caution", blower_too_strong),
    ("air.cell_cut_off", "fault", curtain_without_a_jumper),
    ("air.jumper_idle", "caution", jumper_into_nothing),
    ("air.from_inside", "caution", damp_air),
    ("air.cell_not_fed", "fault", end_over_a_flat_roof),
)
TOLD: tuple[tuple[str, str, Maker], ...] = (
    ("air.never_fills", "fault", blower_weaker_than_the_leaks),
    ("air.hose_missing", "fault", no_hoses),
    ("film.strained", "fault", thin_film),
    ("seal.no_coupon", "note", seals_without_a_coupon),
    ("seal.weak", "fault", seals_that_peel),
    ("air.chain_starves", "note", narrow_hoses),
    ("air.hose_cuts_off", "note", seams_in_a_row),
    ("air.leak_grown", "caution", leak_since_the_baseline),
)


@pytest.mark.parametrize(("code", "severity", "make"), MENDED + TOLD)
def test_fault_is_found_with_its_reason(code: str, severity: str, make: Maker) -> None:
    assert_told(found(make(), code), severity)


@pytest.mark.parametrize(("code", "severity", "make"), MENDED)
def test_mend_takes_the_fault_away(code: str, severity: str, make: Maker) -> None:
    assert_mended(make(), code)


@pytest.mark.parametrize("code", [code for code, _, _ in MENDED + TOLD])
def test_sound_tunnel_has_none_of_it(code: str) -> None:
    assert found(airy_farm(), code) == []


def test_blower_that_never_fills_is_mended_when_the_catalogue_has_a_stronger_one() -> None:
    farm = airy_farm(inflated(blower="tiny"))
    (told,) = found(farm, "air.never_fills")
    assert "Take fair blower." in words(told.mend, "metric")
    assert_mended(farm, "air.never_fills")


def test_leaks_that_no_blower_meets_are_told_so() -> None:
    farm = airy_farm(inflated(leak_roof=9e-4, leak_curtain=9e-4))
    (told,) = found(farm, "air.never_fills")
    assert told.mended is None
    assert "No blower of the catalogue is strong enough" in words(told.mend, "metric")


def test_second_layer_is_judged_in_plain_words() -> None:
    (told,) = found(airy_farm(), "heat.second_layer")
    assert told.severity == "note"
    assert "not heated" in words(told.what, "metric")
    assert found(small_farm(), "heat.second_layer") == []


def test_damper_of_the_chosen_blower_is_shut_before_another_is_bought() -> None:
    farm = blower_too_strong()
    (told,) = found(farm, "air.pressure_high")
    mended = told.mended
    assert isinstance(mended, Tunnel)
    assert mended.air.blower == "strong"
    assert mended.air.open_share < 1
    held = plan(farm.but(tunnels=(mended,))).tunnels[0].held
    assert {cell.state for cell in held.cells} == {"in range"}
