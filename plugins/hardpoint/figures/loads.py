"""What an airframe is made of in one state: its empty mass, and what is added or taken off, each with where it acts.

A state begins with the empty mass. Fuel, smoke oil, ballast, people and water come on top, wings and other parts come
off. What is not known exactly is a range: fuel that nobody planned lies between none and full, water in a bay between
drained and full, and a fluid acts somewhere within its tank.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from hardpoint.figures.balance import reach_of_centre
from hardpoint.figures.densities import WATER, density
from hardpoint.figures.worked import Case, Input, MissingError, Range, convert_to_m, position, quantity, spoken
from hardpoint.findings import Path
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import Condition
from hardpoint.records.places import Place
from hardpoint.records.surroundings import Flooding
from hardpoint.records.tanks import ENGINE_FUELS, Fluid, Tank
from hardpoint.records.texts import Span
from hardpoint.words import later

ON_TOP: tuple[Fluid, ...] = ("smoke oil", "water ballast", "de-icing fluid")
"""Fluids that no empty mass contains. Engine oil, hydraulic oil and coolant are part of it (common practice)."""
WINGS = ("wing", "upper wing", "lower wing")


@dataclass(frozen=True)
class Load:
    """One part of a state: its mass in kg (below 0: taken off), its station in m, what it was read from."""

    mass: Range
    station: Range | MissingError
    inputs: tuple[Input, ...]
    sources: tuple[str, ...] = ()
    heights: Range | None = None
    """Least and greatest waterline at which it can act, m; None where the record has none."""


@dataclass(frozen=True)
class State:
    """Mass in kg and station of the centre of gravity in m, each a range, of what is true at once.

    ``mass`` or ``station`` is a MissingError where one of its parts has none; ``known``, the mass of the others,
    is enough to refuse a lift that is too heavy even without the part that nobody knows.
    """

    conditions: tuple[Condition, ...]
    loads: tuple[Load, ...]
    mass: Range | MissingError
    station: Range | MissingError
    known: Range = (0.0, 0.0)

    @property
    def inputs(self) -> tuple[Input, ...]:
        """Everything that it was read from."""
        return tuple(input_ for load in self.loads for input_ in load.inputs)

    @property
    def sources(self) -> tuple[str, ...]:
        """Keys of everything that was published and not recorded."""
        return tuple(dict.fromkeys(key for load in self.loads for key in load.sources))


def state_of(case: Case, conditions: Sequence[Condition], taken_off: Sequence[str] = ()) -> State:
    """The state in which all ``conditions`` are true at once; ``taken_off`` are ids of items that come off first."""
    loads: list[Load] = []
    missing: list[MissingError] = []
    for part in _parts(case, conditions, taken_off):
        try:
            loads += part(case, conditions)
        except MissingError as unknown:
            missing.append(unknown)
    known = (sum(load.mass[0] for load in loads), sum(load.mass[1] for load in loads))
    first = missing[0] if missing else None
    return State(tuple(conditions), tuple(loads), first or known, first or _station(loads), known)


def _station(loads: Sequence[Load]) -> Range | MissingError:
    known: list[tuple[Range, Range]] = []
    for load in loads:
        if isinstance(load.station, MissingError):
            return load.station
        known.append((load.mass, load.station))
    try:
        return reach_of_centre(known)
    except ValueError:
        return MissingError(later("more is taken off than there is"), ("masses",))


_Part = Callable[[Case, Sequence[Condition]], Iterator[Load]]


def _parts(case: Case, conditions: Sequence[Condition], taken_off: Sequence[str]) -> Iterator[_Part]:
    """What makes up the state, each to be read by itself: one that nobody knows does not hide the others."""
    yield _empty
    for condition in conditions:
        if condition == "flooded":
            yield from _bays(case)
        elif condition in _ADDS:
            yield _ADDS[condition]
    yield lambda case, conditions: _off(case, conditions, taken_off)


def _empty(case: Case, conditions: Sequence[Condition]) -> Iterator[Load]:
    masses = case.airframe.masses
    mass = quantity(masses.empty, ("masses", "empty"), later("the empty mass is unknown"))
    cg = said(masses.empty_cg)
    path = ("masses", "empty_cg", "fs") if cg else ("masses", "empty_cg")
    missing = later("the station of the empty centre of gravity is unknown")
    try:
        station = position(cg.fs if cg else None, path, case.airframe.datum.unit, missing)
    except MissingError as unknown:
        yield Load(mass.value, unknown, (mass,), heights=_waterlines(case, cg.wl if cg else None))
        return
    yield Load(mass.value, station.value, (mass, station), heights=_waterlines(case, cg.wl if cg else None))


def _fuel(case: Case, conditions: Sequence[Condition], *, full: bool) -> Iterator[Load]:
    """Engine fuel: full, as planned, or between none and full; then what else is carried, between none and full."""
    tanks = _tanks(case, conditions)
    planned = said(case.entry.fuel_planned) if case.entry else None
    burnt = {name: tank for name, tank in tanks.items() if _holds(name, tank) in ENGINE_FUELS}
    if planned is not None and not full:
        yield _planned(case, Input(("entry", "fuel_planned"), planned.text, planned.si, "m3"), burnt)
    else:
        for name, tank in burnt.items():
            yield _tank(case, name, tank, full=full)
    for name, tank in tanks.items():
        if _holds(name, tank) in ON_TOP:
            yield _tank(case, name, tank, full=False)


def _tanks(case: Case, conditions: Sequence[Condition]) -> dict[str, Tank]:
    tanks = case.airframe.tanks
    if tanks is NonValue.UNKNOWN:
        raise MissingError(later("which tanks it has is unknown"), ("tanks",))
    if not isinstance(tanks, NonValue):
        for name, tank in tanks.items():
            if tank is NonValue.UNKNOWN:
                raise MissingError(later("whether it has a tank {tank} is unknown", tank=spoken(name)), ("tanks", name))
    gone = WINGS if "wings off" in conditions else ()
    return {name: tank for name, tank in entries(tanks).items() if _on(tank.place) not in gone}


def _on(place: Place | NonValue) -> str:
    return "" if isinstance(place, NonValue) else place.on


def _holds(name: str, tank: Tank) -> Fluid:
    if isinstance(tank.holds, NonValue):
        raise MissingError(later("what the tank {tank} holds is unknown", tank=spoken(name)), ("tanks", name, "holds"))
    return tank.holds


def _tank(case: Case, name: str, tank: Tank, *, full: bool) -> Load:
    path: Path = ("tanks", name)
    missing = later("the capacity of the tank {tank} is unknown", tank=spoken(name))
    capacity = quantity(tank.capacity, (*path, "capacity"), missing)
    heavy, sources = density(tank, path)
    most = tank.count * capacity.value[1] * heavy.value[1]
    least = tank.count * capacity.value[0] * heavy.value[0] if full else 0.0
    station = _place(case, tank.place, path, later("the station of the tank {tank} is unknown", tank=spoken(name)))
    return _load((least, most), station, (capacity, heavy), sources, _height_of(case, tank.place))


def _planned(case: Case, volume: Input, tanks: dict[str, Tank]) -> Load:
    """Fuel as planned: nobody plans in which tank, so it acts between the foremost and the rearmost of them."""
    if not tanks:
        raise MissingError(later("fuel is planned, but the record has no tank for it"), ("tanks",))
    densities = [density(tank, ("tanks", name)) for name, tank in tanks.items()]
    ends = [
        _place(case, tank.place, ("tanks", name), later("the station of the tank {tank} is unknown", tank=spoken(name)))
        for name, tank in tanks.items()
    ]
    heavy = [found.value for found, _ in densities]
    mass = (volume.value[0] * min(low for low, _ in heavy), volume.value[1] * max(high for _, high in heavy))
    unknown = next((end for end in ends if isinstance(end, MissingError)), None)
    known = [end for end in ends if isinstance(end, Input)]
    station = unknown or (min(end.value[0] for end in known), max(end.value[1] for end in known))
    inputs = (volume, *(found for found, _ in densities), *known)
    told = [_height_of(case, tank.place) for tank in tanks.values()]
    levels = [height for height in told if height is not None]
    heights = (min(low for low, _ in levels), max(high for _, high in levels)) if len(levels) == len(told) else None
    return Load(mass, station, inputs, tuple(key for _, keys in densities for key in keys), heights)


def _place(case: Case, place: Place | NonValue, path: Path, missing: str) -> Input | MissingError:
    fs = None if isinstance(place, NonValue) else place.fs
    try:
        return position(fs, (*path, "place", "fs"), case.airframe.datum.unit, missing)
    except MissingError as unknown:
        return unknown


def _load(
    mass: Range,
    station: Input | MissingError,
    inputs: tuple[Input, ...],
    sources: tuple[str, ...] = (),
    heights: Range | None = None,
) -> Load:
    if isinstance(station, MissingError):
        return Load(mass, station, inputs, sources, heights)
    return Load(mass, station.value, (*inputs, station), sources, heights)


def _height_of(case: Case, place: Place | NonValue) -> Range | None:
    return None if isinstance(place, NonValue) else _waterlines(case, place.wl)


def _waterlines(case: Case, wl: Span | NonValue | None) -> Range | None:
    """Least and greatest waterline, m; an end that is open reaches as far as the airframe. None where none is told."""
    if wl is None or isinstance(wl, NonValue):
        return None
    unit, whole = case.airframe.datum.unit, _whole_height(case)
    low = convert_to_m(wl.low, unit) if wl.low is not None else whole[0] if whole else None
    high = convert_to_m(wl.high, unit) if wl.high is not None else whole[1] if whole else None
    return None if low is None or high is None else (low, high)


def _whole_height(case: Case) -> Range | None:
    """From the lowest floor to the highest top of fuselage, canopy or wing, m; None without an outline."""
    profile = said(case.airframe.profile)
    if profile is None:
        return None
    unit = case.airframe.datum.unit
    tops = [section.top for section in profile.sections]
    tops += [] if profile.canopy_top is None else [profile.canopy_top]
    tops += [s.wl.high for s in profile.surfaces.values() if s.kind == "wing" and s.wl.high is not None]
    return convert_to_m(min(s.floor for s in profile.sections), unit), convert_to_m(max(tops), unit)


def highest_centre(case: Case, state: State) -> float:
    """The greatest waterline that the centre of gravity of a state can have, m. MissingError where it is unknown.

    What has no height in the record acts anywhere between the lowest floor and the highest top. Of the empty aircraft
    the record has to say it: nothing stands in for that.
    """
    path = ("masses", "empty_cg", "wl")
    unknown = later("whether the centre of gravity hangs below the points is unknown")
    whole = _whole_height(case)
    if not state.loads or state.loads[0].heights is None:
        raise MissingError(unknown, path)
    known: list[tuple[Range, Range]] = []
    for load in state.loads:
        heights = load.heights or whole
        if heights is None:
            raise MissingError(unknown, ("profile",))
        known.append((load.mass, heights))
    return reach_of_centre(known)[1]


def _people(case: Case, conditions: Sequence[Condition]) -> Iterator[Load]:
    """Occupants in their kit, by the station's mass for one; who sits where is known only when all seats are taken."""
    each = quantity(
        case.station.occupant_mass if case.station else None,
        ("station", "occupant_mass"),
        later("the station has not stated the mass of an occupant"),
    )
    seats = case.airframe.seats
    most = said(case.entry.occupants) if case.entry else None
    least = most if most is not None else 1
    number = Input(("entry", "occupants") if most is not None else ("seats",), str(most or len(seats)),
                   (least, most if most is not None else len(seats)), "")  # fmt: skip
    ends = [
        _place(case, seat.place, ("seats", name), later("the station of the {seat} seat is unknown", seat=spoken(name)))
        for name, seat in seats.items()
    ]
    mass = (number.value[0] * each.value[0], number.value[1] * each.value[1])
    unknown = next((end for end in ends if isinstance(end, MissingError)), None)
    known = [end for end in ends if isinstance(end, Input)]
    if unknown is None and most == len(seats):
        yield from (Load(each.value, end.value, (each, end)) for end in known)
        return
    station = unknown or (min(end.value[0] for end in known), max(end.value[1] for end in known))
    yield Load(mass, station, (each, number, *known))


