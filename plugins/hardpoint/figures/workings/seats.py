"""Per seat: how many ties are recorded, and what is lifted when its occupant is taken out."""

from __future__ import annotations

from collections.abc import Iterator

from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.lifting_out import lift_out_mass
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Range, Topic, Unsaid, Worked, quantity, spoken
from hardpoint.findings import Path
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.quantities import Mass
from hardpoint.records.seats import Seat, Worn
from hardpoint.records.station import Station
from hardpoint.words import later, mark

_METHOD = "lifting-out"
_MORE = later("what is recorded, not what is there: feel for more")
_WET = later("wet clothes and water in them come on top")


def _work(case: Case) -> Iterator[Worked]:
    for name, seat in case.airframe.seats.items():
        yield _ties(name, seat)
        yield lift_out(case.station, name, seat)


def _ties(name: str, seat: Seat) -> Figure | Unsaid:
    """From the ties that are recorded to those and every one of which nobody knows whether it is there."""
    id_, what = f"seats.{name}.ties_recorded", later("{seat} seat: ties recorded", seat=spoken(name))
    path: Path = ("seats", name, "ties")
    if isinstance(seat.ties, NonValue):
        return Unsaid(id_, what, later("nobody has recorded what ties the occupant in"), path, _METHOD)
    known, open_ = len(entries(seat.ties)), sum(tie is NonValue.UNKNOWN for tie in seat.ties.values())
    value = (float(known), float(known + open_))
    names = ", ".join(
        spoken(tie) for tie, answer in seat.ties.items() if answer is NonValue.UNKNOWN or tie in entries(seat.ties)
    )
    given = (Input(path, names or str(known), value, ""),)
    return Figure(id_, what, value, "", "", "up", given, "n", _METHOD, (COMMON_PRACTICE,), _MORE)


def lift_out(station: Station | None, name: str, seat: Seat) -> Figure | Unsaid:
    """The mass of the occupant of a seat with what leaves with them; rounded up, for whoever lifts."""
    id_, what = f"seats.{name}.lift_out_mass", later("{seat} seat: mass to lift out", seat=spoken(name))
    try:
        missing = later("the station has not stated the mass of an occupant")
        occupant = quantity(station.occupant_mass if station else None, ("station", "occupant_mass"), missing)
        leaving = tuple(_leaving(station, name, seat))
    except MissingError as unknown:
        return unknown.of(id_, what, _METHOD)
    value = lift_out_mass(occupant.value, [thing.value for thing in leaving])
    given = (occupant, *leaving)
    return Figure(id_, what, value, "kg", "kg", "up", given, "M = m + Σ kᵢ", _METHOD, (COMMON_PRACTICE,), _WET)


def _leaving(station: Station | None, name: str, seat: Seat) -> Iterator[Input]:
    """What the station's mass of an occupant does not hold yet. MissingError: it can leave, and its mass is unknown."""
    held = (said(station.occupant_mass_includes) or ()) if station else ()
    path: Path = ("seats", name)
    if "parachute" not in held:
        yield from _parachute((*path, "parachute"), seat)
    if "kit worn" not in held:
        if seat.worn is NonValue.UNKNOWN:
            raise MissingError(later("what else is worn at this seat is unknown"), (*path, "worn"))
        for kit, worn in seat.worn.items() if not isinstance(seat.worn, NonValue) else ():
            yield from _kit((*path, "worn", kit), kit, worn)


def _parachute(path: Path, seat: Seat) -> Iterator[Input]:
    if seat.parachute is NonValue.UNKNOWN:
        raise MissingError(later("whether a parachute is worn is unknown"), path)
    parachute = said(seat.parachute)
    if parachute and parachute.lifting != "stays with the airframe":
        least = parachute.lifting == "leaves with the occupant"
        yield _mass(parachute.mass, (*path, "mass"), later("the mass of the parachute is unknown"), always=least)


def _kit(path: Path, name: str, worn: Worn | NonValue) -> Iterator[Input]:
    """When it is worn is told in free words: it may be missing every time."""
    missing = later("the mass of what is worn is unknown: {kit}", kit=spoken(name))
    if worn is NonValue.UNKNOWN:
        raise MissingError(missing, path)
    if not isinstance(worn, NonValue) and worn.lifting != "stays with the airframe":
        yield _mass(worn.mass, (*path, "mass"), missing, always=False)


def _mass(mass: Mass | NonValue | None, path: Path, missing: str, *, always: bool) -> Input:
    stated = quantity(mass, path, missing)
    value: Range = stated.value if always else (0.0, stated.value[1])
    return Input(stated.path, stated.said, value, stated.unit)


TOPIC = Topic("seats", mark("Ties recorded, and mass to lift out"), _METHOD, _work)
