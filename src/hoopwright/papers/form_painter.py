"""The one paper module that knows the painter: pages of a form as a PDF.

An application of the toolkit that runs is used; without one an application that needs no screen is
begun and stays until the program ends. Words stay words in the file, so that they can be found. The
toolkit writes the time into the file; all else follows from the pages and the fonts.
"""

import sys
from collections.abc import Sequence

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QPointF, QRectF, QSizeF, Qt, QUuid
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontDatabase,
    QFontMetricsF,
    QGuiApplication,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QPen,
    QPolygonF,
)

from hoopwright.papers.form_page import BADGE_MM, Badge, Box, Ink, Page, Paper, Spot, Stroke, Text

DOTS_PER_INCH = 1200
DOTS_PER_MM = DOTS_PER_INCH / 25.4
INKS: dict[Ink, str] = {"black": "#000000", "grey": "#555555", "light": "#d9d9d9"}
FRAME_MM = 0.25
HEAVY_MM = 0.7
CORNER_PT = 7.5
SMALLEST_SHARE = 0.5
HEAD_LONG_MM, HEAD_HALF_MM = 2.2, 0.75
ALIGNED = {
    "left": Qt.AlignmentFlag.AlignLeft,
    "centre": Qt.AlignmentFlag.AlignHCenter,
    "right": Qt.AlignmentFlag.AlignRight,
}


def pdf_bytes(pages: Sequence[Page], title: str) -> bytes:
    """Return a PDF of pages of one size.

    Args:
        pages: The pages, at least one.
        title: Title of the file.

    Raises:
        ValueError: The machine has no font to write with.
    """
    keep_application()
    if not QFontDatabase.families():
        raise ValueError("This machine has no font to write the paper with; install one.")
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(DOTS_PER_INCH)
    writer.setTitle(title)
    writer.setCreator("hoopwright")
    # Else it is drawn by chance, and the same pages would never make the same file twice.
    writer.setDocumentId(QUuid.createUuidV5(QUuid(), f"{title}\n{pages!r}".encode()))
    writer.setPageLayout(_layout(pages[0].paper))
    painter = QPainter(writer)
    for number, page in enumerate(pages):
        if number:
            writer.newPage()
        for shape in page.shapes:
            _paint(painter, shape)
    painter.end()
    return bytes(buffer.data().data())


def keep_application() -> None:
    """Begin an application of the toolkit where none runs; it lives as long as the program."""
    if QGuiApplication.instance() is None:
        # Elsewhere there always is a screen, and its platform is the one that finds the fonts.
        off = [] if sys.platform in ("win32", "darwin") else ["-platform", "offscreen"]
        _kept.append(QGuiApplication(["hoopwright", *off]))


_kept: list[QGuiApplication] = []


def fitting_share(text: Text) -> float:
    """Return how much smaller a text is painted to fit its area; 1 where it fits as it is."""
    share = 1.0
    while share > SMALLEST_SHARE and not _fits(text, share):
        share -= 0.05
    return share


def _fits(text: Text, share: float) -> bool:
    width, height = text.width * DOTS_PER_MM, text.height * DOTS_PER_MM
    if text.turned:
        width, height = height, width
    metrics = QFontMetricsF(_font(text.size_pt * share, text.bold))
    area = metrics.boundingRect(QRectF(0, 0, width, 1e6), _flags(text), text.words)
    return area.width() <= width + 1 and area.height() <= height + 1


def _layout(paper: Paper) -> QPageLayout:
    size = QPageSize(QSizeF(paper.width_mm, paper.height_mm), QPageSize.Unit.Millimeter, paper.name)
    return QPageLayout(
        size, QPageLayout.Orientation.Portrait, QMarginsF(), QPageLayout.Unit.Millimeter
    )


def _font(size_pt: float, bold: bool) -> QFont:
    font = QFont()
    font.setStyleHint(QFont.StyleHint.SansSerif)
    # In dots, so that measuring needs no painter.
    font.setPixelSize(max(1, round(size_pt / 72 * DOTS_PER_INCH)))
    font.setBold(bold)
    # A ligature would hide letters from whoever searches the file.
    font.setFeature(QFont.Tag("liga"), 0)
    return font


