"""Farm files from the window: open, save, recent ones, unsaved changes, recovery, export."""

import datetime
import uuid
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QObject, QSettings, QStandardPaths, QTimer
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from hoopwright import __version__
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm
from hoopwright.files.fault import ChangedOnDisk, FileFault
from hoopwright.files.lock import Claim, claim
from hoopwright.files.recovery import RecoveryCopy, copy_path, drop_copy, find_copies, keep_copy
from hoopwright.files.storage import open_farm, save_farm, write_whole

RECENT = "recent_files"
RECENT_COUNT = 8
COPY_AFTER_MS = 2000
FARM_FILTER = "Farm files (*.json)"
WORKBOOK_FILTER = "Workbooks (*.xlsx)"
Buttons = QMessageBox.StandardButton


class Filing(QObject):
    """What the File menu does. The questions it asks are attributes, so that a test can answer."""

    def __init__(self, session: Session, window: QWidget) -> None:
        """Keep the farm of a session on the disk."""
        super().__init__(window)
        self._session, self._window = session, window
        self._claim: Claim | None = None
        self._untitled = uuid.uuid4().hex
        self._copy: Path | None = None
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(COPY_AFTER_MS)
        self._later.timeout.connect(self.keep_recovery)
        session.farm_changed.connect(self.on_farm_changed)
        self.ask_open: Callable[[], str] = self._ask_open
        self.ask_save: Callable[[str, str, str], str] = self._ask_save
        self.ask_unsaved: Callable[[], Buttons] = self._ask_unsaved
        self.ask_changed: Callable[[str], Buttons] = self._ask_changed

    def folder(self) -> Path:
        """Return the folder of the recovery copies."""
        place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation)
        return Path(place) / "recovery"

    def recent(self) -> list[Path]:
        """Return the files opened or saved last, newest first."""
        kept = QSettings().value(RECENT, [])
        names = [kept] if isinstance(kept, str) else kept if isinstance(kept, list) else []
        return [Path(name) for name in names if Path(name).is_file()][:RECENT_COUNT]

    def open(self) -> None:
        """Ask for a file and open it."""
        name = self.ask_open()
        if name:
            self.open_path(Path(name))

    def open_path(self, path: Path) -> bool:
        """Open a farm file; return whether it is shown."""
        if not self.may_leave():
            return False
        try:
            farm, digest = open_farm(path)
        except FileFault as fault:
            self.tell(str(fault))
            return False
        claimed = self._take(path)
        if claimed is None:
            self.show_farm(farm, None, None)
            return True
        self._let_go()
        self._claim = claimed
        self._session.load(farm, path, digest)
        self._remember(path)
        return True

    def show_farm(self, farm: Farm, path: Path | None, digest: str | None) -> None:
        """Show a farm that has no file of its own yet."""
        self._let_go()
        self._untitled = uuid.uuid4().hex
        self._session.load(farm, path, digest)

    def save(self) -> bool:
        """Save under the name it has, or ask for one; return whether it is saved."""
        path = self._session.path
        return self.save_as() if path is None else self._write(path, self._session.digest)

    def save_as(self) -> bool:
        """Ask for a name and save; return whether it is saved."""
        name = self.ask_save("Save farm", self._suggested(".json"), FARM_FILTER)
        if not name:
            return False
        path = Path(name) if Path(name).suffix else Path(name + ".json")
        if path == self._session.path:
            return self._write(path, self._session.digest)
        claimed = self._take(path)
        if claimed is None:
            return False
        if not self._write(path, None):
            claimed.release()
            return False
        if self._claim is not None:
            self._claim.release()
        self._claim = claimed
        return True

    def export(self) -> None:
        """Ask for a name and write the takeoff workbook."""
        name = self.ask_save("Export workbook", self._suggested(".xlsx"), WORKBOOK_FILTER)
        if not name:
            return
        path = Path(name) if Path(name).suffix else Path(name + ".xlsx")
        from hoopwright.papers.workbook import workbook_bytes

        session = self._session
        try:
            today = datetime.date.today()
            write_whole(path, workbook_bytes(session.farm, session.plan, __version__, today))
        except (FileFault, ValueError) as fault:
            self.tell(str(fault))
            return
        session.noticed.emit("note", f"The workbook is in {path}")

    def may_leave(self) -> bool:
        """Return whether the farm as shown may go: saved, or given up by the user."""
        if self._session.stack.isClean():
            return True
        answer = self.ask_unsaved()
        if answer == Buttons.Save:
            return self.save()
        if answer == Buttons.Discard:
            self._drop_copy()
            return True
        return False

    def close(self) -> None:
        """Give back the claim and the recovery copy of a farm that needs none any more."""
        self._let_go()

    def on_farm_changed(self, _before: object, _after: object) -> None:
        """Keep a recovery copy soon after the hand rests."""
        self._later.start()

    def keep_recovery(self) -> None:
        """Write the recovery copy of unsaved work."""
        session = self._session
        if session.stack.isClean() or session.dragging:
            return
        try:
            self._copy = keep_copy(
                self.folder(), session.path, session.digest, session.farm, self._untitled
            )
        except FileFault as fault:
            session.noticed.emit("caution", f"No recovery copy could be kept. {fault}")

    def offered(self) -> tuple[RecoveryCopy, ...]:
        """Return unsaved work of a program that ended without saving."""
        try:
            return find_copies(self.folder())
        except FileFault:
            return ()

    def recover(self, found: RecoveryCopy) -> None:
        """Show recovered work as a farm that has yet to be saved; its copy stays until then."""
        self.show_farm(found.farm, None, None)
        self._untitled = found.untitled or self._untitled
        self._copy = found.path
        self._session.stack.resetClean()

    def tell(self, text: str) -> None:
        """Tell what went wrong and how to mend it."""
        self._session.noticed.emit("fault", text)

    def _write(self, path: Path, digest: str | None) -> bool:
        try:
            saved = save_farm(path, self._session.farm, digest)
        except ChangedOnDisk as fault:
            answer = self.ask_changed(str(fault))
            if answer == Buttons.Save:
                return self.save_as()
            return answer == Buttons.Yes and self._write(path, None)
        except FileFault as fault:
            self.tell(str(fault))
            return False
        self._drop_copy()
        self._session.saved(path, saved)
        self._remember(path)
        self._session.noticed.emit("note", f"Saved in {path}")
        return True

    def _take(self, path: Path) -> Claim | None:
        """Return the claim to a file, or None, with the reason told, when another has it."""
        if self._claim is not None and self._session.path == path:
            return self._claim
        try:
            return claim(path)
        except FileFault as fault:
            self.tell(str(fault))
            return None

    def _let_go(self) -> None:
        self._later.stop()
        self._drop_copy()
        if self._claim is not None:
            self._claim.release()
            self._claim = None

    def _drop_copy(self) -> None:
        place = self._copy or copy_path(self.folder(), self._session.path, self._untitled)
        self._copy = None
        try:
            drop_copy(place)
        except FileFault as fault:
            self._session.noticed.emit("caution", str(fault))

    def _remember(self, path: Path) -> None:
        names = [str(path), *(str(p) for p in self.recent() if p != path)]
        QSettings().setValue(RECENT, names[:RECENT_COUNT])

    def _suggested(self, ending: str) -> str:
        path = self._session.path
        if path is not None:
            return str(path.with_suffix(ending))
        plain = "".join(c if c.isalnum() else "-" for c in self._session.farm.name.lower())
        return plain.strip("-") + ending

    def _ask_open(self) -> str:
        return QFileDialog.getOpenFileName(self._window, "Open farm", "", FARM_FILTER)[0]

    def _ask_save(self, title: str, suggested: str, kinds: str) -> str:
        return QFileDialog.getSaveFileName(self._window, title, suggested, kinds)[0]

    def _ask_unsaved(self) -> Buttons:
        return QMessageBox.question(
            self._window,
            "Unsaved changes",
            f"{self._session.farm.name} has changes that are not saved.",
            Buttons.Save | Buttons.Discard | Buttons.Cancel,
            Buttons.Save,
        )

    def _ask_changed(self, text: str) -> Buttons:
        box = QMessageBox(QMessageBox.Icon.Warning, "Changed on disk", text, parent=self._window)
        box.setStandardButtons(Buttons.Save | Buttons.Yes | Buttons.Cancel)
        box.button(Buttons.Save).setText("Save under another name…")
        box.button(Buttons.Yes).setText("Save over it")
        return Buttons(box.exec())
