"""The start of the program, and what happens when it meets a fault of its own."""

import gc
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtGui import QGuiApplication, QPixmapCache
from PySide6.QtWidgets import QAbstractButton, QMessageBox
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop import application
from hoopwright.desktop.application import (
    Collector,
    FaultHook,
    begin_application,
    fault_report,
    open_window,
    run_window,
)
from hoopwright.desktop.safekeeping import recovery_folder
from hoopwright.files.storage import save_farm
from windows import make_window, rename


@pytest.fixture
def window(qtbot: QtBot) -> Iterator[object]:
    made = make_window()
    qtbot.addWidget(made)
    return made


def a_fault() -> RuntimeError:
    try:
        raise RuntimeError("a bug for the test")
    except RuntimeError as error:
        return error


def test_application_has_name_style_and_room_for_pictures(qtbot: QtBot) -> None:
    app = begin_application()
    assert app.applicationName() == "hoopwright"
    assert app.style().objectName().lower() == "fusion"
    assert QPixmapCache.cacheLimit() == 131072


def test_file_named_at_the_start_is_opened(qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "farm.json"
    save_farm(path, samples.small_farm(), None)
    begin_application()
    window = open_window(path)
    qtbot.addWidget(window)
    assert window.session.farm == samples.small_farm()
    assert window.session.path == path


def test_bad_file_named_at_the_start_is_told_and_the_sample_stands(
    qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "bad.json"
    path.write_text("{")
    begin_application()
    window = open_window(path)
    qtbot.addWidget(window)
    assert window.session.farm.name == "Alder Brook Farm"
    assert window.notices.severity == "fault"
    assert str(path) in window.notices.text.text()


def test_fault_of_the_program_is_told_once_and_the_work_is_kept(
    window: object, capsys: pytest.CaptureFixture[str]
) -> None:
    hook, shown = FaultHook(window), []
    error = a_fault()

    def show(report: str) -> None:
        shown.append(report)
        hook(RuntimeError, error, error.__traceback__)

    hook.show = show
    rename(window, "Unsaved")
    hook(RuntimeError, error, error.__traceback__)
    assert len(shown) == 1, "a fault while a fault is told opens no second box"
    assert "a bug for the test" in shown[0]
    assert "a bug for the test" in capsys.readouterr().err
    assert len(list(recovery_folder().glob("recovery-*.json"))) == 1
    assert window.session.tunnel.name == "Unsaved"


def test_report_of_a_fault_can_be_copied(window: object, monkeypatch: pytest.MonkeyPatch) -> None:
    def copy_button(box: QMessageBox) -> QAbstractButton:
        return next(b for b in box.buttons() if "Copy" in b.text())

    monkeypatch.setattr(QMessageBox, "exec", lambda box: box.detailedText())
    monkeypatch.setattr(QMessageBox, "clickedButton", copy_button)
    error = a_fault()
    FaultHook(window)(RuntimeError, error, error.__traceback__)
    assert "a bug for the test" in QGuiApplication.clipboard().text()


def test_report_names_the_versions(qtbot: QtBot) -> None:
    error = a_fault()
    report = fault_report(RuntimeError, error, error.__traceback__)
    assert report.startswith("hoopwright 0.")
    assert "Python 3." in report
    assert "test_application.py" in report


def test_garbage_is_collected_on_the_thread_of_the_window(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    depths: list[int] = []
    monkeypatch.setattr(gc, "collect", depths.append)
    collector = Collector()
    try:
        assert not gc.isenabled()
        for _ in range(application.FULL_COLLECT_EVERY):
            collector.collect()
    finally:
        collector.stop()
        assert gc.isenabled()
        gc.disable()
    assert depths == [1] * (application.FULL_COLLECT_EVERY - 1) + [2]


def test_run_shows_the_window_and_ends_with_its_status(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[object] = []

    def run(_app: object = None) -> int:
        assert isinstance(sys.excepthook, FaultHook)
        (window,) = opened
        assert window.isVisible()
        window.close()
        return 0

    def make(path: Path | None) -> object:
        window = open_window(path)
        qtbot.addWidget(window)
        opened.append(window)
        return window

    hook = sys.excepthook
    monkeypatch.setattr(application, "open_window", make)
    monkeypatch.setattr(application.QApplication, "exec", run)
    assert run_window(None) == 0
    assert not isinstance(sys.excepthook, FaultHook)
    sys.excepthook = hook
    gc.disable()
