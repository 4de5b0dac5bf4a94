"""The rules: what no author may publish (errors), and what the world is like (warnings, shown on the gaps page)."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping

from hardpoint.findings import Finding
from hardpoint.records.fleet import Aircraft, Fleet, Type
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
    reports,
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
    reports,
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
    of_types = {type_id: list(_airframe(type_id, type_, fleet, as_of)) for type_id, type_ in fleet.types.items()}
    found = [finding for of_type in of_types.values() for finding in of_type]
    found += [*_tails(fleet, of_types, as_of), *_events(fleet, as_of), *_station(fleet, as_of)]
    return sorted(set(found), key=lambda finding: finding.sort_key)


def _airframe(id_: str, of: Type | Aircraft, fleet: Fleet, as_of: dt.date) -> Iterator[Finding]:
    record = Record(id_, of.airframe, of.tree, of.written, fleet, as_of)
    yield from (finding for rule in AIRFRAME.rules for finding in rule.findings(record))


def _tails(fleet: Fleet, of_types: Mapping[str, list[Finding]], as_of: dt.date) -> Iterator[Finding]:
    """What a tail's differences bring about; what its type has already is told once, at the type."""
    for name, tail in fleet.tails.items():
        under = TailUnder(tail, tail.own, fleet, as_of)
        yield from (finding for rule in TAIL.rules for finding in rule.findings(under))
        known = {(one.rule, one.path, one.message) for one in of_types.get(tail.of.id, [])}
        for finding in _airframe(name, tail, fleet, as_of) if tail.overrides else ():
            if (finding.rule, finding.path, finding.message) not in known:
                yield told_at_tail(finding, tail.own)


def _events(fleet: Fleet, as_of: dt.date) -> Iterator[Finding]:
    for event_id, line_up in fleet.events.items():
        under = LineUpUnder(event_id, line_up.event, line_up.written, fleet, as_of)
        yield from (finding for rule in EVENT.rules for finding in rule.findings(under))


def _station(fleet: Fleet, as_of: dt.date) -> Iterator[Finding]:
    if fleet.house:
        under = StationUnder(fleet.house, fleet.house.written, fleet, as_of)
        yield from (finding for rule in STATION.rules for finding in rule.findings(under))
