"""The sides and the air: curtains with what it takes to work them; seals, cells and jumpers."""

from collections.abc import Sequence

from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.inflation.inflation import Inflation
from hoopwright.papers.sheet import (
    NOTE,
    SECTION,
    TITLE,
    Column,
    Row,
    Sheet,
    Value,
    heading_row,
    list_row,
    list_sheet,
    wide_row,
)
from hoopwright.papers.sheet_numbers import (
    LENGTH_PLACES,
    heading,
    length_columns,
    length_values,
    number_format,
    shown,
)
from hoopwright.papers.sheets_film import caution_note
from hoopwright.plan import Plan
from hoopwright.quantity.units import Units, show

AIR_WIDTHS = (22.0, 30.0, 26.0, 13.0, 13.0, 13.0, 13.0)
TRAILING_PLACES = {"imperial": 2, "metric": 1}


def place_name(tunnel: Tunnel, mark: str) -> str:
    """Return what people call the place of a mark such as `side/0/panel/1`."""
    parts = mark.split("/")
    if parts[0] != "side" or len(parts) < 3:
        return mark.replace("/", " ")
    side = tunnel.sides[int(parts[1])].name
    if parts[2] == "panel":
        return f"{side}, curtain {int(parts[3]) + 1}"
    if parts[2] == "strip":
        return f"{side}, strip {int(parts[3]) + 1}"
    return f"{side}, {' '.join(reversed(parts[2:]))}"


def curtains_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the curtains with their bars, cranks, forces and ropes."""
    units, limits = farm.units, farm.limits
    number = number_format(LENGTH_PLACES[units])
    lines = [
        _curtain_line(farm, tunnel, work, plan)
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
        for work in planned.chosen.curtains
    ]
    columns = (
        Column("Tunnel", 12),
        Column("Curtain", 17),
        Column(heading("From", "m", units), 8, number),
        Column(heading("To", "m", units), 8, number),
        *length_columns("Bar and curtain", units),
        Column("Crank at", 7),
        Column("Roll bar", 15),
        Column("Drive", 15),
        Column("Sticks", 6.5, "0"),
        Column("Joints", 6.5, "0"),
        *(
            Column(f"{words} ({label})" if label else words, 9, number_format(places))
            for words, label, places in _mechanics(units)
        ),
        Column(heading("Clear opening", "m2", units), 8.5, number_format(1)),
        Column(heading("Wind rope", "m", units), 8, number),
        Column("Eyes", 5.5, "0"),
    )
    notes = (
        f"Limits set on the farm: hand force {show(limits.hand_force_n, 'N', units)}, "
        f"free end hangs behind by {show(limits.trailing_m, 'm_thin', units)}, "
        f"one person lifts {show(limits.lift_kg, 'kg', units)}. Forces include "
        f"{show(limits.rubbing_share, 'share', units)} for rubbing.",
        caution_note("curtains"),
    )
    empty = "No side rolls up."
    return list_sheet(
        "Curtains",
        "Roll-up curtains and what works them",
        notes,
        columns,
        lines,
        empty=empty,
        frozen_columns=2,
    )


def _mechanics(units: Units) -> tuple[tuple[str, str, int], ...]:
    """Return heading, unit and decimals of the columns of mechanics, in their order."""
    thin, force = ("in", "lbf") if units == "imperial" else ("mm", "N")
    roll_places, force_places = (2, 1) if units == "imperial" else (0, 0)
    return (
        ("Roll diameter shut", thin, roll_places),
        ("Roll diameter open", thin, roll_places),
        ("Hangs on the bar when open", force, force_places),
        ("Hand force shut", force, force_places),
        ("Hand force half way", force, force_places),
        ("Hand force open", force, force_places),
        ("Hardest hand force", force, force_places),
        ("Turns of the handle", "", 1),
        ("Free end behind", thin, TRAILING_PLACES[units]),
    )


def _curtain_line(farm: Farm, tunnel: Tunnel, work: CurtainWork, plan: Plan) -> tuple[Value, ...]:
    units = farm.units
    panel = tunnel.sides[work.side].panels[work.index]
    planned = next(p for p in plan.tunnels if p.name == tunnel.name)
    span = next(c for c in planned.chosen.cover.curtains if c.mark == work.mark)
    values = (
        (work.diameters_m[0], "m_thin"),
        (work.diameters_m[2], "m_thin"),
        (work.weights_n[2], "N"),
        *((force_n, "N") for force_n in work.hand_forces_n),
        (work.hardest_n, "N"),
        (work.handle_turns, "turns"),
        (work.trailing_m, "m_thin"),
    )
    return (
        tunnel.name,
        place_name(tunnel, work.mark),
        shown(span.from_m, "m", units, LENGTH_PLACES[units]),
        shown(span.to_m, "m", units, LENGTH_PLACES[units]),
        *length_values(work.length_m, units),
        panel.crank_end,
        farm.catalogue.bar(panel.bar).name,
        farm.catalogue.drive(panel.drive).name,
        work.bar_sticks,
        work.bar_joints,
        *(
            shown(value, unit, units, column[2])
            for (value, unit), column in zip(values, _mechanics(units), strict=True)
        ),
        shown(work.opening_m2, "m2", units, 1),
        shown(work.rope_m, "m", units, LENGTH_PLACES[units]),
        work.eyes,
    )


def air_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the seals to make on the bench, the cells and the jumper hoses."""
    last = len(AIR_WIDTHS)
    pairs = [
        (tunnel, planned.chosen.inflation)
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
    ]
    rows = [
        wide_row("Air between two layers", TITLE, last),
        wide_row(
            "Make and pull a test strip before the first seal of each film and each day.",
            NOTE,
            last,
        ),
        wide_row(caution_note("air"), NOTE, last),
    ]
    for title, columns, lines, empty in _air_lists(farm, pairs):
        rows += [Row(), wide_row(title, SECTION, last)]
        if lines:
            rows += [heading_row(columns), *(list_row(columns, line) for line in lines)]
        else:
            rows.append(wide_row(empty, NOTE, last))
    return Sheet(name="Air", widths=AIR_WIDTHS, rows=tuple(rows))


