"""The drawing on the measuring sheet: what is measured from where to where, not to scale.

It is drawn 190 mm wide. The numbers are those of the boxes: 1 to 11 the columns of the bows, 12 to
19 lengths, diagonals and end bows.
"""

import math
from itertools import pairwise

from hoopwright.papers.form_page import Align, Badge, Head, Ink, Shape, Spot, Stroke, Text, moved

WIDTH_MM, HEIGHT_MM = 190.0, 76.5

LEVEL_MM, LEG_TOP_MM = 60.0, 37.0
MIDDLE_MM, HALF_MM, RISE_MM = 52.0, 27.0, 24.0
HIP_MM, BASE_MM = 39.0, 53.0
OVER_HIPS_MM, OVER_BASES_MM = 4.5, 9.5
CORNERS = 40

PLAN = (118.0, 184.0, 11.0, 33.0)
"""Left, right, upper and lower edge of the plan, mm."""
RIDGE = (120.0, 176.0, 52.0, 69.5)
"""First and last foot, ridge and ground of the view from the side, mm."""


def frame_drawing() -> tuple[Shape, ...]:
    """Return section, plan and view from the side, with the numbers of what is measured."""
    return (*_section(), *_plan(), *_ridge())


def _words(left: float, top: float, width: float, words: str, align: Align = "centre") -> Text:
    return Text(left, top, width, 4.4 * (words.count("\n") + 1), words, align=align)


def _line(*points: Spot, width: float = 0.25, ink: Ink = "black", dashed: bool = False) -> Stroke:
    return Stroke(points, width, ink, dashed)


def _arrow(start: Spot, end: Spot, head: Head = "both") -> Stroke:
    return Stroke((start, end), 0.25, head=head)


def _over(offset: float, foot: float) -> tuple[Spot, ...]:
    """Return a line over the bow, so far outside of it, that ends at a height on both sides."""
    turns = (math.pi * n / CORNERS for n in range(CORNERS + 1))
    arc = tuple(
        (
            MIDDLE_MM - (HALF_MM + offset) * math.cos(turn),
            LEG_TOP_MM - (RISE_MM + offset) * math.sin(turn),
        )
        for turn in turns
    )
    return ((arc[0][0], foot), *arc, (arc[-1][0], foot))


def _section() -> tuple[Shape, ...]:
    left, right = MIDDLE_MM - HALF_MM, MIDDLE_MM + HALF_MM
    top = LEG_TOP_MM - RISE_MM
    sides = (*_section_side(5, True), *_section_side(8, False))
    return (
        _line((left - 3, LEVEL_MM), (right + 3, LEVEL_MM), ink="grey"),
        Stroke(_over(0.0, LEVEL_MM + 4), 1.3, "grey"),
        Stroke(_over(OVER_HIPS_MM, HIP_MM), 0.3, head="both"),
        Stroke(_over(OVER_BASES_MM, BASE_MM), 0.3, head="both"),
        Badge(3, (MIDDLE_MM - 8, top - OVER_HIPS_MM + 1.0)),
        Badge(4, (MIDDLE_MM + 8, top - OVER_BASES_MM + 0.6)),
        _words(left + 4, 19.5, 2 * HALF_MM - 8, "tape or line over the\noutside of the bow,"),
        _words(left + 4, 28.3, 2 * HALF_MM - 8, "fixing to fixing"),
        _words(left + 4, HIP_MM - 2.2, 44, "top of hip board", "left"),
        _words(left + 4, BASE_MM - 2.2, 44, "top of baseboard", "left"),
        _words(left + 2, LEVEL_MM + 0.4, 2 * HALF_MM - 4, "one level line: zero"),
        *sides,
        _words(0, 70.4, 44, "first side"),
        _words(2 * MIDDLE_MM - 44, 70.4, 44, "second side"),
    )


