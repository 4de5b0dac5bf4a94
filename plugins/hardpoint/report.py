"""Findings as text for people, JSON for programs, and annotation lines for a forge's workflow log."""

from __future__ import annotations

import json
from collections.abc import Iterable
from datetime import date

from hardpoint.findings import Finding, Severity, visible

FORMAT = "hardpoint-check/1"


def text(findings: Iterable[Finding], as_of: date, files: int) -> str:
    """One line a finding, related places indented below it, a line of counts at the end; hidden characters escaped.

    >>> print(text([], date(2027, 6, 5), 15))
    no findings in 15 files, as of 2027-06-05
    """
    ordered = _ordered(findings)
    lines = [line for finding in ordered for line in _text_lines(finding)]
    return "\n".join([*lines, _summary(ordered, as_of, files)])


def as_json(findings: Iterable[Finding], as_of: date, files: int) -> str:
    """The ``hardpoint-check/1`` object, in ASCII so that no terminal or pipe can alter it."""
    ordered = _ordered(findings)
    report = {
        "format": FORMAT,
        "as_of": as_of.isoformat(),
        "files": files,
        "counts": {"error": _count(ordered, "error"), "warning": _count(ordered, "warning")},
        "findings": [_as_object(finding) for finding in ordered],
    }
    return json.dumps(report, indent=2, ensure_ascii=True)


def github(findings: Iterable[Finding], as_of: date, files: int) -> str:
    """Workflow commands ``::error file=...,line=...,col=...,title=...::message``, then the line of counts.

    Escaping as documented for workflow commands: % CR LF in the message, colon and comma too in a property. A finding
    is one command: related places follow in the same message on lines of their own (%0A).
    """
    ordered = _ordered(findings)
    return "\n".join([*(_annotation(finding) for finding in ordered), _summary(ordered, as_of, files)])


def _ordered(findings: Iterable[Finding]) -> list[Finding]:
    return sorted(findings, key=lambda finding: finding.sort_key)


def _count(findings: list[Finding], severity: Severity) -> int:
    return sum(finding.severity == severity for finding in findings)


def _number(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _summary(findings: list[Finding], as_of: date, files: int) -> str:
    errors, warnings = _count(findings, "error"), _count(findings, "warning")
    counts = [_number(count, noun) for count, noun in ((errors, "error"), (warnings, "warning")) if count]
    return f"{', '.join(counts) or 'no findings'} in {_number(files, 'file')}, as of {as_of.isoformat()}"


def _said(path: str, message: str) -> str:
    """A message after its path; a finding about a whole file has no path."""
    return visible(f"{path}: {message}" if path else message)


def _text_lines(finding: Finding) -> list[str]:
    warning = "warning: " if finding.severity == "warning" else ""
    said = _said(finding.path, finding.message)
    first = f"{visible(finding.file)}:{finding.line}: {warning}{said}  [{visible(finding.rule)}]"
    return [first, *(f"    {line}" for line in _related_lines(finding))]


def _related_lines(finding: Finding) -> list[str]:
    return [f"{visible(place.file)}:{place.line}: {_said(place.path, place.message)}" for place in finding.related]


def _as_object(finding: Finding) -> dict[str, object]:
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "file": finding.file,
        "line": finding.line,
        "column": finding.column,
        "path": finding.path,
        "read": finding.read,
        "expected": finding.expected,
        "example": finding.example,
        "message": finding.message,
        "related": [
            {"file": place.file, "line": place.line, "path": place.path, "message": place.message}
            for place in finding.related
        ],
    }


def _annotation(finding: Finding) -> str:
    properties = {"file": finding.file, "line": finding.line, "col": finding.column, "title": finding.rule}
    listed = ",".join(f"{name}={_property(visible(str(value)))}" for name, value in properties.items())
    message = "\n".join([_said(finding.path, finding.message), *_related_lines(finding)])
    return f"::{finding.severity} {listed}::{_data(message)}"


def _data(value: str) -> str:
    return value.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(value: str) -> str:
    return _data(value).replace(":", "%3A").replace(",", "%2C")
