"""How much of the cover stands in one layer and in two, against sums by hand."""

import math
from dataclasses import replace

import pytest

from hoopwright.cover import Cover
from hoopwright.farm import Cut, Door, Heating, PlacedJumper, RigidSheet, Tunnel
from hoopwright.farm.profile import Profile
from hoopwright.heat.surfaces import AsLaid, CoverPart, air_changes, cover_parts, heat_surfaces
from hoopwright.survey import survey_frame
from laying import laid
from samples import (
    double_tunnel,
    gothic_profile,
    layers,
    rafter_profile,
    round_profile,
    small_catalogue,
    tunnel,
)
from warmed import filled, half_round

FEET_M = 0.3048


def parts_of(chosen: Tunnel, cover: Cover | None = None) -> dict[str, CoverPart]:
    """Return the parts of the tunnel's cover by name."""
    skin = cover or laid(chosen)
    survey = survey_frame(chosen.frame)
    found = cover_parts(survey, skin, filled(chosen, skin), small_catalogue().films)
    return {part.name: part for part in found}


# Worked by hand: half round, 30 x 96 ft: 15 pi x 96 + pi 15**2 = 5230.8 ft2.
def test_parts_make_up_the_cover_of_a_half_round_house() -> None:
    parts = parts_of(half_round())
    whole_m2 = sum(part.area_m2 for part in parts.values())
    assert whole_m2 / FEET_M**2 == pytest.approx(5230.8, rel=1e-4)
    # Each end is half a circle; each side is the arc up to 1.5 m.
    radius_m = 15 * FEET_M
    assert parts["front end wall"].area_m2 == pytest.approx(math.pi * radius_m**2 / 2)
    side_m2 = radius_m * math.asin(1.5 / radius_m) * 96 * FEET_M
    assert parts["first side"].area_m2 == pytest.approx(side_m2)
    assert parts["second side"].area_m2 == pytest.approx(side_m2)


@pytest.mark.parametrize("profile", [round_profile(), gothic_profile(), rafter_profile()])
def test_parts_make_up_the_cover_of_every_frame(profile: Profile) -> None:
    chosen = tunnel(profile)
    survey = survey_frame(chosen.frame)
    whole_m2 = sum(part.area_m2 for part in parts_of(chosen).values())
    assert whole_m2 == pytest.approx(survey.cover_area_m2)


def test_one_layer_has_no_two() -> None:
    assert not any(part.two_m2 or part.doubled for part in parts_of(tunnel()).values())


# Worked by hand: 24 m of roof; legs of 1.5 m, hip at 1.5 m, bar at 0.25 m with 0.05 m of slack:
# 1.30 m hang along an opening of 21 m, of which a strip takes one bay of 1.5 m on the second side.
def test_inflated_roof_and_curtains_count_as_two() -> None:
    chosen = double_tunnel()
    parts = parts_of(chosen)
    assert parts["roof"].two_m2 == pytest.approx(parts["roof"].area_m2)
    assert parts["first side"].two_m2 == pytest.approx(1.30 * 21.0)
    assert parts["second side"].two_m2 == pytest.approx(1.30 * 19.5)
    assert parts["front end wall"].two_m2 == 0.0


def test_two_layers_without_a_blower_count_as_one() -> None:
    chosen = double_tunnel()
    parts = parts_of(chosen.but(air=chosen.air.but(blower=None)))
    assert not any(part.two_m2 for part in parts.values())
    assert parts["roof"].doubled


def test_sides_that_are_not_inflated_count_as_one() -> None:
    chosen = double_tunnel()
    parts = parts_of(chosen.but(air=chosen.air.but(inflated_sides=(False, True))))
    assert parts["first side"].doubled
    assert parts["first side"].two_m2 == 0.0
    assert parts["second side"].two_m2 > 0.0


def test_cells_that_no_jumper_feeds_count_as_one() -> None:
    chosen = double_tunnel()
    only = (PlacedJumper(surface="first_side", at_m=3.0),)
    parts = parts_of(chosen.but(air=chosen.air.but(jumpers=only)))
    # The first of the two curtains of the first side: from the pocket at 1.5 m to 12 m.
    assert parts["first side"].two_m2 == pytest.approx(1.30 * 10.5)
    assert parts["second side"].two_m2 == 0.0


