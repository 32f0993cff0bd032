"""The outside of a bow that was measured: its line of straights moved outward and cut at the ridge.

At a corner that turns right the film bends round the tube: an arc round the corner, given as short
straights. At one that turns left, and where straights of a smooth curve meet, the two moved lines
are cut at their crossing. A dent narrower than the tube is bridged. Both feet run on the ground.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from hoopwright.survey.segment import Segment, Straight

Point = tuple[float, float]

STEP_RAD = 0.1
NOTHING_M = 1e-9


def measured_halves(
    line: Sequence[Point], outward_m: float
) -> tuple[tuple[Segment, ...], tuple[Segment, ...]]:
    """Return both halves of a bow, each from its foot to the ridge, the right one mirrored.

    Args:
        line: Middle of the tube from foot to foot: rising to the ridge, then falling, m.
        outward_m: How far the line is moved outward, m.

    Source:
        Derived here: two lines moved outward by r cross r tan(turn / 2) from the corner.
    """
    points = _moved(line, outward_m)
    top = max(range(len(points)), key=lambda n: points[n][1])
    left = points[: top + 1]
    right = [(-x, y) for x, y in reversed(points[top:])]
    return _half(left), _half(right)


def _moved(line: Sequence[Point], outward_m: float) -> list[Point]:
    """Return the line moved outward, m."""
    if outward_m == 0:
        return list(line)
    headings = [math.atan2(y1 - y0, x1 - x0) for (x0, y0), (x1, y1) in pairwise(line)]
    points = [_beside(line[0], headings[0], outward_m)]
    for corner, (before, after) in zip(line[1:-1], pairwise(headings), strict=True):
        points += _round(corner, before, after, outward_m)
    points.append(_beside(line[-1], headings[-1], outward_m))
    return points


def _round(corner: Point, before_rad: float, after_rad: float, outward_m: float) -> list[Point]:
    """Return the line round a corner: one crossing, or points on an arc, the level one too."""
    turn_rad = before_rad - after_rad
    if turn_rad <= STEP_RAD:
        reach_m = outward_m / math.cos(turn_rad / 2)
        return [_beside(corner, (before_rad + after_rad) / 2, reach_m)]
    steps = math.ceil(turn_rad / STEP_RAD)
    turned = [before_rad - turn_rad * n / steps for n in range(steps + 1)]
    if before_rad > 0 > after_rad:
        turned = sorted({*turned, 0.0}, reverse=True)
    return [_beside(corner, heading_rad, outward_m) for heading_rad in turned]


def _beside(spot: Point, heading_rad: float, away_m: float) -> Point:
    """Return the place at the left hand of somebody who walks along a heading, m."""
    return (spot[0] - away_m * math.sin(heading_rad), spot[1] + away_m * math.cos(heading_rad))


def _half(points: Sequence[Point]) -> tuple[Segment, ...]:
    """Return a half that rises all the way, from the ground line to its highest point."""
    rising = [points[0]]
    for point in points[1:]:
        if point[1] >= rising[-1][1] and math.dist(point, rising[-1]) > NOTHING_M:
            rising.append(point)
    above = next(n for n, (_x, y) in enumerate(rising) if y > NOTHING_M and n > 0)
    first = Straight(*rising[above - 1], *rising[above]).grounded()
    rest = (Straight(*a, *b) for a, b in pairwise(rising[above:]))
    return (first, *rest)
