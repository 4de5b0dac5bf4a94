"""Every word of the interface passes through here on its way to a page: one catalogue, one language at a time.

The English text is the key: code and templates read as the page reads, and ``words/hardpoint.pot`` lists all of it for
whoever translates it or wants other words. A record's own words never pass through here; they stay as written.

- ``say("{count} of {total} types", count=3, total=10)``: a text with what it names filled in;
- ``say_count(3, "{count} tie recorded", "{count} ties recorded")``: singular and plural;
- ``say_in("step", "lift")``: a word that means something else elsewhere, with where it is said;
- ``mark("not alone")``: a text that is kept in a table at import time and said later by ``say(TABLE[key])``;
- ``later("looks like {unit}", unit="kgf")``: a text made where no page is (it is English there), said by ``say_again``;
- ``later_in("key", "fuel planned")``: the same of a word that means something else elsewhere;
- ``say_counts(40, "{count} entry", "{count} entries")``: for a script, which counts on the page itself.

The texts must be written out where they are said: the catalogue is gathered by reading the source.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from gettext import NullTranslations
from typing import Protocol

__all__ = [
    "AS_WRITTEN",
    "Catalogue",
    "Language",
    "Later",
    "language",
    "later",
    "later_in",
    "mark",
    "say",
    "say_again",
    "say_count",
    "say_counts",
    "say_in",
    "speak",
    "speaking",
]


class Catalogue(Protocol):
    """What ``gettext`` of Python's own library gives."""

    def gettext(self, message: str) -> str: ...

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str: ...

    def pgettext(self, context: str, message: str) -> str: ...


@dataclass(frozen=True)
class Language:
    """A catalogue with what the head of a page says of it: its tag by BCP 47 ("pt-BR") and where its lines begin."""

    catalogue: Catalogue = field(default_factory=NullTranslations)
    tag: str = "en"
    direction: str = "ltr"


AS_WRITTEN = Language()
"""English, as it stands in the source."""
_spoken: ContextVar[Language] = ContextVar("spoken", default=AS_WRITTEN)


def say(text: str, /, **names: object) -> str:
    """A text of the interface in the language that is spoken, its ``{names}`` filled in."""
    told = _spoken.get().catalogue.gettext(text)
    return told.format_map(names) if names else told


def say_count(count: int, one: str, many: str, /, **names: object) -> str:
    """A text in the number that ``count`` asks for; ``{count}`` is filled in too."""
    return _spoken.get().catalogue.ngettext(one, many, count).format_map({"count": count, **names})


def say_counts(most: int, one: str, many: str, /) -> list[str]:
    """What ``say_count`` says for 0, 1, 2 ... ``most``, each with its ``{count}`` left open; the last stands for more.

    A script takes the text at the number it has counted, or the last one. Equal texts at the end are left out.
    """
    texts = [_spoken.get().catalogue.ngettext(one, many, count) for count in range(max(most, 2) + 1)]
    while len(texts) > 1 and texts[-2] == texts[-1]:
        texts.pop()
    return texts


def say_in(context: str, text: str, /) -> str:
    """A word that the catalogue lists once for each of its meanings; ``context`` names the one that is meant."""
    return _spoken.get().catalogue.pgettext(context, text)


def mark(text: str) -> str:
    """The text itself: it is gathered for the catalogue here and said elsewhere."""
    return text


class Later(str):
    """An English text that knows what it was made of, so that a page can say it again in its own language."""

    text: str
    names: dict[str, object]
    context: str = ""


def later(text: str, /, **names: object) -> Later:
    """A text for data files and findings, in English whatever is spoken; ``say_again`` says it on a page."""
    told = Later(text.format_map(names) if names else text)
    told.text, told.names = text, names
    return told


def later_in(context: str, text: str, /) -> Later:
    """A word that the catalogue lists once for each of its meanings, to be said later: see ``say_in``."""
    told = later(text)
    told.context = context
    return told


def say_again(text: str) -> str:
    """What ``later`` made, in the language that is spoken, and so what it names; any other text as it is."""
    if not isinstance(text, Later):
        return text
    if text.context:
        return say_in(text.context, text.text)
    names = {name: say_again(value) if isinstance(value, str) else value for name, value in text.names.items()}
    return say(text.text, **names)


def language() -> Language:
    """What is spoken now."""
    return _spoken.get()


def speak(spoken: Language) -> None:
    """From here on, speak this language."""
    _spoken.set(spoken)


@contextmanager
def speaking(spoken: Language) -> Iterator[None]:
    """Speak this language within a block."""
    token = _spoken.set(spoken)
    try:
        yield
    finally:
        _spoken.reset(token)
