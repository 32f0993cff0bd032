"""The sealed edges, one by one, and a picture of the picked sheet laid flat on the bench."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication, QEvent, Qt
from PySide6.QtWidgets import QSplitter, QVBoxLayout

from hoopwright.desktop.cranks import panel_of
from hoopwright.desktop.details_items import explained
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_air_rows import sum_figures
from hoopwright.desktop.table_order import figure_cell
from hoopwright.desktop.table_rows import Cell, Column, Row, Total
from hoopwright.desktop.table_tab import Tab
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_seals import draw_seals
from hoopwright.quantity.units import show

if TYPE_CHECKING:
    from hoopwright.desktop.seal_picture import SealPicture

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Sheet"), 19),
    Column(QT_TRANSLATE_NOOP("Tables", "Edge"), 7),
    Column(QT_TRANSLATE_NOOP("Tables", "Length"), 8, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Passes"), 4, "count"),
    Column(QT_TRANSLATE_NOOP("Tables", "Apart"), 6, "m_thin"),
    Column(QT_TRANSLATE_NOOP("Tables", "Seal"), 8, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Strokes"), 5, "count"),
    Column(QT_TRANSLATE_NOOP("Tables", "Bench"), 5, "min"),
)
EDGES: dict[str, object] = {
    "top": QT_TRANSLATE_NOOP("Tables", "top"),
    "bottom": QT_TRANSLATE_NOOP("Tables", "bottom"),
    "front": QT_TRANSLATE_NOOP("Tables", "front"),
    "back": QT_TRANSLATE_NOOP("Tables", "back"),
}
SUMS: tuple[tuple[str, str, object], ...] = (
    ("seal_m", "m", QT_TRANSLATE_NOOP("Tables", "Seals")),
    ("bench_min", "min", QT_TRANSLATE_NOOP("Tables", "Bench")),
    ("strokes", "count", QT_TRANSLATE_NOOP("Tables", "Strokes")),
    ("elements", "count", QT_TRANSLATE_NOOP("Tables", "Elements")),
)
PICTURE_SHARE, TABLE_SHARE = 3, 5


def seal_rows(session: Session) -> tuple[Row, ...]:
    """Return the sealed edges."""
    inflation = session.tunnel_plan.chosen.inflation
    names = {cell.place: cell.name for cell in inflation.cells}
    stays = QCoreApplication.translate("Tables", "{sheet}, stays with its seals")
    old = {
        seal.mark: stays.format(sheet=names.get(seal.mark, ""))
        for seal in inflation.seals
        if seal.there
    }
    return tuple(
        Row(
            key=("seal", seal.mark, seal.edge, n),
            cells=(
                Cell(old.get(seal.mark, names.get(seal.mark, ""))),
                Cell(QCoreApplication.translate("Tables", str(EDGES[seal.edge]))),
                figure_cell(seal, "length_m", "m"),
                figure_cell(seal, "passes", "count"),
                figure_cell(seal, "spacing_m", "m_thin"),
                figure_cell(seal, "total_m", "m"),
                figure_cell(seal, "strokes", "count"),
                figure_cell(seal, "minutes", "min"),
            ),
            marks=(seal.mark,),
        )
        for n, seal in enumerate(inflation.seals)
    )


def seal_totals(session: Session) -> tuple[Total, ...]:
    """Return the sums of all seals, and what they are asked to hold."""
    held, units = session.tunnel_plan.held, session.units
    need = QCoreApplication.translate("Tables", "Seals must hold")
    pull = show(held.seal_need_n_m, "N/m", units)
    asked = [Total(need, pull, explained(held, "seal_need_n_m"))]
    if held.seal_share is not None:
        share = QCoreApplication.translate("Tables", "of the coupon")
        said = show(held.seal_share, "share", units)
        asked.append(Total(share, said, explained(held, "seal_share")))
    return (*sum_figures(session.tunnel_plan.chosen.inflation, SUMS, session), *asked)


def sheet_in_hand(session: Session, mark: str) -> str:
    """Return the mark of the sealed sheet that a mark belongs to, else of the first one, or ""."""
    sealed = [seal.mark for seal in session.tunnel_plan.chosen.inflation.seals]
    wanted = (panel_of(mark) or mark).removeprefix("cell/")
    return wanted if wanted in sealed else next(iter(sealed), "")


class SealsTab(Tab):
    """Edges with their seals, and the sheet in hand laid flat."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        self.picture: SealPicture | None = None
        self.sheet = ""
        super().__init__(session, title, COLUMNS, self._edges, seal_totals)
        self.across = QSplitter(Qt.Orientation.Horizontal)
        self.across.setChildrenCollapsible(False)
        box = self.layout()
        assert isinstance(box, QVBoxLayout)
        box.insertWidget(0, self.across, 1)
        self.across.addWidget(self.view)

    def _edges(self, session: Session) -> Sequence[Row]:
        return seal_rows(session)

    def refresh(self) -> None:
        """Show the seals as they are now."""
        super().refresh()
        self._show_sheet(self.session.mark)

    def follow(self, mark: str) -> None:
        """Choose the edges of a sheet that was picked, and lay it flat."""
        super().follow(mark.removeprefix("cell/"))
        self._show_sheet(mark)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette with the picture."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and self.picture is not None:
            self._show_sheet(self.sheet)

    def _show_sheet(self, mark: str) -> None:
        session = self.session
        self.sheet = sheet_in_hand(session, mark)
        if self.sheet and self.picture is None:
            self._make_picture()
        if self.picture is None:
            return
        self.picture.setVisible(bool(self.sheet))
        if self.sheet:
            subject = Subject(session.tunnel, session.tunnel_plan, session.units)
            self.picture.show_view(draw_seals(subject, self.sheet), is_dark(self.palette()))

    def _make_picture(self) -> None:
        from hoopwright.desktop.seal_picture import SealPicture

        self.picture = SealPicture(self.font())
        self.across.insertWidget(0, self.picture)
        width = max(self.across.width(), PICTURE_SHARE + TABLE_SHARE)
        picture = width * PICTURE_SHARE // (PICTURE_SHARE + TABLE_SHARE)
        self.across.setSizes([picture, width - picture])
