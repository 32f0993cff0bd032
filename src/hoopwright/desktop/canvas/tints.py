"""Cells tinted by how they are held: not fed, flat, low, in range, high.

Each state has a tone of one calm scale and a pattern of its own, so that it is told apart without
colour too; the pressure itself stands in the cell as a text.
"""

import math
from collections.abc import Iterable, Mapping, Sequence

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen, QPolygonF
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from hoopwright.desktop.canvas.layers import Layer
from hoopwright.desktop.palette import PATTERNS, tint
from hoopwright.papers.scene import STYLES, Box, Polygon, Polyline, Shape, hatch_lines
from hoopwright.pressure.held import AirState

PATTERN_PX = 13.0
ABOVE = STYLES.index("inflated curtain") + 0.5
Tints = Mapping[str, AirState]


class TintLayer(Layer):
    """The cells of one view, tinted and patterned by their state."""

    def __init__(self) -> None:
        """Lie over the film and below every line."""
        super().__init__(ABOVE)
        self._areas: list[tuple[AirState, QPolygonF]] = []
        self._px_per_m = 1.0

    def show_cells(self, shapes: Sequence[Shape], tints: Tints) -> None:
        """Tint the cells that a view draws.

        Args:
            shapes: What the view draws.
            tints: State of each cell by its mark, and by the mark of the curtain it lies in.
        """
        self._areas = [(tints[s.mark], _area(s)) for s in _cells(shapes) if s.mark in tints]
        self.setVisible(bool(self._areas))
        self.update()

    def set_scale(self, px_per_m: float) -> None:
        """Keep the patterns as dense as before at another scale."""
        self._px_per_m = px_per_m
        self.update()

    def paint(
        self,
        p: QPainter,
        _option: QStyleOptionGraphicsItem,
        _widget: QWidget | None = None,
    ) -> None:
        """Fill each cell, and draw the pattern of its state over it."""
        p.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        step_m = 2.0 ** (round(2 * math.log2(PATTERN_PX * math.sqrt(2) / self._px_per_m)) / 2)
        for state, area in self._areas:
            p.setPen(Qt.PenStyle.NoPen)
            p.setBrush(tint(state, self.dark))
            p.drawPolygon(area)
            lines = pattern(state, self._seen(area), step_m)
            if lines:
                outline = QPainterPath()
                outline.addPolygon(area)
                p.save()
                p.setClipPath(outline, Qt.ClipOperation.IntersectClip)
                p.setPen(_pen(state, self.dark))
                p.drawLines(lines)
                p.restore()

    def _seen(self, area: QPolygonF) -> Box:
        """Return the part of a cell's box that the view shows, m."""
        box = area.boundingRect().intersected(self.boundingRect())
        return box.left(), box.top(), box.right(), box.bottom()


def pattern(state: AirState, box: Box, step: float) -> list[QLineF]:
    """Return the lines of a state's pattern, cut to a box; none where a cell is as it should be.

    Args:
        state: How a cell is held.
        box: Left, low, right and high edge.
        step: From line to line along an edge, in the unit of the box.
    """
    slants, share = PATTERNS[state]
    lines = [ends for slant in slants for ends in hatch_lines(box, step * share, slant)]
    return [QLineF(*ends) for ends in lines]


def draw_sample(p: QPainter, state: AirState, box: QRectF, dark: bool) -> None:
    """Draw a state as it looks on the drawing, in pixels."""
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(tint(state, dark))
    p.drawRect(box)
    p.setPen(_pen(state, dark))
    edges = (box.left(), box.top(), box.right(), box.bottom())
    p.drawLines(pattern(state, edges, PATTERN_PX))


def _pen(state: AirState, dark: bool) -> QPen:
    pen = QPen(tint(state, dark, strong=True), 1.2)
    pen.setCosmetic(True)
    return pen


def _cells(shapes: Iterable[Shape]) -> Iterable[Polygon | Polyline]:
    """Return the shapes that can be a cell: its own outline, or the film of a curtain."""
    for shape in shapes:
        own = isinstance(shape, Polyline) and shape.style == "cell"
        curtain = isinstance(shape, Polygon) and shape.style == "inflated curtain"
        if isinstance(shape, Polygon | Polyline) and (own or curtain):
            yield shape


def _area(shape: Polygon | Polyline) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in shape.points])
