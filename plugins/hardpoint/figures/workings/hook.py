"""What hangs on the hook in each state of a declared lift, how far out the crane takes it, and how long bays drain."""

from __future__ import annotations

import math
from collections.abc import Iterator

from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.draining import drain_time, hook_load
from hardpoint.figures.loads import State, state_of
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Topic, Unsaid, Worked, over, quantity, spoken
from hardpoint.figures.workings.masses import state_id, state_words
from hardpoint.figures.workings.slings import factor_of
from hardpoint.findings import Path
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import Lift
from hardpoint.records.station import Crane
from hardpoint.records.surroundings import Flooding
from hardpoint.words import later, mark

_METHOD = "slings"
_CAUTION = later(
    "the whole water counts, and breaking out of mud or water comes on top: no published rule with numbers was found"
)
_DRAIN_CAUTION = later("holes clear and out of water, air let in; the walls of the bay taken as upright")


def _work(case: Case) -> Iterator[Worked]:
    cranes = entries(case.station.cranes) if case.station and not isinstance(case.station.cranes, NonValue) else {}
    for lift_name, lift in case.airframe.lifts.items():
        for conditions in lift.states:
            state = state_of(case, conditions, lift.taken_off)
            for crane_name, crane in cranes.items():
                yield from _lifted(case, (lift_name, lift), state, crane_name, crane)
    yield from _bays(case)


def _lifted(case: Case, named: tuple[str, Lift], state: State, name: str, crane: Crane) -> Iterator[Worked]:
    lift_name, _ = named
    id_ = f"hook.{lift_name}.{state_id(state.conditions)}.{name}"
    words = later("{lift}, {state}", lift=spoken(lift_name), state=state_words(state.conditions))
    what = later("{lift}: load on the hook of the {crane} crane", lift=words, crane=spoken(name))
    try:
        load = _load(case, named, state, (name, crane), id_, what)
    except MissingError as missing:
        yield missing.of(id_, what, _METHOD)
        return
    yield load
    yield _radius(load, name, crane, id_, later("{lift}: {crane} crane, furthest out", lift=words, crane=spoken(name)))


def _load(case: Case, named: tuple[str, Lift], state: State, hook: tuple[str, Crane], id_: str, what: str) -> Figure:
    (lift_name, lift), (name, crane) = named, hook
    if isinstance(state.mass, MissingError):
        raise state.mass
    path: Path = ("station", "cranes", name, "rigging")
    rigging = quantity(crane.rigging, path, later("the mass of hook and rigging is unknown"))
    factor = factor_of(case)
    beam = said(lift.spreader) if lift.spreader is not None else None
    if beam is not None:
        beam_path: Path = ("lifts", lift_name, "spreader", "mass")
        beam_mass = quantity(beam.mass, beam_path, later("the mass of the spreader is unknown"))
        both = (rigging.value[0] + beam_mass.value[0], rigging.value[1] + beam_mass.value[1])
        told = later("{hook} and spreader of {beam}", hook=rigging.said, beam=beam_mass.said)
        rigging = Input(rigging.path, told, both, "kg")
    value = over(hook_load, state.mass, rigging.value, factor.value)
    inputs = (*state.inputs, rigging, factor)
    formula, sources = "(m + m rigging) f", (COMMON_PRACTICE,)
    return Figure(f"{id_}.load", what, value, "kg", "kg", "up", inputs, formula, _METHOD, sources, _CAUTION)


def _radius(load: Figure, name: str, crane: Crane, id_: str, what: str) -> Worked:
    """The largest radius of the table at which the load is allowed; between two lines of it nothing is read in."""
    reach = [line.radius for line in crane.table if line.load.si[0] >= load.value[1]]
    path: Path = ("station", "cranes", name, "table")
    if not reach:
        reason = later("heavier than the table of the crane allows at any radius")
        return Unsaid(f"{id_}.radius", what, reason, path, _METHOD, refused=True)
    furthest = max(reach, key=lambda radius: radius.si[0])
    inputs = (*load.inputs, Input(path, furthest.text, furthest.si, "m"))
    return Figure(
        f"{id_}.radius", what, (furthest.si[0],) * 2, "m", "m", "down", inputs, "max R: m(R) ≥ m", _METHOD,
        (COMMON_PRACTICE,), later("by the station's own table; the ground under the outriggers counts too"),
    )  # fmt: skip


def _bays(case: Case) -> Iterator[Worked]:
    water = said(case.airframe.water)
    if water is None or isinstance(water.floods, NonValue):
        return
    for name, bay in entries(water.floods).items():
        id_, what = f"hook.drain.{name}", later("{bay}: time to drain", bay=spoken(name))
        try:
            yield _drained(name, bay, id_, what)
        except MissingError as missing:
            yield missing.of(id_, what, _METHOD)


def _drained(name: str, bay: Flooding, id_: str, what: str) -> Figure:
    path: Path = ("water", "floods", name)
    volume = quantity(bay.volume, (*path, "volume"), later("how much water it takes is unknown"))
    head = quantity(bay.head, (*path, "head"), later("how high the water stands over its holes is unknown"))
    area = _holes(bay, path)
    value = over(drain_time, volume.value, area.value, head.value)
    inputs = (volume, area, head)
    formula = "t = 2 V / (Cd A √(2 g h)), Cd = 0.6"
    return Figure(
        id_, what, value, "s", "s", "up", inputs, formula, _METHOD, ("orifice-flow",), _DRAIN_CAUTION, digits=2
    )


def _holes(bay: Flooding, path: Path) -> Input:
    """The area of all holes that are recorded; one that nobody measured counts for nothing."""
    if isinstance(bay.drains, NonValue):
        raise MissingError(later("its holes are unknown"), (*path, "drains"))
    low = high = 0.0
    told = []
    for drain in entries(bay.drains).values():
        if isinstance(drain.diameter, NonValue):
            continue
        ends = drain.diameter.si
        low += drain.count * math.pi * ends[0] ** 2 / 4
        high += drain.count * math.pi * ends[1] ** 2 / 4
        told.append(f"{drain.count} x {drain.diameter.text}")
    if low == 0:
        raise MissingError(later("no hole of known size is recorded"), (*path, "drains"))
    return Input((*path, "drains"), ", ".join(told), (low, high), "m2")


TOPIC = Topic("hook", mark("Hook load, crane and draining"), _METHOD, _work)
