"""Tables of boxes: columns under numbered heads, one box for each thing to write."""

from collections.abc import Sequence
from itertools import accumulate

from msgspec import Struct

from hoopwright.papers.form_flow import Block, Table
from hoopwright.papers.form_page import (
    BADGE_MM,
    LINE_MM,
    Badge,
    Box,
    FieldPath,
    Shape,
    Stroke,
    Text,
)

ROW_MM = 9.0
GROUP_MM = 5.5
NUMBER_MM = 2 * BADGE_MM + 0.8
UNIT_MM = 4.5
MARK_MM = 1.6


class Column(Struct, frozen=True):
    """One column.

    Attributes:
        words: Its head, with a line break where it may break.
        share: Its width, as a share of all.
        number: Its number on the drawing, or 0.
        unit: Unit to write in, or "".
        group: What is said over it and its neighbours of the same group, or "".
    """

    words: str
    share: float
    number: int = 0
    unit: str = ""
    group: str = ""


class Cell(Struct, frozen=True):
    """What stands in one column of a row.

    Attributes:
        field: Path of what is written into it, or () where words are printed.
        text: What is printed, or what is known of the field already.
    """

    field: FieldPath
    text: str = ""


class Row(Struct, frozen=True):
    """One row.

    Attributes:
        cells: A cell for each column.
        marked: Whether this row goes before others.
    """

    cells: tuple[Cell, ...]
    marked: bool = False


def grid(width_mm: float, columns: Sequence[Column], rows: Sequence[Row]) -> Table:
    """Return a table of boxes.

    Args:
        width_mm: Width of the table, mm.
        columns: Its columns.
        rows: Its rows, a cell for each column.
    """
    whole = sum(column.share for column in columns)
    edges = list(accumulate((width_mm * c.share / whole for c in columns), initial=0.0))
    return Table(_head(columns, edges), tuple(_row(row, edges) for row in rows))


def _head(columns: Sequence[Column], edges: Sequence[float]) -> Block:
    group_mm = GROUP_MM if any(column.group for column in columns) else 0.0
    number_mm = NUMBER_MM if any(column.number for column in columns) else 0.0
    unit_mm = UNIT_MM if any(column.unit for column in columns) else 0.0
    words_mm = LINE_MM * max(column.words.count("\n") + 1 for column in columns) + 0.6
    height = group_mm + number_mm + words_mm + unit_mm + 0.8
    shapes: list[Shape] = list(_groups(columns, edges))
    for column, left, right in zip(columns, edges, edges[1:], strict=False):
        width, top = right - left, group_mm
        shapes.append(_frame(left, 0.0 if not column.group else group_mm, right, height))
        if column.number:
            centre = ((left + right) / 2, top + 0.4 + BADGE_MM)
            shapes.append(Badge(column.number, centre))
        top += number_mm
        shapes.append(Text(left, top, width, words_mm, column.words, align="centre"))
        if column.unit:
            top += words_mm
            unit = Text(left, top, width, unit_mm, column.unit, ink="grey", align="centre")
            shapes.append(unit)
    return Block(height, tuple(shapes))


def _groups(columns: Sequence[Column], edges: Sequence[float]) -> list[Shape]:
    shapes: list[Shape] = []
    for name in dict.fromkeys(column.group for column in columns if column.group):
        spans = [n for n, column in enumerate(columns) if column.group == name]
        left, right = edges[spans[0]], edges[spans[-1] + 1]
        shapes.append(_frame(left, 0.0, right, GROUP_MM))
        shapes.append(Text(left, 0.0, right - left, GROUP_MM, name, bold=True, align="centre"))
    return shapes


def _frame(left: float, top: float, right: float, bottom: float) -> Stroke:
    corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    return Stroke(corners, 0.2, "grey")


def _row(row: Row, edges: Sequence[float]) -> Block:
    shapes: list[Shape] = []
    for cell, left, right in zip(row.cells, edges, edges[1:], strict=False):
        width = right - left
        if cell.field:
            box = Box(cell.field, left, 0.0, width, ROW_MM, cell.text, heavy=row.marked)
            shapes.append(box)
        else:
            shapes.append(_frame(left, 0.0, right, ROW_MM))
            bold = row.marked
            shapes.append(Text(left, 0.0, width, ROW_MM, cell.text, bold=bold, align="centre"))
    if row.marked:
        middle = ROW_MM / 2
        tip = ((-MARK_MM, middle - MARK_MM), (-0.2, middle), (-MARK_MM, middle + MARK_MM))
        shapes.append(Stroke(tip, filled=True))
    return Block(ROW_MM, tuple(shapes))
