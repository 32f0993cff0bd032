"""Curtains of every kind on the drawing: cranks by a click, the tag in a drag, proposed splits."""

from collections.abc import Iterator

import pytest
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtGui import QImage, QPainter, QTransform
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from hardware import geared_crank, line_drum
from hoopwright.desktop.canvas.keys import Steps
from hoopwright.desktop.canvas.picking import symbol_shift
from hoopwright.desktop.canvas.stage import _upright_rows
from hoopwright.desktop.palette import INKS
from hoopwright.desktop.tags import drag_tag
from hoopwright.desktop.window import MainWindow
from hoopwright.farm import Farm
from hoopwright.farm.change import move_split, set_side_kind
from hoopwright.papers.scene import Label, Symbol
from hoopwright.plan import plan
from samples import double_tunnel, small_catalogue, small_farm
from windows import make_window, show_window


def geared_farm() -> Farm:
    """Return a farm whose cranks climb with the bar."""
    catalogue = small_catalogue().but(drives=(geared_crank("crank"), line_drum()))
    return small_farm(double_tunnel()).but(catalogue=catalogue)


@pytest.fixture
def window(qtbot: QtBot) -> Iterator[MainWindow]:
    made = make_window()
    show_window(qtbot, made)
    made.session.load(geared_farm(), None, None)
    return made


def _crank(window: MainWindow, mark: str) -> QPoint:
    """Return where the sign of a crank is drawn, px."""
    strip = window.canvas.board.strips["first_side"]
    (sign,) = (s for s in strip.view.shapes if isinstance(s, Symbol) and s.mark == mark)
    right_px, up_px = symbol_shift(sign)
    return strip.to_pixels(sign.at).toPoint() + QPoint(round(right_px), round(-up_px))


def _ends(window: MainWindow) -> str:
    return window.session.tunnel.sides[0].panels[0].crank_end


def test_clicks_take_a_geared_crank_round_front_back_and_middle(window: MainWindow) -> None:
    viewport = window.canvas.board.viewport()
    found = [_ends(window)]
    for _click in range(3):
        QTest.mouseMove(viewport, QPoint(2, 2))
        at = _crank(window, "side/0/panel/0/crank")
        QTest.mouseClick(viewport, Qt.MouseButton.LeftButton, pos=at)
        found.append(_ends(window))
    assert found == ["front", "back", "middle", "front"]
    assert window.session.stack.count() == 3


def test_drum_of_a_line_shaft_goes_to_the_middle_too(window: MainWindow) -> None:
    session = window.session
    tunnel = set_side_kind(session.tunnel, 0, "drop_down", session.farm.catalogue)
    session.apply_tunnel(tunnel, "Drop down")
    session.pick("side/0/panel/0")
    found = [_ends(window)]
    for _turn in range(3):
        window.run(window.acts.turn_crank)
        found.append(_ends(window))
    assert found == ["front", "back", "middle", "front"]


def test_a_crank_in_the_middle_evens_the_twist(window: MainWindow) -> None:
    session = window.session
    session.pick("side/0/panel/0")
    before = session.tunnel_plan.chosen.curtains[0].twist_rad
    window.run(window.acts.turn_crank)
    window.run(window.acts.turn_crank)
    assert session.tunnel_plan.chosen.curtains[0].cranked == "middle"
    assert session.tunnel_plan.chosen.curtains[0].twist_rad < before


def test_turning_what_is_no_curtain_makes_no_step(window: MainWindow) -> None:
    steps = Steps(window.session)
    assert steps.turn("side/0/hip") == ""
    assert window.session.stack.count() == 0
    assert steps.turn("side/0/panel/1/crank") == "Move crank of curtain 2 on West side to the back"
    assert window.session.stack.count() == 1


