"""All that is unanswered, counted: by type, aircraft, event, station, and by who can answer."""

from __future__ import annotations

from collections import Counter

from hardpoint.findings import Finding, Path
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.gaps_of import answerers, event_unknowns, found_in, found_table, own_unknowns, path_words, unknowns
from hardpoint.pages.site import Page, Site
from hardpoint.pages.terms import key_words, spoken_path
from hardpoint.pages.view import Block, Line, Lines, Row, Section, SheetPage, Table, Value
from hardpoint.records.fleet import Aircraft, Type
from hardpoint.records.known import NonValue
from hardpoint.records.station import Station
from hardpoint.records.walk import values_of
from hardpoint.words import mark, say

_LEAD = mark("What nobody has answered, what conflicts, what is overdue, who can answer. An empty list is no promise.")


def gaps_page(site: Site) -> Page:
    """Every gap of the fleet, counted; the questions themselves stand on the page of each record."""
    page = addresses.GAPS
    sections = (
        Section("types", say("By type"), (_types(site, page),), say("Types")),
        Section("tails", say("By aircraft"), (_tails(site, page),), say("Aircraft")),
        Section("events", say("By event"), (_events(site, page),), say("Events")),
        Section("station", say("The station"), _station(site), say("Station")),
        Section("who-can-answer", say("By who can answer"), _by_who(site, page), say("Who")),
    )
    title = say("What is unanswered")
    view = SheetPage(site.frame(page, title), title, say(_LEAD), sections, (), site.cautions)
    return Page(page, title, "sheet.html", view)


def _row(id_: str, name: str, home: str, page: str, paths: tuple[Path, ...], found: tuple[Finding, ...]) -> Row:
    """One record: how many questions are open and where most of them, what the rules found."""
    most = Counter(str(path[0]) for path in paths).most_common(3)
    where = ", ".join(say("{part} {count}", part=key_words(part), count=count) for part, count in most)
    cells = (
        Value(name, href=relative(addresses.gaps_of(home), page)),
        Value(str(len(paths)), note=where),
        Value(str(len(found)) if found else say("none")),
    )
    return Row(cells, id_)


def _table(id_: str, caption: str, head: str, rows: tuple[Row, ...]) -> Table:
    return Table(id_, caption, (head, say("Unknown"), say("Conflicts and overdue")), rows)


def _types(site: Site, page: str) -> Block:
    rows = tuple(
        _row(
            f"type-{type_.id}",
            type_.airframe.name,
            addresses.type_page(type_.id),
            page,
            unknowns(type_),
            found_in(site, type_.written.file),
        )
        for type_ in site.fleet.types.values()
    )
    return _table("types-table", say("Types"), say("Type"), rows)


def _tails(site: Site, page: str) -> Block:
    rows = tuple(
        _row(
            f"tail-{tail.id}",
            f"{tail.id} {tail.airframe.name}",
            addresses.tail_page(tail.id),
            page,
            (*(() if tail.declared else (("differs",),)), *own_unknowns(tail)),
            found_in(site, tail.own.file),
        )
        for tail in site.fleet.tails.values()
    )
    return _table("tails-table", say("Aircraft, beyond their types"), say("Aircraft"), rows)


def _events(site: Site, page: str) -> Block:
    rows = tuple(
        _row(
            f"event-{event_id}",
            line_up.event.name,
            addresses.event_page(event_id),
            page,
            event_unknowns(line_up),
            found_in(site, line_up.written.file),
        )
        for event_id, line_up in site.fleet.events.items()
    )
    return _table("events-table", say("Events, beyond their aircraft"), say("Event"), rows)


def _station(site: Site) -> tuple[Block, ...]:
    if site.station is None:
        return (Lines((Line(say("no record of the station could be read"), say("UNKNOWN"), "unknown"),)),)
    unknown = [path for path, value in values_of(site.station) if value is NonValue.UNKNOWN]
    lines = [Line(spoken_path(path, Station), say("UNKNOWN:"), "unknown") for path in unknown]
    found = found_in(site, site.fleet.house.written.file) if site.fleet.house else ()
    table = tuple(found_table(found, path_words(Station), "station-found"))
    nothing = Line(say("the station's record has no unknown"))
    return (Lines(tuple(lines) or (nothing,)), *table)


def _by_who(site: Site, page: str) -> tuple[Block, ...]:
    """Whoever can answer, with the aircraft and how many questions of which part: a list to take along."""
    asked: dict[str, list[Row]] = {}
    records: list[Type | Aircraft] = [*site.fleet.types.values(), *site.fleet.tails.values()]
    for record in records:
        who, (home, paths) = answerers(record), _home(record)
        parts = Counter(str(path[1] if path[0] == "checked" and len(path) > 1 else path[0]) for path in paths)
        by_words: dict[str, list[str]] = {}
        for part, count in parts.items():
            by_words.setdefault(who.get(part, ""), []).append(f"{key_words(part)} {count}")
        for words, told in by_words.items():
            href = relative(addresses.gaps_of(home), page)
            asked.setdefault(words, []).append(Row((Value(_called(record), href=href), Value(", ".join(told)))))
    heads = (say("Who can answer"), say("Aircraft"), say("Open questions"))
    named = sorted(asked, key=lambda words: (words == "", words.casefold()))
    rows = tuple(Row((Value(words or say("nobody is named")), *row.cells)) for words in named for row in asked[words])
    if not rows:
        return (Lines((Line(say("no unknown is recorded; that is no promise")),)),)
    return (Table("who", say("Who can answer what"), heads, rows),)


def _home(record: Type | Aircraft) -> tuple[str, tuple[Path, ...]]:
    if isinstance(record, Type):
        return addresses.type_page(record.id), unknowns(record)
    return addresses.tail_page(record.id), own_unknowns(record)


def _called(record: Type | Aircraft) -> str:
    return record.airframe.name if isinstance(record, Type) else f"{record.airframe.name} {record.id}"
