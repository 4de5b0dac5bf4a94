"""Never touch: each handle once, whether its device or its seat tells of it, and nothing unknown left out."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest

from hardpoint.pages.never import never_touch
from hardpoint.pages.shown import shown_type
from hardpoint.records.known import Tree
from tests.pages.sweeps import FLEET, read, with_answer


def _told(type_id: str, *changes: tuple[tuple[str | int, ...], Tree]) -> list[str]:
    type_ = FLEET.types[type_id]
    tree = type_.tree
    for path, answer in changes:
        tree = with_answer(tree, path, answer)
    airframe = read(tree)
    assert airframe is not None
    lines, more = never_touch(dataclasses.replace(shown_type(type_), airframe=airframe))
    return [f"{line.strong} {line.text}" for line in lines] + [f"Also: {link.text}" for link in more]


def test_a_handle_of_a_device_is_not_told_again_at_its_seats() -> None:
    told = _told("skellrigg-wicket")
    assert len(told) == 1
    assert told[0].startswith("Rocket parachute: red T handle between the seats")


def test_equal_handles_at_several_seats_are_told_once() -> None:
    told = _told("drosmund-halberd")
    assert told[0] == "Seat cartridge, both seats: striped handle, between the knees"
    assert sum("striped handle" in line for line in told) == 1


def test_handles_that_differ_are_told_seat_by_seat() -> None:
    told = _told("drosmund-halberd", (("pyrotechnics", "seat-rear", "handle"), "yellow ring"))
    assert told[:2] == [
        "Seat cartridge, front seat: striped handle, between the knees",
        "Seat cartridge, rear seat: yellow ring, between the knees",
    ]


@pytest.mark.parametrize("at", [("do_not_pull",), ("do_not_pull", "ripcord")])
def test_a_handle_that_nobody_knows_of_is_not_dropped(at: tuple[str, ...]) -> None:
    told = _told("tarrowby-bodkin", (("seats", "pilot", *at), "unknown"))
    assert len(told) == 1
    assert "UNKNOWN" in told[0]


def test_high_voltage_stays_live() -> None:
    told = " ".join(_told("lumenaar-glimmer"))
    assert "cables and packs: stay live:" in told


def test_never_more_than_three_lines() -> None:
    pull: Any = {f"ring-{n}": {"what": f"ring {n}", "place": {"panel": "chest"}, "why": "opens it"} for n in range(5)}
    told = _told("tarrowby-bodkin", (("seats", "pilot", "do_not_pull"), pull))
    assert [line.startswith("Also:") for line in told] == [False, False, False, True, True]
