"""What can be bought: films, roll bars, drives and parts, with packs and prices.

Names are generic. A price is marked invented until the user enters their own.
"""

from decimal import Decimal
from typing import Annotated, Literal, TypeVar

from hoopwright.farm.entered import Entered, choice, measure

Origin = Literal["invented", "entered"]
CountedIn = Literal["m", "count"]
Material = Literal["steel", "aluminium"]
Grip = Literal["clamp_on_cap", "own_channel", "closes_on_film", "hem"]
Joint = Literal["swage", "splice"]
Closing = Literal["screw", "bolt"]

MaxLength = Annotated[float, measure("maker's greatest length", "m", 0.5, 500.0)]
Arm = Annotated[float, measure("crank arm", "m", 0.02, 1.0)]
Ratio = Annotated[float, measure("crank ratio", "ratio", 0.1, 100.0)]
Efficiency = Annotated[float, measure("crank efficiency", "share", 0.01, 1.0)]
Inertia = Annotated[float, measure("inertia of the crank", "kg m2", 0.0, 10.0)]


class FilmRoll(Entered, frozen=True):
    """One stock size of a film.

    Attributes:
        width_m: Unfolded width, m.
        length_m: Length, m.
        price: Price of the roll.
        origin: Whether the price is invented or entered.
    """

    width_m: Annotated[float, measure("stock width", "m", 0.1, 30.0)]
    length_m: Annotated[float, measure("stock length", "m", 0.5, 2000.0)]
    price: Decimal
    origin: Origin = "invented"


class Film(Entered, frozen=True):
    """A film and the rolls it comes in.

    Attributes:
        key: Name in the file.
        name: Generic name.
        thickness_m: Thickness, m.
        density_kg_m3: Density, kg/m3.
        life_years: Life the seller states, years.
        rolls: Stock sizes.
        woven: Whether it is woven of coated tapes.
    """

    key: str
    name: str
    thickness_m: Annotated[float, measure("film thickness", "m_film", 1e-5, 2e-3)]
    density_kg_m3: Annotated[float, measure("film density", "kg/m3", 500.0, 2000.0)]
    life_years: Annotated[float, measure("film life", "year", 0.5, 30.0)]
    rolls: tuple[FilmRoll, ...]
    woven: Annotated[bool, choice("woven")] = False

    def __post_init__(self) -> None:
        """Refuse a film that cannot be bought."""
        Entered.__post_init__(self)
        if not self.rolls:
            raise ValueError("rolls: enter at least one stock size for the film")


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

T = TypeVar("T", "Film", "Bar", Drive, "Part")


class Part(Entered, frozen=True):
    """Something bought by the stick, the piece or the pack.

    Attributes:
        key: Name in the file; the takeoff asks for parts by key.
        group: Heading in the takeoff.
        name: Generic name.
        counted_in: Metres of run, or pieces.
        holds: What one sold unit holds: metres of a stick or coil, pieces of a pack.
        sold_as: What one sold unit is called.
        price: Price of one sold unit.
        spacing_m: Where it is counted by spacing: from one to the next, m; else 0.
        spare_share: Spares as a share of the need.
        origin: Whether the price is invented or entered.
    """

    key: str
    group: str
    name: str
    counted_in: CountedIn
    holds: Annotated[float, measure("pack holds", "ratio", 0.01, 100000.0)]
    sold_as: str
    price: Decimal
    spacing_m: Annotated[float, measure("spacing", "m", 0.0, 50.0)] = 0.0
    spare_share: Annotated[float, measure("spares", "share", 0.0, 1.0)] = 0.0
    origin: Origin = "invented"


class Catalogue(Entered, frozen=True):
    """Everything that can be chosen and bought.

    Attributes:
        note: Where the sizes and prices come from.
        films: Films.
        bars: Roll bars.
        drives: Drives.
        parts: Parts.
    """

    note: str
    films: tuple[Film, ...]
    bars: tuple[Bar, ...]
    drives: tuple[Drive, ...]
    parts: tuple[Part, ...]

    def __post_init__(self) -> None:
        """Refuse two things of one key, parts that are not listed, sticks too short to join."""
        Entered.__post_init__(self)
        for label, things in (
            ("films", self.films),
            ("bars", self.bars),
            ("drives", self.drives),
            ("parts", self.parts),
        ):
            keys = [t.key for t in things]
            twice = sorted({k for k in keys if keys.count(k) > 1})
            if twice:
                raise ValueError(f"{label}: the key {twice[0]!r} is used twice; keys are unique")
            if not keys:
                raise ValueError(f"{label}: the catalogue needs at least one")
        known = {p.key for p in self.parts}
        for bar in self.bars:
            _check_part(bar.part, known, f"bars: {bar.key}")
            _check_stick(bar, self.part(bar.part))
        for drive in self.drives:
            for key in drive_parts(drive):
                _check_part(key, known, f"drives: {drive.key}")

    def film(self, key: str) -> Film:
        """Return the film of that key; KeyError when there is none."""
        return _find(self.films, key)

    def bar(self, key: str) -> Bar:
        """Return the roll bar of that key; KeyError when there is none."""
        return _find(self.bars, key)

    def drive(self, key: str) -> Drive:
        """Return the drive of that key; KeyError when there is none."""
        return _find(self.drives, key)

    def part(self, key: str) -> Part:
        """Return the part of that key; KeyError when there is none."""
        return _find(self.parts, key)


def drive_parts(drive: Drive) -> tuple[str, ...]:
    """Return the catalogue keys of the parts that a drive is made of."""
    if isinstance(drive, HandCrank):
        return (drive.part, drive.extension_part, drive.joint_part)
    if isinstance(drive, GearedCrank):
        return (drive.part, drive.guide_part)
    return (drive.part,)


def _find(things: tuple[T, ...], key: str) -> T:
    for thing in things:
        if thing.key == key:
            return thing
    raise KeyError(key)


def _check_wall(outside_m: float, wall_m: float) -> None:
    if wall_m >= outside_m / 2:
        raise ValueError("wall_m: the wall must be less than half the outside; measure it again")


def _check_part(key: str, known: set[str], owner: str) -> None:
    if key not in known:
        raise ValueError(
            f"{owner}: there is no part {key!r} in the catalogue; add it or correct it"
        )


def _check_stick(bar: Bar, stick: Part) -> None:
    if stick.counted_in != "m":
        raise ValueError(
            f"parts: {stick.key}: counted_in must be 'm', as the stick of the bar {bar.key!r} is "
            "cut to length"
        )
    if stick.holds <= bar.overlap_m:
        raise ValueError(
            f"bars: {bar.key}: a joint takes {bar.overlap_m:g} m and its stick {stick.key!r} is "
            f"only {stick.holds:g} m long; enter a longer stick or a shorter overlap"
        )
