"""Changes of the shape of the bows: to another shape, and point by point where it was measured."""

import math
from itertools import pairwise
from typing import Literal

from hoopwright.farm.begin import Shape, profile_of_shape
from hoopwright.farm.change import with_tunnel_value
from hoopwright.farm.farm import Tunnel
from hoopwright.farm.measured_bow import AcrossUp, BowJoin, MeasuredBow, TwoTapes
from hoopwright.farm.profile import GothicBow, Profile, RoundBow, StraightRafters

AnyShape = Shape | Literal["measured"]
Taken = Literal["across_up", "two_tapes"]
Point = AcrossUp | TwoTapes
Spot = tuple[float, float]

SHAPES: dict[type, AnyShape] = {
    RoundBow: "round",
    GothicBow: "gothic",
    StraightRafters: "rafters",
    MeasuredBow: "measured",
}
STEPS_OF_SPAN: dict[type, int] = {RoundBow: 12, GothicBow: 12, StraightRafters: 40}
"""How many times the step between two points of an arc goes into the span: bends are short."""
KINK_M = 0.01
UPRIGHT_M = 0.02
"""A measured point this near above its foot still lies on a straight leg; common practice."""


def with_shape(tunnel: Tunnel, shape: AnyShape, outline: tuple[Spot, ...]) -> Tunnel:
    """Return the tunnel with another shape of bow, of the same span, leg and height.

    Args:
        tunnel: The tunnel as entered.
        shape: The shape wanted.
        outline: Points on the centre line of the present bow from the first foot to the second,
            across from the middle and up, m; a measured bow starts from them.

    Raises:
        ValueError: No such bow can stand, or the readings do not suit it; the field is named.
    """
    old = tunnel.frame.profile
    if shape == SHAPES[type(old)]:
        return tunnel
    fresh: Profile
    if shape == "measured":
        fresh = _through(outline, old)
    else:
        leg_m = straight_leg(old) if isinstance(old, MeasuredBow) else old.leg_height_m
        fresh = profile_of_shape(shape, old.span_m, leg_m, old.peak_height_m)
    return with_tunnel_value(tunnel, ("frame", "profile"), fresh)


def outline_step(profile: Profile) -> float:
    """Return how far apart points are taken on the arcs of a bow that becomes a measured one, m."""
    return profile.span_m / STEPS_OF_SPAN.get(type(profile), max(STEPS_OF_SPAN.values()))


def straight_leg(bow: MeasuredBow) -> float:
    """Return how far a measured bow stands upright above both feet, by its points, m."""
    return min(_leg(bow.spots), _leg(tuple(reversed(bow.spots))))


def point_taken(point: Point) -> Taken:
    """Return how a point was measured."""
    return "two_tapes" if isinstance(point, TwoTapes) else "across_up"


def with_point_taken(tunnel: Tunnel, index: int, taken: Taken) -> Tunnel:
    """Return the tunnel with a point of the bow told the other way, at the same place."""
    bow = _measured(tunnel)
    half_m = bow.span_m / 2
    x_m, y_m = bow.spots[index + 1]
    return _with_points(tunnel, bow, index, index + 1, _point((x_m + half_m, y_m), bow, taken))


def add_point(tunnel: Tunnel) -> Tunnel:
    """Return the tunnel with one more point of the bow, in the middle of the longest gap.

    Raises:
        ValueError: There are as many points as a bow can have.
    """
    bow = _measured(tunnel)
    gaps = list(pairwise(bow.spots))
    index = max(range(len(gaps)), key=lambda n: math.dist(*gaps[n]))
    (x0_m, y0_m), (x1_m, y1_m) = gaps[index]
    spot = ((x0_m + x1_m) / 2 + bow.span_m / 2, (y0_m + y1_m) / 2)
    taken = point_taken(bow.points[max(0, index - 1)])
    return _with_points(tunnel, bow, index, index, _point(spot, bow, taken))


def remove_point(tunnel: Tunnel, index: int) -> Tunnel:
    """Return the tunnel without one point of the bow.

    Raises:
        ValueError: A bow needs three points.
    """
    return _with_points(tunnel, _measured(tunnel), index, index + 1)


def _measured(tunnel: Tunnel) -> MeasuredBow:
    bow = tunnel.frame.profile
    assert isinstance(bow, MeasuredBow), "only a measured bow has points"
    return bow


def _with_points(tunnel: Tunnel, bow: MeasuredBow, low: int, high: int, *fresh: Point) -> Tunnel:
    points = (*bow.points[:low], *fresh, *bow.points[high:])
    return with_tunnel_value(tunnel, ("frame", "profile", "points"), points)


def _point(spot: Spot, bow: MeasuredBow, taken: Taken) -> Point:
    """Return a point told in one of the two ways; across is from the first foot, m."""
    x_m, y_m = spot
    if taken == "across_up":
        return AcrossUp(across_m=x_m, up_m=y_m)
    return TwoTapes(first_m=math.hypot(x_m, y_m), second_m=math.hypot(bow.span_m - x_m, y_m))


def _through(outline: tuple[Spot, ...], old: Profile) -> MeasuredBow:
    """Return a bow through the points of an outline, without its feet.

    A smooth curve would swing past a kink, so only a bow that has none is joined by one.
    """
    half_m = old.span_m / 2
    points = tuple(AcrossUp(across_m=x_m + half_m, up_m=y_m) for x_m, y_m in outline[1:-1])
    join: BowJoin = "curve" if _is_smooth(old) else "corners"
    return MeasuredBow(span_m=old.span_m, points=points, join=join)


def _is_smooth(profile: Profile) -> bool:
    """Return whether a bow is one arc, or an arc that leaves its legs without a kink."""
    if not isinstance(profile, RoundBow):
        return False
    rise_m = profile.peak_height_m - profile.leg_height_m
    return profile.leg_height_m < KINK_M or abs(rise_m - profile.span_m / 2) < KINK_M


def _leg(spots: tuple[Spot, ...]) -> float:
    foot_x_m = spots[0][0]
    leg_m = 0.0
    for x_m, y_m in spots[:-2]:
        if abs(x_m - foot_x_m) > UPRIGHT_M:
            break
        leg_m = y_m
    return leg_m
