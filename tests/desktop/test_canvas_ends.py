"""End walls on the canvas: chosen, picked, dragged, nudged, typed and removed by hand and key."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop.canvas import Canvas
from hoopwright.desktop.canvas.chooser import CHOICES, Chooser
from hoopwright.desktop.end_moves import (
    end_kind,
    end_place,
    end_range,
    key_step,
    move_both_ways,
    move_on_end,
    next_on_end,
    remove_from_end,
    snap_on_end,
)
from hoopwright.desktop.end_tags import end_act_text, end_lines
from hoopwright.desktop.session import Session
from hoopwright.farm import Cut, Door, RoundBow, Tunnel
from hoopwright.plan import plan
from windows import make_window, show_window

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
LEFT = Qt.MouseButton.LeftButton
ALT = Qt.KeyboardModifier.AltModifier
CTRL = Qt.KeyboardModifier.ControlModifier
DOOR, VENT, RAIL, SEAM = "end/0/door/0", "end/0/cut/0", "end/0/rail/1", "end/0/seam/0"


def walled() -> Tunnel:
    """Return half circles of 4 m with a door, a vent, rails at 1 and 2 m and a seam at 2 m."""
    plain = samples.tunnel(HALF_CIRCLE)
    front = plain.ends[0].but(
        doors=(Door(width_m=2.0, height_m=2.1, left_m=-1.0),),
        cuts=(Cut(left_m=-0.3, sill_m=2.6, width_m=0.6, height_m=0.6),),
        rails_m=(1.0, 2.0),
        seams_m=(2.0,),
    )
    return plain.but(ends=(front, plain.ends[1]))


@pytest.fixture
def session(qapp: QApplication) -> Session:
    return Session(samples.small_farm(walled()))


@pytest.fixture
def canvas(qtbot: QtBot, session: Session) -> Canvas:
    made = Canvas(session)
    qtbot.addWidget(made)
    made.resize(1100, 600)
    made.show()
    qtbot.waitExposed(made)
    made.show_beside("front_end")
    made.board.setFocus()
    return made


def spot(canvas: Canvas, x_m: float, y_m: float) -> QPoint:
    return canvas.board.strips["section"].to_pixels((x_m, y_m)).toPoint()


def drag(canvas: Canvas, start: QPoint, end: QPoint) -> list[str]:
    """Drag with the left button in a few moves; return what the tag said last."""
    viewport = canvas.board.viewport()
    QTest.mousePress(viewport, LEFT, pos=start)
    for step in range(1, 6):
        QTest.mouseMove(viewport, start + (end - start) * step / 5)
    told = canvas.tag.text().splitlines()
    QTest.mouseRelease(viewport, LEFT, pos=end)
    return told


def front(session: Session) -> tuple[float | None, float, float]:
    """Return the door's left edge, and left edge and sill of the vent, m."""
    end = session.tunnel.ends[0]
    return end.doors[0].left_m, end.cuts[0].left_m, end.cuts[0].sill_m


def test_another_view_is_chosen_by_hand_and_key(canvas: Canvas) -> None:
    chooser = canvas.board.chooser
    assert chooser.accessibleName()
    assert chooser.focusPolicy() == Qt.FocusPolicy.StrongFocus
    names = [canvas.board.strips["section"].view.name]
    for _ in CHOICES:
        QTest.keyClick(canvas.board, Qt.Key.Key_E)
        names.append(canvas.board.strips["section"].view.name)
    assert names == ["front_end", "back_end", "section", "front_end"]
    chooser.show_beside("back_end")
    assert canvas.board.strips["section"].view.name == "back_end"
    assert "Back end seen from outside" in canvas.board.accessibleDescription()


def test_the_chosen_view_stays_while_the_farm_changes(canvas: Canvas, session: Session) -> None:
    session.apply_tunnel(session.tunnel.but(name="Other"), "Rename tunnel")
    assert canvas.board.strips["section"].view.name == "front_end"


@pytest.mark.parametrize("size", [(640, 360), (760, 420), (1100, 600), (1500, 800)])
def test_the_end_wall_is_seen_whole_below_its_choice(canvas: Canvas, size: tuple[int, int]) -> None:
    canvas.resize(*size)
    strip, chooser = canvas.board.strips["section"], canvas.board.chooser.geometry()
    left, top, width, height = strip.frame
    x0, y0, x1, y1 = strip.view.box
    low, high = strip.to_pixels((x0, y0)), strip.to_pixels((x1, y1))
    assert left <= low.x() < high.x() <= left + width <= size[0] + 1
    assert chooser.bottom() <= top + 1 <= high.y() < low.y() <= top + height <= size[1] + 1
    assert chooser.left() >= round(left) - 1
    assert chooser.right() <= size[0] + 1


