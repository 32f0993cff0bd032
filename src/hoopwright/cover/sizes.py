"""How wide and how high the sheets of the skin are cut.

Every size is a sum: what lies on the frame, tails to grip, slack and wrap, and once what the tape
may be wrong by. The outer of two inflated layers gets the length that lets it bulge.
"""

import math

from hoopwright.cover.bulge import bulge_extra
from hoopwright.cover.cover import LayerName
from hoopwright.cover.side_film import own_sheets
from hoopwright.cover.size import Part, Size, add_up
from hoopwright.cover.stretch import Stretch, greatest_drop, greatest_side, opening_ends
from hoopwright.farm import Allowances, Side, Skin
from hoopwright.farm.side import SideKind
from hoopwright.survey import Survey

TOLERANCE = "tape tolerance"
BULGE = "outer layer's bulge"
BULGE_RULE = (
    " The outer layer is cut longer so that air can lift it by the gap: the arc over the lines "
    "that hold it, raised by the gap, less the arc at rest, both reckoned as circle arcs whatever "
    "the shape of the bow."
)
HIP_RULE = "Over the outside of the bow from hip seam to hip seam."
BASE_RULE = (
    "Over the outside of the bow from baseboard to baseboard, and back up to each hip seam by the "
    "length of that side."
)
LESS_SIDE = "back up to the hip seam"
NEAR_M = 1e-6
OWN_RULE = " On a side that has sheets of its own it ends at the hip, with the roof's tail there."
HANG_RULES: dict[SideKind, str] = {
    "roll_up": "Along the bow from the hip seam to the bar when shut, and the slack.",
    "woven": "Along the bow from the hip seam to the bar when shut, and the slack.",
    "drop_down": "Along the bow from the baseboard to the rod, which hangs at the hip when the "
    "curtain is shut, and the slack.",
}
HEIGHT_RULES: dict[SideKind, str] = {
    "roll_up": "Along the bow from the hip seam to the bar when shut, with the tail above the hip "
    "board, the slack and the wrap on the bar.",
    "woven": "Along the bow from the hip seam to the bar when shut, with the slack, what is turned "
    "over the bead that slides into the top profile, and the hem for the bar.",
    "drop_down": "Along the bow from the baseboard to the rod, which hangs at the hip when the "
    "curtain is shut, with the slack, the tail below the baseboard channel and the wrap on the "
    "rod.",
}

WHOLE_RULE = (
    " Below the hip it goes on a roll-up side down the bow to the shut bar with slack and wrap, on "
    "a fixed side and in pockets to the baseboard with its tail, whichever is longer."
)
READ_RULE = " The longest girth that was read governs; a sheet that is short at one bow is short."


def roof_width(survey: Survey, skin: Skin, layer: LayerName) -> Size:
    """Return the width of a roof sheet that ends at the hip boards, m."""
    allowances = skin.allowances
    return add_up(
        "Over the outside of the bow from hip seam to hip seam, with a tail beyond the channel on "
        "each edge." + _read_rule(survey) + _bulge_rule(layer, skin.inflation_gap_m),
        (_roof_name(survey), survey.roof_girth_m),
        ("2 x tail at the hip", 2 * allowances.hip_tail_m),
        (BULGE, _arch_bulge(survey, skin, layer, survey.hip_at_m)),
        (TOLERANCE, allowances.measuring_tolerance_m),
    )


def whole_width(
    survey: Survey,
    skin: Skin,
    sides: tuple[Side, Side],
    inflated_sides: tuple[bool, bool],
    layer: LayerName,
) -> Size:
    """Return the width of a sheet that covers roof and both sides, m."""
    by_bases = _by_bases(survey)
    over: list[Part] = [_over(survey, by_bases)]
    held_at_m = list(survey.hip_at_m)
    for n, side in enumerate(sides):
        if by_bases:
            over.append((f"{side.name}: {LESS_SIDE}", -survey.side_m[n]))
        over += _below_hip(survey, skin, n, side)
        if side.kind == "fixed":
            held_at_m[n] = survey.base_at_m[n]
        elif inflated_sides[n] and layer == "outer" and not own_sheets(side, "one_sheet"):
            over.append((f"{side.name}: {BULGE}", _side_bulge(survey, skin, n, side)))
    own = any(own_sheets(side, "one_sheet") for side in sides)
    return add_up(
        (BASE_RULE if by_bases else HIP_RULE)
        + WHOLE_RULE
        + (OWN_RULE if own else "")
        + _read_rule(survey)
        + _bulge_rule(layer, skin.inflation_gap_m),
        *over,
        (BULGE, _arch_bulge(survey, skin, layer, (held_at_m[0], held_at_m[1]))),
        (TOLERANCE, skin.allowances.measuring_tolerance_m),
    )


