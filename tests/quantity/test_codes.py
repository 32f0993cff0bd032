"""The table of unit codes, each shown unit against a general unit library."""

import pint
import pytest

from hoopwright.quantity.codes import CODES

# What each code's number is in, and the shown units in pint's words.
BY_PINT = {
    "m": ("m", "foot", "m"),
    "m_thin": ("m", "inch", "mm"),
    "m_film": ("m", "thou", "micron"),
    "m2": ("m**2", "foot**2", "m**2"),
    "m2_thin": ("m**2", "inch**2", "mm**2"),
    "m4": ("m**4", "inch**4", "cm**4"),
    "N m": ("N*m", "force_pound*inch", "N*m"),
    "m3/s": ("m**3/s", "foot**3/minute", "m**3/hour"),
    "m3/s/m2": ("m/s", "foot/minute", "m/hour"),
    "m3_water": ("m**3", "gallon", "liter"),
    "m/s_rain": ("m/s", "inch/hour", "mm/hour"),
    "m3/s_water": ("m**3/s", "gallon/minute", "liter/second"),
    "kg m2": ("kg*m**2", "pound*foot**2", "kg*m**2"),
    "dK": ("K", "delta_degF", "K"),
    "W/K": ("W/K", "Btu_it/hour/delta_degF", "W/K"),
    "W/m2/K": ("W/m**2/K", "Btu_it/hour/foot**2/delta_degF", "W/m**2/K"),
    "W_heat": ("W", "Btu_it/hour", "W"),
    "J_heat": ("J", "1e6*Btu_it", "GJ"),
    "K day": ("K", "delta_degF", "K"),
    "leak": ("m/s", "foot**3/minute/(100*foot**2)", "liter/second/(100*m**2)"),
    "Pa_film": ("Pa", "psi", "MPa"),
    "1/K": ("1/K", "1e-6/delta_degF", "1e-6/K"),
}


@pytest.mark.parametrize("code", BY_PINT)
def test_shown_units_agree_with_a_general_unit_library(code: str) -> None:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    own, imperial, metric = BY_PINT[code]
    for shown, words in ((CODES[code].imperial, imperial), (CODES[code].metric, metric)):
        expected = registry.parse_expression(words)
        assert shown.size == pytest.approx((1.0 * expected).to(own).magnitude, rel=1e-9)


def test_only_temperatures_start_elsewhere_than_at_zero() -> None:
    moved = {name for name, code in CODES.items() if code.imperial.zero or code.metric.zero}
    assert moved == {"K"}
