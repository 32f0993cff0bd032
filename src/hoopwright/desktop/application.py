"""Start the program: one application, one window, and what happens when something breaks."""

import gc
import platform
import sys
import traceback
from collections.abc import Callable, Sequence
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QObject, QTimer, qVersion
from PySide6.QtGui import QGuiApplication, QPixmapCache
from PySide6.QtWidgets import QApplication, QMessageBox

from hoopwright import __version__
from hoopwright.desktop.look import follow_desktop
from hoopwright.desktop.palette import app_font
from hoopwright.desktop.session import Session
from hoopwright.desktop.window import MainWindow
from hoopwright.farm import Farm
from hoopwright.files.storage import open_farm, sample_farms

NAME = "hoopwright"
SHOWN_NAME = "Hoopwright"
FIRST_SAMPLE = "brook-gothic"
PIXMAP_KB = 131072
COLLECT_MS = 2000
FULL_COLLECT_EVERY = 30


def begin_application(arguments: Sequence[str] = ()) -> QApplication:
    """Return the application, dressed as it was left."""
    found = QApplication.instance()
    app = found if isinstance(found, QApplication) else QApplication([NAME, *arguments])
    app.setApplicationName(NAME)
    app.setOrganizationName(NAME)
    app.setApplicationDisplayName(SHOWN_NAME)
    app.setApplicationVersion(__version__)
    app.setStyle("Fusion")
    app.setFont(app_font())
    follow_desktop(app)
    QPixmapCache.setCacheLimit(PIXMAP_KB)
    return app


def open_window(path: Path | None) -> MainWindow:
    """Return the window with the farm of a file; without one, with the sample farm.

    A file that cannot be opened is told in the window, and the sample stands in its place.
    """
    window = MainWindow(Session(_first_sample()))
    if path is not None:
        window.filing.open_path(path)
    return window


def run_window(path: Path | None) -> int:
    """Show the window until it is closed; return the exit status."""
    app = begin_application()
    collector = Collector()
    window = open_window(path)
    sys.excepthook = FaultHook(window)
    window.show()
    QTimer.singleShot(0, window.filing.offer_recovery)
    status = app.exec()
    collector.stop()
    sys.excepthook = sys.__excepthook__
    return int(status)


def _first_sample() -> Farm:
    path = next(path for path in sample_farms() if path.stem == FIRST_SAMPLE)
    return open_farm(path)[0]


class Collector(QObject):
    """Collects garbage on the window's thread alone: a worker would delete widgets there."""

    def __init__(self) -> None:
        """Take over from the interpreter."""
        super().__init__()
        gc.disable()
        self._turns = 0
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.collect)
        self._timer.start(COLLECT_MS)

    def collect(self) -> None:
        """Collect the young garbage, and all of it now and then."""
        self._turns += 1
        gc.collect(2 if self._turns % FULL_COLLECT_EVERY == 0 else 1)

    def stop(self) -> None:
        """Give it back to the interpreter."""
        self._timer.stop()
        gc.enable()


class FaultHook:
    """What happens when the program meets a fault of its own: the work is kept, and it is told."""

    def __init__(self, window: MainWindow) -> None:
        """Watch over a window."""
        self._window = window
        self._telling = False
        self.show: Callable[[str], None] = self._show

    def __call__(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        """Keep a recovery copy and show a report that can be copied; the window stays."""
        report = fault_report(kind, error, trace)
        sys.stderr.write(report)
        if issubclass(kind, KeyboardInterrupt):
            QApplication.quit()
        elif not self._telling:
            self._telling = True
            try:
                self._window.session.cancel()
                self._window.filing.safekeeping.keep_now()
            finally:
                self.show(report)
                self._telling = False

    def _show(self, report: str) -> None:
        box = QMessageBox(self._window)
        box.setIcon(QMessageBox.Icon.Warning)
        box.setWindowTitle(box.tr("A fault of the program"))
        box.setText(
            box.tr(
                "The program met a fault of its own. Your farm is still open, and a recovery copy "
                "of unsaved work is kept. Undo the last step, or save under another name."
            )
        )
        box.setDetailedText(report)
        copy = box.addButton(box.tr("Copy the report"), QMessageBox.ButtonRole.ActionRole)
        box.addButton(QMessageBox.StandardButton.Close)
        box.exec()
        if box.clickedButton() is copy:
            QGuiApplication.clipboard().setText(report)
        box.deleteLater()


def fault_report(
    kind: type[BaseException], error: BaseException, trace: TracebackType | None
) -> str:
    """Return what a developer needs to know of a fault; nothing of the farm is in it."""
    versions = (
        f"{NAME} {__version__}, Python {platform.python_version()}, Qt {qVersion()}, "
        f"{platform.system()} {platform.release()}\n"
    )
    return versions + "".join(traceback.format_exception(kind, error, trace))
