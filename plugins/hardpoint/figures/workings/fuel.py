"""Fuel on board by grade: its mass, and what a spill of all of it would be, for planning before anything burns."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.densities import density
from hardpoint.figures.fire import HEAT_FLUXES_W_M2, PoolFire, distance_to_flux, pool_fire, spill_area
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Range, Topic, Unsaid, Worked, quantity, spoken
from hardpoint.findings import Path
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.tanks import BURNING, ENGINE_FUELS, Fluid, Tank
from hardpoint.words import later, mark

_METHOD = "fire"
STANDS_FOR: Mapping[Fluid, tuple[str, ...]] = {
    "avgas": ("gasoline",),
    "mogas": ("gasoline",),
    "jet fuel": ("kerosene", "jp-4", "jp-5"),
    "diesel": ("diesel",),
}
"""Published burning data that a grade is worked out with; of several, the whole range counts."""
_CAUTION = later("for planning; a spill on concrete, still air. The incident commander decides on the day")
_NEAR = later("for people in appropriate clothing, not for the public; wrong close to the flames")
_SOURCES = ("nureg-1805", "nureg-1805-burning-time")


@dataclass(frozen=True)
class _Grade:
    """All tanks of one fluid: volume in m3 (all of them full), mass in kg, what both were read from."""

    fluid: Fluid
    volume: Range
    mass: Range
    inputs: tuple[Input, ...]
    sources: tuple[str, ...]


def _work(case: Case) -> Iterator[Worked]:
    tanks = case.airframe.tanks
    if tanks is NonValue.UNKNOWN:
        yield Unsaid("fuel", later("Fuel"), later("which tanks it has is unknown"), ("tanks",), _METHOD)
        return
    by_fluid: dict[Fluid, dict[str, Tank]] = {}
    for name, tank in entries(tanks).items():
        if isinstance(tank.holds, NonValue):
            reason = later("what the tank {tank} holds is unknown", tank=spoken(name))
            yield Unsaid(f"fuel.{name}", spoken(name), reason, ("tanks", name, "holds"), _METHOD)
        elif tank.holds in BURNING:
            by_fluid.setdefault(tank.holds, {})[name] = tank
    for fluid, found in by_fluid.items():
        yield from _of_grade(case, fluid, found)


def _of_grade(case: Case, fluid: Fluid, tanks: Mapping[str, Tank]) -> Iterator[Worked]:
    id_ = f"fuel.{fluid.replace(' ', '-')}"
    try:
        grade = _grade(fluid, tanks)
    except MissingError as missing:
        yield missing.of(id_, later("{fluid} on board", fluid=later(fluid)), _METHOD)
        return
    what = later("{fluid}: mass, all tanks full", fluid=later(fluid))
    inputs, sources = grade.inputs, grade.sources
    yield Figure(f"{id_}.mass_full", what, grade.mass, "kg", "kg", "up", inputs, "m = ρ V", _METHOD, sources)
    if fluid in ENGINE_FUELS:
        yield from _planned(case, id_, grade)
    if fluid not in STANDS_FOR:
        reason = later("no burning data of {fluid} was found in a published source", fluid=later(fluid))
        yield Unsaid(f"{id_}.spill", later("{fluid}: a burning spill", fluid=later(fluid)), reason, (), _METHOD)
        return
    yield from _spill(id_, grade)


def _grade(fluid: Fluid, tanks: Mapping[str, Tank]) -> _Grade:
    volume, mass = [0.0, 0.0], [0.0, 0.0]
    inputs: list[Input] = []
    sources: list[str] = []
    for name, tank in tanks.items():
        path: Path = ("tanks", name)
        unknown = later("the capacity of the tank {tank} is unknown", tank=spoken(name))
        capacity = quantity(tank.capacity, (*path, "capacity"), unknown)
        heavy, keys = density(tank, path)
        for end in (0, 1):
            volume[end] += tank.count * capacity.value[end]
            mass[end] += tank.count * capacity.value[end] * heavy.value[end]
        inputs += [capacity, heavy]
        sources += keys
    return _Grade(
        fluid, (volume[0], volume[1]), (mass[0], mass[1]), tuple(inputs), tuple(dict.fromkeys(sources)) or _OWN
    )


_OWN = (COMMON_PRACTICE,)


def _planned(case: Case, id_: str, grade: _Grade) -> Iterator[Worked]:
    """The mass of the fuel of the slot; only where there is one."""
    planned = said(case.entry.fuel_planned) if case.entry else None
    if planned is None:
        return
    volume = Input(("entry", "fuel_planned"), planned.text, planned.si, "m3")
    densities = [input_ for input_ in grade.inputs if input_.unit == "kg/m3"]
    low = min(input_.value[0] for input_ in densities) * volume.value[0]
    high = max(input_.value[1] for input_ in densities) * volume.value[1]
    what = later("{fluid}: mass as planned", fluid=later(grade.fluid))
    inputs = (volume, *densities)
    yield Figure(f"{id_}.mass_planned", what, (low, high), "kg", "kg", "up", inputs, "m = ρ V", _METHOD, grade.sources)


def _spill(id_: str, grade: _Grade) -> Iterator[Worked]:
    """All of it run out and burning: areas by both depths of the source, each fuel that may stand for the grade."""
    inputs = tuple(input_ for input_ in grade.inputs if input_.unit == "m3")
    areas = [area for volume in grade.volume for area in spill_area(volume)]
    fluid = later(grade.fluid)
    yield Figure(
        f"{id_}.spill_area", later("{fluid}: area of a spill of all of it", fluid=fluid), _span(areas), "m2", "m2",
        "up", inputs, "A = V / d, d = 0.7 to 2.8 mm", _METHOD, _SOURCES, _CAUTION, digits=2,
    )  # fmt: skip
    fires = [
        pool_fire(fuel, area, volume)
        for fuel in STANDS_FOR[grade.fluid]
        for volume in grade.volume
        for area in spill_area(volume)
    ]

    def over_fires(pick: Callable[[PoolFire], float]) -> Range:
        return _span([pick(fire) for fire in fires])

    yield Figure(
        f"{id_}.burning_time", later("{fluid}: how long the spill burns", fluid=fluid),
        over_fires(lambda fire: fire.burning_time_s), "s", "s", "up", inputs, "t = 4 V / (π D² v)", _METHOD, _SOURCES,
        _CAUTION, digits=2,
    )  # fmt: skip
    yield Figure(
        f"{id_}.flame_height", later("{fluid}: height of the flames", fluid=fluid),
        over_fires(lambda fire: fire.flame_height_m), "m", "m", "up", inputs, "H = 0.235 Q^0.4 − 1.02 D", _METHOD,
        _SOURCES, _CAUTION, digits=2,
    )  # fmt: skip
    for level, flux in HEAT_FLUXES_W_M2.items():
        kilowatts = f"{flux / 1000:g}"
        what = later("{fluid}: distance to {flux} kW/m² ({level})", fluid=fluid, flux=kilowatts, level=later(level))
        key = f"{id_}.distance_{level.replace(' ', '_')}"
        reach = _span([distance_to_flux(fire.heat_release_w, flux) for fire in fires])
        formula, sources = "R = √(0.3 Q / (4 π q))", ("nureg-1805", "api-521", "fire-kit-tests")
        yield Figure(key, what, reach, "m", "m", "up", inputs, formula, _METHOD, sources, _NEAR, digits=2)


def _span(values: list[float]) -> Range:
    return min(values), max(values)


_LEVEL_WORDS = (mark("continuous"), mark("several minutes"))
"""Said where a flux is named."""
TOPIC = Topic("fuel", mark("Fuel: mass, spill and fire"), _METHOD, _work)
