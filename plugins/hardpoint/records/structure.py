"""Structure by zone: what it is, what it looks like, what lies behind each side, and where it may be cut.

What lies behind a skin counts as complete only where somebody walked it. A claimed absence is a record of its own.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, ClassVar, Literal

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from hardpoint.records.base import Part
from hardpoint.records.known import Arises, Known, NonValue, Stated
from hardpoint.records.materials import Material
from hardpoint.records.places import Place, Route
from hardpoint.records.problems import problem
from hardpoint.records.provenance import Check
from hardpoint.records.quantities import Length
from hardpoint.records.texts import Named, Position, Words

Cut = Literal["preferred", "possible", "avoid", "never"]
Listing = Literal["walked and complete", "walked in part", "from drawing", "from manual", "told"]
Behind = Literal[
    "fuel line",
    "pressure line",
    "oil line",
    "electric cable",
    "high-voltage cable",
    "control cable",
    "push-rod",
    "pyrotechnic cable",
    "tank",
    "bottle",
    "battery",
    "pyrotechnic",
    "loaded cable",
    "bulkhead",
    "tube",
    "longeron",
    "spar",
    "seat structure",
    "equipment",
]


class BehindItem(Part):
    """One thing behind the skin of a zone."""

    kind: Behind
    """What it is."""
    fs: Stated[Position]
    """Its stretch of stations."""
    wl: Stated[Position] | None = None
    """Its waterlines."""
    what: Words | None = None
    """More words: "aileron push-rod, bare aluminium"."""
    looks: Words | None = None
    """Colour and size, to know it by."""


NOTHING_FOUND = "nothing found"


class _Found:
    """A list of what lies behind a skin, ``nothing found`` (an empty list, somebody looked) or ``unknown``."""

    admitted = (NonValue.UNKNOWN,)

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        listed = handler.generate_schema(Named[Stated[BehindItem]])
        return core_schema.no_info_wrap_validator_function(self._read, listed)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        return {"anyOf": [{"enum": [NOTHING_FOUND, NonValue.UNKNOWN.value]}, handler(schema)]}

    def _read(self, value: Any, inner: core_schema.ValidatorFunctionWrapHandler) -> Any:
        if isinstance(value, str) and value not in (NOTHING_FOUND, NonValue.UNKNOWN.value):
            expected = f'a list of things under ids, "{NOTHING_FOUND}" (somebody looked) or "unknown"'
            raise problem("not-a-listing", read=value, expected=expected, example=NOTHING_FOUND)
        if isinstance(value, str):
            return {} if value == NOTHING_FOUND else NonValue.UNKNOWN
        return inner(value)


FoundBehind = Annotated[Mapping[str, BehindItem | NonValue] | NonValue, _Found()]


class ZoneSide(Part):
    """One side of a zone."""

    silence_is_unknown: ClassVar[tuple[str, ...]] = ("behind",)

    cut: Stated[Cut]
    """The verdict of the record's author; a window is drawn only where the listing is walked and complete."""
    listing: Stated[Listing]
    """How the list of what lies behind was made."""
    behind: FoundBehind | None = None
    """What lies behind this side, each under an id; ``nothing found`` and ``unknown`` are answers, silence is unknown.
    Tanks, lines, bottles and cables of the record count by themselves."""
    why: Words | None = None
    """Why this verdict."""


class Skin(Part):
    """What a tool meets first."""

    material: Stated[Material]
    """What the skin is made of; where it is several, the one that is hardest to cut."""
    thickness: Stated[Length]
    """Thickness of the skin."""
    tube: Known[Length] | None = None
    """Outer diameter of the tubes under it."""
    joins: Known[Words] | None = None
    """Quarter-turns, screws, stitching: what opens without cutting."""


class Zone(Part):
    """A stretch of the airframe of one structure."""

    fs: Position
    """Its stretch of stations."""
    wl: Position | None = None
    """Where only a band of heights is meant: "above 600"."""
    structure: Stated[Words]
    """What carries: "carbon monocoque", "steel tube, aluminium panels"."""
    looks: Words | None = None
    """What it looks like and how it is painted inside."""
    skin: Stated[Skin] | None = None
    """Skin and tubes, to match tools against."""
    left: ZoneSide
    """The airframe's left side."""
    right: ZoneSide
    """The airframe's right side."""
    top: Arises[ZoneSide] | None = None
    """The side towards the canopy; not applicable where its band of heights ends there."""
    floor: Arises[ZoneSide] | None = None
    """The side towards the floor; not applicable where its band of heights begins there."""


class Absence(Part):
    """A claim that something is not there, with who looked: "no fuel line aft of FS 1700"."""

    none_of: Behind
    """What is not there."""
    fs: Position
    """Where it is not."""
    checked: Check
    """How that is known."""


class LoadedPart(Part):
    """Something under tension or compression that moves when it is cut or released."""

    kind: Literal[
        "control cable", "flying wire", "bracing wire", "bungee", "spring", "gas strut", "leaf spring", "loaded tube"
    ]
    """What it is."""
    what: Words
    """In words: "rudder cables, both sides"."""
    place: Stated[Place]
    """Where it is."""
    route: Stated[Route] | None = None
    """Its way, if it runs."""
    when_cut: Stated[Words]
    """What moves when it is cut or let go."""
    release: Words | None = None
    """How it is let go under control."""
