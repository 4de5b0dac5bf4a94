"""The walk-round talk of an event for its speaker: what to show where, what differs from the last, a recap."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages import addresses
from hardpoint.pages.across.shutdown_controls import off_is
from hardpoint.pages.addresses import relative
from hardpoint.pages.after import two_signs
from hardpoint.pages.entries import Flown, all_flown, dated, day_name, every_day
from hardpoint.pages.key_facts import key_facts, unlike
from hardpoint.pages.never import never_touch
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import place_words, tell
from hardpoint.pages.terms import key_words, label_of
from hardpoint.pages.unfit import gap_lines, unfit_gaps
from hardpoint.pages.view import Block, Line, Lines, Link, Links, Row, Section, SheetPage, Table, Value
from hardpoint.records.controls import Control
from hardpoint.records.event import Day
from hardpoint.records.known import NonValue, entries
from hardpoint.words import say

_RECAP = ("come-from", "first-way-in", "ignition-off", "master-off", "fuel-off", "mixture-off", "ties")


def brief_page(site: Site, event_id: str) -> Page:
    """One section an aircraft, day by day, in the order of the line-up."""
    event = site.fleet.events[event_id].event
    page = addresses.brief_page(event_id)
    title = say("Briefing: {event}", event=event.name)
    sections = [
        section for day_id, _, day in every_day(site, event_id) for section in _day(site, event_id, day_id, day, page)
    ]
    lead = say(
        "For whoever walks the crews round. Show it on the aircraft, let hands do it, say what nobody knows. "
        "The owner or a licensed person stands by; no device is touched."
    )
    links = (Link(event.name, relative(addresses.event_page(event_id), page)),)
    view = SheetPage(
        site.frame(page, title, (event.name, addresses.event_page(event_id))),
        title,
        lead,
        tuple(sections),
        links,
        site.cautions,
    )
    return Page(page, title, "sheet.html", view)


def _day(site: Site, event_id: str, day_id: str, day: Day, page: str) -> Iterator[Section]:
    before: Flown | None = None
    for one in all_flown(site, day):
        title = say("{day} {number}: {aircraft}", day=day_name(day_id), number=one.number, aircraft=one.called)
        name = f"{day_id}-{one.number}"
        blocks: list[Block] = [
            _show(one, page, name),
            *_differs(one, page, name),
            *_unlike_last(before, one, page, name),
            _nobody_knows(site, one, page, name),
            _recap(one, page, name),
            _behind(one, page, name),
        ]
        yield Section(name, title, tuple(blocks), f"{day_name(day_id)[:2]} {one.number}")
        before = one
    if before is None:
        yield Section(f"{day_id}-none", dated(day_id, day), (Lines((Line(say("nothing is entered yet")),)),))


def _show(one: Flown, page: str, name: str) -> Lines:
    """What to stand at and point to, in the order of walking round; before any hand goes in, what it must not touch."""
    shown = one.shown
    lines = [Line("; ".join(two_signs(shown)), say("From afar:"), href=_at(one, "recognise", page))]
    lines += list(_never(one, page))
    lines += [
        Line(
            place_words(exit_.place, shown.airframe),
            say("Open, {way}:", way=id_.replace("-", " ")),
            href=_at(one, addresses.anchor(("exits", id_)), page),
        )
        for id_, exit_ in entries(shown.airframe.exits).items()
    ]
    lines += [
        Line(
            f"{_off(control)}; {place_words(control.place, shown.airframe)}",
            say("Shut down, {control}:", control=id_.replace("-", " ")),
            href=_at(one, addresses.anchor(("controls", id_)), page),
        )
        for id_, control in entries(shown.airframe.controls).items()
    ]
    lines += list(_in_the_seats(one, page))
    return Lines(tuple(lines), f"{name}-show", say("Show"))


def _off(control: Control) -> str:
    """``off is towards floor``; what dumps or releases works."""
    told = off_is(control).text
    return told if control.off_is is NonValue.NOT_APPLICABLE else say("off is {way}", way=told)


def _never(one: Flown, page: str) -> Iterator[Line]:
    for line in never_touch(one.shown)[0]:
        place = _at(one, line.href.lstrip("#"), page)
        yield Line(line.text, say("Never touch, {what}", what=line.strong), "never", place)


def _in_the_seats(one: Flown, page: str) -> Iterator[Line]:
    for seat_name, seat in one.shown.airframe.seats.items():
        for name, tie in entries(seat.ties).items():
            where = place_words(tie.place, one.shown.airframe)
            anchor = addresses.anchor(("seats", seat_name, "ties", name))
            yield Line(where, say("Free, {tie}:", tie=name.replace("-", " ")), href=_at(one, anchor, page))


def _behind(one: Flown, page: str, name: str) -> Links:
    """What there is time for only now and then; folded, so that the talk stays one that people listen to."""
    return Links(f"{name}-behind", say("With more time: batteries, bottles, points"), tuple(_later(one, page)))


def _later(one: Flown, page: str) -> Iterator[Link]:
    airframe = one.shown.airframe
    for section, word in (
        ("batteries", say("Battery:")),
        ("bottles", say("Bottle:")),
        ("load_points", say("Point:")),
    ):
        for name, thing in entries(getattr(airframe, section)).items():
            where = f"{name.replace('-', ' ')}, {place_words(thing.place, airframe)}"
            yield Link(f"{word} {where}", _at(one, _anchor(section, name), page, section))


def _anchor(section: str, name: str) -> str:
    return addresses.anchor((section, name))


def _at(one: Flown, anchor: str, page: str, section: str = "") -> str:
    home = addresses.structure_page(one.shown.type_id) if section == "load_points" else one.address
    return relative(f"{home}#{anchor}", page)


def _differs(one: Flown, page: str, name: str) -> Iterator[Block]:
    """What is other on this tail than on its type: the trap for whoever knows the type."""
    lines = [
        Line(
            say("this aircraft is other than its type"),
            label_of(override.at, start=min(1, len(override.at) - 1)).replace("-", " ").capitalize() + ":",
            "caution",
            relative(f"{one.address}#differences", page),
        )
        for override in one.shown.overrides
    ]
    if one.aircraft is None or not one.aircraft.declared:
        lines.append(Line(say("how it differs from its type: nobody has declared it"), say("UNKNOWN"), "unknown"))
    if lines:
        yield Lines(tuple(lines), f"{name}-differs", say("This tail"))


def _unlike_last(before: Flown | None, one: Flown, page: str, name: str) -> Iterator[Block]:
    if before is None:
        return
    title = say("Unlike the last, {number} {aircraft}", number=before.number, aircraft=before.called)
    rows = tuple(
        Row((Value(fact.title, href=relative(f"{one.address}#{fact.part}", page)), now, was))
        for fact, was, now in unlike(before.shown.airframe, one.shown.airframe)
    )
    heads = (say("What"), say("Here, {number}", number=one.number), say("The last, {number}", number=before.number))
    if rows:
        yield Table(f"{name}-unlike", title, heads, rows)
    else:
        yield Lines((Line(say("no recorded difference in what is asked here")),), f"{name}-unlike", title)


def _nobody_knows(site: Site, one: Flown, page: str, name: str) -> Lines:
    gaps = unfit_gaps(site, one.entry)
    who = dict(one.shown.airframe.who_can_answer)
    lines = list(gap_lines(gaps, one.address, page))
    lines += [Line(str(words), say("Can answer, {part}:", part=key_words(str(part)))) for part, words in who.items()]
    title = say("Say what nobody knows")
    empty = Line(say("no gap is recorded where crews act; that is no promise"))
    return Lines(tuple(lines) or (empty,), f"{name}-unknown", title)


def _recap(one: Flown, page: str, name: str) -> Lines:
    facts = {fact.id: fact for fact in key_facts()}
    lines = list(_never(one, page))
    for asked in _RECAP:
        value = facts[asked].tell(one.shown.airframe)
        tone = "unknown" if value.state == "unknown" else "plain"
        href = relative(f"{one.address}#{facts[asked].part}", page)
        lines.append(Line(value.text, f"{facts[asked].title}:", tone, href))  # type: ignore[arg-type]
    weights = tell(one.shown.airframe.masses.empty, ("masses", "empty"))
    if one.shown.airframe.masses.empty is not NonValue.UNKNOWN:
        lines.append(Line(weights.text, say("Weighs, empty:"), href=relative(f"{one.address}#heavy-end", page)))
    return Lines(tuple(lines), f"{name}-recap", say("Recap: ask them, then say it"))
