"""Curtains in the elevation of a side: film, bar or rod, edges, ropes, lines, and what turns them.

A curtain is drawn shut. Sizes that people see are to scale: the roll, the guide pipe down to its
foot in the ground, the extension pipe from the universal joint up to the handle, the drum.
"""

import math
from collections.abc import Iterator

from hoopwright.cover.cover import CurtainSpan
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.curtain.hung import NEAR_M
from hoopwright.farm.drive import GearedCrank, HandCrank, LineDrum
from hoopwright.farm.farm import Limits
from hoopwright.farm.side import Panel, SideKind
from hoopwright.papers.scene import (
    Dimension,
    Hatch,
    Label,
    Line,
    Polygon,
    Polyline,
    Shape,
    Style,
    Symbol,
    circle,
    rectangle,
)
from hoopwright.papers.subject import Subject

SEAL_INSET_M = 0.06
EDGE_M = 0.05
PROFILE_M = 0.04
JOINT_M = 0.06
OPENING_ROW = 2
NAMES: dict[SideKind, str] = {
    "roll_up": "Curtain",
    "drop_down": "Drop-down curtain",
    "woven": "Woven curtain",
}


def draw_curtains(subject: Subject, side: int) -> Iterator[Shape]:
    """Yield the curtains of one side, from the front to the back.

    Args:
        subject: What is drawn.
        side: 0 for the first side, 1 for the second.
    """
    panels = subject.tunnel.sides[side].panels
    works = {work.mark: work for work in subject.chosen.curtains}
    for span in subject.chosen.cover.curtains:
        if span.side == side:
            panel, work = panels[span.index], works[span.mark]
            yield from _film(subject, span)
            if work.kind == "drop_down":
                yield from _lift_lines(subject, span, work)
            else:
                yield from _bottom_edge(subject, span, panel)
                yield from _bar(subject, span, work)
            yield from _ropes(subject, span, panel, work.rope_legs)
            yield from _drive(subject, span, work)


def shut_heights(subject: Subject, side: int) -> tuple[float, float]:
    """Return where the film of a shut curtain ends, below and above, m over the ground."""
    boards, chosen = subject.tunnel.frame.boards[side], subject.tunnel.sides[side]
    drops = chosen.kind == "drop_down"
    low_m = boards.baseboard_height_m if drops else chosen.shut_height_m
    return low_m, boards.hip_height_m


def open_at(subject: Subject, work: CurtainWork) -> float:
    """Return where the bar or rod of an open curtain lies along the bow from its left base, m."""
    survey, side = subject.survey, work.side
    climbs = 1 if side == 0 else -1
    if work.kind == "drop_down":
        return survey.hip_at_m[side] - climbs * work.travel_m
    shut_m = subject.tunnel.sides[side].shut_height_m
    return survey.curve.position_at_height(shut_m, side) + climbs * work.travel_m


def _film(subject: Subject, span: CurtainSpan) -> Iterator[Shape]:
    """Yield the film of one curtain: area, hatch, seals, its name and its opening."""
    mark, kind = span.mark, subject.tunnel.sides[span.side].kind
    inflated = mark in {cell.place for cell in subject.chosen.inflation.cells}
    low_m, high_m = shut_heights(subject, span.side)
    style: Style = "inflated curtain" if inflated else "curtain"
    box = (span.from_m, low_m, span.to_m, high_m)
    yield Polygon(mark, style, rectangle(*box))
    yield Hatch(mark, style, box, -1 if inflated else 1)
    if kind == "woven":
        yield Hatch(mark, style, box, -1)
        yield Polygon(mark, "board", rectangle(span.from_m, high_m - PROFILE_M, span.to_m, high_m))
    if inflated:
        yield from _seals(subject, span, low_m, high_m)
    middle_m = (span.open_from_m + span.open_to_m) / 2
    width_m = span.open_to_m - span.open_from_m
    name, pressure = f"{NAMES[kind]} {span.index + 1}", subject.pressure(f"cell/{mark}")
    at, label = (middle_m, (low_m + high_m) / 2), f"{name} · {subject.size(span.length_m)}"
    if pressure:
        yield Label(mark, "cell", at, f"{name} · {pressure}", width_m, high_m - low_m)
    else:
        yield Label(mark, "label", at, label, width_m, high_m - low_m)
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


def _bar(subject: Subject, span: CurtainSpan, work: CurtainWork) -> Iterator[Shape]:
    """Yield the bar of a shut curtain, in its hem when the curtain is woven."""
    low_m, half_m = shut_heights(subject, span.side)[0], work.diameters_m[0] / 2
    if work.kind == "woven":
        hem = rectangle(span.from_m, low_m - half_m, span.to_m, low_m + half_m)
        yield Polygon(span.mark, "curtain", hem)
    yield Line(span.mark, "bar", (span.from_m, low_m, span.to_m, low_m))


