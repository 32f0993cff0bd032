"""Keep a tunnel warm: what it loses in one layer, in two and as chosen, and if the second pays.

The same tunnel is reckoned three times, with one layer everywhere, with two blown apart
everywhere and as its skin is chosen; what lies between the first and the last is what the second
layer saves. Sun, soil and crop are in the free warmth that the user enters.
"""

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from hoopwright.cover.cover import Cover
from hoopwright.farm import Climate, End, Film, Heating
from hoopwright.heat.loss import HeatLoss, heat_loss, saved_share
from hoopwright.heat.payback import pay_back, season_saving
from hoopwright.heat.season import Fuel, season_heat
from hoopwright.heat.second_layer import price_second_layer
from hoopwright.heat.surfaces import (
    AsLaid,
    CoverPart,
    air_changes,
    cover_parts,
    heat_surfaces,
)
from hoopwright.heat.telling import tell_assumed, tell_second_layer, tell_winter
from hoopwright.heat.warming_workings import loss_workings, saving_workings, season_workings
from hoopwright.heat.warmth import Warmth
from hoopwright.heat.winter import degree_days_at
from hoopwright.inflation.inflation import Inflation
from hoopwright.order.order import Order
from hoopwright.quantity.working import LaterWorkings, phrase
from hoopwright.survey.survey import Survey

KWH_J = 3.6e6
NO_MONEY = Decimal("0.00")
LAID: tuple[AsLaid, AsLaid, AsLaid] = ("one", "two", "now")


def warm_tunnel(
    survey: Survey,
    ends: tuple[End, End],
    cover: Cover,
    order: Order,
    inflation: Inflation,
    bench_labour: Decimal,
    blower_cost_year: Decimal,
    heating: Heating | None,
    climate: Climate,
    films: tuple[Film, ...],
    currency: str,
) -> Warmth:
    """Return what keeping a tunnel warm takes and what its second layer saves.

    Args:
        survey: The frame as built.
        ends: Front and back end wall.
        cover: The skin as laid.
        order: What is bought for this tunnel by itself.
        inflation: The cells of that skin.
        bench_labour: Wage for the sealing bench.
        blower_cost_year: Power of the blower for a year.
        heating: How the tunnel is heated; None when it is not. The losses are then those of the
            transmissions to start with.
        climate: The winter outside.
        films: Films that can be chosen.
        currency: Three-letter code of the farm's money.

    Source:
        Each figure keeps its own working.
    """
    heated = heating is not None
    entered = heating or Heating()
    parts = cover_parts(survey, cover, inflation, films)
    one, two, now = (_loss(parts, survey, entered, climate, laid) for laid in LAID)
    second = price_second_layer(cover, order, bench_labour)
    days = degree_days_at(climate, entered.inside_k - entered.gain_k) if heated else 0.0
    before, after = (season_heat(k.whole_w_k, days, _fuel(entered)) for k in (one, now))
    saved = season_saving(before.cost, after.cost, blower_cost_year) if heated else NO_MONEY
    paid = pay_back(second.cost, saved)
    figures = Warmth(
        loss_one_w_k=one.whole_w_k,
        loss_two_w_k=two.whole_w_k,
        loss_now_w_k=now.whole_w_k,
        peak_w=now.peak_w if heated else 0.0,
        degree_days=days,
        season_j=after.heat_kwh * KWH_J,
        fuel_units=after.fuel_units,
        fuel_cost=after.cost,
        saved_share=saved_share(one.whole_w_k, now.whole_w_k),
        saved_units=before.fuel_units - after.fuel_units,
        saved_cost=saved,
        second_layer_cost=second.cost,
        payback_years=paid.years,
        told=phrase(""),
        notes=(
            *(tell_winter(climate, entered) if heated else ()),
            *tell_assumed(parts, ends, _inner_films(cover, films), second, paid.years),
        ),
        workings=LaterWorkings(
            lambda: (
                *loss_workings((one, two, now), parts),
                *season_workings(after, climate, entered),
                *saving_workings((before, after), (one, now), blower_cost_year),
                second.working(),
                replace(paid.working("years"), figure="payback_years"),
            )
        ),
    )
    blown = any(part.two_m2 > 0 for part in parts)
    told = tell_second_layer(figures, blown, heated, blower_cost_year, currency)
    return replace(figures, told=told)


def _loss(
    parts: Iterable[CoverPart], survey: Survey, heating: Heating, climate: Climate, laid: AsLaid
) -> HeatLoss:
    """Return the loss in one layer, in two blown apart, or as the skin is chosen."""
    return heat_loss(
        heat_surfaces(parts, heating, laid),
        survey.volume_m3,
        air_changes(parts, heating, laid),
        heating.inside_k,
        climate.design_outside_k,
    )


def _fuel(heating: Heating) -> Fuel:
    return Fuel(
        unit=f"{heating.fuel_unit} of {heating.fuel}",
        heat_kwh=heating.fuel_unit_j / KWH_J,
        efficiency=heating.efficiency,
        price=heating.fuel_price,
    )


def _inner_films(cover: Cover, films: tuple[Film, ...]) -> list[Film]:
    """Return the films that inner layers are made of."""
    used = {piece.film for piece in cover.pieces if piece.layer == "inner"}
    return [film for film in films if film.key in used]
