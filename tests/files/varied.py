"""A farm with every kind of bow, bar and split, and farms drawn at random. All invented."""

from decimal import Decimal

from hypothesis import strategies as st

from hoopwright.farm import Bench, Door, Farm, Limits, ListedBows, Money, SquareTube
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
    plain = small_farm(double_tunnel(), listed, rafter_tunnel().but(name="Lower tunnel"))
    catalogue = plain.catalogue
    square = catalogue.bars[0].but(key="square", section=SquareTube(outside_m=0.03, wall_m=0.002))
    return plain.but(
        name="Invented farm",
        catalogue=catalogue.but(bars=(*catalogue.bars, square)),
        money=Money(currency="EUR", tax_share=0.07, freight=Decimal("85.50"), tax_on_freight=True),
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
