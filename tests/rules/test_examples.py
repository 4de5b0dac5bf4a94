"""Each rule by a record that breaks it, to the letter of the report, and by a neighbour that does not."""

from __future__ import annotations

import pathlib
import re
from datetime import date

import pytest

from hardpoint import load
from hardpoint.load import READING_RULES
from hardpoint.rules import all_rules
from tests.examples.fleets import DAY, GOOD, Case, bad_cases, good_copy, spoil, told

CASES = bad_cases()
RULES = {rule.id: rule.severity for rule in all_rules()}
WARNS_WHILE_READING = {"comment-or-text"}


def test_the_good_fleet_gives_no_finding() -> None:
    checked = load.check(GOOD, DAY)
    assert checked.findings == []
    assert checked.files == 6
    assert (len(checked.fleet.types), len(checked.fleet.tails), len(checked.fleet.events)) == (1, 2, 1)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_bad_record(case: Case, tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    fleet = good_copy(tmp_path, monkeypatch)
    for change in case.changes:
        spoil(fleet, change, monkeypatch)
    assert told(fleet) == case.finds


def bites(case: Case) -> bool:
    return f"[{case.rule}]" in case.finds


@pytest.mark.parametrize("rule", sorted({*RULES, *READING_RULES}))
def test_every_rule_has_a_case_that_it_bites(rule: str) -> None:
    """A new rule without an example under tests/examples/bad fails here."""
    assert [case.name for case in CASES if case.rule == rule and bites(case)]


@pytest.mark.parametrize("rule", sorted(RULES))
def test_every_rule_over_records_has_a_neighbour_that_it_spares(rule: str) -> None:
    assert [case.name for case in CASES if case.rule == rule and not bites(case)]


def test_no_case_is_about_a_rule_that_is_gone() -> None:
    assert {case.rule for case in CASES} <= {*RULES, *READING_RULES}


def test_no_rule_has_the_name_of_a_reading_rule() -> None:
    assert not set(RULES) & set(READING_RULES)


def test_severities_in_the_reports_are_those_of_the_rules() -> None:
    for case in CASES:
        for line in filter(None, case.finds.split("\n")):
            if line.startswith("    "):  # a related place
                continue
            found = re.fullmatch(r"[^:]+:\d+: (warning: )?.+  \[([a-z0-9-]+)\]", line)
            assert found, line
            rule = found[2]
            warns = rule in WARNS_WHILE_READING or RULES.get(rule) == "warning"
            assert bool(found[1]) == warns, line


def test_every_rule_has_its_line_for_the_docs() -> None:
    for says in [*(rule.says for rule in all_rules()), *READING_RULES.values()]:
        assert re.fullmatch(r"[A-Z0-9#`B].{10,250}\.", says), says


def test_reviews_are_measured_by_the_day_asked_for() -> None:
    assert load.check(GOOD, date(2028, 3, 1)).findings == []
    late = load.check(GOOD, date(2028, 3, 2)).findings
    assert {finding.rule for finding in late} == {"review-overdue"}
    assert len(late) == 13  # twelve sections and absences of the type that name a day, and one section of QQ-QMB


def test_whoever_reads_findings_gets_them_in_the_order_of_the_contract(
    tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    fleet = good_copy(tmp_path, monkeypatch)
    for case in CASES:
        if case.rule in ("no-such-source", "position-outside") and case.number == 1:
            for change in case.changes:
                spoil(fleet, change, monkeypatch)
    found = load.check(fleet, DAY).findings
    assert len(found) == 9
    assert [(f.file, f.line, f.rule) for f in found] == sorted((f.file, f.line, f.rule) for f in found)
