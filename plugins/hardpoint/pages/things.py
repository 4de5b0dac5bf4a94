"""Walking through what a page says: every section, block, row and line of it, as the frozen data that they are."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any

_PLAIN = frozenset({str, bool, int, float, type(None)})


def things(view: Any) -> Iterator[Any]:
    """Every dataclass at and below ``view``, in no order: pages have thousands, and each is looked at only once."""
    waiting = [view]
    while waiting:
        value = waiting.pop()
        if isinstance(value, tuple):
            waiting.extend(value)
            continue
        shape: Any = type(value)
        names = _fields(shape)
        if names:
            yield value
        for name in names:
            held = getattr(value, name)
            if held.__class__ not in _PLAIN:
                waiting.append(held)


def anchors(view: Any) -> set[str]:
    """Every anchor that a page will have: the ids of its sections, blocks, lines and rows."""
    ids = (getattr(thing, "id", None) for thing in things(view))
    return {id_ for id_ in ids if id_ and isinstance(id_, str)}


@cache
def _fields(shape: Any) -> tuple[str, ...]:
    return tuple(field.name for field in fields(shape)) if is_dataclass(shape) else ()
