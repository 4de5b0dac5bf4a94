"""Crew page: what ties the occupant in, where to grip, what must not be pulled."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.pages.addresses import anchor
from hardpoint.pages.pictures import photos_at
from hardpoint.pages.telling import Shown, folded, place_words, steps_of, tell, travels
from hardpoint.pages.view import Block, Fact, Facts, Line, Lines, Section, Steps, Value
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.seats import Seat, Tie
from hardpoint.words import say


def freeing(shown: Shown) -> Section:
    """Per seat: how many ties are recorded, each tie with its steps."""
    blocks: list[Block] = []
    for name, seat in shown.airframe.seats.items():
        blocks.append(Lines((_count(seat), *_lift_out(seat)), anchor(("seats", name)), _seat_title(shown, name, seat)))
        blocks += [*photos_at(shown, ("seats", name)), *_ties(shown, name, seat)]
    return Section("free", "Free the occupant", tuple(blocks), "Free")


def _seat_title(shown: Shown, name: str, seat: Seat) -> str:
    alone = {"flown alone from here": ", flown alone from here", "not flown alone from here": "", "only seat": ""}[
        seat.alone
    ]
    return f"{name.capitalize()} seat{alone}" if len(shown.airframe.seats) > 1 else "Seat"


def _count(seat: Seat) -> Line:
    if isinstance(seat.ties, NonValue):
        return Line("how many ties: nobody has recorded them. Feel for every one.", "UNKNOWN", "unknown")
    number = len(entries(seat.ties))
    ties = "tie" if number == 1 else "ties"
    return Line("feel for more.", f"{number} {ties} recorded;", "plain")


def _lift_out(seat: Seat) -> Iterator[Line]:
    if seat.second_belt is NonValue.UNKNOWN:
        yield Line("whether there is a second belt", "UNKNOWN", "unknown")
    if seat.lift_out:
        yield Line(seat.lift_out, "Lift out:")


def _ties(shown: Shown, seat_name: str, seat: Seat) -> Iterator[Block]:
    for name, tie in entries(seat.ties).items():
        yield _tie(shown, seat_name, name, tie)
    ties = seat.ties
    for name, answer in ties.items() if not isinstance(ties, NonValue) else ():
        if isinstance(answer, NonValue):
            path = ("seats", seat_name, "ties", name)
            yield Facts(anchor(path), "", (shown.fact(name.replace("-", " ").capitalize(), path, answer),))


def _tie(shown: Shown, seat_name: str, name: str, tie: Tie) -> Steps:
    path = ("seats", seat_name, "ties", name)
    kind = tell(tie.kind)
    facts = [shown.fact("Kind", (*path, "kind"), tie.kind)]
    for label, key in (("Frees", "holds"), ("If it is left on", "if_left"), ("It has worked when", "success")):
        if getattr(tie, key) is not None:
            facts.append(shown.fact(label, (*path, key), getattr(tie, key)))
    title = name.replace("-", " ").capitalize()
    if kind.text.lower() == title.lower():
        facts = facts[1:]
    if far := travels(tie.steps):
        facts.append(Fact("How far it moves", Value(far)))
    seen, more = folded(facts, "If it is left on", "It has worked when")
    return Steps(
        anchor(path),
        title,
        place_words(tie.place, shown.airframe),
        steps_of(tie.steps),
        seen,
        more,
        "",
        shown.was(path),
        shown.photos.get(path, ()),
    )


def gripping(shown: Shown) -> Section:
    """Grips, what leaves with the occupant, what must not be pulled."""
    blocks: list[Block] = []
    for name, seat in shown.airframe.seats.items():
        title = f"{name.capitalize()} seat" if len(shown.airframe.seats) > 1 else ""
        lines = (*_grips(seat), *_do_not_pull(shown, name, seat))
        blocks.append(Lines(lines, f"grip-{name}", title))
        blocks.append(Facts(f"worn-{name}", "", _worn(shown, name, seat)))
        blocks += photos_at(shown, ("seats", name, "grip"), say("Photos: grip, kit worn, and what must not be pulled"))
    return Section("grip", "Grip, and do not pull", tuple(blocks), "Grip")


def _grips(seat: Seat) -> Iterator[Line]:
    if isinstance(seat.grip, NonValue):
        yield Line("where to grip", "UNKNOWN", "unknown")
        return
    for grip in seat.grip:
        yield Line(grip, "Grip")


def _do_not_pull(shown: Shown, seat_name: str, seat: Seat) -> Iterator[Line]:
    if seat.do_not_pull is NonValue.UNKNOWN:
        yield Line("what must not be pulled at this seat", "UNKNOWN", "unknown")
    listed = seat.do_not_pull
    for name, handle in listed.items() if not isinstance(listed, NonValue) else ():
        path = ("seats", seat_name, "do_not_pull", name)
        if isinstance(handle, NonValue):
            yield Line(
                name.replace("-", " "), "UNKNOWN, so do not pull:", "unknown", id=anchor(path), was=shown.was(path)
            )
            continue
        where = place_words(handle.place, shown.airframe)
        yield Line(
            f"{handle.what}, {where}: {handle.why}", "Do not pull", "never", id=anchor(path), was=shown.was(path)
        )


def _worn(shown: Shown, seat_name: str, seat: Seat) -> tuple[Fact, ...]:
    path = ("seats", seat_name)
    parachute = said(seat.parachute)
    facts = [
        shown.fact(
            "Parachute",
            (*path, "parachute"),
            seat.parachute
            if parachute is None
            else f"{parachute.worn}; {tell(parachute.lifting).text}; closed by {tell(parachute.straps).text}",
        )
    ]
    if isinstance(seat.worn, NonValue):
        facts.append(shown.fact("Other kit worn", (*path, "worn"), seat.worn))
    for name, worn in seat.worn.items() if not isinstance(seat.worn, NonValue) else ():
        if isinstance(worn, NonValue):
            facts.append(shown.fact(name.replace("-", " ").capitalize(), (*path, "worn", name), worn, anchored=True))
            continue
        words = "; ".join(
            part
            for part in (
                tell(worn.carried).text,
                "" if worn.lifting is None else tell(worn.lifting).text,
                worn.caution or "",
            )
            if part
        )
        facts.append(shown.fact(worn.what, (*path, "worn", name), words, anchored=True))
    facts.append(shown.fact("Second belt", (*path, "second_belt"), seat.second_belt))
    if seat.leg_room is not None:
        facts.append(shown.fact("Legs", (*path, "leg_room"), seat.leg_room))
    return tuple(facts)
