"""Crew page: the strip of answers, stay clear."""

from __future__ import annotations

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.pages.addresses import anchor
from hardpoint.pages.approach import keep_out
from hardpoint.pages.devices import ASKED, devices
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import do_not, several, tell, told_place
from hardpoint.pages.terms import term, title_of
from hardpoint.pages.turning import turning_parts
from hardpoint.pages.vessels import bottles, tanks, way_of
from hardpoint.pages.view import Block, Fact, Facts, Hazard, Line, Lines, Section, Value
from hardpoint.records.known import NonValue, said
from hardpoint.words import say


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
            return Hazard(label, "UNKNOWN", say("UNKNOWN"), say("type: NO"), href)
        return Hazard(label, "NO", say("NO"), "", href)
    return Hazard(label, "UNKNOWN", say("UNKNOWN"), say("treat as fitted"), href)


def staying_clear(shown: Shown) -> Section:
    """Everything that can fire, burst, burn, spring or shock, with its place in words."""
    blocks: list[Block] = []
    blocks += list(keep_out(shown))
    blocks += list(devices(shown))
    blocks.append(Facts("turning-parts", say("What turns and stays hot"), turning_parts(shown)))
    blocks.append(Facts("bottles", say("Pressure bottles"), bottles(shown)))
    blocks.append(Facts("tanks", say("Tanks: fuel, oil, water, coolant"), tanks(shown)))
    blocks.append(Facts("loaded-parts", say("Under tension"), _loaded(shown)))
    blocks.append(Facts("hazards", say("Other harm"), _others(shown)))
    blocks.append(Facts("fire", say("Fire, smoke, dust"), _fire(shown)))
    if shown.airframe.notes:
        blocks.append(Lines((Line(shown.airframe.notes),), "notes", say("Also")))
    return Section("stay-clear", say("Stay clear"), tuple(blocks), say("Stay clear"))


def _loaded(shown: Shown) -> tuple[Fact, ...]:
    parts = shown.airframe.loaded_parts
    if isinstance(parts, NonValue):
        return (shown.fact(say("Cables and springs"), ("loaded_parts",), parts),)
    facts = []
    for name, part in parts.items():
        path = ("loaded_parts", name)
        if isinstance(part, NonValue):
            facts.append(shown.fact(title_of(name), path, part, anchored=True))
            continue
        told = [
            (term(part.kind), Value(part.what)),
            (say("where"), told_place(part.place, shown.airframe)),
            (say("when cut"), tell(part.when_cut)),
        ]
        if part.route is not None:
            told.append((say("runs"), way_of(part.route)))
        if part.release:
            told.append((say("let go under control"), Value(part.release)))
        facts.append(Fact(title_of(name), several(told), anchor(path), shown.was(path)))
    return tuple(facts)


def _others(shown: Shown) -> tuple[Fact, ...]:
    hazards = shown.airframe.hazards
    if isinstance(hazards, NonValue):
        return (shown.fact(say("Anything else"), ("hazards",), hazards),)
    facts = []
    for name, hazard in hazards.items():
        path = ("hazards", name)
        title = title_of(name)
        if isinstance(hazard, NonValue):
            facts.append(shown.fact(title, path, hazard, anchored=True))
            continue
        fact = shown.fact(title, path, "", anchored=True)
        place = told_place(hazard.place, shown.airframe)
        kind = "" if hazard.kind == "other" else term(hazard.kind)
        answers = ((kind, Value(hazard.what)), (say("where"), place), *do_not(hazard.do_not))
        facts.append(Fact(title, several(answers), fact.id, fact.was))
    return tuple(facts)


def _fire(shown: Shown) -> tuple[Fact, ...]:
    fire = said(shown.airframe.fire)
    asked = ((say("Burns"), "burns"), (say("Smoke"), "smoke"), (say("Dust and ash"), "dust"), (say("Wear"), "wear"))
    if fire is None:
        return (shown.fact(say("Fire"), ("fire",), shown.airframe.fire),)
    return tuple(
        shown.fact(label, ("fire", key), getattr(fire, key)) for label, key in asked if getattr(fire, key) is not None
    )
