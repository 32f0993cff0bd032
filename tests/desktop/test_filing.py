"""Farm files from the window: nothing is lost, and every fault is told in words."""

import io
from pathlib import Path

import openpyxl
import pytest
from PySide6.QtWidgets import QMessageBox
from pytestqt.qtbot import QtBot

from hoopwright.desktop.application import begin_application, open_window
from hoopwright.desktop.window import MainWindow
from hoopwright.farm import change
from hoopwright.files.recovery import find_copies
from hoopwright.files.storage import open_farm, save_farm

Buttons = QMessageBox.StandardButton


@pytest.fixture
def window(qtbot: QtBot, qapp: object) -> MainWindow:
    begin_application([])
    made = open_window(None)
    made.filing.ask_unsaved = lambda: Buttons.Discard
    qtbot.addWidget(made)
    return made


def edit(window: MainWindow, name: str = "Renamed") -> None:
    session = window.session
    session.apply_tunnel(session.tunnel.but(name=name), "Rename tunnel")


def notices(window: MainWindow) -> list[tuple[str, str]]:
    told: list[tuple[str, str]] = []
    window.session.noticed.connect(lambda severity, text: told.append((severity, text)))
    return told


def test_first_start_shows_the_sample_with_nothing_to_save(window: MainWindow) -> None:
    assert window.session.farm.name == "Alder Brook Farm"
    assert window.session.path is None
    assert not window.isWindowModified()


def test_saved_farm_opens_equal(window: MainWindow, tmp_path: Path) -> None:
    edit(window)
    assert window.isWindowModified()
    window.filing.ask_save = lambda *_: str(tmp_path / "mine")
    assert window.filing.save()
    assert not window.isWindowModified()
    assert open_farm(tmp_path / "mine.json")[0] == window.session.farm
    assert window.filing.recent() == [tmp_path / "mine.json"]
    edit(window, "Again")
    assert window.filing.save()
    assert open_farm(tmp_path / "mine.json")[0].tunnels[0].name == "Again"


def test_undo_back_to_the_saved_farm_is_saved(window: MainWindow, tmp_path: Path) -> None:
    window.filing.ask_save = lambda *_: str(tmp_path / "mine.json")
    edit(window)
    window.filing.save()
    edit(window, "Third")
    assert window.isWindowModified()
    window.session.stack.undo()
    assert not window.isWindowModified()


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "empty"),
        (b'{"program": "hoopwright", "format": 99, "farm": {}}', "newer"),
        (b"not a farm", "farm"),
    ],
)
def test_file_that_is_no_farm_is_told_and_changes_nothing(
    window: MainWindow, tmp_path: Path, content: bytes, words: str
) -> None:
    path = tmp_path / "bad.json"
    path.write_bytes(content)
    before, told = window.session.farm, notices(window)
    assert not window.filing.open_path(path)
    assert window.session.farm == before
    assert told
    assert told[0][0] == "fault"
    assert words in told[0][1].lower()
    assert path.read_bytes() == content


def test_cancelled_question_keeps_unsaved_work(window: MainWindow, tmp_path: Path) -> None:
    save_farm(tmp_path / "other.json", window.session.farm, None)
    edit(window)
    window.filing.ask_unsaved = lambda: Buttons.Cancel
    assert not window.filing.open_path(tmp_path / "other.json")
    assert window.session.tunnel.name == "Renamed"
    window.filing.ask_unsaved = lambda: Buttons.Discard
    assert window.filing.open_path(tmp_path / "other.json")
    assert window.session.tunnel.name == "Brook tunnel"


def test_file_changed_by_another_is_not_written_over_unasked(
    window: MainWindow, tmp_path: Path
) -> None:
    path = tmp_path / "farm.json"
    save_farm(path, window.session.farm, None)
    assert window.filing.open_path(path)
    other = window.session.farm.but(name="Other hands")
    save_farm(path, other, None)
    edit(window)
    asked: list[str] = []

    def cancel(text: str) -> QMessageBox.StandardButton:
        asked.append(text)
        return Buttons.Cancel

    window.filing.ask_changed = cancel
    assert not window.filing.save()
    assert len(asked) == 1
    assert open_farm(path)[0] == other
    window.filing.ask_changed = lambda _text: Buttons.Yes
    assert window.filing.save()
    assert open_farm(path)[0].tunnels[0].name == "Renamed"


def test_folder_that_is_not_there_is_told(window: MainWindow, tmp_path: Path) -> None:
    told = notices(window)
    window.filing.ask_save = lambda *_: str(tmp_path / "no" / "where.json")
    edit(window)
    assert not window.filing.save()
    assert told
    assert told[-1][0] == "fault"
    assert window.isWindowModified()


def test_unsaved_work_is_found_again_after_a_crash(window: MainWindow) -> None:
    edit(window, "Saved from the crash")
    window.filing.keep_recovery()
    (copy,) = window.filing.folder().glob("recovery-*.json")
    text = copy.read_text(encoding="utf-8")
    assert "Saved from the crash" in text
    window.filing.ask_unsaved = lambda: Buttons.Discard
    assert window.close()
    assert find_copies(window.filing.folder()) == ()


def test_exported_workbook_pays_what_the_window_says(window: MainWindow, tmp_path: Path) -> None:
    window.filing.ask_save = lambda *_: str(tmp_path / "takeoff")
    window.filing.export()
    data = io.BytesIO((tmp_path / "takeoff.xlsx").read_bytes())
    book = openpyxl.load_workbook(data, data_only=True)
    values = {c.value for row in book["Summary"].iter_rows() for c in row}
    assert float(window.session.plan.cost.to_pay) in values


def test_file_open_in_another_window_is_shown_as_a_copy(
    window: MainWindow, tmp_path: Path, qtbot: QtBot
) -> None:
    path = tmp_path / "shared.json"
    save_farm(path, window.session.farm, None)
    assert window.filing.open_path(path)
    second = open_window(None)
    qtbot.addWidget(second)
    told = notices(second)
    assert second.filing.open_path(path)
    assert second.session.path is None
    assert told[0][0] == "fault"


def test_units_can_be_switched_without_changing_a_stored_number(window: MainWindow) -> None:
    before = window.session.farm
    window.acts.set_units("metric")
    assert window.session.farm == before.but(units="metric")
    window.session.stack.undo()
    assert window.session.farm == before


def test_tunnels_are_copied_renamed_and_removed_with_undo(window: MainWindow) -> None:
    session, first = window.session, window.session.farm
    window.tunnels.copy()
    assert [t.name for t in session.farm.tunnels] == ["Brook tunnel", "Brook tunnel 2"]
    assert session.index == 1
    window.tunnels.ask_name = lambda _name: ("Hill", True)
    window.tunnels.rename()
    assert window.tunnels.box.currentText() == "Hill"
    window.tunnels.remove()
    told = notices(window)
    window.tunnels.remove()
    assert told
    assert "at least one tunnel" in told[0][1]
    for _ in range(3):
        session.stack.undo()
    assert session.farm == first
    assert session.farm.tunnels == change.with_tunnel(first, 0, first.tunnels[0]).tunnels
