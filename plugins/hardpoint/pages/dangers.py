"""Crew page: never touch, the strip of answers, stay clear."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.pages.addresses import anchor
from hardpoint.pages.devices import ASKED, devices
from hardpoint.pages.opening import keep_out
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import do_not, in_full, place_words, several, tell, told_place
from hardpoint.pages.terms import term
from hardpoint.pages.vessels import bottles, tanks, way_of
from hardpoint.pages.view import Block, Fact, Facts, Hazard, Line, Link, Section, Value
from hardpoint.records.known import NonValue, entries, said
from hardpoint.words import say

MOST_NEVER = 3


def strip(shown: Shown) -> tuple[Hazard, ...]:
    """Rocket, seat cartridge, high voltage: YES, NO or UNKNOWN."""
    answers = [(say(label), device_answer(shown.airframe, kind)) for label, kind in ASKED]
    answers.append((say("High voltage"), high_voltage_answer(shown.airframe)))
    return tuple(_hazard(label, answer, shown.declared) for label, answer in answers)


def _hazard(label: str, answer: NonValue | bool, declared: bool) -> Hazard:
    """A "no" of the type holds for a tail only where somebody has declared how that tail differs."""
    href = "#stay-clear"
    if answer is True:
        return Hazard(label, "YES", say("YES"), "", href)
    if answer in (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE):
        if not declared:
            return Hazard(label, "UNKNOWN", say("UNKNOWN"), say("its type has none"), href)
        return Hazard(label, "NO", say("NO"), "", href)
    return Hazard(label, "UNKNOWN", say("UNKNOWN"), say("treat as fitted"), href)


def never_touch(shown: Shown) -> tuple[tuple[Line, ...], tuple[Link, ...]]:
    """At most three lines, the worst first; the rest one tap away and named."""
    lines = [*_fires(shown), *_shocks(shown), *_pulls(shown)]
    return tuple(lines[:MOST_NEVER]), tuple(Link(line.strong or line.text, line.href) for line in lines[MOST_NEVER:])


def _fires(shown: Shown) -> Iterator[Line]:
    for name, device in entries(shown.airframe.pyrotechnics).items():
        where = place_words(device.handle_place, shown.airframe)
        href = f"#{anchor(('pyrotechnics', name))}"
        yield Line(f"{tell(device.handle).text}, {where}", f"{term(device.kind).capitalize()}:", "never", href)


def _shocks(shown: Shown) -> Iterator[Line]:
    system = said(shown.airframe.high_voltage)
    if system:
        yield Line(
            say("stays live: {what}", what=tell(system.stays_live).text),
            say("{voltage} cables and packs:", voltage=in_full(tell(system.voltage, ("high_voltage", "voltage")))),
            "never",
            "#stay-clear",
        )


def _pulls(shown: Shown) -> Iterator[Line]:
    for seat_name, seat in shown.airframe.seats.items():
        for name, handle in entries(seat.do_not_pull).items():
            href = f"#{anchor(('seats', seat_name, 'do_not_pull', name))}"
            yield Line(handle.why, f"{handle.what}:", "never", href)


def staying_clear(shown: Shown) -> Section:
    """Everything that can fire, burst, burn, spring or shock, with its place in words."""
    blocks: list[Block] = []
    blocks += list(keep_out(shown))
    blocks += list(devices(shown))
    blocks.append(Facts("bottles", say("Pressure bottles"), bottles(shown)))
    blocks.append(Facts("tanks", say("Fuel, oil, smoke oil"), tanks(shown)))
    blocks.append(Facts("loaded-parts", say("Under tension"), _loaded(shown)))
    blocks.append(Facts("hazards", say("Other harm"), _others(shown)))
    blocks.append(Facts("fire", say("Fire, smoke, dust"), _fire(shown)))
    return Section("stay-clear", say("Stay clear"), tuple(blocks), say("Stay clear"))


def _loaded(shown: Shown) -> tuple[Fact, ...]:
    parts = shown.airframe.loaded_parts
    if isinstance(parts, NonValue):
        return (shown.fact(say("Cables and springs"), ("loaded_parts",), parts),)
    facts = []
    for name, part in parts.items():
        path = ("loaded_parts", name)
        if isinstance(part, NonValue):
            facts.append(shown.fact(name.replace("-", " ").capitalize(), path, part, anchored=True))
            continue
        words = say(
            "{what}, {place}; when cut: {effect}",
            what=part.what,
            place=place_words(part.place, shown.airframe),
            effect=tell(part.when_cut).text,
        )
        told = [(say("what"), Value(words, told_place(part.place).state))]
        if part.route is not None:
            told.append((say("runs"), way_of(part.route)))
        if part.release:
            told.append((say("let go by"), Value(part.release)))
        facts.append(Fact(term(part.kind).capitalize(), several(told), anchor(path), shown.was(path)))
    return tuple(facts)


def _others(shown: Shown) -> tuple[Fact, ...]:
    hazards = shown.airframe.hazards
    if isinstance(hazards, NonValue):
        return (shown.fact(say("Anything else"), ("hazards",), hazards),)
    facts = []
    for name, hazard in hazards.items():
        path = ("hazards", name)
        title = name.replace("-", " ").capitalize()
        if isinstance(hazard, NonValue):
            facts.append(shown.fact(title, path, hazard, anchored=True))
            continue
        fact = shown.fact(title, path, "", anchored=True)
        what = Value(f"{hazard.what}, {place_words(hazard.place, shown.airframe)}")
        facts.append(Fact(title, several([(term(hazard.kind), what), *do_not(hazard.do_not)]), fact.id, fact.was))
    return tuple(facts)


def _fire(shown: Shown) -> tuple[Fact, ...]:
    fire = said(shown.airframe.fire)
    asked = ((say("Burns"), "burns"), (say("Smoke"), "smoke"), (say("Dust and ash"), "dust"), (say("Wear"), "wear"))
    if fire is None:
        return (shown.fact(say("Fire"), ("fire",), shown.airframe.fire),)
    return tuple(
        shown.fact(label, ("fire", key), getattr(fire, key)) for label, key in asked if getattr(fire, key) is not None
    )
