"""What moving something on an end wall makes of the tunnel: openings, rails, seams.

Marks are `end/0/door/1`, `end/1/cut/0`, `end/0/rail/0` and `end/0/seam/0`. A door goes along the
ground, a vent or fan opening both ways, rails and seams up and down.
"""

from typing import Literal

from hoopwright.desktop.cranks import numbers_in
from hoopwright.farm import Tunnel
from hoopwright.farm import change_ends as edit
from hoopwright.quantity.units import Units

Way = Literal["along", "up"]

KINDS = {"door": "door", "cut": "cut", "rail": "rail", "seam": "end seam"}
END_KINDS = tuple(KINDS.values())
WAYS: dict[str, tuple[Way, ...]] = {
    "door": ("along",),
    "cut": ("along", "up"),
    "rail": ("up",),
    "end seam": ("up",),
}
OPENING_STEP_M = {"imperial": 0.0254 * 2, "metric": 0.05}
LEVEL_STEP_M = {"imperial": 0.0254, "metric": 0.01}
RAIL_PULL_M = 0.15
HAIR_M = 1e-6


def end_kind(mark: str) -> str:
    """Return `door`, `cut`, `rail` or `end seam` for the mark of such a thing, else nothing."""
    parts = mark.split("/")
    return KINDS.get(parts[2], "") if len(parts) == 4 and parts[0] == "end" else ""


def end_place(tunnel: Tunnel, mark: str, way: Way) -> float:
    """Return the left edge of an opening or its sill, or the height of a rail or seam, m."""
    end, index = numbers_in(mark)
    kind = end_kind(mark)
    if kind == "rail":
        return tunnel.ends[end].rails_m[index]
    if kind == "end seam":
        return tunnel.ends[end].seams_m[index]
    return edit.opening_place(tunnel, end, _opening(kind), index)[way == "up"]


def end_range(tunnel: Tunnel, mark: str, way: Way) -> tuple[float, float]:
    """Return how far it can go that way, m."""
    end, index = numbers_in(mark)
    kind = end_kind(mark)
    if kind == "rail":
        return edit.rail_range(tunnel, end, index)
    if kind == "end seam":
        return edit.end_seam_range(tunnel, end, index)
    if way == "up":
        return edit.sill_range(tunnel, end, _opening(kind), index)
    return edit.left_range(tunnel, end, _opening(kind), index)


def move_on_end(tunnel: Tunnel, mark: str, way: Way, place_m: float) -> Tunnel:
    """Return the tunnel with it at a place, held within its range."""
    end, index = numbers_in(mark)
    kind = end_kind(mark)
    if kind == "rail":
        return edit.move_rail(tunnel, end, index, place_m)
    if kind == "end seam":
        return edit.move_end_seam(tunnel, end, index, place_m)
    if way == "up":
        return edit.move_opening(tunnel, end, _opening(kind), index, sill_m=place_m)
    return edit.move_opening(tunnel, end, _opening(kind), index, left_m=place_m)


def move_both_ways(tunnel: Tunnel, mark: str, left_m: float, sill_m: float) -> Tunnel:
    """Return the tunnel with a vent or fan opening at another place and height."""
    end, index = numbers_in(mark)
    return edit.move_opening(tunnel, end, "cut", index, left_m=left_m, sill_m=sill_m)


def snap_on_end(tunnel: Tunnel, mark: str, units: Units, place_m: float) -> float:
    """Return the place a dragged thing goes to: a step of the rule, a seam to a rail close by, m.

    A rail that the seam cannot reach draws it nowhere.
    """
    kind = end_kind(mark)
    if kind in ("door", "cut"):
        return stepped(place_m, OPENING_STEP_M[units])
    if kind == "end seam":
        low_m, high_m = end_range(tunnel, mark, "up")
        end = numbers_in(mark)[0]
        rails = [y for y in tunnel.ends[end].rails_m if low_m - HAIR_M <= y <= high_m + HAIR_M]
        near = min(rails, key=lambda y: abs(y - place_m), default=place_m + 2 * RAIL_PULL_M)
        if abs(near - place_m) <= RAIL_PULL_M:
            return near
    return stepped(place_m, LEVEL_STEP_M[units])


def next_on_end(tunnel: Tunnel, mark: str, way: Way, step_m: float, steps: int) -> float:
    """Return the place some key steps on, back when negative; a seam stops at every rail, m."""
    at_m = end_place(tunnel, mark, way)
    place_m = stepped(at_m + steps * step_m, step_m)
    if end_kind(mark) == "end seam":
        low_m, high_m = sorted((at_m, place_m))
        rails = tunnel.ends[numbers_in(mark)[0]].rails_m
        passed = [y for y in rails if low_m - HAIR_M <= y <= high_m + HAIR_M]
        ahead = [y for y in passed if abs(y - at_m) > HAIR_M]
        return min(ahead, key=lambda y: abs(y - at_m), default=place_m)
    return place_m


def key_step(mark: str, units: Units) -> float:
    """Return the step of an arrow key, m."""
    rule = OPENING_STEP_M if end_kind(mark) in ("door", "cut") else LEVEL_STEP_M
    return rule[units]


def remove_from_end(tunnel: Tunnel, mark: str) -> Tunnel:
    """Return the tunnel without it; a seam on a rail that is taken away stays."""
    end, index = numbers_in(mark)
    removes = {
        "door": edit.remove_door,
        "cut": edit.remove_cut,
        "rail": edit.remove_rail,
        "end seam": edit.remove_seam,
    }
    return removes[end_kind(mark)](tunnel, end, index)


def stepped(place_m: float, step_m: float) -> float:
    """Return the nearest step of the rule, m."""
    return round(place_m / step_m) * step_m


def _opening(kind: str) -> edit.OpeningKind:
    return "door" if kind == "door" else "cut"
