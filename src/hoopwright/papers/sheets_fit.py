"""The widths the films over the bows are sold in, and how sure it is that each is wide enough."""

from typing import NamedTuple

from hoopwright.farm.farm import Farm
from hoopwright.fit import SheetFit, WidthFit, chance_words, tell_sheet
from hoopwright.fit.telling import OVER_WORDS, telling_widths
from hoopwright.fit.workings import MODEL
from hoopwright.papers.sheet import NOTE, TITLE, Sheet, wide_row
from hoopwright.papers.sheet_figures import Figure, listed_rows
from hoopwright.papers.sheets_film import caution_note
from hoopwright.plan import Plan
from hoopwright.quantity.units import Units
from hoopwright.quantity.working import words

NO_SHEET = "No sheet over the bows is cut of new film."
FIT_WIDTHS = (18.0, 20.0, 22.0, *(13.0 for _ in range(6)), 24.0)


class _Sheet(NamedTuple):
    tunnel: str
    film: str
    sheet: SheetFit


class _Width(NamedTuple):
    tunnel: str
    sheet: SheetFit
    width: WidthFit
    units: Units


RESTS_ON: tuple[Figure[_Sheet], ...] = (
    Figure("Tunnel", lambda s: s.tunnel),
    Figure("Sheet", lambda s: s.sheet.name),
    Figure("Film", lambda s: s.film),
    Figure("Cut width", lambda s: s.sheet.cut_width_m, "m"),
    Figure("Bows", lambda s: s.sheet.bow_count, "count"),
    Figure("Girths read", lambda s: s.sheet.read_count, "count"),
    Figure("Longest girth", lambda s: s.sheet.governing_m if s.sheet.read_count else None, "m"),
    Figure("At bow", lambda s: s.sheet.governing_bow, "count"),
    Figure("Deviation of the bows", lambda s: s.sheet.deviation_m, "m_thin"),
    Figure("Read over the ridge", lambda s: OVER_WORDS[s.sheet.over] if s.sheet.over else None),
)
WIDTHS: tuple[Figure[_Width], ...] = (
    Figure("Tunnel", lambda w: w.tunnel),
    Figure("Sheet", lambda w: w.sheet.name),
    Figure("Choice", lambda w: "narrowest that holds it" if w.width.chosen else ""),
    Figure("Stock width", lambda w: w.width.width_m, "m"),
    Figure("Spare", lambda w: w.width.margin_m, "m"),
    Figure("Chance", lambda w: w.width.chance, "share"),
    Figure("In words", lambda w: words(chance_words(w.width.chance), w.units)),
)


def fit_sheet(farm: Farm, plan: Plan) -> Sheet:
    """Return the stock widths worth a word, with the chance that each is too narrow.

    Args:
        farm: The farm.
        plan: Its plan.
    """
    last, units = len(FIT_WIDTHS), farm.units
    sheets = [
        _Sheet(planned.name, farm.catalogue.film(sheet.film).name, sheet)
        for planned in plan.tunnels
        for sheet in planned.fit.sheets
    ]
    widths = [
        _Width(s.tunnel, s.sheet, width, units) for s in sheets for width in telling_widths(s.sheet)
    ]
    rows = [
        wide_row("Widths: how sure it is that the film reaches", TITLE, last),
        wide_row(MODEL, NOTE, last),
        wide_row(caution_note("film"), NOTE, last),
        *listed_rows("What each sheet rests on", RESTS_ON, sheets, units, last, NO_SHEET),
        *(
            wide_row(words(told, units), NOTE, last, label=s.tunnel)
            for s in sheets
            for told in tell_sheet(s.sheet)
        ),
        *listed_rows("Widths in stock", WIDTHS, widths, units, last, NO_SHEET),
    ]
    return Sheet(name="Widths", widths=FIT_WIDTHS, rows=tuple(rows))
