"""Reading one record file: the tree and its places against PyYAML's own loaders, every refusal by its exact words."""

from __future__ import annotations

import hashlib
import os
import pathlib
import time
import tracemalloc
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from hardpoint.findings import HIDDEN, Finding, quoted
from hardpoint.load.bounds import MAX_BYTES, MAX_DEPTH, MAX_KEY, MAX_NODES, RefusedError, read_bounded
from hardpoint.load.documents import Document, Position, read, read_text
from hardpoint.load.source import MAX_PER_RULE

SAY = 'say "unknown" if nobody knows, "not fitted" if somebody looked, "not applicable" if the question does not arise'

RECORD = """\
# yaml-language-server: $schema=x.json
name: Quenby Merle
datum: {zero: rear face of spinner, grows: aft}
signs:
  wing: {see: "low wing, cropped tips", visible: [upright, inverted]}
exits:
  sill-handle:
    steps:
      - {do: press, until: is it free?}
      - do: turn
        by: 90 deg   # somebody looked
note: |
  First line: here.
    - second
"""


@pytest.fixture(params=[False, True], ids=["libyaml", "python"])
def pure(request: pytest.FixtureRequest) -> bool:
    return bool(request.param)


def test_both_parsers_are_there() -> None:
    """Else half of this file would compare the parser in Python with itself."""
    assert yaml.__with_libyaml__


def parsed(text: str, pure: bool = False) -> Document:
    document, findings = read_text(text.encode(), "fleet/types/x.yaml", pure=pure)
    assert findings == []
    assert document is not None
    return document


def told(text: str | bytes, pure: bool = False) -> list[str]:
    """The findings as ``line:column [rule] path: message``."""
    data = text.encode() if isinstance(text, str) else text
    document, findings = read_text(data, "fleet/types/x.yaml", pure=pure)
    assert document is not None or any(found.severity == "error" for found in findings)
    return [shown(found) for found in findings]


def shown(found: Finding) -> str:
    return f"{found.line}:{found.column} [{found.rule}] {found.path + ': ' if found.path else ''}{found.message}"


def walk(node: yaml.Node, path: tuple[str | int, ...] = ()) -> dict[tuple[str | int, ...], tuple[Any, Any]]:
    """Places by PyYAML's composed nodes: path to (mark of the key or item, mark of the value)."""
    places: dict[tuple[str | int, ...], tuple[Any, Any]] = {}
    if isinstance(node, yaml.MappingNode):
        children = [(key.value, key.start_mark, value) for key, value in node.value]
    elif isinstance(node, yaml.SequenceNode):
        children = [(index, item.start_mark, item) for index, item in enumerate(node.value)]
    else:
        return places
    for step, mark, value in children:
        places[(*path, step)] = (mark, value.start_mark)
        places |= walk(value, (*path, step))
    return places


# --- what is read ---------------------------------------------------------------------------------------------------


def test_the_tree_is_that_of_the_loader_which_resolves_nothing(pure: bool) -> None:
    assert parsed(RECORD, pure).tree == yaml.load(RECORD, Loader=yaml.CBaseLoader)


def test_places_are_those_of_composed_nodes(pure: bool) -> None:
    document = parsed(RECORD, pure)
    node = yaml.compose(RECORD, Loader=yaml.CSafeLoader)
    assert node is not None
    expected = walk(node)
    assert set(document.positions) == set(document.values) == {(), *expected}
    for path, (key, value) in expected.items():
        assert document.positions[path] == Position(key.line + 1, key.column + 1), path
        assert document.values[path] == Position(value.line + 1, value.column + 1), path


def test_a_place_by_hand(pure: bool) -> None:
    document = parsed(RECORD, pure)
    assert document.positions[()] == Position(2, 1)
    assert document.positions[("signs", "wing")] == Position(5, 3)
    assert document.values[("signs", "wing")] == Position(5, 9)
    assert document.positions[("exits", "sill-handle", "steps", 1)] == Position(10, 9)
    assert document.positions[("exits", "sill-handle", "steps", 1, "by")] == Position(11, 9)


def test_the_nearest_ancestor_answers_for_what_is_not_there() -> None:
    document = parsed(RECORD)
    assert document.at(("signs", "wing", "missing", 3)) == Position(5, 3)
    assert document.at(("nothing",)) == Position(2, 1)
    assert document.at(("signs", "wing")) == Position(5, 3)


