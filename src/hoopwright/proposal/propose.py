"""Propose where to split a side.

How long a bar may be is asked of the plan: it works the side's own bars and drives. The fewest
curtains on the bows that keep within it are searched exactly. Among several ways with as many
curtains the aim decides: the most even one, which also evens the force at the handles; the one
whose film costs least; or the most even one that keeps a bow.

For the film, ways that make bars of the same lengths need the same sheets, so one of them stands
for all. When there are more ways than are looked at, the sentence says how many were priced.
"""

from collections.abc import Iterable
from decimal import Decimal
from itertools import islice, pairwise

from msgspec import Struct

from hoopwright.checks import TunnelPlan
from hoopwright.curtain import Bound, CurtainWork
from hoopwright.curtain.bounds import end_bound
from hoopwright.curtain.splitting import (
    Opening,
    even_splits,
    every_split,
    side_opening,
    with_splits,
)
from hoopwright.farm import Farm, Tunnel
from hoopwright.plan import plan
from hoopwright.proposal.proposal import Aim, Proposal
from hoopwright.proposal.telling import explain_proposal, refused, tell_proposal

ROUNDING_M = 1e-6
SAME_BAR_DIGITS = 3
LOOKED_AT = 20000
PRICED = 60


class _Reach(Struct, frozen=True):
    """How long a bar of a side may be.

    Attributes:
        longest_m: Longest bar, m.
        bound: The limit that sets it.
    """

    longest_m: float
    bound: Bound


class _Found(Struct, frozen=True):
    """Splits that were chosen.

    Attributes:
        spots_m: Where, m.
        reach: How long a bar may be.
        priced: Ways that were priced.
        left_out: Whether there were more.
    """

    spots_m: tuple[float, ...]
    reach: _Reach
    priced: int = 1
    left_out: bool = False


def propose_splits(
    farm: Farm, index: int, side: int, aim: Aim, keep_m: float | None = None
) -> Proposal:
    """Return the splits that are best for an aim, with what they bring.

    Args:
        farm: The farm as it is.
        index: Number of the tunnel.
        side: 0 or 1.
        aim: What is asked for.
        keep_m: With the aim to keep a bow: where a split stays, m; the nearest bow is taken.

    Raises:
        ValueError: The side is fixed, no bow to keep is given, or even curtains of one bay break a
            limit, which is named.
    """
    tunnel = farm.tunnels[index]
    name = tunnel.sides[side].name
    if tunnel.sides[side].kind == "fixed":
        raise ValueError(f"{name} is fixed film and has no curtains to split")
    if aim == "keep bow" and keep_m is None:
        raise ValueError("splits: name the bow on which a split is to stay")
    opening = side_opening(tunnel, side, keep_m if aim == "keep bow" else None)
    found = _find(farm, tunnel, side, aim, opening)
    before, after = _planned(farm, tunnel), _planned(farm, with_splits(tunnel, side, found.spots_m))
    return _proposal(farm, tunnel, side, aim, found, before, after)


def _planned(farm: Farm, tunnel: Tunnel) -> TunnelPlan:
    """Return the plan of one tunnel by itself."""
    return plan(farm.but(tunnels=(tunnel,))).tunnels[0]


def _works(planned: TunnelPlan, side: int) -> tuple[CurtainWork, ...]:
    return tuple(work for work in planned.chosen.curtains if work.side == side)


def _find(farm: Farm, tunnel: Tunnel, side: int, aim: Aim, opening: Opening) -> _Found:
    if opening.kept_m is None:
        (single,) = _works(_planned(farm, with_splits(tunnel, side, ())), side)
        if single.length_m <= single.longest_m + ROUNDING_M:
            return _Found((), _Reach(single.longest_m, single.bound_by))
    reach = _Reach(*end_bound(_works(_planned(farm, tunnel), side)))
    even_m = even_splits(opening, reach.longest_m)
    if even_m is None:
        raise ValueError(refused(farm, tunnel, side, opening, reach.longest_m, reach.bound))
    if aim != "least film":
        return _Found(even_m, reach)
    return _least_film(farm, tunnel, side, opening, reach, even_m)


def _least_film(
    farm: Farm,
    tunnel: Tunnel,
    side: int,
    opening: Opening,
    reach: _Reach,
    even_m: tuple[float, ...],
) -> _Found:
    """Return the way with the cheapest film; of equal ones the most even."""
    ways = every_split(opening, reach.longest_m)
    looked_at = list(islice(ways, LOOKED_AT))
    unlike = _unlike(opening, (even_m, *looked_at))
    tried = sorted(unlike, key=lambda spots_m: _unevenness(opening, spots_m))[:PRICED]
    prices = {way: _film_price(_planned(farm, with_splits(tunnel, side, way))) for way in tried}
    left_out = len(tried) < len(unlike) or next(ways, None) is not None
    return _Found(min(tried, key=lambda way: prices[way]), reach, len(tried), left_out)


def _bars(opening: Opening, spots_m: tuple[float, ...]) -> list[float]:
    marks = [0, *map(opening.places_m.index, spots_m), len(opening.places_m) - 1]
    return [opening.bar_m(first, last) for first, last in pairwise(marks)]


def _unevenness(opening: Opening, spots_m: tuple[float, ...]) -> tuple[float, float]:
    bars = _bars(opening, spots_m)
    return max(bars), sum(bar_m**2 for bar_m in bars)


def _unlike(opening: Opening, ways: Iterable[tuple[float, ...]]) -> tuple[tuple[float, ...], ...]:
    """Return one way for each set of lengths of bars."""
    kept: dict[tuple[float, ...], tuple[float, ...]] = {}
    for way in ways:
        lengths = tuple(sorted(round(bar_m, SAME_BAR_DIGITS) for bar_m in _bars(opening, way)))
        kept.setdefault(lengths, way)
    return tuple(kept.values())


def _film_price(planned: TunnelPlan) -> tuple[int, Decimal]:
    """Return what decides on the film: sheets that no roll holds, then the price of the rolls."""
    order = planned.chosen.order
    return len(order.unplaced), sum((roll.price for roll in order.rolls), Decimal(0))


def _proposal(
    farm: Farm,
    tunnel: Tunnel,
    side: int,
    aim: Aim,
    found: _Found,
    before: TunnelPlan,
    after: TunnelPlan,
) -> Proposal:
    works = _works(after, side)
    hardest_n = max(work.hardest_n for work in works)
    trailing_m = max(work.trailing_m for work in works)
    film_m2 = after.chosen.order.film_bought_m2
    cost_more = after.chosen.cost.to_pay - before.chosen.cost.to_pay
    proposed = with_splits(tunnel, side, found.spots_m)
    made = Proposal(
        side=side,
        aim=aim,
        spots_m=found.spots_m,
        tunnel=proposed,
        curtains=works,
        hardest_n=hardest_n,
        trailing_m=trailing_m,
        bound_by=found.reach.bound,
        film_m2=film_m2,
        cost_more=cost_more,
        told=tell_proposal(
            farm,
            proposed.sides[side],
            found.spots_m,
            hardest_n,
            trailing_m,
            cost_more,
            found.priced if found.left_out else 0,
        ),
    )
    return explain_proposal(made, before, found.reach.longest_m)
