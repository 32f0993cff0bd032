"""Changes of a farm: every edit is a function from an old value to a new one.

The window's commands, the mends of the checks and the command line all go through here. What
a change cannot do raises ValueError with the field and the mend, as the classes do.
"""

import itertools
import math
from typing import Any

from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.entered import Entered
from hoopwright.farm.farm import Farm, Tunnel, fits_bar, fits_drive
from hoopwright.farm.frame import EvenBows, Frame, ListedBows, bow_positions
from hoopwright.farm.hip_readings import moved_readings
from hoopwright.farm.side import CrankPlace, Panel, Side, SideKind, Split

FieldPath = tuple[str | int, ...]

LEAST_PANEL_M = 0.5


def with_tunnel(farm: Farm, index: int, tunnel: Tunnel) -> Farm:
    """Return the farm with one tunnel replaced."""
    tunnels = list(farm.tunnels)
    tunnels[index] = tunnel
    return farm.but(tunnels=tuple(tunnels))


def add_tunnel(farm: Farm, tunnel: Tunnel) -> Farm:
    """Return the farm with a tunnel added at the end, its name made unique."""
    named = tunnel.but(name=free_name(farm, tunnel.name))
    return farm.but(tunnels=(*farm.tunnels, named))


def remove_tunnel(farm: Farm, index: int) -> Farm:
    """Return the farm without one tunnel; the last one stays."""
    if len(farm.tunnels) == 1:
        raise ValueError("tunnels: a farm needs at least one tunnel; add another one first")
    return farm.but(tunnels=farm.tunnels[:index] + farm.tunnels[index + 1 :])


def free_name(farm: Farm, name: str) -> str:
    """Return the name, or the name with a number when a tunnel has it already."""
    taken = {t.name for t in farm.tunnels}
    if name not in taken:
        return name
    number = 2
    while f"{name} {number}" in taken:
        number += 1
    return f"{name} {number}"


def value_at(thing: Any, path: FieldPath) -> Any:
    """Return what stands at a path of field names and tuple positions."""
    for step in path:
        thing = thing[step] if isinstance(step, int) else getattr(thing, step)
    return thing


def with_value(thing: Any, path: FieldPath, value: Any) -> Any:
    """Return a copy of a tree of entered values with one place changed, checked again."""
    if not path:
        return value
    step, rest = path[0], path[1:]
    if isinstance(step, int):
        inside = with_value(thing[step], rest, value)
        return (*thing[:step], inside, *thing[step + 1 :])
    assert isinstance(thing, Entered)
    return thing.but(**{step: with_value(getattr(thing, step), rest, value)})


def with_tunnel_value(tunnel: Tunnel, path: FieldPath, value: Any) -> Tunnel:
    """Return the tunnel with one entered value changed.

    A change of the frame keeps splits, seams and pockets on the tunnel (`fit_to_frame`); a new
    length or spacing takes the number of bows along when the bays come out even.
    """
    if path[0] != "frame":
        changed = with_value(tunnel, path, value)
        assert isinstance(changed, Tunnel)
        return changed
    frame = with_value(tunnel.frame, path[1:], value)
    if path[1:] in (("length_m",), ("bows", "spacing_m")):
        frame = _even_bays(frame)
    return fit_to_frame(tunnel, frame)


def _even_bays(frame: Frame) -> Frame:
    bays = whole_bays(frame)
    if bays is None or not isinstance(frame.bows, EvenBows):
        return frame
    return frame.but(bows=frame.bows.but(count=bays + 1))


def whole_bays(frame: Frame) -> int | None:
    """Return how many whole bays of the spacing make the length, or None when none do."""
    if not isinstance(frame.bows, EvenBows):
        return None
    bays = frame.length_m / frame.bows.spacing_m
    whole = round(bays)
    return whole if whole >= 1 and abs(bays - whole) < 1e-3 else None


