"""The chance that a roll is too narrow: against draws of another library and cases by hand."""

import math
from itertools import pairwise

import numpy as np
import pytest
from scipy import integrate

from hoopwright.fit.shortness import GAUSS, Girths, chance_short

DRAWS = 300_000
# Invented girths of five bows of a tunnel of 22, one of them long, m.
FIVE = (9.373, 9.385, 9.398, 9.366, 9.499)


def drawn_short(
    girths: Girths, fixed_m: float, stock_m: float, minus_share: float, seed: int
) -> float:
    """Return how often a drawn roll is too narrow for the longest of drawn bows."""
    drawn = np.random.default_rng(seed)
    read = np.array(girths.read_m)
    n, e = len(read), girths.error_m
    true = read + drawn.uniform(-e, e, (DRAWS, n))
    longest = true.max(axis=1)
    if girths.unread:
        variance = max(read.var(ddof=1) - e**2 / 3, e**2 / 3)
        # What n readings leave open: the deviation by chi-square, the mean by its own error.
        deviation = np.sqrt(variance * (n - 1) / drawn.chisquare(n - 1, DRAWS))
        middle = read.mean() + deviation / math.sqrt(n) * drawn.normal(size=DRAWS)
        others = drawn.normal(size=(DRAWS, girths.unread)).max(axis=1)
        longest = np.maximum(longest, middle + deviation * others)
    roll = stock_m * (1 - minus_share * drawn.uniform(0, 1, DRAWS))
    return float((longest + fixed_m > roll).mean())


@pytest.mark.parametrize(
    ("girths", "stock_m", "minus_share"),
    [
        (Girths(FIVE, 17, 0.006), 10.03, 0.0),
        (Girths(FIVE, 17, 0.006), 10.16, 0.02),
        (Girths(FIVE, 17, 0.006), 10.36, 0.02),
        (Girths(FIVE, 17, 0.006), 10.36, 0.05),
        (Girths(FIVE, 17, 0.05), 10.05, 0.01),
        (Girths((9.37, 9.38), 20, 0.006), 10.0, 0.01),
        (Girths((9.37, 9.37, 9.37), 4, 0.01), 9.85, 0.0),
        (Girths(FIVE, 0, 0.02), 9.96, 0.0),
        (Girths(FIVE, 0, 0.02), 10.0, 0.01),
        (Girths((9.37, 9.372, 9.374, 9.376, 9.378, 9.38) * 2, 0, 0.01), 9.86, 0.002),
    ],
)
def test_chance_is_what_draws_of_another_library_give(
    girths: Girths, stock_m: float, minus_share: float
) -> None:
    fixed_m = 0.457
    said = chance_short(girths, fixed_m, stock_m, minus_share)
    seen = drawn_short(girths, fixed_m, stock_m, minus_share, seed=11)
    assert 0.002 < said < 0.998
    assert abs(said - seen) < 4 * math.sqrt(said * (1 - said) / DRAWS)


def test_all_bows_read_leaves_the_tape_alone() -> None:
    girths = Girths((9.40, 9.50), 0, 0.02)
    # The longer bow is between 9.48 and 9.52; room for 9.51 is three quarters of the way.
    assert chance_short(girths, 0.5, 10.01, 0.0) == pytest.approx(0.25)
    assert chance_short(girths, 0.5, 9.97, 0.0) == 1.0
    assert chance_short(girths, 0.5, 10.02, 0.0) == pytest.approx(0.0, abs=1e-12)


def test_two_bows_alike_are_both_within() -> None:
    # Each is within with one half, both with one quarter.
    assert chance_short(Girths((9.5, 9.5), 0, 0.02), 0.5, 10.0, 0.0) == pytest.approx(0.75)


def test_an_exact_tape_leaves_the_roll_alone() -> None:
    girths = Girths((9.40, 9.50), 0, 0.0)
    # The need is 10.0. Rolls of 10.1 less up to 2 % are from 9.898 to 10.1: 0.102 of 0.202 are
    # too narrow.
    assert chance_short(girths, 0.5, 10.1, 0.02) == pytest.approx(0.102 / 0.202)
    # A roll of just the need fits when it may not be narrower, and never when it may.
    assert chance_short(girths, 0.5, 10.0, 0.0) == 0.0
    assert chance_short(girths, 0.5, 10.0, 0.02) == 1.0


def test_tape_and_roll_together_by_hand() -> None:
    girths = Girths((9.30, 9.50), 0, 0.05)
    # Room for the girth is anything from 9.45 to 9.55, the longer girth as well: half the time the
    # one is above the other.
    share = 0.1 / 10.05
    assert chance_short(girths, 0.5, 10.05, share) == pytest.approx(0.5)


def test_no_spread_and_an_exact_tape_make_every_bow_alike() -> None:
    girths = Girths((9.5, 9.5, 9.5), 30, 0.0)
    assert girths.deviation_m == 0.0
    assert chance_short(girths, 0.5, 10.0, 0.0) == 0.0
    assert chance_short(girths, 0.5, 9.999, 0.0) == 1.0


def test_deviation_has_the_tape_taken_out_and_never_less_than_the_tape() -> None:
    # 9.4 and 9.6: sample variance 0.02; an error up to 0.1 either way has 0.01 / 3.
    assert Girths((9.4, 9.6), 5, 0.1).deviation_m == pytest.approx(math.sqrt(0.02 - 0.01 / 3))
    # Readings alike to the millimetre with a tape of 30 mm: 30 / sqrt(3) mm.
    assert Girths((9.4, 9.4), 5, 0.03).deviation_m == pytest.approx(0.03 / math.sqrt(3))


def test_wider_rolls_are_never_worse_and_each_doubt_makes_it_worse() -> None:
    plain = Girths(FIVE, 17, 0.006)
    widths = [9.9 + 0.02 * k for k in range(60)]
    chances = [chance_short(plain, 0.457, width_m, 0.02) for width_m in widths]
    assert all(b <= a + 1e-6 for a, b in pairwise(chances))
    said = chance_short(plain, 0.457, 10.363, 0.01)
    assert chance_short(plain, 0.457, 10.363, 0.03) > said
    assert chance_short(plain, 0.467, 10.363, 0.01) > said
    assert chance_short(Girths(FIVE, 27, 0.006), 0.457, 10.363, 0.01) > said


def test_rule_of_eight_points_is_that_of_the_library() -> None:
    nodes, weights = np.polynomial.legendre.leggauss(8)
    assert [node for node, _ in GAUSS] == pytest.approx(list(nodes[4:]), abs=1e-15)
    assert [weight for _, weight in GAUSS] == pytest.approx(list(weights[4:]), abs=1e-15)


def test_sum_over_the_rolls_is_that_of_an_adaptive_rule() -> None:
    girths = Girths(FIVE, 17, 0.006)
    least_m, most_m = 10.363 * 0.95 - 0.457, 10.363 - 0.457
    marks = sorted({g + way * 0.006 for g in FIVE for way in (-1, 1)})
    summed, _ = integrate.quad(
        lambda limit_m: chance_short(girths, 0.0, limit_m, 0.0),
        least_m,
        most_m,
        points=[m for m in marks if least_m < m < most_m],
        limit=400,
    )
    expected = summed / (most_m - least_m)
    assert chance_short(girths, 0.457, 10.363, 0.05) == pytest.approx(expected, rel=1e-5)
