"""What the airframe does on the ground, in fire and in water."""

from __future__ import annotations

from typing import Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.places import Place
from hardpoint.records.quantities import Length, Volume
from hardpoint.records.tanks import Drain
from hardpoint.records.texts import Named, Words


class Fire(Part):
    """What burns, and what its smoke and dust are."""

    burns: Stated[Words]
    """What the structure does in fire."""
    smoke: Stated[Words]
    """What is in its smoke; white smoke need not be fire."""
    dust: Stated[Words]
    """What is left: fibres, ash, sharp edges."""
    wear: Stated[Words] | None = None
    """What to wear."""


class Hazard(Part):
    """Anything else that harms: radium paint, magnesium, a hot exhaust, acid."""

    kind: Literal["radiation", "burning metal", "fibre dust", "chemical", "hot part", "sharp edge", "slippery", "other"]
    """What kind of harm."""
    what: Words
    """What it is."""
    place: Stated[Place]
    """Where it is."""
    do_not: Words | None = None
    """What not to do; pages print "Do NOT" before it."""


class Flooding(Part):
    """A bay that takes water."""

    volume: Stated[Volume]
    """How much it takes."""
    place: Stated[Place]
    """Where it is."""
    head: Stated[Length] | None = None
    """Height of the water over the holes when the bay is full."""
    drains: Stated[Named[Known[Drain]]]
    """Holes by which it empties."""


class Water(Part):
    """What it does in water."""

    floats: Stated[Literal["nose down", "tail down", "level on its wings", "inverted", "upright", "sinks"]]
    """How it lies afloat."""
    floats_because: Words | None = None
    """Why."""
    stays_afloat: Stated[Words]
    """For how long, in words, and who says so."""
    floods: Stated[Named[Stated[Flooding]]]
    """Bays that take water."""
    tow: Known[Words]
    """How it is towed afloat."""
    inside: Stated[Words] | None = None
    """What a diver meets: snags, loose belts, darkness."""


class Steadying(Part):
    """How it is kept from rolling or tipping while people work on it."""

    upright: Stated[Words]
    """On its wheels or belly."""
    inverted: Stated[Words]
    """On its back."""
    on_its_side: Stated[Words] | None = None
    """Lying on a side."""
