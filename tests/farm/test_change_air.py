"""Jumpers placed by hand and readings: what an edit changes and what it keeps."""

import pytest

from hoopwright.farm import AirReading, PlacedJumper
from hoopwright.farm.change_air import (
    add_jumper,
    add_reading,
    move_jumper,
    remove_jumper,
    remove_reading,
    with_jumpers,
)
from samples import double_tunnel

WEST = PlacedJumper(surface="first_side", at_m=3.0)
EAST = PlacedJumper(surface="second_side", at_m=9.0)


def test_a_jumper_is_added_moved_and_taken_away() -> None:
    # The tunnel is 16 bays of 1.5 m long: 24 m.
    placed = add_jumper(double_tunnel(), (WEST,), "second_side", 99.0)
    assert [j.at_m for j in placed.air.jumpers or ()] == [3.0, 24.0]
    moved = move_jumper(placed, (WEST, EAST), 1, -2.0)
    assert [j.at_m for j in moved.air.jumpers or ()] == [3.0, 0.0]
    assert remove_jumper(moved, (WEST, EAST), 0).air.jumpers == (EAST,)
    assert with_jumpers(moved, None).air.jumpers is None


def test_readings_stand_by_their_date() -> None:
    late = AirReading(taken_on="2026-05-02", cell="cell/roof/0", pressure_pa=40.0)
    early = late.but(taken_on="2025-11-20", baseline=True)
    told = add_reading(add_reading(double_tunnel(), late), early)
    assert [r.taken_on for r in told.air.readings] == ["2025-11-20", "2026-05-02"]
    assert remove_reading(told, 0).air.readings == (late,)


def test_what_is_no_date_is_refused_with_its_field() -> None:
    with pytest.raises(ValueError, match="taken_on: write the date as year-month-day"):
        AirReading(taken_on="last May", cell="cell/roof/0", pressure_pa=40.0)


def test_a_window_of_pressures_upside_down_is_refused() -> None:
    air = double_tunnel().air
    with pytest.raises(ValueError, match="high_pa"):
        air.but(low_pa=60.0, high_pa=50.0)
