"""A farm with every kind of bow, bar and split, and farms drawn at random. All invented."""

from decimal import Decimal

from hypothesis import strategies as st

from hoopwright.farm import (
    AcrossUp,
    Bench,
    BowReading,
    Catalogue,
    Cut,
    Door,
    Farm,
    GearedCrank,
    Limits,
    LineDrum,
    ListedBows,
    MeasuredBow,
    Money,
    PartState,
    Rain,
    RigidSheet,
    Screen,
    Shade,
    SideReading,
    SquareTube,
    Tape,
    Tunnel,
    TwoTapes,
    Weather,
    change,
)
from samples import double_tunnel, gothic_tunnel, rafter_tunnel, small_farm, tunnel


def varied_farm() -> Farm:
    """Return a farm of three tunnels that uses every choice the file can hold."""
    listed = gothic_tunnel()
    spots = (*(1.5 * i for i in range(16)), 24.1)
    listed = listed.but(
        name="Orchard tunnel “Ö”",
        frame=listed.frame.but(bows=ListedBows(positions_m=spots), length_m=24.1),
        skin=listed.skin.but(cross_seams_m=(7.5, 15.0)),
        ends=(listed.ends[0].but(doors=(Door(width_m=2.4, height_m=2.1),)), listed.ends[1]),
    )
    catalogue = varied_catalogue()
    lower = moving_sides(rafter_tunnel().but(name="Lower tunnel"), catalogue)
    standing = standing_tunnel().but(name="Standing tunnel")
    plain = small_farm(double_tunnel(), listed)
    return plain.but(
        name="Invented farm",
        tunnels=(*plain.tunnels, lower, standing),
        catalogue=catalogue,
        weather=Weather(wind_m_s=2.5, wind_from="square_on", exposure="B"),
        money=Money(currency="EUR", tax_share=0.07, freight=Decimal("85.50"), tax_on_freight=True),
    )


def varied_catalogue() -> Catalogue:
    """Return the small catalogue with every kind of bar, drive and film."""
    plain = small_farm().catalogue
    square = plain.bars[0].but(
        key="square",
        section=SquareTube(outside_m=0.03, wall_m=0.002),
        grip="own_channel",
        joint="splice",
        slit=True,
        max_length_m=30.0,
    )
    hem = plain.bars[0].but(key="hem", grip="hem", grip_mass_kg_m=0.0)
    halves = plain.bars[0].but(key="halves", grip="closes_on_film", closed_by="bolt")
    geared = GearedCrank(
        key="geared",
        name="geared crank",
        arm_m=0.2,
        ratio=8.0,
        efficiency=0.45,
        mass_kg=3.0,
        part="crank",
        guide_part="bar_stick",
        max_length_m=60.0,
    )
    drum = LineDrum(
        key="drum",
        name="line drum",
        arm_m=0.2,
        ratio=4.0,
        efficiency=0.6,
        drum_m=0.05,
        part="crank",
    )
    woven = plain.films[0].but(key="woven", name="woven film", woven=True)
    return plain.but(
        films=(*plain.films, woven),
        bars=(*plain.bars, square, hem, halves),
        drives=(*plain.drives, geared, drum),
        parts=(
            *plain.parts,
            *(
                plain.parts[0].but(key=key, name=key, group="Shade and screen", counted_in=counted)
                for key, counted in (("screen", "m"), ("cloth", "m"), ("rigid", "count"))
            ),
        ),
    )