def test_tag_of_a_dragged_split_tells_force_trailing_and_limit() -> None:
    farm = small_farm(double_tunnel())
    before = plan(farm).tunnels[0]
    moved = move_split(farm.tunnels[0], 0, 0, 15.0)
    now = plan(farm.but(tunnels=(moved,))).tunnels[0]
    lines = drag_tag("side/0/split/0", farm, moved, before, now, False)
    for number, line in ((0, lines[1]), (1, lines[2])):
        work = now.chosen.curtains[number]
        assert line.startswith(f"Curtain {number + 1}: ")
        assert f"{work.hardest_n:.0f} N at the hand" in line
        assert f"trails {work.trailing_m * 1000:.1f} mm" in line
        assert f"at most {work.longest_m:.3f} m by {work.bound_by}" in line
        assert "too long" not in line


def test_tag_says_when_a_curtain_is_too_long() -> None:
    farm = small_farm(double_tunnel())
    farm = farm.but(limits=farm.limits.but(hand_force_n=25.0))
    now = plan(farm).tunnels[0]
    lines = drag_tag("side/0/split/0", farm, farm.tunnels[0], now, now, False)
    assert now.chosen.curtains[0].length_m > now.chosen.curtains[0].longest_m
    assert "(too long)" in lines[1]


# --- Proposed splits


def _offers(window: MainWindow) -> list[Label]:
    shapes = window.canvas.board.strips["first_side"].view.shapes
    return [s for s in shapes if isinstance(s, Label) and s.style == "proposed"]


def test_proposed_split_is_dashed_and_no_other_line_is_like_it() -> None:
    ink = INKS["proposed"]
    alike = [
        style
        for style, other in INKS.items()
        if (other.colour, other.dash) == (ink.colour, ink.dash) and style != "proposed"
    ]
    assert ink.dash
    assert ink.width_px > INKS["split"].width_px
    assert alike == []


def test_key_names_a_proposed_split_only_while_there_is_one(window: MainWindow) -> None:
    farm = window.session.farm
    window.session.apply(farm.but(limits=farm.limits.but(hand_force_n=6.0)), "Limit")
    assert "proposed" not in window.canvas.board._key._styles
    window.session.pick("side/0")
    window.menu["propose_even"].trigger()
    assert _offers(window)
    assert "proposed" in window.canvas.board._key._styles
    window.session.propose(None)
    assert "proposed" not in window.canvas.board._key._styles


def test_label_of_a_proposed_split_gives_way_to_what_is_there(window: MainWindow) -> None:
    words = window.canvas.board.strips["first_side"]._words
    words.set_frame(QRectF(0, 0, 600, 200))
    label = Label("", "proposed", (300.0, 100.0), "Proposed split · 12.000 m", 400.0)
    image = QImage(600, 200, QImage.Format.Format_ARGB32)
    painter = QPainter(image)
    painter.setFont(words._letters.font)
    alone = words._paint_label(painter, QTransform(), label, [])
    beside = QRectF(alone.left() - 5, alone.top(), 20, alone.height())
    shorter = words._paint_label(painter, QTransform(), label, [beside])
    hidden = words._paint_label(painter, QTransform(), label, [alone])
    painter.end()
    assert shorter is not None
    assert shorter.width() < alone.width()
    assert not shorter.intersects(beside)
    assert hidden is None


# --- Room beside the section


def test_section_makes_room_when_sizes_come_to_stand_beside_it(window: MainWindow) -> None:
    session, board = window.session, window.canvas.board
    before = board.strips["section"].view
    changed = set_side_kind(session.tunnel, 0, "drop_down", session.farm.catalogue)
    session.apply_tunnel(changed, "Drop down")
    after = board.strips["section"].view
    left, top, width, height = board.strips["section"].frame
    rows = _upright_rows(after)
    row_px = board.strips["section"].row_px
    right_px = board.strips["section"].to_pixels((after.box[2], 0.0)).x()
    left_px = board.strips["section"].to_pixels((after.box[0], 0.0)).x()
    assert right_px + rows[1] * row_px <= left + width
    assert left_px - rows[0] * row_px >= left
    assert _upright_rows(before) != rows, "the case needs another number of rows"
    assert height > 0 <= top
