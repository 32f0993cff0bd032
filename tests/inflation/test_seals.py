"""Seals edge by edge, and what they cost in time."""

import pytest

from hanging import FOOT_M, span
from hoopwright.farm import Bench
from hoopwright.inflation.seals import seal_edges, seal_minutes


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
    assert seal_minutes(30.0, bench) == pytest.approx(25.0)
    one, two = (
        seal_edges(span(96, 5, layers=2), "roof_and_sides", passes, bench)[0] for passes in (1, 2)
    )
    assert (one.passes, two.passes) == (1, 2)
    assert one.length_m == two.length_m
    assert two.minutes - 5 == pytest.approx(2 * (one.minutes - 5))
