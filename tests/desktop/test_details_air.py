"""Air, heating and winter in the panel of details: what is offered, typed, refused and shown.

1 inch of water is 249.0889 Pa, 1 cfm is 0.3048**3 / 60 m3/s, 32 °F is 273.15 K (NIST Special
Publication 811, appendix B).
"""

from collections.abc import Callable
from typing import get_args

import pytest
from PySide6.QtWidgets import QComboBox, QWidget
from pytestqt.qtbot import QtBot

from forms import choose, line_named, named, press, said_by, type_into
from hoopwright.desktop.details import Details
from hoopwright.desktop.details_air import SURFACES, air_cautions, climate_items, heating_items
from hoopwright.desktop.details_form import in_short
from hoopwright.desktop.details_words import WORDS
from hoopwright.desktop.session import Session
from hoopwright.farm import Farm, Heating
from hoopwright.farm.air import JumperSurface
from hoopwright.farm.farm import Sealer
from hoopwright.pressure.held import Verdict
from samples import double_tunnel, small_farm, tunnel, with_double_ends

INCH_WATER_PA = 249.0889
CFM_M3_S = 0.3048**3 / 60
Opened = Callable[..., tuple[Session, Details]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the panel of a farm with one of its groups open and something picked."""
    kept: list[QWidget] = []

    def open_panel(
        group: str = "", mark: str = "", farm: Farm | None = None
    ) -> tuple[Session, Details]:
        session = Session(farm or small_farm(double_tunnel()))
        panel = Details(session)
        session.setParent(panel)
        qtbot.addWidget(panel)
        kept.append(panel)
        panel.resize(330, 1200)
        panel.show()
        for part in panel.groups:
            part.header.setChecked(part.title == group)
        session.pick(mark)
        return session, panel

    return open_panel


def _offers(panel: Details, name: str) -> list[str]:
    box = named(panel, name)
    assert isinstance(box, QComboBox)
    return [box.itemText(n) for n in range(box.count())]


@pytest.mark.parametrize("codes", [JumperSurface, Sealer, Verdict])
def test_every_choice_has_words(codes: object) -> None:
    assert all(code in WORDS for code in get_args(codes))


def test_surfaces_stand_in_the_order_of_the_model() -> None:
    assert tuple(surface for surface, _words in SURFACES) == get_args(JumperSurface)


def test_blower_and_hoses_are_chosen_from_the_catalogue(opened: Opened) -> None:
    _session, panel = opened("Air")
    assert _offers(panel, "Air: blower") == ["none", "inflation blower"]
    assert _offers(panel, "Air: jumper hose") == ["the first one listed", "hose"]
    assert _offers(panel, "Air: hose of the blower") == ["the widest there is", "hose"]


def test_window_of_pressures_is_typed_in_the_units_of_the_farm(
    opened: Opened, qtbot: QtBot
) -> None:
    farm = small_farm(double_tunnel()).but(units="imperial")
    session, panel = opened("Air", farm=farm)
    type_into(qtbot, line_named(panel, "Air: least pressure"), "0.15")
    assert session.tunnel.air.low_pa == pytest.approx(0.15 * INCH_WATER_PA, rel=1e-6)
    assert session.stack.count() == 1


def test_window_upside_down_is_refused_at_the_field(opened: Opened, qtbot: QtBot) -> None:
    session, panel = opened("Air", farm=small_farm(double_tunnel()).but(units="metric"))
    before = session.farm
    type_into(qtbot, line_named(panel, "Air: least pressure"), "90")
    assert session.farm is before
    assert "the greatest pressure must be above the least one" in said_by(panel).lower()


def test_point_of_a_blower_is_changed_in_the_catalogue(opened: Opened, qtbot: QtBot) -> None:
    farm = small_farm(double_tunnel()).but(units="imperial")
    session, panel = opened("Air", farm=farm)
    type_into(qtbot, line_named(panel, "Air: point 2, air"), "40")
    changed = session.farm.catalogue.blowers[0].curve[1]
    assert changed.flow_m3_s == pytest.approx(40 * CFM_M3_S, rel=1e-6)
    type_into(qtbot, line_named(panel, "Air: power of the blower"), "75")
    assert session.farm.catalogue.blowers[0].power_w == 75.0


def test_curve_that_rises_is_refused(opened: Opened, qtbot: QtBot) -> None:
    session, panel = opened("Air", farm=small_farm(double_tunnel()).but(units="metric"))
    before = session.farm
    type_into(qtbot, line_named(panel, "Air: point 2, against"), "170")
    assert session.farm is before
    assert "must fall while its flow rises" in said_by(panel)


def test_bore_of_the_hose_in_use_is_changed(opened: Opened, qtbot: QtBot) -> None:
    session, panel = opened("Air", farm=small_farm(double_tunnel()).but(units="metric"))
    before = session.tunnel_plan.held.hoses[0].loss_pa
    type_into(qtbot, line_named(panel, "Air: bore of the hose"), "25")
    assert session.farm.catalogue.hoses[0].bore_m == pytest.approx(0.025)
    assert session.tunnel_plan.held.hoses[0].loss_pa > before


def test_end_walls_are_inflated_by_a_tick(opened: Opened, qtbot: QtBot) -> None:
    plain = with_double_ends(double_tunnel())
    flat = plain.but(air=plain.air.but(inflated_ends=(False, False)))
    session, panel = opened("Air", farm=small_farm(flat))
    press(qtbot, panel, f"Air: inflate {plain.ends[1].name}")
    assert session.tunnel.air.inflated_ends == (False, True)
    marks = [cell.mark for cell in session.tunnel_plan.chosen.inflation.cells]
    assert "cell/end/1" in marks
    assert "cell/end/0" not in marks


@pytest.mark.parametrize("mark", ["air/blower", "side/0/panel/0", "cell/roof/0"])
def test_air_is_cautioned_where_it_is_picked(opened: Opened, mark: str) -> None:
    _session, panel = opened(mark=mark)
    said = said_by(panel)
    cautions = list(air_cautions())
    assert [caution.id for caution in cautions] == ["air_off", "electricity"]
    for caution in cautions:
        assert in_short(caution) in said


def test_flat_curtain_is_not_cautioned_of_air(opened: Opened) -> None:
    _session, panel = opened(mark="side/0/panel/0", farm=small_farm(tunnel()))
    said = said_by(panel)
    assert all(in_short(caution) not in said for caution in air_cautions())


def test_heating_comes_and_goes_with_one_tick(opened: Opened, qtbot: QtBot) -> None:
    session, panel = opened("Heating")
    before = session.farm
    assert len(list(heating_items(session))) == 1
    press(qtbot, panel, "Heating: heated")
    assert session.tunnel.heating == Heating()
    assert len(list(heating_items(session))) > 1
    type_into(qtbot, line_named(panel, "Heating: fuel"), "wood pellets")
    assert session.tunnel.heating.fuel == "wood pellets"
    press(qtbot, panel, "Heating: heated")
    assert session.tunnel.heating is None
    for _step in range(3):
        session.stack.undo()
    assert session.farm == before


def test_winter_is_typed_in_degrees(opened: Opened, qtbot: QtBot) -> None:
    farm = small_farm(double_tunnel()).but(units="imperial")
    session, panel = opened("Winter and power", farm=farm)
    type_into(qtbot, line_named(panel, "Winter and power: coldest outside"), "14")
    # 14 °F is -10 °C.
    assert session.farm.climate.design_outside_k == pytest.approx(263.15)
    assert len(list(climate_items(session))) == 7


def test_film_of_a_sheet_shows_how_it_stretches(opened: Opened, qtbot: QtBot) -> None:
    farm = small_farm(double_tunnel()).but(units="metric")
    session = Session(farm)
    mark = next(p.mark for p in session.tunnel_plan.chosen.cover.pieces if p.layer == "outer")
    session.deleteLater()
    session, panel = opened(mark=mark, farm=farm)
    type_into(qtbot, line_named(panel, "Picked: yield of the film"), "12")
    assert session.farm.catalogue.films[0].yield_pa == pytest.approx(12e6)
    press(qtbot, panel, "Picked: thermal film")
    assert session.farm.catalogue.films[0].thermal


def test_jumper_is_placed_by_its_field(opened: Opened, qtbot: QtBot) -> None:
    farm = small_farm(double_tunnel()).but(units="metric")
    session, panel = opened(mark="jumper/0", farm=farm)
    before = session.tunnel_plan.chosen.inflation.jumpers
    assert session.tunnel.air.jumpers is None
    type_into(qtbot, line_named(panel, "Picked: position from the front"), "4.5 m")
    assert session.tunnel.air.jumpers is not None
    assert len(session.tunnel.air.jumpers) == len(before)
    assert session.tunnel.air.jumpers[0].at_m == pytest.approx(4.5)
    assert session.stack.count() == 1


def test_jumper_past_the_tunnel_is_refused(opened: Opened, qtbot: QtBot) -> None:
    farm = small_farm(double_tunnel()).but(units="metric")
    session, panel = opened(mark="jumper/0", farm=farm)
    type_into(qtbot, line_named(panel, "Picked: position from the front"), "400 m")
    assert session.tunnel.air.jumpers is None
    assert "Enter from 0" in said_by(panel)


def test_jumpers_are_added_and_worked_out_by_buttons(opened: Opened, qtbot: QtBot) -> None:
    session, panel = opened("Air")
    before, count = session.farm, len(session.tunnel_plan.chosen.inflation.jumpers)
    press(qtbot, panel, "Air: Add a jumper to West side")
    assert len(session.tunnel_plan.chosen.inflation.jumpers) == count + 1
    assert f"{count + 1}, placed by hand" in said_by(panel)
    press(qtbot, panel, "Air: Work out the jumpers")
    assert session.farm == before


def test_bench_with_a_bar_is_chosen(opened: Opened, qtbot: QtBot) -> None:
    session, panel = opened("Farm")
    choose(qtbot, panel, "Farm: sealer", "a bar, stroke by stroke")
    assert session.farm.bench.sealer == "bar"
    assert session.tunnel_plan.chosen.inflation.strokes > 0
