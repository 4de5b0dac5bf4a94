"""The text of one file by lines and columns, and the list in which its problems are gathered."""

from __future__ import annotations

import re
from bisect import bisect_right
from dataclasses import dataclass, field
from functools import cached_property

from hardpoint.findings import Finding, Path, Related, Severity, dotted
from hardpoint.load.reading_rules import DocumentRule

MAX_PER_RULE = 100
"""Findings of one rule that one file can bring; what goes beyond is counted in a last one."""

_BREAK = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True, order=True)
class Position:
    """A place in a file; line and column count from 1, columns in characters."""

    line: int
    column: int


START = Position(1, 1)


@dataclass(frozen=True)
class Source:
    """A text whose lines end in LF, CRLF or CR and in nothing else, as editors count them."""

    text: str

    @cached_property
    def _starts(self) -> list[int]:
        return [0, *(found.end() for found in _BREAK.finditer(self.text))]

    @property
    def lines(self) -> int:
        """How many lines there are; behind a break at the very end an empty one begins."""
        return len(self._starts)

    def position(self, index: int) -> Position:
        """Where the character with this index stands."""
        line = bisect_right(self._starts, index)
        return Position(line, index - self._starts[line - 1] + 1)

    def index(self, position: Position) -> int:
        """The index of a place; the end of the text for a place behind it."""
        if position.line > len(self._starts):
            return len(self.text)
        return min(self._starts[position.line - 1] + position.column - 1, len(self.text))

    def line(self, number: int) -> str:
        """One line without its end; "" behind the last."""
        if not 1 <= number <= len(self._starts):
            return ""
        end = self._starts[number] if number < len(self._starts) else len(self.text)
        return self.text[self._starts[number - 1] : end].rstrip("\r\n")

    def rest(self, position: Position) -> str:
        """What stands from a place to the end of its line, without blanks at the end."""
        return self.line(position.line)[position.column - 1 :].rstrip()


@dataclass
class Problems:
    """The findings of one file, bounded in number for each rule so that no file can flood memory or screen."""

    file: str
    _found: list[Finding] = field(default_factory=list)
    _counts: dict[str, int] = field(default_factory=dict)
    _beyond: dict[str, Finding] = field(default_factory=dict)

    def add(
        self,
        rule: DocumentRule,
        at: Position,
        message: str,
        *,
        path: Path = (),
        read: str = "",
        expected: str = "",
        example: str = "",
        severity: Severity = "error",
        related: tuple[Related, ...] = (),
    ) -> None:
        """Note one problem; from ``MAX_PER_RULE`` on it is only counted."""
        self._counts[rule] = self._counts.get(rule, 0) + 1
        if rule in self._beyond:
            return
        where = (self.file, at.line, at.column, dotted(path))
        finding = Finding(rule, severity, *where, read, expected, example, message, related)
        if self._counts[rule] > MAX_PER_RULE:
            self._beyond[rule] = finding
        else:
            self._found.append(finding)

    def listed(self) -> list[Finding]:
        """All findings in the order of the contract."""
        return sorted([*self._found, *map(self._remainder, self._beyond.values())], key=lambda found: found.sort_key)

    def _remainder(self, first: Finding) -> Finding:
        more = self._counts[first.rule] - MAX_PER_RULE
        message = f"got at least {more} more of this kind from here on; mend the ones above first"
        where = (first.file, first.line, first.column, first.path)
        return Finding(first.rule, first.severity, *where, "", first.expected, first.example, message)
