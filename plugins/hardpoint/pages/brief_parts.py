"""What is said at one aircraft of a briefing: never-touch first, what to show, what differs, who knows what, a recap.

Short, for it is spoken: where a hand goes is told by the panel alone, seats that are alike are told once, and what the
last aircraft had otherwise is named; the full answers are one tap away.
"""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages import addresses
from hardpoint.pages.across.shutdown_controls import off_is
from hardpoint.pages.addresses import relative
from hardpoint.pages.entries import Flown, day_name, signs_of
from hardpoint.pages.key_facts import KeyFact, key_facts, unlike
from hardpoint.pages.never import never_touch
from hardpoint.pages.opposites import between
from hardpoint.pages.reported import reported
from hardpoint.pages.site import Site
from hardpoint.pages.telling import place_words, tell
from hardpoint.pages.terms import first_capital, label_of, name_words
from hardpoint.pages.unfit import gap_lines, unfit_gaps
from hardpoint.pages.view import Block, Line, Lines, Link, Links, Section, Tone, Value
from hardpoint.records.controls import Control
from hardpoint.records.event import Day
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.places import Place
from hardpoint.records.seats import Seat
from hardpoint.words import say, say_count

_RECAP = ("come-from", "first-way-in", "ignition-off", "master-off", "fuel-off", "mixture-off")


def aircraft_section(
    site: Site, event_id: str, on: tuple[str, Day], flown: tuple[Flown | None, Flown], page: str
) -> Section:
    """The talk at one aircraft; ``on``: the day with its id; ``flown``: the one shown before, and this one."""
    (day_id, day), (before, one) = on, flown
    title = say("{day} {number}: {aircraft}", day=day_name(day_id), number=one.number, aircraft=one.called)
    name = f"{day_id}-{one.number}"
    pair = f"{addresses.two_at_once_page(event_id)}#{day_id}-{before.number}-{one.number}" if before else ""
    blocks: list[Block] = [
        Lines((*_never(one, page), *_reports(one, day, page)), f"{name}-never", say("Never touch: say it first")),
        Lines(tuple(_show(one, page)), f"{name}-show", say("Show")),
        *_differs(one, page, name),
        *_unlike_last(before, one, page, name, pair),
        _nobody_knows(site, one, day, page, name),
        Lines(tuple(_recap(one, page)), f"{name}-recap", say("Recap: ask them, then say it")),
        Links(f"{name}-behind", say("With more time: batteries, bottles, points"), tuple(_later(one, page))),
    ]
    return Section(name, title, tuple(blocks), one.number)


def _at(one: Flown, anchor: str, page: str) -> str:
    return relative(f"{one.address}#{anchor}", page)


def _never(one: Flown, page: str) -> Iterator[Line]:
    """What no hand touches; where nothing is recorded, that is said, for it is no promise."""
    lines, more = never_touch(one.shown)
    for line in lines:
        yield Line(line.text, line.strong, "never", _at(one, line.href.lstrip("#"), page))
    if more:
        yield Line(", ".join(link.text for link in more), say("Nor:"), "never", _at(one, "never", page))
    if not lines:
        yield Line(say("no handle is recorded that must not be pulled; that is no promise"))


def _reports(one: Flown, day: Day, page: str) -> Iterator[Line]:
    """What somebody licensed has reported for this day: it is not called UNKNOWN, and nothing is touched for it."""
    for fact in reported(one.entry, day):
        tone: Tone = "unknown" if fact.value.state == "unknown" else "caution"
        yield Line(fact.value.text, f"{fact.label}:", tone, _at(one, "stay-clear", page))


def _show(one: Flown, page: str) -> Iterator[Line]:
    """What to stand at and point to, in the order of walking round."""
    airframe = one.shown.airframe
    signs = signs_of(one.aircraft) if one.aircraft else ()
    yield Line("; ".join(signs or (say("its type is shown; which aircraft it is: UNKNOWN"),)), say("From afar:"))
    yield _fact(one, "come-from", page)
    first = _facts()["first-way-in"].tell(airframe)
    where = " ".join(word for word in (first.text, f"({first.note})" if first.note else "") if word)
    yield Line(where, say("Open:"), _tone(first), _at(one, "open", page))
    others = [name_words(id_) for id_ in list(entries(airframe.exits))[1:]]
    if others:
        yield Line(", ".join(others), say("Other ways in:"), href=_at(one, "open", page))
    yield from _shut_down(one, page)
    yield from _in_the_seats(one, page)


def _facts() -> dict[str, KeyFact]:
    return {fact.id: fact for fact in key_facts()}


def _tone(value: Value) -> Tone:
    return "unknown" if value.state == "unknown" else "plain"


def _fact(one: Flown, asked: str, page: str) -> Line:
    fact = _facts()[asked]
    value = fact.tell(one.shown.airframe)
    return Line(value.text, f"{fact.title}:", _tone(value), _at(one, fact.part, page))


