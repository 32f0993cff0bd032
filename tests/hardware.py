"""Bars and drives for sides of every kind, beside those of the small farm. All invented."""

from hoopwright.farm import Bar, Farm, GearedCrank, LineDrum, Tunnel
from samples import small_catalogue, small_farm


def hem_bar() -> Bar:
    """Return a bar that lies in the hem of a woven curtain."""
    return (
        small_catalogue()
        .bars[0]
        .but(key="hem", name="bar in a hem", grip="hem", grip_mass_kg_m=0.0)
    )


def geared_crank(key: str = "geared") -> GearedCrank:
    """Return a crank that climbs with the bar."""
    return GearedCrank(
        key=key,
        name="geared crank",
        arm_m=0.25,
        ratio=4.0,
        efficiency=0.5,
        mass_kg=3.0,
        part="crank",
        guide_part="crank_pipe",
    )


def line_drum() -> LineDrum:
    """Return a drum for the lines of a drop-down curtain."""
    return LineDrum(
        key="drum",
        name="line drum",
        arm_m=0.2,
        ratio=3.0,
        efficiency=0.6,
        drum_m=0.06,
        part="crank",
    )


def full_farm(*tunnels: Tunnel) -> Farm:
    """Return a farm whose catalogue has a bar and a drive for every kind of side."""
    plain = small_catalogue()
    bars, drives = (*plain.bars, hem_bar()), (*plain.drives, geared_crank(), line_drum())
    return small_farm(*tunnels).but(catalogue=plain.but(bars=bars, drives=drives))
