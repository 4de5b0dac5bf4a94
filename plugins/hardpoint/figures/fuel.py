"""Fuel on board."""

from __future__ import annotations

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.tanks import ENGINE_FUELS


def fuel_capacity(airframe: Airframe) -> tuple[float, float] | None:
    """Sum of all engine-fuel tanks in m3, low and high reading; None where a capacity or the contents is unknown."""
    if airframe.tanks is NonValue.UNKNOWN:
        return None
    if not isinstance(airframe.tanks, NonValue) and NonValue.UNKNOWN in airframe.tanks.values():
        return None
    low = high = 0.0
    for tank in entries(airframe.tanks).values():
        holds, capacity = said(tank.holds), said(tank.capacity)
        if holds is None or (holds in ENGINE_FUELS and capacity is None):
            return None
        if holds in ENGINE_FUELS and capacity is not None:
            low += tank.count * capacity.si[0]
            high += tank.count * capacity.si[1]
    return low, high
