"""What people enter: frozen, checked, nothing derived."""

from hoopwright.farm.air import Air, AirReading, PlacedJumper
from hoopwright.farm.bar import Bar, RoundTube, SquareTube
from hoopwright.farm.blower import Blower, FanPoint, Hose
from hoopwright.farm.catalogue import Catalogue, Film, FilmRoll, Part
from hoopwright.farm.drive import Drive, GearedCrank, HandCrank, LineDrum
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
from hoopwright.farm.heating import Climate, Heating
from hoopwright.farm.side import Panel, Side, Split
from hoopwright.farm.skin import Allowances, Door, End, Layers, Skin
from hoopwright.farm.weather import Weather

__all__ = [
    "Air",
    "AirReading",
    "Allowances",
    "Bar",
    "Bench",
    "Blower",
    "Catalogue",
    "Climate",
    "Door",
    "Drive",
    "End",
    "EvenBows",
    "FanPoint",
    "Farm",
    "Film",
    "FilmRoll",
    "Frame",
    "GearedCrank",
    "GothicBow",
    "HandCrank",
    "Heating",
    "Hose",
    "Layers",
    "Limits",
    "LineDrum",
    "ListedBows",
    "Money",
    "Panel",
    "Part",
    "PlacedJumper",
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
