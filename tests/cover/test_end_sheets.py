"""Rigid sheets on an end wall, counted by hand."""

import itertools

import pytest

from hoopwright.cover.end_shape import end_shape
from hoopwright.cover.end_sheets import count_sheets, courses, lay_rigid
from hoopwright.farm import RigidSheet, RoundBow
from hoopwright.quantity.working import explain
from hoopwright.survey.bow_curve import bow_curve

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
SHEET = RigidSheet(part="rigid_sheet", cover_width_m=2.0, sheet_height_m=3.0, lap_m=0.1)


def test_a_column_higher_than_a_sheet_is_joined_with_a_lap() -> None:
    # 3 + 3 - 0.1 = 5.9 m is what two sheets reach, 8.8 m what three do.
    assert courses(3.0, SHEET) == (3.0,)
    assert courses(4.0, SHEET) == (3.0, pytest.approx(1.1))
    assert courses(5.9, SHEET) == (3.0, pytest.approx(3.0))
    assert courses(6.0, SHEET) == (3.0, 3.0, pytest.approx(0.2))


def test_a_half_circle_in_columns_about_its_middle() -> None:
    wall = lay_rigid(end_shape(bow_curve(HALF_CIRCLE, 0.0), 0), SHEET, 25.0, "end/0")
    assert [(c.left_m, c.right_m) for c in wall.columns] == [
        pytest.approx(ends) for ends in ((-4, -2), (-2, 0), (0, 2), (2, 4))
    ]
    # The outer ones are sqrt(16 - 4) = 3.4641 m high, the inner ones 4 m; each a whole sheet and
    # 0.5641 or 1.1 m more. 4 whole ones; 1.1 + 1.1 + 0.5641 = 2.7641 m and 0.5641 m: 2 more.
    assert [c.height_m for c in wall.columns] == pytest.approx([3.4641, 4.0, 4.0, 3.4641], abs=1e-3)
    assert wall.sheet_count == 6
    # A sheet ends at 2.9 m, where the wall is 2 sqrt(16 - 8.41) = 5.51 m wide.
    assert [(c.mark, c.at_m, c.free_m) for c in wall.laps] == [
        ("end/0", pytest.approx(2.9), pytest.approx(5.51, abs=1e-3))
    ]
    edges = [c.left_high_m for c in wall.columns]
    assert edges == pytest.approx([0.0, 3.4641, 4.0, 3.4641], abs=1e-3)
    assert (wall.sheet_area_m2, wall.waste_m2) == pytest.approx((36.0, 11.0))
    for figure in ("sheet_count", "sheet_area_m2", "waste_m2"):
        assert explain(wall.working(figure), "metric")


def test_an_edge_column_ends_with_the_wall() -> None:
    narrow = SHEET.but(cover_width_m=3.0)
    wall = lay_rigid(end_shape(bow_curve(HALF_CIRCLE, 0.0), 1), narrow, 25.0, "end/1")
    edges = [(c.left_m, c.right_m) for c in wall.columns]
    assert edges == [pytest.approx(e) for e in ((-4.0, -1.5), (-1.5, 1.5), (1.5, 4.0))]


@pytest.mark.parametrize(
    "cuts", [(2.0, 1.0, 1.0, 2.0), (1.6, 1.4, 1.5, 1.5, 0.7), (3.0, 3.0), (0.9,), (2.9, 0.2, 2.8)]
)
def test_sheets_are_as_few_as_every_way_of_sharing_them_gives(cuts: tuple[float, ...]) -> None:
    fewest = min(
        len(set(shares))
        for shares in itertools.product(range(len(cuts)), repeat=len(cuts))
        if all(
            sum(c for c, s in zip(cuts, shares, strict=True) if s == bin_) <= 3.0 + 1e-9
            for bin_ in set(shares)
        )
    )
    assert count_sheets(cuts, 3.0) == fewest
