"""Signs of severity: a shape of its own for each, so that none hangs on its colour alone."""

from functools import cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QIcon, QPainter, QPen, QPixmap, QPolygonF

from hoopwright.desktop.palette import colour
from hoopwright.quantity.finding import Severity

SIDE_PX = 48
_BOX = QRectF(4, 4, 40, 40)
_OCTAGON = ((16, 4), (32, 4), (44, 16), (44, 32), (32, 44), (16, 44), (4, 32), (4, 16))
_TRIANGLE = ((24, 4), (46, 43), (2, 43))
_LETTERS = {"fault": "!", "caution": "!", "note": "i"}


@cache
def severity_icon(severity: Severity, dark: bool) -> QIcon:
    """Return the sign of a severity: octagon for a fault, triangle for a caution, disc for a note.

    Args:
        severity: How bad it is.
        dark: Whether it stands on a dark window.
    """
    pixmap = QPixmap(SIDE_PX, SIDE_PX)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour(severity, dark))
    if severity == "note":
        painter.drawEllipse(_BOX)
    else:
        corners = _OCTAGON if severity == "fault" else _TRIANGLE
        painter.drawPolygon(QPolygonF([QPointF(x, y) for x, y in corners]))
    font = QFont(painter.font())
    font.setBold(True)
    font.setPixelSize(30)
    painter.setFont(font)
    painter.setPen(QPen(colour("paper", dark)))
    drop = 5 if severity == "caution" else 0
    painter.drawText(_BOX.translated(0, drop), Qt.AlignmentFlag.AlignCenter, _LETTERS[severity])
    painter.end()
    return QIcon(pixmap)
