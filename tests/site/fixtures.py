"""Sites that are built once for all workers of a test run."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from filelock import FileLock

from tests.site import maximal
from tests.site.support import Site, build


def once(factory: pytest.TempPathFactory, name: str, make: Callable[[Path], object]) -> Path:
    """A folder that one worker makes and all others wait for. ``make`` is given the folder's address."""
    base = factory.getbasetemp()
    if os.environ.get("PYTEST_XDIST_WORKER"):
        base = base.parent
    folder, done = base / name, base / f"{name}.done"
    with FileLock(base / f"{name}.lock"):
        if not done.exists():
            make(folder)
            done.touch()
    return folder


@pytest.fixture(scope="session")
def web(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A web root in which the demo's site lies two folders deep, as a station's server may hold it."""
    return once(tmp_path_factory, "web", lambda folder: build(folder / "station" / "book"))


@pytest.fixture(scope="session")
def demo(web: Path) -> Site:
    """The demo's site, built by the real command."""
    return Site(web / "station" / "book")


@dataclass(frozen=True)
class Hostile:
    """A site whose records hold an attack in every field of free words; ``planted``: mark to where it stands."""

    fleet: Path
    site: Site
    planted: dict[str, str]


@pytest.fixture(scope="session")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Hostile:
    """Built by the real command from records that fill every key there is."""

    def make(folder: Path) -> None:
        planted = maximal.write(folder / "fleet")
        (folder / "planted.json").write_text(json.dumps(planted), encoding="utf-8")
        build(folder / "site", folder / "fleet")

    folder = once(tmp_path_factory, "hostile", make)
    return Hostile(
        folder / "fleet", Site(folder / "site"), json.loads((folder / "planted.json").read_text(encoding="utf-8"))
    )
