"""Text that people typed, made fit for a cell and for the head of a page."""

import pytest

from hoopwright.papers.sheet_text import header_text, line_count, safe_text


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("a\x00b\x0bc", "a\ufffdb\ufffdc"),
        ("\ud800", "\ufffd"),
        ("\uffff", "\ufffd"),
        ("one\r\ntwo\rthree", "one\ntwo\nthree"),
        ("_x0041_", "_x005F_x0041_"),
        ("_x004_", "_x004_"),
        ("plain", "plain"),
    ],
)
def test_text_that_no_file_can_hold_is_made_fit(typed: str, kept: str) -> None:
    assert safe_text(typed) == kept


def test_text_longer_than_a_cell_is_cut() -> None:
    cut = safe_text("x" * 40_000)
    assert len(cut) == 32_767
    assert cut.endswith("\u2026")


def test_page_head_shows_an_ampersand_and_stays_short() -> None:
    assert header_text("Moss & Fern\nGarden") == "Moss && Fern Garden"
    assert len(header_text("x" * 300)) == 60


@pytest.mark.parametrize(
    ("text", "signs", "lines"),
    [("", 10, 1), ("one two", 10, 1), ("one two three", 7, 2), ("one\n\ntwo", 10, 3)],
)
def test_lines_break_between_words(text: str, signs: int, lines: int) -> None:
    assert line_count(text, signs) == lines
