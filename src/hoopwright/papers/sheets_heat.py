"""The heat: what is lost, what a season burns, what the second layer saves and when it is paid."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from hoopwright.farm import Heating
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.heat import Warmth, pay_back_words
from hoopwright.heat.loss import Surface, heat_loss
from hoopwright.heat.published import CHANGES_1_H, SAVED_SHARE, U_W_M2_K, Published
from hoopwright.heat.surfaces import AsLaid, CoverPart, air_changes, cover_parts, heat_surfaces
from hoopwright.papers.sheet import (
    HEAD,
    NOTE,
    SECTION,
    TEXT,
    TITLE,
    Entry,
    Look,
    Row,
    Sheet,
    wide_row,
)
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.papers.sheet_numbers import number_format, shown
from hoopwright.plan import Plan
from hoopwright.quantity.units import Units, unit_label
from hoopwright.quantity.working import words

HEAT_WIDTHS = (16.0, 36.0, *(13.0 for _ in range(8)))
LAST = len(HEAT_WIDTHS)
SPANS = ((1, 2), (5, LAST))
PLACES_PUBLISHED = 2
LAID: tuple[AsLaid, AsLaid, AsLaid] = ("one", "two", "now")
ANY_K = 283.15
ESTIMATE = (
    "Estimates for planning: sun, soil and crop are left out but for the free warmth that was "
    "entered. Let a licensed installer size heater and flue by the local codes."
)
NO_HEAT = "No tunnel is heated, so no fuel is burnt and none is saved."
U_NOTE = (
    "What was entered goes before what is published: film, wind, sky and wetness move it by a "
    "tenth and more. A farm's own fuel bills say more than any table."
)


@dataclass(frozen=True, slots=True)
class _Warmed:
    """A tunnel with its heat.

    Attributes:
        tunnel: The tunnel.
        warmth: What it loses and saves.
        parts: The parts of its cover.
        volume_m3: Air inside, m3.
        units: The farm's units.
    """

    tunnel: Tunnel
    warmth: Warmth
    parts: tuple[CoverPart, ...]
    volume_m3: float
    units: Units

    @property
    def heating(self) -> Heating:
        """How it is heated; what the losses are reckoned with when it is not."""
        return self.tunnel.heating or Heating()


class _Part(NamedTuple):
    """A part of a cover, or the air that leaks.

    Attributes:
        tunnel: Its tunnel.
        name: What it is.
        area_m2: All of it, m2; None for air.
        two_m2: What stands in two layers blown apart, m2; None for air.
        u_one: What one layer lets through, W/m2/K; None for air.
        u_two: What two layers let through, W/m2/K; None for air.
        losses_w_k: Lost for one kelvin with one layer, with two, as chosen, W/K.
    """

    tunnel: Tunnel
    name: str
    area_m2: float | None
    two_m2: float | None
    u_one: float | None
    u_two: float | None
    losses_w_k: tuple[float, ...]


WHOLE: tuple[Figure[_Warmed], ...] = (
    Figure("Tunnel", lambda w: w.tunnel.name),
    Figure("Heated", lambda w: "no" if w.tunnel.heating is None else _heated(w.tunnel.heating)),
    Figure("Lost, one layer", lambda w: w.warmth.loss_one_w_k, "W/K"),
    Figure("Lost, two layers", lambda w: w.warmth.loss_two_w_k, "W/K"),
    Figure("Lost as chosen", lambda w: w.warmth.loss_now_w_k, "W/K"),
    Figure("Second layer saves", lambda w: w.warmth.saved_share, "share"),
    Figure("Second layer costs", lambda w: w.warmth.second_layer_cost, "money"),
    Figure("Air changes an hour, one layer", lambda w: w.heating.changes_one_per_h, "ratio"),
    Figure("Air changes an hour, two layers", lambda w: w.heating.changes_two_per_h, "ratio"),
)
PARTS: tuple[Figure[_Part], ...] = (
    Figure("Tunnel", lambda p: p.tunnel.name),
    Figure("Part of the cover", lambda p: p.name),
    Figure("Area", lambda p: p.area_m2, "m2"),
    Figure("Blown apart", lambda p: p.two_m2, "m2"),
    Figure("One layer lets through", lambda p: p.u_one, "W/m2/K"),
    Figure("Two layers let through", lambda p: p.u_two, "W/m2/K"),
    Figure("Lost, one layer", lambda p: p.losses_w_k[0], "W/K"),
    Figure("Lost, two layers", lambda p: p.losses_w_k[1], "W/K"),
    Figure("Lost as chosen", lambda p: p.losses_w_k[2], "W/K"),
)
SEASON: tuple[Figure[_Warmed], ...] = (
    Figure("Tunnel", lambda w: w.tunnel.name),
    Figure("Fuel", lambda w: f"{w.heating.fuel}, sold by the {w.heating.fuel_unit}"),
    Figure("In the coldest hour", lambda w: w.warmth.peak_w, "W_heat"),
    Figure("Degree-days", lambda w: w.warmth.degree_days, "K day"),
    Figure("Heat of a season", lambda w: w.warmth.season_j, "J_heat"),
    Figure("Fuel burnt", lambda w: w.warmth.fuel_units, "count"),
    Figure("That costs", lambda w: w.warmth.fuel_cost, "money"),
    Figure("Fuel saved", lambda w: w.warmth.saved_units, "count"),
    Figure("Saved, blower's power off", lambda w: w.warmth.saved_cost, "money"),
    Figure("Paid back after", lambda w: words(pay_back_words(w.warmth), w.units)),
)


def heat_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return losses by surface, season, fuel, saving and pay-back, with published figures."""
    units = farm.units
    whole = [
        _Warmed(
            tunnel,
            planned.warmth,
            cover_parts(
                planned.survey,
                planned.chosen.cover,
                planned.chosen.inflation,
                farm.catalogue.films,
            ),
            planned.survey.volume_m3,
            units,
        )
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
    ]
    parts = [part for one in whole for part in _parts(one)]
    heated = [one for one in whole if one.tunnel.heating is not None]
    rows = [
        wide_row("Heat, and what the second layer saves", TITLE, LAST),
        wide_row(f"Amounts of money in {farm.money.currency}. {ESTIMATE}", NOTE, LAST),
        Row(),
        *(row for one in whole for row in _told(one)),
        *listed_rows("Lost for one degree", WHOLE, whole, units, LAST, ""),
        *listed_rows("Lost for one degree, by the parts", PARTS, parts, units, LAST, ""),
        *listed_rows("A season", SEASON, heated, units, LAST, NO_HEAT),
        *_published(units),
    ]
    return Sheet(name="Heat", widths=HEAT_WIDTHS, rows=tuple(rows))


