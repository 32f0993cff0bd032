"""Skew, lean and dip against corners placed by hand and rectangles of another library."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from shapely import MultiPoint

from hoopwright.farm import BowReading, Tape
from hoopwright.survey.bent import deepest_dip, dip_cost, find_skew, lean_costs


def tape_of(first_m: float, second_m: float, width_m: float, ahead_m: float) -> Tape:
    """Return what a tape finds on a frame whose second side starts some way behind the first."""
    return Tape(
        base_lengths_m=(first_m, second_m),
        diagonals_m=(
            math.hypot(ahead_m + second_m, width_m),
            math.hypot(first_m - ahead_m, width_m),
        ),
    )


@given(st.floats(10.0, 60.0), st.floats(-1.0, 1.0), st.floats(4.0, 12.0), st.floats(-1.5, 1.5))
def test_square_sheet_reaches_all_four_corners(
    first_m: float, more_m: float, width_m: float, ahead_m: float
) -> None:
    second_m = first_m + more_m
    skew = find_skew(tape_of(first_m, second_m, width_m, ahead_m), first_m)
    assert skew is not None
    corners = MultiPoint([(0, 0), (first_m, 0), (ahead_m, width_m), (ahead_m + second_m, width_m)])
    left, _, right, _ = corners.bounds
    assert skew.cost_m == pytest.approx(right - left - max(first_m, second_m), abs=1e-6)
    # Ahead at the front and at the back, on the average.
    assert skew.offset_m == pytest.approx(ahead_m + more_m / 2, abs=1e-6)


def test_skew_of_equal_sides_by_hand() -> None:
    # d1 = 31.2, d2 = 31.0 m, l = 30 m: (973.44 - 961) / 120 = 0.10367 m, all of it on the length.
    skew = find_skew(Tape(diagonals_m=(31.2, 31.0)), 30.0)
    assert skew is not None
    assert (skew.offset_m, skew.cost_m) == pytest.approx((0.103667, 0.103667), abs=1e-6)
    turned = find_skew(Tape(diagonals_m=(31.0, 31.2)), 30.0)
    assert turned is not None
    assert (turned.offset_m, turned.cost_m) == pytest.approx((-0.103667, 0.103667), abs=1e-6)


def test_lengths_of_one_line_go_before_a_mixture() -> None:
    tape = Tape(base_lengths_m=(30.0, None), hip_lengths_m=(30.1, 30.2), diagonals_m=(31.2, 31.0))
    skew = find_skew(tape, 30.2)
    assert skew is not None
    assert skew.sides_m == (30.1, 30.2)


def test_one_diagonal_tells_nothing() -> None:
    assert find_skew(Tape(diagonals_m=(31.2, None)), 30.0) is None


def test_only_a_lean_outward_costs() -> None:
    assert lean_costs(Tape(leans_m=(0.05, -0.02))) == (0.05, 0.0)
    assert lean_costs(Tape(leans_m=(None, 0.03))) == (0.0, 0.03)


def test_deepest_dip_is_the_greatest_below_the_string() -> None:
    dips = (None, 0.02, 0.06, -0.03)
    rows = tuple(BowReading(bow=n, over_hips_m=9.0, dip_m=d) for n, d in enumerate(dips, start=1))
    assert deepest_dip(Tape(bows=rows)) == 0.06
    assert deepest_dip(Tape(bows=(BowReading(bow=1, dip_m=-0.03),))) == 0.0
    assert deepest_dip(Tape()) == 0.0


def arc(chord_m: float, rise_m: float) -> float:
    """Return the length of a circle arc by integration."""
    radius_m = chord_m**2 / (8 * rise_m) + rise_m / 2
    return quad(lambda x: radius_m / math.sqrt(radius_m**2 - x**2), -chord_m / 2, chord_m / 2)[0]


def test_dip_costs_the_difference_of_two_arcs() -> None:
    assert dip_cost(8.0, 2.2, 0.1) == pytest.approx(arc(8.0, 2.2) - arc(8.0, 2.1), abs=1e-6)
    assert dip_cost(8.0, 2.2, 0.0) == 0.0
    # A ridge that has come down past its hips lies on the straight line.
    assert dip_cost(8.0, 0.1, 0.5) == pytest.approx(arc(8.0, 0.1) - 8.0, abs=1e-9)
