"""Lengths in the unit of a record's datum."""

from __future__ import annotations

from decimal import Decimal

from hardpoint.records.airframe import Airframe

_MM_PER_INCH = Decimal("25.4")


def in_units(airframe: Airframe, millimetres: int) -> Decimal:
    """A length of so many millimetres in the unit of the positions of this record."""
    return Decimal(millimetres) / (1 if airframe.datum.unit == "mm" else _MM_PER_INCH)


def unit_m(airframe: Airframe) -> float:
    """The unit of the positions of this record in metres."""
    return 0.001 if airframe.datum.unit == "mm" else 0.0254
