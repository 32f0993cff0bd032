"""How the roles of a sheet look, and how tall a row has to be for its text."""

from functools import lru_cache
from typing import NamedTuple

from hoopwright.papers.sheet import Formula, Kind, Row
from hoopwright.papers.sheet_text import line_count

BODY_POINTS = 10
PLAIN_ROW = 16.0

_LINE_POINTS = 13.0
_TALLEST_ROW = 400.0
_PLAIN_SIGNS = 1.22
_BOLD_SIGNS = 1.08


class Style(NamedTuple):
    """What a role looks like.

    Attributes:
        size: Points.
        bold: Whether the letters are bold.
        fill: Colour behind them, or "".
        framed: Whether thin lines stand around it.
        wrapped: Whether long text goes on in the next line.
    """

    size: float = BODY_POINTS
    bold: bool = False
    fill: str = ""
    framed: bool = True
    wrapped: bool = True


STYLES: dict[Kind, Style] = {
    "title": Style(size=15, bold=True, framed=False),
    "note": Style(framed=False),
    "section": Style(size=12, bold=True, framed=False),
    "head": Style(bold=True, fill="FFDDE5EA"),
    "cell": Style(),
    "total": Style(bold=True),
    "input": Style(fill="FFFFF4C2"),
    "key": Style(bold=True),
    "fault": Style(bold=True, fill="FFF6CFC8"),
    "caution": Style(fill="FFFCE1BD"),
}


def row_height(row: Row, widths: tuple[float, ...]) -> float:
    """Return the height that a row's longest text needs, points.

    Not every program finds the height of wrapped text by itself, and none does for joined cells.

    Args:
        row: The row.
        widths: Widths of the columns, characters.
    """
    ends = dict(row.spans)
    tallest = _LINE_POINTS
    for column, entry in enumerate(row.entries, start=1):
        if entry is None or entry.look.number or entry.value is None:
            continue
        value = entry.value.result if isinstance(entry.value, Formula) else entry.value
        width = sum(widths[column - 1 : ends.get(column, column)])
        signs, line_points = _letters(entry.look.kind, width)
        tallest = max(tallest, line_count(str(value), signs) * line_points)
    return min(tallest + 3, _TALLEST_ROW)


@lru_cache(maxsize=1024)
def _letters(kind: Kind, width: float) -> tuple[int, float]:
    """Return how many letters of a role fit into a width, and how tall a line of them is."""
    style = STYLES[kind]
    free = width - 1.3 * style.framed
    signs = free * (_BOLD_SIGNS if style.bold else _PLAIN_SIGNS) * BODY_POINTS / style.size
    return max(int(signs), 1), _LINE_POINTS * style.size / BODY_POINTS
