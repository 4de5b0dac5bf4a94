"""Two at once: the key facts of a day's aircraft side by side, and what is opposite between them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from hardpoint.pages.addresses import relative
from hardpoint.pages.entries import Flown
from hardpoint.pages.key_facts import key_facts
from hardpoint.pages.telling import term, way_words
from hardpoint.pages.view import Block, Line, Lines, Row, Section, Table, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.controls import Function
from hardpoint.records.known import entries, said
from hardpoint.records.ways import opposed
from hardpoint.words import say


def two_at_once(day_id: str, day: str, flown: tuple[Flown, ...], page: str) -> Section:
    """A day's section: first what is opposite, then every key fact by number."""
    blocks: list[Block] = [
        Lines(
            (
                Line(say("send each crew to its own page: nothing below is to be carried from one to the other.")),
                *_opposites(flown),
            ),
            f"{day_id}-opposites",
            say("Opposite between two of this day"),
        )
    ]
    for fact in key_facts():
        rows = tuple(
            Row(
                (
                    Value(f"{one.number} {one.called}", href=relative(f"{one.address}#{fact.part}", page)),
                    fact.tell(one.shown.airframe),
                )
            )
            for one in flown
        )
        blocks.append(Table(f"{day_id}-{fact.id}", fact.title, (say("Number"), fact.title), rows, folded=True))
    return Section(f"{day_id}-two-at-once", say("{day}: two at once", day=day), tuple(blocks), say("Two at once"))


def _opposites(flown: tuple[Flown, ...]) -> Iterator[Line]:
    found = [line for one, other in combinations(flown, 2) for line in _between(one, other)]
    if not found:
        yield Line(say("no control is recorded as opposite; that does not make them alike"))
    yield from found


def _between(one: Flown, other: Flown) -> Iterator[Line]:
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
