"""The walk-round talks of an event for their speaker: one page a day, and a page that leads to them."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.brief_parts import aircraft_section
from hardpoint.pages.entries import Flown, all_flown, dated, every_day
from hardpoint.pages.site import Page, Site
from hardpoint.pages.view import Line, Lines, Link, Section, SheetPage
from hardpoint.records.event import Day
from hardpoint.words import mark, say, say_count

_LEAD = mark(
    "For whoever walks the crews round. Show it on the aircraft, let hands do it, say what nobody knows. "
    "The owner or a licensed person stands by; no device is touched."
)


def brief_pages(site: Site, event_id: str) -> Iterator[Page]:
    """The page of the days, then the talk of each day."""
    yield _days(site, event_id)
    for day_id, _, day in every_day(site, event_id):
        yield _day(site, event_id, day_id, day)


def _days(site: Site, event_id: str) -> Page:
    event = site.fleet.events[event_id].event
    page = addresses.brief_page(event_id)
    title = say("Briefing: {event}", event=event.name)
    lines = tuple(
        Line(_numbers(day), f"{dated(day_id, day)}:", href=relative(addresses.brief_day_page(event_id, day_id), page))
        for day_id, _, day in every_day(site, event_id)
    )
    section = Section("days", say("One talk a day"), (Lines(lines, "days-list"),), say("Days"))
    return _sheet(site, event_id, page, title, (section,))


def _numbers(day: Day) -> str:
    told = say_count(len(day.entries), "{count} aircraft", "{count} aircraft")
    return say("{count}: numbers {numbers}", count=told, numbers=", ".join(day.entries)) if day.entries else told


def _day(site: Site, event_id: str, day_id: str, day: Day) -> Page:
    """One section an aircraft, in the order of the line-up."""
    event = site.fleet.events[event_id].event
    page = addresses.brief_day_page(event_id, day_id)
    title = say("Briefing {day}: {event}", day=dated(day_id, day), event=event.name)
    sections: list[Section] = []
    before: Flown | None = None
    for one in all_flown(site, day):
        sections.append(aircraft_section(site, event_id, (day_id, day), (before, one), page))
        before = one
    if before is None:
        nothing = Lines((Line(say("nothing is entered yet")),))
        sections.append(Section(f"{day_id}-none", dated(day_id, day), (nothing,)))
    others = tuple(
        Link(say("Briefing: {day}", day=name), relative(addresses.brief_day_page(event_id, other), page))
        for other, name, _ in every_day(site, event_id)
        if other != day_id
    )
    return _sheet(
        site, event_id, page, title, tuple(sections), (say("Briefing"), addresses.brief_page(event_id)), others
    )


def _sheet(
    site: Site,
    event_id: str,
    page: str,
    title: str,
    sections: tuple[Section, ...],
    above: tuple[str, str] | None = None,
    others: tuple[Link, ...] = (),
) -> Page:
    name, home = site.fleet.events[event_id].event.name, addresses.event_page(event_id)
    trail = ((name, home), above) if above else ((name, home),)
    ask = Link(say("Whom to ask the day before"), relative(addresses.gaps_of(home), page))
    links = (Link(name, relative(home, page)), *others, ask)
    view = SheetPage(site.frame(page, title, *trail), title, say(_LEAD), sections, links, site.cautions)
    return Page(page, title, "sheet.html", view)
