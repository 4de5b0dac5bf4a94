"""The comparison across types: one row a type, one column a fact; a non-value is an answer like any other."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.pages import addresses
from hardpoint.pages.across.titles import across_titles
from hardpoint.pages.addresses import relative
from hardpoint.pages.board import Board, Head, Narrowing, Topic, board_page
from hardpoint.pages.shown import Shown, shown_type
from hardpoint.pages.site import Page, Site
from hardpoint.pages.telling import several, tell, unknown, way_words
from hardpoint.pages.view import Link, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.controls import Function
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING
from hardpoint.records.tanks import ENGINE_FUELS
from hardpoint.units import Quantity
from hardpoint.words import say


def compare_page(site: Site) -> Page:
    """All types under all facts."""
    page = addresses.COMPARE
    board = Board(
        page,
        say("Compare types"),
        say("Every fact is searched, also those not shown. The aircraft before you can differ from its type."),
        say("Type"),
        say("{found} of {total} types"),
        _topics(),
        _narrowings(),
        tuple(Link(title, relative(address, page)) for title, address in across_titles()),
    )
    held = [(_head(shown_type(type_), page), type_.airframe) for type_ in site.fleet.types.values()]
    return board_page(site, board, held)


def _head(shown: Shown, page: str) -> Head:
    words = " ".join([shown.airframe.role, *shown.airframe.also_called, shown.id])
    return Head(f"row-{shown.id}", shown.name, relative(addresses.type_page(shown.id), page), words)


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
    answered = tanks.get("fuel")
    if not told and isinstance(answered, NonValue):
        return tell(answered)
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


def _topics() -> tuple[Topic[Airframe], ...]:
    """Every fact that types are compared by, in the order of a crew page."""
    return (
        Topic("role", say("What it is"), lambda a: tell(a.role), say("Airframe")),
        Topic(
            "rocket",
            say("Rocket parachute"),
            lambda a: _answer(device_answer(a, "rocket parachute")),
            say("Fires and shocks"),
        ),
        Topic(
            "cartridge",
            say("Seat cartridge"),
            lambda a: _answer(device_answer(a, "seat cartridge")),
            say("Fires and shocks"),
        ),
        Topic("high-voltage", say("High voltage"), lambda a: _answer(high_voltage_answer(a)), say("Fires and shocks")),
        Topic("exits", say("Ways in"), _exits, say("Open")),
        Topic("inverted", say("Opens inverted"), _inverted, say("Open")),
        Topic("hinges", say("Hinges"), lambda a: _each(a.canopies, lambda c: tell(c.hinges)), say("Open"), shown=False),
        Topic("magneto", say("Magneto off"), _off("magneto"), say("Shut down")),
        Topic("ignition", say("Ignition off"), _off("ignition"), say("Shut down"), shown=False),
        Topic("master", say("Master off"), _off("master"), say("Shut down")),
        Topic("fuel-off", say("Fuel off"), _off("fuel"), say("Shut down")),
        Topic("mixture", say("Mixture off"), _off("mixture"), say("Shut down"), shown=False),
        Topic(
            "stays-live",
            say("Stays live"),
            lambda a: _each(a.batteries, lambda b: tell(b.stays_live)),
            say("Shut down"),
            shown=False,
        ),
        Topic("seats", say("Seats"), _seats, say("Free")),
        Topic("ties", say("Ties"), _ties, say("Free")),
        Topic("parachute", say("Parachute"), _parachute, say("Free"), shown=False),
        Topic("fuel", say("Fuel"), _fuel, say("Burns and bursts")),
        Topic("smoke-oil", say("Smoke oil"), _smoke, say("Burns and bursts"), shown=False),
        Topic("bottles", say("Pressure bottles"), _bottles, say("Burns and bursts")),
        Topic("cut-left", say("Cut, left"), _cut("left"), say("Cut"), shown=False),
        Topic("cut-right", say("Cut, right"), _cut("right"), say("Cut"), shown=False),
        Topic("engine", say("Engine"), _engine, say("Airframe"), shown=False),
        Topic("propeller", say("Propeller"), _propeller, say("Airframe"), shown=False),
        Topic("run-down", say("Run-down"), _run_down, say("Airframe"), shown=False, figure=_run_down_figure),
        Topic(
            "empty",
            say("Empty mass"),
            lambda a: tell(a.masses.empty, ("masses", "empty")),
            say("Lift"),
            figure=lambda a: a.masses.empty,
        ),
        Topic("heavy-end", say("Heavy end"), lambda a: tell(a.masses.heavy_end), say("Lift"), shown=False),
        Topic("lift-points", say("Points that lift"), _lift, say("Lift"), shown=False),
        Topic("basis", say("Basis"), _basis, say("Lift"), shown=False),
        Topic(
            "length",
            say("Length"),
            lambda a: tell(a.size.length, ("size", "length")),
            say("Airframe"),
            shown=False,
            figure=lambda a: a.size.length,
        ),
        Topic(
            "span",
            say("Span"),
            lambda a: tell(a.size.span, ("size", "span")),
            say("Airframe"),
            shown=False,
            figure=lambda a: a.size.span,
        ),
        Topic(
            "width",
            say("Fuselage width"),
            lambda a: tell(a.size.fuselage_width, ("size", "fuselage_width")),
            say("Airframe"),
            shown=False,
            figure=lambda a: a.size.fuselage_width,
        ),
        Topic("floats", say("Floats"), _water, say("Water"), shown=False),
    )


def _narrowings() -> tuple[Narrowing[Airframe], ...]:
    return (
        Narrowing("rocket", say("Rocket parachute"), lambda a: (_answer(device_answer(a, "rocket parachute")).text,)),
        Narrowing("cartridge", say("Seat cartridge"), lambda a: (_answer(device_answer(a, "seat cartridge")).text,)),
        Narrowing("high-voltage", say("High voltage"), lambda a: (_answer(high_voltage_answer(a)).text,)),
        Narrowing("seats", say("Seats"), lambda a: (str(len(a.seats)),)),
        Narrowing("fuel", say("Fuel"), _fuels),
        Narrowing("inverted", say("Opens inverted"), _best_inverted),
        Narrowing("floats", say("Floats"), lambda a: (_water(a).text,)),
    )


def _fuels(airframe: Airframe) -> tuple[str, ...]:
    tanks = entries(airframe.tanks).values()
    held = {tell(tank.holds).text for tank in tanks if tank.holds in ENGINE_FUELS or isinstance(tank.holds, NonValue)}
    return tuple(sorted(held)) or (tell(airframe.tanks).text if isinstance(airframe.tanks, NonValue) else say("none"),)


def _best_inverted(airframe: Airframe) -> tuple[str, ...]:
    """Every answer that one of its ways in gives: one that opens is enough to look for."""
    exits = entries(airframe.exits).values()
    return tuple(dict.fromkeys(tell(exit_.works.inverted).text for exit_ in exits)) or (tell(NonValue.UNKNOWN).text,)
