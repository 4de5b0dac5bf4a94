"""The map of where it may be cut: one side of the fuselage, zone by zone, with the verdict written and windows framed.

A zone's skin is told by its hatch and, in words, by the table beside the map. Along each zone runs the bar of its
verdict: full where nobody cuts, hatched where it is to be avoided, broken and empty where nobody knows; none where the
record gives leave. A window is a frame in the skin, only where it was worked out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Literal, cast

from shapely import box
from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from hardpoint.drawings.geometry import Flat, Outline, outline_of
from hardpoint.drawings.glyphs import strokes
from hardpoint.drawings.labels import RADIUS, Label, lane_height, place, place_words
from hardpoint.drawings.maps import RULER, Href, ruler, svg_of, written_ends
from hardpoint.drawings.sheet import MARGIN, WIDTH, Sheet, drawn, number, path, sheet_of
from hardpoint.drawings.things import things
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, said
from hardpoint.records.materials import Material
from hardpoint.records.structure import Zone, ZoneSide
from hardpoint.words import mark, say

Side = Literal["left", "right"]
Frame = tuple[float, float, float | None, float | None]
"""First and last station of a window, its lower and upper waterline, in mm; None where the zone itself bounds it."""
Windows = Mapping[tuple[str, str], Sequence[Frame]]
"""By zone and side."""
_FAR = 1e6
_HEAD = 6.0
"""Units above the airframe."""
_PER_LETTER = 8.2
"""Units that a capital of the drawings' text takes at most, with its share of the space beside it."""
_VERDICTS = {
    "preferred": mark("PREFERRED"),
    "possible": mark("POSSIBLE"),
    "avoid": mark("AVOID"),
    "never": mark("NEVER"),
    "unknown": mark("UNKNOWN"),
}
_HATCHES: Mapping[Material, str] = {
    "aluminium": "metal",
    "steel sheet": "metal",
    "titanium": "metal",
    "magnesium": "metal",
    "steel tube": "tube",
    "glass fibre": "cloth",
    "carbon fibre": "cloth",
    "aramid fibre": "cloth",
    "plywood": "wood",
    "solid wood": "wood",
    "fabric": "fabric",
}


@dataclass(frozen=True)
class ZoneShown:
    """One zone on one side: its area in mm, what was said of it, and its windows."""

    number: int
    path: Path
    name: str
    area: BaseGeometry
    verdict: str
    hatch: str
    windows: tuple[Frame, ...] = ()


@dataclass(frozen=True)
class CutDrawn:
    """One side as SVG text, with the sheet it was drawn on, its zones and where each label stands."""

    side: Side
    svg: str
    sheet: Sheet
    zones: tuple[ZoneShown, ...]
    labels: tuple[tuple[Flat, str], ...]


def cut_views(airframe: Airframe, href: Href, windows: Windows) -> tuple[CutDrawn, ...]:
    """Both sides; () where the record has no outline or no zones."""
    outline = outline_of(airframe)
    if outline is None or isinstance(airframe.zones, NonValue):
        return ()
    sides: tuple[Side, Side] = ("left", "right")
    return tuple(_side(airframe, outline, side, href, windows) for side in sides)


def zones_shown(airframe: Airframe, outline: Outline, side: Side, windows: Windows) -> tuple[ZoneShown, ...]:
    """The zones of one side in the order of the record, each cut out of the fuselage."""
    zones = {} if isinstance(airframe.zones, NonValue) else airframe.zones
    body = outline.side_area.intersection(_without_surfaces(outline))
    found = []
    for at, (name, zone) in enumerate(zones.items(), start=1):
        area = _area(zone, outline, body)
        listed: ZoneSide = getattr(zone, side)
        verdict = "unknown" if isinstance(listed.cut, NonValue) else listed.cut
        framed = tuple(windows.get((name, side), ()))
        found.append(ZoneShown(at, ("zones", name), name.replace("-", " "), area, verdict, _hatch(zone), framed))
    return tuple(found)


def _without_surfaces(outline: Outline) -> BaseGeometry:
    """The fuselage with its canopy: what zones are stretches of."""
    parts = [shape.area for shape in outline.side if shape.kind in ("fuselage", "canopy")]
    first, *others = parts
    for other in others:
        first = first.union(other)
    return first


def _area(zone: Zone, outline: Outline, body: BaseGeometry) -> BaseGeometry:
    mm = outline.mm
    low, high = (_end(end, mm, far) for end, far in ((zone.fs.low, -_FAR), (zone.fs.high, _FAR)))
    lower = _end(zone.wl.low if zone.wl else None, mm, -_FAR)
    upper = _end(zone.wl.high if zone.wl else None, mm, _FAR)
    return body.intersection(box(low, lower, high, upper))


def _end(value: object, mm: float, far: float) -> float:
    return far if value is None else float(str(value)) * mm


def _hatch(zone: Zone) -> str:
    skin = said(zone.skin)
    material = said(skin.material) if skin else None
    return "unknown" if material is None else _HATCHES.get(cast(Material, material), "other")


