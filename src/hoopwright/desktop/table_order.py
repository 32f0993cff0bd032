"""Rows of what is bought: the lines of the takeoff, the sheets, the rolls and their cuts."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.cost import Cost
from hoopwright.desktop.details_items import explained
from hoopwright.desktop.fit_words import widths_words
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_rows import MIXED, PENDING, Cell, Column, Row, Total
from hoopwright.order import Order
from hoopwright.order.order import Cut, Line, ReuseLine, Roll
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import Units, show
from hoopwright.quantity.working import Explained, words

FILM = "film/"

TAKEOFF_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Group"), 13, keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Item"), 33, keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Needed"), 9, MIXED),
    Column(QT_TRANSLATE_NOOP("Tables", "Kept"), 9, MIXED),
    Column(QT_TRANSLATE_NOOP("Tables", "Spares"), 9, MIXED),
    Column(QT_TRANSLATE_NOOP("Tables", "To buy"), 7, "count"),
    Column(QT_TRANSLATE_NOOP("Tables", "Pack"), 29, keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Price"), 8, "money"),
    Column(QT_TRANSLATE_NOOP("Tables", "Total"), 9, "money"),
    Column(QT_TRANSLATE_NOOP("Tables", "Price is"), 9, keeps=True),
)
FILM_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Sheet"), 32, keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Layer"), 7, keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Film"), 32, keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Width"), 12, "m", keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Length"), 12, "m", keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Area"), 8, "m2", keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "Mass"), 8, "kg", keeps=True),
    Column(QT_TRANSLATE_NOOP("Tables", "From roll"), 24),
)
ROLL_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Roll"), 5),
    Column(QT_TRANSLATE_NOOP("Tables", "Sheet"), 27),
    Column(QT_TRANSLATE_NOOP("Tables", "Width"), 11, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Length"), 11, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Along"), 11, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Across"), 11, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Film of the roll, or what is the matter"), 40),
    Column(QT_TRANSLATE_NOOP("Tables", "Roll width"), 10, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Roll length"), 10, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Left"), 10, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Price"), 8, "money"),
    Column(QT_TRANSLATE_NOOP("Tables", "Tunnel"), 14),
)


def figure_cell(thing: Explained, name: str, unit: str) -> Cell:
    """Return a figure of a result with how it was got."""
    return Cell(getattr(thing, name), unit, explained(thing, name))


def takeoff_rows(order: Order, units: Units, currency: str) -> tuple[Row, ...]:
    """Return the lines of an order, then what stays and is not bought."""
    return (
        *(_line(line, units) for line in order.lines),
        *(_stays(line, units, currency) for line in order.reused),
    )


def _line(line: Line, units: Units) -> Row:
    places = [words(place, units) for place in line.where]
    pack = pack_words(line.sold_as, line.holds, line.counted_in, units)
    if line.key.startswith(FILM) and places:
        pack = places[0]
    mine = QCoreApplication.translate("Tables", "your own")
    invented = QCoreApplication.translate("Tables", "invented")
    return Row(
        key=("line", line.key),
        cells=(
            Cell(line.group),
            Cell(line.name, tip="\n".join(places)),
            figure_cell(line, "needed", line.counted_in),
            figure_cell(line, "kept", line.counted_in) if line.kept else Cell(None),
            figure_cell(line, "spares", line.counted_in),
            figure_cell(line, "packs", "count"),
            Cell(pack),
            figure_cell(line, "price", "money"),
            figure_cell(line, "total", "money"),
            Cell(invented if line.invented else mine),
        ),
        marks=line.marks,
    )


def _stays(line: ReuseLine, units: Units, currency: str) -> Row:
    """Return the row of what stays; choosing it lights up where."""
    kept = QCoreApplication.translate("Tables", "stays; new {price}")
    repaired = QCoreApplication.translate("Tables", "stays, repaired; new {price}")
    said = repaired if line.state == "repair" else kept
    told = said.format(price=format_money(line.saved, currency))
    empty = Cell(None)
    return Row(
        key=("stays", line.key, line.marks),
        cells=(
            Cell(line.group),
            Cell(line.name, tip="\n".join(words(place, units) for place in line.where)),
            figure_cell(line, "needed", line.counted_in),
            figure_cell(line, "kept", line.counted_in),
            empty,
            empty,
            Cell(told, tip=explained(line, "saved")),
            *(empty,) * 3,
        ),
        marks=line.marks,
    )


def pack_words(sold_as: str, holds: float, counted_in: str, units: Units) -> str:
    """Return what one pack is: a stick of 8' 0", a box of 250, a piece."""
    if counted_in == "count" and holds == 1:
        return sold_as
    pack = QCoreApplication.translate("Tables", "{pack} of {quantity}")
    return pack.format(pack=sold_as, quantity=show(holds, counted_in, units))


