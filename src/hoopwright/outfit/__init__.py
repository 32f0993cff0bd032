"""Fit out the tunnel: gutters for the rain, shade cloth over the film, insect screens."""

from hoopwright.outfit.fitting import fit_out
from hoopwright.outfit.outfit import Gutter, Outfit, RainWork, ShadeLaid, SideScreen
from hoopwright.outfit.telling import told_rain, told_screen, told_shade

__all__ = [
    "Gutter",
    "Outfit",
    "RainWork",
    "ShadeLaid",
    "SideScreen",
    "fit_out",
    "told_rain",
    "told_screen",
    "told_shade",
]
