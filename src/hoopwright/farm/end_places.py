"""Where doors, vents and fan openings stand in an end wall, and what room the bow leaves them.

Everything is seen from outside and measured from the middle between the feet of the end bow: at
the front end the first side is at the left, at the back end the second side is. Room is taken to
the centre line of the tube, over a bend to its chord, so that what fits here fits under the film.
"""

from msgspec import Struct

from hoopwright.farm.half_width import half_width
from hoopwright.farm.measured_bow import MeasuredBow
from hoopwright.farm.profile import Profile, ridge_height
from hoopwright.farm.skin import Cut, Door, End

STEP_M = 0.05
TOUCH_M = 1e-9

Reach = tuple[float, float]


class Box(Struct, frozen=True):
    """An upright rectangle on an end wall.

    Attributes:
        left_m: Left edge from the middle of the wall, m.
        low_m: Lower edge above the ground line, m.
        right_m: Right edge, m.
        high_m: Upper edge, m.
    """

    left_m: float
    low_m: float
    right_m: float
    high_m: float

    def overlaps(self, other: "Box") -> bool:
        """Return whether two openings share more than an edge."""
        across_m = min(self.right_m, other.right_m) - max(self.left_m, other.left_m)
        up_m = min(self.high_m, other.high_m) - max(self.low_m, other.low_m)
        return across_m > TOUCH_M and up_m > TOUCH_M


def door_lefts(end: End, span_m: float) -> tuple[float, ...]:
    """Return the left edge of each door, m: as entered, or spread evenly over the wall.

    A door that is placed does not move the others.

    Args:
        end: The end wall as entered.
        span_m: From foot to foot, m.
    """
    taken_m = sum(door.width_m for door in end.doors)
    gap_m = max(0.0, span_m - taken_m) / (len(end.doors) + 1)
    found: list[float] = []
    at_m = -max(span_m, taken_m) / 2
    for door in end.doors:
        at_m += gap_m
        found.append(at_m if door.left_m is None else door.left_m)
        at_m += door.width_m
    return tuple(found)


def opening_boxes(end: End, span_m: float) -> tuple[tuple[Box, ...], tuple[Box, ...]]:
    """Return the doors and the cuts of an end wall as rectangles.

    Args:
        end: The end wall as entered.
        span_m: From foot to foot, m.
    """
    lefts_m = door_lefts(end, span_m)
    doors = tuple(_door_box(door, x) for door, x in zip(end.doors, lefts_m, strict=True))
    return doors, tuple(_cut_box(cut) for cut in end.cuts)


def _door_box(door: Door, left_m: float) -> Box:
    return Box(left_m, 0.0, left_m + door.width_m, door.height_m)


def _cut_box(cut: Cut) -> Box:
    return Box(cut.left_m, cut.sill_m, cut.left_m + cut.width_m, cut.sill_m + cut.height_m)


def reach_at(profile: Profile, number: int, height_m: float) -> Reach:
    """Return from where to where the bow reaches at a height, seen from outside, m.

    Args:
        profile: Shape of the end bow.
        number: 0 for the front end, 1 for the back.
        height_m: Above the ground line, m.
    """
    ridge_m = _ridge_across(profile)
    first_m = ridge_m - half_width(profile, height_m, 0)
    second_m = ridge_m + half_width(profile, height_m, 1)
    return (first_m, second_m) if number == 0 else (-second_m, -first_m)


def room_across(profile: Profile, number: int, low_m: float, high_m: float) -> Reach:
    """Return between which points across the bow is free from one height to another, m.

    Args:
        profile: Shape of the end bow.
        number: 0 for the front end, 1 for the back.
        low_m: Lower edge above the ground line, m.
        high_m: Upper edge, m; above the ridge there is no room.
    """
    heights_m = [low_m, high_m]
    if isinstance(profile, MeasuredBow):
        heights_m += [y for _x, y in profile.spots if low_m < y < high_m]
    reaches = [reach_at(profile, number, y) for y in heights_m]
    return max(r[0] for r in reaches), min(r[1] for r in reaches)


def highest_sill(profile: Profile, number: int, width_m: float, height_m: float) -> float:
    """Return how high the lower edge of an opening can be with room on both sides, m.

    Args:
        profile: Shape of the end bow.
        number: 0 for the front end, 1 for the back.
        width_m: Clear width, m.
        height_m: Clear height, m.

    Returns:
        In steps of the rule down from the ridge; 0 when it has room nowhere.
    """
    most_m = ridge_height(profile) - height_m
    steps = max(0, int(most_m / STEP_M))
    for step in range(steps, 0, -1):
        left_m, right_m = room_across(profile, number, step * STEP_M, step * STEP_M + height_m)
        if right_m - left_m >= width_m:
            return step * STEP_M
    return 0.0


def free_spot(
    profile: Profile, number: int, wanted: Box, taken: tuple[Box, ...], *, on_ground: bool
) -> Box | None:
    """Return the nearest place where an opening has room and meets no other, or None.

    Args:
        profile: Shape of the end bow.
        number: 0 for the front end, 1 for the back.
        wanted: The opening where it was wanted.
        taken: The other openings of the wall.
        on_ground: Whether it stands on the ground and only moves across.
    """
    width_m, height_m = wanted.right_m - wanted.left_m, wanted.high_m - wanted.low_m
    best: Box | None = None
    least_m2 = 0.0
    for low_m in _sills(profile, wanted.low_m, height_m, on_ground=on_ground):
        if best is not None and (low_m - wanted.low_m) ** 2 >= least_m2:
            break
        left_m, right_m = room_across(profile, number, low_m, low_m + height_m)
        for x in _lefts(left_m, right_m - width_m, wanted.left_m, width_m, taken):
            box = Box(x, low_m, x + width_m, low_m + height_m)
            away_m2 = (x - wanted.left_m) ** 2 + (low_m - wanted.low_m) ** 2
            if (best is None or away_m2 < least_m2) and not any(map(box.overlaps, taken)):
                best, least_m2 = box, away_m2
    return best


def _sills(
    profile: Profile, wanted_m: float, height_m: float, *, on_ground: bool
) -> tuple[float, ...]:
    """Return the heights of the lower edge that are tried, the nearest first."""
    if on_ground:
        return (0.0,) if height_m < ridge_height(profile) else ()
    steps = int(max(0.0, ridge_height(profile) - height_m) / STEP_M)
    tried = [n * STEP_M for n in range(steps + 1)]
    if wanted_m + height_m < ridge_height(profile):
        tried.append(wanted_m)
    return tuple(sorted(tried, key=lambda low_m: abs(low_m - wanted_m)))


def _lefts(
    low_m: float, high_m: float, wanted_m: float, width_m: float, taken: tuple[Box, ...]
) -> tuple[float, ...]:
    """Return the left edges that are tried: the wanted one, the ends, and beside each other one."""
    if high_m < low_m:
        return ()
    beside = (x for box in taken for x in (box.left_m - width_m, box.right_m))
    tried = (min(max(wanted_m, low_m), high_m), low_m, high_m, *beside)
    return tuple(x for x in tried if low_m <= x <= high_m)


def _ridge_across(profile: Profile) -> float:
    """Return how far the ridge stands from the middle between the feet, from the front, m."""
    if isinstance(profile, MeasuredBow):
        return max(profile.spots, key=lambda spot: spot[1])[0]
    return 0.0
