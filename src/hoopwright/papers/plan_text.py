"""The plan as text for people at the command line, in the farm's units."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from hoopwright.checks import TunnelPlan, Variant
from hoopwright.farm import Farm, Tunnel
from hoopwright.fit import tell_sheet
from hoopwright.order.telling import tell_reuse
from hoopwright.outfit import told_rain, told_screen, told_shade
from hoopwright.plan import Plan
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import show
from hoopwright.quantity.working import Phrase, words


def plan_to_text(farm: Farm, whole: Plan) -> str:
    """Return the plan of a farm as lines of text."""
    return "\n".join(_plan_lines(farm, whole)) + "\n"


def findings_to_text(farm: Farm, findings: Sequence[Finding]) -> str:
    """Return faults, cautions and notes as lines of text."""
    return "\n".join(_finding_lines(farm, findings)) + "\n"


def _plan_lines(farm: Farm, whole: Plan) -> list[str]:
    lines = [farm.name]
    for tunnel, result in zip(farm.tunnels, whole.tunnels, strict=True):
        lines += ["", *_tunnel_lines(farm, tunnel, result)]
    cost = whole.cost
    lines += ["", "The whole order"]
    for label, amount in (
        ("goods", cost.goods),
        ("freight", cost.freight),
        ("tax", cost.tax),
        ("to pay", cost.to_pay),
    ):
        lines.append(f"  {label:<22}{_money(farm, amount):>14}")
    reused = [
        f"  {words(line, farm.units)}" for line in tell_reuse(whole.order, farm.money.currency)
    ]
    if reused:
        lines += ["", "What stays of the old skin", *reused]
    return [*lines, "", *_finding_lines(farm, whole.findings)]


def _tunnel_lines(farm: Farm, tunnel: Tunnel, result: TunnelPlan) -> list[str]:
    units = farm.units
    survey = result.survey
    head = (
        f"{tunnel.name}: {show(tunnel.frame.profile.span_m, 'm', units)} by "
        f"{show(survey.length_m, 'm', units)}, {len(survey.bows_m)} bows, "
        f"{survey.bay_count} bays, girth {show(survey.girth_m, 'm', units)}"
    )
    lines = [head]
    for way, mark in ((result.chosen, "*"), (result.other, " ")):
        lines.append(f" {mark} {_covering_line(farm, way)}")
    for work in result.chosen.curtains:
        lines.append(
            f"   {tunnel.sides[work.side].name}, curtain {work.index + 1}: "
            f"{show(work.length_m, 'm', units)} long, handle up to "
            f"{show(work.hardest_n, 'N', units)}, {work.handle_turns:.1f} turns in "
            f"{show(work.minutes, 'min', units)}, trailing {show(work.trailing_m, 'm_thin', units)}"
        )
        lines.append(
            f"      longest bar {show(work.longest_m, 'm', units)}, limited by {work.bound_by}"
        )
    airing = result.chosen.airing
    if airing.opening_m2 > 0:
        lines.append(
            f"   airing: {show(airing.opening_m2, 'm2', units)} opens, "
            f"{show(airing.floor_share, 'share', units)} of the floor, "
            f"{show(airing.flow_m3_s, 'm3/s', units)} on the day entered"
        )
    told = (f"   {words(line, units)}" for line in _told(result))
    return [*lines, *told, *_air_lines(farm, result)]


def _told(result: TunnelPlan) -> Iterator[Phrase]:
    """Yield what is said of the widths, and of what is added to the skin."""
    for sheet in result.fit.sheets:
        if sheet.over is not None:
            yield from tell_sheet(sheet)
    outfit = result.chosen.outfit
    if outfit.rain is not None:
        yield told_rain(outfit.rain)
    if outfit.shade is not None:
        yield told_shade(outfit.shade)
    for screen in outfit.screens:
        yield told_screen(screen)


def _air_lines(farm: Farm, result: TunnelPlan) -> list[str]:
    """Return what is told of the air between two layers; nothing with one."""
    units, air = farm.units, result.chosen.inflation
    if not air.cells:
        return []
    lines = [
        f"   air: {len(air.cells)} cells, {len(air.jumpers)} jumpers, seals "
        f"{show(air.seal_m, 'm', units)}, {show(air.bench_min, 'min', units)} on the bench"
    ]
    for cell in result.held.cells:
        filled = "" if cell.minutes is None else f", full in {show(cell.minutes, 'min', units)}"
        lines.append(
            f"      {cell.name}: {show(cell.pressure_pa, 'Pa', units)}, {cell.state}{filled}"
        )
    lines.append(f"      {words(result.held.told, units)}")
    lines.append(f"      {words(result.warmth.told, units)}")
    return lines


def _covering_line(farm: Farm, way: Variant) -> str:
    units = farm.units
    name = "one sheet" if way.cover.covering == "one_sheet" else "roof and sides apart"
    order = way.order
    kept = f"; what stays is left out, {_money(farm, order.saved)} new" if order.reused else ""
    return (
        f"{name}: sheet {show(way.cover.sheet_width_m, 'm', units)} wide, film bought "
        f"{show(order.film_bought_m2, 'm2', units)} (waste "
        f"{show(order.waste_share, 'share', units)}), goods and tax "
        f"{_money(farm, way.cost.to_pay)}{kept}"
    )


def _finding_lines(farm: Farm, findings: Sequence[Finding]) -> list[str]:
    lines = []
    for found in findings:
        place = f"{found.tunnel}: " if found.tunnel else ""
        lines.append(f"{found.severity}: {place}{words(found.what, farm.units)}")
        lines.append(f"  {words(found.why, farm.units)} {words(found.mend, farm.units)}")
    return lines or ["No faults, cautions or notes."]


def _money(farm: Farm, amount: Decimal) -> str:
    return format_money(amount, farm.money.currency)
