"""Roll bars: their tube, what holds the film on them, how sticks are joined."""

from typing import Annotated, Literal

from hoopwright.farm.entered import Entered, choice, measure

Material = Literal["steel", "aluminium"]
Grip = Literal["clamp_on_cap", "own_channel", "closes_on_film", "hem"]
Joint = Literal["swage", "splice"]
Closing = Literal["screw", "bolt"]

MaxLength = Annotated[float, measure("maker's greatest length", "m", 0.5, 500.0)]


class RoundTube(Entered, frozen=True, tag="round", tag_field="section"):
    """A round tube.

    Attributes:
        outside_m: Outside diameter, m.
        wall_m: Wall as measured, m.
    """

    outside_m: Annotated[float, measure("outside diameter", "m_thin", 0.005, 0.2)]
    wall_m: Annotated[float, measure("wall", "m_thin", 0.0003, 0.02)]

    def __post_init__(self) -> None:
        """Refuse a wall that fills the tube."""
        Entered.__post_init__(self)
        _check_wall(self.outside_m, self.wall_m)


class SquareTube(Entered, frozen=True, tag="square", tag_field="section"):
    """A square tube with sharp corners.

    Attributes:
        outside_m: Outside width, m.
        wall_m: Wall as measured, m.
    """

    outside_m: Annotated[float, measure("outside width", "m_thin", 0.005, 0.2)]
    wall_m: Annotated[float, measure("wall", "m_thin", 0.0003, 0.02)]

    def __post_init__(self) -> None:
        """Refuse a wall that fills the tube."""
        Entered.__post_init__(self)
        _check_wall(self.outside_m, self.wall_m)


Section = RoundTube | SquareTube


class Bar(Entered, frozen=True):
    """A roll bar, or the curtain rod of a drop-down side.

    Attributes:
        key: Name in the file.
        name: Generic name.
        material: Steel or aluminium.
        section: Its tube.
        grip: How it holds the film: a clamp-on cap over it, the bar's own channel with spring
            wire, two halves that close on it, or a hem in which the bar lies.
        grip_mass_kg_m: Cap, wire, fasteners or second half, kg per metre of bar.
        overlap_m: What each joint takes from a stick (swage or inserted splice), m.
        part: Catalogue key of the stick.
        slit: Whether its channel slits the tube along its length; such a bar twists some hundred
            times more than a closed one.
        joint: A swaged end that enters the next stick, or an inserted splice.
        joint_play_m: Clearance of the screws in a joint, at the outside of the tube, m.
        closed_by: What closes the halves of a bar that closes on the film.
        max_length_m: Greatest length its maker allows, m, or None.
    """

    key: str
    name: str
    material: Annotated[Material, choice("material")]
    section: Section
    grip: Annotated[Grip, choice("holds the film with")]
    grip_mass_kg_m: Annotated[float, measure("cap mass", "kg/m", 0.0, 10.0)]
    overlap_m: Annotated[float, measure("overlap at a joint", "m", 0.0, 1.0)]
    part: str
    slit: Annotated[bool, choice("slit along its length")] = False
    joint: Annotated[Joint, choice("joined by")] = "swage"
    joint_play_m: Annotated[float, measure("play in a joint", "m_thin", 0.0, 0.01)] = 0.0005
    closed_by: Annotated[Closing, choice("halves closed by")] = "screw"
    max_length_m: MaxLength | None = None


def _check_wall(outside_m: float, wall_m: float) -> None:
    if wall_m >= outside_m / 2:
        raise ValueError("wall_m: the wall must be less than half the outside; measure it again")
