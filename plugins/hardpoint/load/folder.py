"""Which files of a fleet folder are its records, and what else lies there that an author may have meant as one."""

from __future__ import annotations

import os
import pathlib
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.load.reading_rules import FolderRule
from hardpoint.nearest import did_you_mean

_KNOWN = ("types", "tails", "events", "photos", "station.yaml", "sources.yaml", "README.md")


@dataclass(frozen=True)
class Misfit:
    """Something in the folder that is in the way; ``name`` is its path below the fleet folder ("" = the folder)."""

    rule: FolderRule
    name: str
    read: str
    expected: str
    example: str = ""
    message: str = ""


@dataclass(frozen=True)
class Shelf:
    """A folder of records: what its files are called."""

    name: str
    pattern: re.Pattern[str]
    expected: str
    example: str


TYPES = Shelf(
    "types",
    re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*\.yaml"),
    "small letters, digits and hyphens, then .yaml",
    "quenby-merle.yaml",
)
TAILS = Shelf(
    "tails", re.compile(r"[A-Z0-9]{1,4}-[A-Z0-9]{1,6}\.yaml"), "the registration in capitals, then .yaml", "QQ-QMA.yaml"
)
EVENTS = Shelf("events", TYPES.pattern, TYPES.expected, "summer-days.yaml")


def records(folder: pathlib.Path, shelf: Shelf) -> tuple[list[pathlib.Path], list[Misfit]]:
    """The record files of a shelf by name, and what does not belong there. A shelf that is missing is empty."""
    paths, misfit = _entries(folder / shelf.name)
    if misfit:
        expected = "a folder of records that can be opened"
        return [], [Misfit("not-a-folder", shelf.name, misfit, expected, "", f"got {misfit}, needs {expected}")]
    seen = [path for path in paths if not _passed_over(path)]
    wrong = [path for path in seen if not shelf.pattern.fullmatch(path.name)]
    named = [
        Misfit("file-name", f"{shelf.name}/{path.name}", path.name, shelf.expected, shelf.example) for path in wrong
    ]
    return [path for path in seen if path not in wrong], named


def names(folder: pathlib.Path) -> tuple[list[str], str]:
    """What lies in a folder, by name, and why it cannot be told."""
    paths, misfit = _entries(folder)
    return [path.name for path in paths], misfit


def strays(folder: pathlib.Path) -> Iterator[Misfit]:
    """Names beside the records that nobody reads although they look like records: ``type``, ``stations.yml``."""
    for path in _entries(folder, follow=True)[0]:
        if _passed_over(path) or path.name in _KNOWN:
            continue
        guess = did_you_mean(path.name, _KNOWN)
        if guess or path.suffix in (".yaml", ".yml"):
            hint = f'did you mean "{guess}"?' if guess else "records lie in types, tails and events"
            yield Misfit("file-name", path.name, path.name, "a name that is read", guess, f"nothing reads this; {hint}")


def absent(folder: pathlib.Path) -> Misfit | None:
    """Why there is no fleet at all."""
    if not os.path.isdir(folder):
        expected = "a folder with types, tails, events, station.yaml and sources.yaml"
        return Misfit("no-fleet", "", "", expected, "fleet", f"there is no such folder; needs {expected}")
    _, reason = _entries(folder, follow=True)
    expected = "a folder that can be opened"
    return Misfit("no-fleet", "", reason, expected, "", f"cannot be opened ({reason})") if reason else None


def _passed_over(path: pathlib.Path) -> bool:
    return path.name.startswith(".") or path.name == "README.md"


def _entries(folder: pathlib.Path, *, follow: bool = False) -> tuple[list[pathlib.Path], str]:
    """What a folder holds, sorted, and why it cannot be told.

    A link is not followed: it could bring files from outside the fleet folder into the published pages. ``follow``
    is for the fleet folder itself, which the user names.
    """
    try:
        state = os.stat(folder) if follow else os.lstat(folder)
        if not stat.S_ISDIR(state.st_mode):
            return [], "a symbolic link" if stat.S_ISLNK(state.st_mode) else "something that is no folder"
        return sorted(folder.iterdir()), ""
    except FileNotFoundError:
        return [], ""
    except (OSError, ValueError) as problem:
        return [], (getattr(problem, "strerror", None) or str(problem)).lower()
