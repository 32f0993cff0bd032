"""Farm files on the disk: written whole or not at all, the copies before kept.

Whatever stops a save (a full disk, a lost power line, a killed program), the file is the old one
or the new one. Several threads must not save one file at the same time.
"""

import contextlib
import errno
import hashlib
import importlib.util
import os
import shutil
import stat
import sys
import time
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from hoopwright.farm import Catalogue, Farm
from hoopwright.files.document import catalogue_from_json, from_json, to_json
from hoopwright.files.fault import ChangedOnDisk, FileFault, read_fault, write_fault
from hoopwright.files.json_text import SIZE_LIMIT
from hoopwright.files.owner import is_running
from hoopwright.files.siblings import backup_path, temporaries_of, temporary_path, true_path

KEPT_COPIES = 3

# Denied, sharing violation, lock violation: another program looks at the file for a moment.
_BUSY_ON_WINDOWS = (5, 32, 33)
_FIRST_WAIT_S = 0.02
_LONGEST_WAIT_S = 2.0


class Backup(NamedTuple):
    """A copy kept from before a save.

    Attributes:
        path: The copy.
        saved_at: When its contents were saved, local time.
    """

    path: Path
    saved_at: datetime


def open_farm(path: Path) -> tuple[Farm, str]:
    """Return the farm in a file and the digest of the bytes read.

    Raises:
        FileFault: The file cannot be read or is no farm file; kept copies are named.
    """
    data = read_whole(path)
    try:
        return from_json(data, str(path)), digest(data)
    except FileFault as fault:
        kept = ", ".join(f"{b.path.name} of {b.saved_at:%Y-%m-%d %H:%M}" for b in backups_of(path))
        mend = f"{fault.mend} Kept copies: {kept}." if kept else fault.mend
        raise FileFault(fault.what, file=fault.file, path=fault.path, mend=mend) from fault


def save_farm(path: Path, farm: Farm, expected_digest: str | None) -> str:
    """Write a farm to its file and return the digest of the bytes written.

    Args:
        path: The file.
        farm: The farm.
        expected_digest: Digest when it was opened or last saved here; None to write over
            whatever is there.

    Raises:
        ChangedOnDisk: The file is another one than expected.
        FileFault: It cannot be written; what was there before is untouched.
    """
    data = to_json(farm, str(path))
    if expected_digest is not None and _stands(path) and digest_of(path) != expected_digest:
        raise ChangedOnDisk(
            "was changed by another program or person since it was opened here",
            file=str(path),
            mend="Open it again, save under another name, or save over it; a copy is kept.",
        )
    write_whole(path, data)
    return digest(data)


def _stands(path: Path) -> bool:
    try:
        return path.exists()
    except OSError as error:
        raise write_fault(error, path) from error


def digest(data: bytes) -> str:
    """Return what tells one version of a file from another.

    Source:
        SHA-256, FIPS 180-4.
    """
    return hashlib.sha256(data).hexdigest()


def digest_of(path: Path) -> str:
    """Return the digest of a file on the disk.

    Raises:
        FileFault: The file cannot be read.
    """
    return digest(read_whole(path))


def backups_of(path: Path) -> tuple[Backup, ...]:
    """Return the copies kept from before the last saves, newest first."""
    found = []
    with contextlib.suppress(OSError, FileFault):  # no copies where the folder cannot be seen
        target = true_path(path)
        for number in range(1, KEPT_COPIES + 1):
            kept = backup_path(target, number)
            if kept.is_file():
                found.append(Backup(kept, datetime.fromtimestamp(kept.stat().st_mtime)))
    return tuple(found)


def read_whole(path: Path) -> bytes:
    """Return the bytes of an ordinary file, a little past the limit at most.

    Raises:
        FileFault: It cannot be read.
    """
    try:
        target = true_path(path)
        _check_ordinary(target, target.stat())
        with target.open("rb") as file:
            return file.read(SIZE_LIMIT + 1)
    except OSError as error:
        raise read_fault(error, path) from error


def write_whole(target: Path, data: bytes, keep: int = KEPT_COPIES) -> None:
    """Write a file whole or not at all.

    Args:
        target: The file; a link is followed.
        data: All its bytes.
        keep: How many copies from before are kept beside it.

    Raises:
        FileFault: It cannot be written; what was there before is untouched.
    """
    try:
        place = true_path(target)
        _write_beside(place, data, keep)
    except OSError as error:
        raise write_fault(error, target) from error


