"""One aircraft: its type, and what differs on it. The tail outranks the type."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from hardpoint.records.base import Part
from hardpoint.records.known import Known, NonValue, Stated
from hardpoint.records.problems import problem
from hardpoint.records.provenance import Change, Check, Photo, SectionName
from hardpoint.records.sight import Markings
from hardpoint.records.texts import Date, Id, Named, Registration, Words

NOTHING = "nothing"
NONE_RECORDED = "none recorded"


class Difference(Part):
    """One thing that is otherwise on this aircraft than on its type."""

    at: Words
    """The path in the type's record: "controls.magneto-left.off_is"."""
    type_says: Any
    """What the type says there now, word for word; "nothing" where this aircraft has something added."""
    here: Any
    """What is on this aircraft, in full; "nothing" where a whole entry was removed. A list is replaced whole."""
    before: Id | None = None
    """For something added: the entry of its section that it comes before, for example the exit to try after it."""
    because: Words | None = None
    """Why, or who found it."""


class _Declared:
    """``unknown`` = undeclared; ``none recorded`` = declared, an empty list; otherwise the list itself."""

    admitted = (NonValue.UNKNOWN,)

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        listed = handler.generate_schema(tuple[Difference, ...])
        return core_schema.no_info_wrap_validator_function(self._read, listed)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        return {"anyOf": [{"enum": [NONE_RECORDED, NonValue.UNKNOWN.value]}, handler(schema)]}

    def _read(self, value: Any, inner: core_schema.ValidatorFunctionWrapHandler) -> Any:
        if value == NonValue.UNKNOWN.value:
            return NonValue.UNKNOWN
        if value == NONE_RECORDED:
            return ()
        if isinstance(value, str):
            raise problem(
                "undeclared-differences",
                read=value,
                expected=f'a list of differences, "{NONE_RECORDED}" (somebody declared it) or "unknown"',
                example=NONE_RECORDED,
            )
        return inner(value)


Differs = Annotated[tuple[Difference, ...] | NonValue, _Declared()]


class Declaration(Part):
    """Who stands for the differences, and since when."""

    by: Stated[Words]
    """The role: "owner", "safety lead with the owner"."""
    date: Stated[Date]
    """When it was declared."""


class Tail(Part):
    """A record under fleet/tails."""

    tail: Registration
    """The registration; the file has the same name."""
    of: Id
    """The id of its type."""
    markings: Stated[Markings]
    """How it looks."""
    differs: Differs
    """A list, "none recorded" (declared) or "unknown" (undeclared)."""
    declared: Known[Declaration]
    """Who declared the differences."""
    photos: Named[Photo] = Field(default_factory=dict)
    """Pictures of this aircraft."""
    checked: dict[SectionName, Check] = Field(default_factory=dict)
    """Provenance of what was looked at on this aircraft, by section."""
    who_can_answer: dict[SectionName, Words] = Field(default_factory=dict)
    """Who can answer what is unknown on this aircraft, by section."""
    changes: tuple[Change, ...] = ()
    """Change log."""
    notes: Words | None = None
    """Anything else."""
