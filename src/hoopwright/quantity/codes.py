"""How each unit code of the model is shown in either system: label, size, digits, zero.

Source:
    The size of each unit: `hoopwright.quantity.factors`. Digits shown: common practice, no
    published source.
"""

from msgspec import Struct

from hoopwright.quantity.factors import (
    BTU_H_W,
    BTU_J,
    CFM_M3_S,
    CUBIC_FOOT_M3,
    DEGREE_RAD,
    FAHRENHEIT_K,
    FOOT_LBF_J,
    FOOT_M,
    GALLON_M3,
    HOUR_S,
    INCH_LBF_NM,
    INCH_M,
    INCH_WATER_PA,
    LBF_FOOT_N_M,
    LBF_N,
    LITRE_M3,
    MICRON_M,
    MIL_M,
    MILLIMETRE_M,
    MINUTE_S,
    MPH_M_S,
    POUND_CUBIC_FOOT_KG_M3,
    POUND_FOOT_KG_M,
    POUND_KG,
    POUND_SQUARE_FOOT_KG_M2,
    PSI_PA,
    SQUARE_FOOT_M2,
    YEAR_S,
    ZERO_CELSIUS_K,
    ZERO_FAHRENHEIT_K,
)
from hoopwright.quantity.tokens import ENERGY, FORCE_PER_LENGTH, PER_AREA, PER_LENGTH


class Shown(Struct, frozen=True):
    """How a quantity is shown in one system.

    Attributes:
        label: The unit as printed, empty for a pure number.
        size: One shown unit in the unit of the code.
        digits: Decimals shown.
        zero: What its zero is in the unit of the code.
    """

    label: str
    size: float
    digits: int
    zero: float = 0.0


class Code(Struct, frozen=True):
    """A unit code of the model.

    Attributes:
        measures: What it measures, in words.
        size: One of the code's unit in the SI unit of what it measures.
        imperial: How it is shown in the imperial system.
        metric: How it is shown in the metric system.
        trimmed: Whether zeros at the end of the decimals are left away.
    """

    measures: str
    size: float
    imperial: Shown
    metric: Shown
    trimmed: bool = False


def _alike(measures: str, label: str, digits: int, *, size: float = 1.0) -> Code:
    shown = Shown(label, 1.0, digits)
    return Code(measures, size, shown, shown, trimmed=True)


