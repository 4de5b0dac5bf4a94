"""The figures of a line-up: what each slot changes by its fuel as planned and its occupants, and no more."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.worked import Topic, Worked
from hardpoint.pages import addresses
from hardpoint.pages.entries import Flown, all_flown, dated, every_day
from hardpoint.pages.site import Page, Site
from hardpoint.pages.view import Block, Line, Lines, Section, SheetPage
from hardpoint.pages.workings import differing, sources_section, worked, worked_table
from hardpoint.records.event import Day
from hardpoint.words import say


def event_figures_page(site: Site, event_id: str) -> Page:
    """Every entry of every day; what its slot does not change stands on the figures page of its type."""
    page = addresses.event_figures_page(event_id)
    event = site.fleet.events[event_id].event
    title = say("{event}: figures", event=event.name)
    told = [(day_id, day, entry) for day_id, _, day in every_day(site, event_id) for entry in all_flown(site, day)]
    sections = [_entry(site, page, day_id, day, entry) for day_id, day, entry in told]
    shown = tuple(topic for _, day, entry in told for topic in _changed(site, day, entry))
    lead = say(
        "For planning, not for the aircraft side. What fuel as planned, occupants and reports of the day change; all "
        "other figures stand on the page of the type."
    )
    frame = site.frame(page, title, (event.name, addresses.event_page(event_id)))
    view = SheetPage(frame, title, lead, (*sections, *sources_section(shown)), (), site.cautions)
    return Page(page, title, "sheet.html", view)


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
