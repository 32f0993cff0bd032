"""Recovery copies: unsaved work is written beside the user's data a moment after each edit.

A copy is written by a worker from the frozen farm. It is removed when its work is saved or given
up, never before the worker has finished.
"""

import uuid
from pathlib import Path

from PySide6.QtCore import QObject, QRunnable, QStandardPaths, QThreadPool, QTimer, Signal

from hoopwright.desktop.session import Session
from hoopwright.farm import Farm
from hoopwright.files.fault import FileFault
from hoopwright.files.recovery import RecoveryCopy, copy_path, drop_copy, find_copies, keep_copy

AFTER_MS = 2000


def recovery_folder() -> Path:
    """Return the folder of the recovery copies."""
    place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation)
    return Path(place) / "recovery"


class _Told(QObject):
    """Carries what a worker has to say to the window's thread.

    Signals:
        failed(str text): When a copy could not be written.
    """

    failed = Signal(str)


class _Writing(QRunnable):
    """Writes one copy; it holds frozen values alone."""

    def __init__(
        self, told: _Told, path: Path | None, digest: str | None, farm: Farm, token: str
    ) -> None:
        super().__init__()
        self._told, self._folder = told, recovery_folder()
        self._path, self._digest, self._farm, self._token = path, digest, farm, token

    def run(self) -> None:
        """Write the copy."""
        try:
            keep_copy(self._folder, self._path, self._digest, self._farm, self._token)
        except (FileFault, OSError) as fault:
            self._told.failed.emit(str(fault))


class Safekeeping(QObject):
    """Keeps a copy of unsaved work until it is saved or given up."""

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        """Watch over a session."""
        super().__init__(parent)
        self._session = session
        self._token = uuid.uuid4().hex
        self._copies: set[Path] = set()
        self._told = _Told(self)
        self._told.failed.connect(self.on_failed)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(AFTER_MS)
        self._later.timeout.connect(self.keep)
        session.farm_changed.connect(self.on_farm_changed)

    def on_farm_changed(self, _before: Farm, _after: Farm) -> None:
        """Write a copy when the hand has rested for a while."""
        self._later.start()

    def on_failed(self, text: str) -> None:
        """Say that there is no copy."""
        self._session.noticed.emit("caution", self.tr("No recovery copy is kept.") + f" {text}")

    def keep(self) -> None:
        """Have a copy of the farm as shown written, when it holds unsaved work."""
        session = self._session
        self._later.stop()
        if session.dragging:
            self._later.start()
        elif session.stack.isClean():
            self.drop()
        else:
            self._copies.add(copy_path(recovery_folder(), session.path, self._token))
            work = (self._told, session.path, session.digest, session.farm, self._token)
            self._pool.start(_Writing(*work))

    def keep_now(self) -> None:
        """Write a copy before going on, for something went wrong."""
        self.keep()
        self.rest()

    def rest(self) -> None:
        """Wait until nothing is being written."""
        self._pool.waitForDone()

    def drop(self) -> None:
        """Remove the copies: their work is saved, or given up."""
        self._later.stop()
        self.rest()
        for path in self._copies:
            try:
                drop_copy(path)
            except FileFault as fault:
                self._session.noticed.emit("caution", str(fault))
        self._copies.clear()

    def begin(self, found: RecoveryCopy | None = None) -> None:
        """Begin with another farm; with work found again, whose copy stays until it is saved."""
        self.drop()
        self._token = uuid.uuid4().hex
        if found is not None:
            self._token = found.untitled or self._token
            self._copies.add(found.path)

    def found(self) -> tuple[RecoveryCopy, ...]:
        """Return unsaved work of a program that ended without saving it, newest first."""
        try:
            return find_copies(recovery_folder())
        except FileFault as fault:
            self._session.noticed.emit("caution", str(fault))
            return ()
