"""Builds the tree of a record from parser events, and refuses on the way what a record may not hold."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from hardpoint.findings import HIDDEN, Path, Related, dotted, quoted
from hardpoint.load.bounds import MAX_DEPTH, MAX_KEY, MAX_NODES
from hardpoint.load.characters import REPLACEMENT, character_name
from hardpoint.load.reading_rules import DocumentRule
from hardpoint.load.source import START, Position, Problems, Source
from hardpoint.load.syntax import ESCAPE, Explanation, bad_escape, escape_at, in_quotes, sign_begins_text

Tree = str | list["Tree"] | dict[str, "Tree"]
"""A record as text: scalars as written, lists, mappings with text keys."""

_SAY = 'say "unknown" if nobody knows, "not fitted" if somebody looked, "not applicable" if the question does not arise'
_NAMED_ESCAPES = {"0": "\0", "a": "\a", "b": "\b", "t": "\t", "v": "\v", "f": "\f", "r": "\r", "e": "\x1b"}
_NAMED_ESCAPES |= {"N": "\x85", "L": "\u2028", "P": "\u2029"}
"""YAML 1.1, section 5.6: the escapes of one letter that stand for characters a record may not hold."""
_UNSEEN = re.compile(rf"[\t\r]|{HIDDEN.pattern}")
_MAYBE_TEXT = re.compile(r" +(#[^\s#][^\r\n]*)")
_TAG = re.compile(r"!\S*")
_BLOCK_HEADER = re.compile(r"[|>][-+0-9]*(?:\s|$)")


def position_of(mark: Any) -> Position:
    """A parser's mark, which counts from 0."""
    return Position(mark.line + 1, mark.column + 1)


@dataclass(frozen=True, slots=True)
class _Slot:
    """Where a value goes. ``kept`` is False below a refused key: read on for its problems, but not stored."""

    path: Path
    at: Position
    kept: bool


@dataclass(slots=True)
class _Open:
    """A mapping or a list whose end has not come yet; ``entry`` is set while the value of a key is due."""

    node: dict[str, Tree] | list[Tree]
    slot: _Slot
    start: Position
    brackets: bool
    members: int = 0
    entry: _Slot | None = None
    keys: dict[str, Position] = field(default_factory=dict)


