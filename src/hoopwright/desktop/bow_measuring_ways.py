"""The ways to measure a bow: what each asks for, and what its lengths make of the tunnel."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.desktop.bow_measuring_points import Point, Taken
from hoopwright.desktop.details_items import Figure, explained, figure
from hoopwright.desktop.field import Between
from hoopwright.farm import MeasuredBow, RoundBow, Tunnel
from hoopwright.farm.change import with_tunnel_value
from hoopwright.farm.change_shape import point_taken, with_point_taken
from hoopwright.farm.entered import describe
from hoopwright.farm.measured_bow import BowJoin
from hoopwright.farm.profile import Profile
from hoopwright.quantity.units import Units
from hoopwright.quantity.working import Explained
from hoopwright.survey import survey_frame
from hoopwright.survey.tape_bows import bow_from_string, bow_from_tape

Way = Literal["across_up", "two_tapes", "string", "tape"]
WAYS: dict[Way, object] = {
    "across_up": QT_TRANSLATE_NOOP("Measuring", "Points, across and up"),
    "two_tapes": QT_TRANSLATE_NOOP("Measuring", "Points, two tapes from the feet"),
    "string": QT_TRANSLATE_NOOP("Measuring", "String and offset"),
    "tape": QT_TRANSLATE_NOOP("Measuring", "Tape along the bow and across"),
}
_SPAN = {"span_m": QT_TRANSLATE_NOOP("Measuring", "Span, between tube centres at the ground")}
_LEG = {"leg_height_m": QT_TRANSLATE_NOOP("Measuring", "Leg height, straight part below the bend")}
LENGTHS: dict[Way, dict[str, object]] = {
    "across_up": _SPAN,
    "two_tapes": _SPAN,
    "string": {
        **_SPAN,
        **_LEG,
        "chord_m": QT_TRANSLATE_NOOP("Measuring", "String, from tube to tube on the bend"),
        "offset_m": QT_TRANSLATE_NOOP("Measuring", "From the middle of the string to the tube"),
    },
    "tape": {
        **_LEG,
        "along_m": QT_TRANSLATE_NOOP("Measuring", "Along the tube, from leg top to leg top"),
        "chord_m": QT_TRANSLATE_NOOP("Measuring", "Straight across, between the leg tops"),
    },
}
"""What each way asks for besides points."""
LONGEST = Between(0.001, 200.0)

FIT: tuple[tuple[str, str, object], ...] = (
    ("height_m", "m", QT_TRANSLATE_NOOP("Measuring", "Ridge, outside")),
    ("best_radius_m", "m", QT_TRANSLATE_NOOP("Measuring", "Radius of the best circle")),
    ("misfit_m", "m_thin", QT_TRANSLATE_NOOP("Measuring", "Points off that circle by")),
)
BEND: tuple[tuple[str, str, object], ...] = (
    ("radius_m", "m", QT_TRANSLATE_NOOP("Measuring", "Radius of the bend")),
    ("rise_m", "m", QT_TRANSLATE_NOOP("Measuring", "Ridge above the leg tops")),
)


@dataclass(frozen=True, slots=True)
class Measured:
    """A measured bow on its tunnel.

    Attributes:
        tunnel: The tunnel with the bow.
        told: The result whose figures are told of it.
        rows: Those figures: field, unit code, label.
    """

    tunnel: Tunnel
    told: Explained
    rows: tuple[tuple[str, str, object], ...]

    def figures(self, units: Units) -> tuple[Figure, ...]:
        """Return the figures, each with its name and how it was got."""
        words = QCoreApplication.translate("Measuring", "{label}: {figure}")
        made = []
        for name, unit, text in self.rows:
            label = QCoreApplication.translate("Measuring", str(text))
            line = figure(label, getattr(self.told, name), unit, units, explained(self.told, name))
            made.append(Figure(label, words.format(label=label, figure=line.text), line.working))
        return tuple(made)


def first_way(profile: Profile) -> Way:
    """Return the way to begin with: that of the points that are there, else across and up."""
    return point_taken(profile.points[0]) if isinstance(profile, MeasuredBow) else "across_up"


def first_lengths(profile: Profile) -> dict[str, float]:
    """Return what is known of the lengths that are asked for."""
    return {"span_m": profile.span_m, "leg_height_m": profile.leg_height_m}


def length_limits(name: str) -> Between:
    """Return between which values a length may be entered, m."""
    for known in describe(RoundBow):
        if known.name == name and known.low is not None and known.high is not None:
            return Between(known.low, known.high)
    return LONGEST


def points_taken(tunnel: Tunnel, taken: Taken) -> tuple[Point, ...]:
    """Return the points of a bow that is measured already, all told in one way."""
    profile = tunnel.frame.profile
    if not isinstance(profile, MeasuredBow):
        return ()
    for index, point in enumerate(profile.points):
        if point_taken(point) != taken:
            tunnel = with_point_taken(tunnel, index, taken)
    told = tunnel.frame.profile
    assert isinstance(told, MeasuredBow)
    return told.points


def measured_by_points(
    tunnel: Tunnel, span_m: float, points: tuple[Point, ...], join: BowJoin
) -> Measured:
    """Return the tunnel with a bow through points.

    Raises:
        ValueError: No bow can pass there, or it does not suit boards or readings.
    """
    bow = MeasuredBow(span_m=span_m, points=points, join=join)
    made = with_tunnel_value(tunnel, ("frame", "profile"), bow)
    return Measured(made, survey_frame(made.frame), FIT)


def measured_by_lengths(tunnel: Tunnel, way: Way, lengths: Mapping[str, float]) -> Measured:
    """Return the tunnel with a round bow from two lengths taken on its bend.

    Raises:
        ValueError: There is no such bow, or it does not suit boards or readings.
    """
    taped = bow_from_string(**lengths) if way == "string" else bow_from_tape(**lengths)
    made = with_tunnel_value(tunnel, ("frame", "profile"), taped.bow)
    return Measured(made, taped, BEND)
