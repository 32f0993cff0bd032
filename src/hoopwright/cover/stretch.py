"""A stretch of a side: which bows it spans, and where along it a board stands highest or lowest."""

from bisect import bisect_left, bisect_right
from typing import NamedTuple

from hoopwright.farm import Side
from hoopwright.survey import Survey
from hoopwright.survey.taped import HeightLine

ON_BOW_M = 1e-4

Stretch = tuple[float, float]


class Greatest(NamedTuple):
    """The greatest of what is found at the bows of a stretch.

    Attributes:
        length_m: What it is, m.
        bow: Bow where it is found, 1 at the front; None where nothing was read along that line.
    """

    length_m: float
    bow: int | None

    def named(self, name: str) -> str:
        """Return a name with the bow where it was found."""
        return name if self.bow is None else f"{name}, bow {self.bow}"


def opening_ends(side: Side, bows_m: tuple[float, ...]) -> Stretch:
    """Return where the opening of a side starts and ends: between its pockets, m."""
    front, back = side.pocket_bays
    return bows_m[front], bows_m[len(bows_m) - 1 - back]


def spanned_bows(bows_m: tuple[float, ...], stretch: Stretch) -> range:
    """Return the bows from the last before a stretch to the first behind it, counted from 0."""
    first = max(0, bisect_right(bows_m, stretch[0] + ON_BOW_M) - 1)
    last = min(len(bows_m) - 1, bisect_left(bows_m, stretch[1] - ON_BOW_M))
    return range(min(first, last), max(first, last) + 1)


def greatest_drop(survey: Survey, n: int, height_m: float, stretch: Stretch) -> Greatest:
    """Return the longest way along a bow from the hip seam down to a height, m.

    Args:
        survey: The frame as built.
        n: 0 for the first side, 1 for the second.
        height_m: Above the ground line, m.
        stretch: From where to where along the tunnel, m.

    Source:
        Derived here: difference of two positions along the outside of the bow.
    """
    at_m = survey.curve.position_at_height(height_m, n)
    hips_m = survey.along[n].hips_m
    drops_m = [abs(hips_m[k] - at_m) for k in spanned_bows(survey.bows_m, stretch)]
    return _greatest(survey, drops_m, stretch, survey.taped.lines[n].hip)


def greatest_side(survey: Survey, n: int, stretch: Stretch) -> Greatest:
    """Return the longest way along a bow from hip board to baseboard, m."""
    bows = spanned_bows(survey.bows_m, stretch)
    sides_m = [survey.along[n].sides_m[k] for k in bows]
    line = survey.taped.lines[n]
    return _greatest(survey, sides_m, stretch, line.hip, line.baseboard)


def greatest_gap(survey: Survey, height_m: float, line: HeightLine, stretch: Stretch) -> Greatest:
    """Return how far a height hangs above the lowest place of a line, m; 0 where it lies under it.

    Args:
        survey: The frame as built.
        height_m: Height of what hangs, m.
        line: Ground or baseboard of its side.
        stretch: From where to where along the tunnel, m.
    """
    bows = spanned_bows(survey.bows_m, stretch)
    gaps_m = [max(0.0, height_m - line.heights_m[k]) for k in bows]
    return _greatest(survey, gaps_m, stretch, line)


def _greatest(
    survey: Survey, lengths_m: list[float], stretch: Stretch, *lines: HeightLine
) -> Greatest:
    length_m = max(lengths_m)
    if not any(any(line.read) for line in lines):
        return Greatest(length_m, None)
    first = spanned_bows(survey.bows_m, stretch).start
    return Greatest(length_m, first + lengths_m.index(length_m) + 1)
