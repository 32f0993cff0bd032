"""What people enter: frozen, checked, nothing derived."""

from hoopwright.farm.air import Air, AirReading, PlacedJumper
from hoopwright.farm.bar import Bar, RoundTube, SquareTube
from hoopwright.farm.blower import Blower, FanPoint, Hose
from hoopwright.farm.catalogue import Catalogue, Film, FilmRoll, Part
from hoopwright.farm.condition import PartState
from hoopwright.farm.drive import Drive, GearedCrank, HandCrank, LineDrum
from hoopwright.farm.extras import Rain, Screen, Shade
from hoopwright.farm.farm import Bench, Farm, Limits, Money, Tunnel
from hoopwright.farm.frame import EvenBows, Frame, ListedBows, SideBoards, bow_positions
from hoopwright.farm.heating import Climate, Heating
from hoopwright.farm.measured_bow import AcrossUp, MeasuredBow, TwoTapes
from hoopwright.farm.profile import GothicBow, RoundBow, StraightRafters
from hoopwright.farm.side import Panel, Side, Split
from hoopwright.farm.skin import Allowances, Cut, Door, End, Layers, RigidSheet, Skin
from hoopwright.farm.tape import BowReading, SideReading, Tape
from hoopwright.farm.weather import Weather

__all__ = [
    "AcrossUp",
    "Air",
    "AirReading",
    "Allowances",
    "Bar",
    "Bench",
    "Blower",
    "BowReading",
    "Catalogue",
    "Climate",
    "Cut",
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
    "MeasuredBow",
    "Money",
    "Panel",
    "Part",
    "PartState",
    "PlacedJumper",
    "Rain",
    "RigidSheet",
    "RoundBow",
    "RoundTube",
    "Screen",
    "Shade",
    "Side",
    "SideBoards",
    "SideReading",
    "Skin",
    "Split",
    "SquareTube",
    "StraightRafters",
    "Tape",
    "Tunnel",
    "TwoTapes",
    "Weather",
    "bow_positions",
]
