"""Air the tunnel: how much opens and what air passes through it."""

from hoopwright.airing.airing import Airing
from hoopwright.airing.flow import air_tunnel
from hoopwright.airing.workings import told_flow, told_share

__all__ = ["Airing", "air_tunnel", "told_flow", "told_share"]
