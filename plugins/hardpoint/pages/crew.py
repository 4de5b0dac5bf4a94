"""The crew page of a type or a tail: what a crew reads on the way and at the aircraft."""

from __future__ import annotations

from dataclasses import replace

from hardpoint.pages import addresses
from hardpoint.pages.across.links import with_links
from hardpoint.pages.after import cutting, heavy_end, recognising, two_signs, water
from hardpoint.pages.approach import approach
from hardpoint.pages.dangers import staying_clear, strip
from hardpoint.pages.differences import banner, marked
from hardpoint.pages.entries import signs_of
from hardpoint.pages.freeing import freeing, gripping
from hardpoint.pages.never import never_touch
from hardpoint.pages.opening import opening
from hardpoint.pages.pictures import pictured
from hardpoint.pages.shown import Shown, shown_tail, shown_type
from hardpoint.pages.shutdown import shutting_down
from hardpoint.pages.site import Page, Site
from hardpoint.pages.stand_ins import stands_in, taken_out
from hardpoint.pages.telling import tell
from hardpoint.pages.terms import title_of
from hardpoint.pages.view import CrewPage, Fact, Facts, Line, Link, Section, Value
from hardpoint.records.fleet import Aircraft, Type
from hardpoint.records.known import NonValue, said
from hardpoint.words import say


def type_crew_page(site: Site, type_: Type) -> Page:
    """The crew page of a type."""
    address = addresses.type_page(type_.id)
    shown = replace(pictured(shown_type(type_), site, address), station=site.station)
    numbers = _numbers(site, address, type_.id, None)
    view = CrewPage(
        site.frame(address, shown.name),
        shown.name,
        "",
        numbers,
        two_signs(shown),
        (),
        (),
        Line(say("an aircraft can differ from it."), say("This is the type:")),
        strip(shown),
        *never_touch(shown),
        _sections(shown),
        _links(site, shown, address),
        site.cautions,
        stands_in=stands_in(site, type_.id, "", address, len(numbers)),
    )
    return Page(address, shown.name, "crew.html", view)


def tail_crew_page(site: Site, aircraft: Aircraft) -> Page:
    """The crew page of one aircraft, its differences first."""
    address = addresses.tail_page(aircraft.id)
    shown = pictured(shown_tail(aircraft), site, address, aircraft.tail.photos)
    shown = replace(shown, station=site.station)
    title, sections = f"{shown.name} {aircraft.id}", _sections(shown)
    numbers = _numbers(site, address, aircraft.of.id, aircraft.id)
    view = CrewPage(
        site.frame(address, title),
        shown.name,
        aircraft.id,
        numbers,
        signs_of(aircraft),
        *banner(shown, sections),
        _declaration(aircraft),
        strip(shown),
        *never_touch(shown),
        (*sections, _declared_by(aircraft)),
        _links(site, shown, address),
        site.cautions,
        taken_out(site, aircraft.id, address),
        stands_in(site, aircraft.of.id, aircraft.id, address, len(numbers)),
    )
    return Page(address, title, "crew.html", view)


def _sections(shown: Shown) -> tuple[Section, ...]:
    makers = (
        approach,
        opening,
        shutting_down,
        freeing,
        gripping,
        staying_clear,
        cutting,
        water,
        heavy_end,
        recognising,
    )
    return tuple(with_links(section, shown) for section in marked(tuple(make(shown) for make in makers), shown))


def _declaration(aircraft: Aircraft) -> Line:
    """One line at the head; differences speak for themselves there, and who declared them stands under Recognise."""
    if not aircraft.declared:
        return Line(say("nobody has declared how it differs. Below is the type."), say("UNKNOWN:"), "unknown")
    return Line("" if aircraft.overrides else say("No recorded difference from the type."))


def _declared_by(aircraft: Aircraft) -> Section:
    declared = said(aircraft.tail.declared)
    told = (
        tell(aircraft.tail.declared)
        if declared is None
        else Value(f"{tell(declared.by).text}, {tell(declared.date).text}")
    )
    markings = said(aircraft.tail.markings)
    facts = [Fact(say("Differences declared by"), told)]
    if markings is None:
        facts.append(Fact(say("Markings"), tell(aircraft.tail.markings)))
    else:
        facts += [Fact(say("Colours"), tell(markings.colours)), Fact(say("Number on"), tell(markings.number_on))]
        facts += [Fact(say("Also"), Value(markings.also))] if markings.also else []
    facts += [Fact(say("Note"), Value(aircraft.tail.notes))] if aircraft.tail.notes else []
    return Section(
        "this-aircraft",
        say("This aircraft, {tail}", tail=aircraft.id),
        (Facts("this-aircraft-facts", "", tuple(facts)),),
        aircraft.id,
    )


def _numbers(site: Site, page: str, type_id: str, tail: str | None) -> tuple[Link, ...]:
    """The display numbers under which this aircraft (or, for a type, an entry without a tail) flies, with the day."""
    found = []
    for event_id, line_up in site.fleet.events.items():
        for day_id, day in line_up.event.days.items():
            for number, entry in day.entries.items():
                fits = entry.tail == tail if tail else entry.type == type_id and isinstance(entry.tail, NonValue)
                if fits:
                    target = f"{addresses.event_page(event_id)}#{day_id}"
                    found.append(Link(number, addresses.relative(target, page), title_of(day_id)))
    return tuple(found)


def _links(site: Site, shown: Shown, page: str) -> tuple[Link, ...]:
    targets = [
        (say("Structure: side view and load points"), addresses.structure_page(shown.type_id)),
        (say("All figures, converted, with sources"), addresses.figures_page(shown.type_id)),
        (say("What is unlike: its aircraft, what flies with it"), addresses.unlike_of(shown.type_id)),
        (say("Compare types"), addresses.COMPARE),
        (say("What is unanswered"), addresses.gaps_of(_home(shown))),
    ]
    if shown.tail:
        targets.append((say("The type: {name}", name=shown.name), addresses.type_page(shown.type_id)))
    targets += [
        (say("Tail {tail}", tail=tail.id), addresses.tail_page(tail.id))
        for tail in site.fleet.tails_of(shown.type_id)
        if tail.id != shown.tail
    ]
    targets += [(line_up.event.name, addresses.event_page(event_id)) for event_id, line_up in site.fleet.events.items()]
    return tuple(Link(text, addresses.relative(target, page)) for text, target in targets)


def _home(shown: Shown) -> str:
    return addresses.tail_page(shown.tail) if shown.tail else addresses.type_page(shown.type_id)