class Builder:
    """Takes events in order and never raises. ``stopped``: what was read is not the whole record."""

    def __init__(self, source: Source, problems: Problems) -> None:
        self.root: Tree | None = None
        self.positions: dict[Path, Position] = {}
        self.values: dict[Path, Position] = {}
        self.spoiled: set[Path] = set()
        self.stopped = False
        self.ended_by_mark = False
        self._source = source
        self._problems = problems
        self._stack: list[_Open] = []
        self._nodes = 0
        self._hollow = False
        self._unsure = False
        self._ended = False
        self._previous: yaml.Event | None = None

    def take(self, event: yaml.Event) -> None:
        """One event of the parser."""
        if isinstance(event, yaml.NodeEvent):
            self._take_node(event)
        elif isinstance(event, yaml.CollectionEndEvent):
            self._close()
        elif isinstance(event, yaml.DocumentStartEvent) and self._ended:
            self.note_second_document(position_of(event.start_mark))
        elif isinstance(event, yaml.DocumentEndEvent):
            self._ended, self.ended_by_mark = True, bool(event.explicit)
            return
        self._previous = event

    def complete(self) -> bool:
        """After the last event: whether there was a mapping with something in it; else that is noted."""
        if isinstance(self.root, dict) and not self._hollow:
            return not self._unsure
        whole = "a list" if isinstance(self.root, list) else "{}" if isinstance(self.root, dict) else self.root or ""
        self._note_top(whole.strip())
        return False

    @property
    def quotes(self) -> tuple[Position, Position] | None:
        """Begin and end of the text in quotes read last, if that came last: a slip with quotes shows just behind."""
        last = self._previous
        if isinstance(last, yaml.ScalarEvent) and last.style in ("'", '"'):
            return position_of(last.start_mark), position_of(last.end_mark)
        return None

    @property
    def bracket(self) -> Position | None:
        """Where the innermost open bracket stands, if one is open."""
        return self._stack[-1].start if self._stack and self._stack[-1].brackets else None

    def note_syntax(self, told: Explanation) -> None:
        """A syntax error as ``load.syntax`` explains it."""
        self._problems.add(
            told.rule, told.at, told.message, read=told.read, expected=told.expected, example=told.example
        )

    def note_second_document(self, at: Position) -> None:
        """Something follows the end of the record."""
        message = 'got a second record in this file (a line "---" or "..." ends the first); give each its own file'
        self._problems.add("several-documents", at, message, expected="one record in one file")
        self.stopped = True

    def note_depth(self, at: Position) -> None:
        """Too many levels. libyaml sees a thousand brackets in a row before it hands out the first."""
        self._stop("too-deep", at, f"got more than {MAX_DEPTH} levels one inside the other, needs fewer")

    def escape_near(self, at: Position) -> tuple[Position, str]:
        """The escape at a place in the text that follows the last event."""
        begun = position_of(self._previous.end_mark) if self._previous else START
        return escape_at(self._source, begun, at)

    def _take_node(self, event: yaml.NodeEvent) -> None:
        at = position_of(event.start_mark)
        self._nodes += 1
        if self._nodes > MAX_NODES:
            self._stop("too-many", at, f"got more than {MAX_NODES} keys and values, needs a smaller file")
            return
        if event.anchor is not None or getattr(event, "tag", None) is not None:
            self._note_features(event, at)
        slot = self._next_slot(at)
        if isinstance(event, yaml.CollectionStartEvent):
            self._open(event, slot, at)
        elif isinstance(event, yaml.ScalarEvent):
            if event.style in ("|", ">") and not self._is_block(at):
                return
            if slot:
                self._take_value(event, slot, at)
            else:
                self._take_key(event, at)
        else:
            self._take_alias(slot, at)

    def _next_slot(self, at: Position) -> _Slot | None:
        """Where the next node goes; None where it is a key."""
        if not self._stack:
            return _Slot((), at, kept=True)
        parent = self._stack[-1]
        if isinstance(parent.node, list):
            parent.members += 1
            return _Slot((*parent.slot.path, parent.members - 1), at, parent.slot.kept)
        slot, parent.entry = parent.entry, None
        return slot

    def _store(self, slot: _Slot, node: Tree, at: Position) -> None:
        if not slot.kept:
            return
        self.positions[slot.path] = slot.at
        self.values[slot.path] = at
        if not self._stack:
            self.root = node
            return
        parent = self._stack[-1].node
        if isinstance(parent, list):
            parent.append(node)
        else:
            parent[str(slot.path[-1])] = node

    def _open(self, event: yaml.CollectionStartEvent, slot: _Slot | None, at: Position) -> None:
        if len(self._stack) == MAX_DEPTH:
            self.note_depth(at)
            return
        if slot is None:
            self._refuse_key(
                "", at, "got brackets as a key, needs words; put words that begin with a bracket in quotes"
            )
            slot = _Slot(self._stack[-1].slot.path, at, kept=False)
        node: dict[str, Tree] | list[Tree] = {} if isinstance(event, yaml.MappingStartEvent) else []
        self._store(slot, node, at)
        self._stack.append(_Open(node, slot, at, bool(event.flow_style)))

    def _close(self) -> None:
        closed = self._stack.pop()
        if closed.members:
            return
        if not self._stack:
            self._hollow = True
            return
        self._note_empty(closed.slot, "[]" if isinstance(closed.node, list) else "{}")

    def _take_value(self, event: yaml.ScalarEvent, slot: _Slot, at: Position) -> None:
        text = self._seen(event, slot.path, at)
        if REPLACEMENT in text:
            self.spoiled.add(slot.path)
        if not text and not event.style:
            at = slot.at  # inside brackets the parsers disagree on where nothing begins
        self._store(slot, text, at)
        if not text.strip() and self._stack:
            self._note_empty(slot, "")
        elif not event.style:
            self._warn_of_comment(event, slot)

    def _is_block(self, at: Position) -> bool:
        """False, and noted, for ``>#`` and the like, of which libyaml makes a comment and Python's parser an error."""
        header = _BLOCK_HEADER.match(self._source.text, self._source.index(at))
        if header or self._unsure:
            return True
        self.note_syntax(sign_begins_text(at, self._source.rest(at)))
        self.stopped = True
        return False

    def _take_key(self, event: yaml.ScalarEvent, at: Position) -> None:
        parent = self._stack[-1]
        key = self._seen(event, parent.slot.path, at)
        if REPLACEMENT in key:
            self.spoiled.add((*parent.slot.path, key))
        parent.members += 1
        reason = _not_a_key(key)
        if key == "<<":
            self._refuse_merge(parent, at)
        elif reason:
            self._refuse_key(key, at, reason)
        elif key in parent.keys:
            self._refuse_double(parent, key, at)
        else:
            parent.keys[key] = at
            parent.entry = _Slot((*parent.slot.path, key), at, parent.slot.kept)

    def _take_alias(self, slot: _Slot | None, at: Position) -> None:
        """Noted already; nothing is looked up, so that no alias can multiply anything."""
        if slot:
            self._store(slot, "", at)
            self.spoiled.add(slot.path)
        else:
            parent = self._stack[-1]
            parent.members += 1
            parent.entry = _Slot(parent.slot.path, at, kept=False)

    def _seen(self, event: yaml.ScalarEvent, path: Path, at: Position) -> str:
        """The text without hidden characters; those that came in as escapes are noted here."""
        text: str = event.value
        if event.style == '"' and _UNSEEN.search(text):
            self._note_escapes(path, at, position_of(event.end_mark))
            text = _UNSEEN.sub(REPLACEMENT, text)
        return text

    def _note_escapes(self, path: Path, start: Position, end: Position) -> None:
        index = self._source.index
        for found in ESCAPE.finditer(self._source.text, index(start), index(end)):
            code = found[0][2:]
            character = chr(int(code, 16)) if code else _NAMED_ESCAPES.get(found[0][1], "")
            at = self._source.position(found.start())
            if "\ud800" <= character <= "\udfff":
                self.note_syntax(bad_escape(at, found[0]))
                self.stopped = True
            elif _UNSEEN.fullmatch(character):
                name = character_name(character)
                message = f"got {quoted(found[0])}, the hidden character {name}, needs text that can be seen"
                self._problems.add(
                    "control-character", at, message, path=path, read=found[0], expected="text that can be seen"
                )

    def _stop(self, rule: DocumentRule, at: Position, message: str) -> None:
        self._problems.add(rule, at, message)
        self.stopped = True

    def _note_top(self, got: str) -> None:
        expected, example = "keys with a colon, a space and a value", "name: Quenby Merle"
        shown = "a list" if got == "a list" else quoted(got) if got else "an empty file"
        message = f"got {shown}, needs {expected}, for example {quoted(example)}"
        at = self.values.get((), START)
        self._problems.add("top-level", at, message, read=got, expected=expected, example=example)

    def _note_features(self, event: yaml.NodeEvent, at: Position) -> None:
        """Tags, anchors and aliases, wherever they stand."""
        path = self._path_here()
        if event.anchor is not None:
            kind, sign = ("alias", "*") if isinstance(event, yaml.AliasEvent) else ("anchor", "&")
            expected = f"the value written out where it belongs, or quotes round words that begin with {sign}"
            read = f"{sign}{event.anchor}"
            message = f"got the {kind} {quoted(read)}, needs {expected}"
            self._problems.add("yaml-anchor", at, message, path=path, read=read, expected=expected)
        if getattr(event, "tag", None) is not None:
            self._unsure = True  # the two parsers end some tags at different letters
            found = _TAG.search(self._source.text, self._source.index(at))
            read = found[0] if found else "!"
            expected = "the value alone, or quotes round words that begin with !"
            message = f"got the tag {quoted(read)}, needs {expected}"
            self._problems.add("yaml-tag", at, message, path=path, read=read, expected=expected)

    def _path_here(self) -> Path:
        """The path of the node that comes next; for a key that of its mapping."""
        if not self._stack:
            return ()
        parent = self._stack[-1]
        if isinstance(parent.node, list):
            return (*parent.slot.path, parent.members)
        return parent.entry.path if parent.entry else parent.slot.path

    def _note_empty(self, slot: _Slot, read: str) -> None:
        if not slot.kept:  # a consequence of the refused key above
            return
        self.spoiled.add(slot.path)
        message = f"got {quoted(read) if read else 'nothing'}; {_SAY}"
        if not read and ":" in str(slot.path[-1]):
            message += "; is a space missing after the colon?"
        elif not read and self._stack[-1].brackets:
            message += "; if a comma belongs to the words before it, put the words in quotes"
        expected = "a value, or why there is none"
        self._problems.add(
            "empty-value", slot.at, message, path=slot.path, read=read, expected=expected, example="unknown"
        )

    def _refuse_key(self, key: str, at: Position, message: str) -> None:
        parent = self._stack[-1]
        self._problems.add("not-text-key", at, message, path=parent.slot.path, read=key, expected="a key in words")
        parent.members += 1
        parent.entry = _Slot(parent.slot.path, at, kept=False)

    def _refuse_merge(self, parent: _Open, at: Position) -> None:
        expected = "the keys written out where they belong"
        message = f'got the merge key "<<", needs {expected}'
        self._problems.add("merge-key", at, message, path=parent.slot.path, read="<<", expected=expected)
        parent.entry = _Slot(parent.slot.path, at, kept=False)

    def _refuse_double(self, parent: _Open, key: str, at: Position) -> None:
        path = (*parent.slot.path, key)
        line = parent.keys[key].line
        message = f"got the key {quoted(key)} twice (first in line {line}); keep one"
        first = Related(self._problems.file, line, dotted(path), "first here")
        self._problems.add(
            "duplicate-key", at, message, path=path, related=(first,), read=key, expected="each key once"
        )
        parent.entry = _Slot(path, at, kept=False)

    def _warn_of_comment(self, event: yaml.ScalarEvent, slot: _Slot) -> None:
        """``knob #2`` is the value ``knob`` and a comment: without a word, half of what was written would be lost."""
        end = position_of(event.end_mark)
        found = _MAYBE_TEXT.match(self._source.text, self._source.index(end))
        if found:
            example = in_quotes(f"{event.value}{found[0]}")
            expected = f"a space after # if {quoted(found[1])} is a comment, else quotes round the whole value"
            message = f"got {quoted(event.value)} and no more, needs {expected}, for example {quoted(example)}"
            self._problems.add(
                "comment-or-text",
                end,
                message,
                path=slot.path,
                severity="warning",
                read=event.value,
                expected=expected,
                example=example,
            )


def _not_a_key(key: str) -> str:
    """Why a text cannot be a key, or ""."""
    if not key.strip():
        return "got a colon without a key, needs a key before it"
    if len(key) > MAX_KEY:
        return f"got a key of {len(key)} characters, needs at most {MAX_KEY}; is a colon missing before?"
    if "\n" in key:
        return f"got a key over several lines ({quoted(key)}), needs one line"
    return ""
