"""Keep the tunnel warm: what it loses, what a season burns, and when a second layer is paid."""

from hoopwright.heat.loss import HeatLoss, Surface, heat_loss
from hoopwright.heat.payback import PayBack, pay_back, season_saving
from hoopwright.heat.season import BlowerSeason, Fuel, SeasonHeat, blower_season, season_heat

__all__ = [
    "BlowerSeason",
    "Fuel",
    "HeatLoss",
    "PayBack",
    "SeasonHeat",
    "Surface",
    "blower_season",
    "heat_loss",
    "pay_back",
    "season_heat",
    "season_saving",
]