@pytest.mark.parametrize(
    "scalar",
    [
        "off",
        "no",
        "on",
        "yes",
        "12:30",
        "010",
        "1e3",
        "1.10",
        "~",
        "null",
        "0x1F",
        "2026-03-02",
        ".inf",
        "=",
        "-",
        "1_0",
    ],
)
def test_scalars_come_as_written(scalar: str, pure: bool) -> None:
    text = f"a: [{scalar}]\nb: '{scalar}'\n'{scalar}': c\n" if scalar != "-" else f"a: ['-']\nb: '-'\n'{scalar}': c\n"
    assert parsed(text, pure).tree == {"a": [scalar], "b": scalar, scalar: "c"}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("a: |\n  one\n  two: three\n", "one\ntwo: three\n"),
        ("a: >-\n  one\n  two\n", "one two"),
        ("a: one\n  two\n", "one two"),
        ('a: "one\\ntwo \\u00b0"\n', "one\ntwo °"),
        ("a: 'it''s'\n", "it's"),
        ("a: knob # two\n", "knob"),
        ('a: 5" tube\r\nb: c\r\n', '5" tube'),
        ("\ufeffa: b\n", "b"),
        ("a: b", "b"),
        ("--- \na: b\n...\n", "b"),
    ],
)
def test_text_in_all_its_forms(text: str, value: str, pure: bool) -> None:
    assert parsed(text, pure).tree["a"] == value


def test_a_question_mark_ends_no_words_in_brackets(pure: bool) -> None:
    assert parsed("a: {b: free? then, c: is it ?}\n", pure).tree == {"a": {"b": "free? then", "c": "is it ?"}}


@pytest.mark.parametrize("text", ["a: {b c ? :}\n", "a: {b:}\n", "a: [b:?, c]\n", "a: {b:[c]}\n"])
def test_a_colon_just_before_a_bracket_is_refused_by_both(text: str, pure: bool) -> None:
    expected = "needs a space and a value after the colon, or quotes round words that hold it"
    begin = text[4:].strip()
    assert told(text, pure) == [f"1:5 [bad-yaml] got {quoted(begin)}, {expected}"]


def test_the_place_of_nothing_is_that_of_its_key(pure: bool) -> None:
    document, _ = read_text(b"a: {b: }\nc:\n", "x.yaml", pure=pure)
    assert document is not None
    assert document.values[("a", "b")] == document.positions[("a", "b")] == Position(1, 5)
    assert document.values[("c",)] == Position(2, 1)


def test_columns_count_characters_and_not_bytes(pure: bool) -> None:
    assert parsed("a: {é: °C, b: c}\n", pure).positions[("a", "b")] == Position(1, 12)


def test_the_digest_is_of_the_bytes() -> None:
    data = b"\xef\xbb\xbfa: b\r\n"
    document, _ = read_text(data, "x.yaml")
    assert document is not None
    assert document.digest == hashlib.sha256(data).hexdigest()


def test_without_libyaml_the_parser_in_python_serves(monkeypatch: pytest.MonkeyPatch) -> None:
    before = parsed(RECORD)
    monkeypatch.delattr(yaml, "CSafeLoader")
    assert parsed(RECORD) == before


# --- what is refused ------------------------------------------------------------------------------------------------

EXAMPLE = 'for example "name: Quenby Merle"'
TOP = f"needs keys with a colon, a space and a value, {EXAMPLE}"

