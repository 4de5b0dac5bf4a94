"""Two airframes aligned: the demo's own traps, and what must hold of any two records."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from hardpoint.figures.comparing import MATTERS, How, Unlike, differences, items, signature
from hardpoint.load import fleet as read_fleet
from hardpoint.records.airframe import Airframe
from hardpoint.records.fleet import Fleet
from tests.pages.sweeps import read, with_answer
from tests.site.support import FLEET


@pytest.fixture(scope="module")
def fleet() -> Fleet:
    return read_fleet(FLEET)


def _altered(fleet: Fleet, type_id: str, path: tuple[str, ...], answer: Any) -> Airframe:
    airframe = read(with_answer(fleet.types[type_id].tree, path, answer))
    assert airframe is not None
    return airframe


def _hows(found: tuple[Unlike, ...]) -> set[How]:
    return {unlike.how for unlike in found}


def test_the_jinx_and_the_bodkin_open_by_the_same_movements_in_another_order(fleet: Fleet) -> None:
    found = differences(fleet.types["vostrelle-jinx"].airframe, fleet.types["tarrowby-bodkin"].airframe)
    first = [unlike for unlike in found if unlike.matter == "opening" and unlike.how == "re-ordered"]
    assert [(unlike.here, unlike.there) for unlike in first][:1] == [("sill-knob", "sill-knob")]


def test_the_magnetos_of_one_bodkin_are_reversed(fleet: Fleet) -> None:
    tail = fleet.tails["QQ-BOD"]
    found = differences(tail.of.airframe, tail.airframe)
    assert {(unlike.how, unlike.here) for unlike in found} == {
        ("reversed", "magneto-left"),
        ("reversed", "magneto-right"),
    }


def test_one_twain_has_a_handle_more(fleet: Fleet) -> None:
    tail = fleet.tails["QQ-TWB"]
    added = [unlike for unlike in differences(tail.of.airframe, tail.airframe) if unlike.how == "added"]
    assert [unlike.matter for unlike in added] == ["opening"]
    assert fleet.tails["QQ-TWB"].airframe.exits[added[0].there]  # type: ignore[index]


def test_a_declared_tail_without_differences_has_none(fleet: Fleet) -> None:
    tail = fleet.tails["QQ-THA"]
    assert [unlike for unlike in differences(tail.of.airframe, tail.airframe) if unlike.how != "UNKNOWN"] == []


def test_an_airframe_differs_from_itself_only_in_what_is_unknown(fleet: Fleet) -> None:
    for type_ in fleet.types.values():
        assert _hows(differences(type_.airframe, type_.airframe)) <= {"UNKNOWN"}


def test_seen_from_the_other_side_what_is_added_is_missing(fleet: Fleet) -> None:
    turned: dict[How, How] = {"added": "missing", "missing": "added"}
    types = list(fleet.types.values())
    for one, other in pairwise(types):
        there = differences(one.airframe, other.airframe)
        back = differences(other.airframe, one.airframe)
        mirrored = {(turned.get(u.how, u.how), u.matter, u.key, u.there, u.here) for u in there}
        assert mirrored == {(u.how, u.matter, u.key, u.here, u.there) for u in back}


@pytest.mark.parametrize(
    ("path", "answer", "how"),
    [
        (("controls", "master", "off_is"), "towards canopy", "reversed"),
        (("controls", "master", "off_is"), "forward", "other way"),
        (("controls", "master", "off_is"), "unknown", "UNKNOWN"),
        (("controls", "master", "kind"), "rocker", "other feel"),
        (("controls", "master"), "unknown", "UNKNOWN"),
    ],
)
def test_one_answer_altered(fleet: Fleet, path: tuple[str, ...], answer: str, how: How) -> None:
    here = fleet.types["vostrelle-jinx"].airframe
    before = set(differences(here, here))
    found = set(differences(here, _altered(fleet, "vostrelle-jinx", path, answer))) - before
    assert how in _hows(tuple(found))


def test_nothing_unknown_has_a_signature(fleet: Fleet) -> None:
    for type_ in fleet.types.values():
        for matter in MATTERS:
            if any(item.open for item in items(type_.airframe, matter)):
                assert signature(type_.airframe, matter) is None
    opened = _altered(fleet, "vostrelle-jinx", ("controls", "master", "off_is"), "unknown")
    assert signature(opened, "shutdown") is None


def test_those_with_one_signature_have_no_recorded_difference(fleet: Fleet) -> None:
    here = fleet.types["kelmarrow-thimble"].airframe
    other = _altered(fleet, "kelmarrow-thimble", ("name",), "Another Name")
    for matter in MATTERS:
        if signature(here, matter) is not None:
            assert signature(here, matter) == signature(other, matter)
            assert not [unlike for unlike in differences(here, other) if unlike.matter == matter]
