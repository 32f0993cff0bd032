"""Fields are typed into as people do, and asked what they show.

Sizes of units: 1 in = 0.0254 m and 1 ft = 0.3048 m exactly, 1 lbf = 4.4482216152605 N (NIST Special
Publication 811, appendix B).
"""

from collections.abc import Callable
from decimal import Decimal

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAction, QKeySequence, QWheelEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from hoopwright.desktop.field import Between, LineField, refusal_words
from hoopwright.desktop.fields import (
    ChoiceField,
    CountField,
    FlagField,
    LengthField,
    MoneyField,
    NumberField,
    TextField,
)

FOOT_M = 0.3048
INCH_M = 0.0254


@pytest.fixture
def shown(qtbot: QtBot) -> Callable[..., list[object]]:
    """Show fields in a window, the first one with the focus, and list what they send."""
    windows = []

    def show(*fields: QWidget) -> list[object]:
        window = QWidget()
        box = QVBoxLayout(window)
        sent: list[object] = []
        for field in fields:
            box.addWidget(field)
            field.entered.connect(sent.append)
        qtbot.addWidget(window)
        windows.append(window)
        window.show()
        window.activateWindow()
        fields[0].setFocus()
        qtbot.waitUntil(lambda: QApplication.focusWidget() is not None)
        return sent

    return show


def _type(
    qtbot: QtBot, field: LineField, text: str, end: Qt.Key | None = Qt.Key.Key_Return
) -> None:
    field.line.selectAll()
    qtbot.keyClicks(field.line, text)
    if end is not None:
        qtbot.keyClick(field.line, end)


def test_length_is_entered_in_feet_and_inches_by_enter(qtbot: QtBot, shown) -> None:
    field = LengthField("span", "imperial")
    sent = shown(field)
    _type(qtbot, field, "5' 6 1/2")
    assert sent == [pytest.approx(66.5 * INCH_M, abs=1e-12)]
    assert field.line.text() == "5' 6 1/2\""


def test_doubtful_length_says_how_it_is_read_while_typing(qtbot: QtBot, shown) -> None:
    field = LengthField("span", "imperial")
    shown(field)
    _type(qtbot, field, "5.6", end=None)
    assert "5.6 ft" in field.message.text()
    assert "7 1/4" in field.message.text()  # 0.6 ft are 7.2 in, to the nearest eighth 7 1/4
    assert field.message.isVisible()


def test_unfinished_text_is_not_called_wrong_while_typing(qtbot: QtBot, shown) -> None:
    field = LengthField("span", "imperial")
    shown(field)
    _type(qtbot, field, "5' 6 1/", end=None)
    assert field.message.text() == ""
    assert field.line.styleSheet() == ""


def test_wrong_text_is_marked_said_and_kept_until_it_is_right(qtbot: QtBot, shown) -> None:
    field = LengthField("span", "metric")
    sent = shown(field)
    field.set_value(8.0)
    _type(qtbot, field, "eight")
    assert sent == []
    assert field.line.text() == "eight"
    assert "eight" in field.message.text()
    assert field.line.accessibleDescription() == field.message.text()
    assert field.line.actions(), "the sign of a fault stands in the field"
    field.set_value(9.0)
    assert field.line.text() == "eight", "a new value from elsewhere does not take the text away"
    _type(qtbot, field, "8.5")
    assert sent == [8.5]
    assert field.message.text() == ""
    assert not field.line.actions()


def test_value_beyond_the_limits_is_refused_in_the_units_of_the_field(qtbot: QtBot, shown) -> None:
    field = LengthField("span", "imperial", Between(10 * FOOT_M, 60 * FOOT_M))
    sent = shown(field)
    _type(qtbot, field, "61'", end=None)
    assert field.message.text() == "Enter from 10' 0\" to 60' 0\"."
    _type(qtbot, field, "60'")
    assert sent == [pytest.approx(60 * FOOT_M)]


def test_escape_puts_the_value_back(qtbot: QtBot, shown) -> None:
    field = LengthField("span", "metric")
    sent = shown(field)
    field.set_value(8.0)
    _type(qtbot, field, "nonsense", end=Qt.Key.Key_Escape)
    assert field.line.text() == "8.000 m"
    qtbot.keyClick(field.line, Qt.Key.Key_Return)
    assert sent == []


