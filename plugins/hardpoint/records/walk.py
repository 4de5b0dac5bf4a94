"""Walking through a record: every part with its path as the author wrote it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
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
    found: list[tuple[Path, Any]] = []
    _collect(value, path, found)
    return iter(found)


def _collect(value: Any, path: Path, found: list[tuple[Path, Any]]) -> None:
    """Into one list: a generator in each part would hand every value up through all that is above it."""
    if isinstance(value, Part):
        for name, key in _keys(type(value)):
            child = getattr(value, name)
            if child is not None:
                _collect(child, (*path, key), found)
        found += [((*path, key), NonValue.UNKNOWN) for key in value.silence_is_unknown if getattr(value, key) is None]
        found += [((*path, key), NonValue.UNKNOWN) for key in value.open_beside()]
    elif isinstance(value, tuple) and not hasattr(value, "_fields"):
        for index, child in enumerate(value):
            _collect(child, (*path, index), found)
    elif isinstance(value, _PLAIN) or not isinstance(value, Mapping):
        if value is not None:
            found.append((path, value))
    else:
        for key, child in value.items():
            _collect(child, (*path, key), found)


_PLAIN = (str, int)
"""What most values are: asking first spares the dear question whether they are a mapping."""


def fields_of(part: Part) -> Iterator[tuple[str, Any]]:
    """Keys as authors write them (``from``, not ``from_``), with values."""
    for name, key in _keys(type(part)):
        yield key, getattr(part, name)


@cache
def _keys(model: type[Part]) -> tuple[tuple[str, str], ...]:
    """The fields of a model and their keys."""
    return tuple((name, field.alias or name) for name, field in model.model_fields.items())
