"""What a cut could meet: every stretch of the fuselage with fuel, pressure, pyrotechnics, voltage or tension behind it.

An unknown position counts over the whole stretch in which the thing can be. Wings are not covered: zones are stretches
of the fuselage.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.places import Place, Route
from hardpoint.records.structure import Behind, BehindItem
from hardpoint.records.tanks import OILS, Fluid
from hardpoint.records.texts import Span

ANYWHERE = Span("anywhere", None, None)
ALL_SIDES = frozenset({"left", "right", "centre"})
_NOT_IN_THE_FUSELAGE = {"wing", "upper wing", "lower wing", "tailplane", "gear", "float", "propeller", "rotor", "boom"}
_BEHIND_THAT_HURTS = {
    "fuel line",
    "oil line",
    "pressure line",
    "high-voltage cable",
    "pyrotechnic cable",
    "tank",
    "bottle",
    "pyrotechnic",
    "loaded cable",
}


@dataclass(frozen=True)
class CutHazard:
    """One thing that a blade must not meet; ``certain`` is False where the stretch is only where it can be."""

    path: Path
    kind: Behind
    what: str
    fs: Span
    wl: Span
    sides: frozenset[str]
    certain: bool

    def meets(self, fs: Span, wl: Span, side: str) -> bool:
        """True where it can lie behind ``side`` of a zone. What runs along the centre counts for every side."""
        near = side in ("top", "floor") or side in self.sides or "centre" in self.sides
        return near and self.fs.overlaps(fs) and self.wl.overlaps(wl)


def cut_hazards(airframe: Airframe) -> tuple[CutHazard, ...]:
    """Every hazard to cutting that the record states anywhere, in the order of the record."""
    return (
        *_tanks(airframe),
        *_bottles(airframe),
        *_pyrotechnics(airframe),
        *_high_voltage(airframe),
        *_loaded(airframe),
        *_behind(airframe),
    )


def _tanks(airframe: Airframe) -> Iterator[CutHazard]:
    for name, tank in entries(airframe.tanks).items():
        path: Path = ("tanks", name)
        words = f"tank {name}"
        yield from _placed(path, "tank", words, tank.place)
        start, kind = said(tank.place), _line_kind(tank.holds)
        for line, route in entries(tank.lines).items():
            yield from _routed((*path, "lines", line), kind, f"line {line} of {words}", route, start, airframe)
        if isinstance(tank.lines, NonValue):
            yield CutHazard((*path, "lines"), kind, f"lines of {words}", ANYWHERE, ANYWHERE, ALL_SIDES, certain=False)


def _line_kind(holds: Fluid | NonValue) -> Behind:
    return "oil line" if holds in OILS else "fuel line"


def _bottles(airframe: Airframe) -> Iterator[CutHazard]:
    for name, bottle in entries(airframe.bottles).items():
        yield from _placed(("bottles", name), "bottle", f"bottle {name}", bottle.place)
        start = said(bottle.place)
        for line, route in entries(bottle.lines).items():
            yield from _routed(
                ("bottles", name, "lines", line),
                "pressure line",
                f"line {line} of bottle {name}",
                route,
                start,
                airframe,
            )


def _pyrotechnics(airframe: Airframe) -> Iterator[CutHazard]:
    for name, device in entries(airframe.pyrotechnics).items():
        yield from _placed(("pyrotechnics", name), "pyrotechnic", f"{device.kind} {name}", device.place)
        cable = said(device.cable)
        words = f"cable of {device.kind} {name}"
        if cable is None:
            yield CutHazard(
                ("pyrotechnics", name, "cable"),
                "pyrotechnic cable",
                words,
                ANYWHERE,
                ANYWHERE,
                ALL_SIDES,
                certain=False,
            )
        else:
            yield from _routed(
                ("pyrotechnics", name, "cable"), "pyrotechnic cable", words, cable, said(device.place), airframe
            )


def _high_voltage(airframe: Airframe) -> Iterator[CutHazard]:
    system = said(airframe.high_voltage)
    if system is None:
        return
    for name, pack in entries(system.packs).items():
        yield from _placed(("high_voltage", "packs", name), "battery", f"high-voltage pack {name}", pack.place)
    for name, cable in entries(system.cables).items():
        yield from _routed(
            ("high_voltage", "cables", name), "high-voltage cable", f"high-voltage cable {name}", cable, None, airframe
        )
    if isinstance(system.cables, NonValue):
        yield CutHazard(
            ("high_voltage", "cables"),
            "high-voltage cable",
            "high-voltage cables",
            ANYWHERE,
            ANYWHERE,
            ALL_SIDES,
            certain=False,
        )


def _loaded(airframe: Airframe) -> Iterator[CutHazard]:
    for name, part in entries(airframe.loaded_parts).items():
        route = said(part.route)
        if route is not None:
            start = (
                said(part.place) if isinstance(route.path, NonValue) else None
            )  # its place is the run, not an end of it
            yield from _routed(("loaded_parts", name), "loaded cable", f"{part.kind} {name}", route, start, airframe)
        else:
            yield from _placed(("loaded_parts", name), "loaded cable", f"{part.kind} {name}", part.place)


def _behind(airframe: Airframe) -> Iterator[CutHazard]:
    for name, zone in entries(airframe.zones).items():
        for side in ("left", "right", "top", "floor"):
            listed = getattr(zone, side)
            for item, thing in entries(listed.behind or {}).items() if listed else ():
                if thing.kind in _BEHIND_THAT_HURTS:
                    yield _listed(("zones", name, side, "behind", item), thing, side)


def _listed(path: Path, thing: BehindItem, side: str) -> CutHazard:
    sides = frozenset({side}) if side in ALL_SIDES else ALL_SIDES
    fs = said(thing.fs)
    return CutHazard(
        path, thing.kind, thing.what or thing.kind, fs or ANYWHERE, said(thing.wl) or ANYWHERE, sides, fs is not None
    )


def _placed(path: Path, kind: Behind, what: str, place: Place | NonValue) -> Iterator[CutHazard]:
    if isinstance(place, NonValue):
        yield CutHazard(path, kind, what, ANYWHERE, ANYWHERE, ALL_SIDES, certain=False)
    elif place.on not in _NOT_IN_THE_FUSELAGE:
        fs = said(place.fs)
        yield CutHazard(
            path, kind, what, fs or ANYWHERE, said(place.wl) or ANYWHERE, _sides(place.side), fs is not None
        )


def _sides(side: str | NonValue | None) -> frozenset[str]:
    return ALL_SIDES if side is None or isinstance(side, NonValue) or side == "both" else frozenset({side})


def _routed(
    path: Path, kind: Behind, what: str, route: Route, start: Place | None, airframe: Airframe
) -> Iterator[CutHazard]:
    """One hazard per stretch between two points of the route: each stretch has its own sides and heights."""
    spots = said(route.path)
    if not spots or any(isinstance(spot.fs, NonValue) for spot in spots):
        yield CutHazard(path, kind, what, _possible(route, start, airframe), ANYWHERE, ALL_SIDES, certain=False)
        return
    ends = [_End(said(spot.fs) or ANYWHERE, said(spot.wl) or ANYWHERE, _sides(spot.side)) for spot in spots]
    tank = said(start.fs) if start else None
    if start and tank is not None:
        ends.insert(0, _End(tank, said(start.wl) or ANYWHERE, _sides(start.side)))
    for one, other in zip(ends, ends[1:] or ends, strict=False):
        crossing = {"left", "right"} <= one.sides | other.sides
        sides = ALL_SIDES if crossing else one.sides | other.sides
        yield CutHazard(
            path, kind, what, covering([one.fs, other.fs]), covering([one.wl, other.wl]), sides, certain=True
        )


@dataclass(frozen=True)
class _End:
    """An end of a stretch of a route."""

    fs: Span
    wl: Span
    sides: frozenset[str]


def _possible(route: Route, start: Place | None, airframe: Airframe) -> Span:
    """The author's own stretch; else from where it starts to the engine if it ends there; else anywhere."""
    stretch = said(route.stretch)
    if stretch is not None:
        return stretch
    engine = said(airframe.engine)
    place = said(engine.place) if engine else None
    ends = (said(start.fs) if start else None, said(place.fs) if place else None)
    if route.ends_at == "engine" and ends[0] is not None and ends[1] is not None:
        return covering([ends[0], ends[1]])
    return ANYWHERE


def covering(spans: list[Span]) -> Span:
    """The smallest stretch that holds them all; open where one of them is open."""
    lows = [span.low for span in spans]
    highs = [span.high for span in spans]
    low = None if None in lows else min(value for value in lows if value is not None)
    high = None if None in highs else max(value for value in highs if value is not None)
    return Span(f"{low} to {high}", low, high)