REFUSED = {
    "a: b\nc: d\na: e\n": ['3:1 [duplicate-key] a: got the key "a" twice (first in line 1); keep one'],
    "t: {off: b, 'off': c}\n": ['1:13 [duplicate-key] t.off: got the key "off" twice (first in line 1); keep one'],
    "a: !!str b\n": [
        '1:4 [yaml-tag] a: got the tag "!!str", needs the value alone, or quotes round words that begin with !'
    ],
    "a: ! stop\n": [
        '1:4 [yaml-tag] a: got the tag "!", needs the value alone, or quotes round words that begin with !'
    ],
    "a: !! b\n": ['1:4 [yaml-tag] got "!! b", needs quotes round text that begins with "!", for example \'"!! b"\''],
    "a: &x b\nc: *x\n": [
        '1:4 [yaml-anchor] a: got the anchor "&x", needs the value written out where it belongs, '
        "or quotes round words that begin with &",
        '2:4 [yaml-anchor] c: got the alias "*x", needs the value written out where it belongs, '
        "or quotes round words that begin with *",
    ],
    "a: * see note\n": [
        '1:4 [yaml-anchor] got "* see note", needs quotes round text that begins with "*", for example \'"* see note"\''
    ],
    "a: {<<: b}\n": ['1:5 [merge-key] a: got the merge key "<<", needs the keys written out where they belong'],
    "? [a]\n: b\nc: d\n": [
        "1:3 [not-text-key] got brackets as a key, needs words; put words that begin with a bracket in quotes"
    ],
    "a: {{ b }}\n": [
        "1:5 [not-text-key] a: got brackets as a key, needs words; put words that begin with a bracket in quotes"
    ],
    "'': b\n": ["1:1 [not-text-key] got a colon without a key, needs a key before it"],
    '"a\\nb": c\n': ['1:1 [not-text-key] got a key over several lines ("a\\nb"), needs one line'],
    "a:\n": [f"1:1 [empty-value] a: got nothing; {SAY}"],
    "a: ''\n": [f"1:1 [empty-value] a: got nothing; {SAY}"],
    "a: '  '\n": [f"1:1 [empty-value] a: got nothing; {SAY}"],
    "a: # later\n": [f"1:1 [empty-value] a: got nothing; {SAY}"],
    "a: {}\n": [f'1:1 [empty-value] a: got "{{}}"; {SAY}'],
    "a: []\n": [f'1:1 [empty-value] a: got "[]"; {SAY}'],
    "a:\n  - b\n  -\n": [f"3:4 [empty-value] a.1: got nothing; {SAY}"],
    "a: {what: left, right, b: c}\n": [
        f"1:17 [empty-value] a.right: got nothing; {SAY}; if a comma belongs to the words before it, "
        "put the words in quotes"
    ],
    "a: {fs:1200}\n": [f"1:5 [empty-value] a.fs:1200: got nothing; {SAY}; is a space missing after the colon?"],
    "a: b\n---\nc: d\n": [
        '2:1 [several-documents] got a second record in this file (a line "---" or "..." ends the first); '
        "give each its own file"
    ],
    "a: b\n...\nc: d\n": [
        '3:1 [several-documents] got a second record in this file (a line "---" or "..." ends the first); '
        "give each its own file"
    ],
    "": [f"1:1 [top-level] got an empty file, {TOP}"],
    "# later\n": [f"1:1 [top-level] got an empty file, {TOP}"],
    "{}\n": [f'1:1 [top-level] got "{{}}", {TOP}'],
    "- a\n- b\n": [f"1:1 [top-level] got a list, {TOP}"],
    "just words\n": [f'1:1 [top-level] got "just words", {TOP}'],
    "# so\n%YAML 1.2\n---\na: b\n": [f'2:1 [yaml-directive] got "%YAML 1.2", needs the record alone, {EXAMPLE}'],
    "%odd\n---\na: b\n": [f'1:1 [yaml-directive] got "%odd", needs the record alone, {EXAMPLE}'],
    "a: b\x00c\n": [
        "1:5 [control-character] got the hidden character U+0000, needs text that can be seen; "
        "delete it and type the words again"
    ],
    "a: b\u202ec\n": [
        "1:5 [control-character] got the hidden character U+202E (right-to-left override), needs text that can be "
        "seen; delete it and type the words again"
    ],
    'a: "b \\\\u202e \\u202e"\n': [
        '1:15 [control-character] a: got "\\u202e", the hidden character U+202E (right-to-left override), '
        "needs text that can be seen"
    ],
    "a: b\rc: d\n": [
        "1:5 [control-character] got the hidden character U+000D, needs text that can be seen; "
        "delete it and type the words again"
    ],
    "a:\tb\n": [
        "1:3 [bad-yaml] got a tab between the words, needs a space; a tab is shown differently by every editor"
    ],
    "a:\n\tb: c\n\td: e\n": [
        "2:1 [bad-yaml] got a tab in the indentation, needs two spaces for each level; a tab is shown differently "
        "by every editor",
        "3:1 [bad-yaml] got a tab in the indentation, needs two spaces for each level; a tab is shown differently "
        "by every editor",
    ],
    "a: knob #2\n": [
        '1:8 [comment-or-text] a: got "knob" and no more, needs a space after # if "#2" is a comment, '
        "else quotes round the whole value, for example '\"knob #2\"'"
    ],
}


