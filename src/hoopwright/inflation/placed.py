"""Jumpers placed by hand: which two cells each of them joins.

Each carries air out of a roof cell: into the curtain that hangs under it at that place, into the
roof cell beyond the cross seam nearest to the place, or into the end wall at its end. One that
finds no two cells there joins nothing and is told of.
"""

from collections import Counter
from dataclasses import replace
from itertools import pairwise

from hoopwright.farm import PlacedJumper
from hoopwright.farm.air import JumperSurface
from hoopwright.inflation.inflation import Cell, Inflation, Jumper
from hoopwright.inflation.jumpers import Joined

SIDES = {"first_side": 0, "second_side": 1}
ENDS = {"front_end": 0, "back_end": 1}


def hang_jumpers(
    joined: Joined, placed: tuple[PlacedJumper, ...]
) -> tuple[tuple[Jumper, ...], tuple[int, ...]]:
    """Return the hoses as placed, and the numbers of those that find no two cells.

    Args:
        joined: The cells.
        placed: Jumpers as entered.
    """
    hung = [_hang(n, jumper, joined) for n, jumper in enumerate(placed)]
    idle = tuple(n for n, jumper in enumerate(hung) if jumper is None)
    return _spread([jumper for jumper in hung if jumper is not None]), idle


def _hang(number: int, placed: PlacedJumper, joined: Joined) -> Jumper | None:
    if placed.surface in SIDES:
        return _to_curtain(number, SIDES[placed.surface], placed.at_m, joined)
    if placed.surface in ENDS:
        return _to_end(number, ENDS[placed.surface], joined)
    return _over_seam(number, placed.at_m, joined)


def _to_curtain(number: int, side: int, at_m: float, joined: Joined) -> Jumper | None:
    """Return the hose into the curtain there; where two lap, into the one that lies farther in."""
    roof = next((cell for cell in joined.roof if _inside_m(cell, at_m) >= 0), None)
    hung = [cell for n, cell in joined.curtains if n == side and _inside_m(cell, at_m) >= 0]
    if roof is None or not hung:
        return None
    return _jumper(number, roof, max(hung, key=lambda cell: _inside_m(cell, at_m)), side, at_m)


def _to_end(number: int, end: int, joined: Joined) -> Jumper | None:
    wall = next((cell for n, cell in joined.ends if n == end), None)
    if wall is None or not joined.roof:
        return None
    return _jumper(number, joined.roof[-1 if end else 0], wall, None, wall.from_m)


def _over_seam(number: int, at_m: float, joined: Joined) -> Jumper | None:
    seams = list(pairwise(joined.roof))
    if not seams:
        return None
    giver, taker = min(seams, key=lambda both: abs(both[1].from_m - at_m))
    return _jumper(number, giver, taker, None, taker.from_m)


def _spread(jumpers: list[Jumper]) -> tuple[Jumper, ...]:
    """Return the hoses; several over one seam or at one end lie on both slopes in turn."""
    over = Counter((j.from_cell, j.to_cell) for j in jumpers if j.side is None)
    laid: Counter[tuple[str, str]] = Counter()
    found = []
    for jumper in jumpers:
        pair = (jumper.from_cell, jumper.to_cell)
        if over[pair] > 1:
            found.append(replace(jumper, side=laid[pair] % 2))
            laid[pair] += 1
        else:
            found.append(jumper)
    return tuple(found)


def _inside_m(cell: Cell, at_m: float) -> float:
    """Return how far a place lies inside a cell, m; below zero outside."""
    return min(at_m - cell.from_m, cell.to_m - at_m)


def _jumper(number: int, giver: Cell, taker: Cell, side: int | None, at_m: float) -> Jumper:
    return Jumper(
        mark=f"jumper/{number}",
        from_cell=giver.mark,
        to_cell=taker.mark,
        side=side,
        at_m=at_m,
        placed=True,
    )


def placed_jumpers(inflation: Inflation) -> tuple[PlacedJumper, ...]:
    """Return the jumpers that hang now as if they had been placed by hand, in their order.

    Args:
        inflation: Cells and jumpers, worked out or placed.
    """
    surfaces: dict[str, JumperSurface] = {
        "cell/side/0": "first_side",
        "cell/side/1": "second_side",
        "cell/end/0": "front_end",
        "cell/end/1": "back_end",
    }
    return tuple(
        PlacedJumper(
            surface=surfaces.get("/".join(jumper.to_cell.split("/")[:3]), "roof"),
            at_m=jumper.at_m,
        )
        for jumper in inflation.jumpers
    )
