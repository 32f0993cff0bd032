"""The limit that sets the longest bar."""

import pytest

from hanging import FOOT_M, bar, crank, hung, round_tube, span
from hoopwright.curtain.cranking import work_curtain
from hoopwright.curtain.curtain import Bound, CurtainWork
from hoopwright.farm import Limits

RAIL = bar(round_tube(1.375, 0.058))


def _worked(limits: Limits, bar_max_m: float | None, drive_max_m: float | None) -> CurtainWork:
    roll_bar = RAIL.but(max_length_m=bar_max_m)
    return work_curtain(hung(span(60, 5), roll_bar, crank(12, max_length_m=drive_max_m), limits))


# Worked by hand: 40 N at a foot are 8.992 lbf x 12 in = 107.9 lbf in; a foot of bar takes 0.960 lbf
# x 0.7663 in = 0.736: 146.6 ft by hand. 100 ft hang behind by 0.0379 rad x 0.7663 in = 0.02904 in,
# growing with the square of the length: 1 mm, 0.03937 in, at 116.4 ft.
@pytest.mark.parametrize(
    ("trailing_m", "bar_max_m", "drive_max_m", "bound", "longest_ft"),
    [
        (0.05, None, None, "hand force", 146.6),
        (0.001, None, None, "trailing", 116.4),
        (0.001, 30.0, None, "maker of the bar", 30 / FOOT_M),
        (0.001, 30.0, 25.0, "maker of the drive", 25 / FOOT_M),
    ],
)
def test_least_of_all_limits_sets_the_longest_bar(
    trailing_m: float,
    bar_max_m: float | None,
    drive_max_m: float | None,
    bound: Bound,
    longest_ft: float,
) -> None:
    limits = Limits(
        hand_force_n=40.0, rubbing_share=0.0, uneven_winding_m=0.0, trailing_m=trailing_m
    )
    work = _worked(limits, bar_max_m, drive_max_m)
    assert work.bound_by == bound
    assert work.longest_m / FOOT_M == pytest.approx(longest_ft, rel=5e-3)