@pytest.mark.parametrize("text", REFUSED, ids=repr)
def test_refusals_by_place_and_words(text: str, pure: bool) -> None:
    assert told(text, pure) == REFUSED[text]


SYNTAX = {
    "name:Foo\ndatum: x\n": '1:1 got "name:Foo", needs a space after the colon, for example "name: Foo"',
    '"a":b\n': "1:1 got '\"a\":b', needs a space after the colon, for example '\"a\": b'",
    "a: b\nc:d\ne: f\n": '2:1 got "c:d", needs a space after the colon, for example "c: d"',
    "a: b\ndatum zero\nc: d\n": '2:1 got "datum zero", needs a colon and a space after the key, '
    'for example "datum: zero"',
    "datum\nname: x\n": '1:1 got "datum", needs a colon and a space after the key, for example "datum: unknown"',
    "a: b\n-c\n": '2:1 got "-c", needs a space after the dash, for example "- c"',
    "what: press: then turn\n": '1:1 got "what: press: then turn", needs quotes round words that hold a colon, '
    "for example 'what: \"press: then turn\"'",
    "a: b\n  c: d\n": '2:3 got "c: d", needs to begin under the first letter of "a: b" in line 1, which has its value '
    "already (if it belongs to that value, put the whole value in quotes)",
    'a: "x\nb: c\n': "1:4 got '\"x', needs a closing quote in the same line, for example '\"x\"'",
    'a: "x\nb: "y"\n': "1:4 got '\"x', needs a closing quote in the same line, for example '\"x\"'",
    'a: "press" then\n': "1:4 got '\"press\" then', needs one pair of quotes round the whole value, of a kind that it "
    "does not hold, for example `'\"press\" then'`",
    "a: {b: 'pilot's left', c: d}\n": "1:8 got \"'pilot's left'\", needs one pair of quotes round the whole value, "
    'of a kind that it does not hold, for example `"pilot\'s left"`',
    "a: > 500 kg\n": '1:4 got "> 500 kg", needs quotes round text that begins with ">", for example \'"> 500 kg"\'',
    "a: >#\n": '1:4 got ">#", needs quotes round text that begins with ">", for example \'">#"\'',
    "a: @x\n": '1:4 got "@x", needs quotes round text that begins with "@", for example \'"@x"\'',
    "a: %x\n": '1:4 got "%x", needs quotes round text that begins with "%", for example \'"%x"\'',
    "a: ? b\n": '1:4 got "? b", needs quotes round text that begins with "?", for example \'"? b"\'',
    "a: , b\n": '1:4 got ", b", needs quotes round text that begins with ",", for example \'", b"\'',
    "a: -\n": '1:4 got "-", needs a word in place of a dash: unknown, not fitted or not applicable, '
    'for example "unknown"',
    "a: - b\n": '1:4 got "- b", needs each item of a list on a line of its own below the key, or quotes round words '
    "that begin with a dash, for example '\"- b\"'",
    "a: [1, 2\nb: c\n": '1:4 got "[1, 2", needs a closing ] (and commas between what stands inside)',
    "a: b\nc: {\n": '2:4 got "{", needs a closing }',
    "a: {fs: 1200 side: left}\n": '1:18 got "{fs: 1200 side: left}", needs commas between what stands inside, a } at '
    "the end, and quotes round words that hold a colon, for example '{fs: 1200, what: \"press: hard\"}'",
    "a: {b: c, , d: e}\n": '1:11 got ", d: e}", needs a value in this place, for example "unknown"',
    "a: {b:, c: d}\n": '1:5 got "b:, c: d}", needs a space and a value after the colon, '
    "or quotes round words that hold it",
    "a: [x]y\n": '1:7 got "y", needs nothing after the end of a value (or quotes round all of it), '
    "for example 'a: \"[x]y\"'",
    "a:\n    b: c\n  d: e\n": '3:3 got "d: e", needs to begin exactly below the first letter of '
    "one of the keys above it",
    "  a: b\nc: d\n": '2:1 got "c: d", needs to begin exactly below the first letter of one of the keys above it',
    "a: b\n- c\n": '2:1 got "- c", needs list items two spaces further in than their key, all below one another',
    "- a\nb: c\n": '2:1 got "b: c", needs either list items or keys at one depth, not both, for example "- b: c"',
    "a: b\n]\n": '2:1 got "]", needs no bracket or comma here: nothing is open that it could close',
    ": x\nb: c\n": '1:1 got ": x", needs a key before the colon, for example "name: Quenby Merle"',
    'a: "\\q"\n': '1:5 got "\\q", needs no backslash in double quotes (single quotes leave it alone), '
    "for example \"'\\q'\"",
    'a: "\\n\\uZZ"\n': '1:7 got "\\u", needs no backslash in double quotes (single quotes leave it alone), '
    "for example \"'\\u'\"",
    'a: "\\ud800"\n': '1:5 got "\\ud800", needs no backslash in double quotes (single quotes leave it alone), '
    "for example \"'\\ud800'\"",
    'a: "b\\UFFFFFFFF"\n': '1:6 got "\\UFFFFFFFF", needs no backslash in double quotes (single quotes leave it alone), '
    "for example \"'\\UFFFFFFFF'\"",
}


