"""The one exception whose text is fit to show, and the words for what a disk answers.

Whoever catches a FileFault shows its text as it is: a notice in the window, one line without it.
"""

import errno
from pathlib import Path

TEXT_LIMIT = 600

_SPACE = "Free some space, or save on another disk."
_ELSEWHERE = "Save in another folder."
_RIGHTS = "Save in another folder, or change the rights of the file and its folder."

_WRITING = {
    errno.ENOSPC: ("the disk is full", _SPACE),
    errno.EDQUOT: ("your share of the disk is used up", _SPACE),
    errno.EFBIG: ("it is too large for this disk", "Save on another disk."),
    errno.EROFS: ("this disk can only be read", _ELSEWHERE),
    errno.EACCES: ("it may not be written", _RIGHTS),
    errno.EPERM: ("it may not be written", _RIGHTS),
    errno.ENOENT: ("the folder does not exist", "Make the folder, or save in another one."),
    errno.ENOTDIR: ("one of the folders in its name is a file", _ELSEWHERE),
    errno.EISDIR: ("it is a folder, not a file", "Give the name of a file in it."),
    errno.ENAMETOOLONG: ("the name is too long", "Use a shorter name."),
    errno.ELOOP: ("its links lead in a circle", _ELSEWHERE),
}
_READING = {
    errno.ENOENT: ("there is no such file", "Check the name and the folder."),
    errno.ENOTDIR: ("one of the folders in its name is a file", "Check the name and the folder."),
    errno.EISDIR: ("it is a folder, not a file", "Give the name of a file in it."),
    errno.EACCES: ("it may not be read", "Change the rights of the file and its folder."),
    errno.EPERM: ("it may not be read", "Change the rights of the file and its folder."),
    errno.ENAMETOOLONG: ("the name is too long", "Check the name."),
    errno.ELOOP: ("its links lead in a circle", "Open the file itself, not a link to it."),
    errno.EIO: ("the disk cannot read it", "Copy it from a backup disk, or open a kept copy."),
}


class FileFault(Exception):  # noqa: N818 - it is a notice to a user more than an error
    """Something on a disk, in a file or at a printer went wrong, in words for the user.

    Attributes:
        what: What failed, without a full stop.
        file: Which file, or "" when it has no name yet.
        path: Place in the file, such as farm.tunnels[0].name or line 3, column 1; or "".
        mend: What to do, in whole sentences.
    """

    def __init__(self, what: str, *, file: str = "", path: str = "", mend: str = "") -> None:
        self.what = printable(what)
        self.file = printable(file)
        self.path = printable(path)
        self.mend = printable(mend)
        super().__init__(self.what)

    def __str__(self) -> str:
        place = ", ".join(part for part in (self.file, self.path) if part)
        told = f"{place}: {self.what}." if place else f"{self.what[:1].upper()}{self.what[1:]}."
        return f"{told} {self.mend}".rstrip()


class ChangedOnDisk(FileFault):
    """The file is no longer the one that was opened; nothing was written."""


def printable(text: str) -> str:
    """Return a text as one line that every screen and log can show, cut when it is very long."""
    if len(text) > TEXT_LIMIT:
        text = text[:TEXT_LIMIT] + "…"
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text)


def write_fault(error: OSError, file: Path) -> FileFault:
    """Return the words for a write that failed and left the old file as it was."""
    what, mend = _WRITING.get(error.errno or 0, (_answer(error), f"Try again. {_ELSEWHERE}"))
    return FileFault(
        f"could not be written: {what}",
        file=str(file),
        mend=f"{mend} What was there before is untouched.",
    )


def read_fault(error: OSError, file: Path) -> FileFault:
    """Return the words for a file that could not be read."""
    what, mend = _READING.get(error.errno or 0, (_answer(error), "Try again, or copy the file."))
    return FileFault(f"could not be opened: {what}", file=str(file), mend=mend)


def _answer(error: OSError) -> str:
    return f"the system answers “{error.strerror or error}”"
