"""What a gauge at the cells and at the blower tells about the leaks.

A flow and a pressure measured together give a leak. Pressures measured at several cells, set
against those of the net as planned, point to the cell that leaks more than it should: a hole in one
cell lowers that cell and those behind it more than the rest. For every cell the extra leak is
sought that brings the whole net nearest to the readings. Cells that come as near, to what the gauge
can tell, are as good; of these the one that needs the smallest leak is named, and the others are
listed beside it.
"""

import math
from collections.abc import Sequence
from dataclasses import replace

from msgspec import Struct

from hoopwright.pressure.balance import balance_air
from hoopwright.pressure.hose import AIR_KG_M3
from hoopwright.pressure.net import EXPONENT, LEAST_EXPONENT, MOST_EXPONENT, AirNet, split_joined

# What a sharp-edged hole lets through of the flow without losses (textbook).
HOLE_SHARE = 0.61
FEWEST = 2
# What a gauge for such pressures tells apart, Pa; assumed, no published source.
GAUGE_PA = 1.0

_DECADES = 8
_STEPS_A_DECADE = 3
_NARROWINGS = 30
_GOLDEN = (math.sqrt(5) - 1) / 2


class LeakSearch(Struct, frozen=True, kw_only=True):
    """Which cell's extra leak explains measured pressures best.

    Attributes:
        cell: The cell; None when no extra leak comes nearer than the net as planned by more
            than the gauge can tell.
        extra_unit_leak_m3_s: Its extra leak at one pascal, m3/s.
        extra_m3_s: What that leaks at the pressure found, m3/s.
        hole_m2: A sharp-edged hole that lets as much through, m2.
        misfit_pa: Root mean square of the differences left, Pa.
        planned_misfit_pa: The same for the net as planned, Pa.
        misfits_pa: The same for every cell with air, the nearest first.
        as_likely: Other cells whose leak explains the readings as well, to what the gauge tells.
    """

    cell: str | None
    extra_unit_leak_m3_s: float
    extra_m3_s: float
    hole_m2: float
    misfit_pa: float
    planned_misfit_pa: float
    misfits_pa: tuple[tuple[str, float], ...]
    as_likely: tuple[str, ...]


def unit_leak(flow_m3_s: float, pressure_pa: float, exponent: float = EXPONENT) -> float:
    """Return the leak at one pascal from a flow and a pressure measured together, m3/s.

    Args:
        flow_m3_s: All that the blower gives, m3/s, zero or more.
        pressure_pa: Pressure it holds, Pa, above zero.
        exponent: Power of the pressure, from 0.5 to 1.

    Raises:
        ValueError: A reading or the exponent is out of its range.

    Source:
        Leak as a power of the pressure: `hoopwright.pressure.net`.
    """
    _check_reading(flow_m3_s, pressure_pa)
    if not LEAST_EXPONENT <= exponent <= MOST_EXPONENT:
        raise ValueError(
            f"exponent must be from 0.5 to 1, not {exponent!r}. Enter {EXPONENT} when it is not "
            "known."
        )
    return flow_m3_s / math.pow(pressure_pa, exponent)


def hole_area(flow_m3_s: float, pressure_pa: float) -> float:
    """Return the sharp-edged hole that lets a flow through at a pressure, m2.

    Args:
        flow_m3_s: The flow, m3/s, zero or more.
        pressure_pa: The pressure, Pa, above zero.

    Raises:
        ValueError: A reading is out of its range.

    Source:
        Q = Cd A sqrt(2 p / rho) with Cd 0.61 (textbook).
    """
    _check_reading(flow_m3_s, pressure_pa)
    return flow_m3_s / (HOLE_SHARE * math.sqrt(2 * pressure_pa / AIR_KG_M3))


