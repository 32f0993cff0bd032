"""What a view is painted with: one item for all shapes of a style, one for what is lit.

Lines are lists that go to the painter in one call; widths stay the same at every scale. An item
covers what its view shows and no more, so that a change in one view repaints that view alone.
"""

import math
from collections.abc import Sequence

import pyqtgraph as pg
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from hoopwright.desktop.canvas.picking import is_lit
from hoopwright.desktop.palette import INKS, clear, colour, style_fill, style_pen
from hoopwright.papers.scene import (
    STYLES,
    Hatch,
    Line,
    Polygon,
    Polyline,
    Shape,
    Style,
    hatch_lines,
    points_of,
)

HATCH_PX = 8.0
HATCH_DENSE = {"inflated curtain": 0.75}
CORNERS = 4
LIT_WIDTH_PX, CASING_PX = 3.0, 6.0
CACHED_ABOVE = 400
LEAST_SCALES = {"rope": 10.0, "seal": 12.0}


class Layer(pg.GraphicsObject):  # type: ignore[misc]  # untyped library
    """An item that covers what its view shows."""

    def __init__(self, depth: float) -> None:
        """Stand at a depth; what has more is drawn later."""
        super().__init__()
        self.setZValue(depth)
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)
        self.dark = False
        self._reach = QRectF(0, 0, 1, 1)

    def set_reach(self, reach: QRectF) -> None:
        """Cover what the view shows now, m."""
        self.prepareGeometryChange()
        self._reach = reach

    def set_dark(self, dark: bool) -> None:
        """Take the colours of a light or a dark window."""
        self.dark = dark
        self.update()

    def boundingRect(self) -> QRectF:
        """Return what the item covers, m."""
        return self._reach


class StyleLayer(Layer):
    """All shapes of one style in one view."""

    def __init__(self, style: Style) -> None:
        """Draw shapes of a style, in the order of the styles."""
        super().__init__(STYLES.index(style))
        self._style = style
        self._shapes: tuple[Shape, ...] = ()
        self._rects: list[QRectF] = []
        self._areas: list[QPolygonF] = []
        self._lines: list[QLineF] = []
        self._paths: list[QPolygonF] = []
        self._hatches: list[Hatch] = []
        self._hatched: list[QLineF] | None = None
        self._px_per_m = 1.0

    def show_shapes(self, shapes: tuple[Shape, ...]) -> None:
        """Draw other shapes; nothing happens when they are the same."""
        if shapes == self._shapes:
            return
        self._shapes = shapes
        self.setVisible(bool(shapes))
        self._rects, self._areas, self._lines, self._paths, self._hatches = [], [], [], [], []
        for shape in shapes:
            if isinstance(shape, Line):
                self._lines.append(QLineF(*shape.ends))
            elif isinstance(shape, Polygon):
                if _is_upright(shape.points):
                    self._rects.append(_rectangle(shape.points))
                else:
                    self._areas.append(_polygon(shape.points))
            elif isinstance(shape, Polyline):
                self._paths.append(_polygon(shape.points))
            elif isinstance(shape, Hatch):
                self._hatches.append(shape)
        self._hatched = None
        many = len(self._lines) > CACHED_ABOVE
        cached, free = self.CacheMode.DeviceCoordinateCache, self.CacheMode.NoCache
        self.setCacheMode(cached if many else free)
        self.update()

    def set_scale(self, px_per_m: float) -> None:
        """Keep the hatch as dense as before at another scale or place."""
        self._px_per_m = px_per_m
        self._hatched = None

    def _hatch(self) -> list[QLineF]:
        """Return the lines of the hatches, no more than the view shows."""
        if not self._hatches:
            return []
        step_px = HATCH_PX * HATCH_DENSE.get(self._style, 1.0)
        step_m = 2.0 ** (round(2 * math.log2(step_px * math.sqrt(2) / self._px_per_m)) / 2)
        reach = self._reach
        seen = (reach.left(), reach.top(), reach.right(), reach.bottom())
        lines: list[QLineF] = []
        for shape in self._hatches:
            left, bottom, right, top = shape.box
            box = (max(left, seen[0]), bottom, min(right, seen[2]), top)
            lines += [QLineF(*ends) for ends in hatch_lines(box, step_m, shape.slant)]
        return lines

    def paint(
        self,
        p: QPainter,
        _option: QStyleOptionGraphicsItem,
        _widget: QWidget | None = None,
    ) -> None:
        """Draw areas, then hatches, then lines; what would only blur is left out."""
        if self._px_per_m < LEAST_SCALES.get(self._style, 0.0):
            return
        pen = style_pen(self._style, self.dark)
        p.setRenderHint(QPainter.RenderHint.Antialiasing, INKS[self._style].smooth)
        p.setPen(_thin(pen))
        p.setBrush(style_fill(self._style, self.dark))
        if self._rects:
            p.setRenderHint(QPainter.RenderHint.Antialiasing, False)
            p.drawRects(self._rects)
            p.setRenderHint(QPainter.RenderHint.Antialiasing, INKS[self._style].smooth)
        for area in self._areas:
            p.drawPolygon(area)
        p.setBrush(Qt.BrushStyle.NoBrush)
        if self._hatched is None:
            self._hatched = self._hatch()
        if self._hatched:
            p.drawLines(self._hatched)
        p.setPen(pen)
        if self._lines:
            p.drawLines(self._lines)
        for path in self._paths:
            p.drawPolyline(path)


