"""Crew page, stay clear: pressure bottles and tanks, with their valves and lines."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import do_not, place_words, several, tell, told_place, way_words
from hardpoint.pages.terms import term
from hardpoint.pages.view import Fact, Value
from hardpoint.records.bottles import Bottle, Valve
from hardpoint.records.known import NonValue, said
from hardpoint.records.places import Place, Route
from hardpoint.records.tanks import Tank
from hardpoint.words import say


def bottles(shown: Shown) -> tuple[Fact, ...]:
    """Every bottle: contents, water capacity, pressure, place, valve, lines; what not to do with it."""
    listed = shown.airframe.bottles
    if isinstance(listed, NonValue):
        return (shown.fact(say("Bottles"), ("bottles",), listed),)
    return tuple(
        _unanswered(shown, "bottles", name, bottle) if isinstance(bottle, NonValue) else _bottle(shown, name, bottle)
        for name, bottle in listed.items()
    )


def tanks(shown: Shown) -> tuple[Fact, ...]:
    """Every tank: contents, capacity, place, lines; how it burns."""
    listed = shown.airframe.tanks
    if isinstance(listed, NonValue):
        return (shown.fact(say("Tanks"), ("tanks",), listed),)
    return tuple(
        _unanswered(shown, "tanks", name, tank) if isinstance(tank, NonValue) else _tank(shown, name, tank)
        for name, tank in listed.items()
    )


def where(place: Place | NonValue, shown: Shown) -> Value:
    """A place in words, marked where it is unknown."""
    return told_place(place, shown.airframe)


def way_of(route: Route | NonValue) -> Value:
    """Sides and looks of a line or cable, for eyes and hands; stations stay on the planning pages."""
    if isinstance(route, NonValue):
        return tell(route)
    spots = said(route.path)
    if spots is None:
        return Value(say("way UNKNOWN"), "unknown", note=_plain(route))
    sides = list(dict.fromkeys(spot.side for spot in spots))
    told = tell(sides[0]).text
    for side in sides[1:]:
        told = say("{first} then {next}", first=told, next=tell(side).text)
    if route.then_unknown is not None:
        return Value(
            say("{way}, as far as it was followed; from there UNKNOWN", way=told), "unknown", note=_plain(route)
        )
    return Value(told, "unknown" if NonValue.UNKNOWN in sides else "said", note=_plain(route))


def _plain(route: Route) -> str:
    looks = "" if route.looks is None else tell(route.looks).text
    return ", ".join(
        part for part in (looks, say("ends at {what}", what=route.ends_at) if route.ends_at else "") if part
    )


def _unanswered(shown: Shown, section: str, name: str, answer: NonValue) -> Fact:
    return shown.fact(_title(name), (section, name), answer, anchored=True)


def _title(name: str) -> str:
    return name.replace("-", " ").capitalize()


def _bottle(shown: Shown, name: str, bottle: Bottle) -> Fact:
    path = ("bottles", name)
    answers = [
        (say("holds"), tell(bottle.holds)),
        (say("water capacity"), tell(bottle.water_capacity, (*path, "water_capacity"))),
        (say("pressure"), tell(bottle.working_pressure, (*path, "working_pressure"))),
        (say("where"), where(bottle.place, shown)),
        (say("valve"), valve_words(bottle.valve, shown)),
        *_lines(bottle.lines),
        *(((say("carried"), Value(bottle.carried)),) if bottle.carried else ()),
        *do_not(bottle.do_not),
    ]
    title = term(bottle.use).capitalize()
    if bottle.count > 1:
        title = say("{what}, {count} of them", what=title, count=bottle.count)
    return _told(shown, path, title, answers, "")


def valve_words(valve: Valve | NonValue, shown: Shown) -> Value:
    if isinstance(valve, NonValue):
        return tell(valve)
    closes = way_words(valve.closes, valve.seen_from)
    words = say("closes {way}, {place}", way=closes, place=place_words(valve.place, shown.airframe))
    return Value(words, tell(valve.closes).state)


def _tank(shown: Shown, name: str, tank: Tank) -> Fact:
    path = ("tanks", name)
    each = say("capacity") if tank.count == 1 else say("{count} of them, each", count=tank.count)
    answers = [
        (say("holds"), tell(tank.holds)),
        (each, tell(tank.capacity, (*path, "capacity"))),
        (say("where"), where(tank.place, shown)),
        *_lines(tank.lines),
    ]
    runs = ""
    if tank.feeds and "gravity" in tank.feeds:
        runs = say("runs {how}: it goes on after shut-down", how=term(tank.feeds))
    return _told(shown, path, _title(name), answers, "; ".join(part for part in (tank.burns or "", runs) if part))


def _lines(lines: Mapping[str, Route | NonValue] | NonValue) -> Iterator[tuple[str, Value]]:
    if isinstance(lines, NonValue):
        yield say("lines"), tell(lines)
        return
    for name, route in lines.items():
        yield say("line {name}", name=name.replace("-", " ")), way_of(route)


def _told(shown: Shown, path: tuple[str, str], title: str, answers: list[tuple[str, Value]], note: str) -> Fact:
    fact = shown.fact(title, path, "", note=note, anchored=True)
    return Fact(fact.label, several(answers), fact.id, fact.was, fact.note)
