"""Copies of unsaved work, kept in a folder of the program for the day it does not end well.

A copy is made soon after an edit and dropped at a save or a clean close. What is found at the next
start is offered, never taken silently.
"""

import contextlib
import hashlib
import os
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import Any, Literal
from urllib.parse import quote_from_bytes, unquote_to_bytes

import msgspec
from msgspec import Struct

from hoopwright.farm import Farm
from hoopwright.files.document import farm_from_raw, farm_to_raw
from hoopwright.files.fault import FileFault, read_fault, write_fault
from hoopwright.files.json_text import read_json, write_json
from hoopwright.files.owner import Owner, is_gone, this_owner
from hoopwright.files.siblings import true_path
from hoopwright.files.storage import digest_of, open_farm, read_whole, write_whole

Standing = Literal["same", "changed", "gone", "never_saved"]

_PATTERN = "recovery-*.json"


class _Label(Struct, frozen=True, forbid_unknown_fields=True):
    """What a copy says about itself."""

    source: str
    untitled: str
    base_digest: str | None
    owner: Owner


class RecoveryCopy(Struct, frozen=True):
    """Unsaved work found again.

    Attributes:
        path: The copy.
        farm_path: File of the farm, or None when it was never saved.
        untitled: Token of a farm that was never saved, else "".
        base_digest: Digest of the farm file that was edited, or None.
        farm: The unsaved farm.
        kept_at: When the copy was made, local time.
        standing: Whether the farm file is still the one that was edited, was changed since (open
            the copy beside it), is gone, or never was.
    """

    path: Path
    farm_path: Path | None
    untitled: str
    base_digest: str | None
    farm: Farm
    kept_at: datetime
    standing: Standing


def copy_path(folder: Path, farm_path: Path | None, untitled: str = "") -> Path:
    """Return where the copy of a farm is kept.

    Args:
        folder: Folder of the copies.
        farm_path: File of the farm, or None when it was never saved.
        untitled: Token that tells one farm that was never saved from another.
    """
    source = untitled if farm_path is None else _written(farm_path)
    return folder / f"recovery-{hashlib.sha256(source.encode()).hexdigest()[:16]}.json"


def keep_copy(
    folder: Path, farm_path: Path | None, base_digest: str | None, farm: Farm, untitled: str = ""
) -> Path:
    """Write the copy of a farm with unsaved work over the one before and return its path.

    Args:
        folder: Folder of the copies; made when it is not there.
        farm_path: File of the farm, or None when it was never saved.
        base_digest: Digest of that file when it was opened or last saved.
        farm: The farm as it stands now.
        untitled: Token that tells one farm that was never saved from another.

    Raises:
        FileFault: The copy cannot be written.
    """
    place = copy_path(folder, farm_path, untitled)
    source = "" if farm_path is None else _written(farm_path)
    label = _Label(source, untitled, base_digest, this_owner())
    raw = {"copy": msgspec.to_builtins(label), "document": farm_to_raw(farm)}
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise write_fault(error, folder) from error
    write_whole(place, write_json(raw, str(place)), keep=0)
    return place


def find_copies(folder: Path) -> tuple[RecoveryCopy, ...]:
    """Return the unsaved work to offer, newest first.

    Left out are copies that hold what the farm file holds, that cannot be read (see
    damaged_copies) and those of another window that still runs.

    Raises:
        FileFault: The folder cannot be read.
    """
    found = [entry for entry in _read_copies(folder) if isinstance(entry, RecoveryCopy)]
    return tuple(sorted(found, key=lambda copy: copy.kept_at, reverse=True))


def damaged_copies(folder: Path) -> tuple[FileFault, ...]:
    """Return why copies in the folder cannot be read, one fault for each.

    Raises:
        FileFault: The folder cannot be read.
    """
    return tuple(entry for entry in _read_copies(folder) if isinstance(entry, FileFault))


def drop_copy(path: Path) -> None:
    """Remove a copy, for its work is saved or not wanted; one that is not there is no fault.

    Raises:
        FileFault: It cannot be removed.
    """
    try:
        path.unlink(missing_ok=True)
    except OSError as error:
        raise write_fault(error, path) from error


def _written(farm_path: Path) -> str:
    """Return a path as plain letters, whatever bytes its name holds."""
    with contextlib.suppress(OSError):
        farm_path = true_path(farm_path)
    return quote_from_bytes(os.fsencode(farm_path))


def _read_copies(folder: Path) -> Iterator[RecoveryCopy | FileFault]:
    try:
        paths = sorted(folder.glob(_PATTERN)) if folder.is_dir() else []
    except OSError as error:
        raise read_fault(error, folder) from error
    for path in paths:
        try:
            copy = _read_copy(path)
        except FileFault as fault:
            yield fault
        except OSError as error:
            yield read_fault(error, path)
        else:
            if copy is not None:
                yield copy


def _read_copy(path: Path) -> RecoveryCopy | None:
    """Return a copy, or None when there is nothing to offer."""
    name = str(path)
    raw = read_json(read_whole(path), name)
    label = _read_label(raw, name)
    if label.owner != this_owner() and not is_gone(label.owner) and _is_here(label.owner):
        return None
    farm = farm_from_raw(raw.get("document"), name)
    source = Path(os.fsdecode(unquote_to_bytes(label.source))) if label.source else None
    standing = _standing(source, label.base_digest, farm)
    if standing is None:
        return None
    return RecoveryCopy(
        path=path,
        farm_path=source,
        untitled=label.untitled,
        base_digest=label.base_digest,
        farm=farm,
        kept_at=datetime.fromtimestamp(path.stat().st_mtime),
        standing=standing,
    )


def _is_here(owner: Owner) -> bool:
    return owner.host == this_owner().host


def _read_label(raw: Any, name: str) -> _Label:
    try:
        return msgspec.convert(raw["copy"], _Label)
    except (LookupError, TypeError, msgspec.ValidationError) as error:
        mend = "Remove it when its work is not wanted."
        raise FileFault("is no copy of unsaved work", file=name, mend=mend) from error


def _standing(source: Path | None, base_digest: str | None, farm: Farm) -> Standing | None:
    """Return how a copy stands to its farm file, or None when both hold the same farm."""
    if source is None:
        return "never_saved"
    try:
        if not source.exists():
            return "gone"
        if open_farm(source)[0] == farm:
            return None
        return "same" if digest_of(source) == base_digest else "changed"
    except (FileFault, OSError):  # what cannot be read does not hold what the copy holds
        return "changed"
