"""Lay the sheets of one film on rolls: quick, never dearer than a roll for each sheet.

A roll is cut across into sections, a section is ripped into strips, a strip is cut across into
sheets; sheets keep their direction. Sheets are taken from the largest down. Each goes where it
adds least to the price, where every roll counts at the price of the cheapest stock that holds what
is on it; so an open roll may grow into a longer or wider stock when that is cheaper than a further
roll. A few orders of taking are tried and the cheapest result stays. It is a good answer, not a
proved one.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field

from hoopwright.cover.cover import Piece
from hoopwright.order.stock import Choice, StockTable

ROOMIEST = 24
FREE = (0, 0.0)
"""What a place adds where nothing is bought and nothing unrolled for it; none adds less."""

Sheet = tuple[str, Piece]
Score = tuple[int, float]


@dataclass(slots=True)
class Strip:
    """Sheets one behind the other; as wide as the widest of them.

    Attributes:
        width_m: Width, m.
        length_m: Sheets together, m.
        sheets: The sheets in order.
    """

    width_m: float
    length_m: float
    sheets: list[Sheet]


@dataclass(slots=True)
class Section:
    """Strips side by side, cut off the roll together.

    Attributes:
        width_m: Strips together, m.
        length_m: Length of the longest strip, m.
        strips: The strips in order.
    """

    width_m: float = 0.0
    length_m: float = 0.0
    strips: list[Strip] = field(default_factory=list)


@dataclass(slots=True)
class OpenRoll:
    """A roll that is being filled.

    Attributes:
        choice: The cheapest stock that holds what is on it.
        width_m: Width of its widest section, m.
        length_m: Sections together, m.
        sections: The sections from the start of the roll.
        used_m2: Area of the sheets, m2.
    """

    choice: Choice
    width_m: float = 0.0
    length_m: float = 0.0
    sections: list[Section] = field(default_factory=list)
    used_m2: float = 0.0

    def free_m2(self) -> float:
        """Return the area of the stock roll that is in no sheet, m2.

        Source:
            Derived here: area of the roll less that of its sheets.
        """
        return self.choice.roll.width_m * self.choice.roll.length_m - self.used_m2


@dataclass(frozen=True, slots=True)
class Move:
    """A place for the next sheet.

    Attributes:
        score: What it adds to the price, then to the unrolled area, m2.
        roll: The open roll, or None for a further one.
        section: The section there, or None for a further one.
        strip: The strip there, or None for a further one.
        choice: The stock that then holds the roll.
    """

    score: Score
    roll: OpenRoll | None
    section: Section | None
    strip: Strip | None
    choice: Choice


Spot = tuple[Section | None, Strip | None, float, float]

ORDERS: tuple[Callable[[Sheet], tuple[float, float]], ...] = (
    lambda sheet: (-sheet[1].width_m, -sheet[1].length_m),
    lambda sheet: (-sheet[1].length_m, -sheet[1].width_m),
    lambda sheet: (-sheet[1].area_m2, -sheet[1].width_m),
)


def fill_rolls(sheets: Sequence[Sheet], table: StockTable) -> list[OpenRoll]:
    """Return rolls that yield all the sheets, at the least price of the orders tried.

    Args:
        sheets: Sheets of one film, each of which some stock roll holds.
        table: Stock of that film.
    """
    tried: list[list[Sheet]] = []
    best: list[OpenRoll] = []
    best_score: Score | None = None
    for order in ORDERS:
        queue = sorted(sheets, key=order)
        if queue in tried:
            continue
        tried.append(queue)
        rolls = _fill_in_order(queue, table)
        score = (
            sum(roll.choice.cost for roll in rolls),
            sum(roll.choice.roll.width_m * roll.length_m for roll in rolls),
        )
        if best_score is None or score < best_score:
            best, best_score = rolls, score
    return best


def _fill_in_order(queue: Sequence[Sheet], table: StockTable) -> list[OpenRoll]:
    """Return the rolls when sheets are taken in this order; only the roomiest rolls stay open."""
    rolls: list[OpenRoll] = []
    roomy: list[OpenRoll] = []
    for sheet in queue:
        made = _place(sheet, roomy, table)
        if made is not None:
            rolls.append(made)
            roomy.append(made)
            if len(roomy) > ROOMIEST:
                roomy.remove(min(roomy, key=OpenRoll.free_m2))
    return rolls


def _place(sheet: Sheet, rolls: Sequence[OpenRoll], table: StockTable) -> OpenRoll | None:
    """Put a sheet where it adds least, and return the further roll when it took one."""
    piece = sheet[1]
    own = table.cheapest(piece.width_m, piece.length_m)
    if own is None:
        raise ValueError(f"sheet {piece.mark} fits on no stock roll; leave it out before")
    best = Move((own.cost, own.roll.width_m * piece.length_m), None, None, None, own)
    for roll in rolls:
        if best.score == FREE:
            break
        best = _best_move(piece, roll, table, best)
    target = best.roll or OpenRoll(best.choice)
    section = best.section
    if section is None:
        section = Section()
        target.sections.append(section)
    strip = best.strip
    if strip is None:
        strip = Strip(0.0, 0.0, [])
        section.strips.append(strip)
    strip.sheets.append(sheet)
    _measure(piece, target, section, strip)
    target.choice = best.choice
    return target if best.roll is None else None


def _measure(piece: Piece, roll: OpenRoll, section: Section, strip: Strip) -> None:
    strip.width_m = max(strip.width_m, piece.width_m)
    strip.length_m += piece.length_m
    section.width_m = sum(s.width_m for s in section.strips)
    section.length_m = max(section.length_m, strip.length_m)
    roll.width_m = max(roll.width_m, section.width_m)
    roll.length_m = sum(s.length_m for s in roll.sections)
    roll.used_m2 += piece.area_m2


def _best_move(piece: Piece, roll: OpenRoll, table: StockTable, best: Move) -> Move:
    """Return the best place on one roll, or the best before when none there is better."""
    cost, taken_m, taken_width_m = roll.choice.cost, roll.length_m, roll.width_m
    unrolled_m2 = roll.choice.roll.width_m * taken_m
    for section, strip, needs_width_m, adds_m in _places(piece.width_m, piece.length_m, roll):
        total_m = taken_m + adds_m if adds_m > 0.0 else taken_m
        choice = table.cheapest(
            needs_width_m if needs_width_m > taken_width_m else taken_width_m, total_m
        )
        if choice is None or choice.cost - cost > best.score[0]:
            continue
        score = (choice.cost - cost, choice.roll.width_m * total_m - unrolled_m2)
        if score < best.score:
            best = Move(score, roll, section, strip, choice)
            if score == FREE:
                break
    return best


def _places(width_m: float, length_m: float, roll: OpenRoll) -> Iterator[Spot]:
    """Yield where a sheet could go, how wide its section is then, and what it adds to the roll.

    What is added is zero or less where the sheet ends before its section does, m.
    """
    yield None, None, width_m, length_m
    for section in roll.sections:
        section_m, across_m = section.length_m, section.width_m
        yield section, None, across_m + width_m, length_m - section_m
        for strip in section.strips:
            wider_m = width_m - strip.width_m
            needs_width_m = across_m + wider_m if wider_m > 0.0 else across_m
            yield section, strip, needs_width_m, strip.length_m + length_m - section_m
