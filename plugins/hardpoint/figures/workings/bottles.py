"""Every pressure bottle on board: gas, energy, heat, test pressure, blast; and which of them holds most energy."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial

from hardpoint.figures.bottles import (
    ATMOSPHERE_PA,
    TEST_RATIOS,
    blast_distance,
    free_gas_volume,
    gas_density,
    heated_pressure,
    stored_energy,
)
from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.worked import (
    Case,
    Figure,
    Input,
    MissingError,
    Range,
    Topic,
    Unsaid,
    Worked,
    over,
    quantity,
    spoken,
)
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.bottles import Bottle
from hardpoint.records.known import NonValue, entries
from hardpoint.units import Rounding
from hardpoint.words import later, mark

_METHOD = "bottles"
FILLED_AT_K = 288.15
"""Working pressures count at 15 degC, as the check values and the standards of cylinders have it."""
_HOT_DEG_C = (65, 100, 200, 300)
_METHODS = {"floor-and-20": mark("as first printed"), "factor-2": mark("as later editions print it")}
_HOT_CAUTION = later("metal and wrap weaken with heat: it bursts below this, and its disc may let go before")
_BLAST_CAUTION = later(
    "blast of a vessel under test alone, for planning: fragments fly further; the station's own cordon comes first"
)


def _work(case: Case) -> Iterator[Worked]:
    bottles = case.airframe.bottles
    if isinstance(bottles, NonValue):
        if bottles is NonValue.UNKNOWN:
            yield Unsaid("bottles", later("Bottles"), later("which bottles it has is unknown"), ("bottles",), _METHOD)
        return
    for name, bottle in bottles.items():
        path: Path = ("bottles", name)
        if bottle is NonValue.UNKNOWN:
            reason = later("whether it has the bottle {bottle} is unknown", bottle=spoken(name))
            yield Unsaid(f"bottles.{name}", spoken(name), reason, path, _METHOD)
        elif not isinstance(bottle, NonValue):
            yield from _Bottle(name, bottle).figures()


class _Bottle:
    """One bottle with what is read of it; each figure says for itself what it lacks."""

    def __init__(self, name: str, bottle: Bottle) -> None:
        self.name, self.bottle, self.path = name, bottle, ("bottles", name)
        self.words = spoken(name)

    def figures(self) -> Iterator[Worked]:
        try:
            self._gas()
        except MissingError as missing:
            yield missing.of(f"bottles.{self.name}", self.words, _METHOD)
            return
        yield self._say("gas_mass", later("{bottle}: mass of gas in one", bottle=self.words), self._mass)
        yield self._say("free_gas", later("{bottle}: free gas at 15 °C", bottle=self.words), self._free)
        yield self._say("energy", later("{bottle}: energy of a burst", bottle=self.words), self._energy)
        for hot in _HOT_DEG_C:
            what = later("{bottle}: closed, heated to {degrees} °C, absolute", bottle=self.words, degrees=hot)
            yield self._say(f"heated_{hot}", what, partial(self._heated, hot))
        yield self._say("test_ratio", later("{bottle}: test over working pressure", bottle=self.words), self._ratio)
        for method, told in _METHODS.items():
            what = later("{bottle}: blast distance, {method}", bottle=self.words, method=later(told))
            yield self._say(f"blast_{method}", what, partial(self._blast, method))

    def _say(self, key: str, what: str, work: Callable[[], Figure]) -> Worked:
        id_ = f"bottles.{self.name}.{key}"
        try:
            figure = work()
        except MissingError as missing:
            return missing.of(id_, what, _METHOD)
        except _Refused as refused:
            return Unsaid(id_, what, refused.reason, self.path, _METHOD, refused=True)
        return Figure(**{**vars(figure), "id": id_, "what": what})

    def _gas(self) -> str:
        if isinstance(self.bottle.holds, NonValue):
            raise MissingError(later("what it holds is unknown"), (*self.path, "holds"))
        if self.bottle.holds == "extinguishing agent":
            raise MissingError(later("which agent it holds is not recorded"), (*self.path, "holds"))
        return str(self.bottle.holds)

    def _volume(self) -> Input:
        path = (*self.path, "water_capacity")
        return quantity(self.bottle.water_capacity, path, later("its water capacity is unknown"))

    def _pressure(self) -> Input:
        """Absolute: the record states gauge."""
        path = (*self.path, "working_pressure")
        gauge = quantity(self.bottle.working_pressure, path, later("its working pressure is unknown"))
        low, high = gauge.value
        return Input(path, gauge.said, (low + ATMOSPHERE_PA, high + ATMOSPHERE_PA), "Pa")

    def _liquid(self) -> bool:
        if isinstance(self.bottle.filled_as, NonValue):
            raise MissingError(later("whether it is filled as gas or liquid is unknown"), (*self.path, "filled_as"))
        return self.bottle.filled_as == "liquid"

    def _density(self) -> tuple[Range, tuple[Input, ...]]:
        """Mass over volume: by the charge where it is liquid, by pressure and 15 degC where it is gas."""
        gas, volume = self._gas(), self._volume()
        if self._liquid():
            charge = quantity(self.bottle.charge, (*self.path, "charge"), later("the mass of its charge is unknown"))
            return over(lambda mass, space: mass / space, charge.value, volume.value), (charge, volume)
        pressure = self._pressure()
        return over(lambda at: gas_density(gas, at, FILLED_AT_K), pressure.value), (pressure,)

    def _mass(self) -> Figure:
        density, inputs = self._density()
        volume = self._volume()
        mass = over(lambda rho, space: rho * space, density, volume.value)
        unit = "kg" if mass[1] >= 1 else "g"
        return _figure(mass, "kg", unit, "up", (*inputs, volume), "m = ρ(p, T) V", ("coolprop",))

    def _free(self) -> Figure:
        gas, mass = self._gas(), self._mass()
        volume = over(lambda kilograms: free_gas_volume(kilograms, gas), mass.value)
        return _figure(volume, "m3", "L", "up", mass.inputs, "V = m / ρ(1 atm, 15 °C)", ("coolprop",))

    def _energy(self) -> Figure:
        gas, volume = self._gas(), self._volume()
        if self._liquid():
            raise _Refused(later("it is filled as a liquid, which lies outside the formula; it bursts all the same"))
        pressure = self._pressure()
        energy = over(lambda at, space: stored_energy(gas, at, space), pressure.value, volume.value)
        formula = "E = p V / (k − 1) [1 − (pa / p)^((k − 1) / k)]"
        return _figure(energy, "J", "kJ", "up", (pressure, volume), formula, ("asme-pcc-2",))

    def _heated(self, celsius: int) -> Figure:
        gas = self._gas()
        density, inputs = self._density()
        pressure = over(lambda rho: heated_pressure(gas, rho, celsius + 273.15), density)
        figure = _figure(pressure, "Pa", "bar", "up", inputs, "p = p(ρ, T), ρ = const", ("coolprop",))
        return Figure(**{**vars(figure), "caution": _HOT_CAUTION})

    def _ratio(self) -> Figure:
        test_path = (*self.path, "test_pressure")
        test = quantity(self.bottle.test_pressure, test_path, later("its test pressure is unknown"))
        working = quantity(
            self.bottle.working_pressure, (*self.path, "working_pressure"), later("its working pressure is unknown")
        )
        if min(working.value) <= 0:
            raise MissingError(later("its working pressure is not above 0"), working.path)
        ratio = over(lambda tested, worked: tested / worked, test.value, working.value)
        asked = TEST_RATIOS.get(str(self.bottle.standard))
        caution, sources = _standard(ratio, str(self.bottle.standard), asked)
        figure = _figure(ratio, "", "", "down", (test, working), "r = p test / p working", sources)
        return Figure(**{**vars(figure), "caution": caution})

    def _blast(self, method: str) -> Figure:
        energy = self._energy()
        try:
            distance = over(lambda joules: blast_distance(joules, method), energy.value)
        except ValueError:
            raise _Refused(later("its energy lies outside what the source covers")) from None
        figure = _figure(distance, "m", "m", "up", energy.inputs, "R = max(30 m, 20 TNT^⅓)", ("asme-pcc-2",))
        if method == "factor-2":
            figure = Figure(**{**vars(figure), "formula": "R = max(30 m, 20 (2 TNT)^⅓)"})
        return Figure(**{**vars(figure), "caution": _BLAST_CAUTION})


class _Refused(Exception):  # noqa: N818 - it says no, it is no fault
    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def _figure(
    value: Range,
    unit: str,
    printed_in: str,
    rounded: Rounding,
    inputs: Sequence[Input],
    formula: str,
    sources: tuple[str, ...],
) -> Figure:
    return Figure("", "", value, unit, printed_in, rounded, tuple(inputs), formula, _METHOD, sources)


def _standard(ratio: Range, standard: str, asked: tuple[float, str] | None) -> tuple[str, tuple[str, ...]]:
    """What the standard asks for, and whether this bottle has it; ratios differ, so it is named."""
    if asked is None:
        return later("no standard is recorded that says what the ratio is to be"), (COMMON_PRACTICE,)
    least, source = asked
    wanted = later("{standard} asks for at least {ratio}", standard=later(standard), ratio=f"{least:.2f}")
    if ratio[0] < least - 0.005:
        return later("less than its standard asks for: {wanted}", wanted=wanted), (source,)
    return wanted, (source,)


def energy_of(airframe: Airframe, name: str) -> Range | None:
    """Energy of a burst of one bottle, J; None where it cannot be said. For ranking bottles by what they can do."""
    bottle = entries(airframe.bottles).get(name)
    try:
        return _Bottle(name, bottle)._energy().value if bottle else None
    except (MissingError, _Refused, ValueError):
        return None


TOPIC = Topic("bottles", mark("Pressure bottles"), _METHOD, _work)
