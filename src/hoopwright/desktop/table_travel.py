"""A curtain on its way from shut to open: a picture and the same numbers in a table.

The picture stands on the plot library and is made when the tab is seen first.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication, QEvent, Qt
from PySide6.QtWidgets import QComboBox, QLabel, QSplitter, QVBoxLayout

from hoopwright.checks import Variant
from hoopwright.curtain import Course, CurtainWork, course
from hoopwright.desktop.cranks import panel_of
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_coverings import hardest_crank
from hoopwright.desktop.table_rows import Cell, Column, Row
from hoopwright.desktop.table_tab import Tab
from hoopwright.desktop.tags import place_name
from hoopwright.desktop.travel_curves import CURVES, STEPS, Curve, limit_of, place_words
from hoopwright.quantity.units import show

if TYPE_CHECKING:
    from hoopwright.desktop.travel_plot import TravelPlot

COLUMNS = (
    Column(QT_TRANSLATE_NOOP("Tables", "Place"), 7),
    Column(QT_TRANSLATE_NOOP("Tables", "Height"), 8, "m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Force"), 6, "N"),
    Column(QT_TRANSLATE_NOOP("Tables", "Torque"), 7, "N m"),
    Column(QT_TRANSLATE_NOOP("Tables", "Trailing"), 7, "m_thin"),
    Column(QT_TRANSLATE_NOOP("Tables", "Joint"), 5, "rad"),
    Column(QT_TRANSLATE_NOOP("Tables", "Opening"), 6, "m2"),
    Column(QT_TRANSLATE_NOOP("Tables", "Time"), 5, "min"),
)
PICTURE_SHARE, TABLE_SHARE = 3, 5


def curtain_in_hand(chosen: Variant, mark: str) -> CurtainWork | None:
    """Return the curtain that a mark belongs to, else the one that is hardest to crank."""
    wanted = panel_of(mark)
    picked = next((work for work in chosen.curtains if work.mark == wanted), None)
    return picked or hardest_crank(chosen)


def travel_rows(way: Course, mark: str) -> tuple[Row, ...]:
    """Return the steps of a curtain's way."""
    jointed, trails = any(way.joint_angles_rad), any(way.trailing_m)
    return tuple(
        Row(
            key=("step", n),
            cells=(
                Cell(place_words(n)),
                Cell(way.heights_m[n], "m"),
                Cell(way.hand_forces_n[n], "N"),
                Cell(way.torques_nm[n], "N m"),
                Cell(way.trailing_m[n] if trails else None, "m_thin"),
                Cell(way.joint_angles_rad[n] if jointed else None, "rad"),
                Cell(way.openings_m2[n], "m2"),
                Cell(way.minutes[n], "min"),
            ),
            marks=(mark,),
        )
        for n in range(len(way.shares))
    )


class TravelTab(Tab):
    """The way of the picked curtain, else of the hardest one."""

    def __init__(self, session: Session, title: str) -> None:
        """Make an empty tab."""
        self.way: Course | None = None
        self.work: CurtainWork | None = None
        self.plot: TravelPlot | None = None
        super().__init__(session, title, COLUMNS, self._steps)
        self.what = QComboBox()
        self.what.setAccessibleName(QCoreApplication.translate("Tables", "Figure of the picture"))
        for curve in CURVES:
            words = QCoreApplication.translate("Tables", str(curve.title))
            self.what.addItem(words, curve)
        self.what.activated.connect(lambda _at: self._show_plot())
        self.name = QLabel()
        self.bar.insertWidget(0, self.what)
        self.bar.insertWidget(1, self.name)
        self.across = QSplitter(Qt.Orientation.Horizontal)
        self.across.setChildrenCollapsible(False)
        box = self.layout()
        assert isinstance(box, QVBoxLayout)
        box.insertWidget(0, self.across, 1)
        self.across.addWidget(self.view)
        self.view.row_chosen.connect(self.on_row_chosen)

    def refresh(self) -> None:
        """Show the way of the curtain in hand as it is now."""
        session = self.session
        self.work = curtain_in_hand(session.tunnel_plan.chosen, session.mark)
        self.way = None if self.work is None else course(self.work, STEPS)
        super().refresh()
        self._make_plot()
        nothing = QCoreApplication.translate("Tables", "No side of this tunnel has curtains.")
        name = nothing
        if self.work is not None:
            place = (session.tunnel, session.tunnel_plan, session.units)
            name = place_name(self.work.mark, *place)
        self.name.setText(name)
        self._show_plot()

    def follow(self, mark: str) -> None:
        """Show another curtain when one is picked."""
        work = curtain_in_hand(self.session.tunnel_plan.chosen, mark)
        if work is not self.work:
            self.view.choose([], reveal=False)
            self.refresh()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the window's palette with the picture."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and self.plot is not None:
            self._show_plot()

    def on_row_chosen(self, row: Row) -> None:
        """Mark the place of a row in the picture."""
        if self.plot is not None and isinstance(row.key[1], int):
            self.plot.mark_step(row.key[1])

    def on_step_wanted(self, step: int) -> None:
        """Choose the row of a place that was gone to in the picture."""
        self.view.choose([("step", step)], reveal=True)

    def _steps(self, _session: Session) -> Sequence[Row]:
        if self.way is None or self.work is None:
            return ()
        return travel_rows(self.way, self.work.mark)

    def _make_plot(self) -> None:
        if self.plot is not None:
            return
        from hoopwright.desktop.travel_plot import TravelPlot

        self.plot = TravelPlot(self.font())
        self.plot.step_wanted.connect(self.on_step_wanted)
        self.across.insertWidget(0, self.plot)
        width = max(self.across.width(), PICTURE_SHARE + TABLE_SHARE)
        picture = width * PICTURE_SHARE // (PICTURE_SHARE + TABLE_SHARE)
        self.across.setSizes([picture, width - picture])

    def _show_plot(self) -> None:
        assert self.plot is not None
        self.plot.setVisible(self.way is not None)
        if self.way is None or self.work is None:
            return
        curve: Curve = self.what.currentData()
        units = self.session.units
        limit = limit_of(curve, self.work, self.session)
        self.plot.set_look(is_dark(self.palette()))
        self.plot.show_curve(self.way, curve, limit, units, self._told(curve, limit))

    def _told(self, curve: Curve, limit: float | None) -> str:
        """Return the picture in words, for reading aloud."""
        assert self.way is not None
        values: tuple[float, ...] = getattr(self.way, curve.key)
        units = self.session.units
        said = [show(value, curve.unit, units) for value in (values[0], values[-1], max(values))]
        height = show(self.way.heights_m[values.index(max(values))], "m", units)
        words = QCoreApplication.translate(
            "Tables",
            "{title} of {curtain} against the height of the bar: {shut} shut, {open} open, at "
            "most {most} with the bar at {height}.",
        )
        title = QCoreApplication.translate("Tables", str(curve.title))
        told = words.format(
            title=title,
            curtain=self.name.text(),
            shut=said[0],
            open=said[1],
            most=said[2],
            height=height,
        )
        if limit is None:
            return told
        also = QCoreApplication.translate("Tables", "{told} The limit is {limit}.")
        return also.format(told=told, limit=show(limit, curve.unit, units))
