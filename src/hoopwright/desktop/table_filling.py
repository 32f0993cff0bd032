"""How the cells fill with air: a picture and, for each cell, when it is full.

The picture stands on the plot library and is made when the tab is seen first; the course is worked
out then too, and never while a hand drags.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication, QEvent, Qt
from PySide6.QtWidgets import QLabel, QSplitter, QVBoxLayout

from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_air_rows import state_words
from hoopwright.desktop.table_order import figure_cell
from hoopwright.desktop.table_rows import Cell, Column, Row
from hoopwright.desktop.table_tab import Tab
from hoopwright.pressure import Filling
from hoopwright.pressure.holding import filling
from hoopwright.quantity.units import show

if TYPE_CHECKING:
    from hoopwright.desktop.filling_plot import FillingPlot

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "No."), 3, "count"),
    Column(QT_TRANSLATE_NOOP("Tables", "Cell"), 22),
    Column(QT_TRANSLATE_NOOP("Tables", "Filled after"), 6, "min"),
    Column(QT_TRANSLATE_NOOP("Tables", "Comes to"), 7, "Pa"),
    Column(QT_TRANSLATE_NOOP("Tables", "State"), 9),
)
PICTURE_SHARE, TABLE_SHARE = 1, 1


class FillingTab(Tab):
    """Pressure of each cell against the minutes since the blower started."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        self.course: Filling | None = None
        self.plot: FillingPlot | None = None
        super().__init__(session, title, COLUMNS, self._cells)
        self.said = QLabel()
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        self.bar.insertWidget(0, self.said)
        self.across = QSplitter(Qt.Orientation.Horizontal)
        self.across.setChildrenCollapsible(False)
        box = self.layout()
        assert isinstance(box, QVBoxLayout)
        box.insertWidget(0, self.across, 1)
        self.across.addWidget(self.view)
        self.view.row_chosen.connect(self.on_row_chosen)

    def refresh(self) -> None:
        """Show how the cells fill as they are now."""
        held = self.session.tunnel_plan.held
        # A drag shows the course of before; letting go works it out anew.
        if not self.session.dragging:
            self.course = filling(held)
        super().refresh()
        self._make_plot()
        self._show_plot()
        self.said.setText(self._told())

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette with the picture."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and self.plot is not None:
            self.plot.set_look(is_dark(self.palette()))

    def follow(self, mark: str) -> None:
        """Choose the row and the curve of a cell that was picked elsewhere."""
        super().follow(mark)
        rows = self.view.chosen_rows()
        if self.plot is not None:
            self.plot.choose(str(rows[0].key[1]) if rows else "")

    def on_row_chosen(self, row: Row) -> None:
        """Draw the curve of a row thick."""
        if self.plot is not None:
            self.plot.choose(str(row.key[1]))

    def _cells(self, session: Session) -> Sequence[Row]:
        places = {cell.mark: cell.place for cell in session.tunnel_plan.chosen.inflation.cells}
        return tuple(
            Row(
                key=("filling", air.mark),
                cells=(
                    Cell(n, "count"),
                    Cell(air.name),
                    figure_cell(air, "minutes", "min"),
                    figure_cell(air, "pressure_pa", "Pa"),
                    Cell(state_words(air.state)),
                ),
                marks=(air.mark, places[air.mark]),
            )
            for n, air in enumerate(session.tunnel_plan.held.cells, start=1)
        )

    def _make_plot(self) -> None:
        if self.plot is not None:
            return
        from hoopwright.desktop.filling_plot import FillingPlot

        self.plot = FillingPlot(self.font())
        self.plot.set_look(is_dark(self.palette()))
        self.across.insertWidget(0, self.plot)
        width = max(self.across.width(), PICTURE_SHARE + TABLE_SHARE)
        picture = width * PICTURE_SHARE // (PICTURE_SHARE + TABLE_SHARE)
        self.across.setSizes([picture, width - picture])

    def _show_plot(self) -> None:
        from hoopwright.desktop.filling_plot import Wanted

        assert self.plot is not None
        course, session = self.course, self.session
        self.plot.setVisible(course is not None)
        if course is None:
            return
        air = session.tunnel.air
        names = {cell.mark: cell.name for cell in session.tunnel_plan.held.cells}
        known = {cell: names.get(cell, "") for cell in course.cells}
        self.plot.dark = is_dark(self.palette())
        self.plot.show_filling(course, known, Wanted(air.low_pa, air.high_pa), session.units)
        self.plot.tell(QCoreApplication.translate("Tables", "Cells filling"), self._told())

    def _told(self) -> str:
        """Return the picture in words."""
        if self.course is None:
            words = "No air fills: choose a blower, and two layers to inflate."
            return QCoreApplication.translate("Tables", words)
        held = self.session.tunnel_plan.held
        if held.fill_min is None:
            words = "Not every cell fills: air leaks away as fast as it comes."
            return QCoreApplication.translate("Tables", words)
        words = QCoreApplication.translate("Tables", "All cells are filled after about {time}.")
        return words.format(time=show(held.fill_min, "min", self.session.units))
