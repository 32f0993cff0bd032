"""What stays, below the list of the takeoff: no part of the order or of its sums."""

from collections.abc import Iterable, Iterator, Mapping
from decimal import Decimal

from hoopwright.farm.farm import Farm
from hoopwright.order.order import Order, ReuseLine
from hoopwright.papers.sheet import (
    HEAD,
    NOTE,
    SECTION,
    Column,
    Entry,
    Formula,
    Look,
    Row,
    Value,
    wide_row,
)
from hoopwright.papers.sheet_lines import feet_inches, place_words
from hoopwright.papers.sheet_numbers import (
    LENGTH_PLACES,
    decimal_of,
    number_format,
    round_down,
    round_up,
)
from hoopwright.quantity.units import Units, to_display, unit_label

HEADINGS = {
    "number": "No.",
    "group": "Group",
    "item": "Item that stays",
    "where": "Where it stays",
    "needed": "Needed",
    "kept": "Kept",
    "unit": "Unit",
    "feet": "Kept (ft\u00a0in)",
    "to_buy": "To buy",
    "sold_as": "Sold as",
    "packs": "Packs less",
    "state": "State",
}
SPARED = "#,##0.####"


def line_row(
    columns: Mapping[str, Column],
    values: Mapping[str, Value],
    formats: Mapping[str, str],
    typed: Iterable[str],
) -> Row:
    """Return a row of the takeoff.

    Args:
        columns: The columns by key.
        values: What stands in them; a column without a value stays empty.
        formats: Number formats that are not those of the column.
        typed: Keys of the cells that are typed into as well.
    """
    return Row(
        tuple(
            Entry(
                values.get(key),
                Look("input" if key in typed else column.kind, formats.get(key, column.number)),
            )
            for key, column in columns.items()
        )
    )


def kept_rows(
    columns: Mapping[str, Column], letters: Mapping[str, str], first: int, order: Order, farm: Farm
) -> Iterator[Row]:
    """Yield the rows about what stays; none where all is bought new.

    Args:
        columns: Columns of the takeoff by key.
        letters: Letters of the columns by key.
        first: Row of the sheet at which they start.
        order: The order.
        farm: The farm, for its units and currency.
    """
    if not order.reused:
        return
    currency, last = farm.money.currency, len(columns)
    yield Row()
    yield wide_row("Kept: stays on the tunnels and is not on the order", SECTION, last)
    note = (
        "What is bought of an item stands in its line above. Packs less: what need not be bought, "
        "of a sheet its share of a roll; times the price it is what that would cost, before tax."
    )
    yield wide_row(note, NOTE, last)
    headings = {
        **HEADINGS,
        "price": f"Price of a pack ({currency})",
        "total": f"Would cost ({currency})",
        "origin": "Price is",
    }
    yield Row(tuple(Entry(headings.get(key), HEAD) for key in columns))
    start = first + 4
    for number, line in enumerate(order.reused):
        at = {key: f"{letter}{start + number}" for key, letter in letters.items()}
        yield _kept_row(columns, at, number + 1, line, farm.units)
    sums = f"SUM({letters['total']}{start - 1}:{letters['total']}{start + len(order.reused) - 1})"
    total: dict[str, Value] = {"item": "All that stays", "total": Formula(f"={sums}", order.saved)}
    yield Row(
        tuple(
            Entry(total.get(key), Look("total", column.number)) for key, column in columns.items()
        )
    )


def _kept_row(
    columns: Mapping[str, Column], at: Mapping[str, str], number: int, line: ReuseLine, units: Units
) -> Row:
    is_length = line.counted_in == "m"
    places = LENGTH_PLACES[units] if is_length else 0
    needed, kept = (
        decimal_of(to_display(value, line.counted_in, units)) for value in (line.needed, line.kept)
    )
    needed, kept = round_up(needed, places), round_down(kept, places)
    spared = decimal_of(line.spared)
    values: dict[str, Value] = {
        "number": number,
        "group": line.group,
        "item": line.name,
        "where": place_words(line, units),
        "needed": needed,
        "kept": kept,
        "unit": unit_label("m", units) if is_length else "pcs",
        "to_buy": Formula(f"={at['needed']}-{at['kept']}", needed - kept),
        "sold_as": line.sold_as,
        "packs": spared.normalize() if spared else Decimal(0),
        "price": line.price,
        "total": Formula(f"=ROUND({at['packs']}*{at['price']},2)", line.saved),
        "origin": "invented" if line.invented else "entered",
        "state": "repaired" if line.state == "repair" else "kept",
    }
    if "feet" in columns and is_length:
        values["feet"] = feet_inches(kept)
    exact = number_format(places)
    formats = {"needed": exact, "kept": exact, "to_buy": exact, "packs": SPARED}
    plain = {key: _plain(column) for key, column in columns.items()}
    return line_row(plain, values, formats, ())


def _plain(column: Column) -> Column:
    """Return a column whose cells are not typed into."""
    return Column(column.heading, column.width, column.number)
