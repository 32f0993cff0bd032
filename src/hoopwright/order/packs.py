"""Turn needs and sheets into an order: lines of whole packs, film first.

Runs of channel, wire, boards and rope may be spliced, so their lengths are added up before they
are divided by the stick. Roll bars come in whole sticks already.
"""

from collections.abc import Iterable
from decimal import Decimal

from hoopwright.cover.cover import Piece
from hoopwright.farm.catalogue import Catalogue, Film, FilmRoll, Part
from hoopwright.farm.condition import FILM
from hoopwright.order.amounts import packs_for
from hoopwright.order.cut_plan import cut_sheets, price_source
from hoopwright.order.order import Line, Order, Roll
from hoopwright.order.reuse import KeptByTunnel, in_tunnel, reused_parts, reused_sheets
from hoopwright.quantity.money import line_total
from hoopwright.quantity.working import (
    DERIVED,
    ENTERED,
    PRACTICE,
    LaterWorkings,
    Term,
    Working,
    phrase,
)
from hoopwright.takeoff.need import Need

LISTED = "the catalogue's entry"

NeedsByTunnel = tuple[tuple[str, tuple[Need, ...]], ...]
PiecesByTunnel = tuple[tuple[str, tuple[Piece, ...]], ...]


def place_order(
    needs_by_tunnel: NeedsByTunnel,
    pieces_by_tunnel: PiecesByTunnel,
    catalogue: Catalogue,
    kept_by_tunnel: KeptByTunnel = (),
) -> Order:
    """Return everything to buy for the tunnels together, and what stays.

    Args:
        needs_by_tunnel: Name of each tunnel and its needs, each with what stays of it.
        pieces_by_tunnel: Name of each tunnel and the sheets to cut.
        catalogue: What can be bought.
        kept_by_tunnel: Name of each tunnel and the sheets that stay.

    Returns:
        The order; needs of parts that the catalogue lacks are named in `missing`.

    Source:
        Whole packs, rounded up; each line's total rounded once: common practice, no published
        source.
    """
    sheets = ((name, piece) for name, pieces in pieces_by_tunnel for piece in pieces)
    rolls, near_misses, unplaced = cut_sheets(sheets, catalogue.films)
    wanted = _needs_by_part(needs_by_tunnel)
    parts = tuple(_in_groups(catalogue, wanted))
    bought = (_part_line(part, wanted[part.key]) for part in parts)
    lines = (*_film_lines(rolls, catalogue.films), *(line for line in bought if line is not None))
    reused = (
        *reused_sheets(kept_by_tunnel, catalogue.films),
        *reused_parts((part, wanted[part.key]) for part in parts),
    )
    known = {part.key for part in catalogue.parts}
    bought_m2 = sum((roll.width_m * roll.length_m for roll in rolls), 0.0)
    used_m2 = sum((roll.used_m2 for roll in rolls), 0.0)
    waste_share = 1.0 - used_m2 / bought_m2 if bought_m2 else 0.0
    goods = sum((line.total for line in lines), Decimal("0.00"))
    return Order(
        lines=lines,
        reused=reused,
        rolls=rolls,
        near_misses=near_misses,
        unplaced=unplaced,
        film_bought_m2=bought_m2,
        film_used_m2=used_m2,
        waste_share=max(0.0, waste_share),
        goods=goods,
        saved=sum((line.saved for line in reused), Decimal("0.00")),
        missing=tuple(key for key in wanted if key not in known),
        workings=LaterWorkings(
            lambda: (
                *_order_workings(len(rolls), len(lines), bought_m2, used_m2),
                Working("saved", "Sum of what stays", (Term("lines", len(reused), "count"),)),
            )
        ),
    )


def _needs_by_part(needs_by_tunnel: NeedsByTunnel) -> dict[str, list[tuple[str, Need]]]:
    """Return the needs of each part with the tunnel's name, or "" when there is only one."""
    several = len(needs_by_tunnel) > 1
    found: dict[str, list[tuple[str, Need]]] = {}
    for tunnel, needs in needs_by_tunnel:
        for need in needs:
            found.setdefault(need.part, []).append((tunnel if several else "", need))
    return found


def _in_groups(catalogue: Catalogue, wanted: Iterable[str]) -> Iterable[Part]:
    """Return the wanted parts group by group, groups and parts in the catalogue's order."""
    groups: dict[str, list[Part]] = {}
    keys = set(wanted)
    for part in catalogue.parts:
        listed = groups.setdefault(part.group, [])
        if part.key in keys:
            listed.append(part)
    return (part for parts in groups.values() for part in parts)


def _part_line(part: Part, needs: list[tuple[str, Need]]) -> Line | None:
    """Return what is bought of a part, or None where all of it stays."""
    taken = [(tunnel, need) for tunnel, need in needs if need.bought > 0]
    if not taken:
        return None
    needed = sum(need.quantity for _, need in needs)
    kept = sum(need.kept for _, need in needs)
    spares, packs = packs_for(part, needed - kept)
    where = dict.fromkeys(in_tunnel(tunnel, need.where) for tunnel, need in taken)
    return Line(
        key=part.key,
        group=part.group,
        name=part.name,
        where=tuple(where),
        marks=tuple(dict.fromkeys(mark for _, need in taken for mark in need.marks)),
        counted_in=part.counted_in,
        needed=needed,
        kept=kept,
        spares=spares,
        holds=part.holds,
        sold_as=part.sold_as,
        packs=packs,
        left_over=max(0.0, packs * part.holds - (needed - kept) - spares),
        price=part.price,
        total=line_total(packs, part.price),
        invented=part.origin == "invented",
        workings=LaterWorkings(
            lambda: _part_workings(part, len(needs), (needed, kept), spares, packs)
        ),
    )


