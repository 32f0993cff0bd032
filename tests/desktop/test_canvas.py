"""The canvas under real mouse and key events: what a hand does to the farm, and what is shown."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QHelpEvent, QKeyEvent, QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolTip
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop.canvas import Canvas
from hoopwright.desktop.canvas.board import Board
from hoopwright.desktop.palette import app_palette
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm
from hoopwright.farm.change import add_seam, add_tunnel

LEFT = Qt.MouseButton.LeftButton
NO_KEY = Qt.KeyboardModifier.NoModifier
ALT, SHIFT, CTRL = (
    Qt.KeyboardModifier.AltModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
)


def _farm() -> Farm:
    return samples.small_farm(add_seam(samples.double_tunnel(), 15.0))


@pytest.fixture
def session(qapp: QApplication) -> Session:
    return Session(_farm())


@pytest.fixture
def canvas(qtbot: QtBot, session: Session) -> Canvas:
    made = Canvas(session)
    qtbot.addWidget(made)
    made.resize(1000, 500)
    made.show()
    qtbot.waitExposed(made)
    made.board.setFocus()
    return made


def _place(canvas: Canvas, view: str, x_m: float, y_m: float) -> QPoint:
    return canvas.board.strips[view].to_pixels((x_m, y_m)).toPoint()


def _mouse(
    board: Board, kind: QEvent.Type, at: QPoint, keys: Qt.KeyboardModifier, held: bool
) -> None:
    """Send a mouse event with modifiers; moves of the test library carry none."""
    viewport = board.viewport()
    button = Qt.MouseButton.NoButton if kind == QEvent.Type.MouseMove else LEFT
    buttons = LEFT if held else Qt.MouseButton.NoButton
    spot, shown = QPointF(at), QPointF(viewport.mapToGlobal(at))
    QApplication.sendEvent(viewport, QMouseEvent(kind, spot, shown, button, buttons, keys))


def _take(
    canvas: Canvas, start: QPoint, end: QPoint, keys: Qt.KeyboardModifier = NO_KEY, steps: int = 4
) -> None:
    """Press at a place and move to another without letting go."""
    _mouse(canvas.board, QEvent.Type.MouseButtonPress, start, NO_KEY, True)
    for step in range(1, steps + 1):
        at = start + (end - start) * step / steps
        _mouse(canvas.board, QEvent.Type.MouseMove, at, keys, True)


def _drop(canvas: Canvas, end: QPoint, keys: Qt.KeyboardModifier = NO_KEY) -> None:
    _mouse(canvas.board, QEvent.Type.MouseButtonRelease, end, keys, False)


def _drag(canvas: Canvas, start: QPoint, end: QPoint, keys: Qt.KeyboardModifier = NO_KEY) -> None:
    _take(canvas, start, end, keys)
    _drop(canvas, end, keys)


def _click(canvas: Canvas, at: QPoint) -> None:
    QTest.mouseClick(canvas.board.viewport(), LEFT, NO_KEY, at)


def _key(canvas: Canvas, key: Qt.Key, keys: Qt.KeyboardModifier = NO_KEY, text: str = "") -> None:
    QTest.keyClick(canvas.board, key, keys)


def _split(session: Session, side: int = 0) -> float:
    return session.tunnel.sides[side].splits[0].at_m


def _hips(session: Session) -> tuple[float, ...]:
    return tuple(boards.hip_height_m for boards in session.tunnel.frame.boards)


def _texts(session: Session) -> list[str]:
    return [session.stack.text(k) for k in range(session.stack.count())]


# --- Scale and place


@pytest.mark.parametrize("size", [(1000, 500), (1500, 800), (640, 360)])
def test_all_is_seen_to_one_scale_on_one_axis(
    canvas: Canvas, qtbot: QtBot, size: tuple[int, int]
) -> None:
    canvas.resize(*size)
    strips = canvas.board.strips
    long = [strips[name] for name in ("first_side", "plan", "second_side")]
    assert len({strip.px_per_m for strip in long}) == 1
    assert len({round(strip.to_pixels((12.0, 0.0)).x(), 6) for strip in long}) == 1
    for strip in strips.values():
        left, top, width, height = strip.frame
        x0, y0, x1, y1 = strip.view.box
        low, high = strip.to_pixels((x0, y0)), strip.to_pixels((x1, y1))
        assert left <= low.x() < high.x() <= left + width
        assert top <= high.y() < low.y() <= top + height
        assert left + width <= size[0] + 1
        assert top + height <= size[1] + 1


def test_the_view_boxes_agree_with_the_way_between_pixels_and_metres(canvas: Canvas) -> None:
    for strip in canvas.board.strips.values():
        for point in ((0.0, 0.0), (3.0, 1.2)):
            inside = strip.box.mapViewToScene(QPointF(*point))
            ours = strip.to_pixels(point)
            assert (inside.x(), inside.y()) == pytest.approx((ours.x(), ours.y()), abs=0.01)
            assert strip.to_metres(ours) == pytest.approx(point)
        across, up = strip.box.viewPixelSize()
        assert across == pytest.approx(up, rel=1e-6)


def _turn_wheel(canvas: Canvas, at: QPoint, turned: int) -> None:
    viewport = canvas.board.viewport()
    wheel = QWheelEvent(
        QPointF(at),
        QPointF(viewport.mapToGlobal(at)),
        QPoint(),
        QPoint(0, turned),
        Qt.MouseButton.NoButton,
        NO_KEY,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(viewport, wheel)


def test_the_wheel_zooms_about_the_pointer_and_home_shows_all(canvas: Canvas) -> None:
    board, at = canvas.board, _place(canvas, "first_side", 9.0, 1.0)
    before, scale = board.strips["first_side"].to_metres(QPointF(at)), board.px_per_m
    _turn_wheel(canvas, at, 120)
    assert board.px_per_m > scale * 1.1
    assert board.strips["first_side"].to_metres(QPointF(at))[0] == pytest.approx(before[0])
    assert len({s.px_per_m for n, s in board.strips.items() if n != "section"}) == 1
    _key(canvas, Qt.Key.Key_Home)
    assert board.px_per_m == pytest.approx(scale)
    _turn_wheel(canvas, at, -1200)
    assert board.px_per_m == pytest.approx(scale)


def test_middle_drag_pans_along_the_length(canvas: Canvas) -> None:
    board = canvas.board
    for _ in range(6):
        _key(canvas, Qt.Key.Key_Plus)
    start = _place(canvas, "plan", 12.0, 0.0)
    middle = Qt.MouseButton.MiddleButton
    QTest.mousePress(board.viewport(), middle, NO_KEY, start)
    QTest.mouseMove(board.viewport(), start + QPoint(60, 0))
    QTest.mouseRelease(board.viewport(), middle, NO_KEY, start + QPoint(60, 0))
    for name in ("first_side", "plan", "second_side"):
        assert _place(canvas, name, 12.0, 0.0).x() == start.x() + 60


def test_z_shows_the_picked_curtain_large(canvas: Canvas, session: Session) -> None:
    scale = canvas.board.px_per_m
    session.pick("side/1/strip/0")
    _key(canvas, Qt.Key.Key_Z)
    assert canvas.board.px_per_m > scale
    # The strip behind the split stands in the bay from 9 to 10.5 m.
    left, _top, width, _height = canvas.board.strips["plan"].frame
    assert _place(canvas, "plan", 9.75, 0.0).x() == pytest.approx(left + width / 2, abs=2)


# --- Picking


@pytest.mark.parametrize(
    ("view", "x_m", "y_m", "mark"),
    [
        ("first_side", 5.25, 0.9, "side/0/panel/0"),
        ("second_side", 18.75, 0.9, "side/1/panel/1"),
        ("first_side", 0.75, 1.0, "side/0/pocket/front"),
        ("second_side", 9.8, 1.0, "side/1/strip/0"),
        ("plan", 4.5, 1.0, "bow/3"),
        ("first_side", 0.75, 0.1, "side/0/baseboard"),
        ("section", 0.0, 1.0, "end/0"),
    ],
)
def test_a_click_picks_what_is_there(
    canvas: Canvas, session: Session, view: str, x_m: float, y_m: float, mark: str
) -> None:
    _click(canvas, _place(canvas, view, x_m, y_m))
    assert session.mark == mark


def test_a_roof_sheet_is_picked_between_bows(canvas: Canvas, session: Session) -> None:
    _click(canvas, _place(canvas, "plan", 5.25, 2.0))
    piece = next(p for p in session.tunnel_plan.chosen.cover.pieces if p.mark == session.mark)
    assert piece.role == "roof sheet"


def test_a_click_beside_the_tunnel_picks_nothing(canvas: Canvas, session: Session) -> None:
    session.pick("bow/2")
    left, top, _width, _height = canvas.board.strips["plan"].frame
    _click(canvas, QPoint(int(left) + 200, int(top) + 2))
    assert session.mark == ""


def test_what_is_picked_is_lit_in_every_view(canvas: Canvas, session: Session) -> None:
    session.pick("")
    dark_before = canvas.grab().toImage()
    session.pick("bow/4")
    lit = canvas.grab().toImage()
    for name in ("first_side", "plan", "second_side"):
        at = _place(canvas, name, 6.0, 1.8 if name != "plan" else 1.5)
        assert lit.pixelColor(at) != dark_before.pixelColor(at)
    elsewhere = _place(canvas, "plan", 5.25, 1.5)
    assert lit.pixelColor(elsewhere) == dark_before.pixelColor(elsewhere)


def test_marks_of_a_table_row_are_lit_and_brought_into_view(canvas: Canvas) -> None:
    for _ in range(8):
        _key(canvas, Qt.Key.Key_Plus)
    canvas.show_marks(("bow/16",))
    left, _top, width, _height = canvas.board.strips["plan"].frame
    assert left < _place(canvas, "plan", 24.0, 0.0).x() <= left + width
    lit = canvas.grab().toImage().pixelColor(_place(canvas, "plan", 24.0, 1.0))
    canvas.show_marks(())
    assert canvas.grab().toImage().pixelColor(_place(canvas, "plan", 24.0, 1.0)) != lit


def test_the_tooltip_names_and_measures_what_the_pointer_rests_on(
    canvas: Canvas, qtbot: QtBot
) -> None:
    at = _place(canvas, "first_side", 5.25, 0.9)
    viewport = canvas.board.viewport()
    asked = QHelpEvent(QEvent.Type.ToolTip, at, viewport.mapToGlobal(at))
    QApplication.sendEvent(viewport, asked)
    # Worked by hand: 10.5 m of opening and a lap of 0.3048 m at each end.
    assert QToolTip.text() == "West side, curtain 1: 11.110 m"
    QToolTip.hideText()
    qtbot.waitUntil(lambda: not QToolTip.isVisible())


# --- Dragging


def test_a_dragged_split_snaps_to_the_nearest_bow(canvas: Canvas, session: Session) -> None:
    start, end = (_place(canvas, "first_side", x, 1.5) for x in (12.0, 15.4))
    _drag(canvas, start, end)
    assert _split(session) == 15.0
    assert _split(session, 1) == 9.0
    assert _texts(session) == ["Move split on West side"]


@pytest.mark.parametrize("key", [ALT, SHIFT])
def test_a_key_frees_the_split_from_the_bows(
    canvas: Canvas, session: Session, key: Qt.KeyboardModifier
) -> None:
    start, end = (_place(canvas, "first_side", x, 1.5) for x in (12.0, 13.3))
    _drag(canvas, start, end, key)
    px_per_m = canvas.board.px_per_m
    assert _split(session) == pytest.approx(12.0 + (end.x() - start.x()) / px_per_m, abs=0.0006)
    assert _split(session) * 1000 == pytest.approx(round(_split(session) * 1000))


def test_a_split_is_taken_at_its_line_too_and_moves_with_the_hand(
    canvas: Canvas, session: Session
) -> None:
    start = _place(canvas, "second_side", 9.0, 0.7)
    _drag(canvas, start, start + QPoint(round(3.0 * canvas.board.px_per_m), 30))
    assert _split(session, 1) == 12.0


def test_the_farm_follows_the_hand_and_the_tag_says_what_changes(
    canvas: Canvas, session: Session
) -> None:
    start, end = (_place(canvas, "first_side", x, 1.5) for x in (12.0, 15.0))
    _take(canvas, start, end)
    assert session.dragging
    assert _split(session) == 15.0
    assert canvas.tag.isVisible()
    lines = canvas.tag.text().splitlines()
    assert lines[0] == "Split at 15.000 m"
    # Worked by hand: openings of 13.5 and 7.5 m, each with a lap of 0.3048 m at both ends.
    assert lines[1].startswith("Curtain 1: 14.110 m · ")
    assert lines[2].startswith("Curtain 2: 8.110 m · ")
    assert lines[-1].startswith("Cost ")
    assert session.stack.count() == 0
    _drop(canvas, end)
    assert not canvas.tag.isVisible()
    assert session.stack.count() == 1


def test_undo_gives_the_same_farm_back(canvas: Canvas, session: Session) -> None:
    before = session.farm
    _drag(canvas, *(_place(canvas, "first_side", x, 1.5) for x in (12.0, 18.0)))
    assert session.farm != before
    session.stack.undo()
    assert session.farm is before


def test_there_and_back_is_no_step(canvas: Canvas, session: Session) -> None:
    before = session.farm
    start, away = (_place(canvas, "first_side", x, 1.5) for x in (12.0, 18.0))
    _take(canvas, start, away)
    _mouse(canvas.board, QEvent.Type.MouseMove, start, NO_KEY, True)
    _drop(canvas, start)
    assert session.stack.count() == 0
    assert session.farm == before


def test_escape_puts_the_split_back(canvas: Canvas, session: Session) -> None:
    before = session.farm
    start, end = (_place(canvas, "first_side", x, 1.5) for x in (12.0, 18.0))
    _take(canvas, start, end)
    _key(canvas, Qt.Key.Key_Escape)
    assert session.farm is before
    assert not session.dragging
    assert not canvas.tag.isVisible()
    _drop(canvas, end)
    assert session.farm is before
    assert session.stack.count() == 0


def test_a_press_without_a_move_only_picks(canvas: Canvas, session: Session) -> None:
    _click(canvas, _place(canvas, "first_side", 12.0, 1.5))
    assert session.mark == "side/0/split/0"
    assert session.stack.count() == 0


def test_a_split_stays_between_the_pockets(canvas: Canvas, session: Session) -> None:
    start = _place(canvas, "first_side", 12.0, 1.5)
    _drag(canvas, start, QPoint(start.x() - 900, start.y()))
    # The opening begins at the bow at 1.5 m; the next bow is the first that leaves a curtain.
    assert _split(session) == 3.0


@pytest.mark.parametrize(("view", "y_m"), [("plan", 2.0), ("first_side", 1.9)])
def test_a_cross_seam_is_dragged_in_plan_and_elevation(
    canvas: Canvas, session: Session, view: str, y_m: float
) -> None:
    start, end = (_place(canvas, view, x, y_m) for x in (15.0, 9.2))
    _take(canvas, start, end)
    lines = canvas.tag.text().splitlines()
    assert lines[0] == "Cross seam at 9.000 m"
    sheets = [line for line in lines if line.startswith("Roof sheet")]
    # Worked by hand: 9 or 15 m, half a lap of 0.3048 m, and a tail of 0.6096 m.
    assert [line.rsplit(": ", 1)[1] for line in sheets] == ["9.762 m", "15.762 m"]
    assert lines[-1].startswith("Film ")
    _drop(canvas, end)
    assert session.tunnel.skin.cross_seams_m == (9.0,)
    assert _texts(session) == ["Move cross seam"]


@pytest.mark.parametrize(("view", "x_m"), [("second_side", 0.0), ("section", -4.024)])
def test_the_hip_seam_moves_on_both_sides_in_steps(
    canvas: Canvas, session: Session, view: str, x_m: float
) -> None:
    start, end = (_place(canvas, view, x_m, y) for y in (1.5, 1.9))
    _take(canvas, start, end)
    assert "both sides" in canvas.tag.text()
    assert "Roof film" in canvas.tag.text()
    assert "of the floor" in canvas.tag.text()
    _drop(canvas, end)
    one, other = _hips(session)
    assert one == other
    assert one == pytest.approx(1.9, abs=2 / canvas.board.strips[view].px_per_m)
    assert one * 100 == pytest.approx(round(one * 100))
    assert _texts(session) == ["Move hip seam on both sides"]


def test_ctrl_moves_the_hip_seam_of_one_side_alone(canvas: Canvas, session: Session) -> None:
    start, end = (_place(canvas, "second_side", 0.0, y) for y in (1.5, 1.9))
    _take(canvas, start, end, CTRL)
    assert "East side" in canvas.tag.text().splitlines()[0]
    _drop(canvas, end, CTRL)
    assert _hips(session)[0] == 1.5
    assert _hips(session)[1] > 1.7
    assert _texts(session) == ["Move hip seam on East side"]


# --- Cranks


def test_a_click_on_a_crank_moves_it_to_the_other_end(canvas: Canvas, session: Session) -> None:
    before = session.farm
    at = _place(canvas, "first_side", 1.5, 0.25) + QPoint(13, 0)
    _click(canvas, at)
    assert session.tunnel.sides[0].panels[0].crank_end == "back"
    assert session.stack.count() == 1
    assert session.mark == "side/0/panel/0"
    session.stack.undo()
    assert session.farm is before


def test_c_moves_the_crank_of_the_picked_curtain(canvas: Canvas, session: Session) -> None:
    session.pick("side/1/panel/1")
    _key(canvas, Qt.Key.Key_C)
    assert session.tunnel.sides[1].panels[1].crank_end == "back"
    assert _texts(session) == ["Move crank of curtain 2 on East side to the back"]


# --- Keys


def test_tab_walks_the_handles_and_then_goes_on(canvas: Canvas, session: Session) -> None:
    seen = []
    jumpers = sorted(j.mark for j in session.tunnel_plan.chosen.inflation.jumpers)
    for _ in range(5 + len(jumpers)):
        _key(canvas, Qt.Key.Key_Tab)
        seen.append(session.mark)
    on_sides = [f"side/{n}/{what}" for n in (0, 1) for what in ("hip", "split/0")]
    assert sorted(seen) == [*jumpers, "roof/seam/0", *on_sides]
    _key(canvas, Qt.Key.Key_Tab)
    assert session.mark == seen[-1]
    _key(canvas, Qt.Key.Key_Backtab)
    assert session.mark == seen[-2]


@pytest.mark.parametrize(
    ("key", "keys", "expected_m"),
    [
        (Qt.Key.Key_Right, NO_KEY, 13.5),
        (Qt.Key.Key_Left, NO_KEY, 10.5),
        (Qt.Key.Key_Right, SHIFT, 19.5),
        (Qt.Key.Key_Left, CTRL, 11.999),
        (Qt.Key.Key_Right, ALT, 12.001),
    ],
)
def test_arrows_move_the_picked_split(
    canvas: Canvas, session: Session, key: Qt.Key, keys: Qt.KeyboardModifier, expected_m: float
) -> None:
    session.pick("side/0/split/0")
    _key(canvas, key, keys)
    assert _split(session) == pytest.approx(expected_m)
    assert session.stack.count() == 1


def test_up_and_down_move_the_picked_hip_seam(canvas: Canvas, session: Session) -> None:
    session.pick("side/0/hip")
    _key(canvas, Qt.Key.Key_Up)
    assert _hips(session) == pytest.approx((1.51, 1.51))
    _key(canvas, Qt.Key.Key_Down, SHIFT)
    assert _hips(session) == pytest.approx((1.46, 1.46))


def test_a_key_held_down_is_one_step(canvas: Canvas, session: Session) -> None:
    before = session.farm
    session.pick("side/0/split/0")
    for held in (False, True, True):
        event = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_Right, NO_KEY, "", held)
        QApplication.sendEvent(canvas.board, event)
    assert _split(session) == 16.5
    assert session.stack.count() == 1
    _key(canvas, Qt.Key.Key_Right)
    assert session.stack.count() == 2
    session.stack.undo()
    session.stack.undo()
    assert session.farm is before


def test_keys_that_say_nothing_go_on_to_the_window(canvas: Canvas) -> None:
    event = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_F6, NO_KEY)
    QApplication.sendEvent(canvas.board, event)
    assert not event.isAccepted()


# --- Typing


def _type(canvas: Canvas, text: str) -> None:
    canvas.entry.field.setFocus()
    QTest.keyClicks(canvas.entry.field, text)


def test_a_typed_position_moves_the_split(canvas: Canvas, session: Session) -> None:
    session.pick("side/0/split/0")
    QTest.keyClicks(canvas.board, "1")
    assert canvas.entry.isVisible()
    _type(canvas, "4.25 m")
    assert canvas.entry.field.text() == "14.25 m"
    assert "14.25 m" in canvas.entry.echo.text()
    QTest.keyClick(canvas.entry.field, Qt.Key.Key_Return)
    assert not canvas.entry.isVisible()
    assert _split(session) == pytest.approx(14.25)
    assert session.stack.count() == 1


def test_feet_and_inches_can_be_typed_and_are_read_back(canvas: Canvas, session: Session) -> None:
    session.pick("side/0/split/0")
    _key(canvas, Qt.Key.Key_Return)
    canvas.entry.field.selectAll()
    _type(canvas, "40' 6\"")
    # 40.5 ft = 12.3444 m exactly, by the definition of the foot.
    assert "12.344 m" in canvas.entry.echo.text()
    QTest.keyClick(canvas.entry.field, Qt.Key.Key_Return)
    assert _split(session) == pytest.approx(12.3444)


@pytest.mark.parametrize(
    ("typed", "said"),
    [("12 x", "not a unit of length"), ("99", "must be from 2.000 m to 22.000 m"), ("", "Nothing")],
)
def test_what_cannot_be_stays_in_the_field_with_the_reason(
    canvas: Canvas, session: Session, typed: str, said: str
) -> None:
    before = session.farm
    session.pick("side/0/split/0")
    _key(canvas, Qt.Key.Key_Return)
    canvas.entry.field.setText(typed)
    QTest.keyClick(canvas.entry.field, Qt.Key.Key_Return)
    assert canvas.entry.isVisible()
    assert canvas.entry.field.text() == typed
    assert said in canvas.entry.echo.text()
    assert session.farm is before
    QTest.keyClick(canvas.entry.field, Qt.Key.Key_Escape)
    assert not canvas.entry.isVisible()
    assert session.mark == "side/0/split/0"


def test_a_double_click_on_a_grip_asks_for_its_position(canvas: Canvas, session: Session) -> None:
    at = _place(canvas, "first_side", 12.0, 1.5)
    QTest.mouseClick(canvas.board.viewport(), LEFT, NO_KEY, at)
    QTest.mouseDClick(canvas.board.viewport(), LEFT, NO_KEY, at)
    assert canvas.entry.isVisible()
    assert canvas.entry.field.text() == "12.000 m"
    assert session.stack.count() == 0


# --- Following the session


def test_another_tunnel_is_drawn_when_it_is_shown(qtbot: QtBot, qapp: QApplication) -> None:
    short = samples.tunnel().but(name="Short tunnel")
    short = short.but(frame=short.frame.but(bows=short.frame.bows.but(count=5), length_m=6.0))
    session = Session(add_tunnel(_farm(), short))
    canvas = Canvas(session)
    qtbot.addWidget(canvas)
    canvas.resize(900, 450)
    canvas.show()
    qtbot.waitExposed(canvas)
    session.show_tunnel(1)
    left, _top, width, _height = canvas.board.strips["plan"].frame
    assert _place(canvas, "plan", 3.0, 0.0).x() == pytest.approx(left + width / 2, abs=1)
    assert canvas.board.strips["plan"].view.box[2] == pytest.approx(6.0 + 0.6096)
    assert "Short tunnel" in canvas.board.accessibleName()


def test_unchanged_views_are_left_alone(canvas: Canvas, session: Session) -> None:
    canvas.show_pressures(False)
    kept = canvas.board.strips["second_side"].view
    changed = canvas.board.strips["first_side"].view
    _drag(canvas, *(_place(canvas, "first_side", x, 1.5) for x in (12.0, 15.0)))
    assert canvas.board.strips["second_side"].view is kept
    assert canvas.board.strips["first_side"].view is not changed


def test_the_drawing_turns_dark_with_the_window(canvas: Canvas) -> None:
    spot = QPoint(int(canvas.board.strips["plan"].frame[0]) + 300, 2)
    light = canvas.grab().toImage().pixelColor(spot).lightness()
    canvas.setPalette(app_palette(dark=True))
    assert canvas.grab().toImage().pixelColor(spot).lightness() < 80 < light
    canvas.setPalette(app_palette(dark=False))
    assert canvas.grab().toImage().pixelColor(spot).lightness() == light


def test_the_drawing_says_what_it_shows(canvas: Canvas) -> None:
    told = canvas.board.accessibleDescription()
    for words in ("West side", "East side", "2 curtains", "front end is at the left", "17 bows"):
        assert words in told


def test_a_move_is_announced(canvas: Canvas, session: Session, told: list[str]) -> None:
    session.pick("side/0/split/0")
    _key(canvas, Qt.Key.Key_Right)
    assert any("Split at 13.500 m" in text for text in told)


@pytest.fixture
def told(canvas: Canvas, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Catch what would be read aloud."""
    heard: list[str] = []
    monkeypatch.setattr(canvas, "_announce", heard.append)
    return heard
