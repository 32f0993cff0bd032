"""The summary: what is to pay, both ways to skin compared, and the choices behind it."""

from collections.abc import Iterator, Sequence
from datetime import date
from decimal import Decimal

from hoopwright.checks.variant import TunnelPlan, Variant
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.heat import pay_back_words
from hoopwright.order.order import Order
from hoopwright.papers.cautions import caution_texts
from hoopwright.papers.sheet import (
    HEAD,
    NOTE,
    SECTION,
    TEXT,
    TITLE,
    Column,
    Entry,
    Formula,
    Kind,
    Look,
    Row,
    Sheet,
    Value,
    heading_row,
    list_row,
    wide_row,
)
from hoopwright.papers.sheet_figures import places_of
from hoopwright.papers.sheet_lines import is_unpriced, origin_of
from hoopwright.papers.sheet_numbers import (
    EXACT,
    heading,
    number_format,
    round_near,
    shown,
    shown_size,
)
from hoopwright.papers.sheets_choices import COVERINGS, choice_rows, shape_name
from hoopwright.papers.sheets_takeoff import (
    FREIGHT,
    GOODS,
    INVENTED,
    MONEY,
    NAME,
    NO_PRICE,
    TAX,
    TO_PAY,
    Cells,
    takeoff_cells,
)
from hoopwright.plan import Plan
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import Units, unit_label
from hoopwright.quantity.working import words

WIDTHS = (32.0, 27.0, 13.0, 13.0, 13.0, 13.0, 13.0, 13.0)
LAST = len(WIDTHS)
LENGTH_FORMAT = {"imperial": number_format(2), "metric": number_format(3)}


def summary_sheet(farm: Farm, plan: Plan, program_version: str, plan_date: date) -> Sheet:
    """Return the summary of a farm.

    Args:
        farm: The farm.
        plan: Its plan.
        program_version: Version of the program.
        plan_date: Day the plan was made for.
    """
    cells = takeoff_cells(farm, plan)
    names = ", ".join(tunnel.name for tunnel in farm.tunnels)
    rows = [
        wide_row(f"{farm.name}: skin of {names}", TITLE, LAST),
        wide_row(
            f"Plan of {plan_date.isoformat()}, made with Hoopwright {program_version}. "
            f"Amounts in {farm.money.currency}.",
            NOTE,
            LAST,
        ),
    ]
    rows += _totals(farm, plan)
    rows += _groups(farm, plan, cells, first_row=len(rows) + 4)
    rows += _coverings(farm, plan)
    rows += _tunnels(farm, plan)
    breaks = (len(rows),)
    rows += _air_and_heat(farm, plan)
    rows += choice_rows(farm, LAST)
    rows += _legend()
    return Sheet(name="Summary", widths=WIDTHS, rows=tuple(rows), breaks=breaks, protected=True)


def _totals(farm: Farm, plan: Plan) -> list[Row]:
    """Return what is to pay, each sum a formula on the takeoff, and what it does not promise."""
    cost, units = plan.cost, farm.units
    floor_m2 = sum(t.survey.floor_area_m2 for t in plan.tunnels)
    floor = shown(floor_m2, "m2", units, 2)
    to_pay = cost.goods + cost.freight + cost.tax
    each = round_near(EXACT.divide(to_pay, floor), 4) if floor else Decimal(0)
    area = unit_label("m2", units)
    first = 5
    lines: tuple[tuple[str, Value, Look], ...] = (
        ("Goods", Formula(f"={NAME}!{GOODS}", cost.goods), Look("cell", MONEY)),
        ("Freight", Formula(f"=N({NAME}!{FREIGHT})", cost.freight), Look("cell", MONEY)),
        ("Tax", Formula(f"={NAME}!{TAX}", cost.tax), Look("cell", MONEY)),
        ("To pay", Formula(f"={NAME}!{TO_PAY}", to_pay), Look("total", MONEY)),
        (f"Floor of all tunnels ({area})", floor, Look("cell", number_format(2))),
        (
            f"To pay for one {area} of floor",
            Formula(f"=IF(B{first + 4}=0,0,ROUND(B{first + 3}/B{first + 4},4))", each),
            Look("cell", "#,##0.00##"),
        ),
        ("Bench wages, not in the sum", cost.bench_labour, Look("cell", MONEY)),
    )
    return [
        Row(),
        wide_row("What it costs", SECTION, LAST),
        *(Row((Entry(label, TEXT), Entry(value, look))) for label, value, look in lines),
        _is_whole_price(plan),
        *_left_out(plan),
        Row(),
        wide_row("Before you rely on it", SECTION, LAST),
        *(wide_row(caution.text, TEXT, LAST) for caution in caution_texts("everywhere")),
    ]


