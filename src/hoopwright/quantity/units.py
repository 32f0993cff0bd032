"""Every quantity of the model as people see it: with a unit of their system, to a sensible digit.

The model computes in SI. A unit code such as "N m" says what a number of the model is; the
table here says how each code is shown in either system. Lengths have their own reader and
writer. Other typed quantities are a number and a unit token: tokens of the trade are looked up
first, all others are resolved by pint, which is loaded only then and never sees more than the
token.

Codes that need a word: "m_thin" is a thickness or diameter in metres, "m_film" a film thickness
in metres, "m3/s" is shown as m³/h in the metric system, "year" is a span of years and "share" a
fraction shown in percent.

Source:
    The size of each unit: `hoopwright.quantity.factors`. Digits shown: common practice, no
    published source.
"""

import math
import re
from decimal import ROUND_HALF_UP, Context, Decimal
from functools import cache, lru_cache
from typing import Any

from hoopwright.quantity.codes import CODES, Code, Shown
from hoopwright.quantity.factors import (
    CFM_M3_S,
    CUBIC_FOOT_M3,
    DEGREE_RAD,
    FOOT_LBF_J,
    FOOT_M,
    G_M_S2,
    HOUR_S,
    INCH_LBF_NM,
    INCH_M,
    INCH_WATER_PA,
    LBF_FOOT_N_M,
    LBF_N,
    MICRON_M,
    MIL_M,
    MILLIMETRE_M,
    MINUTE_S,
    MPH_M_S,
    OUNCE_KG,
    POUND_CUBIC_FOOT_KG_M3,
    POUND_FOOT_KG_M,
    POUND_KG,
    POUND_SQUARE_FOOT_KG_M2,
    PSF_PA,
    PSI_PA,
    SQUARE_FOOT_M2,
    YARD_M,
    YEAR_S,
    Units,
)
from hoopwright.quantity.lengths import (
    LengthReading,
    format_length,
    length_in_metres,
    read_length,
    read_signed_length,
)
from hoopwright.quantity.tokens import SI_OF, Token, find_token
from hoopwright.quantity.typed import OVER, ReadError, plain_text, read_mixed

__all__ = [
    "CFM_M3_S",
    "CUBIC_FOOT_M3",
    "DEGREE_RAD",
    "FOOT_LBF_J",
    "FOOT_M",
    "G_M_S2",
    "HOUR_S",
    "INCH_LBF_NM",
    "INCH_M",
    "INCH_WATER_PA",
    "LBF_FOOT_N_M",
    "LBF_N",
    "MICRON_M",
    "MILLIMETRE_M",
    "MIL_M",
    "MINUTE_S",
    "MPH_M_S",
    "OUNCE_KG",
    "POUND_CUBIC_FOOT_KG_M3",
    "POUND_FOOT_KG_M",
    "POUND_KG",
    "POUND_SQUARE_FOOT_KG_M2",
    "PSF_PA",
    "PSI_PA",
    "SQUARE_FOOT_M2",
    "YARD_M",
    "YEAR_S",
    "LengthReading",
    "ReadError",
    "Units",
    "format_length",
    "from_display",
    "read_length",
    "read_number",
    "read_signed_length",
    "show",
    "to_display",
    "unit_label",
]

LARGEST = 1_000_000_000


_CLOSE_LABELS = ("%", "\u00b0")
_WORDLESS = ("money", "text")
_NUMBER = re.compile(
    rf"(?P<sign>[-+]?)(?:(?P<only>{OVER})"
    rf"|(?P<number>\d{{1,3}}(?: \d{{3}})+(?![\d.,/])|[\d.,]+)(?:[ -](?P<over>{OVER}))?)"
    r" ?(?P<token>[^\d.,/].*)?",
    re.ASCII,
)
_FOREIGN = re.compile(
    r"[A-Za-z\u00b5]{1,16}(?:\^[234])?(?:[*/][A-Za-z\u00b5]{1,16}(?:\^[234])?){0,3}"
)
_PINT_SIGNS = str.maketrans({"\u00b2": "^2", "\u00b3": "^3", "\u00b7": "*", "\u22c5": "*"})


def unit_label(unit: str, units: Units) -> str:
    """Return the unit a code is shown in, as printed in a heading; empty for pure numbers.

    Raises:
        ValueError: There is no such unit code.
    """
    return "" if unit in _WORDLESS else _shown(unit, units).label


def to_display(value: float, unit: str, units: Units) -> float:
    """Return a number of the model in the unit it is shown in.

    Args:
        value: The number, in the unit of the code.
        unit: Unit code.
        units: The system to show it in.

    Raises:
        ValueError: There is no such unit code.

    Source:
        `hoopwright.quantity.factors`.
    """
    shown = _shown(unit, units)
    return (value - shown.zero) / shown.size


def from_display(number: float, unit: str, units: Units) -> float:
    """Return a shown number in the unit of the model's code; the reverse of `to_display`.

    Args:
        number: The number, in the unit that `unit_label` names.
        unit: Unit code.
        units: The system it was shown in.

    Raises:
        ValueError: There is no such unit code.

    Source:
        `hoopwright.quantity.factors`.
    """
    shown = _shown(unit, units)
    return number * shown.size + shown.zero


def show(value: float | int | str | Decimal, unit: str, units: Units) -> str:
    """Return a value with its unit for people: rounded half up, thousands set off by a comma.

    Args:
        value: A number in the unit of the code, an amount of money, or a text.
        unit: Unit code.
        units: The system to show it in.

    Raises:
        ValueError: There is no such unit code, the number is not finite, or it is no number.

    Source:
        Common practice, no published source.
    """
    return str(value) if unit == "text" else _number_text(value, unit, units)


