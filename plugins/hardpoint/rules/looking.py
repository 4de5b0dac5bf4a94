"""What rules about line-ups look at: entries, and the aircraft that they are."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Entry
from hardpoint.rules.rule import LineUpUnder


def entries_of(under: LineUpUnder) -> Iterator[tuple[Path, Entry]]:
    """Every entry of every day, with its path."""
    for day_id, day in under.event.days.items():
        for number, entry in day.entries.items():
            yield ("days", day_id, "entries", number), entry


def airframe_of(under: LineUpUnder, entry: Entry) -> Airframe | None:
    """The tail outranks its type; where the tail is unknown or cannot be read, the type stands."""
    tail, type_ = under.fleet.tails.get(str(entry.tail)), under.fleet.types.get(entry.type)
    return tail.airframe if tail else type_.airframe if type_ else None
