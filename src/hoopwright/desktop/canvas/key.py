"""The key to the drawing: which colour, hatch and sign stands for what, as far as it is drawn."""

from typing import cast, get_args

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPen
from PySide6.QtWidgets import QGraphicsObject, QStyleOptionGraphicsItem, QWidget

from hoopwright.desktop.canvas.symbols import (
    Brushes,
    Lettering,
    draw_grip,
    draw_symbol,
    draw_text,
)
from hoopwright.desktop.canvas.tints import draw_sample
from hoopwright.desktop.palette import INKS, colour, drawing_font, style_fill, style_pen
from hoopwright.papers.scene import GripKind, Style, SymbolKind, hatch_lines
from hoopwright.pressure.held import AirState

ENTRIES: tuple[tuple[Style, str], ...] = (
    ("roof", "roof film"),
    ("curtain", "curtain"),
    ("inflated curtain", "inflated curtain"),
    ("pocket", "fixed film"),
    ("strip", "strip at a split"),
    ("split", "split"),
    ("proposed", "proposed split"),
    ("seam", "cross seam"),
    ("hip", "hip board"),
    ("unread", "height not read"),
    ("bow", "bow"),
    ("bar", "roll bar"),
    ("open", "bar when open"),
    ("crank", "crank"),
    ("rope", "wind rope"),
    ("seal", "seal"),
    ("cell", "air cell"),
    ("jumper", "jumper hose"),
    ("blower", "inflation blower"),
    ("end wall", "end wall"),
    ("door", "door, vent, fan"),
    ("rigid", "rigid sheets"),
    ("rail", "rail"),
    ("board", "baseboard"),
    ("kept", "stays as it is"),
    ("repaired", "stays, repaired"),
)
GRIPS: dict[Style, GripKind] = {"split": "split", "seam": "seam", "hip": "hip"}
SIGNS: dict[Style, SymbolKind] = {"crank": "crank", "jumper": "jumper", "blower": "blower"}
STATES: tuple[AirState, ...] = get_args(AirState)
AREAS = (
    "roof",
    "curtain",
    "inflated curtain",
    "pocket",
    "strip",
    "door",
    "rigid",
    "board",
    "kept",
    "repaired",
)
RISING: dict[Style, bool] = {
    "curtain": True,
    "inflated curtain": False,
    "kept": True,
    "repaired": False,
}
SWATCH_PX = 26.0
COLUMN_PX = 134.0
LEAST_COLUMN_PX = 118.0
ROW_GAP_PX = 5.0
HATCH_STEP_PX = 7.0
SIGN_SCALE = 0.72
RIGHT_END = Qt.TextElideMode.ElideRight


class Key(QGraphicsObject):
    """The key to the drawing."""

    def __init__(self, font: QFont) -> None:
        """Show nothing until there is a drawing."""
        super().__init__()
        self._letters = Lettering(drawing_font(font))
        self._least_row_px = self._letters.height_px
        self._box = QRectF(0, 0, 1, 1)
        self._styles: frozenset[Style] = frozenset()
        self._states: frozenset[AirState] = frozenset()
        self.dark = False

    def place(self, box: QRectF) -> None:
        """Lie at a place of the canvas."""
        if box != self._box:
            self.prepareGeometryChange()
            self._box = box

    def show_styles(
        self, styles: frozenset[Style], states: frozenset[AirState] = frozenset()
    ) -> None:
        """Name the styles that are drawn, and how the tinted cells are held."""
        if (styles, states) != (self._styles, self._states):
            self._styles, self._states = styles, states
            self.update()

    def boundingRect(self) -> QRectF:
        """Return what the item covers, px."""
        return self._box

    def paint(
        self,
        p: QPainter,
        _option: QStyleOptionGraphicsItem,
        _widget: QWidget | None = None,
    ) -> None:
        """Draw one sample and one name for each style, in columns."""
        entries: list[tuple[Style | AirState, str]] = [
            *((state, f"cell: {state}") for state in STATES if state in self._states),
            *((style, name) for style, name in ENTRIES if style in self._styles),
        ]
        columns, rows, row_px = self._grid(len(entries))
        needed = -(-len(entries) // columns)
        p.setFont(self._letters.font)
        muted = colour("muted", self.dark)
        text = Brushes(colour("paper", self.dark), muted, muted)
        wide = self._box.width() / columns
        for index, (what, name) in enumerate(entries[: rows * columns]):
            column, row = divmod(index, max(1, min(needed, rows)))
            left = self._box.left() + column * wide + 8
            middle = self._box.top() + (row + 0.5) * row_px + 2
            swatch = QRectF(left, middle - 6, SWATCH_PX, 12)
            if what in STATES:
                draw_sample(p, what, swatch, self.dark)
            else:
                self._sample(p, cast(Style, what), swatch)
            room_px = wide - SWATCH_PX - 16
            shown = self._letters.metrics.elidedText(name, RIGHT_END, room_px)
            at = left + SWATCH_PX + 8
            draw_text(p, shown, at, middle, text, self._letters, plate=False)

    def _grid(self, count: int) -> tuple[int, int, float]:
        """Return columns, rows and the height of a row, px, so that as many names fit as can be."""
        width, height = self._box.width(), self._box.height()
        most = int(height // self._least_row_px)
        columns = max(1, int(width // COLUMN_PX))
        while columns * most < count and width / (columns + 1) >= LEAST_COLUMN_PX:
            columns += 1
        needed = max(1, -(-count // columns))
        roomy = min(self._least_row_px + ROW_GAP_PX, height / needed)
        row_px = max(self._least_row_px, roomy)
        return columns, max(1, int(height / row_px + 1e-6)), row_px

    def _sample(self, p: QPainter, style: Style, box: QRectF) -> None:
        """Draw a style as it looks on the drawing."""
        paper, text = colour("paper", self.dark), colour("text", self.dark)
        ink = Brushes(paper, colour(INKS[style].colour, self.dark), text)
        p.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        pen = QPen(style_pen(style, self.dark))
        middle = box.center()
        if style in SIGNS:
            p.save()
            p.translate(middle)
            p.scale(SIGN_SCALE, SIGN_SCALE)
            draw_symbol(p, SIGNS[style], QPointF(), 1, ink)
            p.restore()
            return
        p.setPen(pen)
        if style in AREAS:
            pen.setWidthF(1.0)
            p.setPen(pen)
            p.setBrush(style_fill(style, self.dark))
            p.drawRect(box)
            self._hatch(p, style, box)
            return
        p.drawLine(QLineF(box.left(), middle.y(), box.right(), middle.y()))
        if style in GRIPS:
            draw_grip(p, GRIPS[style], middle, False, ink)

    def _hatch(self, p: QPainter, style: Style, box: QRectF) -> None:
        if style not in RISING:
            return
        p.setRenderHint(QPainter.RenderHint.Antialiasing, True)
        edges = (box.left(), box.top(), box.right(), box.bottom())
        # The painter's y goes down, so that lines which rise to the right fall for the function.
        lines = hatch_lines(edges, HATCH_STEP_PX, -1 if RISING[style] else 1)
        p.drawLines([QLineF(QPointF(x1, y1), QPointF(x2, y2)) for x1, y1, x2, y2 in lines])
