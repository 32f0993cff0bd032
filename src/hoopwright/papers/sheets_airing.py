"""What opens and what air passes through open sides on the farm's day of airing."""

from typing import NamedTuple

from hoopwright.airing import Airing, told_flow, told_share
from hoopwright.farm.farm import Farm, Tunnel
from hoopwright.farm.side import Side
from hoopwright.papers.sheet import NOTE, TITLE, Row, Sheet, wide_row
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.papers.side_words import KINDS, WIND_SIDES
from hoopwright.plan import Plan
from hoopwright.quantity.units import show
from hoopwright.quantity.working import words

AIRING_WIDTHS = (24.0, 20.0, *(14.0 for _ in range(6)))


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
