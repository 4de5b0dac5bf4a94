"""A place told by the landmarks on either side of it, where its record has stations and nothing for hands."""

from __future__ import annotations

from hardpoint.figures.landmarks import Apart, Stretch, either_side, nearest_two
from hardpoint.figures.worked import convert_to_m
from hardpoint.figures.workings.landmarks import telling
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, said
from hardpoint.records.places import Place
from hardpoint.words import say

_SHORT_M = 0.3
"""A place that is no longer is beside a landmark as a whole: about a forearm, a choice of this book."""
_NEARER = 1.5
"""How many times as far the other landmark has to be before one is told as the nearer: a choice of this book."""


def place_between(place: Place, airframe: Airframe) -> str:
    """``between the cowling edge and the wing leading edge``; "" where its station, or every landmark, is unknown."""
    fs = said(place.fs)
    if fs is None or fs.low is None or fs.high is None:
        return ""
    ends = (convert_to_m(fs.low, airframe.datum.unit), convert_to_m(fs.high, airframe.datum.unit))
    return between(ends, airframe, place.side)


def between(ends_m: Stretch, airframe: Airframe, side: str | NonValue | None) -> str:
    """The same for a stretch in m on a side; where no landmark stands on one side of it, nose or tail do."""
    marks = telling(airframe, side)
    near = nearest_two(ends_m, marks)
    if near and near[0].near == 0 and ends_m[1] - ends_m[0] <= _SHORT_M:
        return say("beside the {landmark}", landmark=near[0].landmark)
    forward, aft = either_side(ends_m, marks)
    if forward is None and aft is None:
        return ""
    first, last = (forward.landmark if forward else say("nose")), (aft.landmark if aft else say("tail"))
    nearer = _nearer(forward, aft)
    if nearer:
        return say("between the {first} and the {last}, nearer the {near}", first=first, last=last, near=nearer)
    return say("between the {first} and the {last}", first=first, last=last)


def _nearer(forward: Apart | None, aft: Apart | None) -> str:
    if forward is None or aft is None:
        return ""
    if forward.near * _NEARER <= -aft.near:
        return forward.landmark
    return aft.landmark if -aft.near * _NEARER <= forward.near else ""
