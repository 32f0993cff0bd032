import math
import subprocess
import sys
from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from hoopwright.quantity.units import (
    ReadError,
    from_display,
    read_number,
    show,
    to_display,
    unit_label,
)

SYSTEMS = ["imperial", "metric"]
CODES = [
    "m",
    "m_thin",
    "m_film",
    "m2",
    "m3",
    "kg",
    "kg/m",
    "kg/m2",
    "kg/m3",
    "N",
    "N/m",
    "N m",
    "Pa",
    "J",
    "m/s",
    "m/min",
    "m3/s",
    "rad",
    "deg",
    "min",
    "h",
    "year",
    "W",
    "share",
    "count",
    "turns",
    "ratio",
    "1/min",
    "1/h",
    "kg m2",
    "m3/s/m2",
    "m2_thin",
    "m4",
    "dK",
    "W/K",
    "W/m2/K",
    "W_heat",
    "W/m2",
    "J_heat",
    "kWh",
    "K day",
    "leak",
    "Pa_film",
    "1/K",
]

# Worked by hand with the factors of NIST Special Publication 811, appendix B (read in a copy):
# the metric value is given, the imperial one is it divided by the printed factor.
SHOWN = [
    # Btu (IT) 1055.056 J; 1 Btu/(h ft2 F) = 5.678263 W/(m2 K); 1 psi = 6894.757 Pa (NIST SP 811).
    (100 / 3, "dK", "60 \u00b0F apart", "33.3 K apart"),
    (52.7528, "W/K", "100 Btu/h\u00b7\u00b0F", "53 W/K"),
    (6.813916, "W/m2/K", "1.20 Btu/h\u00b7ft\u00b2\u00b7\u00b0F", "6.81 W/m\u00b2K"),
    (29307.1, "W_heat", "100,000 Btu/h", "29,307 W"),
    (1.055056e9, "J_heat", "1.0 MMBtu", "1.1 GJ"),
    (525.6, "kWh", "526 kWh", "526 kWh"),
    (1500, "K day", "2,700 \u00b0F\u00b7day", "1,500 K\u00b7day"),
    (4e-6, "leak", "0.079 cfm per 100 ft\u00b2 at 1 Pa", "0.400 l/s per 100 m\u00b2 at 1 Pa"),
    (1e7, "Pa_film", "1,450 psi", "10.00 MPa"),
    (1.8e-4, "1/K", "100 \u00d710\u207b\u2076/\u00b0F", "180 \u00d710\u207b\u2076/K"),
    # 1.375 x 0.058 in tube, worked by hand: A 0.2400 in2, J 0.1043 in4; times 0.0254 to the power.
    (1.5484e-4, "m2_thin", "0.2400 in\u00b2", "155 mm\u00b2"),
    (4.3413e-8, "m4", "0.1043 in\u2074", "4.341 cm\u2074"),
    (298.15, "K", "77 \u00b0F", "25.0 \u00b0C"),
    (255.3722, "K", "0 \u00b0F", "-17.8 \u00b0C"),
    (0.013, "kg m2", "0.308 lb\u00b7ft\u00b2", "0.0130 kg\u00b7m\u00b2"),
    (0.04064, "m3/s/m2", "8.0 cfm/ft\u00b2", "146 m\u00b3/h per m\u00b2"),
    (28, "1/min", "28 turns/min", "28 turns/min"),
    (12.5, "1/h", "12.5 changes/h", "12.5 changes/h"),
    (9.144, "m", "30' 0\"", "9.144 m"),
    (0.042164, "m_thin", "1.660 in", "42.2 mm"),
    (1.524e-4, "m_film", "6.0 mil", "152 \u00b5m"),
    (288, "m2", "3,100 ft\u00b2", "288.0 m\u00b2"),
    (1000, "m3", "35,315 ft\u00b3", "1,000.0 m\u00b3"),
    (12.3, "kg", "27.1 lb", "12.3 kg"),
    (2.498, "kg/m", "1.679 lb/ft", "2.498 kg/m"),
    (0.14, "kg/m2", "0.0287 lb/ft\u00b2", "0.140 kg/m\u00b2"),
    (920, "kg/m3", "57.4 lb/ft\u00b3", "920 kg/m\u00b3"),
    (37, "N", "8.3 lbf", "37 N"),
    (66.5, "N/m", "4.56 lbf/ft", "66.5 N/m"),
    (3.4, "N m", "30 lbf\u00b7in", "3.4 N\u00b7m"),
    (60, "Pa", "0.241 in w.c.", "60.0 Pa"),
    (123, "J", "91 ft\u00b7lbf", "123 J"),
    (35.7, "m/s", "79.9 mph", "35.7 m/s"),
    (3, "m/min", "9.8 ft/min", "3.00 m/min"),
    (0.0283168, "m3/s", "60 cfm", "102 m\u00b3/h"),
    (math.pi / 6, "rad", "30\u00b0", "30\u00b0"),
    (22.5, "deg", "22.5\u00b0", "22.5\u00b0"),
    (12.25, "min", "12.3 min", "12.3 min"),
    (1234.5, "h", "1,234.5 h", "1,234.5 h"),
    (4, "year", "4 yr", "4 yr"),
    (250, "W", "250 W", "250 W"),
    (0.0825, "share", "8.25%", "8.25%"),
    (0.15, "share", "15%", "15%"),
    (1200, "count", "1,200", "1,200"),
    (5.5, "turns", "5.5 turns", "5.5 turns"),
    (5.5, "ratio", "5.5", "5.5"),
    (100, "ratio", "100", "100"),
    (1234.5, "money", "1,234.50", "1,234.50"),
    (Decimal("0.125"), "money", "0.13", "0.13"),
    ("front", "text", "front", "front"),
]


