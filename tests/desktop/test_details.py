"""The panel of details is worked by key and mouse, and asked what it shows.

1 ft = 0.3048 m exactly (NIST Special Publication 811, appendix B).
"""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QWidget
from pytestqt.qtbot import QtBot

from files.varied import standing_tunnel, varied_catalogue
from forms import choose, line_named, named, press, said_by, type_into
from hoopwright.desktop.details import Details
from hoopwright.desktop.details_edits import ACTS, limits_of, value_of, with_act, with_entered
from hoopwright.desktop.details_form import FigureLine
from hoopwright.desktop.details_items import Act, Entry, Special, entries
from hoopwright.desktop.details_made import label_of
from hoopwright.desktop.details_picked import picked_lines
from hoopwright.desktop.details_tunnel import GROUPS
from hoopwright.desktop.positions import PositionsField
from hoopwright.desktop.session import Session
from hoopwright.farm import (
    EvenBows,
    Farm,
    GothicBow,
    ListedBows,
    MeasuredBow,
    RoundBow,
    Screen,
    StraightRafters,
    Tunnel,
)
from hoopwright.farm.profile import ridge_height
from hoopwright.quantity.units import Units
from samples import double_tunnel, gothic_tunnel, rafter_tunnel, small_farm, tunnel

FOOT_M = 0.3048
Opened = Callable[..., tuple[Session, Details]]


@pytest.fixture
def opened(qtbot: QtBot) -> Opened:
    """Open the panel of a farm with all its groups open."""
    kept: list[QWidget] = []

    def open_panel(farm: Farm | None = None) -> tuple[Session, Details]:
        session = Session(farm or small_farm(double_tunnel()))
        panel = Details(session)
        session.setParent(panel)
        qtbot.addWidget(panel)
        kept.append(panel)
        panel.resize(330, 900)
        panel.show()
        for group in panel.groups:
            group.header.setChecked(True)
        return session, panel

    return open_panel


