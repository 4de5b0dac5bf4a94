"""Canopies, doors and hatches, and every way in: handle, jettison, reaching in, breaking in."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.materials import Material
from hardpoint.records.places import Place
from hardpoint.records.quantities import Length, Mass
from hardpoint.records.texts import Count, Id, Named, Words
from hardpoint.records.ways import Step

Opens = Literal["opens", "opens once flooded", "opens given the room", "does not open"]


class Holder(Part):
    """What holds a canopy when it is open, or ties it to the airframe: gas strut, webbing lanyard."""

    what: Words
    """What it is: "webbing lanyard", "gas strut"."""
    place: Stated[Place] | None = None
    """Where it is."""
    freed_by: Stated[Words]
    """What frees it: "shears; a second person holds the canopy"."""


class Canopy(Part):
    """A canopy, door or hatch: what has to move before somebody gets out."""

    kind: Literal["hinged canopy", "sliding canopy", "lift-off canopy", "gull door", "side door", "hatch", "fixed pane"]
    """What it is."""
    covers: tuple[Id, ...]
    """The seats under it; ids under seats."""
    hinges: Known[Literal["left", "right", "front", "aft", "top"]]
    """The airframe's side on which it is hinged."""
    latches: Stated[Count]
    """How many latches hold it closed."""
    mass: Stated[Mass]
    """What has to be held when it comes off."""
    material: Stated[Material]
    """What its pane or panel is made of."""
    frame: Stated[Words] | None = None
    """What frames it, if it is framed."""
    thickness: Stated[Length]
    """Thickness, to match tools."""
    held_by: Known[Named[Holder]]
    """Struts, stays, lanyards."""
    hinge_release: Known[Id] | None = None
    """The exit that frees the hinge; an id under exits."""
    clear_opening: Stated[Words]
    """What is clear when it is open: width and length in words with units."""


class Works(Part):
    """In which attitude it can be opened. A key that is left out is unknown, and printed so."""

    silence_is_unknown: ClassVar[tuple[str, ...]] = ("left_side_down", "right_side_down", "afloat", "inverted_in_water")

    upright: Stated[Opens]
    """On its wheels or belly."""
    inverted: Stated[Opens]
    """On its back, on land."""
    left_side_down: Stated[Opens] | None = None
    """Lying on the airframe's left side."""
    right_side_down: Stated[Opens] | None = None
    """Lying on the airframe's right side."""
    afloat: Stated[Opens] | None = None
    """In water with its canopy side out of it, floating or sunk to the sills."""
    inverted_in_water: Stated[Opens] | None = None
    """In water on its back, the exit under water."""
    room_needed: Known[Length] | None = None
    """Clearance that it needs to open."""


HandleKind = Literal[
    "bar", "pull handle", "flush handle", "slide latch", "crank", "lever", "knob", "push-pull", "button", "loop", "key"
]
"""What the hand finds at an exit, as far as a sketch can be drawn of it."""


class Exit(Part):
    """One way to open a canopy, door or hatch."""

    opens: Id
    """What it opens; an id under canopies, or the seat of an open cockpit."""
    way_in: Literal["handle", "reach in", "jettison", "break in", "hinge release", "open cockpit"]
    """What kind of way it is."""
    from_: Stated[Literal["outside", "inside", "outside and inside"]] = Field(alias="from")
    """Worked from where."""
    place: Stated[Place]
    """Where its handle is, with landmark and feel."""
    other_side: Known[Words]
    """Is there one on the other side? "none, looked" and not fitted are answers."""
    label: Known[Words]
    """What the label beside it says."""
    looks: Stated[Words]
    """Shape and colour of the handle."""
    kind: Stated[HandleKind] | None = None
    """What the hand finds; where a step names it too and there is no photo, a sketch is drawn."""
    stays_on: Words | None = None
    """What the handle stays on when the canopy goes."""
    latches_released: Known[Count]
    """How many latches these steps release; not applicable where they are cut or broken through."""
    works: Works
    """By attitude."""
    steps: Stated[tuple[Step, ...]]
    """Every step, in order; or unknown."""
    success: Stated[Words]
    """What is seen, heard or felt when it has worked."""
    snags: Stated[Words] | None = None
    """What can catch on the way out."""
    needs: Words | None = None
    """A tool or a second person."""
    pane_thickness: Known[Length] | None = None
    """For breaking in: thickness of the pane."""
    head_clearance: Known[Length] | None = None
    """For breaking in: how far the nearest head is behind the pane."""
    reach: Known[Length] | None = None
    """For reaching in: how far the hand has to go."""
