"""End walls laid: openings, areas, bands of film between seams, marks."""

import itertools
from dataclasses import fields

import pytest
from shapely import Polygon, box
from shapely.ops import unary_union

from hoopwright.cover import Cover, Piece
from hoopwright.cover.end_laid import EndLaid
from hoopwright.farm import Allowances, Cut, Door, RigidSheet, RoundBow, Tunnel
from hoopwright.quantity.working import explain
from laying import laid, of_role
from samples import layers, tunnel

HALF_CIRCLE = RoundBow(span_m=8.0, leg_height_m=0.0, peak_height_m=4.0)
DOOR = Door(width_m=2.4, height_m=2.1)
VENT = Cut(left_m=-0.3, sill_m=2.6, width_m=0.6, height_m=0.5)
FAN = Cut(kind="fan", left_m=1.4, sill_m=1.0, width_m=0.9, height_m=0.9)


def half_circle(**changes: object) -> Tunnel:
    """Return a tunnel whose front end is a half circle of 4 m, tails 0.3 m, laps 0.2 m."""
    plain = tunnel(HALF_CIRCLE)
    allowances = Allowances(end_wall_tail_m=0.3, seam_lap_m=0.2)
    frame = plain.frame.but(tube_diameter_m=0.0)
    ends = (plain.ends[0].but(**changes), plain.ends[1])
    return plain.but(frame=frame, skin=plain.skin.but(allowances=allowances), ends=ends)


def front(cover: Cover) -> EndLaid:
    return cover.ends[0]


def end_sheets(cover: Cover, surface: str = "end0") -> list[Piece]:
    return [p for p in of_role(cover, "end wall") if p.areas[0].surface == surface]


def test_areas_are_those_of_another_library() -> None:
    wall = front(laid(half_circle(doors=(DOOR,), cuts=(VENT, FAN))))
    openings = unary_union([box(*_edges(o)) for o in wall.openings])
    assert wall.openings_m2 == pytest.approx(openings.area, rel=1e-9)
    # Half a circle of 4 m: 8 pi m2.
    assert wall.gross_m2 == pytest.approx(25.132741)
    assert wall.net_m2 == pytest.approx(Polygon(wall.outline_m).difference(openings).area, abs=0.01)
    assert [(o.mark, o.use, o.inside, o.meets) for o in wall.openings] == [
        ("end/0/door/0", "door", True, ()),
        ("end/0/cut/0", "vent", True, ()),
        # From 1 m up and 1.4 to 2.3 m right it clears the door, which ends at 1.2 m.
        ("end/0/cut/1", "fan", True, ()),
    ]
    # 8 m of foot less the door's 2.4 m; vents and fans stand above it.
    assert wall.foot_m == pytest.approx(5.6)
    assert (wall.widest_m, wall.widest_at_m) == (pytest.approx(8.0), 0.0)


def _edges(opening: object) -> tuple[float, float, float, float]:
    one = opening.box  # type: ignore[attr-defined]  # whatever has a box
    return one.left_m, one.low_m, one.right_m, one.high_m


def test_openings_that_stick_out_or_overlap_are_told() -> None:
    high = VENT.but(sill_m=3.6)
    wall = front(laid(half_circle(doors=(DOOR, DOOR.but(left_m=0.0)), cuts=(high,))))
    assert [o.inside for o in wall.openings] == [True, True, False]
    # Two doors of 2.4 m are spread with gaps of 3.2 / 3 m: the first from -2.9333 to -0.5333.
    assert wall.openings[1].meets == ()
    close = front(laid(half_circle(doors=(DOOR, DOOR.but(left_m=-1.0)))))
    assert close.openings[1].meets == ("end/0/door/0",)
    # From -2.9333 to 1.4 m, 2.1 m high, the overlap once.
    assert close.openings_m2 == pytest.approx((1.4 + 2.93333333) * 2.1)
    assert close.foot_m == pytest.approx(8.0 - 4.33333333)


def test_a_wall_without_seams_is_one_rectangle_as_before() -> None:
    (sheet,) = end_sheets(laid(half_circle()))
    assert sheet.mark == "piece/end-wall/single/-/0"
    # 8 + 2 x 0.3 by 4 + 2 x 0.3.
    assert (sheet.width_m, sheet.length_m) == pytest.approx((8.6, 4.6))


