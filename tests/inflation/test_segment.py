"""Areas under arcs against numerical integration, half circles and shallow arcs."""

import math

import pytest
from scipy.integrate import quad

from hoopwright.inflation.segment import gap_area, segment_area


def _integrated(chord_m: float, rise_m: float) -> float:
    """Integrate the height of the arc over its chord, for arcs up to a half circle."""
    radius_m = (chord_m**2 / 4 + rise_m**2) / (2 * rise_m)
    half_m = chord_m / 2

    def height(across_m: float) -> float:
        return math.sqrt(radius_m**2 - across_m**2) - (radius_m - rise_m)

    return float(quad(height, -half_m, half_m)[0])


@pytest.mark.parametrize(("chord_m", "rise_m"), [(1.5, 0.1), (8.0, 2.2), (9.0, 4.2)])
def test_segment_is_the_integral_of_its_arc(chord_m: float, rise_m: float) -> None:
    assert segment_area(chord_m, rise_m) == pytest.approx(_integrated(chord_m, rise_m), rel=1e-6)


def test_arc_as_high_as_half_its_chord_is_a_half_circle() -> None:
    assert segment_area(4.0, 2.0) == pytest.approx(math.pi * 4 / 2)


def test_arc_higher_than_half_its_chord_is_a_circle_less_a_segment() -> None:
    # Chord 2, rise 1 + sqrt 2: radius sqrt 2, the missing segment has rise sqrt 2 - 1.
    rise_m = 1 + math.sqrt(2)
    missing_m2 = _integrated(2.0, math.sqrt(2) - 1)
    assert segment_area(2.0, rise_m) == pytest.approx(2 * math.pi - missing_m2)


def test_shallow_arc_holds_two_thirds_of_its_box() -> None:
    # The parabola of Archimedes.
    assert segment_area(10.0, 0.05) == pytest.approx(10.0 * 0.05 * 2 / 3, rel=1e-4)


def test_flat_film_holds_no_air() -> None:
    assert segment_area(3.0, 0.0) == 0.0
    assert gap_area(8.0, 2.0, 0.0) == 0.0


# Worked by hand: chord 1.5 m, rises 0.10 m out and 0.05 m in, length 30 m.
# 0.10: R = 2.8625 m, half angle 0.26518, R^2 (d - sin d cos d) = 0.10027 m2; 0.05: R = 5.650 m,
# half angle 0.13314, 0.05003 m2. Together 0.1504 m2 x 30 m = 4.512 m3.
def test_cell_bowed_both_ways_agrees_with_the_hand_sum() -> None:
    area_m2 = segment_area(1.5, 0.10) + segment_area(1.5, 0.05)
    assert 30 * area_m2 == pytest.approx(4.512, abs=5e-4)


def test_gap_between_two_arcs_is_the_integral_between_them() -> None:
    def between(across_m: float) -> float:
        heights = []
        for rise_m in (2.0, 2.15):
            radius_m = (16 + rise_m**2) / (2 * rise_m)
            heights.append(math.sqrt(radius_m**2 - across_m**2) - radius_m + rise_m)
        return heights[1] - heights[0]

    area_m2, _ = quad(between, -4, 4)
    assert gap_area(8.0, 2.0, 0.15) == pytest.approx(area_m2, rel=1e-6)


@pytest.mark.parametrize(("chord_m", "rise_m"), [(0.0, 0.1), (1.0, -0.1)])
def test_segment_refuses_what_cannot_be(chord_m: float, rise_m: float) -> None:
    with pytest.raises(ValueError, match="chord must be above zero"):
        segment_area(chord_m, rise_m)
