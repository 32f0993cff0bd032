"""The bar's torsion against the stress function on a grid, its sticks against laying them out."""

import math
from dataclasses import fields

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.integrate import quad
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve

from hanging import INCH_M, LB_FT_KG_M, bar, round_tube, square_tube
from hoopwright.curtain.bar import (
    TORSION_RULE,
    bar_inertia,
    bar_mass,
    bar_torsion_constant,
    metal_area,
    second_moment,
    section_figures,
    slit_torsion_constant,
    stick_count,
    torsion_constant,
    tube_mass,
    winding_radius,
)
from hoopwright.farm.bar import RoundTube, Section
from hoopwright.quantity.working import Units, explain


def _torsion_on_grid(outside: float, wall: float, cells: int) -> float:
    """Return the torsion constant of a square tube by finite differences.

    Prandtl's stress function (textbook) falls from a plateau over the hole to zero at the
    outside; its slopes balance a load of 2 everywhere, and the torsion constant is twice the
    volume under it. All nodes of the hole share one unknown.
    """
    step = wall / cells
    side = round(outside / step)
    index: NDArray[np.int_] = np.full((side + 1, side + 1), -1)
    inner = slice(cells, side - cells + 1)
    index[inner, inner] = 0
    free = np.zeros_like(index, dtype=bool)
    free[1:side, 1:side] = True
    free[inner, inner] = False
    index[free] = np.arange(1, free.sum() + 1)
    owned = np.bincount(index[index >= 0])
    rows, columns, weights = [], [], []
    for one, other in ((index[:-1], index[1:]), (index[:, :-1], index[:, 1:])):
        for a, b in ((one.ravel(), other.ravel()), (other.ravel(), one.ravel())):
            mine = (a >= 0) & (a != b)
            rows += [a[mine], a[mine & (b >= 0)]]
            columns += [a[mine], b[mine & (b >= 0)]]
            weights += [np.ones(mine.sum()), -np.ones((mine & (b >= 0)).sum())]
    matrix = coo_matrix(
        (np.concatenate(weights), (np.concatenate(rows), np.concatenate(columns)))
    ).tocsc()
    height = spsolve(matrix, 2.0 * step**2 * owned)
    return float(2 * step**2 * (height * owned).sum())


def test_square_tube_resists_twisting_as_its_stress_function_says() -> None:
    # Bredt's thin-wall formula lies a few percent below, never above.
    formula = torsion_constant(square_tube(1.5, 0.0625)) / INCH_M**4
    grid = _torsion_on_grid(1.5, 0.0625, 8)
    assert 0.96 * grid < formula < grid


# Area, second moment and torsion constant in inches, made with the finite elements of the library
# sectionproperties 3.10.2 (rings of 256 corners, sharp squares, a slit of 0.001 in, meshes of
# 0.0003 in2). The thin-wall rules are allowed 2.5 % on a closed and 1 % on a slit square or ring.
MESHED = [
    (round_tube(1.375, 0.058), 0.23995, 0.052119, 0.104239, 2.6667e-4),
    (square_tube(1.5, 0.0625), 0.35938, 0.124003, 0.189544, 4.6951e-4),
]


@pytest.mark.parametrize(("tube", "area", "second", "torsion", "slit"), MESHED)
def test_section_agrees_with_finite_elements(
    tube: Section, area: float, second: float, torsion: float, slit: float
) -> None:
    assert metal_area(tube) / INCH_M**2 == pytest.approx(area, rel=3e-4)
    assert second_moment(tube) / INCH_M**4 == pytest.approx(second, rel=3e-4)
    allowed = 3e-4 if isinstance(tube, RoundTube) else 0.025
    assert torsion_constant(tube) / INCH_M**4 == pytest.approx(torsion, rel=allowed)
    assert slit_torsion_constant(tube) / INCH_M**4 == pytest.approx(slit, rel=0.01)


# Second moment of area of standard pipe, in4: handbook values, from memory.
@pytest.mark.parametrize(
    ("outside_in", "wall_in", "second_in4"),
    [(1.660, 0.140, 0.195), (1.900, 0.145, 0.310), (1.315, 0.133, 0.0873)],
)
def test_second_moment_is_that_of_handbooks(
    outside_in: float, wall_in: float, second_in4: float
) -> None:
    tube = round_tube(outside_in, wall_in)
    assert second_moment(tube) / INCH_M**4 == pytest.approx(second_in4, rel=2e-3)


def test_inertia_of_a_bar_is_that_of_its_metal_added_up_in_rings() -> None:
    # A ring of radius r and width dr has the mass 2 pi r dr rho on the arm r; the cap lies on the
    # outside.
    capped = bar(round_tube(1.375, 0.058), cap_lb_ft=0.25)
    outside_m, inside_m = 1.375 / 2 * INCH_M, (1.375 / 2 - 0.058) * INCH_M
    tube, _ = quad(lambda r: 7850 * 2 * math.pi * r**3, inside_m, outside_m)
    assert bar_inertia(capped) == pytest.approx(tube + 0.25 * LB_FT_KG_M * outside_m**2)