def standing_tunnel() -> Tunnel:
    """Return a tunnel that was measured as it stands, with all that can be entered of that."""
    plain = tunnel()
    points = (
        AcrossUp(across_m=0.1, up_m=1.4),
        TwoTapes(first_m=2.6, second_m=6.9),
        AcrossUp(across_m=4.1, up_m=3.5),
        AcrossUp(across_m=6.2, up_m=2.75),
        AcrossUp(across_m=7.9, up_m=1.3),
    )
    row = SideReading(hip_m=1.52, baseboard_m=0.31, ground_m=-0.04)
    tape = Tape(
        bows=(
            BowReading(bow=1, over_hips_m=9.6, over_baseboards_m=12.1, dip_m=0.0, sides=(row, row)),
            BowReading(bow=5, over_hips_m=9.62, dip_m=0.03, sides=(row, SideReading())),
        ),
        hip_lengths_m=(30.0, 30.05),
        base_lengths_m=(30.02, None),
        diagonals_m=(31.05, 31.2),
        leans_m=(0.05, -0.02),
    )
    cut = Cut(kind="fan", left_m=1.0, sill_m=2.0, width_m=0.6, height_m=0.5)
    rigid = plain.ends[1].but(film=None, rigid=RigidSheet(part="rigid"), cuts=(cut,))
    front = plain.ends[0].but(cuts=(cut.but(kind="vent"),), rails_m=(1.0, 2.0), seams_m=(2.0,))
    return plain.but(
        frame=plain.frame.but(profile=MeasuredBow(span_m=8.0, points=points), tape=tape),
        ends=(front, rigid),
        condition=(
            PartState(family="Film", where="roof", state="keep"),
            PartState(family="Curtains", from_bow=2, to_bow=5, state="repair", replace_share=0.4),
        ),
        rain=Rain(tank_m3=4.0),
        shade=Shade(part="cloth", to_bow=8),
    )


def moving_sides(tunnel: Tunnel, catalogue: Catalogue) -> Tunnel:
    """Return the tunnel with a woven side cranked in its middle and one that drops down."""
    tunnel = change.set_side_kind(tunnel, 0, "woven", catalogue)
    tunnel = change.set_side_kind(tunnel, 1, "drop_down", catalogue)
    woven, dropping = tunnel.sides
    panels = tuple(
        p.but(drive="geared", crank_end="middle", rope="straps", bottom="skirt", winding="into")
        for p in woven.panels
    )
    woven = woven.but(
        panels=panels, rope_step_m=None, stop_m=0.1, screen=Screen(part="screen", flow_share=0.4)
    )
    dropping = dropping.but(bunch_m=0.25, top="shared_channel", film="inside")
    boards = tunnel.frame.boards[0].but(stand_off_m=0.05, gutter_drop_m=0.12)
    return tunnel.but(
        sides=(woven, dropping),
        frame=tunnel.frame.but(boards=(boards, tunnel.frame.boards[1])),
    )


AMOUNTS = st.decimals(0, 99999, places=4, allow_nan=False, allow_infinity=False)
NAMES = st.text(max_size=40)


@st.composite
def farms(draw: st.DrawFn) -> Farm:
    """Draw farms whose texts, amounts and numbers go to the edges of what may be entered."""
    names = draw(
        st.lists(NAMES.filter(lambda n: bool(n.strip())), min_size=1, max_size=3, unique=True)
    )
    tunnels = [
        tunnel().but(
            name=name,
            sides=tuple(
                side.but(name=draw(NAMES), slack_m=draw(st.floats(0, 1))) for side in tunnel().sides
            ),
        )
        for name in names
    ]
    farm = small_farm(*tunnels)
    films = tuple(
        film.but(
            name=draw(NAMES),
            thickness_m=draw(st.floats(1e-5, 2e-3)),
            rolls=tuple(roll.but(price=draw(AMOUNTS)) for roll in film.rolls),
        )
        for film in farm.catalogue.films
    )
    return farm.but(
        name=draw(NAMES),
        note=draw(st.text(max_size=200)),
        units=draw(st.sampled_from(["imperial", "metric"])),
        catalogue=farm.catalogue.but(films=films),
        money=Money(freight=draw(AMOUNTS), tax_share=draw(st.floats(0, 1))),
        limits=Limits(hand_force_n=draw(st.floats(5, 500)), trailing_m=draw(st.floats(0.001, 2))),
        bench=Bench(wage_per_hour=draw(AMOUNTS)),
    )
