"""End walls in the panel: what closes them, doors, openings, rails and seams.

The tunnel of these tests is 8 m wide at the feet, its legs stand upright to 1.5 m, and its ridge is
at 3.7 m.
"""

import math

import pytest
from pytestqt.qtbot import QtBot

from forms import (
    choose,
    figure_of,
    line_named,
    names_in,
    offers,
    open_panel,
    press,
    said_by,
    step_down,
    type_into,
)
from hoopwright.desktop.details_ends import CUT_LABELS, DOOR_LABELS
from hoopwright.farm import Cut, Door, Farm, RigidSheet, Tunnel
from hoopwright.farm.entered import describe
from samples import layers, small_catalogue, small_farm, tunnel

FRONT = "end/0"
DOOR = Door(width_m=1.2, height_m=2.0)


def with_front(**changes: object) -> Farm:
    """Return a farm with one tunnel whose front end is changed."""
    plain = tunnel()
    return small_farm(plain.but(ends=(plain.ends[0].but(**changes), plain.ends[1])))


def with_parts(made: Tunnel, *keys: str) -> Farm:
    """Return a farm whose catalogue has some parts for end walls besides."""
    catalogue = small_catalogue()
    like = catalogue.parts[0].but(group="End walls", counted_in="count")
    parts = (*catalogue.parts, *(like.but(key=key, name=key) for key in keys))
    return small_farm(made).but(catalogue=catalogue.but(parts=parts))


def test_every_field_of_an_opening_has_words() -> None:
    assert sorted(DOOR_LABELS) == sorted(known.name for known in describe(Door))
    assert sorted(CUT_LABELS) == sorted(known.name for known in describe(Cut))


def test_end_is_closed_with_rigid_sheets_left_open_and_undone(qtbot: QtBot) -> None:
    farm = with_parts(tunnel(), "rigid_sheet", "ribbed_sheet")
    session, panel = open_panel(qtbot, farm, mark=FRONT)
    choose(qtbot, panel, "Picked: closed with", "rigid sheets")
    assert session.tunnel.ends[0].film is None
    assert offers(panel, "Picked: rigid sheet") == ["rigid_sheet", "ribbed_sheet"]
    choose(qtbot, panel, "Picked: rigid sheet", "ribbed_sheet")
    type_into(qtbot, line_named(panel, "Picked: height of a sheet"), "2.5")
    assert session.tunnel.ends[0].rigid == RigidSheet(part="ribbed_sheet", sheet_height_m=2.5)
    type_into(qtbot, line_named(panel, "Picked: lap of rigid sheets"), "0.95")
    type_into(qtbot, line_named(panel, "Picked: height of a sheet"), "0.9")
    assert "The lap must be less than the height of a sheet" in said_by(panel)
    assert session.stack.count() == 4
    for _step in range(4):
        session.stack.undo()
    assert session.farm == farm
    choose(qtbot, panel, "Picked: closed with", "nothing, it stays open")
    assert (session.tunnel.ends[0].film, session.tunnel.ends[0].rigid) == (None, None)


def test_catalogue_without_rigid_sheets_is_told_at_the_field(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, small_farm(), mark=FRONT)
    assert step_down(qtbot, panel, "Picked: closed with") == "film"
    assert "add a rigid sheet to its parts first" in said_by(panel)
    assert session.stack.count() == 0


def test_door_is_added_spread_placed_and_spread_again(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, small_farm(), mark=FRONT)
    press(qtbot, panel, "Picked: Add a door")
    left = line_named(panel, "Picked: door 1, left edge from the middle")
    assert left.placeholderText() == "spread evenly"
    # One door of 1.2 m stands in the middle, so its left edge is 0.6 m left of it.
    assert "-0.600 m" in said_by(panel)
    type_into(qtbot, left, "-1.25 m")
    assert session.tunnel.ends[0].doors == (DOOR.but(left_m=-1.25),)
    assert "-0.600 m" not in said_by(panel)
    type_into(qtbot, line_named(panel, "Picked: door 1, left edge from the middle"), "")
    assert session.tunnel.ends[0].doors == (DOOR,)
    press(qtbot, panel, "Picked: Remove door 1")
    assert session.tunnel.ends[0].doors == ()


def test_door_that_would_meet_the_bow_is_refused(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, with_front(doors=(DOOR,)), mark="end/0/door/0")
    assert panel.picked_title.text() == "Front end, door 1: 1.200 m × 2.000 m"
    type_into(qtbot, line_named(panel, "Picked: door 1, left edge from the middle"), "2.5")
    # A circle over 8 m that rises 2.2 m: R = (16 + 2.2²) / 4.4, its middle R below the ridge.
    radius_m = (16 + 2.2**2) / 4.4
    half_m = math.sqrt(radius_m**2 - (2.0 - (3.7 - radius_m)) ** 2)
    assert f"Enter from {-half_m:.3f} m to {half_m - 1.2:.3f} m." in said_by(panel)
    assert session.stack.count() == 0


def test_picked_door_is_one_door(qtbot: QtBot) -> None:
    farm = with_front(doors=(DOOR, DOOR.but(width_m=0.9)))
    session, panel = open_panel(qtbot, farm, mark="end/0/door/1")
    type_into(qtbot, line_named(panel, "Picked: door 2, width"), "1 m")
    assert [door.width_m for door in session.tunnel.ends[0].doors] == [1.2, 1.0]
    press(qtbot, panel, "Picked: Remove door 2")
    assert session.tunnel.ends[0].doors == (DOOR,)
    assert panel.picked_title.text().startswith("Nothing is picked")


