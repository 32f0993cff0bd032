"""What is said of the second layer: each case has its sentence, with figures that add up."""

from decimal import Decimal

import pytest

from hoopwright.farm import Heating, RigidSheet, Tunnel
from hoopwright.heat import Warmth, pay_back_words
from hoopwright.quantity.money import format_money
from hoopwright.quantity.units import Units
from hoopwright.quantity.working import words
from samples import double_tunnel, tunnel
from warmed import BLOWER_YEAR, warmed


def said(found: Warmth, units: Units = "metric") -> str:
    """Return the sentence and the notes in one text."""
    return " ".join(words(text, units) for text in (found.told, *found.notes))


def test_paid_back_layer_tells_what_it_saves_and_costs() -> None:
    found = warmed(double_tunnel(), Heating())
    told = said(found)
    assert format_money(found.saved_cost, "USD") in told
    assert format_money(found.second_layer_cost, "USD") in told
    assert format_money(BLOWER_YEAR, "USD") in told
    assert "paid back in" in told
    assert words(pay_back_words(found), "imperial").endswith(" yr")


def test_layer_that_never_pays_says_never() -> None:
    found = warmed(double_tunnel(), Heating(), blower_cost_year=Decimal(50_000))
    assert "never pays" in said(found)
    assert words(pay_back_words(found), "metric") == "never"


@pytest.mark.parametrize("chosen", [tunnel(), double_tunnel()])
def test_unheated_tunnel_says_that_no_fuel_is_saved(chosen: Tunnel) -> None:
    told = said(warmed(chosen))
    assert told.startswith("The tunnel is not heated")
    assert "no fuel" in told
    assert "%" in told
    assert "light" in told


def test_one_layer_tells_what_two_would_lose_less() -> None:
    found = warmed(tunnel(), Heating())
    could = 100 * (1 - found.loss_two_w_k / found.loss_one_w_k)
    assert f"would lose {could:.0f}% less" in said(found)
    assert "no heat is saved" in said(found)


def test_layers_without_air_between_are_named() -> None:
    chosen = double_tunnel()
    flat = chosen.but(air=chosen.air.but(blower=None))
    assert "count as one: roof, first side, second side." in said(warmed(flat, Heating()))
    assert "count as one" not in said(warmed(chosen, Heating()))


def test_ends_without_film_are_named() -> None:
    front, back = tunnel().ends
    bare = tunnel().but(ends=(front, back.but(film=None)))
    assert "one layer of it: back end wall." in said(warmed(bare, Heating()))


def test_rigid_ends_are_told_with_where_their_value_comes_from() -> None:
    front, back = tunnel().ends
    sheet = RigidSheet(part="rigid")
    rigid = tunnel().but(ends=(front.but(film=None, rigid=sheet), back.but(film=None)))
    told = said(warmed(rigid, Heating()))
    assert "whichever way the film is laid: front end wall. The value" in told
    assert "one layer of it: back end wall." in told


# Fuel at a cent a gallon and no power: the film of 4 years is long gone when it is paid.
def test_film_that_wears_out_before_it_is_paid_is_told() -> None:
    cheap = Heating(fuel_price=Decimal("0.01"))
    found = warmed(double_tunnel(), cheap, blower_cost_year=Decimal(0))
    assert found.payback_years is not None
    assert found.payback_years > 4
    assert "worn out before it is paid back" in said(found)


def test_sheet_that_no_stock_yields_is_told() -> None:
    long = double_tunnel()
    seams = long.skin.but(allowances=long.skin.allowances.but(end_tail_m=3.0, hip_tail_m=3.0))
    found = warmed(long.but(skin=seams), Heating())
    assert "No stock roll yields these sheets" in said(found)
