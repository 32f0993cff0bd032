"""The outline of an end wall and what lies in it."""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from hoopwright.farm.end_places import Box
from hoopwright.survey.bow_curve import BowCurve

OUTLINE_STEP_M = 0.05
TOUCH_M = 1e-6
SEARCH_M = 1e-5
TINY_M = 1e-9

Point = tuple[float, float]
Reach = tuple[float, float]
Half = tuple[tuple[float, ...], tuple[float, ...]]


@dataclass(frozen=True, slots=True)
class EndShape:
    """The outside of an end bow down to the ground, seen from outside.

    Attributes:
        curve: The outside of a bow, seen from the front.
        mirrored: Whether it is seen from the back.
        outline: From the left foot over the ridge to the right foot, m.
        halves: Left and right half of it, each from the foot to the ridge: heights and places
            across, m.
    """

    curve: BowCurve
    mirrored: bool
    outline: tuple[Point, ...]
    halves: tuple[Half, Half]

    @property
    def height_m(self) -> float:
        """Return the height of the ridge, m."""
        return self.halves[0][0][-1]

    def reach_at(self, height_m: float) -> Reach:
        """Return from where to where the outline reaches at a height of the wall, m."""
        first_m, second_m = (_at_height(self.curve, height_m, side)[0] for side in (0, 1))
        return (-second_m, -first_m) if self.mirrored else (first_m, second_m)

    def widest(self, low_m: float, high_m: float) -> Reach:
        """Return the farthest that the outline reaches to the left and right between heights, m."""
        lefts, rights = self._edges(low_m, high_m)
        return min(lefts), max(rights)

    def room(self, low_m: float, high_m: float) -> Reach:
        """Return the narrowest that the outline leaves between heights, m; above it nothing."""
        if high_m > self.height_m + TOUCH_M:
            return math.inf, -math.inf
        lefts, rights = self._edges(low_m, high_m)
        return max(lefts), min(rights)

    def _edges(self, low_m: float, high_m: float) -> tuple[list[float], list[float]]:
        top_m = self.height_m
        ends = [self.reach_at(min(max(y, 0.0), top_m)) for y in (low_m, high_m)]
        lefts, rights = (
            across[bisect_right(up, low_m) : bisect_left(up, high_m)] for up, across in self.halves
        )
        return [ends[0][0], ends[1][0], *lefts], [ends[0][1], ends[1][1], *rights]

    def holds(self, box: Box) -> bool:
        """Return whether a rectangle lies in the outline; its edges may touch it."""
        if box.low_m < -TOUCH_M:
            return False
        left_m, right_m = self.room(box.low_m, box.high_m)
        return left_m - TOUCH_M <= box.left_m and box.right_m <= right_m + TOUCH_M

    def free_m(self, height_m: float, boxes: Sequence[Box]) -> float:
        """Return how much of a level line from side to side no rectangle takes, m.

        Source:
            Derived here: the line less the stretches taken, overlaps once; a line along an edge of
            a rectangle is free, but along its lower edge on the ground.
        """
        left_m, right_m = self.reach_at(height_m)
        taken = sorted(
            (max(left_m, box.left_m), min(right_m, box.right_m))
            for box in boxes
            if box.low_m < height_m < box.high_m or box.low_m <= TOUCH_M >= height_m
        )
        found_m, at_m = 0.0, left_m
        for from_m, to_m in taken:
            found_m += max(0.0, from_m - at_m)
            at_m = max(at_m, to_m)
        return found_m + max(0.0, right_m - at_m)

    def highest(self, left_m: float, right_m: float) -> float:
        """Return the greatest height of the outline between two places across, m.

        Source:
            The outline in short straight steps.
        """
        found = [y for x, y in self.outline if left_m <= x <= right_m]
        for (x0, y0), (x1, y1) in pairwise(self.outline):
            for x in (left_m, right_m):
                if min(x0, x1) <= x <= max(x0, x1) and x0 != x1:
                    found.append(y0 + (y1 - y0) * (x - x0) / (x1 - x0))
        return max(found, default=0.0)

    def covered_m2(self, boxes: Sequence[Box]) -> float:
        """Return what rectangles cover of the wall, where they overlap once, m2.

        Source:
            Derived here: the edges of all rectangles part the wall into cells that are covered or
            not; a cell that the outline cuts is clipped to it.
        """
        across = sorted({x for box in boxes for x in (box.left_m, box.right_m)})
        up = sorted({y for box in boxes for y in (box.low_m, box.high_m)})
        cells = (Box(x0, y0, x1, y1) for x0, x1 in pairwise(across) for y0, y1 in pairwise(up))
        return math.fsum(self._area_in(cell) for cell in cells if _covered(cell, boxes))

    def _area_in(self, cell: Box) -> float:
        if self.holds(cell):
            return (cell.right_m - cell.left_m) * (cell.high_m - cell.low_m)
        return clipped_m2(self.outline, cell)


