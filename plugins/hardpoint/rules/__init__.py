"""The rules: what no author may publish (errors), and what the world is like (warnings, shown on the gaps page)."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator

from hardpoint.findings import Finding
from hardpoint.records.fleet import Fleet
from hardpoint.records.override import told_at_tail
from hardpoint.rules import (
    approach,
    bottles,
    controls,
    cutting,
    devices,
    electrics,
    events,
    exits,
    fluids,
    lifting,
    loads,
    masses,
    opening,
    outline,
    positions,
    powerplant,
    provenance,
    quantities,
    references,
    seats,
    signs,
    slots,
    station,
    tail_lines,
    tails,
    tools,
    wording,
)
from hardpoint.rules.rule import (
    AIRFRAME,
    EVENT,
    STATION,
    TAIL,
    LineUpUnder,
    Record,
    Rule,
    StationUnder,
    TailUnder,
)

__all__ = ["all_rules", "check"]
_MODULES = (
    approach,
    bottles,
    controls,
    cutting,
    devices,
    electrics,
    events,
    exits,
    fluids,
    lifting,
    loads,
    masses,
    opening,
    outline,
    positions,
    powerplant,
    provenance,
    quantities,
    references,
    seats,
    signs,
    slots,
    station,
    tail_lines,
    tails,
    tools,
    wording,
)
AnyRule = Rule[Record] | Rule[LineUpUnder] | Rule[TailUnder] | Rule[StationUnder]


def all_rules() -> tuple[AnyRule, ...]:
    """Every rule, by id; one that stands in several books once."""
    books: list[AnyRule] = [*AIRFRAME.rules, *EVENT.rules, *TAIL.rules, *STATION.rules]
    return tuple(rule for _, rule in sorted({rule.id: rule for rule in reversed(books)}.items()))


def check(fleet: Fleet, as_of: dt.date) -> list[Finding]:
    """Apply every rule to everything that could be read; findings in the contract's order."""
    found = [*_airframes(fleet, as_of), *_tails(fleet, as_of), *_events(fleet, as_of), *_station(fleet, as_of)]
    return sorted(set(found), key=lambda finding: finding.sort_key)


def _airframes(fleet: Fleet, as_of: dt.date) -> Iterator[Finding]:
    for type_id, type_ in fleet.types.items():
        record = Record(type_id, type_.airframe, type_.tree, type_.written, fleet, as_of)
        yield from (finding for rule in AIRFRAME.rules for finding in rule.findings(record))


def _tails(fleet: Fleet, as_of: dt.date) -> Iterator[Finding]:
    """What a tail's differences bring about; what its type has already is told once, at the type."""
    for name, tail in fleet.tails.items():
        under = TailUnder(tail, tail.own, fleet, as_of)
        yield from (finding for rule in TAIL.rules for finding in rule.findings(under))
        if tail.overrides:
            record = Record(name, tail.airframe, tail.tree, tail.written, fleet, as_of)
            of_type = Record(tail.of.id, tail.of.airframe, tail.of.tree, tail.of.written, fleet, as_of)
            yield from (told_at_tail(finding, tail.own) for finding in _new_on_the_tail(record, of_type))


def _new_on_the_tail(record: Record, of_type: Record) -> Iterator[Finding]:
    for rule in AIRFRAME.rules:
        known = {(finding.path, finding.message) for finding in rule.findings(of_type)}
        for finding in rule.findings(record):
            if (finding.path, finding.message) not in known:
                yield finding


def _events(fleet: Fleet, as_of: dt.date) -> Iterator[Finding]:
    for event_id, line_up in fleet.events.items():
        under = LineUpUnder(event_id, line_up.event, line_up.written, fleet, as_of)
        yield from (finding for rule in EVENT.rules for finding in rule.findings(under))


def _station(fleet: Fleet, as_of: dt.date) -> Iterator[Finding]:
    if fleet.house:
        under = StationUnder(fleet.house, fleet.house.written, fleet, as_of)
        yield from (finding for rule in STATION.rules for finding in rule.findings(under))
