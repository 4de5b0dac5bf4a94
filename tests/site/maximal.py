"""A fleet that fills every key there is, each field of free words with a marked attack.

It grows from the exported JSON Schema, so that a key that is added to a model is filled without anybody thinking of it;
what a schema cannot say (ids that fit together, a tank that is not where cutting is preferred) stands in FITTING. That
every field of words is reached is checked against the models themselves, see `fields_of_words`.
"""

from __future__ import annotations

import functools
import json
import re
import typing
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import yaml
from PIL import Image

from hardpoint.records import schema
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.event import Event
from hardpoint.records.sources import Source
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail
from hardpoint.records.texts import MOST_WORDS, Words

TYPE, TAIL, EVENT = "one", "QQ-TWA", "one"
"""Every id is "one", so that whatever refers to an id refers to something; the tail is the schema's own example."""

ID_EXAMPLE = "magneto-left"
"""What the schema gives as an example of an id."""

ATTACK = (
    """{mark} <img src=x onerror="window.ran=1"> <script>window.ran=2</script> <svg onload=window.ran=3> """
    """[go](javascript:window.ran=4) {{{{ 7*7 }}}} {{% raw %}} &lt;b&gt; "}}*{{visibility:hidden}} """
    """'><i> --></style></title>"""
)
MODELS: dict[str, type[Part]] = {"type": Airframe, "tail": Tail, "event": Event, "station": Station, "sources": Source}

REFUSED = {
    ("Photo", "shows"),
    ("Difference", "at"),
    ("Claim", "every"),
    ("Station", "unfit_also"),
    ("Station", "unfit_over_water"),
}
"""Words that are a path of a record: an attack there is refused by line, see test_attacks_are_refused_by_line."""

_SECTIONS = [
    {"fs": "0", "floor": "300", "top": "700", "half_width": "100"},
    {"fs": "2000", "floor": "100", "top": "900", "half_width": "400"},
    {"fs": "7000", "floor": "400", "top": "600", "half_width": "50"},
]
FITTING: dict[tuple[str, str], Any] = {
    ("Size", "nose"): "0",
    ("Size", "tail"): "7000",
    ("Profile", "sections"): _SECTIONS,
    ("ZoneSide", "cut"): "avoid",
    ("Absence", "none_of"): "spar",
    ("Battery", "voltage"): "12 V",
    ("BehindItem", "kind"): "equipment",
    ("Photo", "shows"): "controls.one",
    ("Claim", "every"): "seats.*.ties.*.holds",
    ("Station", "unfit_also"): ["approach.come_from"],
    ("Station", "unfit_over_water"): ["water.floats"],
    ("Tail", "differs"): [],
}
"""(model, key) to what stands there instead of the schema's first choice, so that no rule refuses the record."""

KEYS: dict[tuple[str, str], list[str]] = {
    ("Tail", "who_can_answer"): ["exits"],
    ("Airframe", "who_can_answer"): ["exits"],
}


@functools.cache
def _document(kind: str) -> dict[str, Any]:
    read: dict[str, Any] = json.loads(schema.documents()[f"{kind}.json"])
    return read


@dataclass
class Grower:
    """Fills schemas; ``planted`` keeps, for each mark, the record and the path it stands at."""

    planted: dict[str, str] = field(default_factory=dict)
    reached: set[tuple[str, str]] = field(default_factory=set)

    def record(self, kind: str) -> dict[str, Any]:
        """A record of a kind, every key of it filled."""
        document = _document(kind)
        model = "Sources" if kind == "sources" else MODELS[kind].__name__
        grown = self.grow(document, document["$defs"], (model, ""), kind)
        assert isinstance(grown, dict)
        return grown

    def part(self, kind: str, model: str, path: str) -> Any:
        """One part of a record of a kind, for example an exit."""
        document = _document(kind)
        return self.grow(document["$defs"][model], document["$defs"], (model, ""), path)

    def attack(self, path: str) -> str:
        """An attack with a mark of its own."""
        mark = f"zq{len(self.planted) + 1000}zq"
        self.planted[mark] = path
        return ATTACK.format(mark=mark)

    def grow(self, node: dict[str, Any], defs: dict[str, Any], at: tuple[str, str], path: str) -> Any:
        """What a schema asks for, as an author's text."""
        if at in FITTING:
            return FITTING[at]
        if "$ref" in node:
            name = node["$ref"].split("/")[-1]
            return self.grow(defs[name], defs, (name, ""), path)
        if "anyOf" in node:
            values = [
                one for one in node["anyOf"] if one.get("type") != "null" and ("enum" not in one or "type" in one)
            ]
            return self.grow(values[0], defs, at, path)
        if node.get("maxLength") == MOST_WORDS:
            self.reached.add(at)
            return self.attack(path)
        if "const" in node or "enum" in node:
            return node.get("const") or node["enum"][0]
        if node.get("type") == "array":
            return [self.grow(node["items"], defs, at, f"{path}[]")]
        if node.get("type") == "object" or "properties" in node:
            return self._keys(node, defs, at, path)
        return self._example(node)

    @staticmethod
    def _example(node: dict[str, Any]) -> str:
        example = str(node["examples"][0])
        return "one" if example == ID_EXAMPLE else example

    def _keys(self, node: dict[str, Any], defs: dict[str, Any], at: tuple[str, str], path: str) -> dict[str, Any]:
        if "properties" in node:
            return {
                key: self.grow(value, defs, (at[0], key), f"{path}.{key}") for key, value in node["properties"].items()
            }
        patterns = node.get("patternProperties", {})
        values = next(iter(patterns.values())) if patterns else node["additionalProperties"]
        keys = KEYS.get(at) or [self._key(node, defs)]
        return {key: self.grow(values, defs, at, f"{path}.{key}") for key in keys}

    def _key(self, node: dict[str, Any], defs: dict[str, Any]) -> str:
        """A key that the schema admits: "one" wherever it can stand."""
        for pattern in node.get("patternProperties", {}):
            return next(key for key in ("one", TAIL) if re.search(pattern, key))
        name = node["propertyNames"]
        return str(self.grow(defs[name["$ref"].split("/")[-1]] if "$ref" in name else name, defs, ("", ""), ""))


