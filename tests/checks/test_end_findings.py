"""End walls: openings that stick out or overlap, seams, sheets that miss the peak."""

from collections.abc import Callable

import pytest

from checks.looked import assert_mended, assert_told, found
from hoopwright.cover.end_walls import lay_ends
from hoopwright.farm import Cut, Door, Farm, RoundBow, Tunnel
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.working import words
from hoopwright.survey import survey_frame
from samples import layers, small_farm, tunnel, with_double_ends

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
DOOR = Door(width_m=2.0, height_m=2.1)
VENT = Cut(left_m=-0.3, sill_m=2.4, width_m=0.6, height_m=0.6)


def walled(**changes: object) -> Tunnel:
    """Return a tunnel of half circles of 4 m, its front end changed."""
    plain = tunnel(HALF_CIRCLE)
    return plain.but(ends=(plain.ends[0].but(**changes), plain.ends[1]))


def vent_in_the_ridge() -> Tunnel:
    return walled(cuts=(VENT.but(sill_m=3.6),))


def door_past_the_bow() -> Tunnel:
    return walled(doors=(DOOR.but(left_m=2.5),))


def fan_over_the_door() -> Tunnel:
    return walled(doors=(DOOR,), cuts=(VENT.but(kind="fan", sill_m=1.8),))


def seam_by_a_rail() -> Tunnel:
    return walled(rails_m=(2.0,), seams_m=(2.2,))


def seam_far_from_rails() -> Tunnel:
    return walled(rails_m=(1.0,), seams_m=(2.2,))


def seam_over_the_ridge() -> Tunnel:
    return walled(seams_m=(4.5,))


def hardly_lapped() -> Tunnel:
    made = walled(rails_m=(2.0,), seams_m=(2.0,))
    allowances = made.skin.allowances.but(seam_lap_m=0.05)
    return made.but(skin=made.skin.but(allowances=allowances))


def inflated_and_joined() -> Tunnel:
    made = with_double_ends(walled())
    front, back = made.ends
    return made.but(ends=(front.but(rails_m=(2.0,), seams_m=(2.0,)), back))


CASES: tuple[tuple[str, str, Callable[[], Tunnel]], ...] = (
    ("end.opening_outside", "fault", vent_in_the_ridge),
    ("end.opening_outside", "fault", door_past_the_bow),
    ("end.openings_overlap", "fault", fan_over_the_door),
    ("end.seam_off_rail", "caution", seam_by_a_rail),
    ("end.seam_off_rail", "caution", seam_far_from_rails),
    ("end.seam_above_ridge", "caution", seam_over_the_ridge),
    ("end.seam_lap_short", "caution", hardly_lapped),
    ("end.seam_parts_air", "caution", inflated_and_joined),
)


@pytest.mark.parametrize(("code", "severity", "make"), CASES)
def test_fault_is_told_and_taken_away(code: str, severity: str, make: Callable[[], Tunnel]) -> None:
    assert_told(found(small_farm(make()), code), severity)
    assert_mended(small_farm(make()), code)


def test_what_just_has_not_the_fault_is_let_alone() -> None:
    # At 2.1 m the bow of 4.024 m with its tube reaches sqrt(16.193 - 4.41) = 3.432 m.
    sound = walled(
        doors=(DOOR.but(left_m=1.4),),
        cuts=(VENT.but(sill_m=3.0), VENT.but(left_m=0.3, sill_m=2.1)),
        rails_m=(2.0,),
        seams_m=(2.0,),
    )
    allowances = sound.skin.allowances.but(seam_lap_m=0.1)
    sound = sound.but(skin=sound.skin.but(allowances=allowances))
    for code in {code for code, _, _ in CASES}:
        assert found(small_farm(sound), code) == []


