"""Which cells the blower's air reaches, and which hose must not fail.

Cells are the places, hoses the ways between them. The blower is one more place, joined to every
cell it feeds. Seen from it, a hose is critical when some cell has no other way to its air; two
hoses side by side stand in for each other.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

Link = tuple[str, str]


class CriticalHose(Struct, frozen=True):
    """A hose without which some cells get no air.

    Attributes:
        link: Its place in the list of hoses.
        cells: The cells cut off when it fails, in the order of the cells.
    """

    link: int
    cells: tuple[str, ...]


def groups_without_feed(
    cells: Sequence[str], links: Sequence[Link], fed: Iterable[str]
) -> tuple[tuple[str, ...], ...]:
    """Return the groups of joined cells that no air reaches, each in the order of the cells.

    Args:
        cells: Every cell.
        links: The two cells of each hose.
        fed: Cells that the blower feeds.

    Raises:
        ValueError: A hose or feed names an unknown cell, or a hose has one cell at both ends.
    """
    ways = _ways(cells, links)
    reached = _reach(ways, _known(cells, fed))
    groups = []
    for cell in cells:
        if cell not in reached:
            group = _reach(ways, [cell])
            reached |= group
            groups.append(tuple(c for c in cells if c in group))
    return tuple(groups)


def critical_hoses(
    cells: Sequence[str], links: Sequence[Link], fed: Iterable[str]
) -> tuple[CriticalHose, ...]:
    """Return the hoses that some cell depends on alone, in the order of the hoses.

    Walking outward from the blower, each cell notes the earliest cell that it or any cell found
    after it can get back to. A hose out of which nothing gets back further is critical.

    Args:
        cells: Every cell.
        links: The two cells of each hose.
        fed: Cells that the blower feeds.

    Raises:
        ValueError: A hose or feed names an unknown cell, or a hose has one cell at both ends.

    Source:
        Bridges of a graph by depth-first search: Tarjan, A note on finding the bridges of a
        graph, Information Processing Letters 2(6), 160-161 (1974), from memory.
    """
    ways = _ways(cells, links)
    starts = _known(cells, fed)
    walk = _walk(ways, starts)
    place = {cell: at for at, (cell, _, _) in enumerate(walk)}
    # What the blower feeds can get back to the blower, the earliest place of all.
    back = {cell: -1 if cell in starts else at for cell, at in place.items()}
    behind = {cell: {cell} for cell in place}
    critical = []
    for cell, parent, came_by in reversed(walk):
        others = [place[other] for link, other in ways[cell] if link != came_by]
        back[cell] = min([back[cell], *others])
        if parent is None or came_by is None:
            continue
        back[parent] = min(back[parent], back[cell])
        behind[parent] |= behind[cell]
        if back[cell] == place[cell]:
            critical.append(CriticalHose(came_by, tuple(c for c in cells if c in behind[cell])))
    return tuple(sorted(critical, key=lambda hose: hose.link))


def _ways(cells: Sequence[str], links: Sequence[Link]) -> dict[str, list[tuple[int, str]]]:
    """Return the hoses out of each cell: their place in the list and the cell beyond."""
    if len(set(cells)) < len(cells):
        raise ValueError("cells: a cell is listed twice. Give every cell a mark of its own.")
    ways: dict[str, list[tuple[int, str]]] = {cell: [] for cell in cells}
    for at, (one, other) in enumerate(links):
        if one not in ways or other not in ways:
            raise ValueError(
                f"links: hose {at + 1} joins {one!r} and {other!r}, and one of them is no cell. "
                "Join two cells of the list."
            )
        if one == other:
            raise ValueError(
                f"links: hose {at + 1} has {one!r} at both ends. Join two different cells."
            )
        ways[one].append((at, other))
        ways[other].append((at, one))
    return ways


def _known(cells: Sequence[str], fed: Iterable[str]) -> list[str]:
    known = list(dict.fromkeys(fed))
    for cell in known:
        if cell not in cells:
            raise ValueError(f"fed: {cell!r} is no cell. Feed a cell of the list.")
    return known


def _reach(ways: dict[str, list[tuple[int, str]]], starts: Iterable[str]) -> set[str]:
    reached = set(starts)
    queue = list(reached)
    for cell in queue:
        beyond = {other for _, other in ways[cell]} - reached
        reached |= beyond
        queue.extend(beyond)
    return reached


def _walk(
    ways: dict[str, list[tuple[int, str]]], fed: Sequence[str]
) -> list[tuple[str, str | None, int | None]]:
    """Return the cells as a depth-first walk finds them: cell, the one before, the hose taken."""
    found: list[tuple[str, str | None, int | None]] = []
    seen: set[str] = set()
    stack: list[tuple[str, str | None, int | None]] = [(c, None, None) for c in reversed(fed)]
    while stack:
        cell, before, link = stack.pop()
        if cell in seen:
            continue
        seen.add(cell)
        found.append((cell, before, link))
        for at, other in reversed(ways[cell]):
            if other not in seen:
                stack.append((other, cell, at))
    return found