def _left_out(plan: Plan) -> list[Row]:
    """Return what is needed and cannot be ordered: sheets too large for any roll, unknown parts."""
    look = Look("fault")
    sheets = ", ".join(f"{piece.name} ({piece.tunnel})" for piece in plan.order.unplaced)
    parts = ", ".join(plan.order.missing)
    texts = (
        (sheets, "no roll of the film is large enough. Nothing is bought for them."),
        (parts, "needed, but not in the catalogue. Nothing is bought for them."),
    )
    return [
        Row((Entry("Not in the order", look), Entry(f"{names}: {text}", look)), ((2, LAST),))
        for names, text in texts
        if names
    ]


def _is_whole_price(plan: Plan) -> Row:
    """Return the sentence that says whether the sum can be relied on."""
    origins = [origin_of(line) for line in plan.order.lines]
    missing, invented = origins.count("no price"), origins.count("invented")
    no_price = ("Not the whole price. Lines without a price: ", ". Type them in on Takeoff.")
    made_up = ("Lines with an invented price: ", ". Type your suppliers' prices in on Takeoff.")
    entered = "Every line to buy has a price that was entered."
    if missing:
        result = f"{no_price[0]}{missing}{no_price[1]}"
    else:
        result = f"{made_up[0]}{invented}{made_up[1]}" if invented else entered
    formula = (
        f'=IF({NAME}!{NO_PRICE}>0,"{no_price[0]}"&{NAME}!{NO_PRICE}&"{no_price[1]}",'
        f'IF({NAME}!{INVENTED}>0,"{made_up[0]}"&{NAME}!{INVENTED}&"{made_up[1]}","{entered}"))'
    )
    return Row(
        (Entry("Is this the whole price?", TEXT), Entry(Formula(formula, result), Look("key"))),
        ((2, LAST),),
    )


def _groups(farm: Farm, plan: Plan, cells: Cells, first_row: int) -> list[Row]:
    """Return the sums of the groups; what belongs to no group here has a line of its own.

    Groups are matched letter by letter, so that no name is read as a pattern.
    """
    sums: dict[str, Decimal] = {}
    for line in plan.order.lines:
        amount = Decimal(0) if is_unpriced(line) else line.total
        sums[line.group] = sums.get(line.group, Decimal(0)) + amount
    group, total = cells.whole("group", NAME), cells.whole("total", NAME)
    money = Look("cell", MONEY)
    rows = [
        Row(),
        wide_row("Goods by group", SECTION, LAST),
        Row((Entry("Group", HEAD), Entry(f"Goods ({farm.money.currency})", HEAD))),
    ]
    for row, (name, amount) in enumerate(sums.items(), start=first_row):
        formula = f"=SUMPRODUCT(EXACT({group},A{row})*1,{total})"
        rows.append(Row((Entry(name, TEXT), Entry(Formula(formula, amount), money))))
    last = first_row + len(sums) - 1
    rest = f"=ROUND({NAME}!{GOODS}-SUM(B{first_row - 1}:B{last}),2)"
    rows.append(
        Row((Entry("Your own lines and groups", TEXT), Entry(Formula(rest, Decimal(0)), money)))
    )
    return rows


def _coverings(farm: Farm, plan: Plan) -> list[Row]:
    """Return both ways to skin each tunnel, side by side."""
    units, currency = farm.units, farm.money.currency
    columns = (
        Column("Tunnel", 0),
        Column("Covering", 0),
        Column(heading("Sheet width", "m", units), 0, LENGTH_FORMAT[units]),
        Column(heading("Film bought", "m2", units), 0, number_format(0)),
        Column(heading("Film in sheets", "m2", units), 0, number_format(0)),
        Column("Film in no sheet", 0, "0.0%"),
        Column(f"Goods ({currency})", 0, MONEY),
        Column(f"With tax ({currency})", 0, MONEY),
    )
    lines: list[Sequence[Value]] = []
    for planned in plan.tunnels:
        for variant, note in ((planned.chosen, ", chosen"), (planned.other, "")):
            lines.append(_covering_line(planned.name, variant, note, units))
    rows = [
        Row(),
        wide_row("One sheet, or roof and sides apart", SECTION, LAST),
        wide_row(
            "Each tunnel bought by itself, at the prices of the plan and without freight. One "
            "order for several tunnels can share rolls and packs and cost less.",
            NOTE,
            LAST,
        ),
        heading_row(columns),
    ]
    rows += (list_row(columns, line) for line in lines)
    return [*rows, *(wide_row(text, NOTE, LAST) for text in _kept(plan, currency))]


