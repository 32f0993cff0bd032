"""Losses of hoses against a general library of fluid mechanics and textbook limits."""

import math

import pytest
from fluids import Reynolds, dP_from_K
from fluids.friction import Churchill_1977
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from hoopwright.pressure.hose import (
    AIR_KG_M3,
    AIR_PA_S,
    Hose,
    driven_flow,
    loss_and_slope,
    pressure_loss,
)

JUMPER = Hose(bore_m=0.0508, length_m=1.2, roughness_m=0.0005, loss_k=1.5)

hoses = st.builds(
    Hose,
    bore_m=st.floats(0.01, 0.3),
    length_m=st.floats(0.05, 30.0),
    roughness_m=st.sampled_from([0.0, 0.0001, 0.0005, 0.002]),
    loss_k=st.sampled_from([0.0, 0.5, 1.5, 20.0]),
)


def _reference_loss(hose: Hose, flow_m3_s: float) -> float:
    """Return the loss of a hose by the library's friction factor and pressure drop, Pa."""
    speed = flow_m3_s / (math.pi / 4 * hose.bore_m**2)
    reynolds = Reynolds(D=hose.bore_m, V=speed, rho=AIR_KG_M3, mu=AIR_PA_S)
    factor = Churchill_1977(Re=reynolds, eD=hose.roughness_m / hose.bore_m)
    whole = factor * hose.length_m / hose.bore_m + hose.loss_k
    return float(dP_from_K(K=whole, rho=AIR_KG_M3, V=speed))


def _factor(reynolds: float, roughness_share: float) -> float:
    """Return the friction factor of Darcy: velocity pressures lost in a hose as long as wide."""
    hose = Hose(bore_m=1.0, length_m=1.0, roughness_m=roughness_share, loss_k=0.0)
    speed = reynolds * AIR_PA_S / AIR_KG_M3
    return pressure_loss(hose, math.pi / 4 * speed) / (AIR_KG_M3 * speed**2 / 2)


@pytest.mark.parametrize("roughness_share", [0.0, 1e-4, 0.01, 0.04])
@pytest.mark.parametrize("reynolds", [5.0, 500.0, 2100.0, 3000.0, 5e3, 3e4, 1e6, 1e8])
def test_friction_factor_is_that_of_the_library(reynolds: float, roughness_share: float) -> None:
    expected = Churchill_1977(Re=reynolds, eD=roughness_share)
    assert _factor(reynolds, roughness_share) == pytest.approx(expected, rel=1e-9)


# Creeping flow: 64 / Re (Hagen and Poiseuille). Smooth wall, turbulent: Blasius 0.316 Re**-0.25
# within some percent (textbook).
def test_friction_factor_has_the_textbook_limits() -> None:
    assert _factor(0.01, 0.01) == pytest.approx(6400)
    assert _factor(1000.0, 0.0) == pytest.approx(0.064, rel=1e-3)
    assert _factor(3e4, 0.0) == pytest.approx(0.316 * 3e4**-0.25, rel=0.03)


@pytest.mark.parametrize("flow_m3_s", [1e-4, 1e-3, 0.01, 0.05])
def test_loss_is_that_of_the_library(flow_m3_s: float) -> None:
    expected = _reference_loss(JUMPER, flow_m3_s)
    assert pressure_loss(JUMPER, flow_m3_s) == pytest.approx(expected, rel=1e-9)


# Worked by hand: 0.01 m3/s in 50.8 mm is 4.934 m/s, Re 16 580, e/D 0.00984; Churchill's factor is
# 0.0420, so (0.0420 x 1.2 / 0.0508 + 1.5) x 1.204 x 4.934**2 / 2 = 36.4 Pa.
def test_loss_agrees_with_the_hand_sum() -> None:
    assert pressure_loss(JUMPER, 0.01) == pytest.approx(36.4, abs=0.05)


def test_loss_turns_with_the_flow() -> None:
    assert pressure_loss(JUMPER, -0.01) == -pressure_loss(JUMPER, 0.01)
    assert driven_flow(JUMPER, -20.0) == -driven_flow(JUMPER, 20.0)
    assert pressure_loss(JUMPER, 0.0) == 0.0
    assert driven_flow(JUMPER, 0.0) == 0.0


# Near rest a pipe follows Hagen and Poiseuille: flow = pi D**4 p / (128 viscosity length).
def test_flow_near_rest_is_in_step_with_the_pressure() -> None:
    expected = math.pi * 0.0508**4 * 1e-8 / (128 * AIR_PA_S * 1.2)
    assert driven_flow(JUMPER, 1e-8) == pytest.approx(expected, rel=1e-3)


# With hardly any wall only the ends count: Q = A sqrt(2 p / (K rho)).
def test_short_wide_hose_is_an_opening() -> None:
    hose = Hose(bore_m=0.1, length_m=1e-6, roughness_m=0.0, loss_k=1.5)
    expected = math.pi / 4 * 0.01 * math.sqrt(2 * 50 / (1.5 * AIR_KG_M3))
    assert driven_flow(hose, 50.0) == pytest.approx(expected, rel=1e-4)


@given(hose=hoses, drop_pa=st.floats(1e-6, 3000.0))
def test_driven_flow_takes_the_pressure_that_drives_it(hose: Hose, drop_pa: float) -> None:
    flow = driven_flow(hose, drop_pa)
    assert pressure_loss(hose, flow) == pytest.approx(drop_pa, rel=1e-8)


@pytest.mark.parametrize("drop_pa", [0.01, 0.3, 5.0, 60.0, 400.0])
def test_driven_flow_is_the_root_of_the_library_loss(drop_pa: float) -> None:
    root = brentq(lambda q: _reference_loss(JUMPER, q) - drop_pa, 1e-9, 1.0, xtol=1e-14)
    assert driven_flow(JUMPER, drop_pa) == pytest.approx(root, rel=1e-7)


@given(hose=hoses, flow_m3_s=st.floats(1e-6, 0.2))
def test_slope_is_the_growth_of_the_loss(hose: Hose, flow_m3_s: float) -> None:
    step = 1e-4 * flow_m3_s
    rise = pressure_loss(hose, flow_m3_s + step) - pressure_loss(hose, flow_m3_s - step)
    assert loss_and_slope(hose, flow_m3_s)[1] == pytest.approx(rise / (2 * step), rel=2e-3)


@pytest.mark.parametrize(
    ("sizes", "field"),
    [
        ((0.0, 1.0), "bore_m"),
        ((-0.05, 1.0), "bore_m"),
        ((0.05, 0.0), "length_m"),
        ((0.05, math.nan), "length_m"),
        ((0.05, 1.0, 0.03), "roughness_m"),
        ((0.05, 1.0, 0.0, -1.0), "loss_k"),
    ],
)
def test_hose_refuses_what_cannot_be(sizes: tuple[float, ...], field: str) -> None:
    with pytest.raises(ValueError, match=rf"{field} must be .*\. (Enter|Measure)"):
        Hose(*sizes)
