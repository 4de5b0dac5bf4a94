"""fleet.json and one JSON file a record: what the pages say, for other programs.

Values are decimal strings, keys are sorted.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from hashlib import sha256
from typing import Any

from hardpoint.figures.safe_side import rounding_of
from hardpoint.findings import Finding, Path, dotted
from hardpoint.pages import addresses
from hardpoint.pages.data_figures import data_figures, event_figures
from hardpoint.pages.data_schema import schemas
from hardpoint.pages.pictures import photo_files
from hardpoint.pages.site import Site
from hardpoint.pages.workings import worked
from hardpoint.records.fleet import Override, Written
from hardpoint.records.walk import values_of
from hardpoint.units import Quantity, shown


def files_beside(site: Site) -> Iterator[tuple[str, str | bytes]]:
    """Address and content of everything that is published beside the pages: data and photos."""
    yield from data_files(site)
    yield from photo_files(site).items()


def data_files(site: Site) -> Iterator[tuple[str, str]]:
    """Address and text of every data file; the index comes last, with the digest of each record."""
    yield from ((f"{addresses.DATA_SCHEMA}/{name}", text) for name, text in schemas().items())
    entries = []
    for kind, record_id, page, record in _records(site):
        address = addresses.record_data(kind, record_id)
        text = _text(record)
        entries.append(
            {"id": record_id, "kind": kind, "page": page, "data": address, "sha256": sha256(text.encode()).hexdigest()}
        )
        yield address, text
    index = {
        "format": "hardpoint-fleet/1",
        "edition": site.edition,
        "as_of": site.as_of.isoformat(),
        "records": entries,
    }
    yield addresses.FLEET_DATA, _text(index)


def _records(site: Site) -> Iterator[tuple[str, str, str, dict[str, Any]]]:
    for type_id, type_ in site.fleet.types.items():
        figures = data_figures(worked(site, type_.airframe))
        record = _record(site, "type", type_id, None, type_.written, (), type_.airframe, figures)
        yield "type", type_id, addresses.type_page(type_id), record
    for tail_id, tail in site.fleet.tails.items():
        figures = data_figures(worked(site, tail.airframe))
        record = _record(site, "tail", tail_id, tail.of.id, tail.written, tail.overrides, tail.airframe, figures)
        yield "tail", tail_id, addresses.tail_page(tail_id), record | {"declared": tail.declared}
    for event_id, line_up in site.fleet.events.items():
        figures = event_figures(site, line_up.event)
        record = _record(site, "event", event_id, None, line_up.written, (), line_up.event, figures)
        yield "event", event_id, addresses.event_page(event_id), record


def _record(
    site: Site,
    kind: str,
    id_: str,
    of: str | None,
    written: Written,
    overrides: tuple[Override, ...],
    model: Any,
    figures: Iterable[dict[str, Any]],
) -> dict[str, Any]:
    return {
        "id": id_,
        "kind": kind,
        "of": of,
        "record": written.tree,
        "differs": [
            {"at": dotted(o.at), "type_says": o.type_says, "here": o.here, "because": o.because} for o in overrides
        ],
        "quantities": [_quantity(path, quantity) for path, quantity in _quantities(model)],
        "figures": list(figures),
        "findings": [_finding(finding) for finding in site.findings if finding.file == written.file],
    }


def _quantities(model: Any) -> Iterator[tuple[Path, Quantity]]:
    for path, value in values_of(model):
        quantity = getattr(value, "quantity", value)
        if isinstance(quantity, Quantity):
            yield path, quantity


def _quantity(path: Path, quantity: Quantity) -> dict[str, Any]:
    low, high = quantity.si_decimal
    si = {"value": str(low), "unit": quantity.si_unit}
    if low != high:
        si["high"] = str(high)
    return {
        "path": dotted(path),
        "stated": [{"text": s.text, "value": str(s.value), "unit": s.unit} for s in quantity.stated],
        "governs": quantity.governs.text if quantity.governs else None,
        "status": quantity.status,
        "slip": quantity.slip,
        "si": si,
        "shown": [
            {"text": s.text, "unit": s.unit, "rounded": s.rounded}
            for s in shown(quantity, rounding_of(path, quantity.kind))
        ],
    }


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "file": _in_the_fleet(finding.file),
        "line": finding.line,
        "path": finding.path,
        "message": finding.message,
    }


def _in_the_fleet(file: str) -> str:
    """The file from the fleet's own folder on: the same wherever the project lies and the command was started."""
    parts = file.split("/")
    folders = [index for index, part in enumerate(parts) if part in ("types", "tails", "events")]
    return "/".join(["fleet", *(parts[folders[-1] :] if folders else parts[-1:])])


def _text(value: Any) -> str:
    return json.dumps(value, indent=1, sort_keys=True, ensure_ascii=False) + "\n"
