"""Batteries, high voltage, and what stays live when everything is off."""

from __future__ import annotations

from typing import ClassVar, Literal

from hardpoint.records.base import Part
from hardpoint.records.known import Known, Stated
from hardpoint.records.places import Place, Route
from hardpoint.records.quantities import Charge, Duration, Energy, Mass, Voltage
from hardpoint.records.texts import Id, Named, Words

Chemistry = Literal["lead-acid", "lithium-ion", "lithium iron phosphate", "nickel-cadmium", "dry cell"]


class Battery(Part):
    """One battery."""

    chemistry: Stated[Chemistry]
    """What it is made of."""
    voltage: Stated[Voltage]
    """Nominal voltage."""
    charge: Known[Charge] | None = None
    """Capacity as charge."""
    energy: Known[Energy] | None = None
    """Capacity as energy."""
    mass: Stated[Mass] | None = None
    """Its mass."""
    place: Stated[Place]
    """Where it is and behind what."""
    cable: Known[Route] | None = None
    """The way of its cable, above all where it stays live."""
    feeds: Words | None = None
    """What it feeds."""
    cut_by: Known[Id]
    """The control that cuts it off; an id under controls."""
    stays_live: Stated[Words]
    """What stays live when that control is off: "nothing", or what."""


class HighVoltageCable(Route):
    """One cable of the high voltage: its way, and what of it stays live."""

    silence_is_unknown: ClassVar[tuple[str, ...]] = ("stays_live",)

    stays_live: Stated[Words] | None = None
    """When it is live after the disconnect is worked: "always", or until what. A key that is left out is unknown."""


class HighVoltagePart(Part):
    """A contactor, an inverter, a charge socket: what is between pack and motor and can hold a charge."""

    what: Words
    """What it is: "inverter, finned grey box"."""
    place: Stated[Place]
    """Where it is."""
    stays_live: Stated[Words]
    """What of it stays live after the disconnect is worked: "nothing", or what."""
    holds_charge: Known[Duration]
    """How long it holds its charge after that; not applicable to a part that stores none."""


class HighVoltage(Part):
    """A system above 60 V direct current."""

    silence_is_unknown: ClassVar[tuple[str, ...]] = ("parts",)

    voltage: Stated[Voltage]
    """Highest nominal voltage."""
    energy: Stated[Energy]
    """Stored in all packs together."""
    packs: Stated[Named[Stated[Battery]]]
    """Battery packs."""
    cables: Stated[Named[Stated[HighVoltageCable]]]
    """High-voltage cables."""
    parts: Known[Named[Stated[HighVoltagePart]]] | None = None
    """Contactor, inverter, charge socket: what else is at this voltage. A key that is left out is unknown."""
    disconnect: Known[Id]
    """The control that opens the circuit; an id under controls."""
    stays_live: Stated[Words]
    """What stays live afterwards."""
    vents: Known[Place] | None = None
    """Where packs vent when they burn."""
    in_water: Stated[Words] | None = None
    """What is known of it in water."""
