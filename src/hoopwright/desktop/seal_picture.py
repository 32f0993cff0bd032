"""A picture of one inflated sheet laid flat with its sealed edges."""

import pyqtgraph as pg
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QFont, QResizeEvent
from PySide6.QtWidgets import QWidget

from hoopwright.desktop.canvas.strip import Strip
from hoopwright.desktop.palette import colour
from hoopwright.papers.scene import View

LEAST_SIZE = (280, 100)
EDGE_PX = 12.0
SIZE_ROWS = 2
"""Rows of sizes that stand below the sheet and beside it."""


class SealPicture(pg.GraphicsView):  # type: ignore[misc]  # untyped library
    """A view of the drawing, always whole."""

    def __init__(self, font: QFont, parent: QWidget | None = None) -> None:
        """Make an empty picture."""
        super().__init__(parent, background=None)
        self.strip = Strip(self.scene(), font)
        self.setMinimumSize(*LEAST_SIZE)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_view(self, view: View, dark: bool) -> None:
        """Show another sheet."""
        self.setBackground(colour("paper", dark))
        self.strip.set_dark(dark)
        self.strip.show_view(view)
        self.setAccessibleName(view.title)
        self.setAccessibleDescription(view.described)
        self.setToolTip(view.described)
        self._fit()

    def resizeEvent(self, event: QResizeEvent | None) -> None:
        """Fit the sheet anew; the library calls it once before there is any, without event."""
        super().resizeEvent(event)
        if event is not None:
            self._fit()

    def wheelEvent(self, event: object) -> None:
        """Leave the wheel to what lies around; the picture is always whole."""
        event.ignore()  # type: ignore[attr-defined]  # untyped library

    def mousePressEvent(self, event: object) -> None:
        """Take the focus and nothing else."""
        event.accept()  # type: ignore[attr-defined]  # untyped library

    def mouseMoveEvent(self, event: object) -> None:
        """Drag nothing along."""
        event.accept()  # type: ignore[attr-defined]  # untyped library

    def _fit(self) -> None:
        left, bottom, right, top = self.strip.view.box
        wide, high = float(self.viewport().width()), float(self.viewport().height())
        head_px = self.strip.row_px + EDGE_PX
        foot_px = SIZE_ROWS * self.strip.row_px + EDGE_PX
        side_px = SIZE_ROWS * self.strip.row_px + EDGE_PX
        across = max(1.0, wide - 2 * side_px) / (right - left)
        up = max(1.0, high - head_px - foot_px) / (top - bottom)
        scale = min(across, up)
        frame = QRectF(0, 0, wide, high)
        self.strip.place((frame.left(), frame.top(), frame.width(), frame.height()))
        spare_m = (high - head_px - foot_px) / scale - (top - bottom)
        left_m = (left + right) / 2 - wide / 2 / scale
        self.strip.look(left_m, bottom - foot_px / scale - spare_m / 2, scale)
