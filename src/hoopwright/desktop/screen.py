"""Whether there is a screen to open a window on. Asked before Qt is loaded: Qt would abort."""

import os
import re
import socket
import sys
from pathlib import Path

TIMEOUT_S = 2.0
X_PORT = 6000
DRAWN_IN_MEMORY = ("offscreen", "minimal", "vnc")


def has_screen() -> bool:
    """Return whether a window can be shown."""
    if sys.platform in ("win32", "darwin"):
        return True
    platform = os.environ.get("QT_QPA_PLATFORM", "").split(":")[0].split(";")[0]
    if platform in DRAWN_IN_MEMORY:
        return True
    return _wayland_answers() or _x_answers(os.environ.get("DISPLAY", ""))


def _wayland_answers() -> bool:
    name = os.environ.get("WAYLAND_DISPLAY", "")
    folder = os.environ.get("XDG_RUNTIME_DIR", "")
    return bool(name) and (Path(folder) / name).exists()


def _x_answers(display: str) -> bool:
    """Return whether an X server answers at a display such as `:0`, `unix:0` or `host:10.0`."""
    parts = re.fullmatch(r"(?P<host>[^:]*):(?P<number>\d{1,5})(\.\d+)?", display)
    if parts is None:
        return False
    number = int(parts["number"])
    if parts["host"] in ("", "unix"):
        path = f"/tmp/.X11-unix/X{number}"
        return _connects(socket.AF_UNIX, path) or _connects(socket.AF_UNIX, f"\0{path}")
    return _connects(socket.AF_INET, (parts["host"], X_PORT + number))


def _connects(family: int, address: object) -> bool:
    with socket.socket(family, socket.SOCK_STREAM) as probe:
        probe.settimeout(TIMEOUT_S)
        try:
            probe.connect(address)  # type: ignore[arg-type]  # address fits its family
        except (OSError, OverflowError):
            return False
    return True
