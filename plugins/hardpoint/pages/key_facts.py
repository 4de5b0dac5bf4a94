"""The facts that nobody may mix up between two aircraft: for the briefing, for two at once, for training."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from hardpoint.figures.answers import device_answer, high_voltage_answer
from hardpoint.pages.across.canopies import works
from hardpoint.pages.across.shutdown_controls import off_is
from hardpoint.pages.telling import place_words, several, steps_of, tell, unknown
from hardpoint.pages.terms import name_words, term
from hardpoint.pages.view import Step, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.controls import Function
from hardpoint.records.exits import Exit
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.seats import Seat
from hardpoint.words import mark, say


@dataclass(frozen=True)
class KeyFact:
    """One question that every aircraft answers, as a title and as it is asked; ``part`` of its crew page answers it."""

    id: str
    title: str
    asks: str
    part: str
    tell: Callable[[Airframe], Value]


def key_facts() -> tuple[KeyFact, ...]:
    """In the order in which a crew meets them."""
    return (
        KeyFact("come-from", say("Come from"), say("from where do you come?"), "approach", _come_from),
        KeyFact(
            "rocket",
            say("Rocket parachute"),
            say("is a rocket parachute fitted?"),
            "stay-clear",
            _device("rocket parachute"),
        ),
        KeyFact(
            "cartridge",
            say("Seat cartridge"),
            say("is a seat cartridge fitted?"),
            "stay-clear",
            _device("seat cartridge"),
        ),
        KeyFact(
            "high-voltage",
            say("High voltage"),
            say("is there high voltage?"),
            "stay-clear",
            lambda a: yes_or(high_voltage_answer(a)),
        ),
        KeyFact("first-way-in", say("First way in"), say("what is the first way in?"), "open", first_way_in),
        KeyFact("inverted", say("Opens inverted"), say("does it open inverted?"), "open", _inverted),
        *(KeyFact(id_, say(title), say(asks), "shut-down", _off(functions)) for id_, title, asks, functions in _OFFS),
        KeyFact(
            "ties", say("Ties recorded"), say("what ties the occupant in, and how many are recorded?"), "free", _ties
        ),
        KeyFact("do-not-pull", say("Do not pull"), say("what must not be pulled?"), "grip", _do_not_pull),
        KeyFact(
            "heavy-end", say("Heavy end"), say("which end is heavy?"), "heavy-end", lambda a: tell(a.masses.heavy_end)
        ),
    )


_OFFS: tuple[tuple[str, str, str, tuple[Function, ...]], ...] = (
    (
        "ignition-off",
        mark("Magneto or ignition off"),
        mark("which way is magneto or ignition off?"),
        ("magneto", "ignition"),
    ),
    (
        "master-off",
        mark("Master or battery off"),
        mark("which way is master or battery off?"),
        ("master", "battery", "high-voltage disconnect"),
    ),
    ("fuel-off", mark("Fuel off"), mark("which way is fuel off?"), ("fuel", "HP cock", "LP cock")),
    ("mixture-off", mark("Mixture off"), mark("which way is mixture off?"), ("mixture",)),
)


def yes_or(answer: NonValue | bool) -> Value:
    """``YES``, or what the record says instead."""
    return tell(answer) if isinstance(answer, NonValue) else Value(say("YES"))


def _device(kind: str) -> Callable[[Airframe], Value]:
    return lambda airframe: yes_or(device_answer(airframe, kind))  # type: ignore[arg-type]


def _come_from(airframe: Airframe) -> Value:
    approach = said(airframe.approach)
    bearings = said(approach.come_from) if approach else None
    return Value(say(", then the ").join(term(bearing) for bearing in bearings)) if bearings else unknown()


def first_exit(airframe: Airframe) -> Exit | None:
    """The way in to try first: the record's own order."""
    return next(iter(entries(airframe.exits).values()), None)


def first_way_in(airframe: Airframe) -> Value:
    """Where its handle is and its steps, in one line."""
    exit_ = first_exit(airframe)
    if exit_ is None:
        return tell(airframe.exits) if isinstance(airframe.exits, NonValue) else unknown()
    steps = steps_of(exit_.steps)
    words = say("from {where}: {steps}", where=tell(exit_.from_).text, steps="; ".join(map(step_line, steps)))
    open_ = any(step.unknown for step in steps) or tell(exit_.from_).state == "unknown"
    return Value(words, "unknown" if open_ else "said", note=place_words(exit_.place, airframe))


def step_line(step: Step) -> str:
    """A step as it is spoken."""
    return " ".join(word for word in (step.verb.lower(), step.what, step.way) if word)


def _inverted(airframe: Airframe) -> Value:
    exits = entries(airframe.exits)
    if not exits:
        return unknown()
    return several((name.replace("-", " "), works(exit_, "inverted")) for name, exit_ in exits.items())


def _off(functions: tuple[Function, ...]) -> Callable[[Airframe], Value]:
    def answer(airframe: Airframe) -> Value:
        if isinstance(airframe.controls, NonValue):
            return tell(airframe.controls)
        found = [
            (name.replace("-", " "), off_is(control))
            for name, control in entries(airframe.controls).items()
            if control.function in functions
        ]
        return several(found, say("none recorded"))

    return answer


def _of_seats(airframe: Airframe, answer: Callable[[Seat], Value]) -> Value:
    if len(airframe.seats) == 1:
        return answer(next(iter(airframe.seats.values())))
    return several((name.replace("-", " "), answer(seat)) for name, seat in airframe.seats.items())


def _ties(airframe: Airframe) -> Value:
    def answer(seat: Seat) -> Value:
        if isinstance(seat.ties, NonValue):
            return tell(seat.ties)
        names = [name_words(name) for name in entries(seat.ties)]
        open_ = [name for name, tie in seat.ties.items() if tie is NonValue.UNKNOWN]
        names += [say("{tie} UNKNOWN", tie=name_words(name)) for name in open_]
        told = f"{len(entries(seat.ties))}: {', '.join(names)}" if names else say("none recorded")
        return Value(told, "unknown" if open_ else "said")

    return _of_seats(airframe, answer)


def _do_not_pull(airframe: Airframe) -> Value:
    def answer(seat: Seat) -> Value:
        if isinstance(seat.do_not_pull, NonValue):
            return tell(seat.do_not_pull)
        told = [
            name.replace("-", " ") if isinstance(handle, NonValue) else handle.what
            for name, handle in seat.do_not_pull.items()
        ]
        return Value("; ".join(told) or say("none recorded"))

    return _of_seats(airframe, answer)


def unlike(one: Airframe, other: Airframe) -> Iterator[tuple[KeyFact, Value, Value]]:
    """The key facts that two aircraft answer differently, with both answers; an unknown is never alike."""
    for fact in key_facts():
        left, right = fact.tell(one), fact.tell(other)
        if _answers(left) != _answers(right) or "unknown" in (left.state, right.state):
            yield fact, left, right


def _answers(value: Value) -> list[str]:
    """What is answered, without the names that a record gives its parts: those are not what a hand meets."""
    return sorted({part.value.text for part in value.parts}) if value.parts else [value.text]
