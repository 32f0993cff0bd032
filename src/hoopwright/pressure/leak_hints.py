"""What measured pressures tell: the leak with its baseline, and the cell that leaks.

With the blower's air measured too, a reading gives the whole skin's leak. It is told as one
sharp-edged hole, at one pressure for all readings, so that they can be compared: the skin is taken
to stand at the pressure of the cell that was read. A baseline is a reading from when all was sound.

Pressures of two and more cells on one day point to the cell that leaks. That search settles the
net many hundred times and takes a tenth of a second, so it is asked for by itself and remembered.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache

from hoopwright.farm import Air, AirReading
from hoopwright.pressure.held import LeakHint, LeakingCell
from hoopwright.pressure.net import AirNet, split_joined
from hoopwright.pressure.readings import FEWEST, LeakSearch, find_leak, hole_area, unit_leak
from hoopwright.quantity.working import DERIVED, ENTERED, Phrase, Term, Working, phrase

# Leaks are compared at this pressure, Pa; common practice for leaks of buildings.
COMPARED_PA = 50.0
HOLE_SOURCE = "Q = Cd A sqrt(2 p / rho) with Cd 0.61 (textbook)"
# The readings of so many nets are kept.
_KEPT = 16


def read_leaks(
    air: Air, names: Mapping[str, str], planned: Mapping[str, float]
) -> tuple[LeakHint, ...]:
    """Return what each reading tells, oldest first.

    Args:
        air: Readings and the leak's exponent.
        names: Name of each cell by mark.
        planned: Pressure of each cell in the plan, Pa.

    Source:
        Each figure keeps its own working.
    """
    readings = sorted(air.readings, key=lambda reading: (reading.taken_on, not reading.baseline))
    return tuple(
        _hint(reading, _baseline(reading, readings), air.leak_exponent, names, planned)
        for reading in readings
    )


def search_leak(
    net: AirNet | None, readings: Sequence[AirReading], names: Mapping[str, str]
) -> LeakingCell | None:
    """Return which cell's leak explains the last readings of two and more cells; None without.

    The net's leaks are first set to those of the baseline, where its air was measured.

    Args:
        net: The net as planned.
        readings: What was measured.
        names: Name of each cell by mark.

    Source:
        `hoopwright.pressure.readings`.
    """
    if net is None:
        return None
    joined = {cell.mark for cell in split_joined(net)[0]}
    days: dict[str, dict[str, float]] = {}
    for reading in readings:
        if reading.cell in joined and not reading.baseline:
            days.setdefault(reading.taken_on, {})[reading.cell] = reading.pressure_pa
    taken_on = max((day for day, read in days.items() if len(read) >= FEWEST), default=None)
    if taken_on is None:
        return None
    found = _search(_as_measured(net, readings, taken_on), tuple(days[taken_on].items()))
    return _told_search(found, taken_on, days[taken_on], names)


@lru_cache(maxsize=_KEPT)
def _search(net: AirNet, read: tuple[tuple[str, float], ...]) -> LeakSearch:
    return find_leak(net, read)


def _as_measured(net: AirNet, readings: Sequence[AirReading], until: str) -> AirNet:
    """Return the net with all leaks raised or lowered alike to the last baseline with air."""
    known = [
        r
        for r in readings
        if r.baseline and r.flow_m3_s is not None and r.pressure_pa > 0 and r.taken_on <= until
    ]
    joined, _ = split_joined(net)
    planned = sum(cell.unit_leak_m3_s for cell in joined)
    if not known or planned <= 0:
        return net
    last = max(known, key=lambda reading: reading.taken_on)
    measured = unit_leak(last.flow_m3_s or 0.0, last.pressure_pa, joined[0].exponent)
    cells = tuple(
        replace(cell, unit_leak_m3_s=cell.unit_leak_m3_s * measured / planned) for cell in net.cells
    )
    return replace(net, cells=cells)


def _baseline(reading: AirReading, readings: Sequence[AirReading]) -> AirReading | None:
    """Return the last baseline before a reading: of the same cell, or of any when there is none."""
    if reading.baseline:
        return None
    before = [r for r in readings if r.baseline and r.taken_on <= reading.taken_on]
    same = [r for r in before if r.cell == reading.cell]
    known = same or before
    return known[-1] if known else None


def _leak(reading: AirReading, exponent: float) -> tuple[float | None, float | None]:
    """Return all leaks at the pressure of comparison, m3/s, and the hole, m2; None if unknown."""
    if reading.flow_m3_s is None or reading.pressure_pa <= 0:
        return None, None
    leak = unit_leak(reading.flow_m3_s, reading.pressure_pa, exponent) * COMPARED_PA**exponent
    return leak, hole_area(leak, COMPARED_PA)


def _hint(
    reading: AirReading,
    baseline: AirReading | None,
    exponent: float,
    names: Mapping[str, str],
    planned: Mapping[str, float],
) -> LeakHint:
    leak_m3_s, hole_m2 = _leak(reading, exponent)
    _, sound_m2 = _leak(baseline, exponent) if baseline else (None, None)
    grown_m2 = None if hole_m2 is None or sound_m2 is None else hole_m2 - sound_m2
    same = baseline is not None and baseline.cell == reading.cell
    fallen_pa = baseline.pressure_pa - reading.pressure_pa if baseline and same else None
    hint = LeakHint(
        taken_on=reading.taken_on,
        cell=reading.cell,
        pressure_pa=reading.pressure_pa,
        planned_pa=planned.get(reading.cell, 0.0),
        leak_m3_s=leak_m3_s,
        hole_m2=hole_m2,
        baseline_on="" if baseline is None else baseline.taken_on,
        grown_m2=grown_m2,
        fallen_pa=fallen_pa,
        told=Phrase(""),
    )
    return replace(
        hint,
        told=_told(hint, reading, names.get(reading.cell, reading.cell)),
        workings=_workings(hint, reading, sound_m2, exponent),
    )


def _told(hint: LeakHint, reading: AirReading, name: str) -> Phrase:
    pressure = (hint.pressure_pa, "Pa")
    planned = (hint.planned_pa, "Pa")
    if hint.grown_m2 is not None and hint.hole_m2 is not None:
        return phrase(
            "{day}: {name} at {pressure}; all leaks are as one hole of {hole}, {change} by "
            "{grown} since {baseline}.",
            day=hint.taken_on,
            name=name,
            pressure=pressure,
            hole=(hint.hole_m2, "m2_thin"),
            change="more" if hint.grown_m2 >= 0 else "less",
            grown=(abs(hint.grown_m2), "m2_thin"),
            baseline=hint.baseline_on,
        )
    if hint.hole_m2 is not None:
        return phrase(
            "{day}, {kind}: {name} at {pressure} (planned {planned}); all leaks are as one hole "
            "of {hole}.",
            day=hint.taken_on,
            kind="baseline" if reading.baseline else "no baseline before it",
            name=name,
            pressure=pressure,
            planned=planned,
            hole=(hint.hole_m2, "m2_thin"),
        )
    if hint.fallen_pa is not None:
        return phrase(
            "{day}: {name} at {pressure}, {change} by {fallen} than on {baseline}. Measure the "
            "blower's air too, to see how much more leaks.",
            day=hint.taken_on,
            name=name,
            pressure=pressure,
            change="lower" if hint.fallen_pa >= 0 else "higher",
            fallen=(abs(hint.fallen_pa), "Pa"),
            baseline=hint.baseline_on,
        )
    return phrase(
        "{day}: {name} at {pressure}, planned {planned}. Measure the blower's air too, to see how "
        "much leaks.",
        day=hint.taken_on,
        name=name,
        pressure=pressure,
        planned=planned,
    )


def _told_search(
    found: LeakSearch, taken_on: str, read: Mapping[str, float], names: Mapping[str, str]
) -> LeakingCell:
    others = ", ".join(names.get(mark, mark) for mark in found.as_likely)
    if found.cell is None:
        told = phrase(
            "{day}: the pressures are those of a sound skin, to what the gauge tells; no cell "
            "leaks more than its share.",
            day=taken_on,
        )
    else:
        told = phrase(
            "{day}: look for a hole of about {hole} in {name}{others}.",
            day=taken_on,
            hole=(found.hole_m2, "m2_thin"),
            name=names.get(found.cell, found.cell),
            others=f"; as likely: {others}" if others else "",
        )
    terms = tuple(Term(names.get(mark, mark), pa, "Pa") for mark, pa in read.items())
    return LeakingCell(
        taken_on=taken_on,
        cell=found.cell or "",
        extra_m3_s=found.extra_m3_s,
        hole_m2=found.hole_m2,
        as_likely=found.as_likely,
        told=told,
        workings=(
            Working("taken_on", "The last day on which two cells were read.", terms, ENTERED),
            Working(
                "cell",
                "The cell whose extra leak brings the whole net nearest to the readings; of those "
                "that come as near, the one that needs the smallest leak.",
                terms,
            ),
            Working("extra_m3_s", "That leak at the pressure found.", terms),
            Working("hole_m2", "A sharp-edged hole that lets as much through.", terms, HOLE_SOURCE),
            Working("as_likely", "Cells that come as near, to what the gauge tells.", terms),
        ),
    )


def _workings(
    hint: LeakHint, reading: AirReading, sound_m2: float | None, exponent: float
) -> tuple[Working, ...]:
    pressure = Term("measured", reading.pressure_pa, "Pa")
    at = Term("compared at", COMPARED_PA, "Pa")
    power = Term("leak exponent", exponent, "ratio")
    given = () if reading.flow_m3_s is None else (Term("blower gave", reading.flow_m3_s, "m3/s"),)
    leak = () if hint.leak_m3_s is None else (Term("all leaks", hint.leak_m3_s, "m3/s"),)
    sound = () if sound_m2 is None else (Term("hole of the baseline", sound_m2, "m2_thin"),)
    return (
        Working("pressure_pa", "As read on the gauge.", (pressure,), ENTERED),
        Working("planned_pa", "The cell's pressure in the plan.", ()),
        Working(
            "leak_m3_s",
            "What the blower gave, as all the skin stood at this pressure, brought to the pressure "
            "of comparison by the power of the leak.",
            (*given, pressure, at, power),
            f"{DERIVED}; exponent: {ENTERED}",
        ),
        Working(
            "hole_m2", "One sharp-edged hole that lets as much through.", (*leak, at), HOLE_SOURCE
        ),
        Working("grown_m2", "The hole less that of the baseline.", sound),
        Working("fallen_pa", "The baseline's pressure in this cell less this one.", (pressure,)),
    )
