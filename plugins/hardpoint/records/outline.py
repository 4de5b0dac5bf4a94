"""The outline of an airframe, from which drawings are computed: sections along the fuselage, surfaces, gear."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.texts import Count, Named, Number, Position

SurfaceKind = Literal["wing", "tailplane", "fin", "ventral fin", "winglet", "strut", "wire"]


class Section(Part):
    """One cross-section of the fuselage; the outline runs straight from section to section."""

    fs: Number
    """Station of the section."""
    floor: Number
    """Waterline of its lowest point."""
    top: Number
    """Waterline of its highest point."""
    half_width: Number
    """From the plane of symmetry to the skin."""


class Surface(Part):
    """A wing, tailplane, fin, strut or wire by its root and tip; all but a fin are mirrored to the other side.

    A strut or a wire runs from its root at the lowest to its tip at the highest waterline.
    """

    kind: SurfaceKind
    """wing, tailplane, fin ..."""
    root: Position
    """Leading to trailing edge at the root, as a stretch of stations."""
    tip: Position
    """Leading to trailing edge at the tip, as a stretch of stations."""
    bl: Position
    """Buttock lines from root to tip; 0 for a fin on the centre line."""
    wl: Position
    """Waterlines from root to tip: a single one where it lies flat."""


class Wheel(Part):
    """A wheel or skid of the gear."""

    fs: Number
    """Station of its axle."""
    bl: Number
    """Buttock line of its middle; 0 on the centre line, otherwise one on either side."""
    wl: Number
    """Waterline of its axle."""
    diameter: Number
    """Diameter, in the unit of the datum."""


class Body(Part):
    """A boom, float or pod beside the fuselage."""

    kind: Literal["boom", "float", "pod", "hull step"]
    """What it is."""
    fs: Position
    """Its stretch of stations."""
    bl: Number
    """Buttock line of its middle; one on either side unless 0."""
    wl: Position
    """From its lowest to its highest waterline."""
    half_width: Number
    """Half its width."""


class Rotor(Part):
    """A rotor disc."""

    fs: Number
    """Station of the hub."""
    wl: Number
    """Waterline of the disc."""
    diameter: Number
    """Diameter, in the unit of the datum."""
    blades: Stated[Count]
    """How many blades."""


class Profile(Part):
    """Everything that is drawn of the outline."""

    sections: tuple[Section, ...]
    """Cross-sections from nose to tail, at least three."""
    canopy: Known[Position] | None = None
    """The stretch of the canopy along the fuselage; not fitted on an open cockpit or a cabin within the sections."""
    canopy_top: Number | None = None
    """Waterline of the canopy's highest point."""
    surfaces: Named[Surface] = Field(default_factory=dict)
    """Wings, tailplane, fin, each under an id."""
    gear: Named[Wheel] = Field(default_factory=dict)
    """Wheels and skids."""
    bodies: Named[Body] = Field(default_factory=dict)
    """Booms, floats, pods."""
    rotors: Named[Rotor] = Field(default_factory=dict)
    """Rotor discs."""
