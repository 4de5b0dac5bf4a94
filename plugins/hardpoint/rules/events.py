"""Rules about events."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from hardpoint.figures.fuel import fuel_capacity
from hardpoint.findings import Path
from hardpoint.records.known import said
from hardpoint.rules.looking import airframe_of, entries_of
from hardpoint.rules.nearest import near_miss
from hardpoint.rules.rule import EVENT, Hit, LineUpUnder


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
    for path, entry in entries_of(under):
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
    for path, entry in entries_of(under):
        occupants, airframe = said(entry.occupants), airframe_of(under, entry)
        if occupants is not None and airframe and occupants > len(airframe.seats):
            seats = len(airframe.seats)
            yield Hit((*path, "occupants"), str(occupants), f"at most {seats}, the seats of {entry.type}", str(seats))


@EVENT.rule("more-fuel-than-tanks", "warning", "The fuel planned fits into the tanks of the type.")
def more_fuel_than_tanks(under: LineUpUnder) -> Iterator[Hit]:
    """Planned fuel above the sum of the engine-fuel tanks, each by its larger reading."""
    for path, entry in entries_of(under):
        planned, airframe = said(entry.fuel_planned), airframe_of(under, entry)
        capacity = fuel_capacity(airframe) if airframe else None
        if planned is not None and capacity is not None and planned.si[0] > capacity[1] * 1.0005:
            litres = f"{capacity[1] * 1000:.0f} L"
            yield Hit((*path, "fuel_planned"), planned.text, f"at most what the tanks hold, {litres}", litres)


@EVENT.rule("swap-to-the-same", "warning", "A swap changes the tail.")
def swap_to_the_same(under: LineUpUnder) -> Iterator[Hit]:
    """Swaps that name the tail that flies now as the one that was taken out."""
    for path, entry in entries_of(under):
        if entry.swaps and entry.swaps[-1].was == entry.tail:
            yield Hit(
                (*path, "swaps", len(entry.swaps) - 1, "was"),
                entry.swaps[-1].was,
                "the tail that was taken out; this one flies now",
                "",
            )


_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


@EVENT.rule("weekday-of-another-date", "warning", "A day that is called after a day of the week falls on that day.")
def weekday_of_another_date(under: LineUpUnder) -> Iterator[Hit]:
    """Days called saturday that are a Sunday: crews open the wrong line-up."""
    for day_id, day in under.event.days.items():
        named = [word for word in day_id.split("-") if word in _WEEKDAYS]
        is_a = _WEEKDAYS[day.date.weekday()]
        if len(named) == 1 and named[0] != is_a:
            wanted = f"a {named[0].capitalize()}; {day.date} is a {is_a.capitalize()}"
            near = min((day.date + dt.timedelta(days=by) for by in range(-3, 4)), key=lambda date: _off(date, named[0]))
            yield Hit(("days", day_id, "date"), str(day.date), wanted, str(near))


def _off(date: dt.date, weekday: str) -> bool:
    return _WEEKDAYS[date.weekday()] != weekday


@EVENT.rule(
    "date-twice", "error", "Each day of an event has a date of its own: display numbers are told apart by their day."
)
def date_twice(under: LineUpUnder) -> Iterator[Hit]:
    """Two days of one date, on which a number could stand twice unseen."""
    first: dict[dt.date, str] = {}
    for day_id, day in under.event.days.items():
        if day.date in first:
            related = ((("days", first[day.date], "date"), "first here"),)
            wanted = f"another date, or its entries under {first[day.date]}"
            yield Hit(("days", day_id, "date"), str(day.date), wanted, related=related)
        first.setdefault(day.date, day_id)


@EVENT.rule("tail-at-two-places", "warning", "An aircraft has one slot at a time.")
def tail_at_two_places(under: LineUpUnder) -> Iterator[Hit]:
    """Tails with two entries on one day at the same time."""
    seen: dict[tuple[object, ...], Path] = {}
    for path, entry in entries_of(under):
        tail, time = said(entry.tail), said(entry.time)
        slot = (path[1], tail, time)
        if tail is not None and time is not None and slot in seen:
            wanted = f"another aircraft or another time; {tail} has this slot as number {seen[slot][-1]}"
            yield Hit((*path, "tail"), tail, wanted, related=(((*seen[slot], "tail"), tail),))
        seen.setdefault(slot, path)


@EVENT.rule(
    "swap-out-of-order", "warning", "Swaps stand in the order in which they were made, none after the day is over."
)
def swap_out_of_order(under: LineUpUnder) -> Iterator[Hit]:
    """Swaps before the one above them or after their day, and packs printed after it."""
    for day_id, day in under.event.days.items():
        printed = said(day.printed)
        if printed is not None and printed.date > day.date:
            wanted = f"a date up to the day itself, {day.date}"
            yield Hit(("days", day_id, "printed", "date"), str(printed.date), wanted)
        for number, entry in day.entries.items():
            before = None
            for index, swap in enumerate(entry.swaps):
                path: Path = ("days", day_id, "entries", number, "swaps", index, "date")
                if swap.date > day.date:
                    yield Hit(path, str(swap.date), f"a date up to the day itself, {day.date}")
                elif before is not None and (swap.date, swap.at) < before:
                    yield Hit(
                        path, f"{swap.date} {swap.at:%H:%M}", "a swap after the one above it: the first stands first"
                    )
                before = (swap.date, swap.at)


@EVENT.rule("nobody-on-board", "warning", "An aircraft in the line-up has somebody on board, or the number is unknown.")
def nobody_on_board(under: LineUpUnder) -> Iterator[Hit]:
    """Entries with no occupants: crews would not look for anybody."""
    for path, entry in entries_of(under):
        if entry.occupants == 0:
            yield Hit((*path, "occupants"), "0", "how many are on board, if need be unknown", "1")
