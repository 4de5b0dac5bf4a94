"""Rules about canopies and the ways to open them."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.walk import fields_of
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_WAYS_IN = ("reach in", "break in")


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
