"""Which cells air never reaches: no chain of jumpers joins them to a cell the blower feeds."""

from collections import defaultdict
from collections.abc import Iterable, Sequence

from hoopwright.inflation.inflation import Cell, Jumper


def find_unfed(cells: Sequence[Cell], jumpers: Iterable[Jumper]) -> tuple[str, ...]:
    """Return the marks of the cells that stay flat, in their order.

    A hose carries air either way, so its direction is of no account.

    Args:
        cells: All cells; without a fed one all stay flat.
        jumpers: Hoses between them.
    """
    beyond: defaultdict[str, list[str]] = defaultdict(list)
    for jumper in jumpers:
        beyond[jumper.from_cell].append(jumper.to_cell)
        beyond[jumper.to_cell].append(jumper.from_cell)
    reached = {cell.mark for cell in cells if cell.fed}
    waiting = list(reached)
    while waiting:
        found = [mark for mark in beyond[waiting.pop()] if mark not in reached]
        reached.update(found)
        waiting += found
    return tuple(cell.mark for cell in cells if cell.mark not in reached)
