"""The list of tunnels: shown, added, copied, renamed, removed, and every step undone."""

import pytest
from pytestqt.qtbot import QtBot

from hoopwright.desktop.begin_dialog import BeginDialog
from hoopwright.desktop.window import MainWindow
from windows import Answers, make_window, told_by


@pytest.fixture
def answers() -> Answers:
    return Answers()


@pytest.fixture
def window(qtbot: QtBot, answers: Answers) -> MainWindow:
    made = make_window(answers=answers)
    qtbot.addWidget(made)
    return made


def shown(window: MainWindow) -> list[str]:
    box = window.tunnels.box
    return [box.itemText(i) for i in range(box.count())]


def press(window: MainWindow, key: str) -> None:
    window.menu[key].trigger()


def test_tunnels_are_copied_renamed_and_removed_with_undo(
    window: MainWindow, answers: Answers
) -> None:
    session, first = window.session, window.session.farm
    assert not window.menu["remove_tunnel"].isEnabled()
    press(window, "copy_tunnel")
    assert shown(window) == ["Brook tunnel", "Brook tunnel 2"]
    assert window.tunnels.box.currentIndex() == session.index == 1
    answers.name = "Hill"
    press(window, "rename_tunnel")
    assert shown(window) == ["Brook tunnel", "Hill"]
    press(window, "remove_tunnel")
    assert shown(window) == ["Brook tunnel"]
    for _ in range(3):
        press(window, "undo")
    assert session.farm == first
    assert shown(window) == ["Brook tunnel"]
    assert session.index == 0


def test_another_tunnel_is_chosen_from_the_list(window: MainWindow) -> None:
    press(window, "copy_tunnel")
    window.tunnels.box.setCurrentIndex(0)
    window.tunnels.box.activated.emit(0)
    assert window.session.index == 0
    window.session.show_tunnel(1)
    assert window.tunnels.box.currentText() == "Brook tunnel 2"


@pytest.mark.parametrize(("name", "words"), [("", "name"), ("Brook tunnel", "two tunnels")])
def test_name_that_cannot_be_is_told(
    window: MainWindow, answers: Answers, name: str, words: str
) -> None:
    press(window, "copy_tunnel")
    before, told = window.session.farm, told_by(window)
    answers.name = name
    press(window, "rename_tunnel")
    assert window.session.farm is before
    assert words in told[0][1].lower()


def test_question_that_is_closed_renames_nothing(window: MainWindow, answers: Answers) -> None:
    before = window.session.farm
    press(window, "rename_tunnel")
    assert answers.asked == [("tunnel name", "Brook tunnel")]
    assert window.session.farm is before


def test_tunnel_is_added_by_five_questions(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    def answer(dialog: BeginDialog) -> int:
        dialog.accept()
        return dialog.result()

    monkeypatch.setattr(BeginDialog, "exec", answer)
    press(window, "add_tunnel")
    assert shown(window) == ["Brook tunnel", "Tunnel"]
    assert window.session.index == 1
    press(window, "undo")
    assert shown(window) == ["Brook tunnel"]
