"""Farm files from the window: nothing is lost, and every fault is told in words."""

import errno
import io
from pathlib import Path

import openpyxl
import pytest
from PySide6.QtGui import QDesktopServices
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop.window import MainWindow
from hoopwright.files.lock import claim
from hoopwright.files.storage import open_farm, sample_farms, save_farm
from windows import Answers, make_window, rename, told_by


@pytest.fixture
def answers() -> Answers:
    return Answers()


@pytest.fixture
def window(qtbot: QtBot, answers: Answers) -> MainWindow:
    made = make_window(answers=answers)
    qtbot.addWidget(made)
    return made


def test_first_start_shows_the_sample_with_nothing_to_save(window: MainWindow) -> None:
    assert window.session.farm.name == "Alder Brook Farm"
    assert window.session.path is None
    assert not window.isWindowModified()


def test_saved_farm_opens_equal(window: MainWindow, answers: Answers, tmp_path: Path) -> None:
    answers.file = tmp_path / "mine.json"
    rename(window, "Renamed")
    assert window.isWindowModified()
    assert window.filing.save()
    assert not window.isWindowModified()
    assert open_farm(answers.file)[0] == window.session.farm
    assert window.windowTitle() == "Alder Brook Farm (mine.json)[*]"
    rename(window, "Again")
    assert window.filing.save()
    assert [kind for kind, _text in answers.asked] == ["name to save"]
    farm = window.session.farm
    window.filing.open_sample(sample_farms()[1])
    assert window.filing.open_path(answers.file)
    assert window.session.farm == farm
    assert not window.isWindowModified()


def test_undo_back_to_the_saved_farm_is_saved(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    answers.file = tmp_path / "mine.json"
    rename(window, "Second")
    window.filing.save()
    rename(window, "Third")
    assert window.isWindowModified()
    window.session.stack.undo()
    assert not window.isWindowModified()


def test_question_without_an_answer_saves_nothing(window: MainWindow, tmp_path: Path) -> None:
    rename(window, "Second")
    assert not window.filing.save()
    assert window.isWindowModified()
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "empty"),
        (b'{"program": "hoopwright", "format": 99, "farm": {}}', "newer"),
        (b'{"program": "another"}', "not a farm file"),
        (b"\x89PNG\r\n", "farm"),
    ],
)
def test_file_that_is_no_farm_is_told_and_changes_nothing(
    window: MainWindow, tmp_path: Path, content: bytes, words: str
) -> None:
    path = tmp_path / "bad.json"
    path.write_bytes(content)
    before, told = window.session.farm, told_by(window)
    assert not window.filing.open_path(path)
    assert window.session.farm is before
    ((severity, text),) = told
    assert severity == "fault"
    assert str(path) in text
    assert words in text.lower()
    assert path.read_bytes() == content


def test_missing_file_is_told(window: MainWindow, tmp_path: Path) -> None:
    told = told_by(window)
    assert not window.filing.open_path(tmp_path / "nowhere.json")
    assert told[0][0] == "fault"
    assert "no such file" in told[0][1]


