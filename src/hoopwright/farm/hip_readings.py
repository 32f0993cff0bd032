"""Readings taken at a hip board that is moved afterwards: they move with the board.

What the tape read over the ridge stays true; only the short way along the bow from the old place of
the board to the new one is added or taken off.
"""

import math
from itertools import pairwise

from hoopwright.farm.frame import Frame
from hoopwright.farm.half_width import half_width
from hoopwright.farm.profile import Profile
from hoopwright.farm.tape import BowReading, Tape

STEPS = 16


def moved_readings(frame: Frame, side: int, by_m: float) -> Tape:
    """Return the readings of a frame after the hip board of a side was moved.

    Args:
        frame: The frame with the board where it was.
        side: 0 for the first side, 1 for the second.
        by_m: How far it goes up, m; down is negative.

    Source:
        Derived here: heights by the move, girths from hip to hip by the way along the bow, as
        chords on the tube's centre line.
    """
    rows = tuple(_moved(frame, row, side, by_m) for row in frame.tape.bows)
    return frame.tape.but(bows=rows) if rows != frame.tape.bows else frame.tape


def _moved(frame: Frame, row: BowReading, side: int, by_m: float) -> BowReading:
    read = row.sides[side]
    old_m = frame.boards[side].hip_height_m if read.hip_m is None else read.hip_m
    changes: dict[str, object] = {}
    if read.hip_m is not None:
        sides = list(row.sides)
        sides[side] = read.but(hip_m=read.hip_m + by_m)
        changes["sides"] = (sides[0], sides[1])
    if row.over_hips_m is not None:
        changes["over_hips_m"] = row.over_hips_m - _way(frame.profile, side, old_m, old_m + by_m)
    return row.but(**changes) if changes else row


def _way(profile: Profile, side: int, from_m: float, to_m: float) -> float:
    """Return the way along the bow from one height to another, m; down is negative."""
    heights = [from_m + (to_m - from_m) * k / STEPS for k in range(STEPS + 1)]
    spots = [(half_width(profile, height_m, side), height_m) for height_m in heights]
    return math.copysign(sum(math.dist(a, b) for a, b in pairwise(spots)), to_m - from_m)
