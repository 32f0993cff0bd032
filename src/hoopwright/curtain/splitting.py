"""Where to split a side so that no bar is longer than the limits allow.

Splits stand on bows. Of all ways to split, those with the fewest curtains are looked at; the best
of them has the shortest longest bar, and of several such the one whose bars differ least (least
sum of squares). The search is exact: curtains follow each other from front to back, so the best
way to a bow is built on the best way to a bow before it.
"""

import itertools
import math
from bisect import bisect_right
from collections.abc import Callable, Iterator

from msgspec import Struct

from hoopwright.farm import Panel, Side, Split, Tunnel, bow_positions
from hoopwright.farm.change import LEAST_PANEL_M, opening_range
from hoopwright.farm.side import Join

ROUNDING_M = 1e-6


class Opening(Struct, frozen=True):
    """An opening and the bows in it on which curtains may meet.

    Attributes:
        places_m: Front of the opening, the bows inside it, its back, m.
        lap_m: What a curtain's bar reaches beyond each end of its opening, m.
        has_strips: Whether a fixed strip closes the bay behind each split.
        slit: Whether the curtain hangs over that strip, as in a sheet slit at the split, so that
            its bar is as long as from split to split.
        kept_m: A place where a split must be, m, or None.
    """

    places_m: tuple[float, ...]
    lap_m: float
    has_strips: bool = False
    slit: bool = False
    kept_m: float | None = None

    def bar_m(self, first: int, last: int) -> float:
        """Return how long the bar of a curtain from one place to another is, m.

        Args:
            first: Number of the place at the front of the curtain.
            last: Number of the place at its back.

        Returns:
            Length; infinite where no curtain can be.

        Source:
            Derived here.
        """
        from_m, to_m = self.places_m[first], self.places_m[last]
        if self.kept_m is not None and from_m + ROUNDING_M < self.kept_m < to_m - ROUNDING_M:
            return math.inf
        open_m = from_m
        if self.has_strips and first > 0:
            open_m = self.places_m[first + 1]
        if to_m - open_m < LEAST_PANEL_M:
            return math.inf
        return to_m - (from_m if self.slit else open_m) + 2 * self.lap_m


Bars = tuple[tuple[tuple[int, float], ...], ...]
"""For each place the places at which a curtain from it may end, with the length of its bar, m."""


def even_splits(opening: Opening, longest_m: float) -> tuple[float, ...] | None:
    """Return the splits that make the fewest curtains, as even as can be, m.

    Args:
        opening: The opening and its bows.
        longest_m: Longest bar allowed, m.

    Returns:
        Positions from front to back; None when even the shortest curtains are too long.
    """
    bars = _bars(opening, longest_m)
    needed = _needed(bars)
    if needed[0] == math.inf:
        return None
    reach_m = _cheapest(bars, needed, longest_m, max)[0]
    marks = _cheapest(bars, needed, reach_m, lambda so_far, bar_m: so_far + bar_m**2)[1]
    return tuple(opening.places_m[mark] for mark in marks)


def _bars(opening: Opening, longest_m: float) -> Bars:
    """Return the curtains from each place whose bars are no longer than allowed."""
    places_m, found = opening.places_m, []
    for first, from_m in enumerate(places_m[:-1]):
        strip_m = places_m[first + 1] - from_m if opening.has_strips else 0.0
        end = bisect_right(places_m, from_m + strip_m + longest_m + ROUNDING_M)
        lengths = ((last, opening.bar_m(first, last)) for last in range(first + 1, end))
        found.append(tuple(pair for pair in lengths if pair[1] <= longest_m + ROUNDING_M))
    return tuple(found)


def _needed(bars: Bars) -> list[float]:
    """Return for each place the fewest curtains from it to the back; infinite where none can."""
    needed = [0.0]
    for first in reversed(range(len(bars))):
        ahead = (needed[len(bars) - last] for last, _ in bars[first])
        needed.append(1 + min(ahead, default=math.inf))
    return needed[::-1]


