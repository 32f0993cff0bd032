"""Sheets and stock for tests of cutting; a checker that knows nothing of how sheets are laid."""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from decimal import Decimal
from itertools import combinations

from hoopwright.cover.cover import Piece
from hoopwright.farm import Film, FilmRoll
from hoopwright.order.order import Cut, Roll

FT_M = 0.3048
NOISE_M = 1e-6

Span = tuple[float, float]


def sheet(mark: str, width_m: float, length_m: float, film: str = "clear") -> Piece:
    """Return a sheet of a size; what else it is does not matter for cutting."""
    return Piece(
        mark=mark,
        name=f"sheet {mark}",
        role="roof sheet",
        layer="single",
        film=film,
        width_m=width_m,
        length_m=length_m,
        width_terms=(),
        length_terms=(),
        area_m2=width_m * length_m,
        mass_kg=0.0,
        areas=(),
    )


def sheet_ft(mark: str, width_ft: float, length_ft: float) -> Piece:
    return sheet(mark, width_ft * FT_M, length_ft * FT_M)


def film_of(*rolls: tuple[float, float, str], key: str = "clear", unit_m: float = 1.0) -> Film:
    """Return a film with stock rolls of width, length and price."""
    return Film(
        key=key,
        name="clear film",
        thickness_m=0.00015,
        density_kg_m3=920.0,
        life_years=4.0,
        rolls=tuple(
            FilmRoll(width_m=width * unit_m, length_m=length * unit_m, price=Decimal(price))
            for width, length, price in rolls
        ),
    )


def faults(rolls: Iterable[Roll], pieces: Sequence[tuple[str, Piece]], film: Film) -> list[str]:
    """Return what is wrong with rolls that should yield the pieces once each."""
    rolls = tuple(rolls)
    found = []
    stock = {(r.width_m, r.length_m, r.price) for r in film.rolls}
    wanted = Counter((t, p.mark, p.width_m, p.length_m) for t, p in pieces)
    cut = Counter((c.tunnel, c.piece, c.width_m, c.length_m) for roll in rolls for c in roll.cuts)
    if wanted != cut:
        found.append(f"not the sheets asked for: {wanted - cut} missing, {cut - wanted} too many")
    for n, roll in enumerate(rolls):
        if (roll.width_m, roll.length_m, roll.price) not in stock:
            found.append(f"roll {n} is no stock roll")
        found += [f"roll {n}: {fault}" for fault in _roll_faults(roll)]
    return found


def _roll_faults(roll: Roll) -> Iterable[str]:
    for c in roll.cuts:
        if min(c.along_m, c.across_m) < -NOISE_M:
            yield f"{c.piece} starts before the edge"
        if c.along_m + c.length_m > roll.length_m + NOISE_M:
            yield f"{c.piece} runs past the end"
        if c.across_m + c.width_m > roll.width_m + NOISE_M:
            yield f"{c.piece} runs past the side"
    for a, b in combinations(roll.cuts, 2):
        if _overlap(_along(a), _along(b)) and _overlap(_across(a), _across(b)):
            yield f"{a.piece} and {b.piece} overlap"
    for section in _parted(roll.cuts, _along):
        for strip in _parted(section, _across):
            yield from (
                f"{', '.join(c.piece for c in rest)} cannot be parted by straight cuts"
                for rest in _parted(strip, _along)
                if len(rest) > 1
            )
    end_m = max((_along(c)[1] for c in roll.cuts), default=0.0)
    if abs(roll.length_m - end_m - roll.left_m) > NOISE_M:
        yield f"{roll.left_m} m is not what is left of the length"


def _along(cut: Cut) -> Span:
    return cut.along_m, cut.along_m + cut.length_m


def _across(cut: Cut) -> Span:
    return cut.across_m, cut.across_m + cut.width_m


def _overlap(a: Span, b: Span) -> bool:
    return a[0] < b[1] - NOISE_M and b[0] < a[1] - NOISE_M


def _parted(cuts: Sequence[Cut], span: Callable[[Cut], Span]) -> list[list[Cut]]:
    """Return the groups that straight cuts square to a direction part, as fine as they can."""
    groups: list[list[Cut]] = []
    end_m = float("-inf")
    for cut in sorted(cuts, key=span):
        low_m, high_m = span(cut)
        if low_m >= end_m - NOISE_M:
            groups.append([])
        groups[-1].append(cut)
        end_m = max(end_m, high_m)
    return groups
