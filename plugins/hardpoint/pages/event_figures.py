"""The figures of a line-up: what each slot changes by its fuel as planned and its occupants, and no more."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.worked import Topic, Worked
from hardpoint.figures.workings.category import highest
from hardpoint.pages import addresses
from hardpoint.pages.entries import Flown, all_flown, dated, every_day
from hardpoint.pages.site import Page, Site
from hardpoint.pages.view import Block, Line, Lines, Section, SheetPage
from hardpoint.pages.workings import differing, sources_section, worked, worked_table
from hardpoint.records.event import Day
from hardpoint.records.known import said
from hardpoint.words import say


def event_figures_page(site: Site, event_id: str) -> Page:
    """Every entry of every day; what its slot does not change stands on the figures page of its type."""
    page = addresses.event_figures_page(event_id)
    event = site.fleet.events[event_id].event
    title = say("{event}: figures", event=event.name)
    told = [(day_id, day, entry) for day_id, _, day in every_day(site, event_id) for entry in all_flown(site, day)]
    sections = [_cover(site, event_id), *(_entry(site, page, day_id, day, entry) for day_id, day, entry in told)]
    shown = tuple(topic for _, day, entry in told for topic in _changed(site, day, entry))
    lead = say(
        "For planning, not for the aircraft side. What fuel as planned, occupants and reports of the day change; all "
        "other figures stand on the page of the type."
    )
    frame = site.frame(page, title, (event.name, addresses.event_page(event_id)))
    view = SheetPage(frame, title, lead, (*sections, *sources_section(shown)), (), site.cautions)
    return Page(page, title, "sheet.html", view)


def _cover(site: Site, event_id: str) -> Section:
    """The highest category of each day beside the one that the station provides."""
    lines = tuple(_of_day(site, name, all_flown(site, day)) for _, name, day in every_day(site, event_id))
    return Section("cover", say("Fire cover of the line-up"), (Lines(lines),), say("Cover"))


def _of_day(site: Site, name: str, flown: tuple[Flown, ...]) -> Line:
    needed, open_ = highest(entry.shown.airframe for entry in flown)
    cover = said(site.station.cover) if site.station else None
    provided = said(cover.category) if cover else None
    if needed is None or provided is None or open_:
        words = say("the category of something in the line-up, or of the station, is unknown")
        return Line(words, say("{day}: UNKNOWN", day=name), "unknown")
    words = say("highest category {needed}; the station provides {provided}", needed=needed, provided=provided)
    if needed > provided:
        return Line(words, say("{day}: MORE THAN THE STATION PROVIDES", day=name), "caution")
    return Line(words, say("{day}:", day=name))


def _changed(site: Site, day: Day, entry: Flown) -> Iterator[tuple[Topic, tuple[Worked, ...]]]:
    own = entry.shown.airframe
    return differing(worked(site, own, entry.entry, day), worked(site, own))


def _entry(site: Site, page: str, day_id: str, day: Day, entry: Flown) -> Section:
    id_ = f"{day_id}-{entry.number}"
    title = say("{day}: {number} {aircraft}", day=dated(day_id, day), number=entry.number, aircraft=entry.called)
    blocks: list[Block] = [
        worked_table(
            f"{id_}-{topic.id}",
            figures,
            page,
            say("{aircraft}: {topic}", aircraft=title, topic=say(topic.title)),
            f"figure-{id_}",
        )
        for topic, figures in _changed(site, day, entry)
    ]
    figures_page = addresses.relative(addresses.figures_page(entry.shown.type_id), page)
    blocks.append(Lines((Line(say("All other figures of its type"), href=figures_page),)))
    return Section(id_, title, tuple(blocks), entry.number)