def test_slit_bar_is_soft_and_says_so() -> None:
    closed = bar(round_tube(1.375, 0.058))
    slit = closed.but(slit=True)
    assert bar_torsion_constant(closed) == torsion_constant(closed.section)
    assert bar_torsion_constant(slit) == slit_torsion_constant(closed.section)
    rule = section_figures(slit).working("torsion_m4").rule
    assert rule == TORSION_RULE["round", True]
    assert "Slit" in rule


# Worked by hand, 1.5 in square aluminium, wall 1/16 in, cap 0.1 lb/ft: area 0.3594 in2, mass
# 0.421 + 0.1 lb/ft, torsion constant 1.4375^3 / 16 = 0.1857 in4, second moment
# (1.5^4 - 1.375^4) / 12 = 0.1240 in4, radius 6 in / 2 pi = 0.955 in.
def test_figures_of_a_bar_agree_with_the_hand_sum() -> None:
    figures = section_figures(bar(square_tube(1.5, 0.0625), "aluminium", cap_lb_ft=0.1))
    assert figures.area_m2 / INCH_M**2 == pytest.approx(0.3594, abs=5e-5)
    assert figures.mass_kg_m / LB_FT_KG_M == pytest.approx(0.521, abs=5e-4)
    assert figures.torsion_m4 / INCH_M**4 == pytest.approx(0.1857, abs=5e-5)
    assert figures.second_moment_m4 / INCH_M**4 == pytest.approx(0.1240, abs=5e-5)
    assert figures.radius_m / INCH_M == pytest.approx(0.955, abs=5e-4)


@pytest.mark.parametrize("units", ["imperial", "metric"])
@pytest.mark.parametrize("tube", [round_tube(1.375, 0.058), square_tube(1.5, 0.0625)])
def test_every_figure_of_a_bar_says_how_it_was_got(tube: Section, units: Units) -> None:
    figures = section_figures(bar(tube))
    named = {field.name for field in fields(figures)} - {"workings"}
    assert {working.figure for working in figures.workings} == named
    for working in figures.workings:
        assert working.source in explain(working, units)


def test_square_tube_is_softer_than_its_polar_moment() -> None:
    # Saint-Venant: of all sections only the round one reaches its polar second moment.
    outside_m, wall_m = 1.5 * INCH_M, 0.0625 * INCH_M
    polar_m4 = (outside_m**4 - (outside_m - 2 * wall_m) ** 4) / 6
    assert torsion_constant(square_tube(1.5, 0.0625)) < polar_m4


def test_solid_round_bar_is_the_limit_of_a_thick_wall() -> None:
    tube = round_tube(1.0, 0.4999999)
    assert torsion_constant(tube) / INCH_M**4 == pytest.approx(math.pi / 32, rel=1e-6)
    assert metal_area(tube) / INCH_M**2 == pytest.approx(math.pi / 4, rel=1e-6)


def test_film_round_a_square_bar_is_as_long_as_its_outline() -> None:
    tube = square_tube(1.5, 0.0625)
    assert 2 * math.pi * winding_radius(tube) == pytest.approx(4 * tube.outside_m)
    half_side_m, half_diagonal_m = tube.outside_m / 2, tube.outside_m / math.sqrt(2)
    assert half_side_m < winding_radius(tube) < half_diagonal_m


def test_cap_adds_its_mass_and_no_stiffness() -> None:
    plain, capped = bar(round_tube(1.66, 0.065)), bar(round_tube(1.66, 0.065), cap_lb_ft=0.25)
    assert bar_mass(capped) - bar_mass(plain) == pytest.approx(0.25 * LB_FT_KG_M)
    assert tube_mass(capped.section, "steel") == bar_mass(plain)


def test_aluminium_weighs_its_density() -> None:
    tube = round_tube(1.66, 0.065)
    assert tube_mass(tube, "aluminium") / tube_mass(tube, "steel") == pytest.approx(2700 / 7850)


@given(st.floats(0.0, 200.0), st.floats(1.0, 8.0), st.floats(0.0, 0.4))
def test_sticks_reach_and_one_less_does_not(
    length_m: float, stick_m: float, overlap_m: float
) -> None:
    sticks = stick_count(length_m, stick_m, overlap_m)

    def reach(count: int) -> float:
        return count * stick_m - (count - 1) * overlap_m

    assert reach(sticks) >= length_m - 1e-6
    assert sticks == 1 or reach(sticks - 1) < length_m


def test_bar_as_long_as_two_sticks_with_their_joint_takes_two() -> None:
    assert stick_count(6.3 + 6.3 - 0.1, 6.3, 0.1) == 2
    assert stick_count(6.3, 6.3, 0.1) == 1


def test_joint_that_takes_the_whole_stick_is_refused() -> None:
    with pytest.raises(ValueError, match="longer stick"):
        stick_count(10.0, 0.1, 0.1)
