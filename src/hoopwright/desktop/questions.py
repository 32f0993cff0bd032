"""Every question that the window asks in a dialog, each a method, so that a test can answer it."""

from collections.abc import Sequence
from pathlib import Path
from typing import Literal

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QFileDialog, QInputDialog, QMessageBox, QWidget

from hoopwright.files.recovery import RecoveryCopy

Unsaved = Literal["save", "discard", "cancel"]
Changed = Literal["reload", "elsewhere", "overwrite", "cancel"]
Held = Literal["copy", "take over", "cancel"]
Found = Literal["open", "later", "discard"]

ROLES = QMessageBox.ButtonRole
STANDING = {
    "same": "The file is still as it was before.",
    "changed": "The file was changed since, so it opens beside it, without a name.",
    "gone": "The file is no longer there, so it opens without a name.",
    "never_saved": "It was never saved.",
}


def _said(text: str) -> str:
    return QCoreApplication.translate("Questions", text)


class Questions:
    """Asks the user in front of a window."""

    def __init__(self, window: QWidget) -> None:
        """Ask in front of a window."""
        self._window = window

    def farm_to_open(self, folder: str) -> Path | None:
        """Ask which farm file to open."""
        kinds = _said("Farm files (*.json);;All files (*)")
        name, _kind = QFileDialog.getOpenFileName(self._window, _said("Open farm"), folder, kinds)
        return Path(name) if name else None

    def name_to_save(self, title: str, suggested: Path, kinds: str) -> Path | None:
        """Ask under which name to save; a name that is taken is asked about there."""
        dialog = QFileDialog(self._window, title, str(suggested.parent), kinds)
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(suggested.suffix.lstrip("."))
        dialog.selectFile(suggested.name)
        chosen = dialog.selectedFiles() if dialog.exec() else []
        dialog.deleteLater()
        return Path(chosen[0]) if chosen else None

    def unsaved(self, farm_name: str) -> Unsaved:
        """Ask what becomes of changes that are not saved."""
        answers: tuple[tuple[Unsaved, str, QMessageBox.ButtonRole], ...] = (
            ("save", _said("Save"), ROLES.AcceptRole),
            ("discard", _said("Do not save"), ROLES.DestructiveRole),
            ("cancel", _said("Cancel"), ROLES.RejectRole),
        )
        text = _said("{farm} has changes that are not saved.").format(farm=farm_name)
        return answers[self._ask(_said("Unsaved changes"), text, answers)][0]

    def changed(self, text: str) -> Changed:
        """Ask what to do about a file that somebody else changed."""
        answers: tuple[tuple[Changed, str, QMessageBox.ButtonRole], ...] = (
            ("elsewhere", _said("Save under another name…"), ROLES.AcceptRole),
            ("overwrite", _said("Save over it"), ROLES.DestructiveRole),
            ("reload", _said("Give up my changes and open it again"), ROLES.DestructiveRole),
            ("cancel", _said("Cancel"), ROLES.RejectRole),
        )
        return answers[self._ask(_said("Changed on the disk"), text, answers)][0]

    def held(self, text: str) -> Held:
        """Ask what to do about a file that is open elsewhere."""
        answers: tuple[tuple[Held, str, QMessageBox.ButtonRole], ...] = (
            ("copy", _said("Open a copy"), ROLES.AcceptRole),
            ("take over", _said("Nobody has it open: take it over"), ROLES.DestructiveRole),
            ("cancel", _said("Cancel"), ROLES.RejectRole),
        )
        return answers[self._ask(_said("Open elsewhere"), text, answers)][0]

    def found(self, copy: RecoveryCopy) -> Found:
        """Ask what becomes of unsaved work that was found again."""
        answers: tuple[tuple[Found, str, QMessageBox.ButtonRole], ...] = (
            ("open", _said("Open it"), ROLES.AcceptRole),
            ("later", _said("Ask me next time"), ROLES.RejectRole),
            ("discard", _said("Remove it"), ROLES.DestructiveRole),
        )
        words = _said("Unsaved work on {farm} was kept on {day}.").format(
            farm=copy.farm.name, day=f"{copy.kept_at:%Y-%m-%d %H:%M}"
        )
        place = f"\n{copy.farm_path}" if copy.farm_path is not None else ""
        text = f"{words}{place}\n{_said(STANDING[copy.standing])}"
        return answers[self._ask(_said("Unsaved work found"), text, answers)][0]

    def wants_folder(self, path: Path) -> bool:
        """Tell where a written file is and ask whether to show its folder."""
        answers = (
            (True, _said("Open the folder"), ROLES.ActionRole),
            (False, _said("Close"), ROLES.AcceptRole),
        )
        text = _said("The workbook is written:\n{path}").format(path=path)
        return answers[self._ask(_said("Workbook"), text, answers, chosen=1)][0]

    def tunnel_name(self, name: str) -> str | None:
        """Ask for another name of a tunnel."""
        given, wanted = QInputDialog.getText(
            self._window, _said("Rename tunnel"), _said("Name of the tunnel"), text=name
        )
        return given.strip() if wanted else None

    def _ask(
        self,
        title: str,
        text: str,
        answers: Sequence[tuple[object, str, QMessageBox.ButtonRole]],
        chosen: int = 0,
    ) -> int:
        """Return which answer was given; closing the box is the one that changes nothing."""
        box = QMessageBox(QMessageBox.Icon.Question, title, text, parent=self._window)
        buttons = [box.addButton(words, role) for _key, words, role in answers]
        box.setDefaultButton(buttons[chosen])
        quiet = next(
            (i for i, answer in enumerate(answers) if answer[2] == ROLES.RejectRole),
            len(answers) - 1,
        )
        box.setEscapeButton(buttons[quiet])
        box.exec()
        clicked = box.clickedButton()
        box.deleteLater()
        return next((i for i, button in enumerate(buttons) if button is clicked), quiet)
