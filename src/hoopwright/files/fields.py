"""From plain values to what people enter, and the words when a field is wrong.

The converter stops at the first wrong field and names it in its own way; here the place becomes a
path such as farm.tunnels[0].frame.boards[1].hip_height_m and the fault a sentence.
"""

import re
from collections.abc import Iterator
from decimal import Decimal
from typing import Any, TypeVar

import msgspec

from hoopwright.farm.entered import Entered
from hoopwright.files.fault import FileFault

T = TypeVar("T", bound=Entered)

_CORRECT = "Correct this field, or open a kept copy."
_AMOUNT = re.compile(r"\d{1,18}(\.\d{1,12})?", re.ASCII)
_MONEY = 'must be an amount of money in quotes, such as "12.50"'
_PLACE = re.compile(r"(?P<what>.*) - at `\$(?P<path>[^`]*)`", re.DOTALL)
_STEP = re.compile(r"\.(\w+)|\[(\d+)\]", re.ASCII)
_OWN_FIELD = re.compile(r"(?P<field>[a-z]\w*)(: | (?=must ))(?P<what>.+)", re.DOTALL | re.ASCII)
_WORDS = {
    "array": "a list",
    "bool": "true or false",
    "decimal": "an amount of money in quotes",
    "float": "a number",
    "int": "a whole number",
    "null": "null",
    "object": "a group of fields",
    "str": "a text",
}
_MISSING = re.compile(r"Object missing required field `(.*)`")
_UNKNOWN = re.compile(r"Object contains unknown field `(.*)`", re.DOTALL)
_BOUND = re.compile(r"Expected `\w+` (<=|>=|<|>) (\S+)")
_KIND = re.compile(r"Expected `([\w |]+)`, got `(\w+)`")
_COUNT = re.compile(r"Expected `array` of length (\d+), got (\d+)")
_CHOICE = re.compile(r"Invalid (?:enum )?value (.*)", re.DOTALL)
_SIGNS = {">=": "at least", "<=": "at most", ">": "above", "<": "below"}


def read_entered(raw: Any, kind: type[T], name: str, root: str) -> T:
    """Return an entered value made of plain ones.

    Args:
        raw: Plain values as read from the file.
        kind: Class wanted.
        name: File named in the fault.
        root: What the paths in a fault start with.

    Raises:
        FileFault: A field is missing, unknown, of the wrong kind or impossible.
    """
    try:
        value = msgspec.convert(raw, kind)
    except msgspec.ValidationError as error:
        path, what = _explain(str(error), raw)
        raise FileFault(what, file=name, path=f"{root}{path}", mend=_CORRECT) from error
    for path, amount in _amounts(value, raw, root):
        if not isinstance(amount, str) or not _AMOUNT.fullmatch(amount):
            what = f"{_MONEY}, not {_shown(amount)}"
            raise FileFault(what, file=name, path=path, mend=_CORRECT)
    return value


def _amounts(value: Any, raw: Any, path: str) -> Iterator[tuple[str, Any]]:
    """Yield what the file says at every amount of money; the converter takes too many forms."""
    if isinstance(value, Decimal):
        yield path, raw
    elif isinstance(value, Entered):
        for field in value.__struct_fields__:
            if field in raw:
                yield from _amounts(getattr(value, field), raw[field], f"{path}.{field}")
    elif isinstance(value, tuple):
        for i, (inner, plain) in enumerate(zip(value, raw, strict=True)):
            yield from _amounts(inner, plain, f"{path}[{i}]")


def _explain(message: str, raw: Any) -> tuple[str, str]:
    """Return the path of the wrong field, without the root, and what is wrong with it."""
    place = _PLACE.fullmatch(message)
    what, path = (place["what"], place["path"]) if place else (message, "")
    found = _find(raw, path)
    if hit := _MISSING.fullmatch(what):
        return f"{path}.{hit[1]}", "is missing"
    if hit := _UNKNOWN.fullmatch(what):
        return f"{path}.{hit[1]}", "is not a field of a farm; the name may be misspelt"
    own = _OWN_FIELD.fullmatch(what)
    if own and isinstance(found, dict) and own["field"] in found:
        return f"{path}.{own['field']}", own["what"]
    return path, _reword(what, found)


def _reword(what: str, found: Any) -> str:
    if hit := _BOUND.fullmatch(what):
        return f"must be {_SIGNS[hit[1]]} {hit[2]}, not {_shown(found)}"
    if hit := _COUNT.fullmatch(what):
        return f"must be a list of {hit[1]}, not of {hit[2]}"
    if "decimal" in what:
        return f"{_MONEY}, not {_shown(found)}"
    if hit := _KIND.fullmatch(what):
        kinds = " or ".join(_WORDS.get(k, k) for k in hit[1].split(" | "))
        return f"must be {kinds}, not {_shown(found)}"
    if _CHOICE.fullmatch(what):
        return f"{_shown(found)} is none of the choices"
    return what


def _find(raw: Any, path: str) -> Any:
    """Return the plain value at a path, or None when it leads nowhere."""
    for name, number in _STEP.findall(path):
        if name and isinstance(raw, dict):
            raw = raw.get(name)
        elif number and isinstance(raw, list) and int(number) < len(raw):
            raw = raw[int(number)]
        else:
            return None
    return raw


def _shown(value: Any) -> str:
    if isinstance(value, dict | list):
        return _WORDS["object" if isinstance(value, dict) else "array"]
    if value is None or isinstance(value, bool):
        return {None: "null", True: "true", False: "false"}[value]
    return f"“{value[:60]}”" if isinstance(value, str) else f"{value!r}"
