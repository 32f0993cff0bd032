"""The line a film takes over a bow: straights and arcs from the left base to the right base.

Sizes of a bow are taken to the centre line of its tube; film lies on the outside. Moving a chain
outward by half the tube shifts its straights and grows the radius of its arcs. A corner that
turns to the right (the ridge of a gothic bow, a sharp shoulder) opens a gap, which an arc round
the centre of the corner closes: the film bends round the tube there. A corner that turns to the
left (the foot of an arc that is wider than its legs) makes the two cross, and they are cut at the
crossing. Both ends run on the ground line.

Of a bow that is the same on both sides only the left half is built; the right half is its mirror
image. A measured bow has two halves of its own, and its ridge is where it is highest.
"""

import math
from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import accumulate

from hoopwright.farm import GothicBow, MeasuredBow, RoundBow, StraightRafters
from hoopwright.farm.profile import Profile
from hoopwright.survey.measured_line import measured_halves
from hoopwright.survey.segment import Arc, Segment, Straight

Point = tuple[float, float]
Half = tuple[Segment, ...]

TANGENT_RAD = 1e-7
NOTHING_M = 1e-9


@dataclass(frozen=True, slots=True)
class BowCurve:
    """One bow seen from the front end, left base (first side) to right base (second side).

    Attributes:
        segments: Straights and arcs in order.
        length_m: From base to base along the curve, m.
        ridge_m: Position of the ridge along the curve from the left base, m.
        halves: Both halves, each from its base to the ridge, the right one mirrored.
        ends_m: Where along the curve each segment ends, m.
        tops_m: The height at which each segment of both halves ends, m.
    """

    segments: tuple[Segment, ...] = field(hash=False)
    length_m: float
    ridge_m: float
    halves: tuple[Half, Half] = field(repr=False, compare=False)
    ends_m: tuple[float, ...] = field(repr=False, compare=False)
    tops_m: tuple[tuple[float, ...], tuple[float, ...]] = field(repr=False, compare=False)

    @property
    def width_m(self) -> float:
        """Return the greatest width, m; more than at the ground when the bow bulges."""
        reach = [s.reach_m for s in self.segments]
        return max(right_m for _, right_m in reach) - min(left_m for left_m, _ in reach)

    @property
    def height_m(self) -> float:
        """Return the height of the ridge above the ground line, m."""
        return self.point_at(self.ridge_m)[1]

    @property
    def area_m2(self) -> float:
        """Return the area between the curve and the ground line, m2.

        Source:
            Derived here: exact integrals of straights and circle arcs.
        """
        return sum(s.area_m2 for s in self.segments)

    def point_at(self, position_m: float) -> Point:
        """Return the point at a position along the curve.

        Args:
            position_m: From the left base along the curve, m; the ends hold beyond them.

        Returns:
            Across from the centre line and height above the ground, m.
        """
        held_m = max(0.0, min(position_m, self.length_m))
        n = min(bisect_left(self.ends_m, held_m), len(self.segments) - 1)
        segment = self.segments[n]
        start_m = self.ends_m[n - 1] if n else 0.0
        return segment.point_at(min(held_m - start_m, segment.length_m))

    def position_at_height(self, height_m: float, side: int) -> float:
        """Return where along the curve a height is reached.

        Args:
            height_m: Above the ground line, m, from 0 to the ridge.
            side: 0 for the left half, 1 for the right half.

        Returns:
            Position from the left base along the curve, m.

        Raises:
            ValueError: The height is not on the curve.

        Source:
            Derived here: each half rises all the way, so a height is reached once.
        """
        half = self.halves[side]
        n = bisect_right(self.tops_m[side], height_m)
        if n == len(half):
            if height_m - self.height_m > 1e-6:
                raise self._off_the_bow(height_m)
            return self.ridge_m
        along_m = half[n].along_to(height_m)
        if along_m < -NOTHING_M and n == 0:
            raise self._off_the_bow(height_m)
        if side == 0:
            return (self.ends_m[n - 1] if n else 0.0) + max(0.0, along_m)
        from_base_m = self.length_m - self.ends_m[len(self.segments) - 1 - n]
        return self.length_m - (from_base_m + max(0.0, along_m))

    def outline(self, step_m: float = 0.1) -> tuple[Point, ...]:
        """Return points on the curve from left to right: every end and corner, arcs in steps.

        Args:
            step_m: Longest step along an arc, m, above zero.
        """
        points = [self.segments[0].point_at(0.0)]
        for segment in self.segments:
            length_m = segment.length_m
            steps = math.ceil(length_m / step_m) if isinstance(segment, Arc) else 1
            points += [segment.point_at(length_m * k / steps) for k in range(1, steps + 1)]
        return tuple(points)

    def _off_the_bow(self, height_m: float) -> ValueError:
        return ValueError(f"height_m must be from 0 to {self.height_m:.4f}, not {height_m!r}")


