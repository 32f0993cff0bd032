"""plan(farm): the stages in order, each remembered on its frozen inputs.

A stage is remembered by the identity of what goes into it. Everything that goes in is frozen, and
a changed farm shares all that did not change with the farm before, so a drag recomputes only what
it touches and an undo recomputes nothing.
"""

from dataclasses import dataclass, replace
from functools import cache

from hoopwright.airing import air_tunnel
from hoopwright.checks import Case, check_farm, check_tunnel, sort_findings
from hoopwright.checks.variant import TunnelPlan, Variant
from hoopwright.cost import Cost, price_order
from hoopwright.cover import Cover, lay_skin, sheet_width
from hoopwright.curtain import CurtainWork, work_curtains
from hoopwright.farm import Bench, Catalogue, Climate, Farm, Limits, Money, Tunnel, Weather
from hoopwright.farm.skin import Covering
from hoopwright.fit import fit_widths
from hoopwright.heat import Warmth, warm_tunnel
from hoopwright.inflation import Inflation, fill_cells
from hoopwright.order import Order, place_order
from hoopwright.outfit import Outfit, fit_out
from hoopwright.pressure import Held, hold_air
from hoopwright.quantity.finding import Finding
from hoopwright.quantity.remembered import Remembered
from hoopwright.survey import Survey, survey_frame
from hoopwright.takeoff import (
    Need,
    Sheets,
    count_parts,
    keep_film,
    keep_parts,
    mend_film,
)

__all__ = ["Plan", "TunnelPlan", "Variant", "plan", "preview"]

