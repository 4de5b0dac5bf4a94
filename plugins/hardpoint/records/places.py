"""Where a thing is: stations for planning, landmarks and feel for hands."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.problems import problem
from hardpoint.records.quantities import Length
from hardpoint.records.texts import Id, Name, Number, Position, Words

Side = Literal["left", "right", "centre", "both"]
"""The airframe's own left and right. ``both``: a pair for points and handles; for a tank or a bay, it spans."""

On = Literal[
    "fuselage",
    "wing",
    "upper wing",
    "lower wing",
    "tailplane",
    "fin",
    "canopy",
    "gear",
    "boom",
    "float",
    "propeller",
    "rotor",
    "occupant",
]


class Place(Part):
    """At least one of ``fs``, ``panel`` or ``feel``; planning reads the stations, hands read panel and feel."""

    fs: Known[Position] | None = None
    """Fuselage station or stretch, in the unit of the datum."""
    side: Known[Side] | None = None
    """left, right, centre or both: the airframe's own."""
    bl: Known[Position] | None = None
    """Buttock line: distance from the plane of symmetry, positive on both sides."""
    wl: Known[Position] | None = None
    """Waterline: towards the canopy from the datum's own zero."""
    on: On = "fuselage"
    """The part of the airframe that carries it."""
    panel: Words | None = None
    """The panel or console: "left sill", "front panel, centre"."""
    seat: Id | None = None
    """The seat from which it is reached; an id under seats."""
    near: Name | None = None
    """The landmark it is near to; a name under landmarks."""
    feel: Stated[Words] | None = None
    """How a hand finds it: "a hand's width behind the canopy bow, left sill"."""

    @model_validator(mode="after")
    def _somewhere(self) -> Self:
        if self.fs is None and self.panel is None and self.feel is None:
            raise problem(
                "place-says-nothing",
                read="no fs, panel or feel",
                expected="at least one of fs, panel or feel",
                example="fs: 2400",
                message='a place needs at least one of fs, panel or feel, for example "fs: 2400"',
            )
        return self


class Spot(Part):
    """A point on the way of a line, cable or hose."""

    fs: Stated[Position]
    """Fuselage station."""
    side: Stated[Side]
    """left, right or centre."""
    bl: Stated[Position] | None = None
    """Buttock line."""
    wl: Stated[Position] | None = None
    """Waterline."""


class Route(Part):
    """The way of a line or cable, from its start. What is unknown of it counts over its whole stretch, on all sides."""

    path: Stated[tuple[Spot, ...]]
    """Points in order, from its start to its end; or unknown."""
    then_unknown: Position | None = None
    """The stretch in which it goes on after the last point of the path, nobody knows how: "2100 to 2600"."""
    stretch: Stated[Position] | None = None
    """The stretch in which it certainly runs, where the whole path is unknown."""
    ends_at: Words | None = None
    """What it ends at: engine, a tank, or other words."""
    looks: Stated[Words] | None = None
    """Colour and size: "orange, 20 mm"."""

    def open_beside(self) -> tuple[str, ...]:
        """The path, where it is known in part only."""
        return ("path",) if self.then_unknown is not None else ()


class Landmark(Part):
    """A place that can be seen or felt from outside and that other places are told from."""

    fs: Position
    """Fuselage station."""
    side: Side | None = None
    """Where it is on one side only."""
    looks: Words | None = None
    """How it is recognised by eye or hand."""


class Datum(Part):
    """From where and in which unit every position of this record counts."""

    zero: Stated[Words]
    """Where station 0 is: "rear face of spinner"."""
    wl_zero: Words | None = None
    """Where waterline 0 is: "600 mm towards the floor from the propeller axis"."""
    grows: Literal["aft"]
    """Stations grow towards the tail."""
    unit: Literal["mm", "in"]
    """The unit of every bare position."""


class Size(Part):
    """Overall figures; ``nose`` and ``tail`` are stations, so that a negative datum is no riddle."""

    length: Stated[Length]
    """Overall length."""
    span: Stated[Length]
    """Wing span, or rotor diameter."""
    fuselage_width: Stated[Length]
    """Largest width of the fuselage."""
    height: Stated[Length] | None = None
    """Height on its wheels."""
    nose: Stated[Number]
    """Station of the foremost point."""
    tail: Stated[Number]
    """Station of the rearmost point."""