def _part_workings(
    part: Part, places: int, quantities: tuple[float, float], spares: float, packs: int
) -> tuple[Working, ...]:
    needed, kept = quantities
    unit = "m" if part.counted_in == "m" else "count"
    holds = Term("one pack holds", part.holds, unit)
    to_buy = Term("to buy with spares", needed - kept + spares, unit)
    bought = Term("packs", packs, "count")
    gather = "All places added up" + (
        "; runs may be spliced, roll bars are whole sticks" if part.counted_in == "m" else ""
    )
    return (
        Working("needed", gather, (Term("places", places, "count"),)),
        Working("kept", "What the condition keeps of it, all places added up", (), ENTERED),
        Working(
            "spares",
            "Share of what is bought" + (", rounded up to whole pieces" if unit == "count" else ""),
            (
                Term("needed less kept", needed - kept, unit),
                Term("share", part.spare_share, "share"),
            ),
            PRACTICE,
        ),
        Working("holds", "As sold", (), LISTED),
        Working(
            "packs", "What is bought with spares divided by a pack, rounded up", (to_buy, holds)
        ),
        Working("left_over", "Packs less what is bought with spares", (bought, holds, to_buy)),
        Working("price", f"Price of one {part.sold_as}", (), price_source(part.origin)),
        _total_working(packs, part.price),
    )


def _total_working(packs: int, price: Decimal) -> Working:
    return Working(
        "total",
        "Packs times price, rounded half up to the cent once",
        (Term("packs", packs, "count"), Term("price", price, "money")),
        PRACTICE,
    )


def _film_lines(rolls: tuple[Roll, ...], films: tuple[Film, ...]) -> Iterable[Line]:
    """Return one line for each film and stock size, in the order of the rolls."""
    by_size: dict[tuple[str, float, float], list[Roll]] = {}
    for roll in rolls:
        by_size.setdefault((roll.film, roll.width_m, roll.length_m), []).append(roll)
    by_key = {film.key: film for film in films}
    for (key, width_m, length_m), alike in by_size.items():
        yield _film_line(by_key[key], width_m, length_m, alike)


def _film_line(film: Film, width_m: float, length_m: float, alike: list[Roll]) -> Line:
    stock = _stock_of(film, alike[0])
    packs = len(alike)
    size = phrase("roll {width} wide, {length} long", width=(width_m, "m"), length=(length_m, "m"))
    several = len({cut.tunnel for roll in alike for cut in roll.cuts}) > 1
    names = dict.fromkeys(
        in_tunnel(cut.tunnel if several else "", phrase("{sheet}", sheet=cut.name))
        for roll in alike
        for cut in roll.cuts
    )
    return Line(
        key=f"film/{film.key}/{width_m!r}/{length_m!r}",
        group=FILM,
        name=film.name,
        where=(size, *names),
        marks=tuple(dict.fromkeys(cut.piece for roll in alike for cut in roll.cuts)),
        counted_in="count",
        needed=float(packs),
        spares=0.0,
        holds=1.0,
        sold_as="roll",
        packs=packs,
        left_over=0.0,
        price=stock.price,
        total=line_total(packs, stock.price),
        invented=stock.origin == "invented",
        workings=LaterWorkings(lambda: _film_workings(stock, packs)),
    )


def _stock_of(film: Film, roll: Roll) -> FilmRoll:
    for stock in film.rolls:
        if (stock.width_m, stock.length_m, stock.price) == (
            roll.width_m,
            roll.length_m,
            roll.price,
        ):
            return stock
    raise ValueError(f"film {film.key} has no stock roll {roll.width_m} x {roll.length_m} m")


def _film_workings(stock: FilmRoll, packs: int) -> tuple[Working, ...]:
    size = (Term("width", stock.width_m, "m"), Term("length", stock.length_m, "m"))
    return (
        Working("needed", "Rolls of this size that the sheets are cut from", size),
        Working("kept", "Sheets that stay are on no roll", (), ENTERED),
        Working("spares", "No spare rolls are counted", (), PRACTICE),
        Working("holds", "Film is sold by the roll", (), LISTED),
        Working("packs", "Rolls needed", (Term("rolls", packs, "count"),)),
        Working("left_over", "What stays of a roll is shown with its cuts"),
        Working("price", "Price of one roll", (), price_source(stock.origin)),
        _total_working(packs, stock.price),
    )


def _order_workings(
    rolls: int, lines: int, bought_m2: float, used_m2: float
) -> tuple[Working, ...]:
    bought = Term("film bought", bought_m2, "m2")
    used = Term("film in sheets", used_m2, "m2")
    return (
        Working(
            "film_bought_m2",
            "Width times length of each roll, added up",
            (Term("rolls", rolls, "count"),),
        ),
        Working("film_used_m2", "Width times length of each sheet, added up", (used,)),
        Working("waste_share", "Film bought that is in no sheet", (bought, used), DERIVED),
        Working("goods", "Sum of the line totals", (Term("lines", lines, "count"),), PRACTICE),
    )
