"""A declared lift as rigging: its points in space, what each may carry, its hook; or why it is refused or not known."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import cast

from hardpoint.figures.refusals import divisor_of, refusal
from hardpoint.figures.reports import refused_while_live, reports_that_count
from hardpoint.figures.sections import between_sections
from hardpoint.figures.slings import Spot
from hardpoint.figures.worked import Case, Input, MissingError, convert_to_m, position, spoken
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING, Axis, Hook, Lift, LoadPoint
from hardpoint.records.places import Place
from hardpoint.words import Later, later

SAME_STATION_M = 0.05
"""Points closer than this along the airframe are one station: nothing there keeps it level."""
AXES: Mapping[Axis, Spot] = {
    "towards canopy": (0, 0, 1),
    "towards floor": (0, 0, -1),
    "forward": (-1, 0, 0),
    "aft": (1, 0, 0),
    "pilot's left": (0, -1, 0),
    "pilot's right": (0, 1, 0),
}


class RefusedError(Exception):
    """A lift that is known well enough to say no. ``reason`` is made by ``later``."""

    def __init__(self, reason: str, path: Path) -> None:
        super().__init__(reason)
        self.reason, self.path = reason, path


@dataclass(frozen=True)
class Eye:
    """One end that a leg is hooked to: where it is, of which load point, how it may be pulled."""

    id: str
    at: Spot
    axis: Spot
    cone_deg: float
    wraps: bool = False
    """One of the two ends of a strap round the belly."""


@dataclass(frozen=True)
class Rigged:
    """A lift that may be computed: its eyes by load point, what each point may carry (N), how that counts."""

    eyes: tuple[Eye, ...]
    allowable_n: Mapping[str, float]
    counts: Mapping[str, str]
    inputs: tuple[Input, ...]
    one_station: bool

    @property
    def points(self) -> tuple[Spot, ...]:
        """Where the legs are hooked in."""
        return tuple(eye.at for eye in self.eyes)

    @property
    def highest(self) -> float:
        """Waterline of the highest eye, m."""
        return max(eye.at[2] for eye in self.eyes)


def rigged(case: Case, name: str, lift: Lift) -> Rigged:
    """The rigging of a declared lift. RefusedError: known, and no. MissingError: something is not known."""
    path: Path = ("lifts", name)
    points = _points(case.airframe, lift, path)
    for id_, point in points.items():
        if point.use not in LIFTING:
            raise RefusedError(later("{point} is no point to lift by", point=spoken(id_)), ("load_points", id_, "use"))
        if reason := refusal(point, case.station):
            raise RefusedError(
                later("{point}: {reason}", point=spoken(id_), reason=reason), ("load_points", id_, "basis")
            )
    _nothing_live(case, lift, path)
    places = {id_: tuple(_spots_of(case.airframe, id_, point)) for id_, point in points.items()}
    stations = [at[0] for spots in places.values() for at in spots]
    one_station = max(stations) - min(stations) < SAME_STATION_M
    if one_station and isinstance(lift.tail_line, NonValue):
        raise RefusedError(
            later("its points are at one station and no tail line is declared: it would tip"), (*path, "tail_line")
        )
    eyes = tuple(
        Eye(id_, at, *_direction(id_, point), wraps=len(places[id_]) == 2 and point.use == "wrap")
        for id_, point in points.items()
        for at in places[id_]
    )
    allowables = {id_: _allowable(case, id_, point) for id_, point in points.items()}
    return Rigged(
        eyes,
        {id_: input_.value[0] for id_, input_ in allowables.items()},
        {id_: str(point.allowable_is_for) for id_, point in points.items()},
        tuple(allowables.values()),
        one_station,
    )


def _points(airframe: Airframe, lift: Lift, path: Path) -> dict[str, LoadPoint]:
    known = entries(airframe.load_points)
    missing = next((id_ for id_ in lift.points if id_ not in known), None)
    if missing is not None:
        raise MissingError(later("the point {point} is unknown", point=spoken(missing)), (*path, "points"))
    return {id_: known[id_] for id_ in lift.points}


def _nothing_live(case: Case, lift: Lift, path: Path) -> None:
    reports = reports_that_count(case.entry, case.day) if case.entry and case.day else {}
    live = refused_while_live(case.airframe, lift, reports)
    if live:
        devices = ", ".join(spoken(id_) for id_ in live)
        reason = later("live until a licensed person reports otherwise on the day: {devices}", devices=devices)
        raise RefusedError(reason, (*path, "not_while_live"))


def _allowable(case: Case, id_: str, point: LoadPoint) -> Input:
    """What the point may carry, divided as the station has decided for its basis."""
    path: Path = ("load_points", id_, "allowable")
    if isinstance(point.allowable, NonValue):
        raise MissingError(later("what {point} may carry is unknown", point=spoken(id_)), path)
    divisor = divisor_of(point, case.station)
    low = point.allowable.si[0] / divisor
    return Input(path, point.allowable.text, (low, low), "N")


def _spots_of(airframe: Airframe, id_: str, point: LoadPoint) -> Iterator[Spot]:
    place = said(point.place)
    path: Path = ("load_points", id_, "place")
    if place is None:
        raise MissingError(later("where {point} is, is unknown", point=spoken(id_)), path)
    yield from _spots(airframe, id_, point, place, path)


def _direction(id_: str, point: LoadPoint) -> tuple[Spot, float]:
    """Axis and cone: without both nobody can say whether a leg pulls the way that the point is made for."""
    cone, axis = said(point.cone), said(point.axis)
    if cone is None:
        reason = later("how far from its axis {point} may be pulled is unknown", point=spoken(id_))
        raise MissingError(reason, ("load_points", id_, "cone"))
    if axis is None or axis not in AXES:
        reason = later("which way {point} is made to be pulled is unknown", point=spoken(id_))
        raise MissingError(reason, ("load_points", id_, "axis"))
    return AXES[cast(Axis, axis)], cone.within("deg")[0]


def _spots(airframe: Airframe, id_: str, point: LoadPoint, place: Place, path: Path) -> Iterator[Spot]:
    """Aft, right, towards canopy, m. A strap round the belly leaves the skin on both sides: there its ends pull."""
    unit = airframe.datum.unit
    where = later("the station of {point} is unknown", point=spoken(id_))
    fs = _middle(position(said(place.fs), (*path, "fs"), unit, where))
    leaves = said(point.leaves_skin) if point.leaves_skin is not None else None
    if leaves is not None:
        height = position(leaves, ("load_points", id_, "leaves_skin"), unit, where)
        half = _half_width(airframe, fs, id_)
        yield from ((fs, hand * half, _middle(height)) for hand in (-1, 1))
        return
    high = later("the height of {point} is unknown", point=spoken(id_))
    wl = _middle(position(said(place.wl), (*path, "wl"), unit, high))
    if place.side == "both":
        wide = later("how far apart {point} are is unknown", point=spoken(id_))
        bl = _middle(position(said(place.bl), (*path, "bl"), unit, wide))
        yield from ((fs, hand * bl, wl) for hand in (-1, 1))
    elif place.side == "centre":
        yield fs, 0.0, wl
    else:
        raise MissingError(
            later("on which side {point} is, is not told for a lift", point=spoken(id_)), (*path, "side")
        )


def _middle(input_: Input) -> float:
    return sum(input_.value) / 2


def _half_width(airframe: Airframe, fs_m: float, id_: str) -> float:
    """Half the width of the fuselage at a station, straight between the sections of the outline, m."""
    profile = said(airframe.profile)
    if profile is None:
        reason = later("how wide the fuselage is at {point} is unknown", point=spoken(id_))
        raise MissingError(reason, ("profile",))
    unit = airframe.datum.unit
    known = sorted((convert_to_m(s.fs, unit), convert_to_m(s.half_width, unit)) for s in profile.sections)
    return between_sections(known, fs_m)


def hook_height(hook: Hook | NonValue, name: str) -> float:
    """Height of the hook over the highest point, m. MissingError where none is stated."""
    above = None if isinstance(hook, NonValue) or hook.above is None else said(hook.above)
    if above is None:
        raise MissingError(later("how high the hook is over the points is not stated"), ("lifts", name, "hook"))
    return above.si[0]


def legs_of(hook: Hook | NonValue, rig: Rigged) -> list[float] | None:
    """The fixed length of each leg, m; None where the record states none of them."""
    lengths = {} if isinstance(hook, NonValue) else entries(hook.legs)
    if not lengths or any(eye.id not in lengths for eye in rig.eyes):
        return None
    return [lengths[eye.id].si[0] for eye in rig.eyes]


def too_heavy(carried: str, allowed: str) -> Later:
    """The reason of a lift whose points cannot carry it."""
    return later(
        "heavier than its points allow: {carried} of {allowed}, the station's factor counted",
        carried=carried,
        allowed=allowed,
    )
