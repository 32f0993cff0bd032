"""What a frame may be: sizes that cannot exist are refused with the field and the mend."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.farm import EvenBows, GothicBow, ListedBows, RoundBow, SideBoards, StraightRafters
from hoopwright.farm.entered import describe
from hoopwright.farm.frame import bow_positions
from hoopwright.farm.profile import ridge_height
from samples import tunnel

BAD_NUMBERS = (0.0, -1.0, 1e9, math.nan, math.inf, -math.inf)


@pytest.mark.parametrize("bad", BAD_NUMBERS)
def test_span_that_is_no_size_is_refused_by_name(bad: float) -> None:
    with pytest.raises(ValueError, match="span_m: span"):
        RoundBow(span_m=bad, leg_height_m=1.0, peak_height_m=3.0)


@pytest.mark.parametrize("bad", ["9.1", None, True, [9.1]])
def test_span_that_is_no_number_is_refused(bad: object) -> None:
    with pytest.raises((ValueError, TypeError)):
        RoundBow(span_m=bad, leg_height_m=1.0, peak_height_m=3.0)  # type: ignore[arg-type]


def test_peak_below_the_leg_is_refused() -> None:
    with pytest.raises(ValueError, match=r"peak_height_m.*raise the peak"):
        RoundBow(span_m=8.0, leg_height_m=3.0, peak_height_m=2.0)


def test_low_gothic_without_radius_is_told_the_least_radius() -> None:
    # Half span 4, rise 2.9: chord^2 = 16 + 8.41 = 24.41; level at the ridge: 24.41 / 5.8 = 4.209.
    with pytest.raises(ValueError, match=r"arc_radius_m.*4\.209 m or more"):
        GothicBow(span_m=8.0, leg_height_m=1.5, peak_height_m=4.4)
    with pytest.raises(ValueError, match="would dip"):
        GothicBow(span_m=8.0, leg_height_m=1.5, peak_height_m=4.4, arc_radius_m=4.2)
    assert GothicBow(span_m=8.0, leg_height_m=1.5, peak_height_m=4.4, arc_radius_m=4.21)


def test_bend_longer_than_the_leg_is_refused() -> None:
    with pytest.raises(ValueError, match=r"corner_radius_m.*longer than the leg"):
        StraightRafters(span_m=8.0, leg_height_m=1.0, peak_height_m=2.0, corner_radius_m=5.0)
    with pytest.raises(ValueError, match="ridge_radius_m"):
        StraightRafters(span_m=4.0, leg_height_m=3.0, peak_height_m=6.0, ridge_radius_m=3.0)


def test_ridge_bend_lowers_the_ridge() -> None:
    # Pitch 45 degrees, radius 1: top lies 1 x (sqrt(2) - 1) under the meeting point.
    profile = StraightRafters(span_m=4.0, leg_height_m=2.0, peak_height_m=4.0, ridge_radius_m=1.0)
    assert ridge_height(profile) == pytest.approx(4.0 - (math.sqrt(2) - 1))


def test_hip_board_above_the_ridge_is_refused() -> None:
    boards = SideBoards(hip_height_m=3.8, baseboard_height_m=0.3)
    with pytest.raises(ValueError, match=r"hip_height_m.*below the ridge"):
        tunnel().frame.but(boards=(boards, boards))


def test_hip_board_below_the_baseboard_is_refused() -> None:
    with pytest.raises(ValueError, match=r"hip_height_m.*above the baseboard"):
        SideBoards(hip_height_m=0.3, baseboard_height_m=0.3)


def test_bows_are_one_more_than_bays() -> None:
    # Rutgers high tunnel photo pages: 17 x 36 ft, bows 4 ft apart, 10 bows (20 ground posts).
    spots = bow_positions(EvenBows(count=10, spacing_m=4 * 0.3048))
    assert len(spots) - 1 == 9
    assert spots[-1] == pytest.approx(36 * 0.3048)


@pytest.mark.parametrize(
    ("spots", "words"),
    [
        ((0.0,), "from 2 to 1000"),
        ((0.5, 1.5), "must be 0"),
        ((0.0, 2.0, 1.5), "only grow"),
        ((0.0, math.nan), "must be a number"),
        ((0.0, 5000.0), "up to 1000"),
    ],
)
def test_listed_positions_that_do_not_run_are_refused(spots: tuple[float, ...], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        ListedBows(positions_m=spots)


@given(st.floats(allow_nan=True, allow_infinity=True))
def test_any_float_makes_a_tube_or_a_refusal(diameter_m: float) -> None:
    frame = tunnel().frame
    try:
        assert 0 <= frame.but(tube_diameter_m=diameter_m).tube_diameter_m <= 0.5
    except ValueError as refusal:
        assert "tube_diameter_m" in str(refusal)  # noqa: PT017 (either outcome is right)


def test_every_number_has_label_and_unit() -> None:
    fields = [f for f in describe(RoundBow) if f.low is not None]
    assert [(f.name, f.unit) for f in fields] == [
        ("span_m", "m"),
        ("leg_height_m", "m"),
        ("peak_height_m", "m"),
    ]
    assert all(f.label and "_" not in f.label for f in fields)
