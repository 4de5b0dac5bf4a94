"""The shapes of an airframe out of its outline alone, in millimetres: from the side (FS, WL) and in plan (FS, BL).

BL grows towards pilot's right here, so that left and right are two sides of one axis. Every shape is a shapely
geometry: drawings write them as SVG, silhouettes are their union, rules ask them what lies within.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from shapely import LineString, Point, Polygon, unary_union
from shapely.geometry.base import BaseGeometry

from hardpoint.figures.sections import between_sections
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import said
from hardpoint.records.outline import Body, Profile, Section, Surface
from hardpoint.records.texts import Span

Kind = Literal["fin", "tailplane", "wing", "fuselage", "canopy", "gear", "leg", "body", "strut", "wire", "rotor"]
Flat = tuple[float, float]

FINS = ("fin", "ventral fin", "winglet")
LINES = ("strut", "wire")
_LENGTH = {"mm": 1.0, "in": 25.4}
_ARC = 16
"""Straight pieces of a quarter of a rounded end: enough at the width of a sheet."""


@dataclass(frozen=True)
class Shape:
    """One part of the outline as it is drawn: an area, or a line for what is thin."""

    kind: Kind
    area: BaseGeometry


@dataclass(frozen=True)
class Outline:
    """An airframe's outline, all in mm. ``profile`` keeps the unit of its record; ``mm`` is what one of it is in mm."""

    profile: Profile
    mm: float

    @cached_property
    def side(self) -> tuple[Shape, ...]:
        """From the side, what lies behind first: fins, gear, fuselage, canopy, struts, wings, what hangs beside it."""
        return tuple(_side(self.profile, self.mm))

    @cached_property
    def plan(self) -> tuple[Shape, ...]:
        """From the canopy side, what lies towards the floor first."""
        return tuple(_plan(self.profile, self.mm))

    @cached_property
    def side_area(self) -> BaseGeometry:
        """The silhouette from the side."""
        return _union(self.side)

    @cached_property
    def plan_area(self) -> BaseGeometry:
        """The silhouette in plan."""
        return _union(self.plan)

    @cached_property
    def fuselage(self) -> Polygon:
        """The fuselage from the side, without canopy and gear."""
        return Polygon(_ring(self.profile.sections, self.mm))

    @cached_property
    def width(self) -> Polygon:
        """The fuselage in plan."""
        halves = [(float(s.fs) * self.mm, float(s.half_width) * self.mm) for s in self.profile.sections]
        return Polygon([(fs, half) for fs, half in halves] + [(fs, -half) for fs, half in reversed(halves)])

    def edge(self, fs: float, edge: Literal["top", "floor"]) -> float:
        """Waterline of the top or the floor of the fuselage at a station, straight between the sections beside it."""
        return self._between(fs, edge)

    def half_width(self, fs: float) -> float:
        """Half the width of the fuselage at a station."""
        return self._between(fs, "half_width")

    def middle(self, fs: float) -> float:
        """The waterline half-way between floor and top."""
        return (self.edge(fs, "top") + self.edge(fs, "floor")) / 2

    def _between(self, fs: float, key: str) -> float:
        known = [(float(s.fs) * self.mm, float(getattr(s, key)) * self.mm) for s in self.profile.sections]
        return between_sections(known, fs)


def outline_of(airframe: Airframe) -> Outline | None:
    """The outline of a record; None where it has none, or fewer than two sections."""
    profile = said(airframe.profile)
    if profile is None or len(profile.sections) < 2:
        return None
    return Outline(profile, _LENGTH[airframe.datum.unit])


def ends(span: Span, mm: float = 1.0) -> Flat:
    """Both ends of a stretch in mm; an open end counts as the other one."""
    low = span.low if span.low is not None else span.high
    high = span.high if span.high is not None else span.low
    return float(low or 0) * mm, float(high or 0) * mm


def _union(shapes: Sequence[Shape]) -> BaseGeometry:
    """One area of all shapes; what is only a line in the drawing gets the width of a tube."""
    return unary_union([_thick(shape) for shape in shapes])


def _thick(shape: Shape) -> BaseGeometry:
    if shape.kind == "wire":
        return Polygon()
    return shape.area if shape.area.area > 0 else shape.area.buffer(20)


def _ring(sections: Sequence[Section], mm: float) -> list[Flat]:
    along = [(float(section.fs) * mm, float(section.top) * mm) for section in sections]
    return along + [(float(section.fs) * mm, float(section.floor) * mm) for section in reversed(sections)]


# --- From the side --------------------------------------------------------------------------------------------------


