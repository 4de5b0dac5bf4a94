"""The left side of an airframe in true scale, computed from its record alone, with its load points numbered.

Pure and deterministic: the same record gives the same SVG text. The nose is drawn to the left; NOSE, TAIL and LEFT SIDE
are written, so that the drawing needs no legend.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from html import escape
from typing import Literal

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import entries, said
from hardpoint.records.load_points import LIFTING
from hardpoint.records.outline import Body, Profile, Section, Surface, Wheel
from hardpoint.records.terms import term
from hardpoint.records.texts import Span
from hardpoint.words import say

WIDTH = 340.0
"""View box units, so that at 360 px one unit is about one pixel and 12 is legible text."""
_MARGIN = 14.0
_LABELS = 44.0
_FOOT = 40.0
_APART = 26.0
_FINS = ("fin", "ventral fin", "winglet")
_LINES = ("strut", "wire")
_THIN = 3.0
"""View box units below which the two edges of a strut would run into one."""


@dataclass(frozen=True)
class Mark:
    """A numbered mark: its place in the drawing, in view box units."""

    number: int
    id: str
    words: str
    x: float
    y: float
    label_x: float
    lifts: bool


@dataclass(frozen=True)
class Scale:
    """From stations and waterlines to view box units."""

    first: float
    top: float
    units_per: float

    def x(self, fs: float) -> float:
        """Across the sheet, aft to the right."""
        return _MARGIN + (fs - self.first) * self.units_per

    def y(self, wl: float) -> float:
        """Down the sheet, the canopy towards the top of it."""
        return _LABELS + (self.top - wl) * self.units_per


def side_view(airframe: Airframe, href: Callable[[str], str]) -> tuple[str, tuple[Mark, ...]] | None:
    """SVG text and its marks; None where the record has no outline. ``href`` gives a load point's row."""
    profile = said(airframe.profile)
    if profile is None or len(profile.sections) < 2:
        return None
    scale, height = _scale(profile)
    marks = tuple(_spread(_marks(airframe, profile, scale)))
    parts = [
        *_outline(profile, scale),
        *_ends(profile, scale, height),
        *_scale_bar(scale, airframe.datum.unit, height),
        *(line for mark in marks for line in _drawn(mark, href)),
    ]
    head = (
        f'<svg class="side-view" role="group" aria-label="{escape(say("Left side, load points numbered"))}" '
        f'viewBox="0 0 {WIDTH:g} {height:.1f}" width="{WIDTH:g}" height="{height:.1f}" xmlns="http://www.w3.org/2000/svg">'
    )
    return "\n".join([head, *parts, "</svg>"]), marks


def _scale(profile: Profile) -> tuple[Scale, float]:
    stations = [float(section.fs) for section in profile.sections]
    lows, highs = [float(s.floor) for s in profile.sections], [float(s.top) for s in profile.sections]
    for surface in profile.surfaces.values():
        for stretch in (surface.root, surface.tip):
            stations += [float(end) for end in (stretch.low, stretch.high) if end is not None]
        lows += [float(surface.wl.low)] if surface.wl.low is not None else []
        highs += [float(surface.wl.high)] if surface.wl.high is not None else []
    for body in profile.bodies.values():
        stations += _ends_of(body.fs)
        lows, highs = [*lows, _ends_of(body.wl)[0]], [*highs, _ends_of(body.wl)[1]]
    for wheel in profile.gear.values():
        lows.append(float(wheel.wl) - float(wheel.diameter) / 2)
        stations += [float(wheel.fs) - float(wheel.diameter) / 2, float(wheel.fs) + float(wheel.diameter) / 2]
    if profile.canopy_top is not None:
        highs.append(float(profile.canopy_top))
    units_per = (WIDTH - 2 * _MARGIN) / (max(stations) - min(stations))
    height = _LABELS + (max(highs) - min(lows)) * units_per + _FOOT
    return Scale(min(stations), max(highs), units_per), height


def _outline(profile: Profile, scale: Scale) -> Iterator[str]:
    """Fin and what stands on the centre line first, then the fuselage, then what lies on its left side, outwards:
    struts, tailplane and wings, gear, floats."""
    surfaces = list(profile.surfaces.values())
    flats = [surface for surface in surfaces if surface.kind not in (*_FINS, *_LINES)]
    yield from (_ring_of(surface, scale) for surface in surfaces if surface.kind in _FINS)
    yield from (_body(body, scale) for body in profile.bodies.values() if body.bl == 0)
    for wheel in profile.gear.values():
        yield from _wheel(wheel, profile, scale)
    yield f'<polygon class="fuselage" points="{_points(_ring(profile.sections), scale)}"/>'
    yield from _canopy(profile, scale)
    yield from (_line(surface, scale) for surface in surfaces if surface.kind in _LINES)
    yield from (_aerofoil(surface, scale) for surface in flats)
    yield from (_body(body, scale) for body in profile.bodies.values() if body.bl != 0)


