"""Walking through a record: every part with its path as the author wrote it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from hardpoint.findings import Path
from hardpoint.records.base import Part
from hardpoint.records.known import NonValue


def parts_of(value: Any, path: Path = ()) -> Iterator[tuple[Path, Part]]:
    """Every part below ``value``, itself included, in the order of the models."""
    if isinstance(value, Part):
        yield path, value
        yield from (found for key, child in fields_of(value) for found in parts_of(child, (*path, key)))
    elif isinstance(value, Mapping):
        yield from (found for key, child in value.items() for found in parts_of(child, (*path, key)))
    elif isinstance(value, tuple):
        yield from (found for index, child in enumerate(value) for found in parts_of(child, (*path, index)))


def values_of(value: Any, path: Path = ()) -> Iterator[tuple[Path, Any]]:
    """Every value that is not itself a part, mapping or list: words, quantities, spans, dates, non-values.

    A question that was left out and counts as unknown (``silence_is_unknown``) is told as one that says so, and so is
    one that is answered in part (``open_beside``).
    """
    if isinstance(value, Part):
        yield from (found for key, child in fields_of(value) for found in values_of(child, (*path, key)))
        yield from (((*path, key), NonValue.UNKNOWN) for key in value.silence_is_unknown if getattr(value, key) is None)
        yield from (((*path, key), NonValue.UNKNOWN) for key in value.open_beside())
    elif isinstance(value, Mapping):
        yield from (found for key, child in value.items() for found in values_of(child, (*path, key)))
    elif isinstance(value, tuple) and not hasattr(value, "_fields"):
        yield from (found for index, child in enumerate(value) for found in values_of(child, (*path, index)))
    elif value is not None:
        yield path, value


def fields_of(part: Part) -> Iterator[tuple[str, Any]]:
    """Keys as authors write them (``from``, not ``from_``), with values."""
    for name, field in type(part).model_fields.items():
        yield field.alias or name, getattr(part, name)
