"""Rules about tanks, what is in them and the lines that leave them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.places import Place
from hardpoint.records.tanks import ENGINE_FUELS, OILS
from hardpoint.records.texts import Span
from hardpoint.records.walk import values_of
from hardpoint.rules.measure import in_units, unit_m
from hardpoint.rules.rule import AIRFRAME, Hit, Record
from hardpoint.units import Quantity


@AIRFRAME.rule(
    "oil-called-non-flammable",
    "error",
    "No oil is called non-flammable: every oil here burns, and its mist burns at once.",
)
def oil_called_non_flammable(record: Record) -> Iterator[Hit]:
    """Words of oil tanks that say it does not burn."""
    for name, tank in entries(record.airframe.tanks).items():
        if tank.holds not in OILS:
            continue
        for path, value in values_of(tank, ("tanks", name)):
            if isinstance(value, str) and re.search(
                r"(?i)\bnon[ -]?(?:in)?flammable|\bnot (?:in)?flammable|\bdoes not burn", value
            ):
                yield Hit(
                    path,
                    value,
                    "how this oil burns; every oil here does",
                    "its mist burns at once, a pool burns when hot",
                )


@AIRFRAME.rule("line-short-of-engine", "warning", "A line that ends at the engine reaches it.")
def line_short_of_engine(record: Record) -> Iterator[Hit]:
    """Fuel lines whose last point lies further than 300 mm from the engine's stretch."""
    engine = said(record.airframe.engine)
    place = said(engine.place) if engine else None
    fs = said(place.fs) if place else None
    if fs is None or fs.low is None or fs.high is None:
        return
    near = Decimal(300) if record.airframe.datum.unit == "mm" else Decimal(12)
    for name, tank in entries(record.airframe.tanks).items():
        for line, route in entries(tank.lines).items():
            spots = said(route.path)
            last = said(spots[-1].fs) if spots else None
            if route.ends_at != "engine" or last is None or last.middle is None or tank.holds not in ENGINE_FUELS:
                continue
            if not fs.low - near <= last.middle <= fs.high + near:
                yield Hit(
                    ("tanks", name, "lines", line, "path"),
                    f"last point FS {last.text}",
                    f"a path that reaches the engine at FS {fs.text}",
                    "",
                )


_DENSITY: dict[str, tuple[float, float]] = {
    "avgas": (680, 740),
    "mogas": (710, 790),
    "jet fuel": (740, 850),
    "diesel": (800, 880),
    "smoke oil": (780, 930),
    "engine oil": (820, 1000),
    "hydraulic oil": (820, 1070),
    "water ballast": (980, 1050),
    "coolant": (1000, 1150),
    "de-icing fluid": (1000, 1150),
}
"""kg/m3 at everyday temperatures, wider than ASTM D1655 table 1 (775 to 840 for jet A-1) and EN 228 table 1 (720 to
775) at 15 degC, both from memory; the others are common practice."""


def _of_density(value: float) -> str:
    """The fluid whose range is nearest about a density in kg/m3; "" where it is within none."""
    near = [(abs(value - (low + high) / 2), fluid) for fluid, (low, high) in _DENSITY.items() if low <= value <= high]
    return min(near)[1] if near else ""


@AIRFRAME.rule(
    "density-of-another-fluid", "warning", "The density of a tank's contents is one that this fluid can have."
)
def density_of_another_fluid(record: Record) -> Iterator[Hit]:
    """Densities outside the range of the fluid, with the fluids that they would fit."""
    for name, tank in entries(record.airframe.tanks).items():
        holds, density = said(tank.holds), said(tank.density)
        if holds is None or density is None:
            continue
        low, high = _DENSITY[holds]
        if density.si[1] < low or density.si[0] > high:
            other = _of_density(density.si[0])
            slip = f"; this is that of {other}" if other else ""
            wanted = f"a density of {holds}, {low:.0f} to {high:.0f} kg/m3{slip}"
            yield Hit(("tanks", name, "density"), density.text, wanted)


_FLASH_K: dict[str, tuple[float, float]] = {
    "avgas": (193, 263),
    "mogas": (193, 263),
    "jet fuel": (243, 363),
    "diesel": (313, 403),
    "smoke oil": (333, 573),
    "engine oil": (403, 593),
    "hydraulic oil": (353, 573),
}
"""K. Petrols far below 0 degC; jet fuel 38 degC and more (ASTM D1655 table 1, wide-cut fuels below 0), diesel above 55
(EN 590 table 1), all from memory and widened; oils are common practice."""


