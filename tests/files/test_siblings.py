"""Names of the files beside a file stay within what a disk takes."""

import os
from pathlib import Path

import pytest

from hoopwright.files.fault import FileFault
from hoopwright.files.siblings import (
    backup_path,
    sibling,
    temporaries_of,
    temporary_path,
    true_path,
)

# Longest name of a file on the usual disks, in bytes: NAME_MAX of <limits.h> on Linux.
LONGEST = 255


def test_copy_is_named_after_the_file() -> None:
    assert backup_path(Path("barn") / "a.json", 2) == Path("barn") / "a.json.bak2"


@pytest.mark.parametrize("name", ["x" * LONGEST, "ä" * 127, "x" * (LONGEST - 4), "🍅" * 63])
def test_long_names_are_cut_to_what_a_disk_takes(name: str) -> None:
    for number in (1, 2, 3):
        made = backup_path(Path(name), number).name
        assert len(made.encode()) <= LONGEST
        assert made.endswith(f".bak{number}")


def test_long_names_that_start_alike_keep_different_copies() -> None:
    assert sibling(Path("x" * 250 + "12345"), ".lock") != sibling(
        Path("x" * 250 + "12346"), ".lock"
    )


def test_what_is_being_written_is_found_again(tmp_path: Path) -> None:
    target = tmp_path / "a[1]*.json"
    made = temporary_path(target, "new")
    made.touch()
    (tmp_path / f"{made.name.rpartition('-')[0]}-later.new").touch()
    temporary_path(tmp_path / "other.json", "new").touch()
    assert temporaries_of(target) == ((made, os.getpid()),)


@pytest.mark.parametrize("name", ["a\0b.json", "half \ud83c.json"])
def test_impossible_names_are_told(name: str) -> None:
    with pytest.raises(FileFault, match="no name a file can have"):
        true_path(Path(name))


def test_links_are_followed_also_to_a_file_that_is_not_there(tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to("middle")
    (tmp_path / "middle").symlink_to("end")
    assert true_path(tmp_path / "link") == tmp_path.resolve() / "end"


def test_links_in_a_circle_are_told(tmp_path: Path) -> None:
    (tmp_path / "a").symlink_to("b")
    (tmp_path / "b").symlink_to("a")
    with pytest.raises(OSError, match="symbolic links"):
        true_path(tmp_path / "a")
