"""The one table of colours: what the drawing is made of, light and dark, and the window's own.

The five layer colours keep a distance of at least 35 in CIELAB from each other, also as seen with
each of the three common colour deficiencies, and a contrast of 3.2 or more to the paper. No
meaning hangs on a colour alone: hatch, dash, width or shape always says it too.
"""

from functools import cache
from typing import Literal

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette, QPen

from hoopwright.papers.scene import Style
from hoopwright.pressure.held import AirState

Colour = Literal[
    "paper",
    "text",
    "muted",
    "frame",
    "timber",
    "ground",
    "roof",
    "curtain",
    "end wall",
    "hardware",
    "selected",
    "fault",
    "caution",
    "note",
    "good",
]

COLOURS: dict[Colour, tuple[str, str]] = {
    "paper": ("#FFFFFF", "#1C1E20"),
    "text": ("#1B2127", "#E8EAEC"),
    "muted": ("#59626B", "#A3ACB5"),
    "frame": ("#8A949E", "#78828C"),
    "timber": ("#6B5A45", "#B7A283"),
    "ground": ("#59626B", "#A3ACB5"),
    "roof": ("#4890F0", "#18D8F0"),
    "curtain": ("#909000", "#907818"),
    "end wall": ("#4818D8", "#C000F0"),
    "hardware": ("#783078", "#D83078"),
    "selected": ("#901830", "#A8D800"),
    "fault": ("#B3261E", "#FF8A80"),
    "caution": ("#8A5A00", "#F0B84A"),
    "note": ("#2D5FA8", "#8AB8FF"),
    "good": ("#2B6E3F", "#7FCB95"),
}
"""Each colour on the light and on the dark paper."""

TINTS: dict[AirState, tuple[str, str]] = {
    "not fed": ("#6E767E", "#8C949C"),
    "flat": ("#B9CFC9", "#33504B"),
    "low": ("#8FBFB3", "#33685E"),
    "in range": ("#4F9E8E", "#3C8F80"),
    "high": ("#1D5F55", "#8ADBCB"),
}
"""What cells are tinted with on the light and on the dark paper: the more pressure, the further
from the paper."""

PATTERNS: dict[AirState, tuple[tuple[Literal[1, -1], ...], float]] = {
    "not fed": ((1, -1), 1.0),
    "flat": ((1,), 0.7),
    "low": ((1,), 1.7),
    "in range": ((), 1.0),
    "high": ((-1,), 0.7),
}
"""Slants of the lines over a tinted cell, and their step against the usual one."""

TINT_SHARE, PATTERN_SHARE = 0.3, 0.85
LEAST_POINTS = 9
SMALLER_POINTS = 1


class Ink(Struct, frozen=True):
    """How a style is drawn.

    Attributes:
        colour: Its colour.
        width_px: Width of its lines.
        dash: Lengths of dashes and gaps in line widths, empty for a full line.
        fill: Share of the colour that an area is filled with.
        strength: Share of the colour that its lines have.
        smooth: Whether its lines are drawn with soft edges; upright and level ones are not.
    """

    colour: Colour
    width_px: float = 1.0
    dash: tuple[float, ...] = ()
    fill: float = 0.0
    strength: float = 1.0
    smooth: bool = False


INKS: dict[Style, Ink] = {
    "ground": Ink("ground", 2.0),
    "roof inner": Ink("roof", 1.0, (4, 3), fill=0.10, strength=0.8, smooth=True),
    "roof": Ink("roof", 2.0, fill=0.16, smooth=True),
    "tail": Ink("roof", 1.0, (2, 3), fill=0.07, strength=0.8),
    "pocket": Ink("end wall", 1.0, (5, 3), fill=0.14),
    "strip": Ink("end wall", 1.0, (2, 2), fill=0.22),
    "end wall": Ink("end wall", 3.0, fill=0.06),
    "rigid": Ink("muted", 1.4, fill=0.18),
    "rail": Ink("timber", 2.0),
    "door": Ink("end wall", 1.4, fill=0.10),
    "curtain": Ink("curtain", 2.4, fill=0.13, strength=0.85, smooth=True),
    "inflated curtain": Ink("curtain", 2.4, fill=0.22, strength=0.85, smooth=True),
    "bow": Ink("frame", 1.0),
    "ridge": Ink("frame", 1.0, (8, 3, 2, 3)),
    "board": Ink("timber", 2.0, fill=0.35),
    "kept": Ink("good", 1.6, fill=0.22, strength=0.9, smooth=True),
    "repaired": Ink("caution", 1.6, (4, 2), fill=0.22, strength=0.9, smooth=True),
    "cell": Ink("roof", 1.0, (1, 3)),
    "seal": Ink("hardware", 1.4, (1, 2)),
    "rope": Ink("hardware", 1.0, strength=0.7, smooth=True),
    "open": Ink("hardware", 1.2, (4, 3), strength=0.8, smooth=True),
    "bar": Ink("hardware", 3.0),
    "hip": Ink("timber", 3.0),
    "unread": Ink("timber", 2.0, (4, 3)),
    "seam": Ink("roof", 2.0, (5, 2), fill=0.30),
    "split": Ink("hardware", 2.0),
    "proposed": Ink("text", 2.6, (5, 3)),
    "crank": Ink("hardware", 1.6, fill=1.0, smooth=True),
    "jumper": Ink("hardware", 2.4, smooth=True),
    "blower": Ink("hardware", 1.6, smooth=True),
    "dimension": Ink("muted", 1.0),
    "label": Ink("text", 1.0, smooth=True),
}
"""One row for each style of a drawing."""