def _bays(case: Case) -> Iterator[_Part]:
    """Every bay that floods, from drained to full. The whole water counts: what hangs on a hook no longer floats."""
    water = said(case.airframe.water)
    if water is None or isinstance(water.floods, NonValue):
        where: Path = ("water",) if water is None else ("water", "floods")
        yield _unknown(MissingError(later("how much water it takes is unknown"), where))
        return
    for name in water.floods:
        yield partial(_bay, name=name, bay=water.floods[name])


def _unknown(missing: MissingError) -> _Part:
    def part(case: Case, conditions: Sequence[Condition]) -> Iterator[Load]:
        raise missing

    return part


def _bay(case: Case, conditions: Sequence[Condition], *, name: str, bay: Flooding | NonValue) -> Iterator[Load]:
    path = ("water", "floods", name)
    missing = later("how much water the bay {bay} takes is unknown", bay=spoken(name))
    if isinstance(bay, NonValue):
        raise MissingError(missing, path)
    volume = quantity(bay.volume, (*path, "volume"), missing)
    source, words, heavy = WATER[_water_here(case)]
    rho = Input(("station", "water", "fresh"), words, heavy, "kg/m3")
    station = _place(case, bay.place, path, later("the station of the bay {bay} is unknown", bay=spoken(name)))
    heights = _height_of(case, bay.place)
    yield _load((0.0, volume.value[1] * heavy[1]), station, (volume, rho), (source,), heights)


