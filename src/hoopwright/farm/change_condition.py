"""Changes of what of the old skin stays: one line more, one line less."""

from hoopwright.farm.condition import FILM, PartState
from hoopwright.farm.farm import Tunnel


def add_state(tunnel: Tunnel) -> Tunnel:
    """Return the tunnel with one more line at the end: its film is kept, everywhere.

    What nothing is said of is bought new, so a fresh line says what is worth saying: keep.
    """
    fresh = PartState(family=FILM, state="keep")
    return tunnel.but(condition=(*tunnel.condition, fresh))


def remove_state(tunnel: Tunnel, index: int) -> Tunnel:
    """Return the tunnel without one line."""
    lines = tunnel.condition
    return tunnel.but(condition=lines[:index] + lines[index + 1 :])
