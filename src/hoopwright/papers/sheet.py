"""A sheet of the workbook as a value: what stands in which cell, and how it looks.

Nothing here knows a file format. Text is always text: only a `Formula` is ever calculated, and
it carries its result, so that programs that do not calculate show the right figures too.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Literal, NamedTuple

Kind = Literal[
    "title", "note", "section", "head", "cell", "total", "input", "fault", "caution", "key"
]
Result = Decimal | int | str


class Formula(NamedTuple):
    """A formula with the result it has when the workbook is made.

    Attributes:
        text: The formula with its leading equals sign; never holds text people typed.
        result: What it comes to.
    """

    text: str
    result: Result


Value = str | int | Decimal | Formula | None


class Look(NamedTuple):
    """How a cell looks.

    Attributes:
        kind: Its role on the sheet.
        number: Number format; "" for text.
    """

    kind: Kind
    number: str = ""


class Entry(NamedTuple):
    """What stands in one cell, and how it looks."""

    value: Value
    look: Look


@dataclass(frozen=True, slots=True)
class Row:
    """One row.

    Attributes:
        entries: Cells from the first column on; None leaves one empty.
        spans: First and last column, from 1, of cells joined into one.
    """

    entries: tuple[Entry | None, ...] = ()
    spans: tuple[tuple[int, int], ...] = ()


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a list.

    Attributes:
        heading: What stands above it, unit included.
        width: Width in characters.
        number: Number format; "" for text.
        kind: Role of its cells.
    """

    heading: str
    width: float
    number: str = ""
    kind: Kind = "cell"


@dataclass(frozen=True, slots=True)
class Limit:
    """What may be typed into some cells.

    Attributes:
        cells: Range of cells.
        allows: A number from zero, a number above zero, a share from 0 to 1, or one of a list.
        choices: The list, as a range or as words in quotes; "" for numbers.
        strict: Whether something else is refused.
        prompt: What the program says when the cell is picked.
    """

    cells: str
    allows: Literal["zero_up", "above_zero", "share", "list"]
    choices: str = ""
    strict: bool = True
    prompt: str = ""


@dataclass(frozen=True, slots=True)
class Alert:
    """A fill that depends on a formula.

    Attributes:
        cells: Range of cells.
        formula: Formula for the first of them, without the equals sign.
        kind: Role whose fill it takes.
    """

    cells: str
    formula: str
    kind: Kind


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """A line through the rows of a table, one column over another.

    Attributes:
        at: Row and column, from 1, of the cell where its upper left corner lies.
        size_cm: Width and height, cm.
        first: First row of the table.
        last: Last row of the table.
        across: Column whose numbers run across.
        up: Column whose numbers run up.
        across_title: What runs across, with its unit.
        up_title: What runs up, with its unit.
    """

    at: tuple[int, int]
    size_cm: tuple[int, int]
    first: int
    last: int
    across: int
    up: int
    across_title: str
    up_title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet.

    Attributes:
        name: Name on its tab.
        widths: Widths of the columns, characters.
        rows: Rows from the first.
        header_row: Row of the headings, which stays in view and is printed on every page; 0
            when there is none.
        frozen_columns: Columns that stay in view.
        filtered: First and last row of a list that can be sorted and filtered.
        limits: What may be typed.
        alerts: Fills that depend on formulas.
        charts: Charts beside its tables.
        breaks: Rows after which a new page starts.
        protected: Whether the sheet is locked, without a password.
    """

    name: str
    widths: tuple[float, ...]
    rows: tuple[Row, ...]
    header_row: int = 0
    frozen_columns: int = 0
    filtered: tuple[int, int] | None = None
    limits: tuple[Limit, ...] = ()
    alerts: tuple[Alert, ...] = ()
    charts: tuple[Chart, ...] = ()
    breaks: tuple[int, ...] = ()
    protected: bool = False


TITLE = Look("title")
NOTE = Look("note")
SECTION = Look("section")
HEAD = Look("head")
TEXT = Look("cell")


@cache
def column_letters(number: int) -> str:
    """Return the letters of a column counted from 1."""
    letters = ""
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def wide_row(text: str, look: Look, last: int, *, label: str = "") -> Row:
    """Return a row whose text runs over all columns, or over those after a label.

    Args:
        text: The text.
        look: Its look.
        last: Last column of the sheet.
        label: What stands in the first column; without one the text starts there.
    """
    if not label:
        return Row((Entry(text, look),), ((1, last),) if last > 1 else ())
    return Row((Entry(label, look), Entry(text, look)), ((2, last),) if last > 2 else ())


def heading_row(columns: Sequence[Column]) -> Row:
    """Return the row of headings."""
    return Row(tuple(Entry(c.heading, HEAD) for c in columns))


def list_row(columns: Sequence[Column], values: Sequence[Value]) -> Row:
    """Return one row of a list, each value in the look of its column."""
    return Row(
        tuple(
            Entry(value, Look(column.kind, column.number))
            for column, value in zip(columns, values, strict=True)
        )
    )


def list_sheet(
    name: str,
    title: str,
    notes: Iterable[str],
    columns: Sequence[Column],
    lines: Sequence[Sequence[Value]],
    *,
    empty: str,
    frozen_columns: int = 0,
    protected: bool = False,
) -> Sheet:
    """Return a sheet that is one list: title, notes, headings, lines.

    Args:
        name: Name on its tab.
        title: What stands on top.
        notes: Sentences below it.
        columns: The columns.
        lines: The values of each line.
        empty: What is said instead when there are no lines.
        frozen_columns: Columns that stay in view.
        protected: Whether the sheet is locked.
    """
    last = len(columns)
    rows = [wide_row(title, TITLE, last), *(wide_row(note, NOTE, last) for note in notes), Row()]
    header_row = len(rows) + 1
    rows.append(heading_row(columns))
    rows += [list_row(columns, line) for line in lines]
    if not lines:
        rows.append(wide_row(empty, NOTE, last))
    return Sheet(
        name=name,
        widths=tuple(c.width for c in columns),
        rows=tuple(rows),
        header_row=header_row,
        frozen_columns=frozen_columns,
        filtered=(header_row, len(rows)) if lines else None,
        protected=protected,
    )
