"""A farm comes back from its file as it was, and nothing but a farm file is read."""

import json
import random
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from files.varied import farms, varied_farm
from hoopwright.farm import Farm, Money
from hoopwright.files.document import catalogue_from_json, from_json, to_json
from hoopwright.files.fault import FileFault
from samples import small_farm

DATA = to_json(varied_farm())
MUTATIONS = 1000


@pytest.mark.parametrize("farm", [small_farm(), varied_farm()], ids=["small", "varied"])
def test_farm_comes_back_as_it_was(farm: Farm) -> None:
    assert from_json(to_json(farm), "") == farm


@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
@given(farms())
def test_every_farm_comes_back_as_it_was(farm: Farm) -> None:
    data = to_json(farm)
    assert from_json(data, "") == farm
    assert to_json(from_json(data, "")) == data


def test_file_starts_with_program_and_format() -> None:
    assert DATA.startswith(
        b'{\n  "program": "hoopwright",\n  "format": 3,\n  "farm": {\n    "name"'
    )
    assert DATA.endswith(b"}\n")


def test_amounts_are_texts_and_lengths_numbers_in_metres() -> None:
    farm = json.loads(DATA)["farm"]
    assert farm["money"]["freight"] == "85.50"
    assert farm["tunnels"][0]["frame"]["profile"]["span_m"] == 8.0


def test_amount_with_an_exponent_is_written_out() -> None:
    farm = small_farm().but(money=Money(freight=Decimal("1.2E+3")))
    data = to_json(farm)
    assert json.loads(data)["farm"]["money"]["freight"] == "1200"
    assert from_json(data, "") == farm


def test_fields_with_a_default_may_be_left_out() -> None:
    raw = json.loads(to_json(small_farm()))
    for name in ("money", "limits", "bench"):
        del raw["farm"][name]
    assert from_json(json.dumps(raw).encode(), "") == small_farm()


def test_byte_order_mark_does_no_harm() -> None:
    assert from_json(b"\xef\xbb\xbf" + DATA, "") == varied_farm()


def test_name_with_half_a_character_is_not_saved() -> None:
    with pytest.raises(FileFault, match="half a character") as caught:
        to_json(small_farm().but(name="Farm \ud83c"), "barn.json")
    assert caught.value.path == "farm.name"


def test_value_the_file_would_not_give_back_is_not_saved() -> None:
    with pytest.raises(FileFault, match="must be a text"):
        to_json(small_farm().but(note=5), "barn.json")


def test_farm_that_comes_back_otherwise_is_not_saved(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("hoopwright.files.document.from_json", lambda data, name: varied_farm())
    with pytest.raises(FileFault, match="nothing was written"):
        to_json(small_farm())


@pytest.mark.parametrize(
    ("change", "word"),
    [
        ({"program": "other"}, "not a farm file"),
        ({"program": None}, "not a farm file"),
        ({"format": 7}, r"newer hoopwright \(format 7\); this one reads up to 3"),
        ({"format": "1"}, "format number must be"),
        ({"format": True}, "format number must be"),
        ({"format": 1.0}, "format number must be"),
        ({"format": 0}, "format number must be"),
        ({"format": -1}, "format number must be"),
        ({"tunnels": []}, "tunnels: is not a part"),
        ({"farm": None}, "must be a group of fields, not null"),
        ({"farm": []}, "must be a group of fields, not a list"),
    ],
)
def test_what_is_no_farm_file_is_refused(change: dict[str, Any], word: str) -> None:
    with pytest.raises(FileFault, match=word):
        from_json(json.dumps(json.loads(DATA) | change).encode(), "barn.json")


@pytest.mark.parametrize("part", ["program", "format", "farm"])
def test_missing_part_is_told(part: str) -> None:
    raw = json.loads(DATA)
    del raw[part]
    with pytest.raises(FileFault, match=r"is missing|not a farm file"):
        from_json(json.dumps(raw).encode(), "barn.json")


@pytest.mark.parametrize("data", [b"[]", b"1", b'"hoopwright"', b"null", b"{}", b"true"])
def test_other_json_is_no_farm_file(data: bytes) -> None:
    with pytest.raises(FileFault, match="not a farm file"):
        from_json(data, "barn.json")


def test_file_cut_anywhere_is_told() -> None:
    for end in range(0, len(DATA.rstrip()), 97):
        with pytest.raises(FileFault):
            from_json(DATA[:end], "barn.json")


def _read_or_told(data: bytes) -> None:
    """Read a damaged file: a farm comes out, or words; anything else ends the test."""
    told = None
    try:
        farm = from_json(data, "barn.json")
    except FileFault as fault:
        told = fault
    if told is None:
        assert from_json(to_json(farm), "") == farm
    else:
        assert str(told).isprintable()
        assert told.mend


def test_broken_bytes_never_raise_anything_else() -> None:
    chance = random.Random(20)
    for _ in range(MUTATIONS):
        data = bytearray(DATA)
        at = chance.randrange(len(data))
        length = chance.randrange(1, 40)
        match chance.randrange(4):
            case 0:
                data[at] = chance.randrange(256)
            case 1:
                del data[at : at + length]
            case 2:
                data[at:at] = chance.randbytes(length)
            case _:
                other = chance.randrange(len(data))
                data[at : at + length] = data[other : other + length]
        _read_or_told(bytes(data))


ODD: tuple[Any, ...] = (
    None,
    True,
    -1,
    0,
    3,
    1e308,
    -1e-308,
    10**17,
    "",
    "x",
    "NaN",
    "\0",
    [],
    {},
    [[]],
    {"a": {}},
)


def _places(value: Any) -> list[tuple[Any, Any]]:
    keys = value.keys() if isinstance(value, dict) else range(len(value))
    found = [(value, key) for key in keys]
    for inner in list(value.values() if isinstance(value, dict) else value):
        if isinstance(inner, dict | list):
            found += _places(inner)
    return found


def test_odd_values_never_raise_anything_else() -> None:
    chance = random.Random(21)
    for _ in range(MUTATIONS):
        raw = json.loads(DATA)
        for _ in range(chance.randrange(1, 4)):
            holder, key = chance.choice(_places(raw))
            if chance.random() < 0.2:
                del holder[key]
            else:
                holder[key] = chance.choice(ODD)
        _read_or_told(json.dumps(raw).encode())


def test_catalogue_is_read_alone_and_its_faults_are_named() -> None:
    raw = json.loads(DATA)["farm"]["catalogue"]
    assert catalogue_from_json(json.dumps(raw).encode(), "c.json") == varied_farm().catalogue
    raw["films"][0]["thickness_m"] = 5
    with pytest.raises(FileFault, match=r"must be at most 0\.002") as caught:
        catalogue_from_json(json.dumps(raw).encode(), "c.json")
    assert caught.value.path == "catalogue.films[0].thickness_m"


def test_kept_sample_lies_beside_this_test() -> None:
    assert (Path(__file__).parent / "format_1.json").is_file()
