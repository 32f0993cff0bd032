"""Price and compare."""

from hoopwright.cost.cost import Cost
from hoopwright.cost.prices import price_order

__all__ = ["Cost", "price_order"]
