"""The words of the records that are the model's own: for the catalogue of the interface.

Choices ("walked", "towards floor") are listed by what authors write; keys ("off_is") as pages tell them ("off is").
Units and designations are no words and stay as they are in every language.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any, Literal, get_args, get_origin, get_type_hints

from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.event import Event
from hardpoint.records.known import NonValue
from hardpoint.records.locate import keys_of
from hardpoint.records.provenance import SectionName
from hardpoint.records.quantities import GOVERNED
from hardpoint.records.sources import Source
from hardpoint.records.station import Station
from hardpoint.records.structure import NOTHING_FOUND
from hardpoint.records.tail import NONE_RECORDED, NOTHING, Tail
from hardpoint.records.ways import WORDS_OF_WAYS, Step, Verb

ROOTS: tuple[type[Part], ...] = (Airframe, Tail, Event, Station, Source)
NONE = "none"
"""What authors write under ``guard`` where there is none."""
SECTIONS = frozenset(get_args(SectionName))
ANSWERS = (NONE, NOTHING, NOTHING_FOUND, NONE_RECORDED, *(word.value for word in NonValue))
_NO_WORD = re.compile(r"mm|in|[A-Z]|\d[A-Z]+")


def verbs() -> tuple[str, ...]:
    """What steps do."""
    return get_args(Verb)


@cache
def all_keys() -> tuple[str, ...]:
    """Every key of every kind of record in plain words, sorted."""
    found = {key.replace("_", " ") for model in _models() for key in keys_of(model)}
    return tuple(sorted(found | set(GOVERNED)))


@cache
def choices() -> tuple[str, ...]:
    """Every other word out of a closed list, and every answer that stands for one, sorted."""
    hints = [
        hint
        for model in _models()
        for key, hint in get_type_hints(model, include_extras=True).items()
        if (model, key) != (Step, "do")
    ]
    found = {word for hint in hints for word in _words(hint)} | {*ANSWERS, *WORDS_OF_WAYS}
    return tuple(sorted(word for word in found if not _NO_WORD.fullmatch(word)))


def _models() -> set[type[Part]]:
    """Every kind of part that a record can hold."""
    found: set[type[Part]] = set()
    waiting = list(ROOTS)
    while waiting:
        model = waiting.pop()
        if model not in found:
            found.add(model)
            hints = get_type_hints(model, include_extras=True).values()
            inside = [part for hint in hints for part in _inside(hint)]
            waiting += [part for part in inside if isinstance(part, type) and issubclass(part, Part)]
    return found


def _inside(hint: Any) -> Iterator[Any]:
    yield hint
    if get_origin(hint) is not Literal:
        yield from (deeper for part in get_args(hint) for deeper in _inside(part))


def _words(hint: Any) -> Iterator[str]:
    for part in _inside(hint):
        if get_origin(part) is Literal and part != SectionName:  # names of sections are keys
            yield from (word for word in get_args(part) if isinstance(word, str))
