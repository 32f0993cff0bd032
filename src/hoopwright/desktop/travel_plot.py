"""The picture of one figure of a curtain against the height of its bar."""

from collections.abc import Sequence

import pyqtgraph as pg
from PySide6.QtCore import QCoreApplication, Qt, Signal
from PySide6.QtGui import QFont, QKeyEvent, QPen
from PySide6.QtWidgets import QWidget

from hoopwright.curtain import Course
from hoopwright.desktop.palette import colour, drawing_font
from hoopwright.desktop.travel_curves import PLACES, Curve, place_words
from hoopwright.quantity.units import Units, show, to_display, unit_label

HEAD_ROOM, SIDE_ROOM = 0.16, 0.06
LEAST_SIZE = (300, 100)
LINE_PX, LIMIT_PX = 2.2, 1.6
LIMIT_DASH = (6, 4)
SIGNS = {0: "s", 1: "d", 2: "t1"}
SIGN_PX = 9
STEP_KEYS: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
FAR_STEPS = 5


class TravelPlot(pg.PlotWidget):  # type: ignore[misc]  # untyped library
    """A curve, its limit, and the named places on it.

    Left and right go along the curve, with Shift by five steps; Home and End go to its ends.

    Signals:
        step_wanted(int step): When a key went to another step of the way.
    """

    step_wanted = Signal(int)

    def __init__(self, font: QFont, parent: QWidget | None = None) -> None:
        """Make an empty picture."""
        super().__init__(parent, background=None, enableMenu=False)
        self._font = drawing_font(font)
        self._dark = False
        self._spots: list[tuple[float, float]] = []
        self._texts: list[str] = []
        self.step = 0
        self.setMinimumSize(*LEAST_SIZE)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseEnabled(x=False, y=False)
        self.hideButtons()
        # The library makes a menu that nobody owns, even where none is wanted.
        menu = self.getPlotItem().ctrlMenu
        menu.setParent(self, menu.windowFlags())
        self.getPlotItem().showGrid(x=True, y=True, alpha=0.18)
        self.curve = self.plot(antialias=True)
        self.limit = pg.InfiniteLine(angle=0)
        self.limit_words = pg.TextItem(anchor=(0, 1))
        self.signs = pg.ScatterPlotItem(size=SIGN_PX)
        self.here = pg.InfiniteLine(angle=90)
        self.here.hide()
        self.names = [pg.TextItem(anchor=(0.5, 1)) for _place in PLACES]
        for item in (self.limit, self.limit_words, self.signs, self.here, *self.names):
            self.addItem(item, ignoreBounds=True)
        for edge in ("left", "bottom"):
            axis = self.getAxis(edge)
            axis.enableAutoSIPrefix(False)
            axis.setStyle(tickFont=self._font)

    def set_look(self, dark: bool) -> None:
        """Take the colours of a light or a dark window."""
        self._dark = dark
        self.setBackground(colour("paper", dark))
        ink, text, warn = (colour(name, dark) for name in ("hardware", "text", "fault"))
        self.curve.setPen(QPen(ink, LINE_PX))
        self.curve.opts["pen"].setCosmetic(True)
        self.limit.setPen(pg.mkPen(warn, width=LIMIT_PX, dash=LIMIT_DASH))
        self.here.setPen(pg.mkPen(colour("selected", dark), width=1.5, dash=(2, 3)))
        self.signs.setPen(pg.mkPen(colour("paper", dark), width=1))
        self.signs.setBrush(pg.mkBrush(text))
        self.limit_words.setColor(warn)
        for name in self.names:
            name.setColor(text)
        for edge in ("left", "bottom"):
            axis = self.getAxis(edge)
            axis.setPen(pg.mkPen(colour("muted", dark)))
            axis.setTextPen(pg.mkPen(text))

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
        self._texts = [
            self._spot_words(height_m, value, curve, units)
            for height_m, value in zip(way.heights_m, values, strict=True)
        ]
        self.curve.setData(heights, shown)
        most = self._show_limit(curve, limit, units, max(shown), min(heights))
        self._fit(heights, shown, most)
        self._show_places()
        self._label(curve, units)
        self.here.hide()
        self.setAccessibleName(QCoreApplication.translate("Tables", str(curve.title)))
        self.setAccessibleDescription(told)
        self.setToolTip(told)

    def mark_step(self, step: int) -> None:
        """Mark one step of the way."""
        if 0 <= step < len(self._spots):
            self.step = step
            self.here.setValue(self._spots[step][0])
            self.here.show()
            self.setAccessibleDescription(self._texts[step])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go along the curve."""
        last = len(self._spots) - 1
        stride = FAR_STEPS if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
        if event.key() in STEP_KEYS:
            step = self.step + STEP_KEYS[event.key()] * stride
        elif event.key() in (Qt.Key.Key_Home, Qt.Key.Key_End):
            step = 0 if event.key() == Qt.Key.Key_Home else last
        else:
            event.ignore()
            return
        self.mark_step(min(last, max(0, step)))
        self.step_wanted.emit(self.step)

    def wheelEvent(self, event: object) -> None:
        """Leave the wheel to what lies around; the picture is always whole."""
        event.ignore()  # type: ignore[attr-defined]  # untyped library

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
        self.limit_words.setFont(self._font)
        self.limit_words.setPos(left, shown)
        return max(most, shown)

    def _fit(self, heights: Sequence[float], shown: Sequence[float], most: float) -> None:
        low, high = min(heights), max(heights)
        side = max(high - low, 1e-6) * SIDE_ROOM
        floor = min(0.0, *shown)
        top = most + max(most - floor, 1e-9) * HEAD_ROOM
        self.setRange(xRange=(low - side, high + side), yRange=(floor, top), padding=0)

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
            name.setFont(self._font)
            name.setPos(*spot)

    def _label(self, curve: Curve, units: Units) -> None:
        words = QCoreApplication.translate("Tables", "{title}, {unit}")
        title = QCoreApplication.translate("Tables", str(curve.title))
        height = QCoreApplication.translate("Tables", "Height of the bar")
        for edge, name, unit in (("left", title, curve.unit), ("bottom", height, "m")):
            text = words.format(title=name, unit=unit_label(unit, units))
            self.setLabel(edge, text, color=colour("text", self._dark).name())

    def _spot_words(self, height_m: float, value: float, curve: Curve, units: Units) -> str:
        words = QCoreApplication.translate("Tables", "{figure} with the bar at {height}")
        return words.format(
            figure=show(value, curve.unit, units), height=show(height_m, "m", units)
        )
