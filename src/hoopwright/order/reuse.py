"""What stays of the old skin: lines that are not bought, and what each would cost new."""

from collections.abc import Iterable, Iterator
from decimal import Decimal

from hoopwright.farm.catalogue import Film, Part
from hoopwright.farm.condition import FILM
from hoopwright.order.amounts import packs_for
from hoopwright.order.cut_plan import price_source
from hoopwright.order.order import ReuseLine
from hoopwright.order.stock import stock_table
from hoopwright.quantity.money import line_total, round_cents
from hoopwright.quantity.working import (
    ENTERED,
    PRACTICE,
    LaterWorkings,
    Phrase,
    Term,
    Working,
    phrase,
)
from hoopwright.takeoff import KeptSheet, Need

SHARE_DIGITS = 4

KeptByTunnel = tuple[tuple[str, tuple[KeptSheet, ...]], ...]
NeededPart = tuple[Part, list[tuple[str, Need]]]


def reused_parts(parts: Iterable[NeededPart]) -> Iterator[ReuseLine]:
    """Yield one line for each part of which something stays.

    Args:
        parts: Each part with the name of the tunnel and the need, for every place.
    """
    for part, needs in parts:
        stay = [(tunnel, need) for tunnel, need in needs if need.kept > 0]
        if stay:
            yield _part_line(part, needs, stay)


def reused_sheets(kept_by_tunnel: KeptByTunnel, films: Iterable[Film]) -> Iterator[ReuseLine]:
    """Yield one line for each sheet that stays.

    Args:
        kept_by_tunnel: Name of each tunnel and its kept sheets.
        films: Films with their stock rolls; every sheet's film is one of them.
    """
    by_key = {film.key: film for film in films}
    several = len(kept_by_tunnel) > 1
    for tunnel, sheets in kept_by_tunnel:
        for sheet in sheets:
            yield _sheet_line(tunnel if several else "", sheet, by_key[sheet.piece.film])


def in_tunnel(tunnel: str, where: Phrase) -> Phrase:
    """Return a place with its tunnel named before it."""
    if not tunnel:
        return where
    return Phrase("{tunnel}: " + where.template, (Term("tunnel", tunnel, "text"), *where.terms))


def _part_line(
    part: Part, needs: list[tuple[str, Need]], stay: list[tuple[str, Need]]
) -> ReuseLine:
    needed = sum(need.quantity for _, need in needs)
    kept = sum(need.kept for _, need in stay)
    all_new, with_kept = packs_for(part, needed)[1], packs_for(part, needed - kept)[1]
    spared = all_new - with_kept
    return ReuseLine(
        key=part.key,
        group=part.group,
        name=part.name,
        where=tuple(dict.fromkeys(in_tunnel(tunnel, need.where) for tunnel, need in stay)),
        marks=tuple(dict.fromkeys(mark for _, need in stay for mark in need.marks)),
        counted_in=part.counted_in,
        needed=needed,
        kept=kept,
        state="repair" if any(need.state == "repair" for _, need in stay) else "keep",
        spared=float(spared),
        sold_as=part.sold_as,
        price=part.price,
        saved=line_total(spared, part.price),
        invented=part.origin == "invented",
        workings=LaterWorkings(
            lambda: (
                *_kept_workings(part, needed, stay),
                Working(
                    "spared",
                    "Packs if all were new less packs to buy",
                    (
                        Term("packs if all were new", all_new, "count"),
                        Term("packs to buy", with_kept, "count"),
                    ),
                ),
                *_price_workings(spared, part.price, part.origin, part.sold_as),
            )
        ),
    )


def _kept_workings(part: Part, needed: float, stay: list[tuple[str, Need]]) -> Iterator[Working]:
    unit = "m" if part.counted_in == "m" else "count"
    yield Working("needed", "All places added up", (Term("needed", needed, unit),))
    places = [n.kept_working for _, n in stay if n.kept_working is not None]
    lines = dict.fromkeys(t for w in places for t in w.inputs if t.name.startswith("line "))
    kept = Term("kept at all places", sum(n.kept for _, n in stay), unit)
    yield Working("kept", places[0].rule, (kept, *lines), places[0].source)


def _sheet_line(tunnel: str, sheet: KeptSheet, film: Film) -> ReuseLine:
    piece = sheet.piece
    choice = stock_table(film).cheapest(piece.width_m, piece.length_m)
    roll = film.rolls[0] if choice is None else choice.roll
    spared = 0.0
    if choice is not None:
        spared = round(min(1.0, piece.area_m2 / (roll.width_m * roll.length_m)), SHARE_DIGITS)
    return ReuseLine(
        key=f"film/{film.key}",
        group=FILM,
        name=film.name,
        where=(in_tunnel(tunnel, phrase("{sheet}", sheet=piece.name)),),
        marks=(piece.mark,),
        counted_in="count",
        needed=1.0,
        kept=1.0,
        state=sheet.state,
        spared=spared,
        sold_as="roll",
        price=roll.price,
        saved=round_cents(roll.price * Decimal(repr(spared))),
        invented=roll.origin == "invented",
        workings=LaterWorkings(
            lambda: (
                Working("needed", "One sheet"),
                Working("kept", "The sheet stays", sheet.working("repair_share").inputs, ENTERED),
                Working(
                    "spared",
                    "Share of the cheapest roll that holds the sheet, to the fourth decimal; none "
                    "where no roll holds it",
                    (
                        Term("sheet", piece.area_m2, "m2"),
                        Term("roll", roll.width_m * roll.length_m, "m2"),
                    ),
                ),
                *_price_workings(spared, roll.price, roll.origin, "roll"),
            )
        ),
    )


def _price_workings(
    spared: float, price: Decimal, origin: str, sold_as: str
) -> tuple[Working, Working]:
    return (
        Working("price", f"Price of one {sold_as}", (), price_source(origin)),
        Working(
            "saved",
            "What need not be bought times price, rounded half up to the cent once",
            (Term("need not be bought", spared, "ratio"), Term("price", price, "money")),
            PRACTICE,
        ),
    )
