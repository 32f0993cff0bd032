"""Disks that are full or can only be read, and a user who owns nothing."""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from pathlib import Path

import pytest

NOBODY = 65534


def _mount(*words: str) -> None:
    tool = shutil.which("mount")
    if tool is None or sys.platform != "linux" or os.geteuid() != 0:
        pytest.skip("a disk of its own needs Linux and the rights of its administrator")
    done = subprocess.run([tool, *words], capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.skip(f"no disk of its own can be made here: {done.stderr.strip()}")


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of 256 kB."""
    place = tmp_path / "small disk"
    place.mkdir()
    _mount("-t", "tmpfs", "-o", "size=256k", "tmpfs", str(place))
    yield place
    subprocess.run(["umount", str(place)], check=True)


@pytest.fixture
def make_read_only() -> Callable[[Path], None]:
    """Say that a small disk can only be read from now on."""
    return lambda place: _mount("-o", "remount,ro", str(place))


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that every user of the computer reaches."""
    place = Path(tempfile.mkdtemp())
    place.chmod(0o755)
    yield place
    shutil.rmtree(place)


@pytest.fixture
def as_plain_user() -> Callable[[], AbstractContextManager[None]]:
    """Be a user without an administrator's rights for a while; root may write everywhere."""
    if sys.platform == "win32":
        pytest.skip("rights of files work otherwise on this system")

    @contextmanager
    def plain() -> Iterator[None]:
        was_root = os.geteuid() == 0
        if was_root:
            os.setresuid(NOBODY, NOBODY, 0)
        try:
            yield
        finally:
            if was_root:
                os.setresuid(0, 0, 0)

    return plain
