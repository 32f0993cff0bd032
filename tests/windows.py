"""The real window for tests, with every question answered before it is asked."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from hoopwright.desktop.application import begin_application, open_window
from hoopwright.desktop.questions import Questions
from hoopwright.desktop.window import MainWindow

LEFT = Qt.MouseButton.LeftButton
SIZE = (1366, 738)


class Answers(Questions):
    """Gives the answers a test wrote down, and keeps what was asked."""

    def __init__(self) -> None:
        self.asked: list[tuple[str, str]] = []
        self.file: Path | None = None
        self.unsaved_answer = "discard"
        self.changed_answer = "cancel"
        self.held_answer = "copy"
        self.found_answer = "open"
        self.name: str | None = None
        self.shows_folder = False

    def farm_to_open(self, folder: str) -> Path | None:
        self.asked.append(("farm to open", folder))
        return self.file

    def name_to_save(self, title: str, suggested: Path, kinds: str) -> Path | None:
        self.asked.append(("name to save", str(suggested)))
        return self.file

    def unsaved(self, farm_name: str) -> str:
        self.asked.append(("unsaved", farm_name))
        return self.unsaved_answer

    def changed(self, text: str) -> str:
        self.asked.append(("changed", text))
        return self.changed_answer

    def held(self, text: str) -> str:
        self.asked.append(("held", text))
        return self.held_answer

    def found(self, copy: object) -> str:
        self.asked.append(("found", copy.farm.name))
        return self.found_answer

    def wants_folder(self, path: Path) -> bool:
        self.asked.append(("wants folder", str(path)))
        return self.shows_folder

    def tunnel_name(self, name: str) -> str | None:
        self.asked.append(("tunnel name", name))
        return self.name


def make_window(path: Path | None = None, answers: Answers | None = None) -> MainWindow:
    """Return the window of a file, or of the sample, that asks nobody."""
    begin_application()
    window = open_window(None)
    window.filing.questions = answers or Answers()
    if path is not None:
        window.filing.open_path(path)
    return window


def show_window(qtbot: QtBot, window: MainWindow, size: tuple[int, int] = SIZE) -> None:
    """Show a window and wait for its drawing; it is closed after the test."""
    qtbot.addWidget(window)
    window.setWindowState(Qt.WindowState.WindowNoState)
    window.resize(*size)
    window.show()
    qtbot.waitUntil(lambda: window.canvas is not None)


def told_by(window: MainWindow) -> list[tuple[str, str]]:
    """Return a list that grows by each notice: its severity and its text."""
    told: list[tuple[str, str]] = []
    window.session.noticed.connect(lambda severity, text: told.append((severity, text)))
    return told


def rename(window: MainWindow, name: str) -> None:
    """Make one edit."""
    window.session.apply_tunnel(window.session.tunnel.but(name=name), "Rename tunnel")


def place_of(window: MainWindow, view: str, x_m: float, y_m: float) -> QPoint:
    """Return where a point of a tunnel is drawn, px in the viewport."""
    return window.canvas.board.strips[view].to_pixels((x_m, y_m)).toPoint()


def drag(
    window: MainWindow,
    view: str,
    start_m: tuple[float, float],
    end_m: tuple[float, float],
    at_each: Callable[[], None] = lambda: None,
) -> None:
    """Drag with the left button from one point of a tunnel to another, in eight moves."""
    viewport = window.canvas.board.viewport()
    QTest.mouseMove(viewport, QPoint(2, 2))
    QTest.mousePress(viewport, LEFT, pos=place_of(window, view, *start_m))
    for step in range(1, 9):
        share = step / 8
        spot = (a + (b - a) * share for a, b in zip(start_m, end_m, strict=True))
        QTest.mouseMove(viewport, place_of(window, view, *spot))
        at_each()
    QTest.mouseRelease(viewport, LEFT, pos=place_of(window, view, *end_m))
