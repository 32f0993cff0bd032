"""The tab of the air: each part shows the plan's own figures, and its acts make one undo step.

1 Pa of a 20 °C atmosphere is 0.00401865 in of water at 4 °C (NIST Special Publication 811,
appendix B: 1 inch of water, conventional, is 249.0889 Pa); 1 cfm is 0.3048**3 / 60 m3/s.
"""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from hoopwright.desktop.filling_plot import FillingPlot
from hoopwright.desktop.palette import COLOURS, app_palette
from hoopwright.desktop.plot import Plot
from hoopwright.desktop.seal_picture import SealPicture
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_air import AirTab, BlowersTab
from hoopwright.desktop.table_air_rows import STATES
from hoopwright.desktop.table_filling import FillingTab
from hoopwright.desktop.table_heat import heat_rows
from hoopwright.desktop.table_readings import ReadingsTab
from hoopwright.desktop.table_seals import SealsTab, sheet_in_hand
from hoopwright.desktop.tables import Tables
from hoopwright.farm import AirReading, Blower, FanPoint, Farm, Heating, PartState
from hoopwright.farm.change import move_split
from hoopwright.pressure.holding import filling
from samples import double_tunnel, small_farm, tunnel

CELLS, HOSES, FILLING, BLOWERS, SEALS, FILM, READINGS, HEAT = range(8)
AIR = 5
INCH_WATER_PA = 249.0889
CFM_M3_S = 0.3048**3 / 60
Opened = Callable[..., tuple[Session, AirTab]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the tab of a farm with one of its parts in front."""
    kept: list[QWidget] = []

    def open_tab(part: int = CELLS, farm: Farm | None = None) -> tuple[Session, AirTab]:
        session = Session(farm or small_farm(double_tunnel()))
        tables = Tables(session)
        session.setParent(tables)
        qtbot.addWidget(tables)
        kept.append(tables)
        tables.resize(1040, 260)
        tables.show()
        tables.setCurrentIndex(AIR)
        tab = tables.shown
        assert isinstance(tab, AirTab)
        tab.row.setCurrentIndex(part)
        return session, tab

    return open_tab


def _texts(tab: AirTab, column: int) -> list[str]:
    shown = tab.view.model()
    return [shown.index(n, column).data() for n in range(shown.rowCount())]


def _said(tab: AirTab) -> str:
    return " ".join(w.text() for w in tab.shown.findChildren(QLabel) if w.isVisible())


def _two_blowers() -> Farm:
    """Return a farm with a second, weaker blower in its catalogue."""
    farm = small_farm(double_tunnel())
    weak = Blower(
        key="weak",
        name="weak blower",
        curve=(
            FanPoint(flow_m3_s=0.0, pressure_pa=30.0),
            FanPoint(flow_m3_s=0.02, pressure_pa=0.0),
        ),
        power_w=15.0,
        part="blower",
    )
    catalogue = farm.catalogue
    return farm.but(catalogue=catalogue.but(blowers=(*catalogue.blowers, weak)))


def test_parts_stand_in_a_row_and_keys_walk_them(opened: Opened, qtbot: QtBot) -> None:
    _session, tab = opened()
    assert [tab.row.tabText(n) for n in range(tab.row.count())] == [
        "Cells",
        "Hoses",
        "Filling",
        "Blowers",
        "Seals",
        "Pull in the film",
        "Readings",
        "Heat",
    ]
    tab.row.setFocus()
    qtbot.keyClick(tab.row, Qt.Key.Key_Right)
    assert tab.shown.title == "Hoses"
    assert tab.shown.isVisible()


def test_only_the_part_that_is_seen_is_filled(opened: Opened) -> None:
    session, tab = opened()
    session.apply_tunnel(session.tunnel.but(name="Other"), "Rename")
    assert [part.stale for part in tab.parts] == [False, *(True,) * 7]
    assert tab.parts[FILLING].plot is None
    tab.row.setCurrentIndex(HEAT)
    assert not tab.parts[HEAT].stale


def test_cells_show_pressure_and_state_in_either_system(opened: Opened) -> None:
    session, tab = opened()
    airs = session.tunnel_plan.held.cells
    assert [float(text) for text in _texts(tab, 1)] == pytest.approx(
        [air.pressure_pa for air in airs], abs=0.05
    )
    assert _texts(tab, 2) == [str(STATES[air.state]) for air in airs]
    session.apply(session.farm.but(units="imperial"), "Feet")
    assert [float(text) for text in _texts(tab, 1)] == pytest.approx(
        [air.pressure_pa / INCH_WATER_PA for air in airs], abs=0.0005
    )
    leaks = [float(text) for text in _texts(tab, 3)]
    assert leaks == pytest.approx([air.leak_m3_s / CFM_M3_S for air in airs], abs=0.5)


def test_leaks_of_the_cells_add_up_to_what_the_blower_gives(opened: Opened) -> None:
    session, _tab = opened()
    held = session.tunnel_plan.held
    assert sum(air.leak_m3_s for air in held.cells) == pytest.approx(held.fan_flow_m3_s, rel=1e-3)


def test_picked_cell_is_chosen_and_a_chosen_row_lights_its_cell(opened: Opened) -> None:
    session, tab = opened()
    session.pick("side/1/panel/0")
    (row,) = tab.view.chosen_rows()
    assert row.key == ("cell", "cell/side/1/panel/0")
    told: list[object] = []
    tab.row_chosen.connect(told.append)
    tab.view.selectRow(0)
    assert told[0].marks[0] == "cell/roof/0"


def test_hoses_show_their_cells_and_what_hangs_on_them(opened: Opened) -> None:
    session, tab = opened(HOSES)
    jumpers = session.tunnel_plan.chosen.inflation.jumpers
    assert len(_texts(tab, 0)) == len(jumpers)
    assert "West side, curtain 1" in _texts(tab, 2)
    # Each curtain of this tunnel hangs on one hose, so each hose is the only way to it.
    assert _texts(tab, 7) == _texts(tab, 2)


def test_blower_is_taken_with_its_damper_in_one_step(opened: Opened) -> None:
    session, tab = opened(BLOWERS, _two_blowers())
    part = tab.shown
    assert isinstance(part, BlowersTab)
    assert _texts(tab, 1) == ["chosen", ""]
    assert _texts(tab, 2)[1] in ("too weak", "never fills")
    before = session.farm
    tab.view.selectRow(1)
    assert part.take_button.isEnabled()
    part.take_button.click()
    assert session.tunnel.air.blower == "weak"
    assert session.tunnel.air.open_share == session.tunnel_plan.held.tries[1].open_share
    assert _texts(tab, 1) == ["", "chosen"]
    assert not part.take_button.isEnabled()
    session.stack.undo()
    assert session.farm == before


def test_filling_draws_a_curve_for_each_cell_and_the_wanted_band(opened: Opened) -> None:
    session, tab = opened(FILLING)
    part = tab.shown
    assert isinstance(part, FillingTab)
    plot = part.plot
    assert isinstance(plot, FillingPlot)
    course = filling(session.tunnel_plan.held)
    assert len(plot.curves) == len(course.cells)
    minutes, pressures = plot.curves[0].getData()
    assert minutes[-1] == pytest.approx(course.times_s[-1] / 60)
    assert list(pressures) == pytest.approx([row[0] for row in course.pressures_pa])
    air = session.tunnel.air
    assert plot.band.getRegion() == pytest.approx((air.low_pa, air.high_pa))
    assert "filled after about" in _said(tab)


def test_keys_walk_the_moments_and_tell_every_pressure(opened: Opened, qtbot: QtBot) -> None:
    session, tab = opened(FILLING)
    plot = tab.shown.plot
    assert isinstance(plot, Plot)
    qtbot.keyClick(plot, Qt.Key.Key_End)
    told = plot.accessibleDescription()
    assert told.startswith("After ")
    for air in session.tunnel_plan.held.cells:
        assert air.name in told
    qtbot.keyClick(plot, Qt.Key.Key_Left)
    assert plot.accessibleDescription() != told


def test_course_is_not_worked_out_while_a_hand_drags(
    opened: Opened, monkeypatch: pytest.MonkeyPatch
) -> None:
    session, tab = opened(FILLING)
    asked: list[object] = []
    monkeypatch.setattr("hoopwright.desktop.table_filling.filling", asked.append)
    session.begin()
    session.preview(move_split(session.tunnel, 0, 0, 10.5))
    tab.refresh()
    assert asked == []
    session.cancel()
    assert asked[-1] is session.tunnel_plan.held


def test_without_a_blower_the_picture_gives_way_to_a_sentence(opened: Opened) -> None:
    plain = double_tunnel()
    farm = small_farm(plain.but(air=plain.air.but(blower=None)))
    _session, tab = opened(FILLING, farm)
    assert not tab.shown.plot.isVisible()
    assert "choose a blower" in _said(tab)


def test_seals_are_listed_and_the_picked_curtain_is_laid_flat(opened: Opened) -> None:
    session, tab = opened(SEALS)
    inflation = session.tunnel_plan.chosen.inflation
    assert len(_texts(tab, 0)) == len(inflation.seals)
    part = tab.shown
    assert isinstance(part, SealsTab)
    assert isinstance(part.picture, SealPicture)
    session.pick("cell/side/1/panel/0")
    assert part.picture.accessibleName().startswith("East side, curtain 1 laid flat")
    assert {row.key[1] for row in tab.view.chosen_rows()} == {"side/1/panel/0"}
    assert sheet_in_hand(session, "side/1/panel/1/crank") == "side/1/panel/1"
    assert sheet_in_hand(session, "roof") == inflation.seals[0].mark


def test_laid_flat_sheet_lies_whole_in_its_picture(opened: Opened) -> None:
    _session, tab = opened(SEALS)
    picture = tab.shown.picture
    left, bottom, right, top = picture.strip.view.box
    low, high = picture.strip.to_pixels((left, bottom)), picture.strip.to_pixels((right, top))
    assert 0 < low.x() < high.x() < picture.viewport().width()
    assert 0 < high.y() < low.y() < picture.viewport().height()


def test_seals_of_a_curtain_that_stays_say_so(opened: Opened) -> None:
    stays = PartState(family="Film", where="first_side", state="keep")
    _session, tab = opened(SEALS, small_farm(double_tunnel().but(condition=(stays,))))
    named = _texts(tab, 0)
    assert sum(text.endswith(", stays with its seals") for text in named) == 8
    assert len(named) == 16


def test_tunnel_without_seals_shows_none(opened: Opened) -> None:
    _session, tab = opened(SEALS, small_farm(tunnel()))
    assert _texts(tab, 0) == []
    assert tab.shown.picture is None


def test_film_is_told_with_its_pull(opened: Opened) -> None:
    session, tab = opened(FILM)
    pulls = session.tunnel_plan.held.pulls
    assert _texts(tab, 0) == [pull.name for pull in pulls]
    assert [float(text) for text in _texts(tab, 5)] == pytest.approx(
        [pull.tension_n_m for pull in pulls], abs=0.05
    )


def test_reading_is_added_and_removed_by_hand(opened: Opened, qtbot: QtBot) -> None:
    session, tab = opened(READINGS)
    part = tab.shown
    assert isinstance(part, ReadingsTab)
    before, fields = session.farm, part.line.fields
    for name, text in (("taken_on", "2026-03-14"), ("pressure_pa", "55")):
        line = fields[name].line
        line.setFocus()
        line.selectAll()
        qtbot.keyClicks(line, text)
        qtbot.keyClick(line, Qt.Key.Key_Return)
    qtbot.keyClick(part.line.button, Qt.Key.Key_Space)
    first = session.tunnel_plan.chosen.inflation.cells[0].mark
    expected = AirReading(taken_on="2026-03-14", cell=first, pressure_pa=55.0)
    assert session.tunnel.air.readings == (expected,)
    assert _texts(tab, 0) == ["2026-03-14"]
    assert float(_texts(tab, 2)[0]) == 55.0
    tab.view.selectRow(0)
    qtbot.keyClick(part.remove_button, Qt.Key.Key_Space)
    assert session.farm == before


@pytest.mark.parametrize(
    ("date", "pressure", "said"),
    [("14 March", "55", "year-month-day"), ("2026-03-14", "", "Enter the measured pressure")],
)
def test_reading_that_cannot_be_is_refused_at_its_field(
    opened: Opened, qtbot: QtBot, date: str, pressure: str, said: str
) -> None:
    session, tab = opened(READINGS)
    fields = tab.shown.line.fields
    for name, text in (("taken_on", date), ("pressure_pa", pressure)):
        fields[name].line.selectAll()
        qtbot.keyClicks(fields[name].line, text)
        qtbot.keyClick(fields[name].line, Qt.Key.Key_Return)
    tab.shown.line.button.click()
    assert session.tunnel.air.readings == ()
    assert said in _said(tab)


def test_readings_of_one_day_point_to_the_cell_that_leaks(opened: Opened) -> None:
    plain = double_tunnel()
    session = Session(small_farm(plain))
    planned = {air.mark: air.pressure_pa for air in session.tunnel_plan.held.cells}
    session.deleteLater()
    far = "cell/side/1/panel/1"
    readings = tuple(
        AirReading(
            taken_on="2026-05-02", cell=cell, pressure_pa=pa * (0.4 if cell == far else 0.95)
        )
        for cell, pa in planned.items()
    )
    farm = small_farm(plain.but(air=plain.air.but(readings=readings)))
    _session, tab = opened(READINGS, farm)
    assert "East side, curtain 2" in tab.shown.told.text()


def test_heat_tells_of_fuel_only_where_there_is_a_heater(opened: Opened) -> None:
    session, tab = opened(HEAT)
    cold = {row.key[1] for row in heat_rows(session)}
    assert "fuel_cost" not in cold
    assert "not heated" in _said(tab)
    session.apply_tunnel(session.tunnel.but(heating=Heating()), "Heat")
    warm = {row.key[1]: row for row in heat_rows(session)}
    warmth = session.tunnel_plan.warmth
    assert warm["fuel_cost"].cells[1].value == f"${warmth.fuel_cost:,.2f}"
    assert "gallon of propane" in str(warm["fuel_units"].cells[1].value)
    assert _texts(tab, 1)[0].endswith("W/K")


@pytest.mark.parametrize("part", range(8))
def test_rows_fit_their_columns_and_explain_themselves(opened: Opened, part: int) -> None:
    _session, tab = opened(part)
    model = tab.view.rows_model
    assert all(len(row.cells) == len(model.columns) for row in model.rows)
    keys = [row.key for row in model.rows]
    assert len(set(keys)) == len(keys)


def test_pictures_follow_the_palette(opened: Opened) -> None:
    from PySide6.QtWidgets import QApplication

    _session, tab = opened(FILLING)
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    try:
        for dark in (True, False):
            app.setPalette(app_palette(dark))
            QApplication.processEvents()
            paper = tab.shown.plot.backgroundBrush().color().name()
            assert paper == COLOURS["paper"][dark].lower()
    finally:
        app.setPalette(app_palette(False))
