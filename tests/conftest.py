"""What every test stands on: no screen, a user folder of its own, and nothing left behind.

Everything below the window runs without the toolkit installed, so nothing here imports it unless
it is there.
"""

import gc
import os
import threading
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from typing import ClassVar

import pytest
from hypothesis import settings

HAS_QT = find_spec("PySide6") is not None
USER_FOLDERS = {
    "HOME": "",
    "USERPROFILE": "",
    "APPDATA": "roaming",
    "LOCALAPPDATA": "local",
    "XDG_CACHE_HOME": "cache",
    "XDG_CONFIG_HOME": "config",
    "XDG_DATA_HOME": "data",
    "XDG_STATE_HOME": "state",
}
FULL_COLLECT_EVERY = {True: 50, False: 400}

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
WINDOWED = ("desktop", "stories")
collect_ignore = [] if HAS_QT else list(WINDOWED)

settings.register_profile("here", deadline=None)
settings.register_profile("ci", deadline=None, derandomize=True)
settings.load_profile("ci" if os.environ.get("CI") else "here")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Let the settings of the toolkit's test plugin stand where it is not installed."""
    if find_spec("pytestqt") is None:
        for name in ("qt_api", "qt_log_level_fail", "qt_log_ignore"):
            parser.addini(name, "Setting of the toolkit's test plugin, without meaning here.")


def pytest_configure() -> None:
    """Collect garbage on the thread of the window alone.

    Collected in a worker, a widget would be deleted there, which ends the process.
    """
    if HAS_QT:
        gc.disable()


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Keep tests that open windows in one process: side by side they take each other's focus."""
    for item in items:
        if item.path.relative_to(Path(__file__).parent).parts[0] in WINDOWED:
            item.add_marker(pytest.mark.xdist_group("windows"))


class _Turns:
    """Counts the tests with windows and those without, so that now and then all is collected."""

    done: ClassVar[dict[bool, int]] = {True: 0, False: 0}


@pytest.hookimpl(trylast=True)
def pytest_runtest_teardown(item: pytest.Item) -> None:
    """Collect the young garbage after each test, and all of it now and then: that takes seconds."""
    if HAS_QT:
        windows = "qtbot" in getattr(item, "fixturenames", ())
        _Turns.done[windows] += 1
        full = _Turns.done[windows] % FULL_COLLECT_EVERY[windows] == 0
        gc.collect(2 if full else int(windows))


@pytest.fixture(autouse=True)
def user_folder(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give the test a user's home of its own, for settings, data and recovery copies."""
    folder = tmp_path_factory.mktemp("user")
    for name, part in USER_FOLDERS.items():
        place = folder / part
        place.mkdir(exist_ok=True)
        monkeypatch.setenv(name, str(place))
    if HAS_QT:
        _move_settings(folder / "config")
    return folder


def _move_settings(folder: Path) -> None:
    from PySide6.QtCore import QSettings, QStandardPaths

    QStandardPaths.setTestModeEnabled(True)
    for form in (QSettings.Format.NativeFormat, QSettings.Format.IniFormat):
        QSettings.setPath(form, QSettings.Scope.UserScope, str(folder))


@pytest.fixture(autouse=True)
def nothing_left(request: pytest.FixtureRequest) -> Iterator[None]:
    """Fail a test that leaves a thread running or, where it opens windows, a window open."""
    windows = "qtbot" in request.fixturenames
    threads_before = set(threading.enumerate())
    widgets_before = _top_widgets() if windows else set()
    yield
    left = [t.name for t in set(threading.enumerate()) - threads_before if not t.daemon]
    assert not left, f"threads still running after the test: {left}"
    if windows:
        # All garbage is looked through only where the young garbage was not enough.
        for generation in (1, 2):
            _delete_closed(generation)
            kinds = sorted(type(w).__name__ for w in _top_widgets() - widgets_before)
            if not kinds:
                break
        assert not kinds, f"widgets still there after the test: {kinds}"
        _assert_pool_rests()


def _top_widgets() -> set[object]:
    from PySide6.QtWidgets import QApplication

    return {w for w in QApplication.topLevelWidgets() if w.parent() is None}


def _delete_closed(generation: int) -> None:
    from PySide6.QtCore import QCoreApplication, QEvent

    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect(generation)


def _assert_pool_rests() -> None:
    from PySide6.QtCore import QThreadPool

    assert QThreadPool.globalInstance().activeThreadCount() == 0, "a worker is still running"
