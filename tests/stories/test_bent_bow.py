"""The bent bow: five girths, one of them far off, and what measuring it again would change.

An invented tunnel of 26 by 84 ft with bows at 4 ft, hip 5 ft, rise 7 ft, worked by hand.
"""

from decimal import Decimal

import pytest

from fit.fitted import BENT, STOCKS_FT, bent_tunnel
from hoopwright.farm import Farm, FilmRoll, Tunnel
from hoopwright.order.order import Order
from hoopwright.plan import TunnelPlan, plan
from hoopwright.quantity.units import FOOT_M, INCH_M, show
from hoopwright.quantity.working import words
from samples import CLEAR, INSIDE, layers, small_farm


def farm_of(made: Tunnel) -> Farm:
    """Return a farm whose film is sold by the square foot, at 11.5 cents, in rolls of 100 ft."""
    plain = small_farm(made)
    rolls = tuple(
        FilmRoll(
            width_m=width_ft * FOOT_M,
            length_m=100 * FOOT_M,
            price=Decimal(width_ft) * 100 * Decimal("0.115"),
        )
        for width_ft in STOCKS_FT
    )
    films = tuple(film.but(rolls=rolls) for film in plain.catalogue.films)
    return plain.but(units="imperial", catalogue=plain.catalogue.but(films=films))


def story(girths_m: dict[int, float] = BENT) -> Tunnel:
    """Return the tunnel, measured to the middle of its tube; the roof alone is of clear film."""
    made = bent_tunnel(girths_m)
    other = layers().but(outer=INSIDE)
    return made.but(
        frame=made.frame.but(tube_diameter_m=0.0),
        skin=made.skin.but(sides=other, pockets=other),
        ends=(made.ends[0].but(film=other), made.ends[1].but(film=other)),
    )


def planned(made: Tunnel) -> tuple[TunnelPlan, Order]:
    whole = plan(farm_of(made))
    return whole.tunnels[0], whole.order


def stock_of_the_roof(order: Order) -> float:
    """Return the width of the roll that the roof sheet is cut from, ft."""
    (roll,) = (roll for roll in order.rolls if any("roof-sheet" in cut.piece for cut in roll.cuts))
    return roll.width_m / FOOT_M


def test_readings_are_spread_and_the_bent_bow_is_flagged() -> None:
    result, _order = planned(story())
    spread = result.survey.taped.hips
    assert spread is not None
    assert show(spread.middle_m, "m", "imperial") == "30' 9 1/2\""
    assert spread.computed_m / FOOT_M == pytest.approx(30.77, abs=5e-3)
    (finding,) = (f for f in result.findings if f.code == "tape.outlier")
    said = words(finding.what, "imperial")
    assert "Over bow 22" in said
    assert '4 1/2" more' in said
    assert not any(f.code in ("tape.one_girth", "tape.girth_disagrees") for f in result.findings)


def test_sheet_is_cut_to_the_bent_bow_and_its_width_says_so() -> None:
    result, order = planned(story())
    roof = next(p for p in result.chosen.cover.pieces if p.role == "roof sheet")
    # 31' 2" and twice 9 in: 32.67 ft, from 34 ft with 1.33 ft to spare.
    assert roof.width_m / FOOT_M == pytest.approx(32.67, abs=5e-3)
    assert roof.width_terms[0].name == "over bow 22, hip to hip, as read"
    assert stock_of_the_roof(order) == pytest.approx(34.0)
    assert stock_of_the_roof(order) - roof.width_m / FOOT_M == pytest.approx(1.33, abs=5e-3)


def test_measured_again_the_order_does_not_change_and_that_was_said() -> None:
    before, order = planned(story())
    (finding,) = (f for f in before.findings if f.code == "tape.outlier")
    mend = words(finding.mend, "imperial")
    assert "32' 4\" wide" in mend
    assert "the stock width stays at 34' 0\"" in mend
    after, same = planned(story(BENT | {22: 30 * FOOT_M + 10 * INCH_M}))
    # 30' 10" and 18 in: 32.33 ft.
    assert after.chosen.cover.sheet_width_m / FOOT_M == pytest.approx(32.33, abs=5e-3)
    assert not any(f.code == "tape.outlier" for f in after.findings)
    bought = [(line.key, line.packs) for line in order.lines if CLEAR in line.key]
    assert [(line.key, line.packs) for line in same.lines if CLEAR in line.key] == bought
    assert stock_of_the_roof(same) == pytest.approx(34.0)
