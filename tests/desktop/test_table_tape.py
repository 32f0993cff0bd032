"""Readings are entered from the measuring sheet by keyboard alone, pasted, refused and undone.

Sizes of units: 1 in = 0.0254 m and 1 ft = 0.3048 m exactly (NIST Special Publication 811,
appendix B).
"""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from hoopwright.desktop.session import Session
from hoopwright.desktop.table_tape import BowsTab, TapeTab
from hoopwright.desktop.table_tape_boxes import BOXES, POSITION, box_name, enter_texts
from hoopwright.desktop.table_tape_frame import FrameReadingsTab
from hoopwright.desktop.table_tape_model import TapeModel
from hoopwright.desktop.table_tape_view import TapeView
from hoopwright.farm import BowReading, EvenBows, Farm, ListedBows, SideReading, Tape
from hoopwright.farm.change_tape import with_bow_value
from samples import small_farm, tunnel
from shown_readings import show_readings

KEYS, ROLES = Qt.Key, Qt.ItemDataRole
SHIFT = Qt.KeyboardModifier.ShiftModifier
CTRL = Qt.KeyboardModifier.ControlModifier
HIPS, WHOLE, FIRST_HIP, FIRST_BASE, FIRST_GROUND = range(2, 7)
DIP = 10
FOOT_M, INCH_M = 0.3048, 0.0254
# A round bow of 8 m span on legs of 1.5 m, ridge at 3.7 m: the straight lines from hip to ridge to
# hip at 1.5 m are 2 * hypot(4, 2.2) = 9.13 m, so girths of the sheet must be longer.
SHEET = [
    ["9.60 m", "12.0 m", "1.50 m", "0.30 m", "-0.02 m", "1.51 m", "0.31 m", "0", "0"],
    ["9.62", "12.05", "1.52", "0.30", "-0.05", "1.50", "0.30", "0.01", "0.02"],
    ["31' 6 1/2\"", "39-4-1/2", "5'", '12"', '-1"', "1.50", "30 cm", "10 mm", '1 1/2"'],
    ["961 cm", "12 m", "1.49", "0.29", "0", "1.48", "0.29", "-0.01", "-0.005"],
    ["9.63", "12.02", "1.50", "0.31", "0.02", "1.5", "0.3", "0", "0"],
]
# The third row by hand: 31 * 12 + 6.5 = 378.5 in, 39 * 12 + 4.5 = 472.5 in, 60 in, 12 in, -1 in.
THIRD_M = (378.5 * INCH_M, 472.5 * INCH_M, 60 * INCH_M, 12 * INCH_M, -INCH_M, 1.5, 0.3, 0.01)
SUGGESTED = (1, 5, 9, 13, 17)