@pytest.mark.parametrize(("value", "unit", "imperial", "metric"), SHOWN)
def test_a_value_is_shown_with_its_unit(value, unit, imperial, metric):
    assert show(value, unit, "imperial") == imperial
    assert show(value, unit, "metric") == metric


@pytest.mark.parametrize("unit", [code for code in CODES if code != "m"] + ["money"])
@pytest.mark.parametrize("units", SYSTEMS)
def test_minus_nothing_is_never_shown(unit, units):
    assert "-" not in show(-1e-12, unit, units)
    assert "-" not in show(-0.0, unit, units)


@pytest.mark.parametrize("unit", [*CODES, "money"])
@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf"), "12", True])
def test_what_is_no_finite_number_is_never_shown(value, unit):
    with pytest.raises(ValueError, match="finite"):
        show(value, unit, "imperial")


def test_equal_values_of_other_kinds_are_not_taken_for_each_other():
    assert [show(one, "count", "metric") for one in (1, 1.0, Decimal(1))] == ["1"] * 3
    with pytest.raises(ValueError, match="finite"):
        show(True, "count", "metric")
    texts = [show(Decimal(one), "text", "metric") for one in ("1.5", "1.50")]
    assert texts == ["1.5", "1.50"]


def test_an_unknown_code_is_a_fault_of_the_caller():
    for call in (show, to_display, from_display):
        with pytest.raises(ValueError, match="furlong"):
            call(1.0, "furlong", "imperial")
    with pytest.raises(ValueError, match="furlong"):
        unit_label("furlong", "metric")
    with pytest.raises(ValueError, match="money"):
        read_number("1", "money", "metric")


@pytest.mark.parametrize(
    ("unit", "imperial", "metric"),
    [
        ("m", "ft", "m"),
        ("m_thin", "in", "mm"),
        ("m2", "ft\u00b2", "m\u00b2"),
        ("N m", "lbf\u00b7in", "N\u00b7m"),
        ("share", "%", "%"),
        ("count", "", ""),
        ("money", "", ""),
        ("text", "", ""),
    ],
)
def test_headings_name_the_shown_unit(unit, imperial, metric):
    assert (unit_label(unit, "imperial"), unit_label(unit, "metric")) == (imperial, metric)


def test_lengths_are_converted_to_decimal_feet():
    # Worked by hand: 5 ft 6 in is 66 x 0.0254 m = 1.6764 m and 66/12 = 5.5 ft.
    assert to_display(1.6764, "m", "imperial") == pytest.approx(5.5, rel=1e-15)
    assert to_display(1.6764, "m", "metric") == 1.6764


@given(st.floats(-1e6, 1e6), st.sampled_from(CODES), st.sampled_from(SYSTEMS))
def test_display_and_model_are_a_pair(value, unit, units):
    there = to_display(value, unit, units)
    assert from_display(there, unit, units) == pytest.approx(value, rel=1e-14, abs=1e-300)


@given(
    st.integers(0, 999_999).map(lambda n: n / 1000),
    st.sampled_from(CODES),
    st.sampled_from(SYSTEMS),
)
def test_what_is_shown_can_be_typed_back(number, unit, units):
    value = from_display(number if unit != "count" else round(number), unit, units)
    shown = show(value, unit, units)
    # A comma may be a decimal mark in the metric system, and then the reader asks.
    assume("," not in shown or units == "imperial" or unit == "count")
    again = read_number(shown, unit, units)
    assert show(again, unit, units) == shown
    # Half of the coarsest step shown: one whole unit, and 1/8 in for lengths.
    assert to_display(again, unit, units) == pytest.approx(
        to_display(value, unit, units), abs=0.500_001
    )


@pytest.mark.parametrize(("text", "value"), [("1,234", 1234), ("1 234", 1234), ("1,234.5", 1234.5)])
def test_thousands_are_grouped_as_they_are_shown(text, value):
    assert read_number(text, "W", "imperial") == value


