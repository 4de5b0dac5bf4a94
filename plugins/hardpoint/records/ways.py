"""Directions of the airframe and the steps that use them.

Wrecks lie inverted and crews face aft: up, down, left, right, across, level and a bare clockwise say nothing there.
A direction names a part of the airframe; a turn says from where it is seen, or where the free end goes.
"""

from __future__ import annotations

import re
from typing import Annotated, Literal, Self

from pydantic import model_validator

from hardpoint.records.base import Chosen, Part
from hardpoint.records.known import Known, NonValue
from hardpoint.records.problems import problem
from hardpoint.records.quantities import HowFar
from hardpoint.records.texts import Reads, Words

OF_THE_AIRFRAME = (
    "forward",
    "aft",
    "inboard",
    "outboard",
    "towards floor",
    "towards canopy",
    "pilot's left",
    "pilot's right",
)
OF_THE_PLACE = (
    "out of the panel",
    "into the panel",
    "out of the skin",
    "into the skin",
    "away from the sill",
    "towards the sill",
)
TURNS = ("clockwise", "anticlockwise")
_ONE = "|".join(map(re.escape, OF_THE_AIRFRAME))
_WAY = re.compile(
    rf"(?:{_ONE})(?: and (?:{_ONE}))?|{'|'.join(map(re.escape, OF_THE_PLACE))}"
    rf"|free end (?:{_ONE})(?: to (?:{_ONE}))?|{'|'.join(TURNS)}"
)
_MEANT = {
    "up": "towards canopy",
    "upwards": "towards canopy",
    "down": "towards floor",
    "downwards": "towards floor",
    "left": "pilot's left",
    "right": "pilot's right",
    "across": "free end pilot's right",
    "level": "free end forward",
    "back": "aft",
    "backwards": "aft",
    "rearwards": "aft",
    "forwards": "forward",
    "in": "inboard",
    "out": "outboard",
    "counterclockwise": "anticlockwise",
    "anti-clockwise": "anticlockwise",
}

WORDS_OF_WAYS = (*OF_THE_AIRFRAME, *OF_THE_PLACE, *TURNS)
"""What every way is made of: one of these, or two directions of the airframe together."""

SeenFrom = Literal["pilot", "facing it", "canopy side"]
Attitude = Literal["upright", "inverted", "left side down", "right side down", "nose down"]
ATTITUDES: tuple[Attitude, ...] = ("upright", "inverted", "left side down", "right side down", "nose down")


def two_directions(way: str) -> tuple[str, str, str] | None:
    """A way that is put together: how ("both", "free end", "free end to"), first and second direction ("" = none)."""
    free, whole = way.startswith("free end "), way.removeprefix("free end ")
    first, joined, second = whole.partition(" to " if free else " and ")
    if whole not in WORDS_OF_WAYS and (first not in OF_THE_AIRFRAME or second not in OF_THE_AIRFRAME):
        return None
    if free:
        return ("free end to" if joined else "free end", first, second)
    return ("both", first, second) if joined else None


def _way(text: str) -> str:
    if _WAY.fullmatch(text):
        return Chosen(text)
    word = text.lower()
    raise problem(
        "way-not-of-the-airframe" if word in _MEANT else "unknown-way",
        read=text,
        expected="a direction of the airframe (wrecks lie inverted, crews face aft)",
        example=_MEANT.get(word, "towards floor"),
    )


Way = Annotated[
    str,
    Reads(
        _way,
        {
            "title": "a direction of the airframe",
            "type": "string",
            "pattern": f"^(?:{_WAY.pattern})$",
            "examples": [*OF_THE_AIRFRAME, "free end aft", "free end outboard to aft", *OF_THE_PLACE, *TURNS],
        },
    ),
]

_OPPOSITE = {
    frozenset({"towards floor", "towards canopy"}),
    frozenset({"forward", "aft"}),
    frozenset({"inboard", "outboard"}),
    frozenset({"pilot's left", "pilot's right"}),
    frozenset({"clockwise", "anticlockwise"}),
    frozenset({"out of the panel", "into the panel"}),
    frozenset({"free end forward", "free end aft"}),
    frozenset({"free end inboard", "free end outboard"}),
    frozenset({"free end towards floor", "free end towards canopy"}),
    frozenset({"free end pilot's left", "free end pilot's right"}),
}


def opposed(one: str, other: str) -> bool:
    """True for two ways that undo each other, seen by one observer."""
    return frozenset({one, other}) in _OPPOSITE


Verb = Literal[
    "press",
    "push",
    "pull",
    "turn",
    "slide",
    "lift",
    "lower",
    "swing",
    "squeeze",
    "flip",
    "unclip",
    "undo",
    "hold",
    "reach",
    "feel",
    "look",
    "open",
    "close",
    "break",
    "cut",
    "remove",
    "pass",
    "wait",
    "flood",
]


def turn_without_observer(way: str | NonValue | None, seen_from: str | NonValue | None, key: str = "way") -> None:
    """Refuse a clockwise that does not say from where it is seen; ``key`` is where the finding points."""
    if way in TURNS and seen_from is None:
        raise problem(
            "turn-without-observer",
            read=str(way),
            expected="beside it the key seen_from: pilot, facing it or canopy side",
            example=f"{key}: {way}, seen_from: facing it",
            at=key,
        )


class Step(Part):
    """One action. The way is the airframe's; in ``what``, left and right name a part and mean the airframe's."""

    do: Verb
    """The action, a verb."""
    what: Words
    """The part that is moved or felt for: "handle", "left edge of the canopy"."""
    way: Known[Way] | None = None
    """Which way, in directions of the airframe."""
    seen_from: SeenFrom | None = None
    """From where a turn is seen; needed with clockwise and anticlockwise."""
    by: Known[HowFar] | None = None
    """How far: an angle, a length, a number of turns."""
    until: Words | None = None
    """What tells that it is done: "handle springs out"."""
    using: Words | None = None
    """The tool or the second person that it takes."""

    @model_validator(mode="after")
    def _observer(self) -> Self:
        turn_without_observer(self.way, self.seen_from)
        return self
