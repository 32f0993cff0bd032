"""Words about cells and jumpers: their names with figures, and the tag of a dragged jumper."""

from hoopwright.plan import TunnelPlan
from hoopwright.pressure import CellAir
from hoopwright.pressure.held import AirState
from hoopwright.quantity.units import Units, format_length, show


def held_states(plan: TunnelPlan) -> dict[str, AirState]:
    """Return how each cell is held, by its mark and by the mark of what it lies in."""
    states = {air.mark: air.state for air in plan.held.cells}
    lain_in = {cell.place: states[cell.mark] for cell in plan.chosen.inflation.cells}
    return {**lain_in, **states}


def cell_name(mark: str, plan: TunnelPlan, units: Units) -> str:
    """Return the name of a cell with its air and its pressure, or nothing."""
    cell = next((c for c in plan.chosen.inflation.cells if c.mark == mark), None)
    if cell is None:
        return ""
    pressure = pressure_words(mark, plan, units)
    return " · ".join((f"{cell.name}: {show(cell.volume_m3, 'm3', units)}", *pressure))


def jumper_name(mark: str, plan: TunnelPlan, units: Units) -> str:
    """Return the name of a jumper with its place and its air, or nothing."""
    jumper = next((j for j in plan.chosen.inflation.jumpers if j.mark == mark), None)
    if jumper is None:
        return ""
    name = f"Jumper hose {int(mark.split('/')[1]) + 1} at {format_length(jumper.at_m, units)}"
    return " · ".join((name, *_flow_words(mark, plan, units)))


def jumper_tag(mark: str, plan: TunnelPlan, units: Units) -> tuple[str, ...]:
    """Return the lines of the tag that goes with a dragged jumper."""
    inflation = plan.chosen.inflation
    jumper = next((j for j in inflation.jumpers if j.mark == mark), None)
    if jumper is None:
        return ("Here the jumper finds no two cells to join.",)
    names = {cell.mark: cell.name for cell in inflation.cells}
    lines = [jumper_name(mark, plan, units)]
    for verb, cell in (("From", jumper.from_cell), ("Fills", jumper.to_cell)):
        lines.append(" · ".join((f"{verb} {names[cell]}", *pressure_words(cell, plan, units))))
    if inflation.no_feed:
        lines.append(f"Without air: {', '.join(names[cell] for cell in inflation.no_feed)}")
    return tuple(lines)


def least_pressure(plan: TunnelPlan) -> CellAir | None:
    """Return the cell with the least pressure, or None without cells."""
    return min(plan.held.cells, key=lambda air: air.pressure_pa, default=None)


def pressure_words(cell: str, plan: TunnelPlan, units: Units) -> tuple[str, ...]:
    """Return the pressure of a cell and how it stands, or nothing without a blower."""
    air = next((c for c in plan.held.cells if c.mark == cell), None)
    if air is None:
        return ()
    return (f"{show(air.pressure_pa, 'Pa', units)}, {air.state}",)


def _flow_words(mark: str, plan: TunnelPlan, units: Units) -> tuple[str, ...]:
    hose = next((h for h in plan.held.hoses if h.mark == mark), None)
    if hose is None:
        return ()
    flow = show(abs(hose.flow_m3_s), "m3/s", units)
    return (f"{flow}, the only way to a cell",) if hose.critical else (flow,)
