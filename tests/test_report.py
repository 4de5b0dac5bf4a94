"""The three forms of a list of findings, to the letter."""

from __future__ import annotations

import json
import re
from datetime import date

from hypothesis import given, settings
from hypothesis import strategies as st

from hardpoint import report
from hardpoint.findings import HIDDEN, Finding, Related, got_needs, quoted, visible

DAY = date(2027, 6, 5)

MASS = Finding(
    rule="wrong-dimension",
    severity="error",
    file="fleet/types/x.yaml",
    line=12,
    column=5,
    path="batteries.main.mass",
    read="12 m",
    expected="a mass",
    example="12 kg",
    message='got "12 m", needs a mass, for example "12 kg"',
)
PAIR = Finding(
    rule="pair-disagrees",
    severity="warning",
    file="fleet/types/x.yaml",
    line=9,
    column=3,
    path="tanks.main.capacity",
    read="62 L / 13.6 US gal",
    expected="",
    example="",
    message="62 L are 16.4 US gal, not 13.6: 100% sure?",
)
DOUBLE = Finding(
    rule="duplicate-key",
    severity="error",
    file="fleet/tails/QQ-BOD.yaml",
    line=20,
    column=1,
    path="tanks",
    read="tanks",
    expected="each key once",
    example="",
    message='got the key "tanks" twice (first in line 12); keep one',
    related=(Related("fleet/tails/QQ-BOD.yaml", 12, "tanks", "first here"),),
)
HOSTILE = Finding(
    rule="no-such-file",
    severity="error",
    file="fleet/types/a,b:c%\x1b[2J.yaml",
    line=1,
    column=1,
    path="",
    read="\u202e\n::error::x",
    expected="",
    example="",
    message="got \u202e\n::error::x\r\x07",
)


def test_text() -> None:
    assert report.text([MASS, PAIR, DOUBLE], DAY, 15) == (
        'fleet/tails/QQ-BOD.yaml:20: tanks: got the key "tanks" twice (first in line 12); keep one  [duplicate-key]\n'
        "    fleet/tails/QQ-BOD.yaml:12: tanks: first here\n"
        "fleet/types/x.yaml:9: warning: tanks.main.capacity: 62 L are 16.4 US gal, not 13.6: 100% sure?  "
        "[pair-disagrees]\n"
        'fleet/types/x.yaml:12: batteries.main.mass: got "12 m", needs a mass, for example "12 kg"  [wrong-dimension]\n'
        "2 errors, 1 warning in 15 files, as of 2027-06-05"
    )


def test_text_counts_in_words() -> None:
    assert report.text([], DAY, 15) == "no findings in 15 files, as of 2027-06-05"
    assert report.text([MASS], DAY, 1).endswith("\n1 error in 1 file, as of 2027-06-05")
    assert report.text([PAIR, PAIR], DAY, 0).endswith("\n2 warnings in 0 files, as of 2027-06-05")


def test_text_of_a_whole_file_has_no_path_and_shows_what_is_hidden() -> None:
    assert report.text([HOSTILE], DAY, 1) == (
        "fleet/types/a,b:c%\\x1b[2J.yaml:1: got \\u202e\\n::error::x\\r\\x07  [no-such-file]\n"
        "1 error in 1 file, as of 2027-06-05"
    )


def test_json() -> None:
    assert report.as_json([MASS, DOUBLE], DAY, 15) == (
        """{
  "format": "hardpoint-check/1",
  "as_of": "2027-06-05",
  "files": 15,
  "counts": {
    "error": 2,
    "warning": 0
  },
  "findings": [
    {
      "rule": "duplicate-key",
      "severity": "error",
      "file": "fleet/tails/QQ-BOD.yaml",
      "line": 20,
      "column": 1,
      "path": "tanks",
      "read": "tanks",
      "expected": "each key once",
      "example": "",
      "message": "got the key \\"tanks\\" twice (first in line 12); keep one",
      "related": [
        {
          "file": "fleet/tails/QQ-BOD.yaml",
          "line": 12,
          "path": "tanks",
          "message": "first here"
        }
      ]
    },
    {
      "rule": "wrong-dimension",
      "severity": "error",
      "file": "fleet/types/x.yaml",
      "line": 12,
      "column": 5,
      "path": "batteries.main.mass",
      "read": "12 m",
      "expected": "a mass",
      "example": "12 kg",
      "message": "got \\"12 m\\", needs a mass, for example \\"12 kg\\"",
      "related": []
    }
  ]
}"""
    )


