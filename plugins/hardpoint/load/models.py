"""From a document to a model of records; what pydantic says becomes findings at the author's line."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, cast

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from hardpoint.findings import Finding, Path, Related, dotted, got_needs, quoted
from hardpoint.load.reading_rules import ReadingRule
from hardpoint.nearest import did_you_mean
from hardpoint.records.base import Part
from hardpoint.records.fleet import Where
from hardpoint.records.known import NonValue, Tree
from hardpoint.records.locate import admitted, keys_of, model_at

Places = Callable[[Path], Where]
_FIRST = 4
_MANY = 9
"""From so many choices on a sure guess says more than the whole list."""
_NEEDS = {
    "dict_type": "keys with values below it",
    "mapping_type": "keys with values below it",
    "model_type": "keys with values below it",
    "model_attributes_type": "keys with values below it",
    "tuple_type": "a list: one line with a hyphen for each entry",
    "list_type": "a list: one line with a hyphen for each entry",
}


def validate(
    adapter: TypeAdapter[Any],
    model: type[Part],
    tree: Tree,
    where: Places,
    told: Callable[[Path], bool] = lambda path: False,
) -> tuple[Any, list[Finding]]:
    """The model of a tree, or every problem in it, each at its place; nothing again of what was ``told`` already."""
    try:
        return adapter.validate_python(tree), []
    except ValidationError as wrong:
        details = [detail for detail in wrong.errors(include_url=False) if not told(_path(detail))]
        return None, [_finding(detail, model, where) for detail in details]


def error(
    rule: ReadingRule,
    at: Where,
    path: Path | str,
    read: str,
    expected: str,
    example: str = "",
    message: str = "",
    related: tuple[Related, ...] = (),
) -> Finding:
    """An error finding with the usual sentence."""
    shown = path if isinstance(path, str) else dotted(path)
    text = message or got_needs(read, expected, example)
    return Finding(rule, "error", at.file, at.line, at.column, shown, read, expected, example, text, related)


def _path(detail: ErrorDetails) -> Path:
    """The path in the file. A last "[key]" is pydantic's mark of a problem with the key, unless a key is called so."""
    path = detail["loc"]
    of_the_key = path[-1:] == ("[key]",) and detail["type"] not in ("missing", "extra_forbidden")
    return path[:-1] if of_the_key else path


def _finding(detail: ErrorDetails, model: type[Part], where: Places) -> Finding:
    path = _path(detail)
    context: dict[str, Any] = detail.get("ctx", {})
    kind = detail["type"]
    if kind == "missing":
        return _missing(path, model, where)
    if kind == "extra_forbidden":
        return _unknown_key(path, model, where)
    if kind == "literal_error":
        return _not_one_of(path, detail["input"], context, admitted(model, path), where)
    if "expected" in context and "read" in context:
        return _told_by_model(cast(ReadingRule, kind), path, context, where)
    return _wrong_shape(path, detail["input"], _NEEDS.get(kind, detail["msg"]) + _keys_there(model, path), where)


def _told_by_model(rule: ReadingRule, path: Path, context: dict[str, Any], where: Places) -> Finding:
    """What ``records.problems.problem`` was given."""
    deeper = (*path, context["at"]) if context["at"] else path
    return error(
        rule, where(deeper), deeper, context["read"], context["expected"], context["example"], context["message"]
    )


def _keys_there(model: type[Part], path: Path) -> str:
    """The first keys of the part that belongs at a path; "" where there is none."""
    here = model_at(model, path)
    keys = keys_of(here) if here else []
    return ": " + ", ".join(keys[:_FIRST]) + (" ..." if len(keys) > _FIRST else "") if keys else ""


def _wrong_shape(path: Path, value: Any, needed: str, where: Places) -> Finding:
    read = _shape(value)
    message = f"got {quoted(read) if isinstance(value, str) else read}, needs {needed}"
    return error("wrong-shape", where(path), path, read, needed, message=message)


def _missing(path: Path, model: type[Part], where: Places) -> Finding:
    parent, key = path[:-1], str(path[-1])
    words = admitted(model, path)
    message = f'the key "{key}" is missing; write it' + (
        f', if need be with "{words[0]}"' if words else " (unknown is no answer here)"
    )
    example = f"{key}: {words[0]}" if words else ""
    return error("missing-key", where(parent), parent, "", f'the key "{key}"', example, message)


def _unknown_key(path: Path, model: type[Part], where: Places) -> Finding:
    parent = model_at(model, path[:-1])
    known = keys_of(parent) if parent else []
    key = str(path[-1])
    guess = did_you_mean(key, known)
    hint = f'did you mean "{guess}"?' if guess else f"known here: {', '.join(known)}"
    message = f"the key {quoted(key)} is not known here; {hint}"
    return error("unknown-key", where(path), path, key, "a key that is known here", guess, message)


def _not_one_of(path: Path, value: Any, context: dict[str, Any], words: tuple[NonValue, ...], where: Places) -> Finding:
    choices = [part.strip("'\"") for part in _choices(str(context.get("expected", "")))] + [*words]
    read = _shape(value)
    guess = did_you_mean(read, choices)
    expected = "one of: " + ", ".join(choices)
    got = quoted(read) if isinstance(value, str) else read
    if guess and len(choices) > _MANY:
        message = (
            f'got {got}, which is not one of the {len(choices)} words that can stand here; did you mean "{guess}"?'
        )
    else:
        message = f"got {got}, needs {expected}" + (f'; did you mean "{guess}"?' if guess else "")
    return error("not-one-of", where(path), path, read, expected, guess or choices[0], message)


def _choices(listed: str) -> list[str]:
    """pydantic prints ``'a', 'b' or "c's"``: the quoted pieces, in order."""
    return re.findall(r"'(?:[^'\\]|\\.)*'|\"(?:[^\"\\]|\\.)*\"", listed)


def _shape(value: Any) -> str:
    if isinstance(value, str):
        return value if len(value) <= 80 else value[:77] + "..."
    if isinstance(value, dict):
        return "keys (" + ", ".join(map(str, list(value)[:4])) + (", ..." if len(value) > 4 else "") + ")"
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}"
    return "nothing"
