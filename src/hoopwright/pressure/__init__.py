"""Hold the cells under pressure: blower, hoses, leaks, filling, and the pull in the film."""

from hoopwright.pressure.balance import AirBalance, balance_air
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.filling import Filling, fill_net
from hoopwright.pressure.held import (
    BlowerTry,
    CellAir,
    FilmPull,
    Held,
    HoseAir,
    LeakHint,
    LeakingCell,
)
from hoopwright.pressure.holding import hold_air, leaking_cell
from hoopwright.pressure.hose import Hose
from hoopwright.pressure.net import AirCell, AirNet, Feed, Jump

__all__ = [
    "AirBalance",
    "AirCell",
    "AirNet",
    "BlowerTry",
    "CellAir",
    "FanCurve",
    "Feed",
    "Filling",
    "FilmPull",
    "Held",
    "Hose",
    "HoseAir",
    "Jump",
    "LeakHint",
    "LeakingCell",
    "balance_air",
    "fill_net",
    "hold_air",
    "leaking_cell",
]
