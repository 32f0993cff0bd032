"""The measuring sheet from the window: saved whole, told, and in the order of the readings."""

import errno
from pathlib import Path

import pypdf
import pytest
from pytestqt.qtbot import QtBot

from hoopwright.desktop.table_tape_boxes import BOXES
from hoopwright.desktop.table_tape_rows import bows_to_measure
from hoopwright.desktop.window import MainWindow
from hoopwright.papers.measuring_sheet import measuring_pages
from papers.sheets_to_measure import bows, measured
from windows import Answers, make_window, told_by


@pytest.fixture
def answers() -> Answers:
    return Answers()


@pytest.fixture
def window(qtbot: QtBot, answers: Answers) -> MainWindow:
    made = make_window(answers=answers)
    qtbot.addWidget(made)
    return made


def test_menu_saves_the_sheet_of_the_shown_tunnel(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    answers.file = tmp_path / "sheet.pdf"
    told = told_by(window)
    window.menu["measuring"].trigger()
    assert answers.asked[0][1].endswith("alder-brook-farm-brook-tunnel-measuring.pdf")
    assert answers.asked[1] == ("wants folder", str(answers.file))
    assert told == [("note", f"Measuring sheet: {answers.file}")]
    text = " ".join(pypdf.PdfReader(answers.file).pages[0].extract_text().split())
    assert "Brook tunnel, Alder Brook Farm" in text
    assert "ft in" in text


def test_sheet_is_written_in_the_units_that_are_shown(
    window: MainWindow, answers: Answers, tmp_path: Path
) -> None:
    window.menu["metric"].trigger()
    answers.file = tmp_path / "sheet.pdf"
    assert window.filing.export_measuring()
    page = pypdf.PdfReader(answers.file).pages[0]
    assert "ft\tin" not in page.extract_text().replace(" ", "\t")
    # ISO 216: A4 is 595 points wide.
    assert round(page.mediabox.width) == 595


def test_nothing_is_written_without_a_name(window: MainWindow, tmp_path: Path) -> None:
    assert not window.filing.export_measuring()
    assert list(tmp_path.iterdir()) == []


def test_disk_that_takes_no_sheet_is_told(
    window: MainWindow, answers: Answers, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_work: object) -> None:
        raise OSError(errno.ENOSPC, "refused")

    answers.file = tmp_path / "sheet.pdf"
    told = told_by(window)
    monkeypatch.setattr("hoopwright.files.storage._write_synced", refuse)
    assert not window.filing.export_measuring()
    ((severity, text),) = told
    assert severity == "fault"
    assert "full" in text
    assert not answers.file.exists()


@pytest.mark.parametrize("subject", [measured(), bows(30), bows(3)], ids=["read", "30", "3"])
def test_sheet_and_window_have_the_same_bows_and_boxes_in_the_same_order(subject) -> None:
    tunnel = subject.tunnel
    first_page = measuring_pages(subject)[0]
    fields = [b.field for b in first_page.boxes if b.field[:3] == ("frame", "tape", "bows")]
    columns = [BOXES[column].field for column in sorted(BOXES)]
    assert fields == [
        ("frame", "tape", "bows", bow, *field)
        for bow in bows_to_measure(tunnel)
        for field in columns
    ]
