"""Claims about a whole line-up ("one harness for all"), checked against every record in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue
from hardpoint.records.walk import values_of


@dataclass(frozen=True)
class Breach:
    """One place that does not hold to a claim; ``found`` is what stands there."""

    path: Path
    found: str


def breaches(airframe: Airframe, every: str, expects: str) -> tuple[tuple[Breach, ...], int]:
    """Places under the pattern ``every`` (* = any id) that do not say ``expects``, and how many places there are.

    An unknown is a breach: nobody can claim what nobody knows.
    """
    places = list(_matching(airframe, tuple(every.split("."))))
    wrong = tuple(Breach(path, _words(value)) for path, value in places if _words(value) != expects)
    return wrong, len(places)


def _matching(airframe: Airframe, pattern: tuple[str, ...]) -> Iterator[tuple[Path, Any]]:
    for path, value in values_of(airframe):
        if len(path) == len(pattern) and all(
            want in ("*", str(part)) for want, part in zip(pattern, path, strict=True)
        ):
            yield path, value


def _words(value: Any) -> str:
    return value.value if isinstance(value, NonValue) else str(getattr(value, "text", value))
