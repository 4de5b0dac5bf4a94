"""What differs on a tail: first in a banner, then again where it bites, whatever part of the record it is.

A section says itself what differs in its own answers. What none of them has said is put here at the part that it
belongs to, or at the head of its section, so that no difference can be recorded and stand on no place of the page.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import Any

from hardpoint.findings import Path, dotted
from hardpoint.pages.addresses import anchor
from hardpoint.pages.shown import Shown, said_before, spoken
from hardpoint.pages.terms import label_of, term, title_of
from hardpoint.pages.things import anchors, things
from hardpoint.pages.view import Fact, Line, Lines, Link, Row, Section, Steps, Was
from hardpoint.records.fleet import Override
from hardpoint.records.known import Tree
from hardpoint.words import say, say_count

MOST_IN_BANNER = 3
_WORST_FIRST = (
    "pyrotechnics",
    "high_voltage",
    "exits",
    "canopies",
    "controls",
    "seats",
    "bottles",
    "tanks",
    "batteries",
)
_SECTION_OF = {
    "approach": "approach",
    "exits": "open",
    "canopies": "open",
    "controls": "shut-down",
    "engine": "shut-down",
    "propeller": "shut-down",
    "rotor": "stay-clear",
    "batteries": "shut-down",
    "high_voltage": "stay-clear",
    "seats": "free",
    "zones": "cut",
    "absences": "cut",
    "water": "water",
    "masses": "heavy-end",
    "steadying": "heavy-end",
    "load_points": "heavy-end",
    "lifts": "heavy-end",
    "signs": "recognise",
    "landmarks": "recognise",
    "size": "recognise",
    "profile": "recognise",
    "datum": "recognise",
    "name": "recognise",
    "role": "recognise",
    "also_called": "recognise",
}
_ELSEWHERE = "stay-clear"
_Parts = (Steps, Fact, Line, Row)


def marked(sections: tuple[Section, ...], shown: Shown) -> tuple[Section, ...]:
    """The sections with every difference marked where it bites."""
    told = set(_told(sections))
    for change in shown.changes:
        if dotted(change.at) in told and len(change.at) == len(change.path):
            continue
        label = label_of(change.path, start=min(2, len(change.path) - 1))
        was = Was(dotted(change.at), label, said_before(change), change.because)
        if was not in set(_all(sections)) and not _says(sections, was):
            sections = _put(sections, change.path, was, gone=change.here is None)
    return sections


def _says(sections: tuple[Section, ...], was: Was) -> bool:
    """Whether some part tells this very answer, under whatever label."""
    return any(one.at == was.at and one.says == was.says and was.label.endswith(one.label) for one in _all(sections))


def _put(sections: tuple[Section, ...], path: Path, was: Was, *, gone: bool) -> tuple[Section, ...]:
    name = anchor(path)
    if name in anchors(sections):
        found: list[bool] = []
        made = tuple(_with(section, name, was, found) for section in sections)
        if found:
            return made
    home = _SECTION_OF.get(str(path[0]), _ELSEWHERE)
    fresh = name not in anchors(sections)
    return tuple(
        _headed(section, path, was, name if fresh else "", gone) if section.id == home else section
        for section in sections
    )


def _headed(section: Section, path: Path, was: Was, id_: str, gone: bool) -> Section:
    what = title_of(label_of(path, start=min(1, len(path) - 1)))
    text = say("not on this aircraft") if gone else say("other than on its type")
    line = Line(text, f"{what}:", "caution", id=id_, was=(replace(was, label=""),))
    return replace(
        section, blocks=(Lines((line,), f"{section.id}-differs-{was.at}".replace(".", "-")), *section.blocks)
    )


def _with(part: Any, name: str, was: Was, found: list[bool]) -> Any:
    """``part`` with ``was`` at the first thing of that id that can carry it."""
    if found:
        return part
    if isinstance(part, tuple):
        return tuple(_with(item, name, was, found) for item in part)
    if not is_dataclass(part) or isinstance(part, type):
        return part
    if isinstance(part, _Parts) and part.id == name:
        found.append(True)
        return replace(part, was=(*part.was, was))
    changed = {}
    for field in fields(part):
        if field.init and isinstance(held := getattr(part, field.name), tuple):
            changed[field.name] = _with(held, name, was, found)
    return replace(part, **changed) if changed and found else part


def _all(value: Any) -> Iterator[Was]:
    return (thing for thing in things(value) if isinstance(thing, Was))


def _told(sections: tuple[Section, ...]) -> Iterator[str]:
    yield from (was.at for was in _all(sections))


def part_of(path: Path) -> str:
    """The part of a crew page that an answer belongs to."""
    return _SECTION_OF.get(str(path[0]), _ELSEWHERE)


def banner(shown: Shown, sections: tuple[Section, ...]) -> tuple[tuple[Line, ...], tuple[Link, ...]]:
    """At most three differences in full, the worst first; the others named, one tap away.

    Each leads to its place in ``sections``: to its own anchor, or to the part of the page that it stands in.
    """
    ids = anchors(sections)
    alike: dict[object, list[Override]] = {}
    for override in sorted(shown.overrides, key=_rank):
        alike.setdefault(_alike(override), []).append(override)
    ordered = list(alike.values())
    lines = tuple(_line(same, _place(same[0].at, ids)) for same in ordered[:MOST_IN_BANNER])
    more = tuple(Link(_what(same), _place(same[0].at, ids)) for same in ordered[MOST_IN_BANNER:])
    return lines, more


def _alike(override: Override) -> object:
    """What two differences must share to be told in one line: the same answer of two parts, here and on the type."""
    if override.kind != "changed" or len(override.at) < 3:
        return override.at
    return (override.at[0], override.at[2:], repr(override.type_says), repr(override.here))


def _place(at: Path, ids: set[str]) -> str:
    name = anchor(at)
    return f"#{name if name in ids else _SECTION_OF.get(str(at[0]), _ELSEWHERE)}"


def _rank(override: Override) -> int:
    section = str(override.at[0])
    return _WORST_FIRST.index(section) if section in _WORST_FIRST else len(_WORST_FIRST)


def _line(alike: list[Override], href: str) -> Line:
    override = alike[0]
    text = say("not on this aircraft") if override.kind == "removed" else _short(override.here, override)
    was = () if override.kind == "removed" else (Was(dotted(override.at), "", _before(override)),)
    return Line(text, f"{_what(alike)}:", href=href, was=was)


def _before(override: Override) -> str:
    return say("nothing there") if override.kind == "added" else _short(override.type_says, override)


def _what(alike: list[Override]) -> str:
    """``controls.magneto-left.off_is`` -> ``Magneto left, off is``; a tank and a battery both called main differ."""
    path = alike[0].at
    start = 1 if len(path) > 1 and path[0] in ("controls", "exits", "seats", "zones") else 0
    if len(alike) == 1:
        return title_of(label_of(path, start=start))
    told = label_of(path[:2], start=start)
    for other in alike[1:]:
        told = say("{first} and {second}", first=told, second=label_of(other.at[:2], start=start))
    return title_of(f"{told}, {label_of(path, start=2)}")


def _short(tree: Tree, override: Override) -> str:
    """A whole part stands in its section in full; here a few words do."""
    if isinstance(tree, dict):
        place = tree.get("place")
        side = place.get("side") if isinstance(place, dict) else None
        if override.kind != "added":
            return spoken(tree, override.at)
        return say("added here, {side} side", side=term(side)) if side in ("left", "right") else say("added here")
    if isinstance(tree, list):
        return say_count(len(tree), "{count} step", "{count} steps") if len(tree) > 2 else spoken(tree, override.at)
    return spoken(tree, override.at)
