"""Which way an arrow on a flat sketch points for a direction of the airframe, and what the sketch's top then is.

A sketch is one of three true views: along the airframe as the pilot looks (top = towards canopy), from the canopy side
(top = forward), or from the left side (top = towards canopy, left = forward). The view is the one in which the whole
direction lies; a direction that lies in none of them, or that the record does not tell, has no arrow.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from hardpoint.records.known import NonValue
from hardpoint.records.ways import TURNS, SeenFrom
from hardpoint.words import say

Flat = tuple[float, float]
"""A direction on the sketch: to its right, towards its lower edge."""
Solid = tuple[float, float, float]
"""A direction of the airframe: aft, towards pilot's right, towards canopy."""

_WAYS: dict[str, Solid] = {
    "aft": (1, 0, 0),
    "forward": (-1, 0, 0),
    "pilot's right": (0, 1, 0),
    "pilot's left": (0, -1, 0),
    "towards canopy": (0, 0, 1),
    "towards floor": (0, 0, -1),
}
_FROM_THE_SKIN = {
    "out of the panel": 1.0,
    "into the panel": -1.0,
    "out of the skin": 1.0,
    "into the skin": -1.0,
}
_FROM_THE_SILL = {"away from the sill": -1.0, "towards the sill": 1.0}


@dataclass(frozen=True)
class Course:
    """What a sketch shows of a movement.

    ``end``: where it leads, None where no arrow can be drawn; ``start``: where a free end comes from, if that is told.
    ``turn``: a turn as its observer sees it. ``scene``: what is drawn behind the part: nothing, a panel or skin seen
    edge-on at the left, a sill along the lower edge. ``top``: what the sketch's top is, in words.
    """

    top: tuple[str, ...] = ()
    end: Flat | None = None
    start: Flat | None = None
    turn: Literal["", "clockwise", "anticlockwise"] = ""
    scene: Literal["", "edge-on", "sill"] = ""


def course(way: str | NonValue | None, seen_from: SeenFrom | None, side: str | None) -> Course:
    """The course of a recorded way; ``side`` is the airframe's side on which the part is, for inboard and outboard."""
    if way is None or isinstance(way, NonValue):
        return Course()
    if way in TURNS:
        observer = {
            "pilot": say("as the pilot sees it"),
            "facing it": say("as seen facing it"),
            "canopy side": say("seen from canopy side"),
        }
        seen = (observer[seen_from],) if seen_from else ()
        return Course(seen, turn="clockwise" if way == "clockwise" else "anticlockwise")
    if way in _FROM_THE_SKIN:
        surface = say("panel edge-on, no top") if way.endswith("panel") else say("skin edge-on, no top")
        return Course((surface,), (_FROM_THE_SKIN[way], 0.0), scene="edge-on")
    if way in _FROM_THE_SILL:
        return Course((say("top: away from the sill"),), (0.0, _FROM_THE_SILL[way]), scene="sill")
    return _of_the_airframe(way, side)


def _of_the_airframe(way: str, side: str | None) -> Course:
    first, link, second = _split(way.removeprefix("free end "))
    legs = [_solid(word, side) for word in (first, second) if word]
    if link == " to " and legs[0] is None:  # where it comes from cannot be drawn; where it leads still can
        legs, link = legs[1:], ""
    known = [leg for leg in legs if leg is not None]
    if len(known) < len(legs):
        return Course()
    view = _view(known)
    if view is None:
        return Course()
    top, flat = view
    if side == "both" and "board" in way:
        top = (*top, say("the left one of the pair"))
    ends = [_flat(leg, flat) for leg in known]
    if link == " to ":
        return Course(top, ends[1], ends[0])
    return Course(top, _unit(sum(x for x, _ in ends), sum(y for _, y in ends)))


def _split(way: str) -> tuple[str, str, str]:
    for link in (" and ", " to "):
        first, found, second = way.partition(link)
        if found:
            return first, link, second
    return way, "", ""


def _solid(word: str, side: str | None) -> Solid | None:
    """Inboard and outboard are told by the side the part is on; of a pair, the left one is drawn."""
    if word in _WAYS:
        return _WAYS[word]
    outboard = {"left": -1.0, "both": -1.0, "right": 1.0}.get(side or "")
    if outboard is None:
        return None
    return (0.0, outboard if word == "outboard" else -outboard, 0.0)


_View = tuple[tuple[str, ...], tuple[Solid, Solid]]


def _view(legs: list[Solid]) -> _View | None:
    """The view in which all legs lie: its words, and the airframe's direction to its right and to its lower edge."""
    along, across, high = (any(leg[axis] for leg in legs) for axis in range(3))
    if not along:
        return (say("top: towards canopy"),), (_WAYS["pilot's right"], _WAYS["towards floor"])
    if not high:
        return (say("top: forward"),), (_WAYS["pilot's right"], _WAYS["aft"])
    if not across:
        return (say("top: towards canopy"), say("left: forward")), (_WAYS["aft"], _WAYS["towards floor"])
    return None


def _flat(leg: Solid, axes: tuple[Solid, Solid]) -> Flat:
    right, down = (sum(a * b for a, b in zip(leg, axis, strict=True)) for axis in axes)
    return right, down


def _unit(x: float, y: float) -> Flat | None:
    """Of length 1; None where two directions cancel out."""
    length = math.hypot(x, y)
    return (x / length, y / length) if length > 0.01 else None
