"""The drawing as a value: its geometry against a geometry library and sums done by hand."""

import math

import pytest
from shapely import LineString, Polygon, box

import samples
from hoopwright.farm import Split, Tunnel
from hoopwright.farm.change import add_seam, move_hip, move_split
from hoopwright.papers import scene
from hoopwright.papers.scene import (
    STYLES,
    Dimension,
    Handle,
    Hatch,
    Label,
    Shape,
    Symbol,
    View,
    hatch_lines,
)
from hoopwright.papers.subject import Subject
from hoopwright.papers.view_roof import draw_plan
from hoopwright.papers.view_section import draw_section
from hoopwright.papers.view_side import draw_side
from hoopwright.papers.views import Views, draw_tunnel, drawn_marks
from hoopwright.plan import TunnelPlan, plan


def _planned(tunnel: Tunnel) -> TunnelPlan:
    return plan(samples.small_farm(tunnel)).tunnels[0]


def _drawn(tunnel: Tunnel) -> Views:
    return draw_tunnel(tunnel, _planned(tunnel), "metric")


def _of(view: View, kind: type[Shape], mark: str) -> list[Shape]:
    return [s for s in view.shapes if isinstance(s, kind) and s.mark == mark]


def _all(views: Views) -> list[Shape]:
    four = (views.first_side, views.plan, views.second_side, views.section)
    return [shape for view in four for shape in view.shapes]


@pytest.mark.parametrize("slant", [1, -1])
@pytest.mark.parametrize("edges", [(0.0, 0.0, 4.0, 1.0), (1.3, -0.7, 1.9, 5.2)])
def test_hatch_lines_are_the_slanted_lines_inside_the_rectangle(
    edges: scene.Box, slant: int
) -> None:
    # The same lines, drawn far too long and cut by a geometry library.
    area, step_m = box(*edges), 0.3
    expected = 0.0
    for number in range(-60, 60):
        foot = number * step_m
        endless = LineString([(foot - 50 * slant, -50.0), (foot + 50 * slant, 50.0)])
        expected += endless.intersection(area).length
    lines = hatch_lines(edges, step_m, 1 if slant == 1 else -1)
    assert sum(math.dist(line[:2], line[2:]) for line in lines) == pytest.approx(expected)
    assert all(line[2] != line[0] for line in lines)
    assert {math.copysign(1, (y2 - y1) * (x2 - x1)) for x1, y1, x2, y2 in lines} == {slant}


def test_hatches_side_by_side_lie_on_one_grid() -> None:
    left = hatch_lines((0.0, 0.0, 1.0, 1.0), 0.25, 1)
    right = hatch_lines((1.0, 0.0, 2.0, 1.0), 0.25, 1)
    feet = {round((x - y) / 0.25, 6) for x, y, _x2, _y2 in left + right}
    assert feet == {float(round(f)) for f in feet}


@pytest.mark.parametrize("edges", [(1.0, 0.0, 1.0, 1.0), (0.0, 2.0, 1.0, 1.0)])
def test_an_empty_rectangle_has_no_hatch(edges: scene.Box) -> None:
    assert hatch_lines(edges, 0.1, 1) == []


def test_styles_are_named_once_and_all_drawn_styles_are_among_them() -> None:
    assert len(set(STYLES)) == len(STYLES)
    assert {s.style for s in _all(_drawn(samples.double_tunnel()))} <= set(STYLES)


@pytest.mark.parametrize(
    "tunnel",
    [samples.tunnel(), samples.gothic_tunnel(), samples.rafter_tunnel(), samples.double_tunnel()],
)
def test_everything_drawn_lies_in_the_box_of_its_view(tunnel: Tunnel) -> None:
    views = _drawn(tunnel)
    for view in (views.first_side, views.plan, views.second_side, views.section):
        left, bottom, right, top = view.box
        # Ticks of splits, the wind rope and half a lap may stand over; nothing by more than 0.5 m.
        air_m = 0.5
        for shape in view.shapes:
            for x, y in scene.points_of(shape):
                assert left - air_m <= x <= right + air_m, shape
                assert bottom - air_m <= y <= top + air_m, shape


def test_long_views_share_the_length_axis() -> None:
    views = _drawn(samples.double_tunnel())
    for view in (views.first_side, views.plan, views.second_side):
        # Worked by hand: 16 bays of 1.5 m and 2 ft (0.6096 m) of tail at each end.
        assert (view.box[0], view.box[2]) == pytest.approx((-0.6096, 24.6096))


def test_bows_stand_at_their_positions_in_all_long_views() -> None:
    views = _drawn(samples.tunnel())
    for view in (views.first_side, views.plan, views.second_side):
        for index in (0, 3, 16):
            (bow,) = _of(view, scene.Line, f"bow/{index}")
            assert isinstance(bow, scene.Line)
            assert bow.ends[0] == bow.ends[2] == pytest.approx(1.5 * index)


