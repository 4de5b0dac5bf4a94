"""Telling a record's answers: values in words, conversions beside them, what differs on this tail where it bites."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable
from typing import Any

from hardpoint.figures.safe_side import rounding_of, unit_beside
from hardpoint.findings import Path
from hardpoint.pages.between import place_between
from hardpoint.pages.terms import as_text as as_text
from hardpoint.pages.terms import first_capital, span_words, verb, word
from hardpoint.pages.terms import label_of as label_of
from hardpoint.pages.terms import term as term
from hardpoint.pages.view import Fact, Labelled, Step, Value
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, said
from hardpoint.records.places import Place
from hardpoint.records.quantities import Travel
from hardpoint.records.texts import Span
from hardpoint.records.ways import Step as RecordStep
from hardpoint.units import Quantity, shown
from hardpoint.words import mark, say, say_again, say_count, say_in

_VERBS_BY_KIND = {
    "toggle": "move",
    "rocker": "press",
    "key": "turn",
    "rotary switch": "turn",
    "rotary selector": "turn",
    "lever": "move",
    "cock": "turn",
    "knob": "move",
    "push-pull": "move",
    "button": "press",
    "valve": "turn",
    "loop": "pull",
    "tap": "turn",
}
_SEEN_FROM = {
    "pilot": mark("{way}, as the pilot sees it"),
    "facing it": mark("{way}, facing it"),
    "canopy side": mark("{way}, seen from the canopy side"),
}


def unknown(remark: str = "", note: str = "") -> Value:
    """The answer that nobody has."""
    return Value(say("UNKNOWN"), "unknown", remark=remark, note=note)


def tell(value: Any, path: Path = ()) -> Value:
    """Any value of a record in words. What is missing is unknown: nobody said."""
    if value is None or value is NonValue.UNKNOWN:
        return unknown()
    if isinstance(value, NonValue):
        return Value(term(value), "not fitted" if value is NonValue.NOT_FITTED else "not applicable")
    if isinstance(value, Quantity):
        return tell_quantity(value, path)
    if isinstance(value, Travel):
        return tell_quantity(value.quantity, path) if value.quantity else Value(_turns(value))
    if isinstance(value, Span):
        return Value(span_words(value))
    if isinstance(value, Place):
        return Value(place_words(value))
    if isinstance(value, dt.time):
        return Value(value.strftime("%H:%M"))
    if isinstance(value, tuple):
        return _listed(value)
    return Value(word(value))


def _turns(travel: Travel) -> str:
    return say_count(travel.turns, "{count} turn", "{count} turns") if travel.turns else travel.text


def _listed(values: tuple[Any, ...]) -> Value:
    return Value(", ".join(tell(value).text for value in values)) if values else Value(say("none listed"))


def tell_quantity(quantity: Quantity, path: Path = ()) -> Value:
    """The author's figures first, the conversions beside them, and what is wrong with the pair, if anything.

    Of a pair that disagrees each conversion names the statement it is of; where one governs, the other has none.
    """
    conversions = shown(quantity, rounding_of(path, quantity.kind), unit_beside(path))
    beside = tuple(conversion.text for conversion in conversions)
    remark = ""
    if quantity.status == "disagree":
        beside = tuple(
            say("{stated} is {converted}", stated=conversion.of, converted=conversion.text)
            for conversion in conversions
            if quantity.governs is None or conversion.of == quantity.governs.text
        )
        remark = say("the two figures disagree") + (f": {say_again(quantity.slip)}" if quantity.slip else "")
        governs = quantity.governs
        remark += "; " + (say("{figure} governs", figure=governs.text) if governs else say("neither was chosen"))
    return Value(quantity.text, "said", beside, remark)


def place_words(place: Place | NonValue | None, airframe: Airframe | None = None) -> str:
    """Where it is, for hands: panel, seat, feel, landmark. Stations stay on the planning pages.

    A place of ``airframe`` that has stations alone is told by the landmarks on either side of it.
    """
    if place is None or place is NonValue.UNKNOWN:
        return say("place UNKNOWN")
    if isinstance(place, NonValue):
        return term(place)
    feel = say("how it feels: UNKNOWN") if isinstance(place.feel, NonValue) else place.feel or ""
    words = [place.panel or "", feel]
    if place.near and not said(place.feel):
        words.append(say("near the {landmark}", landmark=place.near))
    if place.side is NonValue.UNKNOWN:
        words.append(say("side UNKNOWN"))
    elif (side := said(place.side)) and not _names(words, side):
        words.append(side_words(side))
    if place.on != "fuselage" and not _names(words, term(place.on)):
        words.append(say("on the {part}", part=term(place.on)))
    if place.seat and airframe and len(airframe.seats) > 1:
        words.append(say("{seat} seat", seat=place.seat))
    if airframe and not (place.panel or place.near or said(place.feel)):
        words.insert(0, place_between(place, airframe))
    told = ", ".join(word for word in words if word)
    return told or say("place not told by a landmark")


def _names(words: list[str], part: str) -> bool:
    return re.search(rf"\b{re.escape(part)}\b", " ".join(words).lower()) is not None


def told_place(place: Place | NonValue | None, airframe: Airframe | None = None) -> Value:
    """A place in words; unknown where nobody knows it, its side or how it feels."""
    asked = (place.side, place.feel) if isinstance(place, Place) else (place,)
    open_ = place is None or NonValue.UNKNOWN in asked
    return Value(place_words(place, airframe), "unknown" if open_ else "said")


def in_full(value: Value) -> str:
    """An answer inside a sentence: with its conversions and with what is wrong with it, never the bare figure."""
    beside = f" ({', '.join(value.beside)})" if value.beside else ""
    return f"{value.text}{beside}" + (f", {value.remark}" if value.remark else "")


def side_words(side: str) -> str:
    """``left side``, ``both sides``, ``on the centre line``."""
    told = {"both": mark("both sides"), "centre": mark("on the centre line")}
    return say(told[side]) if side in told else say("{side} side", side=term(side))


def way_words(way: str | NonValue | None, seen_from: str | None) -> str:
    """``clockwise, seen facing it`` or ``towards floor``."""
    if isinstance(way, NonValue):
        return say("which way: UNKNOWN") if way is NonValue.UNKNOWN else ""
    if way is None:
        return ""
    return say(_SEEN_FROM[seen_from], way=term(way)) if seen_from else term(way)


def step_of(step: RecordStep) -> Step:
    """A step of a record as a line of a page."""
    far = say("by {distance}", distance=_far(step)) if step.by is not None and not step.until else ""
    way = ", ".join(piece for piece in (way_words(step.way, step.seen_from), far) if piece)
    until = say("until {what}", what=step.until) if step.until else ""
    until = f", {until}" if until and way else until
    end = " ".join(piece for piece in (until, f"({step.using})" if step.using else "") if piece)
    open_ = step.way is NonValue.UNKNOWN or (step.by is NonValue.UNKNOWN and not step.until)
    return Step(verb(step.do), step.what, way, end, open_)


def _far(step: RecordStep) -> str:
    return in_full(tell(step.by, ("by",)))


def travels(steps: Iterable[RecordStep] | NonValue) -> Value | None:
    """How far each step goes, for those that end at something felt: the hand waits for that, not for a figure."""
    listed = [] if isinstance(steps, NonValue) else list(steps)
    told = [
        say("step {number}: {distance}", number=at, distance=_far(step))
        for at, step in enumerate(listed, start=1)
        if step.by is not None and step.until
    ]
    open_ = any(step.by is NonValue.UNKNOWN and step.until for step in listed)
    return Value("; ".join(told), "unknown" if open_ else "said") if told else None


def steps_of(steps: Iterable[RecordStep] | NonValue) -> tuple[Step, ...]:
    """Steps of a record; where they are unknown, the one line that says so."""
    if isinstance(steps, NonValue):
        return (Step(say("UNKNOWN"), say("nobody has recorded the steps"), unknown=True),)
    return tuple(map(step_of, steps))


def verb_for(kind: str | NonValue) -> str:
    """The verb of a control that records no steps: its one movement."""
    return first_capital(say_in("step", "move")) if isinstance(kind, NonValue) else verb(_VERBS_BY_KIND[kind])


def several(answers: Iterable[tuple[str, Value]], none: str = "") -> Value:
    """Several answers in one place, each under its own label; one unknown among them makes the whole unknown."""
    parts = tuple(Labelled(label, value) for label, value in answers)
    if not parts:
        return Value(none or say("none recorded"))
    text = "; ".join(f"{part.label}: {part.value.text}" if part.label else part.value.text for part in parts)
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
    return ((say("Do NOT"), Value(re.sub(r"(?i)^(?:do not|don't|never)\b[ :,]*", "", words))),)
