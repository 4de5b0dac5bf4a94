"""The comparison across types: one row a type, one column a fact; a non-value is an answer like any other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.pages import addresses
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import Shown, several, shown_type, tell, way_words
from hardpoint.pages.view import Column, ComparePage, CompareRow, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.controls import Function
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING
from hardpoint.records.tanks import ENGINE_FUELS
from hardpoint.units import Quantity


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
    columns = tuple(Column(topic.id, topic.title, topic.group, topic.shown) for topic in _TOPICS)
    types = list(site.fleet.types.values())
    ranks = [_ranks(topic, [type_.airframe for type_ in types]) for topic in _TOPICS]
    rows = tuple(_row(shown_type(type_), page, tuple(rank[at] for rank in ranks)) for at, type_ in enumerate(types))
    view = ComparePage(site.frame(page, "Compare types"), columns, rows, site.cautions)
    return Page(page, "Compare types", "compare.html", view)


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


def _each(mapping: Any, answer: Callable[[Any], Value], none: str = "none recorded") -> Value:
    """One answer per entry of a named mapping, non-values told under their names."""
    if isinstance(mapping, NonValue):
        return tell(mapping)
    told = [
        (_plain(name), tell(entry) if isinstance(entry, NonValue) else answer(entry)) for name, entry in mapping.items()
    ]
    return several(told, none)


def _off(function: Function) -> Callable[[Airframe], Value]:
    def answer(airframe: Airframe) -> Value:
        if isinstance(airframe.controls, NonValue):
            return tell(airframe.controls)
        found = [
            (
                _plain(name),
                Value("UNKNOWN", "unknown")
                if control.off_is is NonValue.UNKNOWN
                else Value(way_words(control.off_is, control.seen_from) or "not applicable"),
            )
            for name, control in entries(airframe.controls).items()
            if control.function == function
        ]
        return several(found, "none recorded")

    return answer


def _seats(airframe: Airframe) -> Value:
    alone = [name for name, seat in airframe.seats.items() if seat.alone == "flown alone from here"]
    words = str(len(airframe.seats)) + (f", flown alone from the {alone[0]}" if alone else "")
    return Value(words)


def _ties(airframe: Airframe) -> Value:
    told = [
        (
            _plain(name),
            tell(seat.ties) if isinstance(seat.ties, NonValue) else Value(f"{len(entries(seat.ties))} recorded"),
        )
        for name, seat in airframe.seats.items()
    ]
    return several(told, "none recorded")


def _parachute(airframe: Airframe) -> Value:
    told = []
    for name, seat in airframe.seats.items():
        parachute = said(seat.parachute)
        words = f"{parachute.worn}, {tell(parachute.lifting).text}" if parachute else ""
        told.append((_plain(name), Value(words) if parachute else tell(seat.parachute)))
    return several(told, "none recorded")


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
    return several(told, "no fuel tank recorded")


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
    return several(told, "none recorded")


def _exits(airframe: Airframe) -> Value:
    def answer(exit_: Any) -> Value:
        return Value(f"{exit_.way_in}, from {tell(exit_.from_).text}", tell(exit_.from_).state)

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
    return several(told, "none recorded")


def _basis(airframe: Airframe) -> Value:
    if isinstance(airframe.load_points, NonValue):
        return tell(airframe.load_points)
    told = [
        (_plain(name), tell(point.basis))
        for name, point in entries(airframe.load_points).items()
        if point.use in LIFTING
    ]
    return several(told, "none recorded")


def _cut(side: str) -> Callable[[Airframe], Value]:
    def answer(airframe: Airframe) -> Value:
        return _each(airframe.zones, lambda zone: tell(getattr(zone, side).cut))

    return answer


def _water(airframe: Airframe) -> Value:
    water = said(airframe.water)
    return tell(water.floats) if water else tell(airframe.water)


def _engine(airframe: Airframe) -> Value:
    engine = said(airframe.engine)
    return Value(engine.kind) if engine else tell(airframe.engine)


def _run_down(airframe: Airframe) -> Value:
    engine = said(airframe.engine)
    return tell(engine.run_down, ("engine", "run_down")) if engine else tell(airframe.engine)


def _run_down_figure(airframe: Airframe) -> Quantity | NonValue | None:
    engine = said(airframe.engine)
    return engine.run_down if engine else None


def _propeller(airframe: Airframe) -> Value:
    propeller = said(airframe.propeller)
    return Value(f"{propeller.drives}, {tell(propeller.material).text}") if propeller else tell(airframe.propeller)


def _answer(found: NonValue | bool) -> Value:
    return Value("YES") if found is True else tell(found)


def _bottles(airframe: Airframe) -> Value:
    def answer(bottle: Any) -> Value:
        pressure = tell(bottle.working_pressure, ("bottles", "x", "working_pressure"))
        return Value(
            f"{tell(bottle.water_capacity).text} at {pressure.text}", pressure.state, pressure.beside, pressure.remark
        )

    return _each(airframe.bottles, answer)


_TOPICS: tuple[_Topic, ...] = (
    _Topic("role", "What it is", "Airframe", True, lambda a: tell(a.role)),
    _Topic(
        "rocket", "Rocket parachute", "Fires and shocks", True, lambda a: _answer(device_answer(a, "rocket parachute"))
    ),
    _Topic(
        "cartridge", "Seat cartridge", "Fires and shocks", True, lambda a: _answer(device_answer(a, "seat cartridge"))
    ),
    _Topic("high-voltage", "High voltage", "Fires and shocks", True, lambda a: _answer(high_voltage_answer(a))),
    _Topic("exits", "Ways in", "Open", True, _exits),
    _Topic("inverted", "Opens inverted", "Open", True, _inverted),
    _Topic("hinges", "Hinges", "Open", False, lambda a: _each(a.canopies, lambda c: tell(c.hinges))),
    _Topic("magneto", "Magneto off", "Shut down", True, _off("magneto")),
    _Topic("ignition", "Ignition off", "Shut down", False, _off("ignition")),
    _Topic("master", "Master off", "Shut down", True, _off("master")),
    _Topic("fuel-off", "Fuel off", "Shut down", True, _off("fuel")),
    _Topic("mixture", "Mixture off", "Shut down", False, _off("mixture")),
    _Topic("stays-live", "Stays live", "Shut down", False, lambda a: _each(a.batteries, lambda b: tell(b.stays_live))),
    _Topic("seats", "Seats", "Free", True, _seats),
    _Topic("ties", "Ties", "Free", True, _ties),
    _Topic("parachute", "Parachute", "Free", False, _parachute),
    _Topic("fuel", "Fuel", "Burns and bursts", True, _fuel),
    _Topic("smoke-oil", "Smoke oil", "Burns and bursts", False, _smoke),
    _Topic("bottles", "Pressure bottles", "Burns and bursts", True, _bottles),
    _Topic("cut-left", "Cut, left", "Cut", False, _cut("left")),
    _Topic("cut-right", "Cut, right", "Cut", False, _cut("right")),
    _Topic("engine", "Engine", "Airframe", False, _engine),
    _Topic("propeller", "Propeller", "Airframe", False, _propeller),
    _Topic("run-down", "Run-down", "Airframe", False, _run_down, _run_down_figure),
    _Topic(
        "empty",
        "Empty mass",
        "Lift",
        True,
        lambda a: tell(a.masses.empty, ("masses", "empty")),
        lambda a: a.masses.empty,
    ),
    _Topic("heavy-end", "Heavy end", "Lift", False, lambda a: tell(a.masses.heavy_end)),
    _Topic("lift-points", "Points that lift", "Lift", False, _lift),
    _Topic("basis", "Basis", "Lift", False, _basis),
    _Topic(
        "length",
        "Length",
        "Airframe",
        False,
        lambda a: tell(a.size.length, ("size", "length")),
        lambda a: a.size.length,
    ),
    _Topic("span", "Span", "Airframe", False, lambda a: tell(a.size.span, ("size", "span")), lambda a: a.size.span),
    _Topic(
        "width",
        "Fuselage width",
        "Airframe",
        False,
        lambda a: tell(a.size.fuselage_width, ("size", "fuselage_width")),
        lambda a: a.size.fuselage_width,
    ),
    _Topic("floats", "Floats", "Water", False, _water),
)
