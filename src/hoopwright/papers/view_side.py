"""The elevation of one side: curtains, pockets, splits, gutter, and the foot of the roof.

Nothing happens on the roof further up that the plan and the section do not show better, so it is
cut off a little above the hip, at a break line: a thin line with zigzags.

Source:
    The thin line with zigzags where a view is broken off: ISO 128 (clause from memory).
"""

from collections.abc import Iterator
from itertools import groupby, pairwise

from hoopwright.cover.cover import FixedSpan
from hoopwright.farm import SideBoards
from hoopwright.papers.scene import (
    Handle,
    Label,
    Line,
    Point,
    Polygon,
    Polyline,
    Shape,
    Style,
    View,
    rectangle,
)
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_air import draw_side_air
from hoopwright.papers.view_condition import Strip, condition_shapes
from hoopwright.papers.view_curtain import draw_curtains
from hoopwright.quantity.remembered import Remembered
from hoopwright.survey import Survey
from hoopwright.survey.taped import HeightLine

SIDE_NAMES: tuple[Strip, Strip] = ("first_side", "second_side")
NUMBER_ROW = 1
OFFER_SHARE = 0.5
GRIP_SHARE = 0.62
CUT_SHARE, CUT_LEAST_M, CUT_SPARED_M = 0.25, 0.6, 0.15
ZIGZAGS, ZIGZAG_M = 4, (0.12, 0.1)


def draw_side(subject: Subject, side: int) -> View:
    """Return the elevation of one side, the front end at the left.

    The second side is seen from inside, so that both sides and the plan have one length axis.

    Args:
        subject: What is drawn.
        side: 0 for the first side, 1 for the second.
    """
    survey, chosen = subject.survey, subject.tunnel.sides[side]
    tail_m = subject.tunnel.skin.allowances.end_tail_m
    shapes = (
        *_ground(subject, side),
        *_roof(subject, side),
        *_fixed(subject, side),
        *draw_curtains(subject, side),
        *_frame(subject, side),
        *_end_walls(subject, side),
        *condition_shapes(
            subject, SIDE_NAMES[side], _hip_m(subject, side), cut_height(subject, side)
        ),
        *_splits(subject, side),
        *_offered(subject, side),
        *draw_side_air(subject, side, _hip_m(subject, side)),
        *_break_line(subject, side),
    )
    return View(
        name=SIDE_NAMES[side],
        title=f"{chosen.name} · front end at the left",
        described=f"Elevation of the {chosen.name}: {len(chosen.panels)} curtains, "
        f"{len(chosen.splits)} splits. The front end is at the left; the roof is shown up to "
        f"{subject.size(cut_height(subject, side))}.{_told(subject, side)}",
        box=(-tail_m, _lowest(subject, side), survey.length_m + tail_m, cut_height(subject, side)),
        shapes=shapes,
    )


def _told(subject: Subject, side: int) -> str:
    """Return what is said of heights that were read at some bows alone."""
    lines = subject.survey.taped.lines[side]
    some = [line.read for line in (lines.hip, lines.baseboard, lines.ground) if any(line.read)]
    if all(all(read) for read in some):
        return ""
    return " Heights between the bows where they were read are interpolated and drawn dashed."


