"""Sides of every kind in the panel of details: what is offered, refused, shown and left out.

0 °C is 273.15 K (International System of Units, BIPM brochure, 9th edition, 2.3.1); a degree
Fahrenheit is 5/9 K and 32 °F is 0 °C (NIST Special Publication 811, appendix B).
"""

import math
from collections.abc import Callable
from typing import Any, Literal, get_args, get_origin, get_type_hints

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QWidget
from pytestqt.qtbot import QtBot

from forms import line_named, named, press, said_by, type_into
from hardware import full_farm
from hoopwright.curtain import Bound
from hoopwright.desktop.details import Details
from hoopwright.desktop.details_form import FigureLine, in_short
from hoopwright.desktop.details_words import WORDS
from hoopwright.desktop.session import Session
from hoopwright.farm import (
    Bar,
    Farm,
    Layers,
    Panel,
    Side,
    SideBoards,
    Skin,
    Split,
    Weather,
)
from hoopwright.farm.change import with_value
from hoopwright.papers.cautions import CAUTIONS
from samples import double_tunnel, side, small_farm, tunnel

Opened = Callable[..., tuple[Session, Details]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the panel of a farm with something picked and its groups closed."""
    kept: list[QWidget] = []

    def open_panel(mark: str, farm: Farm | None = None) -> tuple[Session, Details]:
        session = Session(farm or full_farm(double_tunnel()))
        panel = Details(session)
        session.setParent(panel)
        qtbot.addWidget(panel)
        kept.append(panel)
        panel.resize(330, 900)
        panel.show()
        for group in panel.groups:
            group.header.setChecked(False)
        session.pick(mark)
        return session, panel

    return open_panel


def _offers(panel: Details, name: str) -> list[str]:
    box = named(panel, name)
    assert isinstance(box, QComboBox)
    return [box.itemText(n) for n in range(box.count())]


def _take(panel: Details, name: str, words: str) -> None:
    """Choose one entry of a list, as a click in it does."""
    box = named(panel, name)
    assert isinstance(box, QComboBox)
    at = box.findText(words)
    assert at >= 0, (words, _offers(panel, name))
    box.setCurrentIndex(at)
    box.activated.emit(at)


def _labels(panel: Details) -> list[str]:
    return [line._label for line in panel.picked.findChildren(FigureLine) if line.isVisible()]


def _codes(owner: type) -> set[Any]:
    """Return every code that can be chosen in a class of entered values."""
    found: set[Any] = set()
    for kind in get_type_hints(owner).values():
        for member in (kind, *get_args(kind)):
            if get_origin(member) is Literal:
                found.update(get_args(member))
    return found


@pytest.mark.parametrize("owner", [Side, Panel, Split, Bar, Weather, SideBoards, Skin, Layers])
def test_every_choice_has_words_of_its_own(owner: type) -> None:
    hidden = {"clamp_on_cap", "closes_on_film", "hem", "steel", "aluminium"} if owner is Bar else {}
    for code in _codes(owner) - set(hidden):
        assert WORDS.get(code), code
        assert "_" not in str(WORDS[code])


def test_every_bound_has_words() -> None:
    assert all(bound in WORDS for bound in get_args(Bound))


# --- Kind of side


def test_another_kind_of_side_changes_bars_and_drives_in_one_step(opened: Opened) -> None:
    session, panel = opened("side/0")
    before = session.farm
    _take(panel, "Picked: kind of side", "drop-down curtains")
    assert session.tunnel.sides[0].kind == "drop_down"
    assert [p.drive for p in session.tunnel.sides[0].panels] == ["drum", "drum"]
    assert session.stack.count() == 1
    session.stack.undo()
    assert session.farm == before


def test_kind_without_a_bar_in_the_catalogue_is_refused_at_the_field(opened: Opened) -> None:
    session, panel = opened("side/0", small_farm(double_tunnel()))
    _take(panel, "Picked: kind of side", "woven curtains")
    box = named(panel, "Picked: kind of side")
    assert isinstance(box, QComboBox)
    assert "no bar for a hem" in box.accessibleDescription()
    assert box.currentText() == "roll-up curtains"
    assert session.stack.count() == 0


@pytest.mark.parametrize(
    ("kind", "bars", "drives"),
    [
        ("roll_up", ["round roll bar", "bar in a hem"], ["hand crank", "geared crank"]),
        ("woven", ["bar in a hem"], ["hand crank", "geared crank"]),
        ("drop_down", ["round roll bar", "bar in a hem"], ["line drum"]),
    ],
)
def test_only_what_fits_the_kind_of_side_is_offered(
    opened: Opened, kind: str, bars: list[str], drives: list[str]
) -> None:
    session, panel = opened("side/0")
    words = {"woven": "woven curtains", "drop_down": "drop-down curtains"}.get(kind)
    if words:
        _take(panel, "Picked: kind of side", words)
    session.pick("side/0/panel/0")
    assert _offers(panel, "Picked: roll bar") == bars
    assert _offers(panel, "Picked: drive") == drives


def test_a_fixed_side_asks_nothing_of_curtains(opened: Opened) -> None:
    _session, panel = opened("side/0", full_farm(tunnel(sides=(side(kind="fixed"), side("East")))))
    names = [w.accessibleName() for w in panel.picked.stops]
    assert "Picked: kind of side" in names
    assert not any("slack" in n or "screen" in n or "split" in n for n in names)


# --- Fields that may be empty, temperatures, catalogue


def test_an_optional_number_is_emptied_and_entered_again(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened("side/0")
    line = line_named(panel, "Picked: rope step")
    type_into(qtbot, line, "")
    assert session.tunnel.sides[0].rope_step_m is None
    assert line.text() == ""
    type_into(qtbot, line, "1.2")
    assert session.tunnel.sides[0].rope_step_m == 1.2


@pytest.mark.parametrize("typed", ["95 °F", "35 °C", "35", "308.15 K", "95F"])
def test_warmth_is_typed_in_any_scale(qtbot: QtBot, opened: Opened, typed: str) -> None:
    farm = full_farm(tunnel())
    farm = farm.but(weather=farm.weather.but(inside_k=300.0))
    session, panel = opened("", farm)
    next(g for g in panel.groups if g.title == "Weather").header.setChecked(True)
    type_into(qtbot, line_named(panel, "Weather: air inside"), typed)
    # 95 °F = (95 - 32) * 5/9 °C = 35 °C = 308.15 K.
    assert session.farm.weather.inside_k == pytest.approx(308.15)


def test_wall_of_the_bar_is_measured_and_changes_the_twist(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened("side/0/panel/0")
    before = session.tunnel_plan.chosen.curtains[0].twist_rad
    type_into(qtbot, line_named(panel, "Picked: wall"), "3 mm")
    assert session.farm.catalogue.bars[0].section.wall_m == pytest.approx(0.003)
    assert session.tunnel_plan.chosen.curtains[0].twist_rad < before
    assert session.stack.count() == 1


def test_a_wall_that_fills_the_tube_is_refused_at_the_field(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened("side/0/panel/0")
    line = line_named(panel, "Picked: wall")
    type_into(qtbot, line, "18 mm")
    assert "measure it again" in line.accessibleDescription()
    assert session.stack.count() == 0


def test_arm_of_the_crank_halves_the_force(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened("side/0/panel/0")
    before = session.tunnel_plan.chosen.curtains[0].hand_forces_n
    type_into(qtbot, line_named(panel, "Picked: crank arm"), "500 mm")
    after = session.tunnel_plan.chosen.curtains[0].hand_forces_n
    # Force is torque over arm: an arm of 0.50 m in place of 0.25 m.
    assert after == pytest.approx([force / 2 for force in before])


def test_maker_s_greatest_length_limits_and_is_named(qtbot: QtBot, opened: Opened) -> None:
    _session, panel = opened("side/0/panel/0")
    names = [w for w in panel.picked.stops if "greatest length" in w.accessibleName()]
    assert len(names) == 2, "one of the bar, one of the drive"
    first = names[0]
    type_into(qtbot, first, "2 m")  # type: ignore[arg-type]
    assert "maker of the bar" in _figure(panel, "what limits its length")


def _figure(panel: Details, label: str) -> str:
    (line,) = (f for f in panel.picked.findChildren(FigureLine) if f._label == label)
    return line.button.text() or line.plain.text()


# --- Figures


def test_a_curtain_shows_its_figures_and_how_they_were_got(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened("side/0/panel/0")
    work = session.tunnel_plan.chosen.curtains[0]
    assert _figure(panel, "time to open") == f"{work.minutes:.1f}".rstrip("0").rstrip(".") + " min"
    lines = [f for f in panel.picked.findChildren(FigureLine) if not f.button.isHidden()]
    for line in lines:
        qtbot.keyClick(line.button, Qt.Key.Key_Space)
        assert "Source:" in line.told.text(), line._label
    assert {f._label for f in lines} >= {"time to open", "longest within all limits", "eyes"}


def test_a_drop_down_curtain_shows_lines_and_no_roll(opened: Opened) -> None:
    session, panel = opened("side/0")
    _take(panel, "Picked: kind of side", "drop-down curtains")
    session.pick("side/0/panel/0")
    labels = _labels(panel)
    assert "lift lines" in labels
    assert "pulleys" in labels
    assert not any("roll" in label or "trailing" in label for label in labels)
    names = [w.accessibleName() for w in panel.picked.stops]
    assert "Picked: drum diameter" in names
    assert "Picked: winds" not in names


def test_a_rolled_curtain_shows_no_lines(opened: Opened) -> None:
    _session, panel = opened("side/0/panel/0")
    assert not any("line" in label or "pulley" in label for label in _labels(panel))


def test_a_curtain_without_rope_shows_no_pull(opened: Opened) -> None:
    first = double_tunnel()
    path = ("sides", 0, "panels", 0, "rope")
    _session, panel = opened("side/0/panel/0", full_farm(with_value(first, path, "none")))
    assert not any("eye" in label or "leg" in label for label in _labels(panel))


def test_cautions_of_crank_and_air_stand_where_the_hand_is(opened: Opened) -> None:
    session, panel = opened("side/0/panel/0")
    said = said_by(panel)
    for caution in CAUTIONS:
        if caution.id in ("crank", "air_off"):
            assert in_short(caution) in said
            assert in_short(caution).endswith(".")
    assert "keep hands out of the roll" in said
    # A curtain of one layer has no air to let out.
    session.apply(full_farm(tunnel()), "One layer")
    assert "Air off" not in said_by(panel)
    assert "keep hands out of the roll" in said_by(panel)


def test_bar_shows_both_meanings_of_a_gauge_and_its_section(opened: Opened) -> None:
    session, panel = opened("side/0/panel/0")
    gauge = _figure(panel, "gauge of the wall")
    assert "of tubes" in gauge
    assert "of sheets" in gauge
    tube = session.farm.catalogue.bars[0].section
    outside_cm, inside_cm = tube.outside_m * 100, (tube.outside_m - 2 * tube.wall_m) * 100
    # Round tube, a textbook rule: J = pi/32 (D^4 - d^4).
    torsion_cm4 = math.pi / 32 * (outside_cm**4 - inside_cm**4)
    assert _figure(panel, "torsion constant") == f"{torsion_cm4:.3f} cm⁴"


@pytest.mark.parametrize(
    ("words", "left_out"),
    [
        ("drop-down curtains", ["bar height when shut", "bar stops below the hip"]),
        ("woven curtains", ["bunch at the bottom"]),
        ("fixed film", ["slack at the bar", "rope step", "air through the screen"]),
    ],
)
def test_what_has_no_meaning_for_a_kind_is_not_asked(
    opened: Opened, words: str, left_out: list[str]
) -> None:
    _session, panel = opened("side/0")
    _take(panel, "Picked: kind of side", words)
    names = [w.accessibleName() for w in panel.picked.stops]
    assert "Picked: top of the side film in" in names
    for label in left_out:
        assert f"Picked: {label}" not in names


def test_splits_of_a_drop_down_side_are_added_by_a_button(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened("side/0")
    _take(panel, "Picked: kind of side", "drop-down curtains")
    press(qtbot, panel, "Picked: Add a split")
    assert len(session.tunnel.sides[0].splits) == 2
