"""Heat loss against published inputs and figures, and by hand."""

import math

import pint
import pytest

from hoopwright.heat.loss import Surface, heat_loss, saved_share
from hoopwright.heat.published import (
    AIR_J_M3_K,
    BTU_H_SQUARE_FOOT_F_W_M2_K,
    CHANGES_1_H,
    DOUBLE,
    SAVED_SHARE,
    SINGLE,
    U_W_M2_K,
)
from hoopwright.quantity.factors import CUBIC_FOOT_M3, FAHRENHEIT_K, SQUARE_FOOT_M2

UNIT = pint.UnitRegistry()
BTU_H_W = 1055.056 / 3600


def test_units_are_those_of_the_unit_library() -> None:
    u_value = (1 * UNIT.Btu_it / UNIT.hour / UNIT.foot**2 / UNIT.delta_degF).to("W/m**2/K")
    assert pytest.approx(u_value.magnitude, rel=1e-6) == BTU_H_SQUARE_FOOT_F_W_M2_K
    # The 0.018 Btu/(ft3 degF) of greenhouse texts.
    air = AIR_J_M3_K * CUBIC_FOOT_M3 * FAHRENHEIT_K / 1055.056
    assert air == pytest.approx(0.018, rel=2e-3)


# Worked by hand: 500 x 6.2 + 100 x 4.0 = 3500 W/K; 1206 x 1200 x 1.5 / 3600 = 603 W/K; together
# 4103 W/K, and 25 K make 102.6 kW.
def test_loss_agrees_with_the_hand_sum() -> None:
    surfaces = (Surface("roof", 500.0, 6.2), Surface("ends", 100.0, 4.0))
    loss = heat_loss(surfaces, 1200.0, 1.5, inside_k=288.15, outside_k=263.15)
    assert loss.surfaces_w_k == pytest.approx((3100.0, 400.0))
    assert loss.air_w_k == pytest.approx(603.0)
    assert loss.whole_w_k == pytest.approx(4103.0)
    assert loss.peak_w == pytest.approx(102.6e3, rel=1e-3)


# Worked by hand in the units of the trade: half round house 30 x 96 ft, cover 15 pi x 96 + pi 15**2
# = 5230.8 ft2, air 33 929 ft3, 60 degF. One film, 1.2 Btu/(h ft2 degF), one change an hour at
# 0.018 Btu/(ft3 degF): 376 614 + 36 644 = 413 258 Btu/h.
def test_loss_in_trade_units_agrees_with_the_hand_sum() -> None:
    cover_m2 = (15 * math.pi * 96 + math.pi * 225) * SQUARE_FOOT_M2
    volume_m3 = math.pi * 225 / 2 * 96 * CUBIC_FOOT_M3
    surface = Surface("cover", cover_m2, 1.2 * BTU_H_SQUARE_FOOT_F_W_M2_K)
    loss = heat_loss((surface,), volume_m3, 1.0, 288.15, 288.15 - 60 * FAHRENHEIT_K)
    assert loss.peak_w / BTU_H_W == pytest.approx(413258, rel=1e-3)


# Rasheed, Lee and Lee, Spanish Journal of Agricultural Research: 34 %; Bartok, Greenhouse glazing
# tips, Greenhouse Management, March 2013: 35 %. About 6.2 and 4.0 W/m2/K for one and two films are
# the figures from memory that go with them.
def test_second_layer_saves_about_what_was_published() -> None:
    one, two = Surface("cover", 486.0, 6.2), Surface("cover", 486.0, 4.0)
    assert saved_share(one.loss_w_k, two.loss_w_k) == pytest.approx(0.345, abs=0.02)
    assert SAVED_SHARE[1:3] == (0.34, 0.35)


def _ranges(covering: str) -> list[tuple[float, float]]:
    return [(u.low, u.high) for u in U_W_M2_K if u.covering == covering]


# The saving published lies inside what the published ranges of U allow.
def test_published_figures_agree_with_each_other() -> None:
    one, two = _ranges(SINGLE)[0], _ranges(DOUBLE)[0]
    assert 1 - two[1] / one[0] < 0.34 < 0.35 < 1 - two[0] / one[1]
    # 1.2 and 0.7 Btu/(h ft2 degF) are 6.8 and 4.0 W/m2/K.
    assert (one[1], two[1]) == pytest.approx((6.81, 3.97), abs=0.01)


def test_every_published_range_has_a_source_and_runs_upward() -> None:
    for published in (*U_W_M2_K, *CHANGES_1_H, SAVED_SHARE):
        assert 0 < published.low <= published.high
        assert len(published.source) > 10


def test_warmth_outside_needs_no_heat() -> None:
    loss = heat_loss((Surface("roof", 500.0, 6.2),), 1200.0, 1.0, 280.0, 285.0)
    assert loss.peak_w == 0.0


def test_each_figure_tells_how_it_was_got() -> None:
    loss = heat_loss((Surface("roof", 500.0, 6.2),), 1200.0, 1.0, 288.0, 263.0)
    for figure in ("surfaces_w_k", "air_w_k", "whole_w_k", "peak_w"):
        assert loss.working(figure).inputs
    assert [t.value for t in loss.working("peak_w").inputs] == [loss.whole_w_k, 288.0, 263.0]


@pytest.mark.parametrize(
    ("area_m2", "u_w_m2_k", "field"),
    [(-1.0, 6.0, "area_m2 of roof"), (1.0, 0.0, "u_w_m2_k of roof"), (1.0, math.nan, "u_w_m2_k")],
)
def test_surface_refuses_what_cannot_be(area_m2: float, u_w_m2_k: float, field: str) -> None:
    with pytest.raises(ValueError, match=f"^{field}"):
        Surface("roof", area_m2, u_w_m2_k)


@pytest.mark.parametrize(
    ("figures", "field"),
    [
        ((-1.0, 1.0, 288.0, 263.0), "volume_m3"),
        ((1.0, -1.0, 288.0, 263.0), "changes_per_h"),
        ((1.0, 1.0, 0.0, 263.0), "inside_k"),
        ((1.0, 1.0, 288.0, math.inf), "outside_k"),
    ],
)
def test_loss_refuses_what_cannot_be(
    figures: tuple[float, float, float, float], field: str
) -> None:
    with pytest.raises(ValueError, match=f"^{field}"):
        heat_loss((), *figures)


def test_no_loss_has_no_saving() -> None:
    with pytest.raises(ValueError, match="one_layer_w_k must be above zero"):
        saved_share(0.0, 0.0)
