"""Paths and parts of records in plain words; the closed words themselves are told in ``records/terms.py``."""

from __future__ import annotations

import re

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.locate import holds_choice, keys_of, kinds_of
from hardpoint.records.terms import doing
from hardpoint.records.terms import key_words as key_words
from hardpoint.records.terms import span_words as span_words
from hardpoint.records.terms import term as term
from hardpoint.records.terms import verb as verb
from hardpoint.records.terms import word as word
from hardpoint.records.texts import Span
from hardpoint.records.vocabulary import ANSWERS, SECTIONS, all_keys
from hardpoint.words import say

_STRETCH = re.compile(r"-?[\d.]+ to -?[\d.]+|(?:below|above|forward of|aft of) -?[\d.]+")
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


def label_of(path: Path, *models: type[Part], start: int = 0) -> str:
    """A path in plain words, from its part ``start`` on: ``controls, magneto-left, off is``.

    ``models``: what it is a path of, the first that has such a key; without one, an airframe's.
    """
    model = next((model for model in models if path and path[0] in keys_of(model)), Airframe)
    kinds = kinds_of(model, path)
    return ", ".join(_part(part, kind) for part, kind in list(zip(path, kinds, strict=True))[start:])


def spoken_path(path: Path, *models: type[Part], start: int = 0) -> str:
    """``label_of`` with ids as they are spoken: ``load points, rear pair, basis``; words of closed lists stay whole."""
    model = next((model for model in models if path and path[0] in keys_of(model)), Airframe)
    kinds = kinds_of(model, path)
    parts = list(zip(path, kinds, strict=True))[start:]
    return ", ".join(name_words(_part(part, kind)) if kind == "id" else _part(part, kind) for part, kind in parts)


def pattern_words(pattern: str, *models: type[Part]) -> str:
    """A path with * for any id, in plain words: ``seats.*.worn`` -> ``seats, any, worn``."""
    path = tuple(pattern.split("."))
    told = label_of(path, *models).split(", ")
    return ", ".join(say("any") if part == "*" else word for part, word in zip(path, told, strict=True))


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
        return doing(tree)
    if _STRETCH.fullmatch(tree):
        return span_words(Span(tree, None, None))
    return term(tree) if tree in ANSWERS or holds_choice(model, path) else tree


def _written_key(path: Path, key: str, model: type[Part]) -> str:
    """A key as authors write it; spoken otherwise, its words are joined in the same way."""
    told = label_of((*path, key), model, start=len(path))
    return told.replace(" ", "_") if kinds_of(model, (*path, key))[-1] == "key" else key
