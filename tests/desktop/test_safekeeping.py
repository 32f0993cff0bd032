"""Recovery copies: unsaved work comes back after a crash, and goes when it is not needed."""

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop import safekeeping
from hoopwright.desktop.safekeeping import recovery_folder
from hoopwright.desktop.window import MainWindow
from hoopwright.files.owner import Owner
from hoopwright.files.storage import open_farm, save_farm
from windows import Answers, make_window, rename, told_by

ENDED = 2**31 - 1


@pytest.fixture
def answers() -> Answers:
    return Answers()


@pytest.fixture
def window(qtbot: QtBot, answers: Answers) -> MainWindow:
    made = make_window(answers=answers)
    qtbot.addWidget(made)
    return made


def copies() -> list[Path]:
    return sorted(recovery_folder().glob("recovery-*.json"))


def crash(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    """Leave a copy behind as a program does that ends without a word, then show another farm."""
    ended = Owner(host=safekeeping_host(), pid=ENDED)
    with monkeypatch.context() as patch:
        patch.setattr("hoopwright.files.recovery.this_owner", lambda: ended)
        window.filing.safekeeping.keep_now()
    kept = {path: path.read_bytes() for path in copies()}
    window.filing.open_sample(samples_path())
    for path, data in kept.items():
        path.write_bytes(data)


def safekeeping_host() -> str:
    from hoopwright.files.owner import this_owner

    return this_owner().host


def samples_path() -> Path:
    from hoopwright.files.storage import sample_farms

    return sample_farms()[0]


def test_copy_is_written_when_the_hand_has_rested(
    window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert safekeeping.AFTER_MS == 2000
    window.filing.safekeeping._later.setInterval(20)
    rename(window, "Kept")
    qtbot.waitUntil(lambda: len(copies()) == 1)
    window.filing.safekeeping.rest()
    assert '"Kept"' in copies()[0].read_text("utf-8")


def test_copy_goes_at_a_save_and_at_a_clean_close(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    rename(window, "Kept")
    window.filing.safekeeping.keep_now()
    assert len(copies()) == 1
    answers.file = tmp_path / "mine.json"
    assert window.filing.save()
    assert copies() == []
    rename(window, "Kept again")
    window.filing.safekeeping.keep_now()
    assert len(copies()) == 1
    assert window.close()
    assert copies() == []


def test_nothing_is_kept_of_a_farm_that_is_saved(window: MainWindow) -> None:
    window.filing.safekeeping.keep_now()
    assert copies() == []


def test_copy_goes_when_every_step_is_undone(window: MainWindow) -> None:
    rename(window, "Kept")
    window.filing.safekeeping.keep_now()
    assert len(copies()) == 1
    window.session.stack.undo()
    window.filing.safekeeping.keep_now()
    assert copies() == []


def test_work_never_saved_comes_back_after_a_crash(
    window: MainWindow, answers: Answers, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    rename(window, "From the crash")
    lost = window.session.farm
    crash(window, monkeypatch)
    assert window.session.farm != lost
    window.filing.offer_recovery()
    assert answers.asked == [("found", lost.name)]
    assert window.session.farm == lost
    assert window.session.path is None
    assert window.isWindowModified()
    assert len(copies()) == 1, "the copy stays until its work is saved"
    answers.file = tmp_path / "mine.json"
    assert window.filing.save()
    assert copies() == []


@pytest.mark.parametrize("touched", [False, True])
def test_work_on_a_file_comes_back_into_it_unless_the_file_changed(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, tmp_path: Path, touched: bool
) -> None:
    path = tmp_path / "farm.json"
    save_farm(path, samples.small_farm(), None)
    window.filing.open_path(path)
    rename(window, "From the crash")
    lost = window.session.farm
    crash(window, monkeypatch)
    if touched:
        save_farm(path, samples.small_farm().but(name="Other hands"), None)
    window.filing.offer_recovery()
    assert window.session.farm == lost
    assert window.session.path == (None if touched else path)
    assert window.isWindowModified()
    if not touched:
        assert window.filing.save()
        assert open_farm(path)[0] == lost


@pytest.mark.parametrize(("answer", "left"), [("later", 1), ("discard", 0)])
def test_work_found_is_left_or_removed_as_the_user_says(
    window: MainWindow, answers: Answers, monkeypatch: pytest.MonkeyPatch, answer: str, left: int
) -> None:
    rename(window, "From the crash")
    crash(window, monkeypatch)
    before = window.session.farm
    answers.found_answer = answer
    window.filing.offer_recovery()
    assert window.session.farm is before
    assert len(copies()) == left


def test_copy_that_cannot_be_written_is_told(window: MainWindow, qtbot: QtBot) -> None:
    told = told_by(window)
    recovery_folder().parent.mkdir(parents=True, exist_ok=True)
    recovery_folder().write_text("a file where the folder should be")
    rename(window, "Not kept")
    window.filing.safekeeping.keep_now()
    qtbot.waitUntil(lambda: told != [])
    assert told[0][0] == "caution"
    assert "No recovery copy" in told[0][1]
    recovery_folder().unlink()