def fit_to_frame(tunnel: Tunnel, frame: Frame) -> Tunnel:
    """Return the tunnel on a changed frame, with everything on it kept in place.

    When the bows moved, pockets are cut back to what leaves an opening, and splits and seams go
    to the bow nearest to the same share of the length; a split with no room left is dropped.
    """
    old = bow_positions(tunnel.frame.bows)
    fresh = bow_positions(frame.bows)
    if old == fresh:
        return tunnel.but(frame=frame)
    stretch = fresh[-1] / old[-1]
    near = (_near(fresh[1:-1], x * stretch) for x in tunnel.skin.cross_seams_m)
    seams = sorted({x for x in near if x is not None})
    first, second = tunnel.sides
    sides = (_fit_side(first, fresh, stretch), _fit_side(second, fresh, stretch))
    return tunnel.but(frame=frame, sides=sides, skin=tunnel.skin.but(cross_seams_m=tuple(seams)))


def _near(spots: tuple[float, ...], wanted: float) -> float | None:
    return min(spots, key=lambda x: abs(x - wanted), default=None)


def _fit_side(side: Side, bows: tuple[float, ...], stretch: float) -> Side:
    front, back = side.pocket_bays
    while front + back >= len(bows) - 1:
        front, back = max(0, front - 1), max(0, back - 1)
    free = bows[front + 1 : len(bows) - 1 - back]
    splits: list[Split] = []
    panels: list[Panel] = [side.panels[0]]
    for split, panel in zip(side.splits, side.panels[1:], strict=True):
        spot = _near(free, split.at_m * stretch)
        if spot is None or any(s.at_m >= spot for s in splits):
            continue
        splits.append(split.but(at_m=spot))
        panels.append(panel)
    return side.but(pocket_bays=(front, back), splits=tuple(splits), panels=tuple(panels))


def with_listed_bows(tunnel: Tunnel) -> Tunnel:
    """Return the tunnel with its even bows written out as a list of positions."""
    spots = bow_positions(tunnel.frame.bows)
    return tunnel.but(frame=tunnel.frame.but(bows=ListedBows(positions_m=spots)))


def with_even_bows(tunnel: Tunnel) -> Tunnel:
    """Return the tunnel with as many bows over the same length, all at one spacing."""
    spots = bow_positions(tunnel.frame.bows)
    even = EvenBows(count=len(spots), spacing_m=spots[-1] / (len(spots) - 1))
    return fit_to_frame(tunnel, tunnel.frame.but(bows=even))


def opening_range(tunnel: Tunnel, side: int) -> tuple[float, float]:
    """Return where the opening of a side begins and ends, m from the first bow."""
    bows = bow_positions(tunnel.frame.bows)
    front, back = tunnel.sides[side].pocket_bays
    return bows[front], bows[len(bows) - 1 - back]


def split_range(tunnel: Tunnel, side: int, index: int) -> tuple[float, float]:
    """Return how far a split can move, m, without meeting a neighbour or an end."""
    low, high = opening_range(tunnel, side)
    spots = [s.at_m for s in tunnel.sides[side].splits]
    if index > 0:
        low = spots[index - 1]
    if index + 1 < len(spots):
        high = spots[index + 1]
    gap = min(LEAST_PANEL_M, (high - low) / 4)
    return low + gap, high - gap


def move_split(tunnel: Tunnel, side: int, index: int, at_m: float) -> Tunnel:
    """Return the tunnel with a split moved, held between its neighbours."""
    low, high = split_range(tunnel, side, index)
    spot = min(max(at_m, low), high)
    return _with_value(tunnel, ("sides", side, "splits", index, "at_m"), spot)


