"""The frame as entered: profile of the bow, where the bows stand, boards on each side.

All sizes of a profile are to the centre line of the tube, heights from the ground line.
A frame that cannot exist is refused here, so that every stage after may rely on it.
"""

import itertools
import math
from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

Board = Literal["wood", "metal"]

SpanM = Annotated[float, measure("span, tube centre to tube centre", "m", 1.0, 60.0)]
LegM = Annotated[float, measure("leg height", "m", 0.0, 15.0)]
PeakM = Annotated[float, measure("peak height", "m", 0.5, 30.0)]
SpacingM = Annotated[float, measure("bow spacing", "m", 0.2, 10.0)]
BowCount = Annotated[int, measure("number of bows", "count", 2, 1000)]


class RoundBow(Entered, frozen=True, tag="round", tag_field="shape"):
    """One circle arc from leg to leg; higher than half the span it bulges past the legs.

    Attributes:
        span_m: Between the tube centres at the ground, m.
        leg_height_m: Straight part below the bend, m.
        peak_height_m: Tube centre at the ridge above the ground, m.
    """

    span_m: SpanM
    leg_height_m: LegM
    peak_height_m: PeakM

    def __post_init__(self) -> None:
        """Refuse a bow that does not rise."""
        Entered.__post_init__(self)
        _check_rise(self.leg_height_m, self.peak_height_m)


class GothicBow(Entered, frozen=True, tag="gothic", tag_field="shape"):
    """One circle arc each side, meeting in a point at the ridge.

    Attributes:
        span_m: Between the tube centres at the ground, m.
        leg_height_m: Straight part below the bend, m.
        peak_height_m: Tube centre at the ridge above the ground, m.
        arc_radius_m: Radius of each arc, m; None when the arcs leave the legs without a kink.
    """

    span_m: SpanM
    leg_height_m: LegM
    peak_height_m: PeakM
    arc_radius_m: Annotated[float, measure("arc radius", "m", 0.3, 200.0)] | None = None

    def __post_init__(self) -> None:
        """Refuse arcs that cannot meet leg and ridge."""
        Entered.__post_init__(self)
        rise = _check_rise(self.leg_height_m, self.peak_height_m)
        half = self.span_m / 2
        chord = math.hypot(half, rise)
        dip_radius = chord**2 / (2 * rise)
        if self.arc_radius_m is None:
            if rise < half - 1e-9:
                raise ValueError(
                    "arc_radius_m: arcs that leave the legs without a kink need a rise of at least "
                    f"half the span ({half:.3f} m), and this one rises {rise:.3f} m; enter an arc "
                    f"radius of {dip_radius:.3f} m or more, or a higher peak"
                )
        elif self.arc_radius_m < dip_radius - 1e-9:
            raise ValueError(
                f"arc_radius_m: with less than {dip_radius:.3f} m the ridge would dip; "
                "enter a larger radius"
            )


class StraightRafters(Entered, frozen=True, tag="rafters", tag_field="shape"):
    """Straight legs and straight rafters, with bent corners.

    Attributes:
        span_m: Between the tube centres at the ground, m.
        leg_height_m: Where the lines of leg and rafter meet, m above the ground.
        peak_height_m: Where the lines of both rafters meet, m above the ground.
        corner_radius_m: Bend between leg and rafter, m; 0 is a sharp corner.
        ridge_radius_m: Bend at the ridge, m; 0 is a sharp ridge.
    """

    span_m: SpanM
    leg_height_m: LegM
    peak_height_m: PeakM
    corner_radius_m: Annotated[float, measure("corner radius", "m", 0.0, 10.0)] = 0.0
    ridge_radius_m: Annotated[float, measure("ridge radius", "m", 0.0, 10.0)] = 0.0

    def __post_init__(self) -> None:
        """Refuse bends that are longer than the straights they join."""
        Entered.__post_init__(self)
        rise = _check_rise(self.leg_height_m, self.peak_height_m)
        pitch = math.atan2(rise, self.span_m / 2)
        corner = self.corner_radius_m * math.tan((math.pi / 2 - pitch) / 2)
        ridge = self.ridge_radius_m * math.tan(pitch)
        rafter = math.hypot(self.span_m / 2, rise)
        if corner > self.leg_height_m + 1e-9:
            raise ValueError("corner_radius_m: the bend is longer than the leg; enter less")
        if corner + ridge > rafter + 1e-9:
            raise ValueError("ridge_radius_m: the bends are longer than the rafter; enter less")


Profile = RoundBow | GothicBow | StraightRafters


class EvenBows(Entered, frozen=True, tag="even", tag_field="layout"):
    """Bows at one spacing.

    Attributes:
        count: Number of bows; n bows make n - 1 bays.
        spacing_m: From bow to bow, m.
    """

    count: BowCount
    spacing_m: SpacingM


