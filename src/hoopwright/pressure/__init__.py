"""Hold the cells under pressure: blower, hoses, leaks, filling, and the pull in the film."""

from hoopwright.pressure.balance import AirBalance, balance_air
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.filling import Filling, fill_net
from hoopwright.pressure.hose import Hose
from hoopwright.pressure.net import AirCell, AirNet, Feed, Jump

__all__ = [
    "AirBalance",
    "AirCell",
    "AirNet",
    "FanCurve",
    "Feed",
    "Filling",
    "Hose",
    "Jump",
    "balance_air",
    "fill_net",
]