def _canopy(profile: Profile, scale: Scale) -> Iterator[str]:
    canopy = said(profile.canopy)
    if canopy is None or canopy.low is None or canopy.high is None or profile.canopy_top is None:
        return
    low, high, top = float(canopy.low), float(canopy.high), float(profile.canopy_top)
    start, end = edge_at(profile.sections, low, "top"), edge_at(profile.sections, high, "top")
    x0, y0, x1, y1 = scale.x(low), scale.y(start), scale.x(high), scale.y(end)
    crown, reach = scale.y(top + (top - max(start, end)) / 3), (x1 - x0) / 3
    bend = f"C{x0 + reach:.1f},{crown:.1f} {x1 - reach:.1f},{crown:.1f} {x1:.1f},{y1:.1f}"
    yield f'<path class="canopy" d="M{x0:.1f},{y0:.1f}{bend}"/>'


def _wheel(wheel: Wheel, profile: Profile, scale: Scale) -> Iterator[str]:
    radius = float(wheel.diameter) / 2 * scale.units_per
    x, y = scale.x(float(wheel.fs)), scale.y(float(wheel.wl))
    hull = scale.y(edge_at(profile.sections, float(wheel.fs), "floor"))
    if y - radius > hull:
        yield f'<path class="leg" d="M{x:.1f},{hull:.1f}V{y:.1f}"/>'
    yield f'<circle class="gear" cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}"/>'


def _ends_of(span: Span) -> tuple[float, float]:
    low = span.low if span.low is not None else span.high
    high = span.high if span.high is not None else span.low
    return float(low or 0), float(high or 0)


def _line(surface: Surface, scale: Scale) -> str:
    """A strut by its width, one that is thin on the sheet and a wire as a stroke; each from its root at the lowest
    waterline to its tip at the highest."""
    width = max(end - start for start, end in map(_ends_of, (surface.root, surface.tip))) * scale.units_per
    if surface.kind == "strut" and width >= _THIN:
        return _ring_of(surface, scale)
    (root, tip), (low, high) = (sum(_ends_of(end)) / 2 for end in (surface.root, surface.tip)), _ends_of(surface.wl)
    way = f"M{scale.x(root):.1f},{scale.y(low):.1f}L{scale.x(tip):.1f},{scale.y(high):.1f}"
    return f'<path class="{surface.kind}" d="{way}"/>'


def _body(body: Body, scale: Scale) -> str:
    """A pod, boom or float: blunt in front, drawn out behind; a step of the hull as a stroke."""
    (start, end), (low, high) = _ends_of(body.fs), _ends_of(body.wl)
    x0, x1, upper, lower = scale.x(start), scale.x(end), scale.y(high), scale.y(low)
    if body.kind == "hull step":
        return f'<path class="body" d="M{x0:.1f},{upper:.1f}L{x1:.1f},{lower:.1f}"/>'
    middle, round_, widest, drawn = (upper + lower) / 2, *(x0 + (x1 - x0) * share for share in (0.1, 0.35, 0.75))
    nose = f"C{x0:.1f},{upper:.1f} {round_:.1f},{upper:.1f} {widest:.1f},{upper:.1f}"
    tail = f"C{drawn:.1f},{upper:.1f} {x1:.1f},{(upper + middle) / 2:.1f} {x1:.1f},{middle:.1f}"
    back = f"C{x1:.1f},{(lower + middle) / 2:.1f} {drawn:.1f},{lower:.1f} {widest:.1f},{lower:.1f}"
    under = f"C{round_:.1f},{lower:.1f} {x0:.1f},{lower:.1f} {x0:.1f},{middle:.1f}Z"
    return f'<path class="body" d="M{x0:.1f},{middle:.1f}{nose}{tail}{back}{under}"/>'


def _ring_of(surface: Surface, scale: Scale) -> str:
    """A fin or a strut by its four corners."""
    (root_low, root_high), (tip_low, tip_high) = _ends_of(surface.root), _ends_of(surface.tip)
    low, high = _ends_of(surface.wl)
    ring = [(root_low, low), (root_high, low), (tip_high, high), (tip_low, high)]
    kind = "strut" if surface.kind == "strut" else "fin"
    return f'<polygon class="{kind}" points="{_points(ring, scale)}"/>'


def _aerofoil(surface: Surface, scale: Scale) -> str:
    """The root's section, round in front and sharp behind, a tenth as thick as it is long."""
    nose, tail = _ends_of(surface.root)
    level = sum(_ends_of(surface.wl)) / 2 if surface.wl.low == surface.wl.high else _ends_of(surface.wl)[0]
    x0, x1, y = scale.x(nose), scale.x(tail), scale.y(level)
    half, chord = (x1 - x0) * 0.06, x1 - x0
    over = f"C{x0:.1f},{y - half * 1.6:.1f} {x0 + chord * 0.4:.1f},{y - half * 1.4:.1f} {x1:.1f},{y:.1f}"
    under = f"C{x0 + chord * 0.4:.1f},{y + half:.1f} {x0:.1f},{y + half:.1f} {x0:.1f},{y:.1f}Z"
    return f'<path class="{surface.kind}" d="M{x0:.1f},{y:.1f}{over}{under}"/>'


