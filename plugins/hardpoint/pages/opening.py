"""Crew page: open."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.drawings.handle import exit_sketch
from hardpoint.pages.addresses import anchor
from hardpoint.pages.pictures import photos_at, wants_sketch
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import folded, several, steps_of, tell, told_place, travels, unknown
from hardpoint.pages.terms import first_capital, name_words, term, title_of
from hardpoint.pages.view import Block, Fact, Facts, Line, Lines, Section, Steps, Value
from hardpoint.records.exits import Canopy, Exit, Holder, Opens
from hardpoint.records.known import NonValue, entries, said
from hardpoint.words import mark, say

_TITLES = {
    "handle": mark("handle, from {side}"),
    "reach in": mark("reach in, from {side}"),
    "jettison": mark("jettison, from {side}"),
    "break in": mark("break in, from {side}"),
    "hinge release": mark("free the hinge, from {side}"),
    "open cockpit": mark("open cockpit, from {side}"),
}
OPENS = {
    "opens": mark("opens"),
    "opens once flooded": mark("opens only once flooded"),
    "opens given the room": mark("opens if there is room"),
    "does not open": mark("does NOT open"),
}
_BY_A_HANDLE = ("handle", "jettison", "hinge release")
"""Ways in that a handle is worked for; a pane, a gap or a cockpit's edge is none, and its looks are its own."""


def opening(shown: Shown) -> Section:
    """Every way in, the first to try first."""
    blocks: list[Block] = []
    exits = shown.airframe.exits
    if isinstance(exits, NonValue):
        blocks.append(Lines((Line(say("how it opens: nobody has recorded it"), say("UNKNOWN"), "unknown"),)))
    for name, exit_ in exits.items() if not isinstance(exits, NonValue) else ():
        blocks.append(_not_there(shown, name, exit_) if isinstance(exit_, NonValue) else _way_in(shown, name, exit_))
    blocks += list(_canopies(shown))
    return Section("open", say("Open"), tuple(blocks), say("Open"), say("left and right: the pilot's"))


def _not_there(shown: Shown, name: str, answer: NonValue) -> Facts:
    """A way in that is not fitted, or that nobody knows of, in its place in the order."""
    path = ("exits", name)
    return Facts(anchor(path), "", (shown.fact(title_of(name), path, answer),))


def exit_title(shown: Shown, exit_: Exit) -> str:
    """What kind of way in, from where; and what it opens, where there are several canopies or doors."""
    how = say(_TITLES[exit_.way_in], side=tell(exit_.from_).text)
    if len(entries(shown.airframe.canopies)) < 2:
        return first_capital(how)
    return say("{opens}: {how}", opens=title_of(exit_.opens), how=how)


def _way_in(shown: Shown, name: str, exit_: Exit) -> Steps:
    path = ("exits", name)
    place = told_place(exit_.place, shown.airframe)
    handle = exit_.way_in in _BY_A_HANDLE
    looks = say("Handle looks") if handle else say("Looks")
    facts = [
        _by_attitude(shown, name, exit_),
        shown.fact(looks, (*path, "looks"), exit_.looks),
        shown.fact(say("Label"), (*path, "label"), exit_.label),
        shown.fact(say("Other side"), (*path, "other_side"), exit_.other_side),
        shown.fact(say("It has worked when"), (*path, "success"), exit_.success),
    ]
    facts += _held(shown, exit_)
    if far := travels(exit_.steps):
        facts.append(Fact(say("How far it moves"), far))
    if exit_.needs:
        facts.append(shown.fact(say("Needs"), (*path, "needs"), exit_.needs))
    for label, key in (
        (say("Latches that it frees"), "latches_released"),
        (say("Pane"), "pane_thickness"),
        (say("Head behind the pane"), "head_clearance"),
        (say("Reach"), "reach"),
        (say("Snags"), "snags"),
        (say("Handle stays on") if handle else say("Stays on"), "stays_on"),
    ):
        if getattr(exit_, key) is not None:
            facts.append(shown.fact(label, (*path, key), getattr(exit_, key)))
    seen, more = folded(
        facts,
        say("Works"),
        looks,
        say("Label"),
        say("Other side"),
        say("Held by"),
        say("It has worked when"),
        say("Needs"),
        say("Head behind the pane"),
        say("Reach"),
        say("Snags"),
    )
    return Steps(
        anchor(path),
        exit_title(shown, exit_),
        place.text,
        steps_of(exit_.steps),
        seen,
        more,
        "",
        shown.was(path) if _is_new(shown, path) else shown.was(*((*path, key) for key in ("from", "place", "steps"))),
        shown.photos.get(path, ()),
        exit_sketch(exit_) if wants_sketch(shown, path) else "",
        "unknown" if "unknown" in (place.state, tell(exit_.from_).state) else "said",
    )