@pytest.mark.parametrize("text", SYNTAX, ids=repr)
def test_syntax_errors_in_plain_words(text: str, pure: bool) -> None:
    place, _, message = SYNTAX[text].partition(" ")
    assert told(text, pure) == [f"{place} [bad-yaml] {message}"]


def examples_of_whole_lines() -> list[tuple[str, int]]:
    return [
        (text, int(said.split(":")[0]))
        for text, said in SYNTAX.items()
        if any(need in said for need in ("after the colon, for", "after the key, for", "hold a colon, for"))
        and "{" not in text
    ]


@pytest.mark.parametrize(("text", "line"), examples_of_whole_lines(), ids=repr)
def test_the_line_of_the_example_mends_the_file(text: str, line: int) -> None:
    _, findings = read_text(text.encode(), "x.yaml")
    lines = text.splitlines()
    lines[line - 1] = findings[0].example
    parsed("\n".join(lines) + "\n")


def test_a_double_key_points_to_the_first() -> None:
    _, findings = read_text(b"tanks:\n  a: b\n  c: d\n  a: e\n", "fleet/types/x.yaml")
    (first,) = findings[0].related
    assert (first.file, first.line, first.path, first.message) == ("fleet/types/x.yaml", 2, "tanks.a", "first here")
    assert findings[0].severity == "error"


def test_bytes_that_are_not_utf8_name_offset_and_line(pure: bool) -> None:
    after = "which is not UTF-8; choose UTF-8 when you save the file, then look at the characters that are not plain"
    data = b"\xef\xbb\xbfa: \xc3\xa9\nb: 5 \xb0\nc:\nd: \xc3\xa9\xe9 x\xe9\ne: \x81\n"
    assert [data[offset] for offset in (14, 24, 32)] == [0xB0, 0xE9, 0x81]
    assert told(data, pure) == [
        f'2:6 [not-utf8] got the byte 0xB0 at byte offset 14 (in Windows-1252 it is "°"), {after} English letters',
        f"3:1 [empty-value] c: got nothing; {SAY}",
        f'4:5 [not-utf8] got the byte 0xE9 at byte offset 24 (in Windows-1252 it is "é"), {after} English letters',
        f"5:4 [not-utf8] got the byte 0x81 at byte offset 32, {after} English letters",
    ]


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-be", "utf-32"])
def test_other_encodings_are_refused(encoding: str) -> None:
    mark = b"\xfe\xff" if encoding == "utf-16-be" else b""
    name = encoding.upper()[:6]
    assert told(mark + "a: b\n".encode(encoding)) == [
        f"1:1 [not-utf8] got text in {name}, needs UTF-8; choose UTF-8 when you save the file"
    ]


@pytest.mark.parametrize(
    "character",
    list(
        "\x00\x01\x08\x0b\x0c\x0e\x1b\x1f\x7f\x80\x85\x9f\u061c\u200b\u200e\u200f\u2028\u2029"
        "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\ufeff\ufffe\uffff"
    ),
    ids=lambda character: f"U+{ord(character):04X}",
)
def test_no_hidden_character_passes(character: str, pure: bool) -> None:
    """Unicode: UAX #9, section 2 (bidirectional controls); chapter 23 (controls, zero width, non-characters)."""
    for text in (f"a: b{character}c\n", f"a: b # {character}\n", f"a{character}: b\n", f"a: |\n  b\n  c{character}\n"):
        found = read_text(text.encode(), "x.yaml", pure=pure)[1]
        assert [each.rule for each in found] == ["control-character"]
        assert f"U+{ord(character):04X}" in found[0].message
        line = text.split("\n")[found[0].line - 1]
        assert line[found[0].column - 1] == character
    escaped = f'a: "b\\u{ord(character):04x}"\n'
    assert [each.rule for each in read_text(escaped.encode(), "x.yaml", pure=pure)[1]] == ["control-character"]


