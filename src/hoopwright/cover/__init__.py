"""Lay the skin: every sheet and how its size adds up."""

from hoopwright.cover.cover import Area, Cover, CurtainSpan, FixedSpan, Piece, SheetWidth
from hoopwright.cover.pieces import lay_skin, sheet_width
from hoopwright.cover.side_film import own_sheets

__all__ = [
    "Area",
    "Cover",
    "CurtainSpan",
    "FixedSpan",
    "Piece",
    "SheetWidth",
    "lay_skin",
    "own_sheets",
    "sheet_width",
]