def test_inflated_end_counts_as_two_but_for_its_doors() -> None:
    chosen = double_tunnel()
    front, back = chosen.ends
    door = Door(width_m=2.0, height_m=2.5)
    chosen = chosen.but(
        ends=(front.but(film=layers(2), doors=(door,)), back),
        air=chosen.air.but(inflated_ends=(True, False)),
    )
    parts = parts_of(chosen)
    assert parts["front end wall"].two_m2 == pytest.approx(parts["back end wall"].area_m2 - 5.0)
    assert parts["back end wall"].two_m2 == 0.0


def test_curtains_of_one_sheet_count_as_two_when_inflated() -> None:
    chosen = double_tunnel()
    parts = parts_of(chosen, laid(chosen, "one_sheet"))
    assert parts["first side"].two_m2 > 20.0


def test_a_vent_in_an_inflated_end_counts_as_one_layer_too() -> None:
    chosen = double_tunnel()
    front, back = chosen.ends
    vent = Cut(left_m=-0.5, sill_m=1.0, width_m=1.0, height_m=0.8)
    chosen = chosen.but(
        ends=(front.but(film=layers(2), cuts=(vent,)), back),
        air=chosen.air.but(inflated_ends=(True, False)),
    )
    parts = parts_of(chosen)
    assert parts["front end wall"].two_m2 == pytest.approx(parts["back end wall"].area_m2 - 0.8)


# Worked by hand: a door of 2 x 2.5 m in one layer at 6, the rest rigid at 3.5 W/m2/K.
def test_a_rigid_end_lets_through_what_is_entered_for_it_however_the_film_is_laid() -> None:
    chosen = double_tunnel()
    front, back = chosen.ends
    rigid = RigidSheet(part="rigid")
    door = Door(width_m=2.0, height_m=2.5)
    parts = parts_of(
        chosen.but(ends=(front.but(film=None, rigid=rigid, doors=(door,)), back.but(film=None)))
    )
    part = parts["front end wall"]
    assert part.rigid_m2 == pytest.approx(part.area_m2 - 5.0)
    assert (part.u_one(HEATING), part.u_two(HEATING)) == (3.5, 3.5)
    assert parts["back end wall"].u_one(HEATING) == 6.0
    for laid_as in ("one", "now"):
        found = heat_surfaces((part,), HEATING, laid_as)
        assert sum(s.loss_w_k for s in found) == pytest.approx(5.0 * 6.0 + part.rigid_m2 * 3.5)
    names = [s.name for s in heat_surfaces((part,), HEATING, "two")]
    assert names == ["front end wall, two layers", "front end wall, rigid sheets"]


HEATING = Heating(u_rigid=3.5, u_one=6.0, u_two=4.0, u_two_thermal=3.0)
PART = CoverPart(name="roof", area_m2=100.0, two_m2=75.0, rigid_m2=0.0, thermal=False, doubled=True)


# Worked by hand: 25 x 6 + 75 x 4 = 450 W/K; all in one 600, all in two 400; with a thermal inner
# layer 25 x 6 + 75 x 3 = 375.
def test_losses_of_a_part_agree_with_the_hand_sums() -> None:
    ways: tuple[AsLaid, ...] = ("one", "two", "now")

    def loss_w_k(part: CoverPart, laid_as: AsLaid) -> float:
        surfaces = heat_surfaces((part,), HEATING, laid_as)
        return sum(surface.loss_w_k for surface in surfaces)

    assert [loss_w_k(PART, laid_as) for laid_as in ways] == [600.0, 400.0, 450.0]
    thermal = replace(PART, thermal=True)
    assert loss_w_k(thermal, "now") == 375.0


# Worked by hand: three quarters of the way from 1.0 to 0.6 changes is 0.7.
def test_air_changes_go_by_the_roof() -> None:
    heating = HEATING.but(changes_one_per_h=1.0, changes_two_per_h=0.6)
    assert air_changes((PART,), heating, "one") == 1.0
    assert air_changes((PART,), heating, "two") == pytest.approx(0.6)
    assert air_changes((PART,), heating, "now") == pytest.approx(0.7)
