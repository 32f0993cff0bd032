"""The plan: roof sheets, cross seams, bows, hip lines, end walls, blower and jumpers."""

from collections.abc import Iterator

from hoopwright.farm.side import MOVING
from hoopwright.papers.scene import (
    Handle,
    Label,
    Line,
    Polygon,
    Segment,
    Shape,
    Style,
    View,
    rectangle,
)
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_air import draw_plan_air
from hoopwright.papers.view_condition import condition_shapes

INNER_INSET_M = 0.1
TICK_M = 0.45


def draw_plan(subject: Subject) -> View:
    """Return the tunnel from above: the front end at the left, the first side at the top.

    Args:
        subject: What is drawn.
    """
    survey = subject.survey
    tail_m = subject.tunnel.skin.allowances.end_tail_m
    half_m = survey.width_m / 2
    first, second = (side.name for side in subject.tunnel.sides)
    return View(
        name="plan",
        title=f"Plan · {first} above, {second} below",
        described=f"Plan of the roof: {len(survey.bows_m)} bows, "
        f"{len(subject.tunnel.skin.cross_seams_m)} cross seams. The front end is at the left, "
        f"{first} above, {second} below.",
        box=(-tail_m, -half_m, survey.length_m + tail_m, half_m),
        shapes=(
            *_sheets(subject),
            *_frame(subject),
            *condition_shapes(subject, "plan", 0.0, _hips_m(subject)[0]),
            *_seams(subject),
            *_splits(subject),
            *draw_plan_air(subject, _hips_m(subject)),
        ),
    )


def _hips_m(subject: Subject) -> tuple[float, float]:
    """Return the hip lines of the first (above) and second side (below), m up the paper."""
    first_m, second_m = subject.survey.hip_across_m
    return abs(first_m), -abs(second_m)


def _sheets(subject: Subject) -> Iterator[Shape]:
    """Yield the roof sheets with their tails, the inner layer a little smaller."""
    top_m, bottom_m = _hips_m(subject)
    survey, skin = subject.survey, subject.tunnel.skin
    tail_m = skin.allowances.end_tail_m
    for piece in subject.chosen.cover.pieces:
        inner = piece.layer == "inner"
        style: Style = "roof inner" if inner else "roof"
        inset_m = INNER_INSET_M if inner else 0.0
        for area in piece.areas:
            if area.surface != "roof":
                continue
            low_m, high_m = bottom_m + inset_m, top_m - inset_m
            left_m, right_m = area.from_m, area.to_m
            yield Polygon(piece.mark, style, rectangle(left_m, low_m, right_m, high_m))
            if not inner:
                yield _sheet_label(subject, piece.mark, piece.name, left_m, right_m)
    if tail_m > 0:
        yield Polygon("roof", "tail", rectangle(-tail_m, bottom_m, 0.0, top_m))
        right_m = survey.length_m + tail_m
        yield Polygon("roof", "tail", rectangle(survey.length_m, bottom_m, right_m, top_m))


def _sheet_label(subject: Subject, mark: str, name: str, left_m: float, right_m: float) -> Label:
    piece = next(p for p in subject.chosen.cover.pieces if p.mark == mark)
    text = f"{name} · {subject.size(piece.width_m)} × {subject.size(piece.length_m)}"
    bottom_m = _hips_m(subject)[1]
    return Label(mark, "label", ((left_m + right_m) / 2, bottom_m / 2), text, right_m - left_m)


def _frame(subject: Subject) -> Iterator[Shape]:
    survey = subject.survey
    half_m, length_m = survey.width_m / 2, survey.length_m
    for index, at_m in enumerate(survey.bows_m):
        yield Line(f"bow/{index}", "bow", (at_m, -half_m, at_m, half_m))
    yield Line("frame", "ridge", (0.0, 0.0, length_m, 0.0))
    for side, at_m in enumerate(_hips_m(subject)):
        yield Line(f"side/{side}/hip", "hip", (0.0, at_m, length_m, at_m))
        edge_m = half_m if side == 0 else -half_m
        yield Line(f"side/{side}/baseboard", "board", (0.0, edge_m, length_m, edge_m))
    for number, at_m in enumerate((0.0, length_m)):
        wall = subject.chosen.cover.ends[number]
        if wall.closed != "open":
            style: Style = "rigid" if wall.closed == "rigid" else "end wall"
            yield Line(wall.mark, style, (at_m, -half_m, at_m, half_m))


def _seams(subject: Subject) -> Iterator[Shape]:
    top_m, bottom_m = _hips_m(subject)
    half_m = subject.tunnel.skin.allowances.seam_lap_m / 2
    for index, at_m in enumerate(subject.tunnel.skin.cross_seams_m):
        mark, ends = f"roof/seam/{index}", (at_m, bottom_m, at_m, top_m)
        yield Polygon(mark, "seam", rectangle(at_m - half_m, bottom_m, at_m + half_m, top_m))
        yield Line(mark, "seam", ends)
        yield Handle(mark, "seam", ends, (at_m, top_m / 2), "seam", "along")


def _splits(subject: Subject) -> Iterator[Shape]:
    """Yield a tick at the edge of the plan for each split of the sides, chosen or offered."""
    for side, chosen in enumerate(subject.tunnel.sides):
        for index, split in enumerate(chosen.splits if chosen.kind in MOVING else ()):
            yield Line(f"side/{side}/split/{index}", "split", _tick(subject, side, split.at_m))
        for at_m in subject.offered(side):
            yield Line("", "proposed", _tick(subject, side, at_m))


def _tick(subject: Subject, side: int, at_m: float) -> Segment:
    half_m, sign = subject.survey.width_m / 2, 1 if side == 0 else -1
    return (at_m, sign * (half_m - TICK_M), at_m, sign * (half_m + TICK_M))