CODES: dict[str, Code] = {
    "m": Code("length", 1, Shown("ft", FOOT_M, 2), Shown("m", 1, 3)),
    "m_thin": Code("length", 1, Shown("in", INCH_M, 3), Shown("mm", MILLIMETRE_M, 1)),
    "m_film": Code("length", 1, Shown("mil", MIL_M, 1), Shown("\u00b5m", MICRON_M, 0)),
    "m2": Code("area", 1, Shown("ft\u00b2", SQUARE_FOOT_M2, 0), Shown("m\u00b2", 1, 1)),
    "m2_thin": Code(
        "area", 1, Shown("in\u00b2", INCH_M**2, 4), Shown("mm\u00b2", MILLIMETRE_M**2, 0)
    ),
    "m4": Code(
        "second moment of area", 1, Shown("in\u2074", INCH_M**4, 4), Shown("cm\u2074", 1e-8, 3)
    ),
    "m3": Code("volume", 1, Shown("ft\u00b3", CUBIC_FOOT_M3, 0), Shown("m\u00b3", 1, 1)),
    "m3_water": Code("volume", 1, Shown("gal", GALLON_M3, 0), Shown("L", LITRE_M3, 0)),
    "kg": Code("mass", 1, Shown("lb", POUND_KG, 1), Shown("kg", 1, 1)),
    "kg/m": Code(PER_LENGTH, 1, Shown("lb/ft", POUND_FOOT_KG_M, 3), Shown("kg/m", 1, 3)),
    "kg/m2": Code(
        PER_AREA, 1, Shown("lb/ft\u00b2", POUND_SQUARE_FOOT_KG_M2, 4), Shown("kg/m\u00b2", 1, 3)
    ),
    "kg/m3": Code(
        "density", 1, Shown("lb/ft\u00b3", POUND_CUBIC_FOOT_KG_M3, 1), Shown("kg/m\u00b3", 1, 0)
    ),
    "N": Code("force", 1, Shown("lbf", LBF_N, 1), Shown("N", 1, 0)),
    "N/m": Code(FORCE_PER_LENGTH, 1, Shown("lbf/ft", LBF_FOOT_N_M, 2), Shown("N/m", 1, 1)),
    "N m": Code(ENERGY, 1, Shown("lbf\u00b7in", INCH_LBF_NM, 0), Shown("N\u00b7m", 1, 1)),
    "Pa": Code("pressure", 1, Shown("in w.c.", INCH_WATER_PA, 3), Shown("Pa", 1, 1)),
    "J": Code(ENERGY, 1, Shown("ft\u00b7lbf", FOOT_LBF_J, 0), Shown("J", 1, 0)),
    "m/s": Code("speed", 1, Shown("mph", MPH_M_S, 1), Shown("m/s", 1, 1)),
    "m/min": Code("speed", 1 / MINUTE_S, Shown("ft/min", FOOT_M, 1), Shown("m/min", 1, 2)),
    "m/s_rain": Code(
        "speed", 1, Shown("in/h", INCH_M / HOUR_S, 2), Shown("mm/h", MILLIMETRE_M / HOUR_S, 0)
    ),
    "m3/s_water": Code(
        "flow", 1, Shown("gal/min", GALLON_M3 / MINUTE_S, 1), Shown("L/s", LITRE_M3, 2)
    ),
    "m3/s": Code("flow", 1, Shown("cfm", CFM_M3_S, 0), Shown("m\u00b3/h", 1 / HOUR_S, 0)),
    "rad": Code(
        "angle", 1, Shown("\u00b0", DEGREE_RAD, 1), Shown("\u00b0", DEGREE_RAD, 1), trimmed=True
    ),
    "K": Code(
        "temperature",
        1,
        Shown("\u00b0F", FAHRENHEIT_K, 0, ZERO_FAHRENHEIT_K),
        Shown("\u00b0C", 1, 1, ZERO_CELSIUS_K),
    ),
    "m3/s/m2": Code(
        "air flow per floor",
        1,
        Shown("cfm/ft\u00b2", CFM_M3_S / SQUARE_FOOT_M2, 1),
        Shown("m\u00b3/h per m\u00b2", 1 / HOUR_S, 0),
    ),
    "kg m2": Code(
        "inertia",
        1,
        Shown("lb\u00b7ft\u00b2", POUND_KG * FOOT_M**2, 3),
        Shown("kg\u00b7m\u00b2", 1, 4),
    ),
    "dK": Code(
        "temperature difference", 1, Shown("\u00b0F apart", FAHRENHEIT_K, 0), Shown("K apart", 1, 1)
    ),
    "W/K": Code(
        "heat loss",
        1,
        Shown("Btu/h\u00b7\u00b0F", BTU_H_W / FAHRENHEIT_K, 0),
        Shown("W/K", 1, 0),
    ),
    "W/m2/K": Code(
        "heat transmission",
        1,
        Shown("Btu/h\u00b7ft\u00b2\u00b7\u00b0F", BTU_H_W / SQUARE_FOOT_M2 / FAHRENHEIT_K, 2),
        Shown("W/m\u00b2K", 1, 2),
    ),
    "W/m2": _alike("power on an area", "W/m\u00b2", 2),
    "W_heat": Code("power", 1, Shown("Btu/h", BTU_H_W, 0), Shown("W", 1, 0)),
    "J_heat": Code(ENERGY, 1, Shown("MMBtu", 1e6 * BTU_J, 1), Shown("GJ", 1e9, 1)),
    "kWh": Code(ENERGY, 3.6e6, Shown("kWh", 1, 0), Shown("kWh", 1, 0)),
    "K day": Code(
        "degree-days",
        1,
        Shown("\u00b0F\u00b7day", FAHRENHEIT_K, 0),
        Shown("K\u00b7day", 1, 0),
    ),
    "leak": Code(
        "leak of film",
        1,
        Shown("cfm per 100 ft\u00b2 at 1 Pa", CFM_M3_S / (100 * SQUARE_FOOT_M2), 3),
        Shown("l/s per 100 m\u00b2 at 1 Pa", 1e-5, 3),
    ),
    "Pa_film": Code("pressure", 1, Shown("psi", PSI_PA, 0), Shown("MPa", 1e6, 2)),
    "1/K": Code(
        "expansion",
        1,
        Shown("\u00d710\u207b\u2076/\u00b0F", 1e-6 / FAHRENHEIT_K, 0),
        Shown("\u00d710\u207b\u2076/K", 1e-6, 0),
    ),
    "1/min": _alike("turns in a minute", "turns/min", 1, size=1 / MINUTE_S),
    "1/h": _alike("changes in an hour", "changes/h", 1, size=1 / HOUR_S),
    "deg": _alike("angle", "\u00b0", 1, size=DEGREE_RAD),
    "s": _alike("time", "s", 1),
    "min": _alike("time", "min", 1, size=MINUTE_S),
    "h": _alike("time", "h", 1, size=HOUR_S),
    "year": _alike("time", "yr", 1, size=YEAR_S),
    "W": _alike("power", "W", 0),
    "share": Code("share", 1, Shown("%", 0.01, 2), Shown("%", 0.01, 2), trimmed=True),
    "count": _alike("count", "", 0),
    "turns": _alike("turns", "turns", 1),
    "ratio": _alike("ratio", "", 3),
}
