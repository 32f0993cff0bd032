"""A line of the order as the decimals that stand in the takeoff.

Each length has the fewest decimals with which the packs of the formula are the packs of the plan.
"""

from collections import Counter
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from hoopwright.order.order import Line, ReuseLine
from hoopwright.papers.sheet_numbers import (
    EXACT,
    LENGTH_PLACES,
    decimal_of,
    round_down,
    round_near,
    round_up,
)
from hoopwright.quantity.units import Units, to_display
from hoopwright.quantity.working import Phrase, words

MOST_PLACES = 11
HOLDS_PLACES = 13
PACK_PLACES = 8
LONGEST_PLACES = 90


@dataclass(frozen=True, slots=True)
class Quantity:
    """A line's quantities as the decimals that stand in the cells.

    Attributes:
        needed: What the tunnels take.
        kept: What of it stays and is not bought.
        spares: On top.
        holds: What a pack holds.
        places: Decimals of needed, kept and spares.
    """

    needed: Decimal
    kept: Decimal
    spares: Decimal
    holds: Decimal
    places: int

    @property
    def to_buy(self) -> Decimal:
        """Return what is to be bought while nothing is on hand."""
        return max(Decimal(0), round_near(self.needed - self.kept + self.spares, MOST_PLACES))

    @property
    def packs(self) -> int:
        """Return the whole packs that hold it; the ninth decimal of a pack is not counted."""
        share = round_near(EXACT.divide(self.to_buy, self.holds), PACK_PLACES)
        return int(share.to_integral_value(ROUND_CEILING))

    @property
    def left_over(self) -> Decimal:
        """Return what the packs hold over what is to be bought."""
        return round_near(self.packs * self.holds - self.to_buy, 4)


def shown_quantity(line: Line, units: Units) -> Quantity:
    """Return a line's quantities in the farm's units, with the fewest decimals that do.

    What stays is rounded down, so that nothing gets short. A roll of film is counted as a roll: its
    length says nothing about how many are needed.

    Raises:
        ValueError: No number of decimals gives the packs of the plan.
    """
    if is_film(line):
        return Quantity(Decimal(line.packs), Decimal(0), Decimal(0), Decimal(1), 0)
    unit = line.counted_in
    fewest = 0 if unit == "count" else LENGTH_PLACES[units]
    needed, kept, spares = (
        decimal_of(to_display(value, unit, units), MOST_PLACES)
        for value in (line.needed, line.kept, line.spares)
    )
    holds = decimal_of(to_display(line.holds, unit, units), HOLDS_PLACES)
    for places in range(fewest, MOST_PLACES + 1):
        found = Quantity(
            round_up(needed, places),
            round_down(kept, places),
            round_up(spares, places),
            holds,
            places,
        )
        if found.packs == line.packs:
            return found
    raise ValueError(
        f"packs of {line.key} must follow from what is needed: {line.needed} - {line.kept} "
        f"+ {line.spares} in packs of {line.holds} are not {line.packs} packs"
    )


def is_film(line: Line | ReuseLine) -> bool:
    """Return whether a line is film."""
    return line.key.startswith("film/")


def place_words(line: Line | ReuseLine, units: Units) -> str:
    """Return where a line is used: each place once or, when that is long, how many there are.

    The first place of a roll to buy is its size, which stands with its name.
    """
    rolls = isinstance(line, Line) and is_film(line)
    places = line.where[1:] if rolls else line.where
    text = "; ".join(dict.fromkeys(words(place, units) for place in places))
    if len(text) <= LONGEST_PLACES:
        return text
    counts = Counter(_tunnel_of(place) for place in dict.fromkeys(places))
    told = [
        f"{tunnel}, {count} {'place' if count == 1 else 'places'}".removeprefix(", ")
        for tunnel, count in counts.items()
    ]
    return f"{'; '.join(told)}: see {'Rolls' if rolls else 'Working'}"


def _tunnel_of(place: Phrase) -> str:
    """Return the tunnel that a place names, or "" when the farm has only one."""
    return next((str(term.value) for term in place.terms if term.name == "tunnel"), "")


def origin_of(line: Line) -> str:
    """Return what is said about the price of a line."""
    if line.packs == 0:
        return "not needed"
    if is_unpriced(line):
        return "no price"
    return "invented" if line.invented else "entered"


def is_unpriced(line: Line) -> bool:
    """Return whether a line has no price yet: an invented price of nothing is none."""
    return line.invented and line.price == 0


def feet_inches(feet: Decimal) -> str:
    """Return feet as the formula beside them writes them: to the nearest sixteenth."""
    whole, rest = divmod(int(round_near(feet * 192, 0)), 192)
    inches, steps = divmod(rest, 16)
    if not steps:
        return f"{whole}' {inches}\""
    bottom = 16
    while steps % 2 == 0:
        steps, bottom = steps // 2, bottom // 2
    return f"{whole}' {inches} {steps}/{bottom}\""
