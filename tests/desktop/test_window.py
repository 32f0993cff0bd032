"""The window: what its menus do, what it tells, how it walks and dresses, what it loads when."""

import subprocess
import sys

import pytest
from PySide6.QtCore import QPoint, QRect, QSettings, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolButton, QWidget
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop import help_pages
from hoopwright.desktop.look import saved_look, wear_look
from hoopwright.desktop.palette import is_dark
from hoopwright.desktop.window import GEOMETRY, MainWindow
from hoopwright.farm import ListedBows
from hoopwright.files.storage import sample_farms
from hoopwright.papers.cautions import CAUTIONS
from windows import Answers, make_window, rename, show_window, told_by

SHELL = """
import sys
from hoopwright.desktop.application import begin_application, open_window
app = begin_application()
window = open_window(None)
print(*sys.modules)
"""


@pytest.fixture
def answers() -> Answers:
    return Answers()


@pytest.fixture
def window(qtbot: QtBot, answers: Answers) -> MainWindow:
    made = make_window(answers=answers)
    show_window(qtbot, made)
    return made


def press(window: MainWindow, key: str) -> None:
    window.menu[key].trigger()


def test_shell_is_built_without_a_heavy_library() -> None:
    done = subprocess.run(
        [sys.executable, "-c", SHELL], capture_output=True, text=True, check=True, timeout=120
    )
    loaded = set(done.stdout.split())
    assert "PySide6.QtWidgets" in loaded
    assert not loaded & {"numpy", "scipy", "pint", "openpyxl", "pyqtgraph"}


def test_drawing_comes_after_the_shell_was_painted(qtbot: QtBot) -> None:
    window = make_window()
    qtbot.addWidget(window)
    assert window.canvas is None
    window.show()
    qtbot.waitUntil(lambda: window.canvas is not None)
    assert window.middle.widget(0) is window.canvas
    assert window.canvas.isVisible()


def test_menu_splits_covers_seams_and_undoes(window: MainWindow) -> None:
    first = window.session.farm
    count = len(first.tunnels[0].sides[1].splits)
    press(window, "split_second")
    assert len(window.session.tunnel.sides[1].splits) == count + 1
    assert window.session.mark.startswith("side/1/split/")
    press(window, "one_sheet")
    assert window.session.tunnel.skin.covering == "one_sheet"
    assert window.menu["one_sheet"].isChecked()
    press(window, "add_seam")
    assert len(window.session.tunnel.skin.cross_seams_m) == 1
    assert window.session.mark == "roof/seam/0"
    assert window.menu["undo"].text() == "Undo: Add cross seam"
    assert window.menu["undo"].iconText() == "Undo"
    for _ in range(3):
        press(window, "undo")
    assert window.session.farm == first
    assert not window.menu["undo"].isEnabled()
    assert window.menu["apart"].isChecked()
    press(window, "redo")
    assert len(window.session.tunnel.sides[1].splits) == count + 1


def test_picked_split_and_seam_are_removed_with_a_key(window: MainWindow, qtbot: QtBot) -> None:
    # Shortcuts are heard by the active window alone, and a window manager takes its time.
    with qtbot.waitActive(window):
        window.activateWindow()
    count = len(window.session.tunnel.sides[0].splits)
    assert not window.menu["remove_picked"].isEnabled()
    window.session.pick("side/0/split/0")
    assert window.menu["remove_picked"].text() == "Remove split"
    window.canvas.board.setFocus()
    QTest.keyClick(window.canvas.board, Qt.Key.Key_Delete)
    assert len(window.session.tunnel.sides[0].splits) == count - 1
    assert window.session.mark == ""
    press(window, "add_seam")
    assert window.menu["remove_picked"].text() == "Remove cross seam"
    press(window, "remove_picked")
    assert window.session.tunnel.skin.cross_seams_m == ()


def test_crank_of_the_picked_curtain_goes_to_its_other_end(window: MainWindow) -> None:
    before = window.session.tunnel.sides[0].panels[0].crank_end
    assert not window.menu["turn_crank"].isEnabled()
    window.session.pick("side/0/panel/0")
    press(window, "turn_crank")
    assert {before, window.session.tunnel.sides[0].panels[0].crank_end} == {"front", "back"}


