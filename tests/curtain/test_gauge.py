"""The gauge of a wall in both meanings, against the tables of both."""

import pytest

from hanging import INCH_M
from hoopwright.curtain.gauge import gauge_words
from hoopwright.quantity.working import words

# Birmingham gauge: number and wall in inches (table d_508 of engineeringtoolbox.com).
TUBES = [
    (10, 0.134),
    (11, 0.120),
    (12, 0.109),
    (13, 0.095),
    (14, 0.083),
    (15, 0.072),
    (16, 0.065),
    (17, 0.058),
    (18, 0.049),
    (19, 0.042),
    (20, 0.035),
]
# Manufacturers' standard gauge of sheet steel, in, from memory.
SHEETS = [(14, 0.0747), (16, 0.0598), (17, 0.0538), (18, 0.0478)]


def _said(wall_in: float) -> str:
    return words(gauge_words(wall_in * INCH_M), "imperial")


@pytest.mark.parametrize(("number", "wall_in"), TUBES)
def test_wall_of_the_birmingham_table_has_its_number_among_tubes(
    number: int, wall_in: float
) -> None:
    assert f"{number} gauge of tubes" in _said(wall_in)


@pytest.mark.parametrize(("number", "wall_in"), SHEETS)
def test_wall_of_the_sheet_table_has_its_number_among_sheets(number: int, wall_in: float) -> None:
    assert f"{number} gauge of sheets" in _said(wall_in)


def test_one_wall_can_be_two_gauges() -> None:
    assert _said(0.058) == "A wall of 0.058 in is 17 gauge of tubes and 16 gauge of sheets."


def test_seventeen_of_sheets_is_no_gauge_of_tubes() -> None:
    assert _said(0.0538) == "A wall of 0.054 in is no gauge of tubes and 17 gauge of sheets."


def test_wall_far_from_both_tables_has_no_gauge() -> None:
    assert _said(0.25) == "A wall of 0.250 in has no usual gauge."
    assert _said(0.109) == "A wall of 0.109 in is 12 gauge of tubes and no gauge of sheets."
