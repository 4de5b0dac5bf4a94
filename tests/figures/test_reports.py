"""Which reports on rockets and cartridges count, and what a lift waits for. Whatever is not reported counts as live."""

from __future__ import annotations

from typing import Any

import pytest

from hardpoint.figures.reports import counts_as_live, refused_while_live, reports_that_count
from hardpoint.records.event import Day, Report
from hardpoint.records.known import entries
from tests.figures.test_answers import ROCKET, airframe

INACTIVE = {"state": "inactive", "by": "armourer", "licence": "rockets, class 2", "date": "2027-06-05", "at": "09:10"}
ENTRY = {
    "type": "quenby-merle",
    "tail": "QQ-QMA",
    **dict.fromkeys(("time", "occupants", "fuel_planned", "kit"), "unknown"),
}


def reports(reported: dict[str, Any], **entry: Any) -> dict[str, Report]:
    day = Day.model_validate({"date": "2027-06-05", "entries": {"7": ENTRY | entry | {"reported": reported}}})
    return reports_that_count(day.entries["7"], day)


def test_a_report_of_the_day_counts() -> None:
    assert set(reports({"rocket": INACTIVE, "seat": "unknown"})) == {"rocket"}


@pytest.mark.parametrize("date", ["2027-06-04", "2027-06-06"])
def test_a_report_of_another_day_does_not(date: str) -> None:
    assert reports({"rocket": INACTIVE | {"date": date}}) == {}


@pytest.mark.parametrize(("swapped", "counts"), [("09:00", True), ("09:10", False), ("09:20", False)])
def test_a_report_from_before_a_swap_was_of_another_aircraft(swapped: str, counts: bool) -> None:
    swap = {"was": "QQ-QMB", "date": "2027-06-05", "at": swapped, "by": "event organiser"}
    assert bool(reports({"rocket": INACTIVE}, swaps=[swap])) == counts


@pytest.mark.parametrize(
    ("state", "reported", "live"),
    [
        ("live until reported otherwise", None, True),
        ("live until reported otherwise", "live", True),
        ("live until reported otherwise", "inactive", False),
        ("unknown", None, True),
        ("unknown", "inactive", False),
        ("fired", None, False),
        ("removed", None, False),
    ],
)
def test_what_counts_as_live(state: str, reported: str | None, live: bool) -> None:
    device = entries(airframe(pyrotechnics={"rocket": ROCKET | {"state": state}}).pyrotechnics)["rocket"]
    report = Report.model_validate(INACTIVE | {"state": reported}) if reported else None
    assert counts_as_live(device, report) == live


def test_a_lift_waits_for_what_it_and_its_points_name() -> None:
    plain = airframe()
    pair = plain.lifts["pair"]
    points = entries(plain.load_points)
    waits = points["firewall-pair"].model_copy(update={"not_while_live": ("seat",)})
    devices = airframe(pyrotechnics={"rocket": ROCKET, "seat": ROCKET}).pyrotechnics
    plane = plain.model_copy(update={"pyrotechnics": devices, "load_points": {**points, "firewall-pair": waits}})
    lift = pair.model_copy(update={"not_while_live": ("rocket", "canopy")})
    one = {"rocket": Report.model_validate(INACTIVE)}
    assert refused_while_live(plain, pair) == ()
    assert refused_while_live(plane, lift) == ("rocket", "canopy", "seat")
    assert refused_while_live(plane, lift, one) == ("canopy", "seat")  # "canopy" is in no record: it still holds
    assert refused_while_live(plane, pair, {"seat": Report.model_validate(INACTIVE)}) == ()
