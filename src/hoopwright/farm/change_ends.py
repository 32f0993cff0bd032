"""Changes of an end wall: what closes it, its doors, vents and fan openings, rails and seams.

Openings are kept inside the bow where they have room; rails and seams are kept apart and under
the ridge. A seam that lies on a rail goes with it.
"""

from itertools import pairwise
from typing import Literal, TypeVar

from hoopwright.farm.begin import DOOR_M
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.change import is_close
from hoopwright.farm.end_places import (
    Box,
    free_spot,
    highest_sill,
    opening_boxes,
    room_across,
)
from hoopwright.farm.farm import Tunnel
from hoopwright.farm.profile import ridge_height
from hoopwright.farm.skin import Cut, CutKind, Door, End, RigidSheet

OpeningKind = Literal["door", "cut"]
EndCover = Literal["film", "rigid", "open"]

RIGID_PART = "rigid_sheet"
"""Key of the catalogue's rigid sheet; a catalogue without it has none to offer."""
APART_M = 0.1
"""Rails, and seams, are kept this far apart; so close nothing can be fixed between them."""

Range = tuple[float, float]

T = TypeVar("T")


def with_end(tunnel: Tunnel, number: int, end: End) -> Tunnel:
    """Return the tunnel with one end wall replaced."""
    front, back = tunnel.ends
    return tunnel.but(ends=(end, back) if number == 0 else (front, end))


def cover_of(end: End) -> EndCover:
    """Return what closes an end wall."""
    if end.rigid is not None:
        return "rigid"
    return "open" if end.film is None else "film"


def set_end_cover(tunnel: Tunnel, end: int, cover: EndCover, catalogue: Catalogue) -> Tunnel:
    """Return the tunnel with an end wall closed with film, with rigid sheets, or left open.

    New film is that of the pockets. Doors, openings, rails and seams stay as entered.

    Raises:
        ValueError: The catalogue has no rigid sheet.
    """
    wall = tunnel.ends[end]
    if cover == cover_of(wall):
        return tunnel
    if cover == "film":
        return with_end(tunnel, end, wall.but(film=tunnel.skin.pockets, rigid=None))
    if cover == "open":
        return with_end(tunnel, end, wall.but(film=None, rigid=None))
    if all(part.key != RIGID_PART for part in catalogue.parts):
        raise ValueError(
            f"rigid: the catalogue has no part {RIGID_PART!r}; add a rigid sheet to its parts first"
        )
    return with_end(tunnel, end, wall.but(film=None, rigid=RigidSheet(part=RIGID_PART)))


def add_door(tunnel: Tunnel, end: int) -> Tunnel:
    """Return the tunnel with one more door in an end wall, spread with the others."""
    wall = tunnel.ends[end]
    door = Door(width_m=DOOR_M[0], height_m=DOOR_M[1])
    return with_end(tunnel, end, wall.but(doors=(*wall.doors, door)))


def remove_door(tunnel: Tunnel, end: int, index: int) -> Tunnel:
    """Return the tunnel without one door."""
    wall = tunnel.ends[end]
    return with_end(tunnel, end, wall.but(doors=_without(wall.doors, index)))


def add_cut(tunnel: Tunnel, end: int, kind: CutKind) -> Tunnel:
    """Return the tunnel with one more vent or fan opening, as high as it has room in the middle.

    Where another opening is in its way it goes beside or below that one.
    """
    wall, profile = tunnel.ends[end], tunnel.frame.profile
    cut = Cut(kind=kind)
    left_m, sill_m = -cut.width_m / 2, highest_sill(profile, end, cut.width_m, cut.height_m)
    wanted = Box(left_m, sill_m, left_m + cut.width_m, sill_m + cut.height_m)
    doors, cuts = opening_boxes(wall, profile.span_m)
    spot = free_spot(profile, end, wanted, (*doors, *cuts), on_ground=False) or wanted
    placed = cut.but(left_m=spot.left_m, sill_m=spot.low_m)
    return with_end(tunnel, end, wall.but(cuts=(*wall.cuts, placed)))


def remove_cut(tunnel: Tunnel, end: int, index: int) -> Tunnel:
    """Return the tunnel without one vent or fan opening."""
    wall = tunnel.ends[end]
    return with_end(tunnel, end, wall.but(cuts=_without(wall.cuts, index)))


