"""Rules about reports on rockets and cartridges, ways known in part, sides of zones and worn kit without an answer."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.figures.reports import reports_that_count
from hardpoint.records.known import NonValue, entries
from hardpoint.records.places import Route
from hardpoint.rules.looking import airframe_of, entries_of
from hardpoint.rules.nearest import near_miss
from hardpoint.rules.rule import AIRFRAME, EVENT, Hit, LineUpUnder, Record


@EVENT.rule(
    "report-of-nothing",
    "error",
    "A report in a line-up is of a rocket or a cartridge that the aircraft has, by its id.",
)
def report_of_nothing(under: LineUpUnder) -> Iterator[Hit]:
    """Reports under ids that the record of the aircraft does not have under pyrotechnics."""
    for path, entry in entries_of(under):
        airframe = airframe_of(under, entry)
        fitted = entries(airframe.pyrotechnics) if airframe else {}
        for name in entry.reported if airframe else ():
            if name not in fitted:
                yield near_miss((*path, "reported", name), "rocket or cartridge", name, fitted)


@EVENT.rule(
    "report-does-not-count",
    "warning",
    "A report on a rocket or a cartridge is of the day itself and of the aircraft that flies now: made after a swap.",
)
def report_does_not_count(under: LineUpUnder) -> Iterator[Hit]:
    """Reports of another day, or older than the last swap: crews read UNKNOWN there."""
    for path, entry in entries_of(under):
        day = under.event.days[str(path[1])]
        counts = reports_that_count(entry, day)
        for name, report in entries(entry.reported).items():
            if name not in counts:
                at = f"{report.date} {report.at:%H:%M}"
                wanted = f"a report of {day.date}, after the last swap; until then crews read UNKNOWN"
                yield Hit((*path, "reported", name), at, wanted, "unknown")


@AIRFRAME.rule(
    "route-unknown-twice",
    "error",
    "What is unknown of a way (then_unknown) goes on from points that are known; where none is, it is a stretch.",
)
def route_unknown_twice(record: Record) -> Iterator[Hit]:
    """Routes of unknown path with a stretch that goes on from it."""
    for path, part in record.parts:
        if isinstance(part, Route) and part.then_unknown is not None and isinstance(part.path, NonValue):
            read = part.then_unknown.text
            wanted = "points under path before it; where the whole way is unknown, the key stretch"
            yield Hit((*path, "then_unknown"), read, wanted, f"path: unknown, stretch: {read}")


@AIRFRAME.rule(
    "side-that-is-there",
    "error",
    "The canopy side or the floor side of a zone is not applicable only where its band of heights ends short of it.",
)
def side_that_is_there(record: Record) -> Iterator[Hit]:
    """Zones without a band, or with one that is open on that side: there is a skin, and it needs a verdict."""
    for name, zone in entries(record.airframe.zones).items():
        ends = {"top": zone.wl.high if zone.wl else None, "floor": zone.wl.low if zone.wl else None}
        for side, end in ends.items():
            if getattr(zone, side) is NonValue.NOT_APPLICABLE and end is None:
                wanted = "a verdict, or unknown: no band of heights (wl) ends this zone short of that side"
                yield Hit(("zones", name, side), "not applicable", wanted, "unknown")


_FLOATS = re.compile(r"(?i)\b(?:life|buoyancy)[ -]?(?:jackets?|vests?)\b")


@AIRFRAME.rule(
    "inflates-not-said",
    "warning",
    "A life jacket says whether it inflates by itself: in a flooded cabin that holds its wearer inside.",
)
def inflates_not_said(record: Record) -> Iterator[Hit]:
    """Life jackets without the key inflates; unknown is an answer and stands on the page."""
    for seat_name, seat in record.airframe.seats.items():
        for name, kit in entries(seat.worn).items():
            if _FLOATS.search(kit.what) and kit.inflates is None:
                yield Hit(("seats", seat_name, "worn", name), kit.what, "the key inflates", "inflates: unknown")
