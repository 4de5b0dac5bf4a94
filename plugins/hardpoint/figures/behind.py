"""Everything that a blade can meet behind a skin, for cutting windows: more than what hurts.

Beside the hazards to cutting: what a record lists behind its zones of any kind, batteries with their cables, and the
way on which a rocket, a seat or a canopy leaves.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from decimal import Decimal

from hardpoint.figures.exits import run_inside
from hardpoint.figures.hazards import (
    ALL_SIDES,
    ANYWHERE,
    CutHazard,
    cut_hazards,
    left_open,
    listed_behind,
    named,
    placed,
    routed,
)
from hardpoint.figures.reports import counts_as_live
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.pyrotechnics import DeviceKind, ExitDirection, Pyrotechnic
from hardpoint.records.texts import Span
from hardpoint.words import later

FLYING: tuple[DeviceKind, ...] = ("rocket parachute", "seat cartridge", "canopy cartridge", "flare")
"""Devices that throw something out of the airframe."""
_METRES = {"mm": 0.001, "in": 0.0254}


def behind_skin(airframe: Airframe) -> tuple[CutHazard, ...]:
    """Every stretch of anything that lies, runs, flies or can do so behind a skin; unknown: over all it can be."""
    harmless = (item for item in listed_behind(airframe) if not item.hurts)
    return (*cut_hazards(airframe), *harmless, *_batteries(airframe), *_ways_out(airframe))


def _batteries(airframe: Airframe) -> Iterator[CutHazard]:
    yield from left_open(("batteries",), "battery", later("battery"), airframe.batteries)
    for name, battery in entries(airframe.batteries).items():
        path: Path = ("batteries", name)
        words = named("battery", name)
        yield from placed(path, "battery", words, battery.place)
        cable = later("cable of {what}", what=words)
        if battery.cable is NonValue.UNKNOWN:
            yield CutHazard((*path, "cable"), "electric cable", cable, ANYWHERE, ANYWHERE, ALL_SIDES, certain=False)
        elif battery.cable is not None and not isinstance(battery.cable, NonValue):
            yield from routed((*path, "cable"), "electric cable", cable, battery.cable, said(battery.place), airframe)


def _ways_out(airframe: Airframe) -> Iterator[CutHazard]:
    """The stretch that a device flies through until it has left the fuselage, on all sides and at any height."""
    for name, device in entries(airframe.pyrotechnics).items():
        if device.kind in FLYING and counts_as_live(device, None):
            path: Path = ("pyrotechnics", name, "exit_direction")
            words = later("way out of {what}", what=named(device.kind, name))
            fs, certain = _way_out(device, airframe)
            yield CutHazard(path, "pyrotechnic", words, fs, ANYWHERE, ALL_SIDES, certain)


def _way_out(device: Pyrotechnic, airframe: Airframe) -> tuple[Span, bool]:
    exit_, place = said(device.exit_direction), said(device.place)
    fs = said(place.fs) if place else None
    if exit_ is None or fs is None:
        return ANYWHERE, False
    run = _run(exit_, airframe)
    if exit_.towards == "aft":
        return Span(fs.text, fs.low, _far(fs.high, run)), run is not None
    if exit_.towards == "forward":
        return Span(fs.text, _far(fs.low, None if run is None else -run), fs.high), run is not None
    return fs, True


def _run(exit_: ExitDirection, airframe: Airframe) -> Decimal | None:
    """How far it flies along the fuselage in the unit of the datum, rounded up; None where that has no known end."""
    height, raised = _height_m(airframe), said(exit_.raised)
    if height is None or raised is None:
        return None
    flattest = math.degrees(min(raised.si, key=abs))
    run = run_inside(height, flattest) if abs(flattest) <= 90 else math.inf
    return None if math.isinf(run) else Decimal(math.ceil(run / _METRES[airframe.datum.unit]))


def _height_m(airframe: Airframe) -> float | None:
    """From the lowest floor to the highest top of the outline."""
    profile = said(airframe.profile)
    if profile is None:
        return None
    tops = [section.top for section in profile.sections] + [profile.canopy_top or profile.sections[0].top]
    height = max(tops) - min(section.floor for section in profile.sections)
    return float(max(height, Decimal(0))) * _METRES[airframe.datum.unit]


def _far(end: Decimal | None, run: Decimal | None) -> Decimal | None:
    return None if end is None or run is None else end + run
