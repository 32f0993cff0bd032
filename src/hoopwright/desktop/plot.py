"""What the pictures with curves have in common: axes, colours, a place to mark, keys along it.

They stand on the plot library, so a module that shows one imports this when it is seen first.
"""

from collections.abc import Sequence

import pyqtgraph as pg
from PySide6.QtCore import QCoreApplication, Qt, Signal
from PySide6.QtGui import QFont, QKeyEvent
from PySide6.QtWidgets import QWidget

from hoopwright.desktop.palette import colour, drawing_font
from hoopwright.quantity.units import Units, unit_label

HEAD_ROOM, SIDE_ROOM = 0.16, 0.06
LEAST_SIZE = (300, 100)
STEP_KEYS: dict[int, int] = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
FAR_STEPS = 5
GRID_SHARE = 0.18


class Plot(pg.PlotWidget):  # type: ignore[misc]  # untyped library
    """Curves over one axis, with a place on them that keys go along.

    Left and right go along, with Shift by five steps; Home and End go to the ends.

    Signals:
        step_wanted(int step): When a key went to another step of the curves.
    """

    step_wanted = Signal(int)

    def __init__(self, font: QFont, parent: QWidget | None = None) -> None:
        """Make an empty picture."""
        super().__init__(parent, background=None, enableMenu=False)
        self.small = drawing_font(font)
        self.dark = False
        self.step = 0
        self._places: list[float] = []
        self._texts: list[str] = []
        self.setMinimumSize(*LEAST_SIZE)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseEnabled(x=False, y=False)
        self.hideButtons()
        # The library makes a menu that nobody owns, even where none is wanted.
        menu = self.getPlotItem().ctrlMenu
        menu.setParent(self, menu.windowFlags())
        self.getPlotItem().showGrid(x=True, y=True, alpha=GRID_SHARE)
        self.here = pg.InfiniteLine(angle=90)
        self.here.hide()
        self.addItem(self.here, ignoreBounds=True)
        for edge in ("left", "bottom"):
            axis = self.getAxis(edge)
            axis.enableAutoSIPrefix(False)
            axis.setStyle(tickFont=self.small)

    def set_look(self, dark: bool) -> None:
        """Take the colours of a light or a dark window."""
        self.dark = dark
        self.setBackground(colour("paper", dark))
        self.here.setPen(pg.mkPen(colour("selected", dark), width=1.5, dash=(2, 3)))
        for edge in ("left", "bottom"):
            axis = self.getAxis(edge)
            axis.setPen(pg.mkPen(colour("muted", dark)))
            axis.setTextPen(pg.mkPen(colour("text", dark)))

    def set_steps(self, places: Sequence[float], texts: Sequence[str]) -> None:
        """Take the steps that keys go along: places on the lower axis, and each in words."""
        self._places, self._texts = list(places), list(texts)
        self.here.hide()

    def tell(self, name: str, told: str) -> None:
        """Take the name and the words that stand for the picture."""
        self.setAccessibleName(name)
        self.setAccessibleDescription(told)
        self.setToolTip(told)

    def mark_step(self, step: int) -> None:
        """Mark one step."""
        if 0 <= step < len(self._places):
            self.step = step
            self.here.setValue(self._places[step])
            self.here.show()
            self.setAccessibleDescription(self._texts[step])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go along the curves."""
        last = len(self._places) - 1
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

    def fit(self, across: Sequence[float], up: Sequence[float], most: float) -> None:
        """Show all of some values, and room above the highest of them."""
        low, high = min(across), max(across)
        side = max(high - low, 1e-6) * SIDE_ROOM
        floor = min(0.0, *up)
        top = most + max(most - floor, 1e-9) * HEAD_ROOM
        self.setRange(xRange=(low - side, high + side), yRange=(floor, top), padding=0)

    def label(self, edge: str, name: str, unit: str, units: Units) -> None:
        """Name an axis, with the unit of a unit code in the reader's system."""
        words = QCoreApplication.translate("Tables", "{title}, {unit}")
        text = words.format(title=name, unit=unit_label(unit, units))
        self.setLabel(edge, text, color=colour("text", self.dark).name())