@lru_cache(maxsize=64)
def bow_curve(profile: Profile, tube_diameter_m: float) -> BowCurve:
    """Return the outside of a bow's tube.

    Args:
        profile: Shape of the bow, sizes to the centre line of the tube.
        tube_diameter_m: Outside diameter of the tube, m; 0 gives the centre line itself.

    Source:
        Derived here, see the module's docstring.
    """
    outward_m = tube_diameter_m / 2
    if isinstance(profile, MeasuredBow):
        return _joined(*measured_halves(profile.line, outward_m))
    half = tuple(_outside(_centre_line(profile), outward_m))
    return _joined(half, half)


def _joined(left: Half, right: Half) -> BowCurve:
    """Return the curve of two halves; the right one is mirrored."""
    segments = (*left, *(s.mirrored() for s in reversed(right)))
    ends_m = tuple(accumulate(s.length_m for s in segments))
    return BowCurve(
        segments=segments,
        length_m=ends_m[-1],
        ridge_m=ends_m[-1] / 2 if left is right else ends_m[len(left) - 1],
        halves=(left, right),
        ends_m=ends_m,
        tops_m=(_tops(left), _tops(right)),
    )


def _tops(half: Half) -> tuple[float, ...]:
    return tuple(s.point_at(s.length_m)[1] for s in half)


def _centre_line(profile: RoundBow | GothicBow | StraightRafters) -> list[Segment]:
    """Return the left half of the centre line, from the base to the ridge."""
    if isinstance(profile, RoundBow):
        half = _round_half(profile)
    elif isinstance(profile, GothicBow):
        half = _gothic_half(profile)
    else:
        half = _rafter_half(profile)
    return [s for s in half if s.length_m > NOTHING_M]


def _leg(profile: Profile, top_m: float) -> Straight:
    return Straight(-profile.span_m / 2, 0.0, -profile.span_m / 2, top_m)


def _round_half(bow: RoundBow) -> list[Segment]:
    """Return leg and half arc.

    Source:
        Circle through three points: R = (a2 + f2) / 2f with half span a and rise f.
    """
    half_m, rise_m = bow.span_m / 2, bow.peak_height_m - bow.leg_height_m
    radius_m = (half_m**2 + rise_m**2) / (2 * rise_m)
    centre_y_m = bow.peak_height_m - radius_m
    start_rad = math.atan2(bow.leg_height_m - centre_y_m, -half_m) % (2 * math.pi)
    arc = Arc(0.0, centre_y_m, radius_m, start_rad, start_rad - math.pi / 2)
    return [_leg(bow, bow.leg_height_m), arc]


