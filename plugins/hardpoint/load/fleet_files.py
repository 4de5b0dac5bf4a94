"""Finding the record files of a fleet folder and turning them into a Fleet, collecting every problem on the way."""

from __future__ import annotations

import os
import pathlib
import re
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import TypeAdapter

from hardpoint.findings import Finding, Path
from hardpoint.load.documents import Document, read
from hardpoint.load.models import error, validate
from hardpoint.nearest import did_you_mean
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.event import Event
from hardpoint.records.fleet import Aircraft, Fleet, House, LineUp, Override, Type, Where
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.override import lay_over, parts
from hardpoint.records.sources import Source, Sources
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail

T = TypeVar("T")
_AIRFRAME = TypeAdapter(Airframe)
_TAIL = TypeAdapter(Tail)
_EVENT = TypeAdapter(Event)
_STATION = TypeAdapter(Station)
_SOURCES: TypeAdapter[dict[str, Source]] = TypeAdapter(Sources)
_ID_FILE = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*\.yaml")
_TAIL_FILE = re.compile(r"[A-Z0-9]{1,4}-[A-Z0-9]{1,6}\.yaml")


@dataclass(frozen=True)
class Paper:
    """A document as the rest of the program sees it: words, positions, digest."""

    document: Document

    @property
    def file(self) -> str:
        return self.document.file

    @property
    def tree(self) -> dict[str, Tree]:
        return self.document.tree

    @property
    def digest(self) -> str:
        return self.document.digest

    def where(self, path: Path) -> Where:
        at = self.document.at(path)
        return Where(self.document.file, at.line, at.column)


@dataclass(frozen=True)
class LaidOver:
    """A tail's record over its type's: a path inside a difference lies in the tail's file, any other in the type's."""

    tail: Document
    tree: dict[str, Tree]
    under: Paper
    overrides: tuple[Override, ...]

    @property
    def file(self) -> str:
        return self.tail.file

    @property
    def digest(self) -> str:
        return self.tail.digest

    def where(self, path: Path) -> Where:
        for override in self.overrides:
            depth = len(override.at)
            if path[:depth] == override.at:
                at = self.tail.at(("differs", override.index, "here", *path[depth:]))
                return Where(self.tail.file, at.line, at.column)
        return self.under.where(path)