def _flags(text: Text) -> int:
    upright = Qt.AlignmentFlag.AlignTop if text.raised else Qt.AlignmentFlag.AlignVCenter
    return (ALIGNED[text.align] | upright).value | Qt.TextFlag.TextWordWrap.value


def _pen(width_mm: float, ink: Ink, dashed: bool = False) -> QPen:
    pen = QPen(QColor(INKS[ink]), width_mm * DOTS_PER_MM)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    if dashed:
        pen.setDashPattern([5.0, 3.0])
    return pen


def _paint(painter: QPainter, shape: Text | Box | Stroke | Badge) -> None:
    if isinstance(shape, Text):
        _paint_text(painter, shape)
    elif isinstance(shape, Box):
        _paint_box(painter, shape)
    elif isinstance(shape, Stroke):
        _paint_stroke(painter, shape)
    else:
        _paint_badge(painter, shape)


def _rect(left: float, top: float, width: float, height: float) -> QRectF:
    return QRectF(*(n * DOTS_PER_MM for n in (left, top, width, height)))


def _dots(spot: Spot) -> QPointF:
    return QPointF(spot[0] * DOTS_PER_MM, spot[1] * DOTS_PER_MM)


def _paint_text(painter: QPainter, text: Text) -> None:
    painter.setPen(_pen(0.1, text.ink))
    painter.setFont(_font(text.size_pt * fitting_share(text), text.bold))
    if not text.turned:
        area = _rect(text.left, text.top, text.width, text.height)
        painter.drawText(area, _flags(text), text.words)
        return
    painter.save()
    painter.translate(_dots((text.left, text.top + text.height)))
    painter.rotate(-90)
    painter.drawText(_rect(0, 0, text.height, text.width), _flags(text), text.words)
    painter.restore()


def _paint_box(painter: QPainter, box: Box) -> None:
    painter.setPen(_pen(HEAVY_MM if box.heavy else FRAME_MM, "black"))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(_rect(box.left, box.top, box.width, box.height))
    if box.entered:
        inset = 0.8
        corner = Text(
            box.left + inset,
            box.top + 0.3,
            box.width - 2 * inset,
            3.4,
            box.entered,
            size_pt=CORNER_PT,
            ink="grey",
            align="right",
        )
        _paint_text(painter, corner)


def _paint_stroke(painter: QPainter, stroke: Stroke) -> None:
    pen = _pen(stroke.width, stroke.ink, stroke.dashed)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(Qt.PenStyle.NoPen if stroke.filled else pen)
    painter.setBrush(QBrush(QColor(INKS[stroke.ink])) if stroke.filled else Qt.BrushStyle.NoBrush)
    points = QPolygonF([_dots(spot) for spot in stroke.points])
    if stroke.filled:
        painter.drawPolygon(points)
        return
    painter.drawPolyline(points)
    if stroke.head != "none":
        _paint_head(painter, stroke.points[-2], stroke.points[-1], stroke.ink)
    if stroke.head == "both":
        _paint_head(painter, stroke.points[1], stroke.points[0], stroke.ink)


def _paint_head(painter: QPainter, start: Spot, tip: Spot, ink: Ink) -> None:
    way = QPointF(tip[0] - start[0], tip[1] - start[1])
    length = (way.x() ** 2 + way.y() ** 2) ** 0.5
    along, aside = way / length, QPointF(-way.y(), way.x()) / length
    back = QPointF(*tip) - along * HEAD_LONG_MM
    corners = (QPointF(*tip), back + aside * HEAD_HALF_MM, back - aside * HEAD_HALF_MM)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QBrush(QColor(INKS[ink])))
    painter.drawPolygon(QPolygonF([corner * DOTS_PER_MM for corner in corners]))


def _paint_badge(painter: QPainter, badge: Badge) -> None:
    painter.setPen(_pen(FRAME_MM, "black"))
    painter.setBrush(QBrush(QColor("#ffffff")))
    radius = BADGE_MM * DOTS_PER_MM
    painter.drawEllipse(_dots(badge.centre), radius, radius)
    x, y = badge.centre
    side = 2 * BADGE_MM
    number = Text(x - BADGE_MM, y - BADGE_MM, side, side, str(badge.number), align="centre")
    _paint_text(painter, number)