@lru_cache(maxsize=4096, typed=True)
def _number_text(value: float | str | Decimal, unit: str, units: Units) -> str:
    """Return a number with its unit; a page names the same sizes again and again."""
    if isinstance(value, str | bool) or not math.isfinite(value):
        raise ValueError(f"a value with the unit {unit!r} must be a finite number, not {value!r}")
    if unit == "money":
        return _rounded_text(value, 2)
    if unit == "m":
        return format_length(float(value), units)
    shown = _shown(unit, units)
    text = _rounded_text(to_display(float(value), unit, units), shown.digits)
    if CODES[unit].trimmed and "." in text:
        text = text.rstrip("0").rstrip(".")
    if not shown.label:
        return text
    return f"{text}{shown.label}" if shown.label in _CLOSE_LABELS else f"{text} {shown.label}"


def _rounded_text(number: float | Decimal, digits: int) -> str:
    exact = number if isinstance(number, Decimal) else Decimal(repr(number))
    step = Decimal(1).scaleb(-digits)
    rounded = exact.quantize(step, ROUND_HALF_UP, Context(prec=400))
    return f"{rounded if rounded else abs(rounded):,f}"


def _code(unit: str) -> Code:
    if unit not in CODES:
        raise ValueError(f"{unit!r} is no unit code; known are {', '.join((*CODES, *_WORDLESS))}")
    return CODES[unit]


def _shown(unit: str, units: Units) -> Shown:
    code = _code(unit)
    return code.imperial if units == "imperial" else code.metric


def read_number(text: str, unit: str, units: Units) -> float:
    """Return a typed quantity in the unit of the model's code.

    A number without a unit is in the unit that `unit_label` names. Units of both systems are
    taken.

    Args:
        text: What was typed.
        unit: Unit code; amounts of money have a reader of their own.
        units: The system of the field.

    Raises:
        ReadError: It is no number, can be read in two ways, or measures something else.
        ValueError: There is no such unit code.

    Source:
        `hoopwright.quantity.factors`, and for rare units the unit library pint.
    """
    code = _code(unit)
    label = unit_label(unit, units)
    if code.measures == "length":
        return length_in_metres(text, label) if unit != "m" else read_length(text, units).value_m
    plain = plain_text(text)
    found = _NUMBER.fullmatch(plain)
    if not found:
        raise ReadError(f"\u201c{plain}\u201d is not a number with a unit. {_forms(code, label)}")
    number = (found["number"] or "").replace(" ", "")
    groups = units == "imperial" or unit == "count"
    amount = read_mixed(number, found["only"] or found["over"], comma_groups=groups)
    if amount > LARGEST:
        raise ReadError(f"\u201c{plain}\u201d is more than {LARGEST:,}. Check the number.")
    if unit == "count" and amount.denominator != 1:
        raise ReadError(f"\u201c{plain}\u201d must be a whole number. Write it like 12.")
    signed = float(-amount if found["sign"] == "-" else amount)
    typed = (found["token"] or "").strip()
    if not typed:
        return from_display(signed, unit, units)
    if code.measures == "temperature":
        return _temperature(signed, typed, code, label)
    return signed * _token_size(typed, code, label) / code.size


def _token_size(typed: str, code: Code, label: str) -> float:
    """Return one of a typed unit in the SI unit of what the field measures."""
    token = find_token(typed, code.measures) or _foreign_token(typed)
    if token is None:
        raise ReadError(f"\u201c{typed}\u201d is not a unit known here. {_forms(code, label)}")
    if token.measures != code.measures:
        field = _with_article(code.measures)
        if not token.measures:
            raise ReadError(f"{typed} does not measure {field}. {_forms(code, label)}")
        raise ReadError(
            f"{typed} is {_with_article(token.measures)}, this field is {field}. "
            f"{_forms(code, label)}"
        )
    return token.size


def _temperature(number: float, typed: str, code: Code, label: str) -> float:
    """Return a typed temperature, K; a degree alone does not say of which scale."""
    letters = typed.replace("\u00b0", "").replace("deg", "").strip().upper()
    for shown in (code.imperial, code.metric, Shown("K", 1, 1)):
        if letters == shown.label[-1]:
            return number * shown.size + shown.zero
    raise ReadError(f"\u201c{typed}\u201d is not a temperature scale. {_forms(code, label)}")


def _forms(code: Code, label: str) -> str:
    if not label:
        return "Write a number alone, like 12."
    if code.imperial.label == code.metric.label:
        return f"Write a number like 12.5, or 12.5 {label}."
    return (
        f"Write a number alone for {label}, or with a unit such as "
        f"{code.imperial.label} or {code.metric.label}."
    )


def _with_article(words: str) -> str:
    if words == "turns":
        return "a number of turns"
    return f"an {words}" if words[0] in "aeiou" else f"a {words}"


def _foreign_token(typed: str) -> Token | None:
    """Return what a rare unit means, from pint, or nothing when pint cannot scale by it."""
    plain = typed.translate(_PINT_SIGNS)
    if not _FOREIGN.fullmatch(plain):
        return None
    import pint

    registry, words = _rare_units()
    try:
        unit = registry.parse_units(plain)
        one, two = (registry.Quantity(number, unit).to_base_units() for number in (1.0, 2.0))
    except (pint.PintError, ValueError, TypeError, AttributeError, ArithmeticError):
        return None
    if not math.isclose(two.magnitude, 2 * one.magnitude):
        return None
    return Token(words.get(one.dimensionality, ""), float(one.magnitude))


@cache
def _rare_units() -> tuple[Any, dict[Any, str]]:
    """Return pint's units and, for each dimension the model knows, its word."""
    import pint

    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    return registry, {registry.get_dimensionality(si): word for word, si in SI_OF.items()}
