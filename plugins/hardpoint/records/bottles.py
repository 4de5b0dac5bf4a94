"""Pressure bottles on board: breathing air, oxygen, accumulators, extinguishers."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import Field, model_validator

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.places import Place, Route
from hardpoint.records.quantities import GaugePressure, Mass, Pressure, Volume
from hardpoint.records.texts import Count, Named, Words
from hardpoint.records.ways import SeenFrom, Way, turn_without_observer

Gas = Literal["air", "oxygen", "nitrogen", "carbon dioxide", "helium", "extinguishing agent"]
CylinderStandard = Literal["3A", "3AA", "3AL", "3HT", "4B", "4BA", "4BW", "ISO cylinder", "none marked"]


class Valve(Part):
    """The valve that closes a bottle."""

    place: Stated[Place]
    """Where it is."""
    closes: Stated[Way]
    """Which way closes it."""
    seen_from: SeenFrom | None = None
    """From where a turn is seen."""

    @model_validator(mode="after")
    def _observer(self) -> Self:
        turn_without_observer(self.closes, self.seen_from, "closes")
        return self


class Bottle(Part):
    """One bottle, or ``count`` of the same."""

    use: Literal[
        "breathing air", "oxygen", "hydraulic accumulator", "gear accumulator", "extinguisher", "pneumatic", "inflation"
    ]
    """What it is for."""
    holds: Stated[Gas]
    """The gas."""
    filled_as: Stated[Literal["gas", "liquid"]]
    """How it is charged; carbon dioxide is charged as a liquid."""
    water_capacity: Stated[Volume]
    """Volume of water that it would hold; not litres of free gas."""
    working_pressure: Stated[GaugePressure]
    """Gauge, at which it is used."""
    test_pressure: Stated[GaugePressure] | None = None
    """Gauge, at which it was tested."""
    burst_disc: Known[Pressure] | None = None
    """At which its disc lets go; say gauge or abs."""
    standard: Stated[CylinderStandard] | None = None
    """What is stamped on it."""
    charge: Known[Mass] | None = None
    """Mass of what is in one, where it is filled by mass, as carbon dioxide is."""
    mass: Stated[Mass] | None = None
    """Mass of one, charged."""
    count: Count = 1
    """How many."""
    place: Stated[Place]
    """Where it is."""
    valve: Known[Valve]
    """How it is closed."""
    lines: Stated[Named[Known[Route]]] = Field(default_factory=dict)
    """Pressure lines from it."""
    carried: Words | None = None
    """When it is on board."""
    do_not: Words | None = None
    """What not to do with it; pages print "Do NOT" before it."""
