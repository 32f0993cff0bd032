"""Work the sides: how each curtain rolls or drops, turns, hangs and is roped."""

from hoopwright.curtain.bar import BarFigures, section_figures
from hoopwright.curtain.course import course
from hoopwright.curtain.cranking import work_curtains
from hoopwright.curtain.curtain import Bound, Course, CurtainWork
from hoopwright.curtain.gauge import gauge_words

__all__ = [
    "BarFigures",
    "Bound",
    "Course",
    "CurtainWork",
    "course",
    "gauge_words",
    "section_figures",
    "work_curtains",
]