def _thin(pen: QPen) -> QPen:
    """Return the pen for outlines of areas and for hatches."""
    if pen.widthF() <= 1.0:
        return pen
    thin = QPen(pen)
    thin.setWidthF(1.0)
    return thin


def _is_upright(points: Sequence[tuple[float, float]]) -> bool:
    if len(points) != CORNERS:
        return False
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = points
    return y0 == y1 and x1 == x2 and y2 == y3 and x3 == x0


def _rectangle(points: Sequence[tuple[float, float]]) -> QRectF:
    return QRectF(QPointF(*points[0]), QPointF(*points[2]))


def _polygon(points: Sequence[tuple[float, float]]) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in points])


class LitLayer(Layer):
    """What is picked, and what a table points at: outlined thick, with a casing of paper."""

    def __init__(self) -> None:
        """Draw over all styles."""
        super().__init__(len(STYLES))
        self._picked: list[QPolygonF] = []
        self._shown: list[QPolygonF] = []

    def show_marks(
        self, shapes: Sequence[Shape], picked: tuple[str, ...], shown: tuple[str, ...]
    ) -> None:
        """Light the shapes of the picked marks, and dashed those of the shown marks."""
        self._picked = _outlines(shapes, picked)
        self._shown = _outlines(shapes, shown)
        self.update()

    def paint(
        self,
        p: QPainter,
        _option: QStyleOptionGraphicsItem,
        _widget: QWidget | None = None,
    ) -> None:
        """Draw the casing, then the outline."""
        p.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        casing = _cosmetic(QPen(clear("paper", self.dark, 0.9), CASING_PX))
        shown = _cosmetic(QPen(colour("selected", self.dark), LIT_WIDTH_PX - 1))
        shown.setDashPattern([4, 2])
        picked = _cosmetic(QPen(colour("selected", self.dark), LIT_WIDTH_PX))
        for pen, outlines, fill in ((shown, self._shown, 0.10), (picked, self._picked, 0.16)):
            for outline in outlines:
                closed = outline.isClosed()
                p.setBrush(QBrush(clear("selected", self.dark, fill)) if closed else QBrush())
                p.setPen(casing)
                p.drawPolyline(outline)
                p.setPen(pen)
                (p.drawPolygon if closed else p.drawPolyline)(outline)


def _cosmetic(pen: QPen) -> QPen:
    pen.setCosmetic(True)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


def _outlines(shapes: Sequence[Shape], marks: tuple[str, ...]) -> list[QPolygonF]:
    """Return the outlines of the shapes of some marks; areas closed, lines open."""
    lit = [
        shape
        for shape in shapes
        if isinstance(shape, Polygon | Polyline | Line) and is_lit(shape.mark, marks)
    ]
    # Ropes, seals and the bar of a curtain are not outlined when the curtain is.
    areas = {shape.mark for shape in lit if isinstance(shape, Polygon)}
    found = []
    for shape in lit:
        if isinstance(shape, Polygon):
            found.append(_polygon((*shape.points, shape.points[0])))
        elif shape.mark not in areas:
            found.append(_polygon(points_of(shape)))
    return found
