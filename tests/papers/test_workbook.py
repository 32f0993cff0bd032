"""The workbook as it is written: its sheets, its saved results, its text, its print set-up."""

import re
import zipfile
from io import BytesIO

import pytest
from openpyxl.utils.escape import unescape

from hoopwright.farm import Farm
from papers.invented_plan import invented_farm, invented_line, invented_plan
from papers.spreadsheet import headings, made, open_book, takeoff_rows

NAMES = [
    "Summary",
    "Takeoff",
    "Film",
    "Rolls",
    "Readings",
    "Widths",
    "Curtains",
    "Cranks",
    "Travel",
    "Air",
    "Heat",
    "Airing",
    "Ends",
    "Rain and shade",
    "Checks",
    "Cautions",
    "Working",
]
# Blocks of figures one below the other: no single row is the head of all.
TOLD_SHEETS = (
    "Summary",
    "Readings",
    "Widths",
    "Cranks",
    "Travel",
    "Air",
    "Heat",
    "Airing",
    "Ends",
    "Rain and shade",
)
HOSTILE = ["=1+1", "+cmd", "-2+3", "@x", "#N/A", "_x0041_", "it's", 'a "quote"', "<b>&amp;", "*"]


def test_sheets_stand_in_their_order(farm: Farm) -> None:
    assert open_book(made(farm, invented_plan(farm))).sheetnames == NAMES


def test_same_plan_gives_the_same_bytes(farm: Farm) -> None:
    assert made(farm, invented_plan(farm)) == made(farm, invented_plan(farm))


def test_every_formula_has_a_saved_result(farm: Farm) -> None:
    content = made(farm, invented_plan(farm))
    formulas, results = open_book(content), open_book(content, results=True)
    count = 0
    for sheet in formulas:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    count += 1
                    saved = results[sheet.title][cell.coordinate].value
                    assert saved is not None or sheet.title == "Takeoff", cell.coordinate
    with zipfile.ZipFile(BytesIO(content)) as parts:
        xml = "".join(
            parts.read(name).decode() for name in parts.namelist() if "worksheets/" in name
        )
    assert count > 100
    assert xml.count("<f>") == count == len(re.findall(r"</f><v>[^<]*</v>", xml))


def test_headings_name_the_units_of_the_farm() -> None:
    for units, area, force, mass in (("imperial", "ft²", "lbf", "lb"), ("metric", "m²", "N", "kg")):
        farm = invented_farm(units)  # type: ignore[arg-type]  # one of the two systems
        book = open_book(made(farm, invented_plan(farm)))
        film = headings(book["Film"], "Tunnel")
        assert {f"Area ({area})", f"Mass ({mass})"} <= set(film)
        assert f"Hardest hand force ({force})" in headings(book["Cranks"], "Tunnel")


def test_pages_are_ready_to_print(farm: Farm) -> None:
    for sheet in open_book(made(farm, invented_plan(farm))):
        assert sheet.page_setup.orientation == "landscape"
        assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert sheet.oddFooter.right.text == "Page &P of &N"
        if sheet.title not in TOLD_SHEETS:
            assert sheet.print_title_rows
            assert sheet.freeze_panes


def test_joined_cells_keep_their_frame_all_round(farm: Farm) -> None:
    air = open_book(made(farm, invented_plan(farm)))["Air"]
    row = next(r for r in air.iter_rows() if r[0].value == "Electricity")
    assert f"B{row[0].row}:J{row[0].row}" in {str(joined) for joined in air.merged_cells.ranges}
    ends = row[1].border, row[9].border
    assert {edge.style for border in ends for edge in (border.top, border.bottom)} == {"thin"}
    assert (ends[0].left.style, ends[1].right.style) == ("thin", "thin")


def test_only_summary_and_working_are_locked_and_without_a_password(farm: Farm) -> None:
    book = open_book(made(farm, invented_plan(farm)))
    assert [s.title for s in book if s.protection.sheet] == ["Summary", "Working"]
    assert all(s.protection.password is None for s in book)


def test_names_that_look_like_formulas_stay_text(farm: Farm) -> None:
    lines = tuple(
        invented_line(f"part{n}", 6.0, 6.0, 1, "2.50", group=text, name=text)
        for n, text in enumerate(HOSTILE)
    )
    hostile = invented_farm(farm.units, name=HOSTILE[0], tunnels=HOSTILE)
    content = made(hostile, invented_plan(hostile, lines))
    book = open_book(content)
    rows = takeoff_rows(book)
    assert [unescape(str(row["Item"])) for row in rows] == HOSTILE
    assert [unescape(str(row["Group"])) for row in rows] == HOSTILE
    for text in HOSTILE:
        named = [r for r in book["Summary"].iter_rows() if unescape(str(r[0].value)) == text]
        assert named
        assert all(r[0].data_type == "s" for r in named)
    assert open_book(content, results=True)["Summary"].title == "Summary"


@pytest.mark.parametrize("name", ["=1+1", "#N/A", "<b>&amp;"])
def test_farm_named_like_a_formula_opens(name: str) -> None:
    hostile = invented_farm(name=name)
    book = open_book(made(hostile, invented_plan(hostile)))
    cells = [cell for row in book["Summary"].iter_rows() for cell in row]
    named = [cell for cell in cells if name in unescape(str(cell.value))]
    assert named
    assert all(cell.data_type == "s" for cell in named)


def test_farm_name_with_ampersand_stands_in_the_page_head() -> None:
    farm = invented_farm(name="Moss & Fern")
    content = made(farm, invented_plan(farm))
    with zipfile.ZipFile(BytesIO(content)) as parts:
        xml = parts.read("xl/worksheets/sheet1.xml").decode()
    assert "Moss &amp;&amp; Fern" in xml
