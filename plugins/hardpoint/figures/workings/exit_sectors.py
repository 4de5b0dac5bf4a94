"""Where rockets, seats and what else flies out go while the airframe lies upright, inverted, on a side or on its nose.

Sectors, not arrows: a bearing is the middle of what to keep clear of. How wide a sector is, nobody has measured; no
width is printed.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.figures.behind import FLYING
from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.construction import above
from hardpoint.figures.exits import axis, direction
from hardpoint.figures.reports import counts_as_live
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Range, Topic, Worked, quantity, spoken
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import entries, said
from hardpoint.records.pyrotechnics import ExitDirection, Pyrotechnic
from hardpoint.words import Later, later, mark

_METHOD = "exits"
_FORMULA = "v = R(−p) R(r) a"
_LEVEL = 0.5
"""Degrees within which a direction is told as level: what rounds to 0 deg."""
_HALF_OF_EIGHT = math.sin(math.radians(22.5))
"""Half of one of eight directions that people tell apart: less than this aside is told as straight."""


@dataclass(frozen=True)
class Attitude:
    """How the airframe lies: its id, its words (``mark``), roll right and nose down in deg."""

    id: str
    words: str
    roll: float
    nose_down: float


ATTITUDES = (
    Attitude("upright", mark("upright"), 0, 0),
    Attitude("inverted", mark("inverted"), 180, 0),
    Attitude("right-side-down", mark("right side down"), 90, 0),
    Attitude("left-side-down", mark("left side down"), -90, 0),
    Attitude("nose-30-down", mark("nose down by 30 deg"), 0, 30),
    Attitude("nose-60-down", mark("nose down by 60 deg"), 0, 60),
)


@dataclass(frozen=True)
class Sector:
    """The middle of where a device flies: bearing clockwise from the nose seen from above, None where it has none
    (straight up or down, or to either side of that); elevation above the level; both in deg. ``way`` says it in words.
    """

    attitude: Attitude
    bearing: Range | None
    elevation: Range
    way: Later


def flying(airframe: Airframe) -> Iterator[tuple[str, Pyrotechnic]]:
    """The devices that fly out and count as live, by id."""
    for name, device in entries(airframe.pyrotechnics).items():
        if device.kind in FLYING and counts_as_live(device, None):
            yield name, device


def sectors(airframe: Airframe, name: str, device: Pyrotechnic) -> tuple[Sector, ...]:
    """Where a device flies in each attitude. MissingError: its direction, or how steeply it flies, is unknown."""
    exit_, raised = _raised(name, device)
    return tuple(_sector(airframe, exit_, raised, attitude) for attitude in ATTITUDES)


def _raised(name: str, device: Pyrotechnic) -> tuple[ExitDirection, Input]:
    path: Path = ("pyrotechnics", name, "exit_direction")
    exit_ = said(device.exit_direction)
    if exit_ is None:
        raise MissingError(later("where it flies is unknown"), path)
    raised = quantity(exit_.raised, (*path, "raised"), later("how steeply it flies is unknown"))
    if not all(-math.pi / 2 <= end <= math.pi / 2 for end in raised.value):
        raise MissingError(later("it cannot be raised by more than 90 deg"), raised.path)
    return exit_, raised


def _sector(airframe: Airframe, exit_: ExitDirection, raised: Input, attitude: Attitude) -> Sector:
    found = [
        direction(axis(exit_.towards, math.degrees(end)), (attitude.roll, attitude.nose_down))
        for end in dict.fromkeys(raised.value)
    ]
    elevation = (min(end for _, end in found), max(end for _, end in found))
    bearing = _between([end for end, _ in found])
    if bearing is None and len(found) > 1:  # from one side over the zenith to the other
        elevation = (elevation[0], 90.0) if elevation[0] > 0 else (-90.0, elevation[1])
    return Sector(attitude, bearing, elevation, _way(airframe, attitude, bearing, elevation))


def _between(bearings: list[float | None]) -> Range | None:
    """The bearings between two ends, the short way round; None where the way leads over the zenith."""
    known = [bearing for bearing in bearings if bearing is not None]
    if len(known) < len(bearings):
        return None
    low, high = min(known), max(known)
    if high - low > 180:
        low, high = high, low + 360
    return None if high - low > 90 else (low, high)


def _way(airframe: Airframe, attitude: Attitude, bearing: Range | None, elevation: Range) -> Later:
    steep = _steep(elevation)
    if bearing is None:
        return steep
    low, high = (round(end) % 360 for end in bearing)
    about = later("{angle} deg", angle=low) if low == high else later("{low} to {high} deg", low=low, high=high)
    aside = _aside(airframe, attitude, sum(bearing) / 2)
    return later("{aside}, {steep}, {angle} clockwise from the nose", aside=aside, steep=steep, angle=about)


def _steep(elevation: Range) -> Later:
    low, high = elevation
    if abs(low) < _LEVEL and abs(high) < _LEVEL:
        return later("level")
    if min(abs(low), abs(high)) > 90 - _LEVEL:
        return later("straight up") if low > 0 else later("straight into the ground")
    if low >= -_LEVEL:
        return later("{angle} up", angle=_angle(max(low, 0.0), high))
    if high <= _LEVEL:
        return later("{angle} into the ground", angle=_angle(max(-high, 0.0), -low))
    return later("between {down} deg into the ground and {up} deg up", down=round(-low), up=round(high))


def _angle(low: float, high: float) -> Later:
    first, last = round(low), round(high)
    return later("{angle} deg", angle=first) if first == last else later("{low} to {high} deg", low=first, high=last)


_ASIDE = {
    "right": (
        mark("on pilot's right"),
        mark("on pilot's right, towards the nose"),
        mark("on pilot's right, towards aft"),
    ),
    "left": (mark("on pilot's left"), mark("on pilot's left, towards the nose"), mark("on pilot's left, towards aft")),
    "roof": (
        mark("on the roof's side"),
        mark("on the roof's side, towards the nose"),
        mark("on the roof's side, towards aft"),
    ),
    "canopy": (
        mark("on the canopy's side"),
        mark("on the canopy's side, towards the nose"),
        mark("on the canopy's side, towards aft"),
    ),
    "open": (
        mark("on the side away from the floor"),
        mark("on the side away from the floor, towards the nose"),
        mark("on the side away from the floor, towards aft"),
    ),
    "floor": (
        mark("on the floor's side"),
        mark("on the floor's side, towards the nose"),
        mark("on the floor's side, towards aft"),
    ),
}
"""What of the airframe faces a bearing: straight aside, and a part of it towards either end."""


_ALONG = {
    True: mark("along the fuselage, towards the nose"),
    False: mark("along the fuselage, towards aft"),
}


def _aside(airframe: Airframe, attitude: Attitude, bearing: float) -> Later:
    """On which side of the airframe that is, as it lies."""
    ahead, right = math.cos(math.radians(bearing)), math.sin(math.radians(bearing))
    end = 0 if abs(ahead) < _HALF_OF_EIGHT else 1 if ahead > 0 else 2
    if abs(right) < _HALF_OF_EIGHT:
        return later(_ALONG[ahead > 0])
    return later(_ASIDE[_facing(airframe, attitude, right > 0)][end])


def _facing(airframe: Airframe, attitude: Attitude, to_the_right: bool) -> str:
    """What faces the right (or the left) of somebody who looks along the airframe from above, tail to nose."""
    if abs(attitude.roll) == 90:
        return above(airframe) if (attitude.roll > 0) == to_the_right else "floor"
    return "right" if to_the_right == (attitude.roll != 180) else "left"


def _work(case: Case) -> Iterator[Worked]:
    for name, device in flying(case.airframe):
        what = later("{kind} {name}", kind=later(str(device.kind)), name=spoken(name))
        try:
            exit_, raised = _raised(name, device)
        except MissingError as missing:
            yield missing.of(f"exits.{name}", what, _METHOD)
            continue
        towards = Input((*raised.path[:-1], "towards"), later(str(exit_.towards)), _heading(exit_), "deg")
        for attitude in ATTITUDES:
            yield from _figures(name, what, _sector(case.airframe, exit_, raised, attitude), (towards, raised))


def _heading(exit_: ExitDirection) -> Range:
    """The bearing of the device itself in the plane of the floor."""
    bearing = direction(axis(exit_.towards, 0), (0, 0))[0] or 0.0
    return bearing, bearing


def _figures(name: str, what: Later, sector: Sector, inputs: tuple[Input, ...]) -> Iterator[Figure]:
    """Bearing, where there is one, and elevation."""
    id_, lies = f"exits.{name}.{sector.attitude.id}", later(sector.attitude.words)
    caution = later("{way}; this way and to either side of it, and with a bent mount any way", way=sector.way)
    angles = [
        ("elevation", later("{device}, {attitude}: above the level", device=what, attitude=lies), sector.elevation)
    ]
    if sector.bearing:
        told = later("{device}, {attitude}: clockwise from the nose, seen from above", device=what, attitude=lies)
        angles.insert(0, ("bearing", told, sector.bearing))
    for key, told, value in angles:
        yield Figure(
            f"{id_}.{key}",
            told,
            value,
            "deg",
            "deg",
            "nearest",
            inputs,
            _FORMULA,
            _METHOD,
            (COMMON_PRACTICE,),
            caution,
        )


TOPIC = Topic("exits", mark("Where rockets and seats fly"), _METHOD, _work)