def _section_side(number: int, first: bool) -> tuple[Shape, ...]:
    """Return boards, ground and heights of one side; the second is the first seen in a mirror."""

    def at(x: float, y: float) -> Spot:
        return (x if first else 2 * MIDDLE_MM - x, y)

    foot = MIDDLE_MM - HALF_MM
    boards = tuple(
        Stroke(
            (
                at(foot - 0.8, y),
                at(foot - 2.6, y),
                at(foot - 2.6, y + 4.5),
                at(foot - 0.8, y + 4.5),
            ),
            ink="black",
            filled=True,
        )
        for y in (HIP_MM, BASE_MM)
    )
    hip_x, base_x, ground_x = 11.0, 5.0, 17.5
    ground = LEVEL_MM + 5.0
    return (
        *boards,
        _line(at(0, LEVEL_MM), at(foot - 3, LEVEL_MM), ink="grey", dashed=True),
        _line(at(foot, LEVEL_MM), at(foot - 3, ground - 0.6), at(0, ground + 0.4), width=0.5),
        _line(at(hip_x - 1.5, HIP_MM), at(foot - 3, HIP_MM)),
        _line(at(base_x - 1.5, BASE_MM), at(foot - 3, BASE_MM)),
        _arrow(at(hip_x, LEVEL_MM), at(hip_x, HIP_MM)),
        _arrow(at(base_x, LEVEL_MM), at(base_x, BASE_MM)),
        _arrow(at(ground_x, LEVEL_MM), at(ground_x, ground), "end"),
        Badge(number, at(hip_x, (HIP_MM + BASE_MM) / 2)),
        Badge(number + 1, at(base_x - 1.5, BASE_MM - 4)),
        Badge(number + 2, at(ground_x, ground + 2.8)),
    )


def _plan() -> tuple[Shape, ...]:
    left, right, top, bottom = PLAN
    corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    step = (right - left) / 8
    bows = (_line((left + n * step, top), (left + n * step, bottom), ink="grey") for n in range(9))
    third = (right - left) / 4, (bottom - top) / 4
    return (
        *bows,
        _line(*corners, width=0.6),
        _arrow((left, top), (right, bottom)),
        _arrow((left, bottom), (right, top)),
        Badge(16, (left + third[0], top + third[1])),
        Badge(17, (left + third[0], bottom - third[1])),
        _arrow((left, top - 4.5), (right, top - 4.5)),
        Badge(12, (left + 21, top - 4.5)),
        Badge(14, (left + 29, top - 4.5)),
        _words(left + 33, top - 9.6, 34, "first side", "left"),
        _arrow((left, bottom + 4.5), (right, bottom + 4.5)),
        Badge(13, (left + 29, bottom + 4.5)),
        Badge(15, (left + 37, bottom + 4.5)),
        _words(left + 41, bottom + 5.2, 30, "second side", "left"),
        _arrow((left, bottom + 9.5), (left + 2 * step, bottom + 9.5), "end"),
        _line((left, bottom + 3.5), (left, bottom + 10.5)),
        Badge(2, (left + step, bottom + 9.5)),
        Text(left - 5, top, 4.5, bottom - top, "front", align="centre", turned=True),
        Text(right + 0.6, top, 4.5, bottom - top, "back", align="centre", turned=True),
        Badge(1, (left - 7.6, top + 1)),
    )


def _ridge() -> tuple[Shape, ...]:
    front, back, ridge, ground = RIDGE
    middle = (front + back) / 2
    dips = (0.0, 1.6, 3.0, 4.2, 4.6, 4.2, 3.0, 1.6, 0.0)
    step = (back - front) / 8
    leans = (-3.0, 0, 0, 0, 0, 0, 0, 0, 3.0)
    tops = [(front + n * step + leans[n], ridge + dips[n]) for n in range(9)]
    bows = (Stroke(((front + n * step, ground), spot), 0.8, "grey") for n, spot in enumerate(tops))
    runs = tuple(_line(a, b, width=0.4) for a, b in pairwise(tops))
    return (
        *bows,
        *runs,
        _line((front - 8, ground), (back + 8, ground), width=0.5),
        _line(tops[0], tops[-1], dashed=True),
        _words(middle - 8, ridge - 8.4, 46, "string over the ridge", "left"),
        _arrow((middle, ridge - 3.8), (middle, ridge), "end"),
        _arrow((middle, ridge + 8.6), (middle, ridge + 4.6), "end"),
        Badge(11, (middle, ridge + 11.3)),
        *_lean(18, front, -1),
        *_lean(19, back, 1),
        _words(front, ground + 0.8, back - front, "the ridge from one side"),
    )


def _lean(number: int, foot: float, way: int) -> tuple[Shape, ...]:
    _front, _back, ridge, ground = RIDGE
    return (
        _line((foot, ground), (foot, ridge - 4.5), ink="grey", dashed=True),
        _line((foot + 3 * way, ridge), (foot + 3 * way, ridge - 4.5), ink="grey"),
        _arrow((foot + 8 * way, ridge - 2.5), (foot + 3 * way, ridge - 2.5), "end"),
        _arrow((foot - 5 * way, ridge - 2.5), (foot, ridge - 2.5), "end"),
        Badge(number, (foot + 10.7 * way, ridge - 2.5)),
    )


def centred(shapes: tuple[Shape, ...], width_mm: float) -> tuple[Shape, ...]:
    """Return a drawing of 190 mm in the middle of a wider area."""
    return moved(shapes, (width_mm - WIDTH_MM) / 2, 0.0)
