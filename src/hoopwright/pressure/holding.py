"""Hold the cells under pressure: what every cell, hose, blower, film and seal comes to.

The net of cells is settled with the blower chosen, then everything else follows from its
pressures. Without cells, blower or hose nothing stands under pressure and the figures are zero;
the blowers of the catalogue are tried all the same, wherever there is a roof cell to feed.

What takes longer than a drag can wait for is asked for by itself and remembered: the course of
filling, and the search for the cell that leaks.
"""

from collections.abc import Iterator, Mapping
from functools import cache, lru_cache

from msgspec import Struct

from hoopwright.cover.cover import Cover
from hoopwright.farm import Air, Bench, Blower, Climate, Film, Hose, Side, Skin
from hoopwright.inflation import Inflation
from hoopwright.pressure.balance import FILLS_AT_PA, AirBalance
from hoopwright.pressure.blower_tries import (
    cheapest_fitting,
    power_cost,
    settled,
    span_of,
    try_blowers,
)
from hoopwright.pressure.filling import Filling, fill_net
from hoopwright.pressure.film_pulls import pull_films, widest_bay
from hoopwright.pressure.graph import critical_hoses
from hoopwright.pressure.held import AirState, BlowerTry, CellAir, Held, HoseAir, LeakingCell
from hoopwright.pressure.held_workings import explain_cell, explain_held, explain_hose
from hoopwright.pressure.leak_hints import read_leaks, search_leak
from hoopwright.pressure.membrane import MOST_SLACK, STEEL_1_K, billow_rise, slack_to_leave
from hoopwright.pressure.net import AirNet
from hoopwright.pressure.planned_net import plan_net
from hoopwright.pressure.published import BOOK_POWER_W_M2
from hoopwright.pressure.quick_filling import fill_minutes
from hoopwright.pressure.seal_needs import seal_need
from hoopwright.quantity.working import Phrase
from hoopwright.survey.survey import Survey

# So many courses of filling are kept.
_KEPT = 16


class _Rest(Struct, frozen=True):
    """The net at rest; both None while nothing blows.

    Attributes:
        blower: The blower that runs.
        net: The net.
        found: Its pressures and flows.
    """

    blower: Blower | None = None
    net: AirNet | None = None
    found: AirBalance | None = None

    @property
    def feed_loss_pa(self) -> float:
        """What the blower's hose and damper take, Pa."""
        if self.net is None or self.found is None:
            return 0.0
        return self.found.fan_pressure_pa - self.found.pressure_pa(self.net.feeds[0].into)


def hold_air(
    inflation: Inflation,
    air: Air,
    skin: Skin,
    sides: tuple[Side, Side],
    films: tuple[Film, ...],
    blowers: tuple[Blower, ...],
    hoses: tuple[Hose, ...],
    bench: Bench,
    climate: Climate,
    survey: Survey,
    cover: Cover,
) -> Held:
    """Return the cells of one tunnel under pressure.

    Args:
        inflation: Cells, jumpers and seals.
        air: Blower, hoses, damper, pressures wanted and readings.
        skin: The skin as chosen.
        sides: Both sides as chosen.
        films: Films of the catalogue.
        blowers: Blowers of the catalogue.
        hoses: Hoses of the catalogue.
        bench: What a coupon of the seal held.
        climate: Temperatures of pulling and of the cold, hours and price of power.
        survey: The frame as built.
        cover: The skin laid one way.

    Source:
        Each figure keeps its own working.
    """
    rest = _settle(inflation, air, blowers, hoses)
    found = rest.found
    full_pa = (air.low_pa + air.high_pa) / 2
    volumes_m3 = tuple(cell.volume_m3 for cell in inflation.cells)
    cells = tuple(_cells(inflation, air, rest, volumes_m3, full_pa))
    span = None if found is None else span_of(found)
    film = next((f for f in films if f.key == skin.roof.outer), None)
    slack_share = _slack_share(film, climate)
    pressures = _by_kind(inflation, found)
    need_n_m = seal_need(inflation, pressures, skin, sides, films, survey, cover)
    power_w = rest.blower.power_w if rest.blower else 0.0
    yearly_kwh, yearly_cost = power_cost(power_w, climate)
    filled = [cell.minutes for cell in cells if cell.minutes is not None]
    held = Held(
        cells=cells,
        hoses=tuple(_hoses(inflation, air, rest)),
        low_pa=span.low_pa if span else 0.0,
        high_pa=span.high_pa if span else 0.0,
        fan_flow_m3_s=found.fan_flow_m3_s if found else 0.0,
        fan_pressure_pa=found.fan_pressure_pa if found else 0.0,
        feed_loss_pa=rest.feed_loss_pa,
        leak_m3_s=sum(cell.leak_m3_s for cell in cells),
        never_fills=found is not None and found.never_fills,
        fill_min=max(filled, default=None),
        power_w=power_w,
        power_per_area_w_m2=power_w / survey.floor_area_m2,
        book_power_w=BOOK_POWER_W_M2 * survey.floor_area_m2,
        yearly_kwh=yearly_kwh,
        yearly_cost=yearly_cost,
        tries_made=cache(lambda: _tries(inflation, air, blowers, hoses, climate)),
        fitting_made=cache(lambda: _fitting(inflation, air, blowers, hoses, climate)),
        pulls=pull_films(pressures, skin, sides, films, survey, cover),
        slack_m=slack_share * survey.length_m,
        sag_m=billow_rise(widest_bay(survey), slack_share),
        seal_need_n_m=need_n_m,
        seal_share=None if bench.coupon_n_m is None else need_n_m / bench.coupon_n_m,
        leaks=read_leaks(
            air,
            {cell.mark: cell.name for cell in cells},
            {cell.mark: cell.pressure_pa for cell in cells},
        ),
        told=Phrase(""),
        told_window=Phrase(""),
        net=rest.net,
        volumes_m3=volumes_m3,
        full_pa=full_pa,
        readings=air.readings,
    )
    return explain_held(held, inflation, air, rest.blower, film, bench, climate, survey)


