"""Gutters, shade cloth and screens in the workbook, in the units of the farm."""

from decimal import Decimal

import pytest

from hoopwright.farm import Farm, Rain, Screen, Shade
from hoopwright.papers.sheet import Row, Value
from hoopwright.papers.sheets_outfit import LAST, outfit_explained, outfit_sheet
from hoopwright.papers.sheets_words import working_sheet
from hoopwright.plan import plan
from hoopwright.quantity.units import Units
from outfit.fitted import with_gutters
from samples import side, small_farm, tunnel

GALLON_M3 = Decimal("0.003785411784")
FOOT_M = Decimal("0.3048")


def _farm(units: Units = "metric") -> Farm:
    sides = (side("West side", screen=Screen(part="crank", flow_share=0.5)), side("East side"))
    made = with_gutters(tunnel(sides=sides), 1).but(
        rain=Rain(depth_m=0.0127, runoff_share=1.0, tank_m3=2.0),
        shade=Shade(part="crank", cloth_width_m=12.0, hang_m=0.2),
    )
    return small_farm(made).but(units=units)


def _rows(farm: Farm) -> tuple[Row, ...]:
    return outfit_sheet(farm, plan(farm)).rows


def _line(rows: tuple[Row, ...], title: str) -> dict[str, Value]:
    """Return the first line of a list by its headings."""
    texts = [[None if e is None else e.value for e in row.entries] for row in rows]
    at = next(n for n, row in enumerate(texts) if row[:1] == [title])
    return {str(head): value for head, value in zip(texts[at + 1], texts[at + 2], strict=True)}


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_water_of_a_gutter_is_listed(units: Units) -> None:
    line = _line(_rows(_farm(units)), "Rain in the gutters")
    # Half the span and half the tube, 4.024 m over 24 m, times half an inch: 1.2265 m3.
    water_m3 = Decimal("4.024") * 24 * Decimal("0.0127")
    assert line["Side"] == "East side"
    if units == "metric":
        assert line["Water of one rain (L)"] == round(water_m3 * 1000)
        assert line["Gutter (m)"] == 24
    else:
        assert line["Water of one rain (gal)"] == round(water_m3 / GALLON_M3)
        assert line["Gutter (ft)"] == round(24 / FOOT_M, 2)


def test_outlets_and_tank_are_listed() -> None:
    rows = _rows(_farm())
    outlets = _line(rows, "Outlets, fall and pipes")
    # 24 m with a reach of 12 m; 0.4 % of 12 m fall; the hip at 1.5 m less 0.15 m.
    assert (outlets["Outlets it takes"], outlets["Outlets it has"]) == (2, 2)
    assert outlets["Fall of that run (mm)"] == 48
    assert outlets["Each pipe down to the ground (m)"] == Decimal("1.350")
    kept = _line(rows, "Water kept")
    assert kept["Tank holds (L)"] == 2000
    assert kept["Rains that fill it"] == round(Decimal(2) / Decimal("1.2265"), 2)
    assert kept["Runs over in one rain (L)"] == 0


def test_cloth_and_screen_are_listed() -> None:
    rows = _rows(_farm())
    cloth = _line(rows, "Shade cloth")
    assert (cloth["Widths lie"], cloth["Widths"]) == ("along the tunnel", 1)
    assert cloth["Length of each (m)"] == Decimal("24.400")
    screen = _line(rows, "Insect screens")
    # From pocket to pocket 21 m and 0.1 m past each end; half of what opens.
    assert screen["Length of each (m)"] == Decimal("21.200")
    assert screen["Hole (\u00b5m)"] == 340
    half, whole = screen["Opening for the air (m\u00b2)"], screen["Clear opening (m\u00b2)"]
    assert isinstance(half, Decimal)
    assert isinstance(whole, Decimal)
    assert half * 2 == pytest.approx(whole, abs=Decimal("0.2"))


def test_cautions_and_published_figures_stand_below() -> None:
    said = " ".join(str(e.value) for row in _rows(_farm()) for e in row.entries if e is not None)
    for part in ("qualified engineer", "scratches the film", "advise against screens"):
        assert part in said


def test_every_result_is_named_for_the_workings() -> None:
    farm = _farm()
    (planned,) = plan(farm).tunnels
    named = dict(outfit_explained(farm.tunnels[0], planned.chosen.outfit))
    assert list(named) == [
        "Meadow tunnel, rain",
        "Meadow tunnel, East side: gutter",
        "Meadow tunnel, shade cloth",
        "Meadow tunnel, West side: insect screen",
    ]
    assert all(thing.workings for thing in named.values())
    sheet = working_sheet(farm, plan(farm))
    texts = {str(row.entries[0].value) for row in sheet.rows if row.entries and row.entries[0]}
    assert set(named) <= texts


def test_lists_say_so_when_nothing_is_added() -> None:
    farm = small_farm(tunnel())
    said = [row.entries[0].value for row in _rows(farm) if row.entries and row.entries[0]]
    for part in ("No gutter carries rain.", "There is no shade cloth.", "No side has one."):
        assert part in said


@pytest.mark.parametrize("units", ["metric", "imperial"])
def test_no_list_is_wider_than_the_sheet(units: Units) -> None:
    assert max(len(row.entries) for row in _rows(_farm(units))) <= LAST
