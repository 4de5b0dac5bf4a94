"""The index behind the search box: numbers, tails, types, the places on their pages, pages, headings of the docs.

It is lean, because every phone that searches loads it: what many types have in common stands once in a table of places,
and a type names its places by number; a tail names only what it has otherwise than its type.
"""

from __future__ import annotations

import html
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import astuple, dataclass, field, replace
from typing import Any, Protocol

from hardpoint.findings import Path
from hardpoint.pages import addresses
from hardpoint.pages.finder_places import Found, kinds, page_places, places
from hardpoint.pages.lineup import day_title
from hardpoint.pages.shown import shown_tail, shown_type
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import tell
from hardpoint.records.event import Entry
from hardpoint.records.fleet import Aircraft, Type
from hardpoint.records.known import NonValue, said
from hardpoint.words import say

VARIABLE = "hardpointFinder"
"""The script sets this name on the window: ``fetch`` and modules fail on file://."""


class Heading(Protocol):
    """A heading of a docs page with those below it; ``title`` is HTML, ``url`` begins with #."""

    @property
    def title(self) -> str: ...
    @property
    def url(self) -> str: ...
    @property
    def children(self) -> Iterable[Heading]: ...


class Doc(Protocol):
    """A docs page after it was rendered; ``url`` counts from the top of the site."""

    @property
    def title(self) -> str | None: ...
    @property
    def url(self) -> str: ...
    @property
    def toc(self) -> Iterable[Heading]: ...


@dataclass(frozen=True)
class TypeEntry:
    """A type; ``places`` are numbers into the table of places."""

    id: str
    name: str
    also_called: tuple[str, ...]
    role: str
    places: tuple[int, ...]


@dataclass(frozen=True)
class TailEntry:
    """A tail of the fleet, or one that was swapped out of a line-up. ``type``: a number into the types, -1 = not known.

    ``address`` is "" for the tail's own page; else the book has no record of it, and it leads to the line-up.
    ``ask``: it was swapped out; nobody is sent to its page unasked.
    """

    registration: str
    type: int
    address: str = ""
    note: str = ""
    ask: bool = False
    without: tuple[int, ...] = ()
    added: tuple[int, ...] = ()
    differs: tuple[int, ...] = ()


@dataclass(frozen=True)
class NumberEntry:
    """A display number, always with its day (a number into the days); ``tail`` -1 leads to the type's page."""

    number: str
    day: int
    type: int
    tail: int
    note: str = ""


@dataclass(frozen=True)
class PageEntry:
    """A page or a heading: address, title, what it belongs to or is also found by."""

    address: str
    title: str
    words: str


@dataclass(frozen=True)
class Finder:
    """The whole index. ``days``: title and event. ``visitors``: the page for aircraft without a record, "" = none."""

    words: Mapping[str, str]
    kinds: tuple[str, ...]
    places: tuple[tuple[int, str, str, str, str, str], ...]
    types: tuple[TypeEntry, ...]
    tails: tuple[TailEntry, ...]
    days: tuple[tuple[str, str], ...]
    numbers: tuple[NumberEntry, ...]
    pages: tuple[PageEntry, ...]
    docs: tuple[PageEntry, ...]
    visitors: str


def finder(site: Site, pages: Iterable[Page], docs: Iterable[Doc] = ()) -> Finder:
    """The index of a site, from its pages as they were made and its docs as they were rendered."""
    made = {page.address: page for page in pages}
    table = _Table(made)
    types = tuple(_type(table, type_) for type_ in site.fleet.types.values())
    line_up = _LineUp(site)
    tails = (*(_tail(table, line_up, tail) for tail in site.fleet.tails.values()), *line_up.strangers())
    return Finder(
        _words(),
        kinds(),
        tuple(table.rows),
        types,
        tails,
        tuple(line_up.days),
        tuple(line_up.numbers([tail.registration for tail in tails])),
        tuple(_pages(made.values())),
        tuple(_headings(docs)),
        addresses.NOT_IN_THE_BOOK if addresses.NOT_IN_THE_BOOK in made else "",
    )


