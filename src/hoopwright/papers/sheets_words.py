"""What the plan says in words: checks, cautions, and the working of every figure."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from hoopwright.checks.variant import TunnelPlan
from hoopwright.cover.cover import CurtainSpan
from hoopwright.curtain.curtain import CurtainWork
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.fit.telling import OVER_WORDS
from hoopwright.inflation.inflation import Seal
from hoopwright.order.order import Line, ReuseLine
from hoopwright.papers.cautions import CAUTIONS
from hoopwright.papers.sheet import Column, Entry, Look, Row, Sheet, Value, list_sheet
from hoopwright.papers.sheet_numbers import decimal_of
from hoopwright.papers.sheets_ends import ends_explained
from hoopwright.papers.sheets_outfit import outfit_explained
from hoopwright.papers.side_words import place_name
from hoopwright.plan import Plan
from hoopwright.pressure import BlowerTry, CellAir, FilmPull
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import Units, show, to_display, unit_label
from hoopwright.quantity.working import Explained, Term, Working, words

SUFFIXES = (
    ("_w_k", "W/K"),
    ("_n_m", "N/m"),
    ("_kg_m3", "kg/m3"),
    ("_kg_m2", "kg/m2"),
    ("_kg_m", "kg/m"),
    ("_m_min", "m/min"),
    ("_m_s", "m/s"),
    ("_m3_s_m2", "m3/s/m2"),
    ("_m3_s", "m3/s"),
    ("_m3", "m3"),
    ("_m2", "m2"),
    ("_m", "m"),
    ("_kg", "kg"),
    ("_nm", "N m"),
    ("_n", "N"),
    ("_pa", "Pa"),
    ("_j", "J"),
    ("_w", "W"),
    ("_rad", "rad"),
    ("_min", "min"),
    ("_per_h", "1/h"),
    ("_kwh", "kWh"),
    ("_h", "h"),
    ("_years", "year"),
)
BY_NAME = {
    "stress_pa": ("stress", "Pa_film"),
    "peak_w": ("peak", "W_heat"),
    "season_j": ("season", "J_heat"),
    "degree_days": ("degree_days", "K day"),
    "hole_m2": ("hole", "m2_thin"),
    "grown_m2": ("grown", "m2_thin"),
    "hole_m": ("hole", "m_film"),
    "section_m2": ("section", "m2_thin"),
    "water_m3": ("water", "m3_water"),
    "overflow_m3": ("overflow", "m3_water"),
    "rain_m3_s": ("rain", "m3/s_water"),
    "outlet_m3_s": ("outlet", "m3/s_water"),
}
"""Figures that are named or measured unlike others with their ending."""
THIN = ("diameter", "diameters", "thickness", "trailing", "gap", "spacing", "slack", "sag")
SEVERITY = {"fault": "Fault: mend before ordering", "caution": "Caution", "note": "Note"}

UNSHOWN = ("power_per_area_w_m2",)
COUNTED = ("needed", "kept", "spares", "holds", "left_over")

Explanation = tuple[str, Working, object, str]


def checks_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return every finding of the plan, the gravest first."""
    columns = (
        Column("How grave", 14),
        Column("Tunnel", 14),
        Column("What", 38),
        Column("What happens if it stays", 38),
        Column("What to do", 38),
        Column("Source", 30),
    )
    lines = [
        (
            SEVERITY[found.severity],
            found.tunnel or "whole farm",
            words(found.what, farm.units),
            words(found.why, farm.units),
            words(found.mend, farm.units),
            found.source,
        )
        for found in plan.findings
    ]
    faults = sum(found.severity == "fault" for found in plan.findings)
    notes = (
        f"{len(lines)} open, {faults} of them to be mended before anything is ordered."
        if lines
        else "Nothing is open.",
    )
    empty = "Every check passed. That does not replace measuring the frame once more."
    made = list_sheet("Checks", "Checks of the plan", notes, columns, lines, empty=empty)
    return _with_severity(made)


