"""Where a statement comes from: how it was checked, on which aircraft, by whom (a role), when, and when again."""

from __future__ import annotations

import re
from typing import Annotated, Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.problems import problem
from hardpoint.records.texts import Date, Id, Reads, Registration, Words

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


PHOTO_ENDINGS = (".jpg", ".jpeg", ".png", ".webp")
_LONGEST_FILE = 100
_FILE = re.compile(rf"[a-z0-9]+(?:-[a-z0-9]+)*(?:{'|'.join(map(re.escape, PHOTO_ENDINGS))})")


def _photo_file(text: str) -> str:
    if _FILE.fullmatch(text) and len(text) <= _LONGEST_FILE:
        return text
    endings = ", ".join(PHOTO_ENDINGS[:-1]) + f" or {PHOTO_ENDINGS[-1]}"
    if "/" in text or "\\" in text:
        expected = "the name of the file alone: photos lie in fleet/photos/ and nowhere else"
    elif not text.endswith(PHOTO_ENDINGS):
        expected = f"the name of a photo, which ends in {endings}"
    else:
        expected = f"small letters and digits, joined by hyphens, then {endings}, at most {_LONGEST_FILE} characters"
    raise problem("bad-photo-name", read=text, expected=expected, example="sill-knob.jpg")


PhotoFile = Annotated[
    str,
    Reads(
        _photo_file,
        {
            "title": "the name of a photo's file",
            "type": "string",
            "pattern": f"^{_FILE.pattern}$",
            "maxLength": _LONGEST_FILE,
            "examples": ["sill-knob.jpg"],
        },
        exact=True,
    ),
]


class Photo(Part):
    """A picture of a handle or control."""

    file: PhotoFile
    """Its file under fleet/photos/."""
    shows: Words
    """The path of what it shows: "controls.magneto-left"."""
    view: Words
    """From where it was taken, in words of the airframe: "from outside, facing the left sill"."""
    aircraft: Stated[Registration]
    """The aircraft that is seen on it."""
    date: Stated[Date]
    """When it was taken."""
    by: Stated[Words]
    """Who took it: the role, never a name."""
    licence: Words
    """The licence it is published under."""
    alt: Words
    """What is seen on it, for those who cannot see it."""
