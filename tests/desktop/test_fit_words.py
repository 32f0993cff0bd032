"""Lines beside the choice of a width: one for each stock width, with a working each."""

from dataclasses import replace

import pytest

from hoopwright.desktop.fit_words import fit_lines, widths_words
from hoopwright.quantity.units import Units
from papers.invented_fit import invented_fit

SHEET = invented_fit("film").sheets[0]


def test_every_width_has_a_line_and_the_chosen_says_so() -> None:
    lines = fit_lines(SHEET, "metric")
    assert [(line.label, line.text) for line in lines[:4]] == [
        ("girths read", "5 of 20 bows, longest 8.800 m at bow 3"),
        ("9.100 m stock", "0.200 m narrower than the sheet, as good as always too short"),
        ("9.500 m stock, chosen", "0.200 m to spare, 1 in 40 too short"),
        ("10.000 m stock", "0.700 m to spare, never in this spread"),
    ]
    assert lines[4].label == "if read again"
    assert "the order does not change" in lines[4].text
    assert [line.working.figure for line in lines] == [
        "governing_m",
        "widths",
        "widths",
        "widths",
        "remeasured",
    ]


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_widths_are_one_sentence(units: Units) -> None:
    said = widths_words(SHEET, units)
    assert said.startswith("Roof sheet: ")
    assert said.endswith("1 in 40 too short; " + said.split("; ")[-1])
    assert said.endswith(": never in this spread.")


def test_without_a_reading_there_is_no_longest_and_nothing_to_read_again() -> None:
    bare = replace(SHEET, read_count=0, governing_bow=None, remeasured=None)
    lines = fit_lines(bare, "metric")
    assert lines[0].text == "0 of 20 bows"
    assert len(lines) == 1 + len(SHEET.widths)
