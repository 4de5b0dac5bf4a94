"""What a station counts as unfit besides the book's own definition: water, overdue reviews, refused lifts."""

from __future__ import annotations

import datetime as dt
import pathlib
from typing import Any

import pytest

from hardpoint.figures.counted import gaps_that_count
from hardpoint.figures.slots import leads_over_water
from hardpoint.load.documents import read
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Entry
from hardpoint.records.known import NonValue
from hardpoint.records.provenance import Check
from hardpoint.records.station import Station
from tests.examples.fleets import DAY, GOOD, TYPE

NOBODY = {"how": "not checked", "aircraft": "unknown", "by": "safety lead", "date": "2026-03-02"}


def tree(name: str) -> Any:
    document, _ = read(pathlib.Path(GOOD / name), name)
    assert document is not None
    return document.tree


def airframe(**changed: Any) -> Airframe:
    return Airframe.model_validate(tree(TYPE) | changed)


def station(**counts: Any) -> Station:
    return Station.model_validate(tree("station.yaml") | {"unfit_also": []} | counts)


def entry(**said: Any) -> Entry:
    asked = {"type": "quenby-merle", "tail": "QQ-QMA", "time": "12:30", "occupants": "1"}
    return Entry.model_validate(asked | {"fuel_planned": "unknown", "kit": "unknown"} | said)


def told(plane: Airframe, rules: Station, slot: Entry | None = None, **more: Any) -> list[tuple[str, str, str]]:
    gaps = gaps_that_count(plane, rules, slot or entry(), DAY, **more)
    return [(".".join(map(str, gap.path)), gap.kind, gap.says) for gap in gaps]


@pytest.mark.parametrize(
    ("words", "answer"),
    [
        ("whole display over the lake", True),
        ("not over water", False),
        ("No", False),
        ("none of it", False),
        ("note: two passes along the shore", True),
        ("unknown", NonValue.UNKNOWN),
        (None, NonValue.UNKNOWN),
    ],
)
def test_whether_a_slot_leads_over_water(words: str | None, answer: bool | NonValue) -> None:
    assert leads_over_water(entry(over_water=words) if words else entry()) is answer


def test_water_counts_only_for_slots_that_lead_over_it_or_may() -> None:
    water = {"floats": "unknown", "stays_afloat": "an hour", "floods": {}, "tow": "by the nose"}
    plane, rules = airframe(water=water), station(unfit_over_water=["water.floats"])
    found = [("water.floats", "unknown", "")]
    assert told(plane, rules, entry(over_water="over the lake")) == found
    assert told(plane, rules, entry(over_water="unknown")) == found
    assert told(plane, rules, entry()) == found
    assert told(plane, rules, entry(over_water="not over water")) == []
    assert told(plane, station(), entry(over_water="over the lake")) == []


def test_a_section_that_is_unknown_leaves_everything_below_it_open() -> None:
    assert told(airframe(water="unknown"), station(unfit_also=["water.floats"])) == [("water", "unknown", "")]
    assert told(airframe(hazards="unknown"), station(unfit_also=["hazards.*.place"])) == [("hazards", "unknown", "")]


def test_what_the_book_counts_already_is_not_counted_again() -> None:
    assert told(airframe(exits="unknown"), station(unfit_also=["exits"])) == []


def test_a_review_that_is_overdue_on_the_day_of_the_slot() -> None:
    checked = {"water": NOBODY | {"review": "2027-06-04"}, "seats": NOBODY | {"review": "2027-06-05"}}
    plane = airframe(checked=checked, absences={})
    rules = station(unfit_when=["a review is overdue"])
    assert told(plane, rules) == [("checked.water", "overdue", "2027-06-04")]
    assert told(plane, station()) == []
    assert gaps_that_count(plane, rules, entry(), dt.date(2027, 6, 4)) == ()
    looked = Check.model_validate(NOBODY | {"review": "2027-09-01"})
    assert told(plane, rules, own_checks={"water": looked}) == []
    late = Check.model_validate(NOBODY | {"review": "2027-05-01"})
    assert ("checked.fire", "overdue", "2027-05-01") in told(plane, rules, own_checks={"fire": late})


def _lifts(**points: list[str]) -> dict[str, Any]:
    alike = {"tail_line": "not applicable", "states": [["empty"]], "hook": {"above": "2 m"}}
    return {name.replace("_", "-"): alike | {"points": listed} for name, listed in points.items()}


def test_every_lift_refused_names_each_with_its_reason() -> None:
    """One lift that is left is enough; a point of unknown basis refuses a lift (common practice: no basis, no lift)."""
    points = tree(TYPE)["load_points"]
    (good, *_) = [name for name, told in points.items() if isinstance(told, dict) and told.get("basis") == "limit"]
    points = points | {"of-unknown-basis": points[good] | {"basis": "unknown"}}
    rules = station(unfit_when=["every lift is refused"])

    def refused(lifts: dict[str, Any]) -> list[tuple[str, str, str]]:
        return told(airframe(load_points=points, lifts=lifts), rules)

    why = "of unknown basis: its basis is unknown"
    assert refused(_lifts(one=["of-unknown-basis"])) == [("lifts.one", "refused", why)]
    assert refused(_lifts(one=["of-unknown-basis"], other=[good])) == []
    assert refused({}) == [("lifts", "refused", "no lift is recorded")]
    waiting = _lifts(one=[good])
    waiting["one"]["not_while_live"] = ["rocket"]
    assert refused(waiting) == [("lifts.one", "refused", "rocket counts as live")]