def test_json_keeps_what_was_read_and_prints_ascii_only() -> None:
    said = report.as_json([HOSTILE], DAY, 1)
    assert said.isascii()
    assert json.loads(said)["findings"][0]["read"] == "\u202e\n::error::x"


def test_github() -> None:
    assert report.github([MASS, PAIR, DOUBLE], DAY, 15) == (
        "::error file=fleet/tails/QQ-BOD.yaml,line=20,col=1,title=duplicate-key::"
        'tanks: got the key "tanks" twice (first in line 12); keep one'
        "%0Afleet/tails/QQ-BOD.yaml:12: tanks: first here\n"
        "::warning file=fleet/types/x.yaml,line=9,col=3,title=pair-disagrees::"
        "tanks.main.capacity: 62 L are 16.4 US gal, not 13.6: 100%25 sure?\n"
        "::error file=fleet/types/x.yaml,line=12,col=5,title=wrong-dimension::"
        'batteries.main.mass: got "12 m", needs a mass, for example "12 kg"\n'
        "2 errors, 1 warning in 15 files, as of 2027-06-05"
    )


def test_github_properties_are_escaped() -> None:
    assert report.github([HOSTILE], DAY, 1).splitlines()[0] == (
        "::error file=fleet/types/a%2Cb%3Ac%25\\x1b[2J.yaml,line=1,col=1,title=no-such-file::"
        "got \\u202e\\n::error::x\\r\\x07"
    )


def unescaped(value: str) -> str:
    """The reverse of the documented escaping, as the receiving end does it: the percent sign last."""
    for code, sign in (("%0D", "\r"), ("%0A", "\n"), ("%3A", ":"), ("%2C", ","), ("%25", "%")):
        value = value.replace(code, sign)
    return value


ANY = st.text(max_size=40)


@settings(deadline=None)
@given(
    st.lists(st.builds(Finding, ANY, st.sampled_from(["error", "warning"]), ANY, *[st.integers(1, 99)] * 2, *[ANY] * 5))
)
def test_nothing_that_was_read_can_break_a_line_or_reach_a_terminal(findings: list[Finding]) -> None:
    for form in (report.text, report.github):
        lines = form(findings, DAY, 1).split("\n")
        assert len(lines) == len(findings) + 1
        assert not HIDDEN.search("".join(lines))
    for found, line in zip(sorted(findings, key=lambda each: each.sort_key), lines, strict=False):
        parts = re.fullmatch(r"::(\w+) file=([^,:]*),line=(\d+),col=(\d+),title=([^,:]*)::(.*)", line)
        assert parts
        assert parts[1] == found.severity
        assert unescaped(parts[2]) == visible(found.file)
        assert unescaped(parts[5]) == visible(found.rule)
    assert json.loads(report.as_json(findings, DAY, 1))["counts"]["error"] == report.as_json(findings, DAY, 1).count(
        '"severity": "error"'
    )


def test_order_is_file_line_rule_whatever_the_input() -> None:
    findings = [MASS, PAIR, DOUBLE, HOSTILE]
    for form in (report.text, report.as_json, report.github):
        assert form(findings, DAY, 4) == form(findings[::-1], DAY, 4)


def test_sentences_and_quotes() -> None:
    assert got_needs("12 m", "a mass", "12 kg") == 'got "12 m", needs a mass, for example "12 kg"'
    assert got_needs("", "a mass") == "got nothing, needs a mass"
    assert quoted("x" * 61) == '"' + "x" * 57 + '..."'
    assert quoted('5" tube') == "'5\" tube'"
    assert quoted("a\x1b\n\u202e\ud800") == r'"a\x1b\n\u202e\ud800"'
