"""What the readings of a frame come to: spreads, lines of heights, and what a bent frame costs."""

from dataclasses import dataclass
from typing import Literal

from msgspec import Struct

from hoopwright.quantity.working import Explained

Over = Literal["hips", "baseboards"]


class GirthReading(Struct, frozen=True):
    """One girth as read.

    Attributes:
        bow: Number of the bow, 1 at the front.
        length_m: Girth, m.
        from_middle_m: How far it is from the middle one, m, signed.
        outlier: Whether it is farther from the middle one than the farm allows.
    """

    bow: int
    length_m: float
    from_middle_m: float
    outlier: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class GirthSpread(Explained):
    """All girths read between the same two lines.

    Attributes:
        over: From hip board to hip board, or from baseboard to baseboard.
        readings: In the order of the bows; at least one.
        middle_m: Median, m.
        spread_m: Greatest less least, m.
        deviation_m: Standard deviation of the sample, m; 0 of one reading.
        governing_bow: Bow with the longest girth.
        governing_m: Its girth, m.
        computed_m: Girth of the profile between the same lines, over the outside of the tube, m.
        disagreement_share: Median less computed, as a share of the computed one.
    """

    over: Over
    readings: tuple[GirthReading, ...]
    middle_m: float
    spread_m: float
    deviation_m: float
    governing_bow: int
    governing_m: float
    computed_m: float
    disagreement_share: float


class HeightLine(Struct, frozen=True):
    """Heights along the tunnel, one for each bow.

    Attributes:
        heights_m: Height at each bow from the front, m.
        read: Whether it was read there; between readings it is interpolated, beyond them held.
    """

    heights_m: tuple[float, ...]
    read: tuple[bool, ...]


class SideLine(Struct, frozen=True):
    """The three lines of one side.

    Attributes:
        hip: Top of the hip board.
        baseboard: Top of the baseboard.
        ground: Ground under the curtain.
    """

    hip: HeightLine
    baseboard: HeightLine
    ground: HeightLine


@dataclass(frozen=True, slots=True, kw_only=True)
class Taped(Explained):
    """The readings of one frame, put together.

    Attributes:
        hips: Girths from hip board to hip board, or None when none was read.
        baseboards: Girths from baseboard to baseboard, or None.
        lines: Heights on the first and on the second side.
        length_m: Longest of the lengths read along hips and baseboards, m; first to last bow
            where none was read.
        length_line: Line along which that was read, in words; "" where none was.
        skew_m: How far one end stands out of square with the other, m, signed: positive when the
            second side runs ahead at the back; None where a diagonal is missing.
        skew_cost_m: What the skew adds to the length of a sheet cut square, m.
        lean_costs_m: What the front and the back end bow out of plumb add to the length of a
            sheet, m.
        lean_cost_m: Both together, m.
        dip_m: Deepest dip of the ridge, m; 0 where none was read.
        dip_cost_m: What the dip takes out of the width that is needed at the deepest bow against a
            straight ridge, m; told, not subtracted.
    """

    hips: GirthSpread | None
    baseboards: GirthSpread | None
    lines: tuple[SideLine, SideLine]
    length_m: float
    length_line: str
    skew_m: float | None
    skew_cost_m: float
    lean_costs_m: tuple[float, float]
    lean_cost_m: float
    dip_m: float
    dip_cost_m: float
