"""Telling a record's answers: values in words, conversions beside them, what differs on this tail where it bites."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from hardpoint.figures.safe_side import rounding_of
from hardpoint.findings import Path
from hardpoint.pages.addresses import anchor
from hardpoint.pages.view import Fact, Labelled, Photo, Step, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Aircraft, Override, Type
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.places import Place
from hardpoint.records.quantities import Travel
from hardpoint.records.texts import Span
from hardpoint.records.trees import in_words, value_at
from hardpoint.records.ways import Step as RecordStep
from hardpoint.units import Quantity, shown

UNKNOWN = Value("UNKNOWN", "unknown")
_NON_VALUES: dict[NonValue, Value] = {
    NonValue.UNKNOWN: UNKNOWN,
    NonValue.NOT_FITTED: Value("not fitted", "not fitted"),
    NonValue.NOT_APPLICABLE: Value("not applicable", "not applicable"),
}
NOT_STATED = UNKNOWN
"""A key that was left out where the record may leave it out: nobody said, so it is unknown."""

_VERBS_BY_KIND = {
    "toggle": "Move",
    "rocker": "Press",
    "key": "Turn",
    "rotary switch": "Turn",
    "rotary selector": "Turn",
    "lever": "Move",
    "cock": "Turn",
    "knob": "Move",
    "push-pull": "Move",
    "button": "Press",
    "valve": "Turn",
    "loop": "Pull",
    "tap": "Turn",
}


@dataclass(frozen=True)
class Shown:
    """A type or a tail as pages show it."""

    id: str
    name: str
    tail: str
    airframe: Airframe
    tree: dict[str, Tree]
    overrides: tuple[Override, ...]
    type_id: str
    photos: Mapping[Path, tuple[Photo, ...]] = field(default_factory=dict)
    """Photos by the place on the page that shows them, see ``pages.pictures``."""

    def was(self, path: Path) -> str:
        """What the type says where this tail differs at or below ``path``; "" = no recorded difference.

        Inside a part that was replaced whole only what really changed is told; inside one that was added nothing is
        told again, the part itself says it once.
        """
        for override in self.overrides:
            depth = len(override.at)
            if override.at[: len(path)] == path:
                return "nothing there" if override.kind == "added" else as_text(override.type_says)
            if path[:depth] == override.at and override.kind == "changed":
                before, now = value_at(override.type_says, path[depth:]), value_at(self.tree, path)
                if before != now:
                    return "nothing there" if before is None else as_text(before)
        return ""

    def fact(self, label: str, path: Path, value: Any, *, note: str = "", anchored: bool = False) -> Fact:
        """A labelled answer out of the record at ``path``."""
        told = tell(value, path)
        return Fact(label, told, anchor(path) if anchored else "", self.was(path), note)


def shown_type(type_: Type) -> Shown:
    """A type, as its crew page shows it."""
    return Shown(type_.id, type_.airframe.name, "", type_.airframe, type_.tree, (), type_.id)


def shown_tail(aircraft: Aircraft) -> Shown:
    """A tail, as its crew page shows it."""
    return Shown(
        aircraft.id,
        aircraft.airframe.name,
        aircraft.id,
        aircraft.airframe,
        aircraft.tree,
        aircraft.overrides,
        aircraft.of.id,
    )


def as_text(tree: Tree) -> str:
    """The author's words on one line; a non-value in capitals if it is unknown."""
    return "UNKNOWN" if tree == NonValue.UNKNOWN.value else in_words(tree)


def tell(value: Any, path: Path = ()) -> Value:
    """Any value of a record in words. What is missing is unknown: nobody said."""
    if value is None:
        return NOT_STATED
    if isinstance(value, NonValue):
        return _NON_VALUES[value]
    if isinstance(value, Quantity):
        return tell_quantity(value, path)
    if isinstance(value, Travel):
        return Value(value.text) if value.quantity is None else tell_quantity(value.quantity, path)
    if isinstance(value, Span):
        return Value(value.text)
    if isinstance(value, Place):
        return Value(place_words(value))
    if isinstance(value, dt.time):
        return Value(value.strftime("%H:%M"))
    if isinstance(value, tuple):
        return _listed(value)
    return Value(str(value))


def _listed(values: tuple[Any, ...]) -> Value:
    return Value(", ".join(tell(value).text for value in values)) if values else Value("none listed")


def tell_quantity(quantity: Quantity, path: Path = ()) -> Value:
    """The author's figures first, the conversions beside them, and what is wrong with the pair, if anything."""
    beside = tuple(conversion.text for conversion in shown(quantity, rounding_of(path, quantity.kind)))
    remark = ""
    if quantity.status == "disagree":
        remark = "the two figures disagree" + (f": {quantity.slip}" if quantity.slip else "")
        remark += f"; {quantity.governs.text} governs" if quantity.governs else "; neither was chosen"
    return Value(quantity.text, "said", beside, remark)


