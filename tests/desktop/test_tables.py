"""The tables are sorted, copied, typed into and followed as people do it."""

from collections.abc import Callable
from decimal import Decimal

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from hoopwright.curtain import course
from hoopwright.desktop.palette import app_palette
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_air_rows import cell_rows
from hoopwright.desktop.table_checks import ChecksTab, check_rows
from hoopwright.desktop.table_coverings import CoveringsTab, covering_rows
from hoopwright.desktop.table_model import RowsModel
from hoopwright.desktop.table_order import film_rows, pack_words, roll_rows, takeoff_rows
from hoopwright.desktop.table_parts import PartedTab
from hoopwright.desktop.table_prices import HOLDS, PRICE, PricesTab, price_rows
from hoopwright.desktop.table_rows import Cell, Column, Row, cell_text, heading_text
from hoopwright.desktop.table_tab import Tab
from hoopwright.desktop.table_tape_rows import tape_rows
from hoopwright.desktop.table_travel import TravelTab, travel_rows
from hoopwright.desktop.table_view import RowsView
from hoopwright.desktop.table_work import curtain_rows
from hoopwright.desktop.tables import TABS, Tables
from hoopwright.farm import BowReading, Farm, PartState, Split, Tape
from hoopwright.farm.change import move_split
from samples import double_tunnel, side, small_farm, tunnel

