"""The survey of a frame: bays, sides, areas, and a working for every figure."""

import math
from dataclasses import fields

import pytest
from hypothesis import given
from shapely import LineString, Polygon, box

from hoopwright.farm import EvenBows, Frame, ListedBows, RoundBow, SideBoards
from hoopwright.farm.profile import Profile
from hoopwright.quantity.working import explain
from hoopwright.survey import Survey, survey_frame
from profiles import profiles
from samples import gothic_tunnel, rafter_tunnel, tunnel

FRAMES = {
    "round": tunnel().frame,
    "gothic": gothic_tunnel().frame,
    "rafters": rafter_tunnel().frame,
}
each_frame = pytest.mark.parametrize("frame", FRAMES.values(), ids=FRAMES)


def _uneven(frame: Frame) -> Frame:
    low = SideBoards(hip_height_m=1.2, baseboard_height_m=0.4)
    return frame.but(boards=(frame.boards[0], low))


def test_bows_make_one_bay_less() -> None:
    frame = tunnel().frame
    survey = survey_frame(frame.but(bows=EvenBows(count=23, spacing_m=1.25)))
    # Counted as fence posts: 23 posts stand round 22 gaps, 22 x 1.25 = 27.5.
    assert survey.bay_count == 22
    assert survey.length_m == 27.5
    assert len(survey.bows_m) == 23


def test_listed_bows_give_the_length_whatever_the_tape_says() -> None:
    frame = tunnel().frame.but(bows=ListedBows(positions_m=(0.0, 1.4, 2.7, 4.3)), length_m=9.0)
    survey = survey_frame(frame)
    assert (survey.bay_count, survey.length_m) == (3, 4.3)


@each_frame
def test_roof_and_sides_agree_with_a_line_cut_at_the_boards(frame: Frame) -> None:
    survey = survey_frame(_uneven(frame))
    line = LineString(survey.curve.outline(0.001))
    for n, reach in enumerate(((-50, 0), (0, 50))):
        boards = _uneven(frame).boards[n]
        band = box(reach[0], boards.baseboard_height_m, reach[1], boards.hip_height_m)
        assert survey.side_m[n] == pytest.approx(line.intersection(band).length, abs=1e-5)
    above = [box(-50, 1.5, 0, 50), box(0, 1.2, 50, 50)]
    roof_m = sum(line.intersection(part).length for part in above)
    assert survey.roof_girth_m == pytest.approx(roof_m, abs=1e-5)
    assert survey.girth_m == pytest.approx(line.length, abs=1e-5)


@each_frame
def test_hip_seams_lie_on_their_side_of_the_centre_line(frame: Frame) -> None:
    survey = survey_frame(_uneven(frame))
    line = LineString(survey.curve.outline(0.001))
    for n, height_m in enumerate((1.5, 1.2)):
        assert survey.hip_across_m[n] * (-1, 1)[n] > 0
        hip = line.interpolate(survey.hip_at_m[n])
        assert (hip.x, hip.y) == pytest.approx((survey.hip_across_m[n], height_m), abs=1e-4)
        assert line.interpolate(survey.base_at_m[n]).y == pytest.approx((0.3, 0.4)[n], abs=1e-4)


@each_frame
def test_space_is_counted_to_the_centre_line_and_cover_to_the_outside(frame: Frame) -> None:
    survey = survey_frame(frame)
    bare = survey_frame(frame.but(tube_diameter_m=0.0))
    section_m2 = Polygon(bare.curve.outline(0.001)).area
    assert survey.section_area_m2 == pytest.approx(section_m2, rel=1e-6)
    assert survey.volume_m3 == pytest.approx(24.0 * section_m2, rel=1e-6)
    assert survey.floor_area_m2 == pytest.approx(8.0 * 24.0)
    girth_m = LineString(survey.curve.outline(0.001)).length
    assert survey.cover_area_m2 == pytest.approx(24.0 * girth_m + 2 * section_m2, rel=1e-6)


@each_frame
def test_every_figure_says_how_it_was_got(frame: Frame) -> None:
    survey = survey_frame(frame)
    plain = {"workings", "curve", "bows_m", "taped", "along", "side_bows"}
    for name in (f.name for f in fields(Survey) if f.name not in plain):
        if getattr(survey, name) is None:
            continue
        working = survey.working(name)
        assert working.inputs
        for units in ("imperial", "metric"):
            assert "Source:" in explain(working, units)


@given(profiles())
def test_boards_split_the_girth_without_rest(profile: Profile) -> None:
    boards = SideBoards(hip_height_m=0.5, baseboard_height_m=0.2)
    frame = tunnel().frame.but(profile=profile, boards=(boards, boards))
    survey = survey_frame(frame)
    below_m = survey.base_at_m[0] + survey.girth_m - survey.base_at_m[1]
    whole_m = below_m + sum(survey.side_m) + survey.roof_girth_m
    assert whole_m == pytest.approx(survey.girth_m)
    assert survey.roof_girth_m > 0
    assert survey.side_m[0] == pytest.approx(survey.side_m[1])


def test_hip_exactly_at_the_shoulder_is_surveyed() -> None:
    # Plumb legs of 1.5 m: the side is as long as it is high, the roof is the half circle.
    profile = RoundBow(span_m=6.0, leg_height_m=1.5, peak_height_m=4.5)
    survey = survey_frame(tunnel().frame.but(profile=profile, tube_diameter_m=0.0))
    assert survey.side_m == pytest.approx((1.2, 1.2))
    assert survey.roof_girth_m == pytest.approx(3 * math.pi)
