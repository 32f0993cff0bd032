"""Rows put into a book: results beside formulas, texts as typed, joined cells framed."""

import datetime
from decimal import Decimal

import pytest
from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from hoopwright.papers.sheet import TEXT, Entry, Formula, Look, Row, Sheet, Value
from hoopwright.papers.sheet_rows import rows_xml, with_rows
from papers.spreadsheet import open_book, saved_book

DAY = datetime.date(2031, 2, 3)
CODES = {(TEXT, False): 0, (TEXT, True): 1, (Look("note"), False): 2}


def _style_number(look: Look, quoted: bool) -> int:
    return CODES[look, quoted]


def _sheet(*rows: Row) -> Sheet:
    return Sheet(name="One", widths=(9.0, 9.0, 9.0), rows=rows)


def _rows(*values: Value) -> tuple[Row, ...]:
    return tuple(Row((Entry(v, TEXT),)) for v in values)


def _saved(pages: int = 1) -> bytes:
    """Return a book of empty sheets that knows three looks."""
    book = Workbook()
    for number in range(1, pages):
        book.create_sheet(f"Page {number}")
    page = book.worksheets[0]
    for number, shown in enumerate(("General", "0.0", "0.00")):
        page.cell(1, 1).number_format = shown
        assert page.cell(1, 1).style_id == number
    page.delete_rows(1)
    return saved_book(book)


def _page(sheet: Sheet, *, results: bool = False) -> Worksheet:
    filled = with_rows(_saved(), (sheet,), (rows_xml(sheet, _style_number),), DAY)
    page = open_book(filled, results=results).worksheets[0]
    assert isinstance(page, Worksheet)
    return page


def test_numbers_and_texts_stand_beside_their_formulas() -> None:
    sheet = _sheet(*_rows(Formula("=1+1.5", Decimal("2.5")), Formula('="a<"&"b"', "a<b")))
    page = _page(sheet, results=True)
    assert [page["A1"].value, page["A2"].value] == [2.5, "a<b"]
    page = _page(sheet)
    assert [page["A1"].value, page["A2"].value] == ["=1+1.5", '="a<"&"b"']


def test_book_is_of_the_day_of_the_plan() -> None:
    sheet = _sheet(*_rows(1))
    filled = with_rows(_saved(), (sheet,), (rows_xml(sheet, _style_number),), DAY)
    assert open_book(filled).properties.modified == datetime.datetime(2031, 2, 3)


@pytest.mark.parametrize(
    "value", [7, 0, -3, Decimal("0.1"), Decimal("-1234567.89"), Decimal("1E+20"), Decimal("1E-9")]
)
def test_numbers_come_back_as_they_went_in(value: int | Decimal) -> None:
    cell = _page(_sheet(*_rows(value)))["A1"]
    assert cell.data_type == "n"
    assert Decimal(repr(cell.value)) == value


@pytest.mark.parametrize("text", ["a < b & c > d", " led and trailed ", "one\ntwo", "12", "#N/A"])
def test_texts_come_back_as_they_were_typed(text: str) -> None:
    cell = _page(_sheet(*_rows(text)))["A1"]
    assert (cell.value, cell.data_type) == (text, "s")


def test_text_that_would_be_calculated_has_a_look_that_says_so() -> None:
    xml = rows_xml(_sheet(*_rows("=1+1", "1+1")), _style_number)
    assert '<c r="A1" s="1" t="inlineStr">' in xml
    assert '<c r="A2" s="0" t="inlineStr">' in xml


def test_empty_text_is_an_empty_cell_with_its_look() -> None:
    xml = rows_xml(_sheet(Row((None, Entry("", TEXT), Entry(None, Look("note"))))), _style_number)
    assert xml == '<row r="1"><c r="B1" s="0"/><c r="C1" s="2"/></row>'


def test_framed_cells_that_are_joined_have_one_look() -> None:
    framed = Row((Entry(1, TEXT),), ((1, 3),))
    bare = Row((Entry(1, Look("note")),), ((1, 3),))
    assert rows_xml(_sheet(framed, bare), _style_number) == (
        '<row r="1"><c r="A1" s="0"><v>1</v></c><c r="B1" s="0"/><c r="C1" s="0"/></row>'
        '<row r="2"><c r="A2" s="2"><v>1</v></c></row>'
    )


def test_row_of_long_text_is_tall_and_an_empty_one_is_left_out() -> None:
    page = _page(_sheet(Row(), *_rows("word " * 20, "word")))
    heights = [page.row_dimensions[row].height for row in (1, 2, 3)]
    # 9 characters wide less the frame are (9 - 1.3) * 1.22 = 9.39 letters: two words in each of ten
    # lines of 13 points, and 3 points between the rows.
    assert heights == [None, 133.0, None]
    assert page["A2"].value == "word " * 20


def test_size_of_the_sheet_is_that_of_its_rows() -> None:
    wide = Row(tuple(Entry(n, TEXT) for n in range(28)))
    assert _page(_sheet(*_rows(1, 2, 3))).dimensions == "A1:A3"
    assert _page(_sheet(Row(), wide)).dimensions == "A2:AB2"


@pytest.mark.parametrize("value", [Formula("=1/0", Decimal("NaN")), Decimal("Infinity")])
def test_a_number_that_is_not_finite_is_refused(value: Value) -> None:
    with pytest.raises(ValueError, match="must be finite"):
        rows_xml(_sheet(*_rows(value)), _style_number)


def test_rows_without_a_sheet_to_stand_on_are_refused() -> None:
    sheets = (_sheet(*_rows(1)), _sheet(*_rows(2)))
    rows = [rows_xml(sheet, _style_number) for sheet in sheets]
    with pytest.raises(ValueError, match=r"no place for the rows of xl/worksheets/sheet2\.xml"):
        with_rows(_saved(), sheets, rows, DAY)
    assert open_book(with_rows(_saved(2), sheets, rows, DAY)).worksheets[1]["A1"].value == 2


def test_sheet_that_has_rows_already_is_refused() -> None:
    book = Workbook()
    book.worksheets[0].cell(1, 1).value = "there"
    sheet = _sheet(*_rows(1))
    with pytest.raises(ValueError, match="One: there is no place for its rows"):
        with_rows(saved_book(book), (sheet,), (rows_xml(sheet, _style_number),), DAY)
