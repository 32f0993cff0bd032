"""A tunnel aired: shares of the floor, wind and warmth, screens and the way from shut to open."""

from dataclasses import fields

import pytest

from airing.aired import aired
from hoopwright.airing.flow import open_gap
from hoopwright.curtain import course
from hoopwright.farm import Screen, Side, Split
from hoopwright.quantity.working import explain
from samples import side
from worked import PAIR, SHUT, SURVEY, curtains, dropping

# From the hip board at 1.5 m to the baseboard at 0.3 m, along upright legs, less half a roll; 21 m
# between the pockets.
SIDE_M, LENGTH_M = 1.2, 21.0


def _roll_m() -> float:
    return curtains()[0].diameters_m[2]


def _open_m2() -> float:
    return (SIDE_M - _roll_m() / 2) * LENGTH_M


def test_shares_follow_from_opening_and_floor() -> None:
    airing = aired()
    one = _open_m2()
    assert airing.openings_m2 == pytest.approx((one, one))
    assert airing.side_shares == pytest.approx((one / (8 * 24), one / (8 * 24)))
    assert airing.floor_share == pytest.approx(2 * one / (8 * 24))


def test_openings_are_those_of_the_curtains() -> None:
    sides = (side("West side", (Split(at_m=9.0),)), dropping())
    first, second, third = curtains(sides)
    expected = (first.opening_m2 + second.opening_m2, third.opening_m2)
    assert aired(sides).openings_m2 == pytest.approx(expected)


def test_wind_alone_is_share_times_opening_times_wind() -> None:
    airing = aired(inside_k=298.15, wind_m_s=2.0, wind_from="square_on")
    flow = 0.55 * _open_m2() * 2.0
    assert airing.warmth_m3_s == 0.0
    assert airing.flow_m3_s == pytest.approx(flow)
    assert airing.changes_per_h == pytest.approx(3600 * flow / SURVEY.volume_m3)
    assert airing.per_floor_m3_s_m2 == pytest.approx(flow / 192.0)


def test_warmth_alone_is_that_of_one_tall_opening_on_each_side() -> None:
    airing = aired(wind_m_s=0.0)
    high_m = SIDE_M - _roll_m() / 2
    one = 0.445 / 3 * _open_m2() * (9.80665 * high_m * 10 / 308.15) ** 0.5
    assert airing.warmth_m3_s == pytest.approx(2 * one)
    assert airing.wind_m3_s == 0.0


def test_both_together_are_the_root_of_the_sum_of_squares() -> None:
    wind, warmth, both = aired(inside_k=298.15), aired(wind_m_s=0.0), aired()
    expected = (wind.flow_m3_s**2 + warmth.flow_m3_s**2) ** 0.5
    assert both.flow_m3_s == pytest.approx(expected)


def test_screens_hold_air_back_and_leave_the_opening() -> None:
    first, second = (s.but(screen=Screen(part="screen", flow_share=0.4)) for s in PAIR)
    bare, behind = aired(), aired((first, second))
    assert behind.flow_m3_s == pytest.approx(0.4 * bare.flow_m3_s)
    assert behind.opening_m2 == bare.opening_m2 == bare.free_m2
    assert behind.free_m2 == pytest.approx(0.4 * bare.opening_m2)
    assert behind.free_share == pytest.approx(0.4 * bare.floor_share)


def test_one_screened_side_decides_on_the_wind() -> None:
    airing = aired(
        (PAIR[0], PAIR[1].but(screen=Screen(part="screen", flow_share=0.25))), wind_m_s=2.0
    )
    assert airing.wind_m3_s == pytest.approx(0.30 * _open_m2() * 0.25 * 2.0)
    assert airing.free_m2 == pytest.approx(1.25 * _open_m2())


def test_one_open_side_is_aired_by_warmth_alone() -> None:
    airing = aired((PAIR[0], SHUT))
    assert airing.wind_m3_s == 0.0
    assert airing.warmth_m3_s == pytest.approx(aired().warmth_m3_s / 2)
    assert airing.openings_m2 == pytest.approx((_open_m2(), 0.0))


def test_fixed_sides_air_nothing() -> None:
    airing = aired((SHUT.but(name="West side"), SHUT))
    assert (airing.opening_m2, airing.flow_m3_s, airing.changes_per_h) == (0.0, 0.0, 0.0)


@pytest.mark.parametrize("sides", [PAIR, (PAIR[0], dropping())])
def test_way_from_shut_to_open_is_that_of_the_curtains(sides: tuple[Side, Side]) -> None:
    airing = aired(sides)
    ways = [course(work, 4) for work in curtains(sides)]
    assert [share for share, _, _ in airing.course] == pytest.approx(list(ways[0].shares))
    together = [
        sum(at) / SURVEY.floor_area_m2 for at in zip(*(w.openings_m2 for w in ways), strict=True)
    ]
    assert [share for _, share, _ in airing.course] == pytest.approx(together)
    assert airing.course[0][1:] == (0.0, 0.0)
    assert airing.course[-1][1:] == (airing.floor_share, airing.flow_m3_s)
    flows = [flow for _, _, flow in airing.course]
    assert flows == sorted(flows)


def test_rolled_side_opens_below_and_dropped_side_above() -> None:
    rolled, dropped = curtains((PAIR[0], dropping()))
    below, above = open_gap(rolled, 0.5)[1], open_gap(dropped, 0.5)[1]
    assert below.low_m == pytest.approx(0.3)
    assert above.high_m == pytest.approx(1.5)
    assert below.high_m < 1.2 < above.high_m
    assert above.low_m > 0.9


def test_openings_at_two_heights_air_better_than_at_one() -> None:
    # Half open, one side low and the other high: the warm air leaves through the high one.
    mixed, low, high = (
        aired(sides, wind_m_s=0.0).course[2]
        for sides in ((PAIR[0], dropping()), PAIR, (dropping("West side"), dropping()))
    )
    assert mixed[2] / mixed[1] > 1.2 * max(low[2] / low[1], high[2] / high[1])


def test_every_figure_says_how_it_was_got() -> None:
    airing = aired()
    figures = {f.name for f in fields(airing) if f.compare} | {"course"}
    assert {w.figure for w in airing.workings} == figures
    for working in airing.workings:
        for units in ("imperial", "metric"):
            assert working.source in explain(working, units)  # type: ignore[arg-type]
