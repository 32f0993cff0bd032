"""What the Help menu shows: keys, cautions, what the program is."""

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QMessageBox, QWidget

from hoopwright import __version__
from hoopwright.papers.cautions import CAUTIONS

CAUTION = (
    "Figures are estimates for planning. Local codes, makers' instructions and licensed practice "
    "come first."
)
KEYS = (
    ("Tab, Shift+Tab on the drawing", "next or previous handle"),
    ("Left, Right", "move the picked split or seam by one bow; with Shift by five"),
    ("Ctrl or Alt with an arrow", "a fine step"),
    ("Up, Down", "raise or lower the picked hip seam"),
    ("a digit or Enter", "type the position of what is picked"),
    ("C", "crank of the picked curtain to its other end"),
    ("Escape", "let go of a drag without a change"),
    ("Home, +, -, Z", "show all, larger, smaller, to what is picked"),
    ("F6", "go to the next area of the window"),
)


def show_keys(parent: QWidget) -> None:
    """Show the keys."""
    rows = "".join(f"<tr><td><b>{key}</b>&nbsp;</td><td>{act}</td></tr>" for key, act in KEYS)
    QMessageBox.information(parent, _said("Keys"), f"<table>{rows}</table>")


def show_cautions(parent: QWidget) -> None:
    """Show the cautions of the trade."""
    rows = "".join(f"<p><b>{c.title}.</b> {c.text}</p>" for c in CAUTIONS)
    box = QMessageBox(parent)
    box.setWindowTitle(_said("Cautions"))
    box.setText(CAUTION)
    box.setInformativeText(rows)
    box.setStyleSheet("QLabel { min-width: 820px; }")
    box.exec()
    box.deleteLater()


def show_about(parent: QWidget) -> None:
    """Show name, version and what the figures are."""
    QMessageBox.about(
        parent,
        _said("About"),
        f"Hoopwright {__version__}. It lays out and costs the skin of a high tunnel. {CAUTION} "
        "Pick anything, or hover over a figure, to see how it was got.",
    )


def _said(text: str) -> str:
    return QCoreApplication.translate("Help", text)
