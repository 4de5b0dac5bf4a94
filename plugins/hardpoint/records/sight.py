"""What is seen from afar: signs to recognise a type by, the side to approach from, a tail's markings."""

from __future__ import annotations

from typing import Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.texts import Words
from hardpoint.records.ways import Attitude

Bearing = Literal[
    "bow",
    "nose",
    "tail",
    "left side",
    "right side",
    "left front quarter",
    "right front quarter",
    "left rear quarter",
    "right rear quarter",
]


class Sign(Part):
    """One thing to recognise the type by, and in which attitudes it can be seen."""

    see: Words
    """What is seen: "low wing, cropped tips"."""
    of: Literal["shape", "colour", "marking", "sound", "detail"]
    """What kind of sign it is; a shape outlasts paint and dark."""
    visible: tuple[Attitude, ...]
    """The attitudes in which it can be seen."""


class Danger(Part):
    """A direction not to come from, and why."""

    where: Words
    """Which sector: "in line with the propeller", "behind the jet pipe"."""
    why: Words
    """What is there."""
    keep: Words | None = None
    """How far to keep away, where somebody stated it."""


class Approach(Part):
    """From where to come, and from where not."""

    come_from: Known[tuple[Bearing, ...]]
    """Bearings relative to the airframe, the best first."""
    because: Stated[Words]
    """Why from there."""
    keep_out: Known[tuple[Danger, ...]]
    """Sectors not to enter."""


class Markings(Part):
    """How one tail looks."""

    colours: Known[Words]
    """Paint: "yellow, black cheat line"."""
    number_on: Known[Words]
    """Where the display number is: "both sides of the fin"."""
    also: Words | None = None
    """Anything else that tells it from its sisters."""
