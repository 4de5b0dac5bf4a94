"""One YAML record file as a plain tree of text with the place of every value.

YAML's own reading of scalars is switched off (``off``, ``12:30``, ``010``, ``1.10`` stay as written), and so is every
feature that makes a file say something that is not seen where it stands: tags, anchors, aliases, merge keys, several
documents. Everything is done on parser events, one after the other, with bounds that are checked before something is
built: neither depth nor aliases nor size can cost more than a moment.
"""

from __future__ import annotations

import hashlib
import pathlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Protocol, cast

import yaml

from hardpoint.findings import Finding, Path, got_needs
from hardpoint.load.bounds import RefusedError, read_bounded, refuse_size
from hardpoint.load.characters import decode
from hardpoint.load.pure import PureLoader
from hardpoint.load.source import START, Position, Problems, Source
from hardpoint.load.syntax import SyntaxProblem, bad_escape, explain
from hardpoint.load.tree import Builder, Tree, position_of

__all__ = ["Document", "Position", "Tree", "read", "read_text"]


@dataclass(frozen=True)
class Document:
    """A record file that was read.

    Every scalar of ``tree`` is text exactly as written (quotes and escapes resolved). ``positions`` gives for a path
    the place of the key (in a list: of the item), ``values`` the place where the value itself begins; both hold the
    whole file under the empty path. ``digest`` is the SHA-256 of the bytes, in hexadecimal.

    A document can come together with errors, so that its other values are checked in the same run; it must not be
    published then. ``spoiled`` are the paths of values that such an error leaves without meaning (the tree holds ""
    there): whatever a later check says of them or of what lies below is a mere consequence.
    """

    file: str
    tree: dict[str, Tree]
    positions: Mapping[Path, Position]
    values: Mapping[Path, Position]
    digest: str
    spoiled: frozenset[Path] = frozenset()

    def at(self, path: Path) -> Position:
        """The place of a path, or of its nearest ancestor that exists."""
        while path not in self.positions:
            path = path[:-1]
        return self.positions[path]

    def is_spoiled(self, path: Path) -> bool:
        """Whether an error of reading already speaks of this path or of one above it."""
        return any(path[:length] in self.spoiled for length in range(len(path) + 1))


def read(path: pathlib.Path, shown_as: str) -> tuple[Document | None, list[Finding]]:
    """Read one file; ``shown_as`` is its name in findings (``fleet/types/x.yaml``).

    Returns the document, or None where nothing can be read on, and all findings. Without a document there is at least
    one error. Never raises for what a file holds or is: symbolic links, folders, pipes, unreadable and oversized files
    are findings (``not-a-file``, ``cannot-read``, ``too-large``).
    """
    try:
        data = read_bounded(path)
    except RefusedError as refused:
        return None, _refused(refused, shown_as)
    return read_text(data, shown_as)


def read_text(data: bytes, shown_as: str, *, pure: bool = False) -> tuple[Document | None, list[Finding]]:
    """As ``read``, from bytes; ``pure`` takes the parser in Python even where libyaml is present."""
    try:
        refuse_size(len(data))
    except RefusedError as refused:
        return None, _refused(refused, shown_as)
    problems = Problems(shown_as)
    source = decode(data, problems)
    builder = _built(_without_directives(source, problems), problems, pure) if source else None
    document = None
    if builder and isinstance(builder.root, dict):
        places = (builder.positions, builder.values)
        digest = hashlib.sha256(data).hexdigest()
        document = Document(shown_as, builder.root, *places, digest, frozenset(builder.spoiled))
    return document, problems.listed()


def _refused(refused: RefusedError, shown_as: str) -> list[Finding]:
    problems = Problems(shown_as)
    problems.add(refused.rule, START, refused.message, read=refused.read, expected=refused.expected)
    return problems.listed()


def _without_directives(source: Source, problems: Problems) -> Source:
    """The source with lines such as ``%YAML 1.2`` before the record noted and made comments.

    The two parsers differ in which of them they accept.
    """
    starts = []
    for number in range(1, source.lines + 1):
        line = source.line(number)
        if line.startswith("%"):
            starts.append(source.index(Position(number, 1)))
            message = got_needs(line.rstrip(), "the record alone", "name: Quenby Merle")
            problems.add("yaml-directive", Position(number, 1), message, read=line, expected="the record alone")
        elif line.strip() and not line.lstrip().startswith("#"):
            break
    if not starts:
        return source
    text = list(source.text)
    for start in starts:
        text[start] = "#"
    return Source("".join(text))


def _built(source: Source, problems: Problems, pure: bool) -> Builder | None:
    """The tree of a source, or None where an error makes it incomplete."""
    builder = Builder(source, problems)
    try:
        for event in _events(source, pure):
            builder.take(event)
            if builder.stopped:
                return None
    except yaml.MarkedYAMLError as error:
        _note_syntax(error, source, builder, problems)
        return None
    except _EscapeError as error:
        builder.note_syntax(bad_escape(*builder.escape_near(error.at)))
        return None
    return builder if builder.complete() else None


def _note_syntax(error: yaml.MarkedYAMLError, source: Source, builder: Builder, problems: Problems) -> None:
    at = position_of(error.problem_mark) if error.problem_mark else START
    begun = position_of(error.context_mark) if error.context_mark else at
    if builder.ended_by_mark:
        builder.note_second_document(at)
        return
    if "nesting depth" in str(error.problem):
        builder.note_depth(at)
        return
    problem = SyntaxProblem(source, str(error.problem), str(error.context), at, begun, builder.quotes, builder.bracket)
    builder.note_syntax(explain(problem))


class _EscapeError(Exception):
    """The parser in Python met an escape for a code point that does not exist."""

    def __init__(self, at: Position) -> None:
        super().__init__(at)
        self.at = at


class _Parser(Protocol):
    def check_event(self) -> bool: ...

    def get_event(self) -> yaml.Event: ...

    def dispose(self) -> None: ...


def _events(source: Source, pure: bool) -> Iterator[yaml.Event]:
    fast: Any = None if pure else getattr(yaml, "CSafeLoader", None)
    parser = cast(
        _Parser, (fast or PureLoader)(f"{source.text}\n")
    )  # they differ in where a last line without end ends
    try:
        while parser.check_event():
            yield parser.get_event()
    except (ValueError, OverflowError) as error:
        # Only the parser in Python: it calls chr() with whatever number an escape holds.
        raise _EscapeError(position_of(cast(PureLoader, parser).get_mark())) from error
    finally:
        parser.dispose()
