"""Imports go one way, the core touches neither files nor MkDocs: held by the syntax trees of the modules themselves."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "plugins" / "hardpoint"

LAYERS = (
    {"words"},
    {"findings", "nearest", "units"},
    {"records"},
    {"figures"},
    {"rules"},
    {"drawings"},
    {"pages"},
    {"rendering"},
)
"""From the bottom up. A module imports from its own folder and from what lies below it, never from beside or above."""

EDGE = {
    "load", "photos", "report", "reference", "publish", "plugin", "book", "commands", "cli", "environment", "browser",
    "gathering", "methods", "__main__", "",
}  # fmt: skip
"""Where files, processes and MkDocs are; "" is the package itself."""

MAY_KNOW_MKDOCS = {"hardpoint.plugin", "hardpoint.commands.site"}
ALLOWED_IN_THE_CORE = {
    "records": {"pydantic", "pydantic_core"},
    "units": {"pint"},
    "rendering": {"jinja2", "markupsafe"},
    "figures": {"CoolProp", "numpy"},
    "drawings": {"shapely"},
}
"""Libraries by layer, beside Python's own."""

TOUCHES_THE_WORLD = {
    "os", "pathlib", "io", "shutil", "tempfile", "glob", "fileinput", "mmap", "subprocess", "threading",
    "multiprocessing", "signal", "ctypes", "socket", "urllib", "http", "sqlite3", "logging", "locale", "sys", "time",
    "random", "secrets",
}  # fmt: skip
"""Of Python's own library: files, processes, the network, the clock, chance. The core gets everything handed in."""


def modules() -> dict[str, str]:
    """Module name to source text."""
    found = {}
    for path in sorted(PACKAGE.rglob("*.py")):
        parts = ("hardpoint", *path.relative_to(PACKAGE).with_suffix("").parts)
        found[".".join(parts[:-1] if parts[-1] == "__init__" else parts)] = path.read_text(encoding="utf-8")
    return found


def packages(sources: Mapping[str, str]) -> set[str]:
    """Names that have modules below them."""
    return {name.rpartition(".")[0] for name in sources}