def opening_place(tunnel: Tunnel, end: int, kind: OpeningKind, index: int) -> tuple[float, float]:
    """Return left edge and sill of a door, vent or fan opening, m."""
    box = _box(tunnel, end, kind, index)
    return box.left_m, box.low_m


def left_range(
    tunnel: Tunnel, end: int, kind: OpeningKind, index: int, sill_m: float | None = None
) -> Range:
    """Return between which places the left edge of an opening can lie, m.

    Args:
        tunnel: The tunnel as entered.
        end: 0 for the front end, 1 for the back.
        kind: A door, or a vent or fan opening.
        index: Its number among its like.
        sill_m: Its lower edge where that is to change too, m.

    Returns:
        Twice the same place where it has no room at that height.
    """
    box = _box(tunnel, end, kind, index)
    low_m = box.low_m if sill_m is None else sill_m
    high_m = low_m + box.high_m - box.low_m
    left_m, right_m = room_across(tunnel.frame.profile, end, low_m, high_m)
    last_m = right_m - (box.right_m - box.left_m)
    if last_m < left_m:
        return (left_m + last_m) / 2, (left_m + last_m) / 2
    return left_m, last_m


def sill_range(tunnel: Tunnel, end: int, kind: OpeningKind, index: int) -> Range:
    """Return between which heights the lower edge of an opening can lie, m; a door's stays at 0."""
    if kind == "door":
        return 0.0, 0.0
    box = _box(tunnel, end, kind, index)
    size = (box.right_m - box.left_m, box.high_m - box.low_m)
    return 0.0, highest_sill(tunnel.frame.profile, end, *size)


def move_opening(
    tunnel: Tunnel,
    end: int,
    kind: OpeningKind,
    index: int,
    left_m: float | None = None,
    sill_m: float | None = None,
) -> Tunnel:
    """Return the tunnel with a door, vent or fan opening moved, held inside the bow.

    The height goes first: an opening that is moved up along the bow slides towards the ridge.

    Args:
        tunnel: The tunnel as entered.
        end: 0 for the front end, 1 for the back.
        kind: A door, or a vent or fan opening.
        index: Its number among its like.
        left_m: Left edge seen from outside, from the middle of the wall, m; None keeps it.
        sill_m: Lower edge above the ground line, m; None keeps it.
    """
    was_left_m, was_sill_m = opening_place(tunnel, end, kind, index)
    low_m, high_m = sill_range(tunnel, end, kind, index)
    sill_m = min(max(was_sill_m if sill_m is None else sill_m, low_m), high_m)
    first_m, last_m = left_range(tunnel, end, kind, index, sill_m)
    left_m = min(max(was_left_m if left_m is None else left_m, first_m), last_m)
    return _placed(tunnel, end, kind, index, left_m, sill_m)


def fit_opening(tunnel: Tunnel, end: int, kind: OpeningKind, index: int) -> Tunnel | None:
    """Return the tunnel with an opening at the nearest place where it has room, or None."""
    doors, cuts = opening_boxes(tunnel.ends[end], tunnel.frame.profile.span_m)
    box = (doors if kind == "door" else cuts)[index]
    others = tuple(other for other in (*doors, *cuts) if other is not box)
    spot = free_spot(tunnel.frame.profile, end, box, others, on_ground=kind == "door")
    if spot is None:
        return None
    return _placed(tunnel, end, kind, index, spot.left_m, spot.low_m)


def _placed(
    tunnel: Tunnel, end: int, kind: OpeningKind, index: int, left_m: float, sill_m: float
) -> Tunnel:
    wall = tunnel.ends[end]
    if kind == "door":
        door = wall.doors[index].but(left_m=left_m)
        doors = (*wall.doors[:index], door, *wall.doors[index + 1 :])
        return with_end(tunnel, end, wall.but(doors=doors))
    cut = wall.cuts[index].but(left_m=left_m, sill_m=sill_m)
    cuts = (*wall.cuts[:index], cut, *wall.cuts[index + 1 :])
    return with_end(tunnel, end, wall.but(cuts=cuts))


def _box(tunnel: Tunnel, end: int, kind: OpeningKind, index: int) -> Box:
    doors, cuts = opening_boxes(tunnel.ends[end], tunnel.frame.profile.span_m)
    return (doors if kind == "door" else cuts)[index]