@AIRFRAME.rule(
    "flash-point-of-another-fluid", "warning", "The flash point of a tank's contents is one that this fluid can have."
)
def flash_point_of_another_fluid(record: Record) -> Iterator[Hit]:
    """Flash points outside the range of the fluid: one that is too high makes it look harmless."""
    for name, tank in entries(record.airframe.tanks).items():
        holds, flash = said(tank.holds), said(tank.flash_point)
        if holds is None or holds not in _FLASH_K or flash is None:
            continue
        low, high = _FLASH_K[holds]
        if flash.si[0] > high or flash.si[1] < low:
            wanted = f"a flash point of {holds}, {low - 273:.0f} to {high - 273:.0f} degC"
            yield Hit(("tanks", name, "flash_point"), flash.text, wanted)


@AIRFRAME.rule(
    "more-than-its-place-holds",
    "warning",
    "A tank or a bay in the fuselage is not larger than the stretch that it lies in: a digit too many shows here.",
)
def more_than_its_place_holds(record: Record) -> Iterator[Hit]:
    """Capacities and floods, by the smaller reading, against the box of length, width and height at their place."""
    width = said(record.airframe.size.fuselage_width)
    for path, stated, where in _held(record.airframe) if width else ():
        volume, place = said(stated), said(where)
        box = _box_m3(record.airframe, place, width.si[1]) if place and width else None
        if volume is not None and box is not None and volume.si[0] > box:
            wanted = f"at most what its stretch of the fuselage can hold, {box * 1000:.0f} L"
            yield Hit(path, volume.text, wanted)


def _held(airframe: Airframe) -> Iterator[tuple[Path, Quantity | NonValue, Place | NonValue]]:
    """What each tank and each bay holds, and where it is."""
    water = said(airframe.water)
    for name, tank in entries(airframe.tanks).items():
        yield ("tanks", name, "capacity"), tank.capacity, tank.place
    for name, bay in entries(water.floods if water else {}).items():
        yield ("water", "floods", name, "volume"), bay.volume, bay.place


def _box_m3(airframe: Airframe, place: Place, width_m: float) -> float | None:
    """Stretch times width times height; the height of a place that has none is that of the whole outline there."""
    fs, wl, profile = said(place.fs), said(place.wl), said(airframe.profile)
    if place.on != "fuselage" or fs is None or fs.low is None or fs.high is None or fs.low == fs.high:
        return None
    height = wl.high - wl.low if wl and wl.low is not None and wl.high is not None and wl.low != wl.high else None
    if height is None and profile:
        height = max(section.top for section in profile.sections) - min(section.floor for section in profile.sections)
    unit = unit_m(airframe)
    return None if height is None else float(fs.high - fs.low) * unit * width_m * float(height) * unit


@AIRFRAME.rule(
    "no-line-to-the-engine", "warning", "Some fuel line ends at the engine: one that is not recorded is cut unawares."
)
def no_line_to_the_engine(record: Record) -> Iterator[Hit]:
    """Records with fuel tanks and an engine, all lines answered, none of which ends at the engine."""
    tanks = record.airframe.tanks
    fuel = {name: tank for name, tank in entries(tanks).items() if tank.holds in ENGINE_FUELS}
    open_ = not isinstance(tanks, NonValue) and NonValue.UNKNOWN in tanks.values()
    if said(record.airframe.engine) is None or not fuel or open_:
        return
    lines = [tank.lines for tank in fuel.values()]
    if any(isinstance(here, NonValue) or NonValue.UNKNOWN in here.values() for here in lines):
        return
    if not any("engine" in (route.ends_at or "") for here in lines for route in entries(here).values()):
        wanted = "a line with ends_at: engine, if need be as unknown"
        yield Hit(("tanks", next(iter(fuel)), "lines"), "", wanted, "feed: {path: unknown, ends_at: engine}")


@AIRFRAME.rule("drain-elsewhere", "warning", "A drain of a flooded bay lies in the stretch of that bay.")
def drain_elsewhere(record: Record) -> Iterator[Hit]:
    """Drains further than 200 mm outside the bay that they empty; those of a tank may be at the low point of a line."""
    slack, water = in_units(record.airframe, 200), said(record.airframe.water)
    for name, bay in entries(water.floods if water else {}).items():
        for id_, drain in entries(bay.drains).items():
            there, where = _fs(bay.place), _fs(drain.place)
            if there is None or where is None or there.low is None or there.high is None or where.middle is None:
                continue
            if not there.low - slack <= where.middle <= there.high + slack:
                path: Path = ("water", "floods", name, "drains", id_, "place", "fs")
                yield Hit(path, where.text, f"a station of the bay that it drains, FS {there.text}")


def _fs(place: Place | NonValue) -> Span | None:
    known = said(place)
    return said(known.fs) if known else None
