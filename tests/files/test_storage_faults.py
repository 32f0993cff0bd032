"""Whatever stops a save, the old file stays and the fault is told."""

import contextlib
import errno
import io
import os
import shutil
import sys
import time
from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any, NoReturn

import pytest

from hoopwright.files.document import to_json
from hoopwright.files.fault import FileFault
from hoopwright.files.siblings import backup_path, temporary_path
from hoopwright.files.storage import digest_of, open_farm, save_farm, write_whole
from samples import small_farm

POSIX_ONLY = pytest.mark.skipif(sys.platform == "win32", reason="no such files there")
PlainUser = Callable[[], AbstractContextManager[None]]


@pytest.fixture
def saved(tmp_path: Path) -> Path:
    """A file that was saved four times, so that all its copies are there."""
    path = tmp_path / "a.json"
    for data in (b"0", b"1", b"2", b"3"):
        write_whole(path, data)
    path.chmod(0o600)
    return path


def _assert_stayed(path: Path) -> None:
    assert path.read_bytes() == b"3"
    kept = {p.read_bytes() for p in path.parent.glob("*.bak*")}
    assert {b"2", b"1"} <= kept
    assert not list(path.parent.glob(".hw-*"))


def _refuse(number: int) -> Callable[..., NoReturn]:
    def refuse(*args: Any, **named: Any) -> NoReturn:
        raise OSError(number, os.strerror(number))

    return refuse


