"""Tanks and what runs from them."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.places import Place, Route
from hardpoint.records.quantities import Density, Length, Temperature, Volume
from hardpoint.records.texts import Count, Named, Words

Fluid = Literal[
    "avgas",
    "mogas",
    "jet fuel",
    "diesel",
    "smoke oil",
    "engine oil",
    "hydraulic oil",
    "water ballast",
    "coolant",
    "de-icing fluid",
]
BURNING: tuple[Fluid, ...] = ("avgas", "mogas", "jet fuel", "diesel", "smoke oil", "engine oil", "hydraulic oil")
OILS: tuple[Fluid, ...] = ("smoke oil", "engine oil", "hydraulic oil")
ENGINE_FUELS: tuple[Fluid, ...] = ("avgas", "mogas", "jet fuel", "diesel")


class Drain(Part):
    """A hole that a fluid leaves by."""

    place: Stated[Place]
    """Where it is."""
    diameter: Stated[Length]
    """Clear diameter of one."""
    count: Count = 1
    """How many."""
    works: Words | None = None
    """How it is opened."""


class Tank(Part):
    """One tank, or a pair of the same: ``count`` 2."""

    holds: Stated[Fluid]
    """What is in it."""
    capacity: Stated[Volume]
    """Volume of one, as the author has it; both units are kept."""
    count: Count = 1
    """How many of this kind: 2 for one in each wing."""
    place: Stated[Place]
    """Its stretch; side both = it spans, or one on each side where count is 2."""
    made_of: Stated[Words] | None = None
    """Aluminium, rubber bag, wet wing ..."""
    lines: Stated[Named[Known[Route]]]
    """Every line that leaves it."""
    feeds: Literal["by gravity", "by pump", "by gravity and pump"] | None = None
    """What moves the fluid: gravity goes on after shut-down."""
    drains: Named[Known[Drain]] = Field(default_factory=dict)
    """Holes that it can be drained by."""
    density: Stated[Density] | None = None
    """Density, where the record has its own."""
    flash_point: Stated[Temperature] | None = None
    """Flash point with a source, or unknown."""
    burns: Words | None = None
    """How it burns, in words."""
    source: Words | None = None
    """Where density, flash point or burning come from."""
