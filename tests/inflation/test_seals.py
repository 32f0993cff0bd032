"""Seals edge by edge, and what they cost in time."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hanging import FOOT_M, span
from hoopwright.cover.end_laid import EndLaid
from hoopwright.farm import Bench, Cut, Door
from hoopwright.inflation.seals import count_strokes, seal_edges, seal_foot, seal_minutes
from laying import laid
from samples import layers, tunnel

BAR = Bench(sealer="bar", bar_m=0.6, bar_overlap_m=0.02, stroke_s=15.0, set_up_min=5.0)


# Worked by hand: a sheet of 96 x 5 ft, all edges, two passes: 2 x 2 x (96 + 5) = 404 ft.
def test_sealed_sheet_agrees_with_the_hand_sum() -> None:
    seals = seal_edges(span(96, 5, layers=2), "roof_and_sides", 2, Bench())
    assert [s.edge for s in seals] == ["top", "bottom", "front", "back"]
    assert sum(s.total_m for s in seals) / FOOT_M == pytest.approx(404)


def test_curtain_of_one_sheet_is_closed_at_the_hip_by_its_clamp() -> None:
    seals = seal_edges(span(96, 5, layers=2), "one_sheet", 2, Bench())
    assert [s.edge for s in seals] == ["bottom", "front", "back"]
    assert sum(s.total_m for s in seals) / FOOT_M == pytest.approx(2 * (96 + 5 + 5))


def test_each_pass_is_sealed_and_each_edge_set_up_once() -> None:
    # 30 m at 1.5 m/min and 5 minutes to lay it out.
    bench = Bench(seal_rate_m_min=1.5, set_up_min=5.0)
    assert seal_minutes(30.0, 0, bench) == pytest.approx(25.0)
    one, two = (
        seal_edges(span(96, 5, layers=2), "roof_and_sides", passes, bench)[0] for passes in (1, 2)
    )
    assert (one.passes, two.passes) == (1, 2)
    assert one.length_m == two.length_m
    assert two.minutes - 5 == pytest.approx(2 * (one.minutes - 5))


def test_strokes_of_a_bar_lap_over_each_other() -> None:
    # Worked by hand: n strokes of 0.6 m that lap by 0.02 m reach 0.6 + 0.58 (n - 1): 1.18 m with
    # two, 6.4 m with eleven.
    for length_m, strokes in ((0.1, 1), (0.6, 1), (0.61, 2), (1.18, 2), (1.19, 3), (6.4, 11)):
        assert count_strokes(length_m, BAR) == strokes


@given(
    st.floats(0.001, 500.0),
    st.floats(0.1, 3.0),
    st.floats(0.0, 0.9),
)
def test_strokes_reach_the_end_and_one_less_does_not(
    length_m: float, bar_m: float, lapped: float
) -> None:
    bench = BAR.but(bar_m=bar_m, bar_overlap_m=min(0.5, lapped * bar_m))
    strokes = count_strokes(length_m, bench)

    def reach_m(count: int) -> float:
        return count * bar_m - (count - 1) * bench.bar_overlap_m

    assert reach_m(strokes) >= length_m - 1e-6
    assert strokes == 1 or reach_m(strokes - 1) < length_m


def test_running_sealer_makes_no_strokes() -> None:
    assert count_strokes(30.0, Bench()) == 0


def test_minutes_of_a_bar_are_its_strokes_and_the_set_up() -> None:
    # Worked by hand: 96 ft = 29.2608 m in ceil(29.2408 / 0.58) = 51 strokes, twice; 102 x 15 s is
    # 25.5 minutes, and 5 to lay it out.
    top = seal_edges(span(96, 5, layers=2), "roof_and_sides", 2, BAR)[0]
    assert top.strokes == 102
    assert top.minutes == pytest.approx(30.5)
    assert top.total_m / FOOT_M == pytest.approx(192)


def test_seals_side_by_side_keep_their_distance() -> None:
    bench = Bench(spacing_m=0.03)
    for passes, spacing_m in ((1, 0.0), (2, 0.03), (3, 0.03)):
        for seal in seal_edges(span(96, 5, layers=2), "one_sheet", passes, bench):
            assert seal.spacing_m == spacing_m


def test_foot_of_an_end_wall_is_sealed_beside_its_doors() -> None:
    # Legs 8 m apart to the middle of a tube of 48 mm, doors of 0.9 and 2.4 m.
    doors = (Door(width_m=0.9, height_m=2.0), Door(width_m=2.4, height_m=2.4))
    (foot,) = seal_foot(_back_wall(doors), 2, Bench())
    assert (foot.mark, foot.edge, foot.passes) == ("end/1", "bottom", 2)
    assert foot.length_m == pytest.approx(8.048 - 3.3)
    assert foot.total_m == pytest.approx(2 * (8.048 - 3.3))


def test_door_as_wide_as_the_end_leaves_no_foot_to_seal() -> None:
    wide = Door(width_m=8.1, height_m=2.0)
    assert seal_foot(_back_wall((wide,)), 2, Bench()) == ()
    # A vent stands above the foot and takes nothing of it.
    (foot,) = seal_foot(_back_wall((), (Cut(sill_m=0.5),)), 2, Bench())
    assert foot.length_m == pytest.approx(8.048)


def _back_wall(doors: tuple[Door, ...], cuts: tuple[Cut, ...] = ()) -> EndLaid:
    plain = tunnel()
    back = plain.ends[1].but(film=layers(2), doors=doors, cuts=cuts)
    return laid(plain.but(ends=(plain.ends[0], back))).ends[1]
