"""Heights along a side: read, straight between readings, level beyond, against numpy."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.farm import BowReading, Frame, ListedBows, SideReading, Tape, bow_positions
from hoopwright.survey.bow_curve import bow_curve
from hoopwright.survey.heights import along_side, position, side_line
from samples import tunnel

SPOTS = (0.0, 1.0, 2.5, 4.5, 5.0, 7.0)


def frame_of(read: dict[int, float], field: str = "ground_m") -> Frame:
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(**{field: y}), SideReading()))
        for bow, y in sorted(read.items())
    )
    return tunnel().frame.but(bows=ListedBows(positions_m=SPOTS), tape=Tape(bows=rows))


@given(st.dictionaries(st.integers(1, 6), st.floats(-0.5, 0.5), min_size=1))
def test_line_is_straight_between_readings_and_level_beyond(read: dict[int, float]) -> None:
    line = side_line(frame_of(read), SPOTS, 0).ground
    bows = sorted(read)
    true = np.interp(SPOTS, [SPOTS[bow - 1] for bow in bows], [read[bow] for bow in bows])
    assert line.heights_m == pytest.approx(true)
    assert [n + 1 for n, was_read in enumerate(line.read) if was_read] == bows


def test_what_was_not_read_lies_as_entered() -> None:
    line = side_line(frame_of({3: 0.1}), SPOTS, 0)
    assert line.hip.heights_m == (1.5,) * 6
    assert line.baseboard.heights_m == (0.3,) * 6
    assert not any((*line.hip.read, *line.baseboard.read))
    assert side_line(frame_of({3: 0.1}), SPOTS, 1).ground.heights_m == (0.0,) * 6


def test_hip_on_a_plumb_leg_moves_along_the_bow_as_it_rises() -> None:
    # Legs of 1.5 m: hips at 1.2 and 1.4 m lie 0.9 and 1.1 m above the baseboard at 0.3 m.
    frame = frame_of({1: 1.2, 6: 1.4}, "hip_m")
    curve = bow_curve(frame.profile, frame.tube_diameter_m)
    along = along_side(curve, side_line(frame, bow_positions(frame.bows), 0), 0)
    assert (along.hips_m[0], along.hips_m[-1]) == pytest.approx((1.2, 1.4))
    assert (along.sides_m[0], along.sides_m[-1]) == pytest.approx((0.9, 1.1))


def test_heights_that_cannot_be_leave_a_side_all_the_same() -> None:
    for field, height_m in (("hip_m", 19.0), ("baseboard_m", 2.0)):
        frame = frame_of({1: height_m}, field)
        curve = bow_curve(frame.profile, frame.tube_diameter_m)
        along = along_side(curve, side_line(frame, SPOTS, 0), 0)
        assert all(side_m > 0 for side_m in along.sides_m)
        assert all(hip_m < curve.ridge_m for hip_m in along.hips_m)


def test_below_the_ground_line_is_plumb_under_the_foot() -> None:
    curve = bow_curve(tunnel().frame.profile, 0.048)
    assert position(curve, -0.2, 0) == pytest.approx(-0.2)
    assert position(curve, -0.2, 1) == pytest.approx(curve.length_m + 0.2)
    assert position(curve, 1.0, 0) == pytest.approx(1.0)
