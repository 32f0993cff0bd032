"""Texts, dimensions, symbols and grips of one view, drawn in pixels over everything else."""

from collections.abc import Sequence
from functools import cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QTransform
from PySide6.QtWidgets import QStyleOptionGraphicsItem, QWidget

from hoopwright.desktop.canvas.layers import Layer
from hoopwright.desktop.canvas.picking import is_lit, symbol_shift
from hoopwright.desktop.canvas.symbols import (
    Brushes,
    Lettering,
    draw_level_dimension,
    draw_text,
    draw_upright_dimension,
    stamp_grip,
    stamp_symbol,
)
from hoopwright.desktop.palette import INKS, Colour, colour, drawing_font
from hoopwright.papers.scene import STYLES, Dimension, Handle, Label, Shape, Symbol

LEAST_ROOM_PX = 45.0
NUMBER_ROOM_PX = 22.0
NUMBER_STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
TITLE_LEFT_PX = 6.0
RIGHT_END = Qt.TextElideMode.ElideRight
LEAST_SYMBOL, FULL_SYMBOL_PX_PER_M = 0.65, 16.0


class Words(Layer):
    """Texts, dimensions, symbols and grips of one view."""

    def __init__(self, title_font: QFont) -> None:
        """Draw over everything else; the font is the window's."""
        super().__init__(len(STYLES) + 1)
        self._title_letters = Lettering(drawing_font(title_font, bold=True))
        self._letters = Lettering(drawing_font(title_font))
        self.row_px = self._letters.height_px
        self._labels: list[Label] = []
        self._numbers: list[Label] = []
        self._dimensions: list[Dimension] = []
        self._symbols: list[Symbol] = []
        self._handles: list[Handle] = []
        self._title, self._frame = "", QRectF()
        self._held: tuple[str, ...] = ()

    def show_shapes(self, title: str, shapes: Sequence[Shape]) -> None:
        """Draw other texts, dimensions, symbols and grips."""
        self._title = title
        labels: list[Label] = []
        self._numbers, self._dimensions, self._symbols, self._handles = [], [], [], []
        for shape in shapes:
            if isinstance(shape, Label):
                (self._numbers if shape.number else labels).append(shape)
            elif isinstance(shape, Dimension):
                self._dimensions.append(shape)
            elif isinstance(shape, Symbol):
                self._symbols.append(shape)
            elif isinstance(shape, Handle):
                self._handles.append(shape)
        # What is offered gives way to what is there, so it comes last.
        self._labels = sorted(labels, key=_is_offered)
        self.update()

    def show_marks(self, marks: tuple[str, ...]) -> None:
        """Light the grips and symbols of some marks."""
        self._held = marks
        self.update()

    def set_frame(self, frame: QRectF) -> None:
        """Take the place of the view on the screen, px."""
        self._frame = frame

    def paint(
        self,
        p: QPainter,
        _option: QStyleOptionGraphicsItem,
        _widget: QWidget | None = None,
    ) -> None:
        """Draw in pixels: the place of everything is mapped, its size is not."""
        to_screen = p.worldTransform()
        p.save()
        p.setWorldTransform(QTransform())
        p.setFont(self._letters.font)
        for dimension in self._dimensions:
            self._paint_dimension(p, to_screen, dimension)
        self._paint_numbers(p, to_screen)
        for symbol in self._symbols:
            self._paint_symbol(p, to_screen, symbol)
        taken: list[QRectF] = []
        for label in self._labels:
            box = self._paint_label(p, to_screen, label, taken if _is_offered(label) else [])
            taken += [] if box is None else [box]
        for handle in self._handles:
            held = is_lit(handle.mark, self._held)
            stamp_grip(
                p, handle.kind, to_screen.map(QPointF(*handle.grip)), held, self._ink(handle, held)
            )
        p.setFont(self._title_letters.font)
        plain = self._brushes("text")
        top = self._frame.top() + 3 + self.row_px / 2
        room_px = self._frame.width() - 2 * TITLE_LEFT_PX
        title = self._title_letters.metrics.elidedText(self._title, RIGHT_END, room_px)
        draw_text(p, title, self._frame.left() + TITLE_LEFT_PX, top, plain, self._title_letters)
        p.restore()

    def _brushes(self, line: Colour) -> Brushes:
        return _brushes(line, self.dark)

    def _ink(self, shape: Symbol | Handle, lit: bool) -> Brushes:
        return self._brushes("selected" if lit else INKS[shape.style].colour)

    def _paint_symbol(self, p: QPainter, to_screen: QTransform, symbol: Symbol) -> None:
        right_px, up_px = symbol_shift(symbol)
        at = to_screen.map(QPointF(*symbol.at)) + QPointF(right_px, -up_px)
        lit = is_lit(symbol.mark, self._held)
        # On a small drawing neighbours would hide each other.
        size = min(1.0, max(LEAST_SYMBOL, to_screen.m11() / FULL_SYMBOL_PX_PER_M))
        stamp_symbol(p, symbol.kind, at, symbol.facing, size, self._ink(symbol, lit))

    def _paint_label(
        self, p: QPainter, to_screen: QTransform, label: Label, taken: Sequence[QRectF]
    ) -> QRectF | None:
        """Draw a label where it fits: whole, or a part of it, inside or above its box.

        Args:
            p: Painter.
            to_screen: From metres to pixels.
            label: The label.
            taken: Where it must not stand, px.

        Returns:
            Where it stands, px, or None when it has no room.
        """
        at = to_screen.map(QPointF(*label.at))
        half_px = label.room_m * to_screen.m11() / 2
        left, right = at.x() - half_px, at.x() + half_px
        # Of a long box only a part may be seen; its name stands in the middle of that part.
        left, right = max(left, self._frame.left()), min(right, self._frame.right())
        room_px = right - left
        if room_px < LEAST_ROOM_PX:
            return None
        at.setX((left + right) / 2)
        tall_px = label.height_m * abs(to_screen.m22())
        if tall_px < self.row_px + 2:
            at -= QPointF(0, tall_px / 2 + self.row_px / 2 + 3)
        parts, ink = label.text.split(" · "), self._brushes("text")
        for text in (label.text, parts[-1] if _is_offered(label) else parts[0]):
            width = self._letters.width_px(text)
            box = QRectF(at.x() - width / 2 - 3, at.y() - self.row_px / 2, width + 6, self.row_px)
            if width + 6 <= room_px and not any(box.intersects(other) for other in taken):
                return draw_text(p, text, at.x() - width / 2, at.y(), ink, self._letters)
        return None

    def _paint_numbers(self, p: QPainter, to_screen: QTransform) -> None:
        """Draw the numbers of bows, as many as have room."""
        if not self._numbers:
            return
        room_px = min(n.room_m for n in self._numbers) * to_screen.m11()
        step = next((s for s in NUMBER_STEPS if s * room_px >= NUMBER_ROOM_PX), NUMBER_STEPS[-1])
        ink = self._brushes("text")
        muted = Brushes(ink.paper, ink.line, colour("muted", self.dark))
        for index, number in enumerate(self._numbers):
            if index and (index + 1) % step:
                continue
            at = to_screen.map(QPointF(*number.at))
            width = self._letters.width_px(number.text)
            middle = at.y() + 3 + (number.row - 0.5) * self.row_px
            draw_text(p, number.text, at.x() - width / 2, middle, muted, self._letters, plate=False)

    def _paint_dimension(self, p: QPainter, to_screen: QTransform, shape: Dimension) -> None:
        x1, y1, x2, y2 = shape.ends
        one, two = to_screen.map(QPointF(x1, y1)), to_screen.map(QPointF(x2, y2))
        ink = self._brushes("selected" if is_lit(shape.mark, self._held) else "muted")
        if y1 == y2:
            at = one.y() + 3 + (shape.row - 0.5) * self.row_px
            feet = (one.y(), two.y())
            draw_level_dimension(p, one.x(), two.x(), feet, at, shape.text, ink, self._letters)
            return
        edge = min(one.x(), two.x()) if shape.row < 0 else max(one.x(), two.x())
        at = edge + shape.row * self.row_px
        feet = (two.x(), one.x())
        draw_upright_dimension(p, two.y(), one.y(), feet, at, shape.text, ink, self._letters)


@cache
def _brushes(line: Colour, dark: bool) -> Brushes:
    return Brushes(colour("paper", dark), colour(line, dark), colour("text", dark))


def _is_offered(label: Label) -> bool:
    return label.style == "proposed"