def find_leak(
    net: AirNet, readings: Sequence[tuple[str, float]], gauge_pa: float = GAUGE_PA
) -> LeakSearch:
    """Return the cell whose extra leak explains measured pressures best.

    Args:
        net: The net as planned.
        readings: Cell and measured pressure in Pa, at least two different cells.
        gauge_pa: What the gauge tells apart, Pa, zero or more.

    Raises:
        ValueError: Fewer than two readings, a cell unknown, without air or read twice, or a
            pressure below zero; see also `balance_air`.

    Source:
        Derived here: least squares over one extra leak at a time, see the module.
    """
    _check_readings(net, readings)
    planned_pa = _misfit(net, readings, None, 0.0)
    joined, _ = split_joined(net)
    found = sorted((*_best_leak(net, readings, c.mark), c.mark) for c in joined)
    as_good = [(extra, misfit, mark) for misfit, extra, mark in found]
    as_good = [tried for tried in as_good if tried[1] <= found[0][0] + gauge_pa]
    extra, misfit_pa, mark = min(as_good)
    named = planned_pa > found[0][0] + gauge_pa
    extra_m3_s, hole_m2 = _told_leak(net, mark, extra) if named else (0.0, 0.0)
    return LeakSearch(
        cell=mark if named else None,
        extra_unit_leak_m3_s=extra if named else 0.0,
        extra_m3_s=extra_m3_s,
        hole_m2=hole_m2,
        misfit_pa=misfit_pa if named else planned_pa,
        planned_misfit_pa=planned_pa,
        misfits_pa=tuple((cell, misfit) for misfit, _, cell in found),
        as_likely=tuple(cell for _, _, cell in as_good if cell != mark) if named else (),
    )


def _told_leak(net: AirNet, mark: str, extra: float) -> tuple[float, float]:
    """Return what an extra leak of a cell lets out, m3/s, and the hole that does, m2."""
    pressure_pa = balance_air(_with_leak(net, mark, extra)).pressure_pa(mark)
    exponent = next(cell.exponent for cell in net.cells if cell.mark == mark)
    extra_m3_s = extra * math.pow(pressure_pa, exponent)
    return extra_m3_s, hole_area(extra_m3_s, pressure_pa)


def _best_leak(
    net: AirNet, readings: Sequence[tuple[str, float]], mark: str
) -> tuple[float, float]:
    """Return the least misfit by a leak in one cell, Pa, and that leak, m3/s at one pascal.

    Coarse steps over all decades that matter find the valley, golden sections its floor.
    """
    top = math.log10(net.fan.most_m3_s)

    def misfit(power: float) -> float:
        return _misfit(net, readings, mark, 10.0**power)

    grid = [top - step / _STEPS_A_DECADE for step in range(_DECADES * _STEPS_A_DECADE)]
    middle = min(grid, key=misfit)
    low, high = middle - 1 / _STEPS_A_DECADE, middle + 1 / _STEPS_A_DECADE
    for _ in range(_NARROWINGS):
        left, right = high - _GOLDEN * (high - low), low + _GOLDEN * (high - low)
        if misfit(left) < misfit(right):
            high = right
        else:
            low = left
    best = (low + high) / 2
    return misfit(best), 10.0**best


def _misfit(
    net: AirNet, readings: Sequence[tuple[str, float]], mark: str | None, extra: float
) -> float:
    found = balance_air(net if mark is None else _with_leak(net, mark, extra))
    squares = [(found.pressure_pa(cell) - read_pa) ** 2 for cell, read_pa in readings]
    return math.sqrt(sum(squares) / len(squares))


def _with_leak(net: AirNet, mark: str, extra: float) -> AirNet:
    cells = tuple(
        replace(cell, unit_leak_m3_s=cell.unit_leak_m3_s + extra) if cell.mark == mark else cell
        for cell in net.cells
    )
    return replace(net, cells=cells)


def _check_reading(flow_m3_s: float, pressure_pa: float) -> None:
    if not (0 <= flow_m3_s < math.inf and 0 < pressure_pa < math.inf):
        raise ValueError(
            f"flow_m3_s must be zero or more and pressure_pa above zero, not {flow_m3_s!r} and "
            f"{pressure_pa!r}. Enter both as read on the gauges."
        )


def _check_readings(net: AirNet, readings: Sequence[tuple[str, float]]) -> None:
    joined = {cell.mark for cell in split_joined(net)[0]}
    read = [cell for cell, _ in readings]
    if len(set(read)) < FEWEST or len(set(read)) < len(read):
        raise ValueError(
            "readings: give the pressure of at least two different cells, each once. One alone "
            "fits a leak anywhere."
        )
    for cell, read_pa in readings:
        if cell not in joined:
            raise ValueError(f"readings: {cell!r} is no cell with air. Read a joined cell.")
        if not 0 <= read_pa < math.inf:
            raise ValueError(
                f"readings: the pressure of {cell!r} must be zero or more, not {read_pa!r} Pa. "
                "Swap the gauge's hoses or read again."
            )
