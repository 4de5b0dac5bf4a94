"""Everything that was read: types, tails laid over their types, events, the station, sources."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, Protocol

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Event
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.pictures import Picture
from hardpoint.records.sources import Source
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail

RecordKind = Literal["type", "tail", "event", "station", "sources"]


@dataclass(frozen=True)
class Where:
    """A place in a file, counted from 1."""

    file: str
    line: int
    column: int


class Written(Protocol):
    """What a record knows of the file it was written in."""

    @property
    def file(self) -> str:
        """Name as findings print it."""

    @property
    def tree(self) -> dict[str, Tree]:
        """The author's own words."""

    @property
    def digest(self) -> str:
        """SHA-256 of the file."""

    def where(self, path: Path) -> Where:
        """File, line and column of a path, or of the nearest key above it."""


@dataclass(frozen=True)
class Type:
    """An airframe type."""

    id: str
    airframe: Airframe
    written: Written

    @property
    def tree(self) -> dict[str, Tree]:
        """The author's own words."""
        return self.written.tree


@dataclass(frozen=True)
class Override:
    """One difference of a tail, as it was laid over its type: what the type says, what is here."""

    at: Path
    type_says: Tree
    here: Tree
    because: str
    before: str
    index: int
    kind: Literal["added", "removed", "changed"] = "changed"
    """What happened to the path. Words alone do not tell: "nothing" is also an answer of its own under some keys."""


@dataclass(frozen=True)
class Aircraft:
    """One tail: the type's record with this tail's differences laid over it."""

    id: str
    of: Type
    tail: Tail
    airframe: Airframe
    tree: dict[str, Tree]
    overrides: tuple[Override, ...]
    written: Written
    own: Written
    """The tail's own file; ``written`` is the whole record, whose paths lie in the type's file unless they differ."""

    @property
    def declared(self) -> bool:
        """False where nobody has said whether it differs."""
        return not isinstance(self.tail.differs, NonValue)


@dataclass(frozen=True)
class LineUp:
    """An event."""

    id: str
    event: Event
    written: Written


@dataclass(frozen=True)
class House:
    """The station."""

    station: Station
    written: Written


@dataclass(frozen=True)
class Fleet:
    """A whole fleet folder, read and laid over."""

    types: Mapping[str, Type] = field(default_factory=dict)
    tails: Mapping[str, Aircraft] = field(default_factory=dict)
    events: Mapping[str, LineUp] = field(default_factory=dict)
    house: House | None = None
    sources: Mapping[str, Source] = field(default_factory=dict)
    sources_written: Written | None = None
    files: int = 0
    pictures: Mapping[str, Picture] = field(default_factory=dict)
    """The photos that records name, by the names of their files, made ready for the pages."""
    unreadable: frozenset[str] = frozenset()
    """Ids of types and tails whose files are there but could not be read: nobody is told that they do not exist."""

    def tails_of(self, type_id: str) -> tuple[Aircraft, ...]:
        """The tails of a type, by registration."""
        return tuple(tail for _, tail in sorted(self.tails.items()) if tail.of.id == type_id)
