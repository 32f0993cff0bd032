"""A form to fill in by pencil, as a value: texts, boxes, lines and numbers on pages of paper.

Everything is in millimetres from the upper left corner, y down. Whoever paints it chooses the font;
a text says its size and the room it has.
"""

from collections.abc import Iterable
from typing import Literal, get_args

import msgspec
from msgspec import Struct

Spot = tuple[float, float]
FieldPath = tuple[str | int, ...]

PaperName = Literal["letter", "a4"]
PAPER_NAMES: tuple[PaperName, ...] = get_args(PaperName)
Ink = Literal["black", "grey", "light"]
"""What is read, what stands aside, and what only guides the pencil."""

Align = Literal["left", "centre", "right"]
Head = Literal["none", "end", "both"]

MARGIN_MM = 10.0
LEAST_BOX_MM = 8.0
"""Least height of a box; room for a pencil in a glove. Common practice, no published source."""
TEXT_PT = 10.0
LINE_MM = 4.3
"""From line to line of text of 10 points."""
LETTER_MM = 1.95
"""Width that one letter of 10 points is given when lines are counted; wide faces take as much."""


class Paper(Struct, frozen=True):
    """One size of paper, upright.

    Attributes:
        name: Its name.
        width_mm: Width, mm.
        height_mm: Height, mm.
    """

    name: PaperName
    width_mm: float
    height_mm: float

    @property
    def inner_mm(self) -> float:
        """Return the width between the margins, mm."""
        return self.width_mm - 2 * MARGIN_MM


PAPERS: dict[PaperName, Paper] = {
    "letter": Paper("letter", 215.9, 279.4),
    "a4": Paper("a4", 210.0, 297.0),
}
"""Source: ANSI/ASME Y14.1 size A, 8.5 by 11 in; ISO 216 size A4. From memory."""


class Text(Struct, frozen=True):
    """Words in an area, broken into lines where they are too long.

    Attributes:
        left: Left edge of the area, mm.
        top: Upper edge, mm.
        width: Width, mm.
        height: Height, mm.
        words: What is said.
        size_pt: Size of the letters, points.
        bold: Whether they are bold.
        ink: How dark they are.
        align: Where the lines stand from left to right.
        raised: Whether they begin at the top; else they stand in the middle of the height.
        turned: Whether they are read from below; the area is then that of the turned words.
    """

    left: float
    top: float
    width: float
    height: float
    words: str
    size_pt: float = TEXT_PT
    bold: bool = False
    ink: Ink = "black"
    align: Align = "left"
    raised: bool = False
    turned: bool = False


class Box(Struct, frozen=True):
    """A box to write or tick in.

    Attributes:
        field: What is entered from it: the path inside a tunnel, with the number of a bow, or 0
            where that is not known; what stands on the paper alone begins with "paper".
        left: Left edge, mm.
        top: Upper edge, mm.
        width: Width, mm.
        height: Height, mm.
        entered: What is known already, printed small in its corner, or "".
        heavy: Whether its frame is heavy.
    """

    field: FieldPath
    left: float
    top: float
    width: float
    height: float
    entered: str = ""
    heavy: bool = False


class Stroke(Struct, frozen=True):
    """A line through points.

    Attributes:
        points: Its points, mm.
        width: Width of the line, mm.
        ink: How dark it is.
        dashed: Whether it is dashed.
        head: Whether it has arrow heads.
        filled: Whether the area inside is filled.
    """

    points: tuple[Spot, ...]
    width: float = 0.25
    ink: Ink = "black"
    dashed: bool = False
    head: Head = "none"
    filled: bool = False


class Badge(Struct, frozen=True):
    """A number in a circle: what is measured here is written under the same number.

    Attributes:
        number: The number.
        centre: Its middle, mm.
    """

    number: int
    centre: Spot


BADGE_MM = 2.7
"""Radius of a badge."""

Shape = Text | Box | Stroke | Badge


class Page(Struct, frozen=True):
    """One page.

    Attributes:
        paper: Its size.
        shapes: What is on it.
    """

    paper: Paper
    shapes: tuple[Shape, ...]

    @property
    def boxes(self) -> tuple[Box, ...]:
        """Return its boxes in the order in which they are filled in."""
        return tuple(shape for shape in self.shapes if isinstance(shape, Box))


def moved(shapes: Iterable[Shape], right: float, down: float) -> tuple[Shape, ...]:
    """Return shapes moved over the page, mm."""
    return tuple(_moved(shape, right, down) for shape in shapes)


def _moved(shape: Shape, right: float, down: float) -> Shape:
    if isinstance(shape, Stroke):
        points = tuple((x + right, y + down) for x, y in shape.points)
        return msgspec.structs.replace(shape, points=points)
    if isinstance(shape, Badge):
        x, y = shape.centre
        return Badge(shape.number, (x + right, y + down))
    return msgspec.structs.replace(shape, left=shape.left + right, top=shape.top + down)


def lines_of(words: str, width_mm: float) -> int:
    """Return how many lines of 10 points some words take at most, counted by their letters."""
    room = max(1, int(width_mm / LETTER_MM))
    count = 0
    for paragraph in words.split("\n"):
        used, lines = 0, 1
        for word in paragraph.split():
            if used and used + 1 + len(word) > room:
                lines, used = lines + 1, len(word)
            else:
                used += len(word) + bool(used)
        count += lines
    return count
