"""The JSON Schema that editors use: current, valid, and of one mind with the reader."""

from __future__ import annotations

import json
import pathlib
import re
from collections.abc import Iterator
from functools import cache
from typing import Any

import jsonschema
import pytest
import yaml

from hardpoint.load.documents import read
from hardpoint.pages.data_schema import schemas
from hardpoint.records.schema import NAME, documents
from tests.examples.fleets import GOOD, Case, bad_cases, good_copy, spoil

ROOT = pathlib.Path(__file__).resolve().parents[2]
COMMITTED = ROOT / "plugins" / "hardpoint" / "schema"
KINDS = ("type", "tail", "event", "station", "sources")
FOLDERS = {"types": "type", "tails": "tail", "events": "event"}


def records(fleet: pathlib.Path) -> list[tuple[str, pathlib.Path]]:
    """Every record file with its kind."""
    listed = [(kind, path) for folder, kind in FOLDERS.items() for path in sorted((fleet / folder).glob("*.yaml"))]
    return [*listed, ("station", fleet / "station.yaml"), ("sources", fleet / "sources.yaml")]


EVERY_RECORD = [*records(GOOD), *records(ROOT / "fleet")]


@cache
def validator(kind: str) -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(json.loads(documents()[f"{kind}.json"]))


class Core(yaml.SafeLoader):
    """A plain loader with the scalars of YAML 1.2's core schema, which editors use: off and 12:30 are text there."""


Core.yaml_implicit_resolvers = {}
for tag, pattern, first in (
    ("null", r"~|null|Null|NULL|", ["~", "n", "N", ""]),
    ("bool", r"true|True|TRUE|false|False|FALSE", list("tTfF")),
    ("int", r"[-+]?[0-9]+", list("-+0123456789")),
    ("float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", list("-+.0123456789")),
):
    Core.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(f"^(?:{pattern})$"), first)


def as_an_editor_reads(path: pathlib.Path) -> Any:
    """Parsed by YAML 1.2, keys as JSON has them."""
    tree = yaml.load(path.read_text(encoding="utf-8"), Loader=Core)
    return json.loads(json.dumps(tree))


def told(kind: str, tree: Any) -> list[str]:
    return [
        f"{'.'.join(map(str, error.absolute_path))}: {error.message[:200]}"
        for error in validator(kind).iter_errors(tree)
    ]


def test_the_committed_files_are_current() -> None:
    """To mend: python3 site_build.py schema."""
    assert {path.name: path.read_text(encoding="utf-8") for path in COMMITTED.glob("*.json")} == documents() | schemas()


@pytest.mark.parametrize("kind", KINDS)
def test_each_is_a_valid_schema_of_its_draft(kind: str) -> None:
    schema = json.loads(documents()[f"{kind}.json"])
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema["title"] == f"{NAME} {kind}"
    jsonschema.Draft202012Validator.check_schema(schema)


def test_the_same_text_each_time() -> None:
    assert documents() == documents()
    assert sorted(documents()) == sorted(f"{kind}.json" for kind in KINDS)


@pytest.mark.parametrize(("kind", "path"), EVERY_RECORD, ids=lambda value: getattr(value, "stem", value))
def test_records_are_valid_as_our_reader_reads_them(kind: str, path: pathlib.Path) -> None:
    document, findings = read(path, path.name)
    assert document is not None
    assert findings == []
    assert told(kind, document.tree) == []


@pytest.mark.parametrize(("kind", "path"), EVERY_RECORD, ids=lambda value: getattr(value, "stem", value))
def test_records_are_valid_as_an_editor_reads_them(kind: str, path: pathlib.Path) -> None:
    assert told(kind, as_an_editor_reads(path)) == []


def test_the_editor_reads_bare_numbers_as_numbers() -> None:
    """Else the test above would show nothing that the one before it does not."""
    tree = as_an_editor_reads(GOOD / "types" / "quenby-merle.yaml")
    assert tree["landmarks"]["canopy bow"]["fs"] == 2250
    assert tree["propeller"]["blades"] == 3
    assert (
        as_an_editor_reads(GOOD / "events" / "summer-days.yaml")["days"]["saturday"]["entries"]["7"]["time"] == "12:30"
    )


