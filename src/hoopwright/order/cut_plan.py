"""Lay all sheets on stock rolls, and say which sheets miss a stock size.

The cutting rule: a roll is cut across into sections, a section is ripped lengthwise into strips, a
strip is cut across into sheets; a sheet narrower than its strip is trimmed. Sheets keep their
direction, length along the roll. Films never share a roll.
"""

from collections.abc import Iterable, Sequence

from hoopwright.cover.cover import Piece
from hoopwright.farm.catalogue import Film
from hoopwright.order.filling import OpenRoll, Section, Sheet, fill_rolls
from hoopwright.order.order import Cut, NearMiss, Roll, Unplaced
from hoopwright.order.stock import FIT_M, StockTable, stock_table
from hoopwright.quantity.working import ENTERED, INVENTED, LaterWorkings, Term, Working

NEAR_SHARE = 0.1
NEAR_M = 0.6

CutPlan = tuple[tuple[Roll, ...], tuple[NearMiss, ...], tuple[Unplaced, ...]]


def cut_sheets(pieces: Iterable[Sheet], films: Sequence[Film]) -> CutPlan:
    """Return rolls with their cuts, sheets just over a narrower stock width, sheets without stock.

    Args:
        pieces: Name of the tunnel and sheet, for every sheet.
        films: Films with their stock rolls; every sheet's film is one of them.

    Returns:
        Rolls, near misses and unplaced sheets, film by film.

    Source:
        A good answer by rule of thumb, derived here; it is not proved to be the cheapest.
    """
    by_film: dict[str, list[Sheet]] = {film.key: [] for film in films}
    for sheet in pieces:
        by_film[sheet[1].film].append(sheet)
    rolls: list[Roll] = []
    misses: list[NearMiss] = []
    unplaced: list[Unplaced] = []
    for film in films:
        sheets = by_film[film.key]
        if not sheets:
            continue
        table = stock_table(film)
        fitting: list[Sheet] = []
        for tunnel, piece in sheets:
            if table.cheapest(piece.width_m, piece.length_m) is not None:
                fitting.append((tunnel, piece))
            else:
                unplaced.append(_unplaced(tunnel, piece, table))
        for roll in fill_rolls(fitting, table):
            rolls.append(_finish(film.key, roll))
            misses.extend(_near_misses(roll, table))
    return tuple(rolls), tuple(misses), tuple(unplaced)


def _unplaced(tunnel: str, piece: Piece, table: StockTable) -> Unplaced:
    widest_m = table.widths_m[-1]
    over_width_m = max(0.0, piece.width_m - widest_m)
    if over_width_m <= FIT_M:
        longest_m = table.longest_m(piece.width_m)
        over_width_m, over_length_m, stock_m = 0.0, piece.length_m - longest_m, longest_m
    else:
        over_length_m, stock_m = 0.0, widest_m
    return Unplaced(
        tunnel=tunnel,
        piece=piece.mark,
        name=piece.name,
        over_width_m=over_width_m,
        over_length_m=over_length_m,
        stock_m=stock_m,
    )


def _near_misses(roll: OpenRoll, table: StockTable) -> Iterable[NearMiss]:
    """Return the sheets that alone decide the width of a roll and nearly fit a narrower stock."""
    for section in roll.sections:
        if section.width_m < roll.width_m - FIT_M or len(section.strips) > 1:
            continue
        for tunnel, piece in section.strips[0].sheets:
            if piece.width_m >= roll.width_m - FIT_M:
                yield from _near_miss(tunnel, piece, table)


def _near_miss(tunnel: str, piece: Piece, table: StockTable) -> Iterable[NearMiss]:
    """Return how a sheet misses the next narrower stock width that would be cheaper for it alone.

    Source:
        Near is up to a tenth of the stock width and up to 0.6 m: common practice, no published
        source.
    """
    own = table.cheapest(piece.width_m, piece.length_m)
    for stock_m in reversed(table.widths_m):
        over_m = piece.width_m - stock_m
        if own is None or over_m > min(NEAR_M, NEAR_SHARE * stock_m):
            return
        if over_m <= FIT_M:
            continue
        narrow = table.cheapest(stock_m, piece.length_m)
        if narrow is not None and narrow.cost < own.cost:
            yield NearMiss(
                tunnel=tunnel,
                piece=piece.mark,
                name=piece.name,
                stock_width_m=stock_m,
                over_m=over_m,
                saving=own.roll.price - narrow.roll.price,
            )
            return


def _finish(film: str, roll: OpenRoll) -> Roll:
    stock = roll.choice.roll
    left_m = max(0.0, stock.length_m - roll.length_m)
    width_m = Term("widest section", roll.width_m, "m")
    length_m = Term("sections together", roll.length_m, "m")
    rule = "The cheapest stock roll that holds what is cut from it"
    return Roll(
        film=film,
        width_m=stock.width_m,
        length_m=stock.length_m,
        price=stock.price,
        cuts=_cuts(roll.sections),
        used_m2=roll.used_m2,
        left_m=left_m,
        workings=LaterWorkings(
            lambda: (
                Working("width_m", rule, (width_m, length_m)),
                Working("length_m", rule, (width_m, length_m)),
                Working("price", "Price of the stock roll", (), price_source(stock.origin)),
                Working("used_m2", "Width times length of each sheet cut from it, added up"),
                Working(
                    "left_m",
                    "Length of the roll less its sections, in full width",
                    (Term("roll", stock.length_m, "m"), length_m),
                ),
            )
        ),
    )


def _cuts(sections: Iterable[Section]) -> tuple[Cut, ...]:
    cuts: list[Cut] = []
    start_m = 0.0
    for section in sections:
        across_m = 0.0
        for strip in section.strips:
            along_m = start_m
            for tunnel, piece in strip.sheets:
                cuts.append(
                    Cut(
                        tunnel=tunnel,
                        piece=piece.mark,
                        name=piece.name,
                        along_m=along_m,
                        across_m=across_m,
                        length_m=piece.length_m,
                        width_m=piece.width_m,
                    )
                )
                along_m += piece.length_m
            across_m += strip.width_m
        start_m += section.length_m
    return tuple(cuts)


def price_source(origin: str) -> str:
    """Return where a price comes from, as a working says it."""
    return INVENTED if origin == "invented" else ENTERED
