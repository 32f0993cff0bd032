"""How many widths of a roll lie side by side over a size."""

import math

NOTHING = 1e-9


def count_widths(size_m: float, width_m: float, lap_m: float) -> int:
    """Return how many widths cover a size when each laps the one before.

    Args:
        size_m: Size to cover, m.
        width_m: Width of the roll, m.
        lap_m: What two widths lap, m, less than the width.

    Source:
        Count of fence posts: n widths have n - 1 laps, so n w - (n - 1) l covers the size.
    """
    return max(1, math.ceil((size_m - lap_m) / (width_m - lap_m) - NOTHING))
