"""Bowed film against numerical integration, a root finder, and a chain of springs at rest."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq, minimize

from hoopwright.pressure.membrane import (
    MOST_SLACK,
    STEEL_1_K,
    billow_radius,
    billow_rise,
    film_pull,
    film_stress,
    held_pull,
    slack_to_leave,
    stretched_rise,
)
from hoopwright.quantity.factors import FOOT_M, INCH_M, MIL_M

CHORD_M, THICK_M, MODULUS = 4 * FOOT_M, 6 * MIL_M, 200e6
# Modulus of greenhouse films as measured, Pa (Advances in Materials Science and Engineering 2019,
# article 1692126, table 5).
MODULUS_PA = (126e6, 299e6)
# Growth of length per kelvin. Polyethylene 1 to 2e-4 (Cardarelli, Materials Handbook, 2018), other
# tables up to 2.2e-4.
GROWTHS_1_K = (2.0e-4, STEEL_1_K)


# Worked by hand: chord 1.2192 m, rise 0.0762 m: R = (0.37161 + 0.00581) / 0.1524 = 2.4765 m; arc
# 4 R atan(0.125) = 1.23186 m, 1.0384 % more. At 60 Pa 148.6 N/m; over 0.1524 mm 0.975 MPa.
def test_bow_agrees_with_the_hand_sum() -> None:
    radius_m = billow_radius(CHORD_M, 3 * INCH_M)
    assert radius_m == pytest.approx(2.4765, abs=5e-5)
    assert billow_rise(CHORD_M, 0.010384) == pytest.approx(3 * INCH_M, rel=5e-5)
    assert film_pull(60.0, radius_m) == pytest.approx(148.6, abs=0.05)
    assert film_stress(148.59, THICK_M) == pytest.approx(0.975e6, rel=1e-3)


@pytest.mark.parametrize("share", [0.01, 0.0625, 0.2, 0.45])
def test_slack_is_the_integral_along_the_arc(share: float) -> None:
    radius_m = billow_radius(1.0, share)
    arc_m, _ = quad(lambda x: radius_m / math.sqrt(radius_m**2 - x**2), -0.5, 0.5)
    assert billow_rise(1.0, arc_m - 1) == pytest.approx(share, rel=1e-6)


def test_bow_at_its_limits() -> None:
    assert billow_radius(2.0, 0.0) == math.inf
    assert billow_rise(2.0, 0.0) == 0.0
    assert billow_radius(2.0, 1.0) == 1.0
    assert billow_rise(2.0, math.pi / 2 - 1) == pytest.approx(1.0)
    # Shallow: 8 h**2 / (3 c**2).
    assert billow_rise(1.0, 8 * 0.01**2 / 3) == pytest.approx(0.01, rel=1e-3)


# Both pulls of a bowed strip hold its load: 2 T sin a = p c.
@given(chord_m=st.floats(0.3, 4.0), share=st.floats(0.01, 0.5), pressure_pa=st.floats(1.0, 500.0))
def test_pull_holds_the_load(chord_m: float, share: float, pressure_pa: float) -> None:
    radius_m = billow_radius(chord_m, share * chord_m)
    pull = film_pull(pressure_pa, radius_m)
    assert 2 * pull * chord_m / (2 * radius_m) == pytest.approx(pressure_pa * chord_m)


# Worked by hand, shallow: h = c (3 p c / (64 E t))**(1/3) = 1.2192 x (219.456 / 1.95072e6)**(1/3)
# = 58.9 mm; the exact circle gives 59.1 mm, and 74.7 mm with half a percent of slack.
def test_stretched_rise_agrees_with_the_hand_sum() -> None:
    assert stretched_rise(CHORD_M, 60.0, THICK_M, MODULUS) == pytest.approx(0.0591, abs=5e-5)
    assert stretched_rise(CHORD_M, 60.0, THICK_M, MODULUS, 0.005) == pytest.approx(0.0747, abs=5e-5)
    shallow = CHORD_M * (3 * 0.6 * CHORD_M / (64 * MODULUS * THICK_M)) ** (1 / 3)
    assert stretched_rise(CHORD_M, 0.6, THICK_M, MODULUS) == pytest.approx(shallow, rel=1e-3)


@given(
    chord_m=st.floats(0.5, 3.0),
    pressure_pa=st.floats(1.0, 200.0),
    modulus_pa=st.floats(*MODULUS_PA),
    slack=st.floats(0.0, 0.1),
)
def test_stretched_rise_is_the_root_of_arc_and_strain(
    chord_m: float, pressure_pa: float, modulus_pa: float, slack: float
) -> None:
    def spare(rise_m: float) -> float:
        half_rad = 2 * math.atan(2 * rise_m / chord_m)
        radius_m = chord_m / (2 * math.sin(half_rad))
        pulled = pressure_pa * radius_m / (modulus_pa * THICK_M)
        return 2 * radius_m * half_rad / chord_m - (1 + slack) * (1 + pulled)

    sure = brentq(spare, 1e-5 * chord_m, chord_m / 2, xtol=1e-13)
    found = stretched_rise(chord_m, pressure_pa, THICK_M, modulus_pa, slack)
    assert found == pytest.approx(sure, rel=1e-6)


def _spring_chain_rise(pressure_pa: float, slack: float, links: int = 40) -> float:
    """Return the middle rise of a chain of springs blown up to its least energy, m.

    The energy is that of the springs less pressure times the area under the chain.
    """
    rest_m = CHORD_M * (1 + slack) / links
    stiff_n_m = MODULUS * THICK_M / rest_m
    along = np.linspace(0.0, CHORD_M, links + 1)
    start = 0.06 * (1 - (2 * along / CHORD_M - 1) ** 2)

    def energy(free: np.ndarray) -> tuple[float, np.ndarray]:
        x, y = along.copy(), np.zeros(links + 1)
        x[1:-1], y[1:-1] = free[: links - 1], free[links - 1 :]
        dx, dy = np.diff(x), np.diff(y)
        length = np.hypot(dx, dy)
        pull = stiff_n_m * (length - rest_m)
        area = np.sum(dx * (y[1:] + y[:-1]) / 2)
        by_x = (pull * dx / length)[:-1] - (pull * dx / length)[1:]
        by_x += pressure_pa * (y[2:] - y[:-2]) / 2
        by_y = (pull * dy / length)[:-1] - (pull * dy / length)[1:]
        by_y -= pressure_pa * (x[2:] - x[:-2]) / 2
        whole = np.sum(stiff_n_m * (length - rest_m) ** 2) / 2 - pressure_pa * area
        return float(whole), np.concatenate([by_x, by_y])

    free = np.concatenate([along[1:-1], start[1:-1]])
    options = {"maxiter": 20000, "maxfun": 40000, "ftol": 1e-16, "gtol": 1e-7}
    rest = minimize(energy, free, jac=True, method="L-BFGS-B", options=options)
    return float(np.max(rest.x[links - 1 :]))


@pytest.mark.parametrize("slack", [0.0, 0.005])
def test_stretched_rise_is_that_of_a_chain_of_springs(slack: float) -> None:
    found = stretched_rise(CHORD_M, 60.0, THICK_M, MODULUS, slack)
    assert found == pytest.approx(_spring_chain_rise(60.0, slack), rel=2e-3)


# An arc over its chord is half its angle over the sine of that; chord 2 m, rise h: 2 atan(h).
@given(slack=st.floats(1e-4, MOST_SLACK))
def test_slack_and_rise_are_each_other_turned_round(slack: float) -> None:
    rise_m = billow_rise(2.0, slack)
    half_rad = 2 * math.atan(rise_m)
    assert half_rad / math.sin(half_rad) - 1 == pytest.approx(slack, rel=1e-6)


# Worked by hand: 96 ft, 60 degF colder (33.33 K), film 2.0e-4, frame 1.2e-5: 1.88e-4 x 33.33 =
# 0.6267 %, of 1152 in 7.22 in; held, 200 MPa x 0.1524 mm x 0.6267 % = 191 N/m.
def test_cold_film_agrees_with_the_hand_sum() -> None:
    colder_k = -60 / 1.8
    assert held_pull(0.0, colder_k, THICK_M, MODULUS, *GROWTHS_1_K) == pytest.approx(191, abs=0.1)
    slack = slack_to_leave(293.15, 293.15 + colder_k, *GROWTHS_1_K)
    assert slack == pytest.approx(0.0062667, rel=1e-4)
    assert slack * 96 * FOOT_M / INCH_M == pytest.approx(7.22, abs=0.005)


# Worked by hand: 200 MPa x 0.1524 mm x 1.88e-4 x 5 = 28.65 N/m less than the 50 N/m it had.
def test_film_does_not_push() -> None:
    assert held_pull(50.0, 5.0, THICK_M, MODULUS, *GROWTHS_1_K) == pytest.approx(21.35, abs=0.01)
    assert held_pull(50.0, 20.0, THICK_M, MODULUS, *GROWTHS_1_K) == 0.0
    assert slack_to_leave(263.15, 293.15, *GROWTHS_1_K) == 0.0


def test_membrane_refuses_what_cannot_be() -> None:
    with pytest.raises(ValueError, match="rise_m must be from 0 to half the chord"):
        billow_radius(1.0, 0.6)
    with pytest.raises(ValueError, match="chord_m must be above zero"):
        billow_radius(0.0, 0.0)
    with pytest.raises(ValueError, match="flat film carries no pressure"):
        film_pull(60.0, math.inf)
    with pytest.raises(ValueError, match=r"slack_share must be from 0 to 0\.57"):
        billow_rise(1.0, 0.6)
    with pytest.raises(ValueError, match="past a half circle"):
        stretched_rise(3.0, 1e5, THICK_M, MODULUS)
    with pytest.raises(ValueError, match="thickness_m must be above zero"):
        film_stress(10.0, 0.0)
    with pytest.raises(ValueError, match="modulus_pa must be above zero"):
        held_pull(0.0, -10.0, THICK_M, 0.0, *GROWTHS_1_K)
    with pytest.raises(ValueError, match="pressure_pa must be zero or more"):
        stretched_rise(1.0, -1.0, THICK_M, MODULUS)
