"""The air: seals, cells and jumpers between two layers, and what passes through open sides."""

from collections.abc import Sequence
from typing import NamedTuple

from hoopwright.airing import Airing, told_flow, told_share
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.farm.side import Side
from hoopwright.inflation.inflation import Cell, Inflation, Jumper, Seal
from hoopwright.papers.sheet import NOTE, TITLE, Row, Sheet, wide_row
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.papers.sheets_film import caution_note
from hoopwright.papers.side_words import KINDS, WIND_SIDES, place_name
from hoopwright.plan import Plan
from hoopwright.quantity.units import show
from hoopwright.quantity.working import words

AIR_WIDTHS = (22.0, 30.0, 26.0, 13.0, 13.0, 13.0, 13.0)
AIRING_WIDTHS = (24.0, 20.0, *(14.0 for _ in range(6)))


class _Blown(NamedTuple):
    tunnel: Tunnel
    air: Inflation
    catalogue: Catalogue


class _Sealed(NamedTuple):
    tunnel: Tunnel
    seal: Seal


class _Filled(NamedTuple):
    tunnel: Tunnel
    cell: Cell


class _Joined(NamedTuple):
    tunnel: Tunnel
    jumper: Jumper
    names: dict[str, str]


BLOWN: tuple[Figure[_Blown], ...] = (
    Figure("Tunnel", lambda b: b.tunnel.name),
    Figure("Blower", lambda b: b.catalogue.part(b.air.blower).name if b.air.blower else "none"),
    Figure("All seals", lambda b: b.air.seal_m, "m"),
    Figure("Bench", lambda b: b.air.bench_min, "min"),
    Figure("All cells", lambda b: b.air.volume_m3, "m3"),
    Figure("Cells", lambda b: len(b.air.cells), "count"),
    Figure("Jumpers", lambda b: len(b.air.jumpers), "count"),
)
SEALED: tuple[Figure[_Sealed], ...] = (
    Figure("Tunnel", lambda s: s.tunnel.name),
    Figure("Curtain", lambda s: place_name(s.tunnel, s.seal.mark)),
    Figure("Edge", lambda s: s.seal.edge),
    Figure("Edge length", lambda s: s.seal.length_m, "m"),
    Figure("Seals on it", lambda s: s.seal.passes, "count"),
    Figure("Seal in all", lambda s: s.seal.total_m, "m"),
    Figure("Bench", lambda s: s.seal.minutes, "min"),
)
FILLED: tuple[Figure[_Filled], ...] = (
    Figure("Tunnel", lambda f: f.tunnel.name),
    Figure("Cell", lambda f: f.cell.name),
    Figure("Air comes", lambda f: "from the blower" if f.cell.fed else "by jumper"),
    Figure("From", lambda f: f.cell.from_m, "m"),
    Figure("To", lambda f: f.cell.to_m, "m"),
    Figure("Volume", lambda f: f.cell.volume_m3, "m3"),
)
JOINED: tuple[Figure[_Joined], ...] = (
    Figure("Tunnel", lambda j: j.tunnel.name),
    Figure("From cell", lambda j: j.names[j.jumper.from_cell]),
    Figure("To cell", lambda j: j.names[j.jumper.to_cell]),
    Figure("At", lambda j: j.jumper.at_m, "m"),
    Figure("Hangs on", lambda j: _hangs_on(j)),
)


def _hangs_on(joined: _Joined) -> str:
    side = joined.jumper.side
    return "the ridge" if side is None else joined.tunnel.sides[side].name