def imported(name: str, source: str, sources: Mapping[str, str]) -> Iterator[tuple[int, str]]:
    """Every module that a module imports, wherever it does so, with the line; relative ones in full."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = node.module or ""
            if node.level:
                here = name.split(".") if name in packages(sources) else name.split(".")[:-1]
                above = here[: len(here) - node.level + 1]
                base = ".".join([*above, *([node.module] if node.module else [])])
            for alias in node.names:
                full = f"{base}.{alias.name}"
                yield node.lineno, full if full in sources else base


def part(module: str) -> str:
    """``hardpoint.records.known`` -> ``records``."""
    return [*module.split("."), ""][1]


def layer(name: str) -> int | None:
    return next((index for index, names in enumerate(LAYERS) if name in names), None)


def violations(sources: Mapping[str, str]) -> list[str]:
    """Every import and every call that breaks the order."""
    return [found for name, source in sources.items() for found in _violations(name, source, sources)]


def _violations(name: str, source: str, sources: Mapping[str, str]) -> Iterator[str]:
    for line, target in imported(name, source, sources):
        top = target.split(".")[0]
        if top == "mkdocs" and name not in MAY_KNOW_MKDOCS:
            yield f"{name}:{line}: knows MkDocs"
        if top == "material":
            yield f"{name}:{line}: imports the theme"
        if layer(part(name)) is None:
            continue
        if top == "hardpoint":
            yield from _upwards(name, line, target)
        elif top not in _libraries(name):
            yield f"{name}:{line}: the core imports {top}"
    if layer(part(name)) is not None:
        yield from _calls(name, source)


def _libraries(name: str) -> set[str]:
    """What a module of the core may import besides the package."""
    return (set(sys.stdlib_module_names) - TOUCHES_THE_WORLD) | ALLOWED_IN_THE_CORE.get(part(name), set())


def _upwards(name: str, line: int, target: str) -> Iterator[str]:
    here, there = part(name), part(target)
    if here == there:
        return
    height, other = layer(here), layer(there)
    if other is None or (height is not None and other >= height):
        yield f"{name}:{line}: {here} imports {there or 'the package'}"


def _calls(name: str, source: str) -> Iterator[str]:
    for node in ast.walk(ast.parse(source)):
        if (
            isinstance(node, ast.Call)
            and isinstance(node.func, ast.Name)
            and node.func.id in ("open", "print", "input", "eval", "exec", "__import__")
        ):
            yield f"{name}:{node.lineno}: the core calls {node.func.id}"
        if (
            isinstance(node, ast.Attribute)
            and node.attr in ("today", "now", "utcnow")
            and isinstance(node.value, ast.Name | ast.Attribute)
        ):
            yield f"{name}:{node.lineno}: the core asks for the {node.attr}"


def test_imports_go_one_way() -> None:
    assert violations(modules()) == []


def test_every_module_has_its_place() -> None:
    """A new module or folder has to be put into a layer above."""
    known = set().union(*LAYERS, EDGE)
    assert {part(name) for name in modules()} == known


def test_there_is_something_to_check() -> None:
    sources = modules()
    assert len(sources) > 90
    seen = {(part(name), part(target)) for name in sources for _, target in imported(name, sources[name], sources)}
    assert {("records", "units"), ("rules", "figures"), ("pages", "drawings"), ("units", "units")} <= seen


@pytest.mark.parametrize(
    ("name", "source", "told"),
    [
        ("hardpoint.units.x", "from hardpoint.records import known", "units imports records"),
        ("hardpoint.units.x", "from ..records.known import said", "units imports records"),
        ("hardpoint.units.x", "from .. import records", "units imports records"),
        ("hardpoint.findings", "import hardpoint.nearest", "findings imports nearest"),
        ("hardpoint.records.x", "from hardpoint.figures.fuel import fuel_capacity", "records imports figures"),
        ("hardpoint.records.x", "def f():\n    from hardpoint import load", "records imports load"),
        ("hardpoint.figures.x", "import hardpoint.rules", "figures imports rules"),
        ("hardpoint.figures.x", "import pandas", "the core imports pandas"),
        ("hardpoint.figures.x", "import pint", "the core imports pint"),
        ("hardpoint.rules.x", "from hardpoint.pages import view", "rules imports pages"),
        ("hardpoint.rules.x", "if TYPE_CHECKING:\n    from hardpoint.load import Checked", "rules imports load"),
        ("hardpoint.rules.x", "import hardpoint", "rules imports the package"),
        ("hardpoint.drawings.x", "from hardpoint.pages.addresses import anchor", "drawings imports pages"),
        ("hardpoint.pages.x", "from hardpoint.rendering import render", "pages imports rendering"),
        ("hardpoint.pages.x", "from mkdocs.structure.files import File", "knows MkDocs"),
        ("hardpoint.pages.x", "import yaml", "the core imports yaml"),
        ("hardpoint.pages.x", "import os.path", "the core imports os"),
        ("hardpoint.pages.x", "from pathlib import PurePath", "the core imports pathlib"),
        ("hardpoint.pages.x", "words = open('x').read()", "the core calls open"),
        ("hardpoint.rules.x", "import datetime as dt\nday = dt.date.today()", "the core asks for the today"),
        ("hardpoint.cli", "import mkdocs", "knows MkDocs"),
        ("hardpoint.load.x", "from mkdocs.config import load_config", "knows MkDocs"),
        ("hardpoint.plugin", "import material", "imports the theme"),
    ],
)  # fmt: skip
def test_a_planted_violation_is_found(name: str, source: str, told: str) -> None:
    sources = modules() | {name: source}
    assert [found.split(": ", 1)[1] for found in violations(sources) if found.startswith(f"{name}:")][:1] == [told]


@pytest.mark.parametrize(
    ("name", "source"),
    [
        ("hardpoint.plugin", "import mkdocs.plugins, os"),
        ("hardpoint.load.x", "import pathlib\nfrom hardpoint import rules\nopen('x')"),
        ("hardpoint.records.x", "from pydantic import BaseModel\nfrom hardpoint.units import read"),
        ("hardpoint.units.x", "from .registry import UNITS\nfrom . import pairs\nimport re"),
        ("hardpoint.pages.x", "from hardpoint.findings import Finding\nreopen = site.open"),
    ],
)
def test_what_is_allowed_is_not_found(name: str, source: str) -> None:
    sources = modules() | {name: source}
    assert [found for found in violations(sources) if found.startswith(f"{name}:")] == []


def test_reading_a_fleet_starts_neither_mkdocs_nor_the_registry_of_units(tmp_path: Path) -> None:
    """``check`` answers fast: a third of a second of imports would be more than the work itself."""
    import subprocess

    heavy = "{'mkdocs', 'pint', 'CoolProp', 'jinja2', 'PIL'}"
    code = f"import sys, hardpoint.cli, hardpoint.load; print(sorted({heavy} & set(sys.modules)))"
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=tmp_path)
    assert told.stdout.strip() == "[]"
