"""Rockets, seat and canopy cartridges: never touched, never made safe by a crew from this book."""

from __future__ import annotations

from typing import Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Stated
from hardpoint.records.places import Place, Route
from hardpoint.records.quantities import Angle
from hardpoint.records.texts import Id, Words

DeviceKind = Literal[
    "rocket parachute", "seat cartridge", "canopy cartridge", "extinguisher cartridge", "cable cutter", "flare"
]


class ExitDirection(Part):
    """Where it flies, relative to the airframe."""

    towards: Literal["aft", "forward", "pilot's left", "pilot's right"]
    """Its heading in the plane of the floor."""
    raised: Stated[Angle]
    """Raised from that plane towards the canopy."""
    through: Stated[Words]
    """What it breaks through: "hatch in the top skin, right of centre"."""


class Pyrotechnic(Part):
    """One device, with its handle and its cable."""

    kind: DeviceKind
    """What it is."""
    place: Stated[Place]
    """Where it is."""
    exit_direction: Stated[ExitDirection]
    """Where it flies; unknown is an answer, silence is not."""
    cable: Stated[Route]
    """The way of its cable or linkage; unknown is an answer, silence is not."""
    handle: Stated[Words]
    """The handle that fires it: never touched."""
    handle_place: Stated[Place]
    """Where that handle is."""
    seat: Id | None = None
    """The seat it belongs to."""
    state: Stated[Literal["live until reported otherwise", "fired", "removed"]]
    """What has to be assumed."""
    do_not: Words | None = None
    """What not to do near it; pages print "Do NOT" before it."""
