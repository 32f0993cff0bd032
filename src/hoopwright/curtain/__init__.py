"""Work the sides: how each curtain rolls, turns, hangs and is roped."""

from hoopwright.curtain.cranking import work_curtains
from hoopwright.curtain.curtain import CurtainWork

__all__ = ["CurtainWork", "work_curtains"]