def _bottom_edge(subject: Subject, span: CurtainSpan, panel: Panel) -> Iterator[Shape]:
    """Yield what closes the gap under the shut bar."""
    low_m = shut_heights(subject, span.side)[0]
    reach_m = low_m if panel.bottom == "skirt" else min(low_m, EDGE_M)
    corners = rectangle(span.from_m, low_m - reach_m, span.to_m, low_m)
    if panel.bottom == "skirt":
        yield Polygon(span.mark, "curtain", corners)
    elif panel.bottom == "hat_purlin":
        yield Polygon(span.mark, "board", corners)
    elif panel.bottom == "seal_profile":
        lip_m = low_m - reach_m
        yield Line(span.mark, "rope", (span.from_m, lip_m, span.to_m, lip_m))


def _lift_lines(subject: Subject, span: CurtainSpan, work: CurtainWork) -> Iterator[Shape]:
    """Yield the rod under the hip, and its lines down to where it lies when open."""
    rod_m = shut_heights(subject, span.side)[1] - EDGE_M
    open_m = subject.survey.curve.point_at(open_at(subject, work))[1]
    for at_m in (span.from_m, *_inner_bows(subject, span), span.to_m):
        yield Line(span.mark, "rope", (at_m, open_m, at_m, rod_m))
    yield Line(span.mark, "open", (span.from_m, open_m, span.to_m, open_m))
    yield Line(span.mark, "bar", (span.from_m, rod_m, span.to_m, rod_m))


def _ropes(subject: Subject, span: CurtainSpan, panel: Panel, legs: int) -> Iterator[Shape]:
    """Yield the wind rope in its zigzag, or the straps, each as many as the plan has."""
    low_m, high_m = shut_heights(subject, span.side)
    if not legs:
        return
    count = legs if panel.rope == "straps" else legs + 1
    spots = _spread(span.open_from_m, span.open_to_m, count)
    if subject.tunnel.sides[span.side].rope_step_m is None:
        spots = [span.open_from_m, *_inner_bows(subject, span), span.open_to_m]
    if panel.rope == "straps":
        yield from (Line(span.mark, "rope", (at_m, low_m, at_m, high_m)) for at_m in spots)
    else:
        points = tuple((at_m, low_m if k % 2 else high_m) for k, at_m in enumerate(spots))
        yield Polyline(span.mark, "rope", points)


def _spread(from_m: float, to_m: float, count: int) -> list[float]:
    """Return places at even steps, the first and last at the ends, m."""
    step_m = (to_m - from_m) / max(1, count - 1)
    return [from_m + k * step_m for k in range(count)]


def _inner_bows(subject: Subject, span: CurtainSpan) -> list[float]:
    """Return the bows between both ends of an opening, m."""
    low_m, high_m = span.open_from_m + NEAR_M, span.open_to_m - NEAR_M
    return [at_m for at_m in subject.survey.bows_m if low_m < at_m < high_m]


def _drive(subject: Subject, span: CurtainSpan, work: CurtainWork) -> Iterator[Shape]:
    """Yield the crank where it stands, with its guide pipe, extension pipe or drum."""
    mark, drive, limits = f"{span.mark}/crank", work.hung.drive, work.hung.limits
    low_m, hip_m = shut_heights(subject, span.side)
    at_m = _crank_at(span, work)
    if isinstance(drive, LineDrum):
        low_m = min(limits.handle_height_m, hip_m)
        yield Line(mark, "rope", (at_m, low_m, at_m, hip_m))
        yield Polygon(mark, "bar", circle((at_m, low_m), drive.drum_m / 2))
    elif isinstance(drive, GearedCrank):
        foot_m = -drive.guide_buried_m
        yield Line(mark, "crank", (at_m, foot_m, at_m, foot_m + work.guide_m))
    else:
        yield from _extension(span, work, drive, limits, low_m)
    yield Symbol(mark, "crank", (at_m, low_m), "crank", -1 if work.cranked == "back" else 1)


def _crank_at(span: CurtainSpan, work: CurtainWork) -> float:
    if work.cranked == "middle":
        return (span.from_m + span.to_m) / 2
    return span.open_from_m if work.cranked == "front" else span.open_to_m


def _extension(
    span: CurtainSpan, work: CurtainWork, drive: HandCrank, limits: Limits, low_m: float
) -> Iterator[Shape]:
    """Yield the universal joint at the end of the bar and the pipe from it to the handle."""
    mark, away = f"{span.mark}/crank", -1 if work.cranked == "front" else 1
    joint_m = span.from_m if work.cranked == "front" else span.to_m
    half_m = JOINT_M / 2
    box = (joint_m - half_m, low_m - half_m, joint_m + half_m, low_m + half_m)
    yield Polygon(mark, "crank", rectangle(*box))
    angle_rad = math.copysign(work.joint_angles_rad[0], limits.handle_height_m - low_m)
    along_m = away * drive.extension_m * math.cos(angle_rad)
    up_m = drive.extension_m * math.sin(angle_rad)
    yield Line(mark, "crank", (joint_m, low_m, joint_m + along_m, low_m + up_m))
