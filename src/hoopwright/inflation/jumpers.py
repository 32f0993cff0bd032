"""Hoses that carry air from the cell the blower feeds to every other cell.

The roof cells stand in a row; air goes from one to the next across the cross seam between them. A
curtain takes its air from the roof over it, an end wall from the roof cell at its end. A cell
longer than the limit gets two hoses, so that it fills evenly and one kinked hose does not empty it:
a curtain near both ends, a roof cell on both slopes. How many and where is common practice, no
published source.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from msgspec import Struct

from hoopwright.inflation.inflation import Cell, Jumper

END_M = 1.0
SEAM_M = 0.5


class Joined(Struct, frozen=True, kw_only=True):
    """The cells that jumpers are to join.

    Attributes:
        roof: Roof cells from the front to the back.
        curtains: Curtain cells, each with its side, 0 or 1.
        ends: Cells of end walls, each with its end: 0 front, 1 back.
    """

    roof: tuple[Cell, ...]
    curtains: tuple[tuple[int, Cell], ...] = ()
    ends: tuple[tuple[int, Cell], ...] = ()

    @property
    def cells(self) -> tuple[Cell, ...]:
        """Return all cells: roof, curtains, ends."""
        return (*self.roof, *(c for _, c in self.curtains), *(c for _, c in self.ends))


def place_jumpers(joined: Joined, long_cell_m: float) -> tuple[Jumper, ...]:
    """Return the hoses that join every cell to the first roof cell.

    Without a roof cell there is no air to give, and no hose.

    Args:
        joined: The cells.
        long_cell_m: A cell longer than this gets two hoses, m.

    Source:
        Common practice, no published source.
    """
    roof = joined.roof
    if not roof:
        return ()
    runs = [
        *_over_seams(roof, long_cell_m),
        *_to_curtains(roof, joined.curtains, long_cell_m),
        *_to_ends(roof, joined.ends),
    ]
    return tuple(
        Jumper(
            mark=f"jumper/{n}",
            from_cell=giver,
            to_cell=taker,
            side=side,
            at_m=at_m,
            placed=False,
        )
        for n, (giver, taker, side, at_m) in enumerate(runs)
    )


Run = tuple[str, str, int | None, float]


def _over_seams(roof: Sequence[Cell], long_cell_m: float) -> Iterator[Run]:
    for giver, taker in pairwise(roof):
        slopes = (0, 1) if _is_long(taker, long_cell_m) else (None,)
        for side in slopes:
            yield giver.mark, taker.mark, side, taker.from_m


def _to_curtains(
    roof: Sequence[Cell], curtains: Iterable[tuple[int, Cell]], long_cell_m: float
) -> Iterator[Run]:
    for side, cell in curtains:
        for giver, at_m in _spots(roof, cell, long_cell_m):
            yield giver.mark, cell.mark, side, at_m


def _to_ends(roof: Sequence[Cell], ends: Iterable[tuple[int, Cell]]) -> Iterator[Run]:
    for n, cell in ends:
        yield roof[-1 if n else 0].mark, cell.mark, None, cell.from_m


def _spots(roof: Sequence[Cell], cell: Cell, long_cell_m: float) -> list[tuple[Cell, float]]:
    """Return where a curtain takes its air: the roof cell and the place along the tunnel, m."""
    if not _is_long(cell, long_cell_m):
        giver = max(roof, key=lambda above: _overlap(above, cell))
        return [(giver, _clear_of_seams(giver, cell, (cell.from_m + cell.to_m) / 2))]
    inset_m = min(END_M, (cell.to_m - cell.from_m) / 4)
    wanted = (cell.from_m + inset_m, cell.to_m - inset_m)
    spots = []
    for at_m in wanted:
        giver = _nearest(roof, at_m)
        spots.append((giver, _clear_of_seams(giver, cell, at_m)))
    return spots


def _nearest(roof: Sequence[Cell], at_m: float) -> Cell:
    """Return the roof cell over a place, or the nearest one, the front one of two."""
    return min(roof, key=lambda above: max(above.from_m - at_m, at_m - above.to_m, 0.0))


def _is_long(cell: Cell, long_cell_m: float) -> bool:
    return cell.to_m - cell.from_m > long_cell_m


def _overlap(above: Cell, cell: Cell) -> float:
    return min(above.to_m, cell.to_m) - max(above.from_m, cell.from_m)


def _clear_of_seams(giver: Cell, cell: Cell, wanted_m: float) -> float:
    """Return the place nearest to the wanted one that both cells share, off their ends, m."""
    low_m, high_m = max(giver.from_m, cell.from_m), min(giver.to_m, cell.to_m)
    keep_m = min(SEAM_M, max(0.0, high_m - low_m) / 2)
    return min(max(wanted_m, low_m + keep_m), high_m - keep_m)
