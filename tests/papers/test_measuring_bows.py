"""The table of the bows has a row for every bow and a box for every reading of it."""

import msgspec
import pytest

from hoopwright.farm import BowReading, SideReading
from hoopwright.farm.change_tape import suggested_bows
from hoopwright.papers.form_flow import Block
from hoopwright.papers.form_page import Badge, Box, Text
from hoopwright.papers.measuring_bows import SPARE_ROWS, first_bows, other_bows
from hoopwright.papers.measuring_subject import MeasuringSubject
from papers.sheets_to_measure import blank, bows, measured

IN_ORDER = [
    ("over_hips_m",),
    ("over_baseboards_m",),
    *(("sides", n, name) for n in (0, 1) for name in ("hip_m", "baseboard_m", "ground_m")),
    ("dip_m",),
]


def boxes_in(row: Block) -> list[Box]:
    return [shape for shape in row.shapes if isinstance(shape, Box)]


def number_of(row: Block) -> str:
    return next((s.words for s in row.shapes if isinstance(s, Text)), "")


def all_rows(subject: MeasuringSubject) -> list[Block]:
    return [*first_bows(subject).rows, *other_bows(subject)[1].rows]


def entered_paths(kind: type[msgspec.Struct]) -> set[tuple[str | int, ...]]:
    """Return every path in a reading of a bow; sides are gone into."""
    paths: set[tuple[str | int, ...]] = set()
    for field in msgspec.structs.fields(kind):
        if field.name == "sides":
            side = {f.name for f in msgspec.structs.fields(SideReading)}
            paths |= {("sides", n, name) for n in (0, 1) for name in side}
        else:
            paths.add((field.name,))
    return paths


def test_every_reading_of_a_bow_has_one_box_in_each_row() -> None:
    paths = entered_paths(BowReading)
    for row in all_rows(bows(30)):
        boxes = boxes_in(row)
        tails = [box.field[4:] for box in boxes if box.field[:3] == ("frame", "tape", "bows")]
        known = number_of(row) != ""
        assert len(tails) == len(set(tails))
        assert set(tails) == (paths - {("bow",)} if known else paths)


def test_boxes_follow_the_columns_of_the_tape() -> None:
    row = first_bows(bows(30)).rows[1]
    bow = int(number_of(row))
    wanted = [("frame", "bows", "positions_m", bow)]
    wanted += [("frame", "tape", "bows", bow, *tail) for tail in IN_ORDER]
    assert [box.field for box in boxes_in(row)] == wanted


@pytest.mark.parametrize("count", [2, 4, 5, 6, 30, 100])
def test_every_bow_has_one_row_suggested_ones_first_and_marked(count: int) -> None:
    subject = bows(count)
    assert subject.tunnel is not None
    first = [int(number_of(row)) for row in first_bows(subject).rows]
    others = [number_of(row) for row in other_bows(subject)[1].rows]
    assert first == list(suggested_bows(subject.tunnel))
    assert others[-SPARE_ROWS:] == [""] * SPARE_ROWS
    assert sorted(first + [int(n) for n in others[:-SPARE_ROWS]]) == list(range(1, count + 1))
    marked = {box.heavy for row in first_bows(subject).rows for box in boxes_in(row)}
    unmarked = {box.heavy for row in other_bows(subject)[1].rows for box in boxes_in(row)}
    assert (marked, unmarked) == ({True}, {False})


def test_bow_with_a_reading_stands_among_the_first() -> None:
    subject = measured()
    tunnel = subject.tunnel
    assert tunnel is not None
    read = {reading.bow for reading in tunnel.frame.tape.bows}
    assert read <= {int(number_of(row)) for row in first_bows(subject).rows}


def test_what_was_read_is_printed_in_its_box() -> None:
    # As entered: bow 5 has 9.62 m over the hips, a dip of 0.03 m, the first side's ground at
    # -0.04 m and nothing of the second side; its position is 4 bays of 1.5 m.
    (row,) = (r for r in all_rows(measured()) if number_of(r) == "5")
    printed = {box.field[4:]: box.entered for box in boxes_in(row) if box.entered}
    assert printed[("over_hips_m",)] == "9.620 m"
    assert printed[("dip_m",)] == "0.030 m"
    assert printed[("sides", 0, "ground_m")] == "-0.040 m"
    assert not [path for path in printed if path[:2] == ("sides", 1)]
    assert boxes_in(row)[0].entered == "6.000 m"


def test_blank_rows_ask_for_the_number_of_the_bow() -> None:
    for row in all_rows(blank()):
        boxes = boxes_in(row)
        assert boxes[0].field == ("frame", "tape", "bows", 0, "bow")
        assert not any(box.entered for box in boxes)


def test_columns_are_numbered_from_one_as_they_stand() -> None:
    head = first_bows(bows(30)).head
    badges = [shape for shape in head.shapes if isinstance(shape, Badge)]
    assert [badge.number for badge in badges] == list(range(1, 12))
    across = [badge.centre[0] for badge in badges]
    assert across == sorted(across)
