"""From the sample to an own tunnel of 26 by 84 ft and its workbook: by the window, by the verbs."""

import io
import json
from pathlib import Path

import openpyxl
import pytest
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialogButtonBox, QLabel
from pytestqt.qtbot import QtBot

from hoopwright.__main__ import main
from hoopwright.desktop.begin_dialog import BeginDialog
from hoopwright.desktop.window import MainWindow
from hoopwright.farm import bow_positions
from hoopwright.files.storage import open_farm
from hoopwright.quantity.money import format_money
from windows import LEFT, Answers, drag, make_window, show_window

FT = 0.3048
SIZES = {"span_m": "26'", "length_m": "84", "spacing_m": "4 ft"}


def answer_questions(dialog: BeginDialog) -> int:
    """Type the three sizes and press OK, as a user does."""
    dialog.show()
    for key, text in SIZES.items():
        line = dialog.lengths[key].line
        line.selectAll()
        QTest.keyClicks(line, text)
        line.editingFinished.emit()
    assert dialog.told.text().startswith("22 bows, 21 bays")
    box = dialog.findChild(QDialogButtonBox)
    QTest.mouseClick(box.button(QDialogButtonBox.StandardButton.Ok), LEFT)
    return dialog.result()


@pytest.fixture
def answers() -> Answers:
    return Answers()


@pytest.fixture
def window(qtbot: QtBot, answers: Answers, monkeypatch: pytest.MonkeyPatch) -> MainWindow:
    monkeypatch.setattr(BeginDialog, "exec", answer_questions)
    made = make_window(answers=answers)
    show_window(qtbot, made)
    return made


def paid(path: Path) -> set[object]:
    """Return all that stands on the summary of a workbook."""
    book = openpyxl.load_workbook(io.BytesIO(path.read_bytes()), data_only=True)
    return {cell.value for row in book["Summary"].iter_rows() for cell in row}


def headline_texts(window: MainWindow) -> str:
    return " ".join(label.text() for label in window.headline.findChildren(QLabel))


def test_own_tunnel_from_the_sample_to_the_workbook(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    assert window.session.farm.name == "Alder Brook Farm"
    window.menu["new_farm"].trigger()
    session = window.session
    # 84 ft in bays of 4 ft: 21 bays, so 22 bows.
    assert len(bow_positions(session.tunnel.frame.bows)) == 22
    assert window.isWindowModified()

    window.menu["split_first"].trigger()
    # The opening runs from the bow at 4 ft to the bow at 80 ft; its middle, 42 ft, lies between
    # the bows at 40 and 44 ft.
    split_m = session.tunnel.sides[0].splits[0].at_m
    assert round(split_m / FT) in (40, 44)
    window.canvas.fit_all()
    hip_m = session.tunnel.frame.boards[0].hip_height_m
    before, tags = session.farm, []
    drag(
        window,
        "first_side",
        (split_m, hip_m),
        (36.3 * FT, hip_m),
        lambda: tags.append(window.canvas.tag.isVisible()),
    )
    # Let go at 36.3 ft, the split snaps to the bow at 36 ft, and one step takes it back.
    assert session.tunnel.sides[0].splits[0].at_m == pytest.approx(36 * FT)
    assert any(tags)
    window.menu["undo"].trigger()
    assert session.farm == before
    window.menu["redo"].trigger()

    apart = session.plan.cost.to_pay
    window.menu["one_sheet"].trigger()
    assert session.tunnel_plan.chosen.cover.covering == "one_sheet"
    assert session.plan.cost.to_pay != apart

    answers.file = tmp_path / "own.xlsx"
    window.menu["export"].trigger()
    assert float(session.plan.cost.to_pay) in paid(answers.file)
    assert format_money(session.plan.cost.to_pay, "USD") in headline_texts(window)

    answers.file = tmp_path / "own.json"
    window.menu["save"].trigger()
    assert open_farm(answers.file)[0] == session.farm
    assert not window.isWindowModified()


def test_the_same_tunnel_by_the_verbs(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    farm, book = tmp_path / "own.json", tmp_path / "own.xlsx"
    sizes = ["--span", "26'", "--length", "84'", "--spacing", "4'"]
    assert main(["new", "-o", str(farm), *sizes, "--split", "first:36'"]) == 0
    (tunnel,) = open_farm(farm)[0].tunnels
    assert len(bow_positions(tunnel.frame.bows)) == 22
    assert tunnel.sides[0].splits[0].at_m == pytest.approx(36 * FT)
    capsys.readouterr()

    assert main(["plan", str(farm), "--json"]) == 0
    plan = json.loads(capsys.readouterr().out)
    assert main(["takeoff", str(farm), "-o", str(book)]) == 0
    assert main(["check", str(farm)]) in (0, 1)
    assert float(plan["plan"]["cost"]["to_pay"]) in paid(book)


def test_window_and_verbs_work_out_the_same(
    window: MainWindow, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    farm = tmp_path / "own.json"
    sizes = ["--span", "26'", "--length", "84'", "--spacing", "4'"]
    assert main(["new", "-o", str(farm), *sizes]) == 0
    capsys.readouterr()
    window.menu["new_farm"].trigger()
    (typed,) = open_farm(farm)[0].tunnels
    assert window.session.tunnel == typed
