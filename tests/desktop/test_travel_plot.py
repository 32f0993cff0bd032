"""The travel of a curtain: the picture and its numbers agree with the model, by mouse and key.

1 ft = 0.3048 m exactly (NIST Special Publication 811, appendix B).
"""

import subprocess
import sys
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from hoopwright.curtain import course
from hoopwright.desktop.palette import COLOURS, app_palette
from hoopwright.desktop.session import Session
from hoopwright.desktop.table_travel import TravelTab
from hoopwright.desktop.travel_curves import CURVES, STEPS
from hoopwright.farm import Farm
from hoopwright.farm.change import move_split
from samples import double_tunnel, side, small_farm, tunnel

FOOT_M = 0.3048
Opened = Callable[..., tuple[Session, TravelTab]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the tab of a farm with something picked."""
    kept: list[QWidget] = []

    def open_tab(mark: str = "", farm: Farm | None = None) -> tuple[Session, TravelTab]:
        session = Session(farm or small_farm(double_tunnel()))
        session.pick(mark)
        tab = TravelTab(session, "Travel")
        session.setParent(tab)
        qtbot.addWidget(tab)
        kept.append(tab)
        tab.resize(1040, 260)
        tab.show()
        tab.refresh()
        return session, tab

    return open_tab


def _choose(tab: TravelTab, key: str) -> None:
    at = next(n for n, curve in enumerate(CURVES) if curve.key == key)
    tab.what.setCurrentIndex(at)
    tab.what.activated.emit(at)


def test_the_shell_shows_the_tab_without_the_plot_library() -> None:
    code = (
        "import sys; from hoopwright.desktop import tables; from hoopwright.desktop.table_travel "
        "import TravelTab; print('pyqtgraph' in sys.modules or 'numpy' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


@pytest.mark.parametrize("key", [curve.key for curve in CURVES])
def test_the_curve_is_the_course_of_the_picked_curtain(opened: Opened, key: str) -> None:
    session, tab = opened("side/0/panel/1")
    work = next(w for w in session.tunnel_plan.chosen.curtains if w.mark == "side/0/panel/1")
    way = course(work, STEPS)
    _choose(tab, key)
    heights, values = tab.plot.curve.getData()
    assert list(heights) == pytest.approx(way.heights_m)
    factor = {"trailing_m": 1000.0, "joint_angles_rad": 180 / 3.141592653589793}.get(key, 1.0)
    assert list(values) == pytest.approx([v * factor for v in getattr(way, key)])


def test_nothing_picked_shows_the_hardest_curtain(opened: Opened) -> None:
    session, tab = opened()
    hardest = max(session.tunnel_plan.chosen.curtains, key=lambda w: w.hardest_n)
    assert tab.work is hardest


def test_picking_another_curtain_shows_its_way(opened: Opened) -> None:
    session, tab = opened("side/0/panel/0")
    session.pick("side/1/panel/1/crank")
    tab.follow(session.mark)
    assert tab.work.mark == "side/1/panel/1"
    assert tab.name.text().startswith("East side, curtain 2")


def test_lines_of_the_limits_stand_at_the_limits(opened: Opened) -> None:
    session, tab = opened("side/0/panel/0")
    assert tab.plot.limit.value() == session.farm.limits.hand_force_n
    assert tab.plot.limit_words.toPlainText() == "hand force limit, 60 N"
    _choose(tab, "trailing_m")
    assert tab.plot.limit.value() == pytest.approx(50.0)
    _choose(tab, "joint_angles_rad")
    assert tab.plot.limit.value() == pytest.approx(45.0)
    _choose(tab, "openings_m2")
    assert not tab.plot.limit.isVisible()
    low, high = tab.plot.getViewBox().viewRange()[1]
    assert low <= 0 < max(tab.way.openings_m2) < high


def test_limit_and_curve_are_both_in_the_picture(opened: Opened) -> None:
    _session, tab = opened("side/0/panel/0")
    low, high = tab.plot.getViewBox().viewRange()[1]
    assert low <= 0
    assert high > 60.0


def test_named_places_stand_on_the_curve(opened: Opened) -> None:
    _session, tab = opened("side/0/panel/0")
    names = [name.toPlainText() for name in tab.plot.names]
    assert names == ["shut", "half way", "open"]
    for name, step in zip(tab.plot.names, (0, STEPS // 2, STEPS), strict=True):
        assert name.pos().x() == pytest.approx(tab.way.heights_m[step])
        assert name.pos().y() == pytest.approx(tab.way.hand_forces_n[step])


def test_picture_and_table_are_in_the_units_of_the_farm(opened: Opened) -> None:
    _session, tab = opened("side/0/panel/0", small_farm(double_tunnel()).but(units="imperial"))
    heights, _values = tab.plot.curve.getData()
    assert heights[-1] == pytest.approx(tab.way.heights_m[-1] / FOOT_M)
    assert "lbf" in tab.plot.getAxis("left").labelText
    assert "ft" in tab.plot.getAxis("bottom").labelText


def test_table_has_a_row_for_each_step_and_names_three(opened: Opened) -> None:
    _session, tab = opened("side/0/panel/0")
    rows = tab.model.rows
    assert len(rows) == STEPS + 1
    assert [row.cells[0].value for row in rows if row.cells[0].value] == [
        "shut",
        "half way",
        "open",
    ]
    assert [row.cells[2].value for row in rows] == list(tab.way.hand_forces_n)


def test_keys_walk_along_the_curve_and_say_where(opened: Opened, qtbot: QtBot) -> None:
    _session, tab = opened("side/0/panel/0")
    plot = tab.plot
    assert plot.focusPolicy() & Qt.FocusPolicy.TabFocus
    assert "The limit is 60 N." in plot.accessibleDescription()
    qtbot.keyClick(plot, Qt.Key.Key_Right)
    qtbot.keyClick(plot, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert plot.step == 6
    assert plot.here.value() == pytest.approx(tab.way.heights_m[6])
    assert [row.key for row in tab.view.chosen_rows()] == [("step", 6)]
    assert f"{tab.way.hand_forces_n[6]:.0f} N" in plot.accessibleDescription()
    qtbot.keyClick(plot, Qt.Key.Key_End)
    assert plot.step == STEPS
    qtbot.keyClick(plot, Qt.Key.Key_Right)
    assert plot.step == STEPS
    qtbot.keyClick(plot, Qt.Key.Key_Home)
    assert plot.step == 0


def test_a_row_marks_its_place_in_the_picture(opened: Opened) -> None:
    _session, tab = opened("side/0/panel/0")
    tab.view.selectRow(10)
    assert tab.plot.step == 10
    assert tab.plot.here.isVisible()


def test_an_edit_moves_the_curve(opened: Opened) -> None:
    session, tab = opened("side/0/panel/0")
    before = max(tab.way.hand_forces_n)
    session.apply_tunnel(move_split(session.tunnel, 0, 0, 6.0), "Move split")
    tab.refresh()
    assert max(tab.way.hand_forces_n) < before


def test_a_tunnel_without_curtains_says_so(opened: Opened) -> None:
    sides = (side("West side", kind="fixed"), side("East side", kind="fixed"))
    _session, tab = opened("", small_farm(tunnel(sides=sides)))
    assert not tab.plot.isVisible()
    assert tab.model.rows == ()
    assert "No side" in tab.name.text()


def test_colours_follow_light_and_dark(opened: Opened) -> None:
    _session, tab = opened("side/0/panel/0")
    for dark in (True, False):
        tab.setPalette(app_palette(dark))
        assert tab.plot.backgroundBrush().color().name() == COLOURS["paper"][dark].lower()
        pen = tab.plot.curve.opts["pen"]
        assert pen.color().name() == COLOURS["hardware"][dark].lower()
    tab.setPalette(app_palette(False))
