"""Words of a side: every choice has some, places are named as people call them."""

from typing import get_args

import pytest

import samples
from hoopwright.curtain.curtain import Bound
from hoopwright.farm.farm import Sealer
from hoopwright.farm.side import BottomEdge, RopeKind, SideKind, TopEdge, Winding
from hoopwright.farm.weather import Exposure, WindSide
from hoopwright.papers import side_words


@pytest.mark.parametrize(
    ("choices", "words"),
    [
        (SideKind, side_words.KINDS),
        (Winding, side_words.WINDINGS),
        (RopeKind, side_words.ROPES),
        (BottomEdge, side_words.BOTTOMS),
        (TopEdge, side_words.TOPS),
        (Bound, side_words.BOUNDS),
        (WindSide, side_words.WIND_SIDES),
        (Exposure, side_words.EXPOSURES),
        (Sealer, side_words.SEALERS),
    ],
)
def test_every_choice_has_words_of_its_own(choices: object, words: dict[str, str]) -> None:
    assert set(words) == set(get_args(choices))
    assert len(set(words.values())) == len(words)
    assert not any("_" in text for text in words.values())


@pytest.mark.parametrize(
    ("mark", "name"),
    [
        ("side/0/panel/1", "West side, curtain 2"),
        ("side/1/strip/0", "East side, strip 1"),
        ("side/0/pocket/front", "West side, front pocket"),
        ("end/1", "Back end"),
        ("air/blower", "air blower"),
    ],
)
def test_places_are_named(mark: str, name: str) -> None:
    assert side_words.place_name(samples.tunnel(), mark) == name
