"""What a rule is: an id, a severity, one line for the docs, and a small generator of what it finds.

A new rule is one function under one of the modules of this folder, marked with :func:`rule`.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Generic, Protocol, TypeVar

from hardpoint.figures.hazards import CutHazard, cut_hazards
from hardpoint.findings import Finding, Path, Related, Severity, dotted, got_needs
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.event import Event
from hardpoint.records.fleet import Aircraft, Fleet, House, Written
from hardpoint.records.known import Tree
from hardpoint.records.walk import parts_of, values_of


@dataclass(frozen=True)
class Hit:
    """One place where a rule bites."""

    path: Path
    read: str
    expected: str
    example: str = ""
    message: str = ""
    related: tuple[tuple[Path, str], ...] = ()


class Subject(Protocol):
    """What every subject of rules has: the record, where it is written, everything else that was read, the day."""

    @property
    def root(self) -> Part: ...

    @property
    def written(self) -> Written: ...

    @property
    def fleet(self) -> Fleet: ...

    @property
    def as_of(self) -> dt.date: ...

    @property
    def parts(self) -> tuple[tuple[Path, Part], ...]: ...

    @property
    def values(self) -> tuple[tuple[Path, object], ...]: ...

    @property
    def words(self) -> tuple[tuple[Path, str], ...]: ...


class Walked:
    """A subject that is walked through once, however many rules look at all of it."""

    @property
    def root(self) -> Part:
        """The record as a whole."""
        raise NotImplementedError

    @cached_property
    def parts(self) -> tuple[tuple[Path, Part], ...]:
        """Every part with its path."""
        return tuple(parts_of(self.root))

    @cached_property
    def values(self) -> tuple[tuple[Path, object], ...]:
        """Every value that is no part, mapping or list, with its path."""
        return tuple(values_of(self.root))

    @cached_property
    def words(self) -> tuple[tuple[Path, str], ...]:
        """Every piece of text with its path, the fixed words of a key among them."""
        return tuple((path, text) for path, text in self.values if type(text) is str)


@dataclass(frozen=True)
class Record(Walked):
    """An airframe under the rules: a type's, or a tail's with its differences laid over it."""

    id: str
    airframe: Airframe
    tree: dict[str, Tree]
    written: Written
    fleet: Fleet
    as_of: dt.date

    @property
    def root(self) -> Part:
        """The record as a whole."""
        return self.airframe

    @cached_property
    def hazards(self) -> tuple[CutHazard, ...]:
        """What a cut could meet."""
        return cut_hazards(self.airframe)


@dataclass(frozen=True)
class LineUpUnder(Walked):
    """An event under the rules."""

    id: str
    event: Event
    written: Written
    fleet: Fleet
    as_of: dt.date

    @property
    def root(self) -> Part:
        """The record as a whole."""
        return self.event


@dataclass(frozen=True)
class TailUnder(Walked):
    """One tail's own file under the rules."""

    aircraft: Aircraft
    written: Written
    fleet: Fleet
    as_of: dt.date

    @property
    def root(self) -> Part:
        """The record as a whole."""
        return self.aircraft.tail


@dataclass(frozen=True)
class StationUnder(Walked):
    """The station under the rules."""

    house: House
    written: Written
    fleet: Fleet
    as_of: dt.date

    @property
    def root(self) -> Part:
        """The record as a whole."""
        return self.house.station


S = TypeVar("S", Record, LineUpUnder, TailUnder, StationUnder)


@dataclass(frozen=True)
class Rule(Generic[S]):
    """A rule with its line in the docs."""

    id: str
    severity: Severity
    says: str
    run: Callable[[S], Iterator[Hit]] = field(repr=False)

    def findings(self, subject: S) -> Iterator[Finding]:
        """What it finds in a subject, each at the author's line."""
        for hit in self.run(subject):
            at = subject.written.where(hit.path)
            related = tuple(_related(subject.written, path, message) for path, message in hit.related)
            message = hit.message or got_needs(hit.read, hit.expected, hit.example)
            yield Finding(
                self.id,
                self.severity,
                at.file,
                at.line,
                at.column,
                dotted(hit.path),
                hit.read,
                hit.expected,
                hit.example,
                message,
                related,
            )


def _related(written: Written, path: Path, message: str) -> Related:
    at = written.where(path)
    return Related(at.file, at.line, dotted(path), message)


class Book(Generic[S]):
    """The rules for one kind of subject, in the order in which they were written down."""

    def __init__(self) -> None:
        self.rules: list[Rule[S]] = []

    def rule(
        self, id: str, severity: Severity, says: str
    ) -> Callable[[Callable[[S], Iterator[Hit]]], Callable[[S], Iterator[Hit]]]:
        """Mark a generator as a rule of this book."""

        def mark(run: Callable[[S], Iterator[Hit]]) -> Callable[[S], Iterator[Hit]]:
            self.rules.append(Rule(id, severity, says, run))
            return run

        return mark


AIRFRAME: Book[Record] = Book()
EVENT: Book[LineUpUnder] = Book()
TAIL: Book[TailUnder] = Book()
STATION: Book[StationUnder] = Book()


def everywhere(
    id: str, severity: Severity, says: str
) -> Callable[[Callable[[Subject], Iterator[Hit]]], Callable[[Subject], Iterator[Hit]]]:
    """Mark a generator as a rule of every book."""

    def mark(run: Callable[[Subject], Iterator[Hit]]) -> Callable[[Subject], Iterator[Hit]]:
        AIRFRAME.rule(id, severity, says)(run)
        EVENT.rule(id, severity, says)(run)
        TAIL.rule(id, severity, says)(run)
        STATION.rule(id, severity, says)(run)
        return run

    return mark
