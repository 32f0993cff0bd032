"""How long the sheets along the tunnel are cut."""

from hoopwright.cover.size import Part, Size, add_up
from hoopwright.cover.sizes import TOLERANCE
from hoopwright.farm import Skin
from hoopwright.survey import Survey

SKEW = "ends out of square"
LEANS = ("front end bow out of plumb", "back end bow out of plumb")


def whole_length(survey: Survey, skin: Skin) -> Size:
    """Return the length of a sheet over the bows that runs from end bow to end bow, m."""
    skewed = (SKEW, survey.taped.skew_cost_m)
    return _end_to_end(survey, skin, skewed)


def side_length(survey: Survey, skin: Skin) -> Size:
    """Return the length of a sheet of one side from end bow to end bow, m.

    It lies in one plane with its side, so ends out of square do not shorten it.
    """
    return _end_to_end(survey, skin)


def seam_length(survey: Survey, skin: Skin, from_m: float, to_m: float) -> Size:
    """Return the length of a sheet that ends at one or two cross seams, m.

    Args:
        survey: The frame as built.
        skin: The skin as chosen.
        from_m: Seam in front of it, or 0 at the first bow, m.
        to_m: Seam behind it, or the last bow, m.
    """
    allowances, taped = skin.allowances, survey.taped
    at_end = (from_m <= 0, to_m >= survey.length_m)
    tails = sum(at_end)
    seams = 2 - tails
    more_m = (taped.length_m - survey.length_m) * (to_m - from_m) / survey.length_m
    return add_up(
        "Between its cross seams, with half the lap past each seam and the tail past an end bow."
        + _bent_rule(survey),
        ("along the tunnel", to_m - from_m),
        ("its share of what the length read is more", more_m),
        (SKEW, taped.skew_cost_m),
        *(lean for lean, ends in zip(_leans(survey), at_end, strict=True) if ends),
        (f"{seams} x half the lap at the seam", seams * allowances.seam_lap_m / 2),
        (f"{tails} x tail past the end bow", tails * allowances.end_tail_m),
        (TOLERANCE, allowances.measuring_tolerance_m),
    )


def _end_to_end(survey: Survey, skin: Skin, *skewed: Part) -> Size:
    line = survey.taped.length_line
    return add_up(
        "From the first bow to the last, with a tail past each end bow." + _bent_rule(survey),
        (f"along the {line}, as read" if line else "first to last bow", survey.taped.length_m),
        *skewed,
        *_leans(survey),
        ("2 x tail past the end bow", 2 * skin.allowances.end_tail_m),
        (TOLERANCE, skin.allowances.measuring_tolerance_m),
    )


def _leans(survey: Survey) -> tuple[Part, Part]:
    front_m, back_m = survey.taped.lean_costs_m
    return (LEANS[0], front_m), (LEANS[1], back_m)


def _bent_rule(survey: Survey) -> str:
    if survey.taped.skew_cost_m == survey.taped.lean_cost_m == 0:
        return ""
    return " It is cut square, so it must reach over what the ends are out of square and plumb."
