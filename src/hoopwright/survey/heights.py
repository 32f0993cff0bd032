"""Heights of hip board, baseboard and ground along a side, bow by bow, from what was read.

Between two readings a board or the ground runs straight; before the first and behind the last it
goes on level. Where nothing was read it lies at the height that was entered, the ground at the
ground line.
"""

from collections.abc import Callable, Sequence
from itertools import pairwise

from msgspec import Struct

from hoopwright.farm import Frame
from hoopwright.farm.tape import SideReading
from hoopwright.survey.bow_curve import BowCurve
from hoopwright.survey.taped import HeightLine, SideLine

Spots = tuple[float, ...]

LEAST_M = 0.05


class Along(Struct, frozen=True):
    """Where hip board and baseboard of one side lie on each bow.

    Attributes:
        hips_m: Hip board, from the left base along the girth, m.
        bases_m: Top of the baseboard, from the left base along the girth, m.
        sides_m: From one to the other along the bow, m, above zero.
    """

    hips_m: Spots
    bases_m: Spots
    sides_m: Spots


def side_line(frame: Frame, bows_m: Spots, side: int) -> SideLine:
    """Return the three lines of one side.

    Args:
        frame: The frame as entered.
        bows_m: Where its bows stand, m.
        side: 0 for the first side, 1 for the second.

    Source:
        Straight between two readings, level beyond them: common practice, no published source.
    """
    boards = frame.boards[side]

    def line(read: Callable[[SideReading], float | None], entered_m: float) -> HeightLine:
        found = [(r.bow - 1, read(r.sides[side])) for r in frame.tape.bows]
        return _line(bows_m, [(n, y) for n, y in found if y is not None], entered_m)

    return SideLine(
        hip=line(lambda r: r.hip_m, boards.hip_height_m),
        baseboard=line(lambda r: r.baseboard_m, boards.baseboard_height_m),
        ground=line(lambda r: r.ground_m, 0.0),
    )


def _line(bows_m: Spots, read: list[tuple[int, float]], entered_m: float) -> HeightLine:
    """Return one line through readings, each the number of its bow from 0 and its height, m."""
    if not read:
        return HeightLine((entered_m,) * len(bows_m), (False,) * len(bows_m))
    heights_m = [read[0][1]] * (read[0][0] + 1)
    for (low, low_m), (high, high_m) in pairwise(read):
        slope = (high_m - low_m) / (bows_m[high] - bows_m[low])
        heights_m += [low_m + slope * (x - bows_m[low]) for x in bows_m[low + 1 : high]]
        heights_m.append(high_m)
    heights_m += [read[-1][1]] * (len(bows_m) - len(heights_m))
    taken = {n for n, _ in read}
    return HeightLine(tuple(heights_m), tuple(n in taken for n in range(len(bows_m))))


def along_side(curve: BowCurve, line: SideLine, side: int) -> Along:
    """Return where hip board and baseboard of one side lie on each bow.

    Readings that cannot be, a hip board on the ridge or on the baseboard, are held a hand's width
    apart here; a check names them.
    """
    top_m = curve.height_m - LEAST_M
    hips_m = _positions(curve, [min(y, top_m) for y in line.hip.heights_m], side)
    bases_m = _positions(curve, [min(y, top_m) for y in line.baseboard.heights_m], side)
    down = -1 if side == 0 else 1
    sides_m = tuple(
        max(LEAST_M, down * (base - hip)) for hip, base in zip(hips_m, bases_m, strict=True)
    )
    return Along(hips_m, bases_m, sides_m)


def _positions(curve: BowCurve, heights_m: Sequence[float], side: int) -> Spots:
    found = {y: position(curve, y, side) for y in set(heights_m)}
    return tuple(found[y] for y in heights_m)


def position(curve: BowCurve, height_m: float, side: int) -> float:
    """Return where along the girth a height is reached, m from the left base.

    A height below the ground line lies plumb under the foot, so on the left before the base.

    Args:
        curve: Outside of the bow.
        height_m: Above the ground line, m; below it negative.
        side: 0 for the first side, 1 for the second.

    Raises:
        ValueError: The height is above the ridge.

    Source:
        The curve of the bow; below it a plumb line.
    """
    if height_m < 0:
        return height_m if side == 0 else curve.length_m - height_m
    return curve.position_at_height(height_m, side)
