"""A farm as a file: JSON with the program and the format number first.

Lengths and all else in SI, the unit in the name of the field; amounts of money as texts.
"""

from decimal import Decimal
from typing import Any

import msgspec

from hoopwright.farm import Catalogue, Farm
from hoopwright.files.fault import FileFault
from hoopwright.files.fields import read_entered
from hoopwright.files.json_text import read_json, write_json
from hoopwright.files.migrations import FORMAT, raise_format

PROGRAM = "hoopwright"

_PARTS = ("program", "format", "farm")


def to_json(farm: Farm, name: str = "") -> bytes:
    """Return a farm as the bytes of its file, read back and compared.

    Args:
        farm: The farm.
        name: File named in the fault.

    Raises:
        FileFault: The farm holds something that would not come back as it is.
    """
    data = write_json(farm_to_raw(farm), name)
    if from_json(data, name) != farm:
        raise FileFault(
            "the farm would not come back from the file as it is, so nothing was written",
            file=name,
            mend="Undo the last edit and save again.",
        )
    return data


def from_json(data: bytes, name: str) -> Farm:
    """Return the farm in the bytes of its file.

    Args:
        data: The whole file.
        name: File named in the fault.

    Raises:
        FileFault: The bytes are no farm file this program reads.
    """
    return farm_from_raw(read_json(data, name), name)


def farm_to_raw(farm: Farm) -> dict[str, Any]:
    """Return a farm file as plain values; amounts of money stay decimal numbers."""
    entered = msgspec.to_builtins(farm, builtin_types=(Decimal,))
    return {"program": PROGRAM, "format": FORMAT, "farm": entered}


def farm_from_raw(raw: Any, name: str) -> Farm:
    """Return the farm in a farm file read as plain values.

    Raises:
        FileFault: It is no farm file this program reads.
    """
    if not isinstance(raw, dict) or raw.get("program") != PROGRAM:
        mend = 'Check that it is the right file; a farm file starts with "program": "hoopwright".'
        raise FileFault("is not a farm file of this program", file=name, mend=mend)
    raw = raise_format(raw, name)
    for part in raw:
        if part not in _PARTS:
            what = "is not a part of a farm file; the name may be misspelt"
            raise FileFault(what, file=name, path=part, mend="Correct it, or open a kept copy.")
    if "farm" not in raw:
        raise FileFault("is missing", file=name, path="farm", mend="Open a kept copy.")
    return read_entered(raw["farm"], Farm, name, "farm")


def catalogue_from_json(data: bytes, name: str) -> Catalogue:
    """Return the catalogue in the bytes of its file, which holds nothing else.

    Raises:
        FileFault: The bytes are no catalogue.
    """
    return read_entered(read_json(data, name), Catalogue, name, "catalogue")
