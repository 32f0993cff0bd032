"""The roll bar: what its tube weighs, how it resists twisting, how many sticks it takes.

A square tube is taken with sharp corners. What grips the film (cap, spring wire, fasteners, second
half) adds mass and nothing else. A bar whose channel lies in a closed tube twists as that tube; a
tube slit along its length is only a bent strip and twists some hundred times more.
"""

import math
from dataclasses import dataclass

from hoopwright.farm.bar import Bar, Material, RoundTube, Section
from hoopwright.quantity.working import Explained, Term, Working

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
TEXTBOOK = "strength of materials (textbook)"
ROUNDING = 1e-9

TORSION_RULE = {
    ("round", False): "Polar second moment of a ring: pi / 32 times outside to the fourth power "
    "less inside to the fourth power.",
    ("square", False): "Closed thin wall: 4 times the area inside the middle line squared, times "
    "the wall over the middle line.",
    ("round", True): "Slit along its length: middle line times wall cubed over 3.",
    ("square", True): "Slit along its length: middle line times wall cubed over 3.",
}
SECOND_MOMENT_RULE = {
    "round": "Pi / 64 times outside to the fourth power less inside to the fourth power.",
    "square": "Outside to the fourth power less inside to the fourth power, over 12.",
}


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


def slit_torsion_constant(section: Section) -> float:
    """Return the torsion constant of the tube when it is slit along its length, m4.

    Source:
        Saint-Venant's thin strip: middle line times wall cubed over 3 (textbook).
    """
    middle_m = section.outside_m - section.wall_m
    line_m = (math.pi if isinstance(section, RoundTube) else 4) * middle_m
    return line_m * section.wall_m**3 / 3


def bar_torsion_constant(bar: Bar) -> float:
    """Return the torsion constant of the bar, closed or slit, m4.

    Source:
        `torsion_constant` and `slit_torsion_constant`.
    """
    return slit_torsion_constant(bar.section) if bar.slit else torsion_constant(bar.section)


def second_moment(section: Section) -> float:
    """Return the second moment of area of the tube about an axis across it, m4.

    Source:
        Ring and hollow square: outer figure less inner figure (textbook).
    """
    outside_m = section.outside_m
    inside_m = outside_m - 2 * section.wall_m
    fourth_m4 = outside_m**4 - inside_m**4
    return fourth_m4 * math.pi / 64 if isinstance(section, RoundTube) else fourth_m4 / 12


def tube_mass(section: Section, material: Material) -> float:
    """Return the mass of the tube for each metre, kg/m.

    Source:
        Area times density; steel 7850 kg/m3 (EN 1993-1-1, as quoted in steel tables).
    """
    return metal_area(section) * DENSITY_KG_M3[material]


def bar_mass(bar: Bar) -> float:
    """Return the mass of the bar with what grips the film for each metre, kg/m.

    Source:
        Tube as in `tube_mass`; grip: the user's entry.
    """
    return tube_mass(bar.section, bar.material) + bar.grip_mass_kg_m


def bar_inertia(bar: Bar) -> float:
    """Return the inertia of the bar about its axis for each metre, kg m2/m.

    Source:
        Derived here: a tube's polar second moment is twice that about an axis across it; what
        grips the film is taken to lie on the outside of the tube.
    """
    tube_kg_m2_m = 2 * second_moment(bar.section) * DENSITY_KG_M3[bar.material]
    return tube_kg_m2_m + bar.grip_mass_kg_m * winding_radius(bar.section) ** 2


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


@dataclass(frozen=True, slots=True, kw_only=True)
class BarFigures(Explained):
    """What the section of a roll bar gives.

    Attributes:
        area_m2: Area of metal in a cut across the bar, m2.
        mass_kg_m: Mass of the bar with what grips the film, kg/m.
        torsion_m4: Torsion constant, closed or slit, m4.
        second_moment_m4: Second moment of area about an axis across the bar, m4.
        radius_m: Mean radius on which the first film lies, m.
    """

    area_m2: float
    mass_kg_m: float
    torsion_m4: float
    second_moment_m4: float
    radius_m: float


def section_figures(bar: Bar) -> BarFigures:
    """Return what the section of a bar gives, with a working for each figure."""
    section = bar.section
    return BarFigures(
        area_m2=metal_area(section),
        mass_kg_m=bar_mass(bar),
        torsion_m4=bar_torsion_constant(bar),
        second_moment_m4=second_moment(section),
        radius_m=winding_radius(section),
        workings=_explain_section(bar),
    )


def _explain_section(bar: Bar) -> tuple[Working, ...]:
    shape = "round" if isinstance(bar.section, RoundTube) else "square"
    outside = Term("outside of the bar", bar.section.outside_m, "m_thin")
    wall = Term("wall", bar.section.wall_m, "m_thin")
    density = Term("density", DENSITY_KG_M3[bar.material], "kg/m3")
    grip = Term("cap, wire or fasteners", bar.grip_mass_kg_m, "kg/m")
    return (
        Working("area_m2", "The outer figure less the inner one.", (outside, wall)),
        Working(
            "mass_kg_m",
            "Area of the tube times density, and what grips the film.",
            (outside, wall, density, grip),
            DENSITY_SOURCE,
        ),
        Working("torsion_m4", TORSION_RULE[shape, bar.slit], (outside, wall), TEXTBOOK),
        Working(
            "second_moment_m4",
            SECOND_MOMENT_RULE[shape],
            (outside, wall),
            TEXTBOOK,
        ),
        Working("radius_m", "The outline of the bar over 2 pi.", (outside,)),
    )
