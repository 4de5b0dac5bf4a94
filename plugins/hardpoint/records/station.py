"""What a station has decided for itself. Nothing here has a hidden default: what is not stated is unknown."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Annotated, Literal

from pydantic import Field

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.materials import Material
from hardpoint.records.problems import problem
from hardpoint.records.quantities import Duration, Flow, Force, GaugePressure, Length, Mass, Temperature, Volume
from hardpoint.records.structure import Behind
from hardpoint.records.texts import Count, Date, Id, Name, Named, Reads, Words


def _factor(text: str) -> Decimal:
    if not re.fullmatch(r"(?:0|[1-9]\d?)(?:\.\d{1,3})?", text):
        raise problem("not-a-factor", read=text, expected="a plain factor", example="1.25")
    return Decimal(text)


Factor = Annotated[Decimal, Reads(_factor, {"title": "a factor", "type": ["number", "string"], "examples": ["1.25"]})]


UnfitWhen = Literal["a review is overdue", "every lift is refused"]
"""What no path can express; an aircraft without any recorded lift counts as one whose lifts are all refused."""


class Cordon(Part):
    """A distance that this station keeps, and who says so."""

    distance: Stated[Length]
    """How far."""
    said_by: Words
    """The rule it comes from."""
    source: Id | None = None
    """A citation of sources.yaml."""


class Drill(Part):
    """One measured access time. The slowest counts, never a sum of averages."""

    what: Words
    """What was drilled: "boat to open canopy, inverted"."""
    date: Date
    """When."""
    took: Duration
    """From the call to hands on the occupant."""


class CraneLoad(Part):
    """One line of the crane's table."""

    radius: Length
    """Working radius."""
    load: Mass
    """What it may lift there."""


class Crane(Part):
    """A crane that can be called."""

    what: Words
    """Which crane, in words."""
    table: tuple[CraneLoad, ...]
    """Loads by radius."""
    rigging: Stated[Mass]
    """Mass of hook block and rigging."""
    on_call: Words | None = None
    """When it can be there."""


class Tool(Part):
    """A cutting tool of the station."""

    what: Words
    """What it is."""
    jaw: Known[Length]
    """Width that it needs between hazards."""
    cuts: Stated[tuple[Material, ...]]
    """Materials that it cuts."""
    thickest: Known[Length] | None = None
    """Thickest skin or tube that it cuts."""
    sparks: Stated[Literal["sparks", "no sparks"]]
    """Whether it throws sparks."""


class Cover(Part):
    """Rescue and fire-fighting cover of the aerodrome."""

    category: Stated[Count]
    """The category it provides."""
    water: Stated[Volume]
    """Water for foam."""
    foam_level: Stated[Literal["A", "B", "C"]]
    """Performance level of the foam."""
    discharge: Stated[Flow]
    """Discharge rate of foam solution."""
    powder: Stated[Mass]
    """Complementary agent."""


class Water(Part):
    """The water beside the field."""

    name: Words
    """Which water."""
    depth: Stated[Length]
    """Depth."""
    temperature: Stated[Temperature]
    """Temperature."""
    fresh: Stated[Literal["fresh", "salt"]]
    """Fresh or salt."""


class Surface(Part):
    """A surface that crews work on."""

    what: Words
    """Where, and what it carries."""
    carries: Stated[Force] | None = None
    """Load per outrigger that it carries."""


class Divisors(Part):
    """What an allowable of another basis is divided by, if this station has decided that."""

    proof: Known[Factor]
    """For a proof load."""
    ultimate: Known[Factor]
    """For an ultimate load."""
    owners_practice: Known[Factor]
    """For what the owner does."""


class Station(Part):
    """The record fleet/station.yaml."""

    name: Words
    """The station."""
    data: Literal["invented", "real"]
    """Invented data is labelled so on every page."""
    address: Known[Words]
    """Where the internal copy is served, for printed codes."""
    commander_words: Words
    """How this station says that the incident commander decides."""
    lead: Words
    """The role that keeps the records."""
    words: dict[Name, Words] = Field(default_factory=dict)
    """Local words for things: "the slab: asphalt apron"."""
    surfaces: Named[Surface] = Field(default_factory=dict)
    """Grass, asphalt, water's edge."""
    water: Known[Water]
    """Water beside the field."""
    cordons: Named[Cordon]
    """Distances that this station keeps."""
    dynamic_factor: Stated[Factor]
    """Factor on a lifted load for snatch and swing."""
    divisors: Divisors
    """For allowables that are not limits."""
    bottle_reserve: Stated[GaugePressure]
    """Pressure at which a breathing bottle counts as empty."""
    spare_time: Stated[Duration]
    """Time that must be left over."""
    occupant_mass: Stated[Mass] | None = None
    """Mass that this station plans with for one clothed occupant."""
    occupant_mass_includes: Stated[tuple[Literal["parachute", "kit worn"], ...]] | None = None
    """What that mass already holds beside the clothes; a key that is left out: nothing, so that both come on top."""
    breathing_rates: Stated[tuple[Flow, ...]]
    """Rates that are shown side by side."""
    drills: Stated[Named[Drill]]
    """Measured access times."""
    cranes: Known[Named[Crane]]
    """Cranes on call."""
    tools: Known[Named[Tool]]
    """Cutting tools."""
    margins: Stated[dict[Behind, Length]]
    """Distance kept from what lies behind a skin, by kind."""
    cover: Stated[Cover]
    """Fire cover."""
    unfit_also: tuple[Words, ...] = ()
    """Paths that make an entry unfit while they are unknown, besides the built-in ones; * for any id."""
    unfit_over_water: tuple[Words, ...] = ()
    """The same, for entries whose slot leads over water, or of which nobody has said whether it does."""
    unfit_when: tuple[UnfitWhen, ...] = ()
    """What else makes an entry unfit: a review that is overdue on the day of the slot; no lift that is not refused."""
