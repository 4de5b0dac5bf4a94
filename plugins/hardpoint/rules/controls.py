"""Rules about controls, exits, seats and signs."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.records.controls import Control
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.sight import Sign
from hardpoint.records.walk import fields_of
from hardpoint.records.ways import opposed
from hardpoint.rules.rule import AIRFRAME, Hit, Record


@AIRFRAME.rule(
    "off-directions-oppose",
    "warning",
    "Two controls of one function do not have opposite off directions: where they do, crews must see it.",
)
def off_directions_oppose(record: Record) -> Iterator[Hit]:
    """Pairs of one function whose off directions are opposite."""
    controls = list(entries(record.airframe.controls).items())
    for index, (name, control) in enumerate(controls):
        for other_name, other in controls[:index]:
            if control.function == other.function and _opposed(control, other):
                yield Hit(
                    ("controls", name, "off_is"),
                    str(control.off_is),
                    f'the same off direction as {other_name} ("{other.off_is}"), or a look at the aircraft',
                    "",
                    message=(
                        f'off is "{control.off_is}" here and "{other.off_is}" at {other_name}, '
                        f"both {control.function}: crews will get one of them wrong"
                    ),
                    related=((("controls", other_name, "off_is"), str(other.off_is)),),
                )


_WAYS_IN = ("reach in", "break in")


def _opposed(one: Control, other: Control) -> bool:
    same_eye = one.seen_from == other.seen_from
    return same_eye and opposed(str(one.off_is), str(other.off_is))


@AIRFRAME.rule(
    "inside-only-without-way-in",
    "warning",
    "A canopy that opens from inside only has a way in recorded: reaching in or breaking in.",
)
def inside_only_without_way_in(record: Record) -> Iterator[Hit]:
    """Canopies with exits, none of them from outside."""
    exits = entries(record.airframe.exits)
    for name in entries(record.airframe.canopies):
        ways = [exit_ for exit_ in exits.values() if exit_.opens == name]
        if ways and all(exit_.from_ == "inside" and exit_.way_in not in _WAYS_IN for exit_ in ways):
            yield Hit(
                ("canopies", name),
                "inside only",
                "an exit with way_in: reach in or break in",
                "way_in: break in",
                message=f"{name} opens from inside only, no way in is recorded; add one, way_in: break in or reach in",
            )


@AIRFRAME.rule("latches-left-closed", "warning", "The steps of an exit release as many latches as the canopy has.")
def latches_left_closed(record: Record) -> Iterator[Hit]:
    """Exits that release fewer latches than there are."""
    canopies = entries(record.airframe.canopies)
    for name, exit_ in entries(record.airframe.exits).items():
        canopy = canopies.get(exit_.opens)
        latches, released = said(canopy.latches) if canopy else None, said(exit_.latches_released)
        if latches is None or released is None or exit_.way_in in ("break in", "hinge release"):
            continue
        if released < latches:
            yield Hit(
                ("exits", name, "latches_released"),
                str(released),
                f"all {latches} latches of {exit_.opens}",
                str(latches),
            )


@AIRFRAME.rule(
    "room-not-stated", "warning", "An exit that opens `given the room` says how much room it needs, if need be unknown."
)
def room_not_stated(record: Record) -> Iterator[Hit]:
    """Exits that need room and do not say how much."""
    for name, exit_ in entries(record.airframe.exits).items():
        works = exit_.works
        if works.room_needed is None and "opens given the room" in [value for _, value in fields_of(works)]:
            yield Hit(
                ("exits", name, "works"), "opens given the room", "the key room_needed beside it", "room_needed: 700 mm"
            )


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


@AIRFRAME.rule(
    "seat-without-exit", "warning", "Every seat is under a canopy with an exit, or in an open cockpit with one."
)
def seat_without_exit(record: Record) -> Iterator[Hit]:
    """Seats that no exit leads to."""
    covered = {name: canopy.covers for name, canopy in entries(record.airframe.canopies).items()}
    reached: set[str] = set()
    for exit_ in entries(record.airframe.exits).values():
        reached.update(covered.get(exit_.opens, (exit_.opens,)))
    for seat in record.airframe.seats:
        if seat not in reached and not isinstance(record.airframe.exits, NonValue):
            yield Hit(
                ("seats", seat),
                seat,
                "an exit that opens what covers this seat",
                "",
                message=(f'no exit leads to the seat "{seat}"; add one, or name the seat under covers of its canopy'),
            )


@AIRFRAME.rule(
    "too-few-signs",
    "warning",
    "A type is confirmed by two signs, one of them a shape: it records at least two upright and one shape.",
)
def too_few_signs(record: Record) -> Iterator[Hit]:
    """Types that cannot be confirmed by two signs."""
    signs = entries(record.airframe.signs)
    upright = [sign for sign in signs.values() if "upright" in sign.visible]
    if len(upright) < 2 or not any(sign.of == "shape" for sign in upright):
        yield Hit(
            ("signs",),
            f"{len(upright)} signs that show upright",
            "at least two, one of them of: shape",
            '{see: "low wing, cropped tips", of: shape, visible: [upright]}',
            message=(
                f"{_how_many(upright)}; a type is confirmed by two signs that show upright, one of them of: shape"
            ),
        )


def _how_many(signs: list[Sign]) -> str:
    count = f"{len(signs)} recorded with visible: upright"
    return count if len(signs) < 2 else f"{count}, none of them of: shape"