def test_a_comma_that_can_be_a_decimal_mark_is_asked_about():
    with pytest.raises(ReadError, match=r"1234 or 1\.234"):
        read_number("1,234 W", "W", "metric")
    assert read_number("1,234", "count", "metric") == 1234
    assert read_number("1,5 kg", "kg", "metric") == 1.5


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("1/2 h", "min", 30),
        ("1 1/2 h", "h", 1.5),
        ("90 min", "h", 1.5),
        ("45 s", "min", 0.75),
        ("8.5%", "share", 0.085),
        ("8.5", "share", 0.085),
        ("30\u00b0", "deg", 30),
        ("30 deg", "rad", math.pi / 6),
        ("3 turns", "turns", 3),
        ("-3 N", "N", -3),
        ("\u22123 N", "N", -3),
        ("+3 N", "N", 3),
        ("1 m\u00b3/h", "m3/s", 1 / 3600),
        ("1 ft/min", "m/min", 0.3048),
        ("5' 6\"", "m", 1.6764),
        ("0.065 in", "m_thin", 0.001651),
        ("6 mil", "m_film", 0.0001524),
        ("3 kip", "N", 13344.6648),
        ("1 bar", "Pa", 100000),
    ],
)
@pytest.mark.parametrize("units", SYSTEMS)
def test_units_of_both_systems_are_taken(text, unit, value, units):
    assert read_number(text, unit, units) == pytest.approx(value, rel=1e-8)


@pytest.mark.parametrize(
    ("text", "unit", "why"),
    [
        ("20 kg", "N", "kg is a mass, this field is a force"),
        ("20 N", "kg", "N is a force, this field is a mass"),
        ("20 ft", "m2", "ft is a length, this field is an area"),
        ("20 acre", "m3", "acre is an area, this field is a volume"),
        ("20 mil", "deg", "mil is a length, this field is an angle"),
        ("20 min", "m/min", "min is a time, this field is a speed"),
        ("5 M", "N", "M does not measure a force"),
        ("5 rad", "share", "rad is an angle, this field is a share"),
        ("5 %", "turns", "this field is a number of turns"),
        ("5 kg", "m", "not a unit of length"),
        ("5 dBm", "W", "not a unit known here"),
        ("5 qqq", "N", "not a unit known here"),
        ("1e5", "N", "not a unit known here"),
        ("9**9**9", "N", "not a unit known here"),
        ("5 m^9999", "m2", "not a unit known here"),
        ("5 __import__", "N", "not a unit known here"),
        ("nan", "N", "not a number with a unit"),
        ("", "N", "Nothing is written"),
        ("--5", "N", "not a number with a unit"),
        ("12.5", "count", "whole number"),
        ("2000000000", "N", "more than 1,000,000,000"),
    ],
)
@pytest.mark.parametrize("units", SYSTEMS)
def test_what_cannot_be_read_is_refused_with_words(text, unit, why, units):
    with pytest.raises(ReadError) as refused:
        read_number(text, unit, units)
    assert why in str(refused.value)
    assert str(refused.value).endswith((".", "?"))


def test_a_refusal_names_the_forms_of_the_field():
    with pytest.raises(ReadError, match="alone for lbf, or with a unit such as lbf or N"):
        read_number("hard", "N", "imperial")


@given(
    st.text(max_size=42)
    | st.text(alphabet="0123456789 .,-/^*%kgNmlbftinPa\u00b0\u00b2\u00b5", max_size=14),
    st.sampled_from(CODES),
    st.sampled_from(SYSTEMS),
)
def test_nonsense_is_read_or_refused_and_nothing_else(text, unit, units):
    try:
        value = read_number(text, unit, units)
    except ReadError:
        return
    assert math.isfinite(value)


def test_reading_and_showing_loads_no_heavy_library():
    # A fresh process, as nothing of this one can be unloaded.
    probe = (
        "import sys; from hoopwright.quantity import units, money\n"
        "units.read_number('50 in w.c.', 'Pa', 'metric'); units.show(1.0, 'N m', 'imperial')\n"
        "assert not {'pint', 'numpy', 'openpyxl', 'PySide6'} & set(sys.modules)\n"
    )
    subprocess.run([sys.executable, "-c", probe], check=True, timeout=60)


@pytest.mark.parametrize(
    ("text", "units", "kelvin"),
    # The Fahrenheit scale: 32 at 273.15 K and 9/5 a kelvin (NIST SP 811, appendix B.8).
    [
        ("77", "imperial", 298.15),
        ("25", "metric", 298.15),
        ("77 \u00b0F", "metric", 298.15),
        ("25 C", "imperial", 298.15),
        ("-40 F", "metric", 233.15),
        ("300 K", "imperial", 300.0),
    ],
)
def test_a_temperature_is_read_on_its_scale(text, units, kelvin):
    assert read_number(text, "K", units) == pytest.approx(kelvin, abs=1e-9)


def test_a_degree_alone_says_no_scale():
    with pytest.raises(ReadError, match=r"not a temperature scale.*such as \u00b0F or \u00b0C"):
        read_number("20\u00b0", "K", "metric")


@given(st.floats(200, 400), st.sampled_from(SYSTEMS))
def test_a_temperature_comes_back_from_the_display(kelvin, units):
    assert from_display(to_display(kelvin, "K", units), "K", units) == pytest.approx(kelvin)
