"""Pairs as people quote them, as bare numbers through a record file.

Common practice, no published source: people quote one figure in two units and the two disagree. The rule by which they
are compared is the pair check of the project; the factors are checked in tests/units against published ones.
"""

from __future__ import annotations

import pathlib

import pytest

from hardpoint.units import Status
from tests.examples.fleets import GOOD, TYPE, read_type

VOLUMES: list[tuple[str, Status]] = [
    ("50 L / 13.2 US gal", "agree"),
    ("10 L / 2.5 US gal", "rounded"),
    ("60 L / 15.9 US gal", "agree"),
    ("7 L / 1.7 US gal", "rounded"),
    ("10 L / 2.6 US gal", "agree"),
    ("62 L / 13.6 US gal", "disagree"),
]
MASSES: list[tuple[str, Status]] = [
    ("1180 lb / 580 kg", "disagree"),
    ("400 lb / 200 kg", "disagree"),
    ("1320 lb / 640 kg", "disagree"),
    ("350 lb / 175 kg", "disagree"),
]


@pytest.mark.parametrize(("text", "status"), VOLUMES)
def test_volumes(text: str, status: Status, tmp_path: pathlib.Path) -> None:
    record = (GOOD / TYPE).read_text(encoding="utf-8").replace("62 L / 16.4 US gal", text)
    checked = read_type(record, tmp_path)
    tank = checked.fleet.types["quenby-merle"].airframe.tanks["main"]  # type: ignore[index]
    assert tank.capacity.text == text  # type: ignore[union-attr]
    assert tank.capacity.status == status  # type: ignore[union-attr]
    told = [(found.rule, found.path) for found in checked.findings if found.rule == "pair-disagrees"]
    assert told == ([("pair-disagrees", "tanks.main.capacity")] if status == "disagree" else [])


@pytest.mark.parametrize(("text", "status"), MASSES)
def test_masses(text: str, status: Status, tmp_path: pathlib.Path) -> None:
    record = (GOOD / TYPE).read_text(encoding="utf-8").replace("mass: 12 kg", f"mass: {text}")
    checked = read_type(record, tmp_path)
    canopy = checked.fleet.types["quenby-merle"].airframe.canopies["canopy"]  # type: ignore[index]
    assert canopy.mass.status == status  # type: ignore[union-attr]
    assert [(found.rule, found.path, found.severity) for found in checked.findings] == [
        ("pair-disagrees", "canopies.canopy.mass", "warning")
    ]


def test_400_lb_are_not_200_kg_and_the_slip_is_named(tmp_path: pathlib.Path) -> None:
    record = (GOOD / TYPE).read_text(encoding="utf-8").replace("mass: 12 kg", "mass: 400 lb / 200 kg")
    (found,) = read_type(record, tmp_path).findings
    assert "looks converted at 2 lb to the kg" in found.message
    assert "400 lb is 181 kg" in found.message
