"""The roll bar: what its tube weighs, how it resists twisting, how many sticks it takes.

A square tube is taken with sharp corners. A cap or spring wire adds mass and nothing else. A bar
with its own channel is taken as the closed tube it is; a tube slit along its length would be
hundreds of times softer in torsion and is no roll bar.
"""

import math

from hoopwright.farm.catalogue import Bar, Material, RoundTube, Section

DENSITY_KG_M3: dict[Material, float] = {"steel": 7850.0, "aluminium": 2700.0}
SHEAR_PA: dict[Material, float] = {"steel": 77e9, "aluminium": 26e9}
SHEAR_SOURCE = (
    "twist of an evenly loaded shaft, derived here; shear modulus within the ranges of Gere, "
    "Mechanics of Materials, 5th edition, as reprinted in Engineering Fundamentals, 4th edition, "
    "table 17.1"
)
DENSITY_SOURCE = (
    "derived here; density of structural steel 7850 kg/m3 after EN 1993-1-1 as quoted in steel "
    "tables; aluminium within the range of Gere, Mechanics of Materials, 5th edition, as reprinted "
    "in Engineering Fundamentals, 4th edition, table 17.2"
)
ROUNDING = 1e-9


def winding_radius(section: Section) -> float:
    """Return the mean radius at which the first film lies on the bare bar, m.

    On a square bar the lever swings between half the side and half the diagonal; film laid once
    around is as long as the outline, so outline over 2 pi is the mean.

    Source:
        Derived here: the mean width of a convex outline is its length over pi (Cauchy).
    """
    if isinstance(section, RoundTube):
        return section.outside_m / 2
    return 4 * section.outside_m / (2 * math.pi)


def metal_area(section: Section) -> float:
    """Return the area of metal in a cut across the tube, m2.

    Source:
        Derived here: outer figure less inner figure.
    """
    outside_m = section.outside_m
    inside_m = outside_m - 2 * section.wall_m
    square_m2 = outside_m**2 - inside_m**2
    return square_m2 * math.pi / 4 if isinstance(section, RoundTube) else square_m2


def torsion_constant(section: Section) -> float:
    """Return the torsion constant J of the tube, m4.

    Source:
        Round: polar second moment of a ring, exact. Square: Bredt's thin-wall formula
        4 A**2 t / P on the middle line (textbook; finite elements give 2 to 3 % more).
    """
    outside_m, wall_m = section.outside_m, section.wall_m
    if isinstance(section, RoundTube):
        return math.pi * (outside_m**4 - (outside_m - 2 * wall_m) ** 4) / 32
    return (outside_m - wall_m) ** 3 * wall_m


def tube_mass(section: Section, material: Material) -> float:
    """Return the mass of the tube for each metre, kg/m.

    Source:
        Area times density; steel 7850 kg/m3 (EN 1993-1-1, as quoted in steel tables).
    """
    return metal_area(section) * DENSITY_KG_M3[material]


def bar_mass(bar: Bar) -> float:
    """Return the mass of the bar with its cap or wire for each metre, kg/m.

    Source:
        Tube as in `tube_mass`; cap: the user's entry.
    """
    return tube_mass(bar.section, bar.material) + bar.grip_mass_kg_m


def stick_count(length_m: float, stick_m: float, overlap_m: float) -> int:
    """Return how many sticks a bar of that length takes; joints are one less.

    The first stick gives its whole length, each further one its length less the overlap.

    Args:
        length_m: Length of the bar, m.
        stick_m: Length of one stick, m, more than the overlap.
        overlap_m: What each joint takes, m.

    Returns:
        Sticks, at least 1.

    Raises:
        ValueError: The overlap takes the whole stick.

    Source:
        Derived here.
    """
    if stick_m <= overlap_m:
        raise ValueError(
            f"overlap_m: a joint of {overlap_m:g} m takes the whole stick of {stick_m:g} m; "
            "enter a longer stick or a shorter overlap"
        )
    return max(1, math.ceil((length_m - overlap_m) / (stick_m - overlap_m) - ROUNDING))
