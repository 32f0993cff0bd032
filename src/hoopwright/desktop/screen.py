"""Whether a window can be opened. Asked before Qt is loaded: Qt would abort the process."""

import ctypes
import os
import sys
from pathlib import Path

DRAWN_IN_MEMORY = ("offscreen", "minimal", "vnc")
CONNECTION_LIBRARY = "libxcb.so.1"
POINTER_LIBRARY = "libxcb-cursor.so.0"


def screen_fault() -> str:
    """Return in words what stands against opening a window, or "" when nothing does."""
    if sys.platform in ("win32", "darwin") or _is_drawn_in_memory() or _wayland_answers():
        return ""
    if not _x_answers(os.environ.get("DISPLAY", "")):
        return "there is no screen to open the window on"
    if not _loads(POINTER_LIBRARY):
        return f"the screen library {POINTER_LIBRARY} is missing (Debian package libxcb-cursor0)"
    return ""


def _is_drawn_in_memory() -> bool:
    platform = os.environ.get("QT_QPA_PLATFORM", "")
    return platform.split(";")[0].split(":")[0] in DRAWN_IN_MEMORY


def _wayland_answers() -> bool:
    name = os.environ.get("WAYLAND_DISPLAY", "")
    folder = os.environ.get("XDG_RUNTIME_DIR", "")
    return bool(name) and (Path(folder) / name).exists()


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def _x_answers(display: str) -> bool:
    """Return whether an X server lets us in, by the library Qt itself connects with."""
    if not display or not _loads(CONNECTION_LIBRARY):
        return False
    xcb = ctypes.CDLL(CONNECTION_LIBRARY)
    xcb.xcb_connect.restype = ctypes.c_void_p
    connection = ctypes.c_void_p(xcb.xcb_connect(os.fsencode(display), None))
    answers = bool(xcb.xcb_connection_has_error(connection) == 0)
    xcb.xcb_disconnect(connection)
    return answers
