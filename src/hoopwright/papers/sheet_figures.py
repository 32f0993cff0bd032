"""Lists of figures: what a column is called, what it is measured in, and what stands in it.

A list is described once as a row of figures; its headings, number formats and cells follow from
that. A figure that none of the listed things has gets no column.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Generic, TypeVar

from hoopwright.papers.sheet import (
    NOTE,
    SECTION,
    Column,
    Kind,
    Row,
    Value,
    heading_row,
    list_row,
    wide_row,
)
from hoopwright.papers.sheet_numbers import (
    LENGTH_PLACES,
    length_columns,
    length_values,
    number_format,
    shown,
)
from hoopwright.quantity.units import Units, unit_label

T = TypeVar("T")

PLACES: dict[str, tuple[int, int]] = {
    "m": (LENGTH_PLACES["imperial"], LENGTH_PLACES["metric"]),
    "m_thin": (2, 1),
    "m2": (1, 1),
    "m3": (1, 1),
    "m3_water": (0, 0),
    "m3/s_water": (1, 2),
    "m_film": (1, 0),
    "N": (1, 1),
    "N m": (0, 1),
    "J": (0, 0),
    "m/s": (1, 1),
    "m3/s": (0, 0),
    "m3/s/m2": (1, 0),
    "1/h": (0, 0),
    "rad": (0, 0),
    "min": (1, 1),
    "turns": (1, 1),
    "Pa": (3, 1),
    "Pa_film": (0, 2),
    "N/m": (2, 1),
    "m2_thin": (2, 0),
    "W": (0, 0),
    "kWh": (0, 0),
    "W/K": (0, 0),
    "W/m2/K": (2, 2),
    "W_heat": (0, 0),
    "J_heat": (1, 1),
    "K day": (0, 0),
    "ratio": (2, 2),
    "share": (3, 3),
    "count": (0, 0),
    "money": (2, 2),
}
"""Decimals of a unit code in feet and inches, and in metres."""

IN_HEADING = ("turns", "share", "money")
"""Units that the heading, the cell or a note of the sheet says by itself."""


@dataclass(frozen=True, slots=True)
class Figure(Generic[T]):
    """One figure of the things in a list.

    Attributes:
        words: What stands above it, without its unit.
        of: Returns it for one thing: a number in the unit of the code, a text, or None.
        unit: Unit code; "text" for texts, "size" for a length that is rounded up and in feet also
            written with inches; every thing of a list has it.
        width: Width of its column in characters.
        kind: Role of its cells.
    """

    words: str
    of: Callable[[T], float | Value]
    unit: str = "text"
    width: float = 9.0
    kind: Kind = "cell"


def list_figures(
    figures: Iterable[Figure[T]], things: Iterable[T], units: Units
) -> tuple[tuple[Column, ...], list[tuple[Value, ...]]]:
    """Return the columns and the lines of a list.

    Args:
        figures: What each thing shows.
        things: The things, a line each.
        units: The farm's units.
    """
    listed = list(things)
    kept = [f for f in figures if not listed or any(f.of(t) is not None for t in listed)]
    columns = tuple(column for figure in kept for column in _columns(figure, units))
    lines = [tuple(v for f in kept for v in _values(f, thing, units)) for thing in listed]
    return columns, lines


def listed_rows(
    title: str,
    figures: Iterable[Figure[T]],
    things: Iterable[T],
    units: Units,
    last: int,
    empty: str,
) -> list[Row]:
    """Return a list that stands with others on one sheet, below a free row and its title.

    Args:
        title: Its title.
        figures: What each thing shows.
        things: The things, a line each.
        units: The farm's units.
        last: Last column of the sheet.
        empty: What is said instead when there is nothing to list.
    """
    columns, lines = list_figures(figures, things, units)
    rows = [Row(), wide_row(title, SECTION, last)]
    if not lines:
        return [*rows, wide_row(empty, NOTE, last)]
    return [*rows, heading_row(columns), *(list_row(columns, line) for line in lines)]


def _columns(figure: Figure[T], units: Units) -> tuple[Column, ...]:
    if figure.unit == "size":
        return length_columns(figure.words, units)
    if figure.unit == "text":
        return (Column(figure.words, figure.width, kind=figure.kind),)
    label = "" if figure.unit in IN_HEADING else unit_label(figure.unit, units)
    words = f"{figure.words} ({label})" if label else figure.words
    number = "0.0%" if figure.unit == "share" else number_format(places_of(figure.unit, units))
    return (Column(words, figure.width, number, figure.kind),)


def _values(figure: Figure[T], thing: T, units: Units) -> tuple[Value, ...]:
    value = figure.of(thing)
    if isinstance(value, float) and figure.unit == "size":
        return length_values(value, units)
    if isinstance(value, float) and figure.unit == "share":
        return (shown(value, "ratio", units, places_of("share", units)),)
    if isinstance(value, float):
        return (shown(value, figure.unit, units, places_of(figure.unit, units)),)
    return (value,)


def places_of(unit: str, units: Units) -> int:
    """Return the decimals that a unit code is shown with."""
    return PLACES[unit][0 if units == "imperial" else 1]
