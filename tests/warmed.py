"""A tunnel kept warm, for the tests of its heat. Prices of fuel and power are invented."""

from decimal import Decimal

from hoopwright.cover import Cover
from hoopwright.farm import (
    Bench,
    Climate,
    EvenBows,
    Film,
    Frame,
    Heating,
    RoundBow,
    SideBoards,
    Tunnel,
)
from hoopwright.farm.skin import Covering
from hoopwright.heat import Warmth, warm_tunnel
from hoopwright.inflation import Inflation, fill_cells
from hoopwright.order import Order, place_order
from hoopwright.quantity.factors import FOOT_M
from hoopwright.quantity.working import phrase
from hoopwright.survey import survey_frame
from hoopwright.takeoff.need import Need
from hoopwright.takeoff.site import need
from laying import laid
from samples import small_catalogue, tunnel

BLOWER_YEAR = Decimal("84.10")
BENCH_LABOUR = Decimal("12.00")


def air_needs() -> tuple[Need, ...]:
    """Return one blower and a hose, both marked as air, and a crank that is not."""
    return (
        need("blower", 1, phrase("blower"), "air/blower", "One"),
        need("jumper_hose", 2.0, phrase("jumper 1"), "jumper/0", "One hose"),
        need("crank", 1, phrase("crank"), "side/0/panel/0", "One"),
    )


def filled(chosen: Tunnel, cover: Cover) -> Inflation:
    """Return the tunnel's cells."""
    survey = survey_frame(chosen.frame)
    return fill_cells(survey, chosen.skin, chosen.sides, chosen.ends, chosen.air, cover, Bench())


def ordered(cover: Cover) -> Order:
    """Return what is bought: all sheets, a blower, a hose and a crank."""
    return place_order((("t", air_needs()),), (("t", cover.pieces),), small_catalogue())


def warmed(
    chosen: Tunnel,
    heating: Heating | None = None,
    climate: Climate | None = None,
    covering: Covering = "roof_and_sides",
    films: tuple[Film, ...] | None = None,
    blower_cost_year: Decimal = BLOWER_YEAR,
) -> Warmth:
    """Return the tunnel kept warm; without heating it is not heated."""
    cover = laid(chosen, covering)
    return warm_tunnel(
        survey_frame(chosen.frame),
        chosen.ends,
        cover,
        ordered(cover),
        filled(chosen, cover),
        BENCH_LABOUR,
        blower_cost_year,
        heating,
        climate or Climate(),
        films or small_catalogue().films,
        "USD",
    )


def half_round(length_ft: float = 96.0) -> Tunnel:
    """Return a half round house 30 ft wide whose film lies on the tube's centre line."""
    boards = SideBoards(hip_height_m=1.5, baseboard_height_m=0.3)
    length_m = length_ft * FOOT_M
    return tunnel().but(
        frame=Frame(
            profile=RoundBow(span_m=30 * FOOT_M, leg_height_m=0.0, peak_height_m=15 * FOOT_M),
            tube_diameter_m=0.0,
            length_m=length_m,
            bows=EvenBows(count=25, spacing_m=length_m / 24),
            boards=(boards, boards),
        )
    )
