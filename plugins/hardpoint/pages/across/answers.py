"""What every page across types tells alike: an entry that is not there, not known, or other than on its type."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from hardpoint.pages.across.items import Item
from hardpoint.pages.board import Head, Narrowing, Topic
from hardpoint.pages.telling import tell
from hardpoint.pages.terms import label_of
from hardpoint.pages.view import Value
from hardpoint.records.known import NonValue
from hardpoint.units import Quantity
from hardpoint.words import say

Answer = Callable[[Item], Value]


def told(answer: Answer) -> Answer:
    """An answer that is only asked where there is an entry to ask of."""

    def either(item: Item) -> Value:
        if item.entry is None:
            return Value(say("not on this aircraft"))
        return tell(item.entry) if isinstance(item.entry, NonValue) else answer(item)

    return either


def topic(
    id: str,
    title: str,
    answer: Answer,
    *,
    shown: bool = True,
    figure: Callable[[Any], Quantity | NonValue | None] | None = None,
) -> Topic[Item]:
    """A fact of an entry; ``figure`` takes the entry itself."""
    ranked = None if figure is None else lambda item: figure(item.entry) if _there(item) else None
    return Topic(id, title, told(answer), "", shown, ranked)


def narrowing(id: str, title: str, answers: Callable[[Any], Iterable[str]]) -> Narrowing[Item]:
    """A facet of an entry; an entry that is not known answers UNKNOWN."""

    def of(item: Item) -> Iterable[str]:
        if item.entry is None:
            return (say("not on this aircraft"),)
        return (tell(item.entry).text,) if isinstance(item.entry, NonValue) else answers(item.entry)

    return Narrowing(id, title, of)


def head(item: Item, page: str, relative: Callable[[str, str], str], place: str = "") -> Head:
    """The head of an item's row: whose it is and what, leading to its place."""
    what = label_of(item.path, start=min(1, len(item.path) - 1)).replace("-", " ")
    words = " ".join([*item.shown.airframe.also_called, item.shown.type_id, str(item.path[-1])])
    note = say("other than on its type") if item.shown.tail else ""
    return Head(item.row, f"{item.name}: {what}", relative(place or item.place, page), words, note)


def _there(item: Item) -> bool:
    return item.entry is not None and not isinstance(item.entry, NonValue)
