"""Changes of what may be added to a tunnel: rain that is carried away, shade cloth, screens."""

from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.extras import Rain, Screen, Shade
from hoopwright.farm.farm import Tunnel

SHADE_PART = "shade_cloth"
SCREEN_PART = "insect_screen"
GROUP = "Shade and screen"
"""Group of the catalogue's parts that cloth and screen are chosen from."""


def set_rain(tunnel: Tunnel, have: bool) -> Tunnel:
    """Return the tunnel with gutters that carry the rain, or without; a rain entered stays."""
    if have == (tunnel.rain is not None):
        return tunnel
    return tunnel.but(rain=Rain() if have else None)


def set_shade(tunnel: Tunnel, have: bool, catalogue: Catalogue) -> Tunnel:
    """Return the tunnel with shade cloth, or without; cloth entered stays.

    Raises:
        ValueError: The catalogue has no cloth.
    """
    if have == (tunnel.shade is not None):
        return tunnel
    return tunnel.but(shade=Shade(part=_part(catalogue, SHADE_PART, "shade")) if have else None)


def set_screen(tunnel: Tunnel, side: int, have: bool, catalogue: Catalogue) -> Tunnel:
    """Return the tunnel with insect screen in the opening of a side, or without.

    Raises:
        ValueError: The catalogue has no screen.
    """
    chosen = tunnel.sides[side]
    if have == (chosen.screen is not None):
        return tunnel
    screen = Screen(part=_part(catalogue, SCREEN_PART, "screen")) if have else None
    first, second = tunnel.sides
    changed = chosen.but(screen=screen)
    return tunnel.but(sides=(changed, second) if side == 0 else (first, changed))


def _part(catalogue: Catalogue, wanted: str, label: str) -> str:
    """Return the key of the part wanted, or of the first of its group that is sold by length."""
    lengths = [p.key for p in catalogue.parts if p.group == GROUP and p.counted_in == "m"]
    if wanted in lengths:
        return wanted
    if not lengths:
        raise ValueError(
            f"{label}: the catalogue has nothing by length in its group {GROUP!r}; add it to the "
            "parts first"
        )
    return lengths[0]
