"""One view on the canvas: its box, its layers, and the way between pixels and metres."""

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QGraphicsScene

from hoopwright.desktop.canvas.arrangement import Frame
from hoopwright.desktop.canvas.layers import LitLayer, StyleLayer
from hoopwright.desktop.canvas.tints import TintLayer, Tints
from hoopwright.desktop.canvas.words import Words
from hoopwright.desktop.palette import colour
from hoopwright.papers.scene import (
    Hatch,
    Line,
    Point,
    Polygon,
    Polyline,
    Shape,
    Style,
    View,
)

INKED = (Hatch, Line, Polygon, Polyline)
EMPTY = View("", "", "", (0.0, 0.0, 1.0, 1.0), ())


class Strip:
    """One view on the canvas.

    Attributes:
        view: What is drawn.
        box: The view box that gives scale, clipping and the direction of y.
        px_per_m: Scale.
    """

    def __init__(self, scene: QGraphicsScene, font: QFont) -> None:
        """Put an empty view into a scene."""
        self.view = EMPTY
        self.px_per_m = 1.0
        self.box = pg.ViewBox(enableMouse=False, enableMenu=False, defaultPadding=0.0)
        self.box.disableAutoRange()
        scene.addItem(self.box)
        self._frame: Frame = (0.0, 0.0, 1.0, 1.0)
        self._left_m = self._bottom_m = 0.0
        self._looked: tuple[float, float, float, Frame] | None = None
        self._reach, self._dark = QRectF(0, 0, 1, 1), False
        self._layers: dict[Style, StyleLayer] = {}
        self._tinted, self._lit, self._words = TintLayer(), LitLayer(), Words(font)
        self._tints: Tints = {}
        for layer in (self._tinted, self._lit, self._words):
            self.box.addItem(layer, ignoreBounds=True)
        self._picked: tuple[str, ...] = ()
        self._shown: tuple[str, ...] = ()

    @property
    def row_px(self) -> float:
        """Height of one row of text, px."""
        return self._words.row_px

    @property
    def frame(self) -> Frame:
        """Where the view lies on the canvas: left, top, width and height, px."""
        return self._frame

    def place(self, frame: Frame) -> None:
        """Lie at a place of the canvas."""
        if frame != self._frame:
            self._frame = frame
            self.box.setGeometry(QRectF(*frame))
            self._words.set_frame(QRectF(*frame))

    def look(self, left_m: float, bottom_m: float, px_per_m: float) -> None:
        """Show what lies right of and above a point, at a scale that is the same both ways."""
        looked = (left_m, bottom_m, px_per_m, self._frame)
        if looked == self._looked:
            return
        self._looked = looked
        self._left_m, self._bottom_m, self.px_per_m = left_m, bottom_m, px_per_m
        _left, _top, width_px, height_px = self._frame
        width_m, height_m = width_px / px_per_m, height_px / px_per_m
        self.box.setRange(
            xRange=(left_m, left_m + width_m),
            yRange=(bottom_m, bottom_m + height_m),
            padding=0,
            disableAutoRange=True,
        )
        self._reach = QRectF(left_m, bottom_m, width_m, height_m)
        for layer in (*self._layers.values(), self._tinted, self._lit, self._words):
            layer.set_reach(self._reach)
        for layer in (*self._layers.values(), self._tinted):
            layer.set_scale(px_per_m)

    def show_view(self, view: View, tints: Tints | None = None) -> None:
        """Draw another view, cells tinted; what is the same as before stays as it is."""
        if view == self.view and (tints or {}) == self._tints:
            return
        self.view, self._tints = view, tints or {}
        self._tinted.show_cells(view.shapes, self._tints)
        by_style: dict[Style, list[Shape]] = {style: [] for style in self._layers}
        for shape in view.shapes:
            if isinstance(shape, INKED):
                by_style.setdefault(shape.style, []).append(shape)
        for style, shapes in by_style.items():
            self._layer(style).show_shapes(tuple(shapes))
        self._words.show_shapes(view.title, view.shapes)
        if self._picked or self._shown:
            self._light()

    def _layer(self, style: Style) -> StyleLayer:
        """Return the layer of a style, made when the style is first drawn."""
        if style not in self._layers:
            layer = StyleLayer(style)
            layer.set_dark(self._dark)
            layer.set_reach(self._reach)
            layer.set_scale(self.px_per_m)
            self.box.addItem(layer, ignoreBounds=True)
            self._layers[style] = layer
        return self._layers[style]

    def show_marks(self, picked: tuple[str, ...], shown: tuple[str, ...]) -> None:
        """Light what is picked, and what a table points at."""
        if (picked, shown) != (self._picked, self._shown):
            self._picked, self._shown = picked, shown
            self._light()

    def _light(self) -> None:
        self._lit.show_marks(self.view.shapes, self._picked, self._shown)
        self._words.show_marks((*self._picked, *self._shown))

    def set_dark(self, dark: bool) -> None:
        """Take the colours of a light or a dark window."""
        self._dark = dark
        self.box.setBackgroundColor(colour("paper", dark))
        for layer in (*self._layers.values(), self._tinted, self._lit, self._words):
            layer.set_dark(dark)

    def holds(self, at: QPointF) -> bool:
        """Return whether a place of the canvas lies in the view."""
        return QRectF(*self._frame).contains(at)

    def to_metres(self, at: QPointF) -> Point:
        """Return what point of the view lies at a place of the canvas, m."""
        left_px, top_px, _width_px, height_px = self._frame
        across_px, up_px = at.x() - left_px, top_px + height_px - at.y()
        return self._left_m + across_px / self.px_per_m, self._bottom_m + up_px / self.px_per_m

    def to_pixels(self, point: Point) -> QPointF:
        """Return where on the canvas a point of the view lies, px."""
        left_px, top_px, _width_px, height_px = self._frame
        across_px = (point[0] - self._left_m) * self.px_per_m
        up_px = (point[1] - self._bottom_m) * self.px_per_m
        return QPointF(left_px + across_px, top_px + height_px - up_px)
