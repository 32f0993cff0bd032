"""Curtains of every kind in the elevation, drawn as the plan says and to scale."""

import math

import pytest

import samples
from hoopwright.farm import Side
from hoopwright.papers.scene import Hatch, Label, Line, Polygon, Shape, Style, Symbol, View
from papers.every_kind import drawn, drop_side, geared_side, tunnel_of, with_panels, woven_side

FIRST = "side/0/panel/0"


def _lines(view: View, mark: str, style: Style) -> list[Line]:
    return [s for s in view.shapes if isinstance(s, Line) and (s.mark, s.style) == (mark, style)]


def _areas(view: View, mark: str, style: Style) -> list[Polygon]:
    return [s for s in view.shapes if isinstance(s, Polygon) and (s.mark, s.style) == (mark, style)]


def _heights(shape: Polygon) -> tuple[float, float]:
    return min(y for _x, y in shape.points), max(y for _x, y in shape.points)


def _symbols(shapes: tuple[Shape, ...]) -> dict[str, Symbol]:
    return {s.mark: s for s in shapes if isinstance(s, Symbol) and s.kind == "crank"}


def test_drop_down_film_hangs_from_baseboard_to_hip() -> None:
    view = drawn(tunnel_of(samples.side(), drop_side()))[0].second_side
    (hatch, _other) = [s for s in view.shapes if isinstance(s, Hatch)]
    # The baseboard ends at 0.3 m, the hip board stands at 1.5 m.
    assert (hatch.box[1], hatch.box[3]) == (0.3, 1.5)


def test_rod_hangs_on_a_line_at_each_bow_and_at_both_ends() -> None:
    views, planned = drawn(tunnel_of(samples.side(), drop_side()))
    mark = "side/1/panel/0"
    (work,) = (w for w in planned.chosen.curtains if w.mark == mark)
    rod = _lines(views.second_side, mark, "bar")[0]
    lines = [
        line
        for line in _lines(views.second_side, mark, "rope")
        if line.ends[0] == line.ends[2] and line.ends[3] == rod.ends[1]
    ]
    assert len(lines) == work.lift_lines
    # The opening runs from 1.5 to 12 m with bows every 1.5 m; the curtain laps 0.3048 m more.
    spots = [1.5 - 0.3048, *(1.5 * k for k in range(2, 8)), 12.0 + 0.3048]
    assert [line.ends[0] for line in lines] == pytest.approx(spots)


def test_rod_of_a_drop_down_curtain_goes_down_to_the_bunch() -> None:
    view = drawn(tunnel_of(samples.side(), drop_side()))[0].second_side
    (opened,) = _lines(view, "side/1/panel/0", "open")
    # On straight legs: the baseboard at 0.3 m and a bunch of 0.3 m above it.
    assert opened.ends[1] == pytest.approx(0.6)


def test_drum_stands_at_the_handle_and_is_as_thick_as_entered() -> None:
    view = drawn(tunnel_of(samples.side(), drop_side()))[0].second_side
    mark = "side/1/panel/0/crank"
    (drum,) = _areas(view, mark, "bar")
    low, high = _heights(drum)
    assert high - low == pytest.approx(0.08)
    assert (low + high) / 2 == pytest.approx(1.0)
    assert _symbols(view.shapes)[mark].at == (1.5, 1.0)


def test_woven_curtains_are_hatched_both_ways_with_profile_and_hem() -> None:
    view = drawn(tunnel_of(woven_side(), samples.side()))[0].first_side
    slants = [s.slant for s in view.shapes if isinstance(s, Hatch) and s.mark == FIRST]
    assert sorted(slants) == [-1, 1]
    tops = [_heights(area)[1] for area in _areas(view, FIRST, "board")]
    assert tops == [1.5]
    hem = _areas(view, FIRST, "curtain")[1]
    low, high = _heights(hem)
    assert low < 0.25 < high
    (label,) = (s for s in view.shapes if isinstance(s, Label) and s.mark == FIRST)
    assert label.text.startswith("Woven curtain 1")


