"""Every old format has its step and a kept sample; newer ones are refused."""

import json
from pathlib import Path
from typing import Any

import pytest

from hoopwright.files import migrations
from hoopwright.files.document import from_json, to_json
from hoopwright.files.fault import FileFault
from hoopwright.files.migrations import FORMAT, STEPS, raise_format

SAMPLES = Path(__file__).parent


def test_every_format_before_this_one_has_its_step() -> None:
    assert set(STEPS) == set(range(1, FORMAT))


@pytest.mark.parametrize("number", range(1, FORMAT + 1))
def test_kept_sample_of_every_format_opens(number: int) -> None:
    data = (SAMPLES / f"format_{number}.json").read_bytes()
    assert json.loads(data)["format"] == number
    farm = from_json(data, f"format_{number}.json")
    assert farm.name == "Invented farm"
    assert {t.frame.profile.span_m for t in farm.tunnels} == {8.0}


def test_sample_of_the_present_format_is_written_the_same() -> None:
    data = (SAMPLES / f"format_{FORMAT}.json").read_bytes()
    assert to_json(from_json(data, "")) == data


@pytest.fixture
def three_formats(monkeypatch: pytest.MonkeyPatch) -> None:
    """Stand in for a program two formats on: first a field was named anew, then one came."""

    def rename(raw: dict[str, Any]) -> dict[str, Any]:
        farm = dict(raw["farm"])
        farm["name"] = farm.pop("title")
        return {**raw, "farm": farm}

    def add_note(raw: dict[str, Any]) -> dict[str, Any]:
        return {**raw, "farm": {**raw["farm"], "note": raw["farm"]["name"].upper()}}

    monkeypatch.setattr(migrations, "FORMAT", 3)
    monkeypatch.setattr(migrations, "STEPS", {1: rename, 2: add_note})


@pytest.mark.usefixtures("three_formats")
def test_old_file_is_raised_step_by_step() -> None:
    raw = json.loads((SAMPLES / f"format_{FORMAT}.json").read_bytes())
    raw["format"] = 1
    raw["farm"]["title"] = raw["farm"].pop("name")
    before = json.dumps(raw)
    farm = from_json(before.encode(), "old.json")
    assert (farm.name, farm.note) == ("Invented farm", "INVENTED FARM")
    assert json.dumps(raw) == before


@pytest.mark.usefixtures("three_formats")
def test_file_in_the_middle_takes_the_last_step_only() -> None:
    raw = raise_format({"format": 2, "farm": {"name": "a"}}, "old.json")
    assert raw == {"format": 3, "farm": {"name": "a", "note": "A"}}


@pytest.mark.usefixtures("three_formats")
@pytest.mark.parametrize("farm", [None, [], {}, "text", 5])
def test_damaged_old_file_is_told(farm: object) -> None:
    with pytest.raises(FileFault, match="from format 1: it is damaged"):
        raise_format({"format": 1, "farm": farm}, "old.json")


def test_format_1_said_yes_or_no_where_format_2_names_things() -> None:
    raw = json.loads((SAMPLES / "format_1.json").read_bytes())
    panels = raw["farm"]["tunnels"][0]["sides"][0]["panels"]
    panels[0]["rope"] = False
    panels[0]["bottom_seal"] = False
    raised = from_json(json.dumps(raw).encode(), "old.json")
    told = [(p.rope, p.bottom) for p in raised.tunnels[0].sides[0].panels]
    assert told[0] == ("none", "none")
    assert set(told[1:]) <= {("zigzag", "seal_profile")}
    assert {p.counted_in for p in raised.catalogue.parts if p.key == "bar_stick"} == {"m"}


def test_format_2_said_only_what_a_screen_lets_through() -> None:
    raw = json.loads((SAMPLES / "format_2.json").read_bytes())
    raised = from_json(json.dumps(raw).encode(), "old.json")
    shares = [s.get("screen_flow_share", 1.0) for t in raw["farm"]["tunnels"] for s in t["sides"]]
    sides = [side for tunnel in raised.tunnels for side in tunnel.sides]
    assert 0.4 in shares
    assert [side.screen_flow_share for side in sides] == shares
    assert [side.screen is None for side in sides] == [share == 1.0 for share in shares]
