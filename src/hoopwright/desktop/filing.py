"""Farm files from the window: begin, open, save, recent ones, unsaved changes, papers.

Nothing is lost on the way: what cannot be opened leaves the farm that is shown, and what cannot be
saved leaves the file that was there.
"""

import datetime
import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from PySide6.QtCore import QObject, QSettings, QStandardPaths, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QGuiApplication

from hoopwright import __version__
from hoopwright.desktop.questions import Questions
from hoopwright.desktop.safekeeping import Safekeeping
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm
from hoopwright.files.fault import ChangedOnDisk, FileFault
from hoopwright.files.lock import Claim, claim, take_over
from hoopwright.files.recovery import RecoveryCopy, drop_copy
from hoopwright.files.siblings import true_path
from hoopwright.files.storage import open_farm, sample_farms, save_farm, write_whole

RECENT = "recent_farms"
RECENT_COUNT = 8
FARM_KINDS = "Farm files (*.json)"
WORKBOOK_KINDS = "Workbooks (*.xlsx)"
SHEET_KINDS = "Sheets to print (*.pdf)"

_NOT_IN_NAMES = re.compile(r"[^\w-]+")


class Filing(QObject):
    """What the File menu does with the farm of a session."""

    def __init__(
        self, session: Session, questions: Questions, parent: QObject | None = None
    ) -> None:
        """Keep the farm of a session on the disk; a session with a path has it claimed here."""
        super().__init__(parent)
        self._session = session
        self.questions = questions
        self.safekeeping = Safekeeping(session, self)
        self._claim: Claim | None = None

    def begin(self, farm: Farm) -> None:
        """Show a new farm, which has yet to be saved."""
        self._show(farm, None, None, None)
        self._session.stack.resetClean()

    def open(self) -> bool:
        """Ask for a file and open it; return whether it is shown."""
        path = self.questions.farm_to_open(str(self._folder()))
        return path is not None and self.open_path(path)

    def open_path(self, path: Path) -> bool:
        """Open a farm file; return whether it is shown. A sample opens as a copy of its own."""
        if not self.may_leave():
            return False
        if path in sample_farms():
            return self.open_sample(path)
        try:
            farm, digest = open_farm(path)
            ours = self._holds(path)
            claimed = self._claim if ours else claim(path)
        except FileFault as fault:
            return self._open_held(path, fault)
        self._claimed(farm, path, digest, claimed)
        return True

    def open_sample(self, path: Path) -> bool:
        """Show a sample as a farm without a file, so that Save asks for a name."""
        try:
            farm, _digest = open_farm(path)
        except FileFault as fault:
            self._tell(fault)
            return False
        self._show(farm, None, None, None)
        return True

    def _holds(self, path: Path) -> bool:
        """Return whether a file is the one that is open here."""
        here = self._session.path
        return here is not None and true_path(here) == true_path(path)

    def _open_held(self, path: Path, fault: FileFault) -> bool:
        """Open a file that is held elsewhere as the user says; tell every other fault."""
        try:
            farm, digest = open_farm(path)
        except FileFault as unreadable:
            self._tell(unreadable)
            return False
        answer = self.questions.held(str(fault))
        if answer == "copy":
            self._show(farm, None, None, None)
            self._session.stack.resetClean()
            self._session.noticed.emit("caution", self.tr("This is a copy; save it by a name."))
        elif answer == "take over":
            try:
                self._claimed(farm, path, digest, take_over(path))
            except FileFault as refused:
                self._tell(refused)
                return False
        return answer != "cancel"

    def _claimed(self, farm: Farm, path: Path, digest: str, claimed: Claim | None) -> None:
        self._show(farm, path, digest, claimed)
        self._remember(path)
        if claimed is not None and claimed.lock is None:
            text = self.tr("This folder cannot be written. Save changes under another name.")
            self._session.noticed.emit("caution", text)

    def _show(
        self,
        farm: Farm,
        path: Path | None,
        digest: str | None,
        claimed: Claim | None,
        found: RecoveryCopy | None = None,
    ) -> None:
        self.safekeeping.begin(found)
        self._hold(claimed)
        self._session.load(farm, path, digest)

    def _hold(self, claimed: Claim | None) -> None:
        """Hold another claim, or none, and give back the one before."""
        if self._claim is not None and self._claim is not claimed:
            self._claim.release()
        self._claim = claimed

    def save(self) -> bool:
        """Save under the name it has, or ask for one; return whether it is saved."""
        path = self._session.path
        return self.save_as() if path is None else self._write(path, self._session.digest)

    def save_as(self) -> bool:
        """Ask for a name and save; return whether it is saved."""
        title = self.tr("Save farm as")
        path = self.questions.name_to_save(title, self._suggested(".json"), FARM_KINDS)
        if path is None:
            return False
        if self._holds(path):
            return self._write(path, self._session.digest)
        try:
            claimed = claim(path)
        except FileFault as fault:
            self._tell(fault)
            return False
        if not self._write(path, None):
            claimed.release()
            return False
        self._hold(claimed)
        return True

    def _write(self, path: Path, digest: str | None) -> bool:
        try:
            saved = save_farm(path, self._session.farm, digest)
        except ChangedOnDisk as fault:
            return self._settle(path, fault)
        except FileFault as fault:
            self._tell(fault)
            return False
        self.safekeeping.drop()
        self._session.saved(path, saved)
        self._remember(path)
        self._session.noticed.emit("note", self.tr("Saved: {path}").format(path=path))
        return True

    def _settle(self, path: Path, fault: ChangedOnDisk) -> bool:
        """Do as the user says about a file that somebody else changed; return whether saved."""
        answer = self.questions.changed(str(fault))
        if answer == "elsewhere":
            return self.save_as()
        if answer == "overwrite":
            return self._write(path, None)
        if answer == "reload":
            self._reload(path)
        return False

    def _reload(self, path: Path) -> None:
        try:
            farm, digest = open_farm(path)
        except FileFault as fault:
            self._tell(fault)
            return
        self._show(farm, path, digest, self._claim)

    def export(self) -> bool:
        """Ask for a name and write the takeoff workbook; return whether it is written."""
        title = self.tr("Export workbook")
        path = self.questions.name_to_save(title, self._suggested(".xlsx"), WORKBOOK_KINDS)
        return self._export(path, self._workbook, self.tr("Workbook: {path}"))

    def export_measuring(self) -> bool:
        """Ask for a name and write the measuring sheet of the shown tunnel; say if it is done."""
        title = self.tr("Measuring sheet")
        farm = self._suggested(".pdf")
        tunnel = _plain(self._session.tunnel.name) or "tunnel"
        suggested = farm.with_name(f"{farm.stem}-{tunnel}-measuring.pdf")
        path = self.questions.name_to_save(title, suggested, SHEET_KINDS)
        return self._export(path, self._measuring_sheet, self.tr("Measuring sheet: {path}"))

    def _export(self, path: Path | None, paper: Callable[[], bytes], told: str) -> bool:
        """Write a paper and tell where it is; return whether it is written."""
        if path is None:
            return False
        try:
            with _busy():
                write_whole(path, paper())
        except (FileFault, ValueError) as fault:
            self._tell(fault)
            return False
        self._session.noticed.emit("note", told.format(path=path))
        if self.questions.wants_folder(path):
            QDesktopServices.openUrl(QUrl.fromLocalFile(str(path.parent)))
        return True

    def _workbook(self) -> bytes:
        # The library that writes workbooks loads slowly; the window must not wait for it to start.
        from hoopwright.papers.workbook import workbook_bytes

        session = self._session
        return workbook_bytes(session.farm, session.plan, __version__, datetime.date.today())

    def _measuring_sheet(self) -> bytes:
        # Few ask for it, and the window must not wait for it to start.
        from hoopwright.papers.form_painter import pdf_bytes
        from hoopwright.papers.measuring_sheet import measuring_pages
        from hoopwright.papers.measuring_subject import subject_of, usual_paper

        session = self._session
        units = session.units
        subject = subject_of(session.farm, session.tunnel, usual_paper(units), units)
        return pdf_bytes(measuring_pages(subject), self.tr("Measuring sheet"))

    def may_leave(self) -> bool:
        """Return whether the farm that is shown may go: saved, or given up by the user."""
        self._session.cancel()
        if self._session.stack.isClean():
            return True
        answer = self.questions.unsaved(self._session.farm.name)
        if answer == "save":
            return self.save()
        return answer == "discard"

    def close(self) -> None:
        """Give back the claim and remove the recovery copy: nothing unsaved is left."""
        self.safekeeping.drop()
        self._hold(None)

    def offer_recovery(self) -> None:
        """Ask about unsaved work found again, newest first, until one is opened."""
        for found in self.safekeeping.found():
            answer = self.questions.found(found)
            if answer == "discard":
                self._discard(found)
            elif answer == "open" and self.may_leave():
                self._recover(found)
                return

    def _discard(self, found: RecoveryCopy) -> None:
        try:
            drop_copy(found.path)
        except FileFault as fault:
            self._tell(fault)

    def _recover(self, found: RecoveryCopy) -> None:
        """Show work found again: in its file when that is still the same, else without a name."""
        path, digest = (
            (found.farm_path, found.base_digest) if found.standing == "same" else (None,) * 2
        )
        claimed = None
        if path is not None:
            try:
                claimed = self._claim if self._holds(path) else claim(path)
            except FileFault as fault:
                self._tell(fault)
                path = digest = None
        self._show(found.farm, path, digest, claimed, found)
        self._session.stack.resetClean()

    def recent(self) -> list[Path]:
        """Return the files opened or saved last that are still there, newest first."""
        return [path for path in self._remembered() if path.is_file()]

    def _remembered(self) -> list[Path]:
        kept = QSettings().value(RECENT)
        names = kept if isinstance(kept, list) else [kept] if kept else []
        return [Path(str(name)) for name in names]

    def _remember(self, path: Path) -> None:
        path = path.absolute()
        names = [str(path), *(str(other) for other in self._remembered() if other != path)]
        QSettings().setValue(RECENT, names[:RECENT_COUNT])

    def _folder(self) -> Path:
        """Return where the user keeps farms: beside the one that is open, or the last one."""
        path = self._session.path or next(iter(self.recent()), None)
        if path is not None:
            return path.parent
        documents = QStandardPaths.StandardLocation.DocumentsLocation
        return Path(QStandardPaths.writableLocation(documents))

    def _suggested(self, ending: str) -> Path:
        path = self._session.path
        if path is not None:
            return path.with_suffix(ending)
        return self._folder() / f"{_plain(self._session.farm.name) or 'farm'}{ending}"

    def _tell(self, fault: FileFault | ValueError) -> None:
        self._session.noticed.emit("fault", str(fault))


def _plain(name: str) -> str:
    """Return a name as a part of a file's name; "" where nothing of it is left."""
    return _NOT_IN_NAMES.sub("-", name.lower()).strip("-")


@contextmanager
def _busy() -> Iterator[None]:
    """Show the pointer of a program at work."""
    QGuiApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
    try:
        yield
    finally:
        QGuiApplication.restoreOverrideCursor()