def test_unsaved_work_leaves_only_as_the_user_says(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    other = tmp_path / "other.json"
    save_farm(other, samples.small_farm(), None)
    rename(window, "Mine")
    answers.unsaved_answer = "cancel"
    assert not window.filing.open_path(other)
    assert window.session.tunnel.name == "Mine"
    answers.unsaved_answer, answers.file = "save", tmp_path / "mine.json"
    assert window.filing.open_path(other)
    assert window.session.farm == samples.small_farm()
    assert open_farm(tmp_path / "mine.json")[0].tunnels[0].name == "Mine"
    rename(window, "Given up")
    answers.unsaved_answer = "discard"
    assert window.filing.open_path(other)
    assert window.session.farm == samples.small_farm()


def test_window_stays_open_when_the_save_before_it_is_not_made(
    window: MainWindow, answers: Answers
) -> None:
    window.show()
    rename(window, "Mine")
    answers.unsaved_answer = "save"
    assert not window.close()
    assert window.isVisible()
    answers.unsaved_answer = "discard"
    assert window.close()


def test_recent_farms_are_the_last_ones_that_are_still_there(
    window: MainWindow, tmp_path: Path
) -> None:
    paths = [tmp_path / f"{name}.json" for name in ("one", "two", "three")]
    for path in paths:
        save_farm(path, samples.small_farm(), None)
        assert window.filing.open_path(path)
    window.filing.open_path(paths[0])
    paths[1].unlink()
    assert window.filing.recent() == [paths[0], paths[2]]
    window.fill_recent()
    texts = [action.text() for action in window.menu.submenus["recent"].actions()]
    assert texts == [str(paths[0]), str(paths[2])]


@pytest.mark.parametrize("answer", ["cancel", "overwrite", "reload", "elsewhere"])
def test_file_changed_by_somebody_else_is_asked_about(
    window: MainWindow, answers: Answers, tmp_path: Path, answer: str
) -> None:
    path, elsewhere = tmp_path / "farm.json", tmp_path / "elsewhere.json"
    save_farm(path, samples.small_farm(), None)
    window.filing.open_path(path)
    theirs = samples.small_farm().but(name="Other hands")
    save_farm(path, theirs, None)
    rename(window, "Mine")
    mine = window.session.farm
    answers.changed_answer, answers.file = answer, elsewhere
    saved = window.filing.save()
    assert "changed by another" in answers.asked[0][1]
    assert saved == (answer in ("overwrite", "elsewhere"))
    assert open_farm(path)[0] == (mine if answer == "overwrite" else theirs)
    assert window.session.farm == (theirs if answer == "reload" else mine)
    assert window.session.path == (elsewhere if answer == "elsewhere" else path)
    if answer == "elsewhere":
        assert open_farm(elsewhere)[0] == mine


def test_file_that_is_open_elsewhere_opens_as_a_copy_or_is_taken_over(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    path = tmp_path / "shared.json"
    save_farm(path, samples.small_farm(), None)
    held = claim(path)
    answers.held_answer = "cancel"
    before = window.session.farm
    assert not window.filing.open_path(path)
    assert window.session.farm is before
    answers.held_answer = "copy"
    assert window.filing.open_path(path)
    assert window.session.path is None
    assert window.isWindowModified()
    answers.held_answer = "take over"
    assert window.filing.open_path(path)
    assert window.session.path == path
    assert "is open in hoopwright" in answers.asked[0][1]
    held.release()


def test_claim_is_given_back_when_another_farm_is_opened(
    window: MainWindow, tmp_path: Path
) -> None:
    paths = [tmp_path / "one.json", tmp_path / "two.json"]
    for path in paths:
        save_farm(path, samples.small_farm(), None)
    window.filing.open_path(paths[0])
    assert window.filing.open_path(paths[0]), "the file that is open can be opened again"
    window.filing.open_path(paths[1])
    claim(paths[0]).release()
    window.close()
    claim(paths[1]).release()


def test_sample_opens_as_a_farm_without_a_file(window: MainWindow) -> None:
    sample = sample_farms()[-1]
    assert window.filing.open_path(sample)
    assert window.session.path is None
    assert window.session.farm == open_farm(sample)[0]
    assert not window.isWindowModified()


def test_missing_folder_is_told_and_the_work_stays(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    told = told_by(window)
    answers.file = tmp_path / "no" / "where.json"
    rename(window, "Mine")
    assert not window.filing.save()
    assert told[-1][0] == "fault"
    assert window.isWindowModified()
    assert window.session.tunnel.name == "Mine"


@pytest.mark.parametrize(
    ("number", "words"),
    [(errno.EACCES, "may not be written"), (errno.EROFS, "only be read"), (errno.ENOSPC, "full")],
)
def test_disk_that_takes_no_file_is_told_and_nothing_is_lost(
    window: MainWindow,
    answers: Answers,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    number: int,
    words: str,
) -> None:
    def refuse(*_work: object) -> None:
        raise OSError(number, "refused")

    answers.file = tmp_path / "mine.json"
    rename(window, "First")
    assert window.filing.save()
    rename(window, "Second")
    told = told_by(window)
    monkeypatch.setattr("hoopwright.files.storage._write_synced", refuse)
    assert not window.filing.save()
    answers.file = tmp_path / "takeoff.xlsx"
    assert not window.filing.export()
    assert [severity for severity, _text in told] == ["fault", "fault"]
    assert all(words in text for _severity, text in told)
    assert window.isWindowModified()
    assert open_farm(tmp_path / "mine.json")[0].tunnels[0].name == "First"
    assert not answers.file.exists()


def test_folder_that_takes_no_lock_is_told_when_its_farm_is_opened(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_work: object) -> bool:
        raise PermissionError(errno.EACCES, "refused")

    path = tmp_path / "farm.json"
    save_farm(path, samples.small_farm(), None)
    told = told_by(window)
    monkeypatch.setattr("hoopwright.files.lock._create", refuse)
    assert window.filing.open_path(path)
    assert told == [("caution", "This folder cannot be written. Save changes under another name.")]


def test_exported_workbook_pays_what_the_window_says(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    answers.file = tmp_path / "takeoff.xlsx"
    assert window.filing.export()
    assert answers.asked[0] == ("name to save", answers.asked[0][1])
    assert answers.asked[0][1].endswith("alder-brook-farm.xlsx")
    assert answers.asked[1] == ("wants folder", str(answers.file))
    book = openpyxl.load_workbook(io.BytesIO(answers.file.read_bytes()), data_only=True)
    values = {c.value for row in book["Summary"].iter_rows() for c in row}
    assert float(window.session.plan.cost.to_pay) in values


def test_folder_of_the_workbook_is_opened_when_it_is_wanted(
    window: MainWindow, answers: Answers, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[str] = []
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda url: opened.append(url.toLocalFile()))
    answers.file, answers.shows_folder = tmp_path / "takeoff.xlsx", True
    assert window.filing.export()
    assert [Path(path) for path in opened] == [tmp_path]


def test_farm_just_begun_counts_as_unsaved(window: MainWindow, answers: Answers) -> None:
    window.filing.begin(samples.small_farm())
    assert window.isWindowModified()
    answers.unsaved_answer = "cancel"
    assert not window.filing.may_leave()
    answers.unsaved_answer = "discard"
