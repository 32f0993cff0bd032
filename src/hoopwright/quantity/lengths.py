"""Lengths as people write them on site: feet, inches and fractions, or metres.

Reading is exact: a length stays a fraction of whole numbers until the last step. What can be
read in two ways is refused with the two ways named; what can be read in one way but is often
meant in another (`5.6` in a field of feet) is read and marked doubtful. Showing rounds to a step
of an inch or to a millimetre and carries into the next foot.

Source:
    1 in = 0.0254 m exactly: NIST Special Publication 811, appendix B. The ways of writing are
    common practice, no published source.
"""

import math
import re
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from msgspec import Struct

from hoopwright.quantity.factors import Units
from hoopwright.quantity.typed import OVER, ReadError, plain_text, read_mixed

Rounding = Literal["near", "up", "down"]

LONGEST_M = 10_000
DOUBTFUL_ABOVE_M = 300
INCH = Fraction(254, 10_000)
STEP_TOLERANCE = Fraction(1, 1_000_000)

_METRES = {
    "mil": INCH / 1000,
    "in": INCH,
    "ft": 12 * INCH,
    "yd": 36 * INCH,
    "\u00b5m": Fraction(1, 1_000_000),
    "mm": Fraction(1, 1000),
    "cm": Fraction(1, 100),
    "m": Fraction(1),
}
_IMPERIAL = ("yd", "ft", "in", "mil")
_SPELLINGS = {
    **{name: name for name in _METRES},
    **dict.fromkeys(("'", "foot", "feet"), "ft"),
    **dict.fromkeys(('"', "inch", "inches"), "in"),
    **dict.fromkeys(("yard", "yards", "yds"), "yd"),
    **dict.fromkeys(("mils", "thou"), "mil"),
    **dict.fromkeys(("um", "micron", "microns"), "\u00b5m"),
    **dict.fromkeys(("meter", "meters", "metre", "metres"), "m"),
    **dict.fromkeys(("centimeter", "centimeters", "centimetre", "centimetres"), "cm"),
    **dict.fromkeys(("millimeter", "millimeters", "millimetre", "millimetres"), "mm"),
}
_DASHED = re.compile(rf'(\d{{1,5}})-([\d.,]+)(?:[- ]({OVER}))?"?', re.ASCII)
_PART = re.compile(
    rf"(?:(?P<only>{OVER})|(?P<number>[\d.,]+)(?:(?P<joint>[ -])(?P<over>{OVER}))?)"
    r" ?(?P<unit>['\"]|[A-Za-z\u00b5]+\.?)?",
    re.ASCII,
)
_UNIT_SIGN = re.compile(r"[A-Za-z\u00b5'\"]")
_FORMS = {
    "imperial": 'Write it like 5\' 6 1/2", 5-6-1/2, 66 1/2" or 1.68 m.',
    "metric": "Write it like 1.68 m, 168 cm, 1 m 68 cm or 5' 6 1/2\".",
}


class LengthReading(Struct, frozen=True):
    """A length as it was understood.

    Attributes:
        value_m: The length, m, zero or more.
        echo: How it was read, to be shown beside the field.
        doubtful: Whether people who write this often mean something else.
    """

    value_m: float
    echo: str
    doubtful: bool


class _Part(Struct, frozen=True):
    """One number with its unit, as `6 1/2` with `in`; the unit is empty when none was typed."""

    amount: Fraction
    whole: bool
    unit: str
    figure: str
    joint: str = ""


def read_length(text: str, units: Units) -> LengthReading:
    """Return the length somebody typed, and how it was understood.

    A number without a unit is in feet (imperial) or metres (metric). Every unit can be typed in
    either system.

    Args:
        text: What was typed.
        units: The system of the field.

    Raises:
        ReadError: It is no length, is negative, is too long, or can be read in two ways.

    Source:
        Common practice, no published source.
    """
    plain = _one_dash(text)
    forms = _FORMS[units]
    bare_unit = "ft" if units == "imperial" else "m"
    parts = _with_units(_read_parts(plain, forms), bare_unit, plain, forms)
    metres = _total_m(parts, plain)
    doubtful = not _UNIT_SIGN.search(plain) and _is_doubtful(parts, units, metres)
    return LengthReading(float(metres), _echo(parts, units, metres), doubtful)


def read_signed_length(text: str, units: Units) -> LengthReading:
    """Return a length that may lie below a line: a minus sign before it makes it negative.

    Args:
        text: What was typed.
        units: The system of the field.

    Raises:
        ReadError: What stands after the sign is no length, or can be read in two ways.

    Source:
        Common practice, no published source.
    """
    plain = _one_dash(text)
    if not plain.startswith("-"):
        return read_length(text, units)
    found = read_length(plain.removeprefix("-"), units)
    return LengthReading(-found.value_m, f"-{found.echo}", found.doubtful)


