"""The takeoff: every line to buy, with formulas that answer to what the buyer types.

Formulas look only at their own row, or at whole columns, so that lines can be sorted, inserted
and deleted. Numbers are the decimals shown. Each length has the fewest decimals with which the
packs of the formula are the packs of the plan.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from hoopwright.farm.farm import Farm
from hoopwright.order.order import Line
from hoopwright.papers.sheet import (
    HEAD,
    NOTE,
    TITLE,
    Alert,
    Column,
    Entry,
    Formula,
    Limit,
    Look,
    Row,
    Sheet,
    Value,
    column_letters,
    heading_row,
    wide_row,
)
from hoopwright.papers.sheet_kept import kept_rows, line_row
from hoopwright.papers.sheet_lines import (
    MOST_PLACES,
    PACK_PLACES,
    feet_inches,
    is_film,
    is_unpriced,
    origin_of,
    place_words,
    shown_quantity,
)
from hoopwright.papers.sheet_numbers import (
    EXACT,
    LENGTH_PLACES,
    decimal_of,
    number_format,
)
from hoopwright.plan import Plan
from hoopwright.quantity.money import line_total, tax_on
from hoopwright.quantity.units import Units, unit_label
from hoopwright.quantity.working import words

NAME = "Takeoff"
HEADER_ROW = 6
FIRST_ROW = HEADER_ROW + 1
OWN_LINES = 12
STATES = "to quote,quoted,ordered,received"
MONEY = "#,##0.00"
PRICE = "#,##0.00##"
COUNT = "pcs"


@dataclass(frozen=True, slots=True)
class Cells:
    """Where the cells are that other sheets look at.

    Attributes:
        columns: Letters by the key of the column.
        last_row: Row of the end of the list; sums reach to it.
    """

    columns: dict[str, str]
    last_row: int

    def whole(self, key: str, sheet: str = "") -> str:
        """Return the range of one column, headings left out, end row included."""
        letter = self.columns[key]
        before = f"{sheet}!" if sheet else ""
        return f"{before}${letter}${FIRST_ROW}:${letter}${self.last_row}"

    def of_row(self, row: int) -> dict[str, str]:
        """Return the cells of one row by the key of their column."""
        return {key: f"{letter}{row}" for key, letter in self.columns.items()}


GOODS, FREIGHT, TAXED, RATE, TAX, TO_PAY = "D4", "E4", "G4", "I4", "K4", "M4"
NO_PRICE, INVENTED = "O4", "Q4"


def takeoff_columns(farm: Farm) -> dict[str, Column]:
    """Return the columns of the takeoff by key; those with a star are typed into."""
    units, currency = farm.units, farm.money.currency
    columns = {
        "number": Column("No.", 4.5, "0"),
        "group": Column("Group", 13),
        "item": Column("Item", 22),
        "where": Column("Where used", 24),
        "needed": Column("Needed", 9),
        "kept": Column("Kept", 7.5),
        "spares": Column("Spares", 7),
        "unit": Column("Unit", 5),
        "feet": Column("Needed (ft\u00a0in)", 11.5),
        "on_hand": Column("On hand*", 8, "General", "input"),
        "to_buy": Column("To buy", 9),
        "holds": Column("Pack holds*", 9.5, "General", "input"),
        "sold_as": Column("Sold as", 8),
        "packs": Column("Packs", 6.5, "#,##0"),
        "left_over": Column("Left over", 8),
        "price": Column(f"Price of a pack* ({currency})", 10, PRICE, "input"),
        "total": Column(f"Line total ({currency})", 10.5, MONEY),
        "origin": Column("Price is", 10),
        "state": Column("State*", 8.5, "", "input"),
        "note": Column("Note*", 13, "", "input"),
    }
    if units == "metric":
        del columns["feet"]
    return columns


def takeoff_sheet(farm: Farm, plan: Plan, program_version: str, plan_date: date) -> Sheet:
    """Return the takeoff of a farm.

    Args:
        farm: The farm.
        plan: Its plan.
        program_version: Version of the program.
        plan_date: Day the plan was made for.
    """
    columns = takeoff_columns(farm)
    cells = takeoff_cells(farm, plan)
    keys = tuple(columns)
    last = len(keys)
    rows = [
        wide_row(f"Takeoff: {farm.name}", TITLE, last),
        wide_row(
            f"Plan of {plan_date.isoformat()}, Hoopwright {program_version}. Fill in the yellow "
            "cells, marked with a star; all sums follow. Lines can be sorted, inserted and "
            "deleted.",
            NOTE,
            last,
        ),
        *_totals(farm, plan, cells),
        Row(),
        heading_row(tuple(columns.values())),
    ]
    for number, line in enumerate(plan.order.lines, start=1):
        rows.append(_line_row(columns, cells, FIRST_ROW + number - 1, number, line, farm.units))
    for number in range(len(plan.order.lines) + 1, len(plan.order.lines) + OWN_LINES + 1):
        rows.append(_own_row(columns, cells, FIRST_ROW + number - 1, number))
    rows.append(wide_row("End of the list. Insert further lines above this one.", NOTE, last))
    rows += kept_rows(columns, cells.columns, len(rows) + 1, plan.order, farm)
    return Sheet(
        name=NAME,
        widths=tuple(c.width for c in columns.values()),
        rows=tuple(rows),
        header_row=HEADER_ROW,
        frozen_columns=3,
        filtered=(HEADER_ROW, cells.last_row - 1),
        limits=_limits(cells),
        alerts=_alerts(cells),
    )


def takeoff_cells(farm: Farm, plan: Plan) -> Cells:
    """Return where the cells of the takeoff are."""
    letters = {key: column_letters(n) for n, key in enumerate(takeoff_columns(farm), start=1)}
    return Cells(letters, FIRST_ROW + len(plan.order.lines) + OWN_LINES)


def _totals(farm: Farm, plan: Plan, cells: Cells) -> tuple[Row, Row]:
    """Return the two rows of sums and of what they depend on.

    The first stands in the wide fourth column, each other one in two columns.
    """
    money, cost = farm.money, plan.cost
    currency = money.currency
    rate = decimal_of(money.tax_share)
    taxed = cost.goods + (cost.freight if money.tax_on_freight else 0)
    origins = [origin_of(line) for line in plan.order.lines]
    tax_formula = f'=ROUND(({GOODS}+IF({TAXED}="yes",N({FREIGHT}),0))*N({RATE}),2)'
    sums = Look("total", MONEY)
    shown: tuple[tuple[str, Value, Look], ...] = (
        (f"Goods ({currency})", Formula(f"=SUM({cells.whole('total')})", cost.goods), sums),
        (f"Freight* ({currency})", cost.freight, Look("input", MONEY)),
        ("Tax on freight*", "yes" if money.tax_on_freight else "no", Look("input")),
        ("Sales tax*", rate, Look("input", "0.00##%")),
        (f"Tax ({currency})", Formula(tax_formula, tax_on(taxed, rate)), sums),
        (
            f"To pay ({currency})",
            Formula(
                f"={GOODS}+N({FREIGHT})+{TAX}", cost.goods + cost.freight + tax_on(taxed, rate)
            ),
            sums,
        ),
        ("Lines without a price", _count(cells, "no price", origins), Look("total", "0")),
        ("Invented prices", _count(cells, "invented", origins), Look("total", "0")),
    )
    head: list[Entry | None] = [None, None, None]
    below: list[Entry | None] = [None, None, None]
    for label, value, look in shown:
        head += [Entry(label, HEAD), Entry(None, HEAD)]
        below += [Entry(value, look), Entry(None, look)]
    del head[4], below[4]
    spans = tuple((n, n + 1) for n in range(5, len(head), 2))
    return Row(tuple(head), spans), Row(tuple(below), spans)


def _count(cells: Cells, origin: str, origins: Sequence[str]) -> Formula:
    return Formula(f'=COUNTIF({cells.whole("origin")},"{origin}")', origins.count(origin))


def _line_row(
    columns: dict[str, Column], cells: Cells, row: int, number: int, line: Line, units: Units
) -> Row:
    found = shown_quantity(line, units)
    is_length = line.counted_in == "m" and not is_film(line)
    counted = line.sold_as if is_film(line) else COUNT
    unit = unit_label("m", units) if is_length else counted
    price = None if is_unpriced(line) else line.price
    origin = "invented" if line.invented else "entered"
    formulas = _formulas(cells.of_row(row), origin=origin, price=price)
    results: dict[str, Decimal | int | str] = {
        "feet": feet_inches(found.needed) if is_length else "",
        "to_buy": found.to_buy,
        "packs": found.packs,
        "left_over": found.left_over,
        "total": "" if price is None else line_total(found.packs, price),
        "origin": origin_of(line),
    }
    values: dict[str, Value] = {
        "number": number,
        "group": line.group,
        "item": _item(line, units),
        "where": place_words(line, units),
        "needed": found.needed,
        "kept": found.kept or None,
        "spares": found.spares,
        "unit": unit,
        "on_hand": None,
        "holds": found.holds.normalize(EXACT),
        "sold_as": line.sold_as,
        "price": price,
        **{key: Formula(text, results[key]) for key, text in formulas.items()},
    }
    exact = number_format(found.places)
    coarse = number_format(LENGTH_PLACES[units] if is_length else 0)
    formats = {
        "needed": exact,
        "kept": exact,
        "spares": exact if found.spares else coarse,
        "to_buy": exact,
        "left_over": coarse,
    }
    return line_row(columns, values, formats, ())


def _own_row(columns: dict[str, Column], cells: Cells, row: int, number: int) -> Row:
    """Return an empty line with formulas, for what the buyer adds."""
    formulas = _formulas(cells.of_row(row), origin="", price=None)
    values: dict[str, Value] = {
        "number": number,
        **{key: Formula(text, "") for key, text in formulas.items()},
    }
    typed = ("group", "item", "where", "needed", "kept", "spares", "unit", "sold_as")
    formats = dict.fromkeys(("needed", "kept", "spares", "to_buy", "left_over"), "General")
    return line_row(columns, values, formats, typed)


def _formulas(at: dict[str, str], *, origin: str, price: Decimal | None) -> dict[str, str]:
    """Return the formulas of one row by the key of their column.

    A cell that is still empty gives an empty text, never a zero that looks like an answer.
    """
    needed, spares, to_buy = at["needed"], at["spares"], at["to_buy"]
    holds, packs, cost = at["holds"], at["packs"], at["price"]
    typed = '"typed here"' if price is None else f'IF({cost}={price:f},"{origin}","typed here")'
    there = f"N({at['kept']})-N({at['on_hand']})"
    wanted = f"ROUND({needed}+N({spares})-{there},{MOST_PLACES})"
    quotient = f"ROUND({to_buy}/{holds},{PACK_PLACES})"
    made = {
        "to_buy": f'=IF({needed}="","",MAX(0,{wanted}))',
        "packs": f'=IF(OR({to_buy}="",N({holds})<=0),"",ROUNDUP({quotient},0))',
        "left_over": f'=IF({packs}="","",ROUND({packs}*{holds}-{to_buy},4))',
        "total": f'=IF(OR({packs}="",{cost}=""),"",ROUND({packs}*{cost},2))',
        "origin": (
            f'=IF({to_buy}="","",IF({packs}="","no pack size",IF({packs}=0,"not needed",'
            f'IF({cost}="","no price",{typed}))))'
        ),
    }
    if "feet" in at:
        made["feet"] = _feet_formula(needed, at["unit"])
    return made


def _feet_formula(cell: str, unit: str) -> str:
    """Return the formula that writes feet as feet, inches and sixteenths."""
    steps = f"ROUND({cell}*192,0)"
    part = f"MOD({steps},16)"
    return (
        f'=IF(OR({cell}="",{unit}<>"ft"),"",INT({steps}/192)&"\' "&INT(MOD({steps},192)/16)'
        f'&IF({part}=0,""," "&{part}/GCD({part},16)&"/"&16/GCD({part},16))&CHAR(34))'
    )


def _item(line: Line, units: Units) -> str:
    """Return the name of a line; a roll of film has its size, which comes first in `where`."""
    return f"{line.name}, {words(line.where[0], units)}" if is_film(line) else line.name


def _limits(cells: Cells) -> tuple[Limit, ...]:
    return (
        Limit(cells.whole("on_hand"), "zero_up", prompt="What is in the barn, in the line's unit"),
        Limit(cells.whole("holds"), "above_zero", prompt="What one pack holds"),
        Limit(cells.whole("price"), "zero_up", prompt="Price of one pack, without tax"),
        Limit(cells.whole("state"), "list", f'"{STATES}"', strict=False),
        Limit(FREIGHT, "zero_up", prompt="Freight of the whole order"),
        Limit(TAXED, "list", '"yes,no"', prompt="Is freight taxed?"),
        Limit(RATE, "share", prompt="Sales tax, for example 6.25%"),
    )


def _alerts(cells: Cells) -> tuple[Alert, ...]:
    where, first = cells.whole("origin"), f"${cells.columns['origin']}{FIRST_ROW}"
    return (
        Alert(where, f'{first}="invented"', "caution"),
        Alert(where, f'OR({first}="no price",{first}="no pack size")', "fault"),
    )
