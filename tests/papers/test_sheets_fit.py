"""Stock widths on paper: every width with its spare and its chance, in the units of the farm."""

from dataclasses import replace
from typing import Any

import pytest

from hoopwright.fit import Fit
from hoopwright.papers.sheet import Sheet
from hoopwright.papers.sheets_fit import fit_sheet
from hoopwright.plan import plan
from hoopwright.quantity.units import Units
from papers.invented_fit import invented_fit
from samples import CLEAR, small_farm


def sheet_of(units: Units, fit: Fit) -> Sheet:
    """Return the sheet of the small farm with this fit in its tunnel."""
    farm = small_farm().but(units=units)
    whole = plan(farm)
    return fit_sheet(farm, replace(whole, tunnels=(replace(whole.tunnels[0], fit=fit),)))


def values(sheet: Sheet) -> list[list[Any]]:
    return [[None if e is None else e.value for e in row.entries] for row in sheet.rows]


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_every_width_stands_there_with_spare_and_chance(units: Units) -> None:
    rows = values(sheet_of(units, invented_fit(CLEAR)))
    start = next(n for n, row in enumerate(rows) if "In words" in row)
    head, lines = rows[start], rows[start + 1 :]
    imperial = units == "imperial"
    unit = "ft" if imperial else "m"
    width, spare = head.index(f"Stock width ({unit})"), head.index(f"Spare ({unit})")
    # 9.1, 9.5 and 10 m are 29.86, 31.17 and 32.81 ft; 0.2 and 0.7 m are 0.66 and 2.30 ft.
    assert [float(line[width]) for line in lines] == (
        [29.86, 31.17, 32.81] if imperial else [9.1, 9.5, 10]
    )
    assert [float(line[spare]) for line in lines] == (
        [-0.66, 0.66, 2.3] if imperial else [-0.2, 0.2, 0.7]
    )
    assert [line[head.index("In words")] for line in lines] == [
        "as good as always too short",
        "1 in 40 too short",
        "never in this spread",
    ]
    assert [line[head.index("Choice")] for line in lines] == ["", "narrowest that holds it", ""]


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_the_model_and_what_the_sheet_rests_on_are_told(units: Units) -> None:
    said = " ".join(
        str(value) for row in values(sheet_of(units, invented_fit(CLEAR))) for value in row
    )
    assert "an outlier counts like any other" in said
    assert "the longest of 5 girths from hip to hip" in said
    assert "the order does not change" in said


@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_a_farm_without_sheets_over_its_bows_has_no_lists(units: Units) -> None:
    rows = values(sheet_of(units, Fit(sheets=())))
    assert sum("No sheet over the bows is cut of new film." in row for row in rows) == 2
