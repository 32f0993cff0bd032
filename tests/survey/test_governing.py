"""Which girth governs: the longest as read, else by the profile."""

import pytest

from hoopwright.farm import BowReading, Frame, SideReading, Tape
from hoopwright.survey import survey_frame
from samples import tunnel


def frame_of(*rows: BowReading) -> Frame:
    return tunnel().frame.but(tape=Tape(bows=rows))


PLAIN = survey_frame(tunnel().frame)


def test_longest_girth_over_the_hips_is_the_roof() -> None:
    survey = survey_frame(
        frame_of(BowReading(bow=3, over_hips_m=9.61), BowReading(bow=9, over_hips_m=9.7))
    )
    assert (survey.roof_girth_m, survey.roof_bow) == (9.7, 9)
    rule = survey.working("roof_girth_m").rule
    assert rule.startswith("Over bow 9 from hip to hip, as read")
    assert "outlier" not in rule
    # Baseboards were not read: 1.2 m of side on each side of the roof.
    assert survey.whole_girth_m == pytest.approx(9.7 + 2.4)


def test_outlier_governs_and_its_working_says_so() -> None:
    rows = (BowReading(bow=n, over_hips_m=9.6) for n in (1, 5, 9, 13))
    survey = survey_frame(frame_of(*rows, BowReading(bow=17, over_hips_m=9.8)))
    assert (survey.roof_girth_m, survey.roof_bow) == (9.8, 17)
    assert "though it is an outlier" in survey.working("roof_girth_m").rule


def test_girth_over_the_baseboards_gives_the_roof_less_both_sides() -> None:
    # Plumb legs, hips at 1.5 and baseboards at 0.3 m: 1.2 m each side.
    survey = survey_frame(
        frame_of(
            BowReading(bow=2, over_baseboards_m=12.1), BowReading(bow=8, over_baseboards_m=12.2)
        )
    )
    assert survey.whole_girth_m == 12.2
    assert survey.whole_bow == survey.roof_bow == 8
    assert survey.roof_girth_m == pytest.approx(12.2 - 2.4)


def test_a_bow_read_over_its_baseboards_alone_governs_the_roof_where_it_is_longer() -> None:
    # Bow 1 at the hips; bow 2 leaves 12.1 - 2 x 1.2 = 9.7 m for the roof.
    rows = (BowReading(bow=1, over_hips_m=9.6), BowReading(bow=2, over_baseboards_m=12.1))
    survey = survey_frame(frame_of(*rows))
    assert survey.roof_girth_m == pytest.approx(9.7)
    assert (survey.roof_bow, survey.roof_over) == (2, "baseboards")
    assert "those that were are shorter" in survey.working("roof_girth_m").rule
    # Read at the hips too, that reading is believed before the one less its sides.
    both = BowReading(bow=2, over_hips_m=9.62, over_baseboards_m=12.1)
    survey = survey_frame(frame_of(rows[0], both))
    assert (survey.roof_girth_m, survey.roof_bow, survey.roof_over) == (9.62, 2, "hips")


def test_hips_read_lower_make_the_roof_longer() -> None:
    low = SideReading(hip_m=1.3)
    survey = survey_frame(frame_of(BowReading(bow=5, sides=(low, low))))
    # Held along the whole side; 0.2 m of plumb leg more on each side.
    assert survey.roof_girth_m == pytest.approx(PLAIN.roof_girth_m + 0.4)
    assert survey.side_m == pytest.approx((1.0, 1.0))
    assert (survey.roof_bow, survey.side_bows) == (None, (1, 1))


def test_side_is_taken_where_it_is_longest() -> None:
    rows = (
        BowReading(bow=1, sides=(SideReading(hip_m=1.4), SideReading())),
        BowReading(bow=9, sides=(SideReading(hip_m=1.5), SideReading())),
        BowReading(bow=17, sides=(SideReading(hip_m=1.4), SideReading())),
    )
    survey = survey_frame(frame_of(*rows))
    assert survey.side_m == pytest.approx((1.2, 1.2))
    assert survey.side_bows == (9, None)
    assert survey.hip_at_m[0] == pytest.approx(1.5)
    # The roof is longest where the hip is lowest.
    assert survey.roof_girth_m == pytest.approx(PLAIN.roof_girth_m + 0.1)
    named = [term.name for term in survey.working("hip_at_m").inputs]
    assert "hip at bow 9 as read, first side" in named


def test_readings_that_agree_with_the_profile_change_nothing_else() -> None:
    row = SideReading(hip_m=1.5, baseboard_m=0.3, ground_m=0.0)
    survey = survey_frame(frame_of(BowReading(bow=4, sides=(row, row))))
    for figure in ("roof_girth_m", "whole_girth_m", "side_m", "hip_at_m", "base_at_m", "girth_m"):
        assert getattr(survey, figure) == getattr(PLAIN, figure)