def _side(profile: Profile, mm: float) -> Iterator[Shape]:
    surfaces = list(profile.surfaces.values())
    outline = Outline(profile, mm)
    yield from (Shape("fin", _trapezium(surface, mm)) for surface in surfaces if surface.kind in FINS)
    yield from (Shape("body", _pod(body, mm)) for body in profile.bodies.values() if body.bl == 0)
    yield from _gear(outline)
    yield Shape("fuselage", outline.fuselage)
    yield from _canopy(outline)
    yield from (_thin(surface, mm) for surface in surfaces if surface.kind in LINES)
    yield from (_aerofoil(surface, mm) for surface in surfaces if surface.kind not in (*FINS, *LINES))
    yield from (Shape("body", _pod(body, mm)) for body in profile.bodies.values() if body.bl != 0)
    for rotor in profile.rotors.values():
        fs, wl, radius = (float(value) * mm for value in (rotor.fs, rotor.wl, rotor.diameter / 2))
        yield Shape("rotor", LineString([(fs - radius, wl), (fs + radius, wl)]))


def _trapezium(surface: Surface, mm: float) -> Polygon:
    (root_low, root_high), (tip_low, tip_high) = ends(surface.root, mm), ends(surface.tip, mm)
    low, high = ends(surface.wl, mm)
    return Polygon([(root_low, low), (root_high, low), (tip_high, high), (tip_low, high)])


def _thin(surface: Surface, mm: float) -> Shape:
    """A strut by its width, a wire as a line; each from its root at the lowest to its tip at the highest waterline."""
    if surface.kind == "strut":
        return Shape("strut", _trapezium(surface, mm))
    (root, tip), (low, high) = (sum(ends(end, mm)) / 2 for end in (surface.root, surface.tip)), ends(surface.wl, mm)
    return Shape("wire", LineString([(root, low), (tip, high)]))


def _aerofoil(surface: Surface, mm: float) -> Shape:
    """The section at the root, round in front and sharp behind, a tenth as thick as it is long (the NACA 0010)."""
    nose, tail = ends(surface.root, mm)
    low, high = ends(surface.wl, mm)
    level = (low + high) / 2 if low == high else low
    chord = tail - nose
    shares = [(1 - math.cos(math.pi * step / _ARC)) / 2 for step in range(_ARC + 1)]
    upper = [(nose + chord * share, level + chord * _naca(share)) for share in shares]
    lower = [(nose + chord * share, level - chord * _naca(share)) for share in reversed(shares[1:-1])]
    return Shape("tailplane" if surface.kind == "tailplane" else "wing", Polygon([*upper, *lower]))


def _naca(share: float) -> float:
    """Half the thickness of the NACA 0010 over its chord (NACA report 460, symmetrical four-digit section)."""
    curve = 0.2969 * math.sqrt(share) - 0.1260 * share - 0.3516 * share**2 + 0.2843 * share**3 - 0.1036 * share**4
    return 5 * 0.10 * max(curve, 0.0)


def _gear(outline: Outline) -> Iterator[Shape]:
    for wheel in outline.profile.gear.values():
        fs, wl, radius = (float(value) * outline.mm for value in (wheel.fs, wheel.wl, wheel.diameter / 2))
        hull = outline.edge(fs, "floor")
        if wl + radius < hull:
            yield Shape("leg", LineString([(fs, hull), (fs, wl)]))
        yield Shape("gear", Point(fs, wl).buffer(radius, quad_segs=_ARC))


def _canopy(outline: Outline) -> Iterator[Shape]:
    """An arc over its stretch; the fuselage closes it from below."""
    canopy, top = said(outline.profile.canopy), outline.profile.canopy_top
    if canopy is None or canopy.low is None or canopy.high is None or top is None:
        return
    start, end = ends(canopy, outline.mm)
    crown = float(top) * outline.mm
    steps = [share / (2 * _ARC) for share in range(2 * _ARC + 1)]
    arc = [(start + (end - start) * share, _crown(outline, start, end, crown, share)) for share in steps]
    base = [(fs, outline.edge(fs, "top")) for fs, _ in reversed(arc)]
    yield Shape("canopy", Polygon([*arc, *base[1:-1]]))


def _crown(outline: Outline, start: float, end: float, crown: float, share: float) -> float:
    base = outline.edge(start + (end - start) * share, "top")
    return base + (crown - base) * math.pow(math.sin(math.pi * share), 0.7)


def _pod(body: Body, mm: float) -> BaseGeometry:
    """A pod, boom or float: blunt in front, drawn out behind; a step of the hull is a line."""
    (start, end), (low, high) = ends(body.fs, mm), ends(body.wl, mm)
    if body.kind == "hull step":
        return LineString([(start, high), (end, low)])
    return Polygon(_drop(start, end, (low + high) / 2, (high - low) / 2))


