"""What people type, made plain: one form of each sign, and numbers read without guessing.

Phones, word processors and price lists write the same thing with many signs: curly quotes for
feet and inches, full-width digits, a fraction as one sign, spaces that do not break. All are
turned into plain signs here, once, before a reader looks at the text. Decimal point and decimal
comma are both taken. A text that could be either of two numbers is refused, never guessed.
"""

import re
import unicodedata
from fractions import Fraction

TEXT_LIMIT = 40
OVER = r"\d{1,4}/\d{1,4}"

_PRIMES = "\u2018\u2019\u201b\u2032\u02b9\u02bc\u00b4\u0060"
_DOUBLE_PRIMES = "\u201c\u201d\u201e\u201f\u2033\u02ba\u3003"
_DASHES = "\u2010\u2011\u2012\u2013\u2014\u2015\u2212"
_PLAIN = str.maketrans(
    {
        **dict.fromkeys(_PRIMES, "'"),
        **dict.fromkeys(_DOUBLE_PRIMES, '"'),
        **dict.fromkeys(_DASHES, "-"),
        "\u2044": "/",
        "\u2215": "/",
        "\u03bc": "\u00b5",
        "\u00ba": "\u00b0",
    }
)
_PLAIN_NUMBER = re.compile(r"\d{1,12}(?:\.\d{1,12})?|\.\d{1,12}", re.ASCII)
_DECIMAL_COMMA = re.compile(r"\d{0,12},\d{1,12}", re.ASCII)
_COMMA_GROUPS = re.compile(r"[1-9]\d{0,2}(?:,\d{3}){1,3}(?:\.\d{1,12})?", re.ASCII)
_POINT_GROUPS = re.compile(r"[1-9]\d{0,2}(?:\.\d{3}){1,3},\d{1,12}", re.ASCII)
_MANY_POINTS = re.compile(r"[1-9]\d{0,2}(?:\.\d{3}){2,3}", re.ASCII)


class ReadError(ValueError):
    """A typed text cannot be read; the message is fit to show at the field."""


def plain_text(text: str) -> str:
    """Return a typed text with one plain form of each sign and single spaces.

    Raises:
        ReadError: The text is empty or longer than 40 characters.
    """
    if len(text) > TEXT_LIMIT:
        raise ReadError(
            f"The text beginning \u201c{text[:12].strip()}\u201d is longer than {TEXT_LIMIT} "
            "characters. Write one value with its unit."
        )
    plain = "".join(_plain_sign(sign) for sign in text).translate(_PLAIN)
    plain = " ".join(plain.replace("''", '"').split())
    if not plain:
        raise ReadError("Nothing is written here. Write a number, with a unit if you like.")
    return plain


def _plain_sign(sign: str) -> str:
    if sign < "\x7f":
        return sign
    made_of = unicodedata.decomposition(sign)
    if made_of.startswith("<fraction>"):
        return " " + "".join(chr(int(code, 16)) for code in made_of.split()[1:])
    if "\uff01" <= sign <= "\uff5e":
        return chr(ord(sign) - 0xFEE0)
    if sign.isspace():
        return " "
    return "" if unicodedata.category(sign) == "Cf" else sign


def read_figure(token: str, *, comma_groups: bool = False) -> Fraction:
    """Return the number that plain digits with points and commas stand for, exactly.

    Args:
        token: Digits, points and commas only.
        comma_groups: Whether one comma before three digits groups thousands. Without it such a
            number is refused, because it can be read in two ways.

    Raises:
        ReadError: It is no number, or it can be read in two ways.
    """
    if _PLAIN_NUMBER.fullmatch(token):
        return Fraction(token)
    if _COMMA_GROUPS.fullmatch(token):
        joined = token.replace(",", "")
        if comma_groups or "." in token or token.count(",") > 1:
            return Fraction(joined)
        point = token.replace(",", ".")
        raise ReadError(f"\u201c{token}\u201d can be {joined} or {point}. Write one of the two.")
    if _POINT_GROUPS.fullmatch(token):
        return Fraction(token.replace(".", "").replace(",", "."))
    if _MANY_POINTS.fullmatch(token):
        return Fraction(token.replace(".", ""))
    if _DECIMAL_COMMA.fullmatch(token):
        return Fraction(token.replace(",", "."))
    raise ReadError(f"\u201c{token}\u201d is not a number. Write it like 12, 12.5 or 12,5.")


def read_mixed(number: str | None, over: str | None, *, comma_groups: bool = False) -> Fraction:
    """Return a number, a fraction, or a whole number with a fraction, exactly.

    Args:
        number: Digits, points and commas, or nothing.
        over: A fraction like 1/2, or nothing.
        comma_groups: As in `read_figure`.

    Raises:
        ReadError: The fraction is one or more, or stands after a number that is not whole.
    """
    amount = read_figure(number, comma_groups=comma_groups) if number else Fraction(0)
    if not over:
        return amount
    top, bottom = (int(digits) for digits in over.split("/"))
    if amount.denominator != 1 or top >= bottom:
        typed = f"{number} {over}" if number else over
        raise ReadError(
            f"\u201c{typed}\u201d is not a whole number and a fraction below one. "
            "Write it like 1 1/2 or 1.5."
        )
    return amount + Fraction(top, bottom)
