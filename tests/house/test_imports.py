"""Heavy libraries are loaded where they are used, not when the program starts."""

import subprocess
import sys

import pytest

HEAVY = ("numpy", "openpyxl", "pint", "pyqtgraph", "scipy")
TOOLKIT = ("PySide6", "shiboken6")


def _loaded_by(module: str) -> set[str]:
    program = f"import sys, {module}; print(*sys.modules)"
    asked = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False
    )
    assert asked.returncode == 0, asked.stderr
    return set(asked.stdout.split())


@pytest.mark.parametrize("module", ["hoopwright.__main__", "hoopwright.files", "hoopwright.plan"])
def test_model_and_verbs_load_neither_toolkit_nor_heavy_library(module: str) -> None:
    loaded = _loaded_by(module)
    assert module in loaded
    assert not loaded & {*HEAVY, *TOOLKIT}


def test_window_loads_no_heavy_library_before_it_is_painted() -> None:
    pytest.importorskip("PySide6")
    loaded = _loaded_by("hoopwright.desktop.window")
    assert "PySide6" in loaded
    assert not loaded & set(HEAVY)
