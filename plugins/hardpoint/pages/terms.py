"""The record's own closed words on a page: choices, keys, verbs of steps. Author's words never pass through here."""

from __future__ import annotations

import re
from typing import Any

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Chosen, Part
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.locate import holds_choice, keys_of, kinds_of
from hardpoint.records.texts import Span
from hardpoint.records.vocabulary import ANSWERS, SECTIONS, all_keys
from hardpoint.records.ways import two_directions
from hardpoint.words import mark, say, say_in

_IN_TWO = {
    "both": mark("{first} and {second}"),
    "free end": mark("free end {first}"),
    "free end to": mark("free end {first} to {second}"),
}


def term(value: str) -> str:
    """A choice of the model in the language that is spoken: ``walked``, ``towards floor``, ``free end aft``."""
    told = two_directions(value)
    if told is None:
        return say(str(value))
    how, first, second = told
    names = {"first": say(first)} | ({"second": say(second)} if second else {})
    return say(_IN_TWO[how], **names)


def word(value: Any) -> str:
    """A choice in the language that is spoken, any other text as its author wrote it."""
    return term(value) if isinstance(value, Chosen) else str(value)


def answer(value: Any) -> Any:
    """``none`` and ``nothing`` in the language that is spoken where they answer; other words as they were written."""
    return term(value) if isinstance(value, str) and not isinstance(value, NonValue) and value in ANSWERS else value


def verb(do: str) -> str:
    """What a step does, as it begins a sentence."""
    return first_capital(say_in("step", str(do)))


_WRITTEN = (
    (re.compile(r"\b(hp|lp|hv)\b"), lambda found: found[1].upper()),
    (re.compile(r"\b(anti|negative) g\b"), lambda found: f"{found[1]}-g"),
)
"""Ids are small letters joined by hyphens; the trade writes these words otherwise."""


def first_capital(text: str) -> str:
    """A text as a heading begins: its other letters stay as they are, so "HP cock" does not become "Hp cock"."""
    return text[:1].upper() + text[1:]


def name_words(name: str) -> str:
    """An id as it is spoken: ``hp-cock-front`` -> ``HP cock front``."""
    words = name.replace("-", " ")
    for pattern, written in _WRITTEN:
        words = pattern.sub(written, words)
    return words


def title_of(name: str) -> str:
    """An id as a heading: ``magneto-left`` -> ``Magneto left``."""
    return first_capital(name_words(name))


def key_words(key: str) -> str:
    """A key of the model in plain words: ``off_is`` -> ``off is``."""
    return say_in("key", key.replace("_", " "))


def span_words(span: Span) -> str:
    """A stretch as it was written, with the words between its figures in the language that is spoken."""
    first, _, last = span.text.rpartition(" ")
    low, to, _ = first.partition(" ")
    if to:
        told = {"forward of": mark("forward of {station}"), "aft of": mark("aft of {station}")}
        return say(told[first], station=last) if first in told else say("{low} to {high}", low=low, high=last)
    told = {"below": mark("below {station}"), "above": mark("above {station}")}
    return say(told[first], station=last) if first in told else span.text


def label_of(path: Path, *models: type[Part], start: int = 0) -> str:
    """A path in plain words, from its part ``start`` on: ``controls, magneto-left, off is``.

    ``models``: what it is a path of, the first that has such a key; without one, an airframe's.
    """
    model = next((model for model in models if path and path[0] in keys_of(model)), Airframe)
    kinds = kinds_of(model, path)
    return ", ".join(_part(part, kind) for part, kind in list(zip(path, kinds, strict=True))[start:])


def _part(part: str | int, kind: str) -> str:
    if isinstance(part, int):
        return str(part + 1)
    if kind == "key" or part in SECTIONS or (kind == "open" and part.replace("_", " ") in all_keys()):
        return key_words(part)
    return term(part) if kind == "choice" else part.replace("_", " ")


def as_text(tree: Tree, path: Path = (), model: type[Part] = Airframe) -> str:
    """What stands at ``path`` on one line: the author's words, the model's in the language that is spoken."""
    if isinstance(tree, dict):
        inside = (
            f"{_written_key(path, key, model)}: {_inside(value, (*path, key), model)}" for key, value in tree.items()
        )
        return "{" + ", ".join(inside) + "}"
    if isinstance(tree, list):
        return "[" + ", ".join(_inside(item, (*path, at), model) for at, item in enumerate(tree)) + "]"
    if tree == NonValue.UNKNOWN.value:
        return say("UNKNOWN")
    return _inside(tree, path, model)


def _inside(tree: Tree, path: Path, model: type[Part]) -> str:
    if isinstance(tree, dict | list):
        return as_text(tree, path, model)
    if path and path[-1] == "do" and holds_choice(model, path):
        return say_in("step", tree)
    return term(tree) if tree in ANSWERS or holds_choice(model, path) else tree


def _written_key(path: Path, key: str, model: type[Part]) -> str:
    """A key as authors write it; spoken otherwise, its words are joined in the same way."""
    told = label_of((*path, key), model, start=len(path))
    return told.replace(" ", "_") if kinds_of(model, (*path, key))[-1] == "key" else key
