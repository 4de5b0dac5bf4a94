"""The base of every part of a record."""

from __future__ import annotations

from typing import Any, ClassVar

from pydantic import BaseModel, ConfigDict, GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema


class Chosen(str):
    """A word out of a closed list of the model ("walked", "towards floor"), not one of the author's own.

    It equals the plain text. Pages tell it in the language of the reader, and free words as they were written; without
    this nobody could tell the two apart by the value.
    """

    __slots__ = ()


def _mark_choices(schema: dict[str, Any]) -> None:
    """Let every choice between words below a core schema give ``Chosen``, in place; parts below see to themselves."""
    for key, inner in schema.items():
        if key in ("serialization", "metadata"):
            continue
        for number, part in enumerate(inner) if isinstance(inner, list) else [(None, inner)]:
            if not isinstance(part, dict) or part.get("type") in ("model", "definitions"):
                continue
            if part.get("type") == "literal" and all(isinstance(word, str) for word in part["expected"]):
                marked = core_schema.no_info_after_validator_function(Chosen, part)
                if number is None:
                    schema[key] = marked
                else:
                    inner[number] = marked
            elif not (part.get("type") == "function-after" and part["function"].get("function") is Chosen):
                _mark_choices(part)


class Part(BaseModel):
    """Frozen, no keys beyond its own, described by the docstrings of its attributes (editors show them).

    Wherever a field is a Literal of words, its value is ``Chosen``: done here, so that no field can miss it.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", use_attribute_docstrings=True, populate_by_name=False)

    silence_is_unknown: ClassVar[tuple[str, ...]] = ()
    """Keys that may be left out and then count as unknown: pages print UNKNOWN for them, so they are open questions."""

    def open_beside(self) -> tuple[str, ...]:
        """Keys whose answer stands and is still not whole, so that they are open questions as well."""
        return ()

    @classmethod
    def __get_pydantic_core_schema__(cls, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        schema = handler(source)
        whole: Any = schema
        while whole.get("type") in ("definitions", "function-before", "function-after", "function-wrap"):
            whole = whole["schema"]
        if whole.get("type") == "model":
            _mark_choices(whole["schema"])
        return schema
