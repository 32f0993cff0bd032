"""What moving a handle makes of the tunnel: where it may go, where it snaps, in which steps.

A handle is known by its mark: `side/0/split/1`, `roof/seam/0`, `side/1/hip`, `jumper/2`, and those
of `end_moves`. A tunnel whose jumper is moved has its jumpers written down as placed by hand.
"""

from dataclasses import dataclass

from hoopwright.desktop.cranks import numbers_in
from hoopwright.desktop.end_moves import (
    END_KINDS,
    WAYS,
    Way,
    end_kind,
    end_place,
    end_range,
    key_step,
    move_on_end,
    next_on_end,
    snap_on_end,
    stepped,
)
from hoopwright.desktop.jumpers import is_jumper, jumper_place, jumper_range, move_jumper_to
from hoopwright.farm import Tunnel, bow_positions
from hoopwright.farm import change as edit
from hoopwright.quantity.units import Units

FINE_M = {"imperial": 0.0254 / 8, "metric": 0.001}
HIP_STEP_M = {"imperial": 0.0254, "metric": 0.01}
JUMPER_STEP_M = {"imperial": 0.0254 * 6, "metric": 0.1}
FAR_BOWS = 5


@dataclass(frozen=True, slots=True)
class Grasp:
    """A handle as it is held.

    Attributes:
        mark: Mark of the handle.
        units: The farm's units, which make the fine steps.
        fine: Whether it goes in fine steps instead of snapping.
        one_side: Whether a hip seam goes without the one across.
        way: Along or up, for what goes both ways.
    """

    mark: str
    units: Units
    fine: bool = False
    one_side: bool = False
    way: Way = "along"


def kind_of(mark: str) -> str:
    """Return `split`, `seam`, `hip`, `jumper` or a kind of `end_moves`, else an empty text."""
    parts = mark.split("/")
    if parts[0] == "end":
        return end_kind(mark)
    if is_jumper(mark):
        return "jumper"
    if len(parts) == 4 and parts[0] == "side" and parts[2] == "split":
        return "split"
    if len(parts) == 3 and parts[:2] == ["roof", "seam"]:
        return "seam"
    return "hip" if len(parts) == 3 and parts[0] == "side" and parts[2] == "hip" else ""


def ways_of(mark: str) -> tuple[Way, ...]:
    """Return which ways a handle goes."""
    kind = kind_of(mark)
    return WAYS.get(kind, ("up",) if kind == "hip" else ("along",))


def place_of(tunnel: Tunnel, mark: str, way: Way = "along") -> float:
    """Return where a handle is: from the first bow or the middle of an end, above the ground, m."""
    if kind_of(mark) in END_KINDS:
        return end_place(tunnel, mark, way)
    numbers = numbers_in(mark)
    if kind_of(mark) == "split":
        return tunnel.sides[numbers[0]].splits[numbers[1]].at_m
    if kind_of(mark) == "seam":
        return tunnel.skin.cross_seams_m[numbers[0]]
    if kind_of(mark) == "jumper":
        return jumper_place(tunnel, numbers[0])
    return tunnel.frame.boards[numbers[0]].hip_height_m


def range_of(tunnel: Tunnel, mark: str) -> tuple[float, float]:
    """Return how far a handle can go, m; what goes both ways along."""
    if kind_of(mark) in END_KINDS:
        return end_range(tunnel, mark, ways_of(mark)[0])
    numbers = numbers_in(mark)
    if kind_of(mark) == "split":
        return edit.split_range(tunnel, *numbers)
    if kind_of(mark) == "seam":
        return edit.seam_range(tunnel, *numbers)
    if kind_of(mark) == "jumper":
        return jumper_range(tunnel, *numbers)
    return edit.hip_range(tunnel, *numbers)


def move_to(tunnel: Tunnel, grasp: Grasp, place_m: float) -> Tunnel:
    """Return the tunnel with a handle at a place, held within its range.

    Args:
        tunnel: The tunnel before.
        grasp: The handle.
        place_m: From the first bow or the middle of an end, or above the ground, m.
    """
    if kind_of(grasp.mark) in END_KINDS:
        return move_on_end(tunnel, grasp.mark, grasp.way, place_m)
    numbers = numbers_in(grasp.mark)
    if kind_of(grasp.mark) == "split":
        return edit.move_split(tunnel, numbers[0], numbers[1], place_m)
    if kind_of(grasp.mark) == "seam":
        return edit.move_seam(tunnel, numbers[0], place_m)
    if kind_of(grasp.mark) == "jumper":
        return move_jumper_to(tunnel, numbers[0], place_m)
    return edit.move_hip(tunnel, numbers if grasp.one_side else (0, 1), place_m)


def snap(tunnel: Tunnel, grasp: Grasp, place_m: float) -> float:
    """Return the place a dragged handle goes to: a bow, or a step of the rule, m.

    A bow outside the handle's range is never the nearest. Jumpers hang anywhere.
    """
    if grasp.fine:
        return stepped(place_m, FINE_M[grasp.units])
    if kind_of(grasp.mark) in END_KINDS:
        return snap_on_end(tunnel, grasp.mark, grasp.units, place_m)
    if kind_of(grasp.mark) in ("hip", "jumper"):
        return stepped(place_m, HIP_STEP_M[grasp.units])
    low_m, high_m = range_of(tunnel, grasp.mark)
    bows = [x for x in bow_positions(tunnel.frame.bows) if low_m - 1e-6 <= x <= high_m + 1e-6]
    return min(bows, key=lambda x: abs(x - place_m), default=place_of(tunnel, grasp.mark))


def next_place(tunnel: Tunnel, grasp: Grasp, steps: int) -> float:
    """Return the place some key steps on (back when negative): bows, or steps of the rule, m."""
    kind = kind_of(grasp.mark)
    if kind in END_KINDS:
        step_m = FINE_M[grasp.units] if grasp.fine else key_step(grasp.mark, grasp.units)
        return next_on_end(tunnel, grasp.mark, grasp.way, step_m, steps)
    at_m = place_of(tunnel, grasp.mark)
    if kind in ("hip", "jumper") or grasp.fine:
        rule = JUMPER_STEP_M if kind == "jumper" else HIP_STEP_M
        step_m = (FINE_M if grasp.fine else rule)[grasp.units]
        return stepped(at_m + steps * step_m, step_m)
    return snap(tunnel, grasp, edit.next_bow(tunnel, at_m, steps))
