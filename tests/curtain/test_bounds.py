"""The limits of a bar, at its end and in words."""

from typing import get_args

import pytest

from hoopwright.curtain import Bound
from hoopwright.curtain.bounds import REMEDY, end_bound, limit_words
from hoopwright.farm import Limits, Side, Split
from samples import side
from worked import curtains


def _cranked(end: str) -> Side:
    plain = side("West side")
    return plain.but(panels=(plain.panels[0].but(crank_end=end),))


def test_bar_cranked_in_the_middle_is_taken_as_cranked_at_an_end() -> None:
    twisting = Limits(trailing_m=0.015, hand_force_n=500.0)
    (middle, _), (front, _) = (
        curtains((_cranked(end), side("East side")), twisting) for end in ("middle", "front")
    )
    assert middle.longest_m > front.longest_m
    assert end_bound((middle,)) == (front.longest_m, front.bound_by)


def test_shortest_of_the_curtains_decides() -> None:
    works = curtains((side("West side", (Split(at_m=9.0),)), side("East side")))[:2]
    assert end_bound(works)[0] == min(work.longest_m for work in works)


@pytest.mark.parametrize(
    ("bound", "said"),
    [
        ("hand force", "your limit of hand force"),
        ("trailing", "your limit of trailing"),
        ("maker of the bar", "the maker of the bar"),
        ("maker of the drive", "the maker of the drive"),
    ],
)
def test_limits_have_words(bound: Bound, said: str) -> None:
    assert limit_words(bound) == said


def test_every_limit_has_a_remedy() -> None:
    assert set(REMEDY) == set(get_args(Bound))
    assert all(remedy.startswith("take ") for remedy in REMEDY.values())