def test_what_is_picked_on_an_end_brings_that_end(canvas: Canvas, session: Session) -> None:
    session.pick("end/1")
    assert canvas.board.strips["section"].view.name == "front_end"
    session.apply_tunnel(session.tunnel.but(ends=(session.tunnel.ends[0],) * 2), "Both ends alike")
    session.pick("end/1/cut/0")
    assert canvas.board.strips["section"].view.name == "back_end"


def test_a_vent_is_dragged_both_ways_in_steps(canvas: Canvas, session: Session) -> None:
    before = session.farm
    told = drag(canvas, spot(canvas, 0.0, 2.9), spot(canvas, -0.83, 1.88))
    _door, left_m, sill_m = front(session)
    # From -0.3 and 2.6 m by 0.83 and 1.02 m, in steps of 5 cm; a pixel is some 2 cm.
    assert left_m == pytest.approx(-1.15, abs=0.051)
    assert sill_m == pytest.approx(1.6, abs=0.051)
    assert round(left_m / 0.05) * 0.05 == pytest.approx(left_m)
    assert round(sill_m / 0.05) * 0.05 == pytest.approx(sill_m)
    assert told[0].startswith("Vent 1 · left edge -")
    assert told[1].startswith("Sill 1.")
    assert "Cost" in told[-1]
    assert [session.stack.text(k) for k in range(session.stack.count())] == [
        "Move vent on Front end"
    ]
    session.stack.undo()
    assert session.farm == before


def test_a_door_stays_on_the_ground_and_in_the_bow(canvas: Canvas, session: Session) -> None:
    drag(canvas, spot(canvas, 0.0, 1.05), spot(canvas, 9.0, 3.0))
    # At 2.1 m the bow reaches sqrt(16 - 4.41) = 3.4044 m: 1.4044 m for the left edge of 2 m.
    assert front(session)[0] == pytest.approx(1.4044, abs=1e-4)


def test_a_seam_snaps_to_a_rail_close_by(canvas: Canvas, session: Session) -> None:
    strip = canvas.board.strips["section"]
    grip = next(
        s.grip for s in strip.view.shapes if getattr(s, "mark", "") == SEAM and hasattr(s, "grip")
    )
    start = strip.to_pixels(grip).toPoint()
    drag(canvas, start, start + QPoint(0, round(0.92 * strip.px_per_m)))
    assert session.tunnel.ends[0].seams_m == (1.0,)
    assert session.tunnel.ends[0].rails_m == (1.0, 2.0)


def test_escape_puts_an_opening_back(canvas: Canvas, session: Session) -> None:
    viewport = canvas.board.viewport()
    QTest.mousePress(viewport, LEFT, pos=spot(canvas, 0.0, 2.9))
    QTest.mouseMove(viewport, spot(canvas, 0.0, 1.0))
    QTest.keyClick(canvas.board, Qt.Key.Key_Escape)
    QTest.mouseRelease(viewport, LEFT)
    assert front(session) == (-1.0, -0.3, 2.6)
    assert session.stack.count() == 0


