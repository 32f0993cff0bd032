"""Tracked files name no place of one machine and no host that packages come from.

The words are put together here from halves, so that this file does not hold what it forbids.
"""

import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PLACES = [
    *(rf"(?<![\w./])/{name}/" for name in ("ho" + "me", "ro" + "ot", "tm" + "p", "wor" + "k")),
    r"(?<![\w.])/Us" + r"ers/\w",
    r"\b[A-Za-z]:\\[Uu]s" + r"ers\\",
]
HOSTS = [
    *(
        rf"\b{name}\.(?:org|com|io|net)\b"
        for name in ("py" + "pi", "python" + "hosted", "npm" + "js", "deb" + "ian", "crates")
    ),
    r"\b(?:index|extra-index)-u" + r"rl\b",
    r"\bhttps?://(?:localh" + r"ost|\d+\.\d+\.\d+\.\d+)",
]


def _tracked() -> list[Path]:
    git = shutil.which("git")
    if git is None or not (ROOT / ".git").exists():
        pytest.skip("not a git checkout: there is no list of tracked files")
    listed = subprocess.run(
        [git, "-c", f"safe.directory={ROOT}", "ls-files", "-z"],
        cwd=ROOT,
        capture_output=True,
        check=True,
    )
    names = listed.stdout.decode("utf-8").split("\0")
    return [ROOT / name for name in names if name and (ROOT / name).is_file()]


@pytest.mark.parametrize("words", [PLACES, HOSTS], ids=["places", "hosts"])
def test_no_tracked_file_names_a_machine(words: list[str]) -> None:
    pattern = re.compile("|".join(words))
    found = []
    for path in _tracked():
        text = path.read_bytes().decode("utf-8", "ignore")
        found += [
            f"{path.relative_to(ROOT)}:{text.count(chr(10), 0, hit.start()) + 1}: {hit[0]}"
            for hit in pattern.finditer(text)
        ]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("see /ho" + "me/anna/farm.json", PLACES),
        (r"C:\Us" + r"ers\anna\farm.json", PLACES),
        ("from py" + "pi.org", HOSTS),
        ("http://localh" + "ost:8080", HOSTS),
    ],
)
def test_patterns_find_what_they_are_for(text: str, words: list[str]) -> None:
    assert re.search("|".join(words), text)