def test_span_is_typed_and_undone_by_its_name(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened()
    line = line_named(panel, "Frame: span, tube centre to tube centre")
    assert line.text() == "8.000 m"
    type_into(qtbot, line, "8.5")
    assert session.tunnel.frame.profile.span_m == 8.5
    assert session.stack.undoText() == "Change span, tube centre to tube centre"
    session.stack.undo()
    assert line.text() == "8.000 m"


def standing_farm() -> Farm:
    """Return a farm whose one tunnel has everything in use that is told of a standing frame."""
    plain, catalogue = standing_tunnel(), varied_catalogue()
    screened = plain.sides[1].but(screen=Screen(part="screen"))
    made = plain.but(sides=(plain.sides[0], screened))
    return small_farm().but(catalogue=catalogue, tunnels=(made,))


@pytest.mark.parametrize("units", ["metric", "imperial"])
@pytest.mark.parametrize("farm", [small_farm(double_tunnel()), standing_farm()])
def test_enter_without_a_change_makes_no_step(
    qtbot: QtBot, opened: Opened, farm: Farm, units: Units
) -> None:
    session, panel = opened(farm.but(units=units))
    for group in panel.groups:
        for stop in group.form.stops:
            if isinstance(stop, QLineEdit):
                type_into(qtbot, stop, stop.text())
    assert session.stack.count() == 0


def test_what_the_model_refuses_stays_at_the_field(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened()
    line = line_named(panel, "Frame: peak height")
    type_into(qtbot, line, "1.52")
    assert line.text() == "1.52"
    assert "the peak must be at least 0.050 m above the leg" in line.accessibleDescription().lower()
    assert line.accessibleDescription() in said_by(panel)
    assert session.stack.count() == 0
    type_into(qtbot, line, "3.9")
    assert session.tunnel.frame.profile.peak_height_m == 3.9
    assert line.accessibleDescription() == ""


def test_limits_are_said_in_the_units_of_the_farm(qtbot: QtBot, opened: Opened) -> None:
    _session, panel = opened(small_farm(tunnel()).but(units="imperial"))
    line = line_named(panel, "Frame: bow spacing")
    # Limits of the spacing: 0.2 m = 7.874 in, shown 7 7/8"; 10 m = 32.808 ft = 32' 9.70".
    type_into(qtbot, line, "33'")
    assert line.accessibleDescription() == 'Enter from 7 7/8" to 32\' 9 5/8".'


@pytest.mark.parametrize(
    ("words", "kind"),
    [("gothic bow", GothicBow), ("straight rafters", StraightRafters)],
)
def test_another_shape_keeps_span_leg_and_peak(
    qtbot: QtBot, opened: Opened, words: str, kind: type
) -> None:
    session, panel = opened(small_farm(tunnel()))
    old = session.tunnel.frame.profile
    assert isinstance(old, RoundBow)
    choose(qtbot, panel, "Frame: shape of the bows", words)
    new = session.tunnel.frame.profile
    assert type(new) is kind
    sizes = (new.span_m, new.leg_height_m, new.peak_height_m)
    assert sizes == (old.span_m, old.leg_height_m, old.peak_height_m)


@pytest.mark.parametrize("plain", [tunnel(), gothic_tunnel(), rafter_tunnel()])
def test_measured_points_are_taken_from_the_bow_and_give_it_back(plain: Tunnel) -> None:
    shape = Special("shape", 0, "shape")
    farm = small_farm(plain)
    before = value_of(shape, farm, plain)
    farm = with_entered(shape, farm, 0, "measured")
    assert value_of(shape, farm, farm.tunnels[0]) == "measured"
    bow = farm.tunnels[0].frame.profile
    assert isinstance(bow, MeasuredBow)
    sizes = (plain.frame.profile.span_m, ridge_height(plain.frame.profile))
    assert (bow.span_m, bow.peak_height_m) == pytest.approx(sizes, abs=1e-9)
    farm = with_entered(shape, farm, 0, before)
    again = farm.tunnels[0].frame.profile
    assert type(again) is type(plain.frame.profile)
    assert (again.span_m, again.peak_height_m) == pytest.approx(sizes, abs=1e-9)


def test_bows_are_listed_one_changed_and_spaced_again(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened(small_farm(tunnel()))
    press(qtbot, panel, "Frame: List the bows")
    text = named(panel, "Frame: bow positions")
    assert isinstance(text, QPlainTextEdit)
    lines = text.toPlainText().splitlines()
    assert lines[:2] == ["0.000 m", "1.500 m"]
    assert len(lines) == 17
    text.selectAll()
    text.insertPlainText("\n".join(["0", "1.4", *lines[2:]]))
    qtbot.keyClick(text, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    bows = session.tunnel.frame.bows
    assert isinstance(bows, ListedBows)
    assert bows.positions_m[:3] == (0.0, 1.4, 3.0)
    press(qtbot, panel, "Frame: Space bows evenly")
    assert session.tunnel.frame.bows == EvenBows(count=17, spacing_m=1.5)


def test_line_of_a_list_that_cannot_be_read_is_named(qtbot: QtBot) -> None:
    field = PositionsField("bows", "metric")
    qtbot.addWidget(field)
    sent: list[object] = []
    field.entered.connect(sent.append)
    field.set_value((0.0, 1.5))
    field.text.moveCursor(field.text.textCursor().MoveOperation.End)
    field.text.insertPlainText("\nthree")
    field.enter()
    assert sent == []
    assert field.message.text().startswith("Line 3:")
    assert field.text.toPlainText().endswith("three")
    qtbot.keyClick(field.text, Qt.Key.Key_Escape)
    assert field.text.toPlainText() == "0.000 m\n1.500 m"


def test_splits_and_doors_come_and_go_by_their_buttons(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened(small_farm(tunnel()))
    buttons = [b for b in panel.groups[4].form.stops if b.accessibleName() == "Sides: Add a split"]
    qtbot.keyClick(buttons[0], Qt.Key.Key_Space)
    assert len(session.tunnel.sides[0].splits) == 1
    assert session.stack.undoText() == "Add a split"
    press(qtbot, panel, "Sides: Remove split 1")
    assert session.tunnel.sides[0].splits == ()
    buttons = [b for b in panel.groups[5].form.stops if b.accessibleName() == "Ends: Add a door"]
    qtbot.keyClick(buttons[0], Qt.Key.Key_Space)
    assert len(session.tunnel.ends[0].doors) == 1


def test_tax_and_units_of_the_farm_are_changed(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened()
    type_into(qtbot, line_named(panel, "Farm: sales tax"), "6.5")
    assert session.farm.money.tax_share == pytest.approx(0.065)
    choose(qtbot, panel, "Farm: units", "feet and inches")
    assert session.units == "imperial"
    # 8 m are 26.2467 ft: 26' 2.96", to the nearest eighth 26' 3".
    assert line_named(panel, "Frame: span, tube centre to tube centre").text() == "26' 3\""


def test_two_tunnels_of_one_name_are_refused(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened(small_farm(tunnel(), tunnel().but(name="Brook")))
    line = line_named(panel, "Frame: name")
    type_into(qtbot, line, "Brook")
    assert "two tunnels are called" in line.accessibleDescription().lower()
    assert session.tunnel.name == "Meadow tunnel"


def test_picked_curtain_shows_force_and_its_working(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened()
    session.pick("side/0/panel/1")
    assert panel.picked_title.text().startswith("West side, curtain 2")
    lines = [
        f
        for f in panel.picked.findChildren(FigureLine)
        if f.button.accessibleName().startswith("hand force, shut")
    ]
    assert len(lines) == 1
    work = next(w for w in session.tunnel_plan.chosen.curtains if w.mark == "side/0/panel/1")
    shut, half_way, high = work.hand_forces_n
    assert lines[0].button.text() == f"{shut:.0f} · {half_way:.0f} · {high:.0f} N"
    assert "Source:" not in said_by(panel)
    qtbot.keyClick(lines[0].button, Qt.Key.Key_Space)
    assert "Torque over arm, ratio and efficiency" in lines[0].told.text()
    assert lines[0].told.isVisible()
    choose(qtbot, panel, "Picked: crank at the", "back end")
    assert session.tunnel.sides[0].panels[1].crank_end == "back"


def test_picked_split_is_held_between_its_neighbours(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened()
    session.pick("side/0/split/0")
    line = line_named(panel, "Picked: split 1, from the front")
    # The opening goes from 1.5 to 22.5 m, and half a metre stays for the least curtain.
    type_into(qtbot, line, "22.4")
    assert line.accessibleDescription() == "Enter from 2.000 m to 22.000 m."
    type_into(qtbot, line, "10.5")
    assert session.tunnel.sides[0].splits[0].at_m == 10.5
    press(qtbot, panel, "Picked: Remove split 1")
    assert session.tunnel.sides[0].splits == ()
    assert panel.picked_title.text().startswith("Nothing is picked")


def test_picked_sheet_adds_up(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened()
    piece = session.tunnel_plan.chosen.cover.pieces[0]
    session.pick(piece.mark)
    said = said_by(panel)
    for term in (*piece.width_terms, *piece.length_terms):
        assert (term.name[:1].upper() + term.name[1:]) in said
    assert f"{piece.width_m:.3f} m" in panel.picked_title.text()


MARKS = [
    "side/0",
    "side/0/hip",
    "side/1/baseboard",
    "side/1/split/0",
    "side/1/strip/0",
    "side/0/panel/0/crank",
    "side/0/pocket/front",
    "roof",
    "end/1",
    "bow/0",
    "bow/3",
    "cell/roof/0",
    "jumper/0",
    "air/blower",
    "frame",
]


@pytest.mark.parametrize("mark", MARKS)
def test_everything_that_can_be_picked_says_something(opened: Opened, mark: str) -> None:
    session, panel = opened()
    session.pick(mark)
    title, items = picked_lines(session)
    assert title
    assert items
    assert panel.picked_title.text() == title


STANDING_MARKS = [
    "end/0",
    "end/0/cut/0",
    "end/0/rail/1",
    "end/0/seam/0",
    "end/1",
    "side/1",
    "side/1/hip",
    "roof",
    "frame",
]


@pytest.mark.parametrize("mark", STANDING_MARKS)
def test_everything_of_a_standing_frame_says_something(opened: Opened, mark: str) -> None:
    session, panel = opened(standing_farm())
    session.pick(mark)
    title, items = picked_lines(session)
    assert items
    assert panel.picked_title.text() == title != ""


@pytest.mark.parametrize("mark", ["side/0/split/7", "piece/none", "cell/x", "jumper/99", "odd"])
def test_what_is_no_longer_there_is_not_picked(opened: Opened, mark: str) -> None:
    session, panel = opened()
    session.pick(mark)
    assert panel.picked_title.text().startswith("Nothing is picked")


def test_tab_goes_down_the_panel(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened(small_farm(tunnel()))
    buttons = [b for b in panel.groups[4].form.stops if b.accessibleName() == "Sides: Add a split"]
    qtbot.keyClick(buttons[0], Qt.Key.Key_Space)
    assert session.tunnel.sides[0].splits
    wanted = [s for g in panel.groups for s in (g.header, *g.form.stops) if s.isVisible()]
    at: QWidget = panel.groups[0].header
    met = [at]
    while met[-1] is not wanted[-1]:
        at = at.nextInFocusChain()
        if at in wanted:
            met.append(at)
        assert at is not wanted[0], "the chain went round"
    assert met == wanted


def test_drag_is_shown_when_it_ends(qtbot: QtBot, opened: Opened) -> None:
    session, panel = opened()
    session.pick("side/0/split/0")
    line = line_named(panel, "Picked: split 1, from the front")
    session.begin()
    path = ("sides", 0, "splits", 0, "at_m")
    entry = Entry("tunnel", path, type(session.tunnel.sides[0].splits[0]), "at_m")
    moved = with_entered(entry, session.farm, 0, 10.5).tunnels[0]
    session.preview(moved)
    qtbot.waitUntil(lambda: line.text() == "10.500 m")
    session.commit("Move split")
    assert line.text() == "10.500 m"
    session.stack.undo()
    assert line.text() == "12.000 m"


@pytest.mark.parametrize("farm", [small_farm(double_tunnel()), standing_farm()])
def test_every_line_has_a_label_a_value_and_words(opened: Opened, farm: Farm) -> None:
    session, _panel = opened(farm)
    for _title, items in GROUPS:
        for item in items(session):
            if isinstance(item, Entry | Special):
                assert label_of(item)
                value_of(item, session.farm, session.tunnel)


def test_an_act_that_cannot_be_done_says_why() -> None:
    assert "add split" in ACTS
    with pytest.raises(ValueError, match="inside the opening"):
        with_act(Act("add split", (0, 1.0), "Add"), tunnel())  # type: ignore[arg-type]


def test_limits_of_a_number_come_from_its_class() -> None:
    boards = tunnel().frame.boards[0]
    (entry,) = entries("tunnel", ("frame", "boards", 0), boards, "baseboard_height_m")
    limits = limits_of(entry, tunnel())
    assert (limits.low, limits.high) == (0.0, 5.0)
