"""What YAML would make truths, times and numbers of comes through a whole record as it was written."""

from __future__ import annotations

import datetime as dt
import pathlib
from decimal import Decimal

import pytest
import yaml

from hardpoint import load
from tests.examples.fleets import GOOD, TYPE, read_type

AS_WRITTEN = [
    "off", "no", "on", "yes", "y", "true", "True", "null", "~", "12:30", "12:30:45", "010", "0o17", "0x1F", "1e3",
    "1.10", "1_000", ".5", "+7", "-0", "2027-03-02", "2027-03-02 10:00", ".inf", ".nan",
]  # fmt: skip


def test_the_list_is_worth_testing() -> None:
    """PyYAML's own reading turns most of them into something else."""
    changed = [word for word in AS_WRITTEN if yaml.safe_load(word) != word]
    assert {"off", "no", "on", "12:30", "010", "1.10"} <= set(changed)


def test_words_come_through_as_written(tmp_path: pathlib.Path) -> None:
    text = (GOOD / TYPE).read_text(encoding="utf-8")
    text = text.replace("also_called: [Merle]", f"also_called: [{', '.join(AS_WRITTEN)}]")
    checked = read_type(text, tmp_path)
    assert checked.findings == []
    record = checked.fleet.types["quenby-merle"]
    assert record.airframe.also_called == tuple(AS_WRITTEN)
    assert record.tree["also_called"] == AS_WRITTEN


@pytest.mark.parametrize("word", AS_WRITTEN)
def test_a_value_of_its_own_comes_through_as_written(word: str, tmp_path: pathlib.Path) -> None:
    text = (GOOD / TYPE).read_text(encoding="utf-8").replace("looks: brass key", f"looks: {word}")
    checked = read_type(text, tmp_path)
    assert checked.findings == []
    master = checked.fleet.types["quenby-merle"].airframe.controls["master"]  # type: ignore[index]
    assert master.looks == word  # type: ignore[union-attr]


def test_keys_come_through_as_written(tmp_path: pathlib.Path) -> None:
    """An aircraft may fly under the number 010, and a control may be called off, although no key of ours is."""
    text = (
        (GOOD / TYPE)
        .read_text(encoding="utf-8")
        .replace("  oxygen: not fitted", "  off: not fitted\n  010: not fitted")
    )
    checked = read_type(text, tmp_path)
    assert checked.findings == []
    assert list(checked.fleet.types["quenby-merle"].tree["bottles"]) == ["breathing-air", "off", "010"]


def test_positions_times_and_dates_are_read_by_their_schema(tmp_path: pathlib.Path) -> None:
    text = (GOOD / TYPE).read_text(encoding="utf-8").replace("spinner: {fs: 0}", "spinner: {fs: 1.10}")
    fleet = read_type(text, tmp_path).fleet
    landmark = fleet.types["quenby-merle"].airframe.landmarks["spinner"]  # type: ignore[index]
    assert (landmark.fs.text, landmark.fs.low) == ("1.10", Decimal("1.10"))  # type: ignore[union-attr]
    day = fleet.events["summer-days"].event.days["saturday"]
    assert day.date == dt.date(2027, 6, 5)
    assert day.entries["7"].time == dt.time(12, 30)


@pytest.mark.parametrize(
    ("word", "rule"), [("010", "not-a-position"), ("1e3", "not-a-position"), ("1_000", "not-a-position")]
)
def test_what_a_position_cannot_be_is_refused_not_converted(word: str, rule: str, tmp_path: pathlib.Path) -> None:
    text = (GOOD / TYPE).read_text(encoding="utf-8").replace("spinner: {fs: 0}", f"spinner: {{fs: {word}}}")
    found = read_type(text, tmp_path).findings
    assert [(finding.rule, finding.read) for finding in found] == [(rule, word)]


def test_the_digest_is_that_of_the_bytes() -> None:
    import hashlib

    fleet = load.fleet(GOOD)
    assert fleet.types["quenby-merle"].written.digest == hashlib.sha256((GOOD / TYPE).read_bytes()).hexdigest()
