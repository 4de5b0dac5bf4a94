"""``unknown``, planted in each kind of answer that admits it, in turn: the pages say UNKNOWN where it stood."""

from __future__ import annotations

import dataclasses
from collections import Counter
from collections.abc import Iterator
from functools import cache
from typing import Any

from hardpoint.figures.fitness import open_questions
from hardpoint.findings import Path as At
from hardpoint.pages import Site
from hardpoint.pages.gaps_of import type_gaps_page
from hardpoint.pages.structure_page import structure_page
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Type
from hardpoint.records.locate import kinds_of
from hardpoint.records.trees import value_at
from tests.pages.sweeps import DAY, FLEET, places, read, type_view, with_answer

PLANNING = (
    "fs", "bl", "wl", "wl_zero", "zero", "datum", "size", "profile", "landmarks", "load_points", "lifts", "masses",
    "checked", "photos", "density", "flash_point", "test_pressure", "burst_disc", "standard", "charge", "energy",
    "mass", "axis", "tube", "source", "blades", "filled_as", "stretch", "role",
)  # fmt: skip
"""Keys that crews do not act on: they stand on the structure page or among the gaps."""


def _unknowns(view: Any, at: tuple[str, ...] = (), folded: bool = False) -> Iterator[tuple[str, ...]]:
    """Where a view says UNKNOWN in sight: the titles and labels around each place, and its words."""
    if isinstance(view, tuple):
        for number, item in enumerate(view):
            yield from _unknowns(item, (*at, str(number)) if not dataclasses.is_dataclass(item) else at, folded)
    elif fields := _fields(view.__class__):
        names = [getattr(view, key) for key in _NAMES if key in fields]
        here = (*at, *(name for name in names if isinstance(name, str) and name))
        marked = [getattr(view, key, "") for key in ("state", "tone", "where_state", "answer")]
        if not folded and (
            "unknown" in marked or "UNKNOWN" in marked or getattr(view, "unknown", False) is True or _says(view)
        ):
            yield here
        for field in fields:
            held = getattr(view, field)
            if isinstance(held, str | bool | None):  # told above; nothing lies below it
                continue
            away = folded or field == "more" or bool(getattr(view, "folded", False))
            yield from _unknowns(held, (*here, field), away)


_NAMES = ("id", "title", "label", "strong", "text", "what", "where", "note", "remark")


@cache
def _fields(shape: Any) -> tuple[str, ...]:
    return tuple(field.name for field in dataclasses.fields(shape)) if dataclasses.is_dataclass(shape) else ()


def _says(view: Any) -> bool:
    told = (getattr(view, field) for field in _fields(view.__class__))
    return any(isinstance(text, str) and "UNKNOWN" in text for text in told)


SITE = Site(FLEET, (), DAY, DAY.isoformat())
MOST_TRIES = 2
"""Whether an answer admits unknown is a matter of its kind; now and then another answer of a record forbids it."""


def _kinds() -> dict[str, tuple[Type, At]]:
    """One place of each kind of answer that admits unknown and is answered somewhere in the demo."""
    found: dict[str, tuple[Type, At]] = {}
    tried: Counter[str] = Counter()
    for type_ in FLEET.types.values():
        for path in places(type_.tree):
            for depth in range(1, len(path) + 1):
                at = path[:depth]
                kinds = kinds_of(Airframe, at)
                kind = ".".join("*" if one == "id" else str(part) for part, one in zip(at, kinds, strict=True))
                if kind in found or tried[kind] >= MOST_TRIES or value_at(type_.tree, at) == "unknown":
                    continue
                tried[kind] += 1
                airframe = read(with_answer(type_.tree, at, "unknown"))
                if airframe is not None and at in open_questions(airframe):  # elsewhere it would be an id or a name
                    found[kind] = (type_, at)
    return found


def test_unknown_is_said_in_view_wherever_it_is_planted() -> None:
    kinds = _kinds()
    assert len(kinds) > 200
    before: dict[str, set[tuple[str, ...]]] = {}
    silent, not_planned = [], []
    for kind, (type_, at) in kinds.items():
        airframe = read(with_answer(type_.tree, at, "unknown"))
        assert airframe is not None
        if type_.id not in before:
            before[type_.id] = set(_unknowns(type_view(type_, type_.airframe)))
        if set(_unknowns(type_view(type_, airframe))) - before[type_.id]:
            continue
        if kind != "exits.*.kind" and not set(kind.split(".")) & set(PLANNING):  # the kind only chooses a sketch
            silent.append(kind)
        elif not _planned(type_, airframe):
            not_planned.append(kind)
    assert not silent, f"{len(silent)} of {len(kinds)} kinds of answer are not said on the crew page: {silent}"
    assert not not_planned, not_planned


def _planned(type_: Type, airframe: Airframe) -> bool:
    """Whether the structure page says it, or the page of what is unanswered lists one more."""
    now = dataclasses.replace(type_, airframe=airframe)
    structure, gaps = _planning_pages(type_.id)
    if set(_unknowns(structure_page(SITE, now).view)) - structure:
        return True
    return type_gaps_page(SITE, now).view != gaps


@cache
def _planning_pages(type_id: str) -> tuple[set[tuple[str, ...]], object]:
    """What both pages say of the record as it stands."""
    type_ = FLEET.types[type_id]
    return set(_unknowns(structure_page(SITE, type_).view)), type_gaps_page(SITE, type_).view