Opened = Callable[..., tuple[Session, BowsTab]]
OpenedWhole = Callable[..., tuple[Session, FrameReadingsTab]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the readings of a farm with the grid focused."""
    kept: list[QWidget] = []

    def open_readings(farm: Farm | None = None) -> tuple[Session, BowsTab]:
        tables, session, bows = show_readings(qtbot, farm)
        kept.append(tables)
        with qtbot.waitActive(tables):
            tables.activateWindow()
        bows.grid.setFocus()
        qtbot.waitUntil(bows.grid.hasFocus)
        return session, bows

    return open_readings


def _type(qtbot: QtBot, text: str, end: Qt.Key = KEYS.Key_Return) -> None:
    """Type into whatever has the focus, as a hand does that looks at the paper."""
    _write(qtbot, text)
    qtbot.keyClick(_focus(), end)


def _write(qtbot: QtBot, text: str) -> None:
    for letter in text:
        qtbot.keyClicks(_focus(), letter)


def _focus() -> QWidget:
    focus = QApplication.focusWidget()
    assert focus is not None
    return focus


def test_the_grid_is_a_table_that_is_typed_into(opened: Opened) -> None:
    _session, tab = opened()
    assert isinstance(tab.view, TapeView)
    assert isinstance(tab.model, TapeModel)
    typed = [
        column
        for column in range(tab.model.columnCount())
        if tab.model.flags(tab.model.index(0, column)) & Qt.ItemFlag.ItemIsEditable
    ]
    assert typed == list(BOXES), "the number of a bow and the datum of the positions stand fast"


def _place(tab: BowsTab) -> tuple[int, int]:
    """Return the bow and the column of the current box."""
    return tab.readings.spot(tab.grid.currentIndex())


def _go(tab: BowsTab, bow: int, column: int) -> None:
    row = next(n for n, row in enumerate(tab.readings.rows) if row.key == ("bow", bow))
    tab.grid.setCurrentIndex(tab.grid.model().index(row, column))


def _shown(tab: BowsTab, bow: int, column: int, role: int = ROLES.DisplayRole) -> str:
    row = next(n for n, row in enumerate(tab.readings.rows) if row.key == ("bow", bow))
    return tab.grid.model().index(row, column).data(role)


def _read(reading: BowReading) -> tuple[float | None, ...]:
    heights = (m for side in reading.sides for m in (side.hip_m, side.baseboard_m, side.ground_m))
    return (reading.over_hips_m, reading.over_baseboards_m, *heights, reading.dip_m)


@pytest.mark.parametrize("end", [KEYS.Key_Return, KEYS.Key_Tab, KEYS.Key_Enter])
def test_a_whole_sheet_is_typed_by_keyboard_alone(
    qtbot: QtBot, opened: Opened, end: Qt.Key
) -> None:
    session, tab = opened()
    assert tuple(row.key[1] for row in tab.readings.rows) == SUGGESTED
    for line in SHEET:
        for text in line:
            _type(qtbot, text, end)
    tape = session.tunnel.frame.tape
    assert tuple(reading.bow for reading in tape.bows) == SUGGESTED
    assert _read(tape.at(1)) == (9.6, 12.0, 1.5, 0.3, -0.02, 1.51, 0.31, 0.0, 0.0)
    assert _read(tape.at(9)) == pytest.approx((*THIRD_M, 1.5 * INCH_M))
    assert _read(tape.at(13)) == (9.61, 12.0, 1.49, 0.29, 0.0, 1.48, 0.29, -0.01, -0.005)
    assert session.stack.count() == 45
    assert tab.readings.waiting == {}


def test_shift_goes_back_and_an_untouched_box_is_passed(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened()
    assert _place(tab) == (1, HIPS)
    qtbot.keyClick(_focus(), KEYS.Key_Tab)
    assert _place(tab) == (1, WHOLE)
    qtbot.keyClick(_focus(), KEYS.Key_Backtab, SHIFT)
    assert _place(tab) == (1, HIPS)
    _go(tab, 5, HIPS)
    _write(qtbot, "9.6")
    qtbot.keyClick(_focus(), KEYS.Key_Backtab, SHIFT)
    assert _place(tab) == (1, DIP)
    assert session.tunnel.frame.tape.at(5).over_hips_m == 9.6
    assert session.stack.count() == 1


def test_tab_leaves_the_grid_behind_its_last_box(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened()
    _go(tab, 17, DIP)
    _type(qtbot, "0.02", KEYS.Key_Tab)
    assert session.tunnel.frame.tape.at(17).dip_m == 0.02
    assert not tab.grid.hasFocus()
    assert tab.scope.hasFocus()


def test_arrow_down_takes_what_is_typed_and_goes_down_the_column(
    qtbot: QtBot, opened: Opened
) -> None:
    session, tab = opened()
    _type(qtbot, "9.6", KEYS.Key_Down)
    assert _place(tab) == (5, HIPS)
    _type(qtbot, "9.7", KEYS.Key_Down)
    readings = {r.bow: r.over_hips_m for r in session.tunnel.frame.tape.bows}
    assert readings == {1: 9.6, 5: 9.7}


def test_empty_text_takes_a_reading_away_and_undo_brings_it_back(
    qtbot: QtBot, opened: Opened
) -> None:
    session, tab = opened()
    _type(qtbot, "9.6")
    _go(tab, 1, HIPS)
    qtbot.keyClick(_focus(), KEYS.Key_F2)
    qtbot.keyClick(_focus(), KEYS.Key_Backspace)
    qtbot.keyClick(_focus(), KEYS.Key_Return)
    assert session.tunnel.frame.tape.is_empty
    assert session.stack.undoText() == "Clear reading: bow 1, over hips"
    session.stack.undo()
    assert session.tunnel.frame.tape.at(1).over_hips_m == 9.6
    assert session.stack.undoText() == "Enter reading: bow 1, over hips"
    session.stack.undo()
    assert session.tunnel.frame.tape == Tape()


def test_a_reading_that_was_shown_rounded_is_not_changed_by_passing(
    qtbot: QtBot, opened: Opened
) -> None:
    # 9.6 m is no whole sixty-fourth of an inch, so in feet it is shown rounded.
    farm = small_farm(with_bow_value(tunnel(), 1, ("over_hips_m",), 9.6)).but(units="imperial")
    session, _tab = opened(farm)
    qtbot.keyClick(_focus(), KEYS.Key_F2)
    assert isinstance(_focus(), QLineEdit)
    qtbot.keyClick(_focus(), KEYS.Key_Return)
    assert session.tunnel.frame.tape.at(1).over_hips_m == 9.6
    assert session.stack.count() == 0


@pytest.mark.parametrize(
    ("column", "text", "why"),
    [
        (HIPS, "8 m", "shorter than the straight line"),
        (HIPS, "ninety", "is not a length"),
        (WHOLE, "9.5 m", "must be longer than that from hip to hip"),
        (FIRST_HIP, "0.2", "must be above the baseboard"),
        (FIRST_GROUND, "1.6", "must be above the ground"),
        (DIP, "5 m", "must be from -2.000 m to 2.000 m"),
        (HIPS, "30 6", "is it 30 ft 6 in"),
    ],
)
def test_what_cannot_be_stays_in_its_box_and_is_told(
    qtbot: QtBot, opened: Opened, column: int, text: str, why: str
) -> None:
    row = SideReading(hip_m=1.5, baseboard_m=0.3)
    reading = BowReading(bow=5, over_hips_m=9.6, sides=(row, row))
    plain = tunnel()
    measured = plain.but(frame=plain.frame.but(tape=Tape(bows=(reading,))))
    session, tab = opened(small_farm(measured))
    told: list[tuple[str, str]] = []
    session.noticed.connect(lambda severity, words: told.append((severity, words)))
    _go(tab, 5, column)
    _type(qtbot, text)
    assert _place(tab) != (5, column), "the hand goes on"
    assert session.tunnel == measured
    assert session.stack.count() == 0
    assert _shown(tab, 5, column) == text
    assert why in _shown(tab, 5, column, ROLES.ToolTipRole)
    assert why in _shown(tab, 5, column, ROLES.AccessibleTextRole)
    assert tab.grid.model().index(1, column).data(ROLES.DecorationRole) is not None
    assert [severity for severity, _words in told] == ["caution"]
    assert told[0][1].lower().startswith(box_name((5, column), measured))
    _go(tab, 5, column)
    assert why in tab.told.text()


def test_a_text_that_waits_is_there_to_mend_and_escape_lets_it_go(
    qtbot: QtBot, opened: Opened
) -> None:
    session, tab = opened()
    told: list[tuple[str, str]] = []
    session.noticed.connect(lambda severity, words: told.append((severity, words)))
    _type(qtbot, "8 m")
    qtbot.keyClick(_focus(), KEYS.Key_Backtab, SHIFT)
    qtbot.keyClick(_focus(), KEYS.Key_F2)
    line = _focus()
    assert isinstance(line, QLineEdit)
    assert line.text() == "8 m"
    _type(qtbot, "9.6 m")
    assert session.tunnel.frame.tape.at(1).over_hips_m == 9.6
    # The refusal does not stand on: a note takes its place.
    assert [severity for severity, _words in told] == ["caution", "note"]
    assert told[-1][1] == "Entered: bow 1, over hips"
    assert tab.readings.waiting == {}
    _go(tab, 1, HIPS)
    _type(qtbot, "x")
    assert _shown(tab, 1, HIPS) == "x"
    _go(tab, 1, HIPS)
    qtbot.keyClick(_focus(), KEYS.Key_Escape)
    assert "9.600" in _shown(tab, 1, HIPS)


def test_a_text_that_waits_goes_in_when_what_stood_against_it_is_mended(
    qtbot: QtBot, opened: Opened
) -> None:
    session, tab = opened()
    _type(qtbot, "19.6")
    _type(qtbot, "12.0")
    assert list(tab.readings.waiting) == [(1, WHOLE)]
    _go(tab, 1, HIPS)
    _type(qtbot, "9.6")
    reading = session.tunnel.frame.tape.at(1)
    assert (reading.over_hips_m, reading.over_baseboards_m) == (9.6, 12.0)
    assert tab.readings.waiting == {}
    assert session.stack.count() == 2


def test_texts_that_wait_are_kept_while_another_tunnel_is_shown(
    qtbot: QtBot, opened: Opened
) -> None:
    session, tab = opened(small_farm(tunnel(), tunnel().but(name="Brook")))
    _type(qtbot, "8 m")
    session.show_tunnel(1)
    assert _shown(tab, 1, HIPS) == ""
    session.show_tunnel(0)
    assert _shown(tab, 1, HIPS) == "8 m"


def test_a_doubtful_text_is_told_while_it_is_typed(qtbot: QtBot, opened: Opened) -> None:
    _session, tab = opened(small_farm().but(units="imperial"))
    _write(qtbot, "31.6")
    # Six tenths of a foot are 7.2 in.
    assert tab.told.text() == "Read as 31.6 ft = 31' 7 1/4\""


def _paste(qtbot: QtBot, text: str) -> None:
    QGuiApplication.clipboard().setText(text)
    qtbot.keyClick(_focus(), KEYS.Key_V, CTRL)


def test_a_block_is_pasted_as_one_step(qtbot: QtBot, opened: Opened) -> None:
    session, _tab = opened()
    told: list[tuple[str, str]] = []
    session.noticed.connect(lambda severity, words: told.append((severity, words)))
    _paste(qtbot, "\n".join("\t".join(line) for line in SHEET) + "\n")
    assert _read(session.tunnel.frame.tape.at(9)) == pytest.approx((*THIRD_M, 1.5 * INCH_M))
    assert len(session.tunnel.frame.tape.bows) == 5
    assert session.stack.count() == 1
    assert told == [("note", "Readings pasted: 45.")]
    session.stack.undo()
    assert session.tunnel.frame.tape.is_empty


def test_of_a_block_the_boxes_that_cannot_be_wait(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened()
    told: list[tuple[str, str]] = []
    session.noticed.connect(lambda severity, words: told.append((severity, words)))
    _go(tab, 13, HIPS)
    _paste(qtbot, "9.6\t\t1.5\r\n8.0\t12\tmany\r\n9.6\t12\t1.5")
    assert _read(session.tunnel.frame.tape.at(13))[:3] == (9.6, None, 1.5)
    assert _read(session.tunnel.frame.tape.at(17))[:3] == (None, 12.0, None)
    assert list(tab.readings.waiting) == [(17, HIPS), (17, FIRST_HIP)]
    assert session.stack.count() == 1
    severity, words = told[0]
    assert severity == "caution"
    assert words.startswith("Readings pasted: 3. Cannot be, and wait in their boxes: 2.")
    assert "Bow 17, over hips: " in words
    assert words.endswith("Beyond the last row or column: 3.")


def test_both_girths_are_pasted_over_smaller_ones_in_any_order(
    qtbot: QtBot, opened: Opened
) -> None:
    session, _tab = opened()
    _paste(qtbot, "9.6\t9.7")
    _paste(qtbot, "12.6\t12.7")
    reading = session.tunnel.frame.tape.at(1)
    assert (reading.over_hips_m, reading.over_baseboards_m) == (12.6, 12.7)


def test_words_are_not_pasted_and_that_is_told(qtbot: QtBot, opened: Opened) -> None:
    session, _tab = opened()
    told: list[tuple[str, str]] = []
    session.noticed.connect(lambda severity, words: told.append((severity, words)))
    _paste(qtbot, "")
    assert [severity for severity, _words in told] == ["caution"]
    assert session.stack.count() == 0


def test_copied_boxes_can_be_pasted_back(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened(small_farm().but(units="imperial"))
    _paste(qtbot, "31' 6 1/2\"\t39' 4 5/16\"")
    _go(tab, 1, HIPS)
    qtbot.keyClick(_focus(), KEYS.Key_Right, SHIFT)
    qtbot.keyClick(_focus(), KEYS.Key_C, CTRL)
    _go(tab, 5, HIPS)
    qtbot.keyClick(_focus(), KEYS.Key_V, CTRL)
    tape = session.tunnel.frame.tape
    # 378 1/2 and 472 5/16 inches.
    assert _read(tape.at(5))[:2] == pytest.approx((378.5 * INCH_M, 472.3125 * INCH_M))
    assert _read(tape.at(5)) == _read(tape.at(1))


def test_delete_clears_the_chosen_boxes_as_one_step(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened()
    _paste(qtbot, "9.6\t12\t1.5")
    _go(tab, 1, HIPS)
    qtbot.keyClick(_focus(), KEYS.Key_Right, SHIFT)
    qtbot.keyClick(_focus(), KEYS.Key_Delete)
    assert _read(session.tunnel.frame.tape.at(1))[:3] == (None, None, 1.5)
    assert session.stack.count() == 2


def test_bows_with_readings_join_those_to_measure_and_all_can_be_shown(
    qtbot: QtBot, opened: Opened
) -> None:
    _session, tab = opened(small_farm(with_bow_value(tunnel(), 3, ("over_hips_m",), 9.6)))
    assert [row.key[1] for row in tab.readings.rows] == [1, 3, 5, 9, 13, 17]
    qtbot.keyClick(tab.scope, KEYS.Key_Down)
    assert [row.key[1] for row in tab.readings.rows] == list(range(1, 18))
    # Bow 3 stands two bays of 1.5 m behind the first.
    assert _shown(tab, 3, POSITION) == "3.000"


def test_another_position_lists_the_bows(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened()
    _go(tab, 5, POSITION)
    _type(qtbot, "6.1")
    bows = session.tunnel.frame.bows
    assert isinstance(bows, ListedBows)
    assert bows.positions_m[3:6] == (4.5, 6.1, 7.5)
    assert session.stack.count() == 1
    _go(tab, 1, DIP)
    qtbot.keyClick(_focus(), KEYS.Key_Tab)
    assert _place(tab) == (5, POSITION), "listed bows are measured, so their boxes are on the way"
    _type(qtbot, "7.4")
    assert "0.200 m after" in tab.readings.waiting[5, POSITION].why
    qtbot.keyClick(_focus(), KEYS.Key_Backtab, SHIFT)
    qtbot.keyClick(_focus(), KEYS.Key_F2)
    qtbot.keyClick(_focus(), KEYS.Key_Backspace)
    qtbot.keyClick(_focus(), KEYS.Key_Return)
    assert "has a position" in tab.readings.waiting[5, POSITION].why
    assert session.tunnel.frame.bows == bows


def test_a_box_of_a_bow_that_went_does_no_harm(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened()
    _go(tab, 17, POSITION)
    _type(qtbot, "x")
    frame = session.tunnel.frame
    fewer = frame.but(bows=EvenBows(count=9, spacing_m=3.0))
    session.apply_tunnel(session.tunnel.but(frame=fewer), "Change bows")
    assert [row.key[1] for row in tab.readings.rows] == [1, 3, 5, 7, 9]
    _go(tab, 1, HIPS)
    _type(qtbot, "9.6")
    assert session.tunnel.frame.tape.at(1).over_hips_m == 9.6
    session.stack.undo()
    session.stack.undo()
    assert _shown(tab, 17, POSITION) == "x"


def test_choosing_a_row_lights_its_bow(qtbot: QtBot, opened: Opened) -> None:
    session, tab = opened()
    qtbot.keyClick(_focus(), KEYS.Key_Down)
    assert session.mark == "bow/4"
    session.pick("bow/8")
    assert _place(tab) == (9, HIPS)
    assert session.mark == "bow/8"


def test_editors_and_boxes_have_names_for_reading_aloud(qtbot: QtBot, opened: Opened) -> None:
    _session, tab = opened()
    _go(tab, 9, FIRST_BASE)
    qtbot.keyClicks(_focus(), "1")
    assert _focus().accessibleName() == "bow 9, west side: baseboard"
    qtbot.keyClick(_focus(), KEYS.Key_Escape)
    assert _shown(tab, 9, FIRST_BASE, ROLES.AccessibleTextRole) == "West side: baseboard: empty."
    assert tab.grid.accessibleName() == "At the bows"
    assert tab.scope.accessibleName() == "Readings of"


def test_every_box_of_a_bow_has_a_column() -> None:
    texts = {(5, column): f"{9 + column} m" for column in (HIPS, WHOLE)}
    texts |= {(5, c): "1.4 m" for c, box in BOXES.items() if box.field[-1] == "hip_m"}
    texts |= {(5, c): "0.2 m" for c, box in BOXES.items() if box.field[-1] == "baseboard_m"}
    texts |= {(5, c): "-3 cm" for c, box in BOXES.items() if box.field[-1] in ("ground_m", "dip_m")}
    done = enter_texts(tunnel(), texts, "metric")
    assert done.refused == {}
    assert len(texts) == len(BOXES)
    assert None not in _read(done.tunnel.frame.tape.at(5))


def _spread() -> Farm:
    """Return a farm with three girths, one far off, and heights read at the first and fifth bow."""
    read = SideReading(hip_m=1.5, baseboard_m=0.3)
    lower = SideReading(hip_m=1.4, baseboard_m=0.3)
    bows = (
        BowReading(bow=1, over_hips_m=9.6, sides=(read, SideReading())),
        BowReading(bow=5, over_hips_m=9.62, sides=(lower, SideReading())),
        BowReading(bow=9, over_hips_m=9.8),
    )
    plain = tunnel()
    return small_farm(plain.but(frame=plain.frame.but(tape=Tape(bows=bows))))


def test_the_girth_that_governs_and_the_outlier_are_told(opened: Opened) -> None:
    _session, tab = opened(_spread())
    assert _shown(tab, 9, HIPS) == "max 9.800"
    told = _shown(tab, 9, HIPS, ROLES.ToolTipRole)
    assert told.startswith("Longest of 3: the film is planned by it.")
    # The middle one of 9.60, 9.62 and 9.80 is 9.62.
    assert "Outlier: 0.180 m longer than the middle one, 9.620 m." in told
    assert told in _shown(tab, 9, HIPS, ROLES.AccessibleTextRole)
    row = [row.key[1] for row in tab.readings.rows].index(9)
    assert tab.grid.model().index(row, HIPS).data(ROLES.DecorationRole) is not None
    assert _shown(tab, 1, HIPS) == "9.600"
    assert tab.grid.model().index(0, HIPS).data(ROLES.DecorationRole) is None
    assert "middle 9.620 m, spread 0.200 m; bow 9 governs with 9.800 m" in tab.told.text()


def test_heights_between_readings_stand_in_brackets(qtbot: QtBot, opened: Opened) -> None:
    _session, tab = opened(_spread())
    qtbot.keyClick(tab.scope, KEYS.Key_Down)
    # Bow 2 is a quarter of the way from 1.5 m down to 1.4 m.
    assert _shown(tab, 2, FIRST_HIP) == "(1.475)"
    assert _shown(tab, 2, FIRST_HIP, ROLES.ToolTipRole) == "Between bows 1 and 5, not read."
    assert tab.grid.model().index(1, FIRST_HIP).data(ROLES.FontRole).italic()
    assert _shown(tab, 9, FIRST_HIP) == "(1.400)"
    assert _shown(tab, 9, FIRST_HIP, ROLES.ToolTipRole) == "As at bow 5, the nearest one read."
    assert _shown(tab, 2, FIRST_GROUND) == ""
    assert "(" not in tab.grid.copied_text()


@pytest.fixture
def whole(opened: Opened) -> OpenedWhole:
    """Open the readings of the whole frame."""

    def open_whole(farm: Farm | None = None) -> tuple[Session, FrameReadingsTab]:
        session, bows = opened(farm)
        tab = next(p for p in _parents(bows) if isinstance(p, TapeTab))
        tab.row.setCurrentIndex(1)
        part = tab.shown
        assert isinstance(part, FrameReadingsTab)
        return session, part

    return open_whole


def _parents(widget: QWidget) -> list[QWidget]:
    parent = widget.parentWidget()
    return [] if parent is None else [parent, *_parents(parent)]


def test_lengths_of_the_whole_frame_are_typed_in_a_row(qtbot: QtBot, whole: OpenedWhole) -> None:
    session, part = whole()
    part.form.stops[0].setFocus()
    for text in ("24.0", "24.05", "24.1", "24", "25.4", "25.5", "0.05", "-2 cm"):
        _type(qtbot, text, KEYS.Key_Tab)
    tape = session.tunnel.frame.tape
    assert tape.hip_lengths_m == (24.0, 24.05)
    assert tape.base_lengths_m == (24.1, 24.0)
    assert tape.diagonals_m == (25.4, 25.5)
    assert tape.leans_m == (0.05, -0.02)
    assert session.stack.count() == 8
    names = [stop.accessibleName() for stop in part.form.stops[:8]]
    assert names[0] == "Readings: along the hip, West side"
    assert names[7] == "Readings: Back end, inward is negative"
    assert all(names)


def test_a_length_no_tunnel_has_is_refused_at_its_field(qtbot: QtBot, whole: OpenedWhole) -> None:
    session, part = whole()
    line = part.form.stops[4]
    assert isinstance(line, QLineEdit)
    line.setFocus()
    _type(qtbot, "2000 m", KEYS.Key_Tab)
    assert line.text() == "2000 m"
    assert "from 0.200 m to 1,100.000 m" in line.accessibleDescription()
    assert session.stack.count() == 0


def test_trust_in_the_tape_is_typed(qtbot: QtBot, whole: OpenedWhole) -> None:
    session, part = whole(_spread())
    spread = session.tunnel_plan.survey.taped.hips
    assert spread is not None
    assert any(reading.outlier for reading in spread.readings)
    stop = next(s for s in part.form.stops if "outlier" in s.accessibleName())
    assert isinstance(stop, QLineEdit)
    stop.setFocus()
    stop.selectAll()
    # Thin lengths are typed in millimetres.
    _type(qtbot, "200", KEYS.Key_Tab)
    assert session.tunnel.frame.tape.outlier_m == pytest.approx(0.2)
    spread = session.tunnel_plan.survey.taped.hips
    assert spread is not None
    assert not any(reading.outlier for reading in spread.readings)


def test_a_chosen_figure_says_how_it_was_got(qtbot: QtBot, whole: OpenedWhole) -> None:
    _session, part = whole(_spread())
    labels = [str(row.cells[0].value) for row in part.model.rows]
    assert labels[0] == "Over hips: median"
    part.view.setFocus()
    part.view.setCurrentIndex(part.view.model().index(labels.index("Over hips: median"), 0))
    assert "Source:" in part.working.text()
    before = part.working.text()
    qtbot.keyClick(part.view, KEYS.Key_Down)
    assert part.working.text() != before
    assert "Over baseboards: not read" in labels
