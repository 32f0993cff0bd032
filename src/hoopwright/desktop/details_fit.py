"""Beside the width of a sheet over the bows: every stock width, its margin and its chance."""

from collections.abc import Iterator

from PySide6.QtCore import QCoreApplication

from hoopwright.desktop.details_items import Figure, Heading, Item, entries
from hoopwright.desktop.fit_words import fit_lines
from hoopwright.desktop.session import Session
from hoopwright.fit import SheetFit


def piece_fit_items(session: Session, mark: str) -> Iterator[Item]:
    """Give the stock widths of a sheet by its mark; nothing of sheets that lie elsewhere."""
    sheet = session.tunnel_plan.fit.of(mark)
    if sheet is not None:
        yield Heading(QCoreApplication.translate("Details", "Stock widths"))
        yield from _widths(session, sheet)
        yield from _tape(session)


def roof_fit_items(session: Session) -> Iterator[Item]:
    """Give the stock widths of each layer over the bows, with what the chances rest on."""
    films = session.farm.catalogue.films
    for sheet in session.tunnel_plan.fit.sheets:
        words = QCoreApplication.translate("Details", "Stock widths, {sheet}")
        yield Heading(words.format(sheet=sheet.name))
        yield from _widths(session, sheet)
        place = next(n for n, film in enumerate(films) if film.key == sheet.film)
        path = ("catalogue", "films", place)
        yield from entries("farm", path, films[place], "width_minus_share")
    if session.tunnel_plan.fit.sheets:
        yield from _tape(session)


def _widths(session: Session, sheet: SheetFit) -> Iterator[Figure]:
    for line in fit_lines(sheet, session.units):
        yield Figure(line.label, line.text, line.working)


def _tape(session: Session) -> Iterator[Item]:
    """Give what one reading may be wrong by, which every chance rests on."""
    tape = session.tunnel.frame.tape
    yield from entries("tunnel", ("frame", "tape"), tape, "error_m")
