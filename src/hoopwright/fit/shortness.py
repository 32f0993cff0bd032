"""The chance that a roll is too narrow for the longest bow.

The model, in the order of what is known best:

- A bow that was read has the girth that was read, give or take the error of the tape, any value
  between being as likely.
- The bows that were not read are as `unread` takes them. The deviation of the readings has the
  error of the tape in it, which is taken out: s² − e²/3, e²/3 being the variance of an error that
  is anything up to e either way. It is never taken below e²/3: a spread that the tape cannot see
  is not none.
- A roll is narrower than its stock width by anything from nothing to the minus tolerance of the
  film, each as likely.
- What the sheet takes beyond the girth does not vary.

The sheet is too short when the longest of all bows and what it takes beyond are more than the roll
has. A reading that is called an outlier counts like any other: it is a bow that stands there.
"""

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from hoopwright.fit.unread import longer_unread

GAUSS = (
    (0.1834346424956498, 0.3626837833783620),
    (0.5255324099163290, 0.3137066458778873),
    (0.7966664774136267, 0.2223810344533745),
    (0.9602898564975363, 0.1012285362903763),
)
"""Nodes and weights of the Gauss-Legendre rule of 8 points, each for both signs.

Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4.
"""
BENDS = (-2.0, 0.0, 1.0, 2.0, 3.0, 4.5, 7.0, 12.0, 25.0)
"""Deviations from the mean between which the chance of unread bows is smooth."""
DIGITS_M = 1e-6
"""What a girth may be over the room for it: digits of a float, never a real length. Unit: m."""


@dataclass(frozen=True, slots=True)
class Girths:
    """What is known of the girths of all bows.

    Attributes:
        read_m: Girths as read, two or more, m.
        unread: Bows that were not read.
        error_m: What a reading may be wrong by, either way, m.
    """

    read_m: tuple[float, ...]
    unread: int
    error_m: float

    @property
    def mean_m(self) -> float:
        """Return the mean of the readings, m."""
        return math.fsum(self.read_m) / len(self.read_m)

    @property
    def deviation_m(self) -> float:
        """Return the deviation of the bows, the error of the tape taken out, m.

        Source:
            Sample variance with n − 1; variance of the uniform distribution, width²/12. Handbook
            formulas.
        """
        mean_m = self.mean_m
        squares_m2 = math.fsum((girth_m - mean_m) ** 2 for girth_m in self.read_m)
        tape_m2 = self.error_m**2 / 3
        return math.sqrt(max(squares_m2 / (len(self.read_m) - 1) - tape_m2, tape_m2))


@lru_cache(maxsize=512)
def chance_short(girths: Girths, fixed_m: float, stock_m: float, minus_share: float) -> float:
    """Return the chance that a roll is too narrow, 0 to 1.

    Args:
        girths: What is known of the bows.
        fixed_m: What the sheet takes beyond the girth of the longest bow, m.
        stock_m: Stock width of the roll, m.
        minus_share: How much narrower than that it may be, as a share.

    Source:
        See the docstring of the module; derived here.
    """
    most_m = stock_m - fixed_m
    least_m = stock_m * (1 - minus_share) - fixed_m
    longest = _Longest(girths)
    if least_m == most_m:
        return longest.beyond(most_m)
    surely_m = longest.surely_m
    if most_m <= surely_m:
        return 1.0
    short_m = max(0.0, surely_m - least_m)
    bends = (b for b in longest.bends_m if max(surely_m, least_m) < b < most_m)
    spots = (max(surely_m, least_m), *sorted(set(bends)), most_m)
    return (short_m + sum(longest.summed(*ends) for ends in pairwise(spots))) / (most_m - least_m)


class _Longest:
    """The longest of all bows."""

    def __init__(self, girths: Girths) -> None:
        self._girths = girths
        self._mean_m = girths.mean_m
        self._deviation_m = girths.deviation_m

    @property
    def surely_m(self) -> float:
        """Return the girth that the longest bow surely has, m."""
        return max(self._girths.read_m) - self._girths.error_m

    @property
    def bends_m(self) -> list[float]:
        """Return the girths at which the chance turns, m."""
        error_m = self._girths.error_m
        read = [read_m + way * error_m for read_m in self._girths.read_m for way in (-1, 1)]
        return [*read, *(self._mean_m + bend * self._deviation_m for bend in BENDS)]

    def beyond(self, limit_m: float) -> float:
        """Return the chance that it is longer than a limit."""
        within = 1.0
        for read_m in self._girths.read_m:
            within *= _within(limit_m - read_m, self._girths.error_m)
        if within == 0.0:
            return 1.0
        unread = longer_unread(
            _deviations(limit_m - self._mean_m, self._deviation_m),
            len(self._girths.read_m),
            self._girths.unread,
        )
        return (1.0 - within) + within * unread

    def summed(self, from_m: float, to_m: float) -> float:
        """Return the integral of that chance between two limits, m."""
        middle_m, half_m = (from_m + to_m) / 2, (to_m - from_m) / 2
        return half_m * sum(
            weight * (self.beyond(middle_m - node * half_m) + self.beyond(middle_m + node * half_m))
            for node, weight in GAUSS
        )


def _within(room_m: float, error_m: float) -> float:
    """Return the chance that a reading with some room above it is no longer than that."""
    if error_m == 0:
        return 1.0 if room_m >= -DIGITS_M else 0.0
    return min(1.0, max(0.0, (room_m + error_m) / (2 * error_m)))


def _deviations(room_m: float, deviation_m: float) -> float:
    """Return room in deviations; without any spread, all room or none."""
    if deviation_m == 0:
        return math.inf if room_m >= -DIGITS_M else -math.inf
    return room_m / deviation_m
