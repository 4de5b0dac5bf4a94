"""Rules about declared lifts."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.refusals import refusal
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING, Lift, LoadPoint
from hardpoint.records.masses import Item
from hardpoint.rules.rule import AIRFRAME, Hit, Record
from hardpoint.units import Stated


@AIRFRAME.rule(
    "not-a-lifting-point",
    "error",
    "A declared lift uses points that lift or are wrapped; a tie-down ring, a jack pad or a cleat does not lift.",
)
def not_a_lifting_point(record: Record) -> Iterator[Hit]:
    """Points of a lift whose use is not lifting."""
    points = entries(record.airframe.load_points)
    for name, lift in record.airframe.lifts.items():
        for index, point in enumerate(lift.points):
            if point in points and points[point].use not in LIFTING:
                yield Hit(
                    ("lifts", name, "points", index),
                    point,
                    f"a point with use: lift or wrap ({point} is a {points[point].use} point)",
                    "",
                    related=((("load_points", point, "use"), points[point].use),),
                )


@AIRFRAME.rule(
    "one-station-without-tail-line",
    "warning",
    "A lift by points at one station names a tail line: without it the airframe tips.",
)
def one_station_without_tail_line(record: Record) -> Iterator[Hit]:
    """Lifts whose points share one station and that declare no tail line."""
    points = entries(record.airframe.load_points)
    for name, lift in record.airframe.lifts.items():
        stations = {_station(points, point) for point in lift.points}
        if len(stations) == 1 and None not in stations and lift.tail_line not in points:
            yield Hit(
                ("lifts", name, "tail_line"),
                str(lift.tail_line),
                "a point with use: steady that holds the line",
                "tail-ring",
            )


def _station(points: dict[str, LoadPoint], name: str) -> str | None:
    place = said(points[name].place) if name in points else None
    fs = said(place.fs) if place else None
    return fs.text if fs else None


@AIRFRAME.rule(
    "lift-refused",
    "warning",
    "A declared lift uses points that a lift can be computed by: basis known, allowable known, and for all but a limit "
    "a divisor that the station has decided.",
)
def lift_refused(record: Record) -> Iterator[Hit]:
    """Points of declared lifts for which every computed lift is refused."""
    points = entries(record.airframe.load_points)
    for name, lift in record.airframe.lifts.items():
        why: dict[str, list[str]] = {}
        for id_ in lift.points:
            point = points.get(id_)
            if point and (reason := refusal(point, record.fleet.house.station if record.fleet.house else None)):
                why.setdefault(reason, []).append(id_)
        for reason, ids in why.items():
            yield Hit(
                ("lifts", name, "points"),
                ", ".join(ids),
                "points of known basis and allowable",
                message=f"this lift cannot be computed and is refused: {reason} ({', '.join(ids)})",
                related=tuple((("load_points", id_), id_) for id_ in ids),
            )


@AIRFRAME.rule(
    "lift-carries-less-than-empty",
    "warning",
    "The points of a declared lift carry together at least what is left of the empty mass.",
)
def lift_carries_less_than_empty(record: Record) -> Iterator[Hit]:
    """All allowables by their larger reading against the smallest mass that can hang from them, no factor applied."""
    for name, lift in record.airframe.lifts.items():
        mass, force = _least_mass(record.airframe, lift), _most_force(record.airframe, lift)
        if mass is None or force is None or force >= mass * STANDARD_GRAVITY:
            continue
        in_newtons = any(stated.unit == "N" for stated in _stated(record.airframe, lift))
        enough_as_kgf = in_newtons and force * STANDARD_GRAVITY >= mass * STANDARD_GRAVITY
        slip = "; is what is written in N meant as kgf?" if enough_as_kgf else ""
        yield Hit(
            ("lifts", name, "points"),
            ", ".join(lift.points),
            f"points that carry {mass:.0f} kg",
            message=f"these points carry {force / STANDARD_GRAVITY:.0f} kgf together, less than the {mass:.0f} kg "
            f"that hang from them even when it is empty{slip}",
        )


STANDARD_GRAVITY = 9.80665
"""m/s2, exact: NIST SP 811, appendix B.8."""


def _least_mass(airframe: Airframe, lift: Lift) -> float | None:
    """Empty mass less all that the lift takes off, in kg; None where one of them is not known."""
    empty, items = said(airframe.masses.empty), entries(airframe.masses.items)
    off = [item for name, item in items.items() if name in lift.taken_off or _is_wing_off(item, lift)]
    masses = [said(item.mass) for item in off]
    if empty is None or None in masses:
        return None
    return empty.si[0] - sum(item.count * mass.si[1] for item, mass in zip(off, masses, strict=True) if mass)


def _most_force(airframe: Airframe, lift: Lift) -> float | None:
    """Sum of the allowables in N, a pair counted twice where it is stated for each; None where one is not known."""
    points, total = entries(airframe.load_points), 0.0
    for id_ in lift.points:
        point = points.get(id_)
        place, force = (said(point.place), said(point.allowable)) if point else (None, None)
        if point is None or place is None or force is None or isinstance(point.allowable_is_for, NonValue):
            return None
        total += force.si[1] * (2 if point.allowable_is_for == "each" and place.side == "both" else 1)
    return total


def _stated(airframe: Airframe, lift: Lift) -> Iterator[Stated]:
    points = entries(airframe.load_points)
    for force in (said(points[id_].allowable) for id_ in lift.points if id_ in points):
        yield from force.stated if force else ()


_WINGS = ("wing", "upper wing", "lower wing")


def _is_wing_off(item: Item, lift: Lift) -> bool:
    return any("wings off" in state for state in lift.states) and _is_wing(item)


def _is_wing(item: Item) -> bool:
    place = said(item.place)
    return place is not None and place.on in _WINGS


@AIRFRAME.rule(
    "state-without-items",
    "warning",
    "A lift with parts or wings off has their masses: they stand under masses.items, parts also under taken_off.",
)
def state_without_items(record: Record) -> Iterator[Hit]:
    """Lifts in a state whose mass cannot be said, because what is taken off is not there."""
    wings = any(_is_wing(item) for item in entries(record.airframe.masses.items).values())
    for name, lift in record.airframe.lifts.items():
        for index, state in enumerate(lift.states):
            path: Path = ("lifts", name, "states", index)
            if "parts taken off" in state and not lift.taken_off:
                wanted = "the key taken_off with the ids of those parts"
                yield Hit(path, ", ".join(state), wanted, "taken_off: [engine]")
            if "wings off" in state and not wings:
                yield Hit(path, ", ".join(state), "the wings under masses.items, their place with on: wing")


_EXCLUDES = {
    "empty": ("fuelled as planned", "full fuel", "occupants and kit", "flooded"),
    "fuelled as planned": ("full fuel", "tanks drained"),
    "full fuel": ("tanks drained",),
}


@AIRFRAME.rule(
    "state-contradicts-itself",
    "error",
    "What stands together in one state of a lift can be true at once: not empty and fuelled, nothing twice.",
)
def state_contradicts_itself(record: Record) -> Iterator[Hit]:
    """States that no aircraft can be in. Two states are two lines; what stands on one line is true at once."""
    for name, lift in record.airframe.lifts.items():
        for index, state in enumerate(lift.states):
            clash = next((two for one in state for two in _EXCLUDES.get(one, ()) if two in state), "")
            if clash or len(set(state)) < len(state):
                wanted = "one state a line, and on it only what is true at once"
                yield Hit(("lifts", name, "states", index), ", ".join(state), wanted, "- [empty]")


@AIRFRAME.rule("item-stays-on", "warning", "What a lift takes off first is something that comes off.")
def item_stays_on(record: Record) -> Iterator[Hit]:
    """Items that a lift takes off although the record says that they do not come off."""
    items = entries(record.airframe.masses.items)
    for name, lift in record.airframe.lifts.items():
        for index, id_ in enumerate(lift.taken_off):
            comes_off = items[id_].comes_off if id_ in items else None
            if comes_off in (NonValue.NOT_FITTED, NonValue.NOT_APPLICABLE):
                yield Hit(
                    ("lifts", name, "taken_off", index),
                    id_,
                    f'an item that comes off; {id_} says "comes_off: {comes_off}"',
                    related=((("masses", "items", id_), id_),),
                )


@AIRFRAME.rule(
    "named-twice", "error", "A lift names a point, or a part that is taken off, once: twice it would count twice."
)
def named_twice(record: Record) -> Iterator[Hit]:
    """Ids that stand twice in one list of a lift."""
    for name, lift in record.airframe.lifts.items():
        for key in ("points", "taken_off", "not_while_live"):
            listed = getattr(lift, key)
            for index, id_ in enumerate(listed):
                if id_ in listed[:index]:
                    yield Hit(("lifts", name, key, index), id_, f"each id once; {id_} stands here already")
