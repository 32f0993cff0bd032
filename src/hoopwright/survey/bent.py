"""What a bent frame costs in film: ends out of square, end bows out of plumb, a ridge that dips.

Skew, seen from above, the front at the left; the first side runs from A to C, the second from B to
D, which starts the way s behind A:

        B---------------D        A C = l1, B D = l2, the sides w apart
       /               /         A D2 = (s + l2)2 + w2, B C2 = (l1 - s)2 + w2
      A---------------C          so  A D2 - B C2 = (l1 + l2) (2 s + l2 - l1)

A sheet cut square must reach from the foremost of A and B to the hindmost of C and D.

Lean, seen from the side: the ridge of an end bow stands e outside its feet. A sheet cut square must
reach from there; a bow that leans in costs nothing, for the sheet ends at its feet all the same.
Lengths read at the hips have part of the lean in them already; it is counted whole, so that the
sheet is never short.
"""

from msgspec import Struct

from hoopwright.farm.tape import Tape
from hoopwright.survey.arc import arc_over_chord

Pair = tuple[float, float]


class Skew(Struct, frozen=True):
    """Ends out of square.

    Attributes:
        sides_m: Lengths of both sides that it is worked out from, m.
        offset_m: How far the second side runs ahead, the mean of front and back, m, signed.
        cost_m: What it adds to the length of a sheet cut square, m.
    """

    sides_m: Pair
    offset_m: float
    cost_m: float


def find_skew(tape: Tape, length_m: float) -> Skew | None:
    """Return how far the ends are out of square; None where a diagonal was not read.

    Args:
        tape: What was read.
        length_m: Length of a side whose own was not read, m.

    Source:
        Derived here, see the module; for sides of one length l it is s = (d1^2 - d2^2) / 4 l.
    """
    first_m, second_m = tape.diagonals_m
    if first_m is None or second_m is None:
        return None
    sides_m = _sides(tape, length_m)
    low_m, high_m = sides_m
    offset_m = (first_m**2 - second_m**2) / (2 * (low_m + high_m))
    front_m = offset_m - (high_m - low_m) / 2
    reach_m = max(low_m, front_m + high_m) - min(0.0, front_m)
    return Skew(sides_m, offset_m, reach_m - max(sides_m))


def _sides(tape: Tape, length_m: float) -> Pair:
    """Return the lengths of both sides, from one line where both were read there, m."""
    for first_m, second_m in (tape.base_lengths_m, tape.hip_lengths_m):
        if first_m is not None and second_m is not None:
            return first_m, second_m
    return length_m, length_m


def lean_costs(tape: Tape) -> Pair:
    """Return what the front and the back end bow out of plumb add to the length of a sheet, m.

    Source:
        Derived here, see the module.
    """
    front_m, back_m = (max(0.0, lean_m or 0.0) for lean_m in tape.leans_m)
    return front_m, back_m


def deepest_dip(tape: Tape) -> float:
    """Return the deepest dip of the ridge, m; 0 where none was read or none dips.

    Source:
        The user's readings.
    """
    return max((r.dip_m for r in tape.bows if r.dip_m is not None and r.dip_m > 0), default=0.0)


def dip_cost(chord_m: float, rise_m: float, dip_m: float) -> float:
    """Return how much shorter the way over a bow is whose ridge has come down, m.

    Args:
        chord_m: From hip to hip, m.
        rise_m: Ridge above that line, m.
        dip_m: How far the ridge has come down, m.

    Source:
        Derived here: the arc over the chord at its rise less the arc at what is left of it, both
        as circle arcs whatever the shape of the bow.
    """
    return arc_over_chord(chord_m, rise_m) - arc_over_chord(chord_m, max(0.0, rise_m - dip_m))
