"""How tall a row is for its text."""

import pytest

from hoopwright.papers.sheet import TEXT, Entry, Formula, Look, Row
from hoopwright.papers.sheet_looks import row_height

# A plain letter takes 1/1.22 of a width at 10 points and a frame 1.3 widths, so 9.5 widths hold
# (9.5 - 1.3) * 1.22 = 10.004 letters. A line is 13 points tall, a row 3 points more.
WIDTHS = (9.5, 9.5)
TEN = "ten letter"
ELEVEN = "ten letters"


@pytest.mark.parametrize(
    ("row", "points"),
    [
        (Row(), 16.0),
        (Row((Entry(TEN, TEXT),)), 16.0),
        (Row((Entry(ELEVEN, TEXT),)), 29.0),
        (Row((Entry(ELEVEN, TEXT),), ((1, 2),)), 16.0),
        (Row((None, Entry(Formula("=A1", ELEVEN), TEXT))), 29.0),
        (Row((Entry(12345678901, Look("cell", "0")),)), 16.0),
        # 9.5 * 1.08 * 10 / 15 = 6.84 bold letters of the title: "title", "of it", each 19.5 points.
        (Row((Entry("title of it", Look("title")),)), 42.0),
        (Row((Entry("a\n" * 60, TEXT),)), 400.0),
    ],
)
def test_row_is_as_tall_as_its_longest_text(row: Row, points: float) -> None:
    assert row_height(row, WIDTHS) == pytest.approx(points, rel=1e-12)
