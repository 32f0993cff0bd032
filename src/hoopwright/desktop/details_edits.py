"""What the lines of a form do to the farm. A refusal is a ValueError with words for the field."""

from collections.abc import Callable

from hoopwright.desktop.details_items import Act, Entry, Special
from hoopwright.desktop.field import UNLIMITED, Between
from hoopwright.desktop.jumpers import (
    add_jumper_on,
    jumper_range,
    remove_jumper_at,
    work_out_jumpers,
)
from hoopwright.farm import (
    Door,
    EvenBows,
    Farm,
    Heating,
    ListedBows,
    Side,
    Tunnel,
    bow_positions,
    change,
)
from hoopwright.farm.begin import DOOR_M
from hoopwright.farm.change_shape import SHAPES, with_shape
from hoopwright.farm.entered import describe
from hoopwright.farm.side import MOVING
from hoopwright.survey.bow_curve import bow_curve

POINTS_OF_SPAN = 8
"""A bow that becomes a measured one gets points this often, as shares of its span."""


def value_of(item: Entry | Special, farm: Farm, tunnel: Tunnel) -> object:
    """Return what stands in a line."""
    if isinstance(item, Entry):
        return change.value_at(tunnel if item.root == "tunnel" else farm, item.path)
    if item.kind == "shape":
        return SHAPES[type(tunnel.frame.profile)]
    if item.kind == "positions":
        return bow_positions(tunnel.frame.bows)
    if item.kind == "heated":
        return tunnel.heating is not None
    return tunnel.ends[item.place].film is not None


def with_entered(item: Entry | Special, farm: Farm, index: int, value: object) -> Farm:
    """Return the farm with another value in a line.

    Raises:
        ValueError: The value cannot be; the message says why and what to do.
    """
    if isinstance(item, Entry) and item.root == "farm":
        changed = change.with_value(farm, item.path, value)
        assert isinstance(changed, Farm)
        return changed
    tunnel = farm.tunnels[index]
    if isinstance(item, Entry) and item.owner is Side and item.name == "kind":
        side = item.path[1]
        assert isinstance(side, int)
        assert value in ("fixed", *MOVING)
        tunnel = change.set_side_kind(tunnel, side, value, farm.catalogue)
    elif isinstance(item, Entry):
        tunnel = change.with_tunnel_value(tunnel, item.path, value)
    else:
        tunnel = _SPECIAL[item.kind](tunnel, item.place, value)
    return change.with_tunnel(farm, index, tunnel)


def _with_shape(tunnel: Tunnel, _place: int, shape: object) -> Tunnel:
    profile = tunnel.frame.profile
    assert shape in ("round", "gothic", "rafters", "measured")
    if shape != "measured":
        return with_shape(tunnel, shape, ())
    outline = bow_curve(profile, 0.0).outline(profile.span_m / POINTS_OF_SPAN)
    return with_shape(tunnel, shape, outline)


def _with_positions(tunnel: Tunnel, _place: int, positions: object) -> Tunnel:
    assert isinstance(positions, tuple)
    return change.with_tunnel_value(tunnel, ("frame", "bows"), ListedBows(positions_m=positions))


def _with_covered(tunnel: Tunnel, place: int, covered: object) -> Tunnel:
    film = tunnel.skin.pockets if covered else None
    return change.with_tunnel_value(tunnel, ("ends", place, "film"), film)


def _with_heated(tunnel: Tunnel, _place: int, heated: object) -> Tunnel:
    return change.with_tunnel_value(tunnel, ("heating",), Heating() if heated else None)


_SPECIAL: dict[str, Callable[[Tunnel, int, object], Tunnel]] = {
    "shape": _with_shape,
    "positions": _with_positions,
    "covered": _with_covered,
    "heated": _with_heated,
}


def _add_door(tunnel: Tunnel, end: int) -> Tunnel:
    door = Door(width_m=DOOR_M[0], height_m=DOOR_M[1])
    doors = (*tunnel.ends[end].doors, door)
    return change.with_tunnel_value(tunnel, ("ends", end, "doors"), doors)


def _remove_door(tunnel: Tunnel, end: int, index: int) -> Tunnel:
    doors = tunnel.ends[end].doors
    kept = doors[:index] + doors[index + 1 :]
    return change.with_tunnel_value(tunnel, ("ends", end, "doors"), kept)


ACTS: dict[str, Callable[..., Tunnel]] = {
    "add split": change.add_split,
    "remove split": change.remove_split,
    "add seam": change.add_seam,
    "remove seam": change.remove_seam,
    "add door": _add_door,
    "remove door": _remove_door,
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

    Splits, seams and hip boards are held by their neighbours, all else by the limits of its class.
    """
    match entry.path:
        case ("sides", int(side), "splits", int(index), "at_m"):
            return Between(*change.split_range(tunnel, side, index))
        case ("skin", "cross_seams_m", int(index)):
            return Between(*change.seam_range(tunnel, index))
        case ("frame", "boards", int(side), "hip_height_m"):
            return Between(*change.hip_range(tunnel, side))
        case ("air", "jumpers", int(index), "at_m"):
            return Between(*jumper_range(tunnel, index))
        case ("frame", "bows", "positions_m", int(index)):
            return _bow_limits(tunnel, index)
    for known in describe(entry.owner):
        if known.name == entry.name and known.low is not None and known.high is not None:
            return Between(known.low, known.high)
    return UNLIMITED


def _bow_limits(tunnel: Tunnel, index: int) -> Between:
    """Return between which positions a listed bow can stand, m: clear of its neighbours."""
    spots = bow_positions(tunnel.frame.bows)
    least_m = next(k.low for k in describe(EvenBows) if k.name == "spacing_m") or 0.0
    low = spots[index - 1] + least_m if index else 0.0
    high = spots[index + 1] - least_m if index + 1 < len(spots) else UNLIMITED.high
    return Between(low, high)
