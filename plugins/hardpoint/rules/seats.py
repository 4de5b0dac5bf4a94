"""Rules about seats: what ties an occupant in, what must not be pulled, what is worn."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.records.known import NonValue, entries, said
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_SECOND_BELTS = ("ratchet belt", "second lap latch", "single lap belt")


@AIRFRAME.rule("second-belt-denied", "warning", "`second_belt` does not deny a second belt that stands among the ties.")
def second_belt_denied(record: Record) -> Iterator[Hit]:
    """Seats whose ties hold a second belt while second_belt says that there is none."""
    for seat_name, seat in record.airframe.seats.items():
        belts = [name for name, tie in entries(seat.ties).items() if tie.kind in _SECOND_BELTS]
        words = str(seat.second_belt)
        denied = (isinstance(seat.second_belt, NonValue) and words != "unknown") or re.search(r"\b(?:none|no)\b", words)
        if len(entries(seat.ties)) > 1 and belts and denied:
            yield Hit(
                ("seats", seat_name, "second_belt"),
                words,
                f"what the ties say: {belts[0]} is a second belt",
                "fitted, ratchet belt",
            )


_HANDLES = ("rocket parachute", "seat cartridge", "canopy cartridge")


@AIRFRAME.rule(
    "do-not-pull-denied",
    "error",
    "Where a rocket or a cartridge has a handle, no seat near it says that nothing is there that must not be pulled.",
)
def do_not_pull_denied(record: Record) -> Iterator[Hit]:
    """Seats with `do_not_pull: not fitted` beside a device of theirs, or one that belongs to no single seat."""
    devices = entries(record.airframe.pyrotechnics).items()
    fitted = [(name, device) for name, device in devices if device.kind in _HANDLES and device.state != "removed"]
    for seat_name, seat in record.airframe.seats.items():
        near = [name for name, device in fitted if device.seat in (None, seat_name)]
        if near and seat.do_not_pull in (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE):
            related = tuple((("pyrotechnics", name, "handle"), name) for name in near)
            wanted = f"the handle of {', '.join(near)} among what must not be pulled"
            yield Hit(("seats", seat_name, "do_not_pull"), str(seat.do_not_pull), wanted, related=related)


_RIPCORD = re.compile(r"(?i)rip[ -]?cord|parachute|\bD[ -]ring|opens")


@AIRFRAME.rule(
    "ripcord-not-named",
    "warning",
    "A seat with a parachute names the ripcord among what must not be pulled; not where static line or seat opens it.",
)
def ripcord_not_named(record: Record) -> Iterator[Hit]:
    """Seats with a parachute whose do_not_pull is answered without a ripcord."""
    devices = entries(record.airframe.pyrotechnics).values()
    fired = {device.seat for device in devices if device.kind == "seat cartridge"}
    for name, seat in record.airframe.seats.items():
        by_itself = name in fired or any(tie.kind == "static line" for tie in entries(seat.ties).values())
        if said(seat.parachute) is None or seat.do_not_pull is NonValue.UNKNOWN or by_itself:
            continue
        told = " ".join(f"{id_} {handle.what} {handle.why}" for id_, handle in entries(seat.do_not_pull).items())
        if not _RIPCORD.search(told.replace("-", " ")):
            wanted = "the ripcord: a parachute is recorded, and nothing says not to pull its handle"
            read = str(seat.do_not_pull) if isinstance(seat.do_not_pull, NonValue) else ", ".join(seat.do_not_pull)
            yield Hit(("seats", name, "do_not_pull"), read, wanted)


@AIRFRAME.rule(
    "grip-on-what-stays",
    "warning",
    "Nobody is gripped by a parachute that stays with the airframe: it stays on the occupant, or is no grip.",
)
def grip_on_what_stays(record: Record) -> Iterator[Hit]:
    """Grips on the parachute of a seat whose parachute is said to stay behind."""
    for name, seat in record.airframe.seats.items():
        parachute = said(seat.parachute)
        for index, grip in enumerate(said(seat.grip) or ()):
            if parachute and parachute.lifting == "stays with the airframe" and "parachute" in grip.lower():
                related = ((("seats", name, "parachute", "lifting"), parachute.lifting),)
                wanted = 'another grip; or, if it stays on the occupant, "lifting: leaves with the occupant"'
                yield Hit(("seats", name, "grip", index), grip, wanted, related=related)


@AIRFRAME.rule(
    "alone-contradicted",
    "warning",
    "One seat is the `only seat`; of several none is, and at least one is flown alone from.",
)
def alone_contradicted(record: Record) -> Iterator[Hit]:
    """Answers to `alone` that do not fit the number of seats."""
    seats = record.airframe.seats
    for name, seat in seats.items():
        if (seat.alone == "only seat") != (len(seats) == 1):
            wanted = "only seat" if len(seats) == 1 else f"another answer: there are {len(seats)} seats"
            yield Hit(("seats", name, "alone"), seat.alone, wanted)
    if len(seats) > 1 and all(seat.alone == "not flown alone from here" for seat in seats.values()):
        message = "no seat is flown alone from; a single occupant sits somewhere, so one of them is"
        yield Hit(("seats",), "not flown alone from here", "one seat that is", message=message)


_NO_BELTS = ("helmet lead", "air hose", "oxygen hose", "anti-g hose", "static line", "leg line", "lanyard")


@AIRFRAME.rule("no-belt-recorded", "warning", "Among the ties of a seat is a belt: whoever sits there is strapped in.")
def no_belt_recorded(record: Record) -> Iterator[Hit]:
    """Seats whose ties are answered and hold nothing but leads and hoses."""
    for name, seat in record.airframe.seats.items():
        if isinstance(seat.ties, NonValue) or NonValue.UNKNOWN in seat.ties.values():
            continue
        ties = entries(seat.ties)
        if all(tie.kind in _NO_BELTS for tie in ties.values()):
            wanted = "a belt or a harness among the ties, if need be as unknown"
            yield Hit(("seats", name, "ties"), ", ".join(ties), wanted, "harness: unknown")


@AIRFRAME.rule(
    "left-on-not-said",
    "warning",
    "A static line, a lanyard and a leg line say what happens if they are left on and the occupant is lifted.",
)
def left_on_not_said(record: Record) -> Iterator[Hit]:
    """Lines that pull something when the occupant leaves, without if_left."""
    for name, seat in record.airframe.seats.items():
        for id_, tie in entries(seat.ties).items():
            if tie.kind in ("static line", "lanyard", "leg line") and tie.if_left is None:
                wanted = "the key if_left: what it does when the occupant is lifted, if need be unknown"
                yield Hit(("seats", name, "ties", id_), str(tie.kind), wanted, "if_left: opens the parachute")


@AIRFRAME.rule(
    "air-from-nowhere",
    "warning",
    "Where an occupant breathes from a hose or a bottle that is worn, that bottle stands under bottles.",
)
def air_from_nowhere(record: Record) -> Iterator[Hit]:
    """Air and oxygen hoses, and worn bottles, of an airframe that says it has no such bottle."""
    bottles = record.airframe.bottles
    open_ = not isinstance(bottles, NonValue) and NonValue.UNKNOWN in bottles.values()
    if bottles is NonValue.UNKNOWN or open_:
        return
    if any(bottle.use in ("breathing air", "oxygen") for bottle in entries(bottles).values()):
        return
    for name, seat in record.airframe.seats.items():
        ties = [(("ties", id_), str(tie.kind)) for id_, tie in entries(seat.ties).items()]
        worn = [(("worn", id_), kit.what) for id_, kit in entries(seat.worn).items()]
        for path, what in (*ties, *worn):
            if re.search(r"(?i)\b(?:air|oxygen)[ -](?:hose|bottle)", what):
                wanted = "its bottle under bottles; none for breathing air or oxygen is recorded"
                yield Hit(("seats", name, *path), what, wanted)
