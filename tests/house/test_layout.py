"""The tree keeps its shape: places, sizes, names, docstrings and a test for every module."""

import ast
import re
import shutil
import subprocess
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TESTS = ROOT / "tests"
SOURCE = ROOT / "src" / "hoopwright"
MODULES = sorted(SOURCE.rglob("*.py"))

TOP = {
    "pyproject.toml",
    "README.md",
    "DEVELOPERS.md",
    "src",
    "resources",
    "tests",
    "sample_projects",
}
LINE_LIMIT = 450
LINE_CEILING = 600
# Modules over the limit, each with the reason why no wall fits inside it.
LONG: dict[str, str] = {}

STAGES = (
    "survey",
    "cover",
    "fit",
    "curtain",
    "inflation",
    "pressure",
    "airing",
    "outfit",
    "heat",
    "takeoff",
    "order",
    "cost",
    "proposal",
)
UNITS = (
    "m",
    "m2",
    "m3",
    "m3_s",
    "mm",
    "kg",
    "kg_m",
    "n",
    "nm",
    "n_m",
    "pa",
    "w",
    "j",
    "c",
    "rad",
    "deg",
    "min",
    "minutes",
    "hours",
    "years",
    "turns",
)
EMPTY_WORDS = {"common", "helper", "helpers", "manager", "misc", "util", "utils"}

Definition = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef


def _name(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def _definitions(tree: ast.Module | ast.ClassDef) -> Iterator[Definition]:
    """Give the functions and classes of a module and the methods of its classes."""
    for node in tree.body:
        if isinstance(node, Definition):
            yield node
        if isinstance(node, ast.ClassDef):
            yield from _definitions(node)


def _public(path: Path) -> Iterator[Definition]:
    tree = ast.parse(path.read_text("utf-8"))
    private = {
        inner
        for node in tree.body
        if isinstance(node, ast.ClassDef) and node.name.startswith("_")
        for inner in ast.walk(node)
    }
    for node in _definitions(tree):
        if not node.name.startswith("_") and node not in private:
            yield node


def test_top_level_holds_the_agreed_names_alone() -> None:
    git = shutil.which("git")
    if git is None or not (ROOT / ".git").exists():
        pytest.skip("not a git checkout: there is no list of tracked files")
    listed = subprocess.run(
        [git, "-c", f"safe.directory={ROOT}", "ls-files", "-z"],
        cwd=ROOT,
        capture_output=True,
        check=True,
    )
    names = {name.split("/")[0] for name in listed.stdout.decode("utf-8").split("\0") if name}
    assert {name for name in names if not name.startswith(".")} == TOP


@pytest.mark.parametrize("package", ["hoopwright.resources", "hoopwright.sample_projects"])
def test_tables_and_samples_are_installed_with_the_program(package: str) -> None:
    folder = ROOT / package.removeprefix("hoopwright.")
    found = {entry.name for entry in files(package).iterdir()}
    assert {p.name for p in folder.iterdir() if p.name != "__pycache__"} <= found


def test_no_module_is_long() -> None:
    lengths = {_name(path): len(path.read_text("utf-8").splitlines()) for path in MODULES}
    too_long = {name: n for name, n in lengths.items() if n > LINE_LIMIT}
    assert set(too_long) == set(LONG)
    assert not {name: n for name, n in too_long.items() if n > LINE_CEILING}


def test_test_files_are_not_long() -> None:
    lengths = {_name(p): len(p.read_text("utf-8").splitlines()) for p in TESTS.rglob("*.py")}
    assert not {name: n for name, n in lengths.items() if n > LINE_CEILING}


@pytest.mark.parametrize("path", MODULES, ids=_name)
def test_public_things_say_what_they_are(path: Path) -> None:
    tree = ast.parse(path.read_text("utf-8"))
    assert ast.get_docstring(tree), "the module has no docstring"
    silent = [f"{n.name} (line {n.lineno})" for n in _public(path) if not ast.get_docstring(n)]
    assert not silent


def _is_property(node: ast.FunctionDef | ast.AsyncFunctionDef) -> bool:
    """Say whether a value shows something of itself; its class tells where that comes from."""
    return any(isinstance(d, ast.Name) and d.id == "property" for d in node.decorator_list)


def _gives_a_figure(node: Definition) -> bool:
    if isinstance(node, ast.ClassDef) or _is_property(node):
        return False
    returns_float = isinstance(node.returns, ast.Name) and node.returns.id == "float"
    return returns_float or node.name.endswith(tuple(f"_{unit}" for unit in UNITS))


@pytest.mark.parametrize(
    "path", [p for stage in STAGES for p in sorted((SOURCE / stage).rglob("*.py"))], ids=_name
)
def test_figures_name_their_source(path: Path) -> None:
    unfounded = [
        f"{node.name} (line {node.lineno})"
        for node in _public(path)
        if _gives_a_figure(node) and "Source:" not in (ast.get_docstring(node) or "")
    ]
    assert not unfounded


def _words(name: str) -> set[str]:
    """Split `snake_case` and `CamelCase` into small words."""
    return {word.lower() for word in re.findall(r"[A-Z]?[a-z]+|[A-Z]+(?![a-z])", name)}


def test_no_name_is_empty_of_meaning() -> None:
    found = []
    for path in [*MODULES, *TESTS.rglob("*.py")]:
        parts = path.relative_to(ROOT).with_suffix("").parts
        found += [_name(path)] * bool(EMPTY_WORDS & {w for part in parts for w in _words(part)})
        tree = ast.parse(path.read_text("utf-8"))
        found += [
            f"{_name(path)}: {node.name}"
            for node in ast.walk(tree)
            if isinstance(node, Definition) and EMPTY_WORDS & _words(node.name)
        ]
    assert not found


def _imported(path: Path) -> Iterator[str]:
    """Give what a test file imports from the program: modules, and names as `module.name`."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def _offers(path: Path) -> set[str]:
    """Give the ways in which a test may name a module: itself, or its names in its package."""
    dotted = ".".join(path.relative_to(SOURCE.parent).with_suffix("").parts)
    package = dotted.rpartition(".")[0]
    return {dotted} | {f"{package}.{node.name}" for node in _public(path)}


def _has_functions(path: Path) -> bool:
    """Say whether a module does something; one of plain values is tested where they are used."""
    return any(
        isinstance(node, ast.FunctionDef) for node in _definitions(ast.parse(path.read_text()))
    )


def test_every_module_has_a_test() -> None:
    test_files = sorted(TESTS.rglob("test_*.py"))
    named = {name for path in test_files for name in _imported(path)}
    named_after = {path.stem.removeprefix("test_") for path in test_files}
    untested = [
        _name(path)
        for path in MODULES
        if path.stem != "__init__" and _has_functions(path)
        if path.stem.strip("_") not in named_after and not _offers(path) & named
    ]
    assert not untested
