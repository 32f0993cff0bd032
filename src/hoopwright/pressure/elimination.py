"""Solve the linear equations of a net: few neighbours to each place, the same both ways.

Places are taken out one after the other, those with the fewest neighbours first, so that a chain
or a tree of any length costs no more than its places. The matrix has to be symmetric and
positive definite, as that of flows through a net with some outlet is.

Source:
    Gaussian elimination in the order of least degree: Tinney and Walker, Direct solutions of
    sparse network equations by optimally ordered triangular factorization, Proceedings of the
    IEEE 55(11), 1801-1809 (1967), from memory.
"""

from collections.abc import Iterable, Sequence


def elimination_order(size: int, pairs: Iterable[tuple[int, int]]) -> tuple[int, ...]:
    """Return the places in the order to take them out, the fewest neighbours first.

    Args:
        size: Number of places.
        pairs: Places that are neighbours.
    """
    near: dict[int, set[int]] = {place: set() for place in range(size)}
    for one, other in pairs:
        near[one].add(other)
        near[other].add(one)
    order = []
    while near:
        place = min(near, key=lambda at: len(near[at]))
        around = near.pop(place)
        for one in around:
            near[one] |= around
            near[one] -= {one, place}
        order.append(place)
    return tuple(order)


def solve_net(
    diagonal: Sequence[float],
    beside: Sequence[dict[int, float]],
    right: Sequence[float],
    order: Sequence[int],
) -> list[float]:
    """Return the unknown of each place.

    Args:
        diagonal: Each place's own coefficient.
        beside: For each place its neighbours' coefficients, the same both ways; used up here.
        right: Right-hand side of each place.
        order: Every place once, see `elimination_order`.

    Source:
        Elimination and back substitution, see the module.
    """
    pivots, rest = list(diagonal), list(right)
    for place in order:
        row, pivot = beside[place], pivots[place]
        for one, coefficient in row.items():
            share = coefficient / pivot
            pivots[one] -= share * coefficient
            rest[one] -= share * rest[place]
            theirs = beside[one]
            del theirs[place]
            for other, beyond in row.items():
                if other != one:
                    theirs[other] = theirs.get(other, 0.0) - share * beyond
    for place in reversed(order):
        known = sum(c * rest[other] for other, c in beside[place].items())
        rest[place] = (rest[place] - known) / pivots[place]
    return rest
