"""What a state is made of: what is added, what is taken off, and what cannot be said."""

from __future__ import annotations

from typing import Any

import pytest

from hardpoint.figures.loads import State, state_of
from hardpoint.figures.worked import Case, MissingError
from hardpoint.load import fleet as read_fleet
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Fleet
from hardpoint.records.load_points import Condition
from tests.site.support import FLEET


@pytest.fixture(scope="module")
def fleet() -> Fleet:
    return read_fleet(FLEET)


def _state(fleet: Fleet, type_id: str, *conditions: Condition, off: tuple[str, ...] = (), entry: str = "") -> State:
    assert fleet.house
    day = fleet.events["three-shores-flying-days"].event.days["saturday"]
    slot = day.entries[entry] if entry else None
    case = Case(fleet.types[type_id].airframe, fleet.house.station, slot, day if slot else None)
    return state_of(case, conditions, off)


def _mass(state: State) -> tuple[float, float]:
    assert not isinstance(state.mass, MissingError), state.mass
    return state.mass


def _station(state: State) -> tuple[float, float]:
    assert not isinstance(state.station, MissingError), state.station
    return state.station


def test_empty_is_what_the_record_says(fleet: Fleet) -> None:
    state = _state(fleet, "hobmire-twain", "empty")
    assert _mass(state) == pytest.approx((560, 560), abs=0.5)
    assert _station(state) == pytest.approx((1.94, 1.94))


def test_full_tanks_by_the_published_mass_of_avgas(fleet: Fleet) -> None:
    """Two tanks of 70 L: 140 L at 6 lb per US gal (FAA-H-8083-30, R) are 100.66 kg by hand."""
    state = _state(fleet, "hobmire-twain", "full fuel")
    least, most = _mass(state)
    assert most - 560 == pytest.approx(100.66, abs=0.6)
    assert least == pytest.approx(most, abs=0.5)
    assert state.sources == ("faa-h-8083-30",)


def test_fuel_that_nobody_planned_lies_between_none_and_full(fleet: Fleet) -> None:
    low, high = _mass(_state(fleet, "hobmire-twain", "fuelled as planned"))
    assert (round(low), round(high)) == (560, 661)


def test_fuel_as_planned_for_the_slot(fleet: Fleet) -> None:
    """80 L at 6 lb per US gal: 57.5 kg by hand."""
    low, high = _mass(_state(fleet, "hobmire-twain", "fuelled as planned", entry="3"))
    assert high - 560 == pytest.approx(57.5, abs=0.6)
    assert low == pytest.approx(high, abs=0.5)


def test_smoke_oil_counts_between_none_and_full(fleet: Fleet) -> None:
    """45 L of 0.86 kg/L: 38.7 kg at most."""
    low, high = _mass(_state(fleet, "vostrelle-jinx", "fuelled as planned", entry="1"))
    assert high - low == pytest.approx(38.7, abs=0.5)


def test_wings_off_takes_the_panels_and_the_water_in_them(fleet: Fleet) -> None:
    state = _state(fleet, "aldermoss-hushwing", "wings off", off=("wings",))
    assert _mass(state) == (160, 160)
    empty, panels = 290 * 2.50, 130 * 2.45
    assert _station(state)[0] == pytest.approx((empty - panels) / 160)


def test_flooded_reaches_from_drained_to_full(fleet: Fleet) -> None:
    """640 L and 380 L of fresh water at 8.35 lb per US gal: 1020.6 kg by hand."""
    low, high = _mass(_state(fleet, "hobmire-twain", "flooded"))
    assert low == pytest.approx(560, abs=0.5)
    assert high == pytest.approx(560 + 1020.6, abs=1)


def test_a_bay_that_nobody_measured_makes_the_state_unsaid_but_the_rest_is_known(fleet: Fleet) -> None:
    state = _state(fleet, "brinemarsh-coble", "flooded")
    assert isinstance(state.mass, MissingError)
    assert str(state.mass.reason) == "how much water the bay wing floats takes is unknown"
    assert state.mass.path == ("water", "floods", "wing-floats")
    assert state.known[1] == pytest.approx(860 + 620 * 1.0005, abs=0.5)


def test_two_in_two_seats_sit_where_the_seats_are(fleet: Fleet) -> None:
    both = _state(fleet, "hobmire-twain", "occupants and kit", entry="3")
    assert _mass(both) == pytest.approx((760, 760), abs=0.5)
    one = _state(fleet, "hobmire-twain", "occupants and kit")
    assert _mass(one) == pytest.approx((660, 760), abs=0.5)
    assert _station(one)[0] < _station(both)[0] <= _station(both)[1] < _station(one)[1]


@pytest.mark.parametrize(
    ("path", "conditions", "reason"),
    [
        (("masses", "empty"), ("empty",), "the empty mass is unknown"),
        (("masses", "empty_cg"), ("empty",), "the station of the empty centre of gravity is unknown"),
        (("tanks",), ("full fuel",), "which tanks it has is unknown"),
        (("tanks", "wing", "capacity"), ("full fuel",), "the capacity of the tank wing is unknown"),
        (("tanks", "wing", "holds"), ("full fuel",), "what the tank wing holds is unknown"),
        (("water", "floods"), ("flooded",), "how much water it takes is unknown"),
        (("masses", "items"), ("wings off",), "the masses of its parts are unknown"),
    ],
)
def test_what_is_unknown_is_the_reason(
    fleet: Fleet, path: tuple[str, ...], conditions: tuple[Condition, ...], reason: str
) -> None:
    tree: Any = fleet.types["hobmire-twain"].airframe.model_copy(deep=True)
    altered = _with_unknown(tree, path)
    state = state_of(Case(altered, fleet.house.station if fleet.house else None), conditions)
    missing = state.mass if isinstance(state.mass, MissingError) else state.station
    assert isinstance(missing, MissingError)
    assert str(missing.reason) == reason
    assert missing.path[: len(path)] == path


def _with_unknown(part: Any, path: tuple[str, ...]) -> Airframe:
    """A copy of the record that says unknown at ``path``."""
    from hardpoint.records.known import NonValue

    key, rest = path[0], path[1:]
    if isinstance(part, dict):
        return part | {key: _with_unknown(part[key], rest) if rest else NonValue.UNKNOWN}  # type: ignore[return-value]
    value = _with_unknown(getattr(part, key), rest) if rest else NonValue.UNKNOWN
    return part.model_copy(update={key: value})  # type: ignore[no-any-return]


def test_without_a_station_nobody_has_a_mass(fleet: Fleet) -> None:
    state = state_of(Case(fleet.types["hobmire-twain"].airframe), ("occupants and kit",))
    assert isinstance(state.mass, MissingError)
    assert str(state.mass.reason) == "the station has not stated the mass of an occupant"
