"""Crew page: shut down engine, electrics and fuel; each with what it leaves dangerous."""

from __future__ import annotations

from hardpoint.drawings.handle import control_sketch
from hardpoint.findings import Path
from hardpoint.pages.addresses import anchor
from hardpoint.pages.pictures import wants_sketch
from hardpoint.pages.telling import (
    Shown,
    folded,
    place_words,
    steps_of,
    tell,
    travels,
    verb_for,
    way_words,
)
from hardpoint.pages.view import Block, Fact, Facts, Line, Lines, Section, Step, Steps, Value
from hardpoint.records.controls import Control
from hardpoint.records.known import NonValue, entries, said
from hardpoint.words import mark, say

_NO_PROPELLER = (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE)
"""Somebody looked; an unknown propeller counts as one that is there."""
_ALONE = {"suffices": mark("suffices by itself"), "all needed": mark("not alone: all of them are needed")}


def shutting_down(shown: Shown) -> Section:
    """The controls in the order in which they are worked."""
    controls = shown.airframe.controls
    blocks: list[Block] = [_turning(shown)]
    if isinstance(controls, NonValue):
        blocks.append(Lines((Line(say("how it is shut down: nobody has recorded it"), say("UNKNOWN"), "unknown"),)))
    for name, control in entries(controls).items():
        blocks.append(_control(shown, name, control))
    blocks.append(Facts("batteries", say("Still live afterwards"), _live(shown)))
    return Section("shut-down", say("Shut down"), tuple(blocks), say("Shut down"))


def _turning(shown: Shown) -> Lines:
    airframe = shown.airframe
    if airframe.propeller is NonValue.NOT_FITTED and airframe.engine is NonValue.NOT_FITTED:
        return Lines((Line(say("no engine and no propeller recorded on this type")),))
    engine = said(airframe.engine)
    told = tell(engine.run_down) if engine else tell(NonValue.UNKNOWN)
    lines = [
        Line(
            say("nothing below makes the propeller safe. Keep out of its disc until it is held or off."),
            say("Propeller:"),
            "caution",
        )
    ]
    if said(airframe.propeller) is not None or engine is None:
        lines.append(
            Line(
                say("turns for {time} after shut-down", time=told.text),
                say("Run-down"),
                "unknown" if told.state == "unknown" else "plain",
            )
        )
    if engine and engine.restarts:
        lines.append(Line(engine.restarts, say("Can start again:"), "caution"))
    propeller = said(airframe.propeller)
    if propeller and propeller.hand_swung == "by hand":
        lines.append(
            Line(
                say("it is started by hand and fires at a touch while a magneto is live"), say("Propeller:"), "caution"
            )
        )
    return Lines(tuple(lines))


def _control(shown: Shown, name: str, control: Control) -> Steps:
    path: Path = ("controls", name)
    facts = [
        shown.fact(say("Guard"), (*path, "guard"), control.guard),
        shown.fact(say("Beyond off"), (*path, "beyond_off"), control.beyond_off),
        _alone(shown, path, control),
        shown.fact(say("It has worked when"), (*path, "success"), control.success),
        shown.fact(say("Looks"), (*path, "looks"), control.looks),
    ]
    if far := travels(control.steps):
        facts.append(Fact(say("How far it moves"), Value(far)))
    if control.feel is not None:
        facts.append(shown.fact(say("Feels"), (*path, "feel"), control.feel))
    if control.stays_live is not None:
        facts.append(shown.fact(say("Stays live"), (*path, "stays_live"), control.stays_live))
    if control.repeats:
        twin = say("a second one of {control}", control=control.repeats.replace("-", " "))
        facts.append(shown.fact(say("Also"), (*path, "repeats"), twin))
    was = shown.was((*path, "off_is")) or shown.was((*path, "steps"))
    quiet = {
        say("Guard"): control.guard in ("none", NonValue.NOT_FITTED),
        say("Beyond off"): control.beyond_off == "nothing",
        say("Stays live"): control.stays_live == "nothing",
    }
    first = [label for label, says_nothing in quiet.items() if not says_nothing]
    seen, more = folded(facts, say("Alone"), say("It has worked when"), *first)
    return Steps(
        anchor(path),
        name.replace("-", " ").capitalize(),
        place_words(control.place, shown.airframe),
        _movement(control),
        seen,
        more,
        "" if shown.airframe.propeller in _NO_PROPELLER else say("Propeller still dangerous."),
        was,
        shown.photos.get(path, ()),
        control_sketch(control) if wants_sketch(shown, path) else "",
    )


def _alone(shown: Shown, path: Path, control: Control) -> Fact:
    alone = control.alone
    value = alone if isinstance(alone, NonValue) else say(_ALONE[alone])
    note = say("assume that it does not suffice") if alone is NonValue.UNKNOWN else ""
    return shown.fact(say("Alone"), (*path, "alone"), value, note=note)


def _movement(control: Control) -> tuple[Step, ...]:
    if control.steps != ():
        return steps_of(control.steps)
    kind = tell(control.kind).text
    way = control.works_by if control.off_is is NonValue.NOT_APPLICABLE else control.off_is
    if isinstance(way, NonValue) or way is None:
        return (Step(say("UNKNOWN"), say("which way the {control} is off", control=kind), unknown=True),)
    far = tell(control.by).text if control.by is not None else ""
    pieces = [way_words(way, control.seen_from), say("by {distance}", distance=far) if far else ""]
    moved = ", ".join(piece for piece in pieces if piece)
    does = say("{movement} = works", movement=moved)
    off = say("{movement} = off", movement=moved)
    ends = does if control.off_is is NonValue.NOT_APPLICABLE else off
    return (Step(verb_for(control.kind), say("the {control}", control=kind), ends),)


def _live(shown: Shown) -> tuple[Fact, ...]:
    airframe = shown.airframe
    facts = []
    if isinstance(airframe.batteries, NonValue):
        facts.append(shown.fact(say("Batteries"), ("batteries",), airframe.batteries))
    for name, battery in entries(airframe.batteries).items():
        place = place_words(battery.place, airframe)
        facts.append(
            shown.fact(
                say("Battery {name}", name=name),
                ("batteries", name, "stays_live"),
                battery.stays_live,
                note=place,
                anchored=True,
            )
        )
    system = said(airframe.high_voltage)
    told = system.stays_live if system else airframe.high_voltage
    facts.append(shown.fact(say("High voltage"), ("high_voltage", "stays_live"), told))
    return tuple(facts)
