"""Small farms for tests. Names, sizes and prices are invented."""

from decimal import Decimal

from hoopwright.farm import (
    Air,
    Allowances,
    Bar,
    Blower,
    Catalogue,
    End,
    EvenBows,
    FanPoint,
    Farm,
    Film,
    FilmRoll,
    Frame,
    GothicBow,
    HandCrank,
    Hose,
    Layers,
    Panel,
    Part,
    RoundBow,
    RoundTube,
    Side,
    SideBoards,
    Skin,
    Split,
    StraightRafters,
    Tunnel,
)
from hoopwright.farm.profile import Profile

CLEAR = "clear"
INSIDE = "inside"


def small_catalogue() -> Catalogue:
    """Return two films, a bar, a crank and the parts they name."""
    rolls = tuple(
        FilmRoll(width_m=width_m, length_m=length_m, price=Decimal(price))
        for width_m, length_m, price in ((8.0, 30.0, 160), (10.0, 30.0, 200), (12.0, 50.0, 390))
    )
    film = Film(
        key=CLEAR,
        name="clear film",
        thickness_m=0.0002,
        density_kg_m3=920.0,
        life_years=4.0,
        rolls=rolls,
    )
    return Catalogue(
        note="Invented for tests.",
        films=(film, film.but(key=INSIDE, name="inner film", thickness_m=0.00015)),
        bars=(
            Bar(
                key="bar",
                name="round roll bar",
                material="steel",
                section=RoundTube(outside_m=0.035, wall_m=0.0015),
                grip="clamp_on_cap",
                grip_mass_kg_m=0.3,
                overlap_m=0.1,
                part="bar_stick",
            ),
        ),
        drives=(
            HandCrank(
                key="crank",
                name="hand crank",
                arm_m=0.25,
                ratio=1.0,
                efficiency=0.9,
                mass_kg=2.0,
                part="crank",
                extension_part="crank_pipe",
                joint_part="joint",
            ),
        ),
        parts=tuple(
            Part(
                key=key,
                group="Curtains",
                name=key.replace("_", " "),
                counted_in=counted_in,
                holds=holds,
                sold_as=sold_as,
                price=Decimal(10),
            )
            for key, counted_in, holds, sold_as in (
                ("bar_stick", "m", 6.0, "stick"),
                ("crank", "count", 1.0, "piece"),
                ("crank_pipe", "count", 1.0, "piece"),
                ("joint", "count", 1.0, "piece"),
                ("blower", "count", 1.0, "piece"),
                ("jumper_hose", "m", 3.0, "length"),
            )
        ),
        blowers=(
            Blower(
                key="blower",
                name="inflation blower",
                curve=tuple(
                    FanPoint(flow_m3_s=flow_m3_s, pressure_pa=pressure_pa)
                    for flow_m3_s, pressure_pa in ((0.0, 150.0), (0.02, 120.0), (0.045, 0.0))
                ),
                power_w=60.0,
                part="blower",
            ),
        ),
        hoses=(
            Hose(key="hose", name="hose", bore_m=0.0508, roughness_m=0.0005, part="jumper_hose"),
        ),
    )


def layers(count: int = 1) -> Layers:
    """Return one or two layers of the small catalogue's films."""
    return Layers(count=2 if count == 2 else 1, outer=CLEAR, inner=INSIDE)


def side(name: str = "West side", splits: tuple[Split, ...] = (), **changes: object) -> Side:
    """Return a side, one that rolls up unless changed, with a pocket at each end.

    It has one curtain more than splits.
    """
    panel = Panel(crank_end="front", bar="bar", drive="crank")
    plain = Side(
        name=name,
        kind="roll_up",
        shut_height_m=0.25,
        pocket_bays=(1, 1),
        splits=splits,
        panels=(panel,) * (len(splits) + 1),
    )
    return plain.but(**changes)


def round_profile() -> RoundBow:
    """Return a round bow on legs."""
    return RoundBow(span_m=8.0, leg_height_m=1.5, peak_height_m=3.7)


def gothic_profile() -> GothicBow:
    """Return a gothic bow that leaves its legs with a kink."""
    return GothicBow(span_m=8.0, leg_height_m=1.5, peak_height_m=4.4, arc_radius_m=5.5)


def rafter_profile() -> StraightRafters:
    """Return straight rafters with bent corners and a bent ridge."""
    return StraightRafters(
        span_m=8.0,
        leg_height_m=2.0,
        peak_height_m=3.8,
        corner_radius_m=0.5,
        ridge_radius_m=0.4,
    )


def tunnel(
    profile: Profile | None = None, sides: tuple[Side, Side] | None = None, roof_layers: int = 1
) -> Tunnel:
    """Return a tunnel of 16 bays of 1.5 m."""
    boards = SideBoards(hip_height_m=1.5, baseboard_height_m=0.3)
    return Tunnel(
        name="Meadow tunnel",
        frame=Frame(
            profile=profile or round_profile(),
            tube_diameter_m=0.048,
            length_m=24.0,
            bows=EvenBows(count=17, spacing_m=1.5),
            boards=(boards, boards),
        ),
        skin=Skin(
            covering="roof_and_sides",
            roof=layers(roof_layers),
            sides=layers(),
            pockets=layers(),
            allowances=Allowances(),
        ),
        sides=sides or (side("West side"), side("East side")),
        ends=(End(name="Front end", film=layers()), End(name="Back end", film=layers())),
        air=Air(blower="blower" if roof_layers == 2 else None),
    )


def gothic_tunnel() -> Tunnel:
    """Return the tunnel with gothic bows."""
    return tunnel(gothic_profile())


def rafter_tunnel() -> Tunnel:
    """Return the tunnel with straight rafters."""
    return tunnel(rafter_profile())


def woven_side(name: str = "West side", splits: tuple[Split, ...] = ()) -> Side:
    """Return a side with woven curtains; their film is the small catalogue's thin one."""
    return side(name, splits, kind="woven", film=INSIDE)


def drop_side(name: str = "West side", splits: tuple[Split, ...] = ()) -> Side:
    """Return a side with drop-down curtains of the film of the skin's sides."""
    return side(name, splits, kind="drop_down")


def double_tunnel() -> Tunnel:
    """Return the tunnel with two inflated layers everywhere and a split on each side."""
    sides = (
        side("West side", (Split(at_m=12.0),)),
        side("East side", (Split(at_m=9.0, join="strip"),)),
    )
    plain = tunnel(sides=sides, roof_layers=2)
    return plain.but(
        skin=plain.skin.but(sides=layers(2)),
        air=plain.air.but(inflated_sides=(True, True)),
    )


def with_double_ends(plain: Tunnel) -> Tunnel:
    """Return a tunnel with both end walls of two inflated layers."""
    front, back = plain.ends
    return plain.but(
        ends=(front.but(film=layers(2)), back.but(film=layers(2))),
        air=plain.air.but(inflated_ends=(True, True)),
    )


def small_farm(*tunnels: Tunnel) -> Farm:
    """Return a farm with the given tunnels, or with one plain tunnel."""
    return Farm(
        name="Small farm",
        units="metric",
        note="Invented for tests.",
        tunnels=tunnels or (tunnel(),),
        catalogue=small_catalogue(),
    )
