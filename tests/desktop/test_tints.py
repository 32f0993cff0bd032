"""Cells tinted by their pressure: on the drawing, in its key, with and without colour."""

from itertools import combinations
from typing import get_args

import pytest
from PySide6.QtCore import QPoint, QRectF
from PySide6.QtGui import QImage, QPainter
from pytestqt.qtbot import QtBot

from hoopwright.desktop.air_words import cell_name, held_states, jumper_tag, pressure_words
from hoopwright.desktop.canvas.tints import PATTERN_PX, TintLayer, draw_sample, pattern
from hoopwright.desktop.palette import COLOURS, PATTERNS, TINTS
from hoopwright.desktop.tags import drag_tag
from hoopwright.desktop.window import MainWindow
from hoopwright.papers.scene import Label
from hoopwright.pressure.held import AirState
from samples import double_tunnel, small_farm
from windows import make_window, place_of, show_window

STATES: tuple[AirState, ...] = get_args(AirState)
BOX = (0.0, 0.0, 60.0, 40.0)


@pytest.fixture
def window(qtbot: QtBot) -> MainWindow:
    """Return the window of a farm with two layers and inflated curtains."""
    window = make_window()
    show_window(qtbot, window)
    window.session.load(small_farm(double_tunnel()), None, None)
    return window


def _brightness(hex_colour: str) -> float:
    """Return the relative luminance of a colour (W3C, WCAG 2.1, relative luminance)."""
    shares = [int(hex_colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    linear = [s / 12.92 if s <= 0.04045 else ((s + 0.055) / 1.055) ** 2.4 for s in shares]
    return sum(w * s for w, s in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


@pytest.mark.parametrize("dark", [False, True])
def test_more_pressure_stands_further_off_the_paper(dark: bool) -> None:
    paper = _brightness(COLOURS["paper"][dark])
    scale = [abs(_brightness(TINTS[state][dark]) - paper) for state in STATES if state != "not fed"]
    assert scale == sorted(scale)


def test_every_state_has_a_pattern_of_its_own() -> None:
    drawn = {
        state: {(x.x1(), x.y1(), x.x2(), x.y2()) for x in pattern(state, BOX, PATTERN_PX)}
        for state in STATES
    }
    assert drawn["in range"] == set()
    for one, other in combinations(STATES, 2):
        assert drawn[one] != drawn[other]
    assert set(PATTERNS) == set(STATES)


def test_samples_differ_on_grey_paper_too() -> None:
    shown = []
    for state in STATES:
        image = QImage(60, 40, QImage.Format.Format_Grayscale8)
        image.fill(255)
        painter = QPainter(image)
        draw_sample(painter, state, QRectF(*BOX), dark=False)
        painter.end()
        shown.append(bytes(image.constBits()))
    assert len(set(shown)) == len(STATES)


def test_drawing_tints_roof_and_curtains_and_writes_their_pressures(window: MainWindow) -> None:
    strips = window.canvas.board.strips
    plan = window.session.tunnel_plan
    states = held_states(plan)
    for view, marks in (("plan", {"cell/roof/0"}), ("first_side", {"side/0/panel/0"})):
        layer = strips[view]._tinted
        assert isinstance(layer, TintLayer)
        assert layer.isVisible()
        assert marks <= set(states)
    texts = [s.text for s in strips["plan"].view.shapes if isinstance(s, Label)]
    (said,) = pressure_words("cell/roof/0", plan, "metric")
    assert said.split(",")[0] in " ".join(texts)


def test_menu_takes_the_pressures_away_and_brings_them_back(window: MainWindow) -> None:
    action = window.menu["pressures"]
    assert action.isChecked()
    spot = place_of(window, "plan", 3.3, 1.0) + QPoint(2, 0)

    def pixel() -> tuple[int, int, int]:
        seen = window.canvas.board.viewport().grab().toImage().pixelColor(spot)
        return seen.red(), seen.green(), seen.blue()

    tinted = pixel()
    action.trigger()
    plain = pixel()
    assert plain != tinted
    texts = [s.text for s in window.canvas.board.strips["plan"].view.shapes if isinstance(s, Label)]
    assert not any(" Pa" in text for text in texts)
    action.trigger()
    assert pixel() == tinted


def test_key_names_the_states_that_are_drawn(window: MainWindow) -> None:
    states = {air.state for air in window.session.tunnel_plan.held.cells}
    assert window.canvas.board._key._states == states
    window.menu["pressures"].trigger()
    assert window.canvas.board._key._states == frozenset()


def test_cell_and_jumper_are_told_with_their_air(window: MainWindow) -> None:
    plan = window.session.tunnel_plan
    air = plan.held.cells[0]
    assert f"{air.pressure_pa:.1f} Pa, {air.state}" in cell_name("cell/roof/0", plan, "metric")
    lines = jumper_tag("jumper/0", plan, "metric")
    assert lines[0].startswith("Jumper hose 1 at ")
    assert lines[1].startswith("From Roof")
    assert " Pa" in lines[2]
    assert "no two cells" in jumper_tag("jumper/99", plan, "metric")[0]


def test_tag_of_a_split_tells_the_least_pressure(window: MainWindow) -> None:
    session = window.session
    plan = session.tunnel_plan
    lines = drag_tag("side/0/split/0", session.farm, session.tunnel, plan, plan, False)
    least = min(plan.held.cells, key=lambda air: air.pressure_pa)
    assert f"Least pressure {least.pressure_pa:.1f} Pa, {least.state}" in lines
