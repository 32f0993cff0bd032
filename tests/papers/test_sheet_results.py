"""Results beside formulas: put in whole, or refused."""

import datetime
from decimal import Decimal

import pytest
from openpyxl import Workbook

from hoopwright.papers.sheet import TEXT, Entry, Formula, Row, Sheet, Value
from hoopwright.papers.sheet_results import with_results
from papers.spreadsheet import open_book, saved_book

DAY = datetime.date(2031, 2, 3)


def _sheet(*values: Value) -> Sheet:
    return Sheet(name="One", widths=(9.0,), rows=tuple(Row((Entry(v, TEXT),)) for v in values))


def _saved(*formulas: str) -> bytes:
    book = Workbook()
    page = book.worksheets[0]
    page.title = "One"
    for row, formula in enumerate(formulas, start=1):
        page.cell(row, 1).value = formula
    return saved_book(book)


def test_numbers_and_texts_stand_beside_their_formulas() -> None:
    sheet = _sheet(Formula("=1+1", Decimal("2.5")), Formula('="a<"&"b"', "a<b"))
    filled = with_results(_saved("=1+1", '="a<"&"b"'), (sheet,), DAY)
    page = open_book(filled, results=True)["One"]
    assert [page["A1"].value, page["A2"].value] == [2.5, "a<b"]
    assert open_book(filled)["One"]["A1"].value == "=1+1"
    assert open_book(filled).properties.modified == datetime.datetime(2031, 2, 3)


def test_a_formula_without_its_result_is_refused() -> None:
    sheet = _sheet(Formula("=1+1", Decimal(2)), Formula("=2+2", Decimal(4)))
    with pytest.raises(ValueError, match="One: 2 formulas, but 1 got their result"):
        with_results(_saved("=1+1"), (sheet,), DAY)


def test_a_result_that_is_no_number_is_refused() -> None:
    sheet = _sheet(Formula("=1/0", Decimal("NaN")))
    with pytest.raises(ValueError, match="must be finite"):
        with_results(_saved("=1/0"), (sheet,), DAY)
