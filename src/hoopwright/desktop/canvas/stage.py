"""The drawing area: four views placed, scaled, moved and lit together.

Scale and place of the three long views are kept here once and handed to each, so that they show
the same length at the same scale to the pixel. The section, or the end wall in its place, has its
own scale.
"""

from dataclasses import dataclass

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRect, QRectF
from PySide6.QtGui import QFont, QResizeEvent
from PySide6.QtWidgets import QWidget

from hoopwright.desktop.canvas.arrangement import LONG, Arrangement, arrange
from hoopwright.desktop.canvas.chooser import Chooser
from hoopwright.desktop.canvas.key import Key
from hoopwright.desktop.canvas.picking import is_lit
from hoopwright.desktop.canvas.ruler import Ruler
from hoopwright.desktop.canvas.strip import Strip
from hoopwright.desktop.canvas.tints import Tints
from hoopwright.desktop.palette import colour, drawing_font
from hoopwright.papers.scene import Box, Dimension, Style, View, points_of
from hoopwright.papers.views import Views
from hoopwright.quantity.units import Units

NAMES = (*LONG, "section")
MOST_PX_PER_M = 900.0
PICKED_SHARE = 0.6
LEAST_PICKED_M = 3.0
SIDE_SHARE = 0.45
SEEN_SHARE = 0.02
EDGE_SHARE = 0.1


@dataclass(slots=True)
class _Look:
    """What a view shows: the middle of its width, m, its scale, and how far it is raised, m."""

    centre_m: float = 0.0
    px_per_m: float = 1.0
    raised_m: float = 0.0


