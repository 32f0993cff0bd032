"""The lift lines of a drop-down curtain, their pulleys and the cable they are tied to."""

import math

from msgspec import Struct

from hoopwright.curtain.hung import HungCurtain

LONGEST_SIDE_M = 1000.0
"""Longest side that can be entered: stands for no limit."""
REACH_M = 0.3
KNOT_M = 0.15
DRUM_WRAPS = 3


class LiftLines(Struct, frozen=True):
    """Lift lines, pulleys and cable of one curtain.

    Attributes:
        count: Lift lines.
        line_m: Length of one line, m.
        runs: Runs of cable from the drum: one, or two from a drum in the middle.
        down_m: From the hip down to the drum, m.
        wraps_m: What stays on the drum for each run, m.
        length_m: All lines and the cable, m.
        pulleys: One for each line and one for each run where it turns down to the drum.
    """

    count: int
    line_m: float
    runs: int
    down_m: float
    wraps_m: float
    length_m: float
    pulleys: int


NO_LINES = LiftLines(0, 0.0, 0, 0.0, 0.0, 0.0, 0)


def lift_lines(hung: HungCurtain, drum_radius_m: float) -> LiftLines:
    """Return the lift lines of a drop-down curtain with their pulleys and cable.

    Args:
        hung: The curtain.
        drum_radius_m: Radius on which the cable winds, m.

    Source:
        Common practice, no published source: a line at each bow and at both ends, 0.3 m from its
        pulley to where it is tied to the cable, 0.15 m for each knot; a cable as long as curtain
        and travel, and from the hip down to a drum at handle height with three turns left on it.
    """
    travel_m, count = hung.travel_m, hung.inner_bows() + 2
    runs = 2 if hung.panel.crank_end == "middle" else 1
    line_m = travel_m + REACH_M + 2 * KNOT_M
    down_m = max(0.0, hung.height_m(0.0) - hung.limits.handle_height_m)
    wraps_m = DRUM_WRAPS * 2 * math.pi * drum_radius_m
    cable_m = hung.span.length_m + runs * (travel_m + down_m + wraps_m)
    return LiftLines(count, line_m, runs, down_m, wraps_m, count * line_m + cable_m, count + runs)
