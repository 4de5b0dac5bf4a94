"""Finding the record files of a fleet folder and turning them into a Fleet, collecting every problem on the way."""

from __future__ import annotations

import os
import pathlib
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import TypeAdapter

from hardpoint.findings import Finding, Path
from hardpoint.load import folder as fleet_folder
from hardpoint.load.documents import Document, read
from hardpoint.load.folder import EVENTS, TAILS, TYPES, Misfit, Shelf
from hardpoint.load.models import error, validate
from hardpoint.nearest import did_you_mean
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.event import Event
from hardpoint.records.fleet import Aircraft, Fleet, House, LineUp, Override, Type, Where
from hardpoint.records.known import Tree
from hardpoint.records.override import lay_over, overrides_of, told_at_tail
from hardpoint.records.sources import Source, Sources
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail

T = TypeVar("T")
_AIRFRAME = TypeAdapter(Airframe)
_TAIL = TypeAdapter(Tail)
_EVENT = TypeAdapter(Event)
_STATION = TypeAdapter(Station)
_SOURCES: TypeAdapter[dict[str, Source]] = TypeAdapter(Sources)


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
        absent = fleet_folder.absent(self.folder)
        if absent:
            self._note(absent)
            return Fleet()
        for stray in fleet_folder.strays(self.folder):
            self._note(stray)
        types = self._types()
        tails = self._tails(types)
        events = self._events()
        house = self._single("station.yaml", _STATION, Station)
        sources = self._single("sources.yaml", _SOURCES, Source)
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
        for path in self._records(TYPES):
            found = self._model(path, f"types/{path.name}", _AIRFRAME, Airframe)
            if found:
                types[path.stem] = Type(path.stem, found[0], found[1])
            else:
                self.unreadable.add(path.stem)
        if not types and not self.unreadable:
            expected = "at least one record under types"
            self._note(Misfit("no-fleet", "types", "", expected, message=f"no record is here; a fleet has {expected}"))
        return types

    def _tails(self, types: dict[str, Type]) -> dict[str, Aircraft]:
        tails: dict[str, Aircraft] = {}
        for path in self._records(TAILS):
            found = self._model(path, f"tails/{path.name}", _TAIL, Tail)
            aircraft = self._aircraft(path.stem, *found, types) if found else None
            if aircraft:
                tails[path.stem] = aircraft
            else:
                self.unreadable.add(path.stem)
        return tails

    def _aircraft(self, name: str, tail: Tail, paper: Paper, types: dict[str, Type]) -> Aircraft | None:
        if tail.tail != name:
            message = f"the file is named {name} and says {tail.tail}: one of the two is wrong"
            expected = f"the registration that the file is named after, {name}"
            self.findings.append(error("file-name", paper.where(("tail",)), "tail", tail.tail, expected, name, message))
        if tail.of not in types:
            if tail.of not in self.unreadable:
                self.findings.append(_no_such_type(tail.of, types, paper.where(("of",))))
            return None
        return self._laid_over(name, tail, paper, types[tail.of])

    def _laid_over(self, name: str, tail: Tail, paper: Paper, of: Type) -> Aircraft | None:
        overrides = overrides_of(tail, of.tree)
        tree, clashes = lay_over(of.tree, overrides)
        for clash in clashes:
            path: Path = ("differs", clash.index, clash.key)
            said = (clash.read, clash.expected, clash.example, clash.message)
            self.findings.append(error(clash.rule, paper.where(path), path, *said))
        if clashes:
            return None
        assert isinstance(of.written, Paper)
        written = LaidOver(paper.document, tree, of.written, overrides)
        airframe, found = validate(_AIRFRAME, Airframe, tree, written.where)
        self.findings.extend(told_at_tail(finding, paper) for finding in found)
        if airframe is None:
            return None
        return Aircraft(name, of, tail, airframe, tree, overrides, written, paper)

    def _events(self) -> dict[str, LineUp]:
        events: dict[str, LineUp] = {}
        for path in self._records(EVENTS):
            found = self._model(path, f"events/{path.name}", _EVENT, Event)
            if found:
                events[path.stem] = LineUp(path.stem, found[0], found[1])
        return events

    def _single(self, name: str, adapter: TypeAdapter[T], model: type[Part]) -> tuple[T, Paper] | None:
        path = self.folder / name
        if not os.path.lexists(path):
            message = "there is no such file, and every fleet has one; copy it from another fleet and mend it"
            self._note(Misfit("missing-file", name, "", f"the file {name}", message=message))
            return None
        return self._model(path, name, adapter, model)

    def _model(
        self, path: pathlib.Path, name: str, adapter: TypeAdapter[T], model: type[Part]
    ) -> tuple[T, Paper] | None:
        self.files += 1
        document, found = read(path, self._shown(name))
        self.findings.extend(found)
        if document is None:
            return None
        paper = Paper(document)
        result, wrong = validate(adapter, model, document.tree, paper.where, document.is_spoiled)
        self.findings.extend(wrong)
        broken = any(finding.severity == "error" for finding in found)
        return None if result is None or broken else (result, paper)

    def _records(self, shelf: Shelf) -> list[pathlib.Path]:
        paths, misfits = fleet_folder.records(self.folder, shelf)
        for misfit in misfits:
            self._note(misfit)
        return paths

    def _shown(self, name: str = "") -> str:
        """The file as findings print it: from where the command stands, else from the fleet folder's own name."""
        try:
            base = self.folder.resolve().relative_to(pathlib.Path.cwd().resolve())
        except (ValueError, OSError, RuntimeError):  # elsewhere; a loop of links; no current folder any more
            base = pathlib.Path(self.folder.name)
        return (base / name).as_posix()

    def _note(self, misfit: Misfit) -> None:
        at = Where(self._shown(misfit.name), 1, 1)
        self.findings.append(error(misfit.rule, at, "", misfit.read, misfit.expected, misfit.example, misfit.message))


def _no_such_type(read: str, known: dict[str, Any], at: Where) -> Finding:
    guess = did_you_mean(read, known)
    listed = ", ".join(sorted(known)[:8]) + (", ..." if len(known) > 8 else "")
    hint = f'did you mean "{guess}"?' if guess else f"known: {listed or 'none'}"
    message = f'there is no type "{read}" in this fleet; {hint}'
    return error("no-such-type", at, "of", read, "the id of a type", guess, message)
