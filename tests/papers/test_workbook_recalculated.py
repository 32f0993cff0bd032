"""Every formula of the workbook, calculated by a second program, comes to what the plan says."""

import math
import random
from collections.abc import Iterator
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from hoopwright.farm import Farm, PartState
from hoopwright.files.storage import open_farm, sample_farms
from hoopwright.plan import plan
from papers.invented_plan import invented_farm, invented_line, invented_lines, invented_plan
from papers.spreadsheet import list_end, made, open_book, recalculated

# One process calculates for all of them.
pytestmark = pytest.mark.xdist_group("second program")

VISITS = 12
HOSTILE = ("=1+1", "+cmd", "@x", "#N/A", "_x0041_", "*", "<5", "a\x07b", "Film", "film")
KEPT = (
    PartState(family="Film", where="roof", state="repair", replace_share=0.1),
    PartState(family="Boards", state="keep"),
    PartState(family="Film fixing", where="first_side", from_bow=3, to_bow=12, state="repair"),
    PartState(family="Wind rope", from_bow=2, to_bow=7, state="keep"),
    PartState(family="Cranks", state="repair"),
)
OWN = {"Group": "Sundries", "Item": "repair tape", "Needed": 3, "Unit": "pcs", "Pack holds*": 1}


def heading_row(sheet: Worksheet) -> int:
    return next(row[0].row for row in sheet.iter_rows() if row[0].value == "No.")


def columns(sheet: Worksheet) -> dict[str, int]:
    return {str(c.value): c.column for c in sheet[heading_row(sheet)] if c.value is not None}


def item_rows(sheet: Worksheet) -> list[int]:
    item = columns(sheet)["Item"]
    rows = range(heading_row(sheet) + 1, list_end(sheet))
    return [row for row in rows if sheet.cell(row, item).value is not None]


def stay_amounts(sheet: Worksheet, column: int) -> list[Decimal]:
    """Return what the items that stay would cost, and their sum, below the list."""
    rows = range(list_end(sheet), sheet.max_row + 1)
    amounts = [sheet.cell(row, column).value for row in rows]
    return [
        Decimal(repr(x)).quantize(Decimal("0.01")) for x in amounts if isinstance(x, float | int)
    ]


def labelled(book: Workbook, label: str) -> object:
    return next(row for row in book["Summary"].iter_rows() if row[0].value == label)[1].value


def exact(value: object) -> Fraction:
    return Fraction(repr(value)) if value not in (None, "") else Fraction(0)


def cents(value: Fraction) -> Decimal:
    """Return an amount rounded half up, as Revised Code of Washington 82.08.054 has it."""
    number = Decimal(value.numerator) / Decimal(value.denominator)
    return number.quantize(Decimal("0.01"), ROUND_HALF_UP)


def formula_cells(book: Workbook) -> Iterator[tuple[str, str]]:
    for sheet in book:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    yield sheet.title, cell.coordinate


def real_farms() -> dict[str, Farm]:
    """Return the sample farms and one that keeps much, each in both systems of units."""
    opened = {path.stem: open_farm(path)[0] for path in sample_farms()}
    keeping = next(iter(opened.values()))
    opened["keeping"] = keeping.but(tunnels=tuple(t.but(condition=KEPT) for t in keeping.tunnels))
    return {
        f"{name}, {units}": farm.but(units=units)
        for name, farm in opened.items()
        for units in ("imperial", "metric")
    }


@pytest.fixture(scope="module")
def contents() -> dict[str, bytes]:
    farms = {"imperial": invented_farm("imperial"), "metric": invented_farm("metric")}
    books = {units: made(farm, invented_plan(farm)) for units, farm in farms.items()}
    lines = tuple(
        invented_line(f"part{n}", 6.0, 6.0, 1, f"{n + 1}.25", group=text, name=text)
        for n, text in enumerate(HOSTILE)
    )
    farm = invented_farm(name="=1+1", tunnels=("@x",))
    books["hostile"] = made(farm, invented_plan(farm, lines))
    for name, sample in real_farms().items():
        books[name] = made(sample, plan(sample))
    return books