def test_bands_between_seams_cover_their_widest_place_with_the_lap() -> None:
    cover = laid(half_circle(seams_m=(1.6, 2.5), film=layers(2)))
    sheets = [p for p in end_sheets(cover) if p.layer == "outer"]
    # Laps of 0.2 m reach 0.1 m past each seam. The lowest is widest at the ground: 8 m; the next
    # at 1.5 m: 2 sqrt(16 - 2.25) = 7.4162 m; the top one at 2.4 m: 2 sqrt(16 - 5.76) = 6.4 m.
    # They lie along the roll.
    assert [p.length_m for p in sheets] == pytest.approx([8.6, 8.0162, 7.0], abs=1e-4)
    # 1.7 + 0.3; 0.9 + 0.2; from 2.4 to 4 m and 0.3 over the ridge.
    assert [p.width_m for p in sheets] == pytest.approx([2.0, 1.1, 1.9])
    assert [p.name for p in sheets][2] == "End wall Front end, sheet 3 of 3 from below, outer"
    assert [p.mark for p in sheets] == [f"piece/end-wall/outer/{k}/0" for k in range(3)]
    marks = [p.mark for p in cover.pieces]
    assert len(marks) == len(set(marks))
    spots = [(p.areas[0].low_m, p.areas[0].high_m) for p in sheets]
    assert spots == [pytest.approx(s) for s in ((0.0, 1.7), (1.5, 2.6), (2.4, 4.0))]
    for sheet in sheets:
        assert sum(float(t.value) for t in sheet.length_terms) == pytest.approx(sheet.length_m)


def test_bands_cover_the_outline_and_lap() -> None:
    cover = laid(half_circle(seams_m=(0.8, 2.0, 3.1)))
    areas = [p.areas[0] for p in end_sheets(cover)]
    film = unary_union([box(a.from_m, a.low_m, a.to_m, a.high_m) for a in areas])
    assert Polygon(front(cover).outline_m).difference(film).area < 1e-9
    for below, above in itertools.pairwise(areas):
        assert below.high_m - above.low_m == pytest.approx(0.2)


def test_a_seam_above_the_ridge_joins_nothing() -> None:
    assert len(end_sheets(laid(half_circle(seams_m=(4.0, 5.0))))) == 1


def test_rails_and_seams_reach_from_side_to_side_less_the_openings() -> None:
    wall = front(laid(half_circle(doors=(DOOR,), rails_m=(1.5, 2.1), seams_m=(2.4, 4.5))))
    # At 1.5 m 2 sqrt(16 - 2.25) = 7.4162 m less the door's 2.4 m; 2.1 m is its upper edge:
    # 2 sqrt(16 - 4.41) = 6.8088 m; at 2.4 m 6.4 m; 4.5 m is above the ridge.
    assert [r.free_m for r in wall.rails] == pytest.approx([5.0162, 6.8088], abs=1e-4)
    assert [(s.left_m, s.right_m, s.free_m) for s in wall.seams] == [
        pytest.approx((-3.2, 3.2, 6.4)),
        (0.0, 0.0, 0.0),
    ]
    assert [c.mark for c in (*wall.rails, *wall.seams)] == [
        "end/0/rail/0",
        "end/0/rail/1",
        "end/0/seam/0",
        "end/0/seam/1",
    ]


def test_rigid_walls_take_no_film_and_open_ones_nothing() -> None:
    rigid = laid(half_circle(film=None, rigid=RigidSheet(part="rigid"), seams_m=(2.0,)))
    assert (front(rigid).closed, end_sheets(rigid), front(rigid).bands) == ("rigid", [], ())
    assert front(rigid).rigid is not None
    opened = laid(half_circle(film=None))
    assert (front(opened).closed, front(opened).rigid) == ("open", None)
    assert len(end_sheets(opened, "end1")) == 1


def test_every_figure_of_an_end_wall_says_how_it_was_got() -> None:
    wall = front(laid(half_circle(doors=(DOOR,), cuts=(VENT,))))
    told = {f.name for f in fields(wall) if f.name.endswith(("_m", "_m2"))}
    assert told - {"outline_m"} == {w.figure for w in wall.workings}
    assert "door 1 wide 2.4" in explain(wall.working("openings_m2"), "metric")
