"""A grid gives each cell its column and marks the rows that go first."""

import pytest

from hoopwright.papers.form_page import Badge, Box, Text
from hoopwright.papers.measuring_grid import ROW_MM, Cell, Column, Row, grid

COLUMNS = (Column("a", 1), Column("b", 2, 5, "m", "both"), Column("c\nd", 1, 6, "m", "both"))


def test_boxes_stand_in_their_columns() -> None:
    table = grid(100.0, COLUMNS, (Row((Cell((), "1"), Cell(("x",), "2.000 m"), Cell(("y",)))),))
    (row,) = table.rows
    boxes = [s for s in row.shapes if isinstance(s, Box)]
    # Shares 1, 2 and 1 of 100 mm.
    assert [(b.field, b.left, b.width, b.entered) for b in boxes] == [
        (("x",), 25.0, 50.0, "2.000 m"),
        (("y",), 75.0, 25.0, ""),
    ]
    assert {b.height for b in boxes} == {ROW_MM}
    (printed,) = (s for s in row.shapes if isinstance(s, Text))
    assert (printed.words, printed.left, printed.width) == ("1", 0.0, 25.0)


def test_head_says_number_name_unit_and_group_over_each_column() -> None:
    head = grid(100.0, COLUMNS, ()).head
    words = [s.words for s in head.shapes if isinstance(s, Text)]
    assert words == ["both", "a", "b", "m", "c\nd", "m"]
    badges = [s for s in head.shapes if isinstance(s, Badge)]
    assert [(b.number, b.centre[0]) for b in badges] == [(5, 50.0), (6, 87.5)]
    (group,) = (s for s in head.shapes if isinstance(s, Text) and s.words == "both")
    assert (group.left, group.width) == (25.0, 75.0)
    lowest = max(s.top + s.height for s in head.shapes if isinstance(s, Text))
    assert lowest <= head.height_mm


@pytest.mark.parametrize("marked", [True, False])
def test_marked_row_is_heavy(marked: bool) -> None:
    row = Row((Cell((), "1"), Cell(("x",)), Cell(("y",))), marked)
    shapes = grid(100.0, COLUMNS, (row,)).rows[0].shapes
    assert {s.heavy for s in shapes if isinstance(s, Box)} == {marked}
    assert [s.bold for s in shapes if isinstance(s, Text)] == [marked]
