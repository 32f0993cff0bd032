"""An end wall seen from outside: what closes it, rails, seams, doors, vents and fans."""

from collections.abc import Iterator

from hoopwright.cover.end_laid import Crossing, EndLaid, Opening
from hoopwright.papers.scene import (
    Dimension,
    GripKind,
    GripWay,
    Handle,
    Label,
    Line,
    Point,
    Polyline,
    Shape,
    Style,
    View,
)
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_section import (
    GROUND_REACH_M,
    bow_middle,
    draw_end_cell,
    draw_end_wall,
)

CLOSED = {"film": "film", "rigid": "rigid sheets", "open": "not closed"}
HEIGHT_ROWS = 3
LEAST_ROOM_M = 1.6


def draw_end(subject: Subject, number: int) -> View:
    """Return one end wall seen from outside: at the back end the second side is at the left.

    Args:
        subject: What is drawn.
        number: 0 for the front end, 1 for the back.
    """
    wall, end = subject.chosen.cover.ends[number], subject.tunnel.ends[number]
    names = [side.name for side in subject.tunnel.sides]
    first, second = names if number == 0 else reversed(names)
    left_m, right_m = _sides(wall)
    box = (left_m - GROUND_REACH_M, 0.0, right_m + GROUND_REACH_M, wall.height_m)
    return View(
        name=("front_end", "back_end")[number],
        title=f"{end.name} · {first} at the left",
        described=f"{end.name} seen from outside: {first} at the left, {second} at the right. "
        f"{CLOSED[wall.closed].capitalize()}; {_told(subject, wall)}.",
        box=box,
        shapes=(
            *draw_end_wall(subject, number),
            Line("", "ground", (box[0], 0.0, box[2], 0.0)),
            Polyline("frame", "bow", _middle(subject, number)),
            *_crossings(wall.rails, "rail", "hip"),
            *_crossings(wall.seams, "seam", "seam"),
            *draw_end_cell(subject, number),
            *(shape for opening in wall.openings for shape in _opening(subject, opening)),
            *_dimensions(subject, wall),
        ),
    )


def _told(subject: Subject, wall: EndLaid) -> str:
    """Return openings, rails and seams in words."""
    found = [
        f"{opening_name(opening)} {subject.size(opening.width_m)} wide, "
        f"{subject.size(opening.height_m)} high"
        for opening in wall.openings
    ]
    found += [f"rail at {subject.size(rail.at_m)}" for rail in wall.rails]
    found += [f"seam at {subject.size(seam.at_m)}" for seam in wall.seams]
    return ", ".join(found) or "no opening"


def opening_name(opening: Opening) -> str:
    """Return what an opening is called: doors, vents and fans are numbered each for themselves."""
    return f"{opening.use} {opening.number + 1}"


def _sides(wall: EndLaid) -> tuple[float, float]:
    across = [x for x, _y in wall.outline_m]
    return min(across), max(across)


def _middle(subject: Subject, number: int) -> tuple[Point, ...]:
    """Return the middle of the bow's tube, seen from outside."""
    points = bow_middle(subject.tunnel.frame.profile)
    return points if number == 0 else tuple((-x, y) for x, y in reversed(points))


def _crossings(lines: tuple[Crossing, ...], style: Style, kind: GripKind) -> Iterator[Shape]:
    """Yield rails or seams with their grips, those of rails at the left, those of seams right."""
    share = 0.04 if style == "rail" else 0.96
    for line in lines:
        ends = (line.left_m, line.at_m, line.right_m, line.at_m)
        yield Line(line.mark, style, ends)
        grip = (line.left_m + share * (line.right_m - line.left_m), line.at_m)
        yield Handle(line.mark, style, ends, grip, kind, "up")


def _opening(subject: Subject, opening: Opening) -> Iterator[Shape]:
    """Yield name, size and grip of an opening."""
    box = opening.box
    centre = ((box.left_m + box.right_m) / 2, (box.low_m + box.high_m) / 2)
    foot = (box.left_m, box.low_m, box.right_m, box.low_m)
    way: GripWay = "along" if opening.use == "door" else "both"
    yield Handle(opening.mark, "door", foot, centre, "opening", way)
    room_m = max(LEAST_ROOM_M, 1.5 * opening.width_m)
    size = f"{subject.size(opening.width_m)} × {subject.size(opening.height_m)}"
    text = f"{opening_name(opening).capitalize()} · {size}"
    yield Label(opening.mark, "label", (centre[0], box.high_m), text, room_m, 0.0)


def _dimensions(subject: Subject, wall: EndLaid) -> Iterator[Shape]:
    """Yield width at the ground, height of the ridge, and the heights of the lowest rails."""
    left_m, right_m = _sides(wall)
    foot = (wall.outline_m[0][0], 0.0, wall.outline_m[-1][0], 0.0)
    yield Dimension("frame", foot, 1, subject.size(foot[2] - foot[0]))
    ends = (right_m, 0.0, 0.0, wall.height_m)
    yield Dimension("frame", ends, 1, subject.size(wall.height_m))
    heights = {round(line.at_m, 4): line for line in (*wall.rails, *wall.seams)}
    for row, line in enumerate([heights[y] for y in sorted(heights)][:HEIGHT_ROWS], start=1):
        upright = (left_m, 0.0, line.left_m, line.at_m)
        yield Dimension(line.mark, upright, -row, subject.size(line.at_m))
