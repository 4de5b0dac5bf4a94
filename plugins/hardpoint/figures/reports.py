"""What licensed people reported of rockets and cartridges, and which of them count as live without it.

Nothing here makes a device safe, and nothing here says how that is done: a report is somebody's word for one day.
"""

from __future__ import annotations

from collections.abc import Mapping

from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Day, Entry, Report
from hardpoint.records.known import entries
from hardpoint.records.load_points import Lift
from hardpoint.records.pyrotechnics import Pyrotechnic

NO_REPORT: Mapping[str, Report] = {}


def reports_that_count(entry: Entry, day: Day) -> dict[str, Report]:
    """Reports of the day itself, by the id of the device; one that is older than a swap was of another aircraft."""
    swapped = max(((swap.date, swap.at) for swap in entry.swaps), default=None)
    return {
        name: report
        for name, report in entries(entry.reported).items()
        if report.date == day.date and (swapped is None or (report.date, report.at) > swapped)
    }


def counts_as_live(device: Pyrotechnic, report: Report | None) -> bool:
    """True unless it is recorded as fired or removed, or reported inactive; unknown counts as live."""
    return device.state not in ("fired", "removed") and (report is None or report.state != "inactive")


def refused_while_live(airframe: Airframe, lift: Lift, reports: Mapping[str, Report] = NO_REPORT) -> tuple[str, ...]:
    """Ids of the devices that a lift, or a point of it, waits for and that still count as live; () lets it go on.

    An id that no record knows, or a device of which everything is unknown, still holds the lift back.
    """
    points, fitted = entries(airframe.load_points), entries(airframe.pyrotechnics)
    named = list(lift.not_while_live)
    for id_ in lift.points:
        named += points[id_].not_while_live if id_ in points else ()
    return tuple(
        id_ for id_ in dict.fromkeys(named) if id_ not in fitted or counts_as_live(fitted[id_], reports.get(id_))
    )
