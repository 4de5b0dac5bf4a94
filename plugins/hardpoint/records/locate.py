"""Which model stands at a path of a record: for "did you mean", for the schema, for reading values by path."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from hardpoint.findings import Path
from hardpoint.records.base import Part
from hardpoint.records.known import NonValue
from hardpoint.records.ways import Way
from hardpoint.units import Quantity

PartOfPath = Literal["key", "choice", "id", "open"]
"""What a part of a path is: a key of a model, a word out of a closed list, the author's own (a number, too); ``open``
below what a model leaves open (``here`` of a difference)."""


def model_at(model: type[Part], path: Path) -> type[Part] | None:
    """The model whose keys stand directly below ``path``; None where the path holds something else."""
    here: Any = model
    for part in path:
        here = _below(_bare(here), part)
        if here is None:
            return None
    bare = _bare(here)
    return bare if isinstance(bare, type) and issubclass(bare, Part) else None


def admitted(model: type[Part], path: Path) -> tuple[NonValue, ...]:
    """The non-values that may stand at ``path``; none where the thing has to be said."""
    parent = model_at(model, path[:-1])
    for name, field in parent.model_fields.items() if parent else ():
        if path[-1] in (name, field.alias):
            return tuple(word for mark in field.metadata for word in getattr(mark, "admitted", ()))
    return ()


def leads_somewhere(model: type[Part], pattern: Path) -> bool:
    """Whether a record can have something at ``pattern``, in which ``*`` stands for any id or index."""
    here: Any = model
    for part in pattern:
        here = _below(_bare(here), part)
        if here is None:
            return False
    return True


def keys_of(model: type[Part]) -> list[str]:
    """The keys as authors write them."""
    return [*_keys(model)]


@lru_cache(maxsize=1024)
def _keys(model: type[Part]) -> tuple[str, ...]:
    return tuple(field.alias or name for name, field in model.model_fields.items())


@lru_cache(maxsize=65536)
def kinds_of(model: type[Part], path: Path) -> tuple[PartOfPath, ...]:
    """What each part of a path is."""
    here: Any = model
    kinds: list[PartOfPath] = []
    for part in path:
        bare = _bare(here)
        if bare is Quantity or (isinstance(bare, type) and issubclass(bare, Part)):
            kinds.append("key")
        elif bare is Any:
            kinds.append("open")
        else:
            among_choices = get_origin(bare) is not tuple and is_choice(get_args(bare)[:1])
            kinds.append("choice" if among_choices else "id")
        here = _below(bare, part)
    return tuple(kinds)


@lru_cache(maxsize=65536)
def holds_choice(model: type[Part], path: Path) -> bool:
    """Whether a word out of a closed list stands at a path, and not a word of the author's own."""
    here: Any = model
    for part in path:
        here = _below(_bare(here), part)
    return is_choice(here)


def choices_at(model: type[Part], pattern: Path) -> tuple[str, ...]:
    """The words of the closed list that stands at a path with * for any id; () where the words are the author's own."""
    here: Any = model
    for part in pattern:
        here = _below(_bare(here), part)
    bare = _bare(here)
    return tuple(map(str, get_args(bare))) if get_origin(bare) is Literal else ()


def is_choice(annotation: Any) -> bool:
    """Whether an annotation asks for a word out of a closed list: a Literal of words, or a way."""
    if isinstance(annotation, tuple):
        return any(map(is_choice, annotation))
    if annotation == Way or get_origin(annotation) is Literal:
        return True
    return get_origin(annotation) in (Annotated, Union, UnionType) and is_choice(get_args(annotation))


def _below(bare: Any, part: str | int) -> Any:
    if isinstance(bare, type) and issubclass(bare, Part):
        for name, field in bare.model_fields.items():
            if part in (name, field.alias):
                return field.annotation if not field.metadata else Annotated[field.annotation, *field.metadata]
        return None
    if bare is Any:
        return Any
    origin = get_origin(bare)
    if origin in (dict, Mapping) or (isinstance(origin, type) and issubclass(origin, Mapping)):
        return get_args(bare)[1]
    if origin is tuple:
        return get_args(bare)[0]
    return None


def _bare(annotation: Any) -> Any:
    """The annotation without Annotated, None and the non-values."""
    while True:
        if get_origin(annotation) is Annotated:
            annotation = get_args(annotation)[0]
            continue
        if get_origin(annotation) is Union or type(annotation).__name__ == "UnionType":
            kept = [arg for arg in get_args(annotation) if arg is not type(None) and arg is not NonValue]
            if len(kept) == 1:
                annotation = kept[0]
                continue
        return annotation