def place_words(place: Place | NonValue | None, airframe: Airframe | None = None) -> str:
    """Where it is, for hands: panel, seat, feel, landmark. Stations stay on the planning pages."""
    if place is None or place is NonValue.UNKNOWN:
        return "place UNKNOWN"
    if isinstance(place, NonValue):
        return place.value
    feel = "how it feels: UNKNOWN" if isinstance(place.feel, NonValue) else place.feel or ""
    words = [place.panel or "", feel]
    if not place.feel and place.near:
        words.append(f"near the {place.near}")
    if place.side and not isinstance(place.side, NonValue) and place.side not in " ".join(words):
        words.append({"both": "both sides", "centre": "on the centre line"}.get(place.side, f"{place.side} side"))
    if place.on != "fuselage":
        words.append(f"on the {place.on}")
    if place.seat and airframe and len(airframe.seats) > 1:
        words.append(f"{place.seat} seat")
    told = ", ".join(word for word in words if word)
    return told or "place not told by a landmark"


def way_words(way: str | NonValue | None, seen_from: str | None) -> str:
    """``clockwise, seen facing it`` or ``towards floor``."""
    if isinstance(way, NonValue):
        return "which way: UNKNOWN" if way is NonValue.UNKNOWN else ""
    if way is None:
        return ""
    eye = {"pilot": "as the pilot sees it", "facing it": "facing it", "canopy side": "seen from the canopy side"}
    return f"{way}, {eye[seen_from]}" if seen_from else way


def step_of(step: RecordStep) -> Step:
    """A step of a record as a line of a page."""
    far = f"by {_far(step)}" if step.by is not None and not step.until else ""
    way = ", ".join(piece for piece in (way_words(step.way, step.seen_from), far) if piece)
    end = ", ".join(
        piece
        for piece in (f"until {step.until}" if step.until else "", f"with {step.using}" if step.using else "")
        if piece
    )
    return Step(step.do.capitalize(), step.what, way, end, step.way is NonValue.UNKNOWN)


def _far(step: RecordStep) -> str:
    by = tell(step.by, ("by",))
    return by.text + (f" ({by.beside[0]})" if by.beside else "")


def travels(steps: Iterable[RecordStep] | NonValue) -> str:
    """How far each step goes, for those that end at something felt: the hand waits for that, not for a figure."""
    listed = [] if isinstance(steps, NonValue) else list(steps)
    told = [f"step {at}: {_far(step)}" for at, step in enumerate(listed, start=1) if step.by is not None and step.until]
    return "; ".join(told)


def steps_of(steps: Iterable[RecordStep] | NonValue) -> tuple[Step, ...]:
    """Steps of a record; where they are unknown, the one line that says so."""
    if isinstance(steps, NonValue):
        return (Step("UNKNOWN", "nobody has recorded the steps", unknown=True),)
    return tuple(map(step_of, steps))


def verb_for(kind: str | NonValue) -> str:
    """The verb of a control that records no steps: its one movement."""
    return "Move" if isinstance(kind, NonValue) else _VERBS_BY_KIND[kind]


def several(answers: Iterable[tuple[str, Value]], none: str = "none recorded") -> Value:
    """Several answers in one place, each under its own label; one unknown among them makes the whole unknown."""
    parts = tuple(Labelled(label, value) for label, value in answers)
    if not parts:
        return Value(none)
    text = "; ".join(f"{part.label}: {part.value.text}" for part in parts)
    unknown = any(part.value.state == "unknown" for part in parts)
    return Value(text, "unknown" if unknown else "said", parts=parts)


def folded(facts: Iterable[Fact], *first: str) -> tuple[tuple[Fact, ...], tuple[Fact, ...]]:
    """Facts that stay in view (labelled in ``first``, unknown, or different on this tail) and facts that can wait."""
    told = list(facts)
    seen = [fact for fact in told if fact.label in first or fact.value.state == "unknown" or fact.was]
    return tuple(seen), tuple(fact for fact in told if fact not in seen)


def do_not(words: str | None) -> tuple[tuple[str, Value], ...]:
    """A prohibition as an answer of its own, so that it never reads as an instruction: ``Do NOT: step on the root``."""
    if not words:
        return ()
    return (("Do NOT", Value(re.sub(r"(?i)^(?:do not|don't|never)\b[ :,]*", "", words))),)


def label_of(path: Path) -> str:
    """A path in plain words: ``controls, magneto-left, off is``."""
    return ", ".join(str(part + 1) if isinstance(part, int) else str(part).replace("_", " ") for part in path)
