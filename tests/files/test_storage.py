"""A farm file is the old one or the new one, and the copies before are kept."""

import os
import stat
import sys
from pathlib import Path

import pytest

from files.varied import varied_farm
from hoopwright.files.document import to_json
from hoopwright.files.fault import ChangedOnDisk, FileFault
from hoopwright.files.siblings import backup_path
from hoopwright.files.storage import (
    backups_of,
    demo_catalogue,
    digest,
    digest_of,
    open_farm,
    read_resource,
    sample_farms,
    save_farm,
    write_whole,
)
from samples import small_farm

SMALL, VARIED = small_farm(), varied_farm()
POSIX_ONLY = pytest.mark.skipif(sys.platform == "win32", reason="mode bits mean nothing there")


def test_digest_is_sha256() -> None:
    # NIST, Secure Hash Standard examples (FIPS 180-4): the message "abc".
    assert digest(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


def test_saved_farm_opens_again(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    mark = save_farm(path, VARIED, None)
    assert open_farm(path) == (VARIED, mark)
    assert mark == digest(path.read_bytes()) == digest_of(path)
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.parametrize(
    "name",
    [
        "x" * 250 + ".json",
        "ä" * 125 + ".json",
        " a b .json",
        "-x",
        "a\nb",
        "'\"*?[]",
        "🍅",
        ".json",
    ],
)
def test_odd_names_are_saved_and_keep_copies(tmp_path: Path, name: str) -> None:
    path = tmp_path / name
    mark = save_farm(path, SMALL, None)
    save_farm(path, VARIED, mark)
    assert open_farm(path)[0] == VARIED
    assert [open_farm(b.path)[0] for b in backups_of(path)] == [SMALL]


@POSIX_ONLY
def test_name_that_is_no_text_is_saved(tmp_path: Path) -> None:
    path = tmp_path / os.fsdecode(b"farm \xff.json")
    try:
        save_farm(path, SMALL, None)
    except FileFault:
        pytest.skip("this disk takes names of UTF-8 alone")
    assert open_farm(path)[0] == SMALL


def test_copies_of_the_last_saves_are_kept_newest_first(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    for number in range(6):
        write_whole(path, b"%d" % number)
    assert path.read_bytes() == b"5"
    assert [b.path.read_bytes() for b in backups_of(path)] == [b"4", b"3", b"2"]
    assert len(list(tmp_path.iterdir())) == 4


def test_saving_the_same_again_does_not_push_copies_out(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    for data in (b"1", b"2", b"2", b"2", b"2"):
        write_whole(path, data)
    assert [b.path.read_bytes() for b in backups_of(path)] == [b"1"]


def test_no_copies_are_kept_when_none_are_wanted(tmp_path: Path) -> None:
    path = tmp_path / "plan.xlsx"
    write_whole(path, b"1", keep=0)
    write_whole(path, b"2", keep=0)
    assert [p.read_bytes() for p in tmp_path.iterdir()] == [b"2"]


def test_one_copy_is_replaced_by_the_next(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    for data in (b"1", b"2", b"3"):
        write_whole(path, data, keep=1)
    assert backup_path(path, 1).read_bytes() == b"2"
    assert not backup_path(path, 2).exists()


def test_copy_carries_the_day_its_contents_were_saved(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    write_whole(path, b"1")
    os.utime(path, (1_000_000_000, 1_000_000_000))
    write_whole(path, b"2")
    assert [b.saved_at.timestamp() for b in backups_of(path)] == [1_000_000_000]


def test_copy_is_made_where_a_file_has_one_name_only(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(self: Path, target: Path) -> None:
        raise OSError(1, "no links on this disk")

    monkeypatch.setattr(Path, "hardlink_to", refuse)
    path = tmp_path / "a.json"
    for data in (b"1", b"2", b"3"):
        write_whole(path, data)
    assert [b.path.read_bytes() for b in backups_of(path)] == [b"2", b"1"]


def test_link_stays_a_link_and_its_file_is_saved(tmp_path: Path) -> None:
    (tmp_path / "disk").mkdir()
    real, link = tmp_path / "disk" / "a.json", tmp_path / "link.json"
    real.write_bytes(b"1")
    link.symlink_to(real)
    write_whole(link, b"2")
    assert link.is_symlink()
    assert real.read_bytes() == b"2"
    assert [b.path.parent for b in backups_of(link)] == [real.parent.resolve()]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["disk", "link.json"]


def test_link_to_nothing_makes_the_file(tmp_path: Path) -> None:
    link = tmp_path / "link.json"
    link.symlink_to("real.json")
    write_whole(link, b"1")
    assert link.is_symlink()
    assert (tmp_path / "real.json").read_bytes() == b"1"


def test_second_name_of_a_file_keeps_what_it_held(tmp_path: Path) -> None:
    path, second = tmp_path / "a.json", tmp_path / "second.json"
    path.write_bytes(b"1")
    second.hardlink_to(path)
    write_whole(path, b"2")
    assert (path.read_bytes(), second.read_bytes()) == (b"2", b"1")


@POSIX_ONLY
@pytest.mark.parametrize("mode", [0o600, 0o640, 0o664])
def test_rights_of_the_file_stay(tmp_path: Path, mode: int) -> None:
    path = tmp_path / "a.json"
    path.write_bytes(b"1")
    path.chmod(mode)
    write_whole(path, b"2")
    assert stat.S_IMODE(path.stat().st_mode) == mode


@POSIX_ONLY
def test_rights_of_a_first_save_follow_the_user(tmp_path: Path) -> None:
    before = os.umask(0o027)
    try:
        write_whole(tmp_path / "a.json", b"1")
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "a.json").stat().st_mode) == 0o640


def test_file_changed_by_somebody_else_is_not_saved_over(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    mark = save_farm(path, SMALL, None)
    theirs = to_json(SMALL.but(name="Somebody else"))
    path.write_bytes(theirs)
    with pytest.raises(ChangedOnDisk, match="was changed") as caught:
        save_farm(path, VARIED, mark)
    assert caught.value.file == str(path)
    assert path.read_bytes() == theirs
    save_farm(path, VARIED, None)
    assert backups_of(path)[0].path.read_bytes() == theirs


def test_next_save_expects_the_one_before(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    mark = save_farm(path, SMALL, None)
    mark = save_farm(path, VARIED, mark)
    save_farm(path, SMALL, mark)
    assert open_farm(path)[0] == SMALL


def test_file_moved_away_is_saved_anew(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    mark = save_farm(path, SMALL, None)
    path.unlink()
    save_farm(path, VARIED, mark)
    assert open_farm(path)[0] == VARIED


def test_farm_that_cannot_be_written_leaves_the_file(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    save_farm(path, SMALL, None)
    with pytest.raises(FileFault, match=r"a\.json, farm\.name: holds half a character"):
        save_farm(path, SMALL.but(name="\ud800"), None)
    assert open_farm(path)[0] == SMALL
    assert backups_of(path) == ()


def test_damaged_file_names_its_kept_copies_by_date(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    save_farm(path, SMALL, None)
    save_farm(path, VARIED, None)
    path.write_bytes(bytes(2000))
    with pytest.raises(FileFault) as caught:
        open_farm(path)
    kept = backups_of(path)[0]
    assert f"a.json.bak1 of {kept.saved_at:%Y-%m-%d %H:%M}" in str(caught.value)
    assert open_farm(kept.path)[0] == SMALL


def test_very_large_file_is_told(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    with path.open("wb") as file:
        file.truncate(33 * 1024 * 1024)
    with pytest.raises(FileFault, match="over 32 MB"):
        open_farm(path)


def test_catalogue_of_the_program_is_sound_and_says_its_prices_are_invented() -> None:
    catalogue = demo_catalogue()
    assert "invented" in catalogue.note.lower()
    assert {part.origin for part in catalogue.parts} == {"invented"}


def test_missing_resource_is_told() -> None:
    with pytest.raises(FileFault, match="missing from the installation"):
        read_resource("icons/no_such.svg")


def test_sample_farms_open() -> None:
    for path in sample_farms():
        assert open_farm(path)[0].tunnels


def test_missing_samples_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(name: str) -> None:
        raise ModuleNotFoundError(name)

    monkeypatch.setattr("importlib.util.find_spec", refuse)
    with pytest.raises(FileFault, match="sample farms are missing"):
        sample_farms()
    with pytest.raises(FileFault, match="missing from the installation"):
        demo_catalogue()
