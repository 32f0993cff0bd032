"""Unsaved work is found again, and offered only when it is not in the farm file."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from files.varied import varied_farm
from hoopwright.files.fault import FileFault
from hoopwright.files.recovery import copy_path, damaged_copies, drop_copy, find_copies, keep_copy
from hoopwright.files.storage import save_farm, write_whole
from samples import small_farm

SAVED, EDITED = small_farm(), small_farm().but(name="Edited")
TESTS = Path(__file__).parents[1]
KEEP = """
import sys
from pathlib import Path
from samples import small_farm
from hoopwright.files.recovery import keep_copy
keep_copy(Path(sys.argv[1]), None, None, small_farm(), "untitled-1")
print("kept", flush=True)
sys.stdin.readline()
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The folder of the copies, not made yet."""
    return tmp_path / "data" / "recovery"


def test_unsaved_work_on_the_same_file_is_offered(tmp_path: Path, folder: Path) -> None:
    path = tmp_path / "a.json"
    base = save_farm(path, SAVED, None)
    kept = keep_copy(folder, path, base, EDITED)
    (found,) = find_copies(folder)
    assert (found.path, found.farm_path, found.base_digest) == (kept, path.resolve(), base)
    assert (found.farm, found.standing) == (EDITED, "same")


def test_unsaved_work_on_a_file_changed_since_is_offered_beside_it(
    tmp_path: Path, folder: Path
) -> None:
    path = tmp_path / "a.json"
    base = save_farm(path, SAVED, None)
    keep_copy(folder, path, base, EDITED)
    save_farm(path, varied_farm(), None)
    assert [(c.farm, c.standing) for c in find_copies(folder)] == [(EDITED, "changed")]


def test_work_that_is_in_the_file_is_not_offered(tmp_path: Path, folder: Path) -> None:
    path = tmp_path / "a.json"
    base = save_farm(path, SAVED, None)
    keep_copy(folder, path, base, EDITED)
    save_farm(path, EDITED, base)
    assert find_copies(folder) == ()
    assert damaged_copies(folder) == ()


def test_work_on_a_file_that_is_gone_is_offered(tmp_path: Path, folder: Path) -> None:
    path = tmp_path / "a.json"
    base = save_farm(path, SAVED, None)
    keep_copy(folder, path, base, SAVED)
    path.unlink()
    assert [(c.farm, c.standing) for c in find_copies(folder)] == [(SAVED, "gone")]


def test_work_on_a_file_that_is_damaged_is_offered(tmp_path: Path, folder: Path) -> None:
    path = tmp_path / "a.json"
    base = save_farm(path, SAVED, None)
    keep_copy(folder, path, base, SAVED)
    path.write_bytes(bytes(1000))
    assert [(c.farm, c.standing) for c in find_copies(folder)] == [(SAVED, "changed")]


def test_farms_never_saved_are_told_apart_by_their_token(folder: Path) -> None:
    keep_copy(folder, None, None, SAVED, "untitled-1")
    keep_copy(folder, None, None, EDITED, "untitled-2")
    found = {c.untitled: (c.farm, c.farm_path, c.standing) for c in find_copies(folder)}
    assert found == {
        "untitled-1": (SAVED, None, "never_saved"),
        "untitled-2": (EDITED, None, "never_saved"),
    }


def test_later_copy_of_one_farm_replaces_the_one_before(tmp_path: Path, folder: Path) -> None:
    for name in ("Edited", "Edited again"):
        keep_copy(folder, tmp_path / "a.json", None, SAVED.but(name=name))
    assert [c.farm.name for c in find_copies(folder)] == ["Edited again"]
    assert len(list(folder.iterdir())) == 1


def test_newest_work_comes_first(folder: Path) -> None:
    for age_s, token in ((300, "b"), (100, "a"), (200, "c")):
        kept = keep_copy(folder, None, None, SAVED, token)
        os.utime(kept, (1_000_000_000 - age_s, 1_000_000_000 - age_s))
    assert [c.untitled for c in find_copies(folder)] == ["a", "c", "b"]


def test_dropped_copy_is_gone(tmp_path: Path, folder: Path) -> None:
    kept = keep_copy(folder, tmp_path / "a.json", None, EDITED)
    assert copy_path(folder, tmp_path / "a.json") == kept
    drop_copy(kept)
    drop_copy(kept)
    assert find_copies(folder) == ()


def test_two_names_of_one_farm_have_one_copy(tmp_path: Path, folder: Path) -> None:
    (tmp_path / "link.json").symlink_to("a.json")
    assert copy_path(folder, tmp_path / "link.json") == copy_path(folder, tmp_path / "a.json")


@pytest.mark.parametrize("name", ["ä ö.json", "100%.json", "a\nb.json", os.fsdecode(b"\xff.json")])
def test_odd_names_are_found_again(tmp_path: Path, folder: Path, name: str) -> None:
    keep_copy(folder, tmp_path / name, None, EDITED)
    assert [c.farm_path for c in find_copies(folder)] == [tmp_path.resolve() / name]


def test_no_folder_holds_no_copies(folder: Path) -> None:
    assert find_copies(folder) == ()
    assert damaged_copies(folder) == ()


@pytest.mark.parametrize(
    "data", [b"", bytes(90), b"[]", b"{}", b'{"copy": {}}', b'{"copy": 5, "document": 1}', b"\xff"]
)
def test_damaged_copy_is_listed_and_the_others_are_found(folder: Path, data: bytes) -> None:
    keep_copy(folder, None, None, EDITED, "untitled-1")
    (folder / "recovery-0123.json").write_bytes(data)
    assert [c.farm for c in find_copies(folder)] == [EDITED]
    (fault,) = damaged_copies(folder)
    assert "recovery-0123.json" in str(fault)


def test_copy_of_a_newer_program_is_listed(folder: Path) -> None:
    kept = keep_copy(folder, None, None, EDITED, "untitled-1")
    kept.write_bytes(kept.read_bytes().replace(b'"format": 3', b'"format": 7'))
    assert find_copies(folder) == ()
    assert "format 7" in str(damaged_copies(folder)[0])


def test_work_of_a_window_that_still_runs_is_left_alone_until_it_is_killed(folder: Path) -> None:
    with subprocess.Popen(
        [sys.executable, "-c", KEEP, str(folder)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": str(TESTS)},
    ) as child:
        assert child.stdout is not None
        assert child.stdout.readline() == b"kept\n"
        assert find_copies(folder) == ()
        child.kill()
    assert [c.farm for c in find_copies(folder)] == [SAVED]


def test_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    with pytest.raises(FileFault, match="could not be written"):
        keep_copy(tmp_path / "file" / "recovery", None, None, EDITED, "untitled-1")


def test_copy_that_cannot_be_removed_is_told(tmp_path: Path) -> None:
    with pytest.raises(FileFault, match="could not be written"):
        drop_copy(tmp_path)


def test_copies_keep_no_older_ones(tmp_path: Path, folder: Path) -> None:
    kept = keep_copy(folder, None, None, SAVED, "untitled-1")
    write_whole(kept, b"x", keep=0)
    assert [p.name for p in folder.iterdir()] == [kept.name]