def test_all_problems_come_in_one_go(pure: bool) -> None:
    text = "a: b\na: c\nd:\ne: !t f\ng: &h i\nj: {<<: k}\nl: \u200bm\nn: [1, 2\n"
    rules = [found.rule for found in read_text(text.encode(), "x.yaml", pure=pure)[1]]
    expected = ["duplicate-key", "empty-value", "yaml-tag", "yaml-anchor", "merge-key", "control-character", "bad-yaml"]
    assert rules == expected


def test_a_document_comes_with_errors_that_leave_the_rest_readable(pure: bool) -> None:
    document, findings = read_text(b"a: b\na: c\nd:\ne: {f: *x, g: h}\ni: [{}]\n", "x.yaml", pure=pure)
    assert [found.rule for found in findings] == ["duplicate-key", "empty-value", "yaml-anchor", "empty-value"]
    assert document is not None
    assert document.tree == {"a": "b", "d": "", "e": {"f": "", "g": "h"}, "i": [{}]}
    assert document.spoiled == {("d",), ("e", "f"), ("i", 0)}
    assert document.is_spoiled(("i", 0, "name"))
    assert not document.is_spoiled(("e", "g"))


def test_below_a_refused_key_nothing_is_stored_but_everything_is_checked(pure: bool) -> None:
    document, findings = read_text(b"a: {b: c}\na: {b: !t d, e: f}\n", "x.yaml", pure=pure)
    assert [(found.rule, found.path) for found in findings] == [("duplicate-key", "a"), ("yaml-tag", "a.b")]
    document, findings = read_text(b"a: {b: c}\na: {b: 1, b: 2}\n", "x.yaml", pure=pure)
    assert [(found.rule, found.path) for found in findings] == [("duplicate-key", "a"), ("duplicate-key", "a.b")]
    assert document is not None
    assert document.tree == {"a": {"b": "c"}}
    assert ("a", "e") not in document.positions


# --- bounds ---------------------------------------------------------------------------------------------------------


def nested(levels: int, opening: str = "{a: ", closing: str = "}") -> bytes:
    """A mapping with ``levels`` levels in all."""
    return ("a: " + opening * (levels - 1) + "x" + closing * (levels - 1) + "\n").encode()


def test_depth_is_bounded_at_its_place(pure: bool) -> None:
    assert read_text(nested(MAX_DEPTH), "x.yaml", pure=pure)[1] == []
    document, findings = read_text(nested(MAX_DEPTH + 1), "x.yaml", pure=pure)
    assert document is None
    column = len("a: ") + len("{a: ") * (MAX_DEPTH - 1) + 1
    message = "got more than 20 levels one inside the other, needs fewer"
    assert [shown(found) for found in findings] == [f"1:{column} [too-deep] {message}"]


def test_the_number_of_nodes_is_bounded(pure: bool) -> None:
    items = MAX_NODES - 3  # the file, its key and the list count too
    assert read_text(b"a: [" + b"x, " * (items - 1) + b"x]\n", "x.yaml", pure=pure)[1] == []
    document, findings = read_text(b"a: [" + b"x, " * items + b"x]\n", "x.yaml", pure=pure)
    assert document is None
    assert [found.rule for found in findings] == ["too-many"]


def test_a_key_has_a_greatest_length(pure: bool) -> None:
    assert read_text(b"k" * MAX_KEY + b": b\n", "x.yaml", pure=pure)[1] == []
    message = "got a key of 121 characters, needs at most 120; is a colon missing before?"
    assert told("k" * 121 + ": b\n", pure) == [f"1:1 [not-text-key] {message}"]


def test_too_large_is_said_before_anything_is_parsed(monkeypatch: pytest.MonkeyPatch) -> None:
    assert read_text(b"a: " + b"x" * (MAX_BYTES - 4) + b"\n", "x.yaml")[1] == []
    monkeypatch.setattr("hardpoint.load.documents.decode", None)  # calling it would raise
    document, findings = read_text(b"a: " + b"x" * (MAX_BYTES - 3) + b"\n", "x.yaml")
    assert document is None
    assert [(found.rule, found.read) for found in findings] == [("too-large", "1000001 bytes")]


