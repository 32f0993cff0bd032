"""Lay the skin: every sheet and how its size adds up."""

from hoopwright.cover.cover import Area, Cover, CurtainSpan, FixedSpan, Piece
from hoopwright.cover.pieces import lay_skin

__all__ = ["Area", "Cover", "CurtainSpan", "FixedSpan", "Piece", "lay_skin"]
