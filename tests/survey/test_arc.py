"""Length of an arc over its chord."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from hoopwright.survey.arc import arc_over_chord


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
