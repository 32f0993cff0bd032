"""Lengths, diagonals, end bows and points: a box for each, numbered as they are drawn."""

import msgspec

from hoopwright.farm import AcrossUp, MeasuredBow, Tape, TwoTapes
from hoopwright.papers.form_flow import Table
from hoopwright.papers.form_page import Badge, Box, Shape
from hoopwright.papers.measuring_frame import frame_block, points_parts
from papers.sheets_to_measure import blank, bows, measured

AT_THE_DESK = {"agreement_share", "outlier_m"}
"""What is decided and not read on the site."""


def boxes_in(shapes: tuple[Shape, ...]) -> list[Box]:
    return [shape for shape in shapes if isinstance(shape, Box)]


def point_boxes(subject) -> list[Box]:
    shapes: list[Shape] = []
    for part in points_parts(subject):
        blocks = part.rows if isinstance(part, Table) else (part,)
        shapes += [shape for block in blocks for shape in block.shapes]
    return boxes_in(tuple(shapes))


def test_every_reading_of_the_tape_has_its_box() -> None:
    boxes = boxes_in(frame_block(blank()).shapes)
    names = {f.name for f in msgspec.structs.fields(Tape)} - {"bows"} - AT_THE_DESK
    assert {box.field[2] for box in boxes} == names
    assert all(box.field[:2] == ("frame", "tape") for box in boxes)


def test_boxes_follow_the_tape_and_the_numbers_of_the_drawing() -> None:
    shapes = frame_block(bows(5)).shapes
    pairs = [box.field[2:] for box in boxes_in(shapes)]
    order = ("hip_lengths_m", "base_lengths_m", "diagonals_m", "leans_m")
    assert pairs == [*((name, n) for name in order for n in (0, 1)), ("error_m",)]
    assert [s.number for s in shapes if isinstance(s, Badge)] == list(range(12, 20))


def test_what_was_read_of_the_frame_is_printed() -> None:
    printed = {b.field[2:]: b.entered for b in boxes_in(frame_block(measured()).shapes)}
    assert printed == {
        ("hip_lengths_m", 0): "30.000 m",
        ("hip_lengths_m", 1): "30.050 m",
        ("base_lengths_m", 0): "30.020 m",
        ("base_lengths_m", 1): "",
        ("diagonals_m", 0): "31.050 m",
        ("diagonals_m", 1): "31.200 m",
        ("leans_m", 0): "0.050 m",
        ("leans_m", 1): "-0.020 m",
        ("error_m",): "6.0 mm",
    }


def test_point_has_a_box_for_each_way_to_take_it() -> None:
    boxes = point_boxes(blank())
    ways = [f.name for kind in (AcrossUp, TwoTapes) for f in msgspec.structs.fields(kind)]
    profile = ("frame", "profile")
    for n in range(3):
        fields = [b.field for b in boxes if b.field[:4] == (*profile, "points", n)]
        assert fields == [(*profile, "points", n, name) for name in ways]
    others = {b.field[2] for b in boxes if b.field[:2] == profile}
    assert others == {f.name for f in msgspec.structs.fields(MeasuredBow)}


def test_points_that_were_measured_are_printed_and_leave_room_for_more() -> None:
    boxes = [b for b in point_boxes(measured()) if b.field[2:3] == ("points",)]
    printed = {b.field[3:]: b.entered for b in boxes if b.entered}
    # The second of the five was taken with two tapes.
    assert printed[(0, "across_m")] == "0.100 m"
    assert printed[(0, "up_m")] == "1.400 m"
    assert (1, "up_m") not in printed
    assert (printed[(1, "first_m")], printed[(1, "second_m")]) == ("2.600 m", "6.900 m")
    assert {n for n, _name in printed} == set(range(5))
    assert max(b.field[3] for b in boxes) >= 7


def test_sixty_points_all_have_their_row() -> None:
    subject = measured()
    tunnel = subject.tunnel
    assert tunnel is not None
    # Points of a parabola over a span of 8 m, on 1 m: up to the 31st, then down.
    points = tuple(
        AcrossUp(across_m=8 * n / 62, up_m=1 + 3 * (1 - (n / 31 - 1) ** 2)) for n in range(1, 61)
    )
    profile = MeasuredBow(span_m=8.0, points=points)
    frame = tunnel.frame.but(profile=profile, tape=Tape())
    many = msgspec.structs.replace(tunnel, frame=frame)
    subject = type(subject)(subject.paper, "metric", subject.families, "", many)
    printed = [b for b in point_boxes(subject) if b.entered and b.field[4:] == ("up_m",)]
    assert len(printed) == 60
