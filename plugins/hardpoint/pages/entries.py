"""The entries of a line-up as pages show them: which aircraft a number is, and where its crew page is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.pages import addresses
from hardpoint.pages.after import two_signs
from hardpoint.pages.shown import Shown, shown_tail, shown_type
from hardpoint.pages.site import Site
from hardpoint.records.event import Day, Entry
from hardpoint.records.fleet import Aircraft
from hardpoint.records.known import said
from hardpoint.words import say


@dataclass(frozen=True)
class Flown:
    """A number of a day: the tail where it is known, else its type."""

    number: str
    entry: Entry
    shown: Shown
    aircraft: Aircraft | None
    address: str

    @property
    def called(self) -> str:
        """``Tarrowby Bodkin QQ-BOD``."""
        return f"{self.shown.name} {self.shown.tail}".strip()


def flown(site: Site, number: str, entry: Entry) -> Flown:
    """The tail outranks its type; where the tail is unknown the type's page is shown."""
    aircraft = site.fleet.tails.get(str(entry.tail))
    if aircraft:
        return Flown(number, entry, shown_tail(aircraft), aircraft, addresses.tail_page(aircraft.id))
    type_ = site.fleet.types[entry.type]
    return Flown(number, entry, shown_type(type_), None, addresses.type_page(type_.id))


def signs_of(aircraft: Aircraft) -> tuple[str, ...]:
    """Two signs to confirm an aircraft by: a shape of its type, and its own colours, which a caller says first."""
    markings = said(aircraft.tail.markings)
    colours = said(markings.colours) if markings else None
    signs = two_signs(shown_tail(aircraft))
    return (*signs[:1], colours) if colours else signs


def all_flown(site: Site, day: Day) -> tuple[Flown, ...]:
    """Every number of a day, in the order of the line-up."""
    return tuple(flown(site, number, entry) for number, entry in day.entries.items())


def every_day(site: Site, event_id: str) -> Iterator[tuple[str, str, Day]]:
    """Id, name and record of each day of an event."""
    for day_id, day in site.fleet.events[event_id].event.days.items():
        yield day_id, day_name(day_id), day


def day_name(day_id: str) -> str:
    """``saturday`` -> ``Saturday``: the author's own name of the day."""
    return day_id.replace("-", " ").capitalize()


def dated(day_id: str, day: Day) -> str:
    """``Saturday, 2027-06-05``."""
    return say("{day}, {date}", day=day_name(day_id), date=day.date.isoformat())
