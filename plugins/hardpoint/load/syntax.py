"""What a syntax error of YAML means, in words for people who do not program.

The two parsers (libyaml and pure Python) word the same error differently; the tables below know both wordings and look
at the line itself, so that the answer names the slip (a colon inside words, a quote left open) and not the grammar.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from hardpoint.findings import got_needs, quoted
from hardpoint.load.reading_rules import DocumentRule
from hardpoint.load.source import Position, Source


@dataclass(frozen=True)
class Explanation:
    """A syntax error told: which rule, where, what stood there, what is needed."""

    rule: DocumentRule
    at: Position
    read: str
    expected: str
    example: str
    message: str


@dataclass(frozen=True)
class SyntaxProblem:
    """A syntax error as a parser reports it.

    ``quotes`` is the quoted text that ended just before it, ``bracket`` the innermost one that is open, if any.
    """

    source: Source
    problem: str
    context: str
    at: Position
    begun: Position
    quotes: tuple[Position, Position] | None
    bracket: Position | None

    @property
    def in_brackets(self) -> bool:
        """Whether a ``[`` or ``{`` was open."""
        return "flow" in self.context


_Cause = Callable[[SyntaxProblem], Explanation | None]

_KEY_WITHOUT_SPACE = re.compile(r"(\s*(?:- +)*[A-Za-z][\w-]*):(?=[^\s:])(?!.*:(?:\s|$))")
_KEY = re.compile(r"(\s*(?:- +)*[^\s:][^:]*?):\s+(\S.*)")
ESCAPE = re.compile(r"\\(?:x[0-9A-Fa-f]{0,2}|u[0-9A-Fa-f]{0,4}|U[0-9A-Fa-f]{0,8}|.)", re.DOTALL)
"""A backslash sequence of a double-quoted text, also one cut short."""


def explain(problem: SyntaxProblem) -> Explanation:
    """The first cause that fits, else the line with what a record is made of."""
    for cause in _CAUSES:
        explanation = cause(problem)
        if explanation:
            return explanation
    line = problem.source.line(problem.at.line).strip()
    return _told(
        problem.at, line, "lines of the form key, colon, space, value, indented by spaces", "name: Quenby Merle"
    )


def in_quotes(text: str) -> str:
    """The text as a YAML scalar in quotes, in the kind that needs no escapes if there is one."""
    if '"' not in text and "\\" not in text:
        return f'"{text}"'
    return "'" + text.replace("'", "''") + "'"


def escape_at(source: Source, begun: Position, at: Position) -> tuple[Position, str]:
    """The backslash sequence of a double-quoted text (begun at ``begun``) in which the place ``at`` lies."""
    start, end = source.index(begun), source.index(at)
    found = None
    for candidate in ESCAPE.finditer(source.text, start):
        if candidate.start() > end:
            break
        found = candidate
    return (source.position(found.start()), found[0]) if found else (at, source.rest(at)[:2])


def bad_escape(at: Position, escape: str) -> Explanation:
    """The explanation of a backslash sequence that stands for no character."""
    expected = "no backslash in double quotes (single quotes leave it alone)"
    return _told(at, escape, expected, f"'{escape}'")


def sign_begins_text(at: Position, words: str, rule: DocumentRule = "bad-yaml") -> Explanation:
    """The explanation of words that begin with a sign that means something in YAML."""
    return _told(at, words, f"quotes round text that begins with {quoted(words[:1])}", in_quotes(words), rule)


def _told(at: Position, read: str, expected: str, example: str = "", rule: DocumentRule = "bad-yaml") -> Explanation:
    return Explanation(rule, at, read, expected, example, got_needs(read, expected, example))


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _words(problem: SyntaxProblem, at: Position) -> str:
    """The value that begins at a place: to the end of the line, inside brackets to the next comma or bracket."""
    rest = problem.source.rest(at)
    return re.split(r",(?:\s|$)|[\]}]", rest)[0].rstrip() if problem.in_brackets else rest


def _open_quote(problem: SyntaxProblem) -> Explanation | None:
    scanning = "quoted scalar" in problem.context or "double-quoted" in problem.context
    if not (scanning and re.search(r"end of stream|document (indicator|separator)", problem.problem)):
        return None
    return _unclosed_quote(problem, problem.begun)


def _unclosed_quote(problem: SyntaxProblem, at: Position) -> Explanation:
    read = problem.source.rest(at)
    return _told(at, read, "a closing quote in the same line", read + read[:1])


def _after_quote(problem: SyntaxProblem) -> Explanation | None:
    if not problem.quotes:
        return None
    start, end = problem.quotes
    between = problem.source.text[problem.source.index(end) : problem.source.index(problem.at)]
    if problem.at < end or "\n" in between or between.strip():
        return None
    if start.line != end.line:  # it ran on to the opening quote of another value
        return _unclosed_quote(problem, start)
    words = _words(problem, start)
    if problem.source.rest(problem.at).startswith(":"):
        return _no_space(problem, start.line, words.replace(words[0] + ":", words[0] + ": ", 1))
    mark, inside = words[0], words[1:-1] if words.endswith(words[0]) else ""
    other = inside and ("'" if mark == '"' else '"')
    example = f"{other}{inside}{other}" if other and other not in inside else in_quotes(words)
    return _told(start, words, "one pair of quotes round the whole value, of a kind that it does not hold", example)


def _escape(problem: SyntaxProblem) -> Explanation | None:
    if "scalar" not in problem.context or not re.search(r"escape (character|code|sequence)|hexdec", problem.problem):
        return None
    return bad_escape(*escape_at(problem.source, problem.begun, problem.at))


def _colon(problem: SyntaxProblem) -> Explanation | None:
    if "unexpected ':'" in problem.problem:
        words = problem.source.rest(problem.begun)
        return _told(problem.begun, words, "a space and a value after the colon, or quotes round words that hold it")
    if "mapping values are not allowed" not in problem.problem:
        return None
    line = problem.source.line(problem.at.line)
    key = _KEY.match(line[: problem.at.column - 1] + " ") and _KEY.match(line)
    if key:
        return _colon_in_words(Position(problem.at.line, _indent(line) + 1), key)
    return _line_above(problem, line)


def _colon_in_words(at: Position, key: re.Match[str]) -> Explanation:
    example = f"{key[1].strip()}: {in_quotes(key[2].rstrip())}"
    return _told(at, key[0].strip(), "quotes round words that hold a colon", example)


def _line_above(problem: SyntaxProblem, line: str) -> Explanation | None:
    """A key where none can be: the slip is in the line above (no colon, no space) or in this line's indentation."""
    number = problem.at.line - 1
    while number and not problem.source.line(number).split("#")[0].strip():
        number -= 1
    above = problem.source.line(number)
    if not above.strip():
        return None
    if _KEY_WITHOUT_SPACE.match(above):
        return _no_space(problem, number)
    if _indent(line) <= _indent(above):
        return _no_colon(problem, number)
    expected = (
        f"to begin under the first letter of {quoted(above.strip())} in line {number}, which has its value already "
        f"(if it belongs to that value, put the whole value in quotes)"
    )
    return _told(Position(problem.at.line, _indent(line) + 1), line.strip(), expected)


def _no_space(problem: SyntaxProblem, number: int, example: str = "") -> Explanation:
    line = problem.source.line(number)
    at = Position(number, _indent(line) + 1)
    return _told(at, line.strip(), "a space after the colon", example or line.strip().replace(":", ": ", 1))


def _no_colon(problem: SyntaxProblem, number: int) -> Explanation:
    line = problem.source.line(number)
    at, words = Position(number, _indent(line) + 1), line.strip()
    if re.match(r"-[^\s-]", words):
        return _told(at, words, "a space after the dash", f"- {words[1:]}")
    key, _, value = words.removeprefix("- ").partition(" ")
    return _told(at, words, "a colon and a space after the key", f"{key}: {value.strip() or 'unknown'}")


def _key_without_colon(problem: SyntaxProblem) -> Explanation | None:
    if "could not find expected ':'" not in problem.problem:
        return None
    number = problem.begun.line
    if _KEY_WITHOUT_SPACE.match(problem.source.line(number)):
        return _no_space(problem, number)
    return _no_colon(problem, number)


def _first_character(problem: SyntaxProblem) -> Explanation | None:
    """Words that begin with a character that means something in YAML."""
    rule: DocumentRule
    if "cannot start any token" in problem.problem or "mapping keys are not allowed" in problem.problem:
        at, rule = problem.at, "bad-yaml"
    elif re.search(r"scanning a (block scalar|directive)", problem.context):
        at, rule = problem.begun, "bad-yaml"
    elif re.search(r"scanning an (alias|anchor)", problem.context):
        at, rule = problem.begun, "yaml-anchor"
    elif re.search(r"\btag\b", problem.context) or "tag handle" in problem.problem:
        at, rule = problem.begun, "yaml-tag"
    else:
        return None
    words = _words(problem, at) or problem.source.rest(at)
    return sign_begins_text(at, words, rule)


def _dash(problem: SyntaxProblem) -> Explanation | None:
    if "sequence entries are not allowed" not in problem.problem:
        return None
    words = problem.source.rest(problem.at)
    if words == "-":
        return _told(problem.at, words, "a word in place of a dash: unknown, not fitted or not applicable", "unknown")
    expected = "each item of a list on a line of its own below the key, or quotes round words that begin with a dash"
    return _told(problem.at, words, expected, in_quotes(words))


def _brackets(problem: SyntaxProblem) -> Explanation | None:
    if not (problem.in_brackets and re.search(r"',' or ['\"]?[\]}]", problem.problem)):
        return None
    read = problem.source.rest(problem.begun)
    closing = "]" if read.startswith("[") else "}"
    if problem.at.line != problem.begun.line:
        return _told(problem.begun, read, f"a closing {closing} (and commas between what stands inside)")
    expected = f"commas between what stands inside, a {closing} at the end, and quotes round words that hold a colon"
    example = "[upright, inverted]" if closing == "]" else '{fs: 1200, what: "press: hard"}'
    return _told(problem.at, read, expected, example)


def _no_value(problem: SyntaxProblem) -> Explanation | None:
    if "node content" not in problem.problem:
        return None
    words = problem.source.rest(problem.at)
    if not words and problem.bracket:
        read = problem.source.rest(problem.bracket)
        return _told(problem.bracket, read, f"a closing {']' if read.startswith('[') else '}'}")
    if problem.in_brackets or not words:
        return _told(problem.at, words, "a value in this place", "unknown")
    return sign_begins_text(problem.at, words)


def _indentation(problem: SyntaxProblem) -> Explanation | None:
    if not re.search(r"expected key|'-' indicator|<block end>|document start>", problem.problem):
        return None
    line = problem.source.line(problem.at.line)
    before, rest = line[: problem.at.column - 1], problem.source.rest(problem.at)
    if before.strip():
        key = _KEY.match(line)
        example = f"{key[1].strip()}: {in_quotes(key[2].rstrip())}" if key else ""
        return _told(problem.at, rest, "nothing after the end of a value (or quotes round all of it)", example)
    if rest[:1] in ("]", "}", ","):
        return _told(problem.at, rest, "no bracket or comma here: nothing is open that it could close")
    if rest.startswith(":"):
        return _told(problem.at, rest, "a key before the colon", "name: Quenby Merle")
    if rest == "-" or rest.startswith("- "):
        return _told(problem.at, rest, "list items two spaces further in than their key, all below one another")
    if "collection" in problem.context:
        return _told(problem.at, rest, "either list items or keys at one depth, not both", f"- {rest}")
    return _told(problem.at, rest, "to begin exactly below the first letter of one of the keys above it")


_CAUSES: tuple[_Cause, ...] = (
    _open_quote,
    _after_quote,
    _escape,
    _colon,
    _key_without_colon,
    _first_character,
    _dash,
    _brackets,
    _no_value,
    _indentation,
)
