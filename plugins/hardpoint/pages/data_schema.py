"""JSON Schema of the data files that stand beside the pages: fleet.json and one file a record."""

from __future__ import annotations

import json
from typing import Any

from hardpoint.findings import Severity

DRAFT = "https://json-schema.org/draft/2020-12/schema"
_TEXT = {"type": "string"}
_DECIMAL = {"type": "string", "pattern": r"^-?\d+(\.\d+)?([eE][+-]?\d+)?$"}
_DAY = {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}$"}
_ANY = {"type": ["string", "array", "object"]}


def _object(required: dict[str, Any], optional: dict[str, Any] | None = None, **more: Any) -> dict[str, Any]:
    properties = required | (optional or {})
    return {
        "type": "object",
        "properties": properties,
        "required": sorted(required),
        "additionalProperties": False,
    } | more


def _list(of: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"type": "array", "items": of} | more


def schemas() -> dict[str, str]:
    """Name to JSON text of both, the same text on every machine."""
    made = {"data-index.json": index_schema(), "data-record.json": record_schema()}
    return {name: json.dumps(schema, indent=1, ensure_ascii=False) + "\n" for name, schema in made.items()}


def index_schema() -> dict[str, Any]:
    """fleet.json: which records there are, where their pages and data are, with the digest of each data file."""
    record = _object(
        {
            "id": _TEXT,
            "kind": {"enum": ["type", "tail", "event"]},
            "page": _TEXT | {"description": "Address of its page, from the top of the site."},
            "data": _TEXT | {"description": "Address of its data file, from the top of the site."},
            "sha256": {"type": "string", "pattern": "^[0-9a-f]{64}$"},
        }
    )
    return {"$schema": DRAFT, "title": "hardpoint-fleet/1 index"} | _object(
        {
            "format": {"const": "hardpoint-fleet/1"},
            "edition": _DAY | {"description": "The date of the edition."},
            "as_of": _DAY | {"description": "The day for which reviews and warnings were judged."},
            "records": _list(record),
        }
    )


def record_schema() -> dict[str, Any]:
    """fleet/<kind>s/<id>.json: a record as written, its differences, quantities, figures, findings."""
    return {"$schema": DRAFT, "title": "hardpoint-fleet/1 record"} | _object(
        {
            "id": _TEXT,
            "kind": {"enum": ["type", "tail", "event"]},
            "of": {"type": ["string", "null"], "description": "The type of a tail."},
            "record": {
                "type": "object",
                "description": "The author's own words; of a tail, its type's with its differences laid over them.",
            },
            "differs": _list(_difference()),
            "quantities": _list(_quantity()),
            "figures": _list(_figure()),
            "findings": _list(_finding()),
        },
        {"declared": {"type": "boolean", "description": "Of a tail: whether somebody declared how it differs."}},
    )


def _difference() -> dict[str, Any]:
    return _object({"at": _TEXT, "type_says": _ANY, "here": _ANY, "because": _TEXT})


def _quantity() -> dict[str, Any]:
    stated = _object({"text": _TEXT, "value": _DECIMAL, "unit": _TEXT})
    return _object(
        {
            "path": _TEXT,
            "stated": _list(stated, minItems=1, maxItems=2),
            "governs": {"type": ["string", "null"]},
            "status": {"enum": ["single", "agree", "rounded", "disagree"]},
            "slip": {"type": ["string", "null"], "description": "What explains a disagreement, if something does."},
            "si": _object(
                {"value": _DECIMAL, "unit": _TEXT},
                {"high": _DECIMAL | {"description": "The other reading of a pair that nothing governs."}},
            ),
            "shown": _list(_object({"text": _TEXT, "unit": _TEXT, "rounded": {"enum": ["nearest", "up", "down"]}})),
        }
    )


def _figure() -> dict[str, Any]:
    said = {
        "id": _TEXT,
        "value": _DECIMAL | {"description": "In SI, not yet rounded; of a range the end that people are to plan with."},
        "unit": _TEXT,
        "shown": _TEXT | {"description": "As pages print it, both systems: 1240 kg / 2740 lb."},
        "rounded": {"enum": ["nearest", "up", "down"]},
        "inputs": _list(_object({"path": _TEXT, "value": _DECIMAL, "unit": _TEXT}, {"high": _DECIMAL})),
        "source": _TEXT | {"description": "Keys of the published sources, separated by commas."},
        "caution": _TEXT,
    }
    ends = {"low": _DECIMAL, "high": _DECIMAL}
    cannot = _object({"reason": _TEXT, "path": _TEXT}, {"refused": {"type": "boolean"}})
    return {"oneOf": [_object(said, ends), _object({"id": _TEXT, "cannot_say": cannot})]}


def _finding() -> dict[str, Any]:
    severities: tuple[Severity, ...] = ("error", "warning")
    return _object(
        {
            "rule": _TEXT,
            "severity": {"enum": list(severities)},
            "file": _TEXT,
            "line": {"type": "integer", "minimum": 1},
            "path": _TEXT,
            "message": _TEXT,
        }
    )