def test_vents_and_fans_come_change_and_go(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, small_farm(), mark=FRONT)
    press(qtbot, panel, "Picked: Add a vent")
    press(qtbot, panel, "Picked: Add a fan opening")
    assert [cut.kind for cut in session.tunnel.ends[0].cuts] == ["vent", "fan"]
    session.pick("end/0/cut/1")
    assert panel.picked_title.text().startswith("Front end, opening 2")
    type_into(qtbot, line_named(panel, "Picked: opening 2, sill above the ground"), "1.1")
    type_into(qtbot, line_named(panel, "Picked: opening 2, left edge from the middle"), "-2")
    type_into(qtbot, line_named(panel, "Picked: opening 2, width"), "0.5")
    choose(qtbot, panel, "Picked: opening 2 for", "a vent")
    fan = session.tunnel.ends[0].cuts[1]
    assert (fan.kind, fan.sill_m, fan.left_m, fan.width_m) == ("vent", 1.1, -2.0, 0.5)
    type_into(qtbot, line_named(panel, "Picked: opening 2, sill above the ground"), "9")
    assert "Enter from 0.000 m to" in said_by(panel)
    press(qtbot, panel, "Picked: Remove opening 2")
    assert len(session.tunnel.ends[0].cuts) == 1


def test_seam_lies_on_a_rail_and_goes_with_it(qtbot: QtBot) -> None:
    farm = with_front(rails_m=(1.0, 2.0, 3.0), seams_m=(2.0,))
    session, panel = open_panel(qtbot, farm, mark=FRONT)
    name = "Picked: seam 1 lies"
    assert offers(panel, name) == [
        "on rail 1, 1.000 m",
        "on rail 2, 2.000 m",
        "on rail 3, 3.000 m",
    ]
    type_into(qtbot, line_named(panel, "Picked: rail 2, height"), "2.2")
    assert (session.tunnel.ends[0].rails_m, session.tunnel.ends[0].seams_m) == (
        (1.0, 2.2, 3.0),
        (2.2,),
    )
    choose(qtbot, panel, name, "on rail 1, 1.000 m")
    assert session.tunnel.ends[0].seams_m == (1.0,)
    press(qtbot, panel, "Picked: Add a seam")
    # Of the two free rails the one at 2.2 m is nearer to 2.35 m, half way from 1.0 to the ridge.
    assert session.tunnel.ends[0].seams_m == (1.0, 2.2)
    press(qtbot, panel, "Picked: Remove seam 1")
    press(qtbot, panel, "Picked: Remove rail 2")
    assert session.tunnel.ends[0].seams_m == (2.2,)
    # Its rail is gone, and the seam says so.
    assert offers(panel, name)[0] == "2.200 m, on no rail"


def test_rail_past_its_neighbour_is_refused(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, with_front(rails_m=(1.0, 2.0)), mark="end/0/rail/0")
    assert panel.picked_title.text() == "Front end, rail 1 at 1.000 m"
    type_into(qtbot, line_named(panel, "Picked: rail 1, height"), "2.1")
    # 0.1 m stays to the ground and to the neighbour.
    assert "Enter from 0.100 m to 1.900 m." in said_by(panel)
    assert session.stack.count() == 0


def test_open_end_asks_for_no_seams(qtbot: QtBot) -> None:
    plain = tunnel()
    ends = (plain.ends[0].but(film=None), plain.ends[1].but(film=layers(2)))
    _session, panel = open_panel(qtbot, small_farm(plain.but(ends=ends)), "Ends")
    names = names_in(panel, "Ends")
    assert names.count("Ends: Add a rail") == 2
    assert names.count("Ends: Add a seam") == 1
    assert names.count("Ends: outer film") == 1


@pytest.mark.parametrize("mark", ["end/0/door/4", "end/0/cut/0", "end/0/rail/0", "end/1/seam/3"])
def test_what_is_no_longer_in_the_wall_is_not_picked(qtbot: QtBot, mark: str) -> None:
    _session, panel = open_panel(qtbot, small_farm(), mark=mark)
    assert panel.picked_title.text().startswith("Nothing is picked")


def test_areas_of_the_wall_are_told(qtbot: QtBot) -> None:
    session, panel = open_panel(qtbot, with_front(doors=(DOOR,)), mark=FRONT)
    # 1.2 m by 2.0 m.
    assert figure_of(panel, "doors and openings") == "2.4 m²"
    gross_m2 = session.tunnel_plan.chosen.cover.ends[0].gross_m2
    assert figure_of(panel, "left to close") == f"{gross_m2 - 2.4:.1f} m²"


def test_opening_without_room_says_so(qtbot: QtBot) -> None:
    cut = Cut(left_m=3.5, sill_m=2.0)
    farm = with_front(doors=(DOOR.but(left_m=0.0), DOOR.but(left_m=0.5)), cuts=(cut,))
    session, panel = open_panel(qtbot, farm, mark="end/0/cut/0")
    # At 2 m the bow reaches 3.64 m from the middle.
    assert "It does not lie inside the bow." in said_by(panel)
    session.pick("end/0/door/1")
    assert "It meets another door or opening." in said_by(panel)
    session.pick("end/0/door/0")
    assert "It does not lie" not in said_by(panel)


def test_rigid_sheets_are_counted(qtbot: QtBot) -> None:
    plain = tunnel()
    rigid = RigidSheet(part="sheet", cover_width_m=1.0, sheet_height_m=4.0)
    ends = (plain.ends[0].but(film=None, rigid=rigid), plain.ends[1])
    farm = with_parts(plain, "sheet")
    _session, panel = open_panel(qtbot, farm.but(tunnels=(plain.but(ends=ends),)), mark=FRONT)
    # 8 m and the tube of 48 mm take nine columns of 1 m, none higher than a sheet of 4 m.
    assert figure_of(panel, "rigid sheets") == "9"