def test_leaving_the_field_enters_it(qtbot: QtBot, shown) -> None:
    first, second = LengthField("span", "metric"), TextField("name")
    sent = shown(first, second)
    first.line.setFocus()
    _type(qtbot, first, "7.25", end=None)
    second.line.setFocus()
    qtbot.waitUntil(lambda: sent == [7.25])


@pytest.mark.parametrize("value_m", [1.5, 0.0001, 10.2345678, 24.0, 0.0254 / 3])
@pytest.mark.parametrize("units", ["imperial", "metric"])
def test_unchanged_text_makes_no_edit(qtbot: QtBot, shown, units, value_m: float) -> None:
    field = LengthField("span", units)
    sent = shown(field)
    field.set_value(value_m)
    text = field.line.text()
    _type(qtbot, field, text)
    assert sent == []
    assert field.value == value_m


@pytest.mark.parametrize("steps", [8, 16, 32, 64])
def test_length_to_a_fraction_of_an_inch_is_shown_exactly(qtbot: QtBot, steps: int) -> None:
    field = LengthField("tube", "imperial")
    qtbot.addWidget(field)
    field.set_value(INCH_M * (2 + 1 / steps))
    assert field.line.text() == f'2 1/{steps}"'


def test_share_shows_percent_and_reads_it(qtbot: QtBot, shown) -> None:
    field = NumberField("sales tax", "share", "imperial", Between(0, 1))
    sent = shown(field)
    field.set_value(0.07125)
    assert (field.line.text(), field.unit.text()) == ("7.125", "%")
    assert field.unit.isVisible()
    _type(qtbot, field, "6.5")
    assert sent == [pytest.approx(0.065)]
    _type(qtbot, field, "101")
    assert field.message.text() == "Enter from 0% to 100%."


def test_force_is_shown_in_pounds_without_false_digits(qtbot: QtBot, shown) -> None:
    field = NumberField("hand force", "N", "imperial")
    sent = shown(field)
    field.set_value(60.0)
    assert (field.line.text(), field.unit.text()) == ("13.5", "lbf")  # 60 / 4.44822 = 13.489
    _type(qtbot, field, "20 N")
    assert sent == [20.0]


def test_large_number_is_shown_as_it_can_be_typed(qtbot: QtBot, shown) -> None:
    field = NumberField("density", "kg/m3", "metric")
    sent = shown(field)
    field.set_value(1234.0)
    _type(qtbot, field, field.line.text())
    assert sent == []
    assert field.message.text() == ""


def test_count_refuses_a_part(qtbot: QtBot, shown) -> None:
    field = CountField("bows", "metric", Between(2, 1000))
    sent = shown(field)
    _type(qtbot, field, "12.5")
    assert sent == []
    assert "whole number" in field.message.text()
    _type(qtbot, field, "12")
    assert sent == [12]
    assert isinstance(sent[0], int)


def test_money_keeps_every_cent(qtbot: QtBot, shown) -> None:
    field = MoneyField("freight", "EUR")
    sent = shown(field)
    field.set_value(Decimal("12.5"))
    assert (field.line.text(), field.unit.text()) == ("12.50", "EUR")
    _type(qtbot, field, "0.1")
    _type(qtbot, field, "0.1250")
    assert sent == [Decimal("0.10"), Decimal("0.125")]
    assert field.line.text() == "0.125"


def test_empty_text_is_no_value_only_where_that_may_be(qtbot: QtBot, shown) -> None:
    free, bound = LengthField("radius", "metric", optional=True), LengthField("span", "metric")
    sent = shown(free, bound)
    free.set_value(5.0)
    bound.set_value(8.0)
    for field in (free, bound):
        field.line.setFocus()
        field.line.selectAll()
        qtbot.keyClick(field.line, Qt.Key.Key_Delete)
        qtbot.keyClick(field.line, Qt.Key.Key_Return)
    assert sent == [None]
    assert bound.message.text() != ""