def _ring(sections: tuple[Section, ...]) -> list[tuple[float, float]]:
    along = [(float(section.fs), float(section.top)) for section in sections]
    return along + [(float(section.fs), float(section.floor)) for section in reversed(sections)]


def _points(ring: list[tuple[float, float]], scale: Scale) -> str:
    return " ".join(f"{scale.x(fs):.1f},{scale.y(wl):.1f}" for fs, wl in ring)


def edge_at(sections: tuple[Section, ...], fs: float, edge: Literal["top", "floor"]) -> float:
    """Waterline of the top or the floor of the fuselage at a station, straight between the sections on either side."""
    previous = sections[0]
    for section in sections:
        if float(section.fs) >= fs:
            span = float(section.fs) - float(previous.fs)
            share = 0.0 if span <= 0 else (fs - float(previous.fs)) / span
            return float(getattr(previous, edge)) + share * (
                float(getattr(section, edge)) - float(getattr(previous, edge))
            )
        previous = section
    return float(getattr(previous, edge))


def _marks(airframe: Airframe, profile: Profile, scale: Scale) -> Iterator[Mark]:
    for number, (name, point) in enumerate(entries(airframe.load_points).items(), start=1):
        place = said(point.place)
        fs = said(place.fs) if place else None
        if fs is None or fs.middle is None:
            continue
        wl = said(place.wl) if place else None
        middle = (
            edge_at(profile.sections, float(fs.middle), "top") + edge_at(profile.sections, float(fs.middle), "floor")
        ) / 2
        height = float(wl.middle) if wl and wl.middle is not None else middle
        x = scale.x(float(fs.middle))
        yield Mark(
            number,
            name,
            f"{number}: {name.replace('-', ' ')}, {term(point.use)}",
            x,
            scale.y(height),
            x,
            point.use in LIFTING,
        )


def _spread(marks: Iterator[Mark]) -> Iterator[Mark]:
    """Labels in one row over the airframe, in order of station, none nearer to the next than its own width."""
    ordered = sorted(marks, key=lambda mark: (mark.x, mark.number))
    places: list[float] = []
    for mark in ordered:
        places.append(max(mark.x, places[-1] + _APART if places else _MARGIN))
    over = places[-1] - (WIDTH - _MARGIN) if places else 0.0
    for index in range(len(places) - 1, -1, -1):
        limit = WIDTH - _MARGIN if index == len(places) - 1 else places[index + 1] - _APART
        places[index] = min(places[index], limit) if over > 0 else places[index]
    for mark, place in zip(ordered, places, strict=True):
        yield Mark(mark.number, mark.id, mark.words, mark.x, mark.y, place, mark.lifts)


def _drawn(mark: Mark, href: Callable[[str], str]) -> Iterator[str]:
    kind = "mark" if mark.lifts else "mark mark--other"
    yield f'<a href="{escape(href(mark.id))}" class="{kind}"><title>{escape(mark.words)}</title>'
    yield f'<polyline class="leader" points="{mark.label_x:.1f},28 {mark.x:.1f},{mark.y:.1f}"/>'
    yield f'<circle class="point" cx="{mark.x:.1f}" cy="{mark.y:.1f}" r="3.5"/>'
    yield f'<circle class="number" cx="{mark.label_x:.1f}" cy="17" r="12"/>'
    yield f'<text x="{mark.label_x:.1f}" y="21.5" text-anchor="middle">{mark.number}</text></a>'


def _ends(profile: Profile, scale: Scale, height: float) -> Iterator[str]:
    base = height - 24
    yield f'<text class="end" x="{_MARGIN}" y="{base:.1f}">{escape(say("NOSE"))}</text>'
    side = escape(say("LEFT SIDE"))
    yield f'<text class="end" x="{WIDTH / 2:g}" y="{base:.1f}" text-anchor="middle">{side}</text>'
    yield f'<text class="end" x="{WIDTH - _MARGIN:g}" y="{base:.1f}" text-anchor="end">{escape(say("TAIL"))}</text>'


def _scale_bar(scale: Scale, unit: str, height: float) -> Iterator[str]:
    metre = 1000.0 if unit == "mm" else 39.3700787
    length = metre * scale.units_per
    foot = metre * 0.3048 * scale.units_per
    base = height - 8
    yield f'<path class="measure" d="M{_MARGIN:g},{base - 4:.1f}v4h{length:.1f}v-4"/>'
    yield f'<text class="unit" x="{_MARGIN + length + 5:.1f}" y="{base + 1:.1f}">1 m</text>'
    start = WIDTH / 2
    yield f'<path class="measure" d="M{start:g},{base - 4:.1f}v4h{foot:.1f}v-4"/>'
    yield f'<text class="unit" x="{start + foot + 5:.1f}" y="{base + 1:.1f}">1 ft</text>'
