"""Citations that records and figures refer to."""

from __future__ import annotations

from typing import Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Stated
from hardpoint.records.texts import Id, Words


class Source(Part):
    """One published source."""

    title: Words
    """Title."""
    publisher: Words
    """Who published it."""
    edition: Stated[Words]
    """Edition or year."""
    section: Words | None = None
    """Section, table or page."""
    standing: Literal["read", "recomputed", "from memory", "invented"]
    """Whether it was read, recomputed, or is cited from memory and not yet checked against its text."""


Sources = dict[Id, Source]
"""The record fleet/sources.yaml: citations under ids."""
