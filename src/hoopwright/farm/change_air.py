"""Changes of the air between two layers: jumpers placed by hand, added, moved, taken away.

Worked-out jumpers become placed ones as soon as one of them is changed; the caller gives the list
that is in force, which `hoopwright.inflation.placed_jumpers` returns.
"""

from hoopwright.farm.air import AirReading, JumperSurface, PlacedJumper
from hoopwright.farm.farm import Tunnel
from hoopwright.farm.frame import bow_positions

Jumpers = tuple[PlacedJumper, ...]


def with_jumpers(tunnel: Tunnel, jumpers: Jumpers | None) -> Tunnel:
    """Return the tunnel with these jumpers, or with worked-out ones for None."""
    return tunnel.but(air=tunnel.air.but(jumpers=jumpers))


def add_jumper(tunnel: Tunnel, jumpers: Jumpers, surface: JumperSurface, at_m: float) -> Tunnel:
    """Return the tunnel with one more jumper, held on its length."""
    fresh = PlacedJumper(surface=surface, at_m=_on_tunnel(tunnel, at_m))
    return with_jumpers(tunnel, (*jumpers, fresh))


def move_jumper(tunnel: Tunnel, jumpers: Jumpers, index: int, at_m: float) -> Tunnel:
    """Return the tunnel with one jumper moved along, held on its length."""
    moved = jumpers[index].but(at_m=_on_tunnel(tunnel, at_m))
    return with_jumpers(tunnel, (*jumpers[:index], moved, *jumpers[index + 1 :]))


def remove_jumper(tunnel: Tunnel, jumpers: Jumpers, index: int) -> Tunnel:
    """Return the tunnel without one jumper."""
    return with_jumpers(tunnel, (*jumpers[:index], *jumpers[index + 1 :]))


def add_reading(tunnel: Tunnel, reading: AirReading) -> Tunnel:
    """Return the tunnel with one more reading, the oldest first."""
    readings = sorted((*tunnel.air.readings, reading), key=lambda r: r.taken_on)
    return tunnel.but(air=tunnel.air.but(readings=tuple(readings)))


def remove_reading(tunnel: Tunnel, index: int) -> Tunnel:
    """Return the tunnel without one reading."""
    kept = tunnel.air.readings[:index] + tunnel.air.readings[index + 1 :]
    return tunnel.but(air=tunnel.air.but(readings=kept))


def _on_tunnel(tunnel: Tunnel, at_m: float) -> float:
    return min(max(at_m, 0.0), bow_positions(tunnel.frame.bows)[-1])
