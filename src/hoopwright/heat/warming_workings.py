"""How each figure of a warm tunnel was got, and what published figures stand beside it."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from hoopwright.farm import Climate, Heating
from hoopwright.heat.loss import AIR_SOURCE, CONDUCTION_SOURCE, HeatLoss
from hoopwright.heat.published import (
    CHANGES_1_H,
    DOUBLE,
    DOUBLE_INFRARED,
    SAVED_SHARE,
    SINGLE,
    U_W_M2_K,
    Published,
)
from hoopwright.heat.season import SeasonHeat
from hoopwright.heat.surfaces import CoverPart
from hoopwright.heat.winter import days_working
from hoopwright.quantity.working import DERIVED, ENTERED, Term, Working

LAID_RULES = (
    ("loss_one_w_k", "One layer everywhere, whatever is chosen: "),
    ("loss_two_w_k", "Two layers blown apart everywhere, whatever is chosen: "),
    (
        "loss_now_w_k",
        "As chosen; two layers count where a fed cell lies between them, fixed film, doors and "
        "baseboards as one: ",
    ),
)
LOSS_RULE = (
    "each part of the cover times what a square metre of it lets through, and the heat of the air "
    "that leaks. Air changes go by the roof's share of two layers."
)


def loss_workings(losses: Sequence[HeatLoss], parts: Iterable[CoverPart]) -> Iterator[Working]:
    """Yield how the losses and the peak were got.

    Args:
        losses: One layer everywhere, two everywhere, as chosen.
        parts: The parts of the cover.
    """
    thermal = any(part.thermal for part in parts)
    for (figure, laid), loss in zip(LAID_RULES, losses, strict=True):
        kinds = (
            *((SINGLE,) if figure != "loss_two_w_k" else ()),
            *((DOUBLE,) if figure != "loss_one_w_k" else ()),
            *((DOUBLE_INFRARED,) if thermal and figure != "loss_one_w_k" else ()),
        )
        beside = [u for u in U_W_M2_K if u.covering in kinds]
        yield Working(
            figure,
            laid + LOSS_RULE,
            (
                *loss.working("surfaces_w_k").inputs,
                *loss.working("air_w_k").inputs,
                *_published(beside, "W/m2/K"),
            ),
            _loss_source(beside),
        )
    peak = losses[-1].working("peak_w")
    yield replace(
        peak,
        rule=peak.rule + " 0 when the tunnel is not heated. Let a licensed installer size the "
        "heater and its flue by the local codes.",
    )


def season_workings(season: SeasonHeat, climate: Climate, heating: Heating) -> Iterator[Working]:
    """Yield how degree-days, heat, fuel and its cost were got; all are 0 without heating."""
    yield days_working(climate, heating.inside_k, heating.gain_k)
    yield replace(season.working("heat_kwh"), figure="season_j")
    yield season.working("fuel_units")
    yield replace(season.working("cost"), figure="fuel_cost")


def saving_workings(
    seasons: tuple[SeasonHeat, SeasonHeat],
    losses: tuple[HeatLoss, HeatLoss],
    blower_cost_year: Decimal,
) -> Iterator[Working]:
    """Yield what the second layer saves, with one layer everywhere first and as chosen second."""
    one, now = losses
    before, after = seasons
    yield Working(
        "saved_share",
        "What is lost less as chosen than with one layer everywhere, the air that leaks counted. "
        "The published share is for the cover alone.",
        (
            Term("one layer everywhere", one.whole_w_k, "W/K"),
            Term("as chosen", now.whole_w_k, "W/K"),
            *_published((SAVED_SHARE,), "share"),
        ),
        f"{DERIVED}; published: {SAVED_SHARE.source}",
    )
    yield Working(
        "saved_units",
        "Fuel with one layer everywhere less fuel as chosen.",
        (
            Term("one layer everywhere", before.fuel_units, "ratio"),
            Term("as chosen", after.fuel_units, "ratio"),
        ),
    )
    yield Working(
        "saved_cost",
        "Fuel with one layer everywhere less fuel as chosen, less a year of the blower's power; 0 "
        "when the tunnel is not heated.",
        (
            Term("one layer everywhere", before.cost, "money"),
            Term("as chosen", after.cost, "money"),
            Term("power of the blower", blower_cost_year, "money"),
        ),
    )


def _published(ranges: Iterable[Published], unit: str) -> Iterator[Term]:
    for found in ranges:
        yield Term(f"published for {found.covering}, from", found.low, unit)
        yield Term("to", found.high, unit)


def _loss_source(beside: Iterable[Published]) -> str:
    """Return where the rule and the published figures beside the entries come from."""
    sources = dict.fromkeys((*(u.source for u in beside), CHANGES_1_H[0].source))
    return (
        f"{CONDUCTION_SOURCE}. {AIR_SOURCE}. What layers let through and the air changes: "
        f"{ENTERED}; published: {'; '.join(sources)}"
    )