def add_rail(tunnel: Tunnel, end: int, at_m: float | None = None) -> Tunnel:
    """Return the tunnel with one more rail, at a height or halving the highest bay of the wall."""
    wall = tunnel.ends[end]
    if at_m is None:
        at_m = _middle(tunnel, wall.rails_m)
    return with_end(tunnel, end, wall.but(rails_m=tuple(sorted({*wall.rails_m, at_m}))))


def remove_rail(tunnel: Tunnel, end: int, index: int) -> Tunnel:
    """Return the tunnel without one rail; a seam on it stays where it is."""
    wall = tunnel.ends[end]
    return with_end(tunnel, end, wall.but(rails_m=_without(wall.rails_m, index)))


def rail_range(tunnel: Tunnel, end: int, index: int) -> Range:
    """Return between which heights a rail can lie, m."""
    return _between(tunnel, tunnel.ends[end].rails_m, index)


def move_rail(tunnel: Tunnel, end: int, index: int, at_m: float) -> Tunnel:
    """Return the tunnel with a rail at another height, held between its neighbours.

    A seam that lies on it goes along.
    """
    low_m, high_m = rail_range(tunnel, end, index)
    at_m = min(max(at_m, low_m), high_m)
    wall = tunnel.ends[end]
    was_m = wall.rails_m[index]
    for n, seam_m in enumerate(wall.seams_m):
        if is_close(seam_m, was_m):
            seams = _moved(wall.seams_m, n, at_m)
            if list(seams) == sorted(set(seams)):
                wall = wall.but(seams_m=seams)
    return with_end(tunnel, end, wall.but(rails_m=_moved(wall.rails_m, index, at_m)))


def add_seam(tunnel: Tunnel, end: int, at_m: float | None = None) -> Tunnel:
    """Return the tunnel with one more seam in the film of an end wall.

    Without a height it lies on the free rail that halves the wall best; where no rail is free one
    is added under it.
    """
    wall = tunnel.ends[end]
    if at_m is None:
        middle_m = _middle(tunnel, wall.seams_m)
        free = [y for y in wall.rails_m if not any(is_close(y, s) for s in wall.seams_m)]
        at_m = min(free, key=lambda y: abs(y - middle_m), default=middle_m)
        if not free:
            tunnel = add_rail(tunnel, end, at_m)
            wall = tunnel.ends[end]
    return with_end(tunnel, end, wall.but(seams_m=tuple(sorted({*wall.seams_m, at_m}))))


def remove_seam(tunnel: Tunnel, end: int, index: int) -> Tunnel:
    """Return the tunnel without one seam of an end wall; its rail stays."""
    wall = tunnel.ends[end]
    return with_end(tunnel, end, wall.but(seams_m=_without(wall.seams_m, index)))


def end_seam_range(tunnel: Tunnel, end: int, index: int) -> Range:
    """Return between which heights a seam of an end wall can lie, m."""
    return _between(tunnel, tunnel.ends[end].seams_m, index)


def move_end_seam(tunnel: Tunnel, end: int, index: int, at_m: float) -> Tunnel:
    """Return the tunnel with a seam of an end wall at another height, held by its neighbours."""
    low_m, high_m = end_seam_range(tunnel, end, index)
    wall = tunnel.ends[end]
    seams = _moved(wall.seams_m, index, min(max(at_m, low_m), high_m))
    return with_end(tunnel, end, wall.but(seams_m=seams))


def _middle(tunnel: Tunnel, heights_m: tuple[float, ...]) -> float:
    """Return the middle of the highest stretch between heights, the ground and the ridge, m."""
    edges = (0.0, *heights_m, ridge_height(tunnel.frame.profile))
    low_m, high_m = max(pairwise(edges), key=lambda e: e[1] - e[0])
    return (low_m + high_m) / 2


def _between(tunnel: Tunnel, heights_m: tuple[float, ...], index: int) -> Range:
    low_m = heights_m[index - 1] if index else 0.0
    top_m = ridge_height(tunnel.frame.profile)
    high_m = heights_m[index + 1] if index + 1 < len(heights_m) else top_m
    gap_m = min(APART_M, max(0.0, high_m - low_m) / 4)
    return low_m + gap_m, max(low_m + gap_m, high_m - gap_m)


def _without(things: tuple[T, ...], index: int) -> tuple[T, ...]:
    return things[:index] + things[index + 1 :]


def _moved(heights_m: tuple[float, ...], index: int, at_m: float) -> tuple[float, ...]:
    return (*heights_m[:index], at_m, *heights_m[index + 1 :])
