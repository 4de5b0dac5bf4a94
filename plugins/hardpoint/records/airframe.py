"""One airframe type: everything that a record under fleet/types says."""

from __future__ import annotations

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.bottles import Bottle
from hardpoint.records.controls import Control
from hardpoint.records.electrics import Battery, HighVoltage
from hardpoint.records.exits import Canopy, Exit
from hardpoint.records.known import Known, Stated
from hardpoint.records.load_points import Lift, LoadPoint
from hardpoint.records.masses import Masses
from hardpoint.records.outline import Profile
from hardpoint.records.places import Datum, Landmark, Size
from hardpoint.records.powerplant import Engine, Propeller, TurningRotor
from hardpoint.records.provenance import Change, Check, Photo, SectionName
from hardpoint.records.pyrotechnics import Pyrotechnic
from hardpoint.records.seats import Seat
from hardpoint.records.sight import Approach, Sign
from hardpoint.records.structure import Absence, LoadedPart, Zone
from hardpoint.records.surroundings import Fire, Hazard, Steadying, Water
from hardpoint.records.tanks import Tank
from hardpoint.records.texts import Name, Named, Words


class Airframe(Part):
    """A type, or one tail after its differences were laid over its type."""

    name: Words
    """Maker and type."""
    also_called: tuple[Words, ...] = ()
    """Other names that people use."""
    role: Stated[Words]
    """What it is in a few words: "aerobatic single, low wing"."""
    datum: Datum
    """From where positions count."""
    size: Size
    """Overall figures."""
    landmarks: Stated[dict[Name, Landmark]]
    """Places that others are told from, under plain names."""
    profile: Stated[Profile]
    """The outline, for drawings."""
    signs: Stated[Named[Sign]]
    """What it is recognised by; at least two, one of them a shape."""
    approach: Stated[Approach]
    """From where to come."""
    zones: Stated[Named[Zone]]
    """Structure and cutting, stretch by stretch, without gaps."""
    absences: Named[Absence] = Field(default_factory=dict)
    """Claims that something is not there, each with who looked."""
    loaded_parts: Known[Named[Known[LoadedPart]]]
    """Cables, wires, bungees, struts."""
    masses: Masses
    """Masses and centres of gravity."""
    engine: Known[Engine]
    """The engine."""
    propeller: Known[Propeller]
    """The propeller."""
    rotor: Known[TurningRotor] | None = None
    """The rotor."""
    tanks: Known[Named[Known[Tank]]]
    """Fuel, oil, smoke oil, water."""
    batteries: Known[Named[Known[Battery]]]
    """Batteries below 60 V."""
    high_voltage: Known[HighVoltage]
    """A system above 60 V; must be answered."""
    controls: Known[Named[Known[Control]]]
    """Shutdown controls, in the order in which they are worked."""
    canopies: Known[Named[Known[Canopy]]]
    """Canopies, doors, hatches."""
    exits: Stated[Named[Known[Exit]]]
    """Every way to open them, the first to try first."""
    seats: Named[Seat]
    """Positions for occupants."""
    bottles: Known[Named[Known[Bottle]]]
    """Pressure bottles. ``breathing-air: not fitted`` says that somebody looked."""
    pyrotechnics: Known[Named[Known[Pyrotechnic]]]
    """Rockets and cartridges; ``rocket-parachute`` and ``seat-cartridge`` must be answered."""
    hazards: Known[Named[Known[Hazard]]]
    """Anything else that harms."""
    load_points: Stated[Named[Known[LoadPoint]]]
    """Points for load, whatever they are for."""
    lifts: Named[Lift] = Field(default_factory=dict)
    """Lifts that somebody declared."""
    steadying: Stated[Steadying]
    """How it is steadied on the ground."""
    fire: Stated[Fire]
    """Fire, smoke, dust."""
    water: Stated[Water]
    """Afloat and flooded."""
    photos: Named[Photo] = Field(default_factory=dict)
    """Pictures of handles and controls."""
    who_can_answer: dict[SectionName, Words] = Field(default_factory=dict)
    """Who can answer what is still unknown, by section."""
    checked: dict[SectionName, Check]
    """Provenance by section."""
    changes: tuple[Change, ...] = ()
    """Change log, the newest first."""
    notes: Words | None = None
    """Anything that fits nowhere else."""
