"""Masses and where they act."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.places import Place
from hardpoint.records.quantities import Mass
from hardpoint.records.texts import Count, Named, Position, Words

End = Literal["nose", "tail", "neither", "left wing", "right wing"]


class CentreOfGravity(Part):
    """Where a mass acts."""

    fs: Stated[Position]
    """Station; a stretch where it is only known to lie within it."""
    wl: Stated[Position] | None = None
    """Waterline: "below 700" is an answer."""


class Item(Part):
    """A heavy item that is part of the empty mass."""

    what: Words
    """In words: "wing panel", "engine with propeller"."""
    mass: Stated[Mass]
    """Mass of one."""
    count: Count = 1
    """How many of them."""
    place: Stated[Place]
    """Where it acts."""
    comes_off: Known[Words] | None = None
    """How it is taken off before a lift, if it can be."""


class Masses(Part):
    """Empty mass, its centre of gravity, the heavy items that it contains."""

    empty: Stated[Mass]
    """Empty mass."""
    empty_cg: Stated[CentreOfGravity]
    """Centre of gravity when empty."""
    maximum: Stated[Mass] | None = None
    """Largest permitted mass."""
    items: Stated[Named[Known[Item]]] = Field(default_factory=dict)
    """Heavy items, each under an id."""
    heavy_end: Stated[End]
    """The end that goes low when it is lifted in the middle or afloat."""
    heavy_end_because: Words | None = None
    """Why."""