def _is_new(shown: Shown, path: tuple[str, ...]) -> bool:
    return any(override.at == path for override in shown.overrides)


def opens(answer: Opens | NonValue | None) -> Value:
    """Whether a way in opens in an attitude; what nobody said is unknown."""
    told = said(answer)
    if told is None:
        return unknown()
    return Value(say(OPENS[str(told)]), refuses=told == "does not open")


def _by_attitude(shown: Shown, name: str, exit_: Exit) -> Fact:
    works = exit_.works
    asked = (
        (say("upright"), works.upright),
        (say("inverted"), works.inverted),
        (say("left side down"), works.left_side_down),
        (say("right side down"), works.right_side_down),
        (say("afloat"), works.afloat),
        (say("inverted in water"), works.inverted_in_water),
    )
    told = [(attitude, opens(answer)) for attitude, answer in asked]
    if works.room_needed is not None:
        told.append((say("room needed"), tell(works.room_needed, ("exits", name, "works", "room_needed"))))
    value = several(told)
    return Fact(say("Works"), value, was=shown.was(("exits", name, "works")))


def _held(shown: Shown, exit_: Exit) -> Iterator[Fact]:
    """What still holds the canopy once it is open, and what frees it."""
    canopy = entries(shown.airframe.canopies).get(exit_.opens)
    for name, holder in entries(canopy.held_by if canopy else NonValue.NOT_APPLICABLE).items():
        path = ("canopies", exit_.opens, "held_by", name)
        freed = tell(holder.freed_by)
        what = Value(holder.what) if holder.place is None else _held_at(holder, shown)
        yield Fact(say("Held by"), several([(say("what"), what), (say("freed by"), freed)]), was=shown.was(path))


def _held_at(holder: Holder, shown: Shown) -> Value:
    place = told_place(holder.place, shown.airframe)
    return Value(say("{what}, {place}", what=holder.what, place=place.text), place.state)


def _canopies(shown: Shown) -> Iterator[Block]:
    canopies = shown.airframe.canopies
    if isinstance(canopies, NonValue):
        yield Facts("canopies", "", (Fact(say("Canopy"), tell(canopies)),))
        return
    for name, canopy in canopies.items():
        if isinstance(canopy, NonValue):
            yield Facts(anchor(("canopies", name)), "", (Fact(title_of(name), tell(canopy)),))
        else:
            kind = first_capital(term(canopy.kind))
            title = say("{name}: {kind}", name=title_of(name), kind=term(canopy.kind)) if len(canopies) > 1 else kind
            yield Facts(anchor(("canopies", name)), title, _canopy_facts(shown, name, canopy))
            yield from photos_at(shown, ("canopies", name))


def _canopy_facts(shown: Shown, name: str, canopy: Canopy) -> tuple[Fact, ...]:
    asked = (
        (say("Hinges"), "hinges"),
        (say("Latches"), "latches"),
        (say("Weighs"), "mass"),
        (say("Made of"), "material"),
        (say("Thickness"), "thickness"),
        (say("Clear opening"), "clear_opening"),
    )
    facts = [shown.fact(label, ("canopies", name, key), getattr(canopy, key)) for label, key in asked]
    if canopy.frame is not None:
        facts.append(shown.fact(say("Frame"), ("canopies", name, "frame"), canopy.frame))
    if canopy.hinge_release is not None:
        facts.append(shown.fact(say("Hinge freed by"), ("canopies", name, "hinge_release"), _freed_by(canopy)))
    if isinstance(canopy.held_by, NonValue):
        facts.append(shown.fact(say("Struts and lanyards"), ("canopies", name, "held_by"), canopy.held_by))
    return tuple(facts)


def _freed_by(canopy: Canopy) -> Value:
    told = tell(canopy.hinge_release)
    return Value(name_words(told.text), href=f"#{anchor(('exits', told.text))}") if told.state == "said" else told
