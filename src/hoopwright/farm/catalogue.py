"""What can be bought: films, roll bars, drives and parts, with packs and prices.

Names are generic. A price is marked invented until the user enters their own.
"""

from decimal import Decimal
from typing import Annotated, Literal, TypeVar

from hoopwright.farm.bar import Bar
from hoopwright.farm.blower import Blower, Hose
from hoopwright.farm.drive import Drive, drive_parts
from hoopwright.farm.entered import Entered, choice, measure
from hoopwright.farm.entry_error import EntryError

Origin = Literal["invented", "entered"]
CountedIn = Literal["m", "count"]


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
        thermal: Whether it holds back long-wave heat.
        modulus_pa: Stiffness, Pa.
        yield_pa: Stress at which it stretches for good, Pa.
        expansion_per_k: Length gained for each kelvin, 1/K.
        width_minus_share: How much narrower than its stock width a roll may be, as a share.
    """

    key: str
    name: str
    thickness_m: Annotated[float, measure("film thickness", "m_film", 1e-5, 2e-3)]
    density_kg_m3: Annotated[float, measure("film density", "kg/m3", 500.0, 2000.0)]
    life_years: Annotated[float, measure("film life", "year", 0.5, 30.0)]
    rolls: tuple[FilmRoll, ...]
    woven: Annotated[bool, choice("woven")] = False
    thermal: Annotated[bool, choice("thermal film")] = False
    modulus_pa: Annotated[float, measure("stiffness of the film", "Pa_film", 1e7, 5e9)] = 2e8
    yield_pa: Annotated[float, measure("yield of the film", "Pa_film", 1e6, 5e8)] = 9e6
    expansion_per_k: Annotated[float, measure("expansion of the film", "1/K", 1e-6, 1e-3)] = 1.8e-4
    width_minus_share: Annotated[float, measure("roll may be narrower by", "share", 0.0, 0.2)] = 0.0

    def __post_init__(self) -> None:
        """Refuse a film that cannot be bought."""
        Entered.__post_init__(self)
        if not self.rolls:
            raise ValueError("rolls: enter at least one stock size for the film")


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


T = TypeVar("T", Film, Bar, Drive, Part, Blower, Hose)


class Catalogue(Entered, frozen=True):
    """Everything that can be chosen and bought.

    Attributes:
        note: Where the sizes and prices come from.
        films: Films.
        bars: Roll bars.
        drives: Drives.
        parts: Parts.
        blowers: Blowers; may be empty.
        hoses: Hoses for air; may be empty.
    """

    note: str
    films: tuple[Film, ...]
    bars: tuple[Bar, ...]
    drives: tuple[Drive, ...]
    parts: tuple[Part, ...]
    blowers: tuple[Blower, ...] = ()
    hoses: tuple[Hose, ...] = ()

    def __post_init__(self) -> None:
        """Refuse two things of one key, parts that are not listed, sticks too short to join."""
        Entered.__post_init__(self)
        for label, things in (
            ("films", self.films),
            ("bars", self.bars),
            ("drives", self.drives),
            ("parts", self.parts),
            ("blowers", self.blowers),
            ("hoses", self.hoses),
        ):
            keys = [t.key for t in things]
            twice = sorted({k for k in keys if keys.count(k) > 1})
            if twice:
                raise ValueError(f"{label}: the key {twice[0]!r} is used twice; keys are unique")
            if not keys and label not in ("blowers", "hoses"):
                raise ValueError(f"{label}: the catalogue needs at least one")
        known = {p.key for p in self.parts}
        for bar in self.bars:
            _check_part(bar.part, known, f"bars: {bar.key}")
            _check_stick(bar, self.part(bar.part))
        for drive in self.drives:
            for key in drive_parts(drive):
                _check_part(key, known, f"drives: {drive.key}")

        for label, things in (("blowers", self.blowers), ("hoses", self.hoses)):
            for thing in things:
                _check_part(thing.part, known, f"{label}: {thing.key}")

    def film(self, key: str) -> Film:
        """Return the film of that key; KeyError when there is none."""
        return _find(self.films, key)

    def bar(self, key: str) -> Bar:
        """Return the roll bar of that key; KeyError when there is none."""
        return _find(self.bars, key)

    def drive(self, key: str) -> Drive:
        """Return the drive of that key; KeyError when there is none."""
        return _find(self.drives, key)

    def blower(self, key: str) -> Blower:
        """Return the blower of that key; KeyError when there is none."""
        return _find(self.blowers, key)

    def hose(self, key: str) -> Hose:
        """Return the hose of that key; KeyError when there is none."""
        return _find(self.hoses, key)

    def part(self, key: str) -> Part:
        """Return the part of that key; KeyError when there is none."""
        return _find(self.parts, key)


def _find(things: tuple[T, ...], key: str) -> T:
    for thing in things:
        if thing.key == key:
            return thing
    raise KeyError(key)


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
        raise EntryError(
            f"bars: {bar.key}",
            "a joint takes {overlap} and its stick {stick} is only {long} long; enter a longer "
            "stick or a shorter overlap",
            overlap=(bar.overlap_m, "m"),
            stick=repr(stick.key),
            long=(stick.holds, "m"),
        )
