"""The command line as people call it: `hoopwright.verbs` through `hoopwright.__main__`."""

import io
import json
import os
import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

from hoopwright.__main__ import main
from hoopwright.files.storage import open_farm, sample_farms
from hoopwright.plan import plan

OWN = ("--span", "26'", "--length", "84'", "--spacing", "4'", "--leg", "5'", "--peak", "12'")


def sample(name: str) -> str:
    return next(str(p) for p in sample_farms() if p.stem == name)


def run(*arguments: str) -> int:
    try:
        return main(arguments)
    except SystemExit as leave:
        return int(leave.code or 0)


def test_own_tunnel_from_five_answers_to_the_workbook(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    farm_file, workbook = tmp_path / "own.json", tmp_path / "own.xlsx"
    assert (
        run("new", "-o", str(farm_file), *OWN, "--split", "first:36'", "--split", "second:48'") == 0
    )
    farm, _ = open_farm(farm_file)
    tunnel = farm.tunnels[0]
    # 84 ft in bays of 4 ft: 21 bays, 22 bows; the split at 36 ft is bow 10.
    assert len(plan(farm).tunnels[0].survey.bows_m) == 22
    assert tunnel.sides[0].splits[0].at_m == pytest.approx(36 * 0.3048)
    assert run("takeoff", str(farm_file), "-o", str(workbook)) == 0
    capsys.readouterr()
    assert run("plan", str(farm_file)) == 0
    printed = capsys.readouterr().out
    to_pay = plan(farm).cost.to_pay
    assert f"${to_pay:,.2f}" in printed
    book = openpyxl.load_workbook(io.BytesIO(workbook.read_bytes()), data_only=True)
    values = {c.value for row in book["Summary"].iter_rows() for c in row}
    assert float(to_pay) in values


def test_plan_proposes_splits_for_every_side_that_opens(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("plan", sample("three-fields"), "--propose") == 0
    lines = capsys.readouterr().out.splitlines()
    # Three tunnels with two opening sides each, two aims a side.
    assert len([line for line in lines if line.startswith("  ")]) == 12
    hill = lines[lines.index("Hill tunnel") + 1]
    # Opening of 80 ft between pockets of one 5-ft bay, a strip of 5 ft behind the split: 35 and
    # 40 ft is as even as bows at 5 ft allow, and the fewest are two, as one bar is too hard.
    assert "even: West side: 2 curtains, split at 40' 0\"" in hill


def test_plan_tells_what_limits_each_curtain_and_what_opens(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert run("plan", sample("stillwater-round")) == 0
    printed = capsys.readouterr().out
    assert printed.count("limited by hand force") == 2
    assert "of the floor" in printed
    assert "turns in" in printed


def test_plan_tells_the_pressure_of_every_cell(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("plan", sample("brook-gothic")) == 0
    printed = capsys.readouterr().out
    # One roof and two curtains on each side, all inflated: five cells.
    assert printed.count(", in range, full in ") == 5
    assert "not heated" in printed


def test_plan_as_json_is_si_and_complete(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("plan", sample("brook-gothic"), "--json") == 0
    told = json.loads(capsys.readouterr().out)
    survey = told["plan"]["tunnels"][0]["survey"]
    # 26 bows at 4 ft make 25 bays: 100 ft = 30.48 m.
    assert survey["bay_count"] == 25
    assert survey["length_m"] == pytest.approx(30.48, abs=1e-4)
    assert told["plan_format"] == 2
    assert told["plan"]["cost"]["to_pay"].replace(".", "").isdigit()


def test_check_of_a_sound_farm_leaves_with_zero(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("check", sample("stillwater-round")) == 0
    assert "note:" in capsys.readouterr().out


def test_check_of_a_faulty_farm_leaves_with_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = Path(sample("stillwater-round")).read_text(encoding="utf-8")
    bad = tmp_path / "bad.json"
    bad.write_text(text.replace('"count": 13', '"count": 14'), encoding="utf-8")
    assert run("check", str(bad)) == 1
    assert "14 bows make 13 bays" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("plan", "nowhere.json"), "nowhere.json"),
        (("plan",), "FARM"),
        (("new", "-o", "x.json", "--span", "5 6", "--length", "84'", "--spacing", "4'"), "--span"),
        (("new", "-o", "x.json", "--span", "0", "--length", "84'", "--spacing", "4'"), "span"),
        (("new", "-o", "x.json", "--span", "-26'", "--length", "84'", "--spacing", "4'"), "span"),
        (
            ("new", "-o", "x.json", "--span", "9" * 30, "--length", "84'", "--spacing", "4'"),
            "--span",
        ),
        (
            ("new", "-o", "x.json", "--span", "26'", "--length", "3'", "--spacing", "4'"),
            "spacing_m",
        ),
        (("new", "-o", "x.json", *OWN, "--hip", "13'"), "hip_height_m"),
        (("new", "-o", "x.json", *OWN, "--split", "36"), "--split"),
        (("new", "-o", "x.json", *OWN, "--split", "first:2'"), "--split"),
        (("fly",), "fly"),
    ],
)
def test_bad_input_is_one_line_and_status_two(
    arguments: tuple[str, ...],
    words: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("QT_QPA_PLATFORM", raising=False)
    monkeypatch.delenv("DISPLAY", raising=False)
    if arguments == ("fly",):
        monkeypatch.setenv("DISPLAY", "")
        words = "no screen"
    assert run(*arguments) == 2
    told = capsys.readouterr().err.strip()
    assert words in told
    assert "Traceback" not in told
    assert told.count("\n") == 0
    assert list(tmp_path.iterdir()) == []


def test_new_never_writes_over_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    there = tmp_path / "there.json"
    there.write_text("mine", encoding="utf-8")
    assert run("new", "-o", str(there), *OWN) == 2
    assert there.read_text(encoding="utf-8") == "mine"
    assert "there.json" in capsys.readouterr().err


@pytest.mark.parametrize("display", ["", ":7531", "nonsense", "localhost:7531"])
def test_without_a_screen_it_says_so_in_one_line(display: str) -> None:
    clean = {k: v for k, v in os.environ.items() if k not in ("QT_QPA_PLATFORM", "WAYLAND_DISPLAY")}
    done = subprocess.run(
        [sys.executable, "-m", "hoopwright"],
        env={**clean, "DISPLAY": display},
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "no screen" in done.stderr


def test_help_names_every_verb(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("--help") == 0
    told = capsys.readouterr().out
    assert all(verb in told for verb in ("plan", "takeoff", "check", "new"))
