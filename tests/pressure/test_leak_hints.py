"""What readings tell: leaks by hand, a hole put into the net and found again."""

from dataclasses import replace

import pytest
from fluids.flow_meter import differential_pressure_meter_solver

from hoopwright.farm import AirReading
from hoopwright.pressure.balance import balance_air
from hoopwright.pressure.held import Held
from hoopwright.pressure.holding import leaking_cell
from hoopwright.quantity.working import words
from inflated import filled

ROOF, CURTAIN, OTHER = "cell/roof/0", "cell/side/0/panel/1", "cell/side/1/panel/0"


def _read(
    day: str, cell: str, pressure_pa: float, flow: float | None = None, *, baseline: bool = False
) -> AirReading:
    return AirReading(
        taken_on=day, cell=cell, pressure_pa=pressure_pa, flow_m3_s=flow, baseline=baseline
    )


def _held(*readings: AirReading, **air: object) -> Held:
    return filled(readings=readings, **air).held()


# 0.0243 m3/s at 60 Pa with the power 0.65 are 0.0243 (50/60)^0.65 = 0.02158 m3/s at 50 Pa. An
# orifice that lets 0.02158 through at 50 Pa: the library's with its discharge coefficient (ISO
# 5167, near 0.6) in a pipe so wide that it plays no part.
def test_a_reading_with_air_is_told_as_a_hole() -> None:
    (hint,) = _held(_read("2026-03-14", ROOF, 60.0, 0.0243, baseline=True)).leaks
    assert hint.leak_m3_s == pytest.approx(0.02158, rel=1e-3)
    bore = differential_pressure_meter_solver(
        D=3.0,
        rho=1.204,
        mu=1.82e-5,
        k=1.4,
        m=0.02158 * 1.204,
        P1=101325.0,
        P2=101275.0,
        meter_type="ISO 5167 orifice",
        taps="corner",
    )
    assert hint.hole_m2 == pytest.approx(3.14159 / 4 * bore**2, rel=0.03)
    assert (hint.baseline_on, hint.grown_m2, hint.fallen_pa) == ("", None, None)
    assert "baseline" in words(hint.told, "metric")


# Twice the air at one pressure is twice the leak and twice the hole.
def test_a_later_reading_is_set_against_the_last_baseline_of_its_cell() -> None:
    hints = _held(
        _read("2026-05-01", ROOF, 60.0, 0.04),
        _read("2024-03-14", ROOF, 70.0, 0.01, baseline=True),
        _read("2025-03-14", ROOF, 60.0, 0.02, baseline=True),
        _read("2025-03-15", CURTAIN, 66.0, 0.02, baseline=True),
        _read("2027-01-01", ROOF, 60.0, 0.02, baseline=True),
    ).leaks
    assert [hint.taken_on for hint in hints] == sorted(hint.taken_on for hint in hints)
    later, sound = hints[3], hints[1]
    assert later.baseline_on == "2025-03-14"
    assert later.fallen_pa == 0.0
    assert sound.hole_m2 is not None
    assert later.grown_m2 == pytest.approx(sound.hole_m2)
    assert "more" in words(later.told, "metric")


def test_a_tighter_skin_is_told_as_less() -> None:
    hints = _held(
        _read("2025-03-14", ROOF, 60.0, 0.02, baseline=True), _read("2026-05-01", ROOF, 64.0, 0.01)
    ).leaks
    assert hints[1].grown_m2 is not None
    assert hints[1].grown_m2 < 0
    assert hints[1].fallen_pa == -4.0
    assert "less" in words(hints[1].told, "metric")


def test_without_measured_air_the_fall_in_pressure_is_told() -> None:
    hints = _held(
        _read("2025-03-14", CURTAIN, 60.0, baseline=True),
        _read("2026-05-01", CURTAIN, 45.0),
        _read("2026-05-01", OTHER, 45.0),
    ).leaks
    assert hints[1].fallen_pa == 15.0
    assert hints[1].leak_m3_s is None
    assert "lower" in words(hints[1].told, "metric")
    assert (hints[2].baseline_on, hints[2].fallen_pa) == ("2025-03-14", None)
    assert "planned" in words(hints[2].told, "metric")


def test_readings_of_unknown_cells_and_of_none_are_told_too() -> None:
    assert _held().leaks == ()
    (hint,) = _held(_read("2026-05-01", "cell/side/9/panel/9", 0.0, 0.02)).leaks
    assert (hint.planned_pa, hint.leak_m3_s, hint.hole_m2) == (0.0, None, None)


def _torn(held: Held, torn: str, extra: float, scale: float = 1.0) -> dict[str, float]:
    """Return the pressures of the cells when all leak more and one has a hole."""
    assert held.net is not None
    cells = tuple(
        replace(c, unit_leak_m3_s=scale * c.unit_leak_m3_s + extra * (c.mark == torn))
        for c in held.net.cells
    )
    found = balance_air(replace(held.net, cells=cells))
    return dict(zip(found.cells, found.pressures_pa, strict=True))


def test_a_hole_in_a_curtain_is_found_from_three_gauges() -> None:
    made = _held(jumper_hose_m=6.0)
    pressures = _torn(made, CURTAIN, 6e-4)
    readings = [_read("2026-05-01", cell, pressures[cell]) for cell in (ROOF, CURTAIN, OTHER)]
    found = leaking_cell(_held(*readings, jumper_hose_m=6.0))
    assert found is not None
    assert found.cell == CURTAIN
    assert found.extra_m3_s == pytest.approx(6e-4 * pressures[CURTAIN] ** 0.65, rel=0.1)
    assert "West side, curtain 2" in words(found.told, "metric")


def test_a_skin_that_always_leaked_more_has_no_hole() -> None:
    made = _held(jumper_hose_m=6.0)
    pressures = _torn(made, ROOF, 0.0, scale=1.6)
    flow = 1.6 * sum(c.unit_leak_m3_s for c in made.net.cells) * 50**0.65 if made.net else 0.0
    later = [_read("2026-05-01", cell, pressures[cell]) for cell in (ROOF, CURTAIN)]
    blind = leaking_cell(_held(*later, jumper_hose_m=6.0))
    assert blind is not None
    assert blind.cell != ""
    sound = _read("2025-03-14", ROOF, 50.0, flow, baseline=True)
    told = leaking_cell(_held(sound, *later, jumper_hose_m=6.0))
    assert told is not None
    assert (told.cell, told.hole_m2) == ("", 0.0)
    assert "sound skin" in words(told.told, "metric")


@pytest.mark.parametrize(
    "readings",
    [
        (),
        (_read("2026-05-01", ROOF, 50.0),),
        (_read("2026-05-01", ROOF, 50.0), _read("2026-05-02", CURTAIN, 40.0)),
        (_read("2026-05-01", ROOF, 50.0), _read("2026-05-01", "cell/end/1", 40.0)),
        (
            _read("2026-05-01", ROOF, 50.0, baseline=True),
            _read("2026-05-01", CURTAIN, 40.0, baseline=True),
        ),
    ],
)
def test_one_cell_a_day_points_nowhere(readings: tuple[AirReading, ...]) -> None:
    assert leaking_cell(_held(*readings)) is None


def test_without_air_no_cell_is_looked_for() -> None:
    readings = (_read("2026-05-01", ROOF, 50.0), _read("2026-05-01", CURTAIN, 40.0))
    assert leaking_cell(_held(*readings, blower=None)) is None
