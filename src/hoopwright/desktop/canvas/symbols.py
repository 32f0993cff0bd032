"""Small things drawn in pixels: cranks, hoses, blower, roll, grips, dimension lines, texts.

Everything here is drawn at a place on the screen, y down, and has the same size at every scale.
What looks the same in every step of a drag is kept: the size of a text, a pen, the picture of a
symbol.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QImage,
    QPainter,
    QPainterPath,
    QPen,
    QPolygonF,
)

from hoopwright.papers.scene import GripKind, SymbolKind

DISC_PX = 9.0
GRIP_PX = 6.0
TICK_PX = 4.0
TEXT_PAD_PX = 2.0
PLATE_SHARE, FAINT_SHARE = 0.86, 0.45
TEXTS_KEPT, STAMPS_KEPT = 1000, 200
STAMP_PX = 20


@dataclass(frozen=True, slots=True)
class Brushes:
    """The colours of one drawing.

    Attributes:
        paper: Below everything.
        line: Lines of the symbol.
        text: Texts.
    """

    paper: QColor
    line: QColor
    text: QColor


class Lettering:
    """A font, and the sizes of the texts that were written in it."""

    def __init__(self, font: QFont) -> None:
        """Measure a font."""
        self.font = font
        self.metrics = QFontMetricsF(font)
        self.height_px, self.ascent_px = self.metrics.height(), self.metrics.ascent()
        self.width_px: Callable[[str], float] = lru_cache(TEXTS_KEPT)(
            self.metrics.horizontalAdvance
        )


def stamp_symbol(
    p: QPainter, kind: SymbolKind, at: QPointF, facing: int, size: float, ink: Brushes
) -> None:
    """Draw a symbol of a size from a kept picture, at the pixel nearest to its centre."""
    colours = (ink.paper.rgba(), ink.line.rgba())
    _stamp(p, at, _symbol_picture(kind, facing, size, colours, _dots(p)))


def stamp_grip(p: QPainter, kind: GripKind, at: QPointF, held: bool, ink: Brushes) -> None:
    """Draw a grip from a kept picture, at the pixel nearest to its centre."""
    colours = (ink.paper.rgba(), ink.line.rgba())
    _stamp(p, at, _grip_picture(kind, held, colours, _dots(p)))


def _dots(p: QPainter) -> float:
    """Return how many dots of the device make one pixel."""
    return p.device().devicePixelRatio()


def _stamp(p: QPainter, at: QPointF, picture: QImage) -> None:
    dots = picture.devicePixelRatio()
    corner = at - QPointF(STAMP_PX, STAMP_PX)
    p.drawImage(QPointF(round(corner.x() * dots) / dots, round(corner.y() * dots) / dots), picture)


@lru_cache(STAMPS_KEPT)
def _symbol_picture(
    kind: SymbolKind, facing: int, size: float, colours: tuple[int, int], dots: float
) -> QImage:
    picture, p, ink = _blank(colours, dots)
    p.scale(size, size)
    draw_symbol(p, kind, QPointF(), facing, ink)
    p.end()
    return picture


@lru_cache(STAMPS_KEPT)
def _grip_picture(kind: GripKind, held: bool, colours: tuple[int, int], dots: float) -> QImage:
    picture, p, ink = _blank(colours, dots)
    draw_grip(p, kind, QPointF(), held, ink)
    p.end()
    return picture


def _blank(colours: tuple[int, int], dots: float) -> tuple[QImage, QPainter, Brushes]:
    """Return a clear picture, a painter whose zero is its middle, and its colours."""
    side = math.ceil(2 * STAMP_PX * dots)
    picture = QImage(side, side, QImage.Format.Format_ARGB32_Premultiplied)
    picture.setDevicePixelRatio(dots)
    picture.fill(Qt.GlobalColor.transparent)
    p = QPainter(picture)
    p.translate(STAMP_PX, STAMP_PX)
    paper, line = (QColor.fromRgba(one) for one in colours)
    return picture, p, Brushes(paper, line, line)


@cache
def _pen(rgba: int, width_px: float, share: float = 1.0) -> QPen:
    return QPen(_clear(rgba, share), width_px)


@cache
def _clear(rgba: int, share: float) -> QColor:
    mixed = QColor.fromRgba(rgba)
    mixed.setAlphaF(share)
    return mixed


def draw_symbol(p: QPainter, kind: SymbolKind, at: QPointF, facing: int, ink: Brushes) -> None:
    """Draw a symbol round its centre."""
    p.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    p.setPen(QPen(ink.line, 1.5))
    p.setBrush(ink.paper)
    if kind == "crank":
        _crank(p, at, facing, ink)
    elif kind == "jumper":
        _jumper(p, at, ink)
    elif kind == "blower":
        _blower(p, at, ink)
    else:
        _roll(p, at, facing, kind == "roll into", ink)


def _crank(p: QPainter, at: QPointF, facing: int, ink: Brushes) -> None:
    p.drawEllipse(at, DISC_PX, DISC_PX)
    elbow = at + QPointF(facing * 4.0, -4.5)
    p.setPen(QPen(ink.line, 2.0))
    p.drawPolyline(QPolygonF([at, elbow, elbow + QPointF(-facing * 4.5, 0.0)]))
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(ink.line)
    p.drawEllipse(at, 2.6, 2.6)


def _jumper(p: QPainter, at: QPointF, ink: Brushes) -> None:
    path = QPainterPath(at + QPointF(-4, -8))
    path.cubicTo(at + QPointF(8, -9), at + QPointF(8, 9), at + QPointF(-4, 8))
    p.setBrush(Qt.BrushStyle.NoBrush)
    p.setPen(QPen(ink.paper, 5.0))
    p.drawPath(path)
    p.setPen(QPen(ink.line, 2.4))
    p.drawPath(path)
    p.setPen(Qt.PenStyle.NoPen)
    p.setBrush(ink.line)
    for up in (-8, 8):
        p.drawEllipse(at + QPointF(-4, up), 2.6, 2.6)


def _blower(p: QPainter, at: QPointF, ink: Brushes) -> None:
    p.drawRect(QRectF(at.x(), at.y() - DISC_PX, DISC_PX + 4, 6.0))
    p.drawEllipse(at, DISC_PX, DISC_PX)
    p.setBrush(ink.line)
    for turn in range(3):
        angle = math.radians(90 + 120 * turn)
        tip = at + QPointF(6.5 * math.cos(angle), -6.5 * math.sin(angle))
        side = at + QPointF(4.5 * math.cos(angle + 0.8), -4.5 * math.sin(angle + 0.8))
        p.drawPolygon(QPolygonF([at, tip, side]))


def _roll(p: QPainter, at: QPointF, facing: int, into: bool, ink: Brushes) -> None:
    p.setBrush(ink.line)
    p.drawEllipse(at, 3.0, 3.0)
    p.setBrush(Qt.BrushStyle.NoBrush)
    radius = 7.0
    box = QRectF(at.x() - radius, at.y() - radius, 2 * radius, 2 * radius)
    # Seen from the front: rolling up, the outside of the bar goes up when it winds out.
    turn = facing * (-1 if into else 1)
    start = -30 if turn > 0 else 210
    p.drawArc(box, start * 16, turn * 240 * 16)
    end = math.radians(start + turn * 240)
    tip = at + QPointF(radius * math.cos(end), -radius * math.sin(end))
    ahead = end + turn * math.pi / 2
    for spread in (2.5, -2.5):
        barb = QPointF(4.5 * math.cos(ahead + spread), -4.5 * math.sin(ahead + spread))
        p.drawLine(tip, tip + barb)


def draw_grip(p: QPainter, kind: GripKind, at: QPointF, held: bool, ink: Brushes) -> None:
    """Draw a grip: a lozenge for a split, a square for a seam, a double wedge for a hip seam.

    That of an opening is a disc.
    A jumper is its own grip and gets a ring alone, while it is held.
    """
    size = GRIP_PX + (2 if held else 0)
    p.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    p.setPen(QPen(ink.paper, 1.5))
    p.setBrush(ink.line)
    if kind == "seam":
        p.drawRect(QRectF(at.x() - size + 1, at.y() - size + 1, 2 * size - 2, 2 * size - 2))
    elif kind == "split":
        _draw_area(p, at, ((0, -size - 1), (size + 1, 0), (0, size + 1), (-size - 1, 0)))
    elif kind == "hip":
        for sign in (-1, 1):
            _draw_area(p, at, ((-size, sign * 2), (size, sign * 2), (0, sign * (size + 3))))
    elif kind == "opening":
        p.drawEllipse(at, size - 1, size - 1)
    if held:
        p.setBrush(Qt.BrushStyle.NoBrush)
        p.setPen(QPen(ink.line, 1.5))
        p.drawEllipse(at, size + 6, size + 6)


def _draw_area(p: QPainter, at: QPointF, tips: Sequence[tuple[float, float]]) -> None:
    p.drawPolygon(QPolygonF([at + QPointF(x, y) for x, y in tips]))


def draw_text(
    p: QPainter,
    text: str,
    left: float,
    middle: float,
    ink: Brushes,
    letters: Lettering,
    *,
    plate: bool = True,
) -> QRectF:
    """Draw a text on a plate of paper, in the painter's font; return where it stands.

    Args:
        p: Painter, its font that of the letters.
        text: The text.
        left: Its left end, px.
        middle: Its middle, px down.
        ink: Colours.
        letters: The font measured.
        plate: Whether paper lies below it.
    """
    width, height = letters.width_px(text), letters.height_px
    box = QRectF(round(left), round(middle - height / 2), width, height)
    if plate:
        p.setPen(Qt.PenStyle.NoPen)
        p.setBrush(_clear(ink.paper.rgba(), PLATE_SHARE))
        p.drawRoundedRect(box.adjusted(-3, 0, 3, 0), 3, 3)
    p.setPen(ink.text)
    p.drawText(QPointF(box.left(), box.top() + letters.ascent_px), text)
    return box


def draw_level_dimension(
    p: QPainter,
    left: float,
    right: float,
    feet: tuple[float, float],
    at: float,
    text: str,
    ink: Brushes,
    letters: Lettering,
) -> None:
    """Draw a dimension line with its text between two uprights.

    Args:
        p: Painter.
        left: Left end, px.
        right: Right end, px.
        feet: Where the extension lines begin on the left and on the right, px down.
        at: The dimension line, px down.
        text: The size.
        ink: Colours.
        letters: The painter's font measured.
    """
    _dimension_lines(
        p,
        [QLineF(left, feet[0] + 2, left, at + 3), QLineF(right, feet[1] + 2, right, at + 3)],
        QLineF(left, at, right, at),
        ink,
    )
    width = letters.width_px(text)
    if width + 4 * TEXT_PAD_PX < right - left:
        draw_text(p, text, (left + right - width) / 2, at, ink, letters)


def draw_upright_dimension(
    p: QPainter,
    top: float,
    bottom: float,
    feet: tuple[float, float],
    at: float,
    text: str,
    ink: Brushes,
    letters: Lettering,
) -> None:
    """Draw an upright dimension line, its text reading upward.

    Args:
        p: Painter.
        top: Upper end, px down.
        bottom: Lower end, px down.
        feet: Where the extension lines begin at the upper and at the lower end, px.
        at: The dimension line, px from the left.
        text: The size.
        ink: Colours.
        letters: The painter's font measured.
    """
    away = math.copysign(3.0, at - feet[1])
    _dimension_lines(
        p,
        [QLineF(feet[0], top, at + away, top), QLineF(feet[1], bottom, at + away, bottom)],
        QLineF(at, top, at, bottom),
        ink,
    )
    width = letters.width_px(text)
    p.save()
    p.translate(at, (top + bottom) / 2)
    p.rotate(-90)
    draw_text(p, text, -width / 2, 0.0, ink, letters)
    p.restore()


def _dimension_lines(p: QPainter, feet: list[QLineF], line: QLineF, ink: Brushes) -> None:
    rgba = ink.line.rgba()
    p.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    p.setPen(_pen(rgba, 1.0, FAINT_SHARE))
    p.drawLines(feet)
    p.setPen(_pen(rgba, 1.0))
    p.drawLine(line)
    p.setRenderHint(QPainter.RenderHint.Antialiasing, True)
    slash = QPointF(TICK_PX, -TICK_PX)
    p.setPen(_pen(rgba, 1.5))
    p.drawLines([QLineF(end - slash, end + slash) for end in (line.p1(), line.p2())])