def filling(held: Held) -> Filling | None:
    """Return the course of filling, moment by moment; None while nothing blows.

    It takes some hundredths of a second and is remembered.

    Source:
        `hoopwright.pressure.filling`.
    """
    if held.net is None:
        return None
    return _filled(held.net, held.volumes_m3, held.full_pa)


def leaking_cell(held: Held) -> LeakingCell | None:
    """Return the cell that leaks by the last readings; None without two cells read on one day.

    It takes a tenth of a second and is remembered.

    Source:
        `hoopwright.pressure.readings`.
    """
    return search_leak(held.net, held.readings, {cell.mark: cell.name for cell in held.cells})


@lru_cache(maxsize=_KEPT)
def _filled(net: AirNet, volumes_m3: tuple[float, ...], full_pa: float) -> Filling:
    return fill_net(net, volumes_m3, full_pa)


def _settle(
    inflation: Inflation, air: Air, blowers: tuple[Blower, ...], hoses: tuple[Hose, ...]
) -> _Rest:
    blower = next((b for b in blowers if b.key == air.blower), None)
    net = None if blower is None else plan_net(inflation, air, hoses, blower)
    return _Rest() if net is None else _Rest(blower, net, settled(net))


def _tries(
    inflation: Inflation,
    air: Air,
    blowers: tuple[Blower, ...],
    hoses: tuple[Hose, ...],
    climate: Climate,
) -> tuple[BlowerTry, ...]:
    net = plan_net(inflation, air, hoses, blowers[0]) if blowers else None
    return () if net is None else try_blowers(net, blowers, air, climate)


def _fitting(
    inflation: Inflation,
    air: Air,
    blowers: tuple[Blower, ...],
    hoses: tuple[Hose, ...],
    climate: Climate,
) -> BlowerTry | None:
    net = plan_net(inflation, air, hoses, blowers[0]) if blowers else None
    return None if net is None else cheapest_fitting(net, blowers, air, climate)


def _cells(
    inflation: Inflation,
    air: Air,
    rest: _Rest,
    volumes_m3: tuple[float, ...],
    full_pa: float,
) -> Iterator[CellAir]:
    net, found = rest.net, rest.found
    minutes: dict[str, float] = {}
    if net is not None and found is not None:
        minutes = fill_minutes(net, found, volumes_m3, full_pa)
    for at, cell in enumerate(inflation.cells):
        pressure_pa = found.pressures_pa[at] if found else 0.0
        fed = found is not None and cell.mark not in found.unjoined
        yield explain_cell(
            CellAir(
                mark=cell.mark,
                name=cell.name,
                pressure_pa=pressure_pa,
                state=_state(pressure_pa, air) if fed else "not fed",
                leak_m3_s=found.leaks_m3_s[at] if found else 0.0,
                minutes=minutes.get(cell.mark),
            ),
            cell,
            air,
        )


def _state(pressure_pa: float, air: Air) -> AirState:
    if pressure_pa < FILLS_AT_PA:
        return "flat"
    if pressure_pa < air.low_pa:
        return "low"
    return "in range" if pressure_pa <= air.high_pa else "high"


def _hoses(inflation: Inflation, air: Air, rest: _Rest) -> Iterator[HoseAir]:
    links = tuple((jumper.from_cell, jumper.to_cell) for jumper in inflation.jumpers)
    marks = tuple(cell.mark for cell in inflation.cells)
    fed = rest.net.fed if rest.net else ()
    cut = {hose.link: hose.cells for hose in critical_hoses(marks, links, fed)}
    pressures: Mapping[str, float] = {}
    if rest.found is not None:
        pressures = dict(zip(rest.found.cells, rest.found.pressures_pa, strict=True))
    for at, jumper in enumerate(inflation.jumpers):
        yield explain_hose(
            HoseAir(
                mark=jumper.mark,
                flow_m3_s=rest.found.jump_flows_m3_s[at] if rest.found else 0.0,
                loss_pa=pressures.get(jumper.from_cell, 0.0) - pressures.get(jumper.to_cell, 0.0),
                critical=at in cut,
                cuts_off=cut.get(at, ()),
            ),
            jumper,
            air,
        )


def _by_kind(inflation: Inflation, found: AirBalance | None) -> dict[str, float]:
    """Return the greatest pressure of each kind of cell: `roof`, `side/0`, `end/1`, Pa."""
    kinds: dict[str, float] = {}
    if found is not None:
        for cell, pressure_pa in zip(inflation.cells, found.pressures_pa, strict=True):
            kind = "/".join(cell.place.split("/")[:2])
            kinds[kind] = max(kinds.get(kind, 0.0), pressure_pa)
    return kinds


def _slack_share(film: Film | None, climate: Climate) -> float:
    if film is None:
        return 0.0
    slack = slack_to_leave(climate.install_k, climate.coldest_k, film.expansion_per_k, STEEL_1_K)
    return min(MOST_SLACK, slack)
