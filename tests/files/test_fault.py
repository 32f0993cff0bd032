"""What a fault tells, whatever stands in the names."""

import errno
from pathlib import Path

import pytest

from hoopwright.files.fault import ChangedOnDisk, FileFault, printable, read_fault, write_fault


def test_fault_tells_file_place_fault_and_mend_in_one_line() -> None:
    fault = FileFault("is missing", file="a.json", path="farm.name", mend="Enter it.")
    assert str(fault) == "a.json, farm.name: is missing. Enter it."


def test_fault_without_a_file_starts_like_a_sentence() -> None:
    assert str(FileFault("the printer is off", mend="Turn it on.")) == (
        "The printer is off. Turn it on."
    )


def test_changed_file_is_caught_with_the_other_faults() -> None:
    with pytest.raises(FileFault):
        raise ChangedOnDisk("was changed")


@pytest.mark.parametrize("text", ["two\nlines", "bell\a", "half \ud800", "byte \udcff", "nul\0"])
def test_told_text_can_be_shown_everywhere(text: str) -> None:
    told = str(FileFault(text, file=text, path=text, mend=text))
    assert told.isprintable()
    assert told.encode()


def test_long_text_is_cut() -> None:
    assert len(printable("x" * 10_000)) < 1000


@pytest.mark.parametrize(
    ("number", "word"),
    [
        (errno.ENOSPC, "full"),
        (errno.EDQUOT, "used up"),
        (errno.EROFS, "only be read"),
        (errno.EACCES, "may not be written"),
        (errno.EPERM, "may not be written"),
        (errno.ENOENT, "folder does not exist"),
        (errno.EISDIR, "is a folder"),
        (errno.ENAMETOOLONG, "too long"),
        (errno.EIO, "system answers"),
    ],
)
def test_write_fault_names_file_reason_and_that_the_old_one_is_safe(number: int, word: str) -> None:
    told = str(write_fault(OSError(number, "words of the system"), Path("barn") / "a.json"))
    assert word in told
    assert "a.json" in told
    assert "untouched" in told


@pytest.mark.parametrize(
    ("number", "word"),
    [
        (errno.ENOENT, "no such file"),
        (errno.EACCES, "may not be read"),
        (errno.EISDIR, "is a folder"),
        (errno.EIO, "disk cannot read it"),
        (errno.ETIMEDOUT, "words of the system"),
    ],
)
def test_read_fault_names_file_and_reason(number: int, word: str) -> None:
    told = str(read_fault(OSError(number, "words of the system"), Path("a.json")))
    assert word in told
    assert told.startswith("a.json: could not be opened")


def test_fault_without_a_number_keeps_what_the_system_said() -> None:
    assert "odd" in str(write_fault(OSError("odd"), Path("a.json")))
