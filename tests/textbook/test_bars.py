"""Roll bars against published tables of pipes, gauges and metals, and sums worked by hand."""

import json
from importlib.resources import files

import pytest

from hanging import (
    FOOT_M,
    INCH_M,
    LB_FT_KG_M,
    LBF_IN_NM,
    LBF_N,
    bar,
    crank,
    hung,
    round_tube,
    span,
    square_tube,
)
from hoopwright.curtain.bar import (
    DENSITY_KG_M3,
    SHEAR_PA,
    metal_area,
    torsion_constant,
    tube_mass,
    winding_radius,
)
from hoopwright.curtain.cranking import work_curtain
from hoopwright.farm import Limits

# Weights of steel pipe, lb/ft, as printed in tables after ASME B36.10 and B36.19 (several copies
# agree). The tables were made with 10.68 (D - t) t; 7850 kg/m3 gives 10.69, so 0.2 % is allowed.
PIPES = [
    (1.315, 0.133, 1.679),
    (1.660, 0.140, 2.273),
    (1.900, 0.145, 2.718),
    (2.375, 0.154, 3.653),
    (1.315, 0.065, 0.8678),
    (1.660, 0.065, 1.107),
    (1.900, 0.065, 1.274),
    (2.375, 0.065, 1.604),
    (1.660, 0.109, 1.806),
    (1.315, 0.109, 1.404),
    (1.900, 0.109, 2.085),
]

# Birmingham gauge: number and wall in inches (table d_508 of engineeringtoolbox.com).
BIRMINGHAM_IN = {
    10: 0.134,
    11: 0.120,
    12: 0.109,
    13: 0.095,
    14: 0.083,
    15: 0.072,
    16: 0.065,
    17: 0.058,
    18: 0.049,
    19: 0.042,
    20: 0.035,
}

# Second moment of area of standard pipe, in4: handbook values, from memory.
HANDBOOK_IN4 = [(1.660, 0.140, 0.195), (1.900, 0.145, 0.310), (1.315, 0.133, 0.0873)]


@pytest.mark.parametrize(("outside_in", "wall_in", "weight_lb_ft"), PIPES)
def test_steel_pipe_weighs_what_the_tables_print(
    outside_in: float, wall_in: float, weight_lb_ft: float
) -> None:
    mass_kg_m = tube_mass(round_tube(outside_in, wall_in), "steel")
    assert mass_kg_m / LB_FT_KG_M == pytest.approx(weight_lb_ft, rel=2e-3)


@pytest.mark.parametrize(("outside_in", "wall_in", "second_moment_in4"), HANDBOOK_IN4)
def test_round_tube_twists_by_twice_its_second_moment(
    outside_in: float, wall_in: float, second_moment_in4: float
) -> None:
    torsion_in4 = torsion_constant(round_tube(outside_in, wall_in)) / INCH_M**4
    assert torsion_in4 == pytest.approx(2 * second_moment_in4, rel=2e-3)


def test_metals_lie_in_the_published_ranges() -> None:
    # Gere, Mechanics of Materials, 5th edition, as reprinted in Engineering Fundamentals, 4th
    # edition, tables 17.1 and 17.2: shear modulus of steel 75 to 80 GPa, of aluminium alloys 26
    # to 30 GPa; density of aluminium alloys 2600 to 2800 kg/m3. Density of structural steel
    # 7850 kg/m3: EN 1993-1-1 as quoted in steel tables.
    assert 75e9 <= SHEAR_PA["steel"] <= 80e9
    assert 26e9 <= SHEAR_PA["aluminium"] <= 30e9
    assert 2600 <= DENSITY_KG_M3["aluminium"] <= 2800
    assert DENSITY_KG_M3["steel"] == 7850


def test_shear_modulus_of_steel_follows_from_its_stretching() -> None:
    # G = E / 2(1 + nu) with E 200 GPa and nu 0.3 of any textbook.
    assert SHEAR_PA["steel"] == pytest.approx(200e9 / (2 * 1.3), rel=2e-3)


def test_steel_bars_of_the_catalogue_have_walls_of_the_birmingham_gauge() -> None:
    table = json.loads((files("hoopwright.resources") / "catalogue.json").read_text("utf-8"))
    walls_in = {
        entry["section"]["wall_m"] / INCH_M
        for entry in table["bars"]
        if entry["material"] == "steel"
    }
    assert walls_in
    for wall_in in walls_in:
        assert min(abs(wall_in - listed) for listed in BIRMINGHAM_IN.values()) < 2e-4


