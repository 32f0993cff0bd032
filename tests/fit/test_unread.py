"""The longest of the bows nobody read: against frames drawn at random, Student and the handbook."""

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy import stats

from hoopwright.fit.unread import longer_unread

DRAWS = 400_000


def frames_that_are_longer(deviations: float, read: int, unread: int, seed: int) -> float:
    """Return in how many of many frames an unread bow is beyond the limit that the read ones set.

    This is what happens on a farm: all bows of a frame are of one bell curve that nobody knows,
    some are read, the limit is set from those, then the others are looked at.
    """
    drawn = np.random.default_rng(seed)
    beyond = 0
    for _ in range(8):
        bows = drawn.normal(9.4, 0.03, (DRAWS // 8, read + unread))
        taped, others = bows[:, :read], bows[:, read:]
        limit = taped.mean(axis=1) + deviations * taped.std(axis=1, ddof=1)
        beyond += int((others.max(axis=1) > limit).sum())
    return beyond / DRAWS


@pytest.mark.parametrize(
    ("deviations", "read", "unread"),
    [
        (1.5, 2, 20),
        (10.0, 2, 20),
        (3.0, 3, 19),
        (2.0, 5, 17),
        (4.0, 5, 17),
        (0.3, 5, 17),
        (-0.4, 5, 2),
        (-1.0, 3, 1),
        (3.0, 12, 10),
        (2.5, 21, 1),
    ],
)
def test_chance_is_as_often_right_as_it_says(deviations: float, read: int, unread: int) -> None:
    seen = frames_that_are_longer(deviations, read, unread, seed=20260 + read)
    said = longer_unread(deviations, read, unread)
    assert abs(seen - said) < 4 * math.sqrt(said * (1 - said) / DRAWS)


@pytest.mark.parametrize("read", [2, 3, 5, 10, 100, 900])
@pytest.mark.parametrize("deviations", [-3.0, -0.3, 0.0, 0.2, 0.49, 0.51, 1.0, 3.0, 8.0])
def test_one_further_bow_is_of_the_distribution_of_student(read: int, deviations: float) -> None:
    # Student (1908): (further - mean) / (s sqrt(1 + 1/n)) is of his distribution with n - 1; the
    # library's tail of it.
    expected = stats.t.sf(deviations / math.sqrt(1 + 1 / read), read - 1)
    assert longer_unread(deviations, read, 1) == pytest.approx(expected, rel=3e-4)


def test_many_readings_leave_the_bell_curve_itself() -> None:
    # With n far above k: 1 - Phi(a)^k, the handbook formula of the longest of k.
    expected = 1 - stats.norm.cdf(2.5) ** 4
    assert longer_unread(2.5, 4000, 4) == pytest.approx(expected, rel=5e-3)


def test_a_mean_of_zero_room_is_a_matter_of_order() -> None:
    # By symmetry a single further bow is above the mean of the others half the time.
    assert longer_unread(0.0, 7, 1) == pytest.approx(0.5, abs=1e-9)


def test_more_room_never_makes_it_likelier_and_more_bows_never_less_likely() -> None:
    rooms = [-6.0 + 0.13 * k for k in range(200)]
    chances = [longer_unread(room, 4, 18) for room in rooms]
    assert all(b <= a + 1e-6 for a, b in pairwise(chances))
    assert all(longer_unread(room, 4, 19) >= longer_unread(room, 4, 18) for room in rooms)


def test_no_unread_bow_and_no_limit_are_certain() -> None:
    assert longer_unread(-5.0, 3, 0) == 0.0
    assert longer_unread(math.inf, 3, 9) == 0.0
    assert longer_unread(-math.inf, 3, 9) == 1.0
