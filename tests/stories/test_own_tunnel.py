"""From the sample farm to an own tunnel of 26 by 84 ft, in the real window alone."""

import io
from pathlib import Path

import openpyxl
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialogButtonBox, QMessageBox
from pytestqt.qtbot import QtBot

from hoopwright.desktop.application import begin_application, open_window
from hoopwright.desktop.begin_dialog import BeginDialog
from hoopwright.desktop.window import MainWindow
from hoopwright.farm import bow_positions

FT = 0.3048
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def window(qtbot: QtBot, qapp: object) -> MainWindow:
    begin_application([])
    made = open_window(None)
    made.filing.ask_unsaved = lambda: QMessageBox.StandardButton.Discard
    qtbot.addWidget(made)
    made.resize(1366, 738)
    made.show()
    qtbot.waitUntil(lambda: made.canvas is not None)
    return made


def answer(dialog: BeginDialog, field: str, text: str) -> None:
    line = dialog.lengths[field].line
    line.selectAll()
    QTest.keyClicks(line, text)
    QTest.keyClick(line, Qt.Key.Key_Return)


def begin_own(window: MainWindow, qtbot: QtBot) -> None:
    """Answer the five questions with keys and mouse."""
    farm = window.session.farm
    dialog = BeginDialog(farm.catalogue, farm.units, "Own tunnel", window)
    qtbot.addWidget(dialog)
    dialog.show()
    answer(dialog, "span_m", "26'")
    answer(dialog, "length_m", "84")
    answer(dialog, "spacing_m", "4 ft")
    assert "22 bows make 21 bays" in dialog.told.text()
    buttons = dialog.findChild(QDialogButtonBox)
    ok = buttons.button(QDialogButtonBox.StandardButton.Ok)
    QTest.mouseClick(ok, LEFT)
    assert dialog.tunnel is not None
    window.acts.ask_tunnel = lambda _name: dialog.tunnel  # type: ignore[method-assign]
    window.acts.new_farm()


def place(window: MainWindow, view: str, x_m: float, y_m: float) -> QPoint:
    assert window.canvas is not None
    return window.canvas.board.strips[view].to_pixels((x_m, y_m)).toPoint()


def drag(window: MainWindow, view: str, start: tuple[float, float], end_x_m: float) -> None:
    assert window.canvas is not None
    viewport = window.canvas.board.viewport()
    QTest.mousePress(viewport, LEFT, pos=place(window, view, *start))
    for step in range(1, 9):
        x_m = start[0] + (end_x_m - start[0]) * step / 8
        QTest.mouseMove(viewport, place(window, view, x_m, start[1]))
    QTest.mouseRelease(viewport, LEFT, pos=place(window, view, end_x_m, start[1]))


def test_own_tunnel_from_the_sample_to_the_workbook(
    window: MainWindow, qtbot: QtBot, tmp_path: Path
) -> None:
    begin_own(window, qtbot)
    session = window.session
    assert session.tunnel.name == "Own tunnel"
    # 84 ft in bays of 4 ft: 21 bays, so 22 bows.
    assert len(bow_positions(session.tunnel.frame.bows)) == 22

    window.acts.split_side(0)
    before = session.farm
    split_m = session.tunnel.sides[0].splits[0].at_m
    hip_m = session.tunnel.frame.boards[0].hip_height_m
    window.canvas.fit_all()  # type: ignore[union-attr]
    drag(window, "first_side", (split_m, hip_m), 36.3 * FT)
    # Let go at 36.3 ft, it snaps to the bow at 36 ft; one step takes it back.
    assert session.tunnel.sides[0].splits[0].at_m == pytest.approx(36 * FT)
    session.stack.undo()
    assert session.farm == before
    session.stack.redo()

    apart = session.plan.cost.to_pay
    window.acts.cover("one_sheet")
    assert session.tunnel_plan.chosen.cover.covering == "one_sheet"
    assert session.plan.cost.to_pay != apart

    window.filing.ask_save = lambda *_: str(tmp_path / "own.xlsx")
    window.filing.export()
    data = io.BytesIO((tmp_path / "own.xlsx").read_bytes())
    book = openpyxl.load_workbook(data, data_only=True)
    values = {c.value for row in book["Summary"].iter_rows() for c in row}
    assert float(session.plan.cost.to_pay) in values