class Reader:
    """One pass over a folder. Problems are collected, never raised."""

    def __init__(self, folder: pathlib.Path) -> None:
        self.folder = folder
        self.findings: list[Finding] = []
        self.files = 0
        self.unreadable: set[str] = set()

    def fleet(self) -> Fleet:
        """Everything that could be read."""
        if not self.folder.is_dir():
            self._add("no-fleet", self._shown(), 1, "", "a folder with types/, tails/, events/", "fleet")
            return Fleet()
        types = self._types()
        tails = self._tails(types)
        events = self._events()
        house = self._single("station.yaml", _STATION, Station)
        sources = self._single("sources.yaml", _SOURCES, Source)
        if not types and not self.findings:
            self._add(
                "no-fleet", self._shown(), 1, "", "at least one record under types/", "fleet/types/quenby-merle.yaml"
            )
        return Fleet(
            types=types,
            tails=tails,
            events=events,
            house=None if house is None else House(house[0], house[1]),
            sources={} if sources is None else sources[0],
            sources_written=None if sources is None else sources[1],
            files=self.files,
            unreadable=frozenset(self.unreadable),
        )

    def _types(self) -> dict[str, Type]:
        types: dict[str, Type] = {}
        for path in self._records("types", _ID_FILE, "quenby-merle.yaml"):
            found = self._model(path, f"types/{path.name}", _AIRFRAME, Airframe)
            if found:
                types[path.stem] = Type(path.stem, found[0], found[1])
            else:
                self.unreadable.add(path.stem)
        return types

    def _tails(self, types: dict[str, Type]) -> dict[str, Aircraft]:
        tails: dict[str, Aircraft] = {}
        for path in self._records("tails", _TAIL_FILE, "QQ-TWA.yaml"):
            found = self._model(path, f"tails/{path.name}", _TAIL, Tail)
            aircraft = self._aircraft(path.stem, *found, types) if found else None
            if aircraft:
                tails[path.stem] = aircraft
            else:
                self.unreadable.add(path.stem)
        return tails

    def _aircraft(self, name: str, tail: Tail, paper: Paper, types: dict[str, Type]) -> Aircraft | None:
        if tail.tail != name:
            self.findings.append(
                error(
                    "file-name",
                    paper.where(("tail",)),
                    "tail",
                    tail.tail,
                    f"the registration of the file name, {name}",
                    name,
                )
            )
        if tail.of not in types:
            if tail.of not in self.unreadable:
                self.findings.append(_no_such("type", tail.of, types, paper.where(("of",)), "of"))
            return None
        return self._laid_over(name, tail, paper, types[tail.of])

    def _laid_over(self, name: str, tail: Tail, paper: Paper, of: Type) -> Aircraft | None:
        overrides = _overrides(tail)
        tree, clashes = lay_over(of.tree, overrides)
        for clash in clashes:
            path: Path = ("differs", clash.index, clash.key)
            self.findings.append(error(clash.rule, paper.where(path), path, clash.read, clash.expected, clash.example))
        if clashes:
            return None
        assert isinstance(of.written, Paper)
        written = LaidOver(paper.document, tree, of.written, overrides)
        airframe, found = validate(_AIRFRAME, Airframe, tree, written.where)
        self.findings.extend(_at_tail(finding, paper) for finding in found)
        if airframe is None:
            return None
        return Aircraft(name, of, tail, airframe, tree, overrides, written, paper)

    def _events(self) -> dict[str, LineUp]:
        events: dict[str, LineUp] = {}
        for path in self._records("events", _ID_FILE, "summer-days.yaml"):
            found = self._model(path, f"events/{path.name}", _EVENT, Event)
            if found:
                events[path.stem] = LineUp(path.stem, found[0], found[1])
        return events

    def _single(self, name: str, adapter: TypeAdapter[T], model: type[Part]) -> tuple[T, Paper] | None:
        path = self.folder / name
        if not os.path.lexists(path):
            self._add("missing-file", self._shown(name), 1, "", f"the file {name}", name)
            return None
        return self._model(path, name, adapter, model)

    def _model(
        self, path: pathlib.Path, name: str, adapter: TypeAdapter[T], model: type[Part]
    ) -> tuple[T, Paper] | None:
        self.files += 1
        document, found = read(path, self._shown(name))
        self.findings.extend(found)
        if document is None or found:
            return None
        paper = Paper(document)
        result, wrong = validate(adapter, model, document.tree, paper.where)
        self.findings.extend(wrong)
        return None if result is None else (result, paper)

    def _records(self, kind: str, pattern: re.Pattern[str], example: str) -> list[pathlib.Path]:
        folder = self.folder / kind
        if not folder.is_dir():
            return []
        records = []
        for path in sorted(folder.iterdir()):
            if path.name.startswith(".") or path.name == "README.md":
                continue
            if pattern.fullmatch(path.name):
                records.append(path)
            else:
                self._add(
                    "file-name",
                    self._shown(f"{kind}/{path.name}"),
                    1,
                    path.name,
                    "a file name of the records here",
                    example,
                )
        return records

    def _shown(self, name: str = "") -> str:
        """The file as findings print it: from where the command stands, else from the fleet folder's own name."""
        try:
            base = self.folder.resolve().relative_to(pathlib.Path.cwd().resolve())
        except ValueError:
            base = pathlib.Path(self.folder.name)
        return (base / name).as_posix()

    def _add(self, rule: str, file: str, line: int, read: str, expected: str, example: str) -> None:
        self.findings.append(error(rule, Where(file, line, 1), "", read, expected, example))


def _overrides(tail: Tail) -> tuple[Override, ...]:
    if isinstance(tail.differs, NonValue):
        return ()
    return tuple(
        Override(parts(entry.at), entry.type_says, entry.here, entry.because or "", entry.before or "", index)
        for index, entry in enumerate(tail.differs)
    )


def _at_tail(finding: Finding, paper: Paper) -> Finding:
    """A problem that a difference causes elsewhere in the record is told at the tail's list of differences."""
    if finding.file == paper.file:
        return finding
    at = paper.where(("differs",))
    message = f"with these differences, {finding.path}: {finding.message}"
    return error(finding.rule, at, "differs", finding.read, finding.expected, finding.example, message)


def _no_such(kind: str, read: str, known: dict[str, Any], at: Where, path: str) -> Finding:
    guess = did_you_mean(read, known)
    hint = f'; did you mean "{guess}"?' if guess else ""
    message = f'there is no {kind} "{read}" in this fleet{hint}'
    return error(f"no-such-{kind}", at, path, read, f"the id of a {kind}", guess, message)