def _parts(one: _Warmed) -> Iterator[_Part]:
    """Yield the parts of a cover and the air that leaks, each with what it loses."""
    heating = one.heating
    for part in one.parts:
        losses = tuple(_loss(heat_surfaces((part,), heating, laid)) for laid in LAID)
        let_through = (part.u_one(heating), part.u_two(heating))
        sizes = (part.area_m2, part.two_m2, *let_through)
        yield _Part(one.tunnel, part.name, *sizes, losses)
    changes = (air_changes(one.parts, heating, laid) for laid in LAID)
    losses = tuple(_loss((), one.volume_m3, per_h) for per_h in changes)
    yield _Part(one.tunnel, "air that leaks", None, None, None, None, losses)


def _loss(surfaces: Sequence[Surface], volume_m3: float = 0.0, per_h: float = 0.0) -> float:
    """Return what surfaces and leaking air lose for one kelvin, W/K."""
    return heat_loss(surfaces, volume_m3, per_h, ANY_K, ANY_K).whole_w_k


def _told(one: _Warmed) -> Iterator[Row]:
    for told in (one.warmth.told, *one.warmth.notes):
        yield wide_row(words(told, one.units), TEXT, LAST, label=one.tunnel.name)


def _heated(heating: Heating) -> str:
    return f"with {heating.fuel}"


def _published(units: Units) -> Iterator[Row]:
    """Yield what is published on heat that covers let through, with the sources."""
    tables: tuple[tuple[str, str, Sequence[Published]], ...] = (
        ("What covers let through, published", "W/m2/K", U_W_M2_K),
        ("Air changes, published", "1/h", CHANGES_1_H),
        ("What a second layer saves of the cover's loss, published", "share", (SAVED_SHARE,)),
    )
    for title, unit, found in tables:
        label = unit_label(unit, units)
        heads = ("For", None, f"From ({label})", f"To ({label})", "Source")
        yield from (Row(), wide_row(title, SECTION, LAST))
        yield Row(tuple(Entry(head, HEAD) if head else None for head in heads), SPANS)
        yield from (_range(one, unit, units) for one in found)
    yield wide_row(U_NOTE, NOTE, LAST)


def _range(found: Published, unit: str, units: Units) -> Row:
    look = Look("cell", number_format(PLACES_PUBLISHED))
    low, high = (
        Entry(shown(figure, unit, units, PLACES_PUBLISHED), look)
        for figure in (found.low, found.high)
    )
    return Row((Entry(found.covering, TEXT), None, low, high, Entry(found.source, TEXT)), SPANS)
