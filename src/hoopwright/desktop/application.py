"""Start the program: one application, one window, and what happens when something breaks."""

import gc
import sys
import traceback
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QSettings, QTimer
from PySide6.QtGui import QPixmapCache
from PySide6.QtWidgets import QApplication, QMessageBox

from hoopwright import __version__
from hoopwright.desktop.palette import app_font, app_palette
from hoopwright.desktop.session import Session
from hoopwright.desktop.window import DARK, MainWindow
from hoopwright.farm import Farm
from hoopwright.files.storage import open_farm, sample_farms

FIRST_SAMPLE = "brook-gothic"
PIXMAP_KB = 131072
COLLECT_MS = 5000
FULL_COLLECT_EVERY = 12


def begin_application(arguments: Sequence[str]) -> QApplication:
    """Return the application, dressed as it was left."""
    found = QApplication.instance()
    app = found if isinstance(found, QApplication) else QApplication(["hoopwright", *arguments])
    app.setApplicationName("hoopwright")
    app.setOrganizationName("hoopwright")
    app.setApplicationDisplayName("Hoopwright")
    app.setApplicationVersion(__version__)
    app.setStyle("Fusion")
    app.setFont(app_font())
    app.setPalette(app_palette(QSettings().value(DARK, False, bool) is True))
    QPixmapCache.setCacheLimit(PIXMAP_KB)
    return app


def open_window(path: Path | None) -> MainWindow:
    """Return the window with the farm of a file; without one, with the sample farm.

    A file that cannot be opened is told in the window, and the sample stands in its place.
    """
    window = MainWindow(Session(_sample()))
    if path is not None and not window.filing.open_path(path):
        window.session.noticed.emit("caution", f"The sample farm is shown instead of {path}")
    return window


def run_window(path: Path | None) -> int:
    """Show the window until it is closed; return the exit status."""
    app = begin_application([])
    window = open_window(path)
    sys.excepthook = _Hook(window).on_error
    keeper = _collect_on_this_thread(app)
    window.show()
    QTimer.singleShot(0, window.offer_recovery)
    status = app.exec()
    keeper.stop()
    return int(status)


def _sample() -> Farm:
    path = next(p for p in sample_farms() if p.stem == FIRST_SAMPLE)
    return open_farm(path)[0]


def _collect_on_this_thread(app: QApplication) -> QTimer:
    """Collect garbage on the window's thread alone: in a worker it would delete widgets there."""
    gc.disable()
    timer = QTimer(app)
    turns = 0

    def collect() -> None:
        nonlocal turns
        turns += 1
        gc.collect(2 if turns % FULL_COLLECT_EVERY == 0 else 1)

    timer.timeout.connect(collect)
    timer.start(COLLECT_MS)
    return timer


class _Hook:
    """What happens when the program meets a fault of its own: the work is kept, and it is told."""

    def __init__(self, window: MainWindow) -> None:
        self._window = window

    def on_error(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Keep a recovery copy and show a report that can be copied."""
        report = "".join(traceback.format_exception(kind, error, trace))
        sys.stderr.write(report)
        if issubclass(kind, KeyboardInterrupt):
            QApplication.quit()
            return
        self._window.filing.keep_recovery()
        box = QMessageBox(self._window)
        box.setIcon(QMessageBox.Icon.Warning)
        box.setText(
            "Hoopwright met a fault of its own. Your work is still here, and a recovery copy is "
            "kept. Undo the last step, save under another name, and send the report below."
        )
        box.setDetailedText(report)
        box.exec()
