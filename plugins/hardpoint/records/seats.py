"""Seats: what ties an occupant to the airframe, where to grip, what must not be pulled, what is worn."""

from __future__ import annotations

from typing import Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Arises, Known, Stated
from hardpoint.records.places import Place
from hardpoint.records.quantities import Length, Mass
from hardpoint.records.texts import Named, Words
from hardpoint.records.ways import Step

TieKind = Literal[
    "rotary buckle",
    "turn-and-press buckle",
    "lift-latch buckle",
    "push-button buckle",
    "cam lock",
    "ratchet belt",
    "second lap latch",
    "single lap belt",
    "helmet lead",
    "air hose",
    "oxygen hose",
    "anti-g hose",
    "static line",
    "leg line",
    "negative-g strap",
    "lanyard",
    "shoulder straps",
    "lap strap",
]
Inflates = Literal["by itself", "by hand", "does not inflate"]
Leaves = Literal["leaves with the occupant", "stays with the airframe"]


class Tie(Part):
    """One thing that joins the occupant to the airframe."""

    kind: Stated[TieKind]
    """What it is."""
    place: Stated[Place]
    """Where the hand finds it."""
    steps: Stated[tuple[Step, ...]]
    """How it is undone."""
    holds: Stated[Words] | None = None
    """How many straps or points come free with it: "five straps"."""
    if_left: Stated[Words] | None = None
    """What happens if it is left on and the occupant is lifted."""
    success: Stated[Words] | None = None
    """What tells that it is free."""


class DoNotPull(Part):
    """A handle within reach that must not be touched."""

    what: Words
    """What it is and what it looks like."""
    place: Stated[Place]
    """Where it is."""
    why: Words
    """What it does."""


class Parachute(Part):
    """A parachute that is worn or sat on."""

    worn: Literal["on the back", "in the seat", "on the lap"]
    """How it is worn."""
    lifting: Stated[Leaves]
    """Whether it leaves with the occupant."""
    straps: Stated[Words]
    """How it is closed: "chest and two leg straps"."""
    mass: Stated[Mass] | None = None
    """Its mass, for lifting out."""


class Worn(Part):
    """Kit that the occupant wears or carries."""

    what: Words
    """What it is: "automatic life jacket"."""
    carried: Stated[Words]
    """When it is worn: "always", "over-water slots only"."""
    kept: Stated[Words] | None = None
    """Where it is kept while it is not worn: "pocket behind the rear seats"."""
    inflates: Arises[Inflates] | None = None
    """Whether it inflates, and how; one that inflates by itself fills in a flooded cabin and holds its wearer there."""
    lifting: Stated[Leaves] | None = None
    """Whether it leaves with the occupant."""
    caution: Words | None = None
    """What it can do: inflate, snag, burst."""
    mass: Stated[Mass] | None = None
    """Its mass, for lifting out."""


class Seat(Part):
    """One position for an occupant."""

    place: Stated[Place]
    """Where it is."""
    alone: Literal["flown alone from here", "not flown alone from here", "only seat"]
    """Whether a single occupant sits here."""
    ties: Stated[Named[Known[Tie]]]
    """Everything recorded that joins the occupant to the airframe. The list may be short of the truth."""
    grip: Stated[tuple[Words, ...]]
    """Where to take hold of the occupant."""
    do_not_pull: Known[Named[Stated[DoNotPull]]]
    """Handles that must not be touched."""
    parachute: Known[Parachute]
    """A parachute, if one is worn."""
    worn: Known[Named[Stated[Worn]]]
    """Other kit."""
    second_belt: Known[Words]
    """Whether a second belt was looked for, and found."""
    leg_room: Stated[Words] | None = None
    """What holds the legs: panel, rudder pedals, stick."""
    head_to_canopy: Stated[Length] | None = None
    """From the top of the helmet to the canopy."""
    lift_out: Words | None = None
    """Which way the occupant comes out best."""
