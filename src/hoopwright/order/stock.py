"""Which roll of a film is the cheapest that holds a size.

A table over all stock widths and lengths answers at once, because laying sheets asks for
it some hundred times.
"""

from bisect import bisect_left
from dataclasses import dataclass
from decimal import Decimal
from functools import lru_cache

from hoopwright.farm.catalogue import Film, FilmRoll

FIT_M = 1e-6
"""What a sheet may be over a stock size: digits of a float, never a real length. Unit: m."""


@dataclass(frozen=True, slots=True)
class Choice:
    """A stock roll and its price as a whole number, which adds up exactly and fast.

    Attributes:
        roll: The stock roll.
        cost: Its price in millionths.
    """

    roll: FilmRoll
    cost: int


class StockTable:
    """The cheapest stock roll for every size, of one film.

    Attributes:
        widths_m: All stock widths, narrowest first, m.
        lengths_m: All stock lengths, shortest first, m.
    """

    def __init__(self, film: Film) -> None:
        """Fill the table from the film's rolls."""
        self.widths_m = sorted({roll.width_m for roll in film.rolls})
        self.lengths_m = sorted({roll.length_m for roll in film.rolls})
        self._cheapest = _fill(film, self.widths_m, self.lengths_m)

    def cheapest(self, width_m: float, length_m: float) -> Choice | None:
        """Return the cheapest roll at least that wide and that long, or None when there is none.

        Among rolls of one price it is the narrowest, then the shortest.

        Args:
            width_m: Width that is needed, m.
            length_m: Length that is needed, m.
        """
        row = bisect_left(self.widths_m, width_m - FIT_M)
        column = bisect_left(self.lengths_m, length_m - FIT_M)
        if row == len(self.widths_m) or column == len(self.lengths_m):
            return None
        return self._cheapest[row][column]

    def longest_m(self, width_m: float) -> float:
        """Return the length of the longest roll at least that wide, m; 0 when there is none.

        Source:
            The film's rolls in the catalogue.
        """
        for length_m in reversed(self.lengths_m):
            if self.cheapest(width_m, length_m) is not None:
                return length_m
        return 0.0


def _fill(film: Film, widths_m: list[float], lengths_m: list[float]) -> list[list[Choice | None]]:
    """Return the table: each field is the best of its own roll and of the next larger sizes."""
    own: dict[tuple[float, float], Choice] = {}
    for roll in film.rolls:
        made = Choice(roll, int((roll.price * Decimal(1_000_000)).to_integral_value()))
        place = (roll.width_m, roll.length_m)
        if place not in own or made.cost < own[place].cost:
            own[place] = made
    table: list[list[Choice | None]] = [
        [None] * (len(lengths_m) + 1) for _ in range(len(widths_m) + 1)
    ]
    for row in range(len(widths_m) - 1, -1, -1):
        for column in range(len(lengths_m) - 1, -1, -1):
            rivals = (
                own.get((widths_m[row], lengths_m[column])),
                table[row + 1][column],
                table[row][column + 1],
            )
            able = [r for r in rivals if r is not None]
            if able:
                table[row][column] = min(
                    able, key=lambda c: (c.cost, c.roll.width_m, c.roll.length_m)
                )
    return table


@lru_cache(maxsize=64)
def stock_table(film: Film) -> StockTable:
    """Return the table of a film; the same film gives the same table."""
    return StockTable(film)
