"""One side in the end section: what the roll comes near to is drawn as far off as the plan says."""

import pytest
from shapely import Polygon as Area
from shapely import box

import samples
from hoopwright.farm import Side, Tunnel
from hoopwright.papers.scene import Line, Polygon, Polyline, Style, View
from hoopwright.papers.view_section_side import pushed_out
from papers.every_kind import drawn, drop_side, geared_side, tunnel_of, with_panels, woven_side

FIRST = "side/0/panel/0"
# A polygon of 24 corners stands for a circle and is 1.2 % smaller.
ROUND = 0.02


def _area(view: View, mark: str, style: Style) -> Area:
    (found,) = (
        s for s in view.shapes if isinstance(s, Polygon) and (s.mark, s.style) == (mark, style)
    )
    return Area(found.points)


def _with_gutter(first: Side, drop_m: float) -> Tunnel:
    tunnel = tunnel_of(first, samples.side("East side"))
    boards = tunnel.frame.boards
    changed = (boards[0].but(gutter_drop_m=drop_m), boards[1])
    return tunnel.but(frame=tunnel.frame.but(boards=changed))


@pytest.mark.parametrize("winding", ["into", "out"])
def test_roll_lies_on_its_side_of_the_film_and_is_as_thick_as_planned(winding: str) -> None:
    side = with_panels(samples.side(), winding=winding)
    views, planned = drawn(tunnel_of(side, samples.side("East side")))
    work = planned.chosen.curtains[0]
    for style, diameter_m in (("bar", work.diameters_m[0]), ("open", work.diameters_m[2])):
        left, _low, right, _high = _area(views.section, FIRST, style).bounds
        assert right - left == pytest.approx(diameter_m)
        # Film hangs 38.1 mm off the outside of the leg: 4 m and half a tube of 48 mm.
        film_m = -(4.0 + 0.024 + 0.0381)
        edge_m = left if winding == "into" else right
        assert edge_m == pytest.approx(film_m, abs=1e-4)


def test_gap_to_the_gutter_is_the_planned_one() -> None:
    views, planned = drawn(_with_gutter(samples.side(stop_m=0.3), 0.1))
    gutter = _area(views.section, "side/0/hip", "board")
    roll = _area(views.section, FIRST, "open")
    gap_m = gutter.bounds[1] - roll.bounds[3]
    assert gap_m == pytest.approx(planned.chosen.curtains[0].gutter_gap_m)
    # Worked by hand: it stops 0.3 m below the hip, the gutter takes 0.1 m, the roll its half.
    half_m = planned.chosen.curtains[0].diameters_m[2] / 2
    assert gap_m == pytest.approx(0.3 - 0.1 - half_m)


def test_gap_to_pocket_film_is_the_planned_one() -> None:
    side = with_panels(samples.side(stop_m=0.3), winding="into")
    views, planned = drawn(tunnel_of(side, samples.side("East side")))
    (pocket,) = (
        s
        for s in views.section.shapes
        if isinstance(s, Polyline) and s.mark.startswith("side/0/po")
    )
    roll = _area(views.section, FIRST, "open")
    gap_m = min(x for x, _y in pocket.points) - roll.bounds[2]
    assert gap_m == pytest.approx(planned.chosen.curtains[0].pocket_gap_m, abs=1e-6)


def test_film_of_a_drop_down_side_bunches_between_baseboard_and_open_rod() -> None:
    views, _planned = drawn(tunnel_of(samples.side(), drop_side()))
    mark = "side/1/panel/0"
    rod = _area(views.section, mark, "open")
    (folds,) = (
        s
        for s in views.section.shapes
        if isinstance(s, Polyline) and (s.mark, s.style) == (mark, "open")
    )
    heights = [y for _x, y in folds.points]
    assert (min(heights), max(heights)) == pytest.approx((0.3, 0.6))
    assert rod.centroid.y == pytest.approx(0.6)
    shut = _area(views.section, mark, "bar")
    assert shut.centroid.y == pytest.approx(1.5, abs=1e-3)
    # The rod is the bar of the small catalogue, 35 mm thick.
    assert shut.area == pytest.approx(3.14159 * 0.0175**2, rel=ROUND)


def test_woven_curtain_has_its_profile_at_the_hip_and_a_hem_round_the_bar() -> None:
    views, _planned = drawn(tunnel_of(woven_side(), samples.side("East side")))
    assert _area(views.section, FIRST, "board").bounds[3] == pytest.approx(1.5, abs=1e-3)
    hem = _area(views.section, FIRST, "curtain")
    assert hem.contains(_area(views.section, FIRST, "bar"))


def test_guide_pipe_stands_outside_the_film() -> None:
    views, planned = drawn(tunnel_of(geared_side(), samples.side("East side")))
    (pipe,) = (s for s in views.section.shapes if isinstance(s, Line) and s.style == "crank")
    x, low, _x, high = pipe.ends
    assert high - low == pytest.approx(planned.chosen.curtains[0].guide_m)
    assert x < _area(views.section, FIRST, "bar").bounds[0]


def test_everything_of_a_side_lies_outside_the_leg_but_the_boards() -> None:
    views, _planned = drawn(_with_gutter(samples.side(), 0.1))
    inside = box(-4.0, 0.0, 4.0, 1.5)
    for style in ("bar", "open"):
        assert not inside.intersects(_area(views.section, FIRST, style))


def test_a_path_is_pushed_out_square_to_itself() -> None:
    # Worked by hand: a path that runs to the right has its outside above it.
    assert pushed_out(((0.0, 0.0), (1.0, 0.0), (2.0, 0.0)), (0.0, 0.5, 1.0)) == (
        (0.0, 0.0),
        (1.0, 0.5),
        (2.0, 1.0),
    )
