"""From a tree to a model: every problem of a record is told at the line of its key, or of the key above it."""

from __future__ import annotations

import copy
import pathlib
from collections.abc import Iterator
from typing import Any, get_args

import pytest
from pydantic import TypeAdapter

from hardpoint.findings import Finding, Path, dotted
from hardpoint.load.documents import Document, read
from hardpoint.load.models import validate
from hardpoint.load.reading_rules import READING_RULES, ReadingRule
from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Event
from hardpoint.records.fleet import Where
from hardpoint.records.problems import RecordRule
from hardpoint.records.sources import Source, Sources
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail
from hardpoint.records.trees import value_at
from hardpoint.units import QuantityError
from tests.examples.fleets import GOOD

SOURCES: TypeAdapter[Any] = TypeAdapter(Sources)
RECORDS: list[tuple[str, TypeAdapter[Any], Any]] = [
    ("types/quenby-merle.yaml", TypeAdapter(Airframe), Airframe),
    ("tails/QQ-QMB.yaml", TypeAdapter(Tail), Tail),
    ("events/summer-days.yaml", TypeAdapter(Event), Event),
    ("station.yaml", TypeAdapter(Station), Station),
    ("sources.yaml", SOURCES, Source),
]
NAMES = [name for name, _, _ in RECORDS]


def document(name: str) -> Document:
    found, findings = read(GOOD / name, name)
    assert found is not None
    assert findings == []
    return found


def paths(tree: Any, path: Path = ()) -> Iterator[Path]:
    """Every key and list item of a tree, outer ones first; not inside a difference, where nothing is checked yet."""
    if path[-1:] in (("here",), ("type_says",)):
        return
    children = tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    for key, value in children:
        yield (*path, key)
        yield from paths(value, (*path, key))


def spoilt(tree: Any, path: Path, value: Any) -> Any:
    """A copy of a tree with another value at ``path``; without that key where the value is None."""
    result = copy.deepcopy(tree)
    above = result
    for part in path[:-1]:
        above = above[part]
    if value is None:
        del above[path[-1]]
    else:
        above[path[-1]] = value
    return result


def found_in(tree: Any, adapter: TypeAdapter[Any], model: Any, doc: Document) -> list[Finding]:
    def where(path: Path) -> Where:
        at = doc.at(path)
        return Where(doc.file, at.line, at.column)

    return validate(adapter, model, tree, where)[1]


@pytest.mark.parametrize(("name", "adapter", "model"), RECORDS, ids=NAMES)
def test_the_good_record_itself_has_no_problem(name: str, adapter: TypeAdapter[Any], model: Any) -> None:
    doc = document(name)
    assert found_in(doc.tree, adapter, model, doc) == []


@pytest.mark.parametrize("value", [{"no-such": "thing"}, [], ["no", {"such": "thing"}], "\u00a7 1"], ids=str)
@pytest.mark.parametrize(("name", "adapter", "model"), RECORDS, ids=NAMES)
def test_another_value_at_any_place_is_told_at_that_place(
    name: str, adapter: TypeAdapter[Any], model: Any, value: Any
) -> None:
    """Every key of every record in turn. What is wrong is told at that path or below it, in its line."""
    doc, told = document(name), 0
    for path in paths(doc.tree):
        if isinstance(value, list) and isinstance(value_at(doc.tree, path), list):
            continue  # its items would have the places of the old ones
        found = found_in(spoilt(doc.tree, path, value), adapter, model, doc)
        told += bool(found)
        for finding in found:
            beside = finding.rule == "turn-without-observer"
            assert beside or finding.path == dotted(path) or finding.path.startswith(f"{dotted(path)}."), finding
            assert beside or finding.line == doc.positions[path].line, finding
    assert told > 1


@pytest.mark.parametrize(("name", "adapter", "model"), RECORDS, ids=NAMES)
def test_a_key_that_is_missing_is_told_at_its_parent(name: str, adapter: TypeAdapter[Any], model: Any) -> None:
    doc, told = document(name), 0
    for path in paths(doc.tree):
        for finding in found_in(spoilt(doc.tree, path, None), adapter, model, doc):
            parent = dotted(path[:-1])
            told += 1
            if finding.rule == "missing-key":
                assert (finding.path, finding.line) == (parent, doc.at(path[:-1]).line)
                assert f'the key "{path[-1]}" is missing' in finding.message
            else:
                assert finding.rule in ("place-says-nothing", "turn-without-observer", "governed-pair"), finding
                assert finding.path.startswith(parent)
    assert told > 1


