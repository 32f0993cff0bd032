"""A tunnel aired: shares of the floor, wind and warmth, screens and the way from shut to open."""

from dataclasses import fields

import pytest

from airing.aired import PAIR, SURVEY, aired
from hoopwright.airing.flow import clear_height
from hoopwright.quantity.working import explain
from samples import side
from worked import worked


def test_shares_follow_from_opening_and_floor() -> None:
    # 8 m by 24 m of floor; 24 m2 on each side: 12.5 % each, 25 % together.
    airing = aired()
    assert airing.openings_m2 == pytest.approx((24.0, 24.0))
    assert airing.side_shares == pytest.approx((0.125, 0.125))
    assert airing.floor_share == pytest.approx(0.25)


def test_wind_alone_is_share_times_opening_times_wind() -> None:
    airing = aired(inside_k=298.15, wind_m_s=2.0, wind_from="square_on")
    assert airing.warmth_m3_s == 0.0
    assert airing.flow_m3_s == pytest.approx(0.55 * 24.0 * 2.0)
    assert airing.changes_per_h == pytest.approx(3600 * 26.4 / SURVEY.volume_m3)
    assert airing.per_floor_m3_s_m2 == pytest.approx(26.4 / 192.0)


def test_warmth_alone_is_that_of_one_tall_opening_on_each_side() -> None:
    # Upright legs up to the hip: 1.2 m of side less a roll of 0.05 m opens 1.15 m.
    airing = aired(wind_m_s=0.0)
    one = 0.445 / 3 * 24.0 * (9.80665 * 1.15 * 10 / 308.15) ** 0.5
    assert airing.warmth_m3_s == pytest.approx(2 * one, rel=1e-4)
    assert airing.wind_m3_s == 0.0


def test_both_together_are_the_root_of_the_sum_of_squares() -> None:
    wind, warmth, both = aired(inside_k=298.15), aired(wind_m_s=0.0), aired()
    expected = (wind.flow_m3_s**2 + warmth.flow_m3_s**2) ** 0.5
    assert both.flow_m3_s == pytest.approx(expected)


def test_screens_hold_air_back_and_leave_the_opening() -> None:
    screened = tuple(s.but(screen_flow_share=0.4) for s in PAIR)
    bare, behind = aired(), aired(sides=(screened[0], screened[1]))
    assert behind.flow_m3_s == pytest.approx(0.4 * bare.flow_m3_s)
    assert behind.opening_m2 == bare.opening_m2


def test_one_screened_side_decides_on_the_wind() -> None:
    airing = aired(sides=(PAIR[0], PAIR[1].but(screen_flow_share=0.25)), wind_m_s=2.0)
    assert airing.wind_m3_s == pytest.approx(0.30 * 24.0 * 0.25 * 2.0)


def test_one_open_side_is_aired_by_warmth_alone() -> None:
    airing = aired(curtains=(worked(0),), sides=(PAIR[0], side("East side", kind="fixed")))
    assert airing.wind_m3_s == 0.0
    assert 0 < airing.warmth_m3_s < aired().warmth_m3_s
    assert airing.openings_m2 == pytest.approx((24.0, 0.0))


def test_fixed_sides_air_nothing() -> None:
    airing = aired(curtains=())
    assert (airing.opening_m2, airing.flow_m3_s, airing.changes_per_h) == (0.0, 0.0, 0.0)


def test_course_runs_from_shut_to_what_is_open_in_the_end() -> None:
    airing = aired()
    assert [share for share, _, _ in airing.course] == pytest.approx([n / 10 for n in range(11)])
    assert airing.course[0][1:] == (0.0, 0.0)
    assert airing.course[-1][1:] == (airing.floor_share, airing.flow_m3_s)
    flows = [flow for _, _, flow in airing.course]
    assert flows == sorted(flows)


def test_curtain_opens_what_is_not_still_to_be_travelled() -> None:
    # 1.25 m of travel against 1.2 m of side: the bar hangs 0.05 m below the board and is as thick.
    # Half way it has 0.625 m to go, so that 1.15 - 0.625 m are open.
    assert clear_height(worked(), 1.2, 1.0) == pytest.approx(1.15)
    assert clear_height(worked(), 1.2, 0.5) == pytest.approx(0.525)
    assert clear_height(worked(), 1.2, 0.0) == 0.0


def test_unlike_curtains_of_one_side_open_together() -> None:
    pair = (worked(0, 0, opening_m2=10.0), worked(0, 1, opening_m2=4.0, travel_m=0.8))
    assert aired(curtains=pair).openings_m2 == pytest.approx((14.0, 0.0))


def test_drop_down_curtain_opens_at_the_top_and_airs_as_well() -> None:
    # The same opening at another height passes the same air while the other side is shut.
    dropped = side("West side", kind="drop_down")
    works = (worked(0, kind="drop_down"),)
    low = aired(curtains=(worked(0),)).warmth_m3_s
    assert aired(curtains=works, sides=(dropped, PAIR[1])).warmth_m3_s == pytest.approx(low)


def test_openings_at_two_heights_air_better_than_at_one() -> None:
    # Half open, one side low and the other high: the warm air leaves through the high one.
    dropped = side("East side", kind="drop_down")
    half = {"travel_m": 0.6, "diameters_m": (0.0, 0.0, 0.0), "opening_m2": 12.0}
    low = (worked(0, **half), worked(1, **half))
    high = (worked(0, **half), worked(1, kind="drop_down", **half))
    mixed = aired(curtains=high, sides=(PAIR[0], dropped)).warmth_m3_s
    assert mixed > 1.2 * aired(curtains=low).warmth_m3_s


def test_every_figure_says_how_it_was_got() -> None:
    airing = aired()
    figures = {f.name for f in fields(airing)} - {"workings"}
    assert {w.figure for w in airing.workings} == figures
    for working in airing.workings:
        for units in ("imperial", "metric"):
            assert working.source in explain(working, units)  # type: ignore[arg-type]
