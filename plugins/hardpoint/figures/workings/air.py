"""Breathing bottles against the slowest access time: how long each lasts, and whether that leaves a margin."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from hardpoint.figures.air import endurance
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Topic, Unsaid, Worked, over, quantity, spoken
from hardpoint.findings import Path
from hardpoint.records.bottles import Bottle
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.station import Station
from hardpoint.units import computed
from hardpoint.words import later, mark

_METHOD = "air"
_PLACE = ("station", "water")
_FILLED_AT_K = 293.15
"""Our convention: filled to its gauge pressure at 20 degC, cooled to the water at constant mass."""
_SOURCES = ("us-navy-diving", "coolprop")
_CAUTION = later("nobody breathes evenly under water; a margin on paper is no promise")


@dataclass(frozen=True)
class _Water:
    """What the station has decided or measured."""

    temperature: Input
    reserve: Input
    rates: tuple[Input, ...]
    drill: Input
    spare: Input
    depths: tuple[Input, ...]
    kind: str


def _work(case: Case) -> Iterator[Worked]:
    for name, bottle in entries(case.airframe.bottles).items():
        if bottle.use == "breathing air":
            yield from _bottle(case, name, bottle)


def _bottle(case: Case, name: str, bottle: Bottle) -> Iterator[Worked]:
    path: Path = ("bottles", name)
    words = spoken(name)
    try:
        water = _water(case.station)
        volume = quantity(bottle.water_capacity, (*path, "water_capacity"), later("its water capacity is unknown"))
        pressure = (*path, "working_pressure")
        filled = quantity(bottle.working_pressure, pressure, later("its working pressure is unknown"))
    except MissingError as missing:
        yield missing.of(f"air.{name}", later("{bottle}: how long it lasts", bottle=words), _METHOD)
        return
    for depth in water.depths:
        lasting = [_lasting(name, words, depth, rate, volume, filled, water) for rate in water.rates]
        yield from lasting
        yield _margin(name, words, depth, lasting, water)


def _water(station: Station | None) -> _Water:
    if station is None:
        raise MissingError(later("the station's record is missing"), ("station",))
    water = said(station.water)
    if water is None:
        raise MissingError(later("the station has not described its water"), ("station", "water"))
    if isinstance(station.breathing_rates, NonValue) or not station.breathing_rates:
        raise MissingError(later("the station has not stated rates of breathing"), ("station", "breathing_rates"))
    rates = tuple(
        Input(("station", "breathing_rates", at), rate.text, rate.si, "m3/s")
        for at, rate in enumerate(station.breathing_rates)
    )
    depth = quantity(water.depth, ("station", "water", "depth"), later("the depth of the water is unknown"))
    half = Input(depth.path, later("half of {depth}", depth=depth.said), (depth.value[0] / 2, depth.value[1] / 2), "m")
    return _Water(
        quantity(water.temperature, (*_PLACE, "temperature"), later("the temperature of the water is unknown")),
        quantity(station.bottle_reserve, ("station", "bottle_reserve"), later("the station has stated no reserve")),
        rates,
        _slowest(station),
        quantity(station.spare_time, ("station", "spare_time"), later("the station has stated no spare time")),
        (Input((), later("at the surface"), (0.0, 0.0), "m"), half, depth),
        "salt" if water.fresh == "salt" or isinstance(water.fresh, NonValue) else "fresh",
    )


def _slowest(station: Station) -> Input:
    """The slowest recorded drill, never a sum of averages."""
    drills = entries(station.drills)
    if not drills:
        raise MissingError(later("no drill is recorded"), ("station", "drills"))
    name, drill = max(drills.items(), key=lambda item: item[1].took.si[1])
    return Input(("station", "drills", name, "took"), drill.took.text, drill.took.si, "s")


def _lasting(
    name: str, words: str, depth: Input, rate: Input, volume: Input, filled: Input, water: _Water
) -> Figure | Unsaid:
    metres, litres = _metres(depth), round(rate.value[1] * 60000)
    id_ = f"air.{name}.at_{metres}_m.rate_{litres}"
    what = later("{bottle}: lasts at {depth} m, {rate} L/min", bottle=words, depth=metres, rate=litres)
    inputs = (volume, filled, water.reserve, depth, rate, water.temperature)

    def at(space: float, full: float, reserve: float, deep: float, breathed: float, cold: float) -> float:
        return endurance(space, full, reserve, deep, breathed, _FILLED_AT_K, cold, water.kind)

    try:
        value = over(at, *(input_.value for input_ in inputs))
    except ValueError:
        return Unsaid(id_, what, later("its pressures or depth lie outside the formula"), volume.path, _METHOD)
    formula = "t = V (ρ(pf′, Tw) − ρ(pr, Tw)) / (ρ(pa, Tw) q)"
    return Figure(id_, what, value, "s", "s", "down", inputs, formula, _METHOD, _SOURCES, _CAUTION)


def _metres(depth: Input) -> str:
    return f"{depth.value[1]:g}"


def _margin(name: str, words: str, depth: Input, lasting: Sequence[Worked], water: _Water) -> Worked:
    """The least time left over, only if every printed rate passes by the station's spare time."""
    id_ = f"air.{name}.at_{_metres(depth)}_m.margin"
    what = later("{bottle}: margin over the slowest drill at {depth} m", bottle=words, depth=_metres(depth))
    figures = [figure for figure in lasting if isinstance(figure, Figure)]
    if len(figures) < len(lasting):
        return Unsaid(id_, what, later("how long it lasts cannot be said"), ("station", "breathing_rates"), _METHOD)
    needed = water.drill.value[1] + water.spare.value[1]
    short = [rate for rate, figure in zip(water.rates, figures, strict=True) if figure.value[0] < needed]
    if short:
        return Unsaid(id_, what, _no_margin(short, water), water.drill.path, _METHOD, refused=True)
    left = min(figure.value[0] for figure in figures) - water.drill.value[1]
    inputs = (water.drill, water.spare, *figures[-1].inputs)
    return Figure(id_, what, (left, left), "s", "s", "down", inputs, "t − t drill", _METHOD, _SOURCES, _CAUTION)


def _no_margin(short: Sequence[Input], water: _Water) -> str:
    rates = f"{round(short[0].value[1] * 60000)}"
    for rate in short[1:]:
        rates = later("{some} and {one}", some=rates, one=round(rate.value[1] * 60000))
    return later(
        "no margin at {rates} L/min: the slowest drill took {drill}, and {spare} are to be left over",
        rates=rates,
        drill=computed(water.drill.value, "s", "s", "up")[0],
        spare=computed(water.spare.value, "s", "s", "up")[0],
    )


TOPIC = Topic("air", mark("Air against the time to reach"), _METHOD, _work)
