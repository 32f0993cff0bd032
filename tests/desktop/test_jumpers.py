"""Jumper hoses by hand: dragged, nudged, typed, added, removed, and worked out again."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from hoopwright.desktop.window import MainWindow
from hoopwright.farm import Layers, bow_positions
from hoopwright.files.storage import save_farm
from samples import double_tunnel, small_farm
from windows import drag, make_window, place_of, show_window

CURTAIN_JUMPER = "cell/side/"
STEP_M = 0.01


@pytest.fixture
def window(qtbot: QtBot, tmp_path) -> MainWindow:
    """Return the window of a farm in metres with two layers and inflated curtains."""
    path = tmp_path / "air.json"
    save_farm(path, small_farm(double_tunnel()).but(units="metric"), None)
    window = make_window(path)
    show_window(qtbot, window)
    return window


def _jumpers(window: MainWindow):
    return window.session.tunnel_plan.chosen.inflation.jumpers


def _to_curtain(window: MainWindow):
    """Return a jumper that fills a curtain."""
    return next(j for j in _jumpers(window) if j.to_cell.startswith(CURTAIN_JUMPER))


def _spot(window: MainWindow, jumper) -> tuple[str, float]:
    """Return the elevation a jumper is drawn in, and the height of its hip board, m."""
    boards = window.session.tunnel.frame.boards[jumper.side]
    return ("first_side", "second_side")[jumper.side], boards.hip_height_m


def test_dragged_jumper_is_placed_anywhere_in_one_step(window: MainWindow) -> None:
    assert window.session.tunnel.air.jumpers is None
    before, count = window.session.farm, len(_jumpers(window))
    jumper = _to_curtain(window)
    view, hip_m = _spot(window, jumper)
    told: list[str] = []
    drag(
        window,
        view,
        (jumper.at_m, hip_m),
        (jumper.at_m + 1.234, hip_m),
        lambda: told.append(window.canvas.tag.text()),
    )
    placed = window.session.tunnel.air.jumpers
    assert placed is not None
    assert len(placed) == count
    moved = next(j for j in _jumpers(window) if j.mark == jumper.mark)
    px_m = 1 / window.canvas.board.px_per_m
    assert moved.placed
    assert moved.at_m == pytest.approx(jumper.at_m + 1.234, abs=px_m + STEP_M)
    bows = bow_positions(window.session.tunnel.frame.bows)
    assert min(abs(moved.at_m - x) for x in bows) > STEP_M, "it does not snap to a bow"
    assert "Fills" in told[-1]
    assert "From" in told[-1]
    assert window.session.stack.count() == 1
    window.session.stack.undo()
    assert window.session.farm == before


def test_jumper_is_taken_in_the_plan_too(window: MainWindow) -> None:
    jumper = _to_curtain(window)
    first_m, second_m = window.session.tunnel_plan.survey.hip_across_m
    across_m = (abs(first_m), -abs(second_m))[jumper.side]
    drag(window, "plan", (jumper.at_m, across_m), (jumper.at_m - 0.8, across_m))
    moved = next(j for j in _jumpers(window) if j.mark == jumper.mark)
    assert moved.at_m < jumper.at_m - 0.5


def test_escape_puts_a_jumper_back_and_leaves_them_worked_out(window: MainWindow) -> None:
    jumper = _to_curtain(window)
    view, hip_m = _spot(window, jumper)
    viewport = window.canvas.board.viewport()
    QTest.mousePress(
        viewport, Qt.MouseButton.LeftButton, pos=place_of(window, view, jumper.at_m, hip_m)
    )
    QTest.mouseMove(viewport, place_of(window, view, jumper.at_m + 2.0, hip_m))
    QTest.keyClick(window.canvas.board, Qt.Key.Key_Escape)
    QTest.mouseRelease(viewport, Qt.MouseButton.LeftButton)
    assert window.session.tunnel.air.jumpers is None
    assert window.session.stack.count() == 0


def test_arrow_nudges_a_jumper_by_a_tenth_of_a_metre(window: MainWindow) -> None:
    jumper = _to_curtain(window)
    window.session.pick(jumper.mark)
    QTest.keyClick(window.canvas.board, Qt.Key.Key_Right)
    moved = next(j for j in _jumpers(window) if j.mark == jumper.mark)
    assert moved.at_m == pytest.approx(jumper.at_m + 0.1, abs=0.051)
    QTest.keyClick(window.canvas.board, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    fine = next(j for j in _jumpers(window) if j.mark == jumper.mark)
    assert fine.at_m == pytest.approx(moved.at_m + 0.001, abs=1e-6)


def test_typed_place_of_a_jumper_is_taken(window: MainWindow, qtbot: QtBot) -> None:
    jumper = _to_curtain(window)
    window.session.pick(jumper.mark)
    QTest.keyClick(window.canvas.board, Qt.Key.Key_Return)
    field = window.canvas.entry.field
    field.selectAll()
    qtbot.keyClicks(field, "3.21 m")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert window.session.tunnel.air.jumpers is not None
    index = int(jumper.mark.split("/")[1])
    assert window.session.tunnel.air.jumpers[index].at_m == pytest.approx(3.21)


def test_menu_adds_a_jumper_and_delete_removes_it(window: MainWindow) -> None:
    before = window.session.farm
    count = len(_jumpers(window))
    side = _to_curtain(window).side
    window.menu[("jumper_first_side", "jumper_second_side")[side]].trigger()
    assert len(_jumpers(window)) == count + 1
    assert window.session.mark == f"jumper/{count}"
    assert window.menu["remove_picked"].isEnabled()
    window.menu["remove_picked"].trigger()
    assert len(_jumpers(window)) == count
    window.menu["work_out_jumpers"].trigger()
    assert window.session.tunnel.air.jumpers is None
    assert window.session.farm == before


def test_written_jumpers_hang_where_the_worked_out_ones_hang(window: MainWindow) -> None:
    worked = [(j.from_cell, j.to_cell, j.at_m) for j in _jumpers(window)]
    window.menu["jumper_roof"].trigger()
    hung = [(j.from_cell, j.to_cell, j.at_m) for j in _jumpers(window)]
    assert hung[: len(worked)] == worked


def test_jumper_that_joins_nothing_is_told_of(qtbot: QtBot, tmp_path) -> None:
    tunnel = double_tunnel()
    skin = tunnel.skin.but(cross_seams_m=())
    path = tmp_path / "seamless.json"
    save_farm(path, small_farm(tunnel.but(skin=skin)), None)
    window = make_window(path)
    show_window(qtbot, window)
    told: list[str] = []
    window.session.noticed.connect(lambda _severity, text: told.append(text))
    window.menu["jumper_roof"].trigger()
    assert "joins no two cells" in told[0]


def test_without_cells_no_jumper_is_offered(qtbot: QtBot, tmp_path) -> None:
    tunnel = double_tunnel()
    one = Layers(count=1, outer=tunnel.skin.roof.outer, inner=tunnel.skin.roof.inner)
    path = tmp_path / "single.json"
    skin = tunnel.skin.but(roof=one, sides=one, cross_seams_m=())
    save_farm(path, small_farm(tunnel.but(skin=skin)), None)
    window = make_window(path)
    show_window(qtbot, window)
    assert not window.menu["jumper_first_side"].isEnabled()
