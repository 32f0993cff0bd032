"""What the survey of a frame yields. The stage function is `survey_frame` in `bays`."""

from dataclasses import dataclass, field

from hoopwright.quantity.working import Explained
from hoopwright.survey.bow_curve import BowCurve
from hoopwright.survey.heights import Along
from hoopwright.survey.taped import Over, Taped


@dataclass(frozen=True, slots=True, kw_only=True)
class Survey(Explained):
    """The frame as built.

    Attributes:
        curve: Outside of a bow, left base (first side) to right base (second side).
        bows_m: Bow positions from the front, m.
        bay_count: Number of bays, one less than bows.
        length_m: First to last bow, m.
        span_m: Foot to foot at the ground, tube centre to tube centre, m.
        width_m: Greatest outside width, m.
        height_m: Outside height at the ridge, m.
        girth_m: Over the outside from ground to ground, m.
        roof_girth_m: Over the outside from hip seam to hip seam, m: the longest as read, else by
            the profile.
        roof_bow: Bow whose reading that is, 1 at the front; None when it is by the profile.
        roof_over: Lines between which that was read: at the hips, or over the baseboards where no
            girth at the hips was read; None when it is by the profile.
        whole_girth_m: Over the outside from baseboard to baseboard, m: the longest as read, else
            the roof's with both sides.
        whole_bow: Bow whose reading that is; None when it is worked out.
        sheet_length_m: From end to end of what a sheet cut square must cover, m.
        side_m: On each side from hip board to baseboard top along the bow, m, at the bow where it
            is longest.
        side_bows: That bow on each side, where heights were read; else None.
        hip_at_m: On each side the hip seam's position along the girth from the left base, m.
        base_at_m: On each side the baseboard top's position along the girth, m.
        hip_across_m: On each side the distance of the hip seam from the centre line, m, signed.
        section_area_m2: Inside one bow (tube centre line), m2.
        volume_m3: Air inside, m3.
        floor_area_m2: Span times length, m2.
        cover_area_m2: Roof, sides and both ends, m2.
        best_radius_m: Of a measured bow the radius of the best circle through it, m, else None.
        misfit_m: How far its points are off that circle, m, the root of the mean square.
        taped: What the readings come to.
        along: Where the boards of the first and of the second side lie on each bow.
    """

    curve: BowCurve
    bows_m: tuple[float, ...]
    bay_count: int
    length_m: float
    span_m: float
    width_m: float
    height_m: float
    girth_m: float
    roof_girth_m: float
    roof_bow: int | None
    roof_over: Over | None
    whole_girth_m: float
    whole_bow: int | None
    sheet_length_m: float
    side_m: tuple[float, float]
    side_bows: tuple[int | None, int | None]
    hip_at_m: tuple[float, float]
    base_at_m: tuple[float, float]
    hip_across_m: tuple[float, float]
    section_area_m2: float
    volume_m3: float
    floor_area_m2: float
    cover_area_m2: float
    best_radius_m: float | None
    misfit_m: float | None
    taped: Taped
    along: tuple[Along, Along] = field(repr=False, compare=False)
