"""The decimals of a line: never short, and always the packs of the plan."""

import math
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.papers.sheet_lines import feet_inches, origin_of, shown_quantity
from papers.invented_plan import invented_line

FOOT = Fraction(3048, 10_000)
EIGHTH = Fraction(254, 80_000)
UNITS = st.sampled_from(("imperial", "metric"))
STICKS = st.one_of(
    st.integers(8, 4000).map(lambda n: n * EIGHTH),
    st.integers(50, 300_000).map(lambda n: Fraction(n, 1000)),
)


@given(UNITS, STICKS, st.integers(0, 600), st.sampled_from((0, 1, 2, 7, 999)))
def test_packs_of_a_length_are_those_of_exact_fractions(
    units: str, holds: Fraction, whole: int, over_mm: int
) -> None:
    needed = whole * holds + Fraction(over_mm, 1000)
    packs = math.ceil(needed / holds)
    line = invented_line("part", float(needed), float(holds), packs, "1.00")
    found = shown_quantity(line, units)
    step = Fraction(1, 100) if units == "imperial" else Fraction(1, 1000)
    unit = FOOT if units == "imperial" else Fraction(1)
    short = needed / unit - Fraction(found.needed)
    assert found.packs == packs
    assert short <= Fraction(1, 10**8)
    assert -short < step


@given(UNITS, st.integers(0, 100_000), st.integers(1, 1000), st.integers(0, 50))
def test_pieces_are_whole_and_spares_round_up(
    units: str, needed: int, holds: int, percent: int
) -> None:
    spares = Fraction(needed * percent, 100)
    packs = math.ceil((needed + spares) / holds)
    line = invented_line(
        "part", float(needed), float(holds), packs, "1.00", counted_in="count", spares=float(spares)
    )
    found = shown_quantity(line, units)
    assert (found.needed, found.spares, found.packs) == (needed, math.ceil(spares), packs)


def test_packs_that_do_not_follow_are_refused() -> None:
    line = invented_line("part", 10.0, 6.0, 3, "1.00")
    with pytest.raises(ValueError, match="packs of part"):
        shown_quantity(line, "metric")


def test_roll_of_film_is_counted_as_a_roll() -> None:
    # 20 m are needed from rolls of 30 m, but two sheets need a roll each.
    line = invented_line("film/clear/9.1/30", 20.0, 30.0, 2, "1.00")
    found = shown_quantity(line, "metric")
    assert (found.needed, found.holds, found.packs, found.left_over) == (2, 1, 2, 0)


@pytest.mark.parametrize(
    ("feet", "text"),
    [
        ("0", "0' 0\""),
        ("5.5", "5' 6\""),
        ("33.43", "33' 5 3/16\""),  # 0.43 ft = 5.16 in = 82.56/16 in, nearest 83/16
        ("11.99", "11' 11 7/8\""),  # 0.99 ft = 11.88 in = 190.08/16 in, nearest 190/16
        ("11.999", "12' 0\""),  # 0.999 ft = 11.988 in = 191.8/16 in, nearest a whole foot
    ],
)
def test_feet_are_written_with_inches_and_sixteenths(feet: str, text: str) -> None:
    assert feet_inches(Decimal(feet)) == text


def test_price_of_nothing_that_is_invented_is_no_price() -> None:
    assert origin_of(invented_line("part", 1.0, 1.0, 1, "0.00")) == "no price"
    assert origin_of(invented_line("part", 1.0, 1.0, 1, "0.00", invented=False)) == "entered"
    assert origin_of(invented_line("part", 0.0, 1.0, 0, "0.00")) == "not needed"
    assert origin_of(invented_line("part", 1.0, 1.0, 1, "2.00")) == "invented"