def cost_totals(cost: Cost, currency: str, settled: bool) -> tuple[Total, ...]:
    """Return the sums below a takeoff; dots stand for what is not settled."""
    rows = (
        ("goods", QCoreApplication.translate("Tables", "Goods")),
        ("freight", QCoreApplication.translate("Tables", "Freight")),
        ("tax", QCoreApplication.translate("Tables", "Tax")),
        ("to_pay", QCoreApplication.translate("Tables", "To pay")),
        *([("saved", QCoreApplication.translate("Tables", "Stays, new"))] if cost.saved else []),
    )
    return tuple(
        Total(
            label,
            format_money(getattr(cost, name), currency) if settled else PENDING,
            explained(cost, name),
        )
        for name, label in rows
    )


def film_rows(session: Session) -> tuple[Row, ...]:
    """Return the sheets of the shown tunnel."""
    return tuple(_sheets(session))


def _sheets(session: Session) -> Iterator[Row]:
    names = {film.key: film.name for film in session.farm.catalogue.films}
    rolls = _roll_of_each(session)
    tunnel = session.tunnel.name
    for piece in session.tunnel_plan.chosen.cover.pieces:
        yield Row(
            key=("sheet", piece.mark),
            cells=(
                Cell(piece.name),
                Cell(piece.layer),
                Cell(names[piece.film]),
                figure_cell(piece, "width_m", "m"),
                figure_cell(piece, "length_m", "m"),
                figure_cell(piece, "area_m2", "m2"),
                figure_cell(piece, "mass_kg", "kg"),
                Cell(rolls.get((tunnel, piece.mark), ""), tip=_widths_told(session, piece.mark)),
            ),
            marks=(piece.mark, *_places_of(piece.mark)),
        )


def _widths_told(session: Session, mark: str) -> str | None:
    """Return how sure the stock widths of a sheet over the bows are; None of other sheets."""
    fit = next((s for s in session.tunnel_plan.fit.sheets if mark in s.marks), None)
    return None if fit is None else widths_words(fit, session.units)


def _places_of(mark: str) -> tuple[str, ...]:
    """Return the mark of the curtain or the end wall that a sheet makes."""
    match mark.split("/"):
        case ["piece", "curtain", _layer, side, number]:
            return (f"side/{side}/panel/{number}",)
        case ["piece", "end-wall", _layer, _side, number]:
            return (f"end/{number}",)
        case ["piece", "split-strip", _layer, side, number]:
            return (f"side/{side}/strip/{number}",)
    return ()


def _roll_of_each(session: Session) -> dict[tuple[str, str], str]:
    stays = QCoreApplication.translate("Tables", "stays")
    kept = session.tunnel_plan.chosen.sheets.kept
    said = {(session.tunnel.name, sheet.piece.mark): stays for sheet in kept}
    for number, roll in enumerate(session.plan.order.rolls, start=1):
        text = _roll_words(number, roll, session.units)
        for cut in roll.cuts:
            said[cut.tunnel, cut.piece] = text
    return said


def _roll_words(number: int, roll: Roll, units: Units) -> str:
    text = QCoreApplication.translate("Tables", "roll {number}: {width} × {length}")
    width, length = show(roll.width_m, "m", units), show(roll.length_m, "m", units)
    return text.format(number=number, width=width, length=length)


