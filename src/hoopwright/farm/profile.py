"""The shapes of a bow as entered; a shape that cannot stand is refused here.

All sizes are to the centre line of the tube, heights from the ground line.
"""

import math
from typing import Annotated

from hoopwright.farm.entered import Entered, measure
from hoopwright.farm.entry_error import EntryError
from hoopwright.farm.measured_bow import MeasuredBow

SpanM = Annotated[float, measure("span, tube centre to tube centre", "m", 1.0, 60.0)]
LegM = Annotated[float, measure("leg height", "m", 0.0, 15.0)]
PeakM = Annotated[float, measure("peak height", "m", 0.5, 30.0)]


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
                raise EntryError(
                    "arc_radius_m",
                    "arcs that leave the legs without a kink need a rise of at least half the span "
                    "({half}), and this one rises {rise}; enter an arc radius of {radius} or more, "
                    "or a higher peak",
                    half=(half, "m"),
                    rise=(rise, "m"),
                    radius=(dip_radius, "m"),
                )
        elif self.arc_radius_m < dip_radius - 1e-9:
            raise EntryError(
                "arc_radius_m",
                "with less than {radius} the ridge would dip; enter a larger radius",
                radius=(dip_radius, "m"),
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


Profile = RoundBow | GothicBow | StraightRafters | MeasuredBow


def ridge_height(profile: Profile) -> float:
    """Return the true height of the tube centre at the ridge, m; of points, that of the highest.

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
        raise EntryError(
            "peak_height_m",
            "the peak must be at least {least} above the leg; raise the peak or shorten the leg",
            least=(0.05, "m"),
        )
    return rise