def test_guide_pipe_stands_in_the_ground_and_is_as_long_as_planned() -> None:
    views, planned = drawn(tunnel_of(geared_side(crank_end="middle"), samples.side()))
    (pipe,) = _lines(views.first_side, f"{FIRST}/crank", "crank")
    x1, low, x2, high = pipe.ends
    assert x1 == x2 == pytest.approx((1.5 - 0.3048 + 12.0 + 0.3048) / 2)
    assert low == -0.45
    assert high - low == pytest.approx(planned.chosen.curtains[0].guide_m)
    assert _symbols(views.first_side.shapes)[f"{FIRST}/crank"].at[0] == x1


@pytest.mark.parametrize(("end", "away"), [("front", -1), ("back", 1)])
def test_extension_pipe_runs_from_the_joint_up_to_the_handle(end: str, away: int) -> None:
    side = with_panels(samples.side(), crank_end=end)
    views, _planned = drawn(tunnel_of(side, samples.side("East side")))
    (pipe,) = _lines(views.first_side, f"{FIRST}/crank", "crank")
    x1, y1, x2, y2 = pipe.ends
    # The pipe is 1.5 m long and the handle is turned 1.0 m above the ground.
    assert math.dist((x1, y1), (x2, y2)) == pytest.approx(1.5)
    assert (y1, y2) == pytest.approx((0.25, 1.0))
    assert math.copysign(1, x2 - x1) == away


def test_straps_are_as_many_as_planned_and_upright() -> None:
    side = with_panels(samples.side(), rope="straps")
    views, planned = drawn(tunnel_of(side, samples.side("East side")))
    straps = [line for line in _lines(views.first_side, FIRST, "rope") if line.ends[3] == 1.5]
    assert len(straps) == planned.chosen.curtains[0].rope_legs
    assert all(line.ends[0] == line.ends[2] for line in straps)


def test_straps_at_each_bow_stand_on_the_bows() -> None:
    side = with_panels(samples.side(rope_step_m=None), rope="straps")
    views, planned = drawn(tunnel_of(side, samples.side("East side")))
    straps = [line for line in _lines(views.first_side, FIRST, "rope") if line.ends[3] == 1.5]
    assert len(straps) == planned.chosen.curtains[0].rope_legs
    # The opening reaches from the second to the last but one of 17 bows, 1.5 m apart.
    assert [line.ends[0] for line in straps] == pytest.approx([1.5 * k for k in range(1, 16)])


@pytest.mark.parametrize(
    ("bottom", "style", "low"),
    [("skirt", "curtain", 0.0), ("hat_purlin", "board", 0.2)],
)
def test_bottom_edge_closes_the_gap_under_the_bar(bottom: str, style: Style, low: float) -> None:
    side: Side = with_panels(samples.side(), bottom=bottom)
    view = drawn(tunnel_of(side, samples.side("East side")))[0].first_side
    found = [_heights(area) for area in _areas(view, FIRST, style)]
    assert (pytest.approx(low), 0.25) in found


def test_offered_splits_are_drawn_and_named_and_cannot_be_picked() -> None:
    tunnel = tunnel_of(samples.side(), samples.side("East side"))
    views, _planned = drawn(tunnel, ((0, 9.0), (1, 13.5)))
    for view, at_m in ((views.first_side, 9.0), (views.second_side, 13.5)):
        offered = [s for s in view.shapes if s.style == "proposed"]
        assert [type(s) for s in offered] == [Line, Label]
        assert {s.mark for s in offered} == {""}
        assert offered[0].ends[0] == offered[0].ends[2] == at_m
        assert offered[1].text == f"Proposed split · {at_m:.3f} m"
    ticks = [s.ends for s in views.plan.shapes if isinstance(s, Line) and s.style == "proposed"]
    # The first side is above the middle of the plan, the second below.
    assert [(x, math.copysign(1, y)) for x, y, _x, _y in ticks] == [(9.0, 1), (13.5, -1)]
