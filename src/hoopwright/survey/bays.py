"""Survey the frame: what a tape would find on the frame that the entries describe.

What was read goes before what the profile gives: the longest girth, the longest length, heights bow
by bow. Without readings all is by the profile.
"""

from functools import lru_cache

from msgspec import Struct

from hoopwright.farm import Frame, MeasuredBow, bow_positions
from hoopwright.farm.profile import Profile
from hoopwright.quantity.working import (
    ENTERED,
    PRACTICE,
    LaterWorkings,
    Term,
    Working,
)
from hoopwright.survey.bow_curve import BowCurve, bow_curve
from hoopwright.survey.governing import Girth, roof_girth, whole_girth
from hoopwright.survey.heights import Along
from hoopwright.survey.survey import Survey
from hoopwright.survey.taped import Taped
from hoopwright.survey.tapes import Circle, best_circle
from hoopwright.survey.taping import tape_frame

Pair = tuple[float, float]

OUTSIDE = "straights and arcs of the bow, moved outward by half the tube; derived here"


class _Found(Struct, frozen=True):
    """What the workings are written from.

    Attributes:
        frame: The frame as entered.
        curve: Outside of a bow.
        centre: Middle of its tube.
        taped: What the readings come to.
        spots: On each side the bow where the side is longest, from 0.
        hip_at_m: Hip seam there, along the girth, m.
        base_at_m: Baseboard there, along the girth, m.
        roof: Girth over the roof.
        whole: Girth from baseboard to baseboard.
        circle: Best circle through a measured bow, or None.
    """

    frame: Frame
    curve: BowCurve
    centre: BowCurve
    taped: Taped
    spots: tuple[int, int]
    hip_at_m: Pair
    base_at_m: Pair
    roof: Girth
    whole: Girth
    circle: Circle | None

    @property
    def length_m(self) -> float:
        """First to last bow, m."""
        return bow_positions(self.frame.bows)[-1]

    def bow_read(self, side: int) -> int | None:
        """Return the bow where a side is longest; None when no height was read there."""
        line = self.taped.lines[side]
        return self.spots[side] + 1 if any((*line.hip.read, *line.baseboard.read)) else None


def survey_frame(frame: Frame) -> Survey:
    """Return the frame as built."""
    bows_m = bow_positions(frame.bows)
    curve = bow_curve(frame.profile, frame.tube_diameter_m)
    centre = bow_curve(frame.profile, 0.0)
    taped, along = tape_frame(frame, curve, bows_m)
    spots = (_longest(along[0]), _longest(along[1]))
    hip_at_m = (along[0].hips_m[spots[0]], along[1].hips_m[spots[1]])
    base_at_m = (along[0].bases_m[spots[0]], along[1].bases_m[spots[1]])
    side_m = (along[0].sides_m[spots[0]], along[1].sides_m[spots[1]])
    length_m = bows_m[-1]
    area_m2 = centre.area_m2
    roof = roof_girth(taped, along)
    whole = whole_girth(taped, roof, side_m)
    circle = _circle(frame.profile)
    found = _Found(frame, curve, centre, taped, spots, hip_at_m, base_at_m, roof, whole, circle)
    return Survey(
        curve=curve,
        bows_m=bows_m,
        bay_count=len(bows_m) - 1,
        length_m=length_m,
        span_m=frame.profile.span_m,
        width_m=curve.width_m,
        height_m=curve.height_m,
        girth_m=curve.length_m,
        roof_girth_m=roof.length_m,
        roof_bow=roof.bow,
        roof_over=roof.over,
        whole_girth_m=whole.length_m,
        whole_bow=whole.bow,
        sheet_length_m=taped.length_m + taped.skew_cost_m + taped.lean_cost_m,
        side_m=side_m,
        side_bows=(found.bow_read(0), found.bow_read(1)),
        hip_at_m=hip_at_m,
        base_at_m=base_at_m,
        hip_across_m=(curve.point_at(hip_at_m[0])[0], curve.point_at(hip_at_m[1])[0]),
        section_area_m2=area_m2,
        volume_m3=area_m2 * length_m,
        floor_area_m2=frame.profile.span_m * length_m,
        cover_area_m2=curve.length_m * length_m + 2 * area_m2,
        best_radius_m=None if circle is None else circle.radius_m,
        misfit_m=None if circle is None else circle.misfit_m,
        taped=taped,
        along=along,
        workings=LaterWorkings(lambda: _workings(found)),
    )


def _longest(along: Along) -> int:
    """Return the bow where a side is longest, from 0; the foremost of several."""
    return along.sides_m.index(max(along.sides_m))


@lru_cache(maxsize=64)
def _circle(profile: Profile) -> Circle | None:
    """Return the best circle through a measured bow and its feet; None for any other."""
    return best_circle(profile.spots) if isinstance(profile, MeasuredBow) else None


def _workings(found: _Found) -> tuple[Working, ...]:
    """Return how each figure of the survey was got."""
    return (
        *_along_workings(found),
        *_over_workings(found),
        *_read_workings(found),
        *_space_workings(found),
    )


