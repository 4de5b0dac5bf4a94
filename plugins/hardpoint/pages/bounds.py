"""Where a zone begins and ends, told by landmarks: stations stay on the planning pages."""

from __future__ import annotations

from decimal import Decimal

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import entries, said
from hardpoint.records.structure import Zone
from hardpoint.records.texts import Span
from hardpoint.words import say

_NEAR_MM = Decimal(300)
"""How far a landmark may lie from the end that it is to tell: about a forearm, which is what "about" promises."""
_MM = {"mm": Decimal(1), "in": Decimal("25.4")}


def bounds(zone: Zone, airframe: Airframe) -> str:
    """``from about the canopy bow to about the firewall``; says so where no landmark lies near an end."""
    low, high = zone.fs.low, zone.fs.high
    first = say("nose") if low is None or _at(low, said(airframe.size.nose), airframe) else _nearest(low, airframe)
    last = say("tail") if high is None or _at(high, said(airframe.size.tail), airframe) else _nearest(high, airframe)
    if first and last:
        same = say("about the {landmark}", landmark=first)
        told = same if first == last else say("from about the {first} to about the {last}", first=first, last=last)
    elif first:
        told = say("from about the {first} aft; no landmark tells where it ends", first=first)
    elif last:
        told = say("forward of about the {last}; no landmark tells where it begins", last=last)
    else:
        told = say("bounds not told by a landmark")
    return told if zone.wl is None else say("{bounds}; only part of its height, see the side view", bounds=told)


def _at(station: Decimal, end: Decimal | None, airframe: Airframe) -> bool:
    return end is not None and abs(station - end) * _MM[airframe.datum.unit] <= _NEAR_MM / 3


def _nearest(station: Decimal, airframe: Airframe) -> str:
    """The landmark nearest to a station, "" where none lies near it."""
    far = {
        name: max(_short(mark.fs.low, station), _short(station, mark.fs.high)) * _MM[airframe.datum.unit]
        for name, mark in entries(airframe.landmarks).items()
        if _is_a_point(mark.fs, airframe)
    }
    near = min(far, key=lambda name: far[name], default="")
    return near if near and far[near] <= _NEAR_MM else ""


def _is_a_point(span: Span, airframe: Airframe) -> bool:
    """Whether a landmark is short enough to tell an end by: a step along half the fuselage is everywhere near."""
    if span.low is None or span.high is None:
        return False
    return (span.high - span.low) * _MM[airframe.datum.unit] <= 2 * _NEAR_MM


def _short(first: Decimal | None, last: Decimal | None) -> Decimal:
    """How far ``first`` lies aft of ``last``; 0 where it does not, or where a stretch is open at that end."""
    return max(first - last, Decimal(0)) if first is not None and last is not None else Decimal(0)
