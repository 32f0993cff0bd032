"""Rows of how the curtains are worked."""

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

from hoopwright.curtain import CurtainWork
from hoopwright.desktop.details_items import explained
from hoopwright.desktop.details_words import choice_words
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_order import figure_cell
from hoopwright.desktop.table_rows import Cell, Column, Row
from hoopwright.farm.side import SideKind

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
KINDS: dict[SideKind, object] = {
    "roll_up": QT_TRANSLATE_NOOP("Tables", "roll-up"),
    "drop_down": QT_TRANSLATE_NOOP("Tables", "drop-down"),
    "woven": QT_TRANSLATE_NOOP("Tables", "woven"),
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
