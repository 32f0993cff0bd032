"""A drawing of a bow as it is measured: its line, its points, and its mirror image."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from hoopwright.desktop.palette import clear, colour, is_dark
from hoopwright.farm import Frame, MeasuredBow
from hoopwright.survey import survey_frame

LEAST_PX = (340, 210)
EDGE_PX = 22.0
POINT_PX = 4.0
STEP_M = 0.1

Line = tuple[tuple[float, float], ...]


class MeasuringPicture(QWidget):
    """Shows a bow to scale between the names of its sides; its mirror image is dashed."""

    def __init__(self, sides: tuple[str, str], parent: QWidget | None = None) -> None:
        """Show nothing yet."""
        super().__init__(parent)
        self._sides = sides
        self.line: Line = ()
        self.points: Line = ()
        self.setMinimumSize(*LEAST_PX)
        self.setAccessibleName(self.tr("Drawing of the measured bow"))

    def show_frame(self, frame: Frame | None) -> None:
        """Draw the bow of a frame, or nothing when there is none that can stand."""
        self.line, self.points = (), ()
        if frame is not None:
            outline = survey_frame(frame).curve.outline(STEP_M)
            self.line = tuple((float(x), float(y)) for x, y in outline)
            if isinstance(frame.profile, MeasuredBow):
                self.points = frame.profile.spots
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the bow as large as it fits."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        dark = is_dark(self.palette())
        painter.fillRect(self.rect(), colour("paper", dark))
        room = QRectF(self.rect()).adjusted(EDGE_PX, EDGE_PX, -EDGE_PX, -EDGE_PX)
        if self.line:
            self._paint_bow(painter, room, dark)
        painter.setPen(QPen(colour("ground", dark), 2))
        painter.drawLine(room.bottomLeft(), room.bottomRight())
        painter.setPen(colour("text", dark))
        foot = QRectF(room.left(), room.bottom(), room.width(), EDGE_PX)
        for name, at in zip(
            self._sides, (Qt.AlignmentFlag.AlignLeft, Qt.AlignmentFlag.AlignRight), strict=True
        ):
            painter.drawText(foot, at | Qt.AlignmentFlag.AlignVCenter, name)
        painter.end()

    def _paint_bow(self, painter: QPainter, room: QRectF, dark: bool) -> None:
        half_m = max(abs(x) for x, _y in self.line)
        top_m = max(y for _x, y in self.line)
        scale = min(room.width() / (2 * half_m), room.height() / top_m)

        def placed(line: Sequence[tuple[float, float]], way: int = 1) -> list[QPointF]:
            x_px, y_px = room.center().x(), room.bottom()
            return [QPointF(x_px + way * x * scale, y_px - y * scale) for x, y in line]

        shape = QPolygonF(placed(self.line))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(clear("roof", dark, 0.15))
        painter.drawPolygon(shape)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if self.points:
            painter.setPen(QPen(colour("muted", dark), 1.5, Qt.PenStyle.DashLine))
            painter.drawPolyline(QPolygonF(placed(self.line, -1)))
        painter.setPen(QPen(colour("frame", dark), 3))
        painter.drawPolyline(shape)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour("selected", dark))
        for spot in placed(self.points):
            painter.drawEllipse(spot, POINT_PX, POINT_PX)
