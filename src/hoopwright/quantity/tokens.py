"""Unit tokens that people of the trade type after a number, and what each one measures.

A general unit library reads several of these as something else (`cfm` as a hundredth of a
fermi, `mil` as an angle, `in` of water at another temperature), so they are settled here.

Source:
    The size of each unit: `hoopwright.quantity.factors`. Spellings: common practice, no
    published source.
"""

import re

from msgspec import Struct

from hoopwright.quantity import factors

ENERGY = "torque or energy"
PER_LENGTH = "mass per length"
PER_AREA = "mass per area"
FORCE_PER_LENGTH = "force per length"

SI_OF: dict[str, str] = {
    "length": "m",
    "area": "m**2",
    "volume": "m**3",
    "mass": "kg",
    PER_LENGTH: "kg/m",
    PER_AREA: "kg/m**2",
    "density": "kg/m**3",
    "force": "N",
    FORCE_PER_LENGTH: "N/m",
    ENERGY: "N*m",
    "pressure": "Pa",
    "speed": "m/s",
    "flow": "m**3/s",
    "time": "s",
    "power": "W",
    "temperature": "K",
}


class Token(Struct, frozen=True):
    """What a unit token means.

    Attributes:
        measures: What it measures, in words: "force", "mass per length".
        size: One of it in the SI unit of what it measures; of a pure number, one.
    """

    measures: str
    size: float


