"""Whether the program that left something behind still runs."""

import os
import subprocess
import sys
from collections.abc import Callable
from contextlib import AbstractContextManager

import msgspec
import pytest

from hoopwright.files.owner import Owner, is_gone, is_running, this_owner


def _ended_process() -> int:
    done = subprocess.Popen([sys.executable, "-c", ""])
    done.wait()
    return done.pid


def test_this_process_runs() -> None:
    assert is_running(os.getpid())
    assert not is_gone(this_owner())


def test_ended_process_does_not() -> None:
    pid = _ended_process()
    assert not is_running(pid)
    assert is_gone(msgspec.structs.replace(this_owner(), pid=pid))


@pytest.mark.parametrize("pid", [0, -1, 2**31, 10**17])
def test_impossible_number_runs_nowhere(pid: int) -> None:
    assert not is_running(pid)


def test_process_of_somebody_else_runs(
    as_plain_user: Callable[[], AbstractContextManager[None]],
) -> None:
    with as_plain_user():
        assert is_running(1)


def test_nobody_knows_whether_a_process_elsewhere_ended() -> None:
    assert not is_gone(Owner(host="another computer", pid=_ended_process()))


def test_number_used_again_after_a_restart_is_another_process() -> None:
    owner = this_owner()
    if not owner.started:
        pytest.skip("this system does not tell when a process started")
    assert is_gone(msgspec.structs.replace(owner, started=owner.started + "0"))


def test_unknown_start_counts_as_running() -> None:
    assert not is_gone(msgspec.structs.replace(this_owner(), started=""))
