"""What is refused in JSON, and what passes. Grammar: RFC 8259; unpaired halves: its section 8.2."""

import json
from decimal import Decimal

import pytest

from hoopwright.files.fault import FileFault
from hoopwright.files.json_text import read_json, write_json

MB = 1024 * 1024


@pytest.mark.parametrize(
    ("data", "word"),
    [
        (b"", "empty"),
        (b" \r\n\t", "empty"),
        (bytes(4096), "zeros"),
        ('{"a": 1}'.encode("utf-16"), "UTF-16"),
        ('{"a": 1}'.encode("utf-16-le"), "UTF-16"),
        ('{"a": 1}'.encode("utf-16-be"), "UTF-16"),
        ('{"a": "Gewächs"}'.encode("latin-1"), "not UTF-8"),
        (b'{"a": NaN}', "NaN"),
        (b'{"a": Infinity}', "Infinity"),
        (b'{"a": -Infinity}', "-Infinity"),
        (b'{"a": 1e999}', "too large"),
        (b'{"a": -1e999}', "too large"),
        (b'{"a": ' + b"7" * 5000 + b"}", "digits"),
        (b'{"a": -' + b"7" * 19 + b"}", "digits"),
        (b'{"a": 1, "b": 2, "a": 1}', "\u201ca\u201d stands twice"),
        (b"[" * 100_000, "nested"),
        (b'{"a":' * 100_000, "nested"),
        (b'{"a": ["\\ud800"]}', "half a character"),
        (b'{"\\uDFFF": 1}', "half a character"),
        (b'{"a": 1,}', "line 1, column"),
        (b'{"a": "b\n"}', "line 1, column"),
        (b"{'a': 1}", "line 1, column 2"),
        (b'{"a": 1} more', "line 1, column 10"),
        (b'{\n"a": 01}', "line 2, column"),
        (b" " * (33 * MB), "over 32 MB"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_unsound_text_is_refused_with_words(data: bytes, word: str) -> None:
    with pytest.raises(FileFault) as caught:
        read_json(data, "barn.json")
    told = str(caught.value)
    assert word in told
    assert told.startswith("barn.json")
    assert caught.value.mend


def test_place_of_half_a_character_is_named() -> None:
    with pytest.raises(FileFault) as caught:
        read_json(b'{"farm": {"tunnels": [{}, {"name": "\\ud83d"}]}}', "barn.json")
    assert caught.value.path == "farm.tunnels[1].name"


def test_byte_order_mark_passes() -> None:
    assert read_json(b'\xef\xbb\xbf{"a": 1}', "") == {"a": 1}


def test_escaped_pair_is_one_character() -> None:
    assert read_json(b'["\\ud83c\\udf45"]', "") == ["\N{TOMATO}"]


def test_eighteen_digits_pass() -> None:
    assert read_json(b"[-999999999999999999]", "") == [-999999999999999999]


def test_written_text_is_plain_json_with_a_newline_at_its_end() -> None:
    data = write_json({"b": (1.5, "é"), "a": Decimal("1E+3")}, "")
    assert data == '{\n  "b": [\n    1.5,\n    "é"\n  ],\n  "a": "1000"\n}\n'.encode()
    assert json.loads(data) == {"b": [1.5, "é"], "a": "1000"}


def test_half_a_character_is_not_written() -> None:
    with pytest.raises(FileFault, match="half a character") as caught:
        write_json({"farm": {"name": "\ud800"}}, "barn.json")
    assert caught.value.path == "farm.name"


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_number_that_is_not_finite_is_not_written(number: float) -> None:
    with pytest.raises(ValueError, match="not JSON compliant"):
        write_json([number], "")


def test_foreign_value_is_not_written() -> None:
    with pytest.raises(TypeError, match="object has no place"):
        write_json([object()], "")
