"""The window: what its menus do, what it tells, and when it loads what."""

import subprocess
import sys

import pytest
from PySide6.QtCore import QEvent
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication, QMessageBox
from pytestqt.qtbot import QtBot

from hoopwright.desktop import help_pages
from hoopwright.desktop.acts import Acts
from hoopwright.desktop.application import begin_application, open_window
from hoopwright.desktop.begin_dialog import BeginDialog
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.tunnel_list import TunnelList
from hoopwright.desktop.window import MainWindow

SHELL = """
import sys
from hoopwright.desktop.application import begin_application, open_window
app = begin_application([])
window = open_window(None)
print(*sys.modules)
"""


@pytest.fixture
def window(qtbot: QtBot, qapp: object) -> MainWindow:
    begin_application([])
    made = open_window(None)
    made.filing.ask_unsaved = lambda: QMessageBox.StandardButton.Discard
    qtbot.addWidget(made)
    made.show()
    qtbot.waitUntil(lambda: made.canvas is not None)
    return made


def press(window: MainWindow, text: str) -> None:
    (action,) = [a for a in window.findChildren(QAction) if a.text() == text]
    action.trigger()


def test_shell_is_built_without_a_heavy_library() -> None:
    done = subprocess.run(
        [sys.executable, "-c", SHELL], capture_output=True, text=True, check=True, timeout=120
    )
    loaded = set(done.stdout.split())
    assert "PySide6" in loaded
    assert not loaded & {"numpy", "scipy", "pint", "openpyxl", "pyqtgraph"}


def test_menu_splits_covers_and_undoes(window: MainWindow) -> None:
    first = window.session.farm
    press(window, "Split the second side")
    assert len(window.session.tunnel.sides[1].splits) == 2
    press(window, "One sheet")
    assert window.session.tunnel.skin.covering == "one_sheet"
    press(window, "Add cross seam")
    assert len(window.session.tunnel.skin.cross_seams_m) == 1
    assert window.undo_action.text() == "Undo: Add cross seam"
    for _ in range(3):
        window.undo_action.trigger()
    assert window.session.farm == first
    assert not window.undo_action.isEnabled()


def test_what_cannot_be_done_is_told_in_words(window: MainWindow) -> None:
    told: list[str] = []
    window.session.noticed.connect(lambda _severity, text: told.append(text))
    press(window, "Remove what is picked")
    assert (
        "Pick a split or a cross seam first"
        in window.statusBar().findChildren(type(window._notice))[0].text()
    )


def test_picked_split_is_removed(window: MainWindow) -> None:
    window.session.pick("side/0/split/0")
    press(window, "Remove what is picked")
    assert window.session.tunnel.sides[0].splits == ()
    assert window.session.mark == ""


def test_crank_goes_to_the_other_end(window: MainWindow) -> None:
    before = window.session.tunnel.sides[0].panels[0].crank_end
    window.session.pick("side/0/panel/0")
    press(window, "Crank to the other end")
    assert window.session.tunnel.sides[0].panels[0].crank_end != before


def test_undo_waits_while_a_hand_drags(window: MainWindow) -> None:
    press(window, "Add cross seam")
    window.session.begin()
    window.refresh_actions()
    assert not window.undo_action.isEnabled()
    window.session.cancel()
    window.refresh_actions()
    assert window.undo_action.isEnabled()


def test_dark_and_light(window: MainWindow) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    press(window, "Dark")
    assert is_dark(app.palette())
    press(window, "Light")
    assert not is_dark(app.palette())


def test_tables_grow_over_the_drawing_and_back(window: MainWindow) -> None:
    press(window, "Larger tables or back")
    above, below = window.middle.sizes()
    assert below > above
    press(window, "Larger tables or back")
    above, below = window.middle.sizes()
    assert above > below


def test_another_tunnel_is_shown_from_the_list(window: MainWindow) -> None:
    assert isinstance(window.tunnels, TunnelList)
    window.tunnels.copy()
    window.tunnels.box.activated.emit(0)
    assert window.session.index == 0
    assert window.tunnels.box.currentIndex() == 0


def test_dialog_says_what_cannot_be_and_stays(window: MainWindow, qtbot: QtBot) -> None:
    dialog = BeginDialog(window.session.farm.catalogue, "imperial", "T", window)
    qtbot.addWidget(dialog)
    dialog.lengths["spacing_m"].set_value(9.0)
    dialog.lengths["length_m"].set_value(4.0)
    dialog.accept()
    assert dialog.tunnel is None
    assert "spacing_m" in dialog.told.text()


def test_fixed_side_has_no_curtain_to_split(window: MainWindow) -> None:
    session = window.session
    fixed = session.tunnel.sides[0].but(kind="fixed")
    session.apply_tunnel(session.tunnel.but(sides=(fixed, session.tunnel.sides[1])), "Fix side")
    acts = Acts(session, window.filing, window)
    with pytest.raises(ValueError, match="no curtain"):
        acts.split_side(0)


def test_help_names_the_keys_and_every_caution(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown: list[str] = []
    monkeypatch.setattr(QMessageBox, "information", lambda _p, _t, text: shown.append(text))
    monkeypatch.setattr(QMessageBox, "about", lambda _p, _t, text: shown.append(text))
    monkeypatch.setattr(QMessageBox, "exec", lambda box: shown.append(box.informativeText()))
    help_pages.show_keys(window)
    help_pages.show_about(window)
    help_pages.show_cautions(window)
    assert "F6" in shown[0]
    assert "Local codes" in shown[1]
    assert all(word in shown[2] for word in ("Ladders", "electrician", "crank"))
    QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