@pytest.mark.parametrize(("name", "adapter", "model"), RECORDS, ids=NAMES)
def test_a_key_too_many_is_told_at_itself(name: str, adapter: TypeAdapter[Any], model: Any) -> None:
    doc, told = document(name), 0
    for path in [(), *paths(doc.tree)]:
        tree = copy.deepcopy(doc.tree)
        here: Any = tree
        for part in path:
            here = here[part]
        if isinstance(here, dict):
            here["Extra key"] = "words"
            found = found_in(tree, adapter, model, doc)
            told += bool(found)
            assert all(
                finding.path.startswith(dotted((*path, "Extra key"))) or finding.rule == "governed-pair"
                for finding in found
            ), found
    assert told > 1


ODD: list[Any] = [{}, {"": ""}, {"a": {"b": ["c"]}}, [[["x"]]], "", " ", "\ufffd", "9" * 5000, "-" * 5000]


@pytest.mark.parametrize("shift", range(3))
def test_odd_values_never_raise(shift: int) -> None:
    """Each place in turn with the next of the odd values, three times over."""
    doc = document("types/quenby-merle.yaml")
    for index, path in enumerate(paths(doc.tree)):
        found_in(spoilt(doc.tree, path, ODD[(index + shift) % len(ODD)]), TypeAdapter(Airframe), Airframe, doc)


def test_a_whole_record_of_another_shape() -> None:
    doc = document("types/quenby-merle.yaml")
    for tree in ([], "words", ["a"]):
        (finding,) = found_in(tree, TypeAdapter(Airframe), Airframe, doc)
        assert (finding.rule, finding.path) == ("wrong-shape", "")


def test_what_was_told_already_is_not_told_again() -> None:
    doc = document("types/quenby-merle.yaml")
    tree = spoilt(spoilt(doc.tree, ("engine", "run_down"), ""), ("masses", "empty"), "")
    at = Where("x.yaml", 1, 1)
    _, both = validate(TypeAdapter(Airframe), Airframe, tree, lambda path: at)
    _, one = validate(TypeAdapter(Airframe), Airframe, tree, lambda path: at, lambda path: path[:1] == ("engine",))
    assert [finding.path for finding in both] == ["masses.empty", "engine.run_down"]
    assert [finding.path for finding in one] == ["masses.empty"]


def test_long_values_are_shortened_in_messages_and_in_what_was_read() -> None:
    doc = document("types/quenby-merle.yaml")
    for path, rule in (
        (("engine", "kind"), "not-one-of"),
        (("exits", "sill-handle", "steps", 0, "way"), "unknown-way"),
        (("propeller", "blades"), "not-a-count"),
        (("masses", "empty"), "unreadable-quantity"),
    ):
        (finding,) = found_in(spoilt(doc.tree, path, "long " * 5000), TypeAdapter(Airframe), Airframe, doc)
        assert finding.rule == rule
        assert len(finding.read) <= 80
        assert len(finding.message) < 400


def test_every_rule_is_listed_once_with_its_line() -> None:
    listed = {rule for group in get_args(ReadingRule) for rule in (get_args(group) or (group,))}
    assert listed == set(READING_RULES)


def test_the_rules_of_quantities_are_among_those_of_records() -> None:
    """They come from ``hardpoint.units``, which knows nothing of records; its docstring names them."""
    import re

    documented = set(re.findall(r"``([a-z]+(?:-[a-z]+)+)``", QuantityError.__doc__ or ""))
    assert len(documented) == 8
    assert documented <= set(get_args(RecordRule))


def test_files_of_the_good_fleet_are_all_checked_here() -> None:
    there = {path.relative_to(GOOD).as_posix() for path in pathlib.Path(GOOD).rglob("*.yaml")}
    assert there == {*NAMES, "tails/QQ-QMA.yaml"}
