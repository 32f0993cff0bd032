"""A bow is measured in four ways, by keyboard, and taken as one undo step.

The circle of radius 5 m with a chord of 8 m rises 2 m over it (3-4-5 triangle).
"""

import math
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication, QDialogButtonBox, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from hoopwright.desktop.bow_measuring import BowMeasuringDialog
from hoopwright.desktop.bow_measuring_picture import MeasuringPicture
from hoopwright.desktop.bow_measuring_points import PointsForm
from hoopwright.desktop.bow_measuring_ways import WAYS, first_way, points_taken
from hoopwright.desktop.session import Session
from hoopwright.farm import AcrossUp, Farm, MeasuredBow, RoundBow, TwoTapes
from samples import small_farm, tunnel
from shown_readings import show_readings

KEYS = Qt.Key
CTRL = Qt.KeyboardModifier.ControlModifier
# On legs of 1.5 m: where the circle of 5 m radius stands 1 m and 7 m across, it is 1 m above them.
POINTS = (("0", "1.5"), ("1", "2.5"), ("4", "3.5"), ("7", "2.5"), ("8", "1.5"))

Opened = Callable[..., tuple[Session, BowMeasuringDialog]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the dialog from the readings of a farm, by the key of its button."""
    kept: list[QWidget] = []

    def open_dialog(farm: Farm | None = None) -> tuple[Session, BowMeasuringDialog]:
        tables, session, bows = show_readings(qtbot, farm)
        kept.append(tables)
        qtbot.keyClick(bows.measure_button, KEYS.Key_Space)
        dialog = bows.findChild(BowMeasuringDialog)
        assert isinstance(dialog, BowMeasuringDialog)
        with qtbot.waitActive(dialog):
            dialog.activateWindow()
        return session, dialog

    return open_dialog


def _type(qtbot: QtBot, text: str, end: Qt.Key = KEYS.Key_Return) -> None:
    line = QApplication.focusWidget()
    assert isinstance(line, QLineEdit)
    line.selectAll()
    qtbot.keyClicks(line, text)
    qtbot.keyClick(line, end)


def _choose(qtbot: QtBot, dialog: BowMeasuringDialog, way: str) -> None:
    box = dialog.way.box
    while dialog.way.value != way:
        key = KEYS.Key_Down if box.currentIndex() < list(WAYS).index(way) else KEYS.Key_Up
        qtbot.keyClick(box, key)


def _ok(qtbot: QtBot, dialog: BowMeasuringDialog) -> None:
    button = dialog.buttons.button(QDialogButtonBox.StandardButton.Ok)
    qtbot.keyClick(button, KEYS.Key_Space)


def _figures(dialog: BowMeasuringDialog) -> list[str]:
    return [line.button.text() for line in dialog.figures if line.isVisible()]


def _points(dialog: BowMeasuringDialog) -> PointsForm:
    assert dialog.points is not None
    return dialog.points


def test_points_are_typed_one_after_the_other_and_taken_as_one_step(
    qtbot: QtBot, opened: Opened
) -> None:
    session, dialog = opened()
    assert dialog.way.value == "across_up"
    _points(dialog).fields()[0].line.setFocus()
    for across, up in POINTS:
        _type(qtbot, across)
        _type(qtbot, up)
    assert dialog.picture.points == (
        (-4, 0),
        (-4, 1.5),
        (-3, 2.5),
        (0, 3.5),
        (3, 2.5),
        (4, 1.5),
        (4, 0),
    )
    line = QApplication.focusWidget()
    assert line is not None
    qtbot.keyClick(line, KEYS.Key_Return, CTRL)
    bow = session.tunnel.frame.profile
    assert isinstance(bow, MeasuredBow)
    assert bow.span_m == 8.0
    assert bow.points == tuple(AcrossUp(across_m=float(x), up_m=float(y)) for x, y in POINTS)
    assert session.stack.count() == 1
    session.stack.undo()
    assert session.tunnel == tunnel()


def test_two_tapes_find_the_same_points(qtbot: QtBot, opened: Opened) -> None:
    session, dialog = opened()
    _choose(qtbot, dialog, "two_tapes")
    _points(dialog).fields()[0].line.setFocus()
    for x, y in ((1.0, 2.5), (4.0, 3.5), (7.0, 2.5)):
        _type(qtbot, f"{math.hypot(x, y):.6f} m")
        _type(qtbot, f"{math.hypot(8 - x, y):.6f} m")
    _ok(qtbot, dialog)
    bow = session.tunnel.frame.profile
    assert isinstance(bow, MeasuredBow)
    assert all(isinstance(point, TwoTapes) for point in bow.points)
    assert bow.spots[1:4] == tuple(pytest.approx(spot) for spot in ((-3, 2.5), (0, 3.5), (3, 2.5)))


def test_a_string_on_the_bend_makes_a_round_bow(qtbot: QtBot, opened: Opened) -> None:
    session, dialog = opened()
    _choose(qtbot, dialog, "string")
    assert "still missing" in dialog.told.text()
    dialog.lengths["chord_m"].line.setFocus()
    # A string of 6 m on that circle stands 1 m off.
    _type(qtbot, "6 m")
    assert QApplication.focusWidget() is dialog.lengths["offset_m"].line
    _type(qtbot, "1 m")
    assert _figures(dialog) == ["Radius of the bend: 5.000 m", "Ridge above the leg tops: 2.000 m"]
    line = dialog.figures[0]
    qtbot.keyClick(line.button, KEYS.Key_Space)
    assert "R = c² / 8m + m / 2" in line.told.text()
    _ok(qtbot, dialog)
    bow = session.tunnel.frame.profile
    assert isinstance(bow, RoundBow)
    assert (bow.span_m, bow.leg_height_m) == (8.0, 1.5)
    assert bow.peak_height_m == pytest.approx(3.5)


def test_a_tape_along_and_across_makes_a_round_bow(qtbot: QtBot, opened: Opened) -> None:
    session, dialog = opened()
    _choose(qtbot, dialog, "tape")
    dialog.lengths["along_m"].line.setFocus()
    _type(qtbot, f"{10 * math.asin(0.8):.9f} m")
    _type(qtbot, "8 m")
    assert "Radius of the bend: 5.000 m" in _figures(dialog)
    _ok(qtbot, dialog)
    bow = session.tunnel.frame.profile
    assert isinstance(bow, RoundBow)
    assert bow.peak_height_m == pytest.approx(3.5, abs=1e-6)
    assert bow.leg_height_m == 1.5


def test_the_best_circle_and_its_misfit_are_told(qtbot: QtBot, opened: Opened) -> None:
    # All on the circle of 5 m about a centre 3 m below the feet, feet too.
    points = tuple(AcrossUp(across_m=x, up_m=y) for x, y in ((1.0, 1.0), (4.0, 2.0), (7.0, 1.0)))
    plain = tunnel()
    boards = tuple(b.but(hip_height_m=0.9) for b in plain.frame.boards)
    bow = MeasuredBow(span_m=8.0, points=points)
    frame = plain.frame.but(profile=bow, boards=boards)
    _session, dialog = opened(small_farm(plain.but(frame=frame)))
    told = _figures(dialog)
    assert told[1:] == ["Radius of the best circle: 5.000 m", "Points off that circle by: 0.0 mm"]
    assert dialog.told.text().startswith("Dashed: ")
    assert "5.000 m" in dialog.picture.accessibleDescription()
    up = _points(dialog).lines[0][1]
    up.line.setFocus()
    _type(qtbot, "1.1")
    assert _figures(dialog)[2] != told[2]


@pytest.mark.parametrize(
    ("way", "typed", "field", "why"),
    [
        ("string", {"chord_m": "6", "offset_m": "3"}, "offset_m", "too tight"),
        ("tape", {"along_m": "7.9", "chord_m": "8"}, "along_m", "must read more than"),
    ],
)
def test_lengths_that_make_no_bow_are_refused_at_their_field(
    qtbot: QtBot, opened: Opened, way: str, typed: dict[str, str], field: str, why: str
) -> None:
    session, dialog = opened()
    _choose(qtbot, dialog, way)
    for name, text in typed.items():
        dialog.lengths[name].line.setFocus()
        _type(qtbot, text)
    line = dialog.lengths[field].line
    assert why in line.accessibleDescription()
    assert line.property("faulty")
    assert why in dialog.told.text()
    _ok(qtbot, dialog)
    assert dialog.isVisible()
    assert line.hasFocus()
    assert float(line.text().removesuffix(" m")) == float(typed[field])
    assert session.stack.count() == 0


@pytest.mark.parametrize(
    ("typed", "at", "why"),
    [
        ((("3", "2"), ("5", "2.9"), ("6", "-1")), 5, "is less than zero"),
        ((("3", "2.2"), ("4", "1"), ("5", "2.5")), 2, "is out of order"),
        ((("3", "2.2"), ("4", "2.9"), ("5", "")), 5, "Enter both lengths of point 3."),
    ],
)
def test_points_that_make_no_bow_are_refused_at_their_line(
    qtbot: QtBot, opened: Opened, typed: tuple[tuple[str, str], ...], at: int, why: str
) -> None:
    session, dialog = opened()
    _points(dialog).fields()[0].line.setFocus()
    for pair in typed:
        for text in pair:
            _type(qtbot, text)
    _ok(qtbot, dialog)
    assert dialog.isVisible()
    line = _points(dialog).fields()[at].line
    assert why in line.accessibleDescription()
    assert line.hasFocus()
    shown = [field.line.text().removesuffix(" m") for field in _points(dialog).fields()]
    given = [text for pair in typed for text in pair]
    assert [float(t) if t else None for t in shown[: len(given)]] == [
        float(t) if t else None for t in given
    ]
    assert session.stack.count() == 0


def test_tapes_that_do_not_meet_are_refused_at_their_point(qtbot: QtBot, opened: Opened) -> None:
    _session, dialog = opened()
    _choose(qtbot, dialog, "two_tapes")
    _points(dialog).fields()[0].line.setFocus()
    for text in ("2.9", "7.4", "3", "3", "7.4", "2.9"):
        _type(qtbot, text)
    line = _points(dialog).lines[1][0].line
    assert "do not meet" in line.accessibleDescription()
    assert line.text() == "3.000 m"


def test_a_bow_below_its_hip_board_is_refused_and_kept(qtbot: QtBot, opened: Opened) -> None:
    session, dialog = opened()
    _points(dialog).fields()[0].line.setFocus()
    for text in ("2", "1.0", "4", "1.4", "6", "1.0"):
        _type(qtbot, text)
    assert "must be below the ridge" in dialog.told.text()
    _ok(qtbot, dialog)
    assert dialog.isVisible()
    assert session.stack.count() == 0


def test_the_drawing_shows_a_leaning_bow_and_its_mirror_image(qtbot: QtBot) -> None:
    picture = MeasuringPicture(("West side", "East side"))
    qtbot.addWidget(picture)
    empty = picture.grab().toImage()
    plain = tunnel()
    points = tuple(AcrossUp(across_m=x, up_m=y) for x, y in ((1.0, 2.5), (4.8, 3.5), (7.0, 2.5)))
    bow = MeasuredBow(span_m=8.0, points=points, join="corners")
    picture.show_frame(plain.frame.but(profile=bow))
    drawn = picture.grab().toImage()
    # The ridge stands 0.8 m to the second side. The bow itself is 0.21 m lower in the middle, which
    # is 7 px here, so what is as high as the ridge in the left half is the ridge of its image.
    middle = drawn.width() // 2
    ridge = _top(drawn, empty, range(middle, drawn.width()))
    assert _top(drawn, empty, range(middle)) - ridge <= 3
    picture.show_frame(None)
    assert picture.grab().toImage() == empty


def _top(image: QImage, empty: QImage, columns: range) -> int:
    """Return the highest row of some columns where something is drawn."""
    return next(
        y
        for y in range(image.height())
        if any(image.pixel(x, y) != empty.pixel(x, y) for x in columns)
    )


def test_a_measured_bow_is_shown_in_either_way() -> None:
    points = (AcrossUp(across_m=1.0, up_m=2.5), TwoTapes(first_m=5.0, second_m=5.0))
    points = (*points, AcrossUp(across_m=7.0, up_m=2.5))
    plain = tunnel()
    measured = plain.but(
        frame=plain.frame.but(profile=MeasuredBow(span_m=8.0, points=points, join="corners"))
    )
    assert first_way(measured.frame.profile) == "across_up"
    told = points_taken(measured, "across_up")
    # Tapes of 5 m from both feet of a span of 8 m meet 3 m above its middle.
    assert isinstance(told[1], AcrossUp)
    assert (told[1].across_m, told[1].up_m) == pytest.approx((4.0, 3.0))
    assert all(isinstance(point, TwoTapes) for point in points_taken(measured, "two_tapes"))


def test_what_was_typed_for_one_way_stays_for_the_next(qtbot: QtBot, opened: Opened) -> None:
    _session, dialog = opened()
    _choose(qtbot, dialog, "string")
    dialog.lengths["chord_m"].line.setFocus()
    _type(qtbot, "6.5")
    _choose(qtbot, dialog, "tape")
    assert dialog.lengths["chord_m"].line.text() == "6.500 m"


def test_every_field_has_a_name_for_reading_aloud(qtbot: QtBot, opened: Opened) -> None:
    _session, dialog = opened(small_farm().but(units="imperial"))
    for way in WAYS:
        _choose(qtbot, dialog, way)
        names = [line.accessibleName() for line in dialog.findChildren(QLineEdit)]
        assert all(names)
        assert len(set(names)) == len(names)
    qtbot.keyClick(dialog, KEYS.Key_Escape)
    assert not dialog.isVisible()
