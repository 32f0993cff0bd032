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
from functools import lru_cache

LEAST_W = 1e-4
MOST_W = 10.0
Z_STEP = 0.4
Z_MOST = 7.2
CENTRAL = 0.5
"""Nearer to the mean than this many deviations the sum is taken about its value at the mean."""


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
    if deviations > CENTRAL:
        return min(1.0, _spread_out(size, read, _tail(read, unread, 1)))
    if deviations < -CENTRAL:
        below = tuple((log_w, 1 - chance) for log_w, chance in _tail(read, unread, -1))
        return max(0.0, 1 - _spread_out(size, read, below))
    middle = _exceeds(0.0, read, unread)
    if deviations == 0:
        return middle
    tail = _tail(read, unread, 1 if deviations > 0 else -1)
    return middle + _spread_out(size, read, tuple((log_w, c - middle) for log_w, c in tail))


def _spread_out(deviations: float, read: int, tail: tuple[tuple[float, float], ...]) -> float:
    """Return the integral of a tail over what the readings leave open about their deviation."""
    free = read - 1
    at_one = math.log(2) + free / 2 * math.log(free / 2) - math.lgamma(free / 2)
    log_a = math.log(deviations)
    total = 0.0
    for log_w, chance in tail:
        log_c = log_w - log_a
        if log_c > 4.0:
            break
        total += chance * math.exp(at_one + free * log_c - free / 2 * math.exp(2 * log_c))
    return total * _step(read)


def _step(read: int) -> float:
    """Return the step of ln w: well below the width of the density of ln c, 1/sqrt(2 nu)."""
    return min(0.1, 0.8 / math.sqrt(2 * (read - 1)))


@lru_cache(maxsize=64)
def _tail(read: int, unread: int, sign: int) -> tuple[tuple[float, float], ...]:
    """Return ln w and the chance that y is above w, or above -w, at every step of ln w."""
    step = _step(read)
    lowest = math.log(LEAST_W)
    count = math.ceil((math.log(MOST_W) - lowest) / step)
    logs = tuple(lowest + step * k for k in range(count + 1))
    return tuple((log_w, _exceeds(sign * math.exp(log_w), read, unread)) for log_w in logs)


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
