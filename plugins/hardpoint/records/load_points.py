"""Points made or used to carry load: lift, wrap, steady, jack, tie down, tow; and the lifts that use them."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.places import Place
from hardpoint.records.quantities import Angle, Force, Length, Mass
from hardpoint.records.texts import Id, Named, Position, Words

Use = Literal["lift", "wrap", "steady", "jack", "tie-down", "tow"]
LIFTING: tuple[Use, ...] = ("lift", "wrap")
Axis = Literal[
    "towards canopy", "towards floor", "forward", "aft", "outboard", "inboard", "pilot's left", "pilot's right"
]
Basis = Literal["limit", "proof", "ultimate", "owner's practice"]


class Access(Part):
    """What is opened to reach a point, by attitude. A key that is left out is unknown, and printed so."""

    silence_is_unknown: ClassVar[tuple[str, ...]] = ("afloat",)

    upright: Stated[Words]
    """On its wheels or belly."""
    inverted: Stated[Words]
    """On its back."""
    afloat: Stated[Words] | None = None
    """In water."""


class LoadPoint(Part):
    """One point, or a pair of them (``side: both``)."""

    use: Use
    """What it is for. A tie-down ring is not a lift point."""
    what: Stated[Words]
    """What is there: "M12 eye in the firewall lug", "tube round the tail cone"."""
    place: Stated[Place]
    """Where it is; a pair has its buttock line."""
    allowable: Stated[Force]
    """What it may carry: a force, not a mass."""
    allowable_is_for: Stated[Literal["each", "the group", "each strap, both ends together"]]
    """Whether that is for each point, for the group, or for a strap."""
    basis: Stated[Basis]
    """What the allowable is: a limit, a proof load, an ultimate, or what the owner does."""
    axis: Known[Axis] | None = None
    """The direction in which the point is made to be pulled; the cone is measured from it."""
    cone: Known[Angle]
    """Largest angle of a leg from the axis of the point."""
    access: Stated[Access]
    """What is opened to reach it."""
    fits: Stated[Words] | None = None
    """What fits it: shackle, strap and its width."""
    strap_width: Known[Length] | None = None
    """Least width of a strap."""
    leaves_skin: Known[Position] | None = None
    """For a wrap: waterline at which the strap leaves the skin."""
    not_while_live: tuple[Id, ...] = ()
    """Rockets and cartridges while which are live nobody hooks on here; ids under pyrotechnics."""
    only_if: Words | None = None
    """A condition: "wings off"."""


class Hook(Part):
    """Where the hook is, or how long the legs are."""

    above: Stated[Length] | None = None
    """Height of the hook over the highest point."""
    legs: Named[Stated[Length]] = Field(default_factory=dict)
    """Length of each leg, under the id of its load point."""


class Spreader(Part):
    """A spreader beam."""

    length: Stated[Length]
    """Between its pick points."""
    mass: Stated[Mass]
    """Its own mass."""
    allowable: Stated[Force]
    """What it may carry."""


Condition = Literal[
    "empty",
    "fuelled as planned",
    "full fuel",
    "occupants and kit",
    "flooded",
    "tanks drained",
    "wings off",
    "parts taken off",
]


class Lift(Part):
    """A lift that somebody declared: which points together, in which states."""

    points: tuple[Id, ...]
    """Ids under load_points."""
    tail_line: Known[Id]
    """The point of the line that only steadies."""
    states: tuple[tuple[Condition, ...], ...]
    """The states in which it is meant, one a line; what stands together on a line is true at once:
    ``- [empty]``, ``- [fuelled as planned, flooded]``. Each begins with the empty mass and adds or takes off."""
    taken_off: tuple[Id, ...] = ()
    """Items under masses.items that are taken off first."""
    hook: Stated[Hook]
    """The hook over the points."""
    spreader: Known[Spreader] | None = None
    """A spreader beam."""
    not_while_live: tuple[Id, ...] = ()
    """Rockets and cartridges, ids under pyrotechnics: refused until each is reported inactive for that day."""
    not_until: Words | None = None
    """What else has to be done or reported first."""
    declared_by: Stated[Words] | None = None
    """Who declared it."""