def _side(airframe: Airframe, outline: Outline, side: Side, href: Href, windows: Windows) -> CutDrawn:
    zones = zones_shown(airframe, outline, side, windows)
    rough = sheet_of(outline, side, _HEAD, 0)
    texts = _texts(zones, [_foot_of(zone, rough) for zone in zones])
    lane = 38.0 if any(" " in text for text in texts) else lane_height(len(zones), WIDTH - 2 * MARGIN)
    sheet = sheet_of(outline, side, _HEAD, lane + RULER)
    marks = [_foot_of(zone, sheet) for zone in zones]
    labels = _labels(texts, marks, sheet.height - sheet.foot + 6)
    placed = list(zip(zones, texts, labels, marks, strict=True))
    parts = [
        f'<g class="outline">{"".join(drawn(outline.side, sheet))}</g>',
        *(_zone(zone, sheet, href) for zone in zones),
        _behind(airframe, outline, sheet),
        *(_window(zone, sheet) for zone in zones),
        *(_label(zone, text, label, to, href) for zone, text, label, to in placed),
        *ruler(sheet, airframe.datum.unit),
        *written_ends(sheet),
    ]
    told = tuple((label.at, text) for _, text, label, _ in placed)
    return CutDrawn(side, svg_of(sheet, parts), sheet, zones, told)


def _texts(zones: Sequence[ZoneShown], marks: Sequence[Flat]) -> list[str]:
    """Number and verdict of each zone. Where they do not fit, verdicts that a bar tells go first: the table has all."""
    for silent in ((), ("avoid",), ("avoid", "never")):
        texts = [
            f"{zone.number}" if zone.verdict in silent else f"{zone.number} {say(_VERDICTS[zone.verdict])}"
            for zone in zones
        ]
        if place_words(marks, _widths(texts), 0, 1, MARGIN / 2, WIDTH - MARGIN / 2) is not None:
            return texts
    return [f"{zone.number}" for zone in zones]


def _widths(texts: Sequence[str]) -> list[float]:
    return [max(len(text) * _PER_LETTER, 2 * RADIUS) for text in texts]


def _labels(texts: Sequence[str], marks: Sequence[Flat], edge: float) -> list[Label]:
    if any(" " in text for text in texts):
        written = place_words(marks, _widths(texts), edge, 1, MARGIN / 2, WIDTH - MARGIN / 2)
        if written is not None:
            return written
    return place(marks, edge, 1, MARGIN, WIDTH - MARGIN)


def _foot_of(zone: ZoneShown, sheet: Sheet) -> Flat:
    """The middle of a zone's lower edge: where its leader begins."""
    if zone.area.is_empty:
        return sheet.at((sheet.first + sheet.last) / 2, 0)
    low, lower, high, _ = zone.area.bounds
    return sheet.at((low + high) / 2, lower)


def _zone(zone: ZoneShown, sheet: Sheet, href: Href) -> str:
    """The zone with its hatch, a link to its row, and the bar of its verdict along its lower edge."""
    if zone.area.is_empty:
        return ""
    words = escape(f"{zone.number} {zone.name}: {say(_VERDICTS[zone.verdict])}")
    skin = f'<path class="zone zone--{zone.hatch}" d="{path(zone.area, sheet)}"/>'
    return f'<a href="{escape(href(zone.path))}" class="zoned"><title>{words}</title>{skin}{_bar(zone, sheet)}</a>'


def _bar(zone: ZoneShown, sheet: Sheet) -> str:
    if zone.verdict in ("preferred", "possible"):
        return ""
    strip = zone.area.difference(translate(zone.area, yoff=5 / sheet.units_per_mm))
    return f'<path class="bar bar--{zone.verdict}" d="{path(strip, sheet)}"/>'


def _behind(airframe: Airframe, outline: Outline, sheet: Sheet) -> str:
    """Tanks, lines, cables, bottles and devices behind this side, thin: what a blade would meet."""
    parts = (stroke for thing in things(airframe, outline, "harms") for stroke in strokes(thing, sheet, outline))
    return f'<g class="behind">{"".join(parts)}</g>'


def _window(zone: ZoneShown, sheet: Sheet) -> str:
    """A frame round what is clear, as far as the zone goes."""
    frames = []
    for low, high, floor, top in zone.windows:
        lower, upper = -_FAR if floor is None else floor, _FAR if top is None else top
        area = zone.area.intersection(box(low, lower, high, upper))
        if not area.is_empty:
            frames.append(f'<path class="window" d="{path(area, sheet)}"/>')
    return "".join(frames)


def _label(zone: ZoneShown, text: str, label: Label, to: Flat, href: Href) -> str:
    (x, y), (bend_x, bend_y) = label.at, label.bend
    way_ = f"M{number(bend_x)},{number(y - 7)}V{number(bend_y)}L{number(to[0])},{number(to[1])}"
    words = escape(f"{zone.number} {zone.name}: {say(_VERDICTS[zone.verdict])}")
    return (
        f'<path class="leader" d="{way_}"/><a class="mark mark--zone" href="{escape(href(zone.path))}">'
        f"<title>{words}</title>"
        f'<text x="{number(x)}" y="{number(y + 4)}" text-anchor="middle">{escape(text)}</text></a>'
    )


def patterns() -> Iterator[str]:
    """The hatches, to be defined once on a page: metal, tubes, cloth in resin, wood, fabric; and what is unknown."""
    for name, strokes_ in _PATTERNS.items():
        size, turn, way = strokes_
        yield (
            f'<pattern id="hatch-{name}" width="{size}" height="{size}" patternUnits="userSpaceOnUse" '
            f'patternTransform="rotate({turn})"><path d="{way}"/></pattern>'
        )


_PATTERNS: Mapping[str, tuple[int, int, str]] = {
    "metal": (6, 45, "M0,0V6"),
    "tube": (10, 0, "M0,10L5,0L10,10"),
    "cloth": (6, 45, "M0,0V6M0,0H6"),
    "wood": (6, 0, "M0,3H6"),
    "fabric": (6, 0, "M3,3h0.01"),
    "other": (8, 0, "M0,4H8M4,0V8"),
    "unknown": (5, -45, "M0,0V5"),
}
"""Size of a tile, its turn in degrees, its strokes."""