def add_split(tunnel: Tunnel, side: int, at_m: float | None = None) -> Tunnel:
    """Return the tunnel with one more split, at a place or in the middle of the longest curtain.

    The curtain that is cut in two is cranked from its outer ends.
    """
    chosen = tunnel.sides[side]
    low, high = opening_range(tunnel, side)
    edges = [low, *(s.at_m for s in chosen.splits), high]
    if at_m is None:
        index = max(range(len(edges) - 1), key=lambda i: edges[i + 1] - edges[i])
        middle = (edges[index] + edges[index + 1]) / 2
        inner = [x for x in bow_positions(tunnel.frame.bows) if edges[index] < x < edges[index + 1]]
        at_m = min(inner, key=lambda x: abs(x - middle), default=middle)
    else:
        index = sum(1 for x in edges[1:-1] if x < at_m)
    if not edges[index] + 1e-6 < at_m < edges[index + 1] - 1e-6:
        raise ValueError("splits: a split must lie inside the opening, away from other splits")
    panel = chosen.panels[index]
    pair = (panel.but(crank_end="front"), panel.but(crank_end="back"))
    return tunnel.but(
        sides=_swap(
            tunnel.sides,
            side,
            chosen.but(
                splits=(*chosen.splits[:index], Split(at_m=at_m), *chosen.splits[index:]),
                panels=(*chosen.panels[:index], *pair, *chosen.panels[index + 1 :]),
            ),
        )
    )


def remove_split(tunnel: Tunnel, side: int, index: int) -> Tunnel:
    """Return the tunnel without one split; the curtain in front of it takes both places."""
    chosen = tunnel.sides[side]
    changed = chosen.but(
        splits=chosen.splits[:index] + chosen.splits[index + 1 :],
        panels=chosen.panels[: index + 1] + chosen.panels[index + 2 :],
    )
    return tunnel.but(sides=_swap(tunnel.sides, side, changed))


def seam_range(tunnel: Tunnel, index: int) -> tuple[float, float]:
    """Return how far a cross seam can move, m."""
    seams = tunnel.skin.cross_seams_m
    length = bow_positions(tunnel.frame.bows)[-1]
    low = seams[index - 1] if index > 0 else 0.0
    high = seams[index + 1] if index + 1 < len(seams) else length
    gap = min(LEAST_PANEL_M, (high - low) / 4)
    return low + gap, high - gap


def move_seam(tunnel: Tunnel, index: int, at_m: float) -> Tunnel:
    """Return the tunnel with a cross seam moved, held between its neighbours."""
    low, high = seam_range(tunnel, index)
    return _with_value(tunnel, ("skin", "cross_seams_m", index), min(max(at_m, low), high))


def add_seam(tunnel: Tunnel, at_m: float | None = None) -> Tunnel:
    """Return the tunnel with one more cross seam, at a place or halving the longest sheet."""
    bows = bow_positions(tunnel.frame.bows)
    edges = [0.0, *tunnel.skin.cross_seams_m, bows[-1]]
    if at_m is None:
        low, high = max(itertools.pairwise(edges), key=lambda e: e[1] - e[0])
        inner = [x for x in bows if low < x < high]
        at_m = min(inner, key=lambda x: abs(x - (low + high) / 2), default=(low + high) / 2)
    seams = tuple(sorted({*tunnel.skin.cross_seams_m, at_m}))
    return _with_value(tunnel, ("skin", "cross_seams_m"), seams)


def remove_seam(tunnel: Tunnel, index: int) -> Tunnel:
    """Return the tunnel without one cross seam."""
    seams = tunnel.skin.cross_seams_m
    return _with_value(tunnel, ("skin", "cross_seams_m"), seams[:index] + seams[index + 1 :])


def hip_range(tunnel: Tunnel, side: int) -> tuple[float, float]:
    """Return between which heights a hip board can stand, m."""
    profile = tunnel.frame.profile
    boards = tunnel.frame.boards[side]
    lows = [boards.baseboard_height_m, tunnel.sides[side].shut_height_m]
    for row in tunnel.frame.tape.bows:
        read = row.sides[side]
        if read.hip_m is not None:
            under = [low for low in (read.baseboard_m, read.ground_m) if low is not None]
            lows += [boards.hip_height_m - (read.hip_m - low) for low in under]
    return max(lows) + 0.1, profile.peak_height_m - 0.1


