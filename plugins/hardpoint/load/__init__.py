"""Reading a fleet folder: files to models, every problem collected, nothing guessed."""

from __future__ import annotations

import datetime as dt
import pathlib
from dataclasses import dataclass, replace

from hardpoint.findings import Finding
from hardpoint.load.fleet_files import Reader
from hardpoint.load.photo_files import pictures
from hardpoint.load.reading_rules import READING_RULES
from hardpoint.records.fleet import Fleet

__all__ = ["READING_RULES", "Checked", "FleetError", "Reading", "check", "fleet", "read"]


class FleetError(Exception):
    """A fleet that cannot be read whole; ``findings`` holds every problem."""

    def __init__(self, findings: list[Finding]) -> None:
        first = next(finding for finding in findings if finding.severity == "error")
        super().__init__(
            f"{len(findings)} problems, the first: {first.file}:{first.line}: {first.path}: {first.message}"
        )
        self.findings = findings


@dataclass(frozen=True)
class Reading:
    """What could be read, and what stood in the way."""

    fleet: Fleet
    findings: list[Finding]


@dataclass(frozen=True)
class Checked:
    """A reading with the rules applied to all of it that could be read; findings in the contract's order."""

    fleet: Fleet
    findings: list[Finding]
    files: int

    @property
    def errors(self) -> list[Finding]:
        """What no author may publish."""
        return [finding for finding in self.findings if finding.severity == "error"]


def read(folder: pathlib.Path) -> Reading:
    """Read a fleet folder as far as possible."""
    reader = Reader(folder)
    fleet = reader.fleet()
    ready, found = pictures(folder, fleet)
    findings = sorted([*reader.findings, *found], key=lambda finding: finding.sort_key)
    return Reading(replace(fleet, pictures=ready), findings)


def fleet(path: pathlib.Path | str) -> Fleet:
    """The fleet of a folder; raises :class:`FleetError` with all findings if any cannot be read."""
    reading = read(pathlib.Path(path))
    if any(finding.severity == "error" for finding in reading.findings):
        raise FleetError(reading.findings)
    return reading.fleet


def check(folder: pathlib.Path, as_of: dt.date) -> Checked:
    """Read a folder and apply every rule to what could be read: all problems of all files in one go."""
    from hardpoint import rules

    reading = read(folder)
    found = [*reading.findings, *rules.check(reading.fleet, as_of)]
    return Checked(reading.fleet, sorted(found, key=lambda finding: finding.sort_key), reading.fleet.files)
