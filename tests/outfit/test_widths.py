"""Widths side by side, counted by hand."""

import pytest

from hoopwright.outfit.widths import count_widths


@pytest.mark.parametrize(
    ("size_m", "width_m", "lap_m", "widths"),
    # Two widths of 2 m with a lap of 0.5 m cover 3.5 m, three 5 m.
    [(1.0, 2.0, 0.5, 1), (2.0, 2.0, 0.5, 1), (2.1, 2.0, 0.5, 2), (3.5, 2.0, 0.5, 2),
     (3.6, 2.0, 0.5, 3), (5.0, 2.0, 0.5, 3), (0.3, 2.0, 0.5, 1), (0.9, 0.3, 0.0, 3)],
)  # fmt: skip
def test_widths_cover_the_size_with_their_laps(
    size_m: float, width_m: float, lap_m: float, widths: int
) -> None:
    assert count_widths(size_m, width_m, lap_m) == widths