def _shut_down(one: Flown, page: str) -> Iterator[Line]:
    """A line a way of switching off; controls that are alike at several places share it."""
    alike: dict[str, list[tuple[str, Control]]] = {}
    for id_, control in entries(one.shown.airframe.controls).items():
        alike.setdefault(f"{control.function} {_off(control)}", []).append((id_, control))
    for controls in alike.values():
        names = ", ".join(name_words(id_) for id_, _ in controls)
        places = "; ".join(dict.fromkeys(_panel(control.place) for _, control in controls))
        told = say("{off}; {where}", off=_off(controls[0][1]), where=places)
        open_ = any(NonValue.UNKNOWN in (control.off_is, control.place) for _, control in controls)
        where = _at(one, addresses.anchor(("controls", controls[0][0])), page)
        yield Line(told, f"{first_capital(names)}:", "unknown" if open_ else "plain", where)


def _off(control: Control) -> str:
    """``off is towards floor``; what dumps or releases works."""
    told = off_is(control).text
    return told if control.off_is is NonValue.NOT_APPLICABLE else say("off is {way}", way=told)


def _panel(place: Place | NonValue) -> str:
    """The panel that one points to; where none is recorded, the place in full."""
    panel = place.panel if isinstance(place, Place) else None
    return panel or place_words(place)


def _in_the_seats(one: Flown, page: str) -> Iterator[Line]:
    """What ties the occupant in, once for all seats that are alike."""
    alike: dict[str, list[str]] = {}
    for name, seat in one.shown.airframe.seats.items():
        alike.setdefault(_ties(seat), []).append(name)
    for told, seats in alike.items():
        where = ", ".join(map(name_words, seats)) if len(one.shown.airframe.seats) > 1 else ""
        strong = say("Free, {seats}:", seats=where) if where else say("Free:")
        yield Line(
            told, strong, "unknown" if said(_seat(one, seats[0]).ties) is None else "plain", _at(one, "free", page)
        )


def _seat(one: Flown, name: str) -> Seat:
    return one.shown.airframe.seats[name]


def _ties(seat: Seat) -> str:
    if isinstance(seat.ties, NonValue):
        return tell(seat.ties).text
    names = [name_words(name) for name in entries(seat.ties)]
    names += [say("{tie} UNKNOWN", tie=name_words(name)) for name, tie in seat.ties.items() if tie is NonValue.UNKNOWN]
    count = say_count(len(entries(seat.ties)), "{count} tie recorded", "{count} ties recorded")
    return say("{count}: {names}; feel for more", count=count, names=", ".join(names)) if names else count


def _differs(one: Flown, page: str, name: str) -> Iterator[Block]:
    """What is other on this tail than on its type: the trap for whoever knows the type."""
    lines = [
        Line(
            say("this aircraft is other than its type"),
            first_capital(name_words(label_of(override.at, start=min(1, len(override.at) - 1)))) + ":",
            "caution",
            relative(f"{one.address}#differences", page),
        )
        for override in one.shown.overrides
    ]
    if lines:
        yield Lines(tuple(lines), f"{name}-differs", say("This tail"))


def _unlike_last(before: Flown | None, one: Flown, page: str, name: str, pair: str) -> Iterator[Block]:
    """The traps between the two in full, every other difference by its name."""
    if before is None:
        return
    title = say("Unlike the last, {number} {aircraft}", number=before.number, aircraft=before.called)
    lines = list(between(before, one))
    other = [fact.title for fact, _, _ in unlike(before.shown.airframe, one.shown.airframe)]
    if other:
        lines.append(Line(", ".join(other), say("Other, or UNKNOWN:"), href=relative(pair, page)))
    lines = lines or [Line(say("no recorded difference in what is asked here"))]
    yield Lines(tuple(lines), f"{name}-unlike", title)


def _nobody_knows(site: Site, one: Flown, day: Day, page: str, name: str) -> Lines:
    """Open questions where crews act, without what is only a matter of the book: a review that is due."""
    gaps = [gap for gap in unfit_gaps(site, one.entry, day).all if gap.kind != "overdue"]
    empty = Line(say("no gap is recorded where crews act; that is no promise"))
    return Lines(tuple(gap_lines(gaps, one, page)) or (empty,), f"{name}-unknown", say("Say what nobody knows"))


def _recap(one: Flown, page: str) -> Iterator[Line]:
    yield from _never(one, page)
    for asked in _RECAP:
        line = _fact(one, asked, page)
        if line.text != say("none recorded"):
            yield line
    yield from _in_the_seats(one, page)


def _later(one: Flown, page: str) -> Iterator[Link]:
    """What there is time for only now and then: names, each with its place behind it."""
    airframe = one.shown.airframe
    for section, word in (
        ("batteries", say("Battery:")),
        ("bottles", say("Bottle:")),
        ("load_points", say("Point:")),
    ):
        for name in entries(getattr(airframe, section)):
            home = addresses.structure_page(one.shown.type_id) if section == "load_points" else one.address
            yield Link(f"{word} {name_words(name)}", relative(f"{home}#{addresses.anchor((section, name))}", page))
