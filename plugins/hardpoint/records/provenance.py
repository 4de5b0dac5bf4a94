"""Where a statement comes from: how it was checked, on which aircraft, by whom (a role), when, and when again."""

from __future__ import annotations

from typing import Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.texts import Date, Id, Registration, Words

HowChecked = Literal[
    "worked by hand", "walked", "measured", "weighed", "from drawing", "from manual", "told by the owner", "not checked"
]


SectionName = Literal[
    "datum",
    "size",
    "landmarks",
    "profile",
    "signs",
    "approach",
    "zones",
    "absences",
    "loaded_parts",
    "masses",
    "engine",
    "propeller",
    "rotor",
    "tanks",
    "batteries",
    "high_voltage",
    "controls",
    "canopies",
    "exits",
    "seats",
    "bottles",
    "pyrotechnics",
    "hazards",
    "load_points",
    "lifts",
    "steadying",
    "fire",
    "water",
]
"""The sections of a type's record that can be checked, or asked about."""


class Check(Part):
    """One section's provenance."""

    how: HowChecked
    """How it was established."""
    aircraft: Known[Registration]
    """The aircraft it was established on."""
    by: Stated[Words]
    """The role, never a name: "safety lead"."""
    date: Stated[Date]
    """When."""
    review: Stated[Date]
    """When it has to be looked at again."""
    second_by: Stated[Words] | None = None
    """A second role that looked: for pyrotechnics, bottles, high voltage, canopies."""
    source: Id | None = None
    """A citation of sources.yaml."""


class Change(Part):
    """An entry of the record's change log."""

    date: Date
    """When."""
    by: Words
    """The role."""
    what: Words
    """What changed, in words of the trade."""


class Photo(Part):
    """A picture of a handle or control."""

    file: Words
    """File name under fleet/photos/."""
    shows: Words
    """The path of what it shows: "controls.magneto-left"."""
    view: Words
    """From where it was taken."""
    licence: Words
    """The licence it is published under."""
    date: Stated[Date]
    """When it was taken."""
    alt: Words
    """What is seen on it, for those who cannot see it."""