@lru_cache(maxsize=32)
def end_shape(curve: BowCurve, number: int) -> EndShape:
    """Return the shape of an end wall.

    Args:
        curve: The outside of a bow, seen from the front.
        number: 0 for the front end, 1 for the back.
    """
    points = _with_widest(curve)
    if number == 1:
        points = tuple((-x, y) for x, y in reversed(points))
    top = max(range(len(points)), key=lambda n: points[n][1])
    left, right = points[: top + 1], tuple(reversed(points[top:]))
    return EndShape(curve, number == 1, points, (_half(left), _half(right)))


def _half(rising: tuple[Point, ...]) -> Half:
    return tuple(y for _x, y in rising), tuple(x for x, _y in rising)


def _with_widest(curve: BowCurve) -> tuple[Point, ...]:
    """Return the outline with its widest places: between two steps of an arc it reaches farther.

    Source:
        Search by thirds for the greatest of a function that rises and then falls.
    """
    points = list(curve.outline(OUTLINE_STEP_M))
    for side, sign in ((0, -1.0), (1, 1.0)):
        k = max(range(len(points)), key=lambda n: sign * points[n][0])
        if not 0 < k < len(points) - 1:
            continue
        low_m, high_m = sorted((points[k - 1][1], points[k + 1][1]))
        while high_m - low_m > SEARCH_M:
            third_m = (high_m - low_m) / 3
            one, two = (_at_height(curve, y, side) for y in (low_m + third_m, high_m - third_m))
            if sign * one[0] < sign * two[0]:
                low_m += third_m
            else:
                high_m -= third_m
        found = _at_height(curve, (low_m + high_m) / 2, side)
        if sign * found[0] > sign * points[k][0] + TINY_M:
            after = (found[1] > points[k][1]) == (side == 0)
            points.insert(k + after, found)
    return tuple(points)


def _at_height(curve: BowCurve, height_m: float, side: int) -> Point:
    return curve.point_at(curve.position_at_height(height_m, side))


def _covered(cell: Box, boxes: Iterable[Box]) -> bool:
    return any(
        box.left_m <= cell.left_m
        and cell.right_m <= box.right_m
        and box.low_m <= cell.low_m
        and cell.high_m <= box.high_m
        for box in boxes
    )


def clipped_m2(points: Sequence[Point], box: Box) -> float:
    """Return the area of a polygon inside an upright rectangle, m2.

    Source:
        Clipping edge by edge (Sutherland and Hodgman, from memory), then the shoelace rule.
    """
    found = list(points)
    for axis, limit_m, sign in (
        (0, box.left_m, 1.0),
        (0, box.right_m, -1.0),
        (1, box.low_m, 1.0),
        (1, box.high_m, -1.0),
    ):
        found = _cut(found, axis, limit_m, sign)
    if len(found) < 3:
        return 0.0
    pairs = zip(found, (*found[1:], found[0]), strict=True)
    return abs(math.fsum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


def _cut(points: list[Point], axis: int, limit_m: float, sign: float) -> list[Point]:
    """Return the part of a polygon on one side of a level or upright line."""
    found: list[Point] = []
    for before, after in zip((points[-1], *points[:-1]) if points else (), points, strict=True):
        from_m, to_m = sign * (before[axis] - limit_m), sign * (after[axis] - limit_m)
        if (from_m < 0) != (to_m < 0):
            share = from_m / (from_m - to_m)
            found.append(
                (
                    before[0] + share * (after[0] - before[0]),
                    before[1] + share * (after[1] - before[1]),
                )
            )
        if to_m >= 0:
            found.append(after)
    return found
