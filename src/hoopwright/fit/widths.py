"""Fit the sheets over the bows to the widths that their films are sold in."""

from collections.abc import Callable, Iterator
from functools import cache

from hoopwright.cover import Piece
from hoopwright.farm import Film, Skin
from hoopwright.farm.tape import Tape
from hoopwright.fit.fit import Fit, Remeasured, SheetFit, Untold, WidthFit
from hoopwright.fit.shortness import DIGITS_M, Girths, chance_short
from hoopwright.fit.workings import explain_sheet
from hoopwright.survey import Survey
from hoopwright.survey.taped import GirthSpread

ROLES = ("roof sheet", "whole sheet")


def fit_widths(
    survey: Survey, skin: Skin, sheets: tuple[Piece, ...], films: tuple[Film, ...], tape: Tape
) -> Fit:
    """Return how sure it is that each stock width is wide enough for the bows as they stand.

    The sheet over the bows must reach over the longest of them with its tails; `shortness` says
    what that rests on.

    Args:
        survey: The frame as built, with its readings put together.
        skin: The skin as chosen.
        sheets: Sheets to cut; one that stays needs no roll.
        films: Films that can be chosen.
        tape: The readings, for what each may be wrong by.

    Raises:
        KeyError: A film of a sheet is not among `films`.
    """
    by_key = {film.key: film for film in films}
    bows = len(survey.bows_m)
    tolerance_m = skin.allowances.measuring_tolerance_m
    return Fit(
        sheets=tuple(
            _fit_sheet(
                pieces,
                by_key[pieces[0].film],
                _spread_of(pieces[0], survey),
                bows,
                tolerance_m,
                tape.error_m,
            )
            for pieces in _by_layer(sheets)
        )
    )


def _by_layer(sheets: tuple[Piece, ...]) -> Iterator[tuple[Piece, ...]]:
    """Yield the sheets over the bows, layer by layer; cross seams leave their width as it is."""
    over = [piece for piece in sheets if piece.role in ROLES]
    for layer in dict.fromkeys(piece.layer for piece in over):
        yield tuple(piece for piece in over if piece.layer == layer)


def _spread_of(piece: Piece, survey: Survey) -> GirthSpread | None:
    """Return the girths that the width of a sheet rests on, or None when none was read.

    A whole sheet whose width has the longest girth over the baseboards among its terms rests on
    those; every other one on the girths that the roof's was read among.
    """
    taped = survey.taped
    bases = taped.baseboards
    lengths_m = {term.value for term in piece.width_terms}
    if bases is not None and bases.governing_m in lengths_m:
        return bases
    return taped.hips if survey.roof_over == "hips" else bases


def _fit_sheet(
    pieces: tuple[Piece, ...],
    film: Film,
    spread: GirthSpread | None,
    bows: int,
    tolerance_m: float,
    error_m: float,
) -> SheetFit:
    piece = pieces[0]
    length_m = max(piece.length_m for piece in pieces)
    long_enough = (roll for roll in film.rolls if roll.length_m >= length_m - DIGITS_M)
    stocks_m = tuple(sorted({roll.width_m for roll in long_enough}))
    chosen_m = _narrowest(stocks_m, piece.width_m)
    readings = () if spread is None else spread.readings
    read_m = tuple(reading.length_m for reading in readings)
    girths = Girths(read_m, bows - len(read_m), error_m) if len(read_m) > 1 else None
    fixed_m = 0.0 if spread is None else piece.width_m - spread.governing_m - tolerance_m

    def chance_of(stock_m: float) -> float | None:
        if girths is None:
            return None
        return chance_short(girths, fixed_m, stock_m, film.width_minus_share)

    sheet = SheetFit(
        name=_name(piece),
        marks=tuple(p.mark for p in pieces),
        layer=piece.layer,
        film=film.key,
        cut_width_m=piece.width_m,
        over=None if spread is None else spread.over,
        bow_count=bows,
        read_count=len(read_m),
        governing_bow=None if spread is None else spread.governing_bow,
        governing_m=0.0 if spread is None else spread.governing_m,
        middle_m=0.0 if not read_m else sum(read_m) / len(read_m),
        deviation_m=None if girths is None else girths.deviation_m,
        fixed_m=fixed_m,
        minus_share=film.width_minus_share,
        chosen_m=chosen_m,
        chance=None if chosen_m is None else chance_of(chosen_m),
        untold=_untold(len(read_m), chosen_m),
        remeasured=None if spread is None else _read_again(spread, piece.width_m, stocks_m),
        widths_made=_later(stocks_m, piece.width_m, chosen_m, chance_of),
    )
    return explain_sheet(sheet, readings, tolerance_m, error_m)


def _name(piece: Piece) -> str:
    """Return the name of all sheets of a layer together."""
    name = piece.role.capitalize()
    return name if piece.layer == "single" else f"{name}, {piece.layer}"


def _narrowest(stocks_m: tuple[float, ...], need_m: float) -> float | None:
    return next((stock_m for stock_m in stocks_m if stock_m >= need_m - DIGITS_M), None)


def _untold(read: int, chosen_m: float | None) -> Untold:
    if read == 0:
        return "no girth"
    if read == 1:
        return "one girth"
    return "no stock" if chosen_m is None else ""


def _read_again(
    spread: GirthSpread, width_m: float, stocks_m: tuple[float, ...]
) -> Remeasured | None:
    """Return what changes when the longest girth comes out as the next longest, if read again."""
    others_m = [r.length_m for r in spread.readings if r.bow != spread.governing_bow]
    if not others_m:
        return None
    to_m = max(others_m)
    need_m = width_m - (spread.governing_m - to_m)
    stock_m = _narrowest(stocks_m, need_m)
    return Remeasured(
        bow=spread.governing_bow,
        from_m=spread.governing_m,
        to_m=to_m,
        cut_width_m=need_m,
        stock_width_m=stock_m,
        changes=stock_m != _narrowest(stocks_m, width_m),
    )


def _later(
    stocks_m: tuple[float, ...],
    width_m: float,
    chosen_m: float | None,
    chance_of: Callable[[float], float | None],
) -> Callable[[], tuple[WidthFit, ...]]:
    """Return what gives every stock width: a drag looks at the chosen one alone."""

    @cache
    def made() -> tuple[WidthFit, ...]:
        return tuple(
            WidthFit(
                width_m=stock_m,
                margin_m=stock_m - width_m,
                chance=chance_of(stock_m),
                chosen=stock_m == chosen_m,
            )
            for stock_m in stocks_m
        )

    return made
