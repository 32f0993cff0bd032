"""A program killed in the middle of saving leaves a whole file and whole copies.

The file is large, so that most of the time of a save goes into writing it: a save that wrote into
the file itself would last a few of the rounds at most.
"""

import random
import subprocess
import sys
import time
from pathlib import Path

import pytest

from hoopwright.files.siblings import temporaries_of
from hoopwright.files.storage import backups_of, write_whole

ROUNDS = 20
SIZE = 400_000
WHOLE = {b"first" * SIZE, b"then" * SIZE}
SAVE_FOR_EVER = f"""
import sys
from itertools import cycle
from pathlib import Path
from hoopwright.files.storage import write_whole
path = Path(sys.argv[1])
write_whole(path, b"first" * {SIZE})
print("saving", flush=True)
for data in cycle((b"then" * {SIZE}, b"first" * {SIZE})):
    write_whole(path, data)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="a process there cannot be killed mid-call")
def test_killed_program_leaves_a_whole_file(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    chance = random.Random(60)
    for _ in range(ROUNDS):
        command = [sys.executable, "-c", SAVE_FOR_EVER, str(path)]
        with subprocess.Popen(command, stdout=subprocess.PIPE) as child:
            assert child.stdout is not None
            assert child.stdout.readline() == b"saving\n"
            time.sleep(chance.uniform(0, 0.1))
            child.kill()
        assert path.read_bytes() in WHOLE
        assert all(kept.path.read_bytes() in WHOLE for kept in backups_of(path))
        assert len(temporaries_of(path)) <= 2
    write_whole(path, b"last")
    assert temporaries_of(path) == ()
    assert {p.name for p in tmp_path.iterdir()} <= {
        path.name,
        *(f"a.json.bak{n}" for n in (1, 2, 3)),
    }
