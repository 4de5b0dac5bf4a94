"""Records of the demo with single answers changed, for tests of what is worked out of them."""

from __future__ import annotations

import copy
from typing import Any

from hardpoint.figures.worked import Case
from hardpoint.load.documents import read
from hardpoint.records.airframe import Airframe
from hardpoint.records.station import Station
from tests.site.support import FLEET

GONE = object()
"""In place of an answer: the key is left out."""


def tree(file: str, changes: dict[str, Any]) -> dict[str, Any]:
    """The text of a record under ``fleet``; ``changes`` are answers by dotted path."""
    document, findings = read(FLEET / file, file)
    assert document is not None, findings
    changed = copy.deepcopy(document.tree)
    for at, value in changes.items():
        *above, key = at.split(".")
        here: Any = changed
        for part in above:
            here = here[part]
        if value is GONE:
            del here[key]
        else:
            here[key] = value
    return changed


def case(type_id: str, changes: dict[str, Any] | None = None, station: dict[str, Any] | None = None) -> Case:
    """A type of the demo at the demo's station, each with its changes."""
    airframe = Airframe.model_validate(tree(f"types/{type_id}.yaml", changes or {}))
    return Case(airframe, Station.model_validate(tree("station.yaml", station or {})))