def move_hip(tunnel: Tunnel, sides: tuple[int, ...], height_m: float) -> Tunnel:
    """Return the tunnel with the hip board, and the hip seam on it, at another height.

    Readings taken at the board move with it.
    """
    frame = tunnel.frame
    for side in sides:
        low, high = hip_range(tunnel, side)
        spot = min(max(height_m, low), high)
        by_m = spot - frame.boards[side].hip_height_m
        boards = list(frame.boards)
        boards[side] = boards[side].but(hip_height_m=spot)
        frame = frame.but(boards=(boards[0], boards[1]), tape=moved_readings(frame, side, by_m))
    return tunnel.but(frame=frame)


def set_crank_end(tunnel: Tunnel, side: int, panel: int, end: CrankPlace) -> Tunnel:
    """Return the tunnel with the crank of one curtain at an end, or in the middle."""
    return _with_value(tunnel, ("sides", side, "panels", panel, "crank_end"), end)


def set_side_kind(tunnel: Tunnel, side: int, kind: SideKind, catalogue: Catalogue) -> Tunnel:
    """Return the tunnel with another kind of side; bars and drives that do not fit are exchanged.

    Raises:
        ValueError: The catalogue has no bar or no drive for this kind.
    """
    chosen = tunnel.sides[side]
    panels = tuple(_fitted(panel, kind, catalogue) for panel in chosen.panels)
    changed = chosen.but(kind=kind, panels=panels)
    if kind == "woven" and chosen.film is None:
        woven = next((f.key for f in catalogue.films if f.woven), None)
        changed = changed.but(film=woven)
    return tunnel.but(sides=_swap(tunnel.sides, side, changed))


def _fitted(panel: Panel, kind: SideKind, catalogue: Catalogue) -> Panel:
    """Return the panel with the first bar and drive that fit, where its own do not."""
    if kind == "fixed":
        return panel
    bar = catalogue.bar(panel.bar)
    if not fits_bar(kind, bar):
        bar = next((b for b in catalogue.bars if fits_bar(kind, b)), bar)
    if not fits_bar(kind, bar):
        raise ValueError("kind: the catalogue has no bar for a hem; add one to its bars first")
    drive = catalogue.drive(panel.drive)
    if not fits_drive(kind, drive):
        drive = next((d for d in catalogue.drives if fits_drive(kind, d)), drive)
    if not fits_drive(kind, drive):
        raise ValueError("kind: the catalogue has no drive for this kind of side; add one first")
    return panel.but(bar=bar.key, drive=drive.key)


def nearest_bow(tunnel: Tunnel, at_m: float) -> float:
    """Return the bow position nearest to a place, m."""
    return min(bow_positions(tunnel.frame.bows), key=lambda x: abs(x - at_m))


def next_bow(tunnel: Tunnel, at_m: float, steps: int) -> float:
    """Return the bow some steps further back (or forward when negative), m."""
    bows = bow_positions(tunnel.frame.bows)
    if steps > 0:
        ahead = [x for x in bows if x > at_m + 1e-6]
        return ahead[min(steps, len(ahead)) - 1] if ahead else bows[-1]
    behind = [x for x in bows if x < at_m - 1e-6]
    return behind[-min(-steps, len(behind))] if behind else bows[0]


def _with_value(tunnel: Tunnel, path: FieldPath, value: Any) -> Tunnel:
    changed = with_value(tunnel, path, value)
    assert isinstance(changed, Tunnel)
    return changed


def _swap(sides: tuple[Side, Side], index: int, side: Side) -> tuple[Side, Side]:
    return (side, sides[1]) if index == 0 else (sides[0], side)


def is_close(a_m: float, b_m: float) -> bool:
    """Return whether two positions are the same to a tenth of a millimetre."""
    return math.isclose(a_m, b_m, abs_tol=1e-4)
