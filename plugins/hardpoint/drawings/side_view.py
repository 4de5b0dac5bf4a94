"""The left side of an airframe in true scale, computed from its record alone, with its load points numbered.

Pure and deterministic: the same record gives the same SVG text. The nose is drawn to the left; NOSE, TAIL and LEFT SIDE
are written, so that the drawing needs no legend.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from html import escape

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import entries, said
from hardpoint.records.outline import Profile, Section

WIDTH = 340.0
"""View box units, so that at 360 px one unit is about one pixel and 12 is legible text."""
_MARGIN = 14.0
_LABELS = 44.0
_FOOT = 40.0
_APART = 26.0


@dataclass(frozen=True)
class Mark:
    """A numbered mark: its place in the drawing, in view box units."""

    number: int
    id: str
    words: str
    x: float
    y: float
    label_x: float


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
        f'<svg class="side-view" role="group" aria-label="Left side, load points numbered" '
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
    for wheel in profile.gear.values():
        lows.append(float(wheel.wl) - float(wheel.diameter) / 2)
        stations += [float(wheel.fs) - float(wheel.diameter) / 2, float(wheel.fs) + float(wheel.diameter) / 2]
    if profile.canopy_top is not None:
        highs.append(float(profile.canopy_top))
    units_per = (WIDTH - 2 * _MARGIN) / (max(stations) - min(stations))
    height = _LABELS + (max(highs) - min(lows)) * units_per + _FOOT
    return Scale(min(stations), max(highs), units_per), height


def _outline(profile: Profile, scale: Scale) -> Iterator[str]:
    for surface in profile.surfaces.values():
        yield _surface(surface.kind, surface, scale)
    for wheel in profile.gear.values():
        radius = float(wheel.diameter) / 2 * scale.units_per
        x, y = scale.x(float(wheel.fs)), scale.y(float(wheel.wl))
        yield f'<circle class="gear" cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}"/>'
    yield f'<polygon class="fuselage" points="{_points(_ring(profile.sections), scale)}"/>'
    canopy = said(profile.canopy)
    if canopy is not None and canopy.low is not None and canopy.high is not None and profile.canopy_top is not None:
        low, high, top = float(canopy.low), float(canopy.high), float(profile.canopy_top)
        ring = [
            (low, top_at(profile.sections, low)),
            (low + (high - low) * 0.35, top),
            (low + (high - low) * 0.6, top),
            (high, top_at(profile.sections, high)),
        ]
        yield f'<polyline class="canopy" points="{_points(ring, scale)}"/>'


def _surface(kind: str, surface: object, scale: Scale) -> str:
    root, tip, wl = (getattr(surface, name) for name in ("root", "tip", "wl"))
    ends = [float(end) for end in (root.low, root.high, tip.high, tip.low) if end is not None]
    low = float(wl.low if wl.low is not None else wl.high)
    high = float(wl.high if wl.high is not None else wl.low)
    if kind in ("fin", "ventral fin") and len(ends) == 4:
        ring = [(ends[0], low), (ends[1], low), (ends[2], high), (ends[3], high)]
    else:
        thick = max((high - low), (max(ends) - min(ends)) * 0.06)
        ring = [
            (min(ends), low + thick / 2),
            (min(ends) + thick, low),
            (max(ends), low + thick / 3),
            (min(ends) + thick, low + thick),
        ]
    return f'<polygon class="{kind.replace(" ", "-")}" points="{_points(ring, scale)}"/>'


def _ring(sections: tuple[Section, ...]) -> list[tuple[float, float]]:
    along = [(float(section.fs), float(section.top)) for section in sections]
    return along + [(float(section.fs), float(section.floor)) for section in reversed(sections)]


def _points(ring: list[tuple[float, float]], scale: Scale) -> str:
    return " ".join(f"{scale.x(fs):.1f},{scale.y(wl):.1f}" for fs, wl in ring)


def top_at(sections: tuple[Section, ...], fs: float) -> float:
    """Waterline of the top of the fuselage at a station, straight between the sections on either side."""
    return _between(sections, fs, "top")


def _between(sections: tuple[Section, ...], fs: float, edge: str) -> float:
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
            _between(profile.sections, float(fs.middle), "top") + _between(profile.sections, float(fs.middle), "floor")
        ) / 2
        height = float(wl.middle) if wl and wl.middle is not None else middle
        x = scale.x(float(fs.middle))
        yield Mark(number, name, f"{number}: {name.replace('-', ' ')}, {point.use}", x, scale.y(height), x)


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
        yield Mark(mark.number, mark.id, mark.words, mark.x, mark.y, place)


def _drawn(mark: Mark, href: Callable[[str], str]) -> Iterator[str]:
    yield f'<a href="{escape(href(mark.id))}" class="mark"><title>{escape(mark.words)}</title>'
    yield f'<polyline class="leader" points="{mark.label_x:.1f},28 {mark.x:.1f},{mark.y:.1f}"/>'
    yield f'<circle class="point" cx="{mark.x:.1f}" cy="{mark.y:.1f}" r="3.5"/>'
    yield f'<circle class="number" cx="{mark.label_x:.1f}" cy="17" r="12"/>'
    yield f'<text x="{mark.label_x:.1f}" y="21.5" text-anchor="middle">{mark.number}</text></a>'


def _ends(profile: Profile, scale: Scale, height: float) -> Iterator[str]:
    base = height - 24
    yield f'<text class="end" x="{_MARGIN}" y="{base:.1f}">NOSE</text>'
    yield f'<text class="end" x="{WIDTH / 2:g}" y="{base:.1f}" text-anchor="middle">LEFT SIDE</text>'
    yield f'<text class="end" x="{WIDTH - _MARGIN:g}" y="{base:.1f}" text-anchor="end">TAIL</text>'


def _scale_bar(scale: Scale, unit: str, height: float) -> Iterator[str]:
    metre = 1000.0 if unit == "mm" else 39.3700787
    length = metre * scale.units_per
    foot = metre * 0.3048 * scale.units_per
    base = height - 8
    yield f'<path class="bar" d="M{_MARGIN:g},{base - 4:.1f}v4h{length:.1f}v-4"/>'
    yield f'<text class="unit" x="{_MARGIN + length + 5:.1f}" y="{base + 1:.1f}">1 m</text>'
    start = WIDTH / 2
    yield f'<path class="bar" d="M{start:g},{base - 4:.1f}v4h{foot:.1f}v-4"/>'
    yield f'<text class="unit" x="{start + foot + 5:.1f}" y="{base + 1:.1f}">1 ft</text>'
