"""Where the views lie in the canvas: three long ones in a column, section and key beside them.

The three long views have one scale and one length axis. The scale is the largest at which all of
the tunnel fits; room that is left over is shared between the views.
"""

from dataclasses import dataclass

from hoopwright.papers.scene import Box

Frame = tuple[float, float, float, float]
"""Left, top, width and height, px."""

LONG = ("first_side", "plan", "second_side")

RULER_PX = 44.0
GAP_PX = 4.0
SECTION_SHARE = 0.27
SECTION_LEAST_PX, SECTION_MOST_PX = 200.0, 360.0
END_SHARE, END_MOST_PX = 0.38, 560.0
NARROW_PX = 620.0
PLAN_AIR_M = 0.5
SIDE_AIR_PX = 10.0
LEAST_SCALE = 0.5


@dataclass(frozen=True, slots=True)
class Arrangement:
    """Where everything lies, px.

    Attributes:
        frames: Of each view by name.
        chooser: Of the choice of what stands beside the long views.
        rulers: Of each left ruler by name of its view, and of `length` and `across` at the bottom.
        key: Of the key to the colours.
        px_per_m: Scale at which the whole tunnel fits the long views.
        section_px_per_m: Scale at which the section fits.
        head_px: Height of the title inside each view.
        foot_px: By view, height kept for texts below the drawing.
        shift_px: How far the section is moved right, so that the dimensions beside it have room.
    """

    frames: dict[str, Frame]
    chooser: Frame
    rulers: dict[str, Frame]
    key: Frame
    px_per_m: float
    section_px_per_m: float
    head_px: float
    foot_px: dict[str, float]
    shift_px: float


def arrange(
    width_px: float,
    height_px: float,
    boxes: dict[str, Box],
    row_px: float,
    section_rows: tuple[int, int] = (0, 0),
    chooser_px: float = 0.0,
    *,
    wide: bool = False,
) -> Arrangement:
    """Return where the views lie.

    Args:
        width_px: Width of the canvas.
        height_px: Height of the canvas.
        boxes: What each view shows: left, bottom, right and top, m.
        row_px: Height of one row of text.
        section_rows: Rows of upright dimensions left and right of the section.
        chooser_px: Height of the choice above the section.
        wide: Whether an end wall stands there, which has more to show than the section.
    """
    section_px = _section_width(width_px, wide=wide)
    long_px = max(40.0, width_px - section_px - RULER_PX - 2 * GAP_PX)
    head_px = row_px + 6
    foot_px = {"first_side": 2 * row_px + 8, "second_side": 2 * row_px + 8, "plan": 4.0}
    foot_px["section"] = row_px + 8
    ruler_px = row_px + 8
    heights_m = {name: boxes[name][3] - boxes[name][1] for name in LONG}
    heights_m["plan"] += 2 * PLAN_AIR_M
    fixed_px = sum(head_px + foot_px[name] for name in LONG) + 2 * GAP_PX + ruler_px
    left, _bottom, right, _top = boxes["plan"]
    across = (long_px - 2 * SIDE_AIR_PX) / (right - left)
    free_px = max(1.0, height_px - fixed_px)
    scale = max(LEAST_SCALE, min(across, free_px / sum(heights_m.values())))
    spare_px = max(0.0, free_px - scale * sum(heights_m.values())) / len(LONG)
    frames: dict[str, Frame] = {}
    rulers: dict[str, Frame] = {}
    top_px = 0.0
    for name in LONG:
        high_px = float(round(heights_m[name] * scale + head_px + foot_px[name] + spare_px))
        frames[name] = (RULER_PX, top_px, long_px, high_px)
        rulers[name] = (0.0, top_px, RULER_PX, high_px)
        top_px += high_px + GAP_PX
    rulers["length"] = (RULER_PX, top_px - GAP_PX, long_px, ruler_px)
    chooser = (width_px - section_px, 0.0, section_px, chooser_px)
    section, across_ruler, key, section_scale = _beside(
        chooser, height_px, boxes["section"], row_px, section_rows
    )
    frames["section"], rulers["across"] = section, across_ruler
    shift_px = (section_rows[0] - section_rows[1]) * row_px / 2
    return Arrangement(
        frames, chooser, rulers, key, scale, section_scale, head_px, foot_px, shift_px
    )


def _section_width(width_px: float, *, wide: bool) -> float:
    if width_px < NARROW_PX:
        return SECTION_LEAST_PX
    share, most_px = (END_SHARE, END_MOST_PX) if wide else (SECTION_SHARE, SECTION_MOST_PX)
    return min(most_px, max(SECTION_LEAST_PX, round(width_px * share)))


def _beside(
    chooser: Frame,
    height_px: float,
    box: Box,
    row_px: float,
    rows: tuple[int, int],
) -> tuple[Frame, Frame, Frame, float]:
    """Return section below its choice, its ruler, the key, and the section's scale."""
    left_px, _top_px, width_px, chooser_px = chooser
    left, bottom, right, top = box
    edges_px = (sum(rows) + 1) * row_px + 2 * SIDE_AIR_PX
    head_px, foot_px, ruler_px = row_px + 6, row_px + 8, row_px + 8
    most_px = max(60.0, height_px * 0.62 - chooser_px)
    room_px = most_px - head_px - foot_px - ruler_px
    scale = max(1.0, min((width_px - edges_px) / (right - left), room_px / (top - bottom)))
    high_px = float(round((top - bottom) * scale + head_px + foot_px))
    section = (left_px, chooser_px, width_px, high_px)
    ruler = (left_px, chooser_px + high_px, width_px, ruler_px)
    key_top = chooser_px + high_px + ruler_px + GAP_PX
    return section, ruler, (left_px, key_top, width_px, max(0.0, height_px - key_top)), scale
