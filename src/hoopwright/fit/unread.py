"""The longest of the bows that nobody read, judged from those that were.

All bows of a tunnel are taken as drawn from one bell curve, whose middle and width are known only
from the readings. Few readings tell little: what they leave open about middle and width is reckoned
with, so that the chance is as often right as it says, however few bows were read.

Written with the mean m and the deviation s of n readings: a further bow is m + s·(x + z/√n)/c,
where x and z are of the standard bell curve, one x for each bow and one z for all of them, and
ν·c² is of the chi-square distribution with ν = n − 1 degrees of freedom. The longest of k further
bows is then m + s·y/c with y = max(x) + z/√n, and the chance that it is longer than m + a·s is

    P(y > a·c) = ∫ P(y > w) f(ln(w/a)) d ln w,

f being the density of ln c. P(y > w) depends on n and k alone and is kept.

Source:
    Student (1908), The probable error of a mean, Biometrika 6: of one further bow, k = 1, this is
    his distribution with the deviation s·√(1 + 1/n). The trapezoid rule on the whole line, which is
    exact to a few digits for such integrands: Trefethen and Weideman (2014), The exponentially
    convergent trapezoidal rule, SIAM Review 56; both from memory.
"""

import math
from collections.abc import Callable
from functools import lru_cache

CENTRAL = 0.5
"""Nearer to the mean than this many deviations the sum is taken about its value at the mean."""
LEAST_LOG_W = math.log(1e-4)
MOST_LOG_W = math.log(10.0)
Z_STEP = 0.4
Z_MOST = 7.2

Tail = tuple[tuple[float, float, float], ...]


def longer_unread(deviations: float, read: int, unread: int) -> float:
    """Return the chance that the longest of some unread bows is longer than a limit.

    Args:
        deviations: The limit less the mean of the readings, in deviations of the readings; may be
            negative or infinite.
        read: Readings, two or more.
        unread: Bows that were not read; of none the chance is 0.

    Source:
        See the docstring of the module.
    """
    if unread == 0 or deviations == math.inf:
        return 0.0
    if deviations == -math.inf:
        return 1.0
    size = abs(deviations)
    if size > CENTRAL:
        beyond = min(1.0, _spread_out(size, read, _far(read, unread, deviations > 0)))
        return beyond if deviations > 0 else 1.0 - beyond
    middle = _exceeds(0.0, read, unread)
    if deviations == 0:
        return middle
    return middle + _spread_out(size, read, _near(read, unread, deviations > 0))


def _spread_out(deviations: float, read: int, tail: Tail) -> float:
    """Return the integral of a tail over what the readings leave open about their deviation."""
    half = (read - 1) / 2
    at_one = math.log(2) + half * math.log(half) - math.lgamma(half)
    start = at_one - (read - 1) * math.log(deviations)
    falling = half / deviations**2
    exp = math.exp
    total = sum([chance * exp(start + power - falling * square) for power, square, chance in tail])
    return total * _step(read)


def _step(read: int) -> float:
    """Return the step of ln w: well below the width of the density of ln c, 1/sqrt(2 nu)."""
    return min(0.1, 0.8 / math.sqrt(2 * (read - 1)))


def _least_log_c(read: int) -> float:
    """Return a ln c that is hardly ever undercut: c to the power of nu and five deviations off."""
    return -16 / (read - 1) - 5 / math.sqrt(2 * (read - 1))


@lru_cache(maxsize=64)
def _far(read: int, unread: int, above: bool) -> Tail:
    """Return the chance that y is above w, or below -w, for limits far from the mean."""
    lowest = max(LEAST_LOG_W, math.log(CENTRAL) + _least_log_c(read))
    if above:
        return _tail(read, lowest, lambda w: _exceeds(w, read, unread))
    return _tail(read, lowest, lambda w: 1 - _exceeds(-w, read, unread))


@lru_cache(maxsize=64)
def _near(read: int, unread: int, above: bool) -> Tail:
    """Return how far the chance that y is above w, or above -w, is from that at the mean."""
    middle = _exceeds(0.0, read, unread)
    sign = 1 if above else -1
    return _tail(read, LEAST_LOG_W, lambda w: _exceeds(sign * w, read, unread) - middle)


def _tail(read: int, lowest: float, chance: Callable[[float], float]) -> Tail:
    """Return nu ln w, w squared and a chance at w, at every step of ln w."""
    step, free = _step(read), read - 1
    count = math.ceil((MOST_LOG_W - lowest) / step)
    logs = [lowest + step * k for k in range(count + 1)]
    return tuple((free * log, math.exp(2 * log), chance(math.exp(log))) for log in logs)


def _exceeds(w: float, read: int, unread: int) -> float:
    """Return the chance that max(x) + z/sqrt(n) is above w."""
    root = math.sqrt(read)
    count = round(Z_MOST / Z_STEP)
    total = 0.0
    for k in range(-count, count + 1):
        z = k * Z_STEP
        above = math.erfc((w - z / root) / math.sqrt(2)) / 2
        some = 1.0 if above >= 1.0 else -math.expm1(unread * math.log1p(-above))
        total += math.exp(-z * z / 2) * some
    return total * Z_STEP / math.sqrt(2 * math.pi)
