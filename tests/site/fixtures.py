"""Sites that are built once for all workers of a test run."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from filelock import FileLock

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