def air_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the seals to make on the bench, the cells and the jumper hoses."""
    last, units = len(AIR_WIDTHS), farm.units
    blown = [
        _Blown(tunnel, planned.chosen.inflation, farm.catalogue)
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
    ]
    sealed = [_Sealed(b.tunnel, seal) for b in blown for seal in b.air.seals]
    filled = [_Filled(b.tunnel, cell) for b in blown for cell in b.air.cells]
    test_strip = "Make and pull a test strip before the first seal of each film and each day."
    rows = [
        wide_row("Air between two layers", TITLE, last),
        wide_row(test_strip, NOTE, last),
        wide_row(caution_note("air"), NOTE, last),
        *listed_rows("Sums of each tunnel", BLOWN, blown, units, last, ""),
        *listed_rows("Seals", SEALED, sealed, units, last, "No edge has to be sealed."),
        *listed_rows("Cells", FILLED, filled, units, last, "No two layers have air between them."),
        *listed_rows(
            "Jumper hoses", JOINED, _joined(blown), units, last, "No jumper hose is needed."
        ),
    ]
    return Sheet(name="Air", widths=AIR_WIDTHS, rows=tuple(rows))


def _joined(blown: Sequence[_Blown]) -> list[_Joined]:
    found = []
    for tunnel, air, _catalogue in blown:
        names = {cell.mark: cell.name for cell in air.cells}
        found += [_Joined(tunnel, jumper, names) for jumper in air.jumpers]
    return found


class _Opened(NamedTuple):
    tunnel: Tunnel
    side: Side
    opening_m2: float
    share: float


class _Aired(NamedTuple):
    tunnel: Tunnel
    airing: Airing


class _Passed(NamedTuple):
    tunnel: Tunnel
    travel_share: float
    open_share: float
    flow_m3_s: float


OPENED: tuple[Figure[_Opened], ...] = (
    Figure("Tunnel", lambda o: o.tunnel.name),
    Figure("Side", lambda o: o.side.name),
    Figure("Kind", lambda o: KINDS[o.side.kind]),
    Figure("Clear opening", lambda o: o.opening_m2, "m2"),
    Figure("Of the floor", lambda o: o.share, "share"),
    Figure("Air through its screen", lambda o: o.side.screen_flow_share, "share"),
)
AIRED: tuple[Figure[_Aired], ...] = (
    Figure("Tunnel", lambda a: a.tunnel.name),
    Figure("Clear opening", lambda a: a.airing.opening_m2, "m2"),
    Figure("Of the floor", lambda a: a.airing.floor_share, "share"),
    Figure("By wind", lambda a: a.airing.wind_m3_s, "m3/s"),
    Figure("By warmth", lambda a: a.airing.warmth_m3_s, "m3/s"),
    Figure("By both", lambda a: a.airing.flow_m3_s, "m3/s"),
    Figure("Air changes", lambda a: a.airing.changes_per_h, "1/h"),
    Figure("For each area of floor", lambda a: a.airing.per_floor_m3_s_m2, "m3/s/m2"),
)
PASSED: tuple[Figure[_Passed], ...] = (
    Figure("Tunnel", lambda p: p.tunnel.name),
    Figure("Share of the way", lambda p: p.travel_share, "share"),
    Figure("Open, of the floor", lambda p: p.open_share, "share"),
    Figure("Air that passes", lambda p: p.flow_m3_s, "m3/s"),
)


def airing_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return what opens and what air passes on the farm's day of airing."""
    last, units = len(AIRING_WIDTHS), farm.units
    aired = [
        _Aired(tunnel, planned.chosen.airing)
        for tunnel, planned in zip(farm.tunnels, plan.tunnels, strict=True)
    ]
    opened = [
        _Opened(tunnel, *three)
        for tunnel, airing in aired
        for three in zip(tunnel.sides, airing.openings_m2, airing.side_shares, strict=True)
    ]
    passed = [_Passed(tunnel, *step) for tunnel, airing in aired for step in airing.course]
    rows = [
        wide_row("Airing with the sides open", TITLE, last),
        wide_row(_day(farm), NOTE, last),
        *listed_rows("What opens", OPENED, opened, units, last, ""),
        *listed_rows("What air passes on that day", AIRED, aired, units, last, ""),
        Row(),
        *(
            wide_row(words(told, units), NOTE, last, label=tunnel.name)
            for tunnel, airing in aired
            for told in (told_share(airing), told_flow(airing))
        ),
        *listed_rows("On the way from shut to open", PASSED, passed, units, last, "No side opens."),
    ]
    return Sheet(name="Airing", widths=AIRING_WIDTHS, rows=tuple(rows))


def _day(farm: Farm) -> str:
    weather, units = farm.weather, farm.units
    return (
        f"The day that was entered: wind {show(weather.wind_m_s, 'm/s', units)}, "
        f"{WIND_SIDES[weather.wind_from]}; {show(weather.outside_k, 'K', units)} outside, "
        f"{show(weather.inside_k, 'K', units)} inside. Estimates for planning; plants, trees and "
        "buildings near by slow the wind."
    )
