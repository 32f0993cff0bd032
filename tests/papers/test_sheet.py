"""Rows and columns of a sheet."""

import pytest
from openpyxl.utils import get_column_letter

from hoopwright.papers.sheet import TEXT, Column, column_letters, list_sheet, wide_row


@pytest.mark.parametrize("number", [1, 19, 26, 27, 52, 53, 702, 703, 16_384])
def test_letters_are_those_of_the_spreadsheet_library(number: int) -> None:
    assert column_letters(number) == get_column_letter(number)


def test_list_is_filtered_from_its_headings_to_its_last_line() -> None:
    columns = (Column("One", 5), Column("Two", 5))
    made = list_sheet("Name", "Title", ("A note.",), columns, [("a", "b"), ("c", "d")], empty="-")
    assert made.header_row == 4
    assert made.filtered == (4, 6)
    assert [e.value for e in made.rows[5].entries if e] == ["c", "d"]


def test_empty_list_says_so_and_has_nothing_to_filter() -> None:
    made = list_sheet("Name", "Title", (), (Column("One", 5),), [], empty="Nothing here.")
    assert made.filtered is None
    assert made.rows[-1].entries[0].value == "Nothing here."


def test_text_beside_a_label_runs_to_the_last_column() -> None:
    assert wide_row("text", TEXT, 8, label="Label").spans == ((2, 8),)
    assert wide_row("text", TEXT, 8).spans == ((1, 8),)
