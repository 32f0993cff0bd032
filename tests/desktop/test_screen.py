"""Whether a window can be opened is told before the toolkit is loaded."""

import sys

import pytest

from hoopwright.desktop import screen


@pytest.fixture(autouse=True)
def bare(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)


@pytest.mark.parametrize("display", ["", ":7531", "nonsense", "localhost:7531.0"])
def test_screen_that_does_not_answer_is_none(monkeypatch: pytest.MonkeyPatch, display: str) -> None:
    monkeypatch.setenv("DISPLAY", display)
    assert screen.screen_fault() == "there is no screen to open the window on"


@pytest.mark.parametrize("platform", ["offscreen", "minimal:fontdb", "vnc:size=800x600"])
def test_drawing_in_memory_needs_no_screen(monkeypatch: pytest.MonkeyPatch, platform: str) -> None:
    monkeypatch.setenv("QT_QPA_PLATFORM", platform)
    assert screen.screen_fault() == ""


@pytest.mark.parametrize("system", ["win32", "darwin"])
def test_other_systems_have_a_screen_of_their_own(
    monkeypatch: pytest.MonkeyPatch, system: str
) -> None:
    monkeypatch.setattr(sys, "platform", system)
    assert screen.screen_fault() == ""


def test_missing_library_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DISPLAY", ":0")
    monkeypatch.setattr(screen, "_x_answers", lambda _display: True)
    monkeypatch.setattr(screen, "POINTER_LIBRARY", "libnowhere.so.9")
    assert "libnowhere.so.9 is missing" in screen.screen_fault()
