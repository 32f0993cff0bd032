"""The picture of cells filling: pressure of each against minutes since the blower started."""

from bisect import bisect_left
from dataclasses import dataclass

import pyqtgraph as pg
from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QWidget

from hoopwright.desktop.palette import Colour, clear, colour
from hoopwright.desktop.plot import Plot
from hoopwright.pressure import Filling
from hoopwright.quantity.factors import MINUTE_S
from hoopwright.quantity.units import Units, show, to_display

STEPS = 40
LINE_PX, CHOSEN_PX, EDGE_PX = 1.8, 3.4, 1.2
BAND_SHARE = 0.14
DASHES: tuple[tuple[float, ...], ...] = ((), (6, 3), (2, 2), (8, 3, 2, 3))
KINDS: dict[str, Colour] = {"roof": "roof", "side": "curtain", "end": "end wall"}


@dataclass(frozen=True, slots=True)
class Wanted:
    """The pressures that are wanted in every cell.

    Attributes:
        low_pa: Least, Pa.
        high_pa: Greatest, Pa.
    """

    low_pa: float
    high_pa: float


class FillingPlot(Plot):
    """A curve for each cell, its number at its end, and the window of pressures as a band."""

    def __init__(self, font: QFont, parent: QWidget | None = None) -> None:
        """Make an empty picture."""
        super().__init__(font, parent)
        self.curves: list[pg.PlotDataItem] = []
        self.numbers: list[pg.TextItem] = []
        self.chosen = ""
        self._cells: tuple[str, ...] = ()
        self.band = pg.LinearRegionItem(orientation="horizontal", movable=False)
        self.band_words = pg.TextItem(anchor=(0, 1))
        for item in (self.band, self.band_words):
            self.addItem(item, ignoreBounds=True)

    def set_look(self, dark: bool) -> None:
        """Take the colours of a light or a dark window."""
        super().set_look(dark)
        self.band.setBrush(clear("good", dark, BAND_SHARE))
        for line in self.band.lines:
            line.setPen(pg.mkPen(colour("good", dark), width=EDGE_PX, dash=(4, 3)))
        self.band_words.setColor(colour("good", dark))
        for number in self.numbers:
            number.setColor(colour("text", dark))
        self._draw_lines()

    def show_filling(
        self, filling: Filling, names: dict[str, str], wanted: Wanted, units: Units
    ) -> None:
        """Show how the cells fill.

        Args:
            filling: The course, moment by moment.
            names: Name of each cell by its mark.
            wanted: The pressures wanted.
            units: The reader's units.
        """
        self._cells = filling.cells
        self._make_curves(len(filling.cells))
        minutes = [time_s / MINUTE_S for time_s in filling.times_s]
        most = to_display(wanted.high_pa, "Pa", units)
        for at, curve in enumerate(self.curves):
            shown = [to_display(row[at], "Pa", units) for row in filling.pressures_pa]
            curve.setData(minutes, shown)
            # Cells often fill alike; their numbers stand apart along the curves.
            spot = (at + 1) * (len(minutes) - 1) // (len(self.curves) + 1)
            self.numbers[at].setPos(minutes[spot], shown[spot])
            most = max(most, *shown)
        self.fit(minutes, [0.0], most)
        self._show_band(wanted, units)
        self._set_moments(filling, names, units)
        pressure = QCoreApplication.translate("Tables", "Pressure")
        since = QCoreApplication.translate("Tables", "Since the blower started")
        self.label("left", pressure, "Pa", units)
        self.label("bottom", since, "min", units)
        self.set_look(self.dark)

    def choose(self, cell: str) -> None:
        """Draw the curve of one cell thick."""
        self.chosen = cell
        self._draw_lines()

    def _make_curves(self, count: int) -> None:
        for item in (*self.curves, *self.numbers):
            self.removeItem(item)
        self.curves = [self.plot(antialias=True) for _n in range(count)]
        self.numbers = [pg.TextItem(str(n + 1), anchor=(0.5, 1)) for n in range(count)]
        for number in self.numbers:
            number.setFont(self.small)
            self.addItem(number, ignoreBounds=True)

    def _draw_lines(self) -> None:
        for at, (cell, curve) in enumerate(zip(self._cells, self.curves, strict=True)):
            chosen = cell == self.chosen
            ink: Colour = "selected" if chosen else KINDS[cell.split("/")[1]]
            pen = pg.mkPen(colour(ink, self.dark), width=CHOSEN_PX if chosen else LINE_PX)
            dash = DASHES[at % len(DASHES)]
            if dash:
                pen.setDashPattern(dash)
            curve.setPen(pen)

    def _show_band(self, wanted: Wanted, units: Units) -> None:
        low, high = (to_display(x, "Pa", units) for x in (wanted.low_pa, wanted.high_pa))
        self.band.setRegion((low, high))
        self.band_words.setText(QCoreApplication.translate("Tables", "pressures wanted"))
        self.band_words.setFont(self.small)
        self.band_words.setPos(0.0, low)

    def _set_moments(self, filling: Filling, names: dict[str, str], units: Units) -> None:
        """Take even moments of the course as the steps that keys go along."""
        last_s = filling.times_s[-1]
        spots = [bisect_left(filling.times_s, last_s * n / STEPS) for n in range(STEPS + 1)]
        words = QCoreApplication.translate("Tables", "After {time}: {pressures}")
        texts = []
        for spot in spots:
            row = zip(filling.cells, filling.pressures_pa[spot], strict=True)
            said = ", ".join(f"{names[cell]} {show(pa, 'Pa', units)}" for cell, pa in row)
            time = show(filling.times_s[spot] / MINUTE_S, "min", units)
            texts.append(words.format(time=time, pressures=said))
        self.set_steps([filling.times_s[spot] / MINUTE_S for spot in spots], texts)