def _drop(start: float, end: float, middle: float, half: float) -> list[Flat]:
    shares = [(1 - math.cos(math.pi * step / _ARC)) / 2 for step in range(_ARC + 1)]
    upper = [(start + (end - start) * share, middle + half * _fullness(share)) for share in shares]
    return upper + [(fs, 2 * middle - level) for fs, level in reversed(upper[1:-1])]


def _fullness(share: float) -> float:
    """An ellipse over the first third, then straight for a while, then drawn in to a point."""
    if share < 1 / 3:
        return math.sqrt(1 - (1 - 3 * share) ** 2)
    return 1.0 if share < 0.7 else math.sqrt(max(1 - ((share - 0.7) / 0.3) ** 2, 0.0))


# --- In plan --------------------------------------------------------------------------------------------------------


def _plan(profile: Profile, mm: float) -> Iterator[Shape]:
    outline = Outline(profile, mm)
    for wheel in profile.gear.values():
        fs, radius = float(wheel.fs) * mm, float(wheel.diameter) / 2 * mm
        for bl in _both(float(wheel.bl) * mm):
            yield Shape("gear", Polygon(_box(fs - radius, fs + radius, bl - radius / 3, bl + radius / 3)))
    by_height = sorted(profile.surfaces.values(), key=lambda surface: ends(surface.wl)[0])
    flats = [surface for surface in by_height if surface.kind not in FINS]
    low = [surface for surface in flats if ends(surface.wl, mm)[0] < outline.middle(ends(surface.root, mm)[0])]
    yield from (shape for surface in low for shape in _spread(surface, mm))
    yield from _bodies(profile, mm, beside=True)
    yield Shape("fuselage", outline.width)
    yield from _glass(outline)
    yield from (shape for surface in flats if surface not in low for shape in _spread(surface, mm))
    yield from _bodies(profile, mm, beside=False)
    for surface in by_height:
        if surface.kind in FINS:
            yield from _edge_on(surface, mm)
    for rotor in profile.rotors.values():
        disc = Point(float(rotor.fs) * mm, 0).buffer(float(rotor.diameter) / 2 * mm, quad_segs=_ARC)
        yield Shape("rotor", disc.exterior)


def _both(bl: float) -> tuple[float, ...]:
    return (bl, -bl) if bl else (0.0,)


def _box(low: float, high: float, left: float, right: float) -> list[Flat]:
    return [(low, left), (high, left), (high, right), (low, right)]


def _spread(surface: Surface, mm: float) -> Iterator[Shape]:
    """A wing or tailplane on either side; a strut by its width, a wire as a line."""
    (root_low, root_high), (tip_low, tip_high) = ends(surface.root, mm), ends(surface.tip, mm)
    inner, outer = ends(surface.bl, mm)
    for hand in (1, -1):
        if surface.kind == "wire":
            points = [((root_low + root_high) / 2, hand * inner), ((tip_low + tip_high) / 2, hand * outer)]
            yield Shape("wire", LineString(points))
            continue
        kind: Kind = "strut" if surface.kind == "strut" else "tailplane" if surface.kind == "tailplane" else "wing"
        corners = [(root_low, inner), (root_high, inner), (tip_high, outer), (tip_low, outer)]
        yield Shape(kind, Polygon([(fs, hand * bl) for fs, bl in corners]))


def _edge_on(surface: Surface, mm: float) -> Iterator[Shape]:
    """A fin from above: its root, a twentieth as thick as it is long."""
    low, high = ends(surface.root, mm)
    for bl in _both(ends(surface.bl, mm)[0]):
        yield Shape("fin", Polygon([(fs, bl + side) for fs, side in _drop(low, high, 0.0, (high - low) / 40)]))


def _bodies(profile: Profile, mm: float, *, beside: bool) -> Iterator[Shape]:
    for body in profile.bodies.values():
        if body.kind == "hull step" or (body.bl != 0) is not beside:
            continue
        start, end = ends(body.fs, mm)
        for bl in _both(float(body.bl) * mm):
            yield Shape("body", Polygon(_drop(start, end, bl, float(body.half_width) * mm)))


def _glass(outline: Outline) -> Iterator[Shape]:
    """The canopy from above, three quarters as wide as the fuselage beneath it."""
    canopy = said(outline.profile.canopy)
    if canopy is None or canopy.low is None or canopy.high is None:
        return
    start, end = ends(canopy, outline.mm)
    stations = [start + (end - start) * step / _ARC for step in range(_ARC + 1)]
    halves = [(fs, outline.half_width(fs) * 0.75 * _fullness((fs - start) / (end - start))) for fs in stations]
    yield Shape("canopy", Polygon(halves + [(fs, -half) for fs, half in reversed(halves[1:-1])]))
