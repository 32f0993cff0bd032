"""Light or dark: what the user chose, and the palette that follows from it."""

from typing import Literal

from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QApplication

from hoopwright.desktop.palette import app_palette

Look = Literal["system", "light", "dark"]

LOOK = "look"


def saved_look() -> Look:
    """Return what the user chose last; at first the desktop decides."""
    kept = QSettings().value(LOOK, "system")
    return "light" if kept == "light" else "dark" if kept == "dark" else "system"


def is_dark_look(look: Look, app: QApplication) -> bool:
    """Return whether a choice makes the window dark here and now."""
    if look == "system":
        return app.styleHints().colorScheme() == Qt.ColorScheme.Dark
    return look == "dark"


def wear_look(look: Look, app: QApplication) -> None:
    """Remember a choice and dress the program in it."""
    QSettings().setValue(LOOK, look)
    app.setPalette(app_palette(is_dark_look(look, app)))


def follow_desktop(app: QApplication) -> None:
    """Dress the program as it was left, and anew when the desktop turns light or dark."""

    def dress() -> None:
        app.setPalette(app_palette(is_dark_look(saved_look(), app)))

    dress()
    app.styleHints().colorSchemeChanged.connect(dress)
