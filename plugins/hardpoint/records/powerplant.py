"""Engine, propeller and rotor: what turns, sucks, blows and stays hot."""

from __future__ import annotations

from typing import Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Arises, Known, Stated
from hardpoint.records.places import Place
from hardpoint.records.quantities import Duration, Length
from hardpoint.records.texts import Count, Words


class Engine(Part):
    """The engine or motor."""

    kind: Literal["piston", "jet", "turboprop", "turboshaft", "electric"]
    """What it is."""
    place: Stated[Place]
    """Where it is."""
    run_down: Stated[Duration]
    """How long it turns after it is shut down."""
    intake_keep: Known[Length]
    """How far to keep ahead of the intake."""
    exhaust_keep: Known[Length]
    """How far to keep behind the exhaust."""
    restarts: Words | None = None
    """What can make it turn again: a hot engine, a live magneto, a charged contactor."""


class Propeller(Part):
    """The propeller."""

    place: Stated[Place]
    """Where its disc is."""
    drives: Literal["tractor", "pusher"]
    """Ahead of or behind its engine."""
    material: Stated[Words]
    """What the blades are made of."""
    blades: Stated[Count]
    """How many blades."""
    hand_swung: Arises[Literal["by hand", "by a starter"]]
    """How it is started; one that is swung by hand fires at a touch. Not applicable to an electric motor."""


class TurningRotor(Part):
    """A rotor: the disc and how low it comes."""

    place: Stated[Place]
    """Where the hub is."""
    tip_height: Stated[Length]
    """How low a blade comes over level ground."""
    run_down: Stated[Duration]
    """How long it turns after shut-down."""