@pytest.mark.parametrize(("kind", "path"), EVERY_RECORD, ids=lambda value: getattr(value, "stem", value))
def test_the_first_line_leads_the_editor_to_the_schema(kind: str, path: pathlib.Path) -> None:
    first = path.read_text(encoding="utf-8").split("\n")[0]
    found = re.fullmatch(r"# yaml-language-server: \$schema=(\S+)", first)
    assert found
    assert (path.parent / found[1]).resolve() == COMMITTED / f"{kind}.json"


def parts(schema: Any, path: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every schema inside a schema, with its path."""
    if isinstance(schema, dict):
        yield path, schema
        for key, value in schema.items():
            if key not in ("default", "enum", "examples", "required"):
                yield from parts(value, f"{path}/{key}")
    elif isinstance(schema, list):
        for index, value in enumerate(schema):
            yield from parts(value, f"{path}/{index}")


def every_part() -> list[tuple[str, dict[str, Any]]]:
    return [(f"{name}{path}", part) for name, text in documents().items() for path, part in parts(json.loads(text))]


def test_every_key_has_a_description() -> None:
    bare = [
        f"{path}/{key}"
        for path, part in every_part()
        for key, value in part.get("properties", {}).items()
        if "description" not in value and set(part["properties"]) != {"stated", "governs"}
    ]
    assert bare == []


def test_no_other_key_stands_in_a_part_or_among_ids() -> None:
    objects = [(path, part) for path, part in every_part() if part.get("type") == "object"]
    assert len(objects) > 150
    loose = [path for path, part in objects if part.get("additionalProperties", True) is True]
    assert loose == []


def test_ids_are_held_to_their_pattern_and_what_stands_under_them_to_its_schema() -> None:
    kind = validator("type")
    tanks = kind.schema["properties"]["tanks"]["anyOf"][1]  # type: ignore[index]
    assert tanks["patternProperties"] == {
        "^[a-z0-9]+(?:-[a-z0-9]+)*$": {
            "anyOf": [{"enum": ["unknown", "not fitted", "not applicable"]}, {"$ref": "#/$defs/Tank"}]
        }
    }
    assert tanks["additionalProperties"] is False
    checked = kind.schema["properties"]["checked"]  # type: ignore[index]
    assert "high_voltage" in checked["propertyNames"]["enum"]
    assert checked["additionalProperties"] == {"$ref": "#/$defs/Check"}


def test_nothing_is_left_out_by_writing_null() -> None:
    """A blank is an error of the reader; the editor must not offer it."""
    assert [path for path, part in every_part() if part.get("type") == "null" or part.get("default", 0) is None] == []


def test_examples_are_examples() -> None:
    wrong = [
        f"{path}: {example}"
        for path, part in every_part()
        for example in part.get("examples", ())
        if not jsonschema.Draft202012Validator(part).is_valid(example)
    ]
    assert wrong == []


SEEN = [
    case
    for case in bad_cases()
    if case.rule in {"missing-key", "unknown-key", "not-one-of", "wrong-shape", "bad-id", "bad-registration",
                     "bad-event-number", "not-a-time", "not-a-listing", "not-text", "too-long", "unknown-way",
                     "way-not-of-the-airframe", "non-value-not-admitted", "undeclared-differences", "governed-pair"}
]  # fmt: skip


@pytest.mark.parametrize("case", SEEN, ids=lambda case: case.name)
def test_the_editor_shows_what_a_schema_can_see(
    case: Case, tmp_path: pathlib.Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Records that the reader refuses for their keys, words and shapes are refused by the schema as well."""
    fleet = good_copy(tmp_path, monkeypatch)
    for change in case.changes:
        spoil(fleet, change, monkeypatch)
    assert [problem for kind, path in records(fleet) for problem in told(kind, as_an_editor_reads(path))]