def curtain_hang(survey: Survey, n: int, side: Side, stretch: Stretch | None = None) -> Size:
    """Return the film that hangs when the curtain is shut, m.

    From the hip seam to the bar; of a drop-down curtain from the baseboard to the rod.

    Args:
        survey: The frame as built.
        n: 0 for the first side, 1 for the second.
        side: The side as chosen.
        stretch: Where the curtain hangs, m; None for the whole opening of the side.
    """
    return add_up(HANG_RULES[side.kind], *_hang(survey, n, side, stretch))


def curtain_height(
    survey: Survey,
    skin: Skin,
    n: int,
    side: Side,
    layer: LayerName,
    inflated: bool,
    stretch: Stretch | None = None,
) -> Size:
    """Return the cut height of a curtain that is apart from the roof, m."""
    bulges = inflated and layer == "outer"
    bulge_m = _side_bulge(survey, skin, n, side, stretch) if bulges else 0.0
    return add_up(
        HEIGHT_RULES[side.kind] + _bulge_rule(layer, bulge_m),
        *_hang(survey, n, side, stretch),
        *_held_edges(side.kind, skin.allowances),
        (BULGE, bulge_m),
        (TOLERANCE, skin.allowances.measuring_tolerance_m),
    )


def curtain_share(
    survey: Survey,
    skin: Skin,
    n: int,
    side: Side,
    layer: LayerName,
    inflated: bool,
    stretch: Stretch | None = None,
) -> Size:
    """Return what a curtain adds to the width of a whole sheet, m."""
    bulges = inflated and layer == "outer"
    bulge_m = _side_bulge(survey, skin, n, side, stretch) if bulges else 0.0
    return add_up(
        "Along the bow from the hip seam to the bar when shut, with the slack and the wrap on the "
        "bar; the sheet runs on over the hip board." + _bulge_rule(layer, bulge_m),
        *_hang(survey, n, side, stretch),
        ("wrap on the roll bar", skin.allowances.bar_wrap_m),
        (BULGE, bulge_m),
    )


def fixed_height(survey: Survey, skin: Skin, n: int) -> Size:
    """Return the cut height of film that is fixed from hip board to baseboard, m."""
    allowances = skin.allowances
    return add_up(
        "Along the bow from the hip seam to the top of the baseboard, with the tails above the hip "
        "board and below the baseboard channel.",
        (_side_name(survey, n), survey.side_m[n]),
        ("tail at the hip", allowances.curtain_top_tail_m),
        ("tail at the baseboard", allowances.baseboard_tail_m),
        (TOLERANCE, allowances.measuring_tolerance_m),
    )


def pocket_height(survey: Survey, skin: Skin, n: int, side: Side) -> Size:
    """Return the cut height of pockets and split strips, m.

    They are cut to the height of a roll-up curtain, so that one strip of film serves both, and
    never less than the baseboard needs. Beside a curtain of another film or another kind they are
    cut to what the baseboard needs.

    Source:
        Common practice, no published source.
    """
    if side.kind != "roll_up" or side.film is not None:
        return fixed_height(survey, skin, n)
    curtain = curtain_height(survey, skin, n, side, "single", False)
    fixed = fixed_height(survey, skin, n)
    if fixed.total_m > curtain.total_m:
        return fixed
    return Size(
        f"As high as the curtain, so that one strip serves both. {curtain.rule}", curtain.parts
    )


def _roof_name(survey: Survey) -> str:
    """Return what the width over the roof is called, with the bow where it was read."""
    if survey.roof_bow is None:
        return "over the bow, hip to hip"
    if survey.roof_over == "hips":
        return f"over bow {survey.roof_bow}, hip to hip, as read"
    return f"over bow {survey.roof_bow}, hip to hip, from its girth over the baseboards"