AirList = tuple[str, tuple[Column, ...], list[tuple[Value, ...]], str]


def _air_lists(farm: Farm, pairs: Sequence[tuple[Tunnel, Inflation]]) -> tuple[AirList, ...]:
    return (
        _blowers(farm, pairs),
        _seals(farm.units, pairs),
        _cells(farm.units, pairs),
        _jumpers(farm.units, pairs),
    )


def _blowers(farm: Farm, pairs: Sequence[tuple[Tunnel, Inflation]]) -> AirList:
    units = farm.units
    columns = (
        Column("Tunnel", 0),
        Column("Blower", 0),
        Column(heading("All seals", "m", units), 0, number_format(1)),
        Column("Bench (min)", 0, number_format(0)),
        Column(heading("All cells", "m3", units), 0, number_format(0)),
        Column("Cells", 0, "0"),
        Column("Jumpers", 0, "0"),
    )
    lines: list[tuple[Value, ...]] = [
        (
            tunnel.name,
            farm.catalogue.part(air.blower).name if air.blower else "none",
            shown(air.seal_m, "m", units, 1),
            shown(air.bench_min, "min", units, 0),
            shown(air.volume_m3, "m3", units, 0),
            len(air.cells),
            len(air.jumpers),
        )
        for tunnel, air in pairs
    ]
    return ("Sums of each tunnel", columns, lines, "")


def _seals(units: Units, pairs: Sequence[tuple[Tunnel, Inflation]]) -> AirList:
    number = number_format(LENGTH_PLACES[units])
    columns = (
        Column("Tunnel", 0),
        Column("Curtain", 0),
        Column("Edge", 0),
        Column(heading("Edge length", "m", units), 0, number),
        Column("Seals on it", 0, "0"),
        Column(heading("Seal in all", "m", units), 0, number),
        Column("Bench (min)", 0, number_format(1)),
    )
    lines: list[tuple[Value, ...]] = [
        (
            tunnel.name,
            place_name(tunnel, seal.mark),
            seal.edge,
            shown(seal.length_m, "m", units, LENGTH_PLACES[units]),
            seal.passes,
            shown(seal.total_m, "m", units, LENGTH_PLACES[units]),
            shown(seal.minutes, "min", units, 1),
        )
        for tunnel, air in pairs
        for seal in air.seals
    ]
    return ("Seals", columns, lines, "No edge has to be sealed.")


def _cells(units: Units, pairs: Sequence[tuple[Tunnel, Inflation]]) -> AirList:
    number = number_format(LENGTH_PLACES[units])
    columns = (
        Column("Tunnel", 0),
        Column("Cell", 0),
        Column("Air comes", 0),
        Column(heading("From", "m", units), 0, number),
        Column(heading("To", "m", units), 0, number),
        Column(heading("Volume", "m3", units), 0, number_format(1)),
    )
    lines: list[tuple[Value, ...]] = [
        (
            tunnel.name,
            cell.name,
            "from the blower" if cell.fed else "by jumper",
            shown(cell.from_m, "m", units, LENGTH_PLACES[units]),
            shown(cell.to_m, "m", units, LENGTH_PLACES[units]),
            shown(cell.volume_m3, "m3", units, 1),
        )
        for tunnel, air in pairs
        for cell in air.cells
    ]
    return ("Cells", columns, lines, "No two layers have air between them.")


def _jumpers(units: Units, pairs: Sequence[tuple[Tunnel, Inflation]]) -> AirList:
    number = number_format(LENGTH_PLACES[units])
    columns = (
        Column("Tunnel", 0),
        Column("From cell", 0),
        Column("To cell", 0),
        Column(heading("At", "m", units), 0, number),
        Column("Hangs on", 0),
    )
    lines: list[tuple[Value, ...]] = []
    for tunnel, air in pairs:
        names = {cell.mark: cell.name for cell in air.cells}
        lines += [
            (
                tunnel.name,
                names[jumper.from_cell],
                names[jumper.to_cell],
                shown(jumper.at_m, "m", units, LENGTH_PLACES[units]),
                "the ridge" if jumper.side is None else tunnel.sides[jumper.side].name,
            )
            for jumper in air.jumpers
        ]
    return ("Jumper hoses", columns, lines, "No jumper hose is needed.")
