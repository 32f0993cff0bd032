"""A farm: its tunnels, its catalogue, its money and limits. Nothing in it is derived."""

from collections import Counter
from collections.abc import Iterator
from decimal import Decimal
from typing import Annotated, Literal

from hoopwright.farm.air import Air
from hoopwright.farm.bar import Bar
from hoopwright.farm.catalogue import Catalogue
from hoopwright.farm.condition import FILM, PartState
from hoopwright.farm.drive import Drive, LineDrum
from hoopwright.farm.entered import Entered, choice, measure
from hoopwright.farm.entry_error import EntryError
from hoopwright.farm.extras import Rain, Shade
from hoopwright.farm.frame import Frame, bow_positions
from hoopwright.farm.heating import Climate, Heating
from hoopwright.farm.side import Side, SideKind
from hoopwright.farm.skin import End, Skin
from hoopwright.farm.weather import Weather

Sealer = Literal["running", "bar"]


class Tunnel(Entered, frozen=True):
    """One tunnel.

    Attributes:
        name: What people call it.
        frame: The frame as measured.
        skin: What goes on it.
        sides: First side (drawn above the plan) and second side (below).
        ends: Front end wall (at the first bow) and back end wall.
        air: Air between two layers.
        heating: How it is heated, or None when it is not.
        condition: What of the old skin stays; where nothing is said, all is bought new.
        rain: The rain its gutters carry, or None.
        shade: Shade cloth over it, or None.
    """

    name: Annotated[str, choice("name")]
    frame: Frame
    skin: Skin
    sides: tuple[Side, Side]
    ends: tuple[End, End]
    air: Air
    heating: Heating | None = None
    condition: tuple[PartState, ...] = ()
    rain: Rain | None = None
    shade: Shade | None = None

    def __post_init__(self) -> None:
        """Refuse splits, seams and pockets that are not on the tunnel."""
        Entered.__post_init__(self)
        if not self.name.strip():
            raise ValueError("name: give the tunnel a name")
        bows = bow_positions(self.frame.bows)
        length_m = bows[-1]
        for label, line in (
            *((f"condition[{n}]", c) for n, c in enumerate(self.condition)),
            ("shade", self.shade),
        ):
            _check_stretch(label, line, len(bows))
        for seam_m in self.skin.cross_seams_m:
            if not 0 < seam_m < length_m:
                raise EntryError(
                    "cross_seams_m",
                    "{seam} is not between the ends ({front} and {back})",
                    seam=(seam_m, "m"),
                    front=(0.0, "m"),
                    back=(length_m, "m"),
                )
        for side, boards in zip(self.sides, self.frame.boards, strict=True):
            _check_side(side, bows)
            if side.shut_height_m >= boards.hip_height_m:
                raise ValueError(
                    "shut_height_m: the bar of a shut curtain must hang below the hip board"
                )


def _check_stretch(label: str, line: PartState | Shade | None, count: int) -> None:
    """Refuse a stretch from bow to bow that is not on the tunnel."""
    for name in ("from_bow", "to_bow"):
        bow = None if line is None else getattr(line, name)
        if bow is not None and bow > count:
            raise EntryError(
                f"{label}.{name}",
                "there is no bow {bow}; this tunnel has {count} bows, which make {bays} bays. End "
                "the stretch at another bow first, or set more bows",
                bow=bow,
                count=count,
                bays=count - 1,
            )


def _check_side(side: Side, bows: tuple[float, ...]) -> None:
    front, back = side.pocket_bays
    if front + back >= len(bows) - 1:
        raise ValueError(
            f"pocket_bays: {front} + {back} pocket bays leave no opening in {len(bows) - 1} bays"
        )
    low, high = bows[front], bows[len(bows) - 1 - back]
    for split in side.splits:
        if not low < split.at_m < high:
            raise EntryError(
                "splits",
                "{split} is not inside the opening from {low} to {high} of {side}",
                split=(split.at_m, "m"),
                low=(low, "m"),
                high=(high, "m"),
                side=side.name,
            )


class Money(Entered, frozen=True):
    """How money is reckoned.

    Attributes:
        currency: Three-letter code (ISO 4217).
        tax_share: Sales tax as a share.
        freight: Freight of the whole order.
        tax_on_freight: Whether freight is taxed.
    """

    currency: Annotated[str, choice("currency")] = "USD"
    tax_share: Annotated[float, measure("sales tax", "share", 0.0, 1.0)] = 0.0
    freight: Annotated[Decimal, choice("freight")] = Decimal(0)
    tax_on_freight: Annotated[bool, choice("tax on freight")] = False

    def __post_init__(self) -> None:
        """Refuse a currency that is not a code."""
        Entered.__post_init__(self)
        code = self.currency
        if not (len(code) == 3 and code.isascii() and code.isalpha() and code.isupper()):
            raise ValueError("currency: enter a three-letter code such as USD or EUR")


