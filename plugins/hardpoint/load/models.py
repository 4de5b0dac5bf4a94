"""From a document to a model of records; what pydantic says becomes findings at the author's line."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from hardpoint.findings import Finding, Path, dotted
from hardpoint.nearest import did_you_mean
from hardpoint.records.base import Part
from hardpoint.records.fleet import Where
from hardpoint.records.known import Tree
from hardpoint.records.locate import keys_of, model_at
from hardpoint.records.problems import sentence
from hardpoint.records.trees import value_at

Places = Callable[[Path], Where]
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


def validate(adapter: TypeAdapter[Any], model: type[Part], tree: Tree, where: Places) -> tuple[Any, list[Finding]]:
    """The model of a tree, or every problem in it, each at its own place."""
    try:
        return adapter.validate_python(tree), []
    except ValidationError as wrong:
        found = [_finding(error, model, tree, where) for error in wrong.errors(include_url=False)]
        return None, found


def error(
    rule: str, at: Where, path: Path | str, read: str, expected: str, example: str = "", message: str = ""
) -> Finding:
    """An error finding with the usual sentence."""
    shown = path if isinstance(path, str) else dotted(path)
    text = message or sentence(read, expected, example)
    return Finding(rule, "error", at.file, at.line, at.column, shown, read, expected, example, text)


def _finding(detail: ErrorDetails, model: type[Part], tree: Tree, where: Places) -> Finding:
    path: Path = tuple(part for part in detail["loc"] if part != "[key]")
    context: dict[str, Any] = detail.get("ctx", {})
    kind = detail["type"]
    if kind == "missing":
        return _missing(path, model, where)
    if kind == "extra_forbidden":
        return _unknown_key(path, model, where)
    if kind == "literal_error":
        return _not_one_of(path, detail["input"], context, where)
    if kind in _NEEDS:
        read = _shape(detail["input"])
        message = f"got {read}, needs {_NEEDS[kind]}"
        return error("wrong-shape", where(path), path, read, _NEEDS[kind], message=message)
    if "expected" in context and "read" in context:
        deeper = (*path, context["at"]) if context["at"] else path
        return error(
            kind, where(deeper), deeper, context["read"], context["expected"], context["example"], context["message"]
        )
    return error("not-accepted", where(path), path, _shape(value_at(tree, path)), detail["msg"])


def _missing(path: Path, model: type[Part], where: Places) -> Finding:
    parent, key = path[:-1], str(path[-1])
    expected = f'the key "{key}"'
    message = f'the key "{key}" is missing; write it, if need be with "unknown"'
    return error("missing-key", where(parent), parent, "", expected, f"{key}: unknown", message)


def _unknown_key(path: Path, model: type[Part], where: Places) -> Finding:
    parent = model_at(model, path[:-1])
    known = keys_of(parent) if parent else []
    key = str(path[-1])
    guess = did_you_mean(key, known)
    hint = f'did you mean "{guess}"?' if guess else f"known here: {', '.join(known)}"
    message = f'the key "{key}" is not known here; {hint}'
    return error("unknown-key", where(path), path, key, "a key that is known here", guess, message)


def _not_one_of(path: Path, value: Any, context: dict[str, Any], where: Places) -> Finding:
    choices = [part.strip("'\"") for part in _choices(str(context.get("expected", "")))]
    read = _shape(value)
    guess = did_you_mean(read, choices)
    expected = "one of: " + ", ".join(choices)
    quoted = f'"{read}"' if isinstance(value, str) else read
    if guess and len(choices) > _MANY:
        message = (
            f'got {quoted}, which is not one of the {len(choices)} words that can stand here; did you mean "{guess}"?'
        )
    else:
        message = f"got {quoted}, needs {expected}" + (f'; did you mean "{guess}"?' if guess else "")
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
