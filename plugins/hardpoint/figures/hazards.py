"""What a cut could meet: every stretch of the fuselage with fuel, pressure, pyrotechnics, voltage or tension behind it.

An unknown position counts over the whole stretch in which the thing can be. Wings are not covered: zones are stretches
of the fuselage.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.places import Place, Route
from hardpoint.records.structure import Behind, BehindItem, Zone, ZoneSide
from hardpoint.records.tanks import ENGINE_FUELS, OILS, Fluid
from hardpoint.records.texts import Span
from hardpoint.words import Later, later, mark

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


_SIDES = {"left": mark("left"), "right": mark("right"), "top": mark("top"), "floor": mark("floor")}


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
    hurts: bool = True
    """False for what a blade meets without harm to people: a tube, a bulkhead, a push-rod."""

    def meets(self, fs: Span, wl: Span, side: str) -> bool:
        """True where it can lie behind ``side`` of a zone. What runs along the centre counts for every side."""
        near = side in ("top", "floor") or side in self.sides or "centre" in self.sides
        return near and self.fs.overlaps(fs) and self.wl.overlaps(wl)


def cut_hazards(airframe: Airframe) -> tuple[CutHazard, ...]:
    """Every hazard to cutting that the record states anywhere or leaves open, in the order of the record."""
    return (
        *_tanks(airframe),
        *_bottles(airframe),
        *_pyrotechnics(airframe),
        *_high_voltage(airframe),
        *_loaded(airframe),
        *(item for item in listed_behind(airframe) if item.hurts),
    )


def named(kind: str, name: str) -> Later:
    """``flying wire left``: what it is, and its author's name for it."""
    return later("{kind} {name}", kind=later(str(kind)), name=name)


def _line(name: str, what: Later) -> Later:
    return later("line {name} of {what}", name=name, what=what)


def _tanks(airframe: Airframe) -> Iterator[CutHazard]:
    yield from left_open(("tanks",), "tank", later("tank"), airframe.tanks)
    for name, tank in entries(airframe.tanks).items():
        path: Path = ("tanks", name)
        words = later("tank {name}", name=name)
        yield from placed(path, "tank", words, tank.place)
        start, kind = said(tank.place), _line_kind(tank.holds)
        yield from left_open((*path, "lines"), kind, later("line of {what}", what=words), tank.lines)
        for line, route in entries(tank.lines).items():
            yield from routed(
                (*path, "lines", line),
                kind,
                later("line {name} of {what}", name=line, what=words),
                route,
                start,
                airframe,
            )


def _line_kind(holds: Fluid | NonValue) -> Behind:
    """What runs in the lines of a tank; of unknown contents they count as fuel."""
    if holds in OILS:
        return "oil line"
    return "fuel line" if holds in ENGINE_FUELS or isinstance(holds, NonValue) else "equipment"


def _bottles(airframe: Airframe) -> Iterator[CutHazard]:
    yield from left_open(("bottles",), "bottle", later("bottle"), airframe.bottles)
    for name, bottle in entries(airframe.bottles).items():
        path: Path = ("bottles", name)
        words = later("bottle {name}", name=name)
        yield from placed(path, "bottle", words, bottle.place)
        start = said(bottle.place)
        yield from left_open((*path, "lines"), "pressure line", later("line of {what}", what=words), bottle.lines)
        for line, route in entries(bottle.lines).items():
            yield from routed(
                (*path, "lines", line),
                "pressure line",
                later("line {name} of {what}", name=line, what=words),
                route,
                start,
                airframe,
            )


def _pyrotechnics(airframe: Airframe) -> Iterator[CutHazard]:
    yield from left_open(("pyrotechnics",), "pyrotechnic", later("pyrotechnic"), airframe.pyrotechnics)
    for name, device in entries(airframe.pyrotechnics).items():
        path: Path = ("pyrotechnics", name)
        yield from placed(path, "pyrotechnic", named(device.kind, name), device.place)
        cable, words = said(device.cable), later("cable of {what}", what=named(device.kind, name))
        if cable is None:
            yield _anywhere((*path, "cable"), "pyrotechnic cable", words)
        else:
            # A cable that was lost on its way to the device was followed from the handle, not from the device.
            start = said(device.place) if cable.then_unknown is None else None
            yield from routed((*path, "cable"), "pyrotechnic cable", words, cable, start, airframe)


def _high_voltage(airframe: Airframe) -> Iterator[CutHazard]:
    if airframe.high_voltage is NonValue.UNKNOWN:
        yield _anywhere(("high_voltage",), "high-voltage cable", later("high voltage (unknown)"))
    system = said(airframe.high_voltage)
    if system is None:
        return
    packs, cables = ("high_voltage", "packs"), ("high_voltage", "cables")
    yield from left_open(packs, "battery", later("high-voltage pack"), system.packs)
    for name, pack in entries(system.packs).items():
        yield from placed((*packs, name), "battery", named("high-voltage pack", name), pack.place)
    yield from left_open(cables, "high-voltage cable", later("high-voltage cable"), system.cables)
    for name, cable in entries(system.cables).items():
        words = named("high-voltage cable", name)
        yield from routed((*cables, name), "high-voltage cable", words, cable, None, airframe)
    parts = NonValue.UNKNOWN if system.parts is None else system.parts  # silence is unknown here
    yield from left_open(("high_voltage", "parts"), "high-voltage cable", later("high-voltage part"), parts)
    for name, part in entries(parts).items():
        yield from placed(("high_voltage", "parts", name), "high-voltage cable", part.what, part.place)


