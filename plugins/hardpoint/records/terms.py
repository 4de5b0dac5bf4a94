"""The closed words of the records as a reader is told them: choices, keys, verbs of steps, stretches.

Author's own words never pass through here.
"""

from __future__ import annotations

from typing import Any

from hardpoint.records.base import Chosen
from hardpoint.records.texts import Span
from hardpoint.records.vocabulary import ANSWERS
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
    """A choice in the language that is spoken, any other text as its author wrote it.

    A bare ``none`` or ``nothing`` is an answer, too, wherever it stands.
    """
    return term(value) if isinstance(value, Chosen) or value in ANSWERS else str(value)


def doing(do: str) -> str:
    """What a step does, within a sentence."""
    return say_in("step", str(do))


def verb(do: str) -> str:
    """What a step does, as it begins a sentence."""
    return doing(do).capitalize()


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
