"""A drawing as a value: shapes in metres, y up, each with its style and what it shows.

Whoever draws it (the window on a screen, a sheet on paper) chooses colours, line widths, sizes of
text and symbols, and the step of hatches, so the same description serves both. Text, symbols,
grips and the distance of dimension lines have no size in metres.
"""

import math
from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

Point = tuple[float, float]
Box = tuple[float, float, float, float]
Segment = tuple[float, float, float, float]

Style = Literal[
    "ground",
    "roof inner",
    "roof",
    "tail",
    "pocket",
    "strip",
    "end wall",
    "rigid",
    "rail",
    "door",
    "curtain",
    "inflated curtain",
    "bow",
    "ridge",
    "board",
    "kept",
    "repaired",
    "cell",
    "seal",
    "rope",
    "open",
    "bar",
    "hip",
    "unread",
    "seam",
    "split",
    "proposed",
    "crank",
    "jumper",
    "blower",
    "dimension",
    "label",
]
"""Names of the palette table, from what is drawn first to what is drawn last.

What has the style "open" is the outline of a roll or rod where it lies when the curtain is open;
"proposed" is a split that is offered and not chosen. "kept" and "repaired" is what stays of the
old skin. "unread" is a height interpolated between bows where it was read. "dimension" is also the
line at which a view is broken off.
"""

STYLES: tuple[Style, ...] = Style.__args__  # type: ignore[attr-defined]  # known at run time only

Align = Literal["left", "centre", "right"]
SymbolKind = Literal["crank", "jumper", "blower", "roll into", "roll out"]
GripWay = Literal["along", "up", "both"]
GripKind = Literal["split", "seam", "hip", "jumper", "opening"]


_CORNERS = 24
_ROUND = tuple(
    (math.cos(2 * math.pi * k / _CORNERS), math.sin(2 * math.pi * k / _CORNERS))
    for k in range(_CORNERS)
)


class Line(Struct, frozen=True):
    """A straight line.

    Attributes:
        mark: What it shows.
        style: Name in the palette table.
        ends: x and y of one end, x and y of the other, m.
    """

    mark: str
    style: Style
    ends: Segment


class Polyline(Struct, frozen=True):
    """A line through points.

    Attributes:
        mark: What it shows.
        style: Name in the palette table.
        points: Its points, m.
    """

    mark: str
    style: Style
    points: tuple[Point, ...]


class Polygon(Struct, frozen=True):
    """A filled area.

    Attributes:
        mark: What it shows.
        style: Name in the palette table.
        points: Its corners, m.
    """

    mark: str
    style: Style
    points: tuple[Point, ...]


class Hatch(Struct, frozen=True):
    """An upright rectangle filled with slanted lines.

    Attributes:
        mark: What it shows.
        style: Name in the palette table.
        box: Left, bottom, right and top, m.
        slant: 1 for lines that rise to the right, -1 for lines that fall.
    """

    mark: str
    style: Style
    box: Box
    slant: Literal[1, -1]


class Label(Struct, frozen=True):
    """A text.

    Attributes:
        mark: What it names.
        style: Name in the palette table.
        at: Its middle, or its left or right end, m.
        text: The text.
        room_m: Width it has; it is left out when that is too narrow to read.
        height_m: Height it has; when that is too low the text stands above the box.
        align: Which part of it is at `at`.
        row: How many rows of text it stands below `at`.
        number: Whether it counts bows: where they stand too close only some are shown.
    """

    mark: str
    style: Style
    at: Point
    text: str
    room_m: float = math.inf
    height_m: float = math.inf
    align: Align = "centre"
    row: int = 0
    number: bool = False


class Dimension(Struct, frozen=True):
    """A dimension line between two points, level or upright.

    Attributes:
        mark: What it measures.
        ends: The measured points: x and y of one, x and y of the other, m.
        row: How many rows of text it stands off: below a level pair, left of an upright one
            when negative, right of it when positive.
        text: The size as printed.
        style: Name in the palette table.
    """

    mark: str
    ends: Segment
    row: int
    text: str
    style: Style = "dimension"


