"""JSON as read with suspicion and written with care: plain values on one side, bytes on the other.

What other readers let pass is refused here, because it would come back as something else: a name
that stands twice, NaN, a number past all measure, half a character.
"""

import json
import math
import re
from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from hoopwright.files.fault import FileFault

SIZE_LIMIT = 32 * 1024 * 1024
DIGIT_LIMIT = 18

_DAMAGED = "The file is damaged; open a kept copy."
_CORRECT = "Correct it there, or open a kept copy."
_ESCAPED_HALF = re.compile(r"\\u[dD][89abAB-F]")
_HALF = re.compile("[\ud800-\udfff]")


class _RefusedError(ValueError):
    """A hook of the reader met something that must not pass."""


def read_json(data: bytes, name: str) -> Any:
    """Return the plain values of a JSON text.

    Args:
        data: The whole file.
        name: File named in the fault.

    Raises:
        FileFault: It is no sound JSON text in UTF-8 of a sensible size.
    """
    text = _decode(data, name)
    try:
        value = json.loads(
            text,
            object_pairs_hook=_read_object,
            parse_constant=_refuse_constant,
            parse_float=_read_float,
            parse_int=_read_int,
        )
    except json.JSONDecodeError as error:
        raise FileFault(
            f"cannot be read: {error.msg}",
            file=name,
            path=f"line {error.lineno}, column {error.colno}",
            mend=_DAMAGED,
        ) from error
    except _RefusedError as error:
        raise FileFault(str(error), file=name, mend=_CORRECT) from error
    except RecursionError as error:
        raise FileFault("brackets are nested too deep", file=name, mend=_DAMAGED) from error
    if _ESCAPED_HALF.search(text):
        _refuse_halves(value, name)
    return value


def write_json(value: Any, name: str) -> bytes:
    """Return plain values as JSON: UTF-8, two spaces, order kept, amounts as texts.

    Raises:
        FileFault: A text holds half a character, which no file can hold.
        ValueError: A number is not finite.
    """
    text = json.dumps(value, ensure_ascii=False, allow_nan=False, indent=2, default=_plain_amount)
    try:
        return f"{text}\n".encode()
    except UnicodeEncodeError:
        _refuse_halves(value, name)
        raise


def _plain_amount(value: object) -> str:
    if isinstance(value, Decimal):
        return format(value, "f")
    raise TypeError(f"{type(value).__name__} has no place in a file")


def _decode(data: bytes, name: str) -> str:
    if len(data) > SIZE_LIMIT:
        mend = "A farm is far smaller; check that it is the right file."
        raise FileFault(f"is over {SIZE_LIMIT >> 20} MB", file=name, mend=mend)
    if not data.strip():
        raise FileFault("is empty", file=name, mend=_DAMAGED)
    if not data.strip(b"\0"):
        cause = "holds only zeros, as after a power failure"
        raise FileFault(cause, file=name, mend=_DAMAGED)
    mend = "Save it as UTF-8 text, or open a kept copy."
    if data.startswith((b"\xff\xfe", b"\xfe\xff")) or b"\0" in data[:4]:
        raise FileFault("is UTF-16 text; a farm file is UTF-8", file=name, mend=mend)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        place = f"byte {error.start + 1}"
        raise FileFault("is not UTF-8 text", file=name, path=place, mend=mend) from error


def _read_object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        names = [key for key, _ in pairs]
        twice = next(key for key in names if names.count(key) > 1)
        raise _RefusedError(f"the name “{twice[:60]}” stands twice in one place")
    return found


def _refuse_constant(text: str) -> float:
    raise _RefusedError(f"{text} stands where a number must stand")


def _read_float(text: str) -> float:
    number = float(text)
    if not math.isfinite(number):
        raise _RefusedError(f"the number {text[:40]} is too large")
    return number


def _read_int(text: str) -> int:
    if len(text.lstrip("-")) > DIGIT_LIMIT:
        raise _RefusedError(f"the number {text[:DIGIT_LIMIT]}… has over {DIGIT_LIMIT} digits")
    return int(text)


def _refuse_halves(value: Any, name: str) -> None:
    """Refuse the first text that holds half a character (a lone surrogate)."""
    for path, text in _texts(value):
        if _HALF.search(text):
            raise FileFault(
                f"holds half a character: {text[:60]}",
                file=name,
                path=path,
                mend="Type this text again.",
            )


def _texts(value: Any) -> Iterator[tuple[str, str]]:
    """Yield every text, names of fields too, with its path; not by recursion, as it may be deep."""
    waiting: list[tuple[str, Any]] = [("", value)]
    while waiting:
        path, found = waiting.pop()
        if isinstance(found, str):
            yield path, found
        elif isinstance(found, dict):
            for key, inner in found.items():
                yield path, key
                waiting.append((f"{path}.{key}".lstrip("."), inner))
        elif isinstance(found, list | tuple):
            waiting.extend((f"{path}[{i}]", inner) for i, inner in enumerate(found))
