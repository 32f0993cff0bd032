"""The takeoff: every line of the plan, and cells to type into."""

import dataclasses
import re
from decimal import Decimal

from hoopwright.farm import Farm
from hoopwright.quantity.working import phrase
from papers.invented_plan import (
    invented_farm,
    invented_line,
    invented_lines,
    invented_plan,
)
from papers.spreadsheet import headings, made, open_book, takeoff_rows


def test_saved_lines_are_those_of_the_plan(farm: Farm) -> None:
    plan = invented_plan(farm)
    rows = takeoff_rows(open_book(made(farm, plan), results=True))
    assert [row["Packs"] for row in rows] == [line.packs for line in plan.order.lines]
    totals = [Decimal(repr(row["Line total (USD)"] or 0)) for row in rows]
    assert totals == [line.total for line in plan.order.lines]
    said = [row["Price is"] for row in rows]
    assert said == ["invented"] * 4 + ["entered", "not needed", "no price"]


def test_imperial_takeoff_shows_feet_and_inches_beside_feet() -> None:
    farm = invented_farm("imperial")
    rows = takeoff_rows(open_book(made(farm, invented_plan(farm)), results=True))
    # 4 runs of 84 ft; 30 m are 98.4252 ft, 0.4252 ft are 5.1024 in, nearest 5 1/8 in.
    assert [row["Needed (ft\u00a0in)"] for row in rows[1:3]] == ["336' 0\"", "98' 5 1/8\""]


def test_starred_columns_are_yellow_and_unlocked_and_no_others(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Takeoff"]
    row = next(r[0].row for r in sheet.iter_rows() if r[0].value == 1)
    for heading, column in headings(sheet, "No.").items():
        cell = sheet.cell(row, column)
        starred = "*" in heading
        assert cell.protection.locked is not starred, heading
        assert (cell.fill.fgColor.rgb == "FFFFF4C2") is starred, heading


def test_user_text_stands_in_no_formula() -> None:
    farm = invented_farm(name="Wyndmark", tunnels=("Quillon",))
    lines = (invented_line("part", 6.0, 6.0, 1, "2.50", group="Zephyrline", name="Zephyrline"),)
    book = open_book(made(farm, invented_plan(farm, lines)))
    formulas = [c.value for s in book for row in s.iter_rows() for c in row if c.data_type == "f"]
    assert formulas
    assert not [f for f in formulas if re.search("Wyndmark|Quillon|Zephyrline", f)]


def test_roll_of_film_is_named_with_its_size(farm: Farm) -> None:
    size = phrase("roll {width} wide", width=(9.144, "m"))
    line = dataclasses.replace(
        invented_lines()[0], where=(size, phrase("Roof, outer"), phrase("Roof, inner"))
    )
    (row,) = takeoff_rows(open_book(made(farm, invented_plan(farm, (line,)))))
    width = "30' 0\"" if farm.units == "imperial" else "9.144 m"
    assert row["Item"] == f"film, roll {width} wide"
    assert row["Where used"] == "Roof, outer; Roof, inner"
    assert row["Unit"] == row["Sold as"]


def test_many_places_are_counted_by_tunnel(farm: Farm) -> None:
    north = [phrase("{tunnel}: bow {n}", tunnel="North", n=n) for n in range(12)]
    south = phrase("{tunnel}: bow {n}", tunnel="South", n=1)
    line = dataclasses.replace(invented_lines()[1], where=(*north, south))
    (row,) = takeoff_rows(open_book(made(farm, invented_plan(farm, (line,)))))
    assert row["Where used"] == "North, 12 places; South, 1 place: see Working"


def test_freight_and_tax_can_be_typed_over(farm: Farm) -> None:
    sheet = open_book(made(farm, invented_plan(farm)))["Takeoff"]
    labels = {c.value: c.column for c in sheet[3] if c.value is not None}
    for label, column in labels.items():
        assert sheet.cell(4, column).protection.locked is not ("*" in label), label