def finder_script(index: Finder) -> str:
    """The index as a classic script, written for size: lists in the order of the fields above, empty ends left out.

    An anchor that ends in "-" goes on with the label ("control-" + "magneto-left"). A type's places are in order, each
    as its distance from the one before, the first from -1.
    """
    lists = {
        "words": dict(index.words),
        "kinds": index.kinds,
        "places": [_short((*row[:2], _anchor(row[2], row[3]), *row[3:])) for row in index.places],
        "types": [(*astuple(entry)[:-1], _steps(entry.places)) for entry in index.types],
        "tails": [_short(astuple(entry)) for entry in index.tails],
        "days": index.days,
        "numbers": [_short(astuple(entry)) for entry in index.numbers],
        "pages": [astuple(entry) for entry in index.pages],
        "docs": [astuple(entry) for entry in index.docs],
        "visitors": index.visitors,
    }
    text = json.dumps(lists, ensure_ascii=False, separators=(",", ":"))
    return f"window.{VARIABLE}={text};\n".replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _anchor(anchor: str, label: str) -> str:
    told = label.lower().replace(" ", "-")
    return anchor.removesuffix(told) if anchor.endswith(f"-{told}") else anchor


def _steps(numbers: Iterable[int]) -> list[int]:
    ordered = sorted(numbers)
    return [number - before for before, number in zip([-1, *ordered], ordered, strict=False)]


def _short(row: tuple[Any, ...]) -> tuple[Any, ...]:
    """Without the empty fields at the end."""
    kept = list(row)
    while kept and (kept[-1] is False or kept[-1] in ("", ())):
        kept.pop()
    return tuple(kept)


def _words() -> dict[str, str]:
    """Every word that the search box says while somebody types."""
    return {
        "found": say("Found: {count}"),
        "near": say("Not what you typed"),
        "no_exact": say("Nothing matches exactly."),
        "nothing": say("Nothing found. Check the spelling or go by number. It may not be in this book."),
        "visitors": say("What to assume of an aircraft that is not in the book"),
        "all": say("Show all {count}"),
        "differs": say("differs from its type"),
        "unknown": tell(NonValue.UNKNOWN).text,
        "slot": say("number {number}, {day}"),
        "number": say("Number"),
        "tail": say("Tail"),
        "type": say("Type"),
        "page": say("Page"),
        "doc": say("How this works"),
    }


@dataclass
class _Table:
    """Places under numbers, each once, and which anchors the pages have."""

    pages: Mapping[str, Page]
    rows: list[tuple[int, str, str, str, str, str]] = field(default_factory=list)
    _numbers: dict[Found, int] = field(default_factory=dict)

    def number(self, found: Found) -> int:
        if found not in self._numbers:
            self._numbers[found] = len(self.rows)
            self.rows.append((found.kind, found.page, found.anchor, found.label, found.words, found.state))
        return self._numbers[found]


def _type(table: _Table, type_: Type) -> TypeEntry:
    shown = shown_type(type_)
    listed = [found for _, found in _of_type(table, type_)]
    listed += page_places(shown.name, table.pages, addresses.type_page(type_.id))
    numbers = tuple(dict.fromkeys(table.number(found) for found in listed))
    airframe = type_.airframe
    return TypeEntry(type_.id, airframe.name, airframe.also_called, said(airframe.role) or "", numbers)


def _tail(table: _Table, line_up: _LineUp, tail: Aircraft) -> TailEntry:
    shown, types_page = shown_tail(tail), addresses.type_page(tail.of.id)
    here: dict[int, Path] = {}
    for path, found in places(shown, table.pages, addresses.tail_page(tail.id), types_page):
        # A page of the type tells what the type has there: where this tail differs, its own list of differences does.
        own = replace(found, page="", anchor="differences") if found.page and shown.was(path) else found
        here[table.number(own)] = path
    there = {table.number(found): (path, found) for path, found in _of_type(table, tail.of)}
    removed = {override.at for override in tail.overrides if override.kind == "removed"}
    gone = [
        table.number(replace(found, page="", anchor="differences", state=say("not on this aircraft")))
        for path, found in there.values()
        if path in removed
    ]
    without = tuple(number for number in there if number not in here)
    added = (*(number for number in here if number not in there), *gone)
    differs = (*(number for number, path in here.items() if shown.was(path)), *gone)
    note, ask = line_up.note(tail.id)
    return TailEntry(tail.id, line_up.types.index(tail.of.id), "", note, ask, without, added, differs)


