"""Leaks from readings: sums by hand, a hole put in and found again."""

import math
from dataclasses import replace

import pytest
from fluids.flow_meter import differential_pressure_meter_solver

from hoopwright.pressure.balance import balance_air
from hoopwright.pressure.fan import FanCurve
from hoopwright.pressure.hose import Hose
from hoopwright.pressure.net import AirCell, AirNet, Feed, Jump
from hoopwright.pressure.readings import find_leak, hole_area, unit_leak

HOSE = Hose(0.05, 1.2)
NET = AirNet(
    (AirCell("roof", 1.7e-3), AirCell("left", 3e-4), AirCell("right", 3e-4), AirCell("end", 2e-4)),
    (Jump("roof", "left", HOSE), Jump("roof", "right", HOSE), Jump("left", "end", HOSE)),
    (Feed("roof", Hose(0.075, 1.0)),),
    FanCurve(((0.0, 150.0), (0.02, 120.0), (0.045, 0.0))),
)


def _read(torn: str, extra: float, *cells: str) -> list[tuple[str, float]]:
    """Return what gauges show when one cell leaks more than planned."""
    leaking = tuple(
        replace(cell, unit_leak_m3_s=cell.unit_leak_m3_s + extra * (cell.mark == torn))
        for cell in NET.cells
    )
    found = balance_air(replace(NET, cells=leaking))
    return [(cell, found.pressure_pa(cell)) for cell in cells]


# Worked by hand: 0.0243 m3/s at 60 Pa with power 0.65: 60**0.65 = exp(0.65 x 4.0943) = 14.32, so
# 0.0243 / 14.32 = 1.697e-3 at one pascal.
def test_leak_at_one_pascal_agrees_with_the_hand_sum() -> None:
    assert unit_leak(0.0243, 60.0) == pytest.approx(1.697e-3, rel=1e-3)
    assert unit_leak(0.02, 1.0, 0.5) == 0.02


# An orifice of 20 mm in a pipe so wide that it plays no part, at 50 Pa: the library's discharge
# coefficient (ISO 5167) is near 0.6.
def test_hole_is_the_orifice_of_the_library() -> None:
    mass_kg_s = differential_pressure_meter_solver(
        D=0.5,
        D2=0.02,
        P1=101325.0,
        P2=101275.0,
        rho=1.204,
        mu=1.82e-5,
        k=1.4,
        meter_type="orifice",
        taps="corner",
    )
    area_m2 = hole_area(mass_kg_s / 1.204, 50.0)
    assert area_m2 == pytest.approx(math.pi / 4 * 0.02**2, rel=0.03)


@pytest.mark.parametrize("torn", ["left", "right", "end"])
def test_hole_put_in_is_found_again(torn: str) -> None:
    found = find_leak(NET, _read(torn, 7e-4, "roof", "left", "right", "end"))
    assert found.cell == torn
    assert found.as_likely == ()
    assert found.extra_unit_leak_m3_s == pytest.approx(7e-4, rel=1e-2)
    assert found.misfit_pa < 0.01 < found.planned_misfit_pa
    assert found.misfits_pa[0][0] == torn
    assert len(found.misfits_pa) == len(NET.cells)


def test_two_readings_point_to_the_side_that_leaks() -> None:
    readings = _read("left", 7e-4, "left", "right")
    found = find_leak(NET, readings)
    assert found.cell == "left"
    at_pa = readings[0][1]
    assert found.extra_m3_s == pytest.approx(7e-4 * at_pa**0.65, rel=1e-2)
    assert found.hole_m2 == pytest.approx(hole_area(7e-4 * at_pa**0.65, at_pa), rel=1e-2)


# The end takes its air through the left cell: a greater leak there lowers the left one as much. A
# third reading at the end tells them apart.
def test_cell_behind_is_as_likely_until_it_is_read() -> None:
    assert find_leak(NET, _read("left", 7e-4, "left", "right")).as_likely == ("end",)
    found = find_leak(NET, _read("left", 7e-4, "left", "right", "end"))
    assert (found.cell, found.as_likely) == ("left", ())


# Roof and right lose the same whether the air leaves by the roof or by the left cell.
def test_readings_that_cannot_tell_cells_apart_name_them_all() -> None:
    found = find_leak(NET, _read("left", 7e-4, "roof", "right"))
    assert {found.cell, *found.as_likely} == {"roof", "left", "end"}


def test_coarse_gauge_names_nothing() -> None:
    readings = _read("left", 7e-4, "left", "right")
    assert find_leak(NET, readings, gauge_pa=100.0).cell is None


def test_net_as_planned_has_no_leak_to_find() -> None:
    found = find_leak(NET, _read("left", 0.0, "roof", "left", "right"))
    assert found.cell is None
    assert found.planned_misfit_pa == pytest.approx(0.0, abs=1e-9)


def test_cells_tighter_than_planned_name_none() -> None:
    higher = [(cell, pa + 5) for cell, pa in _read("left", 0.0, "roof", "left", "right")]
    found = find_leak(NET, higher)
    assert found.cell is None
    assert found.extra_m3_s == found.hole_m2 == 0.0
    assert found.misfit_pa == pytest.approx(5.0)
    assert found.as_likely == ()


@pytest.mark.parametrize(
    ("readings", "words"),
    [
        ([("roof", 40.0)], "at least two different cells"),
        ([("roof", 40.0), ("roof", 41.0)], "at least two different cells"),
        ([("roof", 40.0), ("left", 41.0), ("left", 40.0)], "each once"),
        ([("roof", 40.0), ("loft", 41.0)], "'loft' is no cell with air"),
        ([("roof", 40.0), ("left", -1.0)], "'left' must be zero or more"),
    ],
)
def test_search_refuses_readings_it_cannot_use(
    readings: list[tuple[str, float]], words: str
) -> None:
    with pytest.raises(ValueError, match=f"^readings: .*{words}"):
        find_leak(NET, readings)


def test_leak_refuses_readings_that_cannot_be() -> None:
    with pytest.raises(ValueError, match="pressure_pa above zero"):
        unit_leak(0.02, 0.0)
    with pytest.raises(ValueError, match=r"exponent must be from 0\.5 to 1"):
        unit_leak(0.02, 50.0, 0.3)
    with pytest.raises(ValueError, match="zero or more"):
        hole_area(-0.1, 50.0)