def _write_beside(target: Path, data: bytes, keep: int) -> None:
    """Write to a file beside the target, keep what was there, then take its place."""
    before = _state_before(target)
    mode = None if before is None else stat.S_IMODE(before.st_mode)
    _sweep(target)
    beside, copy = temporary_path(target, "new"), temporary_path(target, "old")
    try:
        _write_synced(beside, data, mode)
        if keep and before is not None and target.read_bytes() != data:
            _keep_copy(target, copy, keep)
        _replace(beside, target)
        _sync_folder(target.parent)
    finally:
        for left in (beside, copy):
            with contextlib.suppress(OSError):  # the first fault counts; the next save sweeps
                left.unlink(missing_ok=True)


def _state_before(target: Path) -> os.stat_result | None:
    """Return what stands there now, or None; refuse what a save must not replace."""
    try:
        before = target.stat()
    except FileNotFoundError:
        return None
    _check_ordinary(target, before)
    target.open("r+b").close()  # a rename would also replace a file that may not be written
    return before


def _check_ordinary(path: Path, state: os.stat_result) -> None:
    if stat.S_ISDIR(state.st_mode):
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
    if not stat.S_ISREG(state.st_mode):
        mend = "Give the name of a file on a disk."
        raise FileFault("is a device, not an ordinary file", file=str(path), mend=mend)


def _sweep(target: Path) -> None:
    """Remove what a killed program left beside the file."""
    for path, pid in temporaries_of(target):
        if pid == os.getpid() or not is_running(pid):
            with contextlib.suppress(OSError):  # somebody else's; it harms nothing
                path.unlink(missing_ok=True)


def _write_synced(path: Path, data: bytes, mode: int | None) -> None:
    with path.open("xb") as file:
        if mode is not None and mode != stat.S_IMODE(path.stat().st_mode):
            path.chmod(mode)
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _keep_copy(target: Path, copy: Path, keep: int) -> None:
    """Shift the kept copies by one and make what stands there now the newest of them."""
    for number in range(keep - 1, 0, -1):
        older = backup_path(target, number)
        if older.exists():
            _replace(older, backup_path(target, number + 1))
    try:
        copy.hardlink_to(target)
    except OSError:  # some disks know no second name for a file
        shutil.copy2(target, copy)
    _replace(copy, backup_path(target, 1))


def _replace(source: Path, target: Path) -> None:
    """Rename over the target; while another program looks at it, wait and try again."""
    wait_s = _FIRST_WAIT_S
    while True:
        try:
            source.replace(target)
            return
        except OSError as error:
            if getattr(error, "winerror", None) not in _BUSY_ON_WINDOWS or wait_s > _LONGEST_WAIT_S:
                raise
        time.sleep(wait_s)
        wait_s *= 2


def _sync_folder(folder: Path) -> None:
    """Bring the new name to the disk; some network disks refuse, and the file is in place then."""
    if sys.platform == "win32":
        return
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _installed(package: str) -> Path:
    """Return the folder of a package of data, found without the slow library for it."""
    spec = importlib.util.find_spec(package)
    if spec is None or not spec.submodule_search_locations:
        raise ModuleNotFoundError(package)
    return Path(spec.submodule_search_locations[0])


def read_resource(name: str) -> bytes:
    """Return the bytes of a table, picture or text that comes with the program.

    Args:
        name: Path below the resources, with slashes.

    Raises:
        FileFault: The installation lacks it.
    """
    try:
        return _installed("hoopwright.resources").joinpath(*name.split("/")).read_bytes()
    except (OSError, ModuleNotFoundError) as error:
        mend = "Install the program again."
        raise FileFault("is missing from the installation", file=name, mend=mend) from error


def demo_catalogue() -> Catalogue:
    """Return the catalogue that comes with the program, its prices invented.

    Raises:
        FileFault: The installation lacks it.
    """
    name = "catalogue.json"
    return catalogue_from_json(read_resource(name), name)


def sample_farms() -> tuple[Path, ...]:
    """Return the sample farms that come with the program, by name.

    Raises:
        FileFault: The installation lacks them.
    """
    try:
        folder = _installed("hoopwright.sample_projects")
        found = [entry for entry in folder.iterdir() if entry.name.endswith(".json")]
    except (OSError, ModuleNotFoundError) as error:
        mend = "Install the program again."
        raise FileFault("the sample farms are missing", mend=mend) from error
    return tuple(sorted(found))
