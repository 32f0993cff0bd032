"""Count what the skin takes."""

from hoopwright.takeoff.need import Need
from hoopwright.takeoff.parts import count_parts

__all__ = ["Need", "count_parts"]