def film_totals(session: Session) -> tuple[Total, ...]:
    """Return the sums below the sheets."""
    cover, order = session.tunnel_plan.chosen.cover, session.tunnel_plan.chosen.order
    units = session.units
    rows: tuple[tuple[Explained, str, str, str], ...] = (
        (cover, "film_area_m2", "m2", QCoreApplication.translate("Tables", "Sheets")),
        (cover, "film_mass_kg", "kg", QCoreApplication.translate("Tables", "Mass")),
        (order, "film_bought_m2", "m2", QCoreApplication.translate("Tables", "Film bought")),
        (order, "waste_share", "share", QCoreApplication.translate("Tables", "Waste")),
    )
    return tuple(
        Total(label, show(getattr(thing, name), unit, units), explained(thing, name))
        for thing, name, unit, label in rows
    )


def roll_rows(session: Session) -> tuple[Row, ...]:
    """Return the rolls of the farm's order with their cuts, near misses, sheets without stock."""
    names = {film.key: film.name for film in session.farm.catalogue.films}
    rows = []
    for number, roll in enumerate(session.plan.order.rolls, start=1):
        for cut in roll.cuts:
            rows.append(_cut(number, roll, names[roll.film], cut))
    return (*rows, *_remarks(session))


def _cut(number: int, roll: Roll, film: str, cut: Cut) -> Row:
    return Row(
        key=("cut", number, cut.tunnel, cut.piece),
        cells=(
            Cell(number, "count"),
            Cell(cut.name),
            Cell(cut.width_m, "m"),
            Cell(cut.length_m, "m"),
            Cell(cut.along_m, "m"),
            Cell(cut.across_m, "m"),
            Cell(film),
            figure_cell(roll, "width_m", "m"),
            figure_cell(roll, "length_m", "m"),
            figure_cell(roll, "left_m", "m"),
            figure_cell(roll, "price", "money"),
            Cell(cut.tunnel),
        ),
        marks=(cut.piece, *_places_of(cut.piece)),
    )


def _remarks(session: Session) -> Iterator[Row]:
    units, currency = session.units, session.farm.money.currency
    order = session.plan.order
    near = QCoreApplication.translate(
        "Tables", "{over} over the width of {stock}; a narrower roll would save {saving}"
    )
    for miss in order.near_misses:
        text = near.format(
            over=show(miss.over_m, "m", units),
            stock=show(miss.stock_width_m, "m", units),
            saving=format_money(miss.saving, currency),
        )
        yield _remark(("near miss", miss.tunnel, miss.piece), miss.tunnel, miss.name, text)
    wide = QCoreApplication.translate("Tables", "no roll fits: {over} wider than {stock}")
    long = QCoreApplication.translate("Tables", "no roll fits: {over} longer than {stock}")
    for lost in order.unplaced:
        over_m = lost.over_width_m or lost.over_length_m
        text = (wide if lost.over_width_m else long).format(
            over=show(over_m, "m", units), stock=show(lost.stock_m, "m", units)
        )
        yield _remark(("no stock", lost.tunnel, lost.piece), lost.tunnel, lost.name, text)


def _remark(key: tuple[str, str, str], tunnel: str, name: str, text: str) -> Row:
    empty = Cell(None)
    return Row(
        key=key,
        cells=(empty, Cell(name), *(empty,) * 4, Cell(text), *(empty,) * 4, Cell(tunnel)),
        marks=(key[2], *_places_of(key[2])),
        sign="fault" if key[0] == "no stock" else "note",
    )


def roll_totals(session: Session) -> tuple[Total, ...]:
    """Return the sums below the rolls."""
    order, units, settled = session.plan.order, session.units, session.plan.settled
    rows = (
        ("film_bought_m2", "m2", QCoreApplication.translate("Tables", "Film bought")),
        ("film_used_m2", "m2", QCoreApplication.translate("Tables", "In sheets")),
        ("waste_share", "share", QCoreApplication.translate("Tables", "Waste")),
    )
    rolls = QCoreApplication.translate("Tables", "Rolls")
    count = show(len(order.rolls), "count", units) if settled else PENDING
    return (
        Total(rolls, count),
        *(
            Total(
                label,
                show(getattr(order, name), unit, units) if settled else PENDING,
                explained(order, name),
            )
            for name, unit, label in rows
        ),
    )