def test_bows_are_numbered_from_one() -> None:
    labels = [s for s in _drawn(samples.tunnel()).first_side.shapes if isinstance(s, Label)]
    numbers = [s for s in labels if s.number]
    assert [n.text for n in numbers] == [str(k) for k in range(1, 18)]
    assert numbers[3].mark == "bow/3"


def test_curtains_hang_from_hip_to_bar_and_lap_at_the_split() -> None:
    views = _drawn(samples.double_tunnel())
    (first,) = _of(views.first_side, Hatch, "side/0/panel/0")
    (second,) = _of(views.first_side, Hatch, "side/0/panel/1")
    assert isinstance(first, Hatch)
    assert isinstance(second, Hatch)
    # Worked by hand: opening 1.5 to 12 and 12 to 22.5 m, 0.3048 m of lap at each end.
    assert first.box == pytest.approx((1.5 - 0.3048, 0.25, 12.0 + 0.3048, 1.5))
    assert second.box == pytest.approx((12.0 - 0.3048, 0.25, 22.5 + 0.3048, 1.5))


def test_inflated_curtains_are_hatched_the_other_way() -> None:
    double = samples.double_tunnel()
    flat = double.but(air=double.air.but(inflated_sides=(False, True)))
    slants = {}
    for name, tunnel in (("inflated", double), ("flat", flat)):
        (hatch,) = _of(_drawn(tunnel).first_side, Hatch, "side/0/panel/0")
        assert isinstance(hatch, Hatch)
        slants[name] = (hatch.slant, hatch.style)
    assert slants == {"inflated": (-1, "inflated curtain"), "flat": (1, "curtain")}


def test_openings_add_up_to_the_side_between_the_pockets() -> None:
    view = _drawn(samples.double_tunnel()).first_side
    openings = [
        s for s in view.shapes if isinstance(s, Dimension) and s.mark.startswith("side/0/panel/")
    ]
    assert sum(d.ends[2] - d.ends[0] for d in openings) == pytest.approx(24.0 - 2 * 1.5)
    assert [d.text for d in openings] == ["10.500 m", "10.500 m"]


def test_sizes_are_written_in_the_readers_units() -> None:
    tunnel = samples.tunnel()
    drawn = draw_tunnel(tunnel, _planned(tunnel), "imperial")
    texts = [s.text for s in drawn.section.shapes if isinstance(s, Dimension)]
    # Worked by hand: 8 m = 26.2467 ft = 26 ft 2.96 in, to the nearest eighth 26' 3".
    assert "26' 3\"" in texts


def test_a_strip_join_draws_the_strip_in_the_bay_after_the_split() -> None:
    (strip,) = _of(_drawn(samples.double_tunnel()).second_side, scene.Polygon, "side/1/strip/0")
    assert isinstance(strip, scene.Polygon)
    assert {x for x, _y in strip.points} == {9.0, 10.5}


def test_a_fixed_side_has_no_split_and_no_crank() -> None:
    tunnel = samples.tunnel(
        sides=(samples.side("West side", (Split(at_m=12.0),), kind="fixed"), samples.side())
    )
    view = _drawn(tunnel).first_side
    assert not [s for s in view.shapes if "split" in s.mark or s.mark.endswith("crank")]
    assert _of(view, scene.Polygon, "side/0/fixed")


def test_cranks_stand_at_the_chosen_ends() -> None:
    tunnel = samples.double_tunnel()
    panels = tunnel.sides[0].panels
    turned = tunnel.but(
        sides=(
            tunnel.sides[0].but(panels=(panels[0], panels[1].but(crank_end="back"))),
            tunnel.sides[1],
        )
    )
    symbols = [s for s in _drawn(turned).first_side.shapes if isinstance(s, Symbol)]
    cranks = {s.mark: (s.at[0], s.facing) for s in symbols if s.kind == "crank"}
    assert cranks == {
        "side/0/panel/0/crank": (pytest.approx(1.5), 1),
        "side/0/panel/1/crank": (pytest.approx(22.5), -1),
    }


def test_a_rope_has_the_legs_of_the_plan_between_hip_and_bar() -> None:
    tunnel = samples.tunnel()
    planned = _planned(tunnel)
    (rope,) = _of(
        draw_tunnel(tunnel, planned, "metric").first_side, scene.Polyline, "side/0/panel/0"
    )
    assert isinstance(rope, scene.Polyline)
    assert len(rope.points) == planned.chosen.curtains[0].rope_legs + 1
    assert {y for _x, y in rope.points} == {0.25, 1.5}
    assert (rope.points[0][0], rope.points[-1][0]) == (1.5, pytest.approx(22.5))


