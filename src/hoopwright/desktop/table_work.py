"""Rows of how the curtains are worked and how the skin is filled with air."""

from collections.abc import Iterator

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.curtain import CurtainWork
from hoopwright.desktop.details_items import explained
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_order import figure_cell
from hoopwright.desktop.table_rows import Cell, Column, Row, Total
from hoopwright.farm.side import SideKind
from hoopwright.quantity.units import show

CURTAIN_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Side"), 9),
    Column(QT_TRANSLATE_NOOP("Tables", "No."), 2, "count"),
    Column(QT_TRANSLATE_NOOP("Tables", "Kind"), 9),
    Column(QT_TRANSLATE_NOOP("Tables", "Crank at"), 8),
    Column(QT_TRANSLATE_NOOP("Tables", "Length"), 8, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Longest"), 8, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "limited by"), 12),
    Column(QT_TRANSLATE_NOOP("Tables", "Force shut"), 5, "N"),
    Column(QT_TRANSLATE_NOOP("Tables", "half way"), 5, "N"),
    Column(QT_TRANSLATE_NOOP("Tables", "open"), 5, "N"),
    Column(QT_TRANSLATE_NOOP("Tables", "Trailing"), 5, "m_thin"),
    Column(QT_TRANSLATE_NOOP("Tables", "Time"), 4, "min"),
    Column(QT_TRANSLATE_NOOP("Tables", "Opening"), 5, "m2"),
)
AIR_COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Kind"), 7),
    Column(QT_TRANSLATE_NOOP("Tables", "Place"), 22),
    Column(QT_TRANSLATE_NOOP("Tables", "Edge or way"), 30),
    Column(QT_TRANSLATE_NOOP("Tables", "From"), 10, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "To"), 10, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Length"), 10, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Passes"), 6, "count"),
    Column(QT_TRANSLATE_NOOP("Tables", "Seal"), 10, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Bench"), 8, "min"),
    Column(QT_TRANSLATE_NOOP("Tables", "Air"), 8, "m3"),
)
KINDS: dict[SideKind, object] = {
    "roll_up": QT_TRANSLATE_NOOP("Tables", "roll-up"),
    "drop_down": QT_TRANSLATE_NOOP("Tables", "drop-down"),
    "woven": QT_TRANSLATE_NOOP("Tables", "woven"),
}
EDGES: dict[str, object] = {
    "top": QT_TRANSLATE_NOOP("Tables", "top"),
    "bottom": QT_TRANSLATE_NOOP("Tables", "bottom"),
    "front": QT_TRANSLATE_NOOP("Tables", "front"),
    "back": QT_TRANSLATE_NOOP("Tables", "back"),
}


def curtain_rows(session: Session) -> tuple[Row, ...]:
    """Return the curtains of the shown tunnel."""
    return tuple(_curtain(session, work) for work in session.tunnel_plan.chosen.curtains)


def _curtain(session: Session, work: CurtainWork) -> Row:
    side = session.tunnel.sides[work.side]
    forces = explained(work, "hand_forces_n")
    shut, half_way, high = work.hand_forces_n
    return Row(
        key=("curtain", work.mark),
        cells=(
            Cell(side.name),
            Cell(work.index + 1, "count"),
            Cell(QCoreApplication.translate("Tables", str(KINDS[work.kind]))),
            Cell(choice_words(work.cranked)),
            figure_cell(work, "length_m", "m"),
            figure_cell(work, "longest_m", "m"),
            Cell(choice_words(work.bound_by), tip=explained(work, "longest_m")),
            Cell(shut, "N", forces),
            Cell(half_way, "N", forces),
            Cell(high, "N", forces),
            figure_cell(work, "trailing_m", "m_thin"),
            figure_cell(work, "minutes", "min"),
            figure_cell(work, "opening_m2", "m2"),
        ),
        marks=(work.mark,),
    )


def air_rows(session: Session) -> tuple[Row, ...]:
    """Return cells, seals and jumpers of the shown tunnel."""
    return (*_cells(session), *_jumpers(session), *_seals(session))


def _cells(session: Session) -> Iterator[Row]:
    kind = QCoreApplication.translate("Tables", "cell")
    fed = QCoreApplication.translate("Tables", "fed by the blower")
    unfed = QCoreApplication.translate("Tables", "fed through a jumper")
    for cell in session.tunnel_plan.chosen.inflation.cells:
        yield Row(
            key=("cell", cell.mark),
            cells=(
                Cell(kind),
                Cell(cell.name),
                Cell(fed if cell.fed else unfed),
                figure_cell(cell, "from_m", "m"),
                figure_cell(cell, "to_m", "m"),
                *(Cell(None),) * 4,
                figure_cell(cell, "volume_m3", "m3"),
            ),
            marks=(cell.mark, cell.place),
        )


def _jumpers(session: Session) -> Iterator[Row]:
    inflation = session.tunnel_plan.chosen.inflation
    names = {cell.mark: cell.name for cell in inflation.cells}
    kind = QCoreApplication.translate("Tables", "jumper")
    ridge = QCoreApplication.translate("Tables", "over the ridge")
    way = QCoreApplication.translate("Tables", "{first} to {last}")
    for jumper in inflation.jumpers:
        first, last = names.get(jumper.from_cell, ""), names.get(jumper.to_cell, "")
        side = ridge if jumper.side is None else session.tunnel.sides[jumper.side].name
        yield Row(
            key=("jumper", jumper.mark),
            cells=(
                Cell(kind),
                Cell(side),
                Cell(way.format(first=first, last=last)),
                Cell(jumper.at_m, "m"),
                *(Cell(None),) * 6,
            ),
            marks=(jumper.mark,),
        )


def _seals(session: Session) -> Iterator[Row]:
    kind = QCoreApplication.translate("Tables", "seal")
    chosen = session.tunnel_plan.chosen
    places = {cell.place: cell.name for cell in chosen.inflation.cells}
    for seal in chosen.inflation.seals:
        yield Row(
            key=("seal", seal.mark, seal.edge),
            cells=(
                Cell(kind),
                Cell(places.get(seal.mark, seal.mark)),
                Cell(QCoreApplication.translate("Tables", str(EDGES[seal.edge]))),
                *(Cell(None),) * 2,
                figure_cell(seal, "length_m", "m"),
                figure_cell(seal, "passes", "count"),
                figure_cell(seal, "total_m", "m"),
                figure_cell(seal, "minutes", "min"),
                Cell(None),
            ),
            marks=(seal.mark,),
        )


def air_totals(session: Session) -> tuple[Total, ...]:
    """Return the sums below seals, cells and jumpers."""
    inflation, units = session.tunnel_plan.chosen.inflation, session.units
    rows = (
        ("seal_m", "m", QCoreApplication.translate("Tables", "Seals")),
        ("bench_min", "min", QCoreApplication.translate("Tables", "Bench")),
        ("volume_m3", "m3", QCoreApplication.translate("Tables", "Air")),
    )
    jumpers = QCoreApplication.translate("Tables", "Jumpers")
    return (
        *(
            Total(label, show(getattr(inflation, name), unit, units), explained(inflation, name))
            for name, unit, label in rows
        ),
        Total(jumpers, show(len(inflation.jumpers), "count", units)),
    )
