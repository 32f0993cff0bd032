"""Lines beside the choice of a width: one for each stock width, with a working each."""

from dataclasses import replace

import pytest

from hoopwright.desktop.fit_words import fit_lines, widths_words
from hoopwright.quantity.units import Units
from papers.invented_fit import invented_fit

SHEET = invented_fit("film").sheets[0]


def test_every_width_worth_a_word_has_a_line_and_the_chosen_says_so() -> None:
    lines = fit_lines(SHEET, "metric")
    assert [(line.label, line.text) for line in lines] == [
        ("girths read", "5 of 20 bows"),
        ("longest girth", "8.800 m at bow 3"),
        ("9.100 m stock", "too narrow by 0.200 m"),
        ("9.500 m stock, chosen", "1 in 40 too short"),
        ("10.000 m stock", "never in this spread"),
        ("if bow 3 is read again", "same stock width"),
    ]
    assert [line.working.figure for line in lines] == [
        "governing_m",
        "governing_m",
        "widths",
        "widths",
        "widths",
        "remeasured",
    ]


def test_a_reading_that_could_change_the_stock_names_the_width() -> None:
    again = SHEET.remeasured
    assert again is not None
    other = replace(SHEET, remeasured=replace(again, changes=True, stock_width_m=9.1))
    assert fit_lines(other, "metric")[-1].text == "9.100 m may do"
    none = replace(SHEET, remeasured=replace(again, changes=True, stock_width_m=None))
    assert fit_lines(none, "metric")[-1].text == "no stock holds it"


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_widths_are_one_sentence(units: Units) -> None:
    said = widths_words(SHEET, units)
    assert said.startswith("Roof sheet: ")
    assert said.endswith("1 in 40 too short; " + said.split("; ")[-1])
    assert said.endswith(": never in this spread.")


def test_without_a_reading_there_is_no_longest_and_nothing_to_read_again() -> None:
    bare = replace(SHEET, read_count=0, governing_bow=None, remeasured=None)
    lines = fit_lines(bare, "metric")
    assert [line.label for line in lines[:2]] == ["girths read", "9.100 m stock"]
    assert lines[0].text == "0 of 20 bows"
