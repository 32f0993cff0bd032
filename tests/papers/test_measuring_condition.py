"""Every family can be ticked at every place, and stretches have rows of their own."""

from typing import get_args

import msgspec

from hoopwright.farm import PartState
from hoopwright.farm.condition import State, Where
from hoopwright.papers.form_flow import Table
from hoopwright.papers.form_page import Box
from hoopwright.papers.measuring_condition import condition_parts
from papers.sheets_to_measure import blank, measured


def boxes_of(subject) -> list[Box]:
    blocks = [
        block
        for part in condition_parts(subject)
        for block in ((part.head, *part.rows) if isinstance(part, Table) else (part,))
    ]
    return [shape for block in blocks for shape in block.shapes if isinstance(shape, Box)]


def test_each_family_has_three_ticks_and_a_share_at_each_place() -> None:
    subject = blank()
    boxes = [b for b in boxes_of(subject) if b.field[0] == "condition" and len(b.field) > 3]
    places = {b.field[1:3] for b in boxes if isinstance(b.field[1], str)}
    assert places == {(f, w) for f in subject.families for w in get_args(Where)}
    for family, where in places:
        fields = [b.field[3:] for b in boxes if b.field[1:3] == (family, where)]
        assert fields == [*(("state", s) for s in get_args(State)), ("replace_share",)]


def test_stretch_has_a_box_for_every_field() -> None:
    boxes = [b for b in boxes_of(blank()) if b.field[:2] == ("condition", 0)]
    names = list(dict.fromkeys(b.field[2] for b in boxes))
    assert names == [f.name for f in msgspec.structs.fields(PartState)]


def test_what_was_found_is_ticked() -> None:
    # As entered: film of the roof stays; 40 % of the curtains' parts from bow 2 to bow 5 are
    # replaced.
    printed = {b.field[1:]: b.entered for b in boxes_of(measured()) if b.entered}
    assert printed == {
        ("Film", "roof", "state", "keep"): "x",
        (0, "family"): "Curtains",
        (0, "where"): "everywhere",
        (0, "from_bow"): "2",
        (0, "to_bow"): "5",
        (0, "state", "repair"): "x",
        (0, "replace_share"): "40%",
    }
