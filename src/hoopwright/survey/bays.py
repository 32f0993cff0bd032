"""Survey the frame: what a tape would find on the frame that the entries describe."""

from hoopwright.farm import Frame, bow_positions
from hoopwright.quantity.working import ENTERED, Term, Working
from hoopwright.survey.bow_curve import BowCurve, bow_curve
from hoopwright.survey.survey import Survey

Pair = tuple[float, float]

OUTSIDE = "straights and arcs of the bow, moved outward by half the tube; derived here"


def survey_frame(frame: Frame) -> Survey:
    """Return the frame as built."""
    bows_m = bow_positions(frame.bows)
    curve = bow_curve(frame.profile, frame.tube_diameter_m)
    centre = bow_curve(frame.profile, 0.0)
    hip_at_m = _positions(curve, tuple(b.hip_height_m for b in frame.boards))
    base_at_m = _positions(curve, tuple(b.baseboard_height_m for b in frame.boards))
    length_m = bows_m[-1]
    area_m2 = centre.area_m2
    side_m = (hip_at_m[0] - base_at_m[0], base_at_m[1] - hip_at_m[1])
    return Survey(
        curve=curve,
        bows_m=bows_m,
        bay_count=len(bows_m) - 1,
        length_m=length_m,
        span_m=frame.profile.span_m,
        width_m=curve.width_m,
        height_m=curve.height_m,
        girth_m=curve.length_m,
        roof_girth_m=hip_at_m[1] - hip_at_m[0],
        side_m=side_m,
        hip_at_m=hip_at_m,
        base_at_m=base_at_m,
        hip_across_m=(curve.point_at(hip_at_m[0])[0], curve.point_at(hip_at_m[1])[0]),
        section_area_m2=area_m2,
        volume_m3=area_m2 * length_m,
        floor_area_m2=frame.profile.span_m * length_m,
        cover_area_m2=curve.length_m * length_m + 2 * area_m2,
        workings=_workings(frame, curve, centre, hip_at_m, base_at_m, length_m),
    )


def _positions(curve: BowCurve, heights_m: tuple[float, ...]) -> Pair:
    first_m, second_m = heights_m
    return curve.position_at_height(first_m, 0), curve.position_at_height(second_m, 1)


def _workings(
    frame: Frame,
    curve: BowCurve,
    centre: BowCurve,
    hip_at_m: Pair,
    base_at_m: Pair,
    length_m: float,
) -> tuple[Working, ...]:
    """Return how each figure of the survey was got."""
    return (
        *_along_workings(frame, length_m),
        *_over_workings(frame, curve, hip_at_m, base_at_m),
        *_space_workings(frame, curve, centre, length_m),
    )


def _sizes(frame: Frame) -> tuple[Term, ...]:
    """Return the entered sizes of a bow as inputs."""
    profile = frame.profile
    return (
        Term("span", profile.span_m, "m"),
        Term("leg height", profile.leg_height_m, "m"),
        Term("peak height", profile.peak_height_m, "m"),
        Term("bow tube", frame.tube_diameter_m, "m_thin"),
    )


def _along_workings(frame: Frame, length_m: float) -> tuple[Working, ...]:
    bows = len(bow_positions(frame.bows))
    return (
        Working(
            "length_m",
            "The position of the last bow, measured from the first.",
            (Term("bows", bows, "count"), Term("last bow", length_m, "m")),
            ENTERED,
        ),
        Working(
            "bay_count",
            "A bay lies between two bows, so there is one bay less than bows.",
            (Term("bows", bows, "count"),),
        ),
    )


def _over_workings(
    frame: Frame, curve: BowCurve, hip_at_m: Pair, base_at_m: Pair
) -> tuple[Working, ...]:
    sizes = _sizes(frame)
    hips = _pair("hip", tuple(b.hip_height_m for b in frame.boards))
    bases = _pair("baseboard top", tuple(b.baseboard_height_m for b in frame.boards))
    hip_spots = _pair("hip along the bow", hip_at_m)
    base_spots = _pair("baseboard along the bow", base_at_m)
    return (
        Working("span_m", "From foot to foot at the ground, as entered.", sizes[:1], ENTERED),
        Working("width_m", "Widest place over the outside of the bow tube.", sizes, OUTSIDE),
        Working("height_m", "Top of the bow tube at the ridge.", sizes, OUTSIDE),
        Working(
            "girth_m",
            "From ground to ground along the outside of the bow tube, where the film lies.",
            sizes,
            OUTSIDE,
        ),
        Working(
            "roof_girth_m",
            "Over the outside of the bow from the hip seam on one side to that on the other.",
            hip_spots,
            OUTSIDE,
        ),
        Working(
            "side_m",
            "Along the bow from the hip board to the top of the baseboard.",
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
            (*hip_spots, Term("girth", curve.length_m, "m")),
            OUTSIDE,
        ),
    )


def _space_workings(
    frame: Frame, curve: BowCurve, centre: BowCurve, length_m: float
) -> tuple[Working, ...]:
    length = Term("length", length_m, "m")
    section = Term("section", centre.area_m2, "m2")
    return (
        Working(
            "section_area_m2",
            "Between the centre line of the bow tube and the ground line.",
            _sizes(frame)[:3],
            "exact integrals of straights and circle arcs; derived here",
        ),
        Working("volume_m3", "Section times length.", (section, length)),
        Working(
            "floor_area_m2",
            "Span times length.",
            (Term("span", frame.profile.span_m, "m"), length),
        ),
        Working(
            "cover_area_m2",
            "Girth times length, and a section for each end.",
            (Term("girth", curve.length_m, "m"), length, section),
        ),
    )


def _pair(name: str, values_m: tuple[float, ...]) -> tuple[Term, ...]:
    return tuple(
        Term(f"{name}, {side} side", value_m, "m")
        for side, value_m in zip(("first", "second"), values_m, strict=True)
    )