def test_refused_text_stays_and_the_value_too(qtbot: QtBot, shown) -> None:
    field = TextField("name")
    shown(field)
    field.set_value("Meadow")
    field.entered.connect(lambda _value: field.show_refusal("Two tunnels have this name."))
    _type(qtbot, field, "Brook")
    assert field.line.text() == "Brook"
    assert field.value == "Meadow"
    assert field.message.text() == "Two tunnels have this name."
    qtbot.keyClick(field.line, Qt.Key.Key_Escape)
    assert (field.line.text(), field.message.text()) == ("Meadow", "")


def test_refusal_is_shown_without_the_name_of_the_field_in_the_file() -> None:
    said = ValueError("arc_radius_m: with less the ridge would dip; enter a larger radius")
    assert refusal_words(said, "metric") == "With less the ridge would dip; enter a larger radius"


def test_undo_goes_to_the_window_until_something_is_typed(qtbot: QtBot, shown) -> None:
    field = TextField("name")
    shown(field)
    undone: list[bool] = []
    action = QAction(field.window())
    action.setShortcut(QKeySequence.StandardKey.Undo)
    action.triggered.connect(lambda: undone.append(True))
    field.window().addAction(action)
    field.set_value("Meadow")
    qtbot.keyClick(field.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert undone == [True]
    _type(qtbot, field, "Brook", end=None)
    qtbot.keyClick(field.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert undone == [True], "typing is undone by the field itself"
    assert field.line.text() != "Brook"


def _turn_wheel(widget: QWidget) -> bool:
    middle = QPointF(widget.rect().center())
    event = QWheelEvent(
        middle,
        widget.mapToGlobal(middle),
        QPoint(),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)
    return event.isAccepted()


def test_wheel_turns_a_choice_only_with_the_focus(qtbot: QtBot, shown) -> None:
    text, choice = TextField("name"), ChoiceField("drive", [("a", "hand crank"), ("b", "geared")])
    sent = shown(text, choice)
    choice.set_value("a")
    text.line.setFocus()
    assert not _turn_wheel(choice.box), "the panel around it scrolls"
    assert choice.box.currentText() == "hand crank"
    choice.box.setFocus()
    _turn_wheel(choice.box)
    assert sent == ["b"]


@pytest.mark.parametrize("field", [NumberField, CountField])
def test_wheel_never_changes_a_number(qtbot: QtBot, shown, field: type) -> None:
    made = field("n", "metric") if field is CountField else field("n", "N", "metric")
    sent = shown(made)
    made.set_value(3)
    before = made.line.text()
    _turn_wheel(made.line)
    assert (made.line.text(), sent) == (before, [])


def test_choice_that_is_refused_goes_back(qtbot: QtBot, shown) -> None:
    field = ChoiceField("shape", [(1, "round"), (2, "gothic")])
    shown(field)
    field.set_value(1)
    field.entered.connect(lambda _value: field.show_refusal("The peak is too low."))
    qtbot.keyClick(field.box, Qt.Key.Key_Down)
    assert field.box.currentText() == "round"
    assert field.message.text() == "The peak is too low."


def test_flag_is_set_by_the_space_bar(qtbot: QtBot, shown) -> None:
    field = FlagField("wind rope")
    sent = shown(field)
    qtbot.keyClick(field.tick, Qt.Key.Key_Space)
    assert sent == [True]
    field.set_value(False)
    assert sent == [True], "filling sends nothing"
    assert not field.tick.isChecked()


def test_every_field_has_a_name_for_reading_aloud(qtbot: QtBot) -> None:
    for field in (LengthField("span", "metric"), FlagField("rope"), ChoiceField("drive", [])):
        qtbot.addWidget(field)
        assert field.editor.accessibleName() in ("span", "rope", "drive")
    assert isinstance(LengthField("x", "metric").editor, QLineEdit)


def test_length_with_a_limit_below_zero_takes_a_minus(
    qtbot: QtBot, shown: Callable[..., list[object]]
) -> None:
    field = LengthField("ground", "imperial", Between(-3.0, 3.0))
    sent = shown(field)
    _type(qtbot, field, '-1 5/16"')
    # 21 sixteenths of an inch below the line.
    assert sent == [pytest.approx(-21 / 16 * INCH_M)]
    assert field.line.text() == '-1 5/16"'
    _type(qtbot, field, "-11'")
    assert field.line.property("faulty")
    assert len(sent) == 1
