"""What a check finds: one frozen record per problem, shared by the reader, the rules and the reporters."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

Severity = Literal["error", "warning"]
Path = tuple[str | int, ...]
"""Where a value stands in a record: mapping keys and list indices from the top of its file."""

HIDDEN = re.compile(
    r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f"
    r"\ufeff\ufff9-\ufffb\ufffe\uffff\ud800-\udfff\U000e0000-\U000e007f]"
)
"""Characters that nobody sees, or that change how their neighbours are shown: controls (C0 without tab and line breaks,
DEL, C1), bidirectional controls, zero-width and other format characters, line and paragraph separators, lone
surrogates, non-characters. They have no place in a record and are never sent to a terminal."""

_NOT_FOR_ONE_LINE = re.compile(f"[\\t\\n\\r]|{HIDDEN.pattern}")


@dataclass(frozen=True)
class Related:
    """Another place that a finding speaks of, for example the first of two duplicate keys."""

    file: str
    line: int
    path: str
    message: str


@dataclass(frozen=True)
class Finding:
    """One problem in one place of one file.

    ``read`` is what stood there ("" where nothing did), ``expected`` what is needed in words, ``example`` a value
    that would be accepted ("" where none can be given). ``message`` is the whole sentence for people, without the
    place. Lines and columns count from 1.
    """

    rule: str
    severity: Severity
    file: str
    line: int
    column: int
    path: str
    read: str
    expected: str
    example: str
    message: str
    related: tuple[Related, ...] = ()

    @property
    def sort_key(self) -> tuple[str, int, str, str, str]:
        """Order of the contract (file, line, rule), then path and message so that it never depends on luck."""
        return (self.file, self.line, self.rule, self.path, self.message)


def dotted(path: Path) -> str:
    """A path as findings and tail records print it: ``batteries.main.mass``, ``exits.sill-handle.steps.1.way``."""
    return ".".join(str(part) for part in path)


def visible(text: str) -> str:
    r"""The text on one line with every hidden character written out (``\x1b``, ``\u202e``, ``\n``): safe to print."""
    return _NOT_FOR_ONE_LINE.sub(lambda found: found[0].encode("unicode_escape").decode("ascii"), text)


def quoted(text: str, limit: int = 60) -> str:
    """The text as messages quote it: visible, in quotes that it does not hold itself, shortened to ``limit``."""
    short = text if len(text) <= limit else text[: limit - 3] + "..."
    mark = '"' if '"' not in short else "'" if "'" not in short else "`"
    return f"{mark}{visible(short)}{mark}"


def got_needs(read: str, expected: str, example: str = "") -> str:
    """The usual sentence of a finding: ``got "12 m", needs a mass, for example "12 kg"``."""
    got = quoted(read) if read else "nothing"
    return f"got {got}, needs {expected}" + (f", for example {quoted(example)}" if example else "")