def write(folder: Path) -> dict[str, str]:
    """Write a fleet of the five kinds of record; gives where each mark stands."""
    grower = Grower()
    type_, tail = grower.record("type"), grower.record("tail")
    # A repeat is of another control; the two fill its keys together.
    second = grower.part("type", "Control", "type.controls.two")
    type_["controls"] |= {"two": second}
    del type_["controls"]["one"]["repeats"]
    tail["differs"] = _differences(grower, type_)
    tail["of"] = TYPE
    records = {
        f"types/{TYPE}": type_,
        f"tails/{TAIL}": tail,
        f"events/{EVENT}": grower.record("event"),
        "station": grower.record("station"),
        "sources": grower.record("sources"),
    }
    for taken in (*type_["photos"].values(), *tail["photos"].values()):
        (folder / "photos").mkdir(parents=True, exist_ok=True)
        Image.new("RGB", (40, 30), "white").save(folder / "photos" / taken["file"])
    for name, record in records.items():
        save(folder / f"{name}.yaml", record)
    missed = fields_of_words() - grower.reached - REFUSED
    assert not missed, f"these fields of free words are not filled: {sorted(missed)}"
    return grower.planted


def _differences(grower: Grower, type_: dict[str, Any]) -> list[dict[str, Any]]:
    """Something changed and something added, told by words of its own; with an answer that is still open."""
    added = grower.part("type", "Exit", "tail.exits.two")
    added["works"]["inverted"] = "unknown"
    success = type_["controls"]["one"]["success"]
    changed = {"type_says": success, "here": grower.attack("tail.controls.one.success")}
    because = [grower.attack(f"tail.differs.{number}.because") for number in range(2)]
    grower.reached.add(("Difference", "because"))
    return [
        {"at": "controls.one.success", **changed, "because": because[0]},
        {"at": "exits.two", "type_says": "nothing", "before": "one", "here": added, "because": because[1]},
    ]


def save(file: Path, record: Any) -> None:
    """Write a record with every word quoted, so that no letter of it means anything to YAML."""
    file.parent.mkdir(parents=True, exist_ok=True)
    plain = json.loads(json.dumps(record))  # no part is shared: the reader refuses YAML's aliases
    file.write_text(yaml.safe_dump(plain, default_style='"', sort_keys=False, width=100_000), encoding="utf-8")


def fields_of_words() -> set[tuple[str, str]]:
    """(model, key) of every field whose annotation holds Words, in every part that a record can hold."""
    return {
        (model.__name__, model.model_fields[name].alias or name)
        for model in _models()
        for name, hint in typing.get_type_hints(model, include_extras=True).items()
        if name in model.model_fields and Words in _inside(hint)
    }


def _models() -> set[type[Part]]:
    found: set[type[Part]] = set()
    waiting: list[type[Part]] = list(MODELS.values())
    while waiting:
        model = waiting.pop()
        if model not in found:
            found.add(model)
            hints = typing.get_type_hints(model, include_extras=True).values()
            waiting += [
                one for hint in hints for one in _inside(hint) if isinstance(one, type) and issubclass(one, Part)
            ]
    return found


def _inside(hint: Any) -> Iterator[Any]:
    yield hint
    for argument in typing.get_args(hint):
        yield from _inside(argument)
