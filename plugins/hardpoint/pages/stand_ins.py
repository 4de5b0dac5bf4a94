"""Crew page, its head: where an aircraft was taken out of a line-up, and where it flies in the place of another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.pages import addresses
from hardpoint.pages.entries import every_day, flown
from hardpoint.pages.site import Site
from hardpoint.pages.terms import label_of, name_words
from hardpoint.pages.view import Line
from hardpoint.records.event import Day, Entry, Swap
from hardpoint.records.fleet import Override
from hardpoint.records.known import NonValue
from hardpoint.words import say


@dataclass(frozen=True)
class _Slot:
    """An entry of a line-up that was swapped, with where the line-up tells it."""

    number: str
    day_name: str
    day: Day
    entry: Entry
    address: str

    def since(self, swap: Swap) -> str:
        """``07:40``; with its date where that is not the day of the slot."""
        at = swap.at.strftime("%H:%M")
        return at if swap.date == self.day.date else f"{swap.date.isoformat()} {at}"


def _swapped(site: Site) -> Iterator[_Slot]:
    for event_id in site.fleet.events:
        for day_id, name, day in every_day(site, event_id):
            for number, entry in day.entries.items():
                if entry.swaps:
                    yield _Slot(number, name, day, entry, f"{addresses.event_page(event_id)}#{day_id}")


def taken_out(site: Site, tail: str, page: str) -> tuple[Line, ...]:
    """Where it was announced and then taken out, for whoever holds the old print; and what flies under its number."""
    found = []
    for slot in _swapped(site):
        swap = next((swap for swap in slot.entry.swaps if swap.was == tail), None)
        if swap and slot.entry.tail != tail:
            names = {"number": slot.number, "day": slot.day_name, "time": slot.since(swap)}
            was = say("Was number {number} on {day}, out since {time}.", **names)
            flies = flown(site, slot.number, slot.entry)
            called = flies.shown.tail or flies.called
            now = say("Number {number} is now {aircraft}.", number=slot.number, aircraft=called)
            found.append(Line(now, was, "caution", addresses.relative(slot.address, page)))
    return tuple(found)


def stands_in(site: Site, type_id: str, tail: str, page: str, numbers: int) -> tuple[Line, ...]:
    """In whose place it flies, and that what was added on that one must not be expected here.

    ``tail`` "": the page of a type, for entries that came in without a registration. ``numbers``: how many numbers
    with their days stand right above; where it is the one, it is not told again.
    """
    found = []
    for slot in _swapped(site):
        came_in = slot.entry.tail == tail if tail else isinstance(slot.entry.tail, NonValue)
        if came_in and slot.entry.type == type_id:
            swap = slot.entry.swaps[-1]
            names = {"number": slot.number, "day": slot.day_name, "tail": swap.was, "time": slot.since(swap)}
            alone = say("In for {tail} since {time}.", tail=swap.was, time=slot.since(swap))
            strong = alone if numbers == 1 else say("Number {number}, {day}: in for {tail} since {time}.", **names)
            gone = list(dict.fromkeys(swap.was for swap in slot.entry.swaps if swap.was != tail))
            told = " ".join(words for was in gone for words in _not_expected(site, was, tail))
            found.append(Line(told, strong, "caution", addresses.relative(slot.address, page)))
    return tuple(found)


def _not_expected(site: Site, was: str, tail: str) -> Iterator[str]:
    """What the tail that is gone has otherwise than its type, as far as this one is not recorded to have it, too."""
    gone, here = site.fleet.tails.get(was), site.fleet.tails.get(tail)
    own = {override.at for override in here.overrides} if here else set()
    differs = [override for override in gone.overrides if override.at not in own] if gone else []
    ways_in = [override for override in differs if _is_way_in(override)]
    if ways_in:
        names = ", ".join(name_words(str(override.at[1])) for override in ways_in)
        yield say("Assume no {what} until seen.", what=names)
    others = [override.at for override in differs if override not in ways_in]
    if others:
        what = "; ".join(dict.fromkeys(name_words(label_of(at, start=min(1, len(at) - 1))) for at in others))
        yield say("Do not expect what {tail} has otherwise: {what}.", tail=was, what=what)


def _is_way_in(override: Override) -> bool:
    return override.kind == "added" and override.at[0] == "exits" and len(override.at) == 2
