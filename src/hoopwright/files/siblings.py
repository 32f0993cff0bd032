"""Names of the files that stand beside a file: the one being written, kept copies, the lock."""

import errno
import hashlib
import os
from pathlib import Path

from hoopwright.files.fault import FileFault

NAME_LIMIT = 255


def true_path(path: Path) -> Path:
    """Return where a path really leads, links followed; the end need not exist.

    Raises:
        FileFault: No file can have such a name.
        OSError: Its links lead in a circle.
    """
    try:
        nul = b"\0" in os.fsencode(path)
    except UnicodeEncodeError:
        nul = True
    if nul:
        mend = "Give a name without such characters."
        raise FileFault("is no name a file can have", file=str(path), mend=mend)
    try:
        found = path.resolve()
    except RuntimeError as error:
        raise OSError(errno.ELOOP, os.strerror(errno.ELOOP)) from error
    if found.is_symlink():
        raise OSError(errno.ELOOP, os.strerror(errno.ELOOP))
    return found


def sibling(target: Path, suffix: str) -> Path:
    """Return the name of a file beside another: its name and a suffix, cut when too long."""
    name = target.name
    if len(os.fsencode(name + suffix)) > NAME_LIMIT:
        tail = f"~{_mark(target)}{suffix}"
        while len(os.fsencode(name + tail)) > NAME_LIMIT:
            name = name[:-1]
        suffix = tail
    return target.with_name(name + suffix)


def backup_path(target: Path, number: int) -> Path:
    """Return the name of a copy kept from before a save; 1 is the newest."""
    return sibling(target, f".bak{number}")


def temporary_path(target: Path, ending: str) -> Path:
    """Return the name under which this process writes before the file takes its place.

    The name is short, so that a file of the longest name can be saved, and tells the process, so
    that what a killed one left can be swept away.
    """
    return target.with_name(f"{_temporary_start(target)}{os.getpid()}.{ending}")


def temporaries_of(target: Path) -> tuple[tuple[Path, int], ...]:
    """Return what stands beside a file from writing it, each with its process number."""
    start = _temporary_start(target)
    found = []
    for path in target.parent.glob(f"{start}*"):
        number = path.name.removeprefix(start).partition(".")[0]
        if number.isascii() and number.isdigit():
            found.append((path, int(number)))
    return tuple(found)


def _temporary_start(target: Path) -> str:
    return f".hw-{_mark(target)}-"


def _mark(target: Path) -> str:
    return hashlib.sha256(os.fsencode(target.name)).hexdigest()[:8]