def _water_here(case: Case) -> str:
    """Salt where nobody has said: it is the heavier."""
    water = said(case.station.water) if case.station else None
    return water.fresh if water and not isinstance(water.fresh, NonValue) else "salt"


def _off(case: Case, conditions: Sequence[Condition], taken_off: Sequence[str]) -> Iterator[Load]:
    """Parts that are taken off: those of the lift, or, with the wings off, every heavy item that is on a wing."""
    items = case.airframe.masses.items
    if "wings off" not in conditions and "parts taken off" not in conditions:
        return
    if isinstance(items, NonValue):
        raise MissingError(later("the masses of its parts are unknown"), ("masses", "items"))
    names = list(taken_off) or [name for name, item in entries(items).items() if _on(item.place) in WINGS]
    if not names:
        raise MissingError(later("the mass of what is taken off is not recorded"), ("masses", "items"))
    for name in names:
        path = ("masses", "items", name)
        item = items.get(name)
        missing = later("the mass of {part} is unknown", part=spoken(name))
        if item is None or isinstance(item, NonValue):
            raise MissingError(missing, path)
        mass = quantity(item.mass, (*path, "mass"), missing)
        station = _place(case, item.place, path, later("the station of {part} is unknown", part=spoken(name)))
        # A mass that two statements disagree about comes off with the lesser: more is left to lift.
        yield _load((-item.count * mass.value[0],) * 2, station, (mass,), (), _height_of(case, item.place))


def _planned_fuel(case: Case, conditions: Sequence[Condition]) -> Iterator[Load]:
    return _fuel(case, conditions, full=False)


def _full_fuel(case: Case, conditions: Sequence[Condition]) -> Iterator[Load]:
    return _fuel(case, conditions, full=True)


_ADDS: dict[Condition, _Part] = {
    "fuelled as planned": _planned_fuel,
    "full fuel": _full_fuel,
    "occupants and kit": _people,
}
