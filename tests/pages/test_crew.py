"""What a crew page must not leave out: what is unknown, what is forbidden, that a propeller stays dangerous."""

from __future__ import annotations

import datetime as dt
import shutil
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Any

import pytest

from hardpoint import load
from hardpoint.pages.crew import type_crew_page
from hardpoint.pages.site import Site
from hardpoint.pages.view import CrewPage, Fact, Section, Table

GOOD = Path(__file__).parents[1] / "examples" / "good"


def _page(tmp_path: Path, *changes: tuple[str, str]) -> CrewPage:
    """The crew page of the example type after changes of its text, each of which must stand there exactly once."""
    folder = tmp_path / "fleet"
    shutil.copytree(GOOD, folder)
    record = folder / "types" / "quenby-merle.yaml"
    text = record.read_text()
    for find, put in changes:
        assert text.count(find) == 1, find
        text = text.replace(find, put)
    record.write_text(text)
    fleet = load.fleet(folder)
    site = Site(fleet, (), dt.date(2027, 6, 5), "2027-06-01")
    view = type_crew_page(site, fleet.types["quenby-merle"]).view
    assert isinstance(view, CrewPage)
    return view


def _section(page: CrewPage, id_: str) -> Section:
    return next(section for section in page.sections if section.id == id_)


def _facts(value: Any) -> Iterator[Fact]:
    if isinstance(value, Fact):
        yield value
    elif isinstance(value, tuple):
        yield from (fact for item in value for fact in _facts(item))
    elif is_dataclass(value) and not isinstance(value, type):
        yield from (fact for field in fields(value) for fact in _facts(getattr(value, field.name)))


def _words(value: Any) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        return " ".join(map(_words, value))
    if is_dataclass(value) and not isinstance(value, type):
        return " ".join(_words(getattr(value, field.name)) for field in fields(value))
    return ""


@pytest.mark.parametrize(
    ("find", "put"),
    [
        ("hand_swung: by a starter", "hand_swung: unknown"),
        ("propeller:\n  place: {fs: -400, on: propeller}", "propeller: PUT"),
    ],
)
def test_a_propeller_warns_at_each_control(tmp_path: Path, find: str, put: str) -> None:
    """Also one that nobody knows of: unknown counts as there."""
    if "PUT" in put:
        text = (GOOD / "types" / "quenby-merle.yaml").read_text()
        start, end = text.index("propeller:\n"), text.index("tanks:\n")
        find, put = text[start:end], "propeller: unknown\n"
    page = _page(tmp_path, (find, put))
    steps = [block for block in _section(page, "shut-down").blocks if block.kind == "steps"]
    assert len(steps) == 3
    assert all("Propeller" in block.caution for block in steps)


def test_no_propeller_no_warning_where_somebody_looked(tmp_path: Path) -> None:
    text = (GOOD / "types" / "quenby-merle.yaml").read_text()
    start, end = text.index("propeller:\n"), text.index("tanks:\n")
    page = _page(tmp_path, (text[start:end], "propeller: not fitted\n"))
    steps = [block for block in _section(page, "shut-down").blocks if block.kind == "steps"]
    assert [block.caution for block in steps] == ["", "", ""]


def test_a_device_that_nobody_answered_is_told(tmp_path: Path) -> None:
    page = _page(
        tmp_path, ("  seat-cartridge: not fitted", "  seat-cartridge: not fitted\n  canopy-cartridge: unknown")
    )
    told = {fact.label: fact.value.state for fact in _facts(_section(page, "stay-clear"))}
    assert told["Canopy cartridge"] == "unknown"
    assert told["Seat cartridge"] == "not fitted"


def test_an_unknown_valve_is_marked_inside_its_bottle(tmp_path: Path) -> None:
    text = (GOOD / "types" / "quenby-merle.yaml").read_text()
    start = text.index("    valve:", text.index("bottles:\n"))
    end = text.index("\n", start)
    page = _page(tmp_path, (text[start:end], "    valve: unknown"))
    bottle = next(fact for fact in _facts(_section(page, "stay-clear")) if fact.id == "bottle-breathing-air")
    assert {part.label: part.value.state for part in bottle.value.parts}["valve"] == "unknown"


def test_the_floor_side_has_its_column_only_where_a_zone_speaks_of_it(tmp_path: Path) -> None:
    def heads(page: CrewPage) -> tuple[str, ...]:
        return next(block for block in _section(page, "cut").blocks if isinstance(block, Table)).heads

    assert heads(_page(tmp_path / "as-it-is")) == ("Zone", "Left", "Right")
    right = "right: {cut: preferred, listing: walked and complete, behind: nothing found}"
    floor = f"{right}\n    floor: {{cut: never, listing: walked and complete, behind: nothing found}}"
    page = _page(tmp_path / "with-a-floor", (right, floor))
    assert heads(page) == ("Zone", "Left", "Right", "Floor side")
    table = next(block for block in _section(page, "cut").blocks if isinstance(block, Table))
    assert [row.cells[3].state for row in table.rows] == ["unknown", "said", "unknown"]


def test_intake_and_exhaust_that_nobody_measured_are_told(tmp_path: Path) -> None:
    page = _page(
        tmp_path,
        ("intake_keep: not applicable", "intake_keep: 4 m"),
        ("exhaust_keep: not applicable", "exhaust_keep: unknown"),
    )
    words = _words(_section(page, "stay-clear"))
    assert "ahead of the intake: keep 4 m" in words
    assert "how far to keep behind the exhaust" in words


def test_sections_stand_in_the_order_in_which_a_crew_works(tmp_path: Path) -> None:
    order = [section.id for section in _page(tmp_path).sections]
    assert order == [
        "approach", "open", "shut-down", "free", "grip", "stay-clear", "cut", "water", "heavy-end", "recognise",
    ]  # fmt: skip


def test_never_more_than_three_lines_and_the_rest_is_named(tmp_path: Path) -> None:
    text = (GOOD / "types" / "quenby-merle.yaml").read_text()
    start = text.index("    do_not_pull:")
    end = text.index("\n    parachute:", start)
    handles = "".join(
        f'\n      ring-{number}: {{what: "ring {number}", place: {{panel: chest}}, why: opens it}}'
        for number in range(5)
    )
    page = _page(tmp_path, (text[start:end], f"    do_not_pull:{handles}"))
    assert [line.strong for line in page.never] == ["Ring 0:", "Ring 1:", "Ring 2:"]
    assert [link.text for link in page.never_more] == ["Ring 3", "Ring 4"]