def test_roof_sheets_lap_at_a_cross_seam() -> None:
    tunnel = add_seam(samples.tunnel(), 12.0)
    plan_view = _drawn(tunnel).plan
    sheets = [
        s for s in plan_view.shapes if isinstance(s, scene.Polygon) and s.mark.startswith("piece/")
    ]
    areas = [Polygon(s.points) for s in sheets]
    assert len(areas) == 2
    lap = areas[0].intersection(areas[1])
    # Worked by hand: the lap of 0.3048 m times the width of the roof between the hips.
    assert lap.bounds[2] - lap.bounds[0] == pytest.approx(0.3048)
    (band,) = _of(plan_view, scene.Polygon, "roof/seam/0")
    assert isinstance(band, scene.Polygon)
    assert Polygon(band.points).area == pytest.approx(lap.area)


@pytest.mark.parametrize(
    "tunnel", [samples.tunnel(), samples.gothic_tunnel(), samples.rafter_tunnel()]
)
def test_film_lies_on_the_outside_of_the_bow_in_the_section(tunnel: Tunnel) -> None:
    section = _drawn(tunnel).section
    (bow,) = _of(section, scene.Polyline, "frame")
    roof = next(s for s in section.shapes if s.style == "roof")
    assert isinstance(bow, scene.Polyline)
    assert isinstance(roof, scene.Polyline)
    # Half a tube of 48 mm lies between the middle of the tube and the film; chords of arcs may
    # take a few millimetres.
    away = [LineString(bow.points).distance(LineString([p, p])) for p in roof.points]
    assert min(away) == pytest.approx(0.024, abs=0.006)
    assert max(away) == pytest.approx(0.024, abs=0.006)


def test_two_layers_part_by_the_gap_at_the_ridge_and_meet_at_the_hips() -> None:
    section = _drawn(samples.double_tunnel()).section
    inner = next(s for s in section.shapes if s.style == "roof inner")
    outer = next(s for s in section.shapes if s.style == "roof")
    assert isinstance(inner, scene.Polyline)
    assert isinstance(outer, scene.Polyline)
    gap_m = samples.double_tunnel().skin.inflation_gap_m
    top = max(y for _x, y in outer.points) - max(y for _x, y in inner.points)
    assert top == pytest.approx(gap_m, abs=1e-3)
    assert (outer.points[0], outer.points[-1]) == (inner.points[0], inner.points[-1])


def test_heights_of_the_second_side_are_written_where_they_differ() -> None:
    def marks(tunnel: Tunnel) -> list[str]:
        return [s.mark for s in _drawn(tunnel).section.shapes if isinstance(s, Dimension)]

    assert "side/1/hip" not in marks(samples.tunnel())
    assert "side/1/hip" in marks(move_hip(samples.tunnel(), (1,), 1.7))


def test_every_split_seam_and_hip_has_a_handle_where_it_is() -> None:
    views = _drawn(add_seam(samples.double_tunnel(), 12.0))
    found: dict[str, set[tuple[str, float]]] = {}
    for handle in (s for s in _all(views) if isinstance(s, Handle)):
        place = handle.grip[0] if handle.way == "along" else handle.grip[1]
        if handle.kind != "jumper":
            found.setdefault(handle.mark, set()).add((handle.kind, round(place, 9)))
    assert found == {
        "side/0/split/0": {("split", 12.0)},
        "side/1/split/0": {("split", 9.0)},
        "roof/seam/0": {("seam", 12.0)},
        "side/0/hip": {("hip", 1.5)},
        "side/1/hip": {("hip", 1.5)},
    }


def test_a_moved_split_changes_its_own_side_and_the_plan_alone() -> None:
    tunnel = samples.double_tunnel()
    before, after = _drawn(tunnel), _drawn(move_split(tunnel, 0, 0, 13.5))
    assert before.first_side != after.first_side
    assert before.second_side == after.second_side
    assert before.section == after.section


def test_the_same_tunnel_gives_the_same_drawing() -> None:
    assert _drawn(samples.double_tunnel()) == _drawn(samples.double_tunnel())


def test_a_view_can_be_drawn_by_itself() -> None:
    tunnel = samples.double_tunnel()
    subject = Subject(tunnel, _planned(tunnel), "metric")
    views = _drawn(tunnel)
    assert draw_side(subject, 1) == views.second_side
    assert draw_plan(subject) == views.plan
    assert draw_section(subject) == views.section


def test_sheets_are_found_where_they_hang() -> None:
    tunnel = samples.double_tunnel()
    planned = _planned(tunnel)
    marks = {shape.mark for shape in _all(draw_tunnel(tunnel, planned, "metric"))}
    for piece in planned.chosen.cover.pieces:
        places = drawn_marks(piece.mark, planned)
        assert set(places) & marks, f"{piece.mark} is drawn nowhere"
    for line in planned.chosen.needs:
        for mark in line.marks:
            assert set(drawn_marks(mark, planned)) & marks, f"{mark} is drawn nowhere"