def test_arrows_nudge_openings_rails_and_seams(canvas: Canvas, session: Session) -> None:
    session.pick(VENT)
    for key in (Qt.Key.Key_Left, Qt.Key.Key_Down):
        QTest.keyClick(canvas.board, key)
    assert front(session)[1:] == pytest.approx((-0.35, 2.55))
    QTest.keyClick(canvas.board, Qt.Key.Key_Down, CTRL)
    assert front(session)[2] == pytest.approx(2.549)
    session.pick(DOOR)
    QTest.keyClick(canvas.board, Qt.Key.Key_Right)
    assert front(session)[0] == pytest.approx(-0.95)
    session.pick(SEAM)
    QTest.keyClick(canvas.board, Qt.Key.Key_Up)
    assert session.tunnel.ends[0].seams_m == pytest.approx((2.01,))
    session.pick(RAIL)
    QTest.keyClick(canvas.board, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    assert session.tunnel.ends[0].rails_m == pytest.approx((1.0, 2.05))


def test_tab_walks_to_what_stands_on_the_end(canvas: Canvas, session: Session) -> None:
    session.pick("")
    reached = []
    for _ in range(30):
        QTest.keyClick(canvas.board, Qt.Key.Key_Tab)
        reached.append(session.mark)
        if session.mark == VENT:
            break
    assert {"end/0/rail/0", RAIL, SEAM, DOOR, VENT} <= set(reached)


def test_a_typed_left_edge_is_taken_or_refused(
    canvas: Canvas, session: Session, qtbot: QtBot
) -> None:
    session.pick(DOOR)
    QTest.keyClick(canvas.board, Qt.Key.Key_Return)
    field = canvas.entry.field
    field.selectAll()
    qtbot.keyClicks(field, "5 m")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert "It must be from" in canvas.entry.echo.text()
    field.selectAll()
    qtbot.keyClicks(field, "0.25 m")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert front(session)[0] == pytest.approx(0.25)


def test_delete_takes_away_what_is_picked_on_an_end(qtbot: QtBot) -> None:
    window = make_window()
    show_window(qtbot, window)
    session = window.session
    session.apply_tunnel(
        walled().but(
            skin=session.tunnel.skin,
            ends=tuple(end.but(film=session.tunnel.skin.pockets) for end in walled().ends),
            sides=session.tunnel.sides,
            air=session.tunnel.air,
            frame=session.tunnel.frame,
        ),
        "Walls",
    )
    session.pick(VENT)
    assert window.menu["remove_picked"].isEnabled()
    window.menu["remove_picked"].trigger()
    assert session.tunnel.ends[0].cuts == ()
    assert session.mark == ""


def test_moves_of_each_kind_without_a_window() -> None:
    made = walled()
    assert [end_kind(m) for m in (DOOR, VENT, RAIL, SEAM, "end/0", "side/0/hip")] == [
        "door",
        "cut",
        "rail",
        "end seam",
        "",
        "",
    ]
    assert (end_place(made, VENT, "along"), end_place(made, VENT, "up")) == (-0.3, 2.6)
    assert end_range(made, SEAM, "up") == pytest.approx((0.1, 3.9))
    assert end_place(move_on_end(made, RAIL, "up", 2.5), SEAM, "up") == 2.5
    both = move_both_ways(made, VENT, 0.5, 1.0)
    assert (end_place(both, VENT, "along"), end_place(both, VENT, "up")) == (0.5, 1.0)
    assert remove_from_end(made, SEAM).ends[0].seams_m == ()
    assert remove_from_end(made, DOOR).ends[0].doors == ()


def test_steps_are_round_in_both_systems_and_stop_at_rails() -> None:
    made = walled()
    assert snap_on_end(made, VENT, "imperial", 0.3) == pytest.approx(6 * 2 * 0.0254, abs=1e-9)
    assert snap_on_end(made, SEAM, "metric", 1.14) == 1.0
    assert snap_on_end(made, SEAM, "metric", 1.234) == pytest.approx(1.23)
    assert snap_on_end(made, RAIL, "metric", 1.234) == pytest.approx(1.23)
    assert key_step(DOOR, "imperial") == pytest.approx(0.0508)
    # From 2 m down by 1.2 m a seam stops at the rail of 1 m.
    assert next_on_end(made, SEAM, "up", 0.01, -120) == 1.0
    assert next_on_end(made, VENT, "along", 0.05, 3) == pytest.approx(-0.15)


def test_the_tag_tells_what_is_wrong_and_what_sheets_become() -> None:
    made = walled()
    out = made.but(
        ends=(
            made.ends[0].but(cuts=(made.ends[0].cuts[0].but(sill_m=3.8),), seams_m=(1.5,)),
            made.ends[1],
        )
    )
    planned = plan(samples.small_farm(out)).tunnels[0]
    assert "sticks out of the end wall" in end_lines(VENT, planned, "metric")
    lines = end_lines(SEAM, planned, "metric")
    assert lines[:2] == ("Seam at 1.500 m", "on no rail")
    assert len(lines) == 4
    assert end_lines("end/0/cut/9", planned, "metric") == ()
    assert end_act_text(VENT, out, "Remove") == "Remove vent on Front end"
    assert end_act_text(RAIL, out, "Move") == "Move rail on Front end"


def test_the_choice_names_every_view_once(qtbot: QtBot) -> None:
    chooser = Chooser(None)  # type: ignore[arg-type]  # a choice by itself
    qtbot.addWidget(chooser)
    told: list[str] = []
    chooser.chosen.connect(told.append)
    for _ in CHOICES:
        chooser.show_next()
    assert told == ["front_end", "back_end", "section"]
    assert chooser.beside == "section"
