"""What people enter: frozen, checked, nothing derived."""

from hoopwright.farm.catalogue import (
    Bar,
    Catalogue,
    Drive,
    Film,
    FilmRoll,
    GearedCrank,
    HandCrank,
    LineDrum,
    Part,
    RoundTube,
    SquareTube,
)
from hoopwright.farm.farm import Bench, Farm, Limits, Money, Tunnel
from hoopwright.farm.frame import (
    EvenBows,
    Frame,
    GothicBow,
    ListedBows,
    RoundBow,
    SideBoards,
    StraightRafters,
    bow_positions,
)
from hoopwright.farm.side import Air, Panel, Side, Split
from hoopwright.farm.skin import Allowances, Door, End, Layers, Skin
from hoopwright.farm.weather import Weather

__all__ = [
    "Air",
    "Allowances",
    "Bar",
    "Bench",
    "Catalogue",
    "Door",
    "Drive",
    "End",
    "EvenBows",
    "Farm",
    "Film",
    "FilmRoll",
    "Frame",
    "GearedCrank",
    "GothicBow",
    "HandCrank",
    "Layers",
    "Limits",
    "LineDrum",
    "ListedBows",
    "Money",
    "Panel",
    "Part",
    "RoundBow",
    "RoundTube",
    "Side",
    "SideBoards",
    "Skin",
    "Split",
    "SquareTube",
    "StraightRafters",
    "Tunnel",
    "Weather",
    "bow_positions",
]