def tint(state: AirState, dark: bool, strong: bool = False) -> QColor:
    """Return what a cell of a state is tinted with, or what its pattern is drawn with."""
    mixed = QColor(TINTS[state][dark])
    mixed.setAlphaF(PATTERN_SHARE if strong else TINT_SHARE)
    return mixed


def colour(name: Colour, dark: bool) -> QColor:
    """Return a colour of the table."""
    return QColor(COLOURS[name][dark])


def clear(name: Colour, dark: bool, share: float) -> QColor:
    """Return a colour that lets through what lies below it."""
    mixed = colour(name, dark)
    mixed.setAlphaF(share)
    return mixed


@cache
def style_pen(style: Style, dark: bool) -> QPen:
    """Return the pen of a style: its width does not grow with the drawing."""
    ink = INKS[style]
    pen = QPen(clear(ink.colour, dark, ink.strength), ink.width_px)
    pen.setCosmetic(True)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if ink.dash:
        pen.setDashPattern(list(ink.dash))
    return pen


@cache
def style_fill(style: Style, dark: bool) -> QColor:
    """Return what an area of a style is filled with."""
    ink = INKS[style]
    return clear(ink.colour, dark, ink.fill)


_ROLES: tuple[tuple[QPalette.ColorRole, str, str], ...] = (
    (QPalette.ColorRole.Window, "#F2F3F1", "#26292C"),
    (QPalette.ColorRole.WindowText, "#1B2127", "#E8EAEC"),
    (QPalette.ColorRole.Base, "#FFFFFF", "#1C1E20"),
    (QPalette.ColorRole.AlternateBase, "#F7F8F6", "#222528"),
    (QPalette.ColorRole.Text, "#1B2127", "#E8EAEC"),
    (QPalette.ColorRole.PlaceholderText, "#6A737C", "#98A1AA"),
    (QPalette.ColorRole.Button, "#E7E9E6", "#33373B"),
    (QPalette.ColorRole.ButtonText, "#1B2127", "#E8EAEC"),
    (QPalette.ColorRole.BrightText, "#FFFFFF", "#FFFFFF"),
    (QPalette.ColorRole.ToolTipBase, "#FFFDF2", "#34383C"),
    (QPalette.ColorRole.ToolTipText, "#1B2127", "#E8EAEC"),
    (QPalette.ColorRole.Highlight, "#2B62B4", "#2F6F8F"),
    (QPalette.ColorRole.HighlightedText, "#FFFFFF", "#FFFFFF"),
    (QPalette.ColorRole.Link, "#2D5FA8", "#8AB8FF"),
    (QPalette.ColorRole.LinkVisited, "#4818D8", "#C79BFF"),
    (QPalette.ColorRole.Light, "#FFFFFF", "#43484D"),
    (QPalette.ColorRole.Midlight, "#EEF0ED", "#3A3F44"),
    (QPalette.ColorRole.Mid, "#B9BFC4", "#4B5157"),
    (QPalette.ColorRole.Dark, "#98A0A7", "#15171A"),
    (QPalette.ColorRole.Shadow, "#6F777E", "#0B0C0D"),
)
_FAINT: tuple[QPalette.ColorRole, ...] = (
    QPalette.ColorRole.WindowText,
    QPalette.ColorRole.Text,
    QPalette.ColorRole.ButtonText,
)


def app_palette(dark: bool) -> QPalette:
    """Return the palette of the whole program."""
    palette = QPalette()
    for role, light_hex, dark_hex in _ROLES:
        palette.setColor(role, QColor(dark_hex if dark else light_hex))
    faint = QColor("#7D868E" if dark else "#8C949B")
    for role in _FAINT:
        palette.setColor(QPalette.ColorGroup.Disabled, role, faint)
    return palette


def is_dark(palette: QPalette) -> bool:
    """Return whether a palette is a dark one."""
    return palette.color(QPalette.ColorRole.Base).lightness() < 128


def app_font() -> QFont:
    """Return the font of the program: the desktop's own, never too small to read."""
    font = QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont)
    if 0 < font.pointSizeF() < LEAST_POINTS:
        font.setPointSizeF(LEAST_POINTS)
    return font


def drawing_font(font: QFont, bold: bool = False) -> QFont:
    """Return the font of texts on the drawing, a little smaller than the window's."""
    small = QFont(font)
    if font.pointSizeF() > 0:
        small.setPointSizeF(max(LEAST_POINTS - SMALLER_POINTS, font.pointSizeF() - SMALLER_POINTS))
    small.setBold(bold)
    return small
