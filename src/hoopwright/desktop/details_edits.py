"""What the lines of a form do to the farm. A refusal is a ValueError with words for the field."""

from collections.abc import Callable

from hoopwright.desktop.details_items import Act, Entry, Special
from hoopwright.desktop.details_specials import SPECIALS
from hoopwright.desktop.field import UNLIMITED, Between
from hoopwright.desktop.jumpers import (
    add_jumper_on,
    jumper_range,
    remove_jumper_at,
    work_out_jumpers,
)
from hoopwright.farm import EvenBows, Farm, Side, Tunnel, bow_positions, change, change_ends
from hoopwright.farm.change_condition import add_state, remove_state
from hoopwright.farm.change_shape import add_point, remove_point
from hoopwright.farm.entered import describe
from hoopwright.farm.side import MOVING
from hoopwright.farm.skin import CutKind

CUT_KINDS: tuple[CutKind, ...] = ("vent", "fan")
"""What an opening can be for, in the order of the acts that add one."""

LEAN_M = (-2.0, 2.0)
"""How far the ridge of an end bow may stand outside its feet; inward is negative."""


def value_of(item: Entry | Special, farm: Farm, tunnel: Tunnel) -> object:
    """Return what stands in a line."""
    if isinstance(item, Entry):
        return change.value_at(tunnel if item.root == "tunnel" else farm, item.path)
    return SPECIALS[item.kind].read(tunnel, item.place)


def with_entered(item: Entry | Special, farm: Farm, index: int, value: object) -> Farm:
    """Return the farm with another value in a line.

    Raises:
        ValueError: The value cannot be; the message says why and what to do.
    """
    if isinstance(item, Special):
        known = SPECIALS[item.kind]
        tunnel = known.change(farm.tunnels[index], item.place, value, farm.catalogue)
        return change.with_tunnel(farm, index, tunnel)
    if item.root == "farm":
        changed = change.with_value(farm, item.path, value)
        assert isinstance(changed, Farm)
        return changed
    return change.with_tunnel(farm, index, _with_value(item, farm, farm.tunnels[index], value))


def _with_value(item: Entry, farm: Farm, tunnel: Tunnel, value: object) -> Tunnel:
    """Return the tunnel with another value in a line, and with what hangs on it."""
    if item.owner is Side and item.name == "kind":
        side = item.path[1]
        assert isinstance(side, int)
        assert value in ("fixed", *MOVING)
        return change.set_side_kind(tunnel, side, value, farm.catalogue)
    match item.path:
        case ("ends", int(end), "rails_m", int(index)):
            assert isinstance(value, float)
            return change_ends.move_rail(tunnel, end, index, value)
    return change.with_tunnel_value(tunnel, item.path, value)


def _add_cut(tunnel: Tunnel, end: int, kind: int) -> Tunnel:
    return change_ends.add_cut(tunnel, end, CUT_KINDS[kind])


ACTS: dict[str, Callable[..., Tunnel]] = {
    "add split": change.add_split,
    "remove split": change.remove_split,
    "add seam": change.add_seam,
    "remove seam": change.remove_seam,
    "add door": change_ends.add_door,
    "remove door": change_ends.remove_door,
    "add cut": _add_cut,
    "remove cut": change_ends.remove_cut,
    "add rail": change_ends.add_rail,
    "remove rail": change_ends.remove_rail,
    "add end seam": change_ends.add_seam,
    "remove end seam": change_ends.remove_seam,
    "add point": add_point,
    "remove point": remove_point,
    "add state": add_state,
    "remove state": remove_state,
    "add jumper": add_jumper_on,
    "remove jumper": remove_jumper_at,
    "work out jumpers": work_out_jumpers,
    "list bows": change.with_listed_bows,
    "even bows": change.with_even_bows,
}


JUMPER_ACTS = ("add jumper", "remove jumper", "work out jumpers")
"""The acts that need the jumpers in force written down."""


def with_act(act: Act, tunnel: Tunnel) -> Tunnel:
    """Return the tunnel after an act.

    Raises:
        ValueError: It cannot be done; the message says why.
    """
    return ACTS[act.kind](tunnel, *act.places)


def limits_of(entry: Entry, tunnel: Tunnel) -> Between:
    """Return between which values a line may be entered, in the unit of its field.

    What has neighbours is held by them, what stands in an end wall by the bow, a number of a bow
    by how many there are; all else by the limits of its class.
    """
    held = _range_along(entry, tunnel) or _range_in_end(entry, tunnel)
    if held is not None:
        return Between(*held)
    for known in describe(entry.owner):
        if known.name == entry.name and known.low is not None and known.high is not None:
            return Between(known.low, known.high)
    return UNLIMITED


def _range_along(entry: Entry, tunnel: Tunnel) -> tuple[float, float] | None:
    """Return the range of what stands along the tunnel or on its sides, or None for all else."""
    match entry.path:
        case ("sides", int(side), "splits", int(index), "at_m"):
            return change.split_range(tunnel, side, index)
        case ("skin", "cross_seams_m", int(index)):
            return change.seam_range(tunnel, index)
        case ("frame", "boards", int(side), "hip_height_m"):
            return change.hip_range(tunnel, side)
        case ("air", "jumpers", int(index), "at_m"):
            return jumper_range(tunnel, index)
        case ("frame", "bows", "positions_m", int(index)):
            return _bow_range(tunnel, index)
        case ("frame", "tape", "leans_m", int()):
            return LEAN_M
        case (*_, "from_bow" | "to_bow"):
            return 1, len(bow_positions(tunnel.frame.bows))
    return None


def _range_in_end(entry: Entry, tunnel: Tunnel) -> tuple[float, float] | None:
    """Return the range of what stands in an end wall, or None for all else."""
    match entry.path:
        case ("ends", int(end), "doors", int(index), "left_m"):
            return change_ends.left_range(tunnel, end, "door", index)
        case ("ends", int(end), "cuts", int(index), "left_m"):
            return change_ends.left_range(tunnel, end, "cut", index)
        case ("ends", int(end), "cuts", int(index), "sill_m"):
            return change_ends.sill_range(tunnel, end, "cut", index)
        case ("ends", int(end), "rails_m", int(index)):
            return change_ends.rail_range(tunnel, end, index)
    return None


def _bow_range(tunnel: Tunnel, index: int) -> tuple[float, float]:
    """Return between which positions a listed bow can stand, m: clear of its neighbours."""
    spots = bow_positions(tunnel.frame.bows)
    least_m = next(k.low for k in describe(EvenBows) if k.name == "spacing_m") or 0.0
    low = spots[index - 1] + least_m if index else 0.0
    high = spots[index + 1] - least_m if index + 1 < len(spots) else UNLIMITED.high
    return low, high