def test_a_seam_goes_to_the_rail_close_by_or_gets_one() -> None:
    (near,) = found(small_farm(seam_by_a_rail()), "end.seam_off_rail")
    assert near.mended is not None
    assert near.mended.ends[0].seams_m == (2.0,)
    assert words(near.mend, "metric") == "Move the seam to the rail at 2.000 m."
    (far,) = found(small_farm(seam_far_from_rails()), "end.seam_off_rail")
    assert far.mended is not None
    assert far.mended.ends[0].rails_m == (1.0, 2.2)


def test_an_opening_that_fits_nowhere_has_no_mend_but_words() -> None:
    (finding,) = found(
        small_farm(walled(cuts=(VENT.but(width_m=5.0, height_m=3.5, sill_m=0.0, left_m=-2.5),))),
        "end.opening_outside",
    )
    assert finding.mended is None
    assert "nowhere in this wall has it room" in words(finding.mend, "metric")


def test_a_door_too_large_is_told_once() -> None:
    farm = small_farm(walled(doors=(Door(width_m=9.0, height_m=2.0),)))
    assert found(farm, "door.too_large")
    assert found(farm, "end.opening_outside") == []


def test_a_mended_opening_lies_in_the_outline() -> None:
    (finding,) = found(small_farm(vent_in_the_ridge()), "end.opening_outside")
    assert finding.mended is not None
    mended = finding.mended
    (vent,) = lay_ends(survey_frame(mended.frame), mended.skin, mended.ends)[0].openings
    assert vent.inside


def half_farm(stock_m: float, **changes: object) -> Farm:
    """Return a farm whose front end is of a film that comes in one width and 30 m length."""
    farm = small_farm()
    film = farm.catalogue.films[0]
    roll = film.rolls[0].but(width_m=stock_m, length_m=30.0)
    half = film.but(key="half", name="half film", rolls=(roll,))
    catalogue = farm.catalogue.but(films=(*farm.catalogue.films, half))
    made = walled(film=layers().but(outer="half"), **changes)
    return farm.but(catalogue=catalogue, tunnels=(made,))


def no_stock(farm: Farm) -> list[Finding]:
    return [f for f in found(farm, "film.no_stock") if f.where.startswith("piece/end-wall")]


def test_an_end_too_wide_for_its_stock_is_joined_on_a_rail() -> None:
    # 8.048 + 2 x 0.3048 = 8.6576 m wide; halved, the sheets are 2 + 0.1524 + 0.3048 = 2.4572 and
    # 2.024 + 0.1524 + 0.3048 = 2.4812 m high.
    assert no_stock(half_farm(8.6577)) == []
    farm = half_farm(2.5)
    (finding,) = no_stock(farm)
    assert "Join it at 1 seam on a rail" in words(finding.mend, "metric")
    mended = finding.mended
    assert isinstance(mended, Tunnel)
    assert mended.ends[0].seams_m == mended.ends[0].rails_m == (2.0,)
    assert no_stock(farm.but(tunnels=(mended,))) == []


def test_a_strip_that_misses_the_peak_says_by_how_much() -> None:
    # From a seam at 1.7 m to the ridge, 4.024 m with the tube: 2.324 + 0.1524 of the lap + 0.3048
    # of tail = 2.7812 m, 0.2812 m more than the stock.
    farm = half_farm(2.5, rails_m=(1.7, 2.6), seams_m=(1.7,))
    (finding,) = no_stock(farm)
    said = words(finding.what, "metric")
    assert "the widest stock, 2.500 m, misses the peak at 4.024 m by 0.281 m, tails" in said
    mended = finding.mended
    assert isinstance(mended, Tunnel)
    assert mended.ends[0].seams_m == (1.7, 2.6)
    assert no_stock(farm.but(tunnels=(mended,))) == []


def test_stock_too_narrow_for_any_strip_has_no_mend() -> None:
    (finding,) = no_stock(half_farm(0.4))
    assert finding.mended is None
    assert "Enter a wider stock" in words(finding.mend, "metric")
