"""What the Help menu shows: keys, cautions, and how the figures are got."""

from collections.abc import Callable
from html import escape

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTextBrowser, QVBoxLayout, QWidget

from hoopwright import __version__
from hoopwright.desktop.notice_bar import CAUTION
from hoopwright.papers.cautions import CAUTIONS

SIZE_PX = (760, 480)
KEYS = (
    (
        "In the window",
        (
            ("F6, Shift+F6", "to the next area: drawing, tables, details, notice, tunnels"),
            ("Ctrl+Z, Ctrl+Shift+Z", "undo, redo"),
            ("F9", "larger tables, and back"),
            ("Ctrl+0, Ctrl+9", "show the whole tunnel, or what is picked"),
            ("Ctrl+1, Ctrl+2, Ctrl+3", "split the first side, the second side, add a cross seam"),
            ("Ctrl+4", "propose even splits; Take or Leave stand in the line at the foot"),
            ("Delete", "remove the picked split, seam, jumper, door, opening or rail"),
        ),
    ),
    (
        "On the drawing",
        (
            ("Tab, Shift+Tab", "to the next or the last of what can be moved"),
            ("Left, Right", "move it by one bow; with Shift by five; with Ctrl or Alt finely"),
            ("Up, Down", "raise or lower a picked hip seam, vent, fan opening, rail or seam"),
            ("E", "beside the sides and the plan: end section, front end, back end"),
            ("a figure, or Enter", "type its position"),
            ("C", "crank of the picked curtain to its next place: front, back, middle"),
            ("Escape", "let go of a drag and put everything back; pick nothing"),
            ("+, −, Home, Z", "larger, smaller, the whole tunnel, what is picked"),
            ("Mouse", "click picks; drag moves; wheel zooms; middle button moves the drawing"),
            ("Alt or Shift while dragging", "place freely between the bows"),
            ("Ctrl while dragging a hip seam", "move it on one side alone"),
        ),
    ),
    (
        "On the travel of a curtain",
        (("Left, Right, Home, End", "go along the curve; with Shift by five steps"),),
    ),
    (
        "On the readings",
        (
            ("a figure, or F2", "type a reading; an empty text takes it away"),
            ("Tab, Enter", "take it and go to the next box, with Shift to the last one"),
            ("Up, Down", "take it and go along the column"),
            ("Ctrl+C, Ctrl+V", "copy and paste a block of rows and columns"),
            ("Delete", "clear the chosen boxes"),
            ("Escape", "let go of a text that cannot be a reading"),
        ),
    ),
    (
        "In a field",
        (
            ("30' or 5' 6 1/2\" or 9.14 m", "lengths as people write them"),
            ("Enter, Escape", "take what is typed, or put back what was there"),
        ),
    ),
)
ABOUT = (
    "It lays out and costs the complete film skin of a high tunnel with roll-up sides.",
    "Every figure is worked out from what was entered. Pick a piece, a curtain or a seam on the "
    "drawing, or a row of a table: the details at the right show the figure, the rule, what went "
    "into it and where the rule comes from. The workbook carries the same workings.",
    "A source is a published standard or handbook, the geometry worked out here, common practice "
    "that no one has published, or your own entry, and each figure says which.",
    "The prices that come with the program, like the sample farms, are invented. Enter your own "
    "before you trust a total.",
)


def keys_page() -> str:
    """Return the keys as a page."""
    parts = []
    for title, keys in KEYS:
        rows = "".join(
            f"<tr><td style='padding-right:14px'><b>{escape(key)}</b></td>"
            f"<td>{escape(_said(act))}</td></tr>"
            for key, act in keys
        )
        parts.append(f"<h3>{escape(_said(title))}</h3><table cellpadding='2'>{rows}</table>")
    return "".join(parts)


def cautions_page() -> str:
    """Return every caution of the trade as a page."""
    parts = [f"<p><b>{escape(_said(CAUTION))}</b></p>"]
    parts += [f"<p><b>{escape(c.title)}.</b> {escape(c.text)}</p>" for c in CAUTIONS]
    return "".join(parts)


def about_page() -> str:
    """Return what the program is and how its figures are got, as a page."""
    parts = [f"<h3>Hoopwright {escape(__version__)}</h3>"]
    parts += [f"<p>{escape(_said(text))}</p>" for text in (*ABOUT, CAUTION)]
    return "".join(parts)


PAGES: dict[str, Callable[[], str]] = {
    "keys": keys_page,
    "cautions": cautions_page,
    "about": about_page,
}


class Page(QDialog):
    """A page of help that stands beside the window and can stay open."""

    def __init__(self, title: str, page: str, parent: QWidget | None = None) -> None:
        """Show a page."""
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(title)
        self.browser = QTextBrowser()
        self.browser.setHtml(page)
        self.browser.setAccessibleName(title)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.close)
        column = QVBoxLayout(self)
        column.addWidget(self.browser)
        column.addWidget(buttons)
        self.resize(*SIZE_PX)


def show_page(title: str, page: str, parent: QWidget) -> Page:
    """Open a page of help in front of the window; return it."""
    opened = Page(title, page, parent)
    opened.show()
    return opened


def _said(text: str) -> str:
    return QCoreApplication.translate("Help", text)
