"""The farm on disk: opened whole, saved whole, recovered, guarded against two hands at once."""

from hoopwright.files.document import from_json, to_json
from hoopwright.files.fault import ChangedOnDisk, FileFault
from hoopwright.files.storage import open_farm, save_farm, write_whole

__all__ = [
    "ChangedOnDisk",
    "FileFault",
    "from_json",
    "open_farm",
    "save_farm",
    "to_json",
    "write_whole",
]
