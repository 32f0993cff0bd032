"""Jumper hoses under a hand: the list in force, one more of them, and what a move is called.

Jumpers are worked out until one is changed. To change one, the list in force is written down as
placed by hand first; a tunnel whose jumpers stay untouched never gets such a list.
"""

from itertools import pairwise
from typing import get_args

from hoopwright.desktop.session import Session
from hoopwright.farm import PlacedJumper, Tunnel, bow_positions
from hoopwright.farm.air import JumperSurface
from hoopwright.farm.change_air import add_jumper, move_jumper, remove_jumper, with_jumpers
from hoopwright.inflation import placed_jumpers
from hoopwright.plan import TunnelPlan

SURFACES: tuple[JumperSurface, ...] = get_args(JumperSurface)
AT_AN_END: tuple[JumperSurface, ...] = ("front_end", "back_end")


def is_jumper(mark: str) -> bool:
    """Return whether a mark is that of a jumper."""
    parts = mark.split("/")
    return len(parts) == 2 and parts[0] == "jumper"


def with_placed(tunnel: Tunnel, plan: TunnelPlan) -> Tunnel:
    """Return the tunnel with the jumpers in force written down as placed by hand."""
    if tunnel.air.jumpers is not None:
        return tunnel
    return with_jumpers(tunnel, placed_jumpers(plan.chosen.inflation))


def tunnel_in_hand(session: Session, mark: str) -> Tunnel:
    """Return the shown tunnel as a hand changes it: with written jumpers when one is in hand."""
    if is_jumper(mark):
        return with_placed(session.tunnel, session.tunnel_plan)
    return session.tunnel


def jumper_range(tunnel: Tunnel, index: int) -> tuple[float, float]:
    """Return how far a placed jumper can go, m; one at an end stays there."""
    jumper = _jumpers(tunnel)[index]
    if jumper.surface in AT_AN_END:
        return jumper.at_m, jumper.at_m
    return 0.0, bow_positions(tunnel.frame.bows)[-1]


def jumper_place(tunnel: Tunnel, index: int) -> float:
    """Return where a placed jumper hangs, m from the first bow."""
    return _jumpers(tunnel)[index].at_m


def add_jumper_on(tunnel: Tunnel, surface: int) -> Tunnel:
    """Return the tunnel with one more jumper, in the middle of the longest stretch without one.

    Args:
        tunnel: The tunnel with written jumpers.
        surface: Number of the surface in `SURFACES`.
    """
    chosen, jumpers = SURFACES[surface], _jumpers(tunnel)
    length_m = bow_positions(tunnel.frame.bows)[-1]
    spots = sorted(jumper.at_m for jumper in jumpers if jumper.surface == chosen)
    low, high = max(pairwise((0.0, *spots, length_m)), key=lambda gap: gap[1] - gap[0])
    at_m = (low + high) / 2
    if chosen in AT_AN_END:
        at_m = 0.0 if chosen == "front_end" else length_m
    return add_jumper(tunnel, jumpers, chosen, at_m)


def move_jumper_to(tunnel: Tunnel, index: int, at_m: float) -> Tunnel:
    """Return the tunnel, with written jumpers, with one of them moved within its range."""
    low_m, high_m = jumper_range(tunnel, index)
    return move_jumper(tunnel, _jumpers(tunnel), index, min(max(at_m, low_m), high_m))


def remove_jumper_at(tunnel: Tunnel, index: int) -> Tunnel:
    """Return the tunnel, with written jumpers, without one of them."""
    return remove_jumper(tunnel, _jumpers(tunnel), index)


def work_out_jumpers(tunnel: Tunnel) -> Tunnel:
    """Return the tunnel with jumpers that are worked out."""
    return with_jumpers(tunnel, None)


def _jumpers(tunnel: Tunnel) -> tuple[PlacedJumper, ...]:
    assert tunnel.air.jumpers is not None, "write the jumpers down first"
    return tunnel.air.jumpers