def test_one_rule_cannot_flood(pure: bool) -> None:
    _, findings = read_text(b"".join(b"k%d:\n" % number for number in range(500)), "x.yaml", pure=pure)
    assert len(findings) == MAX_PER_RULE + 1
    assert findings[-1].line == MAX_PER_RULE + 1
    assert findings[-1].message == "got at least 400 more of this kind from here on; mend the ones above first"


_ALIASES = b"a: &a [x, x, x, x, x, x, x, x, x]\n" + b"".join(
    b"%c: &%c [%s]\n" % (98 + i, 98 + i, b", ".join([b"*%c" % (97 + i)] * 9)) for i in range(20)
)


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        (_ALIASES, "yaml-anchor"),
        (b"a: " + b"[" * 900_000, "too-deep"),
        (b"- " * 450_000, "too-deep"),
        (b"a:\n" * 330_000, "too-many"),
        (b"\0" * 990_000, "control-character"),
        (b"\xb0\n" * 490_000, "not-utf8"),
        (b"\t\n" * 490_000, "bad-yaml"),
        (b'a: "' + b"\\u202e" * 160_000 + b'"\n', "control-character"),
        (b"? " + b"k" * 900_000 + b"\n: {" + b"x, " * 20_000 + b"}\n", "not-text-key"),
        (b"a: 'x" + b"\n" * 900_000, "bad-yaml"),
        (b"%\n" * 400_000, "yaml-directive"),
    ],
    ids=["aliases", "[", "- ", "empty", "nul", "bytes", "tabs", "escapes", "long key", "open quote", "directives"],
)
def test_hostile_files_cost_seconds_and_megabytes_at_most(data: bytes, rule: str, pure: bool) -> None:
    started = time.process_time()
    document, findings = read_text(data, "x.yaml", pure=pure)
    assert time.process_time() - started < 15  # measured: up to 3 s in Python, 1.3 s with libyaml
    assert rule in {found.rule for found in findings}
    assert len(findings) <= 3 * (MAX_PER_RULE + 1)
    assert sum(len(found.message) + len(found.path) for found in findings) < 200_000
    assert document is None or len(document.positions) <= MAX_NODES


# --- files ----------------------------------------------------------------------------------------------------------


def test_a_file_is_read(tmp_path: pathlib.Path) -> None:
    (tmp_path / "x.yaml").write_bytes(b"a: b\n")
    document, findings = read(tmp_path / "x.yaml", "fleet/types/x.yaml")
    assert findings == []
    assert document is not None
    assert (document.file, document.tree) == ("fleet/types/x.yaml", {"a": "b"})


def refused(path: pathlib.Path) -> str:
    document, findings = read(path, "fleet/types/x.yaml")
    assert document is None
    (found,) = findings
    assert (found.severity, found.file) == ("error", "fleet/types/x.yaml")
    return shown(found)


def test_a_symbolic_link_is_not_followed(tmp_path: pathlib.Path) -> None:
    (tmp_path / "real.yaml").write_bytes(b"a: b\n")
    (tmp_path / "x.yaml").symlink_to("real.yaml")
    assert refused(tmp_path / "x.yaml") == "1:1 [not-a-file] got a symbolic link, needs a plain file in this place"


def test_a_link_that_takes_the_files_place_is_not_followed(
    tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "real.yaml").write_bytes(b"a: b\n")
    (tmp_path / "x.yaml").symlink_to("real.yaml")
    monkeypatch.setattr(os, "lstat", os.stat)  # as if it had been a file when it was looked at
    assert "[cannot-read]" in refused(tmp_path / "x.yaml")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_folder_and_a_pipe_are_no_files(tmp_path: pathlib.Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert refused(tmp_path) == "1:1 [not-a-file] got a folder, needs a plain file in this place"
    assert refused(tmp_path / "pipe") == "1:1 [not-a-file] got a pipe, needs a plain file in this place"


def test_what_cannot_be_read_says_why(tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch) -> None:
    hint = "is the name right, and may you read the file?"
    missing = f"1:1 [cannot-read] cannot be read (no such file or directory); {hint}"
    assert refused(tmp_path / "missing.yaml") == missing
    assert "[cannot-read]" in refused(tmp_path / "a\0b.yaml")
    (tmp_path / "x.yaml").write_bytes(b"a: b\n")

    def denied(*_: object) -> int:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "open", denied)
    assert refused(tmp_path / "x.yaml") == f"1:1 [cannot-read] cannot be read (permission denied); {hint}"


