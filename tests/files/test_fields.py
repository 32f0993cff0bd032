"""A wrong field is named by its path and told in a sentence."""

import copy
from typing import Any

import pytest

from files.varied import varied_farm
from hoopwright.files.document import farm_from_raw, farm_to_raw
from hoopwright.files.fault import FileFault
from hoopwright.files.json_text import read_json, write_json

RAW = read_json(write_json(farm_to_raw(varied_farm()), ""), "")
BOARD = "farm.tunnels[0].frame.boards[1]"
GONE = object()


def _changed(path: str, value: Any) -> Any:
    raw = copy.deepcopy(RAW)
    *way, last = path.replace("[", ".").replace("]", "").split(".")
    inner = raw
    for step in way:
        inner = inner[int(step)] if step.isdigit() else inner[step]
    if value is GONE:
        del inner[last]
    else:
        inner[int(last) if last.isdigit() else last] = value
    return raw


@pytest.mark.parametrize(
    ("path", "value", "told"),
    [
        (f"{BOARD}.hip_height_m", -3, "must be at least 0.1, not -3"),
        (f"{BOARD}.hip_height_m", 99, "must be at most 20.0, not 99"),
        (f"{BOARD}.hip_height_m", "1.5", "must be a number, not “1.5”"),
        (f"{BOARD}.hip_height_m", None, "must be a number, not null"),
        (f"{BOARD}.hip_height_m", True, "must be a number, not true"),
        (f"{BOARD}.hip_height_m", [1], "must be a number, not a list"),
        (f"{BOARD}.hip_height_m", {}, "must be a number, not a group of fields"),
        (f"{BOARD}.hip_height_m", 0.2, "the hip board must be above the baseboard"),
        (f"{BOARD}.hip_height_m", GONE, "is missing"),
        (f"{BOARD}.hip_heigth_m", 1.5, "is not a field of a farm; the name may be misspelt"),
        (f"{BOARD}.hip_board", "straw", "“straw” is none of the choices"),
        ("farm.tunnels[0].frame.boards", [], "must be a list of 2, not of 0"),
        ("farm.tunnels[0].frame.bows.count", 3.5, "must be a whole number, not 3.5"),
        ("farm.tunnels[0].frame.profile.shape", "dome", "“dome” is none of the choices"),
        ("farm.tunnels[0].frame.profile.shape", GONE, "is missing"),
        ("farm.tunnels[0].air.blower", 4, "must be a text or null, not 4"),
        ("farm.tunnels[0].name", " ", "give the tunnel a name"),
        ("farm.tunnels[1].frame.bows.positions_m", [0, 2, 1], "running positions only grow"),
        ("farm.tunnels", [], "a farm needs at least one tunnel"),
        ("farm.catalogue.films[0].rolls[0].price", 160, "an amount of money in quotes"),
        ("farm.catalogue.films[0].rolls[0].price", 160.5, "an amount of money in quotes"),
        ("farm.catalogue.films[0].rolls[0].price", "1_000", "an amount of money in quotes"),
        ("farm.catalogue.films[0].rolls[0].price", " 5", "an amount of money in quotes"),
        ("farm.catalogue.films[0].rolls[0].price", "1e3", "an amount of money in quotes"),
        ("farm.catalogue.films[0].rolls[0].price", "five", "an amount of money in quotes"),
        ("farm.money.freight", "NaN", "an amount of money"),
        ("farm.money.freight", "-5", "an amount of money"),
        ("farm.money.freight", None, "an amount of money in quotes"),
        ("farm.money.currency", "usd", "enter a three-letter code"),
        ("farm.bench.wage_per_hour", False, "an amount of money in quotes"),
        ("farm.units", "cubits", "“cubits” is none of the choices"),
    ],
)
def test_wrong_field_is_named_by_its_path(path: str, value: Any, told: str) -> None:
    with pytest.raises(FileFault) as caught:
        farm_from_raw(_changed(path, value), "barn.json")
    assert caught.value.path == path
    assert told in str(caught.value)
    assert "`" not in str(caught.value)


def test_fault_of_a_whole_group_keeps_its_own_words() -> None:
    with pytest.raises(FileFault, match="there is no roll bar 'oak'") as caught:
        farm_from_raw(_changed("farm.tunnels[0].sides[0].panels[0].bar", "oak"), "barn.json")
    assert caught.value.path == "farm"


def test_text_of_the_user_does_not_lead_the_path_astray() -> None:
    raw = _changed("farm.tunnels[0].name", RAW["farm"]["tunnels"][1]["name"] + " - at `$.x[9]`")
    raw["farm"]["tunnels"][1]["name"] = raw["farm"]["tunnels"][0]["name"]
    with pytest.raises(FileFault, match="two tunnels are called") as caught:
        farm_from_raw(raw, "barn.json")
    assert caught.value.path.startswith("farm")
