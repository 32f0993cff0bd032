"""Fill the space between two layers with air: seals, cells and the jumpers between them."""

from hoopwright.inflation.cells import fill_cells
from hoopwright.inflation.hoses import feed_hose, jumper_hose
from hoopwright.inflation.inflation import Cell, Inflation, Jumper, Seal
from hoopwright.inflation.placed import placed_jumpers

__all__ = [
    "Cell",
    "Inflation",
    "Jumper",
    "Seal",
    "feed_hose",
    "fill_cells",
    "jumper_hose",
    "placed_jumpers",
]