def _of_type(table: _Table, type_: Type) -> Iterator[tuple[Path, Found]]:
    page = addresses.type_page(type_.id)
    return places(shown_type(type_), table.pages, page, page)


class _LineUp:
    """All events together: days, numbers, and what they say of a tail."""

    def __init__(self, site: Site) -> None:
        self.site = site
        self.types = list(site.fleet.types)
        self.days: list[tuple[str, str]] = []
        self.entries: list[tuple[int, str, str, str, Entry]] = []
        for event_id, event in ((event_id, line_up.event) for event_id, line_up in site.fleet.events.items()):
            for day_id, day in event.days.items():
                for number, entry in day.entries.items():
                    self.entries.append((len(self.days), number, event_id, day_id, entry))
                self.days.append((day_title(day_id, day), event.name))

    def numbers(self, tails: list[str]) -> Iterator[NumberEntry]:
        for at, number, _, _, entry in self.entries:
            tail = said(entry.tail)
            swaps = [
                say("SWAPPED: was {tail} until {time}", tail=swap.was, time=f"{swap.at:%H:%M}") for swap in entry.swaps
            ]
            note = "; ".join([*swaps, *([] if tail else [say("tail UNKNOWN, the type is shown")])])
            yield NumberEntry(number, at, self.types.index(entry.type), tails.index(tail) if tail else -1, note)

    def note(self, tail: str) -> tuple[str, bool]:
        """Under which numbers a tail flies and from which it was swapped out; whether one has to ask first."""
        flies = [
            say("number {number}, {day}", number=number, day=self.days[at][0])
            for at, number, _, _, entry in self.entries
            if entry.tail == tail
        ]
        out = [
            say(
                "SWAPPED OUT of number {number}, {day}, at {time}; {tail} flies",
                number=number,
                day=self.days[at][0],
                time=f"{swap.at:%H:%M}",
                tail=said(entry.tail) or say("tail UNKNOWN"),
            )
            for at, number, _, _, entry in self.entries
            for swap in entry.swaps
            if swap.was == tail and entry.tail != tail
        ]
        return "; ".join([*out, *flies]), bool(out)

    def strangers(self) -> Iterator[TailEntry]:
        """Tails that were swapped out and have no record: they are found and say so."""
        seen = set(self.site.fleet.tails)
        for _, number, event_id, day_id, entry in self.entries:
            for tail in (swap.was for swap in entry.swaps):
                if tail not in seen:
                    seen.add(tail)
                    note = f"{self.note(tail)[0]}; {say('the book holds no record of this aircraft')}"
                    yield TailEntry(tail, -1, f"{addresses.event_page(event_id)}#{day_id}-{number}", note, True)


def _pages(pages: Iterable[Page]) -> Iterator[PageEntry]:
    """Pages that belong to no single type or tail; those are among their places."""
    for page in pages:
        if page.address.split("/")[0] not in ("types", "tails"):
            title = say("Line-up") if page.address == addresses.HOME else page.title
            yield PageEntry(page.address, title, page.address.removesuffix(".html"))


def _headings(docs: Iterable[Doc]) -> Iterator[PageEntry]:
    for doc in docs:
        page = html.unescape(doc.title or "")
        yield PageEntry(doc.url, page, "")
        for title, url in _below(doc.toc):
            if title != page:
                yield PageEntry(doc.url + url, title, page)


def _below(headings: Iterable[Heading]) -> Iterator[tuple[str, str]]:
    for heading in headings:
        yield html.unescape(heading.title), heading.url
        yield from _below(heading.children)
