"""A bow as it was found: points measured on it, for a frame that no closed shape describes.

A point is taken with a tape across and a tape up, or with two tapes from the two feet. Everything
is to the centre line of the tube and starts at the foot of the first side.
"""

import math
from itertools import pairwise
from typing import Annotated, Literal

from hoopwright.farm.bow_spline import smooth_line
from hoopwright.farm.entered import Entered, choice, measure
from hoopwright.farm.entry_error import EntryError

BowJoin = Literal["corners", "curve"]

Spot = tuple[float, float]


class AcrossUp(Entered, frozen=True, tag="across_up", tag_field="taken"):
    """A point by its distance across and its height.

    Attributes:
        across_m: Across from the foot of the first side, m.
        up_m: Above the ground line, m.
    """

    across_m: Annotated[float, measure("across from the first foot", "m", -5.0, 65.0)]
    up_m: Annotated[float, measure("height of the point", "m", 0.01, 30.0)]


class TwoTapes(Entered, frozen=True, tag="two_tapes", tag_field="taken"):
    """A point by its distances from both feet.

    Attributes:
        first_m: From the foot of the first side, m.
        second_m: From the foot of the second side, m.
    """

    first_m: Annotated[float, measure("tape from the first foot", "m", 0.01, 80.0)]
    second_m: Annotated[float, measure("tape from the second foot", "m", 0.01, 80.0)]


class MeasuredBow(Entered, frozen=True, tag="measured", tag_field="shape"):
    """A bow through measured points, which need not be the same on both sides.

    Attributes:
        span_m: From foot to foot at the ground, tube centre to tube centre, m.
        points: Points between the feet, from the first side over the ridge to the second.
        join: Straight from point to point, or a smooth curve through all of them.
    """

    span_m: Annotated[float, measure("span, tube centre to tube centre", "m", 1.0, 60.0)]
    points: tuple[AcrossUp | TwoTapes, ...]
    join: Annotated[BowJoin, choice("between the points")] = "curve"

    def __post_init__(self) -> None:
        """Refuse points that no bow can pass through, and name them."""
        Entered.__post_init__(self)
        if len(self.points) < 3:
            raise ValueError("points: enter at least three points on the bow")
        if len(self.points) > 60:
            raise ValueError("points: enter at most 60 points on the bow")
        spots = self.spots
        for n, (before, after) in enumerate(pairwise(spots)):
            if math.dist(before, after) < 0.01:
                raise ValueError(
                    f"points[{min(n, len(self.points) - 1)}]: the point lies on the one before it; "
                    "enter each point once"
                )
        at = _first_turn([y for _x, y in spots])
        if at is not None:
            raise ValueError(
                f"points[{at - 1}]: the bow must rise from the first foot to the ridge and fall to "
                "the second; this point is out of order, or its height is wrong"
            )
        if self.join == "curve":
            _check_curve(spots)

    @property
    def spots(self) -> tuple[Spot, ...]:
        """Return feet and points: across from the middle of the span and height, m.

        Source:
            Two tapes d1 and d2 from feet S apart: x = (d1^2 - d2^2 + S^2) / 2S, y = sqrt(d1^2 -
            x^2), the meeting of two circles.
        """
        half_m = self.span_m / 2
        inside = tuple(self._spot(n, point) for n, point in enumerate(self.points))
        return ((-half_m, 0.0), *((x - half_m, y) for x, y in inside), (half_m, 0.0))

    @property
    def line(self) -> tuple[Spot, ...]:
        """Return the centre line of the tube as straights from foot to foot, m."""
        spots = self.spots
        if self.join == "corners":
            return spots
        return (*(spot for run in smooth_line(spots) for spot in run), spots[-1])

    def _spot(self, n: int, point: AcrossUp | TwoTapes) -> Spot:
        if isinstance(point, AcrossUp):
            return point.across_m, point.up_m
        first_m, second_m, span_m = point.first_m, point.second_m, self.span_m
        across_m = (first_m**2 - second_m**2 + span_m**2) / (2 * span_m)
        square_m2 = first_m**2 - across_m**2
        if square_m2 <= 1e-6:
            raise EntryError(
                f"points[{n}]",
                "the two tapes of {first} and {second} do not meet above a span of {span}; measure "
                "them again",
                first=(first_m, "m"),
                second=(second_m, "m"),
                span=(span_m, "m"),
            )
        return across_m, math.sqrt(square_m2)

    @property
    def leg_height_m(self) -> float:
        """Return 0: a measured bow has no straight leg of its own."""
        return 0.0

    @property
    def peak_height_m(self) -> float:
        """Return the height of the highest measured point, m."""
        return max(y for _x, y in self.spots)


def _check_curve(spots: tuple[Spot, ...]) -> None:
    """Refuse points through which a smooth curve swings up and down, and say between which."""
    runs = smooth_line(spots)
    at = _first_turn([*(y for run in runs for _x, y in run), spots[-1][1]])
    if at is None:
        return
    n = 0
    while at >= len(runs[n]):
        at -= len(runs[n])
        n += 1
    raise ValueError(
        f"points[{min(n, len(spots) - 3)}]: the smooth curve swings up and down beside this point; "
        "measure a point between it and its neighbours, or join the points with straight lines"
    )


def _first_turn(heights: list[float]) -> int | None:
    """Return the place of the first height that breaks the rise or the fall; None without one."""
    top = heights.index(max(heights))
    for n in range(1, len(heights) - 1):
        wrong = heights[n] <= heights[n - 1] if n <= top else heights[n] >= heights[n - 1]
        if wrong:
            return n
    return None if heights[-1] < heights[-2] else len(heights) - 2
