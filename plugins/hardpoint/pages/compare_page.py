"""The comparison across types: one row a type, one column a fact; a non-value is an answer like any other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.pages import addresses
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import Shown, several, shown_type, tell, unknown, way_words
from hardpoint.pages.view import Column, ComparePage, CompareRow, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.controls import Function
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING
from hardpoint.records.tanks import ENGINE_FUELS
from hardpoint.units import Quantity
from hardpoint.words import mark, say


@dataclass(frozen=True)
class _Topic:
    id: str
    title: str
    group: str
    shown: bool
    tell: Callable[[Airframe], Value]
    figure: Callable[[Airframe], Quantity | NonValue | None] | None = None


def compare_page(site: Site) -> Page:
    """All types under all facts."""
    page = addresses.COMPARE
    columns = tuple(Column(topic.id, say(topic.title), say(topic.group), topic.shown) for topic in _TOPICS)
    types = list(site.fleet.types.values())
    ranks = [_ranks(topic, [type_.airframe for type_ in types]) for topic in _TOPICS]
    rows = tuple(_row(shown_type(type_), page, tuple(rank[at] for rank in ranks)) for at, type_ in enumerate(types))
    title = say("Compare types")
    return Page(page, title, "compare.html", ComparePage(site.frame(page, title), columns, rows, site.cautions))


def _ranks(topic: _Topic, airframes: list[Airframe]) -> list[int]:
    """The place of each type in the order of a fact: unknown first, figures by size in SI, words by letter."""
    keys = [_key(topic, airframe) for airframe in airframes]
    places = {key: place for place, key in enumerate(sorted(set(keys)))}
    return [places[key] for key in keys]


def _key(topic: _Topic, airframe: Airframe) -> tuple[int, float, str]:
    told = topic.tell(airframe)
    if told.state == "unknown":
        return (0, 0.0, "")
    figure = said(topic.figure(airframe)) if topic.figure else None
    return (1, figure.si[0], "") if figure is not None else (2, 0.0, told.text.casefold())


def _row(shown: Shown, page: str, order: tuple[int, ...]) -> CompareRow:
    cells = tuple(topic.tell(shown.airframe) for topic in _TOPICS)
    words = " ".join([shown.airframe.role, *shown.airframe.also_called, shown.id])
    return CompareRow(
        f"row-{shown.id}", shown.name, addresses.relative(addresses.type_page(shown.id), page), cells, words, order
    )


def _plain(name: str) -> str:
    return name.replace("-", " ")


def _each(mapping: Any, answer: Callable[[Any], Value]) -> Value:
    """One answer per entry of a named mapping, non-values told under their names."""
    if isinstance(mapping, NonValue):
        return tell(mapping)
    told = [
        (_plain(name), tell(entry) if isinstance(entry, NonValue) else answer(entry)) for name, entry in mapping.items()
    ]
    return several(told)


def _off(function: Function) -> Callable[[Airframe], Value]:
    def answer(airframe: Airframe) -> Value:
        if isinstance(airframe.controls, NonValue):
            return tell(airframe.controls)
        found = [
            (
                _plain(name),
                unknown()
                if control.off_is is NonValue.UNKNOWN
                else Value(way_words(control.off_is, control.seen_from) or say("not applicable")),
            )
            for name, control in entries(airframe.controls).items()
            if control.function == function
        ]
        return several(found)

    return answer


def _seats(airframe: Airframe) -> Value:
    alone = [name for name, seat in airframe.seats.items() if seat.alone == "flown alone from here"]
    count = len(airframe.seats)
    return Value(say("{count}, flown alone from the {seat}", count=count, seat=alone[0]) if alone else str(count))


def _ties(airframe: Airframe) -> Value:
    told = [
        (
            _plain(name),
            tell(seat.ties)
            if isinstance(seat.ties, NonValue)
            else Value(say("{count} recorded", count=len(entries(seat.ties)))),
        )
        for name, seat in airframe.seats.items()
    ]
    return several(told)


def _parachute(airframe: Airframe) -> Value:
    told = []
    for name, seat in airframe.seats.items():
        parachute = said(seat.parachute)
        words = f"{tell(parachute.worn).text}, {tell(parachute.lifting).text}" if parachute else ""
        told.append((_plain(name), Value(words) if parachute else tell(seat.parachute)))
    return several(told)


def _fuel(airframe: Airframe) -> Value:
    tanks = airframe.tanks
    if isinstance(tanks, NonValue):
        return tell(tanks)
    told = [
        (
            f"{tell(tank.holds).text}, {name}{f', {tank.count} x' if tank.count > 1 else ''}",
            tell(tank.capacity, ("tanks", name, "capacity")),
        )
        for name, tank in entries(tanks).items()
        if tank.holds in ENGINE_FUELS or isinstance(tank.holds, NonValue)
    ]
    return several(told, say("no fuel tank recorded"))


def _smoke(airframe: Airframe) -> Value:
    tanks = airframe.tanks
    if isinstance(tanks, NonValue):
        return tell(tanks)
    told = [
        (_plain(name), tell(tank.capacity, ("tanks", name, "capacity")))
        for name, tank in entries(tanks).items()
        if tank.holds == "smoke oil"
    ]
    answered = tanks.get("smoke-oil")
    if not told and isinstance(answered, NonValue):
        return tell(answered)
    return several(told)


def _exits(airframe: Airframe) -> Value:
    def answer(exit_: Any) -> Value:
        side = tell(exit_.from_)
        return Value(say("{way}, from {side}", way=tell(exit_.way_in).text, side=side.text), side.state)

    return _each(airframe.exits, answer)


def _inverted(airframe: Airframe) -> Value:
    return _each(airframe.exits, lambda exit_: tell(exit_.works.inverted))


def _lift(airframe: Airframe) -> Value:
    if isinstance(airframe.load_points, NonValue):
        return tell(airframe.load_points)
    told = [
        (_plain(name), tell(point.allowable, ("load_points", name, "allowable")))
        for name, point in entries(airframe.load_points).items()
        if point.use in LIFTING
    ]
    return several(told)


def _basis(airframe: Airframe) -> Value:
    if isinstance(airframe.load_points, NonValue):
        return tell(airframe.load_points)
    told = [
        (_plain(name), tell(point.basis))
        for name, point in entries(airframe.load_points).items()
        if point.use in LIFTING
    ]
    return several(told)


def _cut(side: str) -> Callable[[Airframe], Value]:
    def answer(airframe: Airframe) -> Value:
        return _each(airframe.zones, lambda zone: tell(getattr(zone, side).cut))

    return answer


def _water(airframe: Airframe) -> Value:
    water = said(airframe.water)
    return tell(water.floats) if water else tell(airframe.water)


def _engine(airframe: Airframe) -> Value:
    engine = said(airframe.engine)
    return tell(engine.kind) if engine else tell(airframe.engine)


def _run_down(airframe: Airframe) -> Value:
    engine = said(airframe.engine)
    return tell(engine.run_down, ("engine", "run_down")) if engine else tell(airframe.engine)


def _run_down_figure(airframe: Airframe) -> Quantity | NonValue | None:
    engine = said(airframe.engine)
    return engine.run_down if engine else None


def _propeller(airframe: Airframe) -> Value:
    propeller = said(airframe.propeller)
    return (
        Value(f"{tell(propeller.drives).text}, {tell(propeller.material).text}")
        if propeller
        else tell(airframe.propeller)
    )


def _answer(found: NonValue | bool) -> Value:
    return Value(say("YES")) if found is True else tell(found)


def _bottles(airframe: Airframe) -> Value:
    def answer(bottle: Any) -> Value:
        pressure = tell(bottle.working_pressure, ("bottles", "x", "working_pressure"))
        return Value(
            say("{volume} at {pressure}", volume=tell(bottle.water_capacity).text, pressure=pressure.text),
            pressure.state,
            pressure.beside,
            pressure.remark,
        )

    return _each(airframe.bottles, answer)


_TOPICS: tuple[_Topic, ...] = (
    _Topic("role", mark("What it is"), mark("Airframe"), True, lambda a: tell(a.role)),
    _Topic(
        "rocket",
        mark("Rocket parachute"),
        mark("Fires and shocks"),
        True,
        lambda a: _answer(device_answer(a, "rocket parachute")),
    ),
    _Topic(
        "cartridge",
        mark("Seat cartridge"),
        mark("Fires and shocks"),
        True,
        lambda a: _answer(device_answer(a, "seat cartridge")),
    ),
    _Topic(
        "high-voltage", mark("High voltage"), mark("Fires and shocks"), True, lambda a: _answer(high_voltage_answer(a))
    ),
    _Topic("exits", mark("Ways in"), mark("Open"), True, _exits),
    _Topic("inverted", mark("Opens inverted"), mark("Open"), True, _inverted),
    _Topic("hinges", mark("Hinges"), mark("Open"), False, lambda a: _each(a.canopies, lambda c: tell(c.hinges))),
    _Topic("magneto", mark("Magneto off"), mark("Shut down"), True, _off("magneto")),
    _Topic("ignition", mark("Ignition off"), mark("Shut down"), False, _off("ignition")),
    _Topic("master", mark("Master off"), mark("Shut down"), True, _off("master")),
    _Topic("fuel-off", mark("Fuel off"), mark("Shut down"), True, _off("fuel")),
    _Topic("mixture", mark("Mixture off"), mark("Shut down"), False, _off("mixture")),
    _Topic(
        "stays-live",
        mark("Stays live"),
        mark("Shut down"),
        False,
        lambda a: _each(a.batteries, lambda b: tell(b.stays_live)),
    ),
    _Topic("seats", mark("Seats"), mark("Free"), True, _seats),
    _Topic("ties", mark("Ties"), mark("Free"), True, _ties),
    _Topic("parachute", mark("Parachute"), mark("Free"), False, _parachute),
    _Topic("fuel", mark("Fuel"), mark("Burns and bursts"), True, _fuel),
    _Topic("smoke-oil", mark("Smoke oil"), mark("Burns and bursts"), False, _smoke),
    _Topic("bottles", mark("Pressure bottles"), mark("Burns and bursts"), True, _bottles),
    _Topic("cut-left", mark("Cut, left"), mark("Cut"), False, _cut("left")),
    _Topic("cut-right", mark("Cut, right"), mark("Cut"), False, _cut("right")),
    _Topic("engine", mark("Engine"), mark("Airframe"), False, _engine),
    _Topic("propeller", mark("Propeller"), mark("Airframe"), False, _propeller),
    _Topic("run-down", mark("Run-down"), mark("Airframe"), False, _run_down, _run_down_figure),
    _Topic(
        "empty",
        mark("Empty mass"),
        mark("Lift"),
        True,
        lambda a: tell(a.masses.empty, ("masses", "empty")),
        lambda a: a.masses.empty,
    ),
    _Topic("heavy-end", mark("Heavy end"), mark("Lift"), False, lambda a: tell(a.masses.heavy_end)),
    _Topic("lift-points", mark("Points that lift"), mark("Lift"), False, _lift),
    _Topic("basis", mark("Basis"), mark("Lift"), False, _basis),
    _Topic(
        "length",
        mark("Length"),
        mark("Airframe"),
        False,
        lambda a: tell(a.size.length, ("size", "length")),
        lambda a: a.size.length,
    ),
    _Topic(
        "span",
        mark("Span"),
        mark("Airframe"),
        False,
        lambda a: tell(a.size.span, ("size", "span")),
        lambda a: a.size.span,
    ),
    _Topic(
        "width",
        mark("Fuselage width"),
        mark("Airframe"),
        False,
        lambda a: tell(a.size.fuselage_width, ("size", "fuselage_width")),
        lambda a: a.size.fuselage_width,
    ),
    _Topic("floats", mark("Floats"), mark("Water"), False, _water),
)