def _cheapest(
    bars: Bars, needed: list[float], longest_m: float, join: Callable[[float, float], float]
) -> tuple[float, tuple[int, ...]]:
    """Return the least cost of the fewest curtains and the places of their splits.

    Args:
        bars: The curtains from each place.
        needed: The fewest curtains from each place.
        longest_m: Longest bar allowed, m.
        join: Cost so far and one more bar, m, to the cost of both; it grows with the bar.
    """
    best: dict[int, tuple[float, tuple[int, ...]]] = {0: (0.0, ())}
    for left in reversed(range(int(needed[0]))):
        ahead: dict[int, tuple[float, tuple[int, ...]]] = {}
        for first, (cost, marks) in best.items():
            for last, bar_m in bars[first]:
                if needed[last] > left or bar_m > longest_m + ROUNDING_M:
                    continue
                joined = join(cost, bar_m)
                if last not in ahead or joined < ahead[last][0] - ROUNDING_M:
                    ahead[last] = (joined, (*marks, last))
        best = ahead
    cost, marks = best[len(bars)]
    return cost, marks[:-1]


def every_split(opening: Opening, longest_m: float) -> Iterator[tuple[float, ...]]:
    """Yield every way to close an opening with the fewest curtains, m; none when none can.

    Args:
        opening: The opening and its bows.
        longest_m: Longest bar allowed, m.
    """
    bars = _bars(opening, longest_m)
    needed = _needed(bars)

    def ways(first: int, left: int) -> Iterator[tuple[float, ...]]:
        if left == 0:
            yield ()
            return
        for last, _ in bars[first]:
            if needed[last] <= left - 1 and (last < len(bars)) == (left > 1):
                spot_m = (opening.places_m[last],) if left > 1 else ()
                for rest in ways(last, left - 1):
                    yield (*spot_m, *rest)

    return ways(0, int(needed[0])) if needed[0] < math.inf else iter(())


def side_opening(tunnel: Tunnel, side: int, kept_m: float | None = None) -> Opening:
    """Return the opening of a side between its pockets.

    Args:
        tunnel: The tunnel as entered.
        side: 0 or 1.
        kept_m: Where a split must be, m; the nearest bow inside the opening is taken.

    Raises:
        ValueError: No bow stands inside the opening to keep.
    """
    chosen = tunnel.sides[side]
    bows = bow_positions(tunnel.frame.bows)
    front, back = chosen.pocket_bays
    places_m = tuple(bows[front : len(bows) - back])
    if kept_m is not None:
        wanted_m = kept_m
        if len(places_m) < 3:
            raise ValueError("splits: no bow stands inside the opening for a split to be kept on")
        kept_m = min(places_m[1:-1], key=lambda at_m: abs(at_m - wanted_m))
    slit = tunnel.skin.covering == "one_sheet" and chosen.kind == "roll_up"
    return Opening(
        places_m=places_m,
        lap_m=0.0 if slit else tunnel.skin.allowances.curtain_lap_m,
        has_strips=slit or _join(chosen) == "strip",
        slit=slit,
        kept_m=kept_m,
    )


def with_splits(tunnel: Tunnel, side: int, spots_m: tuple[float, ...]) -> Tunnel:
    """Return the tunnel with a side split at these places and nowhere else.

    One curtain keeps its crank; of two the first is cranked at the front and the second at the
    back; inner ones of more at the front. Each takes bar, drive and all else of the curtain that
    was at its middle, and every split is made like the side's first.
    """
    chosen = tunnel.sides[side]
    low_m, high_m = opening_range(tunnel, side)
    middles_m = [(a + b) / 2 for a, b in itertools.pairwise((low_m, *spots_m, high_m))]
    panels = tuple(_panel_at(chosen, at_m) for at_m in middles_m)
    if spots_m:
        ends = ("front",) * len(spots_m) + ("back",)
        panels = tuple(p.but(crank_end=end) for p, end in zip(panels, ends, strict=True))
    splits = tuple(Split(at_m=at_m, join=_join(chosen)) for at_m in spots_m)
    changed = chosen.but(splits=splits, panels=panels)
    first, second = tunnel.sides
    return tunnel.but(sides=(changed, second) if side == 0 else (first, changed))


def _panel_at(side: Side, at_m: float) -> Panel:
    return side.panels[sum(1 for split in side.splits if split.at_m <= at_m)]


def _join(side: Side) -> Join:
    return side.splits[0].join if side.splits else "lap"
