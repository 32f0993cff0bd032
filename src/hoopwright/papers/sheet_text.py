"""Text that people typed, made fit for a cell and for the head of a page.

Source:
    Coded signs such as _x0041_: ECMA-376 part 1, 22.9.2.19 (ST_Xstring). The clause and the
    longest text of a cell: from memory, to be confirmed.
"""

import re
from functools import lru_cache
from textwrap import wrap

LONGEST_TEXT = 32_767
LONGEST_NAME = 60

_BAD_SIGNS = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ud800-\udfff\ufffe\uffff]")
_CODED_SIGN = re.compile(r"_(?=x[0-9A-Fa-f]{4}_)")


def safe_text(text: str) -> str:
    """Return a text that any spreadsheet program can hold and shows as it was typed.

    Signs that no XML file can hold become U+FFFD, a sequence that would be read as a coded sign
    is coded itself, and what is too long for a cell is cut.
    """
    plain = _BAD_SIGNS.sub("\ufffd", text.replace("\r\n", "\n").replace("\r", "\n"))
    coded = _CODED_SIGN.sub("_x005F_", plain)
    if len(coded) <= LONGEST_TEXT:
        return coded
    return coded[: LONGEST_TEXT - 1] + "\u2026"


def header_text(text: str) -> str:
    """Return a text for the head of a page, where & has a meaning, on one line."""
    short = " ".join(safe_text(text[:LONGEST_NAME]).split())
    return short.replace("&", "&&")


@lru_cache(maxsize=4096)
def line_count(text: str, signs: int) -> int:
    """Return the lines a text takes where so many signs fit into one."""
    if len(text) <= signs and "\n" not in text:
        return 1
    return sum(len(wrap(part, signs)) or 1 for part in text.split("\n"))