class Limits(Entered, frozen=True):
    """What the people of the farm can do and accept.

    Attributes:
        hand_force_n: Greatest comfortable force at the crank handle, N.
        trailing_m: How far the free end of a bar may hang behind the cranked end, m.
        lift_kg: What one person lifts, kg.
        rubbing_share: Added to the torque for rope, wet and stiff film and a leaning bow; there is
            no published figure for it.
        uneven_winding_m: How much the winding radius of one bar differs from place to place, m.
        handle_height_m: Height at which the handle is turned, m.
        handle_rate_per_min: Turns of the handle in a minute.
    """

    hand_force_n: Annotated[float, measure("hand force limit", "N", 5.0, 500.0)] = 60.0
    trailing_m: Annotated[float, measure("trailing limit", "m", 0.001, 2.0)] = 0.05
    lift_kg: Annotated[float, measure("one person lifts", "kg", 1.0, 100.0)] = 23.0
    rubbing_share: Annotated[float, measure("rubbing, rope and wet film", "share", 0.0, 1.0)] = 0.2
    uneven_winding_m: Annotated[float, measure("uneven winding", "m_thin", 0.0, 0.01)] = 0.0002
    handle_height_m: Annotated[float, measure("handle height", "m", 0.2, 2.5)] = 1.0
    handle_rate_per_min: Annotated[float, measure("handle turns", "1/min", 1.0, 120.0)] = 28.0


class Bench(Entered, frozen=True):
    """How seals are made on the bench.

    Attributes:
        seal_rate_m_min: Seal made in a minute by a sealer that runs on, m/min.
        set_up_min: Laying out and folding one edge, minutes.
        wage_per_hour: What an hour of bench work costs.
        sealer: A sealer that runs on along the edge, or a bar that closes stroke by stroke.
        bar_m: Length of one stroke of the bar, m.
        bar_overlap_m: What a stroke laps over the one before, m.
        stroke_s: Time of one stroke with moving on, s.
        spacing_m: Between two seals of one edge, m.
        element_m: Seal that one heating element lasts for, m.
        coupon_n_m: Strength of a test strip's seal, N for each metre of seal, or None.
    """

    seal_rate_m_min: Annotated[float, measure("sealing rate", "m/min", 0.05, 50.0)] = 1.5
    set_up_min: Annotated[float, measure("set-up for one edge", "min", 0.0, 240.0)] = 5.0
    wage_per_hour: Annotated[Decimal, choice("wage per hour")] = Decimal("22.00")
    sealer: Annotated[Sealer, choice("sealer")] = "running"
    bar_m: Annotated[float, measure("bar of the sealer", "m", 0.1, 3.0)] = 0.6
    bar_overlap_m: Annotated[float, measure("overlap of strokes", "m", 0.0, 0.5)] = 0.02
    stroke_s: Annotated[float, measure("time of a stroke", "s", 1.0, 600.0)] = 15.0
    spacing_m: Annotated[float, measure("between two seals", "m_thin", 0.0, 0.5)] = 0.025
    element_m: Annotated[float, measure("element lasts", "m", 1.0, 100000.0)] = 150.0
    coupon_n_m: Annotated[float, measure("coupon reading", "N/m", 1.0, 100000.0)] | None = None

    def __post_init__(self) -> None:
        """Refuse an overlap that takes the whole stroke."""
        Entered.__post_init__(self)
        if self.bar_overlap_m >= self.bar_m:
            raise ValueError(
                "bar_overlap_m: the overlap of two strokes must be shorter than the bar"
            )