_survey = Remembered(survey_frame)
_cover = Remembered(lay_skin)
_fit = Remembered(fit_widths)
_curtains = Remembered(work_curtains)
_inflation = Remembered(fill_cells)
_airing = Remembered(air_tunnel)
_held = Remembered(hold_air)
_outfit = Remembered(fit_out)
_sheets = Remembered(keep_film)
_counted = Remembered(count_parts)
_needs = Remembered(keep_parts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """Every number anybody shows.

    Attributes:
        tunnels: Plans of the tunnels, in the farm's order.
        order: What to buy for all tunnels together.
        cost: What that costs, with freight.
        findings: All findings, faults first.
        settled: Whether order and cost belong to these very tunnels; not so while a drag in a farm
            of several tunnels waits for the hand to rest.
    """

    tunnels: tuple[TunnelPlan, ...]
    order: Order
    cost: Cost
    findings: tuple[Finding, ...]
    settled: bool = True


def plan(farm: Farm) -> Plan:
    """Return the whole plan of a farm.

    The same farm always gives an equal plan: no clock, no chance, no file.
    """
    tunnels = _plan_tunnels(farm)
    order = _whole_order(farm, tunnels)
    return Plan(
        tunnels=tunnels,
        order=order,
        cost=_whole_cost(farm, tunnels, order),
        findings=_all_findings(tunnels, order),
    )


def preview(farm: Farm, last: Plan) -> Plan:
    """Return the plan while a drag goes on: every tunnel fresh, the farm's order as it was.

    With one tunnel there is nothing to wait for and the plan is complete.
    """
    if len(farm.tunnels) == 1:
        return plan(farm)
    tunnels = _plan_tunnels(farm)
    findings = _all_findings(tunnels, last.order)
    return replace(last, tunnels=tunnels, findings=findings, settled=False)


def _plan_tunnels(farm: Farm) -> tuple[TunnelPlan, ...]:
    shared = (farm.catalogue, farm.money, farm.limits, farm.bench, farm.weather, farm.climate)
    return tuple(_tunnel(tunnel, *shared) for tunnel in farm.tunnels)


def _plan_tunnel(
    tunnel: Tunnel,
    catalogue: Catalogue,
    money: Money,
    limits: Limits,
    bench: Bench,
    weather: Weather,
    climate: Climate,
) -> TunnelPlan:
    survey = _survey(tunnel.frame)
    shared = (tunnel, survey, catalogue, money, limits, bench, weather)
    chosen = _skin_tunnel(tunnel.skin.covering, *shared)
    second: Covering = "one_sheet" if chosen.cover.covering != "one_sheet" else "roof_and_sides"

    # Nobody looks at the whole of it in a drag; its width alone stands in the headline.
    @cache
    def other_made() -> Variant:
        return _skin_tunnel(second, *shared)

    fit = _fit(survey, tunnel.skin, chosen.sheets.ordered, catalogue.films, tunnel.frame.tape)
    held = _hold(tunnel, survey, chosen, catalogue, bench, climate)
    warmth = _warm(tunnel, survey, chosen, held, catalogue, climate, money)
    case = Case(
        tunnel=tunnel,
        survey=survey,
        chosen=chosen,
        other_made=other_made,
        fit=fit,
        held=held,
        warmth=warmth,
        catalogue=catalogue,
        limits=limits,
        coupon_n_m=bench.coupon_n_m,
        currency=money.currency,
    )
    return TunnelPlan(
        name=tunnel.name,
        survey=survey,
        chosen=chosen,
        other_sheet=sheet_width(
            second,
            survey,
            tunnel.skin,
            tunnel.sides,
            catalogue.films,
            tunnel.air.inflated_sides,
        ),
        other_made=other_made,
        fit=fit,
        held=held,
        warmth=warmth,
        findings=check_tunnel(case),
    )


def _hold(
    tunnel: Tunnel,
    survey: Survey,
    chosen: Variant,
    catalogue: Catalogue,
    bench: Bench,
    climate: Climate,
) -> Held:
    return _held(
        chosen.inflation,
        tunnel.air,
        tunnel.skin,
        tunnel.sides,
        catalogue.films,
        catalogue.blowers,
        catalogue.hoses,
        bench,
        climate,
        survey,
        chosen.cover,
    )


def _warm(
    tunnel: Tunnel,
    survey: Survey,
    chosen: Variant,
    held: Held,
    catalogue: Catalogue,
    climate: Climate,
    money: Money,
) -> Warmth:
    return warm_tunnel(
        survey,
        tunnel.ends,
        chosen.cover,
        chosen.order,
        chosen.inflation,
        chosen.cost.bench_labour,
        held.yearly_cost,
        tunnel.heating,
        climate,
        catalogue.films,
        money.currency,
    )


_tunnel = Remembered(_plan_tunnel)


def _skin_tunnel(
    covering: Covering,
    tunnel: Tunnel,
    survey: Survey,
    catalogue: Catalogue,
    money: Money,
    limits: Limits,
    bench: Bench,
    weather: Weather,
) -> Variant:
    frame, skin, sides, ends, air = (
        tunnel.frame,
        tunnel.skin,
        tunnel.sides,
        tunnel.ends,
        tunnel.air,
    )
    cover = _lay(covering, tunnel, survey, catalogue)
    curtains = _curtains(
        frame.boards,
        survey,
        sides,
        cover,
        catalogue.bars,
        catalogue.drives,
        catalogue.parts,
        limits,
        weather,
        skin.allowances.bar_wrap_m,
    )
    sheets = _sheets(cover, tunnel.condition, survey, skin.allowances)
    inflation = _inflation(survey, skin, sides, ends, air, cover, bench, sheets.old_places)
    airing = _airing(survey, sides, curtains, weather)
    outfit = _outfit(survey, frame.boards, sides, cover, airing, tunnel.rain, tunnel.shade)
    needs = _count(tunnel, survey, cover, curtains, inflation, outfit, sheets, catalogue)
    order = _order(((tunnel.name, needs, sheets),), catalogue)
    cost = price_order(order, money, survey.floor_area_m2, inflation.bench_min, bench, False)
    return Variant(
        cover=cover,
        curtains=curtains,
        inflation=inflation,
        airing=airing,
        outfit=outfit,
        needs=needs,
        sheets=sheets,
        order=order,
        cost=cost,
    )


def _count(
    tunnel: Tunnel,
    survey: Survey,
    cover: Cover,
    curtains: tuple[CurtainWork, ...],
    inflation: Inflation,
    outfit: Outfit,
    sheets: Sheets,
    catalogue: Catalogue,
) -> tuple[Need, ...]:
    """Return what each place needs, and what of it stays."""
    counted = _counted(
        tunnel.frame,
        survey,
        tunnel.skin,
        tunnel.sides,
        tunnel.ends,
        tunnel.air,
        cover,
        curtains,
        inflation,
        outfit,
        catalogue,
    )
    return (*_needs(counted, tunnel.condition, survey, cover, catalogue), *mend_film(sheets))


def _order(taken: tuple[tuple[str, tuple[Need, ...], Sheets], ...], catalogue: Catalogue) -> Order:
    """Return the order of tunnels: name, needs and sheets of each."""
    return place_order(
        tuple((name, needs) for name, needs, _ in taken),
        tuple((name, sheets.ordered) for name, _, sheets in taken),
        catalogue,
        tuple((name, sheets.kept) for name, _, sheets in taken),
    )


def _lay(covering: Covering, tunnel: Tunnel, survey: Survey, catalogue: Catalogue) -> Cover:
    return _cover(
        covering,
        survey,
        tunnel.skin,
        tunnel.sides,
        tunnel.ends,
        catalogue.films,
        tunnel.air.inflated_sides,
    )


def _whole_order(farm: Farm, tunnels: tuple[TunnelPlan, ...]) -> Order:
    if len(tunnels) == 1:
        return tunnels[0].chosen.order
    taken = tuple((t.name, t.chosen.needs, t.chosen.sheets) for t in tunnels)
    return _order(taken, farm.catalogue)


def _whole_cost(farm: Farm, tunnels: tuple[TunnelPlan, ...], order: Order) -> Cost:
    floor_m2 = sum(t.survey.floor_area_m2 for t in tunnels)
    bench_min = sum(t.chosen.inflation.bench_min for t in tunnels)
    return price_order(order, farm.money, floor_m2, bench_min, farm.bench, True)


def _all_findings(tunnels: tuple[TunnelPlan, ...], order: Order) -> tuple[Finding, ...]:
    found = [f for t in tunnels for f in t.findings]
    return sort_findings((*check_farm(order), *found))
