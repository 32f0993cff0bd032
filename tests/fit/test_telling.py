"""Chances and widths in words: short, with units, and never more digits than are known."""

import pytest

from fit.fitted import BENT, bent_tunnel, fitted, stocked
from hoopwright.fit.telling import chance_words, tell_sheet, telling_widths
from hoopwright.quantity.working import words


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (1 / 40, "1 in 40 too short"),
        (1 / 41.4, "1 in 41 too short"),
        (1 / 1234, "1 in 1,200 too short"),
        (1 / 3, "1 in 3 too short"),
        (0.5, "5 in 10 too short"),
        (0.97, "9 in 10 too short"),
        (0.99995, "as good as always too short"),
        (1.0, "as good as always too short"),
        (0.00009, "never in this spread"),
        (0.0, "never in this spread"),
        (0.0001, "1 in 10,000 too short"),
        (None, "no chance can be told"),
    ],
)
def test_a_chance_is_said_in_so_many_rolls(chance: float | None, said: str) -> None:
    assert words(chance_words(chance), "imperial") == said


def test_the_story_of_the_bent_bow_is_told() -> None:
    (sheet,) = fitted(bent_tunnel()).sheets
    rests, widths, again = (words(told, "imperial") for told in tell_sheet(sheet))
    assert "the longest of 5 girths from hip to hip" in rests
    assert "at bow 22; 22 bows stand there." in rests
    assert "as good as always too short; " in widths
    assert "1 in " in widths
    assert "the order does not change" in again
    assert "Bow 22 governs" in again


def test_widths_are_told_from_one_below_the_chosen_to_the_first_that_is_sure() -> None:
    even = {bow: BENT[1] + 0.001 * bow for bow in range(1, 20)}
    (sheet,) = fitted(bent_tunnel(even)).sheets
    told = telling_widths(sheet)
    assert [width.chosen for width in told] == [False, True]
    (bent,) = fitted(bent_tunnel({1: BENT[1], 2: BENT[22]})).sheets
    assert telling_widths(bent)[-1] == bent.widths[-1]


def test_without_a_chance_one_width_above_the_chosen_is_enough() -> None:
    (sheet,) = fitted(bent_tunnel({}), stocked(stocks_ft=(24, 32, 34, 36, 40, 48))).sheets
    told = telling_widths(sheet)
    assert [width.chosen for width in told] == [False, True, False]
    assert all(width.chance is None for width in told)


def test_another_stock_after_reading_again_is_told_with_the_one_of_now() -> None:
    (sheet,) = fitted(bent_tunnel(), stocked(stocks_ft=(24, 32.5, 34))).sheets
    again = [words(told, "imperial") for told in tell_sheet(sheet)][-1]
    assert "is enough; now it is" in again
    (narrow,) = fitted(bent_tunnel(), stocked(stocks_ft=(24, 32.5))).sheets
    assert [words(told, "metric") for told in tell_sheet(narrow)][-1].endswith(
        "is enough; now none is wide enough."
    )


def test_what_cannot_be_told_is_said_in_one_sentence() -> None:
    (none,) = fitted(bent_tunnel({})).sheets
    (said,) = [words(told, "metric") for told in tell_sheet(none)]
    assert "no girth was read" in said
    (one,) = fitted(bent_tunnel({4: BENT[22]})).sheets
    (said,) = [words(told, "metric") for told in tell_sheet(one)]
    assert "one reading tells no spread" in said
