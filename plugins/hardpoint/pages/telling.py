"""Telling a record's answers: values in words, conversions beside them, what differs on this tail where it bites."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from hardpoint.figures.safe_side import rounding_of
from hardpoint.findings import Path
from hardpoint.pages.addresses import anchor
from hardpoint.pages.view import Fact, Step, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Aircraft, Override, Type
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.places import Place
from hardpoint.records.quantities import Travel
from hardpoint.records.texts import Span
from hardpoint.records.trees import in_words
from hardpoint.records.ways import Step as RecordStep
from hardpoint.units import Quantity, shown

UNKNOWN = Value("UNKNOWN", "unknown")
NOT_STATED = UNKNOWN
"""A key that was left out where the record may leave it out: nobody said, so it is unknown."""

_VERBS_BY_KIND = {
    "toggle": "Move", "rocker": "Press", "key": "Turn", "rotary switch": "Turn", "rotary selector": "Turn", "lever": "Move",
    "cock": "Turn", "knob": "Move", "push-pull": "Move", "button": "Press", "valve": "Turn", "loop": "Pull", "tap": "Turn",
}  # fmt: skip


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

    def was(self, path: Path) -> str:
        """What the type says where this tail differs at, above or below ``path``; "" = no recorded difference."""
        for override in self.overrides:
            short = min(len(override.at), len(path))
            if override.at[:short] == path[:short]:
                if override.kind == "added":
                    return "nothing there"
                return as_text(override.type_says)
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
        aircraft.id, aircraft.airframe.name, aircraft.id, aircraft.airframe, aircraft.tree, aircraft.overrides, aircraft.of.id
    )


def as_text(tree: Tree) -> str:
    """The author's words on one line; a non-value in capitals if it is unknown."""
    return "UNKNOWN" if tree == NonValue.UNKNOWN.value else in_words(tree)


def tell(value: Any, path: Path = ()) -> Value:
    """Any value of a record in words. What is missing is unknown: nobody said."""
    if value is None:
        return NOT_STATED
    if isinstance(value, NonValue):
        return UNKNOWN if value is NonValue.UNKNOWN else Value(value.value, value.value)
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
    words = [place.panel or "", place.feel or ""]
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
    by = tell(step.by) if step.by is not None else None
    far = "" if by is None else f"by {by.text}" + (f" ({by.beside[0]})" if by.beside else "")
    pieces = [way_words(step.way, step.seen_from), far, f"with {step.using}" if step.using else ""]
    way = ", ".join(piece for piece in pieces if piece)
    return Step(step.do.capitalize(), step.what, way, step.until or "", step.way is NonValue.UNKNOWN)


def steps_of(steps: Iterable[RecordStep] | NonValue) -> tuple[Step, ...]:
    """Steps of a record; where they are unknown, the one line that says so."""
    if isinstance(steps, NonValue):
        return (Step("UNKNOWN", "nobody has recorded the steps", unknown=True),)
    return tuple(map(step_of, steps))


def verb_for(kind: str | NonValue) -> str:
    """The verb of a control that records no steps: its one movement."""
    return "Move" if isinstance(kind, NonValue) else _VERBS_BY_KIND[kind]


def label_of(path: Path) -> str:
    """A path in plain words: ``controls, magneto-left, off is``."""
    return ", ".join(str(part + 1) if isinstance(part, int) else str(part).replace("_", " ") for part in path)
