"""Two at once: any two numbers of a day side by side, what is opposite between them, and every key fact by number."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.entries import Flown, all_flown, dated, day_name, every_day
from hardpoint.pages.key_facts import key_facts, unlike
from hardpoint.pages.opposites import between, opposites
from hardpoint.pages.site import Page, Site
from hardpoint.pages.view import Block, Frame, Line, Lines, Link, Row, Section, Table, Value
from hardpoint.words import say

_OPEN = ("first-way-in", "ignition-off", "fuel-off")
"""The tables that stand open: the rest is one tap away, so that a phone shows all titles on two screens."""


@dataclass(frozen=True)
class Pair:
    """Two numbers of a day. The page shows a pair only while its address names it: ``#saturday-1-7``."""

    id: str
    title: str
    first: str
    second: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Choice:
    """The numbers of a day that one picks two from, with their pairs; ``day`` is where the whole day is."""

    id: str
    title: str
    short: str
    numbers: tuple[tuple[str, str], ...]
    pairs: tuple[Pair, ...]
    day: str


@dataclass(frozen=True)
class TwoPage:
    """A title, a lead, a choice of two a day, sections with the whole day."""

    frame: Frame
    title: str
    lead: str
    choices: tuple[Choice, ...]
    sections: tuple[Section, ...]
    links: tuple[Link, ...]
    cautions: tuple[str, ...]


def two_at_once_page(site: Site, event_id: str) -> Page:
    """Day by day: pick two; then what is opposite that day, then every key fact by number."""
    event = site.fleet.events[event_id].event
    page = addresses.two_at_once_page(event_id)
    title = say("Two at once: {event}", event=event.name)
    days = [(day_id, name, day, all_flown(site, day)) for day_id, name, day in every_day(site, event_id)]
    choices = tuple(_choice(day_id, name, flown, page) for day_id, name, _, flown in days if len(flown) > 1)
    sections = tuple(
        Section(day_id, dated(day_id, day), tuple(_day(day_id, flown, page)), name) for day_id, name, day, flown in days
    )
    lead = say("Two aircraft down: send each crew to its own page. Nothing is to be carried from one to the other.")
    links = (Link(event.name, relative(addresses.event_page(event_id), page)),)
    trail = (event.name, addresses.event_page(event_id))
    view = TwoPage(site.frame(page, title, trail), title, lead, choices, sections, links, site.cautions)
    return Page(page, title, "two.html", view)


def _choice(day_id: str, name: str, flown: tuple[Flown, ...], page: str) -> Choice:
    numbers = tuple((one.number, one.called) for one in flown)
    pairs = tuple(_pair(day_id, one, other, page) for one, other in combinations(flown, 2))
    title = say("Pick two: {day}", day=name)
    return Choice(f"{day_id}-pick", title, say("Two, {day}", day=name[:2]), numbers, pairs, day_id)


def _pair(day_id: str, one: Flown, other: Flown, page: str) -> Pair:
    """What is opposite first, then what they answer otherwise; an answer that nobody has is never alike."""
    id_ = f"{day_id}-{one.number}-{other.number}"
    names = [f"{flown.number} {flown.called}" for flown in (one, other)]
    found = tuple(unlike(one.shown.airframe, other.shown.airframe))
    rows = tuple(
        Row((Value(fact.title), *(_answer(told, flown, fact.part, page) for told, flown in answered)))
        for fact, ours, theirs in found
        for answered in [((ours, one), (theirs, other))]
    )
    asked = {fact.id for fact, _, _ in found}
    rest = [fact.title for fact in key_facts() if fact.id not in asked]
    lines = list(between(one, other)) or [
        Line(say("no control is recorded as opposite; that does not make them alike"))
    ]
    lines += [
        Line(label, href=relative(flown.address, page)) for label, flown in zip(_to(names), (one, other), strict=True)
    ]
    blocks: list[Block] = [Lines(tuple(lines), f"{id_}-opposites")]
    if rows:
        blocks.append(Table(f"{id_}-facts", say("Answered otherwise, or UNKNOWN"), (say("What"), *names), rows))
    if rest:
        blocks.append(Lines((Line(", ".join(rest), say("No recorded difference:")),), f"{id_}-rest"))
    title = say("{first} and {second}", first=names[0], second=names[1])
    return Pair(id_, title, one.number, other.number, tuple(blocks))


def _to(names: list[str]) -> list[str]:
    return [say("To the page of {aircraft}", aircraft=name) for name in names]


def _answer(told: Value, flown: Flown, part: str, page: str) -> Value:
    """An answer with the way to where it stands; one in several parts has its links in none of them."""
    if told.parts:
        return told
    return Value(told.text, told.state, told.beside, told.remark, relative(f"{flown.address}#{part}", page), told.note)


def _day(day_id: str, flown: tuple[Flown, ...], page: str) -> Iterator[Block]:
    yield Lines(tuple(opposites(flown)), f"{day_id}-opposites", say("Opposite between two of this day"))
    for fact in key_facts():
        rows = tuple(
            Row(
                (
                    Value(f"{one.number} {one.called}", href=relative(f"{one.address}#{fact.part}", page)),
                    fact.tell(one.shown.airframe),
                )
            )
            for one in flown
        )
        heads = (say("Number"), fact.title)
        caption = say("{fact}, {day}", fact=fact.title, day=day_name(day_id))
        yield Table(f"{day_id}-{fact.id}", caption, heads, rows, folded=fact.id not in _OPEN)
