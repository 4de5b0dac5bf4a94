"""What is unanswered of one type, aircraft or event, each question linked to its place, with who can answer."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from hardpoint.figures.fitness import open_questions, thing_depth
from hardpoint.findings import Finding, Path
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.differences import part_of
from hardpoint.pages.site import Page, Site
from hardpoint.pages.terms import first_capital, key_words, name_words, spoken_path
from hardpoint.pages.view import Block, Line, Lines, Link, Row, Section, SheetPage, Table, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.fleet import Aircraft, LineUp, Type
from hardpoint.records.known import NonValue
from hardpoint.records.tail import Tail
from hardpoint.records.vocabulary import all_keys
from hardpoint.records.walk import values_of
from hardpoint.words import say

_ITEMS = frozenset(
    {"exits", "canopies", "controls", "tanks", "batteries", "bottles", "zones", "hazards", "loaded_parts", "signs"}
)
"""Sections whose entries have an anchor of their own on the crew page."""
_PLANNED = frozenset({"checked", "size", "datum", "profile", "photos", "who_can_answer", "changes", "notes"})


def unknowns(type_: Type) -> tuple[Path, ...]:
    """Every open question of a type."""
    return open_questions(type_.airframe)


def own_unknowns(tail: Aircraft) -> tuple[Path, ...]:
    """Open questions that the type of this tail has answered."""
    of_type = set(unknowns(tail.of))
    return tuple(path for path in open_questions(tail.airframe) if path not in of_type)


def event_unknowns(line_up: LineUp) -> tuple[Path, ...]:
    """Open questions of an event's own record."""
    return tuple(path for path, value in values_of(line_up.event) if value is NonValue.UNKNOWN)


def answerers(record: Type | Aircraft) -> dict[str, str]:
    """Section to whoever can answer; a tail's own word outranks its type's."""
    who: dict[Any, str] = dict(record.airframe.who_can_answer)
    if isinstance(record, Aircraft):
        who |= record.tail.who_can_answer
    return {str(section): words for section, words in who.items()}


def found_in(site: Site, file: str) -> tuple[Finding, ...]:
    """What the rules found in a record: conflicts, overdue reviews, what is not declared."""
    return tuple(finding for finding in site.findings if finding.file == file)


def type_gaps_page(site: Site, type_: Type) -> Page:
    """A type's open questions."""
    page = addresses.gaps_of(addresses.type_page(type_.id))
    blocks = (
        *_questions(unknowns(type_), answerers(type_), type_.id, addresses.type_page(type_.id), page),
        *found_table(found_in(site, type_.written.file), path_words(Airframe)),
    )
    return gaps_sheet(site, page, type_.airframe.name, addresses.type_page(type_.id), blocks)


def tail_gaps_page(site: Site, tail: Aircraft) -> Page:
    """An aircraft's own open questions; those of its type stand on its type's page."""
    home = addresses.tail_page(tail.id)
    page = addresses.gaps_of(home)
    lines = []
    if not tail.declared:
        lines.append(Line(say("nobody has declared how it differs from its type"), say("UNDECLARED:"), "unknown"))
    lines += [
        Line(spoken_path(path, Tail), say("UNKNOWN on this aircraft:"), "unknown")
        for path, value in values_of(tail.tail)
        if value is NonValue.UNKNOWN and path != ("differs",)
    ]
    of_type = relative(addresses.gaps_of(addresses.type_page(tail.of.id)), page)
    lines.append(Line(say("{count} open questions", count=len(unknowns(tail.of))), say("Its type:"), href=of_type))
    blocks = (
        Lines(tuple(lines), "aircraft"),
        *_questions(own_unknowns(tail), answerers(tail), tail.of.id, home, page),
        *found_table(found_in(site, tail.own.file), path_words(Tail, Airframe)),
    )
    return gaps_sheet(site, page, f"{tail.airframe.name} {tail.id}", home, blocks)


