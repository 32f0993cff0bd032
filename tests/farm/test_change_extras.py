"""Rain, shade and screen come and go."""

import pytest

from hoopwright.farm import Catalogue, Rain, Screen, Shade
from hoopwright.farm.change_extras import set_rain, set_screen, set_shade
from samples import small_catalogue, tunnel


def offering(*keys: str) -> Catalogue:
    plain = small_catalogue()
    like = plain.parts[0].but(group="Shade and screen", counted_in="m")
    return plain.but(parts=(*plain.parts, *(like.but(key=key) for key in keys)))


def test_rain_comes_and_goes_and_what_was_entered_stays() -> None:
    rainy = set_rain(tunnel(), True)
    assert rainy.rain == Rain()
    wet = rainy.but(rain=Rain(depth_m=0.05))
    assert set_rain(wet, True) is wet
    assert set_rain(wet, False).rain is None


def test_cloth_and_screen_of_the_catalogue_are_taken() -> None:
    catalogue = offering("net", "shade_cloth", "insect_screen")
    shaded = set_shade(tunnel(), True, catalogue)
    assert shaded.shade == Shade(part="shade_cloth")
    assert set_shade(shaded, True, catalogue) is shaded
    assert set_shade(shaded, False, catalogue).shade is None
    screened = set_screen(tunnel(), 1, True, catalogue)
    assert [side.screen for side in screened.sides] == [None, Screen(part="insect_screen")]
    assert set_screen(screened, 1, False, catalogue).sides[1].screen is None


def test_without_the_usual_part_the_first_by_length_is_taken() -> None:
    assert set_screen(tunnel(), 0, True, offering("net")).sides[0].screen == Screen(part="net")


def test_catalogue_without_cloth_says_what_to_add() -> None:
    with pytest.raises(ValueError, match=r"shade: the catalogue has nothing by length.*add it"):
        set_shade(tunnel(), True, small_catalogue())
