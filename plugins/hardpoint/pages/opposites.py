"""What is opposite between aircraft of one day: off directions, the order of the first movements, tails and types."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from hardpoint.pages.entries import Flown
from hardpoint.pages.key_facts import first_exit
from hardpoint.pages.shown import said_before, spoken
from hardpoint.pages.telling import way_words
from hardpoint.pages.terms import label_of, term
from hardpoint.pages.view import Line
from hardpoint.records.airframe import Airframe
from hardpoint.records.controls import Function
from hardpoint.records.known import entries, said
from hardpoint.records.terms import doing
from hardpoint.records.ways import opposed
from hardpoint.words import mark, say


def opposites(flown: tuple[Flown, ...]) -> Iterator[Line]:
    """What is other than its type on one of them, then what is opposite between two; a line where nothing is."""
    found = [line for one in flown for line in _other_than_its_type(one)]
    for one, other in combinations(flown, 2):
        found += between(one, other)
    if not found:
        yield Line(say("no control is recorded as opposite; that does not make them alike"))
    yield from found


def between(one: Flown, other: Flown) -> Iterator[Line]:
    """What a hand that has learnt one of two does wrong on the other."""
    yield from _in_other_order(one, other)
    yield from _opposite(one, other)


def _other_than_its_type(one: Flown) -> Iterator[Line]:
    """Whoever knows the type gets this one wrong: what opens it or shuts it down otherwise, with both answers."""
    for change in one.shown.changes:
        if change.path[0] in ("exits", "controls", "canopies"):
            what = label_of(change.path, start=1).replace("-", " ")
            here = say("not on this aircraft") if change.here is None else spoken(change.here, change.path)
            words = say("{here}; its type: {was}", here=here, was=said_before(change))
            yield Line(words, f"{one.number} {one.called}, {what}:", "caution")


def _in_other_order(one: Flown, other: Flown) -> Iterator[Line]:
    """First ways in whose first two movements are the same in the other order: the hand learns one of them."""
    ours, theirs = _first_two(one.shown.airframe), _first_two(other.shown.airframe)
    if ours and ours == theirs[::-1] and ours != theirs:
        then = mark("{first}, then {second}")
        yield Line(
            say(
                "{one}: {ours}; {other}: {theirs}",
                one=f"{one.number} {one.called}",
                ours=say(then, first=doing(ours[0]), second=doing(ours[1])),
                other=f"{other.number} {other.called}",
                theirs=say(then, first=doing(theirs[0]), second=doing(theirs[1])),
            ),
            say("First way in, in the other order:"),
            "caution",
        )


def _first_two(airframe: Airframe) -> tuple[str, ...]:
    exit_ = first_exit(airframe)
    steps = said(exit_.steps) if exit_ else None
    return tuple(step.do for step in steps[:2]) if steps and len(steps) > 1 else ()


def _opposite(one: Flown, other: Flown) -> Iterator[Line]:
    ours, theirs = _offs(one.shown.airframe), _offs(other.shown.airframe)
    for function in ours:
        for way in ours[function]:
            for against in theirs.get(function, ()):
                if opposed(way[0], against[0]) and way[1] == against[1]:
                    yield Line(
                        say(
                            "{one} is {way}, {other} is {against}",
                            one=f"{one.number} {one.called}",
                            way=way_words(*way),
                            other=f"{other.number} {other.called}",
                            against=way_words(*against),
                        ),
                        say("{control} off:", control=term(function).capitalize()),
                        "caution",
                    )


def _offs(airframe: Airframe) -> dict[Function, tuple[tuple[str, str | None], ...]]:
    """Every off direction of each function with its observer, each once."""
    found: dict[Function, dict[tuple[str, str | None], None]] = {}
    for control in entries(airframe.controls).values():
        way = said(control.off_is)
        if way is not None:
            found.setdefault(control.function, {})[(way, control.seen_from)] = None
    return {function: tuple(ways) for function, ways in found.items()}
