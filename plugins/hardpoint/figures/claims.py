"""Claims about a whole line-up ("one harness for all"), checked against every record in it."""

from __future__ import annotations

from collections.abc import Collection, Iterator
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


def breaches(
    airframe: Airframe, every: str, expects: str, among: Collection[str] = ()
) -> tuple[tuple[Breach, ...], int]:
    """Places under the pattern ``every`` (* = any id) that do not say ``expects``, and how many places there are.

    With ``among`` only places that say one of these words are meant, and those that nobody knows: an unknown is a
    breach, for nobody can claim what nobody knows, and it may be one of them. A whole thing that is unknown counts,
    what somebody looked for and did not find is no place.
    """
    pattern = tuple(every.split("."))
    places = [place for place in _matching(airframe, pattern) if _meant(place, pattern, {expects, *among}, bool(among))]
    return tuple(place for place in places if place.found != expects), len(places)


def _meant(place: Breach, pattern: tuple[str, ...], words: Collection[str], narrowed: bool) -> bool:
    if len(place.path) < len(pattern):
        return place.found == NonValue.UNKNOWN.value
    return not narrowed or place.found in words or place.found == NonValue.UNKNOWN.value


def _matching(airframe: Airframe, pattern: tuple[str, ...]) -> Iterator[Breach]:
    """What stands at the pattern, and the non-values that stand above it: a tie of which nothing is known."""
    for path, value in values_of(airframe):
        above = isinstance(value, NonValue) and len(path) < len(pattern)
        fits = all(want in ("*", str(part)) for want, part in zip(pattern, path, strict=False))
        if fits and (len(path) == len(pattern) or above):
            yield Breach(path, _words(value))


def _words(value: Any) -> str:
    return value.value if isinstance(value, NonValue) else str(getattr(value, "text", value))
