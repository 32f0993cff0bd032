"""Blocks and tables set one below the other on as many pages as they take."""

from collections.abc import Callable, Iterable, Sequence

from msgspec import Struct

from hoopwright.papers.form_page import MARGIN_MM, Page, Paper, Shape, moved

HEAD_MM = 10.0
"""Height of the title of a page."""


class Block(Struct, frozen=True):
    """What stays together; its shapes start at the left margin and at its own top.

    Attributes:
        height_mm: Height, mm.
        shapes: What is in it.
        begins_page: Whether it starts on a fresh page.
        room_mm: Room that must be left under it on its page, mm.
    """

    height_mm: float
    shapes: tuple[Shape, ...] = ()
    begins_page: bool = False
    room_mm: float = 0.0


def stacked(blocks: Iterable[Block]) -> Block:
    """Return blocks one below the other as one that stays together."""
    shapes: list[Shape] = []
    height = 0.0
    for block in blocks:
        shapes += moved(block.shapes, 0.0, height)
        height += block.height_mm
    return Block(height, tuple(shapes))


class Table(Struct, frozen=True):
    """Rows under a head, which is said again on every page.

    Attributes:
        head: Its head; the first row stays with it.
        rows: Its rows.
    """

    head: Block
    rows: tuple[Block, ...]


Titler = Callable[[int, int], Sequence[Shape]]
"""Gives the title of a page from its number and the number of all, at the top of the page."""


def fill_pages(
    parts: Iterable[Block | Table], paper: Paper, titler: Titler, foot: Block
) -> tuple[Page, ...]:
    """Return pages with blocks and tables in order.

    Args:
        parts: Blocks and tables.
        paper: Size of the paper.
        titler: Draws the title of a page.
        foot: What stands at the foot of the first page.

    Raises:
        ValueError: A block is higher than a page.
    """
    sheets = _Sheets(paper, foot.height_mm)
    for part in parts:
        if isinstance(part, Block):
            sheets.place(part)
        else:
            _place_table(sheets, part)
    count = len(sheets.filled)
    pages = []
    for number, shapes in enumerate(sheets.filled, 1):
        heading = moved(titler(number, count), MARGIN_MM, MARGIN_MM)
        at_foot: tuple[Shape, ...] = ()
        if number == 1:
            top = paper.height_mm - MARGIN_MM - foot.height_mm
            at_foot = moved(foot.shapes, MARGIN_MM, top)
        pages.append(Page(paper, (*heading, *shapes, *at_foot)))
    return tuple(pages)


def _place_table(sheets: "_Sheets", table: Table) -> None:
    for number, row in enumerate(table.rows):
        starts = number == 0 and not sheets.has_room(table.head.height_mm + row.height_mm)
        if starts or not sheets.has_room(row.height_mm):
            sheets.turn()
            sheets.place(table.head)
        elif number == 0:
            sheets.place(table.head)
        sheets.place(row)


class _Sheets:
    """Pages being filled from above."""

    def __init__(self, paper: Paper, foot_mm: float) -> None:
        self._paper = paper
        self._top = MARGIN_MM + HEAD_MM
        self._y, self._bottom = self._top, paper.height_mm - MARGIN_MM - foot_mm
        self.filled: list[list[Shape]] = [[]]

    def has_room(self, height_mm: float) -> bool:
        """Return whether something still fits on the page."""
        return self._y + height_mm <= self._bottom + 1e-6

    def turn(self) -> None:
        """Take a fresh page; there is no foot on it."""
        self.filled.append([])
        self._y, self._bottom = self._top, self._paper.height_mm - MARGIN_MM

    def place(self, block: Block) -> None:
        """Put a block below the last one, on a fresh page where it does not fit."""
        empty = not self.filled[-1]
        fits = self.has_room(block.height_mm + block.room_mm)
        if (block.begins_page or not fits) and not empty:
            self.turn()
        if not self.has_room(block.height_mm):
            raise ValueError(f"a block of {block.height_mm:.0f} mm is higher than a page")
        self.filled[-1] += moved(block.shapes, MARGIN_MM, self._y)
        self._y += block.height_mm
