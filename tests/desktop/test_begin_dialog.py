"""The five questions: what they make is said as it is answered, and a fault at its field."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialogButtonBox
from pytestqt.qtbot import QtBot

import samples
from hoopwright.desktop.begin_dialog import SHAPES, BeginDialog
from hoopwright.farm import EvenBows

FT = 0.3048


def make(qtbot: QtBot, units: str = "imperial", with_farm: bool = False) -> BeginDialog:
    dialog = BeginDialog(samples.small_catalogue(), units, "Tunnel 1", None, with_farm)
    qtbot.addWidget(dialog)
    dialog.show()
    return dialog


def type_in(dialog: BeginDialog, key: str, text: str) -> None:
    line = dialog.lengths[key].line
    line.setFocus()
    line.selectAll()
    QTest.keyClicks(line, text)
    line.editingFinished.emit()


def choose(field: object, index: int) -> None:
    field.box.setCurrentIndex(index)
    field.box.activated.emit(index)


def press_ok(dialog: BeginDialog) -> None:
    box = dialog.findChild(QDialogButtonBox)
    button = box.button(QDialogButtonBox.StandardButton.Ok)
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)


def test_bows_and_bays_are_counted_as_they_are_answered(qtbot: QtBot) -> None:
    # Worked by hand: 84 ft in bays of 4 ft are 21 bays, and 22 bows stand at their ends.
    dialog = make(qtbot)
    type_in(dialog, "length_m", "84'")
    type_in(dialog, "spacing_m", "4'")
    assert dialog.told.text().startswith("22 bows, 21 bays, 84' 0\"")
    type_in(dialog, "length_m", "96 ft")
    assert dialog.told.text().startswith("25 bows, 24 bays, 96' 0\"")


def test_spacing_that_does_not_make_the_length_is_said(qtbot: QtBot) -> None:
    dialog = make(qtbot)
    type_in(dialog, "length_m", "86'")
    assert "not the length of 86' 0\"" in dialog.told.text()


def test_answers_make_the_tunnel(qtbot: QtBot) -> None:
    dialog = make(qtbot)
    type_in(dialog, "span_m", "26'")
    type_in(dialog, "length_m", "84'")
    choose(dialog.layers, 1)
    choose(dialog.covering, 1)
    press_ok(dialog)
    tunnel = dialog.tunnel
    assert tunnel.frame.profile.span_m == pytest.approx(26 * FT)
    assert tunnel.frame.length_m == pytest.approx(84 * FT)
    assert tunnel.frame.bows == EvenBows(count=22, spacing_m=4 * FT)
    assert tunnel.skin.roof.count == 2
    assert tunnel.skin.covering == "one_sheet"
    assert dialog.result() == BeginDialog.DialogCode.Accepted


@pytest.mark.parametrize("index", range(len(SHAPES)))
def test_every_shape_is_drawn_and_can_be_had(qtbot: QtBot, index: int) -> None:
    dialog = make(qtbot)
    before = dialog.picture._points
    choose(dialog.shape, index)
    assert (dialog.picture._points != before) == (index > 0)
    assert len(dialog.picture._points) > 4
    assert not dialog.picture.grab().toImage().isNull()
    press_ok(dialog)
    assert dialog.tunnel is not None


def test_text_that_is_no_length_keeps_the_dialog_open(qtbot: QtBot) -> None:
    dialog = make(qtbot)
    type_in(dialog, "span_m", "about 26")
    press_ok(dialog)
    assert dialog.tunnel is None
    assert dialog.isVisible()
    assert dialog.lengths["span_m"].line.text() == "about 26"
    assert dialog.lengths["span_m"].message.text()
    type_in(dialog, "span_m", "26'")
    press_ok(dialog)
    assert dialog.tunnel is not None


def test_size_outside_its_limits_is_marked_at_its_field(qtbot: QtBot) -> None:
    dialog = make(qtbot)
    type_in(dialog, "span_m", "400'")
    assert "Enter from" in dialog.lengths["span_m"].message.text()


def test_spacing_longer_than_the_tunnel_is_told_at_the_spacing(qtbot: QtBot) -> None:
    dialog = make(qtbot, units="metric")
    type_in(dialog, "spacing_m", "9")
    type_in(dialog, "length_m", "4")
    assert "longer than the tunnel" in dialog.lengths["spacing_m"].message.text()
    press_ok(dialog)
    assert dialog.tunnel is None
    type_in(dialog, "length_m", "45")
    assert not dialog.lengths["spacing_m"].message.text()
    press_ok(dialog)
    assert dialog.tunnel is not None


def test_farm_is_begun_with_its_name_and_units(qtbot: QtBot) -> None:
    dialog = make(qtbot, with_farm=True)
    dialog.farm_name.line.selectAll()
    QTest.keyClicks(dialog.farm_name.line, "Long Acre")
    dialog.farm_name.line.editingFinished.emit()
    type_in(dialog, "span_m", "26'")
    choose(dialog.units, 1)
    assert dialog.lengths["span_m"].value == pytest.approx(26 * FT)
    assert dialog.lengths["length_m"].value == 24.0
    assert dialog.told.text().startswith("17 bows, 16 bays, 24.00")
    press_ok(dialog)
    farm = dialog.farm()
    assert (farm.name, farm.units) == ("Long Acre", "metric")
    assert farm.tunnels == (dialog.tunnel,)