class Stage(pg.GraphicsView):  # type: ignore[misc]  # untyped library
    """The drawing area. It shows; hands and keys are somebody else's."""

    def __init__(self, font: QFont, parent: QWidget | None = None) -> None:
        """Make four empty views."""
        super().__init__(parent, background=None)
        scene = self.scene()
        self.strips = {name: Strip(scene, font) for name in NAMES}
        small = drawing_font(font)
        boxes = {name: strip.box for name, strip in self.strips.items()}
        self._rulers = {
            "first_side": Ruler("left", boxes["first_side"], small, "none"),
            "plan": Ruler("left", boxes["plan"], small, "mirrored"),
            "second_side": Ruler("left", boxes["second_side"], small, "none"),
            "length": Ruler("bottom", boxes["second_side"], small),
            "across": Ruler("bottom", boxes["section"], small, "mirrored"),
        }
        self._key = Key(font)
        self.chooser = Chooser(self)
        for item in (*self._rulers.values(), self._key):
            scene.addItem(item)
        self._looks = {name: _Look() for name in NAMES}
        self._arranged: Arrangement | None = None
        self._fitted = True

    @property
    def px_per_m(self) -> float:
        """Scale of the three long views."""
        return self._looks["plan"].px_per_m

    def show_views(self, views: Views, tints: Tints | None = None) -> None:
        """Draw another tunnel, or the same one changed.

        Args:
            views: What is drawn.
            tints: State of each cell by its mark and by that of the curtain it lies in, or None
                where cells are not tinted.
        """
        drawn = (views.first_side, views.plan, views.second_side, views.section)
        needed = self._room_needed()
        for strip, view in zip(self.strips.values(), drawn, strict=True):
            strip.show_view(view, tints)
        styles: set[Style] = {shape.style for view in drawn for shape in view.shapes}
        self._key.show_styles(frozenset(styles), frozenset((tints or {}).values()))
        if needed != self._room_needed():
            self._arrange()

    def _room_needed(self) -> tuple[object, ...]:
        """Return what decides how the views lie: their boxes, and rows beside the section."""
        boxes = [strip.view.box for strip in self.strips.values()]
        return (*boxes, _upright_rows(self.strips["section"].view))

    def show_marks(self, picked: tuple[str, ...], shown: tuple[str, ...]) -> None:
        """Light what is picked, and what a table points at."""
        for strip in self.strips.values():
            strip.show_marks(picked, shown)

    def set_look(self, units: Units, dark: bool) -> None:
        """Take the user's units and the colours of a light or a dark window."""
        self.setBackground(colour("paper", dark))
        for strip in self.strips.values():
            strip.set_dark(dark)
        for ruler in self._rulers.values():
            ruler.set_look(units, dark)
        self._key.dark = dark
        self._key.update()

    def resizeEvent(self, event: QResizeEvent | None) -> None:
        """Place the views anew; the library calls it once before there is any, without event."""
        super().resizeEvent(event)
        if event is not None:
            self._arrange()

    def fit_all(self) -> None:
        """Show the whole tunnel, as large as it fits."""
        self._fitted = True
        self._arrange()

    def fit_beside(self) -> None:
        """Show the whole of the view beside the long ones; those stay as they are."""
        if self._arranged is not None:
            self._looks["section"].px_per_m = 0.0
            self._arrange()

    def strip_at(self, at: QPointF) -> Strip | None:
        """Return the view at a place of the canvas."""
        return next((s for s in self.strips.values() if s.holds(at)), None)

    def zoom(self, factor: float, at: QPointF | None = None) -> None:
        """Zoom about a place of the canvas, or about the middle of the long views."""
        strip = self.strip_at(at) if at is not None else self.strips["plan"]
        if strip is None or self._arranged is None:
            return
        if at is None:
            at = QRectF(*strip.frame).center()
        names = ("section",) if strip is self.strips["section"] else LONG
        held = strip.to_metres(at)
        least = self._least_scale(names[0])
        scale = min(MOST_PX_PER_M, max(least, strip.px_per_m * factor))
        left_px, _top, width_px, _height = strip.frame
        centre_m = held[0] + (left_px + width_px / 2 - at.x()) / scale
        self._fitted = scale <= least * (1 + 1e-9)
        for name in names:
            self._looks[name].px_per_m, self._looks[name].centre_m = scale, centre_m
            self._show(name)
        moved_m = strip.to_metres(at)[1] - held[1]
        self._raise(strip, moved_m)

    def pan(self, strip: Strip, right_px: float, down_px: float) -> None:
        """Move what the views show along with a hand; up and down only the view under it."""
        names = ("section",) if strip is self.strips["section"] else LONG
        for name in names:
            self._looks[name].centre_m -= right_px / strip.px_per_m
            self._show(name)
        self._raise(strip, -down_px / strip.px_per_m)
        self._fitted = False

    def zoom_to(self, marks: tuple[str, ...]) -> None:
        """Show some marks large, in the middle of the long views."""
        span = self._span(marks)
        if span is None or self._arranged is None:
            return
        low_m, high_m = span
        width_px = self.strips["plan"].frame[2]
        wanted = PICKED_SHARE * width_px / max(LEAST_PICKED_M, high_m - low_m)
        scale = max(self._least_scale("plan"), min(self._side_scale(), wanted))
        self._fitted = False
        for name in LONG:
            look = self._looks[name]
            look.px_per_m, look.centre_m = scale, (low_m + high_m) / 2
            self._show(name)

    def bring_into_view(self, marks: tuple[str, ...]) -> None:
        """Move the long views along until some marks are seen; the scale stays."""
        span = self._span(marks)
        if span is None:
            return
        left_px, _top, width_px, _height = self.strips["plan"].frame
        left_m = self.strips["plan"].to_metres(QPointF(left_px, 0))[0]
        right_m = left_m + width_px / self.px_per_m
        edge_m = (right_m - left_m) * SEEN_SHARE
        if span[1] < left_m + edge_m or span[0] > right_m - edge_m:
            for name in LONG:
                self._looks[name].centre_m = (span[0] + span[1]) / 2
                self._show(name)

    def _span(self, marks: tuple[str, ...]) -> tuple[float, float] | None:
        """Return from where to where along the tunnel some marks are drawn, m."""
        shapes = [s for name in LONG for s in self.strips[name].view.shapes]
        spots = [p[0] for s in shapes if is_lit(s.mark, marks) for p in points_of(s)]
        return (min(spots), max(spots)) if spots else None

    def _arrange(self) -> None:
        views: dict[str, View] = {name: strip.view for name, strip in self.strips.items()}
        if not views["plan"].shapes:
            return
        boxes: dict[str, Box] = {name: view.box for name, view in views.items()}
        size = self.viewport().size()
        row_px, rows = self.strips["plan"].row_px, _upright_rows(views["section"])
        chooser_px = self.chooser.sizeHint().height()
        wide = views["section"].name != "section"
        arranged = arrange(size.width(), size.height(), boxes, row_px, rows, chooser_px, wide=wide)
        self._arranged = arranged
        for name, strip in self.strips.items():
            strip.place(arranged.frames[name])
        for name, ruler in self._rulers.items():
            ruler.setGeometry(QRectF(*arranged.rulers[name]))
        self._key.place(QRectF(*arranged.key))
        self.chooser.setGeometry(QRect(*map(round, arranged.chooser)))
        for name in NAMES:
            look = self._looks[name]
            least = self._least_scale(name)
            if self._fitted or look.px_per_m < least:
                box = boxes[name]
                shift_px = arranged.shift_px if name == "section" else 0.0
                look.centre_m = (box[0] + box[2]) / 2 - shift_px / least
                look.px_per_m = least
                look.raised_m = 0.0
            self._show(name)

    def _least_scale(self, name: str) -> float:
        assert self._arranged is not None
        arranged = self._arranged
        return arranged.section_px_per_m if name == "section" else arranged.px_per_m

    def _side_scale(self) -> float:
        """Return the scale at which the lower part of an elevation, with the curtains, fits."""
        strip = self.strips["first_side"]
        assert self._arranged is not None
        band_px = strip.frame[3] - self._arranged.head_px - self._arranged.foot_px["first_side"]
        return band_px / (SIDE_SHARE * (strip.view.box[3] - strip.view.box[1]))

    def _raise(self, strip: Strip, up_m: float) -> None:
        """Move one view up or down."""
        name = next(n for n, s in self.strips.items() if s is strip)
        self._looks[name].raised_m -= up_m
        self._show(name)

    def _show(self, name: str) -> None:
        """Hand a view its range, kept on the tunnel."""
        assert self._arranged is not None
        look, strip = self._looks[name], self.strips[name]
        left, bottom, right, top = strip.view.box
        _left_px, _top_px, width_px, height_px = strip.frame
        head_px, foot_px = self._arranged.head_px, self._arranged.foot_px[name]
        half_m = width_px / look.px_per_m / 2
        if look.px_per_m > self._least_scale(name) * (1 + 1e-9):
            look.centre_m = _held(look.centre_m, left, right, half_m)
        elif name != "section":
            look.centre_m = (left + right) / 2
        band_m = (height_px - head_px - foot_px) / look.px_per_m
        spare_m = band_m - (top - bottom)
        if spare_m >= 0:
            look.raised_m = 0.0
            rest_m = bottom - spare_m / 2
        else:
            # What does not fit is seen from the ground up, the plan from its middle.
            rest_m = bottom - (spare_m / 2 if name == "plan" else 0.0)
            low_m, high_m = bottom - rest_m, bottom - spare_m - rest_m
            look.raised_m = min(high_m, max(low_m, look.raised_m))
        bottom_m = rest_m + look.raised_m - foot_px / look.px_per_m
        strip.look(look.centre_m - half_m, bottom_m, look.px_per_m)


def _upright_rows(view: View) -> tuple[int, int]:
    """Return how many rows of upright dimensions stand left and right of a view."""
    sizes = [s for s in view.shapes if isinstance(s, Dimension) and s.ends[1] != s.ends[3]]
    rows = [size.row for size in sizes]
    return max((-r for r in rows), default=0), max(rows, default=0)


def _held(centre_m: float, left_m: float, right_m: float, half_m: float) -> float:
    """Return the middle of what is shown, kept so that the tunnel fills the view or lies in it."""
    edge_m = half_m * EDGE_SHARE
    low_m, high_m = sorted((left_m + half_m, right_m - half_m))
    return min(high_m + edge_m, max(low_m - edge_m, centre_m))
