"""What a station counts beyond the book's own definition of unfit: its paths, overdue reviews, refused lifts."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping

from hardpoint.figures.fitness import Gap, gaps_that_bite, group_of
from hardpoint.figures.refusals import refusal
from hardpoint.figures.reports import NO_REPORT, refused_while_live
from hardpoint.figures.slots import leads_over_water
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Entry, Report
from hardpoint.records.known import said
from hardpoint.records.load_points import Lift
from hardpoint.records.provenance import Check
from hardpoint.records.station import Station
from hardpoint.records.walk import parts_of
from hardpoint.words import later, mark

OVERDUE = mark("a review is overdue")
REFUSED = mark("every lift is refused")


def gaps_that_count(
    airframe: Airframe,
    station: Station,
    entry: Entry,
    date: dt.date | None = None,
    *,
    reports: Mapping[str, Report] = NO_REPORT,
    own_checks: Mapping[str, Check] | None = None,
) -> tuple[Gap, ...]:
    """Gaps of an entry that only this station counts, besides those of ``fitness.gaps_that_bite``.

    ``date`` is the day of the slot, by which reviews are judged; without one none is overdue. ``own_checks`` are those
    in the file of the aircraft itself: each takes the place of its type's.
    """
    over_water = station.unfit_over_water if leads_over_water(entry) is not False else ()
    also = (*station.unfit_also, *over_water)
    open_ = [gap for gap in gaps_that_bite(airframe, also, reports) if not group_of(gap.path) and gap.path]
    found = [gap for gap in open_ if gap.kind in ("unknown", "conflict")]
    if OVERDUE in station.unfit_when and date is not None:
        found += _overdue(airframe, own_checks or {}, date)
    if REFUSED in station.unfit_when:
        found += _refused(airframe, station, reports)
    return tuple(found)


def _overdue(airframe: Airframe, own_checks: Mapping[str, Check], date: dt.date) -> Iterator[Gap]:
    """Checks whose review was due before the day; those of one aircraft outrank those of its type."""
    checks: dict[Path, Check] = {path: part for path, part in parts_of(airframe) if isinstance(part, Check)}
    checks |= {("checked", str(section)): check for section, check in own_checks.items()}
    for path, check in checks.items():
        review = said(check.review)
        if review is not None and review < date:
            yield Gap(OVERDUE, path, "overdue", review.isoformat())


def _refused(airframe: Airframe, station: Station, reports: Mapping[str, Report]) -> tuple[Gap, ...]:
    """One gap a lift, each with its reason; () where one lift at least is not refused."""
    if not airframe.lifts:
        return (Gap(REFUSED, ("lifts",), "refused", later("no lift is recorded")),)
    reasons = {name: _why(airframe, lift, station, reports) for name, lift in airframe.lifts.items()}
    if not all(reasons.values()):
        return ()
    return tuple(Gap(REFUSED, ("lifts", name), "refused", why) for name, why in reasons.items())


def _why(airframe: Airframe, lift: Lift, station: Station, reports: Mapping[str, Report]) -> str:
    """The first reason against a lift, "" where nothing recorded refuses it."""
    points = airframe.load_points if isinstance(airframe.load_points, dict) else {}
    for id_ in lift.points:
        point = said(points.get(id_))
        if point and (reason := refusal(point, station)):
            return later("{point}: {reason}", point=id_.replace("-", " "), reason=reason)
    live = refused_while_live(airframe, lift, reports)
    return later("{device} counts as live", device=", ".join(live).replace("-", " ")) if live else ""
