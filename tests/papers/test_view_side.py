"""The elevation of a side: what is cut off at the break line, and what stands below it."""

import pytest

import samples
from hoopwright.farm import BowReading, RigidSheet, SideReading, Tape, Tunnel
from hoopwright.farm.change import add_seam, move_hip
from hoopwright.papers.scene import Handle, Line, Polygon, Polyline, View, points_of
from papers.every_kind import drawn


def _elevation(tunnel: Tunnel) -> View:
    return drawn(tunnel)[0].first_side


def _break(view: View) -> list[Polyline]:
    return [s for s in view.shapes if isinstance(s, Polyline) and s.style == "dimension"]


def test_roof_is_broken_off_a_quarter_of_its_rise_above_the_hip() -> None:
    tunnel = samples.tunnel()
    ridge_m = drawn(tunnel)[1].survey.height_m
    # The hip of the small tunnel lies at 1.5 m; a quarter of what is above it, or 0.6 m if less.
    for hip_m in (1.0, 1.5):
        view = _elevation(move_hip(tunnel, (0, 1), hip_m))
        wanted_m = hip_m + max(0.6, (ridge_m - hip_m) / 4)
        assert view.box[3] == pytest.approx(wanted_m)
        (line,) = _break(view)
        assert (line.points[0][0], line.points[-1][0]) == (view.box[0], view.box[2])
        assert line.points[0][1] == line.points[-1][1] == view.box[3]
        assert {y > view.box[3] for _x, y in line.points} == {True, False}


def test_bows_and_roof_end_at_the_break_line_and_the_section_shows_all() -> None:
    views, planned = drawn(add_seam(samples.tunnel(), 12.0))
    view = views.first_side
    cut_m = view.box[3]
    bows = [s for s in view.shapes if isinstance(s, Line) and s.mark.startswith("bow/")]
    assert {s.ends[3] for s in bows} == {cut_m}
    sheets = [s for s in view.shapes if isinstance(s, Polygon) and s.style in ("roof", "seam")]
    assert {max(y for _x, y in s.points) for s in sheets} == {cut_m}
    assert views.section.box[3] == pytest.approx(planned.survey.height_m)


def test_handles_keep_their_room_below_the_break_line() -> None:
    view = _elevation(add_seam(samples.tunnel(), 12.0))
    hip, seam = (
        next(s for s in view.shapes if isinstance(s, Handle) and s.kind == kind)
        for kind in ("hip", "seam")
    )
    assert seam.grip[1] - hip.grip[1] > 0.3
    assert view.box[3] - seam.grip[1] > 0.2
    assert view.box[3] - hip.grip[1] >= 0.6


def test_a_hip_near_the_ridge_leaves_nothing_to_break_off() -> None:
    tunnel = samples.tunnel()
    ridge_m = drawn(tunnel)[1].survey.height_m
    view = _elevation(move_hip(tunnel, (0, 1), ridge_m - 0.7))
    assert view.box[3] == ridge_m
    assert not _break(view)


def test_the_height_of_the_drawing_follows_the_hip_all_the_way() -> None:
    tunnel, tops = samples.tunnel(), []
    for hip_m in (0.8, 1.2, 1.6, 2.0):
        view = _elevation(move_hip(tunnel, (0, 1), hip_m))
        tops.append(view.box[3])
        assert max(y for s in view.shapes for _x, y in points_of(s)) <= view.box[3] + 0.2
    assert tops == sorted(tops)


def test_what_is_told_aloud_says_how_far_the_roof_is_shown() -> None:
    view = _elevation(samples.tunnel())
    assert f"{view.box[3]:.3f} m" in view.described


def _lines(view: View, style: str) -> list[Line | Polyline]:
    return [s for s in view.shapes if isinstance(s, Line | Polyline) and s.style == style]


def test_ground_and_boards_run_from_bow_to_bow_as_read() -> None:
    plain = samples.tunnel()
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(hip_m=hip_m, ground_m=ground_m), SideReading()))
        for bow, hip_m, ground_m in ((1, 1.5, 0.0), (9, 1.4, -0.4), (17, 1.5, 0.1))
    )
    views = drawn(plain.but(frame=plain.frame.but(tape=Tape(bows=rows))))[0]
    assert not _lines(views.first_side, "ground")
    lines = [s for s in _lines(views.first_side, "unread") if isinstance(s, Polyline)]
    (ground,) = [s for s in lines if s.mark == ""]
    (hip,) = [s for s in lines if s.mark == "side/0/hip"]
    # Bows 1, 5, 9 and 17 stand at 0, 6, 12 and 24 m; half way to bow 9 the ground lies at -0.2 m.
    found = dict(ground.points)
    assert [found[x] for x in (0.0, 6.0, 12.0, 24.0)] == pytest.approx([0.0, -0.2, -0.4, 0.1])
    assert dict(hip.points)[6.0] == pytest.approx(1.45)
    assert views.first_side.box[1] == -0.4
    bow = next(s for s in views.first_side.shapes if isinstance(s, Line) and s.mark == "bow/8")
    assert bow.ends[1] == -0.4
    assert "interpolated and drawn dashed" in views.first_side.described
    assert "interpolated" not in views.second_side.described


def test_bays_between_two_readings_are_drawn_full_and_the_others_dashed() -> None:
    plain = samples.tunnel()
    rows = tuple(
        BowReading(bow=bow, sides=(SideReading(ground_m=-0.1), SideReading())) for bow in (3, 4, 5)
    )
    view = drawn(plain.but(frame=plain.frame.but(tape=Tape(bows=rows))))[0].first_side
    (full,) = _lines(view, "ground")
    # Bows 3 to 5 stand from 3 to 6 m.
    assert [x for x, _y in points_of(full)] == pytest.approx([3.0, 4.5, 6.0])
    dashed = [[x for x, _y in points_of(s)] for s in _lines(view, "unread")]
    assert [(min(xs), max(xs)) for xs in dashed] == [
        (pytest.approx(-0.6096), 0.0),
        (0.0, 3.0),
        (6.0, 24.0),
        (24.0, pytest.approx(24.6096)),
    ]


@pytest.mark.parametrize("style", ["rigid", "end wall"])
def test_end_walls_are_seen_from_the_side_and_from_above(style: str) -> None:
    plain = samples.tunnel()
    front = plain.ends[0]
    if style == "rigid":
        front = front.but(film=None, rigid=RigidSheet(part="crank"))
    views = drawn(plain.but(ends=(front, plain.ends[1].but(film=None))))[0]
    for view in (views.first_side, views.plan, views.second_side):
        assert [s.mark for s in _lines(view, style)] == ["end/0"]


def test_ground_that_was_not_read_is_one_level_line() -> None:
    view = _elevation(samples.tunnel())
    (ground,) = _lines(view, "ground")
    assert isinstance(ground, Line)
    assert (ground.ends[1], ground.ends[3], view.box[1]) == (0.0, 0.0, 0.0)
