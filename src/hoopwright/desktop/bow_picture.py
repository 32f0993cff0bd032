"""A small drawing of one bow, to see at once what the answers make."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from hoopwright.desktop.palette import clear, colour, is_dark
from hoopwright.farm import Frame
from hoopwright.survey import survey_frame

SIZE_PX = (230, 150)
EDGE_PX = 12.0
STEP_M = 0.1


class BowPicture(QWidget):
    """Shows the bow of a frame to scale, standing on the ground."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Show nothing yet."""
        super().__init__(parent)
        self._points: tuple[tuple[float, float], ...] = ()
        self.setFixedSize(*SIZE_PX)
        self.setAccessibleName(self.tr("Drawing of a bow"))

    def show_frame(self, frame: Frame | None) -> None:
        """Draw the bow of a frame, or nothing when there is none that can stand."""
        outline = survey_frame(frame).curve.outline(STEP_M) if frame is not None else ()
        self._points = tuple((float(x), float(y)) for x, y in outline)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the bow as large as it fits."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        dark = is_dark(self.palette())
        painter.fillRect(self.rect(), colour("paper", dark))
        if self._points:
            self._paint_bow(painter, dark)
        painter.end()

    def _paint_bow(self, painter: QPainter, dark: bool) -> None:
        across = [x for x, _y in self._points]
        up = [y for _x, y in self._points]
        room = QRectF(self.rect()).adjusted(EDGE_PX, EDGE_PX, -EDGE_PX, -EDGE_PX)
        scale = min(room.width() / (max(across) - min(across)), room.height() / max(up))
        middle = (max(across) + min(across)) / 2
        shape = QPolygonF(
            [
                QPointF(room.center().x() + (x - middle) * scale, room.bottom() - y * scale)
                for x, y in self._points
            ]
        )
        painter.setPen(QPen(colour("frame", dark), 3))
        painter.setBrush(clear("roof", dark, 0.15))
        painter.drawPolyline(shape)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.drawPolygon(shape)
        painter.setPen(QPen(colour("ground", dark), 2))
        painter.drawLine(room.bottomLeft(), room.bottomRight())
