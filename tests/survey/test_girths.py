"""Spread of girths against the statistics of the standard library and the worked story."""

import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fit.fitted import BENT, bent_tunnel
from hoopwright.farm import BowReading, Tape
from hoopwright.quantity.units import FOOT_M, INCH_M
from hoopwright.survey import survey_frame
from hoopwright.survey.girths import girth_spread
from hoopwright.survey.heights import Along

ALONG = (
    Along((1.5,) * 30, (0.3,) * 30, (1.2,) * 30),
    Along((11.5,) * 30, (12.7,) * 30, (1.2,) * 30),
)


def tape_of(read_m: list[float]) -> Tape:
    rows = (BowReading(bow=n, over_hips_m=x) for n, x in enumerate(read_m, start=1))
    return Tape(bows=tuple(rows))


@given(st.lists(st.floats(8.0, 12.0), min_size=2, max_size=12))
def test_spread_is_that_of_the_sample(read_m: list[float]) -> None:
    spread = girth_spread(tape_of(read_m), "hips", ALONG)
    assert spread is not None
    assert spread.middle_m == pytest.approx(statistics.median(read_m))
    assert spread.deviation_m == pytest.approx(statistics.stdev(read_m), abs=1e-9)
    assert spread.spread_m == pytest.approx(max(read_m) - min(read_m))
    assert spread.governing_m == max(read_m)
    assert read_m[spread.governing_bow - 1] == max(read_m)
    # Hips at 1.5 and 11.5 m along the girth.
    assert spread.computed_m == pytest.approx(10.0)
    assert spread.disagreement_share == pytest.approx(statistics.median(read_m) / 10 - 1)


def test_baseboards_are_spread_by_themselves() -> None:
    tape = Tape(bows=(BowReading(bow=4, over_hips_m=10.0, over_baseboards_m=12.5),))
    spread = girth_spread(tape, "baseboards", ALONG)
    assert spread is not None
    assert (spread.governing_m, spread.governing_bow, spread.deviation_m) == (12.5, 4, 0.0)
    assert spread.computed_m == pytest.approx(12.4)


def test_nothing_read_has_no_spread() -> None:
    assert girth_spread(Tape(), "hips", ALONG) is None
    only = Tape(bows=(BowReading(bow=1, over_hips_m=9.0),))
    assert girth_spread(only, "baseboards", ALONG) is None


def test_bent_bow_of_the_story() -> None:
    # 30' 9", 9 1/2, 10, 8 3/4 and 31' 2": median 30' 9 1/2", bow 22 4 1/2" over it; the arc over
    # 26 ft with a rise of 7 ft is 30.77 ft on the middle of the tube.
    frame = bent_tunnel().frame
    spread = survey_frame(frame.but(tube_diameter_m=0.0)).taped.hips
    assert spread is not None
    assert spread.middle_m == pytest.approx(30 * FOOT_M + 9.5 * INCH_M)
    assert spread.computed_m / FOOT_M == pytest.approx(30.77, abs=5e-3)
    outliers = [(r.bow, r.from_middle_m / INCH_M) for r in spread.readings if r.outlier]
    assert outliers == [(22, pytest.approx(4.5))]
    assert (spread.governing_bow, spread.governing_m) == (22, BENT[22])


def test_every_figure_of_a_spread_has_its_working() -> None:
    spread = survey_frame(bent_tunnel().frame).taped.hips
    assert spread is not None
    for figure in (
        "middle_m",
        "spread_m",
        "deviation_m",
        "governing_bow",
        "governing_m",
        "computed_m",
        "disagreement_share",
    ):
        assert spread.working(figure).inputs
    named = {term.name: term.value for term in spread.working("governing_m").inputs}
    assert named["bow 22"] == BENT[22]
    by_profile = [float(term.value) for term in spread.working("computed_m").inputs]
    assert len(by_profile) == len(BENT)
    assert spread.computed_m == pytest.approx(statistics.median(by_profile))
