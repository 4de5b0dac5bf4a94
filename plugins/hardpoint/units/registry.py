"""The units that authors may write and that pages show: names, spellings, kinds, exact factors.

The factors come from one pint registry, made at the first conversion (its import takes a quarter of a second) and
working in fractions, so that even a psi is exact. After that every factor is a look-up; pint reads and prints nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Literal, NamedTuple

if TYPE_CHECKING:
    from pint import UnitRegistry

Kind = Literal[
    "mass",
    "length",
    "volume",
    "force",
    "gauge pressure",
    "pressure",
    "angle",
    "time",
    "voltage",
    "energy",
    "speed",
    "flow",
    "area",
    "temperature",
    "density",
    "power",
    "charge",
]
"""What a key asks for. ``gauge pressure``: the key itself says gauge; ``pressure``: the author says which."""

System = Literal["metric", "customary", "none"]
"""``none``: a unit with no counterpart in the other system (deg, s, V)."""
Reference = Literal["", "gauge", "absolute"]


@dataclass(frozen=True)
class KindFacts:
    """A kind in words: noun with its article, an example, its SI unit, whether a value below zero has a meaning."""

    noun: str
    example: str
    si_unit: str
    signed: bool = False


KINDS: Mapping[Kind, KindFacts] = {
    "mass": KindFacts("a mass", "12 kg", "kg"),
    "length": KindFacts("a length", "1250 mm", "m", signed=True),
    "volume": KindFacts("a volume", "62 L", "m3"),
    "force": KindFacts("a force", "400 kgf", "N"),
    "gauge pressure": KindFacts("a gauge pressure", "200 bar", "Pa", signed=True),
    "pressure": KindFacts("a pressure", "200 bar gauge", "Pa", signed=True),
    "angle": KindFacts("an angle", "45 deg", "rad", signed=True),
    "time": KindFacts("a time", "90 s", "s"),
    "voltage": KindFacts("a voltage", "400 V", "V", signed=True),
    "energy": KindFacts("an energy", "18 kWh", "J"),
    "speed": KindFacts("a speed", "3 kt", "m/s", signed=True),
    "flow": KindFacts("a flow", "50 L/min", "m3/s"),
    "area": KindFacts("an area", "0.5 m2", "m2"),
    "temperature": KindFacts("a temperature", "14 degC", "K", signed=True),
    "density": KindFacts("a density", "0.8 kg/L", "kg/m3"),
    "power": KindFacts("a power", "220 kW", "W"),
    "charge": KindFacts("a charge", "12 Ah", "C"),
}


_RAISED = str.maketrans("23", "²³")  # a digit in a unit's name is always an exponent


@dataclass(frozen=True)
class Unit:
    """A unit: canonical name, pint's name of it, system, the unit it is shown in beside (or ""), other spellings.

    ``written`` is False for a unit that figures use and authors do not (``C`` would be read as degrees Celsius).
    """

    name: str
    pint: str
    system: System
    beside: str = ""
    spellings: tuple[str, ...] = ()
    written: bool = True

    @property
    def printed(self) -> str:
        """The unit as pages print it: exponents raised, the degree sign on temperatures."""
        if self.name in ("degC", "degF"):
            return f"°{self.name[-1]}"
        return self.name.translate(_RAISED)


def _unit(name: str, pint: str, system: System, beside: str = "", also: str = "") -> Unit:
    return Unit(name, pint, system, beside, tuple(also.split("|")) if also else ())


_METRIC: System = "metric"
_CUSTOMARY: System = "customary"

_UNITS: Mapping[Kind, tuple[Unit, ...]] = {
    "mass": (
        _unit("kg", "kilogram", _METRIC, "lb", "kilogram|kilograms"),
        _unit("g", "gram", _METRIC, "oz", "gram|grams"),
        _unit("t", "tonne", _METRIC, "lb", "tonne|tonnes"),
        _unit("lb", "pound", _CUSTOMARY, "kg", "lbs|pound|pounds"),
        _unit("oz", "ounce", _CUSTOMARY, "g", "ounce|ounces"),
        _unit("short ton", "short_ton", _CUSTOMARY, "kg", "short tons"),
        _unit("long ton", "long_ton", _CUSTOMARY, "kg", "long tons"),
    ),
    "length": (
        _unit("mm", "millimeter", _METRIC, "in", "millimetre|millimetres"),
        _unit("cm", "centimeter", _METRIC, "in", "centimetre|centimetres"),
        _unit("m", "meter", _METRIC, "ft", "metre|metres|meter|meters"),
        _unit("km", "kilometer", _METRIC, "ft", "kilometre|kilometres"),
        _unit("in", "inch", _CUSTOMARY, "mm", "inch|inches"),
        _unit("ft", "foot", _CUSTOMARY, "m", "foot|feet"),
    ),
    "volume": (
        _unit("L", "liter", _METRIC, "US gal", "l|litre|litres|liter|liters"),
        _unit("mL", "milliliter", _METRIC, "in3", "ml|cm3"),
        _unit("m3", "meter**3", _METRIC, "ft3"),
        _unit("US gal", "gallon", _CUSTOMARY, "L", "US gals|US gallon|US gallons|U.S. gal|USgal"),
        _unit(
            "imp gal",
            "imperial_gallon",
            _CUSTOMARY,
            "L",
            "imp gals|imp gallon|imp gallons|imp. gal|imperial gal|imperial gallon|imperial gallons|UK gal",
        ),
        _unit("US qt", "quart", _CUSTOMARY, "L", "US quart|US quarts"),
        _unit("imp qt", "imperial_quart", _CUSTOMARY, "L", "imp quart|imp quarts|imperial quart|imperial quarts"),
        _unit("ft3", "foot**3", _CUSTOMARY, "L", "cu ft"),
        _unit("in3", "inch**3", _CUSTOMARY, "mL", "cu in"),
    ),
    "force": (
        _unit("N", "newton", _METRIC, "lbf", "newton|newtons"),
        _unit("daN", "decanewton", _METRIC, "lbf"),
        _unit("kN", "kilonewton", _METRIC, "lbf"),
        _unit("kgf", "kilogram_force", _METRIC, "lbf"),
        _unit("lbf", "pound_force", _CUSTOMARY, "daN"),
    ),
    "pressure": (
        _unit("bar", "bar", _METRIC, "psi"),
        _unit("mbar", "millibar", _METRIC, "psi"),
        _unit("Pa", "pascal", _METRIC, "psi"),
        _unit("hPa", "hectopascal", _METRIC, "psi"),
        _unit("kPa", "kilopascal", _METRIC, "psi"),
        _unit("MPa", "megapascal", _METRIC, "psi"),
        _unit("atm", "atmosphere", _METRIC, "psi"),
        _unit("psi", "pound_force_per_square_inch", _CUSTOMARY, "bar"),
    ),
    "angle": (_unit("deg", "degree", "none", also="degree|degrees|°"), _unit("rad", "radian", "none")),
    "time": (
        _unit("s", "second", "none", also="sec|second|seconds"),
        _unit("min", "minute", "none", also="minute|minutes"),
        _unit("h", "hour", "none", also="hour|hours"),
    ),
    "voltage": (_unit("V", "volt", "none", also="volt|volts"), _unit("kV", "kilovolt", "none")),
    "energy": (
        _unit("kWh", "kilowatt_hour", "none"),
        _unit("Wh", "watt_hour", "none"),
        _unit("J", "joule", "none"),
        _unit("kJ", "kilojoule", "none"),
        _unit("MJ", "megajoule", "none"),
    ),
    "speed": (
        _unit("m/s", "meter/second", _METRIC, "kt"),
        _unit("km/h", "kilometer/hour", _METRIC, "kt"),
        _unit("kt", "knot", _CUSTOMARY, "km/h", "knot|knots"),
        _unit("mph", "mile/hour", _CUSTOMARY, "km/h"),
    ),
    "flow": (
        _unit("L/min", "liter/minute", _METRIC, "US gal/min", "l/min"),
        _unit("L/s", "liter/second", _METRIC, "US gal/min", "l/s"),
        _unit("m3/s", "meter**3/second", _METRIC, "ft3/min"),
        _unit("m3/h", "meter**3/hour", _METRIC, "US gal/min"),
        _unit("US gal/min", "gallon/minute", _CUSTOMARY, "L/min"),
        _unit("imp gal/min", "imperial_gallon/minute", _CUSTOMARY, "L/min"),
        _unit("ft3/min", "foot**3/minute", _CUSTOMARY, "L/min", "cu ft/min"),
    ),
    "area": (
        _unit("m2", "meter**2", _METRIC, "ft2"),
        _unit("cm2", "centimeter**2", _METRIC, "in2"),
        _unit("mm2", "millimeter**2", _METRIC, "in2"),
        _unit("ft2", "foot**2", _CUSTOMARY, "m2", "sq ft"),
        _unit("in2", "inch**2", _CUSTOMARY, "cm2", "sq in"),
    ),
    "temperature": (
        _unit("degC", "degree_Celsius", _METRIC, "degF", "°C|deg C"),
        _unit("degF", "degree_Fahrenheit", _CUSTOMARY, "degC", "°F|deg F"),
        _unit("K", "kelvin", _METRIC, "degF"),
    ),
    "density": (
        _unit("kg/L", "kilogram/liter", _METRIC, "lb/US gal", "kg/l"),
        _unit("kg/m3", "kilogram/meter**3", _METRIC, "lb/ft3"),
        _unit("g/cm3", "gram/centimeter**3", _METRIC, "lb/US gal", "g/mL|g/ml"),
        _unit("lb/US gal", "pound/gallon", _CUSTOMARY, "kg/L"),
        _unit("lb/imp gal", "pound/imperial_gallon", _CUSTOMARY, "kg/L"),
        _unit("lb/ft3", "pound/foot**3", _CUSTOMARY, "kg/m3"),
    ),
    "power": (
        _unit("kW", "kilowatt", _METRIC, "hp"),
        _unit("W", "watt", _METRIC),
        _unit("MW", "megawatt", _METRIC),
        _unit("hp", "horsepower", _CUSTOMARY, "kW"),
        _unit("PS", "metric_horsepower", _METRIC, "hp"),
    ),
    "charge": (
        _unit("Ah", "ampere*hour", "none"),
        _unit("mAh", "milliampere*hour", "none"),
        Unit("C", "coulomb", "none", written=False),
    ),
}

UNITS: Mapping[str, Unit] = {unit.name: unit for units in _UNITS.values() for unit in units}
_FAMILY: Mapping[str, Kind] = {unit.name: kind for kind, units in _UNITS.items() for unit in units}


class Spelling(NamedTuple):
    """What a written unit means; ``reference`` is not empty only where it says gauge or absolute."""

    unit: str
    reference: Reference


_REFERENCES: Mapping[Reference, tuple[str, ...]] = {
    "gauge": ("g", " g", "(g)", " (g)", " gauge"),
    "absolute": ("a", " a", "(a)", " (a)", " abs", " absolute"),
}


@cache
def spellings() -> Mapping[str, Spelling]:
    """Every accepted spelling; ``psig``, ``bar abs`` and their like included."""
    plain = {text: Spelling(u.name, "") for u in UNITS.values() if u.written for text in (u.name, *u.spellings)}
    with_reference = {
        unit.name + ending: Spelling(unit.name, reference)
        for unit in _UNITS["pressure"]
        for reference, endings in _REFERENCES.items()
        for ending in endings
    }
    return plain | with_reference


def family(kind: Kind) -> Kind:
    """The kind under which a kind's units are listed: both kinds of pressure share theirs."""
    return "pressure" if kind == "gauge pressure" else kind


