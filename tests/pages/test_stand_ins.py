"""An aircraft in the place of another: whom it replaced, when, and what of that one must not be expected."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from hardpoint.pages import Site
from hardpoint.pages.crew import tail_crew_page, type_crew_page
from hardpoint.pages.view import CrewPage, Line
from hardpoint.records.event import Entry
from hardpoint.records.fleet import Fleet
from hardpoint.records.known import NonValue
from tests.pages.sweeps import DAY, FLEET

EVENT = "three-shores-flying-days"


def _fleet(*entries: tuple[str, str, Entry]) -> Fleet:
    """The demo with other entries, each under its day and number."""
    line_up = FLEET.events[EVENT]
    days = dict(line_up.event.days)
    for day, number, entry in entries:
        days[day] = days[day].model_copy(update={"entries": {**days[day].entries, number: entry}})
    event = line_up.event.model_copy(update={"days": days})
    return dataclasses.replace(FLEET, events={EVENT: dataclasses.replace(line_up, event=event)})


def _head(fleet: Fleet, tail: str = "", type_: str = "") -> tuple[Line, ...]:
    site = Site(fleet, (), DAY, DAY.isoformat())
    page = tail_crew_page(site, fleet.tails[tail]) if tail else type_crew_page(site, fleet.types[type_])
    assert isinstance(page.view, CrewPage)
    return page.view.stands_in


def _slot(**changes: Any) -> Entry:
    return FLEET.events[EVENT].event.days["saturday"].entries["3"].model_copy(update=changes)


def test_the_one_that_flies_says_whom_it_replaced_and_expects_no_added_handle() -> None:
    """The demo: QQ-TWB with its outside handle was taken out of Saturday's 3 at 07:40, QQ-TWA flies."""
    (line,) = _head(FLEET, "QQ-TWA")
    assert line.strong == "In for QQ-TWB since 07:40."
    assert line.text == "Assume no outside handle until seen."
    assert line.href.endswith(f"{EVENT}.html#saturday")
    assert [link.text for link in tail_view("QQ-TWA").numbers] == ["3"]


def tail_view(name: str, fleet: Fleet = FLEET) -> CrewPage:
    view = tail_crew_page(Site(fleet, (), DAY, DAY.isoformat()), fleet.tails[name]).view
    assert isinstance(view, CrewPage)
    return view


@pytest.mark.parametrize("name", sorted(set(FLEET.tails) - {"QQ-TWA"}))
def test_nobody_else_stands_in_for_anybody(name: str) -> None:
    assert _head(FLEET, name) == ()


def test_with_several_numbers_it_says_which_and_on_which_day() -> None:
    fleet = _fleet(("sunday", "30", _slot(swaps=())))
    (line,) = _head(fleet, "QQ-TWA")
    assert line.strong == "Number 3, Saturday: in for QQ-TWB since 07:40."


def test_a_swap_of_another_day_has_its_date() -> None:
    swap = _slot().swaps[0]
    fleet = _fleet(("saturday", "3", _slot(swaps=(swap.model_copy(update={"date": DAY.replace(day=4)}),))))
    (line,) = _head(fleet, "QQ-TWA")
    assert line.strong == "In for QQ-TWB since 2027-06-04 07:40."


def test_without_a_registration_the_type_s_page_says_it() -> None:
    fleet = _fleet(("saturday", "3", _slot(tail=NonValue.UNKNOWN)))
    (line,) = _head(fleet, type_="hobmire-twain")
    assert (line.strong, line.text) == ("In for QQ-TWB since 07:40.", "Assume no outside handle until seen.")
    assert _head(FLEET, type_="hobmire-twain") == ()
    assert _head(fleet, type_="tarrowby-bodkin") == ()


def test_other_differences_of_the_one_that_is_gone_are_named() -> None:
    """QQ-BOD, whose magnetos are off the other way, taken out; a tail of its type without that difference flies."""
    flies = dataclasses.replace(FLEET.tails["QQ-BOD"], id="QQ-BOX", overrides=())
    swap = _slot().swaps[0].model_copy(update={"was": "QQ-BOD"})
    entry = (
        FLEET.events[EVENT].event.days["saturday"].entries["7"].model_copy(update={"tail": "QQ-BOX", "swaps": (swap,)})
    )
    fleet = dataclasses.replace(_fleet(("saturday", "7", entry)), tails={**FLEET.tails, "QQ-BOX": flies})
    (line,) = _head(fleet, "QQ-BOX")
    assert line.strong == "In for QQ-BOD since 07:40."
    assert line.text.startswith("Do not expect what QQ-BOD has otherwise: magneto left, off is; magneto right, off is")


def test_what_it_is_recorded_to_have_too_is_expected() -> None:
    gone = FLEET.tails["QQ-TWB"]
    fleet = dataclasses.replace(FLEET, tails={**FLEET.tails, "QQ-TWA": dataclasses.replace(gone, id="QQ-TWA")})
    (line,) = _head(fleet, "QQ-TWA")
    assert (line.strong, line.text) == ("In for QQ-TWB since 07:40.", "")


def test_one_without_a_record_is_named_all_the_same() -> None:
    swap = _slot().swaps[0].model_copy(update={"was": "QQ-ZZZ"})
    (line,) = _head(_fleet(("saturday", "3", _slot(swaps=(swap,)))), "QQ-TWA")
    assert (line.strong, line.text) == ("In for QQ-ZZZ since 07:40.", "")
