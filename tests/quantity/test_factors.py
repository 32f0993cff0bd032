import pint
import pytest

from hoopwright.quantity import factors

# Each constant as the general unit library pint computes it from its own definitions.
SCALES = ("ZERO_CELSIUS_K", "ZERO_FAHRENHEIT_K", "FAHRENHEIT_K")
BY_PINT = {
    "BTU_J": ("Btu_it", "J"),
    "BTU_H_W": ("Btu_it/hour", "W"),
    "INCH_M": ("inch", "m"),
    "FOOT_M": ("foot", "m"),
    "YARD_M": ("yard", "m"),
    "MIL_M": ("thou", "m"),
    "MICRON_M": ("micron", "m"),
    "MILLIMETRE_M": ("millimeter", "m"),
    "POUND_KG": ("pound", "kg"),
    "OUNCE_KG": ("ounce", "kg"),
    "G_M_S2": ("standard_gravity", "m/s**2"),
    "LBF_N": ("force_pound", "N"),
    "SQUARE_FOOT_M2": ("foot**2", "m**2"),
    "CUBIC_FOOT_M3": ("foot**3", "m**3"),
    "GALLON_M3": ("gallon", "m**3"),
    "LITRE_M3": ("liter", "m**3"),
    "POUND_FOOT_KG_M": ("pound/foot", "kg/m"),
    "POUND_SQUARE_FOOT_KG_M2": ("pound/foot**2", "kg/m**2"),
    "POUND_CUBIC_FOOT_KG_M3": ("pound/foot**3", "kg/m**3"),
    "LBF_FOOT_N_M": ("force_pound/foot", "N/m"),
    "INCH_LBF_NM": ("force_pound*inch", "N*m"),
    "FOOT_LBF_J": ("force_pound*foot", "J"),
    "PSF_PA": ("force_pound/foot**2", "Pa"),
    "PSI_PA": ("force_pound/inch**2", "Pa"),
    "MPH_M_S": ("mile/hour", "m/s"),
    "MINUTE_S": ("minute", "s"),
    "HOUR_S": ("hour", "s"),
    "CFM_M3_S": ("foot**3/minute", "m**3/s"),
    "DEGREE_RAD": ("degree", "radian"),
    "YEAR_S": ("365*day", "s"),
}
# Conventional water of 1000 kg/m3 under standard gravity is what the printed 249.0889 Pa means.
WATER = "inch * 1000 kg/m**3 * standard_gravity"


@pytest.fixture(scope="module")
def registry():
    return pint.UnitRegistry()


@pytest.mark.parametrize("name", BY_PINT)
def test_constant_agrees_with_a_general_unit_library(registry, name):
    unit, si = BY_PINT[name]
    expected = registry.Quantity(unit).to(si).magnitude
    assert getattr(factors, name) == pytest.approx(expected, rel=1e-12)


def test_inch_of_water_is_the_conventional_one(registry):
    expected = registry.Quantity(WATER).to("Pa").magnitude
    assert pytest.approx(expected, rel=2e-7) == factors.INCH_WATER_PA


def test_zeros_of_the_scales_agree_with_a_general_unit_library(registry):
    assert registry.Quantity(0, "degC").to("K").magnitude == factors.ZERO_CELSIUS_K
    zero_f = registry.Quantity(0, "degF").to("K").magnitude
    assert pytest.approx(zero_f, abs=1e-9) == factors.ZERO_FAHRENHEIT_K
    step = registry.Quantity(1, "delta_degF").to("K").magnitude
    assert pytest.approx(step, rel=1e-12) == factors.FAHRENHEIT_K


def test_every_constant_is_checked():
    named = {name for name in vars(factors) if name.isupper()}
    assert named == {*BY_PINT, "INCH_WATER_PA", *SCALES}