def _with_severity(sheet: Sheet) -> Sheet:
    """Return the sheet with faults and cautions marked by a fill, beside the word."""
    looks = {SEVERITY["fault"]: Look("fault"), SEVERITY["caution"]: Look("caution")}
    rows = []
    for row in sheet.rows:
        first = row.entries[0] if row.entries else None
        if first and isinstance(first.value, str) and first.value in looks:
            marked = (Entry(first.value, looks[first.value]), *row.entries[1:])
            row = Row(marked, row.spans)
        rows.append(row)
    return Sheet(
        name=sheet.name,
        widths=sheet.widths,
        rows=tuple(rows),
        header_row=sheet.header_row,
        filtered=sheet.filtered,
    )


def cautions_sheet() -> Sheet:
    """Return the cautions of the whole job."""
    columns = (Column("No.", 5, "0"), Column("Caution", 28), Column("What to do", 105))
    lines = [(n, c.title, c.text) for n, c in enumerate(CAUTIONS, start=1)]
    notes = ("Read them with the crew before the work starts.",)
    return list_sheet("Cautions", "Cautions", notes, columns, lines, empty="")


def working_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return how each figure of the plan was got."""
    columns = (
        Column("What", 30),
        Column("Figure", 20),
        Column("Comes to", 18),
        Column("Rule", 44),
        Column("From", 40),
        Column("Source", 24),
    )
    units, currency = farm.units, farm.money.currency
    lines: list[Sequence[Value]] = [
        (
            what,
            figure_name(working.figure),
            figure_text(value, unit, units, currency),
            working.rule,
            "; ".join(f"{t.name} {_term(t, units, currency)}" for t in working.inputs),
            working.source,
        )
        for what, working, value, unit in _explanations(farm, plan)
    ]
    return list_sheet(
        "Working",
        "How each figure was got",
        (
            "Sizes are shown here to the nearest eighth of an inch or millimetre; sizes to be cut "
            "are rounded up on Film.",
        ),
        columns,
        lines,
        empty="No working is kept.",
        protected=True,
    )


def figure_name(figure: str) -> str:
    """Return the name of a field as words, its unit left out."""
    return _split_unit(figure)[0].replace("_", " ")


def figure_unit(figure: str) -> str:
    """Return the unit code of a field, which its name ends with."""
    return _split_unit(figure)[1]


def figure_text(value: object, unit: str, units: Units, currency: str) -> str:
    """Return a value as text with its unit; several values with a slash between.

    An amount of money with the unit of an area is an amount for one unit of it.

    Args:
        value: A number, an amount, a text, yes or no, or several of them; else there is no text.
        unit: Unit code.
        units: The farm's units.
        currency: The farm's currency.
    """
    if isinstance(value, tuple):
        return " / ".join(figure_text(one, unit, units, currency) for one in value)
    if isinstance(value, Decimal) and unit == "m2":
        amount = value / decimal_of(to_display(1.0, "m2", units))
        return f"{format_money(amount, currency)} for one {unit_label('m2', units)}"
    if isinstance(value, Decimal):
        return format_money(value, currency)
    if isinstance(value, float):
        return show(value, unit, units)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int):
        return show(value, "count", units)
    return value if isinstance(value, str) else ""


def _split_unit(figure: str) -> tuple[str, str]:
    """Return the name of a field without its unit, and the unit code."""
    if figure in BY_NAME:
        return BY_NAME[figure]
    for ending, unit in SUFFIXES:
        if figure.endswith(ending):
            name = figure.removesuffix(ending)
            thin = unit == "m" and name.split("_")[-1] in THIN
            return name, "m_thin" if thin else unit
    if figure.endswith(("share", "shares")):
        return figure, "share"
    if figure.endswith("minutes"):
        return figure, "min"
    return figure, "turns" if figure.endswith("turns") else "ratio"


def _term(term: Term, units: Units, currency: str) -> str:
    if isinstance(term.value, Decimal) and term.unit == "money":
        return format_money(term.value, currency)
    return show(term.value, term.unit, units)


def _explanations(farm: Farm, plan: Plan) -> Iterator[Explanation]:
    for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True):
        yield from _tunnel_explanations(farm, tunnel, planned)
    for number, roll in enumerate(plan.order.rolls, start=1):
        yield from _of(f"roll {number}", roll)
    named: tuple[tuple[str, Line | ReuseLine], ...] = (
        *((f"order line, {line.name}", line) for line in plan.order.lines),
        *((f"stays, {line.name}", line) for line in plan.order.reused),
    )
    for title, line in named:
        for what, working, value, unit in _of(title, line):
            counted = working.figure in COUNTED
            yield what, working, value, line.counted_in if counted else unit
    yield from _of("order", plan.order)
    yield from _of("cost", plan.cost)


def _tunnel_explanations(farm: Farm, tunnel: Tunnel, planned: TunnelPlan) -> Iterator[Explanation]:
    name, chosen = tunnel.name, planned.chosen
    yield from _frame_explanations(name, planned)
    yield from _of(f"{name}, skin", chosen.cover)
    for piece in chosen.cover.pieces:
        yield from _of(f"{name}, {piece.name}", piece)
    for what, end in ends_explained(tunnel, planned):
        yield from _of(what, end)
    marked: tuple[CurtainSpan | CurtainWork | Seal, ...] = (
        *chosen.cover.curtains,
        *chosen.curtains,
        *chosen.inflation.seals,
    )
    for part in marked:
        yield from _of(f"{name}, {place_name(tunnel, part.mark)}", part)
    yield from _of(f"{name}, air between layers", chosen.inflation)
    yield from _of(f"{name}, airing", chosen.airing)
    for what, thing in outfit_explained(tunnel, chosen.outfit):
        yield from _of(what, thing)
    for cell in chosen.inflation.cells:
        yield from _of(f"{name}, {cell.name}", cell)
    yield from _held_explanations(tunnel, planned)
    yield from _of(f"{name}, heat", planned.warmth)
    parts = {part.key: part for part in farm.catalogue.parts}
    for need in chosen.needs:
        part_of_need = parts.get(need.part)
        title = part_of_need.name if part_of_need else need.part
        what = f"{name}, {title}: {words(need.where, farm.units)}"
        unit = part_of_need.counted_in if part_of_need else "ratio"
        yield what, need.working, need.quantity, unit
        if need.kept_working is not None:
            yield what, need.kept_working, need.kept, unit
    for sheet in chosen.sheets.kept:
        yield from _of(f"{name}, {sheet.piece.name}, stays", sheet)


def _frame_explanations(name: str, planned: TunnelPlan) -> Iterator[Explanation]:
    """Yield the frame as built and as read, and how sure each width is."""
    taped = planned.survey.taped
    yield from _of(f"{name}, frame", planned.survey)
    yield from _of(f"{name}, readings", taped)
    for spread in (taped.hips, taped.baseboards):
        if spread is not None:
            yield from _of(f"{name}, girths {OVER_WORDS[spread.over]}", spread)
    for sheet in planned.fit.sheets:
        yield from _of(f"{name}, {sheet.name}, stock widths", sheet)


def _held_explanations(tunnel: Tunnel, planned: TunnelPlan) -> Iterator[Explanation]:
    """Yield what stands under pressure: cells, blowers tried, film, readings."""
    name, held = tunnel.name, planned.held
    yield from _of(f"{name}, air under pressure", held)
    named: tuple[CellAir | BlowerTry | FilmPull, ...] = (*held.cells, *held.tries, *held.pulls)
    for one in named:
        yield from _of(f"{name}, {one.name}", one)
    for reading in held.leaks:
        yield from _of(f"{name}, reading of {reading.taken_on}", reading)


def _of(what: str, explained: Explained) -> Iterator[Explanation]:
    for working in explained.workings:
        if working.figure in UNSHOWN:
            continue
        value = getattr(explained, working.figure, None)
        yield what, working, value, figure_unit(working.figure)
