"""The import contracts hold, and no package is left out of them."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "src" / "hoopwright"
PYPROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
CONTRACTS = {c["id"]: c for c in PYPROJECT["tool"]["importlinter"]["contracts"]}


def _parts() -> set[str]:
    folders = {p.parent.name for p in PACKAGE.glob("*/__init__.py")}
    modules = {p.stem for p in PACKAGE.glob("*.py")} - {"__init__"}
    return {f"hoopwright.{name}" for name in folders | modules}


def test_contracts_hold() -> None:
    program = "from importlinter.cli import lint_imports_command; lint_imports_command()"
    asked = subprocess.run(
        [sys.executable, "-c", program, "--no-cache", "--no-logo"],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONIOENCODING": "utf-8"},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert asked.returncode == 0, asked.stdout + asked.stderr


@pytest.mark.parametrize("name", ["spreadsheets", "units"])
def test_contract_watches_every_package(name: str) -> None:
    # A chain of imports is followed only from a source that is listed.
    assert set(CONTRACTS[name]["source_modules"]) == _parts()


def test_every_package_is_installed() -> None:
    listed = set(PYPROJECT["tool"]["setuptools"]["packages"])
    folders = {
        ".".join(p.parent.relative_to(PACKAGE.parent).parts) for p in PACKAGE.rglob("__init__.py")
    }
    assert listed == folders | {"hoopwright.resources", "hoopwright.sample_projects"}
