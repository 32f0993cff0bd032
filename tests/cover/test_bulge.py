"""What the outer layer needs more, so that air can lift it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoopwright.cover.bulge import bulge_extra


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
