"""Rigid sheets on an end wall: columns, sheets above each other, how many are bought."""

import math
from collections.abc import Iterator

from hoopwright.cover.end_laid import Column, Crossing, RigidWall
from hoopwright.cover.end_shape import TOUCH_M, EndShape
from hoopwright.farm import RigidSheet
from hoopwright.quantity.working import PRACTICE, LaterWorkings, Term, Working


def lay_rigid(shape: EndShape, sheet: RigidSheet, net_m2: float, mark: str) -> RigidWall:
    """Return the rigid sheets of an end wall.

    Columns stand side by side about the middle of the wall; each is as high as the outline over
    it, of several sheets where that is higher than one.

    Args:
        shape: The end wall.
        sheet: Size of a sheet.
        net_m2: What is closed of the wall, m2.
        mark: Mark of the wall.

    Source:
        Whole columns about the middle, so that both edges are cut alike: common practice, no
        published source.
    """
    left_m, right_m = shape.widest(0.0, shape.height_m)
    count = max(1, math.ceil((right_m - left_m) / sheet.cover_width_m - TOUCH_M))
    start_m = (left_m + right_m - count * sheet.cover_width_m) / 2
    columns = tuple(
        _column(
            shape,
            sheet,
            max(left_m, start_m + k * sheet.cover_width_m),
            min(right_m, start_m + (k + 1) * sheet.cover_width_m),
        )
        for k in range(count)
    )
    cuts_m = tuple(cut_m for column in columns for cut_m in column.cuts_m)
    sheets = count_sheets(cuts_m, sheet.sheet_height_m)
    area_m2 = sheets * sheet.cover_width_m * sheet.sheet_height_m
    return RigidWall(
        part=sheet.part,
        columns=columns,
        laps=tuple(_laps(shape, sheet, columns, mark)),
        sheet_count=sheets,
        sheet_area_m2=area_m2,
        waste_m2=area_m2 - net_m2,
        workings=LaterWorkings(lambda: _workings(sheet, columns, sheets, area_m2, net_m2)),
    )


def _column(shape: EndShape, sheet: RigidSheet, left_m: float, right_m: float) -> Column:
    height_m = shape.highest(left_m, right_m)
    edge_m = shape.highest(left_m, left_m)
    return Column(left_m, right_m, height_m, edge_m, courses(height_m, sheet))


def _laps(
    shape: EndShape, sheet: RigidSheet, columns: tuple[Column, ...], mark: str
) -> Iterator[Crossing]:
    """Yield the upper edges of the sheets that others lap over."""
    gain_m = sheet.sheet_height_m - sheet.lap_m
    for n in range(1, max(len(column.cuts_m) for column in columns)):
        left_m, right_m = shape.reach_at(n * gain_m)
        yield Crossing(mark, n * gain_m, left_m, right_m, right_m - left_m)


def courses(height_m: float, sheet: RigidSheet) -> tuple[float, ...]:
    """Return the heights of the sheets that make a column, from below, laps included, m.

    Args:
        height_m: Height of the column, m.
        sheet: Size of a sheet.

    Source:
        Derived here: n sheets reach n x height less (n - 1) x lap.
    """
    gain_m = sheet.sheet_height_m - sheet.lap_m
    count = max(1, math.ceil((height_m - sheet.lap_m) / gain_m - TOUCH_M))
    last_m = height_m - (count - 1) * gain_m
    return (*(sheet.sheet_height_m for _ in range(count - 1)), last_m)


def count_sheets(cuts_m: tuple[float, ...], sheet_height_m: float) -> int:
    """Return how many sheets yield some heights, the longest cut first.

    Args:
        cuts_m: Heights to cut, none above that of a sheet, m.
        sheet_height_m: Height of a sheet, m.

    Source:
        First fit of the cuts in falling order: a textbook rule; at worst 11/9 of the least count
        and a sheet more (Johnson 1973, from memory).
    """
    left_m: list[float] = []
    for cut_m in sorted(cuts_m, reverse=True):
        for n, rest_m in enumerate(left_m):
            if cut_m <= rest_m + TOUCH_M:
                left_m[n] = rest_m - cut_m
                break
        else:
            left_m.append(sheet_height_m - cut_m)
    return len(left_m)


def _workings(
    sheet: RigidSheet, columns: tuple[Column, ...], sheets: int, area_m2: float, net_m2: float
) -> tuple[Working, ...]:
    width = Term("one sheet covers", sheet.cover_width_m, "m")
    height = Term("sheet height", sheet.sheet_height_m, "m")
    return (
        Working(
            "sheet_count",
            "Columns about the middle of the wall, each as high as the outline over it, of several "
            "sheets with the lap where one is too short. The longest cuts come first, and what is "
            "left of a sheet is cut on; what is cut out for openings is not used again.",
            (
                width,
                height,
                Term("lap", sheet.lap_m, "m"),
                Term("columns", len(columns), "count"),
                *(Term(f"column {n + 1}", c.height_m, "m") for n, c in enumerate(columns)),
            ),
            PRACTICE,
        ),
        Working(
            "sheet_area_m2",
            "Sheets times what one covers, as long as it is.",
            (Term("sheets", sheets, "count"), width, height),
        ),
        Working(
            "waste_m2",
            "All sheets less what is closed.",
            (Term("sheets", area_m2, "m2"), Term("closed", net_m2, "m2")),
        ),
    )
