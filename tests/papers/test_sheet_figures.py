"""Lists described once: headings, formats and cells in the units of the farm."""

from decimal import Decimal

import pytest

from hoopwright.papers.sheet_figures import Figure, list_figures, listed_rows
from hoopwright.quantity.units import Units

Bar = tuple[str, float, float | None, int]

FIGURES: tuple[Figure[Bar], ...] = (
    Figure("Bar", lambda b: b[0], width=12),
    Figure("Length", lambda b: b[1], "size"),
    Figure("Pull", lambda b: b[2], "N"),
    Figure("Joints", lambda b: b[3], "count"),
)
BARS: tuple[Bar, ...] = (("first", 3.0479, 44.48222, 2), ("second", 6.096, None, 0))


def test_sizes_are_rounded_up_and_numbers_to_the_nearest() -> None:
    columns, lines = list_figures(FIGURES, BARS, "imperial")
    assert [c.heading for c in columns] == [
        "Bar",
        "Length (ft)",
        "Length (ft\u00a0in)",
        "Pull (lbf)",
        "Joints",
    ]
    # 3.0479 m are 9.99967 ft; a pound-force is 4.4482216 N (NIST Special Publication 811).
    assert lines[0] == ("first", Decimal("10.00"), "10' 0\"", Decimal("10.0"), 2)
    assert lines[1][3] is None


def test_metric_sizes_stand_in_one_column() -> None:
    columns, lines = list_figures(FIGURES, BARS, "metric")
    assert [c.heading for c in columns] == ["Bar", "Length (m)", "Pull (N)", "Joints"]
    assert lines[0] == ("first", Decimal("3.048"), Decimal("44.5"), 2)


def test_what_nothing_has_gets_no_column() -> None:
    columns, lines = list_figures(FIGURES, BARS[1:], "metric")
    assert [c.heading for c in columns] == ["Bar", "Length (m)", "Joints"]
    assert lines == [("second", Decimal("6.096"), 0)]


def test_nothing_to_list_keeps_all_headings() -> None:
    columns, lines = list_figures(FIGURES, (), "metric")
    assert (len(columns), lines) == (4, [])


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_shares_are_shown_in_percent(units: Units) -> None:
    shares: tuple[Figure[float], ...] = (Figure("Open", lambda s: s, "share"),)
    (column,), ((value,),) = list_figures(shares, (0.16,), units)
    assert (column.heading, column.number, value) == ("Open", "0.0%", Decimal("0.160"))


def test_a_list_says_when_it_is_empty() -> None:
    rows = listed_rows("Bars", FIGURES, (), "metric", 6, "No bar.")
    assert [e.value for row in rows for e in row.entries if e] == ["Bars", "No bar."]


def test_amounts_of_money_have_two_decimals_and_no_unit() -> None:
    costs: tuple[Figure[Decimal], ...] = (Figure("Power", lambda c: c, "money"),)
    (column,), ((value,),) = list_figures(costs, (Decimal("84.1"),), "imperial")
    assert (column.heading, column.number, value) == ("Power", "#,##0.00", Decimal("84.1"))
