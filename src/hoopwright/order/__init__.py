"""Order and cut."""

from hoopwright.order.order import Order
from hoopwright.order.packs import place_order

__all__ = ["Order", "place_order"]