class Farm(Entered, frozen=True):
    """Everything people enter.

    Attributes:
        name: Name of the farm.
        units: Units shown; nothing stored depends on them.
        note: Remarks, for example that a sample is invented.
        tunnels: The tunnels.
        catalogue: What can be bought.
        money: Currency, tax, freight.
        limits: What people can do.
        bench: Sealing bench.
        weather: Wind and warmth that airing and rope are looked at with.
        climate: The winter, and what power costs.
    """

    name: Annotated[str, choice("farm")]
    units: Literal["imperial", "metric"]
    note: str
    tunnels: tuple[Tunnel, ...]
    catalogue: Catalogue
    money: Money = Money()
    limits: Limits = Limits()
    bench: Bench = Bench()
    weather: Weather = Weather()
    climate: Climate = Climate()

    def __post_init__(self) -> None:
        """Refuse a farm without tunnels, equal names, and choices the catalogue lacks."""
        Entered.__post_init__(self)
        if not self.tunnels:
            raise ValueError("tunnels: a farm needs at least one tunnel")
        names = [t.name for t in self.tunnels]
        twice = sorted(name for name, count in Counter(names).items() if count > 1)
        if twice:
            raise ValueError(f"tunnels: two tunnels are called {twice[0]!r}; rename one")
        known = {
            "film": {f.key for f in self.catalogue.films},
            "roll bar": {b.key for b in self.catalogue.bars},
            "drive": {d.key for d in self.catalogue.drives},
            "blower": {b.key for b in self.catalogue.blowers},
            "hose": {h.key for h in self.catalogue.hoses},
            "part": {p.key for p in self.catalogue.parts},
            "family of parts": {FILM, *(p.group for p in self.catalogue.parts)},
        }
        for tunnel in self.tunnels:
            for label, kind, key in _choices(tunnel):
                if key not in known[kind]:
                    raise ValueError(
                        f"tunnel {tunnel.name!r}, {label}: there is no {kind} {key!r} in the "
                        f"catalogue; it has {', '.join(sorted(known[kind])[:12])}"
                    )
            for n, side in enumerate(tunnel.sides):
                check_hardware(side, self.catalogue, f"tunnel {tunnel.name!r}, sides[{n}].panels")


def fits_drive(kind: SideKind, drive: Drive) -> bool:
    """Return whether a drive can work a kind of side: a drum its lines, a crank its bar."""
    return isinstance(drive, LineDrum) == (kind == "drop_down")


def fits_bar(kind: SideKind, bar: Bar) -> bool:
    """Return whether a bar can hold a kind of curtain: a woven one has a hem and nothing else."""
    return kind != "woven" or bar.grip == "hem"


def check_hardware(side: Side, catalogue: Catalogue, label: str) -> None:
    """Refuse bars and drives that cannot work the kind of side they are chosen for."""
    if side.kind == "fixed":
        return
    for panel in side.panels:
        if not fits_drive(side.kind, catalogue.drive(panel.drive)):
            needed = "a line drum" if side.kind == "drop_down" else "a crank on the bar"
            raise ValueError(
                f"{label}: the drive {panel.drive!r} cannot work this kind of side; choose {needed}"
            )
        if not fits_bar(side.kind, catalogue.bar(panel.bar)):
            raise ValueError(
                f"{label}: the bar {panel.bar!r} has no hem to lie in; choose a bar for a hem"
            )


def _choices(tunnel: Tunnel) -> Iterator[tuple[str, str, str]]:
    """Yield every choice from the catalogue: its place, the kind of thing, its key."""
    yield from _film_choices(tunnel)
    yield from _side_choices(tunnel)
    air = tunnel.air
    for label, kind, key in (
        ("air.blower", "blower", air.blower),
        ("air.feed_hose", "hose", air.feed_hose),
        ("air.jumper_hose", "hose", air.jumper_hose),
        ("shade", "part", None if tunnel.shade is None else tunnel.shade.part),
    ):
        if key is not None:
            yield label, kind, key
    for n, state in enumerate(tunnel.condition):
        yield f"condition[{n}]", "family of parts", state.family


def _film_choices(tunnel: Tunnel) -> Iterator[tuple[str, str, str]]:
    skin = tunnel.skin
    for label, layers in (
        ("skin.roof", skin.roof),
        ("skin.sides", skin.sides),
        ("skin.pockets", skin.pockets),
        ("ends[0].film", tunnel.ends[0].film),
        ("ends[1].film", tunnel.ends[1].film),
    ):
        if layers is not None:
            yield label, "film", layers.outer
            yield label, "film", layers.inner
    for n, end in enumerate(tunnel.ends):
        if end.rigid is not None:
            yield f"ends[{n}].rigid", "part", end.rigid.part


def _side_choices(tunnel: Tunnel) -> Iterator[tuple[str, str, str]]:
    for n, side in enumerate(tunnel.sides):
        for panel in side.panels:
            yield f"sides[{n}].panels", "roll bar", panel.bar
            yield f"sides[{n}].panels", "drive", panel.drive
        if side.film is not None:
            yield f"sides[{n}].film", "film", side.film
        if side.screen is not None:
            yield f"sides[{n}].screen", "part", side.screen.part
