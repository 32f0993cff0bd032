"""Which sides have sheets of their own, and what their curtains are made of."""

import pytest

from hoopwright.cover import own_sheets
from hoopwright.cover.side_film import curtain_films
from hoopwright.farm.side import SideKind
from hoopwright.farm.skin import Covering
from samples import CLEAR, INSIDE, drop_side, layers, side, tunnel, woven_side

TWO = (("outer", CLEAR), ("inner", INSIDE))


@pytest.mark.parametrize(
    ("kind", "covering", "own"),
    [
        ("fixed", "one_sheet", False),
        ("roll_up", "one_sheet", False),
        ("woven", "one_sheet", True),
        ("drop_down", "one_sheet", True),
        ("fixed", "roof_and_sides", True),
        ("roll_up", "roof_and_sides", True),
        ("woven", "roof_and_sides", True),
        ("drop_down", "roof_and_sides", True),
    ],
)
def test_side_has_sheets_of_its_own_where_one_sheet_cannot_serve(
    kind: SideKind, covering: Covering, own: bool
) -> None:
    assert own_sheets(side(kind=kind), covering) is own


def test_roll_up_curtains_have_the_layers_of_the_sides_or_of_the_sheet() -> None:
    skin = tunnel().skin.but(sides=layers(2))
    assert curtain_films(side(), skin, "roof_and_sides") == TWO
    assert curtain_films(side(), skin, "one_sheet") == (("single", CLEAR),)


def test_film_of_its_own_makes_one_layer_where_curtains_are_apart() -> None:
    skin = tunnel(roof_layers=2).skin.but(sides=layers(2))
    special = side(film=INSIDE)
    assert curtain_films(special, skin, "roof_and_sides") == (("single", INSIDE),)
    # A sheet from baseboard to baseboard is of one film.
    assert curtain_films(special, skin, "one_sheet") == TWO


@pytest.mark.parametrize("covering", ["one_sheet", "roof_and_sides"])
def test_woven_and_drop_down_curtains_have_one_layer(covering: Covering) -> None:
    skin = tunnel(roof_layers=2).skin.but(sides=layers(2))
    assert curtain_films(woven_side(), skin, covering) == (("single", INSIDE),)
    assert curtain_films(drop_side(), skin, covering) == (("single", CLEAR),)