def _gothic_half(bow: GothicBow) -> list[Segment]:
    """Return leg and arc up to the point.

    Source:
        Derived here: a chord of length c and slope g under an arc of radius R that turns 2d with
        sin d = c / 2R; the arc leaves the shoulder at the slope g + d. Without a kink at the leg
        g + d is a right angle.
    """
    half_m, rise_m = bow.span_m / 2, bow.peak_height_m - bow.leg_height_m
    chord_m = math.hypot(half_m, rise_m)
    radius_m = bow.arc_radius_m
    if radius_m is None:
        radius_m = chord_m**2 / (2 * half_m)
    turn_rad = 2 * math.asin(min(1.0, chord_m / (2 * radius_m)))
    slope_rad = math.atan2(rise_m, half_m) + turn_rad / 2
    arc = Arc(
        -half_m + radius_m * math.sin(slope_rad),
        bow.leg_height_m - radius_m * math.cos(slope_rad),
        radius_m,
        slope_rad + math.pi / 2,
        turn_rad,
    )
    return [_leg(bow, bow.leg_height_m), arc]


def _rafter_half(bow: StraightRafters) -> list[Segment]:
    """Return leg, corner bend, rafter and half the ridge bend.

    Source:
        Tangent circles: a bend of radius r that turns b starts r tan(b/2) before the corner.
    """
    half_m, rise_m = bow.span_m / 2, bow.peak_height_m - bow.leg_height_m
    pitch_rad = math.atan2(rise_m, half_m)
    turn_rad = math.pi / 2 - pitch_rad
    corner_m = bow.corner_radius_m * math.tan(turn_rad / 2)
    ridge_m = bow.ridge_radius_m * math.tan(pitch_rad)
    along, up = math.cos(pitch_rad), math.sin(pitch_rad)
    bend_m = bow.leg_height_m - corner_m
    rafter = Straight(
        -half_m + corner_m * along,
        bow.leg_height_m + corner_m * up,
        -ridge_m * along,
        bow.peak_height_m - ridge_m * up,
    )
    centre_y_m = bow.peak_height_m - bow.ridge_radius_m / along
    return [
        _leg(bow, bend_m),
        Arc(-half_m + bow.corner_radius_m, bend_m, bow.corner_radius_m, math.pi, turn_rad),
        rafter,
        Arc(0.0, centre_y_m, bow.ridge_radius_m, pitch_rad + math.pi / 2, pitch_rad),
    ]


def _outside(half: list[Segment], outward_m: float) -> list[Segment]:
    """Return the left half moved outward, its corners closed, its start on the ground line."""
    if outward_m == 0:
        return half
    moved: list[Segment] = []
    for k, segment in enumerate(half):
        shifted = segment.shifted(outward_m)
        if moved:
            _join(moved, half[k - 1], shifted, outward_m)
        else:
            moved.append(shifted)
    moved[0] = moved[0].grounded()
    ridge_rad = half[-1].end_heading_rad
    if ridge_rad > TANGENT_RAD:
        moved.append(_round_corner(half[-1], ridge_rad, outward_m))
    return moved


def _join(moved: list[Segment], before: Segment, shifted: Segment, outward_m: float) -> None:
    """Add the next moved segment, closing or cutting the corner in front of it."""
    kink_rad = before.end_heading_rad - shifted.start_heading_rad
    if kink_rad > TANGENT_RAD:
        moved.append(_round_corner(before, kink_rad, outward_m))
    elif kink_rad < -TANGENT_RAD:
        leg = moved.pop()
        # Only an arc that bulges past its leg turns left, and it starts right above the leg.
        assert isinstance(leg, Straight)
        assert isinstance(shifted, Arc)
        reach = (shifted.centre_x_m - leg.x0_m) / shifted.radius_m
        shifted = shifted.starting_at(math.pi + math.acos(min(1.0, reach)))
        top_m = shifted.point_at(0.0)[1]
        if top_m > NOTHING_M:
            moved.append(Straight(leg.x0_m, leg.y0_m, leg.x1_m, top_m))
    moved.append(shifted)


def _round_corner(before: Segment, kink_rad: float, outward_m: float) -> Arc:
    """Return the arc round the tube at a corner that turns right."""
    x_m, y_m = before.point_at(before.length_m)
    return Arc(x_m, y_m, outward_m, before.end_heading_rad + math.pi / 2, kink_rad)
