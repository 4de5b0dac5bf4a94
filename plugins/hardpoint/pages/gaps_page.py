"""Gaps: unknown, conflicting, overdue, undeclared; by type, tail and event; and who can answer."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from hardpoint.findings import Finding, Path
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import unknown
from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Block, Line, Lines, Row, Section, SheetPage, Table, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.event import Event
from hardpoint.records.fleet import Aircraft, Type
from hardpoint.records.known import NonValue
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail
from hardpoint.records.walk import values_of
from hardpoint.words import mark, say

_LEAD = mark("What nobody has answered, what conflicts, what is overdue, who can answer. An empty list is no promise.")


def gaps_page(site: Site) -> Page:
    """Every gap of the fleet."""
    page = addresses.GAPS
    sections = [_type(site, type_, page) for type_ in site.fleet.types.values()]
    sections += [_tail(site, tail, page) for tail in site.fleet.tails.values()]
    sections += [_event(site, event_id, page) for event_id in site.fleet.events]
    sections += list(_station(site))
    sections.append(_by_who(site, page))
    title, lead = say("What is unanswered"), say(_LEAD)
    view = SheetPage(site.frame(page, title), title, lead, tuple(sections), (), site.cautions)
    return Page(page, title, "sheet.html", view)


def _by_who(site: Site, page: str) -> Section:
    """The same unknowns once more, under whoever can answer: a list to walk up to somebody with."""
    asked: dict[str, list[Row]] = {}
    records: list[Type | Aircraft] = [*site.fleet.types.values(), *site.fleet.tails.values()]
    for record in records:
        who = _by_section(record.airframe.who_can_answer)
        home = addresses.type_page(record.id)
        paths = list(unknowns(record)) if isinstance(record, Type) else _own_unknowns(record)
        if isinstance(record, Aircraft):
            who |= _by_section(record.tail.who_can_answer)
            home = addresses.tail_page(record.id)
        for path in paths:
            row = Row((Value(_called(record)), _place(path, home, page), unknown()))
            asked.setdefault(who.get(str(path[0]), ""), []).append(row)
    heads = (say("Aircraft"), say("What"), say("Answer"))
    named = sorted(asked, key=lambda words: (words == "", words.casefold()))
    blocks = tuple(
        Table(f"who-{number}", words or say("nobody is named"), heads, tuple(asked[words]), folded=True)
        for number, words in enumerate(named, start=1)
    )
    nothing = Lines((Line(say("no unknown is recorded; that is no promise")),))
    return Section("who-can-answer", say("By who can answer"), blocks or (nothing,), say("Who"))


def _called(record: Type | Aircraft) -> str:
    return record.airframe.name if isinstance(record, Type) else f"{record.airframe.name} {record.id}"


def _own_unknowns(tail: Aircraft) -> list[Path]:
    of_type = set(unknowns(tail.of))
    return [path for path, value in values_of(tail.airframe) if value is NonValue.UNKNOWN and path not in of_type]


def _place(path: Path, home: str, page: str) -> Value:
    target = relative(f"{home}#{addresses.anchor(path)}", page) if _anchored(path) else ""
    return Value(label_of(path), href=target)


def _type(site: Site, type_: Type, page: str) -> Section:
    unknown = list(unknowns(type_))
    title = say("{name}: {count} unknown", name=type_.airframe.name, count=len(unknown))
    home = addresses.type_page(type_.id)
    blocks: tuple[Block, ...] = (
        Lines((Line(say("Crew page of the {name}", name=type_.airframe.name), href=relative(home, page)),)),
        *_unknown_table(f"type-{type_.id}", unknown, _by_section(type_.airframe.who_can_answer), home, page),
        *_found(site, type_.written.file, f"type-{type_.id}", Airframe),
    )
    return Section(f"type-{type_.id}", title, blocks, type_.airframe.name)


def unknowns(type_: Type) -> Iterator[Path]:
    """Paths of a type whose answer is ``unknown``."""
    yield from (path for path, value in values_of(type_.airframe) if value is NonValue.UNKNOWN)


def _tail(site: Site, tail: Aircraft, page: str) -> Section:
    home = addresses.tail_page(tail.id)
    own = _own_unknowns(tail)
    lines = [Line(say("Crew page of {tail}", tail=tail.id), href=relative(home, page))]
    if not tail.declared:
        lines.append(Line(say("nobody has declared how it differs from its type"), say("UNDECLARED:"), "unknown"))
    lines += [
        Line(label_of(path, Tail), say("UNKNOWN on this aircraft:"), "unknown")
        for path, value in values_of(tail.tail)
        if value is NonValue.UNKNOWN and path != ("differs",)
    ]
    who: dict[str, str] = _by_section(tail.airframe.who_can_answer) | _by_section(tail.tail.who_can_answer)
    blocks = (
        Lines(tuple(lines)),
        *_unknown_table(f"tail-{tail.id}", own, who, home, page),
        *_found(site, tail.written.file, f"tail-{tail.id}", Tail, Airframe),
    )
    return Section(
        f"tail-{tail.id}", say("Tail {tail}, {name}", tail=tail.id, name=tail.airframe.name), blocks, tail.id
    )


def _event(site: Site, event_id: str, page: str) -> Section:
    line_up = site.fleet.events[event_id]
    home = addresses.event_page(event_id)
    unknown = [path for path, value in values_of(line_up.event) if value is NonValue.UNKNOWN]
    lines = [Line(say("What is unfit: {event}", event=line_up.event.name), href=relative(home, page))]
    lines += [Line(label_of(path, Event), say("UNKNOWN:"), "unknown") for path in unknown]
    return Section(
        f"event-{event_id}",
        line_up.event.name,
        (Lines(tuple(lines)), *_found(site, line_up.written.file, f"event-{event_id}", Event)),
        say("Event"),
    )


def _station(site: Site) -> Iterator[Section]:
    if site.station is None:
        return
    unknown = [path for path, value in values_of(site.station) if value is NonValue.UNKNOWN]
    lines = [Line(label_of(path, Station), say("UNKNOWN:"), "unknown") for path in unknown] or [
        Line(say("the station's record has no unknown"))
    ]
    yield Section("station", say("Station: {name}", name=site.station.name), (Lines(tuple(lines)),), say("Station"))


def _unknown_table(id_: str, paths: list[Path], who: Mapping[str, str], home: str, page: str) -> Iterator[Block]:
    if not paths:
        return
    rows = tuple(
        Row(
            (
                _place(path, home, page),
                unknown(),
                _who(who, path),
            )
        )
        for path in paths
    )
    yield Table(f"{id_}-unknown", say("Unknown"), (say("What"), say("Answer"), say("Who can answer")), rows)


def _anchored(path: Path) -> bool:
    return path[0] in ("exits", "controls", "tanks", "bottles", "zones") and len(path) > 1


def _by_section(who: Mapping[Any, str]) -> dict[str, str]:
    return {str(section): words for section, words in who.items()}


def _who(who: Mapping[str, str], path: Path) -> Value:
    return (
        Value(who[str(path[0])])
        if str(path[0]) in who
        else Value(say("nobody named"), note=say("add it under who_can_answer"))
    )


def _found(site: Site, file: str, id_: str, *models: type[Part]) -> Iterator[Block]:
    """Warnings of the rules about this record: conflicts, overdue reviews, what is not declared."""
    found = [finding for finding in site.findings if finding.file == file]
    if found:
        yield Table(
            f"{id_}-found",
            say("Conflicts and overdue"),
            (say("Where"), say("What")),
            tuple(_finding(finding, *models) for finding in found),
        )


def _finding(finding: Finding, *models: type[Part]) -> Row:
    """The checker speaks English whatever the pages speak, as on the author's own screen; the page marks it so."""
    path = tuple(finding.path.split("."))
    where = Value(label_of(path, *models) if finding.path else say("the whole record"))
    return Row((where, Value(finding.message, lang="en")), tone="caution")