def length_in_metres(text: str, bare_unit: str) -> float:
    """Return a typed length, m, where a number without a unit is in the given unit.

    Args:
        text: What was typed.
        bare_unit: "in", "ft", "mil", "mm", "m" or "\u00b5m".

    Raises:
        ReadError: It is no length, is negative, is too long, or can be read in two ways.

    Source:
        Common practice, no published source.
    """
    plain = _one_dash(text)
    forms = f'Write it like 12.5 {bare_unit}, 1 5/8" or 42 mm.'
    parts = _with_units(_read_parts(plain, forms), bare_unit, plain, forms)
    return float(_total_m(parts, plain))


def format_length(
    value_m: float, units: Units, *, step: int = 8, rounding: Rounding = "near"
) -> str:
    """Return a length for people: feet and inches, or metres to the millimetre.

    Args:
        value_m: Length, m.
        units: The system to show it in.
        step: Smallest part of an inch shown, as its denominator; not used for metres.
        rounding: "up" for sizes to be cut, so that no piece gets short.

    Raises:
        ValueError: The length is not finite, or the step is not from 1 to 64.

    Source:
        Common practice, no published source.
    """
    if not math.isfinite(value_m):
        raise ValueError(f"a length must be a finite number of metres, not {value_m}")
    if not 1 <= step <= 64:
        raise ValueError(f"the step of an inch must be from 1/1 to 1/64, not 1/{step}")
    if units == "metric":
        millimetres = _rounded(Fraction(value_m) * 1000, rounding)
        sign = "-" if millimetres < 0 else ""
        return f"{sign}{abs(millimetres) // 1000:,}.{abs(millimetres) % 1000:03d} m"
    steps = _rounded(Fraction(value_m) / INCH * step, rounding)
    sign = "-" if steps < 0 else ""
    feet, rest = divmod(abs(steps), 12 * step)
    inches = _mixed(Fraction(rest, step), leading_zero=feet > 0)
    return f"{sign}{feet:,}' {inches}\"" if feet else f'{sign}{inches}"'


def _rounded(steps: Fraction, rounding: Rounding) -> int:
    """Return whole steps; a float's last digit must not push a length over a step."""
    if rounding == "up":
        return math.ceil(steps - STEP_TOLERANCE)
    if rounding == "down":
        return math.floor(steps + STEP_TOLERANCE)
    near = math.floor(abs(steps) + Fraction(1, 2) + STEP_TOLERANCE)
    return -near if steps < 0 else near


