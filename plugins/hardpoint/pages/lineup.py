"""Home and event: the line-up as tiles."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.fitness import Gap, gaps_that_bite
from hardpoint.pages import addresses
from hardpoint.pages.addresses import relative
from hardpoint.pages.after import two_signs
from hardpoint.pages.claims import claims_section
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import label_of, shown_tail, shown_type, tell
from hardpoint.pages.view import Block, Day, Fact, Facts, HomePage, Line, Lines, Link, Section, SheetPage, Tile, Value
from hardpoint.pages.written import as_written
from hardpoint.records.event import Day as RecordDay
from hardpoint.records.event import Entry
from hardpoint.records.fleet import LineUp
from hardpoint.records.known import said


def home_page(site: Site) -> Page:
    """The line-up of every event, then all types."""
    page = addresses.HOME
    events = list(site.fleet.events.items())
    days = tuple(
        _day(site, event_id, day_id, day, page)
        for event_id, line_up in events
        for day_id, day in line_up.event.days.items()
    )
    types = tuple(_type_tile(site, type_id, page) for type_id in site.fleet.types)
    links = (
        *(
            Link(line_up.event.name, relative(addresses.event_page(event_id), page), "line-up, swaps, what is unfit")
            for event_id, line_up in events
        ),
        Link("What this station has decided", relative(addresses.STATION, page), "cordons, drills, cranes, tools"),
        Link("Compare all types", relative(addresses.COMPARE, page)),
        Link("What is unanswered", relative(addresses.GAPS, page)),
        Link("How to read a page", relative(addresses.READING, page)),
        Link("Cautions", relative(addresses.CAUTIONS, page)),
    )
    name = " and ".join(line_up.event.name for _, line_up in events)
    view = HomePage(site.frame(page, site.name), name, days, types, links, site.cautions)
    return Page(page, site.name, "home.html", view)


def event_page(site: Site, event_id: str, line_up: LineUp) -> Page:
    """One event: tiles, then what is unfit, then claims."""
    page = addresses.event_page(event_id)
    event = line_up.event
    days = tuple(_day(site, event_id, day_id, day, page) for day_id, day in event.days.items())
    sections = [_details(site, page, day_id, day) for day_id, day in event.days.items()]
    sections += [_unfit(site, page, day_id, day) for day_id, day in event.days.items()]
    if event.claims:
        sections.append(claims_section(site, event, page))
    if event.notes or event.changes:
        lines = [Line(event.notes)] if event.notes else []
        lines += [Line(change.what, f"{change.date}, {change.by}:") for change in event.changes]
        sections.append(Section("changes", "Changes and notes", (Lines(tuple(lines)),), "Changes"))
    sections.append(
        Section("as-written", "The line-up as it was written", as_written(line_up.written.tree), "As written")
    )
    dated = f"{event.place}. As of {site.as_of.isoformat()}."
    lead = f"{dated} Swaps are struck through; a number on two days is two aircraft."
    view = SheetPage(site.frame(page, event.name), event.name, lead, tuple(sections), (), site.cautions, days)
    return Page(page, event.name, "sheet.html", view)


def _day(site: Site, event_id: str, day_id: str, day: RecordDay, page: str) -> Day:
    tiles = tuple(_tile(site, day_id, number, entry, page) for number, entry in day.entries.items())
    return Day(day_id, day_title(day_id, day), tiles)


def day_title(day_id: str, day: RecordDay) -> str:
    """``Saturday, 2027-06-05``."""
    return f"{day_id.replace('-', ' ').capitalize()}, {day.date.isoformat()}"


def _tile(site: Site, day_id: str, number: str, entry: Entry, page: str) -> Tile:
    name, signs, href = _who(site, entry, page)
    tail = said(entry.tail) or "tail UNKNOWN"
    flags = []
    was = ", ".join(swap.was for swap in entry.swaps)
    if was:
        flags.append(Line(f"was {was} until {entry.swaps[-1].at:%H:%M}", "SWAPPED", "caution"))
    if not said(entry.tail):
        flags.append(Line("the type is shown", "TAIL UNKNOWN", "unknown"))
    elif (aircraft := site.fleet.tails.get(tail)) and not aircraft.declared:
        flags.append(Line("how it differs from its type", "UNKNOWN", "unknown"))
    return Tile(
        number, name, tail, href, day_id.replace("-", " ").capitalize(), signs, tuple(flags), was, _words(site, entry)
    )


def _words(site: Site, entry: Entry) -> str:
    """Nicknames and role, so that the finder on the page knows them."""
    airframe = site.fleet.types[entry.type].airframe
    return " ".join([entry.type, *airframe.also_called, airframe.role])


def _who(site: Site, entry: Entry, page: str) -> tuple[str, tuple[str, ...], str]:
    """Name, two signs, and the crew page: the tail's own where it is known, else the type's."""
    aircraft = site.fleet.tails.get(str(entry.tail))
    if aircraft:
        return aircraft.airframe.name, two_signs(shown_tail(aircraft)), relative(addresses.tail_page(aircraft.id), page)
    type_ = site.fleet.types[entry.type]
    return type_.airframe.name, two_signs(shown_type(type_)), relative(addresses.type_page(type_.id), page)


def _type_tile(site: Site, type_id: str, page: str) -> Tile:
    type_ = site.fleet.types[type_id]
    tails = tuple(
        Line(tail.id, href=relative(addresses.tail_page(tail.id), page)) for tail in site.fleet.tails_of(type_id)
    )
    also = type_.airframe.also_called
    return Tile(
        "",
        type_.airframe.name,
        ", ".join(also),
        relative(addresses.type_page(type_id), page),
        "",
        two_signs(shown_type(type_)),
        tails,
        words=f"{type_id} {type_.airframe.role}",
    )


def _details(site: Site, page: str, day_id: str, day: RecordDay) -> Section:
    blocks: list[Block] = [*_paper(day)]
    for number, entry in day.entries.items():
        name, _, href = _who(site, entry, page)
        facts = [
            Fact("Aircraft", Value(f"{name} {tell(entry.tail).text}", href=href)),
            Fact("Slot", tell(entry.time)),
            Fact("On board", tell(entry.occupants)),
            Fact("Fuel planned", tell(entry.fuel_planned, ("fuel_planned",))),
            Fact("Kit", tell(entry.kit)),
        ]
        if entry.over_water is not None:
            facts.append(Fact("Over water", tell(entry.over_water)))
        facts += [
            Fact(
                "Swapped",
                Value(
                    f"{swap.was} out at {swap.at:%H:%M} on {swap.date}, by {swap.by}"
                    + (f": {swap.because}" if swap.because else "")
                ),
            )
            for swap in entry.swaps
        ]
        if entry.notes:
            facts.append(Fact("Note", Value(entry.notes)))
        blocks.append(Facts(f"{day_id}-{number}", f"Number {number}", tuple(facts)))
    return Section(
        f"{day_id}-entries",
        f"{day_id.replace('-', ' ').capitalize()}: each entry",
        tuple(blocks),
        day_id.replace("-", " ").capitalize(),
    )


def _paper(day: RecordDay) -> Iterator[Block]:
    """When the pack was printed, and which of its pages a later swap has made wrong."""
    printed = said(day.printed)
    if printed is None:
        return
    moment = (printed.date, printed.at)
    void = [number for number, entry in day.entries.items() if any((s.date, s.at) > moment for s in entry.swaps)]
    lines = [Line(f"{printed.date.isoformat()} at {printed.at:%H:%M}.", "Pack printed:")]
    if void:
        lines.append(Line(f"number {', '.join(void)} was swapped since. Print it again.", "On paper wrong:", "caution"))
    yield Lines(tuple(lines))


def unfit_gaps(site: Site, entry: Entry) -> tuple[Gap, ...]:
    """Why an entry is unfit; empty where nothing recorded makes it so, which does not make it fit."""
    also = site.station.unfit_also if site.station else ()
    aircraft = site.fleet.tails.get(str(entry.tail))
    airframe = aircraft.airframe if aircraft else site.fleet.types[entry.type].airframe
    undeclared: tuple[Gap, ...] = ()
    if aircraft is None:
        undeclared = (Gap("the tail is UNKNOWN", (), "undeclared"),)
    elif not aircraft.declared:
        undeclared = (Gap("nobody has declared its differences", (), "undeclared"),)
    return (*undeclared, *gaps_that_bite(airframe, also))


def _unfit(site: Site, page: str, day_id: str, day: RecordDay) -> Section:
    lines = []
    for number, entry in day.entries.items():
        gaps = unfit_gaps(site, entry)
        _, _, href = _who(site, entry, page)
        if not gaps:
            lines.append(
                Line("no gap recorded where crews act; that does not make it fit", f"{number}:", "plain", href)
            )
            continue
        words = "; ".join(_gap_words(gap) for gap in gaps)
        lines.append(Line(words, f"{number}, unfit with:", "unknown", href))
    title = f"{day_id.replace('-', ' ').capitalize()}: unfit with these gaps"
    note = Line("The page names the gap; people decide.")
    return Section(f"{day_id}-unfit", title, (Lines((*lines, note)),), "Unfit")


def _gap_words(gap: Gap) -> str:
    if gap.kind == "undeclared":
        return gap.group
    word = "UNKNOWN" if gap.kind == "unknown" else "the two figures disagree"
    return f"{label_of(gap.path[1:] or gap.path).replace('-', ' ')}: {word}"
