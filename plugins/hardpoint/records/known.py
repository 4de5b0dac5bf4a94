"""Answers that are not values: somebody does not know, somebody looked, or the question does not arise.

One annotation, no unions in the models: a union would put its branch into the path of every finding, and the path of a
finding has to be the path in the author's file.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Annotated, Any, TypeGuard, TypeVar, get_args

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationError
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from hardpoint.records.problems import problem


class NonValue(StrEnum):
    """What an author writes where no value can stand. None of them is a blank."""

    UNKNOWN = "unknown"
    NOT_FITTED = "not fitted"
    NOT_APPLICABLE = "not applicable"


T = TypeVar("T")
_MEANT_AS_NOTHING = {
    "none",
    "no",
    "nil",
    "n/a",
    "na",
    "-",
    "?",
    "tbd",
    "tbc",
    "not known",
    "null",
    "~",
    "nothing",
    "absent",
}
Tree = str | list[Any] | dict[str, Any]


class _Admits:
    """Lets the named non-values through and hands everything else to the type beside it."""

    def __init__(self, *admitted: NonValue) -> None:
        self.admitted = admitted

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        inner = [arg for arg in get_args(source) if arg is not NonValue]
        schema = handler.generate_schema(inner[0])
        return core_schema.no_info_wrap_validator_function(self._read, schema)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        return {"anyOf": [{"enum": [word.value for word in self.admitted]}, handler(schema)]}

    def _read(self, value: Any, inner: core_schema.ValidatorFunctionWrapHandler) -> Any:
        word = _as_non_value(value)
        if word is None:
            return self._value(value, inner)
        if word in self.admitted:
            return word
        admitted = " or ".join(f'"{other.value}"' for other in self.admitted)
        raise problem(
            "non-value-not-admitted",
            read=word.value,
            expected=f"a value here, or {admitted}: the thing itself is there",
            example=self.admitted[0].value,
        )

    def _value(self, value: Any, inner: core_schema.ValidatorFunctionWrapHandler) -> Any:
        """The value itself; what people type for "nothing" is answered with what they can mean."""
        try:
            return inner(value)
        except ValidationError:
            if isinstance(value, str) and value.strip().lower() in _MEANT_AS_NOTHING:
                meanings = {
                    NonValue.UNKNOWN: '"unknown" (nobody knows)',
                    NonValue.NOT_FITTED: '"not fitted" (somebody looked)',
                    NonValue.NOT_APPLICABLE: '"not applicable" (the question does not arise)',
                }
                listed = " or ".join(meanings[word] for word in self.admitted)
                raise problem("not-an-answer", read=value, expected=listed, example=self.admitted[0].value) from None
            raise


_BY_WORD: Mapping[str, NonValue] = {word.value: word for word in NonValue}
"""A look-up: every answer of every record is asked whether it is one of these, and an enumeration says no slowly."""


def _as_non_value(value: Any) -> NonValue | None:
    return _BY_WORD.get(value) if isinstance(value, str) else None


Known = Annotated[T | NonValue, _Admits(*NonValue)]
"""A value, ``unknown``, ``not fitted`` (somebody looked) or ``not applicable``."""

Stated = Annotated[T | NonValue, _Admits(NonValue.UNKNOWN)]
"""A value or ``unknown``: the thing is certainly there, only its value may be missing."""

Arises = Annotated[T | NonValue, _Admits(NonValue.UNKNOWN, NonValue.NOT_APPLICABLE)]
"""A value, ``unknown``, or ``not applicable`` where the question does not arise; it is nothing that is fitted."""


def is_said(value: T | NonValue) -> TypeGuard[T]:
    """True for a real value, False for any of the three non-values."""
    return not isinstance(value, NonValue)


def said(value: T | NonValue | None) -> T | None:
    """The value, or None where there is none; for rules and figures that then say so themselves."""
    return None if value is None or isinstance(value, NonValue) else value


def entries(mapping: Mapping[str, T | NonValue] | NonValue) -> dict[str, T]:
    """The entries of a named mapping that are really there, in the author's order."""
    if isinstance(mapping, NonValue):
        return {}
    return {name: value for name, value in mapping.items() if not isinstance(value, NonValue)}
