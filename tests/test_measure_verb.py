"""The verb `measure` as people call it, on a machine without a screen."""

import os
import subprocess
import sys
from pathlib import Path

import pypdf
import pytest

from hoopwright.__main__ import main
from hoopwright.files.storage import open_farm, sample_farms


def sample(name: str) -> str:
    return next(str(p) for p in sample_farms() if p.stem == name)


def measure(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run the verb as a program of its own, without anything that names a screen."""
    pytest.importorskip("PySide6")
    screens = ("QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY")
    return subprocess.run(
        [sys.executable, "-m", "hoopwright", "measure", *arguments],
        env={name: value for name, value in os.environ.items() if name not in screens},
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )


def text_of(path: Path) -> str:
    return " ".join(" ".join(p.extract_text() for p in pypdf.PdfReader(path).pages).split())


def test_farm_gets_the_sheets_of_all_its_tunnels(tmp_path: Path) -> None:
    path = tmp_path / "sheets.pdf"
    done = measure(sample("three-fields"), "-o", str(path))
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.strip() == str(path)
    farm, _ = open_farm(Path(sample("three-fields")))
    text = text_of(path)
    for tunnel in farm.tunnels:
        assert f"Measuring sheet {tunnel.name}, {farm.name} page 1 of" in text


def test_one_tunnel_on_a4_in_metres(tmp_path: Path) -> None:
    path = tmp_path / "pond.pdf"
    arguments = ("--tunnel", "Pond tunnel", "--paper", "a4", "--units", "metric")
    done = measure(sample("three-fields"), "-o", str(path), *arguments)
    assert (done.returncode, done.stderr) == (0, "")
    text = text_of(path)
    assert "Pond tunnel" in text
    assert "Hill tunnel" not in text
    assert "1.684" in text
    # ISO 216: A4 is 210 by 297 mm, 595 by 842 points.
    box = pypdf.PdfReader(path).pages[0].mediabox
    assert (round(box.width), round(box.height)) == (595, 842)


def test_without_a_farm_the_sheet_is_blank_and_of_the_paper_of_its_units(tmp_path: Path) -> None:
    path = tmp_path / "blank.pdf"
    done = measure("-o", str(path))
    assert (done.returncode, done.stderr) == (0, "")
    assert "5-6-1/2" in text_of(path)
    box = pypdf.PdfReader(path).pages[0].mediabox
    assert (round(box.width), round(box.height)) == (612, 792)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((), "-o"),
        (("nowhere.json", "-o", "x.pdf"), "nowhere.json"),
        (("-o", "x.pdf", "--tunnel", "Pond tunnel"), "--tunnel: name the farm file"),
        ((sample("three-fields"), "-o", "x.pdf", "--tunnel", "Lake"), "Hill tunnel, Pond tunnel"),
        (("-o", "x.pdf", "--paper", "a3"), "--paper"),
        (("-o", "x.pdf", "--units", "furlongs"), "--units"),
    ],
)
def test_bad_input_is_one_line_and_writes_nothing(
    arguments: tuple[str, ...],
    words: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    try:
        status = main(("measure", *arguments))
    except SystemExit as leave:
        status = int(leave.code or 0)
    told = capsys.readouterr().err.strip()
    assert status == 2
    assert words in told
    assert told.count("\n") == 0
    assert list(tmp_path.iterdir()) == []


def test_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    done = measure("-o", str(tmp_path / "no" / "where.pdf"))
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "the folder does not exist" in done.stderr


def test_machine_without_the_toolkit_is_told_in_one_line(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    # None in the table of modules makes the import fail, as a missing library does.
    monkeypatch.setitem(sys.modules, "hoopwright.papers.form_painter", None)
    assert main(("measure", "-o", str(tmp_path / "x.pdf"))) == 2
    told = capsys.readouterr().err
    assert "no PDF can be painted here" in told
    assert told.count("\n") == 1
    assert list(tmp_path.iterdir()) == []


def test_help_names_the_verb(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main(("--help",))
    assert "measure" in capsys.readouterr().out
