"""The questions as people meet them: every answer can be given by its button, Escape by none."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QFileDialog,
    QInputDialog,
    QLineEdit,
    QMessageBox,
    QWidget,
)
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop.questions import Questions
from hoopwright.files.recovery import RecoveryCopy


@pytest.fixture
def questions(qtbot: QtBot) -> Questions:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    asking = Questions(window)
    asking.kept = window
    return asking


def then(qtbot: QtBot, act: Callable[[QDialog], None]) -> None:
    """Do something to the dialog that opens next."""

    def try_it() -> None:
        dialog = QApplication.activeModalWidget()
        if isinstance(dialog, QDialog):
            act(dialog)
        else:
            QTimer.singleShot(10, try_it)

    QTimer.singleShot(0, try_it)


def click(words: str) -> Callable[[QDialog], None]:
    def press(dialog: QDialog) -> None:
        assert isinstance(dialog, QMessageBox)
        button = next(b for b in dialog.buttons() if b.text().replace("&", "").startswith(words))
        QTest.mouseClick(button, Qt.MouseButton.LeftButton)

    return press


def escape(dialog: QDialog) -> None:
    QTest.keyClick(dialog, Qt.Key.Key_Escape)


@pytest.mark.parametrize(
    ("words", "answer"), [("Save", "save"), ("Do not save", "discard"), ("Cancel", "cancel")]
)
def test_unsaved_changes(qtbot: QtBot, questions: Questions, words: str, answer: str) -> None:
    then(qtbot, click(words))
    assert questions.unsaved("Long Acre") == answer
    then(qtbot, escape)
    assert questions.unsaved("Long Acre") == "cancel"


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ("Save under another", "elsewhere"),
        ("Save over it", "overwrite"),
        ("Give up", "reload"),
        ("Cancel", "cancel"),
    ],
)
def test_changed_on_the_disk(qtbot: QtBot, questions: Questions, words: str, answer: str) -> None:
    then(qtbot, click(words))
    assert questions.changed("The file was changed.") == answer
    then(qtbot, escape)
    assert questions.changed("The file was changed.") == "cancel"


@pytest.mark.parametrize(
    ("words", "answer"), [("Open a copy", "copy"), ("Nobody", "take over"), ("Cancel", "cancel")]
)
def test_open_elsewhere(qtbot: QtBot, questions: Questions, words: str, answer: str) -> None:
    then(qtbot, click(words))
    assert questions.held("The file is open elsewhere.") == answer
    then(qtbot, escape)
    assert questions.held("The file is open elsewhere.") == "cancel"


@pytest.mark.parametrize(
    ("words", "answer"), [("Open it", "open"), ("Ask me", "later"), ("Remove it", "discard")]
)
def test_unsaved_work_found(qtbot: QtBot, questions: Questions, words: str, answer: str) -> None:
    copy = RecoveryCopy(
        path=Path("copy.json"),
        farm_path=Path("farm.json"),
        untitled="",
        base_digest=None,
        farm=samples.small_farm(),
        kept_at=datetime(2026, 2, 3, 14, 5),
        standing="changed",
    )
    shown: list[str] = []

    def read(dialog: QDialog) -> None:
        assert isinstance(dialog, QMessageBox)
        shown.append(dialog.text())
        click(words)(dialog)

    then(qtbot, read)
    assert questions.found(copy) == answer
    assert "Small farm" in shown[0]
    assert "2026-02-03 14:05" in shown[0]
    assert "changed since" in shown[0]
    then(qtbot, escape)
    assert questions.found(copy) == "later"


def test_written_workbook(qtbot: QtBot, questions: Questions) -> None:
    then(qtbot, click("Open the folder"))
    assert questions.wants_folder(Path("takeoff.xlsx"))
    then(qtbot, escape)
    assert not questions.wants_folder(Path("takeoff.xlsx"))


def test_name_of_a_tunnel(qtbot: QtBot, questions: Questions) -> None:
    def type_name(dialog: QDialog) -> None:
        assert isinstance(dialog, QInputDialog)
        line = dialog.findChild(QLineEdit)
        assert line.text() == "Old"
        line.setText(" Hill ")
        dialog.accept()

    then(qtbot, type_name)
    assert questions.tunnel_name("Old") == "Hill"
    then(qtbot, escape)
    assert questions.tunnel_name("Old") is None


def test_name_to_save_gets_its_ending(
    qtbot: QtBot, questions: Questions, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    QApplication.setAttribute(Qt.ApplicationAttribute.AA_DontUseNativeDialogs)

    def type_name(dialog: QDialog) -> None:
        assert isinstance(dialog, QFileDialog)
        assert dialog.selectedFiles() == [str(tmp_path / "farm.json")]
        dialog.findChild(QLineEdit).setText("other")
        dialog.accept()

    then(qtbot, type_name)
    path = questions.name_to_save("Save farm as", tmp_path / "farm.json", "Farm files (*.json)")
    assert path == tmp_path / "other.json"
    then(qtbot, escape)
    assert questions.name_to_save("Save farm as", tmp_path / "farm.json", "Farms (*.json)") is None


def test_farm_to_open(questions: Questions, monkeypatch: pytest.MonkeyPatch) -> None:
    given = ["farm.json"]
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_asked: (given[0], ""))
    assert questions.farm_to_open("") == Path("farm.json")
    given[0] = ""
    assert questions.farm_to_open("") is None