_SPELLED: tuple[tuple[str, float, str], ...] = (
    ("length", 1.0, "m metre metres meter meters"),
    ("length", 0.01, "cm"),
    ("length", factors.MILLIMETRE_M, "mm"),
    ("length", factors.MICRON_M, "um micron microns"),
    ("length", factors.MIL_M, "mil mils thou"),
    ("length", factors.INCH_M, "in inch inches"),
    ("length", factors.FOOT_M, "ft foot feet"),
    ("length", factors.YARD_M, "yd yard yards"),
    ("area", 1.0, "m2 sqm"),
    ("area", factors.SQUARE_FOOT_M2, "ft2 sqft squarefeet"),
    ("volume", 1.0, "m3 cum"),
    ("volume", 1e-3, "l L litre litres liter liters"),
    ("volume", factors.CUBIC_FOOT_M3, "ft3 cuft cubicfeet"),
    ("volume", factors.GALLON_M3, "gal gallon gallons"),
    ("mass", 1.0, "kg kgs"),
    ("mass", 1e-3, "g"),
    ("mass", factors.POUND_KG, "lb lbs pound pounds"),
    ("mass", factors.OUNCE_KG, "oz ounce ounces"),
    (PER_LENGTH, 1.0, "kg/m"),
    (PER_LENGTH, factors.POUND_FOOT_KG_M, "lb/ft lbs/ft"),
    (PER_AREA, 1.0, "kg/m2"),
    (PER_AREA, 1e-3, "g/m2 gsm"),
    (PER_AREA, factors.POUND_SQUARE_FOOT_KG_M2, "lb/ft2 lbs/ft2 lb/sqft"),
    (PER_AREA, factors.OUNCE_KG / factors.YARD_M**2, "oz/yd2 oz/sqyd"),
    ("density", 1.0, "kg/m3"),
    ("density", 1000.0, "g/cm3 g/cc"),
    ("density", factors.POUND_CUBIC_FOOT_KG_M3, "lb/ft3 lb/cuft pcf"),
    ("force", 1.0, "N newton newtons"),
    ("force", 1000.0, "kN"),
    ("force", factors.LBF_N, "lbf"),
    ("force", factors.G_M_S2, "kgf"),
    (FORCE_PER_LENGTH, 1.0, "N/m"),
    (FORCE_PER_LENGTH, 1000.0, "kN/m"),
    (FORCE_PER_LENGTH, factors.LBF_FOOT_N_M, "lbf/ft plf"),
    (ENERGY, 1.0, "Nm J joule joules"),
    (ENERGY, factors.INCH_LBF_NM, "lbfin inlbf lbin inlb inlbs"),
    (ENERGY, factors.FOOT_LBF_J, "lbfft ftlbf lbft ftlb ftlbs"),
    ("pressure", 1.0, "Pa N/m2"),
    ("pressure", 1000.0, "kPa"),
    ("pressure", factors.INCH_WATER_PA, "inwc inwg inh2o inchofwater inchesofwater"),
    ("pressure", factors.PSF_PA, "psf lbf/ft2"),
    ("pressure", factors.PSI_PA, "psi lbf/in2"),
    ("speed", 1.0, "m/s"),
    ("speed", 1 / factors.MINUTE_S, "m/min"),
    ("speed", 1000 / factors.HOUR_S, "km/h kmh kph"),
    ("speed", factors.MPH_M_S, "mph mi/h"),
    ("speed", factors.FOOT_M / factors.MINUTE_S, "ft/min fpm"),
    ("speed", factors.MILLIMETRE_M / factors.HOUR_S, "mm/h"),
    ("speed", factors.INCH_M / factors.HOUR_S, "in/h"),
    ("flow", 1.0, "m3/s"),
    ("flow", 1 / factors.HOUR_S, "m3/h"),
    ("flow", 1e-3, "l/s L/s"),
    ("flow", factors.CFM_M3_S, "cfm ft3/min"),
    ("flow", factors.GALLON_M3 / factors.MINUTE_S, "gal/min gpm"),
    ("angle", 1.0, "rad radian radians"),
    ("angle", factors.DEGREE_RAD, "\u00b0 deg degree degrees"),
    ("time", 1.0, "s sec second seconds"),
    ("time", factors.MINUTE_S, "min mins minute minutes"),
    ("time", factors.HOUR_S, "h hr hrs hour hours"),
    ("time", 24 * factors.HOUR_S, "d day days"),
    ("time", factors.YEAR_S, "yr yrs year years"),
    ("power", 1.0, "W watt watts"),
    ("power", 1000.0, "kW"),
    ("share", 0.01, "% percent"),
    ("turns", 1.0, "turn turns"),
    ("turns in a minute", 1 / factors.MINUTE_S, "turns/min turn/min rpm 1/min"),
    ("changes in an hour", 1 / factors.HOUR_S, "changes/h change/h 1/h"),
    ("inertia", 1.0, "kgm2"),
    ("inertia", factors.POUND_KG * factors.FOOT_M**2, "lbft2"),
    ("temperature difference", 1.0, "K Kapart"),
    ("temperature difference", factors.FAHRENHEIT_K, "\u00b0F \u00b0Fapart F"),
    ("heat loss", 1.0, "W/K"),
    ("heat loss", factors.BTU_H_W / factors.FAHRENHEIT_K, "Btu/h\u00b0F btu/hf"),
    ("heat transmission", 1.0, "W/m2K"),
    (
        "heat transmission",
        factors.BTU_H_W / factors.SQUARE_FOOT_M2 / factors.FAHRENHEIT_K,
        "Btu/hft2\u00b0F btu/hft2f",
    ),
    ("power on an area", 1.0, "W/m2"),
    ("power", factors.BTU_H_W, "Btu/h btu/h btuh"),
    (ENERGY, 1e9, "GJ"),
    (ENERGY, 3.6e6, "kWh kwh"),
    (ENERGY, factors.BTU_J, "Btu btu"),
    (ENERGY, 1e6 * factors.BTU_J, "MMBtu mmbtu"),
    ("degree-days", 1.0, "Kday"),
    ("degree-days", factors.FAHRENHEIT_K, "\u00b0Fday fday"),
    ("leak of film", 1e-5, "l/sper100m2at1Pa"),
    (
        "leak of film",
        factors.CFM_M3_S / (100 * factors.SQUARE_FOOT_M2),
        "cfmper100ft2at1Pa",
    ),
    ("pressure", 1e6, "MPa"),
    ("expansion", 1e-6, "\u00d710\u207b\u2076/K"),
    ("expansion", 1e-6 / factors.FAHRENHEIT_K, "\u00d710\u207b\u2076/\u00b0F"),
    ("second moment of area", 1.0, "m4"),
    ("second moment of area", 1e-8, "cm4 cm\u2074"),
    ("second moment of area", factors.INCH_M**4, "in4 in\u2074"),
    ("area", factors.INCH_M**2, "in2 sqin"),
    ("area", factors.MILLIMETRE_M**2, "mm2"),
    ("air flow per floor", 1 / factors.HOUR_S, "m3/hperm2 m3/h/m2"),
    ("air flow per floor", factors.CFM_M3_S / factors.SQUARE_FOOT_M2, "cfm/ft2 cfm/sqft"),
)
_TOKENS = {
    spelling: Token(measures, size)
    for measures, size, spellings in _SPELLED
    for spelling in spellings.split()
}
_POUNDS_OF_FORCE = {
    ("force", "mass"): factors.G_M_S2,
    (FORCE_PER_LENGTH, PER_LENGTH): factors.G_M_S2,
    ("pressure", PER_AREA): factors.G_M_S2,
}
_SAME_SIGN = str.maketrans({"\u00b2": "2", "\u00b3": "3", **dict.fromkeys("^*-. \u00b7\u22c5", "")})
_NEEDS_CASE = re.compile(r"[A-Z]{1,2}|[a-z]?[A-Z]")


def find_token(typed: str, wanted: str) -> Token | None:
    """Return what a unit token of the trade means, or nothing when it is not one of them.

    Pounds in a field of force are pounds-force, as everyone at a crank says it; kilograms are
    not taken for a force.

    Args:
        typed: The token as plain text.
        wanted: What the field measures.

    Source:
        Pounds for pounds-force: common practice, no published source.
    """
    plain = typed.translate(_SAME_SIGN)
    token = _TOKENS.get(plain)
    if token is None and not _NEEDS_CASE.fullmatch(plain):
        token = _TOKENS.get(plain.lower())
    if token and plain.lower().startswith(("lb", "pound")):
        gravity = _POUNDS_OF_FORCE.get((wanted, token.measures))
        if gravity:
            return Token(wanted, token.size * gravity)
    return token
