"""What licensed people reported of the rockets and cartridges of an entry, and whether it counts for its slot."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.reports import reports_that_count
from hardpoint.pages.telling import tell
from hardpoint.pages.terms import term
from hardpoint.pages.view import Fact, Value
from hardpoint.records.event import Day, Entry
from hardpoint.records.known import NonValue
from hardpoint.words import say


def reported(entry: Entry, day: Day) -> Iterator[Fact]:
    """What was reported of rockets and cartridges; a report of another day or of the aircraft before does not count."""
    counts = reports_that_count(entry, day)
    for name, report in entry.reported.items():
        label = say("Reported: {device}", device=name.replace("-", " "))
        if isinstance(report, NonValue):
            yield Fact(label, tell(report))
            continue
        at = f"{report.date.isoformat()} {report.at:%H:%M}"
        told = {"state": term(report.state), "role": report.by, "licence": report.licence, "time": at}
        words = say("{state}, by {role}, licence: {licence}, {time}", **told)
        if name not in counts:
            words = say("UNKNOWN: this report does not count for this slot ({report})", report=words)
        yield Fact(label, Value(words, "said" if name in counts else "unknown"))
