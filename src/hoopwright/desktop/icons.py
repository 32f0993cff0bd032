"""The program's own pictures for tools, in the colour of the window's text."""

from functools import cache

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from hoopwright.desktop.palette import COLOURS
from hoopwright.files.storage import read_resource

DRAWN_IN = b"#000000"
SIDES_PX = (24, 48)


@cache
def tool_icon(name: str, dark: bool) -> QIcon:
    """Return the picture of a tool.

    Args:
        name: Its file in the resources, without the ending.
        dark: Whether it stands on a dark window.

    Raises:
        FileFault: The installation lacks it.
    """
    drawn = read_resource(f"icons/{name}.svg")
    icon = QIcon()
    for mode, colour in ((QIcon.Mode.Normal, "text"), (QIcon.Mode.Disabled, "muted")):
        ink = COLOURS["text" if colour == "text" else "muted"][dark].encode()
        renderer = QSvgRenderer(QByteArray(drawn.replace(DRAWN_IN, ink)))
        for side_px in SIDES_PX:
            icon.addPixmap(_painted(renderer, side_px, mode), mode)
    return icon


def _painted(renderer: QSvgRenderer, side_px: int, mode: QIcon.Mode) -> QPixmap:
    pixmap = QPixmap(side_px, side_px)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setOpacity(0.45 if mode == QIcon.Mode.Disabled else 1.0)
    renderer.render(painter, QRectF(0, 0, side_px, side_px))
    painter.end()
    return pixmap
