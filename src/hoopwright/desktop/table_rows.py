"""What a table shows: columns, rows and cells as values, and how a cell reads in people's units."""

from decimal import Decimal
from typing import Literal

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from hoopwright.quantity.finding import Severity
from hoopwright.quantity.units import Units, show, unit_label
from hoopwright.quantity.working import Working, explain

Value = float | int | str | Decimal | None
MIXED: Literal["mixed"] = "mixed"
PENDING = "…"


class Column(Struct, frozen=True):
    """One column.

    Attributes:
        title: Heading, still to be translated.
        letters: How many letters it is wide.
        unit: Unit code that stands in the heading; `text` for words, `mixed` when each cell shows
            its own unit.
        keeps: Whether it stays as it is while the order is not settled.
        strong: Whether it is set off from the others.
    """

    title: object
    letters: int
    unit: str = "text"
    keeps: bool = False
    strong: bool = False

    @property
    def is_number(self) -> bool:
        """Whether its cells are numbers, which stand at the right."""
        return self.unit != "text"


class Cell(Struct, frozen=True):
    """One cell.

    Attributes:
        value: A number in the unit of the code, a text, or None for an empty cell.
        unit: Unit code.
        tip: How the figure was got, or words about it.
    """

    value: Value
    unit: str = "text"
    tip: Working | str | None = None


class Row(Struct, frozen=True):
    """One row.

    Attributes:
        key: What it is, the same from one plan to the next.
        cells: One for each column.
        marks: Places on the canvas, the one to pick first.
        sign: Severity whose sign stands before the first cell.
    """

    key: tuple[object, ...]
    cells: tuple[Cell, ...]
    marks: tuple[str, ...] = ()
    sign: Severity | None = None


class Total(Struct, frozen=True):
    """A figure below a table.

    Attributes:
        label: What it is.
        text: The figure with its unit.
        tip: How it was got.
    """

    label: str
    text: str
    tip: Working | str | None = None


def heading_text(column: Column, units: Units, currency: str) -> str:
    """Return a heading with its unit."""
    title = QCoreApplication.translate("Tables", str(column.title))
    unit = _heading_unit(column.unit, units, currency)
    if not unit:
        return title
    words = QCoreApplication.translate("Tables", "{title}, {unit}")
    return words.format(title=title, unit=unit)


def _heading_unit(unit: str, units: Units, currency: str) -> str:
    if unit in ("text", MIXED):
        return ""
    if unit == "money":
        return currency
    if unit == "m" and units == "imperial":
        return QCoreApplication.translate("Tables", "ft in")
    return unit_label(unit, units)


def cell_text(cell: Cell, column: Column, units: Units) -> str:
    """Return what a cell reads; a unit that stands in the heading is left away."""
    if cell.value is None:
        return ""
    text = show(cell.value, cell.unit, units)
    if column.unit == MIXED or cell.unit == "text" or (cell.unit == "m" and units == "imperial"):
        return text
    label = unit_label(cell.unit, units)
    return text.removesuffix(label).rstrip() if label else text


def tip_text(tip: Working | str | None, units: Units) -> str:
    """Return the words that explain a cell."""
    if isinstance(tip, Working):
        return explain(tip, units)
    return tip or ""


def sort_value(cell: Cell) -> float | str:
    """Return what a cell is sorted by: numbers by value, empty cells before them."""
    if isinstance(cell.value, str):
        return cell.value.casefold()
    return float("-inf") if cell.value is None else float(cell.value)