def _sizes(frame: Frame) -> tuple[Term, ...]:
    """Return the entered sizes of a bow as inputs, the tube last."""
    profile, tube = frame.profile, Term("bow tube", frame.tube_diameter_m, "m_thin")
    if isinstance(profile, MeasuredBow):
        joins = {"curve": "a smooth curve", "corners": "straight joins"}
        return (
            Term("span", profile.span_m, "m"),
            Term("points measured", len(profile.points), "count"),
            Term("joined by", joins[profile.join], "text"),
            tube,
        )
    return (
        Term("span", profile.span_m, "m"),
        Term("leg height", profile.leg_height_m, "m"),
        Term("peak height", profile.peak_height_m, "m"),
        tube,
    )


def _along_workings(found: _Found) -> tuple[Working, ...]:
    bows, taped = len(bow_positions(found.frame.bows)), found.taped
    return (
        Working(
            "length_m",
            "The position of the last bow, measured from the first.",
            (Term("bows", bows, "count"), Term("last bow", found.length_m, "m")),
            ENTERED,
        ),
        Working(
            "bay_count",
            "A bay lies between two bows, so there is one bay less than bows.",
            (Term("bows", bows, "count"),),
        ),
        Working(
            "sheet_length_m",
            "The longest of the lengths along the sides, and what ends out of square and end bows "
            "out of plumb add where a sheet is cut square.",
            (
                Term("length along a side", taped.length_m, "m"),
                Term("skew", taped.skew_cost_m, "m"),
                Term("lean of the end bows", taped.lean_cost_m, "m"),
            ),
        ),
    )


def _over_workings(found: _Found) -> tuple[Working, ...]:
    sizes = _sizes(found.frame)
    hips = _heights(found, "hip")
    bases = _heights(found, "baseboard")
    hip_spots = _pair("hip along the bow", found.hip_at_m)
    base_spots = _pair("baseboard along the bow", found.base_at_m)
    return (
        Working("width_m", "Widest place over the outside of the bow tube.", sizes, OUTSIDE),
        Working("span_m", "From foot to foot at the ground, as entered.", sizes[:1], ENTERED),
        Working("height_m", "Top of the bow tube at the ridge.", sizes, OUTSIDE),
        Working(
            "girth_m",
            "From ground to ground along the outside of the bow tube, where the film lies.",
            sizes,
            OUTSIDE,
        ),
        Working(
            "side_m",
            "Along the bow from the hip board to the top of the baseboard, at the bow where it is "
            "longest.",
            (*hip_spots, *base_spots),
            OUTSIDE,
        ),
        Working(
            "hip_at_m",
            "Where the bow reaches the height of the hip board, along the bow from the left base.",
            (*hips, *sizes),
            OUTSIDE,
        ),
        Working(
            "base_at_m",
            "Where the bow reaches the top of the baseboard, along the bow from the left base.",
            (*bases, *sizes),
            OUTSIDE,
        ),
        Working(
            "hip_across_m",
            "Distance of the hip seam from the centre line; the first side is negative.",
            (*hip_spots, Term("girth", found.curve.length_m, "m")),
            OUTSIDE,
        ),
    )


def _read_workings(found: _Found) -> tuple[Working, ...]:
    """Return what rests on readings where there are any."""
    told = []
    for name, girth in (("roof", found.roof), ("whole", found.whole)):
        source = OUTSIDE if girth.bow is None else PRACTICE
        told.append(Working(f"{name}_girth_m", girth.rule, girth.inputs, source))
        if girth.bow is not None:
            told.append(Working(f"{name}_bow", girth.rule, girth.inputs, source))
    if found.circle is not None:
        points = _sizes(found.frame)[:2]
        square = "least squares of the distances from the circle"
        told.append(
            Working(
                "best_radius_m",
                "Radius of the best circle through points and feet.",
                points,
                square,
            )
        )
        told.append(
            Working(
                "misfit_m",
                "Root of the mean square of what points and feet are off the best circle.",
                (*points, Term("radius", found.circle.radius_m, "m")),
                square,
            )
        )
    return tuple(told)


def _space_workings(found: _Found) -> tuple[Working, ...]:
    length = Term("length", found.length_m, "m")
    section = Term("section", found.centre.area_m2, "m2")
    return (
        Working(
            "section_area_m2",
            "Between the centre line of the bow tube and the ground line.",
            _sizes(found.frame)[:-1],
            "exact integrals of straights and circle arcs; derived here",
        ),
        Working("volume_m3", "Section times length.", (section, length)),
        Working(
            "floor_area_m2",
            "Span times length.",
            (Term("span", found.frame.profile.span_m, "m"), length),
        ),
        Working(
            "cover_area_m2",
            "Girth times length, and a section for each end.",
            (Term("girth", found.curve.length_m, "m"), length, section),
        ),
    )


def _heights(found: _Found, board: str) -> tuple[Term, ...]:
    """Return the heights of a board where the sides are longest, and how each is known."""
    terms = []
    for n, side in enumerate(("first", "second")):
        line = getattr(found.taped.lines[n], board)
        spot = found.spots[n]
        name = {"hip": "hip", "baseboard": "baseboard top"}[board]
        if any(line.read):
            how = "as read" if line.read[spot] else "between readings"
            name = f"{name} at bow {spot + 1} {how}"
        terms.append(Term(f"{name}, {side} side", line.heights_m[spot], "m"))
    return tuple(terms)


def _pair(name: str, values_m: tuple[float, ...]) -> tuple[Term, ...]:
    return tuple(
        Term(f"{name}, {side} side", value_m, "m")
        for side, value_m in zip(("first", "second"), values_m, strict=True)
    )
