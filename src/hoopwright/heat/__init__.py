"""Keep the tunnel warm: what it loses, what a season burns, and when a second layer is paid."""

from hoopwright.heat.telling import pay_back_words
from hoopwright.heat.warming import warm_tunnel
from hoopwright.heat.warmth import Warmth

__all__ = ["Warmth", "pay_back_words", "warm_tunnel"]
