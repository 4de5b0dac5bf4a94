"""The searchable table: rows under facts, ranked for sorting, with the answers by which they can be narrowed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from typing import Generic, TypeVar

from hardpoint.pages.board_view import BoardPage, BoardRow, Column, Facet
from hardpoint.pages.site import Page, Site
from hardpoint.pages.view import Link, Value
from hardpoint.records.known import NonValue, said
from hardpoint.units import Quantity

T = TypeVar("T")
NO_PLACE = -1


@dataclass(frozen=True)
class Topic(Generic[T]):
    """A fact that is told of each row; ``figure`` ranks it by size where its words would not."""

    id: str
    title: str
    tell: Callable[[T], Value]
    group: str = ""
    shown: bool = True
    figure: Callable[[T], Quantity | NonValue | None] | None = None
    size: Callable[[T], float | None] | None = None
    """The same for what is worked out and not stated."""


@dataclass(frozen=True)
class Narrowing(Generic[T]):
    """A facet: the answers that a row gives to a question with few of them."""

    id: str
    title: str
    answers: Callable[[T], Iterable[str]]


@dataclass(frozen=True)
class Head:
    """The head of a row: its anchor, its name, where it leads, further words that find it."""

    id: str
    name: str
    href: str
    words: str = ""
    note: str = ""


@dataclass(frozen=True)
class Board(Generic[T]):
    """Everything that a page with a searchable table says, but for its rows."""

    address: str
    title: str
    lead: str
    head: str
    rows_are: str
    topics: Sequence[Topic[T]]
    narrowings: Sequence[Narrowing[T]]
    links: tuple[Link, ...] = field(default=())


def board_page(site: Site, board: Board[T], held: Sequence[tuple[Head, T]]) -> Page:
    """A page of all rows under all facts."""
    columns = tuple(Column(topic.id, topic.title, topic.group, topic.shown) for topic in board.topics)
    told = [[topic.tell(thing) for topic in board.topics] for _, thing in held]
    ranks = [
        _ranks(topic, [thing for _, thing in held], [cells[at] for cells in told])
        for at, topic in enumerate(board.topics)
    ]
    answers = [[tuple(narrowing.answers(thing)) for narrowing in board.narrowings] for _, thing in held]
    rows = tuple(
        BoardRow(
            head.id,
            head.name,
            head.href,
            tuple(told[at]),
            head.words,
            tuple(rank[at] for rank in ranks),
            tuple(answers[at]),
            head.note,
        )
        for at, (head, _) in enumerate(held)
    )
    view = BoardPage(
        site.frame(board.address, board.title),
        board.title,
        board.lead,
        board.head,
        board.rows_are,
        columns,
        rows,
        _facets(board.narrowings, answers),
        board.links,
        site.cautions,
    )
    return Page(board.address, board.title, "board.html", view)


def _facets(narrowings: Sequence[Narrowing[T]], answers: list[list[tuple[str, ...]]]) -> tuple[Facet, ...]:
    """Questions that at least two rows answer differently; one that all answer alike narrows nothing."""
    made = []
    for at, narrowing in enumerate(narrowings):
        options = sorted({answer for row in answers for answer in row[at]}, key=str.casefold)
        made.append(Facet(narrowing.id, narrowing.title, tuple(options)))
    return tuple(made)


def _ranks(topic: Topic[T], things: list[T], told: list[Value]) -> list[int]:
    """The place of each row in the order of a fact: unknown first, figures by size in SI, words by letter.

    What is not fitted has no place: ``NO_PLACE`` stands last, whichever way the order goes.
    """
    keys = [_key(topic, thing, value) for thing, value in zip(things, told, strict=True)]
    places = {key: place for place, key in enumerate(sorted(set(keys)))}
    absent = [value.state in ("not fitted", "not applicable") for value in told]
    return [NO_PLACE if gone else places[key] for key, gone in zip(keys, absent, strict=True)]


def _key(topic: Topic[T], thing: T, value: Value) -> tuple[int, float, str]:
    if value.state == "unknown":
        return (0, 0.0, "")
    size = topic.size(thing) if topic.size else None
    if size is not None:
        return (1, size, "")
    figure = said(topic.figure(thing)) if topic.figure else None
    return (1, figure.si[0], "") if figure is not None else (2, 0.0, value.text.casefold())
