"""Crew page: shut down engine, electrics and fuel; each with what it leaves dangerous."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.drawings.handle import control_sketch
from hardpoint.findings import Path
from hardpoint.pages.addresses import anchor
from hardpoint.pages.pictures import wants_sketch
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import (
    folded,
    in_full,
    several,
    steps_of,
    tell,
    told_place,
    travels,
    unknown,
    verb_for,
    way_words,
)
from hardpoint.pages.terms import name_words, title_of
from hardpoint.pages.vessels import cut_by, way_of
from hardpoint.pages.view import Block, Fact, Facts, Line, Lines, Section, Step, Steps, Tone, Value
from hardpoint.records.controls import Control
from hardpoint.records.electrics import Battery
from hardpoint.records.known import NonValue, said
from hardpoint.records.powerplant import Engine
from hardpoint.words import mark, say

_NO_PROPELLER = (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE)
"""Somebody looked; an unknown propeller counts as one that is there."""
_DOES = {
    "water ballast": mark("{movement} = dumps"),
    "tow release": mark("{movement} = lets go"),
    "airbrakes": mark("{movement} = brakes out"),
}
_WORKS = mark("{movement} = at work")
_ALONE = {"suffices": mark("suffices by itself"), "all needed": mark("not alone: all of them are needed")}


def shutting_down(shown: Shown) -> Section:
    """The controls in the order in which they are worked."""
    controls = shown.airframe.controls
    blocks: list[Block] = [_turning(shown)]
    if isinstance(controls, NonValue):
        blocks.append(Lines((Line(say("how it is shut down: nobody has recorded it"), say("UNKNOWN"), "unknown"),)))
    for name, control in controls.items() if not isinstance(controls, NonValue) else ():
        if isinstance(control, NonValue):
            blocks.append(_not_there(shown, name, control))
        else:
            blocks.append(_control(shown, name, control))
    blocks.append(Facts("batteries", say("Still live afterwards"), _live(shown)))
    return Section("shut-down", say("Shut down"), tuple(blocks), say("Shut down"))


def _not_there(shown: Shown, name: str, answer: NonValue) -> Facts:
    """A control that is not fitted, or that nobody knows of, in its place in the order."""
    path: Path = ("controls", name)
    return Facts(anchor(path), "", (shown.fact(title_of(name), path, answer),))


def _turning(shown: Shown) -> Lines:
    """What still turns, for how long, and what can make it turn again."""
    airframe = shown.airframe
    if airframe.propeller in _NO_PROPELLER and airframe.engine is NonValue.NOT_FITTED:
        return Lines((Line(say("no engine and no propeller recorded on this type")),), "engine")
    engine = said(airframe.engine)
    lines = [] if airframe.propeller in _NO_PROPELLER else [_disc()]
    if airframe.propeller is NonValue.UNKNOWN:
        lines.append(Line(say("whether there is a propeller: keep clear as if there were"), say("UNKNOWN"), "unknown"))
    if engine or airframe.engine is NonValue.UNKNOWN:
        lines.append(_run_down(shown, engine))
    if engine and engine.restarts:
        lines.append(Line(engine.restarts, say("Can start again:"), "caution", was=shown.was(("engine", "restarts"))))
    lines += list(_swung(shown))
    return Lines(tuple(lines), "engine")


def _disc() -> Line:
    text = say("nothing below makes the propeller safe. Keep out of its disc until it is held or off.")
    return Line(text, say("Propeller:"), "caution")


def _run_down(shown: Shown, engine: Engine | None) -> Line:
    told = tell(engine.run_down, ("engine", "run_down")) if engine else unknown()
    tone: Tone = "unknown" if told.state == "unknown" else "plain"
    words = say("turns for {time} after shut-down", time=in_full(told))
    return Line(words, say("Run-down"), tone, was=shown.was(("engine", "run_down"), ("engine", "kind")))


def _swung(shown: Shown) -> Iterator[Line]:
    propeller = said(shown.airframe.propeller)
    was = shown.was(("propeller", "hand_swung"))
    if propeller and propeller.hand_swung == "by hand":
        text = say("it is started by hand and fires at a touch while a magneto is live")
        yield Line(text, say("Propeller:"), "caution", was=was)
    elif propeller and propeller.hand_swung is NonValue.UNKNOWN:
        text = say("whether it is started by hand; assume that it fires at a touch")
        yield Line(text, say("UNKNOWN"), "unknown", was=was)


def _control(shown: Shown, name: str, control: Control) -> Steps:
    path: Path = ("controls", name)
    facts = [
        shown.fact(say("Guard"), (*path, "guard"), control.guard),
        shown.fact(say("Beyond off"), (*path, "beyond_off"), control.beyond_off),
        _alone(shown, path, control),
        shown.fact(say("It has worked when"), (*path, "success"), control.success),
        shown.fact(say("Looks"), (*path, "looks"), control.looks),
    ]
    if control.steps != () and control.off_is is not NonValue.NOT_APPLICABLE:
        facts.insert(0, _off(shown, path, control))
    if far := _far(control):
        facts.append(Fact(say("How far it moves"), far, was=shown.was((*path, "by"))))
    if control.feel is not None:
        facts.append(shown.fact(say("Feels"), (*path, "feel"), control.feel))
    if control.stays_live is not None:
        facts.append(shown.fact(say("Stays live"), (*path, "stays_live"), control.stays_live))
    if control.repeats:
        twin = say("a second one of {control}", control=name_words(control.repeats))
        facts.append(shown.fact(say("Also"), (*path, "repeats"), twin))
    keys = (
        ("steps", "works_by", "place", "kind", "by")
        if control.steps
        else ("off_is", "seen_from", "works_by", "place", "kind", "by")
    )
    was = shown.was(*((*path, key) for key in keys))
    quiet = {
        say("Guard"): control.guard in ("none", NonValue.NOT_FITTED),
        say("Beyond off"): control.beyond_off == "nothing",
        say("Stays live"): control.stays_live == "nothing",
    }
    place = told_place(control.place, shown.airframe)
    first = [label for label, says_nothing in quiet.items() if not says_nothing]
    shown_first = (say("Off is"), say("Idle is"), say("Looks"), say("Feels"), say("Alone"), say("It has worked when"))
    seen, more = folded(facts, *shown_first, *first)
    return Steps(
        anchor(path),
        title_of(name),
        place.text,
        _movement(control),
        seen,
        more,
        "" if shown.airframe.propeller in _NO_PROPELLER else say("Propeller still dangerous."),
        was,
        shown.photos.get(path, ()),
        control_sketch(control) if wants_sketch(shown, path) else "",
        place.state,
    )


def _off(shown: Shown, path: Path, control: Control) -> Fact:
    """Which way is off, beside the steps that go there."""
    way = control.off_is
    value = tell(way) if isinstance(way, NonValue) else Value(way_words(way, control.seen_from))
    label = say("Idle is") if control.function == "throttle" else say("Off is")
    return Fact(label, value, was=shown.was((*path, "off_is"), (*path, "seen_from")))


def _far(control: Control) -> Value | None:
    """How far it moves in all, and how far each step goes that ends at something felt."""
    by_step = travels(control.steps)
    if control.steps == () or control.by is None:
        return by_step
    in_all = tell(control.by, ("by",))
    return several([(say("in all"), in_all), (say("by step"), by_step)]) if by_step else in_all


def _alone(shown: Shown, path: Path, control: Control) -> Fact:
    alone = control.alone
    value = alone if isinstance(alone, NonValue) else say(_ALONE[alone])
    note = say("assume that it does not suffice") if alone is NonValue.UNKNOWN else ""
    return shown.fact(say("Alone"), (*path, "alone"), value, note=note)


def _movement(control: Control) -> tuple[Step, ...]:
    if control.steps != ():
        return steps_of(control.steps)
    kind = say("control, what kind is UNKNOWN") if control.kind is NonValue.UNKNOWN else tell(control.kind).text
    way = control.works_by if control.off_is is NonValue.NOT_APPLICABLE else control.off_is
    if isinstance(way, NonValue) or way is None:
        return (Step(say("UNKNOWN"), say("which way the {control} is off", control=kind), unknown=True),)
    far = in_full(tell(control.by, ("by",))) if control.by is not None else ""
    pieces = [way_words(way, control.seen_from), say("by {distance}", distance=far) if far else ""]
    moved = ", ".join(piece for piece in pieces if piece)
    ends = _DOES.get(control.function, _WORKS) if control.off_is is NonValue.NOT_APPLICABLE else _end(control)
    open_ = NonValue.UNKNOWN in (control.kind, control.by)
    return (Step(verb_for(control.kind), say("the {control}", control=kind), say(ends, movement=moved), unknown=open_),)


def _end(control: Control) -> str:
    """A throttle that is closed leaves the engine idling: it is never called off."""
    return mark("{movement} = idle") if control.function == "throttle" else mark("{movement} = off")


def _live(shown: Shown) -> tuple[Fact, ...]:
    airframe = shown.airframe
    facts = []
    if isinstance(airframe.batteries, NonValue):
        facts.append(shown.fact(say("Batteries"), ("batteries",), airframe.batteries))
    else:
        facts += [
            shown.fact(say("Battery {name}", name=name_words(name)), ("batteries", name), battery, anchored=True)
            if isinstance(battery, NonValue)
            else _battery(shown, name, battery)
            for name, battery in airframe.batteries.items()
        ]
    system = said(airframe.high_voltage)
    told = system.stays_live if system else airframe.high_voltage
    facts.append(shown.fact(say("High voltage"), ("high_voltage", "stays_live"), told))
    return tuple(facts)


def _battery(shown: Shown, name: str, battery: Battery) -> Fact:
    """What stays live first; then what it is, where, and what cuts it off."""
    path: Path = ("batteries", name)
    answers = [
        (say("stays live"), tell(battery.stays_live)),
        (say("where"), told_place(battery.place, shown.airframe)),
        (say("cut off by"), cut_by(battery.cut_by)),
        (say("made of"), tell(battery.chemistry)),
        (say("voltage"), tell(battery.voltage, (*path, "voltage"))),
    ]
    if battery.feeds:
        answers.append((say("feeds"), Value(battery.feeds)))
    if battery.cable is not None:
        answers.append((say("cable"), way_of(battery.cable)))
    return Fact(say("Battery {name}", name=name_words(name)), several(answers), anchor(path), shown.was(path))
