"""Mass of the fluids on board: the record's own density first, otherwise what is published for the grade."""

from __future__ import annotations

from collections.abc import Mapping

from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.worked import Input, MissingError, Range, quantity, spoken
from hardpoint.findings import Path
from hardpoint.records.known import NonValue
from hardpoint.records.tanks import Fluid, Tank
from hardpoint.units import convert
from hardpoint.words import later

PUBLISHED: Mapping[Fluid, tuple[str, str, Range]] = {
    "avgas": ("faa-h-8083-30", later("6 lb/US gal"), (convert(later("6 lb/US gal"), "kg/m3"),) * 2),
    "mogas": ("nureg-1805", later("740 kg/m3 (gasoline)"), (740.0, 740.0)),
    "jet fuel": ("mil-hdbk-1022a", later("0.775 to 0.840 kg/L (Jet A-1 at 15 degC)"), (775.0, 840.0)),
    "engine oil": ("faa-h-8083-30", later("7.5 lb/US gal"), (convert(later("7.5 lb/US gal"), "kg/m3"),) * 2),
    "water ballast": ("faa-h-8083-30", later("8.35 lb/US gal"), (convert(later("8.35 lb/US gal"), "kg/m3"),) * 2),
}
"""Key of ``citations``, the source's own words, kg/m3. What is not here has to stand in the record."""

WATER: Mapping[str, tuple[str, str, Range]] = {
    "fresh": PUBLISHED["water ballast"],
    "salt": (COMMON_PRACTICE, later("1.025 kg/L"), (1025.0, 1025.0)),
}
"""Of the water beside the field, by what the station says of it."""


def density(tank: Tank, path: Path) -> tuple[Input, tuple[str, ...]]:
    """The density of what a tank holds, with the keys of its sources. MissingError: neither stated nor published."""
    if tank.density is not None:
        return quantity(
            tank.density, (*path, "density"), later("the density of {tank} is unknown", tank=spoken(str(path[-1])))
        ), ()
    published = None if isinstance(tank.holds, NonValue) else PUBLISHED.get(tank.holds)
    if published is None:
        raise MissingError(later("the density of {tank} is unknown", tank=spoken(str(path[-1]))), (*path, "density"))
    source, words, value = published
    return Input((*path, "density"), words, value, "kg/m3"), (source,)