@pytest.fixture(scope="module")
def visits(contents: dict[str, bytes]) -> list[Workbook]:
    """Return workbooks into which a buyer has typed."""
    return [visited(contents["imperial" if n % 2 else "metric"], n) for n in range(VISITS)]


@pytest.fixture(scope="module")
def results(
    contents: dict[str, bytes], visits: list[Workbook], tmp_path_factory: pytest.TempPathFactory
) -> tuple[dict[str, Workbook], list[Workbook]]:
    plain = [open_book(content) for content in contents.values()]
    found = recalculated([*plain, *visits], tmp_path_factory.mktemp("calculated"))
    return dict(zip(contents, found, strict=False)), found[len(contents) :]


def visited(content: bytes, number: int) -> Workbook:
    """Return a workbook with random entries, an own line, and other freight and tax."""
    chance = random.Random(number)
    book = open_book(content)
    sheet = book["Takeoff"]
    at = columns(sheet)
    for row in item_rows(sheet):
        needed = float(sheet.cell(row, at["Needed"]).value)
        on_hand = chance.choice([None, 0, round(needed / 3, 2), needed, needed + 7.5])
        sheet.cell(row, at["On hand*"]).value = on_hand
        if chance.random() < 0.6:
            sheet.cell(row, price_column(at)).value = chance.choice(
                [None, 0, round(chance.uniform(0.01, 400), chance.choice([2, 4])), 0.005]
            )
        if chance.random() < 0.3:
            sheet.cell(row, at["Pack holds*"]).value = chance.choice([0.1, 0.7, 3, 12.5, 250])
    own = max(item_rows(sheet)) + 1
    for heading, value in OWN.items():
        sheet.cell(own, at[heading]).value = value
    sheet.cell(own, price_column(at)).value = 7.15
    sheet["E4"], sheet["G4"] = chance.choice([0, 12.5, 149.99]), chance.choice(["yes", "no"])
    sheet["I4"] = chance.choice([0, 0.0625, 0.08875])
    return book


def price_column(at: dict[str, int]) -> int:
    return at["Price of a pack* (USD)"]


def test_every_saved_result_is_what_a_second_program_calculates(
    contents: dict[str, bytes], results: tuple[dict[str, Workbook], list[Workbook]]
) -> None:
    for name, content in contents.items():
        saved, calculated = open_book(content, results=True), results[0][name]
        cells = list(formula_cells(open_book(content)))
        assert len(cells) > 100
        for title, cell in cells:
            was, now = saved[title][cell].value, calculated[title][cell].value
            if isinstance(was, int | float):
                assert now == pytest.approx(was, rel=1e-12, abs=1e-9), (name, title, cell)
            else:
                assert (now or "") == (was or ""), (name, title, cell)


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_calculated_packs_and_sums_are_those_of_the_plan(
    units: str, results: tuple[dict[str, Workbook], list[Workbook]]
) -> None:
    book = results[0][units]
    sheet = book["Takeoff"]
    at = columns(sheet)
    packs = [sheet.cell(row, at["Packs"]).value for row in item_rows(sheet)]
    assert packs == [line.packs for line in invented_lines()]
    # Worked by hand beside the saved sums in the tests of the workbook.
    sums = [labelled(book, label) for label in ("Goods", "Freight", "Tax", "To pay")]
    assert sums == [1114.0, 85.0, 74.94, 1273.94]


