"""Rigid sheets and screws, channel at seams and round openings of end walls, counted by hand."""

import math

import pytest

from hoopwright.farm import Cut, Door, RigidSheet, RoundBow, Tunnel
from hoopwright.quantity.working import explain
from hoopwright.takeoff.end_parts import count_rigid
from samples import tunnel
from takeoff.counted import count, places, site, total

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
SHEET = RigidSheet(part="rigid_sheet", cover_width_m=2.0, sheet_height_m=3.0, lap_m=0.1)
DOOR = Door(width_m=2.4, height_m=2.1)
VENT = Cut(left_m=-0.3, sill_m=2.6, width_m=0.6, height_m=0.5)


def walled(**changes: object) -> Tunnel:
    """Return a tunnel whose back end is a half circle of 4 m, changed; the front has no film."""
    plain = tunnel(HALF_CIRCLE)
    front, back = plain.ends
    frame = plain.frame.but(tube_diameter_m=0.0)
    return plain.but(frame=frame, ends=(front.but(film=None), back.but(**changes)))


def test_rigid_sheets_and_their_screws() -> None:
    made = walled(film=None, rigid=SHEET, doors=(DOOR,), cuts=(VENT,), rails_m=(2.4,))
    needs = tuple(count_rigid(site(made)))
    # Sheets as worked in the test of the columns: 6 of 2 by 3 m.
    assert total(needs, "rigid_sheet", "end/1") == 6
    # Lines at 0.3048 m: bow 4 pi = 12.566 m, foot 8 - 2.4 = 5.6 m, rail 6.4 m, door 2 x 2.1 + 2.4
    # = 6.6 m, vent 2 x (0.6 + 0.5) = 2.2 m, each rounded up and one more.
    lines = (4 * math.pi, 5.6, 6.4, 6.6, 2.2)
    assert total(needs, "rigid_screw") == sum(math.ceil(x / 0.3048) + 1 for x in lines)
    told = next(n.working for n in needs if n.part == "rigid_screw")
    assert "round vent 1 2.2" in explain(told, "metric")


def test_a_rigid_wall_has_no_channel_of_its_own() -> None:
    needs = count(walled(film=None, rigid=SHEET, doors=(DOOR,), seams_m=(2.4,)))
    assert not [n for n in needs if n.part == "channel" and n.marks[0].startswith("end/1/")]
    assert total(needs, "rigid_sheet") == 6


def test_openings_in_film_are_framed_in_channel() -> None:
    # Door 2 x 2.1 + 2.4 = 6.6 m, vent 2.2 m all round; at 0.4572 m 15 + 1 and 5 + 1 screws.
    needs = count(walled(doors=(DOOR,), cuts=(VENT, VENT.but(kind="fan", sill_m=1.0))))
    for part in ("channel", "spring_wire"):
        assert total(needs, part, "end/1/door/0") == pytest.approx(6.6)
        assert total(needs, part, "end/1/cut/0") == pytest.approx(2.2)
    assert total(needs, "channel_screw_wood", "end/1/door/0") == 16
    assert total(needs, "channel_screw_wood", "end/1/cut/1") == 6
    assert ("Back end: fan frame", 2.2) in places(needs, "channel")


def test_a_seam_of_an_end_wall_has_one_run_over_both_sheets() -> None:
    # At 1.5 m 2 sqrt(16 - 2.25) = 7.4162 m, less the door's 2.4 m; none above the ridge.
    needs = count(walled(doors=(DOOR,), rails_m=(1.5,), seams_m=(1.5, 4.5)))
    assert total(needs, "channel", "end/1/seam/0") == pytest.approx(5.0162, abs=1e-4)
    assert total(needs, "spring_wire", "end/1/seam/0") == pytest.approx(5.0162, abs=1e-4)
    assert total(needs, "channel_screw_wood", "end/1/seam/0") == 12
    assert total(needs, "channel", "end/1/seam/1") == 0