def test_bows_are_listed_and_spaced_evenly_again(window: MainWindow) -> None:
    first = window.session.tunnel
    press(window, "list_bows")
    assert isinstance(window.session.tunnel.frame.bows, ListedBows)
    assert window.menu["list_bows"].text() == "Space bows evenly"
    press(window, "list_bows")
    assert window.session.tunnel.frame.bows.count == first.frame.bows.count


def test_units_change_no_stored_number_and_can_be_undone(window: MainWindow) -> None:
    before = window.session.farm
    assert window.menu["imperial"].isChecked()
    press(window, "metric")
    assert window.session.farm == before.but(units="metric")
    assert window.menu["metric"].isChecked()
    press(window, "undo")
    assert window.session.farm == before
    assert window.menu["imperial"].isChecked()


def test_fixed_side_has_no_curtain_to_split(window: MainWindow) -> None:
    session = window.session
    fixed = session.tunnel.sides[0].but(kind="fixed")
    session.apply_tunnel(session.tunnel.but(sides=(fixed, session.tunnel.sides[1])), "Fix side")
    assert not window.menu["split_first"].isEnabled()
    assert window.menu["split_second"].isEnabled()
    assert session.tunnel.sides[1].name in window.menu["split_second"].text()


def test_nothing_can_be_undone_while_a_hand_drags(window: MainWindow) -> None:
    press(window, "add_seam")
    added = window.session.farm
    window.session.begin()
    window.session.preview(added.tunnels[0].but(name="While dragging"))
    assert not window.menu["undo"].isEnabled()
    window.undo()
    assert window.session.tunnel.name == "While dragging"
    window.session.commit("Rename tunnel")
    assert window.menu["undo"].isEnabled()
    press(window, "undo")
    assert window.session.farm == added


def test_notice_says_how_severe_it_is_and_can_be_put_away(window: MainWindow) -> None:
    assert window.notices.text.text() == help_pages.CAUTION
    window.session.noticed.emit("fault", "The disk is full.")
    assert window.notices.text.text() == "Fault: The disk is full."
    QTest.mouseClick(window.notices.away, Qt.MouseButton.LeftButton)
    assert window.notices.text.text() == help_pages.CAUTION
    window.session.noticed.emit("note", "Saved.")
    assert window.notices.text.text() == "Saved."
    assert not window.notices.sign.pixmap().isNull()


def test_what_cannot_be_done_is_told_in_words(window: MainWindow) -> None:
    told = told_by(window)
    window.run(window.acts.remove_picked)
    window.run(window.acts.turn_crank)
    window.run(window.acts.remove_tunnel)
    assert [severity for severity, _text in told] == ["fault"] * 3
    assert "Pick a split" in told[0][1]
    assert "Pick a curtain" in told[1][1]
    assert "A farm needs at least one tunnel" in told[2][1]


def test_title_names_farm_and_file(window: MainWindow) -> None:
    assert window.windowTitle() == "Alder Brook Farm (no file yet)[*]"
    rename(window, "Other")
    assert window.isWindowModified()


@pytest.mark.parametrize("look", ["dark", "light"])
def test_look_is_worn_kept_and_drawn(window: MainWindow, look: str) -> None:
    app = QApplication.instance()
    before = window.menu["open"].icon().cacheKey()
    press(window, "dark" if look == "light" else "light")
    press(window, look)
    QApplication.processEvents()
    assert is_dark(app.palette()) == (look == "dark")
    assert is_dark(window.canvas.palette()) == (look == "dark")
    assert (window.menu["open"].icon().cacheKey() != before) == (look == "dark")
    assert saved_look() == look
    wear_look("light", app)


def test_tables_grow_over_the_drawing_and_back(window: MainWindow) -> None:
    first = window.middle.sizes()
    press(window, "large_tables")
    above, below = window.middle.sizes()
    assert below > first[1]
    press(window, "large_tables")
    above, below = window.middle.sizes()
    assert above > below


def test_keys_walk_the_areas_and_back(window: MainWindow) -> None:
    areas = [window.canvas, window.tables, window.details, window.tunnels]
    window.canvas.setFocus()
    seen = []
    for _ in range(4):
        press(window, "next_area")
        seen += [a for a in areas if a.isAncestorOf(window.focusWidget())]
    assert seen == [*areas[1:], areas[0]]
    press(window, "last_area")
    assert window.tunnels.isAncestorOf(window.focusWidget())


