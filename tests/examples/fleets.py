"""The small valid fleet under ``good``, and the ways in which the cases under ``bad`` spoil a copy of it."""

from __future__ import annotations

import datetime as dt
import os
import pathlib
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import pytest
import yaml

from hardpoint import load, report

EXAMPLES = pathlib.Path(__file__).resolve().parent
GOOD = EXAMPLES / "good"
BAD = EXAMPLES / "bad"
TYPE = "types/quenby-merle.yaml"
DAY = dt.date(2027, 6, 5)


@dataclass(frozen=True)
class Case:
    """One way to spoil the good fleet, and the exact report; an empty one is a neighbour that no rule may bite."""

    rule: str
    number: int
    why: str
    changes: tuple[Mapping[str, Any], ...]
    finds: str

    @property
    def name(self) -> str:
        """What the test is called."""
        return f"{self.rule}-{self.number}"


def bad_cases() -> list[Case]:
    """Every case of every file under ``bad``; a file is named after the rule that it is about."""
    return [case for path in sorted(BAD.glob("*.yaml")) for case in _cases(path)]


def _cases(path: pathlib.Path) -> list[Case]:
    listed = yaml.safe_load(path.read_text(encoding="utf-8"))
    return [
        Case(path.stem, number, case["why"], tuple(case["change"]), case["finds"].rstrip("\n"))
        for number, case in enumerate(listed, 1)
    ]


def good_copy(folder: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> pathlib.Path:
    """A copy of the good fleet as ``fleet`` in ``folder``, which becomes the current one, so that findings say so."""
    monkeypatch.chdir(folder)
    return pathlib.Path(shutil.copytree(GOOD, folder / "fleet"))


def spoil(fleet: pathlib.Path, change: Mapping[str, Any], monkeypatch: pytest.MonkeyPatch) -> None:
    """Apply one change: exactly one of the keys below says what is done to ``file``."""
    path = fleet / change.get("file", TYPE)
    if "find" in change:
        text = path.read_text(encoding="utf-8")
        assert text.count(change["find"]) == 1, (
            f"{change['find']!r} stands {text.count(change['find'])} times in {path}"
        )
        path.write_text(text.replace(change["find"], change["put"]), encoding="utf-8")
    elif "append" in change:
        path.write_text(path.read_text(encoding="utf-8") + change["append"] * change.get("times", 1), encoding="utf-8")
    elif "hex" in change:
        path.write_bytes(path.read_bytes() + bytes.fromhex(change["hex"]))
    elif "zeros" in change:
        path.write_bytes(path.read_bytes() + bytes(change["zeros"]))
    elif "cut" in change:
        path.write_bytes(path.read_bytes()[: change["cut"]])
    elif "write" in change:
        path.parent.mkdir(exist_ok=True)
        path.write_text(change["write"], encoding="utf-8")
    elif "rename" in change:
        path.rename(path.with_name(change["rename"]))
    elif "copy_of" in change:
        shutil.copyfile(fleet / change["copy_of"], path)
    elif "remove" in change:
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    elif "link" in change:
        path.symlink_to(change["link"])
    else:
        assert change["locked"]
        _lock(path, monkeypatch)


def _lock(path: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As a file without the right to read it; to root, who may run the tests, permissions say nothing."""
    opened = os.open

    def refuse(name: Any, *arguments: Any, **options: Any) -> int:
        if name == path:
            raise PermissionError(13, "Permission denied", str(name))
        return opened(name, *arguments, **options)

    monkeypatch.setattr(os, "open", refuse)


def told(fleet: pathlib.Path, as_of: dt.date = DAY) -> str:
    """The text report without its last line, which counts."""
    checked = load.check(fleet, as_of)
    return "\n".join(report.text(checked.findings, as_of, checked.files).split("\n")[:-1])


def read_type(text: str, folder: pathlib.Path) -> load.Checked:
    """The good fleet with its type's record replaced by ``text``, checked."""
    fleet = pathlib.Path(shutil.copytree(GOOD, folder / "fleet", dirs_exist_ok=True))
    (fleet / TYPE).write_text(text, encoding="utf-8")
    return load.check(fleet, DAY)