def test_fifty_megabytes_are_not_read(tmp_path: pathlib.Path) -> None:
    with open(tmp_path / "x.yaml", "wb") as large:
        large.truncate(50_000_000)
    tracemalloc.start()
    said = refused(tmp_path / "x.yaml")
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert said.startswith("1:1 [too-large] got a file of more than 1000000 bytes, needs at most 1000000 bytes;")
    assert peak < MAX_BYTES


def test_a_file_that_grows_while_it_is_read_is_too_large(
    tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "small").write_bytes(b"")
    with open(tmp_path / "x.yaml", "wb") as large:
        large.truncate(50_000_000)
    small = os.stat(tmp_path / "small")
    monkeypatch.setattr(os, "fstat", lambda _: small)
    tracemalloc.start()
    with pytest.raises(RefusedError) as caught:
        read_bounded(tmp_path / "x.yaml")
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert caught.value.rule == "too-large"
    assert peak < 3 * MAX_BYTES


# --- anything at all ------------------------------------------------------------------------------------------------

SCRAPS = st.sampled_from(
    [
        *"ab:-?[]{},#&*!|>'\"%@`\\~=é\n \t\u2028\r\0\ufeff",
        *(": ", "- ", "\n  ", "\n    ", " #", "a: b\n", "c:\n  d: ", "<<: ", "---\n", "...\n", "\r\n"),
        *("!!str ", "&x ", "*x", "\\u202e", "\\ud800", "\\UFFFFFFFF"),
    ]
)
SOUP = st.lists(SCRAPS, max_size=20).map("".join)


def either(data: bytes, pure: bool) -> tuple[Document | None, list[Finding]]:
    document, findings = read_text(data, "x.yaml", pure=pure)
    assert document is not None or any(found.severity == "error" for found in findings)
    for found in findings:
        assert found.line >= 1
        assert found.column >= 1
        assert found.message
        assert not HIDDEN.search(found.message)
    return document, findings


@settings(deadline=None)
@given(st.binary(max_size=200), st.booleans())
def test_any_bytes_give_a_document_or_an_error(data: bytes, pure: bool) -> None:
    either(data, pure)


@settings(deadline=None)
@given(st.text(max_size=200) | SOUP, st.booleans())
def test_any_text_gives_a_document_or_an_error(text: str, pure: bool) -> None:
    either(text.encode("utf-8", "surrogatepass"), pure)


@settings(deadline=None)
@given(SOUP)
def test_both_parsers_read_and_refuse_the_same(text: str) -> None:
    ours, python = either(text.encode(), pure=False), either(text.encode(), pure=True)
    assert ours[0] == python[0]
    if ours[0] is not None:
        assert ours[1] == python[1]


@settings(deadline=None)
@given(SOUP)
def test_what_passes_is_what_the_loader_without_resolution_reads(text: str) -> None:
    document, findings = either(text.encode(), pure=False)
    if document is not None and not findings:
        assert document.tree == yaml.load(text, Loader=yaml.CBaseLoader)


WORDS = st.text(
    st.characters(exclude_categories=["Cc", "Cf", "Cs", "Cn", "Co", "Zl", "Zp"], include_characters="\n"),
    min_size=1,
    max_size=30,
).filter(str.strip)
KEYS = WORDS.filter(lambda key: "\n" not in key and key != "<<")
TREES = st.dictionaries(
    KEYS,
    st.recursive(
        WORDS,
        lambda inner: st.lists(inner, min_size=1, max_size=4) | st.dictionaries(KEYS, inner, min_size=1, max_size=4),
        max_leaves=12,
    ),
    min_size=1,
    max_size=4,
)


@settings(deadline=None)
@given(TREES, st.booleans(), st.booleans())
def test_a_dumped_tree_reads_back_equal(tree: dict[str, Any], unicode: bool, pure: bool) -> None:
    dumped = yaml.safe_dump(tree, default_style='"', allow_unicode=unicode).encode()
    document, findings = read_text(dumped, "x.yaml", pure=pure)
    assert findings == []
    assert document is not None
    assert document.tree == tree
