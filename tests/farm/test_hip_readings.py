"""Readings at the hip board move with the board."""

import math

import pytest

from hoopwright.farm import BowReading, SideReading, Tape, Tunnel
from hoopwright.farm.change import hip_range, move_hip
from hoopwright.survey import survey_frame
from samples import round_profile, tunnel


def standing() -> Tunnel:
    read = SideReading(hip_m=1.52, baseboard_m=0.3)
    rows = (
        BowReading(bow=1, over_hips_m=9.60, over_baseboards_m=12.1, sides=(read, SideReading())),
        BowReading(bow=9, over_hips_m=9.64, dip_m=0.02),
    )
    made = tunnel()
    return made.but(frame=made.frame.but(tape=Tape(bows=rows)))


def test_on_straight_legs_the_girth_changes_by_the_move() -> None:
    # Legs are straight up to 1.5 m, so 0.2 m down on each side is 0.4 m more over the ridge.
    rows = move_hip(standing(), (0, 1), 1.3).frame.tape.bows
    assert [row.over_hips_m for row in rows] == pytest.approx(
        [9.60 + 0.2 + 0.2, 9.64 + 0.4], abs=5e-3
    )
    assert rows[0].sides[0].hip_m == pytest.approx(1.32)
    assert rows[0].sides[1].hip_m is None
    assert rows[0].over_baseboards_m == 12.1
    assert (rows[1].dip_m, rows[0].sides[0].baseboard_m) == (0.02, 0.3)


def test_on_the_bend_the_girth_changes_by_the_arc() -> None:
    # By hand: R = (4^2 + 2.2^2) / 4.4, centre at 3.7 - R; arc between heights 1.5 and 2.0 m.
    bow = round_profile()
    radius_m = (4.0**2 + 2.2**2) / (2 * 2.2)
    centre_m = bow.peak_height_m - radius_m
    angles = [math.acos((y - centre_m) / radius_m) for y in (1.5, 2.0)]
    arc_m = radius_m * (angles[0] - angles[1])
    row = move_hip(standing(), (1,), 2.0).frame.tape.bows[1]
    assert row.over_hips_m == pytest.approx(9.64 - arc_m, abs=1e-3)


def test_there_and_back_is_where_it_was() -> None:
    made = standing()
    back = move_hip(move_hip(made, (0, 1), 1.9), (0, 1), 1.5)
    for row, was in zip(back.frame.tape.bows, made.frame.tape.bows, strict=True):
        assert row.over_hips_m == pytest.approx(was.over_hips_m, abs=1e-9)


def test_the_film_follows_the_board_that_is_dragged() -> None:
    made = standing()
    before = survey_frame(made.frame).roof_girth_m
    after = survey_frame(move_hip(made, (0, 1), 1.2).frame).roof_girth_m
    assert after - before == pytest.approx(0.6, abs=0.01)


def test_a_board_never_comes_below_the_baseboard_read_under_it() -> None:
    made = standing()
    low = SideReading(hip_m=1.52, baseboard_m=0.9)
    row = made.frame.tape.bows[0].but(sides=(low, SideReading()))
    made = made.but(frame=made.frame.but(tape=Tape(bows=(row,))))
    # The reading stands 0.02 m above the board, so the board stays at 0.9 - 0.02 + 0.1 m.
    assert hip_range(made, 0)[0] == pytest.approx(0.98)
    assert move_hip(made, (0,), 0.5).frame.boards[0].hip_height_m == pytest.approx(0.98)
