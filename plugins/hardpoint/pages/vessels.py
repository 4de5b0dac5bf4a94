"""Crew page, stay clear: pressure bottles and tanks, with their valves and lines."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import groupby

from hardpoint.pages.addresses import anchor
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import do_not, in_full, several, tell, told_place, way_words
from hardpoint.pages.terms import first_capital, name_words, term, title_of
from hardpoint.pages.view import Fact, Value
from hardpoint.records.bottles import Bottle, Valve
from hardpoint.records.known import NonValue, said
from hardpoint.records.places import Place, Route
from hardpoint.records.tanks import ENGINE_FUELS, Drain, Tank
from hardpoint.words import say


def bottles(shown: Shown) -> tuple[Fact, ...]:
    """Every bottle: contents, water capacity, pressure, place, valve, lines; what not to do with it."""
    listed = shown.airframe.bottles
    if isinstance(listed, NonValue):
        return (shown.fact(say("Bottles"), ("bottles",), listed),)
    return tuple(
        _open(shown, "bottles", name, bottle) if isinstance(bottle, NonValue) else _bottle(shown, name, bottle)
        for name, bottle in listed.items()
    )


def tanks(shown: Shown) -> tuple[Fact, ...]:
    """Every tank: contents, capacity, place, lines; how it burns."""
    listed = shown.airframe.tanks
    if isinstance(listed, NonValue):
        return (shown.fact(say("Tanks"), ("tanks",), listed),)
    return tuple(
        _open(shown, "tanks", name, tank) if isinstance(tank, NonValue) else _tank(shown, name, tank)
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
        return Value(say("which way it runs: UNKNOWN"), "unknown", note=_plain(route))
    sides = [side for side, _ in groupby(spots, key=lambda spot: spot.side)]  # a line can come back to a side
    told = tell(sides[0]).text
    for side in sides[1:]:
        told = say("{first} then {next}", first=told, next=tell(side).text)
    if route.then_unknown is not None:
        return Value(
            say("{way}, as far as it was followed; from there UNKNOWN", way=told), "unknown", note=_plain(route)
        )
    return Value(told, "unknown" if NonValue.UNKNOWN in sides else "said", note=_plain(route))


def cut_by(control: str | NonValue) -> Value:
    """The control that cuts something off, as a way to it."""
    told = tell(control)
    if told.state == "not fitted":
        return Value(say("nothing; somebody looked"), told.state)
    if told.state != "said":
        return told
    return Value(name_words(told.text), href=f"#{anchor(('controls', told.text))}")


def _plain(route: Route) -> str:
    looks = "" if route.looks is None else in_full(tell(route.looks))
    looks = say("looks UNKNOWN") if route.looks is NonValue.UNKNOWN else looks
    return ", ".join(
        part for part in (looks, say("ends at {what}", what=route.ends_at) if route.ends_at else "") if part
    )


def _open(shown: Shown, section: str, name: str, answer: NonValue) -> Fact:
    return shown.fact(title_of(name), (section, name), answer, anchored=True)


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
    title = first_capital(term(bottle.use))
    if bottle.count > 1:
        title = say("{what}, {count} of them", what=title, count=bottle.count)
    return _told(shown, path, title, answers, "")


def valve_words(valve: Valve | NonValue, shown: Shown) -> Value:
    if isinstance(valve, NonValue):
        return tell(valve)
    closes = way_words(valve.closes, valve.seen_from)
    place = told_place(valve.place, shown.airframe)
    words = say("closes {way}, {place}", way=closes, place=place.text)
    return Value(words, "unknown" if "unknown" in (tell(valve.closes).state, place.state) else "said")


def _tank(shown: Shown, name: str, tank: Tank) -> Fact:
    path = ("tanks", name)
    each = say("capacity") if tank.count == 1 else say("{count} of them, each", count=tank.count)
    answers = [
        (say("holds"), tell(tank.holds)),
        (each, tell(tank.capacity, (*path, "capacity"))),
        (say("where"), where(tank.place, shown)),
        *(((say("made of"), tell(tank.made_of)),) if tank.made_of is not None else ()),
        *_lines(tank.lines),
        *drains(tank.drains, shown),
    ]
    runs = say("runs {how}", how=term(tank.feeds)) if tank.feeds else ""
    if tank.feeds and "gravity" in tank.feeds and tank.holds in ENGINE_FUELS:
        runs = say("runs {how}: it goes on after shut-down", how=term(tank.feeds))
    return _told(shown, path, title_of(name), answers, "; ".join(part for part in (tank.burns or "", runs) if part))


def _lines(lines: Mapping[str, Route | NonValue] | NonValue) -> Iterator[tuple[str, Value]]:
    if isinstance(lines, NonValue):
        yield say("lines"), tell(lines)
        return
    for name, route in lines.items():
        yield say("line {name}", name=name_words(name)), way_of(route)


def drains(listed: Mapping[str, Drain | NonValue] | NonValue, shown: Shown) -> Iterator[tuple[str, Value]]:
    """Every hole that a tank or a bay empties by: where, how wide, how it is opened."""
    if isinstance(listed, NonValue):
        yield say("drains"), tell(listed)
        return
    for name, drain in listed.items():
        label = say("drain {name}", name=name_words(name))
        yield label, tell(drain) if isinstance(drain, NonValue) else _drain(drain, shown)


def _drain(drain: Drain, shown: Shown) -> Value:
    place, wide = told_place(drain.place, shown.airframe), tell(drain.diameter, ("drain", "diameter"))
    words = say("{place}, {diameter} wide", place=place.text, diameter=in_full(wide))
    if wide.state == "unknown":
        words = say("{place}, how wide UNKNOWN", place=place.text)
    if drain.count > 1:
        words = say("{count} of them, {what}", count=drain.count, what=words)
    open_ = "unknown" in (place.state, wide.state)
    return Value(words, "unknown" if open_ else "said", note=drain.works or "")


def _told(shown: Shown, path: tuple[str, str], title: str, answers: list[tuple[str, Value]], note: str) -> Fact:
    fact = shown.fact(title, path, "", note=note, anchored=True)
    return Fact(fact.label, several(answers), fact.id, fact.was, fact.note)
