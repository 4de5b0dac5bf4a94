"""The base of every part of a record."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Part(BaseModel):
    """Frozen, no keys beyond its own, described by the docstrings of its attributes (editors show them)."""

    model_config = ConfigDict(frozen=True, extra="forbid", use_attribute_docstrings=True, populate_by_name=False)
