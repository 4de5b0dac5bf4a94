"""What makes an entry of a line-up unfit: an unknown or a conflict where crews act.

The tool names the gap; people decide.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from typing import Literal

from hardpoint.figures.answers import MUST_BE_ANSWERED, device_answer
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue
from hardpoint.records.walk import values_of
from hardpoint.units import Quantity

GROUPS: dict[str, str] = {
    "exits": "opening",
    "canopies": "opening",
    "controls": "shutdown",
    "ties": "ties",
    "pyrotechnics": "rockets and cartridges",
    "high_voltage": "high voltage",
}


@dataclass(frozen=True)
class Gap:
    """An open question in a group that crews act on."""

    group: str
    path: Path
    kind: Literal["unknown", "conflict", "undeclared", "overdue", "refused"]
    says: str = ""
    """When a review was due; why a lift is refused."""


def gaps_that_bite(airframe: Airframe, also: tuple[str, ...] = (), reported: Collection[str] = ()) -> tuple[Gap, ...]:
    """Unknowns and conflicts in opening, shutdown, ties, pyrotechnics, high voltage, and under the paths ``also``.

    ``reported`` are devices whose state somebody licensed reported for the day: it is no longer unknown.
    """
    answered = {("pyrotechnics", name, "state") for name in reported}
    found = dict.fromkeys([*_silent(airframe), *_open(airframe, also)])  # an "unknown" that is written counts once
    return tuple(sorted((gap for gap in found if gap.path not in answered), key=_rank))


_WORST_FIRST = ("pyrotechnics", "high_voltage", "seats", "exits", "canopies", "controls")


def _rank(gap: Gap) -> tuple[bool, int]:
    """What can kill a rescuer first, then what keeps the occupant in; what a position alone decides comes last."""
    section = str(gap.path[0])
    by_section = _WORST_FIRST.index(section) if section in _WORST_FIRST else len(_WORST_FIRST)
    one_attitude = gap.path[2:3] == ("works",) and gap.path[3:4] not in (("upright",), ("inverted",))
    return one_attitude, by_section


def thing_depth(path: Path) -> int:
    """How much of a path names the thing: ``exits.sill-latch`` of ``exits.sill-latch.works.inverted``."""
    if path[0] == "seats" and len(path) > 3:
        return 4
    return 1 if path[0] in ("high_voltage", "approach", "masses", "water", "engine") else min(2, len(path))


def open_questions(airframe: Airframe) -> tuple[Path, ...]:
    """Every question that nobody has answered: what says unknown, and what was left out where silence is unknown."""
    written = [path for path, value in values_of(airframe) if value is NonValue.UNKNOWN]
    return tuple(dict.fromkeys([*(gap.path for gap in _silent(airframe)), *written]))


def _silent(airframe: Airframe) -> Iterator[Gap]:
    for kind in MUST_BE_ANSWERED:
        if device_answer(airframe, kind) is NonValue.UNKNOWN:
            yield Gap("rockets and cartridges", ("pyrotechnics", kind.replace(" ", "-")), "unknown")


def _open(airframe: Airframe, also: tuple[str, ...]) -> Iterator[Gap]:
    for path, value in values_of(airframe):
        group = group_of(path, also)
        if value is NonValue.UNKNOWN and (group := group or _around(path, also)):
            yield Gap(group, path, "unknown")
        elif not group:
            continue
        elif isinstance(value, Quantity) and value.status == "disagree":
            yield Gap(group, path, "conflict")


def group_of(path: Path, also: tuple[str, ...] = ()) -> str:
    """The group that a path belongs to; "" where it does not make an entry unfit."""
    if path[0] == "seats" and len(path) > 2 and path[2] == "ties":
        return GROUPS["ties"]
    if path[0] in GROUPS and path[0] != "ties":
        return GROUPS[str(path[0])]
    return next((pattern.replace("_", " ") for pattern in also if _under(path, pattern.split("."))), "")


def _under(path: Path, pattern: list[str]) -> bool:
    """True for a path at or below ``pattern``, in which * stands for any id."""
    return len(path) >= len(pattern) and _along(path, pattern)


def _along(path: Path, pattern: list[str]) -> bool:
    return all(want in ("*", str(part)) for want, part in zip(pattern, path, strict=False))


def _around(path: Path, also: tuple[str, ...]) -> str:
    """The pattern that lies within ``path``: where a whole section is unknown, nothing below it is known."""
    return next((pattern.replace("_", " ") for pattern in also if _along(path, pattern.split("."))), "")