def test_checks_come_to_the_front_from_the_headline(window: MainWindow) -> None:
    window.headline.checks_wanted.emit()
    assert window.tables.tabText(window.tables.currentIndex()).startswith("Checks")


def test_row_of_a_table_is_lit_on_the_drawing(window: MainWindow) -> None:
    window.tables.lit.emit(("side/0/panel/0",))
    assert window.canvas._shown == ("side/0/panel/0",)


def test_table_is_copied_with_its_headings(window: MainWindow) -> None:
    press(window, "copy_table")
    lines = QGuiApplication.clipboard().text().splitlines()
    assert lines[0].split("\t")[:3] == ["Group", "Item", "Needed"]
    order = window.session.plan.order
    assert len(lines) == 1 + len(order.lines) + len(order.reused)


def test_samples_are_in_the_menu(window: MainWindow) -> None:
    entries = window.menu.submenus["samples"].actions()
    assert len(entries) == len(sample_farms())
    entries[-1].trigger()
    assert window.session.farm.name == "Three Fields Farm"
    assert window.session.path is None


@pytest.mark.parametrize("size", [(960, 520), (1093, 540), (1366, 738)])
def test_nothing_of_the_tools_is_cut_off(
    qtbot: QtBot, window: MainWindow, size: tuple[int, int]
) -> None:
    window.resize(*size)
    QApplication.processEvents()
    assert (window.width(), window.height()) == size
    bar = window.menu.bar
    buttons = [bar.widgetForAction(a) for a in bar.actions() if not a.isSeparator()]
    assert all(b.isVisible() for b in buttons if isinstance(b, QToolButton))
    parts: list[QWidget] = [
        window.tunnels,
        window.headline,
        window.tables,
        window.details,
        window.notices,
    ]
    for part in (*buttons, *parts):
        place = QRect(part.mapTo(window, QPoint(0, 0)), part.size())
        assert window.rect().contains(place), type(part).__name__


def test_window_comes_back_on_a_screen_that_is_there(qtbot: QtBot) -> None:
    first = make_window()
    qtbot.addWidget(first)
    # A screen too small for the window is filled at the first start, a large one is not.
    room = QGuiApplication.primaryScreen().availableSize()
    assert first.isMaximized() == (room.width() < 1366 or room.height() < 728)
    first.setWindowState(Qt.WindowState.WindowNoState)
    first.setGeometry(40, 60, 1000, 560)
    first.show()
    first.close()
    again = make_window()
    qtbot.addWidget(again)
    # A screen of a test run may be narrower than the window, but its height fits on all of them.
    assert again.height() == first.height() == 560
    first.move(9000, 9000)
    QSettings().setValue(GEOMETRY, first.saveGeometry())
    lost = make_window()
    qtbot.addWidget(lost)
    screens = [s.availableGeometry() for s in QGuiApplication.screens()]
    assert any(s.intersects(lost.frameGeometry()) for s in screens)


def test_every_entry_of_a_menu_has_its_own_keys(window: MainWindow) -> None:
    keys = [a.shortcut().toString() for a in window.menu.by_key.values() if a.shortcut().toString()]
    assert len(keys) == len(set(keys))
    assert {"Ctrl+S", "Ctrl+Z", "F6", "F1", "Del"} <= set(keys)


def test_help_names_the_keys_and_every_caution(window: MainWindow) -> None:
    for key in ("keys", "cautions", "about"):
        press(window, key)
    pages = window.findChildren(help_pages.Page)
    texts = {page.windowTitle(): page.browser.toPlainText() for page in pages}
    assert "F6" in texts["Keys"]
    assert all(c.title in texts["Cautions"] and c.text in texts["Cautions"] for c in CAUTIONS)
    assert "Local codes" in texts["About Hoopwright"]
    assert "invented" in texts["About Hoopwright"]
    for page in pages:
        page.close()


def test_edit_of_several_tunnels_is_of_the_one_that_is_shown(window: MainWindow) -> None:
    window.filing.begin(
        samples.small_farm(samples.tunnel(), samples.gothic_tunnel().but(name="Second"))
    )
    window.session.show_tunnel(1)
    press(window, "add_seam")
    seams = [len(t.skin.cross_seams_m) for t in window.session.farm.tunnels]
    assert seams == [0, 1]
