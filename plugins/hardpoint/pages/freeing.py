"""Crew page: what ties the occupant in, where to grip, what must not be pulled."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hardpoint.figures.workings.seats import lift_out
from hardpoint.pages.addresses import anchor
from hardpoint.pages.pictures import photos_at
from hardpoint.pages.shown import Shown
from hardpoint.pages.telling import folded, in_full, place_words, several, steps_of, tell, told_place, travels
from hardpoint.pages.terms import first_capital, name_words, title_of
from hardpoint.pages.view import Block, Fact, Facts, Line, Lines, Section, Steps, Value
from hardpoint.pages.workings import told_figure
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.seats import Seat, Tie, Worn
from hardpoint.words import say, say_count


def freeing(shown: Shown) -> Section:
    """Per seat: how many ties are recorded, each tie with its steps."""
    blocks: list[Block] = []
    for name, seat in shown.airframe.seats.items():
        told = (*_beware(name, seat), _count(seat), *_one_head(shown, seat), *_lift_out(shown, name, seat))
        blocks.append(Lines(told, anchor(("seats", name)), _seat_title(shown, name, seat)))
        blocks += [*photos_at(shown, ("seats", name)), *_ties(shown, name, seat)]
    return Section("free", say("Free the occupant"), tuple(blocks), say("Free"))


def _seat_title(shown: Shown, name: str, seat: Seat) -> str:
    if len(shown.airframe.seats) < 2:
        return say("Seat")
    if seat.alone == "flown alone from here":
        return say("{seat} seat, flown alone from here", seat=title_of(name))
    return say("{seat} seat", seat=title_of(name))


def _count(seat: Seat) -> Line:
    if isinstance(seat.ties, NonValue):
        return Line(say("how many ties: nobody has recorded them. Feel for every one."), say("UNKNOWN"), "unknown")
    number = len(entries(seat.ties))
    more = say("feel for more.")
    if number > 1:
        more = say("feel for more. Listed in the order of the record, which need not be the order to work in.")
    return Line(more, say_count(number, "{count} tie recorded;", "{count} ties recorded;"), "plain")


def _beware(name: str, seat: Seat) -> Iterator[Line]:
    """What must not be pulled, and what opens a parachute when the occupant is lifted: again where hands work."""
    for tie_name, tie in entries(seat.ties).items():
        if tie.kind == "static line":
            href = f"#{anchor(('seats', name, 'ties', tie_name))}"
            yield Line(tell(tie.if_left).text, say("Static line off before any lift:"), "never", href)
    for handle_name, handle in entries(seat.do_not_pull).items():
        href = f"#{anchor(('seats', name, 'do_not_pull', handle_name))}"
        yield Line(handle.why, say("Do not pull {what}:", what=handle.what), "never", href)


def _one_head(shown: Shown, seat: Seat) -> Iterator[Line]:
    """Where a single occupant usually sits, which is no proof that the other seats are empty."""
    if len(shown.airframe.seats) > 1 and seat.alone == "flown alone from here":
        yield Line(say("usually this seat; look in every seat."), say("One head in view:"))


def _lift_out(shown: Shown, name: str, seat: Seat) -> Iterator[Line]:
    yield _mass(shown, name, seat)
    if seat.second_belt is NonValue.UNKNOWN:
        yield Line(say("whether there is a second belt"), say("UNKNOWN"), "unknown")
    if seat.lift_out:
        yield Line(seat.lift_out, say("Lift out:"))


def _mass(shown: Shown, name: str, seat: Seat) -> Line:
    """How heavy the occupant is with what leaves with them: for how many hands to call."""
    told = told_figure(lift_out(shown.station, name, seat))
    if told.state == "unknown":
        return Line(told.text, say("Mass to lift out:"), "unknown")
    return Line(
        say("{mass}; {more}.", mass=in_full(replace(told, remark="")), more=told.remark), say("Mass to lift out:")
    )


def _ties(shown: Shown, seat_name: str, seat: Seat) -> Iterator[Block]:
    there = entries(seat.ties)
    for number, (name, tie) in enumerate(there.items(), start=1):
        title = title_of(name)
        if len(there) > 1:
            title = say("{number} of {count}, {tie}", number=number, count=len(there), tie=name_words(name))
        yield replace(_tie(shown, seat_name, name, tie), title=title)
    ties = seat.ties
    for name, answer in ties.items() if not isinstance(ties, NonValue) else ():
        if isinstance(answer, NonValue):
            path = ("seats", seat_name, "ties", name)
            yield Facts(anchor(path), "", (shown.fact(title_of(name), path, answer),))


def _tie(shown: Shown, seat_name: str, name: str, tie: Tie) -> Steps:
    path = ("seats", seat_name, "ties", name)
    kind = tell(tie.kind)
    facts = [shown.fact(say("Kind"), (*path, "kind"), tie.kind)]
    for label, key in (
        (say("Frees"), "holds"),
        (say("If it is left on"), "if_left"),
        (say("It has worked when"), "success"),
    ):
        if getattr(tie, key) is not None:
            facts.append(shown.fact(label, (*path, key), getattr(tie, key)))
    title = title_of(name)
    if kind.text.lower() == title.lower():
        facts = facts[1:]
    if far := travels(tie.steps):
        facts.append(Fact(say("How far it moves"), far))
    seen, more = folded(facts, say("Frees"), say("If it is left on"), say("It has worked when"))
    place = told_place(tie.place, shown.airframe)
    return Steps(
        anchor(path),
        title,
        place.text,
        steps_of(tie.steps),
        seen,
        more,
        "",
        shown.was(path),
        shown.photos.get(path, ()),
        where_state=place.state,
    )


def gripping(shown: Shown) -> Section:
    """Grips, what leaves with the occupant, what must not be pulled."""
    blocks: list[Block] = []
    for name, seat in shown.airframe.seats.items():
        title = say("{seat} seat", seat=title_of(name)) if len(shown.airframe.seats) > 1 else ""
        lines = (*_grips(seat), *_do_not_pull(shown, name, seat))
        blocks.append(Lines(lines, f"grip-{name}", title))
        blocks.append(Facts(f"worn-{name}", "", _worn(shown, name, seat)))
        blocks += photos_at(shown, ("seats", name, "grip"), say("Photos: grip, kit worn, and what must not be pulled"))
    return Section("grip", say("Grip, and do not pull"), tuple(blocks), say("Grip"))


def _grips(seat: Seat) -> Iterator[Line]:
    if isinstance(seat.grip, NonValue):
        yield Line(say("where to grip"), say("UNKNOWN"), "unknown")
        return
    for grip in seat.grip:
        yield Line(grip, say("Grip"))


def _do_not_pull(shown: Shown, seat_name: str, seat: Seat) -> Iterator[Line]:
    if seat.do_not_pull is NonValue.UNKNOWN:
        yield Line(say("what must not be pulled at this seat"), say("UNKNOWN"), "unknown")
    listed = seat.do_not_pull
    for name, handle in listed.items() if not isinstance(listed, NonValue) else ():
        path = ("seats", seat_name, "do_not_pull", name)
        if isinstance(handle, NonValue):
            yield Line(
                name_words(name), say("UNKNOWN, so do not pull:"), "unknown", id=anchor(path), was=shown.was(path)
            )
            continue
        where = place_words(handle.place, shown.airframe)
        yield Line(
            f"{handle.what}, {where}: {handle.why}", say("Do not pull"), "never", id=anchor(path), was=shown.was(path)
        )


def _kept(worn: Worn) -> Iterator[tuple[str, Value]]:
    """Where it is while it is not worn, and whether it inflates."""
    if worn.kept is not None:
        yield say("kept, when not worn"), tell(worn.kept)
    if worn.inflates is not None:
        yield say("inflates"), tell(worn.inflates)


def _worn(shown: Shown, seat_name: str, seat: Seat) -> tuple[Fact, ...]:
    path = ("seats", seat_name)
    facts = [shown.fact(say("Parachute"), (*path, "parachute"), _parachute(seat))]
    if isinstance(seat.worn, NonValue):
        facts.append(shown.fact(say("Other kit worn"), (*path, "worn"), seat.worn))
    for name, worn in seat.worn.items() if not isinstance(seat.worn, NonValue) else ():
        if isinstance(worn, NonValue):
            facts.append(shown.fact(title_of(name), (*path, "worn", name), worn, anchored=True))
            continue
        facts.append(shown.fact(first_capital(worn.what), (*path, "worn", name), _kit(worn), anchored=True))
    facts.append(shown.fact(say("Second belt"), (*path, "second_belt"), seat.second_belt))
    if seat.leg_room is not None:
        facts.append(shown.fact(say("Legs"), (*path, "leg_room"), seat.leg_room))
    if seat.head_to_canopy is not None:
        facts.append(shown.fact(say("Helmet to canopy"), (*path, "head_to_canopy"), seat.head_to_canopy))
    facts.append(shown.fact(say("The seat is at"), (*path, "place"), told_place(seat.place)))
    return tuple(facts)


def _parachute(seat: Seat) -> Value:
    parachute = said(seat.parachute)
    if parachute is None:
        return tell(seat.parachute)
    return several(
        (
            (say("worn"), tell(parachute.worn)),
            (say("when lifted"), tell(parachute.lifting)),
            (say("straps"), tell(parachute.straps)),
        )
    )


def _kit(worn: Worn) -> Value:
    answers = [(say("worn"), tell(worn.carried)), *_kept(worn)]
    if worn.lifting is not None:
        answers.append((say("when lifted"), tell(worn.lifting)))
    if worn.caution:
        answers.append((say("caution"), Value(worn.caution)))
    return several(answers)