def gaps_sheet(
    site: Site, page: str, name: str, home: str, blocks: tuple[Block, ...], more: tuple[Section, ...] = ()
) -> Page:
    """The sheet of one record's gaps; ``more`` are parts that come before them."""
    title = say("Unanswered: {name}", name=name)
    lead = say("What nobody has answered, what conflicts, what is overdue. An empty list is no promise.")
    links = (Link(name, relative(home, page)), Link(say("All that is unanswered"), relative(addresses.GAPS, page)))
    none = Lines((Line(say("nothing is recorded as unknown; that is no promise")),))
    section = Section("unanswered", say("Open questions"), blocks or (none,), say("Open questions"))
    frame = site.frame(page, title, (name, home))
    return Page(page, title, "sheet.html", SheetPage(frame, title, lead, (*more, section), links, site.cautions))


def _questions(paths: tuple[Path, ...], who: Mapping[str, str], type_id: str, home: str, page: str) -> Iterator[Block]:
    """One block a part of the record: who can answer, then thing by thing what nobody knows of it."""
    parts: dict[str, list[Path]] = {}
    for path in paths:
        parts.setdefault(str(path[0]), []).append(path)
    for part, asked in parts.items():
        told = Line(who.get(part) or say("nobody is named; add it under who_can_answer"), say("Who can answer:"))
        lines = (told, *_things(asked, type_id, home, page))
        yield Lines(
            lines, f"unknown-{part.replace('_', '-')}", say("{part}: UNKNOWN", part=key_words(part).capitalize())
        )


def _things(paths: list[Path], type_id: str, home: str, page: str) -> Iterator[Line]:
    things: dict[Path, list[Path]] = {}
    for path in paths:
        things.setdefault(path[: thing_depth(path)], []).append(path)
    for thing, asked in things.items():
        start = min(1, len(thing) - 1)
        what = first_capital(spoken_path(thing, start=start))
        answers = "; ".join(spoken_path(path, start=len(thing)) for path in asked if len(path) > len(thing))
        yield Line(answers or say("UNKNOWN"), f"{what}:", href=relative(place(thing, type_id, home), page))


def place(path: Path, type_id: str, home: str) -> str:
    """Where an answer stands: its own place on the crew page, the structure page, the figures page, or a part."""
    section = str(path[0])
    if section in ("load_points", "lifts"):
        return f"{addresses.structure_page(type_id)}#{addresses.anchor(path[:2])}"
    if section in _PLANNED:
        return f"{addresses.figures_page(type_id)}#{'provenance' if section == 'checked' else 'as-written'}"
    if len(path) > 1 and section in _ITEMS:
        return f"{home}#{addresses.anchor(path)}"
    return f"{home}#{part_of(path)}"


def found_table(found: tuple[Finding, ...], where: Callable[[Path], str], id_: str = "found") -> Iterator[Block]:
    """What the rules found in one record; ``where`` tells a path of it in words."""
    if found:
        rows = tuple(_finding(finding, where) for finding in found)
        yield Table(id_, say("Conflicts and overdue"), (say("Where"), say("What")), rows)


def path_words(*models: type[Part]) -> Callable[[Path], str]:
    """How a path of one of these models is told: ids and keys as they are spoken."""
    return lambda path: spoken_path(path, *models)


def _finding(finding: Finding, where: Callable[[Path], str]) -> Row:
    """The checker speaks English whatever the pages speak, as on the author's own screen; the page marks it so."""
    path = tuple(finding.path.split("."))
    told = Value(where(path) if finding.path else say("the whole record"))
    return Row((told, Value(spoken_message(finding.message), lang="en")), tone="caution")


_NOTATION = re.compile(r"(?<![\w./-])[a-z]+(?:_[a-z]+)*(?:\.(?!yaml\b)[a-z0-9*_-]+)+(?![\w./])|\b[a-z]+(?:_[a-z]+)+\b")


def spoken_message(message: str) -> str:
    """A message of the checker with the paths and keys in it as words; authors read them as keys on their screen."""

    def words(found: re.Match[str]) -> str:
        parts = found[0].split(".")
        return found[0] if parts[0].replace("_", " ") not in all_keys() else ", ".join(map(_spoken, parts))

    return _NOTATION.sub(words, message)


def _spoken(part: str) -> str:
    return "any" if part == "*" else name_words(part.replace("_", " "))
