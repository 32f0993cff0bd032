"""A stretch of a side: the bows it spans, and the greatest drop, side and gap along it."""

import pytest

from hoopwright.cover.stretch import (
    greatest_drop,
    greatest_gap,
    greatest_side,
    opening_ends,
    spanned_bows,
)
from hoopwright.farm import BowReading, SideReading, Tape
from hoopwright.survey import Survey, survey_frame
from samples import side, tunnel

BOWS_M = (0.0, 1.5, 3.0, 4.5, 6.0)
WHOLE = (0.0, 24.0)


def survey_of(**read_m: dict[int, float]) -> Survey:
    """Return the small tunnel, its bows 1.5 m apart, with heights of one kind on its first side."""
    ((field, heights_m),) = read_m.items()
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(**{field: y}), SideReading()))
        for bow, y in heights_m.items()
    )
    return survey_frame(tunnel().frame.but(tape=Tape(bows=rows)))


@pytest.mark.parametrize(
    ("stretch", "bows"),
    [
        ((1.5, 4.5), [1, 2, 3]),
        ((1.6, 4.4), [1, 2, 3]),
        ((1.4, 4.6), [0, 1, 2, 3, 4]),
        ((3.0, 3.0), [2]),
        ((0.0, 6.0), [0, 1, 2, 3, 4]),
        ((-0.3, 6.3), [0, 1, 2, 3, 4]),
    ],
)
def test_a_stretch_spans_the_bows_that_hold_it(
    stretch: tuple[float, float], bows: list[int]
) -> None:
    assert list(spanned_bows(BOWS_M, stretch)) == bows


def test_opening_lies_between_the_pockets() -> None:
    assert opening_ends(side(pocket_bays=(1, 2)), BOWS_M) == (1.5, 3.0)


def test_drop_is_longest_under_the_highest_hip_of_the_stretch() -> None:
    # On a plumb leg: hips at 1.3 m at the front, 1.5 m at bow 9 (12 m), 1.4 m at the back.
    survey = survey_of(hip_m={1: 1.3, 9: 1.5, 17: 1.4})
    assert greatest_drop(survey, 0, 0.25, WHOLE) == (pytest.approx(1.25), 9)
    # Half way to bow 9 the hip runs at 1.4 m: bow 5.
    assert greatest_drop(survey, 0, 0.25, (0.0, 6.0)) == (pytest.approx(1.15), 5)
    # Nothing was read on the other side: no bow is named.
    assert greatest_drop(survey, 1, 0.25, WHOLE) == (pytest.approx(1.25), None)


def test_side_is_longest_where_the_baseboard_is_lowest() -> None:
    survey = survey_of(baseboard_m={1: 0.3, 17: 0.1})
    assert greatest_side(survey, 0, WHOLE) == (pytest.approx(1.4), 17)
    assert greatest_side(survey, 0, (0.0, 12.0)) == (pytest.approx(1.3), 9)


def test_gap_is_deepest_over_the_lowest_ground_and_never_below_nothing() -> None:
    survey = survey_of(ground_m={1: 0.4, 17: -0.2})
    ground = survey.taped.lines[0].ground
    assert greatest_gap(survey, 0.25, ground, WHOLE) == (pytest.approx(0.45), 17)
    assert greatest_gap(survey, 0.25, ground, (0.0, 1.5)) == (0.0, 1)


def test_name_has_its_bow_only_where_something_was_read() -> None:
    survey = survey_of(hip_m={1: 1.3})
    assert greatest_drop(survey, 0, 0.25, WHOLE).named("drop") == "drop, bow 1"
    assert greatest_drop(survey, 1, 0.25, WHOLE).named("drop") == "drop"
