"""Crew page, stay clear: pressure bottles and tanks, with their valves and lines."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hardpoint.pages.telling import Shown, do_not, label_of, place_words, several, tell, way_words
from hardpoint.pages.view import Fact, Value
from hardpoint.records.bottles import Bottle, Valve
from hardpoint.records.known import NonValue, said
from hardpoint.records.places import Place, Route
from hardpoint.records.tanks import Tank


def bottles(shown: Shown) -> tuple[Fact, ...]:
    """Every bottle: contents, water capacity, pressure, place, valve, lines; what not to do with it."""
    listed = shown.airframe.bottles
    if isinstance(listed, NonValue):
        return (shown.fact("Bottles", ("bottles",), listed),)
    return tuple(
        _unanswered(shown, "bottles", name, bottle) if isinstance(bottle, NonValue) else _bottle(shown, name, bottle)
        for name, bottle in listed.items()
    )


def tanks(shown: Shown) -> tuple[Fact, ...]:
    """Every tank: contents, capacity, place, lines; how it burns."""
    listed = shown.airframe.tanks
    if isinstance(listed, NonValue):
        return (shown.fact("Tanks", ("tanks",), listed),)
    return tuple(
        _unanswered(shown, "tanks", name, tank) if isinstance(tank, NonValue) else _tank(shown, name, tank)
        for name, tank in listed.items()
    )


def where(place: Place | NonValue, shown: Shown) -> Value:
    """A place in words, marked where it is unknown."""
    return Value(place_words(place, shown.airframe), "unknown" if place is NonValue.UNKNOWN else "said")


def way_of(route: Route | NonValue) -> Value:
    """Sides and looks of a line or cable, for eyes and hands; stations stay on the planning pages."""
    if isinstance(route, NonValue):
        return tell(route)
    spots = said(route.path)
    if spots is None:
        return Value("way UNKNOWN", "unknown", note=_plain(route))
    sides = list(dict.fromkeys(tell(spot.side).text for spot in spots))
    return Value(" then ".join(sides), "unknown" if "UNKNOWN" in sides else "said", note=_plain(route))


def _plain(route: Route) -> str:
    looks = "" if route.looks is None else tell(route.looks).text
    return ", ".join(part for part in (looks, f"ends at {route.ends_at}" if route.ends_at else "") if part)


def _unanswered(shown: Shown, section: str, name: str, answer: NonValue) -> Fact:
    return shown.fact(_title(name), (section, name), answer, anchored=True)


def _title(name: str) -> str:
    return label_of((name,)).replace("-", " ").capitalize()


def _bottle(shown: Shown, name: str, bottle: Bottle) -> Fact:
    path = ("bottles", name)
    answers = [
        ("holds", tell(bottle.holds)),
        ("water capacity", tell(bottle.water_capacity, (*path, "water_capacity"))),
        ("pressure", tell(bottle.working_pressure, (*path, "working_pressure"))),
        ("where", where(bottle.place, shown)),
        ("valve", valve_words(bottle.valve, shown)),
        *_lines(bottle.lines),
        *((("carried", Value(bottle.carried)),) if bottle.carried else ()),
        *do_not(bottle.do_not),
    ]
    title = bottle.use.capitalize() + (f", {bottle.count} of them" if bottle.count > 1 else "")
    return _told(shown, path, title, answers, "")


def valve_words(valve: Valve | NonValue, shown: Shown) -> Value:
    """Which way a valve closes, and where it is."""
    if isinstance(valve, NonValue):
        return tell(valve)
    closes = way_words(valve.closes, valve.seen_from)
    return Value(f"closes {closes}, {place_words(valve.place, shown.airframe)}", tell(valve.closes).state)


def _tank(shown: Shown, name: str, tank: Tank) -> Fact:
    path = ("tanks", name)
    answers = [
        ("holds", tell(tank.holds)),
        ("capacity" if tank.count == 1 else f"{tank.count} of them, each", tell(tank.capacity, (*path, "capacity"))),
        ("where", where(tank.place, shown)),
        *_lines(tank.lines),
    ]
    runs = f"runs {tank.feeds}: it goes on after shut-down" if tank.feeds and "gravity" in tank.feeds else ""
    return _told(shown, path, _title(name), answers, "; ".join(part for part in (tank.burns or "", runs) if part))


def _lines(lines: Mapping[str, Route | NonValue] | NonValue) -> Iterator[tuple[str, Value]]:
    if isinstance(lines, NonValue):
        yield "lines", tell(lines)
        return
    for name, route in lines.items():
        yield f"line {name.replace('-', ' ')}", way_of(route)


def _told(shown: Shown, path: tuple[str, str], title: str, answers: list[tuple[str, Value]], note: str) -> Fact:
    fact = shown.fact(title, path, "", note=note, anchored=True)
    return Fact(fact.label, several(answers), fact.id, fact.was, fact.note)
