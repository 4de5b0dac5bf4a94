"""What a map shows: every thing of the record that has a place, in the order of the tables, layer by layer.

A thing knows the path that leads to its row, its words, and where it is. What cannot be drawn because nobody recorded
its station is a thing too: it has no point, and the map says so beside the drawing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal

from hardpoint.drawings.geometry import Outline, ends
from hardpoint.drawings.spots import At, Stretch, points, spot, stretches
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.load_points import LIFTING, LoadPoint
from hardpoint.records.places import Place, Route
from hardpoint.records.terms import term
from hardpoint.records.texts import Span
from hardpoint.words import mark, say

Layer = Literal[
    "load points", "centre of gravity", "heavy items", "tanks", "electrics", "bottles", "devices", "ways in", "controls"
]
Map = Literal["holds", "harms", "hands"]
MAPS: Mapping[Map, tuple[Layer, ...]] = {
    "holds": ("load points", "centre of gravity", "heavy items"),
    "harms": ("tanks", "electrics", "bottles", "devices"),
    "hands": ("ways in", "controls"),
}
"""Which layers stand on which map; where it is cut has a map of its own."""
LAYER_WORDS: Mapping[Layer, str] = {
    "load points": mark("Load points"),
    "centre of gravity": mark("Centre of gravity"),
    "heavy items": mark("Heavy items"),
    "tanks": mark("Tanks and lines"),
    "electrics": mark("Batteries and cables"),
    "bottles": mark("Bottles"),
    "devices": mark("Rockets and cartridges"),
    "ways in": mark("Ways in"),
    "controls": mark("Controls"),
}


@dataclass(frozen=True)
class Thing:
    """One thing on a map.

    ``number`` is its number on this map, 0 before it got one. ``points`` are where it is touched, one for each of a
    pair; ``boxes`` what it fills; ``ways`` lines and cables from it; ``lost``: stretches of stations somewhere within
    which something of it runs, nobody knows where. ``other``: of another use than its layer's main one, drawn broken
    (a ring that does not lift).
    """

    layer: Layer
    path: Path
    words: str
    number: int = 0
    points: tuple[At, ...] = ()
    boxes: tuple[Stretch, ...] = ()
    ways: tuple[tuple[At, ...], ...] = ()
    lost: tuple[tuple[float, float], ...] = ()
    other: bool = False
    unknown: bool = False
    place: Place | NonValue | None = None
    """As the record has it, for the table."""

    @property
    def drawn(self) -> bool:
        """False where nothing of it can be put on a sheet."""
        return bool(self.points or self.boxes or self.ways or self.lost)


def things(airframe: Airframe, outline: Outline, map_: Map) -> tuple[Thing, ...]:
    """Everything of a map, numbered in the order of its table."""
    found = [thing for layer in MAPS[map_] for thing in _LAYERS[layer](airframe, outline)]
    return tuple(replace(thing, number=at) for at, thing in enumerate(found, start=1))


def _spoken(name: str) -> str:
    return name.replace("-", " ").replace("_", " ")


def _listed(mapping: Mapping[str, Any] | NonValue, layer: Layer, section: str) -> Iterator[tuple[str, Any, Thing]]:
    """Each entry with a thing to begin with; an entry that is unknown is drawn nowhere and says so."""
    if isinstance(mapping, NonValue):
        if mapping is NonValue.UNKNOWN:
            yield (
                "",
                None,
                Thing(layer, (section,), say("{layer}: UNKNOWN", layer=say(LAYER_WORDS[layer])), unknown=True),
            )
        return
    for name, entry in mapping.items():
        if entry is NonValue.UNKNOWN:
            yield name, None, Thing(layer, (section, name), say("{what}: UNKNOWN", what=_spoken(name)), unknown=True)
        elif not isinstance(entry, NonValue):
            yield name, entry, Thing(layer, (section, name), _spoken(name), place=entry.place)


def _load_points(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for name, point, thing in _listed(airframe.load_points, "load points", "load_points"):
        if isinstance(point, LoadPoint):
            words = say("{what}, {use}", what=_spoken(name), use=term(point.use))
            thing = replace(thing, words=words, other=point.use not in LIFTING, points=points(point.place, outline))
        yield thing


def _centre(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    cg = said(airframe.masses.empty_cg)
    fs = said(cg.fs) if cg else None
    path = ("masses", "empty_cg")
    if cg is None or fs is None:
        yield Thing("centre of gravity", path, say("centre of gravity, empty: UNKNOWN"), unknown=True)
        return
    wl = said(cg.wl) if cg.wl is not None else None
    along = sum(ends(fs, outline.mm)) / 2
    level = sum(ends(wl, outline.mm)) / 2 if wl else outline.middle(along)
    words = say("centre of gravity, empty") if wl else say("centre of gravity, empty; its height is UNKNOWN")
    yield Thing("centre of gravity", path, words, points=(At(along, 0.0, level, wl is None),), unknown=wl is None)


def _heavy(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for name, item, thing in _listed(airframe.masses.items, "heavy items", "masses"):
        path: Path = ("masses", "items", name) if name else ("masses", "items")
        if item is None:
            yield replace(thing, path=path)
            continue
        mass = say("mass UNKNOWN") if isinstance(item.mass, NonValue) else item.mass.text
        words = say("{what}, {mass}", what=item.what, mass=mass)
        yield replace(thing, path=path, words=words, points=points(item.place, outline))


def _tanks(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for name, tank, thing in _listed(airframe.tanks, "tanks", "tanks"):
        if tank is not None:
            holds = say("contents UNKNOWN") if isinstance(tank.holds, NonValue) else term(tank.holds)
            thing = replace(
                thing,
                words=say("{what}: {holds}", what=_spoken(name), holds=holds),
                boxes=stretches(tank.place, outline, tank.count),
            )
            thing = _with_routes(thing, tank.lines, outline)
        yield thing


def _bottles(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for name, bottle, thing in _listed(airframe.bottles, "bottles", "bottles"):
        if bottle is not None:
            holds = say("contents UNKNOWN") if isinstance(bottle.holds, NonValue) else term(bottle.holds)
            words = say("{what}: {holds}", what=_spoken(name), holds=holds)
            thing = replace(thing, words=words, points=points(bottle.place, outline))
            thing = _with_routes(thing, bottle.lines, outline)
        yield thing


def _electrics(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for name, battery, thing in _listed(airframe.batteries, "electrics", "batteries"):
        if battery is not None:
            thing = replace(
                thing, words=say("battery {name}", name=_spoken(name)), points=points(battery.place, outline)
            )
        yield thing
    system = airframe.high_voltage
    if isinstance(system, NonValue):
        if system is NonValue.UNKNOWN:
            yield Thing("electrics", ("high_voltage",), say("high voltage: UNKNOWN"), unknown=True)
        return
    for part in ("packs", "parts"):
        for name, entry in entries(getattr(system, part, None) or {}).items():
            words = say("high voltage: {what}", what=_spoken(name))
            boxes = stretches(entry.place, outline)
            yield Thing("electrics", ("high_voltage", part, name), words, boxes=boxes, place=entry.place)
    yield _with_routes(
        Thing("electrics", ("high_voltage", "cables"), say("high-voltage cable")), system.cables, outline
    )


def _devices(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for name, device, thing in _listed(airframe.pyrotechnics, "devices", "pyrotechnics"):
        if device is not None:
            words = say("{what}: {kind}", what=_spoken(name), kind=term(device.kind))
            at = points(device.place, outline)
            handle = points(device.handle_place, outline)
            thing = replace(thing, words=words, points=at or handle)
            thing = _with_routes(thing, {"cable": device.cable}, outline)
        yield thing


def _ways_in(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for name, exit_, thing in _listed(airframe.exits, "ways in", "exits"):
        if exit_ is not None:
            words = say("{what}, from {where}", what=_spoken(name), where=term(exit_.from_))
            thing = replace(thing, words=words, points=points(exit_.place, outline))
        yield thing


def _controls(airframe: Airframe, outline: Outline) -> Iterator[Thing]:
    for _, control, thing in _listed(airframe.controls, "controls", "controls"):
        if control is not None:
            thing = replace(thing, points=_at_its_seat(control.place, airframe, outline))
        yield thing


def _at_its_seat(place: Place | NonValue, airframe: Airframe, outline: Outline) -> tuple[At, ...]:
    """A control told by its panel alone is drawn broken at its seat, on the side that its panel names."""
    if isinstance(place, NonValue) or place.fs is not None:
        return points(place, outline)
    name = place.seat or (next(iter(airframe.seats)) if len(airframe.seats) == 1 else "")
    seat = airframe.seats.get(name)
    fs = said(seat.place.fs) if seat and not isinstance(seat.place, NonValue) else None
    if fs is None:
        return ()
    side = place.side or next((side for side in ("left", "right") if side in (place.panel or "").split()), "centre")
    return tuple(replace(at, open=True) for at in points(place.model_copy(update={"fs": fs, "side": side}), outline))


def _with_routes(thing: Thing, routes: Mapping[str, Route | NonValue] | NonValue, outline: Outline) -> Thing:
    """The thing with the ways of its lines and the stretches in which nobody knows where one runs."""
    ways, lost, unknown = list(thing.ways), list(thing.lost), thing.unknown
    if routes is NonValue.UNKNOWN:
        return replace(thing, unknown=True)
    for route in routes.values() if not isinstance(routes, NonValue) else ():
        if isinstance(route, NonValue):
            unknown = unknown or route is NonValue.UNKNOWN
            continue
        if isinstance(route.path, NonValue):
            unknown = True
        else:
            way = [spot(place, outline) for place in route.path]
            ways.append(tuple(at for at in way if at is not None))
        for span in (route.then_unknown, route.stretch):
            if isinstance(span, Span):
                lost.append(ends(span, outline.mm))
                unknown = True
    return replace(thing, ways=tuple(way for way in ways if len(way) > 1), lost=tuple(lost), unknown=unknown)


_LAYERS: Mapping[Layer, Callable[[Airframe, Outline], Iterator[Thing]]] = {
    "load points": _load_points,
    "centre of gravity": _centre,
    "heavy items": _heavy,
    "tanks": _tanks,
    "electrics": _electrics,
    "bottles": _bottles,
    "devices": _devices,
    "ways in": _ways_in,
    "controls": _controls,
}
