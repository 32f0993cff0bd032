"""Bands that show what stays. The tunnel has 17 bows, 1.5 m apart; its hips lie at 1.5 m."""

import pytest

from hoopwright.farm import PartState
from hoopwright.papers.scene import Hatch, Label, Polygon, View
from hoopwright.papers.views import Views, draw_tunnel
from hoopwright.plan import plan
from samples import small_farm, tunnel
from takeoff.counted import whole_catalogue

BOARDS = PartState(family="Boards", where="first_side", to_bow=9, state="keep")
REPAIRED = PartState(family="Boards", where="first_side", from_bow=9, state="repair")
FILM = PartState(family="Film", where="first_side", from_bow=2, to_bow=16, state="keep")


def views(*lines: PartState) -> Views:
    made = tunnel().but(condition=lines)
    farm = small_farm().but(tunnels=(made,), catalogue=whole_catalogue())
    return draw_tunnel(made, plan(farm).tunnels[0], "metric")


def bands(view: View) -> list[tuple[str, float, float]]:
    """Return style, left and right of each band, in the order as drawn."""
    return [
        (s.style, s.points[0][0], s.points[1][0])
        for s in view.shapes
        if isinstance(s, Polygon) and s.style in ("kept", "repaired")
    ]


def told(view: View) -> list[str]:
    return [s.text for s in view.shapes if isinstance(s, Label) and "kept" in s.text]


def test_nothing_is_drawn_where_all_is_bought_new() -> None:
    for drawn in (views(), views(BOARDS.but(state="replace"))):
        for view in (drawn.first_side, drawn.plan, drawn.second_side):
            assert bands(view) == []


def test_kept_and_repaired_stretches_follow_one_another_on_their_side_alone() -> None:
    drawn = views(BOARDS, REPAIRED)
    assert bands(drawn.first_side) == [("kept", 0.0, 12.0), ("repaired", 12.0, 24.0)]
    assert bands(drawn.second_side) == bands(drawn.plan) == []
    assert told(drawn.first_side) == ["Boards kept, repaired"]


def test_kept_and_repaired_differ_in_their_hatch_as_well() -> None:
    drawn = views(BOARDS, REPAIRED)
    slants = {
        s.style: s.slant
        for s in drawn.first_side.shapes
        if isinstance(s, Hatch) and s.style in ("kept", "repaired")
    }
    assert slants == {"kept": 1, "repaired": -1}


def test_each_family_has_its_own_band_and_the_text_names_them_from_the_top() -> None:
    drawn = views(BOARDS, FILM)
    boxes = [
        s.points
        for s in drawn.first_side.shapes
        if isinstance(s, Polygon) and s.style in ("kept", "repaired")
    ]
    boards, curtain = boxes
    assert boards[0][1] > curtain[2][1]
    assert min(y for box in boxes for _, y in box) > 1.5
    assert max(y for box in boxes for _, y in box) < drawn.first_side.box[3]
    assert told(drawn.first_side) == ["From the top: Boards kept · Film kept"]


def test_film_is_drawn_where_its_sheets_lie() -> None:
    # The curtain laps a foot over both pockets.
    (band,) = bands(views(FILM).first_side)
    assert band == ("kept", pytest.approx(1.5 - 0.3048), pytest.approx(22.5 + 0.3048))


def test_film_that_would_stay_in_part_is_not_drawn_as_kept() -> None:
    assert bands(views(FILM.but(from_bow=3)).first_side) == []


def test_roof_and_ends_are_drawn_in_the_plan() -> None:
    roof = FILM.but(where="roof", from_bow=None, to_bow=None, state="repair")
    end = PartState(family="Film fixing", where="back_end", state="keep")
    found = bands(views(roof, end).plan)
    assert found[0] == ("repaired", 0.0, 24.0)
    (style, left_m, right_m) = found[1]
    assert style == "kept"
    assert 23.0 < left_m < right_m < 24.0


def test_family_without_anything_there_has_no_band() -> None:
    # No board lies on the roof, and no blower is there.
    nothing = (BOARDS.but(where="roof"), PartState(family="Air", state="keep"))
    drawn = views(*nothing)
    for view in (drawn.first_side, drawn.plan, drawn.second_side):
        assert bands(view) == []


def test_many_families_share_the_room_above_the_hip() -> None:
    families = ("Boards", "Film fixing", "Roll bars", "Cranks", "Wind rope", "Tape and sealing")
    lines = [PartState(family=f, state="keep") for f in families]
    view = views(*lines, FILM).first_side
    polygons = [s for s in view.shapes if isinstance(s, Polygon) and s.style == "kept"]
    tops = sorted((s.points[2][1] for s in polygons), reverse=True)
    feet = sorted((s.points[0][1] for s in polygons), reverse=True)
    assert len(polygons) >= 5
    assert all(foot >= top for foot, top in zip(feet, tops[1:], strict=False))
    assert min(feet) > 1.5
