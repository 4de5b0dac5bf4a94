"""Home and event: the line-up as tiles."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.pages import addresses
from hardpoint.pages.across.titles import across_titles
from hardpoint.pages.addresses import relative
from hardpoint.pages.after import two_signs
from hardpoint.pages.claims import claims_section
from hardpoint.pages.devices import ASKED
from hardpoint.pages.entries import signs_of
from hardpoint.pages.reported import reported
from hardpoint.pages.shown import shown_type
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import tell
from hardpoint.pages.unfit import unfit_section
from hardpoint.pages.view import Block, Day, Fact, Facts, HomePage, Line, Lines, Link, Section, SheetPage, Tile, Value
from hardpoint.pages.written import as_written
from hardpoint.records.event import Day as RecordDay
from hardpoint.records.event import Entry, Event
from hardpoint.records.fleet import LineUp
from hardpoint.records.known import said
from hardpoint.words import say


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
            Link(
                line_up.event.name, relative(addresses.event_page(event_id), page), say("line-up, swaps, what is unfit")
            )
            for event_id, line_up in events
        ),
        Link(
            say("What this station has decided"),
            relative(addresses.STATION, page),
            say("cordons, drills, cranes, tools"),
        ),
        Link(
            say("An aircraft that is not in the book"), relative(addresses.NOT_IN_THE_BOOK, page), say("what to assume")
        ),
        Link(say("Recognise: which type is it?"), relative(addresses.RECOGNISE, page), say("by what can be seen")),
        Link(say("Compare all types"), relative(addresses.COMPARE, page)),
        Link(say("No recorded difference"), relative(addresses.UNLIKE, page), say("types that are alike")),
        *(Link(title, relative(address, page)) for title, address in across_titles()),
        Link(say("Drill"), relative(addresses.DRILL, page), say("questions for training")),
        Link(say("What is unanswered"), relative(addresses.GAPS, page)),
        Link(say("How to read a page"), relative(addresses.READING, page)),
        Link(say("Cautions"), relative(addresses.CAUTIONS, page)),
    )
    name = _together([line_up.event.name for _, line_up in events])
    view = HomePage(site.frame(page, site.name), name, days, types, links, site.cautions)
    return Page(page, site.name, "home.html", view)


def _together(names: list[str]) -> str:
    told = names[0] if names else ""
    for name in names[1:]:
        told = say("{first} and {second}", first=told, second=name)
    return told


def event_page(site: Site, event_id: str, line_up: LineUp) -> Page:
    """One event: tiles, then what is unfit, then claims."""
    page = addresses.event_page(event_id)
    event = line_up.event
    days = tuple(_day(site, event_id, day_id, day, page) for day_id, day in event.days.items())
    sections = [unfit_section(site, page, day_id, day) for day_id, day in event.days.items()]
    if event.claims:
        sections.append(claims_section(site, event, page))
    sections += [_details(site, page, day_id, day) for day_id, day in event.days.items()]
    if event.notes or event.changes:
        lines = [Line(event.notes)] if event.notes else []
        lines += [Line(change.what, f"{change.date}, {change.by}:") for change in event.changes]
        sections.append(Section("changes", say("Changes and notes"), (Lines(tuple(lines)),), say("Changes")))
    sections.append(
        Section(
            "as-written",
            say("The line-up as it was written"),
            as_written(line_up.written.tree, Event),
            say("As written"),
        )
    )
    lead = say(
        "{place}. As of {date}. Swaps are struck through; a number on two days is two aircraft.",
        place=event.place,
        date=site.as_of.isoformat(),
    )
    links = (
        Link(say("Briefing: what to show on which aircraft"), relative(addresses.brief_page(event_id), page)),
        Link(say("Two at once: facts side by side"), relative(addresses.two_at_once_page(event_id), page)),
        Link(
            say("Figures of the line-up: fuel as planned, occupants"),
            relative(addresses.event_figures_page(event_id), page),
        ),
        Link(
            say("What is unanswered, and whom to ask"),
            relative(addresses.gaps_of(addresses.event_page(event_id)), page),
            say("to be rung through the day before"),
        ),
        Link(say("An aircraft that is not in the book"), relative(addresses.NOT_IN_THE_BOOK, page)),
    )
    view = SheetPage(site.frame(page, event.name), event.name, lead, tuple(sections), links, site.cautions, days)
    return Page(page, event.name, "sheet.html", view)


def _day(site: Site, event_id: str, day_id: str, day: RecordDay, page: str) -> Day:
    tiles = tuple(_tile(site, day_id, number, entry, page) for number, entry in day.entries.items())
    return Day(day_id, day_title(day_id, day), tiles)


def day_title(day_id: str, day: RecordDay) -> str:
    """``Saturday, 2027-06-05``."""
    return f"{day_id.replace('-', ' ').capitalize()}, {day.date.isoformat()}"


def _tile(site: Site, day_id: str, number: str, entry: Entry, page: str) -> Tile:
    name, signs, href = _who(site, entry, page)
    tail = said(entry.tail) or say("tail UNKNOWN")
    flags = []
    was = ", ".join(swap.was for swap in entry.swaps)
    if was:
        until = f"{entry.swaps[-1].at:%H:%M}"
        flags.append(Line(say("was {tail} until {time}", tail=was, time=until), say("SWAPPED"), "caution"))
    if fitted := _fitted(site, entry):
        flags.append(Line(fitted, say("Fitted:"), "caution"))
    if not said(entry.tail):
        flags.append(Line(say("the type is shown"), say("TAIL UNKNOWN"), "unknown"))
    elif (aircraft := site.fleet.tails.get(tail)) and not aircraft.declared:
        flags.append(Line(say("how it differs from its type"), say("UNKNOWN"), "unknown"))
    return Tile(
        number, name, tail, href, day_id.replace("-", " ").capitalize(), signs, tuple(flags), was, _words(site, entry)
    )


def _fitted(site: Site, entry: Entry) -> str:
    """What of it can fire or shock, for whoever chooses by number on the way there."""
    aircraft = site.fleet.tails.get(str(entry.tail))
    airframe = aircraft.airframe if aircraft else site.fleet.types[entry.type].airframe
    answers = [(say(label), device_answer(airframe, kind)) for label, kind in ASKED]
    answers.append((say("High voltage"), high_voltage_answer(airframe)))
    return ", ".join(label.lower() for label, answer in answers if answer is True)


def _words(site: Site, entry: Entry) -> str:
    """Nicknames and role, so that the finder on the page knows them."""
    airframe = site.fleet.types[entry.type].airframe
    return " ".join([entry.type, *airframe.also_called, airframe.role])


def _who(site: Site, entry: Entry, page: str) -> tuple[str, tuple[str, ...], str]:
    """Name, two signs, and the crew page: the tail's own where it is known, else the type's."""
    aircraft = site.fleet.tails.get(str(entry.tail))
    if aircraft:
        return aircraft.airframe.name, signs_of(aircraft), relative(addresses.tail_page(aircraft.id), page)
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
            Fact(say("Aircraft"), Value(f"{name} {tell(entry.tail).text}", href=href)),
            Fact(say("Slot"), tell(entry.time)),
            Fact(say("On board"), tell(entry.occupants)),
            Fact(say("Fuel planned"), tell(entry.fuel_planned, ("fuel_planned",))),
            Fact(say("Kit"), tell(entry.kit)),
        ]
        if entry.over_water is not None:
            facts.append(Fact(say("Over water"), tell(entry.over_water)))
        facts += [
            Fact(
                say("Swapped"),
                Value(
                    say(
                        "{tail} out at {time} on {date}, by {role}",
                        tail=swap.was,
                        time=f"{swap.at:%H:%M}",
                        date=swap.date,
                        role=swap.by,
                    )
                    + (f": {swap.because}" if swap.because else "")
                ),
            )
            for swap in entry.swaps
        ]
        facts += reported(entry, day)
        if entry.notes:
            facts.append(Fact(say("Note"), Value(entry.notes)))
        blocks.append(Facts(f"{day_id}-{number}", say("Number {number}", number=number), tuple(facts)))
    return Section(
        f"{day_id}-entries",
        say("{day}: each entry", day=day_id.replace("-", " ").capitalize()),
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
    at = say("{date} at {time}.", date=printed.date.isoformat(), time=f"{printed.at:%H:%M}")
    lines = [Line(at, say("Pack printed:"))]
    if void:
        words = say("number {numbers} was swapped since. Print it again.", numbers=", ".join(void))
        lines.append(Line(words, say("On paper wrong:"), "caution"))
    yield Lines(tuple(lines))
