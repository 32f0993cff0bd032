"""Both end walls have boxes for doors, vents, fans and rails, with room for more."""

import msgspec
import pytest

from hoopwright.farm import Cut, Door
from hoopwright.papers.form_flow import Block, Table
from hoopwright.papers.form_page import Badge, Box, Shape
from hoopwright.papers.measuring_ends import ends_parts
from papers.sheets_to_measure import blank, measured


def shapes_of(subject) -> list[Shape]:
    shapes: list[Shape] = []
    for part in ends_parts(subject):
        blocks = (part.head, *part.rows) if isinstance(part, Table) else (part,)
        shapes += [shape for block in blocks for shape in block.shapes]
    return shapes


def boxes_of(subject) -> list[Box]:
    return [shape for shape in shapes_of(subject) if isinstance(shape, Box)]


@pytest.mark.parametrize("end", [0, 1])
def test_every_size_of_a_door_and_an_opening_has_its_box(end: int) -> None:
    boxes = boxes_of(blank())
    for name, kind in (("doors", Door), ("cuts", Cut)):
        found = {b.field[4] for b in boxes if b.field[:3] == ("ends", end, name)}
        assert found == {f.name for f in msgspec.structs.fields(kind)}


def test_doors_come_before_openings_and_these_before_rails() -> None:
    order = list(dict.fromkeys(box.field[1:3] for box in boxes_of(blank())))
    names = ("doors", "cuts", "rails_m")
    assert order == [(end, name) for end in (0, 1) for name in names]


def test_left_edge_is_asked_first_and_sill_before_the_sizes() -> None:
    boxes = boxes_of(blank())
    door = [b.field[4] for b in boxes if b.field[:4] == ("ends", 0, "doors", 0)]
    cut = [b.field[4] for b in boxes if b.field[:4] == ("ends", 0, "cuts", 0)]
    assert door == ["left_m", "width_m", "height_m"]
    assert cut == ["kind", "kind", "left_m", "sill_m", "width_m", "height_m"]


def test_every_number_of_a_column_is_drawn() -> None:
    parts = ends_parts(blank())
    drawn = {s.number for s in parts[2].shapes if isinstance(s, Badge)}
    assert isinstance(parts[2], Block)
    at_boxes = {
        s.number
        for part in parts
        for block in ((part.head,) if isinstance(part, Table) else (part,))
        for s in block.shapes
        if isinstance(s, Badge)
    }
    assert drawn == at_boxes == set(range(20, 28))


def test_openings_that_are_known_are_printed() -> None:
    printed = {b.field: b.entered for b in boxes_of(measured()) if b.entered}
    # As entered: a vent in the front end, a fan in the back end, front rails at 1 and 2 m.
    assert printed[("ends", 0, "cuts", 0, "kind", "vent")] == "x"
    assert printed[("ends", 1, "cuts", 0, "kind", "fan")] == "x"
    assert ("ends", 1, "cuts", 0, "kind", "vent") not in printed
    assert printed[("ends", 0, "cuts", 0, "sill_m")] == "2.000 m"
    assert printed[("ends", 0, "rails_m", 1)] == "2.000 m"


def test_more_openings_and_rails_than_usual_get_rows() -> None:
    subject = measured()
    tunnel = subject.tunnel
    assert tunnel is not None
    heights = tuple(0.2 * n for n in range(1, 12))
    end = tunnel.ends[0].but(rails_m=heights, seams_m=(), cuts=tunnel.ends[0].cuts * 9)
    many = msgspec.structs.replace(tunnel, ends=(end, tunnel.ends[1]))
    boxes = boxes_of(type(subject)(subject.paper, "metric", subject.families, "", many))
    rails = [b for b in boxes if b.field[:3] == ("ends", 0, "rails_m")]
    assert len([b for b in rails if b.entered]) == 11
    assert len(rails) == 15
    sills = [b for b in boxes if b.field[:3] == ("ends", 0, "cuts") and b.field[4] == "sill_m"]
    assert (len(sills), sum(bool(b.entered) for b in sills)) == (10, 9)