def _covering_line(name: str, variant: Variant, note: str, units: Units) -> Sequence[Value]:
    order = variant.order
    return (
        name,
        f"{COVERINGS[variant.cover.covering]}{note}{_unplaced(order)}",
        shown_size(variant.cover.sheet_width_m, units),
        shown(order.film_bought_m2, "m2", units, 0),
        shown(order.film_used_m2, "m2", units, 0),
        shown(order.waste_share, "ratio", units, 3),
        variant.cost.goods,
        variant.cost.to_pay,
    )


def _unplaced(order: Order) -> str:
    count = len(order.unplaced)
    return f"; {count} sheets fit no roll: not the whole price" if count else ""


def _kept(plan: Plan, currency: str) -> Iterator[str]:
    """Yield of each tunnel what both prices leave out because it stays."""
    for planned in plan.tunnels:
        ways = (planned.chosen, planned.other)
        if any(way.order.reused for way in ways):
            told = ", ".join(
                f"{format_money(way.order.saved, currency)} new for {COVERINGS[way.cover.covering]}"
                for way in ways
            )
            yield f"{planned.name}: what stays of the old skin is left out, {told}."


def _tunnels(farm: Farm, plan: Plan) -> list[Row]:
    """Return the sizes of the frames."""
    units = farm.units
    columns = (
        Column("Tunnel", 0),
        Column("Shape", 0),
        Column(heading("Length", "m", units), 0, LENGTH_FORMAT[units]),
        Column(heading("Width, outside", "m", units), 0, LENGTH_FORMAT[units]),
        Column(heading("Height", "m", units), 0, LENGTH_FORMAT[units]),
        Column("Bows", 0, "0"),
        Column("Bays", 0, "0"),
        Column(heading("Floor", "m2", units), 0, number_format(0)),
    )
    lines = [
        _tunnel_line(tunnel, planned, units)
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
    ]
    return [
        Row(),
        wide_row("Frames", SECTION, LAST),
        heading_row(columns),
        *(list_row(columns, line) for line in lines),
    ]


def _tunnel_line(tunnel: Tunnel, planned: TunnelPlan, units: Units) -> Sequence[Value]:
    survey = planned.survey
    return (
        tunnel.name,
        shape_name(tunnel.frame.profile),
        shown_size(survey.length_m, units),
        shown_size(survey.width_m, units),
        shown_size(survey.height_m, units),
        len(survey.bows_m),
        survey.bay_count,
        shown(survey.floor_area_m2, "m2", units, 0),
    )


def _air_and_heat(farm: Farm, plan: Plan) -> list[Row]:
    """Return the pressure between two layers, what the blower takes and what the layer saves."""
    units, currency = farm.units, farm.money.currency
    pressure = number_format(places_of("Pa", units))
    columns = (
        Column("Tunnel", 0),
        Column("Blower", 0),
        Column(heading("Lowest cell", "Pa", units), 0, pressure),
        Column(heading("Highest cell", "Pa", units), 0, pressure),
        Column(f"Blower, a year ({currency})", 0, MONEY),
        Column(f"Second layer ({currency})", 0, MONEY),
        Column(f"Saves a year ({currency})", 0, MONEY),
        Column("Paid back after", 0),
    )
    rows = [Row(), wide_row("Air between layers, and heat", SECTION, LAST), heading_row(columns)]
    pairs = list(zip(farm.tunnels, plan.tunnels, strict=True))
    for tunnel, planned in pairs:
        rows.append(list_row(columns, _air_line(farm, tunnel, planned)))
    for tunnel, planned in pairs:
        rows.append(wide_row(words(planned.warmth.told, units), TEXT, LAST, label=tunnel.name))
    return rows


def _air_line(farm: Farm, tunnel: Tunnel, planned: TunnelPlan) -> Sequence[Value]:
    held, warmth, units = planned.held, planned.warmth, farm.units
    places = places_of("Pa", units)
    key = planned.chosen.inflation.blower
    return (
        tunnel.name,
        farm.catalogue.blower(key).name if key is not None else "none",
        shown(held.low_pa, "Pa", units, places),
        shown(held.high_pa, "Pa", units, places),
        held.yearly_cost,
        warmth.second_layer_cost,
        warmth.saved_cost,
        "not heated" if tunnel.heating is None else words(pay_back_words(warmth), units),
    )


def _legend() -> list[Row]:
    """Return what the colours mean."""
    lines: tuple[tuple[str, str, Kind], ...] = (
        ("Yellow, star in the heading", "for you to fill in, on Takeoff", "input"),
        ("Orange", "an invented price; or a check to be looked at", "caution"),
        ("Red", "a price or a pack size is missing; or a fault to be mended first", "fault"),
    )
    rows = [Row(), wide_row("What the colours mean", SECTION, LAST)]
    for label, text, kind in lines:
        rows.append(Row((Entry(label, Look(kind)), Entry(text, TEXT)), ((2, LAST),)))
    return rows
