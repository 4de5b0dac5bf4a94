"""What the tests over a built site share: starting the real commands, copying a fleet, reading pages and records."""

from __future__ import annotations

import functools
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml
from bs4 import BeautifulSoup, Tag

ROOT = Path(__file__).resolve().parents[2]
FLEET = ROOT / "fleet"
DAY = "2027-06-05"
"""The day that the demo's line-up is for, so that what is overdue does not depend on when the tests run."""

MARKER = ".hardpoint-site"


def environment(**more: str) -> dict[str, str]:
    """The surroundings of a command: ours, without what would pin its dates, and with what a test sets."""
    kept = {key: value for key, value in os.environ.items() if key not in ("SOURCE_DATE_EPOCH", "PYTHONPATH", "CI")}
    return kept | {"NO_MKDOCS_2_WARNING": "1"} | more


def run(*arguments: str | Path, cwd: Path = ROOT, **more: str) -> subprocess.CompletedProcess[str]:
    """A command of the project in a process of its own, as a user starts it."""
    command = [sys.executable, "-m", "hardpoint", *map(str, arguments)]
    return subprocess.run(
        command, cwd=cwd, env=environment(**more), capture_output=True, encoding="utf-8", timeout=120, check=False
    )


def build(site: Path, fleet: Path = FLEET, as_of: str = DAY) -> Path:
    """Build a site with the real command; the test that asked for it fails where it does not build."""
    done = run("build", "--fleet", fleet, "--site", site, "--as-of", as_of)
    assert done.returncode == 0, done.stdout + done.stderr
    return site


def copied_fleet(folder: Path) -> Path:
    """The demo's records in a folder that a test may write in."""
    return Path(shutil.copytree(FLEET, folder / "fleet"))


def replace(file: Path, old: str, new: str) -> int:
    """Change one place of a record and say in which line it was; a record that no longer has it fails the test."""
    text = file.read_text(encoding="utf-8")
    assert text.count(old) == 1, f"{file.name} holds {old!r} {text.count(old)} times"
    file.write_text(text.replace(old, new), encoding="utf-8")
    return text[: text.index(old)].count("\n") + 1


def digests(folder: Path) -> dict[str, str]:
    """Every file of a folder under its address, as SHA-256."""
    files = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


def squeezed(text: str) -> str:
    """One space between words, as a browser shows it."""
    return " ".join(text.split())


@dataclass
class Site:
    """A built site: its pages as parsed documents, its data files as read."""

    folder: Path
    _pages: dict[str, BeautifulSoup] = field(default_factory=dict, repr=False)

    @property
    def addresses(self) -> list[str]:
        """Every HTML page."""
        return sorted(path.relative_to(self.folder).as_posix() for path in self.folder.rglob("*.html"))

    def page(self, address: str) -> BeautifulSoup:
        """A page, parsed by the rules that browsers follow."""
        if address not in self._pages:
            text = (self.folder / address).read_text(encoding="utf-8")
            self._pages[address] = BeautifulSoup(text, "html5lib")
        return self._pages[address]

    def part(self, address: str, anchor: str) -> Tag:
        """The element of a page with an id; a page without it fails the test."""
        found = self.page(address).find(id=anchor)
        assert isinstance(found, Tag), f"{address} has no #{anchor}"
        return found

    def words(self, address: str, anchor: str = "content") -> str:
        """The text of a part of a page."""
        return squeezed(self.part(address, anchor).get_text(" "))

    def data(self, address: str) -> Any:
        """A data file."""
        return json.loads((self.folder / address).read_text(encoding="utf-8"))


def plain(file: Path) -> dict[str, Any]:
    """A record as plain text in mappings and lists, read by PyYAML itself and not by the project's reader."""
    loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)  # the same in C, where PyYAML was built with it
    read: dict[str, Any] = yaml.load(file.read_text(encoding="utf-8"), Loader=loader)
    return read


@functools.cache
def record(kind: str, name: str) -> dict[str, Any]:
    """A record of the demo as plain text; for reading only."""
    return plain(FLEET / kind / f"{name}.yaml")


def names(kind: str, fleet: Path = FLEET) -> list[str]:
    """The records of a kind (``types``, ``tails``, ``events``)."""
    return sorted(path.stem for path in (fleet / kind).glob("*.yaml"))


def crew_pages(fleet: Path = FLEET) -> list[str]:
    """The addresses of the crew pages that the contract promises."""
    return [f"types/{name}.html" for name in names("types", fleet)] + [
        f"tails/{name}.html" for name in names("tails", fleet)
    ]


def leaves(tree: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], str]]:
    """Every scalar of a record with its path."""
    if isinstance(tree, Mapping):
        for key, value in tree.items():
            yield from leaves(value, (*path, str(key)))
    elif isinstance(tree, list):
        for index, value in enumerate(tree):
            yield from leaves(value, (*path, str(index)))
    else:
        yield path, str(tree)


def whole_word(word: str, text: str) -> bool:
    """Whether a word stands in a text by itself: ``unknown`` is not ``unknowns``."""
    return re.search(rf"(?<!\w){re.escape(word)}(?!\w)", text) is not None
