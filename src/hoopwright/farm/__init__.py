"""What people enter: frozen, checked, nothing derived."""

from hoopwright.farm.catalogue import (
    Bar,
    Catalogue,
    Film,
    FilmRoll,
    HandCrank,
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

__all__ = [
    "Air",
    "Allowances",
    "Bar",
    "Bench",
    "Catalogue",
    "Door",
    "End",
    "EvenBows",
    "Farm",
    "Film",
    "FilmRoll",
    "Frame",
    "GothicBow",
    "HandCrank",
    "Layers",
    "Limits",
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
    "bow_positions",
]
