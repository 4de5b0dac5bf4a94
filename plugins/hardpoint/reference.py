"""The pages of docs/ that follow from the code: every key of every record, every rule, how figures are worked out.

``hardpoint schema`` writes them beside the schema, and a test holds them to it: a new key or rule needs no page written
by hand. Pure: text in, text out.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterator, Mapping
from typing import Any

from hardpoint import methods
from hardpoint.load.reading_rules import READING_RULES
from hardpoint.records.schema import documents
from hardpoint.rules import all_rules

Json = Mapping[str, Any]

_KINDS = {
    "type": ("A type", "fleet/types/<id>.yaml"),
    "tail": ("An aircraft", "fleet/tails/<REGISTRATION>.yaml"),
    "event": ("An event", "fleet/events/<id>.yaml"),
    "station": ("The station", "fleet/station.yaml"),
    "sources": ("The sources", "fleet/sources.yaml"),
}
_NON_VALUES = {"unknown", "not fitted", "not applicable"}
_SPECIAL = {*_NON_VALUES, "nothing found", "none recorded"}
_WORDS_ALONE = ("words", "an id", "a name")
"""Kinds whose one example says nothing about the key that it would stand beside."""


def pages() -> dict[str, str]:
    """File name under docs/ to Markdown, the same text on every machine."""
    return {"record-keys.md": record_keys(), "rules.md": rules()} | methods.pages()


def rules() -> str:
    """The page of all rules: what is refused while reading, what is an error, what is a warning."""
    by_severity = {
        severity: [rule for rule in all_rules() if rule.severity == severity] for severity in ("error", "warning")
    }
    return "\n".join(
        [
            "# All rules",
            "",
            "What `check` holds records to. The word in square brackets at the end of a finding is the name of a rule",
            "on this page. This page is made from the program itself.",
            "",
            "## Errors: nothing is published before they are mended",
            "",
            *(_rule(rule.id, rule.says) for rule in by_severity["error"]),
            "",
            "## Warnings: what the world is like",
            "",
            "They show on the page of gaps and stop nothing. A warning may stand for years if it is true.",
            "",
            *(_rule(rule.id, rule.says) for rule in by_severity["warning"]),
            "",
            "## While reading: what a record is made of",
            "",
            "Errors too, apart from `comment-or-text`, which warns.",
            "",
            *(_rule(name, says) for name, says in sorted(READING_RULES.items())),
            "",
        ]
    )


def _rule(name: str, says: str) -> str:
    return f"- **{name}**: {_plain(says)}"


def record_keys() -> str:
    """The page of all keys: each kind of record, each part of it, each key with what it takes and what it means."""
    schemas = {name.removesuffix(".json"): json.loads(text) for name, text in documents().items()}
    return "\n".join(
        [
            "# All keys",
            "",
            "Every key that a record can have, what it means and what can stand there. A key marked *needed* must be",
            "there, if need be with `unknown`; the others may be left out. *Any of the three* means `unknown`,",
            "`not fitted` or `not applicable`. *Names* are yours to choose: small letters, digits, hyphens.",
            "",
            "This page is made from the program itself; your editor shows the same while you type",
            "([set it up](writing-a-record.md#set-up-the-editor)).",
            "",
            *(line for kind in _KINDS for line in _Kind(kind, schemas[kind]).lines()),
        ]
    )


class _Kind:
    """One kind of record: its own keys, then its parts in the order in which a reader meets them."""

    def __init__(self, kind: str, schema: Json) -> None:
        self.kind, self.schema = kind, schema
        self.parts: Json = schema.get("$defs", {})
        self.title, self.file = _KINDS[kind]
        self.places = self._places()

    def lines(self) -> Iterator[str]:
        yield from (f"## {self.title}", "", f"`{self.file}`", "")
        if "properties" in self.schema:
            yield from self._keys(self.schema)
        else:
            yield from (f"{self._named(self.schema).capitalize()}.", "")
        for name, place in self.places.items():
            part = self.parts[name]
            yield from (f"### {self._heading(name)}", "", _plain(part.get("description", "")), "")
            yield from ("Stands at: " + ", ".join(f"`{where}`" for where in place) + ".", "")
            yield from self._keys(part)

    def _keys(self, part: Json) -> Iterator[str]:
        needed = part.get("required", [])
        for key, value in part["properties"].items():
            mark = ", *needed*" if key in needed else ""
            yield f"- **{key}**{mark}: {_plain(value.get('description', ''))} Takes {self._takes(value)}."
        yield ""

    def _heading(self, name: str) -> str:
        """``Tank`` as ``A tank``; the kind goes along so that each heading has an address of its own."""
        words = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", name).lower()
        return f"{words.capitalize()} ({self.kind})"

    def _address(self, name: str) -> str:
        return re.sub(r"[^\w]+", "-", self._heading(name).lower()).strip("-")

    def _places(self) -> dict[str, list[str]]:
        """Each part in order of first meeting, with at most three of the paths at which it can stand."""
        places: dict[str, list[str]] = {}
        queue = [(name, path) for path, name in self._below(self.schema, "")]
        seen: Counter[str] = Counter()
        while queue:
            name, path = queue.pop(0)
            seen[name] += 1
            places.setdefault(name, [])
            if len(places[name]) < 3:
                places[name].append(path)
            if seen[name] == 1:
                queue += [(deeper, where) for where, deeper in self._below(self.parts[name], path + ".")]
        return places

    def _below(self, part: Json, path: str) -> Iterator[tuple[str, str]]:
        if "properties" not in part:
            yield from _references(part, "")
        for key, value in part.get("properties", {}).items():
            yield from _references(value, path + key)

    def _takes(self, value: Json) -> str:
        """What can stand at a key, in words: ``a volume such as `62 L`, or two of them; or `unknown```."""
        choices = [choice for choice in _choices(value) if choice.get("type") != "null"]
        pair = any("governs" in choice.get("properties", {}) for choice in choices)
        words = [text for choice in choices if "properties" not in choice and (text := self._one(choice))]
        special = [_special(choice["enum"]) for choice in choices if _is_special(choice)]
        said = "; ".join(words) + (", or two with a slash between" if pair else "")
        return ", or ".join(part for part in (said, *special) if part)

    def _one(self, choice: Json) -> str:
        if "$ref" in choice:
            name = choice["$ref"].rsplit("/", 1)[-1]
            return f"[{re.sub(r'(?<=[a-z])(?=[A-Z])', ' ', name).lower()}](#{self._address(name)})"
        if "enum" in choice:
            return "" if _is_special(choice) else "one of " + ", ".join(f"`{word}`" for word in choice["enum"])
        if "items" in choice or "prefixItems" in choice:
            return f"a list, each {self._takes(choice['items'])}"
        if choice.get("type") == "object":
            return self._named(choice)
        if "const" in choice:
            return f"only `{choice['const']}`"
        return _scalar(choice)

    def _named(self, choice: Json) -> str:
        inner = next(iter(choice.get("patternProperties", {}).values()), choice.get("additionalProperties", {}))
        keys = choice.get("propertyNames", {})
        names = "sections" if "enum" in keys and "datum" in keys["enum"] else "names"
        takes = self._takes(inner)
        return f"{names}, each with {f'({takes})' if ', or ' in takes else takes}"


def _is_special(choice: Json) -> bool:
    """A choice of nothing but answers that are not values."""
    return bool(choice.get("enum")) and set(choice["enum"]) <= _SPECIAL


def _special(words: list[str]) -> str:
    return "any of the three" if set(words) >= _NON_VALUES else " or ".join(f"`{word}`" for word in words)


def _choices(value: Json) -> Iterator[Json]:
    if "anyOf" in value:
        for choice in value["anyOf"]:
            yield from _choices(choice)
    else:
        yield value


def _references(value: Any, path: str) -> Iterator[tuple[str, str]]:
    """Every part that can stand at a key or below it: ``("tanks.<name>", "Tank")``."""
    if "$ref" in value:
        yield path, value["$ref"].rsplit("/", 1)[-1]
    for choice in value.get("anyOf", ()):
        yield from _references(choice, path)
    if "items" in value:
        yield from _references(value["items"], path)
    for inner in (*value.get("patternProperties", {}).values(), value.get("additionalProperties")):
        if isinstance(inner, Mapping):
            yield from _references(inner, f"{path}.<name>".removeprefix("."))


def _scalar(choice: Json) -> str:
    title = choice.get("title", "")
    example = str(choice.get("examples", [""])[0])
    if "type" not in choice:
        return "whatever stands there"
    title = title if title[:1].islower() else "words"
    if not example or title in _WORDS_ALONE:
        return title
    return f"{title} such as `{example}`"


def _plain(text: str) -> str:
    """A docstring as Markdown: code marks single, nothing that Markdown would take for a mark of its own."""
    words = " ".join(text.split()).replace("``", "`")
    return re.sub(r"(?<![`\w])([*_<])(?![`])", r"\\\1", words) if "`" not in words else words
