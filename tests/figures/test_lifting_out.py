"""What is lifted with an occupant, and how many ties are recorded."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hardpoint.figures.lifting_out import Range, lift_out_mass
from hardpoint.figures.worked import Figure, Unsaid, Worked
from hardpoint.figures.workings.seats import TOPIC
from tests.figures.changed import GONE, case

MASSES = st.tuples(st.integers(0, 60), st.integers(0, 60)).map(lambda ends: (float(min(ends)), float(max(ends))))
JACKET = {"what": "life jacket", "carried": "over water", "lifting": "leaves with the occupant", "mass": "1.5 kg"}
CHUTE = {"worn": "in the seat", "lifting": "leaves with the occupant", "straps": "three", "mass": "8 kg"}
SEAT = "seats.pilot"
ALONE = {"occupant_mass_includes": GONE}


def _worked(changes: dict[str, Any] | None = None, station: dict[str, Any] | None = None) -> dict[str, Worked]:
    return {figure.id: figure for figure in TOPIC.work(case("kelmarrow-thimble", changes, station))}


def _mass(changes: dict[str, Any] | None = None, station: dict[str, Any] | None = None) -> Range | str:
    found = _worked(changes, station)["seats.pilot.lift_out_mass"]
    if isinstance(found, Unsaid):
        return str(found.reason)
    assert found.rounded == "up"
    return found.value


@given(st.integers(40, 160), st.lists(MASSES, max_size=6), MASSES)
def test_more_that_leaves_is_never_lighter(occupant: int, leaving: list[Range], more: Range) -> None:
    one = lift_out_mass((occupant, occupant), leaving)
    other = lift_out_mass((occupant, occupant), [*leaving, more])
    assert other[0] == pytest.approx(one[0] + more[0])
    assert other[1] == pytest.approx(one[1] + more[1])
    assert occupant <= one[0] <= one[1]


@pytest.mark.parametrize(
    ("occupant", "leaving"),
    [((0, 0), []), ((-1, 90), []), ((90, 80), []), ((90, 90), [(-1, 1)]), ((90, 90), [(2, 1)])],
)
def test_what_is_out_of_range_is_refused(occupant: Range, leaving: list[Range]) -> None:
    with pytest.raises(ValueError, match="mass of"):
        lift_out_mass(occupant, leaving)


def test_what_the_station_s_mass_holds_is_not_counted_twice() -> None:
    assert _mass() == (100, 100)


def test_what_it_does_not_hold_comes_on_top() -> None:
    """8 kg of parachute for sure, 1.5 kg of life jacket over water only."""
    changes = {f"{SEAT}.parachute": CHUTE, f"{SEAT}.worn": {"life-jacket": JACKET}}
    assert _mass(changes, ALONE) == (108, 109.5)
    assert _mass(changes, {"occupant_mass_includes": ["parachute"]}) == (100, 101.5)
    assert _mass(changes, {"occupant_mass_includes": ["kit worn"]}) == (108, 108)
    assert _mass(changes, {"occupant_mass_includes": "unknown"}) == (108, 109.5)


def test_what_stays_with_the_airframe_is_not_lifted_and_what_may_leave_may_be() -> None:
    kit = {f"{SEAT}.worn": "not fitted"}
    assert _mass(kit | {f"{SEAT}.parachute": CHUTE | {"lifting": "stays with the airframe"}}, ALONE) == (100, 100)
    assert _mass(kit | {f"{SEAT}.parachute": CHUTE | {"lifting": "unknown"}}, ALONE) == (100, 108)
    assert _mass(kit | {f"{SEAT}.parachute": "not fitted"}, ALONE) == (100, 100)


def test_two_statements_of_one_mass_are_a_range() -> None:
    assert _mass({}, {"occupant_mass": "100 kg / 240 lb"}) == pytest.approx((100, 108.862), abs=0.01)


@pytest.mark.parametrize(
    ("changes", "reason"),
    [
        ({f"{SEAT}.parachute": "unknown"}, "whether a parachute is worn is unknown"),
        ({f"{SEAT}.parachute": CHUTE | {"mass": "unknown"}}, "the mass of the parachute is unknown"),
        ({f"{SEAT}.worn": "unknown"}, "what else is worn at this seat is unknown"),
        ({f"{SEAT}.worn": {"jacket": "unknown"}}, "the mass of what is worn is unknown: jacket"),
        ({f"{SEAT}.worn": {"jacket": JACKET | {"mass": "unknown"}}}, "the mass of what is worn is unknown: jacket"),
    ],
)
def test_a_mass_that_nobody_knows_is_said(changes: dict[str, Any], reason: str) -> None:
    known = {f"{SEAT}.parachute": CHUTE, f"{SEAT}.worn": {"life-jacket": JACKET}}
    assert _mass(known | changes, ALONE) == reason


@pytest.mark.parametrize("mass", ["unknown", GONE])
def test_a_station_that_has_no_mass_of_an_occupant(mass: Any) -> None:
    assert _mass({}, {"occupant_mass": mass}) == "the station has not stated the mass of an occupant"


def _ties(ties: dict[str, Any]) -> Worked:
    return _worked({f"{SEAT}.{at}": answer for at, answer in ties.items()})["seats.pilot.ties_recorded"]


def test_ties_that_are_recorded() -> None:
    """Demo question 4: a Thimble has 3; one of which nobody knows counts as a fourth."""
    three, four = _ties({}), _ties({"ties.fourth": "unknown", "ties.fifth": "not fitted"})
    assert isinstance(three, Figure)
    assert list(three.value) == [3, 3]
    assert "feel for more" in three.caution
    assert isinstance(four, Figure)
    assert (four.value, four.counts) == ((3, 4), 4)


def test_ties_that_nobody_has_recorded() -> None:
    found = _ties({"ties": "unknown"})
    assert isinstance(found, Unsaid)
    assert found.reason == "nobody has recorded what ties the occupant in"