# Worked by hand, 1-3/8 in tube, wall 0.058 in (17 gauge):
# area pi/4 (1.375^2 - 1.259^2) = 0.2400 in2; J = pi/32 (1.375^4 - 1.259^4) = 0.1043 in4;
# 10.691 x 1.317 x 0.058 = 0.817 lb/ft. With 0.083 in (14 gauge): J 0.1412 in4, 1.147 lb/ft.
def test_usual_rail_agrees_with_the_hand_sum() -> None:
    thin, thick = round_tube(1.375, BIRMINGHAM_IN[17]), round_tube(1.375, BIRMINGHAM_IN[14])
    assert metal_area(thin) / INCH_M**2 == pytest.approx(0.2400, abs=5e-5)
    assert torsion_constant(thin) / INCH_M**4 == pytest.approx(0.1043, abs=5e-5)
    assert tube_mass(thin, "steel") / LB_FT_KG_M == pytest.approx(0.817, abs=5e-4)
    assert torsion_constant(thick) / INCH_M**4 == pytest.approx(0.1412, abs=5e-5)
    assert tube_mass(thick, "steel") / LB_FT_KG_M == pytest.approx(1.147, abs=5e-4)


# Worked by hand, square aluminium 1.5 in, wall 1/16 in: area 1.5^2 - 1.375^2 = 0.3594 in2, times
# 2700 kg/m3 (0.09754 lb/in3) and 12 in = 0.421 lb/ft; J = 1.4375^3 / 16 = 0.1857 in4;
# mean radius 4 x 1.5 / 2 pi = 0.955 in.
def test_square_aluminium_bar_agrees_with_the_hand_sum() -> None:
    tube = square_tube(1.5, 0.0625)
    assert tube_mass(tube, "aluminium") / LB_FT_KG_M == pytest.approx(0.421, abs=5e-4)
    assert torsion_constant(tube) / INCH_M**4 == pytest.approx(0.1857, abs=5e-5)
    assert winding_radius(tube) / INCH_M == pytest.approx(0.955, abs=5e-4)


# Worked by hand, 100 ft of 1-3/8 x 0.058 in rail and 5 ft of one 6 mil layer of 920 kg/m3:
# roll r = sqrt(0.6875^2 + 60 x 0.006 / pi) = 0.7663 in; turns (0.7663 - 0.6875) / 0.006 = 13.14;
# weight 0.817 + 5 x 0.0287 = 0.960 lbf/ft; torque 96.0 x 0.7663 = 73.6 lbf in; 7 in arm 10.5 lbf;
# twist 0.0800 lbf/in x 0.7663 in x (1200 in)^2 / (2 x 11.17e6 psi x 0.1043 in4) = 0.0379 rad =
# 2.17 degrees; trailing 0.0379 x 0.7663 = 0.029 in;
# energy (0.817 x 5 + 0.0287 x 25 / 2) x 100 = 444 ft lbf = 602 J; 21 ft sticks that lose 4 in:
# (100 - 0.333) / 20.667 = 4.82, so 5.
def test_hundred_feet_of_rail_agree_with_the_hand_sum() -> None:
    rail = bar(round_tube(1.375, 0.058))
    work = work_curtain(hung(span(100, 5), rail, crank(7)))
    assert work.diameters_m[2] / INCH_M == pytest.approx(2 * 0.7663, abs=2e-4)
    assert work.turns == pytest.approx(13.14, abs=0.005)
    assert work.weights_n[2] / LBF_N == pytest.approx(96.0, abs=0.1)
    assert work.torques_nm[2] / LBF_IN_NM == pytest.approx(73.6, abs=0.05)
    assert work.hardest_n / LBF_N == pytest.approx(10.5, abs=0.05)
    assert work.twist_rad == pytest.approx(0.0379, abs=5e-5)
    assert work.trailing_m / INCH_M == pytest.approx(0.029, abs=5e-4)
    assert work.energy_j == pytest.approx(602, abs=1)
    assert (work.bar_sticks, work.bar_joints) == (5, 4)


def test_one_person_rolls_up_a_house_of_ninety_six_feet() -> None:
    # Association of Specialty Cut Flower Growers, 2006 summer regional report, Southeast: hip
    # board 5 ft above the ground, 1-3/8 in top rail, one person can roll houses up to 96 ft.
    # A short effort of one hand at a crank of 0.4 m: 130 N (engineeringtoolbox.com, human force
    # and power). Half shells of plastic pipe on the bar: 0.2 lb/ft, from memory.
    rail = bar(round_tube(1.375, 0.065), cap_lb_ft=0.2)
    worst = Limits(rubbing_share=0.3)
    work = work_curtain(hung(span(96, 5), rail, crank(0.4 / INCH_M), worst, wrap_ft=1))
    assert work.hardest_n < 130
    assert work.length_m == pytest.approx(96 * FOOT_M)
