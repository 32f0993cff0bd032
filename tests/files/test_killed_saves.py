"""A program killed in the middle of saving leaves a whole farm and whole copies."""

import os
import random
import subprocess
import sys
import time
from pathlib import Path

import pytest

from files.varied import varied_farm
from hoopwright.files.siblings import temporaries_of
from hoopwright.files.storage import backups_of, open_farm, save_farm
from samples import small_farm

ROUNDS = 20
TESTS = Path(__file__).parents[1]
SAVE_FOR_EVER = """
import sys
from pathlib import Path
from files.varied import varied_farm
from samples import small_farm
from hoopwright.files.storage import save_farm
farms, path, saves = (small_farm(), varied_farm()), Path(sys.argv[1]), 0
while True:
    save_farm(path, farms[saves % 2], None)
    saves += 1
    if saves == 2:
        print("saving", flush=True)
"""


def _start(path: Path) -> subprocess.Popen[bytes]:
    return subprocess.Popen(
        [sys.executable, "-c", SAVE_FOR_EVER, str(path)],
        stdout=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": str(TESTS)},
    )


@pytest.mark.skipif(sys.platform == "win32", reason="a process there cannot be killed mid-call")
def test_killed_program_leaves_a_whole_farm(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    chance = random.Random(60)
    whole = (small_farm(), varied_farm())
    for _ in range(ROUNDS):
        with _start(path) as child:
            assert child.stdout is not None
            assert child.stdout.readline() == b"saving\n"
            time.sleep(chance.uniform(0, 0.03))
            child.kill()
        assert open_farm(path)[0] in whole
        assert all(open_farm(kept.path)[0] in whole for kept in backups_of(path))
        assert len(temporaries_of(path)) <= 2
    save_farm(path, small_farm(), None)
    assert temporaries_of(path) == ()
    assert {p.name for p in tmp_path.iterdir()} <= {
        "a.json",
        *(f"a.json.bak{n}" for n in (1, 2, 3)),
    }