def _ground(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield the ground line, from bow to bow as read where it was read."""
    survey, line = subject.survey, subject.survey.taped.lines[side].ground
    tail_m = subject.tunnel.skin.allowances.end_tail_m
    left_m, right_m = -tail_m, survey.length_m + tail_m
    if not any(line.read):
        yield Line("", "ground", (left_m, 0.0, right_m, 0.0))
        return
    yield Line("", "unread", (left_m, line.heights_m[0], 0.0, line.heights_m[0]))
    yield from _as_read(survey, "", "ground", line)
    yield Line("", "unread", (survey.length_m, line.heights_m[-1], right_m, line.heights_m[-1]))


def _as_read(survey: Survey, mark: str, style: Style, line: HeightLine) -> Iterator[Shape]:
    """Yield a line of heights in stretches: a bay between two readings, and all that is not."""
    bows_m, heights_m = survey.bows_m, line.heights_m
    bays = list(pairwise(zip(bows_m, heights_m, line.read, strict=True)))
    for read, run in groupby(bays, lambda bay: bay[0][2] and bay[1][2]):
        stretch = list(run)
        spots = (stretch[0][0], *(after for _before, after in stretch))
        yield Polyline(mark, style if read else "unread", tuple((x, y) for x, y, _read in spots))


def _lowest(subject: Subject, side: int) -> float:
    """Return the lowest place of the drawing, m: the ground line of the bows, or ground below."""
    return min(0.0, *subject.survey.taped.lines[side].ground.heights_m)


def _board(survey: Survey, mark: str, style: Style, line: HeightLine) -> Iterator[Shape]:
    """Yield the top of a board, from bow to bow as read where it was read."""
    if any(line.read):
        yield from _as_read(survey, mark, style, line)
    else:
        low_m = line.heights_m[0]
        yield Line(mark, style, (0.0, low_m, survey.bows_m[-1], low_m))


def cut_height(subject: Subject, side: int) -> float:
    """Return up to where the elevation of a side shows the roof, m over the ground.

    It is a quarter of the way from the hip to the ridge, or as much more as a handle and a text
    need; where little would be cut off nothing is.
    """
    return _cut_m(subject.survey, subject.tunnel.frame.boards[side])


def _cut_m(survey: Survey, boards: SideBoards) -> float:
    hip_m, ridge_m = boards.hip_height_m, survey.height_m
    cut_m = hip_m + max(CUT_LEAST_M, CUT_SHARE * (ridge_m - hip_m))
    return cut_m if cut_m < ridge_m - CUT_SPARED_M else ridge_m


def _break_line(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield the line with zigzags at which the roof is cut off, when it is."""
    cut_m, survey = cut_height(subject, side), subject.survey
    if cut_m >= survey.height_m:
        return
    tail_m = subject.tunnel.skin.allowances.end_tail_m
    left_m, right_m = -tail_m, survey.length_m + tail_m
    half_m, high_m = ZIGZAG_M
    points: list[Point] = [(left_m, cut_m)]
    for number in range(ZIGZAGS):
        middle_m = left_m + (right_m - left_m) * (number + 0.5) / ZIGZAGS
        points += [
            (middle_m - half_m, cut_m),
            (middle_m - half_m / 2, cut_m + high_m),
            (middle_m + half_m / 2, cut_m - high_m),
            (middle_m + half_m, cut_m),
        ]
    yield Polyline("", "dimension", (*points, (right_m, cut_m)))


def _hip_m(subject: Subject, side: int) -> float:
    return subject.tunnel.frame.boards[side].hip_height_m


def _roof(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield the roof film above the hip, its tails, and the cross seams."""
    survey, skin = subject.survey, subject.tunnel.skin
    low_m, high_m = _hip_m(subject, side), cut_height(subject, side)
    tail_m = skin.allowances.end_tail_m
    for piece in subject.chosen.cover.pieces:
        style: Style = "roof inner" if piece.layer == "inner" else "roof"
        for area in piece.areas:
            if area.surface == "roof":
                box = rectangle(area.from_m, low_m, area.to_m, high_m)
                yield Polygon(piece.mark, style, box)
    if tail_m > 0:
        yield Polygon("roof", "tail", rectangle(-tail_m, low_m, 0.0, high_m))
        right_m = survey.length_m + tail_m
        yield Polygon("roof", "tail", rectangle(survey.length_m, low_m, right_m, high_m))
    half_m = skin.allowances.seam_lap_m / 2
    for index, at_m in enumerate(skin.cross_seams_m):
        mark = f"roof/seam/{index}"
        yield Polygon(mark, "seam", rectangle(at_m - half_m, low_m, at_m + half_m, high_m))
        ends = (at_m, low_m, at_m, high_m)
        yield Line(mark, "seam", ends)
        grip = (at_m, low_m + GRIP_SHARE * (high_m - low_m))
        yield Handle(mark, "seam", ends, grip, "seam", "along")


def _fixed(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield pockets, strips, or the whole side when it is fixed."""
    hip_m = _hip_m(subject, side)
    low_m = subject.tunnel.frame.boards[side].baseboard_height_m
    for span in subject.chosen.cover.fixed:
        if span.side != side:
            continue
        style: Style = "strip" if "/strip/" in span.mark else "pocket"
        yield Polygon(span.mark, style, rectangle(span.from_m, low_m, span.to_m, hip_m))
        yield _fixed_label(subject, span, (low_m + hip_m) / 2, hip_m - low_m)


def _fixed_label(subject: Subject, span: FixedSpan, middle_m: float, height_m: float) -> Label:
    width_m = span.to_m - span.from_m
    word = "Strip" if "/strip/" in span.mark else "Pocket"
    if span.mark.endswith("/fixed"):
        word = f"Fixed side · {subject.size(width_m)}"
    at = ((span.from_m + span.to_m) / 2, middle_m)
    return Label(span.mark, "label", at, word, width_m, height_m)


def _frame(subject: Subject, side: int) -> tuple[Shape, ...]:
    """Return bows with their numbers, and boards; the same ones while the frame stays."""
    survey = subject.survey
    return _standing(survey, subject.tunnel.frame.boards[side], side)


def _draw_standing(survey: Survey, boards: SideBoards, side: int) -> tuple[Shape, ...]:
    return (*_bows(survey, boards, side), *_boards(survey, boards, side))


_standing = Remembered(_draw_standing)


def _bows(survey: Survey, boards: SideBoards, side: int) -> Iterator[Shape]:
    """Yield bows with their numbers."""
    ground = survey.taped.lines[side].ground
    cut_m, bays = _cut_m(survey, boards), [b - a for a, b in pairwise(survey.bows_m)]
    for index, at_m in enumerate(survey.bows_m):
        mark = f"bow/{index}"
        yield Line(mark, "bow", (at_m, min(0.0, ground.heights_m[index]), at_m, cut_m))
        room_m = bays[min(index, len(bays) - 1)]
        text = str(index + 1)
        yield Label(mark, "label", (at_m, 0.0), text, room_m, row=NUMBER_ROW, number=True)


def _boards(survey: Survey, boards: SideBoards, side: int) -> Iterator[Shape]:
    """Yield baseboard, gutter and hip board."""
    lines = survey.taped.lines[side]
    length_m, base_m, hip_m = survey.length_m, boards.baseboard_height_m, boards.hip_height_m
    baseboard = f"side/{side}/baseboard"
    yield Polygon(baseboard, "board", rectangle(0.0, 0.0, length_m, base_m))
    yield from _board(survey, baseboard, "board", lines.baseboard)
    hip, ends = f"side/{side}/hip", (0.0, hip_m, length_m, hip_m)
    if boards.gutter_drop_m is not None:
        gutter = rectangle(0.0, hip_m - boards.gutter_drop_m, length_m, hip_m)
        yield Polygon(hip, "board", gutter)
    yield from _board(survey, hip, "hip", lines.hip)
    yield Handle(hip, "hip", ends, (0.0, hip_m), "hip", "up")


def _end_walls(subject: Subject, side: int) -> Iterator[Shape]:
    cut_m = cut_height(subject, side)
    for number, at_m in enumerate((0.0, subject.survey.length_m)):
        wall = subject.chosen.cover.ends[number]
        if wall.closed != "open":
            style: Style = "rigid" if wall.closed == "rigid" else "end wall"
            yield Line(wall.mark, style, (at_m, 0.0, at_m, cut_m))


def _splits(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield where curtains meet."""
    chosen, hip_m = subject.tunnel.sides[side], _hip_m(subject, side)
    if chosen.kind == "fixed":
        return
    for index, split in enumerate(chosen.splits):
        mark, ends = f"side/{side}/split/{index}", (split.at_m, 0.0, split.at_m, hip_m)
        yield Line(mark, "split", ends)
        grip = (split.at_m, hip_m)
        yield Handle(mark, "split", ends, grip, "split", "along")


def _offered(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield the splits that are offered; they show nothing that could be picked."""
    hip_m, length_m = _hip_m(subject, side), subject.survey.length_m
    label_m = hip_m + OFFER_SHARE * (cut_height(subject, side) - hip_m)
    for at_m in subject.offered(side):
        yield Line("", "proposed", (at_m, 0.0, at_m, hip_m))
        text, room_m = f"Proposed split · {subject.size(at_m)}", 2 * min(at_m, length_m - at_m)
        yield Label("", "proposed", (at_m, label_m), text, room_m)
