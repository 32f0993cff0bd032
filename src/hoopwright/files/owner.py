"""Which running program a lock or a recovery copy belongs to.

A process number alone is used again after a restart, so the start of the process stands with it
where the system tells it (Linux).
"""

import os
import socket
import sys
from pathlib import Path

from msgspec import Struct


class Owner(Struct, frozen=True, kw_only=True):
    """One process of this program.

    Attributes:
        host: Name of the computer.
        pid: Process number on it.
        started: What the system says of its start, or "" where it says nothing.
    """

    host: str
    pid: int
    started: str = ""


def this_owner() -> Owner:
    """Return the process that asks."""
    pid = os.getpid()
    return Owner(host=socket.gethostname(), pid=pid, started=_started(pid))


def is_gone(owner: Owner) -> bool:
    """Return whether an owner on this computer has ended; one elsewhere is never known to."""
    if owner.host != socket.gethostname():
        return False
    if not is_running(owner.pid):
        return True
    started = _started(owner.pid)
    return bool(started and owner.started) and started != owner.started


def is_running(pid: int) -> bool:
    """Return whether a process of that number runs on this computer."""
    if not 0 < pid < 2**31:
        return False
    if sys.platform == "win32":
        return _is_running_windows(pid)
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True


def _started(pid: int) -> str:
    """Return the start of a process in ticks since the computer started.

    Source:
        Linux manual page proc_pid_stat(5), field 22; the name in field 2 may hold blanks.
    """
    try:
        fields = Path(f"/proc/{pid}/stat").read_text("utf-8", "replace").rpartition(")")[2].split()
    except OSError:
        return ""
    return fields[19] if len(fields) > 19 else ""


if sys.platform == "win32":

    def _is_running_windows(pid: int) -> bool:
        """Ask the kernel: a signal of 0 would end the process on this system."""
        import ctypes

        query_limited, still_active, denied = 0x1000, 259, 5
        kernel = ctypes.WinDLL("kernel32", use_last_error=True)
        handle = kernel.OpenProcess(query_limited, False, pid)
        if not handle:
            return ctypes.get_last_error() == denied
        code = ctypes.c_ulong()
        kernel.GetExitCodeProcess(handle, ctypes.byref(code))
        kernel.CloseHandle(handle)
        return code.value == still_active