class Symbol(Struct, frozen=True):
    """A thing too small to be drawn to scale.

    Attributes:
        mark: What it shows.
        style: Name in the palette table.
        at: Where it is, m.
        kind: Which symbol.
        facing: 1 or -1: towards which side it is drawn, along x.
    """

    mark: str
    style: Style
    at: Point
    kind: SymbolKind
    facing: Literal[1, -1] = 1


class Handle(Struct, frozen=True):
    """A place that can be taken and moved.

    Attributes:
        mark: What is moved.
        style: Name in the palette table.
        ends: The line that moves, m.
        grip: The point where its grip is drawn, m.
        kind: Which grip; a jumper is its own.
        way: Whether it moves along x, up and down, or both ways.
    """

    mark: str
    style: Style
    ends: Segment
    grip: Point
    kind: GripKind
    way: GripWay


Shape = Line | Polyline | Polygon | Hatch | Label | Dimension | Symbol | Handle


class View(Struct, frozen=True):
    """One view of the tunnel, or of a sheet on the bench.

    Attributes:
        name: `first_side`, `plan`, `second_side`, `section`, `front_end`, `back_end`, or `seals`.
        title: What stands above it.
        described: What it shows, for those who cannot see it.
        box: Left, bottom, right and top of everything but texts, m.
        shapes: What is drawn.
    """

    name: str
    title: str
    described: str
    box: Box
    shapes: tuple[Shape, ...]


def rectangle(left_m: float, bottom_m: float, right_m: float, top_m: float) -> tuple[Point, ...]:
    """Return the corners of an upright rectangle, m."""
    return ((left_m, bottom_m), (right_m, bottom_m), (right_m, top_m), (left_m, top_m))


def circle(centre: Point, radius_m: float) -> tuple[Point, ...]:
    """Return the corners of a polygon that looks like a circle, m."""
    x, y = centre
    return tuple((x + radius_m * across, y + radius_m * up) for across, up in _ROUND)


def hatch_lines(box: Box, step_m: float, slant: Literal[1, -1]) -> list[Segment]:
    """Return the lines of a hatch, cut to its rectangle.

    The lines lie at 45 degrees on one grid for the whole drawing, so that neighbours meet and a
    rectangle that grows does not make the others flicker.

    Args:
        box: Left, bottom, right and top, m.
        step_m: From line to line along the edge, m, above zero.
        slant: 1 for lines that rise to the right, -1 for lines that fall.

    Returns:
        Ends of each line, m.

    Source:
        Derived here: a line of slope s has one value of x - s y; it is cut at top and bottom.
    """
    left, bottom, right, top = box
    if not (step_m > 0 and right > left and top > bottom):
        return []
    corners = [x - slant * y for x in (left, right) for y in (bottom, top)]
    found: list[Segment] = []
    for number in range(math.ceil(min(corners) / step_m), math.floor(max(corners) / step_m) + 1):
        foot = number * step_m
        low, high = sorted(((left - foot) * slant, (right - foot) * slant))
        low, high = max(low, bottom), min(high, top)
        if high > low:
            found.append((foot + slant * low, low, foot + slant * high, high))
    return found


def bounds(shapes: Sequence[Shape]) -> Box:
    """Return left, bottom, right and top of shapes that have a size in metres.

    Raises:
        ValueError: None of them has one.
    """
    points = [p for shape in shapes for p in points_of(shape)]
    across, up = [p[0] for p in points], [p[1] for p in points]
    return min(across), min(up), max(across), max(up)


def points_of(shape: Shape) -> tuple[Point, ...]:
    """Return the points that a shape stands on, m; none for a text or a dimension."""
    if isinstance(shape, Polyline | Polygon):
        return shape.points
    if isinstance(shape, Line | Handle):
        return (shape.ends[:2], shape.ends[2:])
    if isinstance(shape, Hatch):
        return (shape.box[:2], shape.box[2:])
    return (shape.at,) if isinstance(shape, Symbol) else ()
