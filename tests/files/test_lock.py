"""One farm file is edited in one window."""

import errno
import os
import socket
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any

import msgspec
import pytest

from hoopwright.files.fault import FileFault
from hoopwright.files.lock import claim, take_over
from hoopwright.files.owner import Owner, this_owner

HOLD = """
import sys
from pathlib import Path
from hoopwright.files.lock import claim
held = claim(Path(sys.argv[1]))
print("held", flush=True)
sys.stdin.readline()
held.release()
"""


@pytest.fixture
def other(tmp_path: Path) -> Iterator[subprocess.Popen[bytes]]:
    """Another program that has the farm open."""
    command = [sys.executable, "-c", HOLD, str(tmp_path / "a.json")]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE) as child:
        assert child.stdout is not None
        assert child.stdout.readline() == b"held\n"
        yield child
        child.kill()


def test_claim_is_given_back(tmp_path: Path) -> None:
    held = claim(tmp_path / "a.json")
    assert [p.name for p in tmp_path.iterdir()] == ["a.json.lock"]
    held.release()
    held.release()
    assert list(tmp_path.iterdir()) == []


def test_second_window_of_this_program_is_refused(tmp_path: Path) -> None:
    held = claim(tmp_path / "a.json")
    with pytest.raises(FileFault, match="is open in hoopwright"):
        claim(tmp_path / "a.json")
    held.release()
    claim(tmp_path / "a.json").release()


def test_two_names_of_one_farm_have_one_lock(tmp_path: Path) -> None:
    (tmp_path / "link.json").symlink_to("a.json")
    claim(tmp_path / "a.json")
    with pytest.raises(FileFault, match="is open in hoopwright"):
        claim(tmp_path / "link.json")


def test_other_program_is_named(tmp_path: Path, other: subprocess.Popen[bytes]) -> None:
    with pytest.raises(FileFault) as caught:
        claim(tmp_path / "a.json")
    told = str(caught.value)
    assert socket.gethostname() in told
    assert f"process {other.pid}" in told
    assert "read only, or open a copy" in told


def test_farm_that_the_other_closed_is_free(tmp_path: Path, other: subprocess.Popen[bytes]) -> None:
    other.communicate(b"\n")
    claim(tmp_path / "a.json").release()


def test_lock_of_a_killed_program_is_taken_over(
    tmp_path: Path, other: subprocess.Popen[bytes]
) -> None:
    other.kill()
    other.wait()
    assert (tmp_path / "a.json.lock").exists()
    claim(tmp_path / "a.json").release()
    assert list(tmp_path.iterdir()) == []


def test_lock_from_another_computer_is_left_to_the_user(tmp_path: Path) -> None:
    lock = tmp_path / "a.json.lock"
    lock.write_bytes(msgspec.json.encode(Owner(host="barn office", pid=2)))
    with pytest.raises(FileFault, match=r"on barn office \(process 2\)"):
        claim(tmp_path / "a.json")
    held = take_over(tmp_path / "a.json")
    assert held.owner == this_owner()
    held.release()
    assert not lock.exists()


@pytest.mark.parametrize("data", [b"", bytes(40), b"{}", b'{"pid": "x"}', b"\xff\xfe", b"[" * 5000])
def test_lock_that_tells_nothing_is_left_to_the_user(tmp_path: Path, data: bytes) -> None:
    (tmp_path / "a.json.lock").write_bytes(data)
    with pytest.raises(FileFault, match="does not tell by whom"):
        claim(tmp_path / "a.json")
    take_over(tmp_path / "a.json").release()


def test_lock_taken_over_by_another_is_not_removed(tmp_path: Path) -> None:
    held = claim(tmp_path / "a.json")
    lock = tmp_path / "a.json.lock"
    lock.write_bytes(msgspec.json.encode(Owner(host="barn office", pid=2)))
    held.release()
    assert lock.exists()


def test_lock_that_somebody_makes_first_stays_theirs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    lock = tmp_path / "a.json.lock"
    theirs = msgspec.json.encode(Owner(host="barn office", pid=2))

    def replace_by_theirs(path: Path, missing_ok: bool = False) -> None:
        lock.write_bytes(theirs)

    with monkeypatch.context() as patch:
        patch.setattr(Path, "unlink", replace_by_theirs)
        with pytest.raises(FileFault, match="barn office"):
            take_over(tmp_path / "a.json")
    assert lock.read_bytes() == theirs


def test_read_only_folder_gives_a_claim_to_read(
    open_folder: Path, as_plain_user: Callable[[], AbstractContextManager[None]]
) -> None:
    with as_plain_user():
        held = claim(open_folder / "a.json")
        held.release()
        with pytest.raises(FileFault, match="may not be written"):
            take_over(open_folder / "a.json")
    assert held.lock is None
    assert list(open_folder.iterdir()) == []


def test_read_only_disk_gives_a_claim_to_read(
    small_disk: Path, make_read_only: Callable[[Path], None]
) -> None:
    make_read_only(small_disk)
    assert claim(small_disk / "a.json").lock is None


def test_missing_folder_is_told(tmp_path: Path) -> None:
    with pytest.raises(FileFault, match="folder does not exist"):
        claim(tmp_path / "no folder" / "a.json")


def test_full_disk_leaves_no_empty_lock(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    class Full:
        def __enter__(self) -> "Full":
            return self

        def __exit__(self, *error: object) -> None:
            pass

        def write(self, data: bytes) -> int:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    real = Path.open

    def open_full(path: Path, *words: Any, **named: Any) -> Any:
        if path.suffix != ".lock":
            return real(path, *words, **named)
        real(path, *words).close()
        return Full()

    monkeypatch.setattr(Path, "open", open_full)
    with pytest.raises(FileFault, match="the disk is full"):
        claim(tmp_path / "a.json")
    assert list(tmp_path.iterdir()) == []