def _loaded(airframe: Airframe) -> Iterator[CutHazard]:
    yield from left_open(("loaded_parts",), "loaded cable", later("loaded part"), airframe.loaded_parts)
    for name, part in entries(airframe.loaded_parts).items():
        path: Path = ("loaded_parts", name)
        words, route = named(part.kind, name), said(part.route)
        if route is None:
            yield from placed(path, "loaded cable", words, part.place)
            continue
        # Where its path is known its place is the run, not an end of it.
        start = said(part.place) if isinstance(route.path, NonValue) else None
        yield from routed(path, "loaded cable", words, route, start, airframe)


def left_open(path: Path, kind: Behind, what: str, entries: Mapping[str, object] | NonValue) -> Iterator[CutHazard]:
    """What nobody knows counts everywhere: a whole section, or an entry of it, that is unknown."""
    if entries is NonValue.UNKNOWN:
        yield _anywhere(path, kind, later("a {what} (unknown)", what=what))
    elif not isinstance(entries, NonValue):
        unknown = [name for name, value in entries.items() if value is NonValue.UNKNOWN]
        yield from (
            _anywhere((*path, name), kind, later("{what} {name} (unknown)", what=what, name=name)) for name in unknown
        )


def _anywhere(path: Path, kind: Behind, what: str) -> CutHazard:
    return CutHazard(path, kind, what, ANYWHERE, ANYWHERE, ALL_SIDES, certain=False)


def listed_behind(airframe: Airframe) -> Iterator[CutHazard]:
    """Everything that the record lists behind the skins of its zones, what does not hurt too."""
    for name, zone in entries(airframe.zones).items():
        for side in ("left", "right", "top", "floor"):
            listed: ZoneSide | NonValue | None = getattr(zone, side)
            if listed is not None and not isinstance(listed, NonValue):
                yield from _behind_side(("zones", name, side, "behind"), zone, side, listed)


def _behind_side(path: Path, zone: Zone, side: str, listed: ZoneSide) -> Iterator[CutHazard]:
    here = frozenset({side})
    if listed.behind is NonValue.UNKNOWN:
        words = later("something unknown behind the {side} side", side=later(_SIDES[side]))
        yield CutHazard(path, "equipment", words, zone.fs, zone.wl or ANYWHERE, here, certain=False)
    elif listed.behind is not None and not isinstance(listed.behind, NonValue):
        for item, thing in listed.behind.items():
            if isinstance(thing, NonValue):
                words = later("{name} (unknown)", name=item)
                yield CutHazard((*path, item), "equipment", words, zone.fs, zone.wl or ANYWHERE, here, certain=False)
            else:
                yield _listed((*path, item), thing, zone, side)


def _listed(path: Path, thing: BehindItem, zone: Zone, side: str) -> CutHazard:
    """A thing behind a zone's skin; where its stretch is unknown it can be over the whole zone."""
    sides = frozenset({side}) if side in ALL_SIDES else ALL_SIDES
    fs, wl = said(thing.fs), said(thing.wl) or zone.wl or ANYWHERE
    hurts = thing.kind in _BEHIND_THAT_HURTS
    return CutHazard(path, thing.kind, thing.what or later(thing.kind), fs or zone.fs, wl, sides, fs is not None, hurts)


def placed(path: Path, kind: Behind, what: str, place: Place | NonValue) -> Iterator[CutHazard]:
    """What lies at a place: anywhere where that is unknown, behind no zone where it is on a wing."""
    if isinstance(place, NonValue):
        yield _anywhere(path, kind, what)
    elif place.on not in _NOT_IN_THE_FUSELAGE:
        fs = said(place.fs)
        yield CutHazard(
            path, kind, what, fs or ANYWHERE, said(place.wl) or ANYWHERE, _sides(place.side), fs is not None
        )


def _sides(side: str | NonValue | None) -> frozenset[str]:
    return ALL_SIDES if side is None or isinstance(side, NonValue) or side == "both" else frozenset({side})


def routed(
    path: Path, kind: Behind, what: str, route: Route, start: Place | None, airframe: Airframe
) -> Iterator[CutHazard]:
    """One hazard per stretch between two points of the route, each with its own sides and heights; then, on all sides
    and at any height, what is unknown beyond them."""
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
    if route.then_unknown is not None:  # from the last point that is known, so that no gap is left between the two
        yield CutHazard(
            path, kind, what, covering([ends[-1].fs, route.then_unknown]), ANYWHERE, ALL_SIDES, certain=False
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
