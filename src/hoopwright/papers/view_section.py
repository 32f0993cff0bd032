"""The end section: the bow from outside, the layers on it, boards, roll bars and heights."""

import math
from collections.abc import Iterator
from functools import lru_cache
from itertools import accumulate, pairwise

from hoopwright.farm import Skin
from hoopwright.farm.profile import Profile
from hoopwright.farm.side import MOVING
from hoopwright.papers.scene import (
    Dimension,
    Line,
    Point,
    Polygon,
    Polyline,
    Shape,
    View,
    rectangle,
)
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_air import CELL_INSET_M, pressure_label
from hoopwright.papers.view_curtain import shut_heights
from hoopwright.papers.view_section_side import draw_section_side, path_along, pushed_out
from hoopwright.quantity.remembered import Remembered
from hoopwright.survey import Survey
from hoopwright.survey.bow_curve import bow_curve

GROUND_REACH_M = 0.5
TEXT_SHARE = 0.8


def draw_section(subject: Subject) -> View:
    """Return the section behind the front end wall, the first side at the left.

    Args:
        subject: What is drawn.
    """
    survey = subject.survey
    half_m = survey.width_m / 2
    first, second = (side.name for side in subject.tunnel.sides)
    left_m, right_m = -half_m - GROUND_REACH_M, half_m + GROUND_REACH_M
    return View(
        name="section",
        title=f"End section · {first} at the left",
        described=f"End section seen from the front: {first} at the left, {second} at the right. "
        f"Ridge {subject.size(survey.height_m)}, width {subject.size(survey.width_m)}.",
        box=(left_m, 0.0, right_m, survey.height_m + _gap_m(subject)),
        shapes=(
            *draw_end_wall(subject, 0),
            Line("", "ground", (left_m, 0.0, right_m, 0.0)),
            Polyline("frame", "bow", bow_middle(subject.tunnel.frame.profile)),
            *_roof(subject),
            *draw_end_cell(subject, 0),
            *draw_section_side(subject, 0),
            *draw_section_side(subject, 1),
            *_dimensions(subject),
        ),
    )


def _gap_m(subject: Subject) -> float:
    """Return the air gap at the ridge, m; 0 with one layer."""
    skin = subject.tunnel.skin
    return skin.inflation_gap_m if skin.roof.count == 2 else 0.0


@lru_cache(maxsize=16)
def bow_middle(profile: Profile) -> tuple[Point, ...]:
    """Return the middle of the bow's tube; the film lies half a tube outside it, m."""
    curve = bow_curve(profile, 0.0)
    return path_along(curve, 0.0, curve.length_m)


def _blown(path: tuple[Point, ...], gap_m: float) -> tuple[Point, ...]:
    """Return the path blown outward: not at its ends, by the gap in its middle, m.

    Source:
        A sine over the length, for the picture only; film sizes do not come from here.
    """
    runs = [0.0, *accumulate(math.dist(a, b) for a, b in pairwise(path))]
    lifts_m = [gap_m * math.sin(math.pi * run / runs[-1]) for run in runs]
    return (path[0], *pushed_out(path, lifts_m)[1:-1], path[-1])


def draw_end_wall(subject: Subject, number: int) -> Iterator[Shape]:
    """Yield what closes an end wall, and its doors, vents and fan openings, seen from outside.

    Args:
        subject: What is drawn.
        number: 0 for the front end, 1 for the back.
    """
    wall = subject.chosen.cover.ends[number]
    if wall.closed != "open":
        yield Polygon(wall.mark, "rigid" if wall.rigid else "end wall", wall.outline_m)
    if wall.rigid is not None:
        for column in wall.rigid.columns[1:]:
            yield Line(wall.mark, "rigid", (column.left_m, 0.0, column.left_m, column.left_high_m))
        for lap in wall.rigid.laps:
            yield Line(wall.mark, "rigid", (lap.left_m, lap.at_m, lap.right_m, lap.at_m))
    for opening in wall.openings:
        box = opening.box
        corners = rectangle(box.left_m, box.low_m, box.right_m, box.high_m)
        yield Polygon(opening.mark, "door", corners)


def draw_end_cell(subject: Subject, number: int) -> Iterator[Shape]:
    """Yield the cell of an end wall, when it is inflated, with its pressure when asked.

    Args:
        subject: What is drawn.
        number: 0 for the front end, 1 for the back.
    """
    survey, mark = subject.survey, f"cell/end/{number}"
    if mark in {cell.mark for cell in subject.chosen.inflation.cells}:
        wall = subject.chosen.cover.ends[number].outline_m
        path = pushed_out(wall, (-CELL_INSET_M,) * len(wall))
        yield Polyline(mark, "cell", (*path, path[0]))
        at = (0.0, TEXT_SHARE * survey.height_m)
        yield from pressure_label(subject, mark, at, survey.width_m)


def _roof(subject: Subject) -> Iterator[Shape]:
    skin = subject.tunnel.skin
    inner, outer = _films(subject.survey, skin)
    marks = {p.layer: p.mark for p in subject.chosen.cover.pieces if _on_roof(p.areas)}
    if skin.roof.count == 2:
        yield Polyline(marks.get("inner", "roof"), "roof inner", inner)
    yield Polyline(marks.get("outer", marks.get("single", "roof")), "roof", outer)


def _lay_films(survey: Survey, skin: Skin) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """Return the inner and the outer film of the roof; with one layer both are the same."""
    path = path_along(survey.curve, *survey.hip_at_m)
    return path, _blown(path, skin.inflation_gap_m) if skin.roof.count == 2 else path


_films = Remembered(_lay_films)


def _on_roof(areas: tuple[object, ...]) -> bool:
    return any(getattr(area, "surface", "") == "roof" for area in areas)


def _dimensions(subject: Subject) -> Iterator[Shape]:
    """Yield span, ridge, openings and hips; the second side only where it differs."""
    survey, tunnel = subject.survey, subject.tunnel
    half_m = tunnel.frame.profile.span_m / 2
    yield Dimension("frame", (-half_m, 0.0, half_m, 0.0), 1, subject.size(2 * half_m))
    yield from _side_dimensions(subject, 0, -1)
    row = 1
    if _heights(subject, 0) != _heights(subject, 1):
        yield from _side_dimensions(subject, 1, 1)
        row = 3
    ends = (survey.width_m / 2, 0.0, 0.0, survey.height_m)
    yield Dimension("frame", ends, row, subject.size(survey.height_m))


def _heights(subject: Subject, side: int) -> tuple[str, float, float]:
    return subject.tunnel.sides[side].kind, *shut_heights(subject, side)


def _side_dimensions(subject: Subject, side: int, sign: int) -> Iterator[Shape]:
    """Yield opening and hip height of one side, outside it."""
    kind, low_m, hip_m = _heights(subject, side)
    survey = subject.survey
    hip_x = survey.curve.point_at(survey.hip_at_m[side])[0]
    row = 1
    if kind in MOVING:
        foot_x = survey.curve.point_at(survey.curve.position_at_height(low_m, side))[0]
        ends = (foot_x, low_m, hip_x, hip_m)
        yield Dimension(f"side/{side}", ends, sign * row, subject.size(hip_m - low_m))
        row = 2
    ends = (sign * survey.width_m / 2, 0.0, hip_x, hip_m)
    yield Dimension(f"side/{side}/hip", ends, sign * row, subject.size(hip_m))
