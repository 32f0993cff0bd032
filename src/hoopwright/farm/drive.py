"""What turns a bar or winds the lines of a curtain: cranks, geared cranks, drums."""

from typing import Annotated

from hoopwright.farm.bar import MaxLength
from hoopwright.farm.entered import Entered, choice, measure

Arm = Annotated[float, measure("crank arm", "m", 0.02, 1.0)]
Ratio = Annotated[float, measure("crank ratio", "ratio", 0.1, 100.0)]
Efficiency = Annotated[float, measure("crank efficiency", "share", 0.01, 1.0)]
Inertia = Annotated[float, measure("inertia of the crank", "kg m2", 0.0, 10.0)]


class HandCrank(Entered, frozen=True, tag="hand_crank", tag_field="kind"):
    """A hand crank that turns the bar through an extension pipe and a universal joint.

    Attributes:
        key: Name in the file.
        name: Generic name.
        arm_m: From axle to hand grip, m.
        ratio: Turns of the handle for one turn of the bar.
        efficiency: Share of the hand's work that reaches the bar.
        mass_kg: What the bar carries of crank and joint, kg.
        part: Catalogue key of the crank.
        extension_part: Catalogue key of the extension pipe.
        joint_part: Catalogue key of the universal joint.
        extension_m: From the joint at the bar to the handle, m.
        joint_limit_rad: Angle beyond which the joint turns too unevenly, rad.
        inertia_kg_m2: Of crank, handle and pipe about their axle.
        holds: Whether it holds a raised bar by itself.
        max_length_m: Longest bar its maker allows, m, or None.
    """

    key: str
    name: str
    arm_m: Arm
    ratio: Ratio
    efficiency: Efficiency
    mass_kg: Annotated[float, measure("crank mass on the bar", "kg", 0.0, 50.0)]
    part: str
    extension_part: str
    joint_part: str
    extension_m: Annotated[float, measure("extension pipe", "m", 0.1, 5.0)] = 1.5
    joint_limit_rad: Annotated[float, measure("joint angle limit", "rad", 0.05, 1.5)] = 0.7853981634
    inertia_kg_m2: Inertia = 0.013
    holds: Annotated[bool, choice("holds by itself")] = False
    max_length_m: MaxLength | None = None


class GearedCrank(Entered, frozen=True, tag="geared_crank", tag_field="kind"):
    """A crank with a gearbox that climbs with the bar along a guide pipe.

    Attributes:
        key: Name in the file.
        name: Generic name.
        arm_m: From axle to hand grip, m.
        ratio: Turns of the handle for one turn of the bar.
        efficiency: Share of the hand's work that reaches the bar.
        mass_kg: Gearbox and crank, which the bar carries, kg.
        part: Catalogue key of the geared crank.
        guide_part: Catalogue key of the guide pipe.
        guide_buried_m: How deep the guide pipe stands in the ground, m.
        inertia_kg_m2: Of crank and handle about their axle.
        holds: Whether it holds a raised bar by itself.
        max_length_m: Longest bar its maker allows, m, or None.
    """

    key: str
    name: str
    arm_m: Arm
    ratio: Ratio
    efficiency: Efficiency
    mass_kg: Annotated[float, measure("crank mass on the bar", "kg", 0.0, 50.0)]
    part: str
    guide_part: str
    guide_buried_m: Annotated[float, measure("guide pipe in the ground", "m", 0.0, 3.0)] = 0.6
    inertia_kg_m2: Inertia = 0.004
    holds: Annotated[bool, choice("holds by itself")] = True
    max_length_m: MaxLength | None = None


class LineDrum(Entered, frozen=True, tag="line_drum", tag_field="kind"):
    """A drum with a crank that winds the cable of a drop-down side, with or without gears.

    Attributes:
        key: Name in the file.
        name: Generic name.
        arm_m: From axle to hand grip, m.
        ratio: Turns of the handle for one turn of the drum.
        efficiency: Share of the hand's work that reaches the cable.
        drum_m: Diameter on which the cable winds, m.
        part: Catalogue key of the drum.
        inertia_kg_m2: Of crank and handle about their axle.
        holds: Whether it holds the raised rod by itself.
        max_length_m: Longest curtain its maker allows, m, or None.
    """

    key: str
    name: str
    arm_m: Arm
    ratio: Ratio
    efficiency: Efficiency
    drum_m: Annotated[float, measure("drum diameter", "m_thin", 0.01, 0.5)]
    part: str
    inertia_kg_m2: Inertia = 0.004
    holds: Annotated[bool, choice("holds by itself")] = True
    max_length_m: MaxLength | None = None


Drive = HandCrank | GearedCrank | LineDrum


def drive_parts(drive: Drive) -> tuple[str, ...]:
    """Return the catalogue keys of the parts that a drive is made of."""
    if isinstance(drive, HandCrank):
        return (drive.part, drive.extension_part, drive.joint_part)
    if isinstance(drive, GearedCrank):
        return (drive.part, drive.guide_part)
    return (drive.part,)