def family_of(unit: str) -> Kind:
    """The family of a unit by its canonical name. KeyError for a unit that is not listed."""
    return _FAMILY[unit]


def written_units(kind: Kind) -> tuple[str, ...]:
    """Canonical names of the units that an author may write for a kind."""
    return tuple(unit.name for unit in _UNITS[family(kind)] if unit.written)


class Link(NamedTuple):
    """``y = factor * x + offset``, exact; the offset is zero but between temperatures."""

    factor: Fraction
    offset: Fraction

    def apply(self, value: Fraction) -> Fraction:
        return self.factor * value + self.offset

    def reversed(self) -> Link:
        return Link(1 / self.factor, -self.offset / self.factor)


@cache
def registry() -> UnitRegistry[Fraction]:
    """The one pint registry, in fractions."""
    from pint import UnitRegistry  # here, not above: nothing else needs its quarter of a second

    return UnitRegistry(non_int_type=Fraction)


@cache
def to_si(unit: str) -> Link:
    """From a unit to the SI unit of its kind. KeyError for a unit that is not listed."""
    pint, si = UNITS[unit].pint, UNITS[KINDS[_FAMILY[unit]].si_unit].pint
    zero, one = (Fraction(registry().Quantity(Fraction(x), pint).to(si).magnitude) for x in (0, 1))
    return Link(one - zero, zero)


@cache
def link(start: str, end: str) -> Link:
    """From one unit to another. ValueError when their kinds differ, KeyError for a unit that is not listed."""
    if _FAMILY[start] != _FAMILY[end]:
        raise ValueError(f"{start} is {KINDS[_FAMILY[start]].noun}, {end} is {KINDS[_FAMILY[end]].noun}")
    here, there = to_si(start), to_si(end)
    return Link(here.factor / there.factor, (here.offset - there.offset) / there.factor)
