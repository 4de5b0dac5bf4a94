"""Every word of the interface passes through here on its way to a page: one catalogue, one language at a time.

The English text is the key: code and templates read as the page reads, and ``words/hardpoint.pot`` lists all of it for
whoever translates it or wants other words. A record's own words never pass through here; they stay as written.

- ``say("{count} of {total} types", count=3, total=10)``: a text with what it names filled in;
- ``say_count(3, "{count} tie recorded", "{count} ties recorded")``: singular and plural;
- ``mark("not alone")``: a text that is kept in a table at import time and said later by ``say(TABLE[key])``.

The texts must be written out where they are said: the catalogue is gathered by reading the source.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from gettext import NullTranslations
from typing import Protocol

__all__ = ["Catalogue", "mark", "say", "say_count", "speak", "speaking"]


class Catalogue(Protocol):
    """A language: what ``gettext`` of Python's own library gives."""

    def gettext(self, message: str) -> str: ...

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str: ...


_AS_WRITTEN = NullTranslations()
_spoken: ContextVar[Catalogue] = ContextVar("spoken", default=_AS_WRITTEN)


def say(text: str, /, **names: object) -> str:
    """A text of the interface in the language that is spoken, its ``{names}`` filled in."""
    told = _spoken.get().gettext(text)
    return told.format_map(names) if names else told


def say_count(count: int, one: str, many: str, /, **names: object) -> str:
    """A text in the number that ``count`` asks for; ``{count}`` is filled in too."""
    return _spoken.get().ngettext(one, many, count).format_map({"count": count, **names})


def mark(text: str) -> str:
    """The text itself: it is gathered for the catalogue here and said elsewhere."""
    return text


def speak(catalogue: Catalogue) -> None:
    """From here on, speak this language."""
    _spoken.set(catalogue)


@contextmanager
def speaking(catalogue: Catalogue) -> Iterator[None]:
    """Speak this language within a block."""
    token = _spoken.set(catalogue)
    try:
        yield
    finally:
        _spoken.reset(token)