Opened = Callable[..., tuple[Session, Tables]]
READINGS, TAKEOFF, FILM, CURTAINS, TRAVEL, AIR, ROLLS, COVERINGS, CHECKS, PRICES = range(10)
LENGTH = 4
CTRL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the tables of a farm."""
    kept: list[QWidget] = []

    def open_tables(farm: Farm | None = None, tab: int = TAKEOFF) -> tuple[Session, Tables]:
        session = Session(farm or small_farm(double_tunnel()))
        tables = Tables(session)
        session.setParent(tables)
        qtbot.addWidget(tables)
        kept.append(tables)
        tables.resize(1046, 330)
        tables.show()
        tables.setCurrentIndex(tab)
        return session, tables

    return open_tables


def _texts(tab: Tab, column: int) -> list[str]:
    """Return a column as it stands on the screen."""
    shown = tab.view.model()
    return [shown.index(n, column).data() for n in range(shown.rowCount())]


def _headings(tab: Tab) -> list[str]:
    across = Qt.Orientation.Horizontal
    return [tab.view.model().headerData(n, across) for n in range(tab.view.model().columnCount())]


def test_takeoff_shows_every_line_and_its_sums(opened: Opened) -> None:
    session, tables = opened()
    order = session.plan.order
    assert _texts(tables.shown, 1) == [line.name for line in order.lines]
    assert _texts(tables.shown, 8) == [f"{line.total:,}" for line in order.lines]
    sums = [label.text() for label in tables.shown._figures]
    assert sums[-1] == f"To pay ${session.plan.cost.to_pay:,}"
    assert sums[0] == f"Goods ${sum(line.total for line in order.lines):,}"


def test_takeoff_shows_what_stays_and_lights_it_up(qtbot: QtBot, opened: Opened) -> None:
    kept = (
        PartState(family="Film", where="roof", state="keep"),
        PartState(family="Curtains", where="first_side", state="repair", replace_share=0.5),
    )
    session, tables = opened(small_farm(double_tunnel().but(condition=kept)))
    order, shown = session.plan.order, tables.shown
    names = [line.name for line in (*order.lines, *order.reused)]
    assert _texts(shown, 1) == names
    assert order.reused[0].marks == ("piece/roof-sheet/outer/-/0",)
    first = len(order.lines)
    said = _texts(shown, 6)[first:]
    assert said[0] == f"stays; new ${order.reused[0].saved:,}"
    assert said[-1] == f"stays, repaired; new ${order.reused[-1].saved:,}"
    assert shown._figures[-1].text() == f"Stays, new ${session.plan.cost.saved:,}"
    with qtbot.waitSignal(tables.lit) as lit:
        shown.view.selectRow(first)
    assert "piece/roof-sheet/outer/-/0" in lit.args[0]
    tables.setCurrentIndex(FILM)
    assert _texts(tables.shown, 7)[:2] == ["stays", "stays"]
    assert "stays" not in _texts(tables.shown, 7)[2:]


def test_takeoff_of_the_tunnel_leaves_freight_out(qtbot: QtBot, opened: Opened) -> None:
    farm = small_farm(double_tunnel())
    session, tables = opened(farm.but(money=farm.money.but(freight=Decimal("150.00"))))
    scope = tables.shown.scope  # type: ignore[attr-defined]
    assert tables.shown._figures[1].text() == "Freight $150.00"
    qtbot.keyClick(scope, Qt.Key.Key_Down)
    assert tables.shown._figures[1].text() == "Freight $0.00"
    assert session.stack.count() == 0


def test_numbers_are_sorted_by_value_and_not_by_letters(qtbot: QtBot, opened: Opened) -> None:
    _session, tables = opened(tab=FILM)
    tables.shown.view.sortByColumn(4, Qt.SortOrder.AscendingOrder)
    lengths = [float(text) for text in _texts(tables.shown, 4)]
    assert lengths == sorted(lengths)
    assert max(lengths) > 10 > min(lengths), "letters would put 25 before 8"


def test_headings_carry_the_units_of_the_farm(opened: Opened) -> None:
    session, tables = opened(tab=FILM)
    assert _headings(tables.shown)[3:7] == ["Width, m", "Length, m", "Area, m²", "Mass, kg"]
    session.apply(session.farm.but(units="imperial"), "Change units")
    assert _headings(tables.shown)[3:7] == [
        "Width, ft in",
        "Length, ft in",
        "Area, ft²",
        "Mass, lb",
    ]
    assert all(text.endswith('"') for text in _texts(tables.shown, 3))


def test_rows_are_copied_with_headings_for_a_spreadsheet(qtbot: QtBot, opened: Opened) -> None:
    _session, tables = opened()
    view = tables.shown.view
    view.selectRow(1)
    qtbot.keyClick(view, Qt.Key.Key_C, CTRL)
    head, line = QGuiApplication.clipboard().text().splitlines()
    assert head.split("\t") == _headings(tables.shown)
    assert line.split("\t") == [view.model().index(1, n).data() for n in range(10)]
    view.clearSelection()
    assert len(view.copied_text().splitlines()) == view.model().rowCount() + 1


def test_choosing_a_row_lights_and_picks_what_it_means(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(tab=CURTAINS)
    lit: list[tuple[str, ...]] = []
    tables.lit.connect(lit.append)
    view = tables.shown.view
    view.setFocus()
    view.selectRow(0)
    qtbot.keyClick(view, Qt.Key.Key_Down)
    assert lit == [("side/0/panel/0",), ("side/0/panel/1",)]
    assert session.mark == "side/0/panel/1"


@pytest.mark.parametrize("mark", ["side/1/panel/0", "side/1/panel/0/crank"])
def test_picking_on_the_canvas_chooses_the_row_and_sends_nothing(opened: Opened, mark: str) -> None:
    session, tables = opened(tab=CURTAINS)
    lit: list[object] = []
    tables.lit.connect(lit.append)
    session.pick(mark)
    assert [row.key for row in tables.shown.view.chosen_rows()] == [("curtain", "side/1/panel/0")]
    assert lit == []
    assert session.mark == mark
    session.pick("")
    assert tables.shown.view.chosen_rows() == []


def test_what_is_picked_is_chosen_in_a_table_that_comes_to_the_front(opened: Opened) -> None:
    session, tables = opened()
    session.pick("side/0/panel/1")
    tables.setCurrentIndex(FILM)
    names = {row.cells[0].value for row in tables.shown.view.chosen_rows()}
    assert names == {"Curtain 2, West side, outer", "Curtain 2, West side, inner"}


def test_chosen_row_stays_chosen_when_the_plan_changes(opened: Opened) -> None:
    session, tables = opened(tab=CURTAINS)
    tables.shown.view.selectRow(2)
    held = tables.shown.view.chosen_rows()[0].key
    session.apply_tunnel(move_split(session.tunnel, 0, 0, 9.0), "Move split")
    assert tables.shown.view.chosen_rows()[0].key == held


def test_tooltip_says_how_a_figure_was_got(opened: Opened) -> None:
    _session, tables = opened(tab=CURTAINS)
    tip = tables.shown.view.model().index(0, 7).data(Qt.ItemDataRole.ToolTipRole)
    assert "Torque over arm" in tip
    assert "Source:" in tip


def test_only_the_table_that_is_seen_is_filled(opened: Opened) -> None:
    session, tables = opened(tab=CURTAINS)
    session.apply_tunnel(move_split(session.tunnel, 0, 0, 9.0), "Move split")
    assert not tables.tab(CURTAINS).stale
    assert tables.tab(FILM).stale
    tables.setCurrentIndex(FILM)
    assert not tables.tab(FILM).stale


def test_a_tab_is_made_when_it_is_seen_first(opened: Opened, qtbot: QtBot) -> None:
    _session, tables = opened()
    assert tables.findChildren(TravelTab) == []
    qtbot.keyClick(tables.tabBar(), Qt.Key.Key_Right)
    assert [tab.title for tab in tables.findChildren(Tab)] == ["Takeoff", "Film"]
    assert tables.shown.view.isVisible()
    assert tables.shown.view.model().rowCount() > 0


@pytest.mark.parametrize("key", TABS)
def test_tab_goes_from_the_bar_into_the_page(opened: Opened, qtbot: QtBot, key: str) -> None:
    _session, tables = opened(tab=FILM)
    with qtbot.waitActive(tables):
        tables.activateWindow()
    tables.show_tab(key)
    tables.tabBar().setFocus()
    inside = tables.currentWidget()
    assert inside is not None
    stops = 2 if isinstance(tables.shown, PartedTab) else 1
    for _stop in range(stops):
        qtbot.keyClick(tables.focusWidget(), Qt.Key.Key_Tab)
        assert inside.isAncestorOf(tables.focusWidget())
    assert tables.focusWidget() is tables.shown.view


def test_drag_fills_the_table_later_and_letting_go_at_once(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(tab=CURTAINS)
    first = _texts(tables.shown, LENGTH)
    session.begin()
    session.preview(move_split(session.tunnel, 0, 0, 9.0))
    assert _texts(tables.shown, LENGTH) == first
    qtbot.waitUntil(lambda: _texts(tables.shown, LENGTH) != first)
    session.preview(move_split(session.tunnel, 0, 0, 15.0))
    session.commit("Move split")
    lengths = [f"{work.length_m:.3f}" for work in session.tunnel_plan.chosen.curtains]
    assert _texts(tables.shown, LENGTH) == lengths


def test_sums_of_the_farm_are_dots_until_they_are_settled(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(small_farm(double_tunnel(), tunnel().but(name="Brook")))
    session.begin()
    session.preview(move_split(session.tunnel, 0, 0, 9.0))
    qtbot.waitUntil(lambda: tables.shown._figures[-1].text() == "To pay …")
    assert set(_texts(tables.shown, 7)) == {"…"}
    session.commit("Move split")
    assert tables.shown._figures[-1].text() == f"To pay ${session.plan.cost.to_pay:,}"
    assert "…" not in _texts(tables.shown, 7)


def test_other_covering_is_taken_by_its_button(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(tab=COVERINGS)
    tab = tables.shown
    assert isinstance(tab, CoveringsTab)
    assert _headings(tab)[1:] == ["one sheet", "roof and sides apart (chosen)"]
    widths = (session.tunnel_plan.other.cover, session.tunnel_plan.chosen.cover)
    row = [tab.view.model().index(0, n).data() for n in (1, 2)]
    assert row == [f"{cover.sheet_width_m:.3f} m" for cover in widths]
    qtbot.keyClick(tab.use, Qt.Key.Key_Space)
    assert session.tunnel.skin.covering == "one_sheet"
    assert _headings(tab)[1:] == ["one sheet (chosen)", "roof and sides apart"]
    session.stack.undo()
    assert session.tunnel.skin.covering == "roof_and_sides"


def test_coverings_tell_what_stays(opened: Opened) -> None:
    kept = (PartState(family="Film", where="roof", state="keep"),)
    session, tables = opened(small_farm(tunnel().but(condition=kept)), COVERINGS)
    rows = tables.shown.view.model()
    last = rows.rowCount() - 2
    found = [rows.index(last, n).data() for n in range(3)]
    saved = session.tunnel_plan.chosen.cost.saved
    assert saved > 0
    # The one sheet hangs down both sides: it is cut new, and nothing of it stays.
    assert found == ["What stays, if it were new", "$0.00", f"${saved:,}"]


def _row_of(session: Session, code: str) -> int:
    return next(n for n, f in enumerate(session.plan.findings) if f.code == code)


def test_check_is_mended_by_enter_as_one_step(qtbot: QtBot, opened: Opened) -> None:
    # Bows stand every 1.5 m: a split at 11.2 m hangs between two of them.
    off = tunnel(sides=(side("West side", (Split(at_m=11.2),)), side("East side")))
    session, tables = opened(small_farm(off), CHECKS)
    tab = tables.shown
    assert isinstance(tab, ChecksTab)
    at = _row_of(session, "split.off_bow")
    tab.view.selectRow(at)
    assert tab.mend_button.isEnabled()
    assert session.mark == "side/0/split/0"
    tab.view.setFocus()
    qtbot.keyClick(tab.view, Qt.Key.Key_Return)
    assert session.tunnel.sides[0].splits[0].at_m in (10.5, 12.0)
    assert session.stack.undoText().startswith("Mend: ")
    assert all(f.code != "split.off_bow" for f in session.plan.findings)
    session.stack.undo()
    assert session.tunnel.sides[0].splits[0].at_m == 11.2


def test_check_without_a_mend_of_its_own_offers_none(opened: Opened) -> None:
    session, tables = opened(tab=CHECKS)
    tab = tables.shown
    assert isinstance(tab, ChecksTab)
    tab.view.selectRow(_row_of(session, "price.invented"))
    assert not tab.mend_button.isEnabled()
    tab.mend_chosen()
    assert session.stack.count() == 0


def test_severity_is_said_in_words_and_by_a_sign(opened: Opened) -> None:
    session, tables = opened(tab=CHECKS)
    assert _texts(tables.shown, 0) == [f.severity for f in session.plan.findings]
    sign = tables.shown.view.model().index(0, 0).data(Qt.ItemDataRole.DecorationRole)
    assert not sign.isNull()


def test_check_of_another_tunnel_brings_that_tunnel(opened: Opened) -> None:
    off = tunnel(sides=(side("West side", (Split(at_m=11.2),)), side("East side")))
    session, tables = opened(small_farm(tunnel(), off.but(name="Brook")), CHECKS)
    tables.shown.view.selectRow(_row_of(session, "split.off_bow"))
    assert session.tunnel.name == "Brook"
    assert session.mark == "side/0/split/0"


def _edit(qtbot: QtBot, tab: Tab, at: QModelIndex, text: str) -> QLineEdit:
    tab.view.setFocus()
    tab.view.setCurrentIndex(at)
    tab.view.edit(at)
    (editor,) = (e for e in tab.view.viewport().findChildren(QLineEdit) if e.isVisible())
    editor.selectAll()
    qtbot.keyClicks(editor, text)
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    QApplication.processEvents()  # the editor hands its text over after the key
    return editor


def _part_row(session: Session, key: str) -> int:
    parts = [p.key for p in session.farm.catalogue.parts]
    rolls = sum(len(f.rolls) for f in session.farm.catalogue.films)
    return rolls + parts.index(key)


def test_price_that_is_typed_is_ones_own(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(tab=PRICES)
    tab = tables.shown
    assert isinstance(tab, PricesTab)
    n = _part_row(session, "crank")
    _edit(qtbot, tab, tab.view.model().index(n, PRICE), "$12.345")
    part = session.farm.catalogue.part("crank")
    assert (part.price, part.origin) == (Decimal("12.345"), "entered")
    assert tab.view.model().index(n, 5).data() == "your own"
    assert session.stack.undoText() == "Change price: crank"
    line = next(x for x in session.plan.order.lines if x.key == "crank")
    assert line.price == Decimal("12.345")


def test_price_of_a_roll_and_pack_of_a_part_are_typed(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(tab=PRICES)
    tab = tables.shown
    _edit(qtbot, tab, tab.view.model().index(0, PRICE), "99")
    assert session.farm.catalogue.films[0].rolls[0].price == Decimal("99.00")
    n = _part_row(session, "joint")
    _edit(qtbot, tab, tab.view.model().index(n, HOLDS), "4")
    assert session.farm.catalogue.part("joint").holds == 4
    assert not tab.view.model().index(0, HOLDS).flags() & Qt.ItemFlag.ItemIsEditable


def test_text_that_is_no_price_keeps_the_editor_open(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(tab=PRICES)
    tab = tables.shown
    at = tab.view.model().index(0, PRICE)
    editor = _edit(qtbot, tab, at, "cheap")
    assert editor.isVisible()
    assert "not an amount of money" in editor.toolTip()
    assert session.stack.count() == 0
    qtbot.keyClick(editor, Qt.Key.Key_Escape)
    assert at.data() == "160.00"


def test_price_typed_again_makes_no_step(qtbot: QtBot, opened: Opened) -> None:
    session, tables = opened(tab=PRICES)
    tab = tables.shown
    at = tab.view.model().index(0, PRICE)
    _edit(qtbot, tab, at, at.data(Qt.ItemDataRole.EditRole))
    assert session.stack.count() == 0


def test_every_table_has_a_name_and_tab_leaves_it(opened: Opened, qtbot: QtBot) -> None:
    _session, tables = opened()
    for n in range(tables.count()):
        tables.setCurrentIndex(n)
        tab = tables.shown
        name = tab.shown.title if isinstance(tab, PartedTab) else tables.tabText(n)
        assert tab.view.accessibleName() == name
        assert not tab.view.tabKeyNavigation()
        for column in range(tab.view.model().columnCount()):
            assert tab.view.columnWidth(column) > 20


def test_rows_of_each_table_fit_their_columns(opened: Opened) -> None:
    session, tables = opened()
    made = (
        tape_rows(session, (1, 9)),
        takeoff_rows(session.plan.order, session.units, "USD"),
        film_rows(session),
        curtain_rows(session),
        travel_rows(course(session.tunnel_plan.chosen.curtains[0]), "side/0/panel/0"),
        cell_rows(session),
        roll_rows(session),
        covering_rows(session),
        check_rows(session),
        price_rows(session),
    )
    assert len(made) == tables.count()
    for n, rows in enumerate(made):
        tab = tables.tab(n)
        assert rows
        assert {len(row.cells) for row in rows} == {len(tab.view.rows_model.columns)}
        keys = [row.key for row in rows]
        assert len(set(keys)) == len(keys)


def test_the_roll_of_a_sheet_over_the_bows_says_how_sure_its_width_is(opened: Opened) -> None:
    plain = tunnel()
    rows = tuple(BowReading(bow=n, over_hips_m=9.5 + n / 1000) for n in (1, 5, 9, 13, 17))
    made = plain.but(frame=plain.frame.but(tape=Tape(bows=rows)))
    session, _tables = opened(small_farm(made))
    tips = {row.key[1]: row.cells[-1].tip for row in film_rows(session)}
    told = tips.pop("piece/roof-sheet/single/-/0")
    assert isinstance(told, str)
    assert told.startswith("Roof sheet: ")
    assert told.endswith("never in this spread.")
    assert set(tips.values()) == {None}


def test_every_sheet_stands_on_a_roll(opened: Opened) -> None:
    session, tables = opened(tab=FILM)
    assert all(text.startswith("roll ") for text in _texts(tables.shown, 7))
    tables.setCurrentIndex(ROLLS)
    cut = _texts(tables.shown, 1)
    assert sorted(cut) == sorted(p.name for p in session.tunnel_plan.chosen.cover.pieces)


def test_pack_is_said_with_what_it_holds() -> None:
    assert pack_words("box", 250.0, "count", "metric") == "box of 250"
    assert pack_words("piece", 1.0, "count", "metric") == "piece"
    # 8 ft = 2.4384 m exactly.
    assert pack_words("stick", 2.4384, "m", "imperial") == "stick of 8' 0\""


def test_cell_leaves_the_unit_to_its_heading() -> None:
    column = Column("Width", 8, "m")
    assert cell_text(Cell(1.5, "m"), column, "metric") == "1.500"
    assert heading_text(column, "metric", "USD") == "Width, m"
    assert cell_text(Cell(0.3048, "m"), column, "imperial") == "1' 0\""
    assert cell_text(Cell(None), column, "metric") == ""


def test_empty_cells_come_before_numbers(qtbot: QtBot) -> None:
    model = RowsModel((Column("n", 5, "count"),))
    view = RowsView(model, "numbers")
    qtbot.addWidget(view)
    model.setParent(view)
    model.show_rows([Row((n,), (Cell(n, "count"),)) for n in (10, 9, None)], "metric", "USD")
    view.sortByColumn(0, Qt.SortOrder.AscendingOrder)
    assert [view.model().index(n, 0).data() for n in range(3)] == ["", "9", "10"]


def test_tables_follow_the_palette(opened: Opened) -> None:
    _session, tables = opened()
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    try:
        for dark in (True, False):
            app.setPalette(app_palette(dark))
            QApplication.processEvents()
            for view in tables.findChildren(RowsView):
                if view.isVisible():
                    ground = view.viewport().grab().toImage().pixelColor(1, 1)
                    assert (ground.lightness() < 128) == dark
    finally:
        app.setPalette(app_palette(False))