class _FullFile(io.BufferedWriter):
    """A file on a disk that fills up in the middle."""

    def write(self, data: Any) -> int:
        super().write(data[: len(data) // 2])
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def test_disk_that_fills_up_in_the_middle(saved: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Path, "open", lambda path, mode: _FullFile(io.FileIO(path, mode)))
    with pytest.raises(FileFault, match=r"a\.json: could not be written: the disk is full"):
        write_whole(saved, b"four")
    monkeypatch.undo()
    _assert_stayed(saved)


@pytest.mark.parametrize(
    ("place", "name", "number", "word"),
    [
        (Path, "open", errno.EACCES, "it may not be written"),
        (os, "fsync", errno.EIO, "the system answers"),
        (os, "fsync", errno.ENOSPC, "the disk is full"),
        (os, "fsync", errno.EDQUOT, "used up"),
        (Path, "chmod", errno.EPERM, "it may not be written"),
        (Path, "read_bytes", errno.EIO, "the system answers"),
    ],
)
def test_step_that_fails_leaves_the_old_file(
    saved: Path,
    monkeypatch: pytest.MonkeyPatch,
    place: Any,
    name: str,
    number: int,
    word: str,
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(place, name, _refuse(number))
        with pytest.raises(FileFault, match=word) as caught:
            write_whole(saved, b"4")
    assert caught.value.file == str(saved)
    assert "untouched" in caught.value.mend
    _assert_stayed(saved)


@pytest.mark.parametrize(
    ("number", "word"),
    [(errno.EROFS, "this disk can only be read"), (errno.EMFILE, "the system answers")],
)
def test_folder_that_takes_no_file_leaves_the_old_one(
    saved: Path, monkeypatch: pytest.MonkeyPatch, number: int, word: str
) -> None:
    real = Path.open

    def refuse_beside(path: Path, mode: str) -> Any:
        if path != saved:
            raise OSError(number, os.strerror(number))
        return real(path, mode)

    with monkeypatch.context() as patch:
        patch.setattr(Path, "open", refuse_beside)
        with pytest.raises(FileFault, match=word):
            write_whole(saved, b"4")
    _assert_stayed(saved)


def test_copy_that_cannot_be_made_stops_the_save(
    saved: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(Path, "hardlink_to", _refuse(errno.EPERM))
        patch.setattr(shutil, "copy2", _refuse(errno.ENOSPC))
        with pytest.raises(FileFault, match="the disk is full"):
            write_whole(saved, b"4")
    _assert_stayed(saved)


@pytest.mark.parametrize("failing", [1, 2, 3, 4])
def test_each_rename_may_fail(saved: Path, monkeypatch: pytest.MonkeyPatch, failing: int) -> None:
    real, calls = Path.replace, iter(range(1, 9))

    def replace(source: Path, target: Path) -> Path:
        if next(calls) == failing:
            raise OSError(errno.EIO, os.strerror(errno.EIO))
        return real(source, target)

    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", replace)
        with pytest.raises(FileFault, match="could not be written"):
            write_whole(saved, b"4")
    _assert_stayed(saved)


def test_four_renames_make_a_save(saved: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real, targets = Path.replace, []

    def replace(source: Path, target: Path) -> Path:
        targets.append(target)
        return real(source, target)

    monkeypatch.setattr(Path, "replace", replace)
    write_whole(saved, b"4")
    assert targets == [*(backup_path(saved, n) for n in (3, 2, 1)), saved]


def test_folder_that_cannot_be_synced_does_not_undo_a_save(
    saved: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(os, "open", _refuse(errno.EINVAL))
        write_whole(saved, b"4")
    assert saved.read_bytes() == b"4"


@pytest.fixture
def waits(monkeypatch: pytest.MonkeyPatch) -> list[float]:
    """What would have been waited, s."""
    found: list[float] = []
    monkeypatch.setattr(time, "sleep", found.append)
    return found


def _busy(number: int) -> OSError:
    error = PermissionError(errno.EACCES, "in use")
    error.winerror = number  # type: ignore[attr-defined]  # only Windows sets it
    return error


@pytest.mark.parametrize("number", [5, 32, 33])
def test_file_that_another_program_looks_at_is_tried_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, waits: list[float], number: int
) -> None:
    real, refusals = Path.replace, [_busy(number)] * 3

    def replace(source: Path, target: Path) -> Path:
        if refusals:
            raise refusals.pop()
        return real(source, target)

    monkeypatch.setattr(Path, "replace", replace)
    write_whole(tmp_path / "a.json", b"1")
    assert (tmp_path / "a.json").read_bytes() == b"1"
    assert waits == [0.02, 0.04, 0.08]


def test_file_that_stays_in_use_is_told_in_the_end(
    saved: Path, monkeypatch: pytest.MonkeyPatch, waits: list[float]
) -> None:
    def replace(source: Path, target: Path) -> Path:
        raise _busy(32)

    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", replace)
        with pytest.raises(FileFault, match="could not be written"):
            write_whole(saved, b"4")
    assert 1 < sum(waits) < 4
    _assert_stayed(saved)


@pytest.mark.usefixtures("waits")
def test_other_faults_are_told_at_once(
    saved: Path, monkeypatch: pytest.MonkeyPatch, waits: list[float]
) -> None:
    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", _refuse(errno.EACCES))
        with pytest.raises(FileFault, match="may not be written"):
            write_whole(saved, b"4")
    assert waits == []


def _fill(path: Path) -> None:
    """Write until the disk takes no more."""
    with path.open("wb", buffering=0) as rest, contextlib.suppress(OSError):
        while rest.write(bytes(4096)):
            pass


def test_full_disk_keeps_the_old_file(small_disk: Path) -> None:
    path = small_disk / "a.json"
    mark = save_farm(path, small_farm(), None)
    with pytest.raises(FileFault, match="the disk is full"):
        write_whole(small_disk / "plan.pdf", bytes(300_000))
    _fill(small_disk / "rest")
    with pytest.raises(FileFault, match="the disk is full"):
        save_farm(path, small_farm().but(name="Other"), mark)
    assert open_farm(path) == (small_farm(), mark)
    assert sorted(p.name for p in small_disk.iterdir()) == ["a.json", "rest"]


def test_read_only_disk_opens_and_tells_at_the_save(
    small_disk: Path, make_read_only: Callable[[Path], None]
) -> None:
    path = small_disk / "a.json"
    mark = save_farm(path, small_farm(), None)
    make_read_only(small_disk)
    farm, _ = open_farm(path)
    with pytest.raises(FileFault, match="this disk can only be read"):
        save_farm(path, farm.but(name="Other"), mark)
    with pytest.raises(FileFault, match="this disk can only be read"):
        save_farm(small_disk / "other.json", farm, None)
    assert open_farm(path)[0] == small_farm()


def test_read_only_folder_is_told(open_folder: Path, as_plain_user: PlainUser) -> None:
    path = open_folder / "a.json"
    path.write_bytes(to_json(small_farm()))
    path.chmod(0o666)
    open_folder.chmod(0o555)
    with as_plain_user(), pytest.raises(FileFault, match="may not be written"):
        save_farm(path, small_farm().but(name="Other"), None)
    assert open_farm(path)[0] == small_farm()


def test_read_only_file_is_told(open_folder: Path, as_plain_user: PlainUser) -> None:
    path = open_folder / "a.json"
    path.write_bytes(to_json(small_farm()))
    path.chmod(0o444)
    open_folder.chmod(0o777)
    with as_plain_user(), pytest.raises(FileFault, match="may not be written"):
        save_farm(path, small_farm().but(name="Other"), None)
    assert open_farm(path)[0] == small_farm()


def test_file_of_another_user_is_not_read(open_folder: Path, as_plain_user: PlainUser) -> None:
    path = open_folder / "a.json"
    path.write_bytes(to_json(small_farm()))
    path.chmod(0o000)
    if os.geteuid() != 0 and os.access(path, os.R_OK):
        pytest.skip("this user may read everything")
    with as_plain_user(), pytest.raises(FileFault, match="may not be read"):
        open_farm(path)


def test_folder_that_may_not_be_entered_is_told(
    open_folder: Path, as_plain_user: PlainUser
) -> None:
    inner = open_folder / "inner"
    inner.mkdir(mode=0o000)
    with as_plain_user():
        with pytest.raises(FileFault, match="may not be written"):
            save_farm(inner / "a.json", small_farm(), "0" * 64)
        with pytest.raises(FileFault, match="may not be read"):
            open_farm(inner / "a.json")


@pytest.mark.parametrize(
    ("parts", "writing", "reading"),
    [
        (("no folder", "a.json"), "the folder does not exist", "no such file"),
        ((".",), "it is a folder", "it is a folder"),
        (("a.json", "b.json"), "is a file", "is a file"),
        (("x" * 300,), "the name is too long", "the name is too long"),
        (("nul\0.json",), "no name a file can have", "no name a file can have"),
        (("half \ud83c.json",), "no name a file can have", "no name a file can have"),
    ],
)
def test_impossible_places_are_told(
    saved: Path, parts: tuple[str, ...], writing: str, reading: str
) -> None:
    path = saved.parent.joinpath(*parts)
    with pytest.raises(FileFault, match=writing):
        save_farm(path, small_farm(), None)
    with pytest.raises(FileFault, match=reading):
        open_farm(path)
    with pytest.raises(FileFault, match=reading):
        digest_of(path)
    _assert_stayed(saved)


@POSIX_ONLY
def test_links_in_a_circle_are_told(tmp_path: Path) -> None:
    (tmp_path / "a.json").symlink_to("b.json")
    (tmp_path / "b.json").symlink_to("a.json")
    with pytest.raises(FileFault, match="circle"):
        write_whole(tmp_path / "a.json", b"1")
    with pytest.raises(FileFault, match="circle"):
        open_farm(tmp_path / "a.json")
    assert (tmp_path / "a.json").is_symlink()


@POSIX_ONLY
def test_device_is_neither_read_nor_replaced(tmp_path: Path) -> None:
    pipe = tmp_path / "a.json"
    os.mkfifo(pipe)
    with pytest.raises(FileFault, match="is a device"):
        open_farm(pipe)
    with pytest.raises(FileFault, match="is a device"):
        write_whole(pipe, b"1")
    assert pipe.is_fifo()


def test_what_an_earlier_process_of_this_number_left_does_not_stop_a_save(saved: Path) -> None:
    temporary_path(saved, "new").write_bytes(b"half")
    write_whole(saved, b"4")
    assert saved.read_bytes() == b"4"
    assert not list(saved.parent.glob(".hw-*"))
