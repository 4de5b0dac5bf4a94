"""Which model stands at a path of a record: for "did you mean", for the schema, for reading values by path."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Union, get_args, get_origin

from hardpoint.findings import Path
from hardpoint.records.base import Part
from hardpoint.records.known import NonValue


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
    return [field.alias or name for name, field in model.model_fields.items()]


def _below(bare: Any, part: str | int) -> Any:
    if isinstance(bare, type) and issubclass(bare, Part):
        for name, field in bare.model_fields.items():
            if part in (name, field.alias):
                return field.annotation if not field.metadata else Annotated[field.annotation, *field.metadata]
        return None
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