class ListedBows(Entered, frozen=True, tag="listed", tag_field="layout"):
    """Bows where a tape from the front end found them.

    Attributes:
        positions_m: Running positions from the first bow, which is at 0, m.
    """

    positions_m: tuple[float, ...]

    def __post_init__(self) -> None:
        """Refuse positions that do not run away from 0."""
        Entered.__post_init__(self)
        spots = self.positions_m
        if len(spots) < 2 or len(spots) > 1000:
            raise ValueError("positions_m: enter from 2 to 1000 bow positions")
        if not all(math.isfinite(x) and x <= 1000 for x in spots):
            raise ValueError("positions_m: every position must be a number up to 1000 m")
        if spots[0] != 0:
            raise ValueError("positions_m: the first bow is the datum, its position must be 0")
        for a, b in itertools.pairwise(spots):
            if b - a < 0.2:
                raise ValueError(
                    f"positions_m: {b:g} m must be at least 0.2 m after {a:g} m; "
                    "running positions only grow"
                )


Bows = EvenBows | ListedBows


def bow_positions(bows: Bows) -> tuple[float, ...]:
    """Return where the bows stand, m from the first one.

    Source:
        Count of fence posts: n bows make n - 1 bays.
    """
    if isinstance(bows, ListedBows):
        return bows.positions_m
    return tuple(i * bows.spacing_m for i in range(bows.count))


class SideBoards(Entered, frozen=True):
    """The lengthwise boards of one side, which hold the film.

    Attributes:
        hip_height_m: Top of the side opening: the hip board, where the roof film ends and the
            side film starts (the hip seam), m above the ground.
        baseboard_height_m: Top of the baseboard, m above the ground.
        hip_board: What the hip board is made of.
        baseboard: What the baseboard is made of.
        stand_off_m: How far the hip board holds the film off the bow, m.
        gutter_drop_m: How far a gutter on the hip board hangs below it, m; None without a gutter.
    """

    hip_height_m: Annotated[float, measure("hip board height", "m", 0.1, 20.0)]
    baseboard_height_m: Annotated[float, measure("baseboard top height", "m", 0.0, 5.0)]
    hip_board: Annotated[Board, choice("hip board")] = "wood"
    baseboard: Annotated[Board, choice("baseboard")] = "wood"
    stand_off_m: Annotated[float, measure("hip board stands off", "m_thin", 0.0, 0.5)] = 0.0381
    gutter_drop_m: Annotated[float, measure("gutter below the hip", "m", 0.0, 1.0)] | None = None

    def __post_init__(self) -> None:
        """Refuse a side with no opening."""
        Entered.__post_init__(self)
        if self.hip_height_m <= self.baseboard_height_m:
            raise ValueError(
                "hip_height_m: the hip board must be above the baseboard; "
                "raise the hip board or lower the baseboard"
            )


class Frame(Entered, frozen=True):
    """The frame of one tunnel.

    Attributes:
        profile: Shape of a bow.
        tube_diameter_m: Outside diameter of the bow tube, m. Film lies on the outside.
        length_m: First to last bow as read off the tape, m; checked against the bows.
        bows: Where the bows stand.
        boards: Boards of the first and of the second side.
    """

    profile: Profile
    tube_diameter_m: Annotated[float, measure("bow tube diameter", "m", 0.0, 0.5)]
    length_m: Annotated[float, measure("length, first to last bow", "m", 0.2, 1000.0)]
    bows: Bows
    boards: tuple[SideBoards, SideBoards]

    def __post_init__(self) -> None:
        """Refuse a hip board on or above the ridge."""
        Entered.__post_init__(self)
        top = ridge_height(self.profile)
        for boards in self.boards:
            if boards.hip_height_m >= top:
                raise ValueError(
                    f"hip_height_m: the hip board at {boards.hip_height_m:.3f} m must be below the "
                    f"ridge at {top:.3f} m; lower the hip board or raise the peak"
                )


def ridge_height(profile: Profile) -> float:
    """Return the true height of the tube centre at the ridge, m.

    Source:
        Derived here: a ridge bend of radius r lies r(1/cos pitch - 1) below the meeting point.
    """
    if not isinstance(profile, StraightRafters):
        return profile.peak_height_m
    pitch = math.atan2(profile.peak_height_m - profile.leg_height_m, profile.span_m / 2)
    return profile.peak_height_m - profile.ridge_radius_m * (1 / math.cos(pitch) - 1)


def _check_rise(leg_height_m: float, peak_height_m: float) -> float:
    rise = peak_height_m - leg_height_m
    if rise < 0.05:
        raise ValueError(
            "peak_height_m: the peak must be at least 0.05 m above the leg; "
            "raise the peak or shorten the leg"
        )
    return rise
