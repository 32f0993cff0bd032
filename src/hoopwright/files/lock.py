"""Guard against one farm file being edited in two windows: a lock file beside it.

On network and synchronised folders a lock is a hint only; that a file changed since it was opened
is seen at the save in any case.
"""

import contextlib
import errno
from pathlib import Path

import msgspec
from msgspec import Struct

from hoopwright.files.fault import FileFault, write_fault
from hoopwright.files.owner import Owner, is_gone, this_owner
from hoopwright.files.siblings import sibling, true_path

_READ_ONLY = (errno.EACCES, errno.EPERM, errno.EROFS)
_OPEN_COPY = "Open it to read only, or open a copy."


class Claim(Struct, frozen=True):
    """The right to save a farm file until it is given back.

    Attributes:
        lock: The lock file, or None where the folder takes none: the farm is to read only.
        owner: Who holds it.
    """

    lock: Path | None
    owner: Owner

    def release(self) -> None:
        """Give the claim back; a lock that somebody else took over is left alone."""
        if self.lock is None:
            return
        with contextlib.suppress(OSError):  # what is left is taken over when this process ended
            if _read_owner(self.lock) == self.owner:
                self.lock.unlink()


def claim(path: Path) -> Claim:
    """Return the claim to a farm file; one left by a program that has ended is taken over.

    Raises:
        FileFault: The farm is open elsewhere, or its lock tells no owner, or the folder is
            not there.
    """
    try:
        lock = sibling(true_path(path), ".lock")
        owner = this_owner()
        if _create(lock, owner):
            return Claim(lock, owner)
        held_by = _read_owner(lock)
        if held_by is not None and is_gone(held_by) and _recreate(lock, owner):
            return Claim(lock, owner)
    except OSError as error:
        if error.errno in _READ_ONLY:
            return Claim(None, this_owner())
        raise write_fault(error, path) from error
    raise _open_elsewhere(path, lock, held_by)


def take_over(path: Path) -> Claim:
    """Return the claim to a farm file although a lock is there; the user has said so.

    Raises:
        FileFault: The lock cannot be replaced.
    """
    owner = this_owner()
    try:
        lock = sibling(true_path(path), ".lock")
        if _recreate(lock, owner):
            return Claim(lock, owner)
        held_by = _read_owner(lock)
    except OSError as error:
        raise write_fault(error, path) from error
    raise _open_elsewhere(path, lock, held_by)


def _recreate(lock: Path, owner: Owner) -> bool:
    """Make the lock file anew and return whether nobody else was faster."""
    lock.unlink(missing_ok=True)
    return _create(lock, owner)


def _create(lock: Path, owner: Owner) -> bool:
    """Make the lock file and return whether it was not there before."""
    try:
        file = lock.open("xb")
    except FileExistsError:
        return False
    try:
        with file:
            file.write(msgspec.json.encode(owner) + b"\n")
    except OSError:
        lock.unlink(missing_ok=True)
        raise
    return True


def _read_owner(lock: Path) -> Owner | None:
    """Return who holds a lock, or None when it does not tell."""
    try:
        return msgspec.json.decode(lock.read_bytes()[:4096], type=Owner)
    except (msgspec.DecodeError, UnicodeDecodeError, FileNotFoundError):
        return None


def _open_elsewhere(path: Path, lock: Path, held_by: Owner | None) -> FileFault:
    if held_by is None:
        what = f"may be open elsewhere: its lock {lock.name} does not tell by whom"
        mend = f"{_OPEN_COPY} If nobody has it open, take the lock over."
    else:
        what = f"is open in hoopwright on {held_by.host} (process {held_by.pid})"
        mend = f"Close it there. {_OPEN_COPY}"
    return FileFault(what, file=str(path), mend=mend)
