"""The JSON Schema of every kind of record, for editors (completion, errors while typing) and other programs."""

from __future__ import annotations

import json
from typing import Any

from pydantic import TypeAdapter

from hardpoint.records.airframe import Airframe
from hardpoint.records.event import Event
from hardpoint.records.sources import Sources
from hardpoint.records.station import Station
from hardpoint.records.tail import Tail

NAME = "hardpoint/1"
_KINDS: dict[str, Any] = {"type": Airframe, "tail": Tail, "event": Event, "station": Station, "sources": Sources}


def documents() -> dict[str, str]:
    """File name to JSON text, for example ``type.json``; the same text on every machine."""
    return {f"{kind}.json": _document(kind, model) for kind, model in _KINDS.items()}


def _document(kind: str, model: Any) -> str:
    schema = TypeAdapter(model).json_schema(by_alias=True, mode="validation")
    head = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:hardpoint:1:{kind}",
        "title": f"{NAME} {kind}",
    }
    body = _as_written(schema) | head
    return json.dumps(head | body, indent=1, ensure_ascii=False) + "\n"


def _as_written(schema: Any) -> Any:
    """A part of the schema as it holds for what authors write.

    A key that may be left out is left out, never written as null. Among keys that are ids no other key stands.
    """
    if isinstance(schema, list):
        return [_as_written(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    plain = {key: _as_written(value) for key, value in schema.items()}
    if plain.get("default", "") is None:
        del plain["default"]
        choices = [choice for choice in plain.pop("anyOf", []) if choice != {"type": "null"}]
        plain = plain | {"anyOf": choices} if len(choices) > 1 else plain | choices[0]
    if "patternProperties" in plain:
        plain.pop("propertyNames", None)
        plain["additionalProperties"] = False
    return plain
