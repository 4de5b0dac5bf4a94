"""A type or a tail as pages show it, and what its tail has otherwise at each place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any

from hardpoint.findings import Path, dotted
from hardpoint.pages.addresses import anchor
from hardpoint.pages.telling import tell
from hardpoint.pages.terms import as_text, label_of, term, verb
from hardpoint.pages.view import Fact, Photo, Value, Was
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Aircraft, Override, Type
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.station import Station
from hardpoint.words import say


@dataclass(frozen=True)
class Change:
    """One answer that is other on this tail; ``at`` is where the whole difference was recorded."""

    at: Path
    path: Path
    type_says: Tree | None
    here: Tree | None
    because: str = ""


@dataclass(frozen=True)
class Shown:
    """A type or a tail as pages show it."""

    id: str
    name: str
    tail: str
    airframe: Airframe
    tree: dict[str, Tree]
    overrides: tuple[Override, ...]
    type_id: str
    declared: bool = True
    """False for a tail of which nobody has said how it differs: what its type has is not known of it."""
    station: Station | None = None
    """What works figures out for it; None where no page is made that shows some, or its record could not be read."""
    photos: Mapping[Path, tuple[Photo, ...]] = field(default_factory=dict)
    """Photos by the place on the page that shows them, see ``pages.pictures``."""

    @cached_property
    def changes(self) -> tuple[Change, ...]:
        """Every answer that is other than on the type, in the order of the differences."""
        return tuple(change for override in self.overrides for change in _changes(override))

    def was(self, *paths: Path) -> tuple[Was, ...]:
        """What the type says of everything that differs at, below or around ``paths``; () = no recorded difference.

        Inside a part that was added nothing is told again: the part itself says once that its type has none.
        """
        return tuple(dict.fromkeys(told for path in paths for told in self._was(path)))

    def fact(self, label: str, path: Path, value: Any, *, note: str = "", anchored: bool = False) -> Fact:
        """A labelled answer out of the record at ``path``."""
        told = value if isinstance(value, Value) else tell(value, path)
        return Fact(label, told, anchor(path) if anchored else "", self.was(path), note)

    def _was(self, path: Path) -> Iterator[Was]:
        for change in self.changes:
            below, around = change.path[: len(path)] == path, path[: len(change.path)] == change.path
            if below or (around and change.type_says is not None):
                label = label_of(change.path, start=len(path)) if len(change.path) > len(path) else ""
                yield Was(dotted(change.at), label, said_before(change), change.because)


def _changes(override: Override) -> Iterator[Change]:
    """A part that was replaced whole counts as what really changed in it."""
    if override.kind == "changed" and isinstance(override.type_says, dict) and isinstance(override.here, dict):
        for change in _between(override.at, override.at, override.type_says, override.here):
            yield replace(change, because=override.because)
    else:
        before = None if override.kind == "added" else override.type_says
        here = None if override.kind == "removed" else override.here
        yield Change(override.at, override.at, before, here, override.because)


def _between(at: Path, path: Path, before: Mapping[str, Tree], here: Mapping[str, Tree]) -> Iterator[Change]:
    for key in dict.fromkeys([*before, *here]):
        one, other = before.get(key), here.get(key)
        if isinstance(one, dict) and isinstance(other, dict):
            yield from _between(at, (*path, key), one, other)
        elif one != other:
            yield Change(at, (*path, key), one, other)


def said_before(change: Change) -> str:
    """What the type says, in words that can be read out: never the record's own notation."""
    return say("nothing there") if change.type_says is None else spoken(change.type_says, change.path)


def spoken(tree: Tree, path: Path) -> str:
    """An answer of a record on one line: steps as sentences, a whole part by its place, anything else as written."""
    if isinstance(tree, list):
        if any(isinstance(item, dict) and "do" not in item for item in tree):
            return say("something else: see the page of its type")
        return "; ".join(_step(item) if isinstance(item, dict) and "do" in item else _item(item, path) for item in tree)
    if isinstance(tree, dict):
        return _part(tree, path)
    return as_text(tree, path)


def _item(item: Tree, path: Path) -> str:
    return as_text(item, (*path, 0))


def _step(step: Mapping[str, Tree]) -> str:
    way = step.get("way")
    told = (verb(str(step.get("do"))), str(step.get("what", "")), _way(way))
    return " ".join(word for word in told if word)


def _way(way: Tree | None) -> str:
    if way is None:
        return ""
    return say("which way: UNKNOWN") if way == NonValue.UNKNOWN.value else term(str(way))


def _part(tree: Mapping[str, Tree], path: Path) -> str:
    place = tree.get("place")
    words = [place.get(key) for key in ("panel", "feel")] if isinstance(place, dict) else []
    side = place.get("side") if isinstance(place, dict) else None
    words.append(term(side) if isinstance(side, str) else None)
    told = ", ".join(word for word in words if isinstance(word, str) and word not in {v.value for v in NonValue})
    return told or say("something else: see the page of its type")


def shown_type(type_: Type) -> Shown:
    """A type, as its crew page shows it."""
    return Shown(type_.id, type_.airframe.name, "", type_.airframe, type_.tree, (), type_.id)


def shown_tail(aircraft: Aircraft) -> Shown:
    """A tail, as its crew page shows it."""
    return replace(
        shown_type(aircraft.of),
        id=aircraft.id,
        name=aircraft.airframe.name,
        tail=aircraft.id,
        airframe=aircraft.airframe,
        tree=aircraft.tree,
        overrides=aircraft.overrides,
        declared=aircraft.declared,
    )
