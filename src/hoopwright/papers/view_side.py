"""The elevation of one side: curtains, pockets, splits, ropes, cranks, and the roof above."""

from collections.abc import Iterator
from itertools import pairwise

from hoopwright.cover.cover import CurtainSpan, FixedSpan
from hoopwright.farm.side import Panel
from hoopwright.papers.scene import (
    Dimension,
    Handle,
    Hatch,
    Label,
    Line,
    Polygon,
    Polyline,
    Shape,
    Style,
    Symbol,
    View,
    rectangle,
)
from hoopwright.papers.subject import Subject

SEAL_INSET_M = 0.06
NUMBER_ROW, OPENING_ROW = 1, 2


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
        Line("", "ground", (-tail_m, 0.0, survey.length_m + tail_m, 0.0)),
        *_roof(subject, side),
        *_fixed(subject, side),
        *_curtains(subject, side),
        *_frame(subject, side),
        *_splits(subject, side),
        *_jumpers(subject, side),
    )
    return View(
        name=("first_side", "second_side")[side],
        title=f"{chosen.name} · front end at the left",
        described=f"Elevation of the {chosen.name}: {len(chosen.panels)} curtains, "
        f"{len(chosen.splits)} splits. The front end is at the left.",
        box=(-tail_m, 0.0, survey.length_m + tail_m, survey.height_m),
        shapes=shapes,
    )


def _hip_m(subject: Subject, side: int) -> float:
    return subject.tunnel.frame.boards[side].hip_height_m


def _roof(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield the roof film above the hip, its tails, and the cross seams."""
    survey, skin = subject.survey, subject.tunnel.skin
    low_m, high_m = _hip_m(subject, side), survey.height_m
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
        grip = (at_m, low_m + 0.62 * (high_m - low_m))
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


def _curtains(subject: Subject, side: int) -> Iterator[Shape]:
    chosen = subject.tunnel.sides[side]
    inflated = {c.place for c in subject.chosen.inflation.cells}
    legs = {w.mark: w.rope_legs for w in subject.chosen.curtains}
    for span in subject.chosen.cover.curtains:
        if span.side != side:
            continue
        panel = chosen.panels[span.index]
        yield from _curtain(subject, span, span.mark in inflated)
        if panel.rope:
            yield _rope(subject, span, legs.get(span.mark, 0))
        yield _crank(span, panel, chosen.shut_height_m)


def _curtain(subject: Subject, span: CurtainSpan, inflated: bool) -> Iterator[Shape]:
    """Yield one curtain, shut: film, hatch, seals, bar, its name and its opening."""
    mark = span.mark
    low_m, high_m = subject.tunnel.sides[span.side].shut_height_m, _hip_m(subject, span.side)
    style: Style = "inflated curtain" if inflated else "curtain"
    box = (span.from_m, low_m, span.to_m, high_m)
    yield Polygon(mark, style, rectangle(*box))
    yield Hatch(mark, style, box, -1 if inflated else 1)
    if inflated:
        yield from _seals(subject, span, low_m, high_m)
    yield Line(mark, "bar", (span.from_m, low_m, span.to_m, low_m))
    middle_m = (span.open_from_m + span.open_to_m) / 2
    width_m = span.open_to_m - span.open_from_m
    text = f"Curtain {span.index + 1} · {subject.size(span.length_m)}"
    at = (middle_m, (low_m + high_m) / 2)
    yield Label(mark, "label", at, text, width_m, high_m - low_m)
    ends = (span.open_from_m, 0.0, span.open_to_m, 0.0)
    yield Dimension(mark, ends, OPENING_ROW, subject.size(width_m))


def _seals(subject: Subject, span: CurtainSpan, low_m: float, high_m: float) -> Iterator[Shape]:
    d = SEAL_INSET_M
    left, bottom, right, top = span.from_m + d, low_m + d, span.to_m - d, high_m - d
    edges = {
        "top": (left, top, right, top),
        "bottom": (left, bottom, right, bottom),
        "front": (left, bottom, left, top),
        "back": (right, bottom, right, top),
    }
    for seal in subject.chosen.inflation.seals:
        if seal.mark == span.mark:
            yield Line(span.mark, "seal", edges[seal.edge])


def _rope(subject: Subject, span: CurtainSpan, legs: int) -> Polyline:
    low_m, high_m = subject.tunnel.sides[span.side].shut_height_m, _hip_m(subject, span.side)
    step_m = (span.open_to_m - span.open_from_m) / max(1, legs)
    points = tuple(
        (span.open_from_m + k * step_m, low_m if k % 2 else high_m) for k in range(legs + 1)
    )
    return Polyline(span.mark, "rope", points)


def _crank(span: CurtainSpan, panel: Panel, low_m: float) -> Symbol:
    mark = f"{span.mark}/crank"
    if panel.crank_end == "front":
        return Symbol(mark, "crank", (span.open_from_m, low_m), "crank", 1)
    return Symbol(mark, "crank", (span.open_to_m, low_m), "crank", -1)


def _frame(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield bows with their numbers, boards and end walls."""
    survey, boards = subject.survey, subject.tunnel.frame.boards[side]
    bays = [b - a for a, b in pairwise(survey.bows_m)]
    for index, at_m in enumerate(survey.bows_m):
        mark = f"bow/{index}"
        yield Line(mark, "bow", (at_m, 0.0, at_m, survey.height_m))
        room_m = bays[min(index, len(bays) - 1)]
        text = str(index + 1)
        yield Label(mark, "label", (at_m, 0.0), text, room_m, row=NUMBER_ROW, number=True)
    length_m, base_m, hip_m = survey.length_m, boards.baseboard_height_m, boards.hip_height_m
    baseboard = f"side/{side}/baseboard"
    yield Polygon(baseboard, "board", rectangle(0.0, 0.0, length_m, base_m))
    yield Line(baseboard, "board", (0.0, base_m, length_m, base_m))
    hip, ends = f"side/{side}/hip", (0.0, hip_m, length_m, hip_m)
    yield Line(hip, "hip", ends)
    yield Handle(hip, "hip", ends, (0.0, hip_m), "hip", "up")
    for number, at_m in enumerate((0.0, length_m)):
        if subject.tunnel.ends[number].film is not None:
            yield Line(f"end/{number}", "end wall", (at_m, 0.0, at_m, survey.height_m))


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


def _jumpers(subject: Subject, side: int) -> Iterator[Shape]:
    for jumper in subject.chosen.inflation.jumpers:
        if jumper.side == side:
            at = (jumper.at_m, _hip_m(subject, side))
            yield Symbol(jumper.mark, "jumper", at, "jumper")
