"""Length of an arc over a chord, and what the outer layer needs more."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from hoopwright.cover.bulge import arc_over_chord, bulge_extra


@given(st.floats(0.3, 15.0), st.floats(0.01, 0.49))
def test_arc_agrees_with_integration(chord_m: float, share: float) -> None:
    rise_m = share * chord_m
    radius_m = chord_m**2 / (8 * rise_m) + rise_m / 2
    half_m = chord_m / 2
    # With x = r sin(a) the length is r times the integral of 1 over the angle between the ends.
    over_m = quad(
        lambda u: half_m / math.sqrt(1 - (half_m * u / radius_m) ** 2), -1, 1, epsabs=1e-12
    )[0]
    assert arc_over_chord(chord_m, rise_m) == pytest.approx(over_m, rel=1e-6)


def test_known_arcs() -> None:
    assert arc_over_chord(2.0, 1.0) == pytest.approx(math.pi)
    assert arc_over_chord(2.0, 0.0) == arc_over_chord(2.0, 5e-324) == 2.0
    # Three quarters of a circle of radius 1: chord sqrt 2, rise 1 + 1/sqrt 2.
    assert arc_over_chord(math.sqrt(2), 1 + math.sqrt(0.5)) == pytest.approx(1.5 * math.pi)


def test_shallow_arch_follows_the_series() -> None:
    # arc = c + 8 h2 / 3c for a shallow arc, so the extra of a small gap is 16 f g / 3c.
    assert bulge_extra(10.0, 0.2, 0.001) == pytest.approx(16 * 0.2 * 0.001 / 30, rel=0.01)
    assert bulge_extra(10.0, 0.0, 0.2) == pytest.approx(8 * 0.2**2 / 30, rel=0.01)


def test_no_gap_needs_nothing_more() -> None:
    assert bulge_extra(9.0, 3.0, 0.0) == 0.0


@given(st.floats(0.3, 15.0), st.floats(0.0, 5.0), st.floats(0.01, 1.0), st.floats(0.1, 10.0))
def test_extra_is_a_length(chord_m: float, rise_m: float, gap_m: float, scale: float) -> None:
    extra_m = bulge_extra(chord_m, rise_m, gap_m)
    grown_m = bulge_extra(scale * chord_m, scale * rise_m, scale * gap_m)
    assert extra_m > 0
    assert grown_m == pytest.approx(scale * extra_m, rel=1e-6)