def test_sample_farms_come_to_what_their_plans_say(
    results: tuple[dict[str, Workbook], list[Workbook]],
) -> None:
    farms = real_farms()
    assert len(farms) >= 6
    for name, farm in farms.items():
        whole, book = plan(farm), results[0][name]
        sheet = book["Takeoff"]
        at = columns(sheet)
        rows = item_rows(sheet)
        packs = [sheet.cell(row, at["Packs"]).value for row in rows]
        assert packs == [line.packs for line in whole.order.lines], name
        currency = farm.money.currency
        totals = [sheet.cell(row, at[f"Line total ({currency})"]).value for row in rows]
        assert [Decimal(repr(x)) for x in totals] == [line.total for line in whole.order.lines]
        stays = whole.order.reused
        amounts = [*(line.saved for line in stays), whole.order.saved] if stays else []
        assert stay_amounts(sheet, at[f"Line total ({currency})"]) == amounts, name
        cost = whole.cost
        sums = [labelled(book, label) for label in ("Goods", "Freight", "Tax", "To pay")]
        assert [cents(exact(x)) for x in sums] == [cost.goods, cost.freight, cost.tax, cost.to_pay]
        for group in cost.groups:
            assert cents(exact(labelled(book, group.group))) == group.amount, (name, group.group)
        area_m2 = 1.0 if farm.units == "metric" else 0.09290304
        label = f"To pay for one {'m²' if farm.units == 'metric' else 'ft²'} of floor"
        each = float(cost.per_floor_m2) * area_m2
        assert labelled(book, label) == pytest.approx(each, rel=2e-4)


def test_what_a_buyer_types_changes_lines_and_sums(
    visits: list[Workbook], results: tuple[dict[str, Workbook], list[Workbook]]
) -> None:
    for typed, calculated in zip(visits, results[1], strict=True):
        sheet, answer = typed["Takeoff"], calculated["Takeoff"]
        at = columns(sheet)
        goods = Decimal(0)
        for row in item_rows(sheet):
            entry = {name: sheet.cell(row, column).value for name, column in at.items()}
            needed, spares, on_hand = (
                exact(entry[name]) for name in ("Needed", "Spares", "On hand*")
            )
            to_buy = max(Fraction(0), needed + spares - on_hand)
            packs = math.ceil(round(to_buy / exact(entry["Pack holds*"]), 6))
            price = entry["Price of a pack* (USD)"]
            found = {name: answer.cell(row, column).value for name, column in at.items()}
            assert found["To buy"] == pytest.approx(float(to_buy), abs=1e-6)
            assert found["Packs"] == packs
            total = None if price is None else cents(packs * exact(price))
            shown = found["Line total (USD)"]
            assert (None if shown in (None, "") else Decimal(repr(shown))) == total
            goods += total or 0
        freight = Decimal(str(sheet["E4"].value))
        taxed = goods + (freight if sheet["G4"].value == "yes" else 0)
        tax = cents(Fraction(taxed) * exact(sheet["I4"].value))
        found_sums = [labelled(calculated, label) for label in ("Goods", "Tax", "To pay")]
        wanted = [goods, tax, goods + freight + tax]
        assert [Decimal(repr(x)).quantize(Decimal("0.01")) for x in found_sums] == wanted


def test_own_line_of_a_new_group_is_in_the_sums(
    results: tuple[dict[str, Workbook], list[Workbook]],
) -> None:
    # 3 pieces at 7.15.
    assert {labelled(book, "Your own lines and groups") for book in results[1]} == {21.45}


def test_price_is_told_apart_from_the_plan_s(
    visits: list[Workbook], results: tuple[dict[str, Workbook], list[Workbook]]
) -> None:
    said = set()
    for typed, calculated in zip(visits, results[1], strict=True):
        sheet, at = typed["Takeoff"], columns(typed["Takeoff"])
        for row in item_rows(sheet):
            told = calculated["Takeoff"].cell(row, at["Price is"]).value
            price = sheet.cell(row, price_column(at)).value
            packs = calculated["Takeoff"].cell(row, at["Packs"]).value
            said.add(told)
            assert (told == "not needed") is (packs == 0)
            assert packs == 0 or (told == "no price") is (price is None)
    assert said == {"invented", "entered", "typed here", "no price", "not needed"}


def test_names_that_look_like_formulas_come_back_as_text(
    results: tuple[dict[str, Workbook], list[Workbook]],
) -> None:
    book = results[0]["hostile"]
    sheet = book["Takeoff"]
    at = columns(sheet)
    names = [sheet.cell(row, at["Item"]).value for row in item_rows(sheet)]
    assert names == [text.replace("\x07", "\ufffd") for text in HOSTILE]
    for number, text in enumerate(HOSTILE):
        group = text.replace("\x07", "\ufffd")
        assert labelled(book, group) == number + 1.25, text
