"""Rules about events."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.fuel import fuel_capacity
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Entry
from hardpoint.records.known import said
from hardpoint.rules.nearest import near_miss
from hardpoint.rules.rule import EVENT, Hit, LineUpUnder


def _entries(under: LineUpUnder) -> Iterator[tuple[Path, Entry]]:
    for day_id, day in under.event.days.items():
        for number, entry in day.entries.items():
            yield ("days", day_id, "entries", number), entry


@EVENT.rule(
    "event-number-twice", "error", "A display number stands once on a day: 7 and 07 are one number when shouted."
)
def event_number_twice(under: LineUpUnder) -> Iterator[Hit]:
    """Numbers that are one when spoken; the very same key twice is refused while reading."""
    for day_id, day in under.event.days.items():
        spoken: dict[str, str] = {}
        for number in day.entries:
            plain = number.upper().lstrip("0") or "0"
            if plain in spoken:
                first = spoken[plain]
                yield Hit(
                    ("days", day_id, "entries", number),
                    number,
                    f"a number that is not taken on this day by {first}",
                    "",
                    related=((("days", day_id, "entries", first), "first here"),),
                )
            spoken.setdefault(plain, number)


@EVENT.rule(
    "entry-of-nothing", "error", "An entry names a type and a tail of this fleet, and the tail is of that type."
)
def entry_of_nothing(under: LineUpUnder) -> Iterator[Hit]:
    """Entries whose type or tail does not exist or do not fit together."""
    fleet = under.fleet
    for path, entry in _entries(under):
        if entry.type in fleet.unreadable or entry.tail in fleet.unreadable:
            continue
        if entry.type not in fleet.types:
            yield near_miss((*path, "type"), "type", entry.type, fleet.types)
        tail = said(entry.tail)
        if tail is not None and tail not in fleet.tails:
            yield near_miss((*path, "tail"), "tail", tail, fleet.tails)
        elif tail is not None and fleet.tails[tail].of.id != entry.type:
            of = fleet.tails[tail].of.id
            yield Hit((*path, "tail"), tail, f"a tail of {entry.type}; {tail} is a {of}", "")


@EVENT.rule("more-occupants-than-seats", "warning", "An entry has no more occupants than its type has seats.")
def more_occupants_than_seats(under: LineUpUnder) -> Iterator[Hit]:
    """Entries with more occupants than positions."""
    for path, entry in _entries(under):
        occupants, airframe = said(entry.occupants), _airframe(under, entry)
        if occupants is not None and airframe and occupants > len(airframe.seats):
            seats = len(airframe.seats)
            yield Hit((*path, "occupants"), str(occupants), f"at most {seats}, the seats of {entry.type}", str(seats))


def _airframe(under: LineUpUnder, entry: Entry) -> Airframe | None:
    """The tail outranks its type; where the tail is unknown or cannot be read, the type stands."""
    tail, type_ = under.fleet.tails.get(str(entry.tail)), under.fleet.types.get(entry.type)
    return tail.airframe if tail else type_.airframe if type_ else None


@EVENT.rule("more-fuel-than-tanks", "warning", "The fuel planned fits into the tanks of the type.")
def more_fuel_than_tanks(under: LineUpUnder) -> Iterator[Hit]:
    """Planned fuel above the sum of the engine-fuel tanks, each by its larger reading."""
    for path, entry in _entries(under):
        planned, airframe = said(entry.fuel_planned), _airframe(under, entry)
        capacity = fuel_capacity(airframe) if airframe else None
        if planned is not None and capacity is not None and planned.si[0] > capacity[1] * 1.0005:
            litres = f"{capacity[1] * 1000:.0f} L"
            yield Hit((*path, "fuel_planned"), planned.text, f"at most what the tanks hold, {litres}", litres)


@EVENT.rule("swap-to-the-same", "warning", "A swap changes the tail.")
def swap_to_the_same(under: LineUpUnder) -> Iterator[Hit]:
    """Swaps that name the tail that flies now as the one that was taken out."""
    for path, entry in _entries(under):
        if entry.swaps and entry.swaps[-1].was == entry.tail:
            yield Hit(
                (*path, "swaps", len(entry.swaps) - 1, "was"),
                entry.swaps[-1].was,
                "the tail that was taken out; this one flies now",
                "",
            )
