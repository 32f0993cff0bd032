"""The picture of one figure of a curtain against the height of its bar."""

import pyqtgraph as pg
from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QFont, QPen
from PySide6.QtWidgets import QWidget

from hoopwright.curtain import Course
from hoopwright.desktop.palette import colour
from hoopwright.desktop.plot import Plot
from hoopwright.desktop.travel_curves import PLACES, Curve, place_words
from hoopwright.quantity.units import Units, show, to_display

LINE_PX, LIMIT_PX = 2.2, 1.6
LIMIT_DASH = (6, 4)
SIGNS = {0: "s", 1: "d", 2: "t1"}
SIGN_PX = 9


class TravelPlot(Plot):
    """A curve, its limit, and the named places on it."""

    def __init__(self, font: QFont, parent: QWidget | None = None) -> None:
        """Make an empty picture."""
        super().__init__(font, parent)
        self._spots: list[tuple[float, float]] = []
        self.curve = self.plot(antialias=True)
        self.limit = pg.InfiniteLine(angle=0)
        self.limit_words = pg.TextItem(anchor=(0, 1))
        self.signs = pg.ScatterPlotItem(size=SIGN_PX)
        self.names = [pg.TextItem(anchor=(0.5, 1)) for _place in PLACES]
        for item in (self.limit, self.limit_words, self.signs, *self.names):
            self.addItem(item, ignoreBounds=True)

    def set_look(self, dark: bool) -> None:
        """Take the colours of a light or a dark window."""
        super().set_look(dark)
        ink, text, warn = (colour(name, dark) for name in ("hardware", "text", "fault"))
        self.curve.setPen(QPen(ink, LINE_PX))
        self.curve.opts["pen"].setCosmetic(True)
        self.limit.setPen(pg.mkPen(warn, width=LIMIT_PX, dash=LIMIT_DASH))
        self.signs.setPen(pg.mkPen(colour("paper", dark), width=1))
        self.signs.setBrush(pg.mkBrush(text))
        self.limit_words.setColor(warn)
        for name in self.names:
            name.setColor(text)

    def show_curve(
        self, way: Course, curve: Curve, limit: float | None, units: Units, told: str
    ) -> None:
        """Show one figure of a way.

        Args:
            way: The way from shut to open.
            curve: Which figure of it.
            limit: Its limit in the unit of the figure, or None.
            units: The reader's units.
            told: The picture in words.
        """
        values: tuple[float, ...] = getattr(way, curve.key)
        heights = [to_display(height_m, "m", units) for height_m in way.heights_m]
        shown = [to_display(value, curve.unit, units) for value in values]
        self._spots = list(zip(heights, shown, strict=True))
        texts = [
            self._spot_words(height_m, value, curve, units)
            for height_m, value in zip(way.heights_m, values, strict=True)
        ]
        self.set_steps(heights, texts)
        self.curve.setData(heights, shown)
        most = self._show_limit(curve, limit, units, max(shown), min(heights))
        self.fit(heights, shown, most)
        self._show_places()
        title = QCoreApplication.translate("Tables", str(curve.title))
        self.label("left", title, curve.unit, units)
        self.label("bottom", QCoreApplication.translate("Tables", "Height of the bar"), "m", units)
        self.tell(title, told)

    def _show_limit(
        self, curve: Curve, limit: float | None, units: Units, most: float, left: float
    ) -> float:
        """Show the limit; return the highest value to make room for."""
        for item in (self.limit, self.limit_words):
            item.setVisible(limit is not None)
        if limit is None:
            return most
        shown = to_display(limit, curve.unit, units)
        self.limit.setValue(shown)
        words = QCoreApplication.translate("Tables", "{name}, {limit}")
        name = QCoreApplication.translate("Tables", str(curve.limit))
        self.limit_words.setText(words.format(name=name, limit=show(limit, curve.unit, units)))
        self.limit_words.setFont(self.small)
        self.limit_words.setPos(left, shown)
        return max(most, shown)

    def _show_places(self) -> None:
        """Mark the named places; their names stand off the curve and inside the picture."""
        spots = [{"pos": self._spots[n], "symbol": SIGNS[i]} for i, n in enumerate(PLACES)]
        self.signs.setData(spots)
        ends = sorted((self._spots[0], self._spots[-1]))
        rises = ends[0][1] <= ends[1][1]
        for name, step in zip(self.names, PLACES, strict=True):
            spot = self._spots[step]
            right = spot == ends[1] or (spot != ends[0] and rises)
            name.setAnchor((1.0 if right else 0.0, 1.0))
            name.setText(place_words(step))
            name.setFont(self.small)
            name.setPos(*spot)

    def _spot_words(self, height_m: float, value: float, curve: Curve, units: Units) -> str:
        words = QCoreApplication.translate("Tables", "{figure} with the bar at {height}")
        return words.format(
            figure=show(value, curve.unit, units), height=show(height_m, "m", units)
        )
