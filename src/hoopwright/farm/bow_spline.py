"""A smooth line through measured points: a natural cubic spline of across and up.

Both run over the chord length, the straight way from point to point added up. The line is given
as short straights, close enough that their length is the curve's to some hundredths of a
percent; every place where it stops rising or falling is one of their ends.
"""

import math
from collections.abc import Sequence
from itertools import accumulate, pairwise

Point = tuple[float, float]
Cubic = tuple[float, float, float, float]

STEPS = 128
LEAST_STEPS = 2
SAME_SHARE = 1e-3


def natural_spline(knots: Sequence[float], values: Sequence[float]) -> tuple[Cubic, ...]:
    """Return the cubic between each two knots of a spline that does not bend at its ends.

    Args:
        knots: Where the values are taken, growing, at least two.
        values: As many values.

    Returns:
        For each interval a, b, c, d of a + b u + c u2 + d u3, with u from its first knot.

    Source:
        The textbook equations of a natural cubic spline: equal slopes and bends at the inner
        knots, no bend at the ends, solved by elimination in three diagonals.
    """
    steps = [b - a for a, b in pairwise(knots)]
    slopes = [(b - a) / h for (a, b), h in zip(pairwise(values), steps, strict=True)]
    bends = [0.0, *_inner_bends(steps, slopes), 0.0]
    return tuple(
        (values[k], slopes[k] - h * (2 * m0 + m1) / 6, m0 / 2, (m1 - m0) / (6 * h))
        for k, (h, (m0, m1)) in enumerate(zip(steps, pairwise(bends), strict=True))
    )


def _inner_bends(steps: list[float], slopes: list[float]) -> list[float]:
    """Return the second derivatives at the inner knots."""
    middle = [2 * (a + b) for a, b in pairwise(steps)]
    right = [6 * (b - a) for a, b in pairwise(slopes)]
    for k in range(1, len(middle)):
        share = steps[k] / middle[k - 1]
        middle[k] -= share * steps[k]
        right[k] -= share * right[k - 1]
    bends = [0.0] * (len(middle) + 1)
    for k in range(len(middle) - 1, -1, -1):
        above = steps[k + 1] * bends[k + 1]
        bends[k] = (right[k] - above) / middle[k]
    return bends[:-1]


def smooth_line(spots: Sequence[Point]) -> tuple[tuple[Point, ...], ...]:
    """Return a smooth line through spots, one run of short straights for each two of them.

    Args:
        spots: Across and up of each, m; no two neighbours the same.

    Returns:
        For each interval the points from its first spot up to, without, its last.

    Source:
        `natural_spline` of both coordinates over the chord length.
    """
    chords = [math.dist(a, b) for a, b in pairwise(spots)]
    knots = [0.0, *accumulate(chords)]
    across = natural_spline(knots, [x for x, _y in spots])
    up = natural_spline(knots, [y for _x, y in spots])
    step_m = knots[-1] / STEPS
    return tuple(
        tuple(
            (_at(across[k], u), _at(up[k], u))
            for u in _stops(up[k], h, max(LEAST_STEPS, math.ceil(h / step_m)))
        )
        for k, h in enumerate(chords)
    )


def _at(cubic: Cubic, u: float) -> float:
    a, b, c, d = cubic
    return a + u * (b + u * (c + u * d))


def _stops(cubic: Cubic, length: float, steps: int) -> list[float]:
    """Return even steps of an interval, and where its cubic turns between them."""
    even = [length * n / steps for n in range(steps)]
    turns = [u for u in _turns(cubic) if 0 < u < length and _is_between(u * steps / length)]
    return sorted((*even, *turns))


def _is_between(step: float) -> bool:
    return abs(step - round(step)) > SAME_SHARE


def _turns(cubic: Cubic) -> tuple[float, ...]:
    """Return where the slope b + 2 c u + 3 d u2 is nothing."""
    _a, b, c, d = cubic
    under = c * c - 3 * b * d
    if under < 0:
        return ()
    # The root that does not cancel, and the other from their product b / 3d.
    far = -c - math.copysign(math.sqrt(under), c)
    return tuple(top / below for top, below in ((far, 3 * d), (b, far)) if below != 0 and top != 0)