def _mixed(inches: Fraction, *, leading_zero: bool) -> str:
    whole, rest = divmod(inches, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole or leading_zero else str(rest)


def _one_dash(text: str) -> str:
    return re.sub(r" ?- ?", "-", plain_text(text))


def _read_parts(plain: str, forms: str) -> tuple[_Part, ...]:
    """Return the numbers with their units, in the order typed."""
    if plain.startswith("-"):
        raise ReadError(f"\u201c{plain}\u201d is less than zero; a length is zero or more. {forms}")
    dashed = _DASHED.fullmatch(plain)
    if dashed:
        feet, inches, over = dashed.groups()
        return (_part("ft", feet, None), _part("in", inches, over))
    parts: list[_Part] = []
    at = 0
    while at < len(plain):
        found = _PART.match(plain, at)
        if not found or len(parts) == 4:
            raise ReadError(f"\u201c{plain}\u201d is not a length. {forms}")
        at = found.end()
        follows = at < len(plain)
        unit = _unit_name(found["unit"] or "", plain, forms)
        over = found["only"] or found["over"]
        parts.append(_part(unit, found["number"], over, follows=follows, joint=found["joint"]))
        if follows and plain[at] in " -":
            at += 1
            if at == len(plain):
                raise ReadError(f"\u201c{plain}\u201d is not finished. {forms}")
    return tuple(parts)


def _unit_name(typed: str, plain: str, forms: str) -> str:
    if typed == "M":
        raise ReadError(
            f"\u201c{plain}\u201d: does M mean metres or mil? Write m for metres or mil."
        )
    name = typed.lower().rstrip(".")
    if name and name not in _SPELLINGS:
        raise ReadError(f"\u201c{typed}\u201d is not a unit of length. {forms}")
    return _SPELLINGS[name] if name else ""


def _part(
    unit: str,
    number: str | None,
    over: str | None,
    *,
    follows: bool = False,
    joint: str | None = None,
) -> _Part:
    """Return one part; a number that smaller units follow is whole, so a comma groups it."""
    amount = read_mixed(number, over, comma_groups=follows and bool(unit))
    if not over:
        return _Part(amount, amount.denominator == 1, unit, _decimal_text(amount))
    figure = f"{math.floor(amount)} {over}" if number else over
    return _Part(amount, False, unit, figure, joint or "")


def _decimal_text(number: Fraction) -> str:
    """Return a number that was typed with at most 12 decimals without needless zeros."""
    whole, rest = divmod(number, 1)
    return f"{whole}.{int(rest * 10**12):012d}".rstrip("0") if rest else str(whole)


def _with_units(
    parts: tuple[_Part, ...], bare_unit: str, plain: str, forms: str
) -> tuple[_Part, ...]:
    """Return the parts with the units left out filled in, or ask which were meant."""
    first, last = parts[0], parts[-1]
    if any(not part.unit for part in parts[:-1]):
        if len(parts) == 2 and first.whole:
            one, two = first.figure, last.figure
            raise ReadError(
                f"\u201c{one} {two}\u201d: is it {one} ft {two} in? Write {one}' {two}\" or "
                f"{one}-{two.replace(' ', '-')}, or one number with its unit."
            )
        raise ReadError(f"\u201c{plain}\u201d has a number without a unit. {forms}")
    if last.unit:
        return parts
    if len(parts) == 1:
        if last.joint == "-":
            raise ReadError(
                f"\u201c{plain}\u201d: feet or inches? Write {last.figure}\" or {last.figure}'."
            )
        return (_given(last, bare_unit),)
    if parts[-2].unit == "ft":
        return (*parts[:-1], _given(last, "in"))
    raise ReadError(
        f"\u201c{plain}\u201d: which unit has {last.figure}? Write it like 1 m 68 cm or 1.68 m."
    )


def _given(part: _Part, unit: str) -> _Part:
    return _Part(part.amount, part.whole, unit, part.figure)


def _total_m(parts: tuple[_Part, ...], plain: str) -> Fraction:
    """Return the sum of the parts, m, or say why they do not belong together."""
    for larger, smaller in pairwise(parts):
        if (larger.unit in _IMPERIAL) != (smaller.unit in _IMPERIAL):
            raise ReadError(
                f"\u201c{plain}\u201d mixes {larger.unit} and {smaller.unit}. Write it in "
                "feet and inches or in metres."
            )
        if not larger.whole:
            raise ReadError(
                f"\u201c{plain}\u201d: {larger.figure} {larger.unit} must be a whole number "
                f"when {smaller.unit} comes after it. Write only the last number with a fraction."
            )
        room, unit_m = _METRES[larger.unit], _METRES[smaller.unit]
        if unit_m >= room or smaller.amount * unit_m >= room:
            raise ReadError(
                f"\u201c{plain}\u201d: {smaller.figure} {smaller.unit} cannot follow "
                f"{larger.unit}, it is not less than one {larger.unit}. "
                "Write the larger unit first and less than one of it after."
            )
    metres = sum((part.amount * _METRES[part.unit] for part in parts), Fraction(0))
    if metres > LONGEST_M:
        raise ReadError(f"\u201c{plain}\u201d is longer than {LONGEST_M:,} m. Check the unit.")
    return metres


def _canonical(parts: tuple[_Part, ...]) -> str:
    """Return the parts in one way of writing: marks for feet with inches, else names."""
    words = []
    for part in parts:
        if part.unit == "in":
            words.append(f'{part.figure}"')
        elif part.unit == "ft" and len(parts) > 1:
            words.append(f"{int(part.figure):,}'")
        else:
            words.append(f"{part.figure} {part.unit}")
    return " ".join(words)


def _echo_step(metres: Fraction) -> int:
    """Return the coarsest step of an inch that shows the length exactly, else eighths."""
    inches = metres / INCH
    return next((step for step in (8, 16, 32, 64) if (inches * step).denominator == 1), 8)


def _echo(parts: tuple[_Part, ...], units: Units, metres: Fraction) -> str:
    """Return what was read in the units typed and, where it says more, in the field's."""
    shown = format_length(float(metres), units, step=_echo_step(metres))
    typed = _canonical(parts)
    single = parts[0] if len(parts) == 1 else None
    if units == "metric" and single and single.unit == "m":
        return typed
    if units == "imperial" and single and single.unit == "ft" and single.whole:
        return shown
    return shown if typed == shown else f"{typed} = {shown}"


def _is_doubtful(parts: tuple[_Part, ...], units: Units, metres: Fraction) -> bool:
    """Return whether a length typed without units is one that often means something else.

    5.6 in a field of feet may be meant as 5' 6", a bare fraction as inches, a very long length as
    millimetres, and 5-6 in a field of metres as a range.
    """
    if len(parts) > 1:
        return units == "metric"
    if "/" in parts[0].figure or metres > DOUBTFUL_ABOVE_M:
        return True
    return units == "imperial" and not parts[0].whole