def _by_bases(survey: Survey) -> bool:
    """Return whether a girth read over the baseboards governs a whole sheet."""
    by_hips_m = survey.roof_girth_m + sum(survey.side_m)
    return survey.taped.baseboards is not None and survey.whole_girth_m >= by_hips_m - NEAR_M


def _over(survey: Survey, by_bases: bool) -> Part:
    if by_bases:
        name = f"over bow {survey.whole_bow}, baseboard to baseboard, as read"
        return name, survey.whole_girth_m
    return _roof_name(survey), survey.roof_girth_m


def _read_rule(survey: Survey) -> str:
    return "" if survey.roof_bow is None else READ_RULE


def _side_name(survey: Survey, n: int) -> str:
    bow = survey.side_bows[n]
    return "hip seam to baseboard" if bow is None else f"hip seam to baseboard, bow {bow}"


def _hang(survey: Survey, n: int, side: Side, stretch: Stretch | None = None) -> tuple[Part, Part]:
    reach = stretch or opening_ends(side, survey.bows_m)
    slack = ("slack", side.slack_m)
    if side.kind == "drop_down":
        way = greatest_side(survey, n, reach)
        return (way.named("baseboard to the rod at the hip"), way.length_m), slack
    drop = greatest_drop(survey, n, side.shut_height_m, reach)
    return (drop.named("hip seam to shut bar"), drop.length_m), slack


def _held_edges(kind: SideKind, allowances: Allowances) -> tuple[Part, Part]:
    """Return what a curtain's upper and lower edge take beyond what hangs."""
    if kind == "drop_down":
        return (
            ("wrap on the rod", allowances.bar_wrap_m),
            ("tail at the baseboard", allowances.baseboard_tail_m),
        )
    if kind == "woven":
        return (
            ("turned over the bead at the hip", allowances.curtain_top_tail_m),
            ("hem for the roll bar", allowances.bar_wrap_m),
        )
    return (
        ("tail at the hip", allowances.curtain_top_tail_m),
        ("wrap on the roll bar", allowances.bar_wrap_m),
    )


def _below_hip(survey: Survey, skin: Skin, n: int, side: Side) -> list[Part]:
    """Return what one side adds to a whole sheet below the hip seam."""
    allowances = skin.allowances
    if own_sheets(side, "one_sheet"):
        return [(f"{side.name}: tail at the hip", allowances.hip_tail_m)]
    fixed = [
        (f"{side.name}: {_side_name(survey, n)}", survey.side_m[n]),
        (f"{side.name}: tail at the baseboard", allowances.baseboard_tail_m),
    ]
    if side.kind == "fixed":
        return fixed
    rolled = [(f"{side.name}: {name}", length_m) for name, length_m in _hang(survey, n, side)]
    rolled.append((f"{side.name}: wrap on the roll bar", allowances.bar_wrap_m))
    if any(side.pocket_bays) and sum(p[1] for p in fixed) > sum(p[1] for p in rolled):
        return fixed
    return rolled


def _bulge_rule(layer: LayerName, extra_m: float) -> str:
    return BULGE_RULE if layer == "outer" and extra_m > 0 else ""


def _arch_bulge(
    survey: Survey, skin: Skin, layer: LayerName, held_at_m: tuple[float, float]
) -> float:
    """Return the outer layer's extra over the arch between the lines that hold it, m.

    Roof film is held at the hip boards; where one sheet runs on over a fixed side, at the
    baseboard.
    """
    if layer != "outer":
        return 0.0
    (x0, y0), (x1, y1) = (survey.curve.point_at(at_m) for at_m in held_at_m)
    x, y = survey.curve.point_at(survey.curve.ridge_m)
    chord_m = math.hypot(x1 - x0, y1 - y0)
    rise_m = ((x0 - x) * (y1 - y0) - (x1 - x0) * (y0 - y)) / chord_m
    return bulge_extra(chord_m, max(0.0, rise_m), skin.inflation_gap_m)


def _side_bulge(
    survey: Survey, skin: Skin, n: int, side: Side, stretch: Stretch | None = None
) -> float:
    """Return the outer layer's extra on a curtain, m: the chord is the way down the bow."""
    reach = stretch or opening_ends(side, survey.bows_m)
    drop = greatest_drop(survey, n, side.shut_height_m, reach)
    return bulge_extra(drop.length_m, 0.0, skin.inflation_gap_m)
