"""A map of an airframe: one view in true scale with its things, their numbers, the ruler of stations, a scale bar.

Pure and deterministic: the same record gives the same SVG text. NOSE, TAIL, LEFT and RIGHT are written out; what kind a
thing is, is told by the table beside the map under the same number. Each layer is a group of its own, so that a page
can hide it; each number is a link to its row.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape
from typing import cast

from hardpoint.drawings.geometry import Flat, Outline, outline_of
from hardpoint.drawings.glyphs import anchor_of, flat, sector, seen, strokes, wedge
from hardpoint.drawings.labels import RADIUS, Label, lane_height, place
from hardpoint.drawings.sheet import MARGIN, WIDTH, Sheet, View, drawn, number, sheet_of
from hardpoint.drawings.things import Map, Thing, things
from hardpoint.figures.rigging import AXES
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import entries, said
from hardpoint.records.load_points import Axis, LoadPoint
from hardpoint.records.pyrotechnics import Pyrotechnic
from hardpoint.words import mark, say

Href = Callable[[Path], str]
RULER = 44.0
"""Units below the airframe for the ruler, the written ends and the scale bar."""
_SIDES = {"left": mark("LEFT SIDE"), "right": mark("RIGHT SIDE"), "plan": mark("FROM THE CANOPY SIDE")}


@dataclass(frozen=True)
class Drawn:
    """One view as SVG text, with the sheet it was drawn on and where each number stands."""

    view: View
    svg: str
    sheet: Sheet
    numbers: tuple[tuple[Thing, Flat, Flat], ...]
    """Thing, centre of its number, the point that its leader leads to."""


def map_views(airframe: Airframe, map_: Map, href: Href, views: Sequence[View]) -> tuple[Drawn, ...]:
    """The views of one map; () where the record has no outline."""
    outline = outline_of(airframe)
    if outline is None:
        return ()
    shown = things(airframe, outline, map_)
    return tuple(_view(airframe, outline, shown, view, href) for view in views)


def _view(airframe: Airframe, outline: Outline, shown: Sequence[Thing], view: View, href: Href) -> Drawn:
    rough = sheet_of(outline, view, 0, 0, _reach(shown))
    upper, lower = _lanes(shown, rough)
    head = lane_height(len(upper), WIDTH - 2 * MARGIN) + 6
    foot = lane_height(len(lower), WIDTH - 2 * MARGIN) + RULER
    sheet = sheet_of(outline, view, head, foot, _reach(shown))
    numbers = [*_numbered(upper, sheet, -1), *_numbered(lower, sheet, 1)]
    parts = [
        f'<g class="outline">{"".join(drawn(outline.plan if view == "plan" else outline.side, sheet))}</g>',
        *_beyond(outline, sheet),
        *_layers(airframe, outline, shown, sheet, numbers, href),
        *ruler(sheet, airframe.datum.unit),
        *written_ends(sheet),
    ]
    return Drawn(view, svg_of(sheet, parts), sheet, tuple((thing, label.at, to) for thing, label, to in numbers))


def svg_of(sheet: Sheet, parts: Iterable[str]) -> str:
    name = escape(say(_SIDES[sheet.view]).capitalize())
    size = f'viewBox="0 0 {WIDTH:g} {number(sheet.height)}" width="{WIDTH:g}" height="{number(sheet.height)}"'
    head = f'<svg class="map" role="group" aria-label="{name}" {size} xmlns="http://www.w3.org/2000/svg">'
    return "\n".join([head, *parts, "</svg>"])


def _reach(shown: Sequence[Thing]) -> float:
    """The furthest buttock line of any thing: a plan that breaks its wings off still shows every mark."""
    points = [abs(at.bl) for thing in shown for at in thing.points]
    return max([*points, *(abs(end) for thing in shown for part in thing.boxes for end in part.bl)], default=0.0)


def _lanes(shown: Sequence[Thing], sheet: Sheet) -> tuple[list[Thing], list[Thing]]:
    """Numbers above for what lies in the upper half, below for the rest; evened out where a lane is full."""
    found = [(thing, to) for thing in shown if (to := anchor_of(thing, sheet)) is not None]
    middle = sheet.height / 2
    upper = [thing for thing, to in found if to[1] <= middle]
    lower = [thing for thing, to in found if to[1] > middle]
    most = int((WIDTH - 2 * MARGIN) // (2 * RADIUS + 2))
    by_height = {thing.number: to[1] for thing, to in found}
    while len(upper) > most and len(lower) < len(upper) - 1:
        lower.append(upper.pop(upper.index(max(upper, key=lambda thing: by_height[thing.number]))))
    while len(lower) > most and len(upper) < len(lower) - 1:
        upper.append(lower.pop(lower.index(min(lower, key=lambda thing: by_height[thing.number]))))
    return upper, lower


def _numbered(lane: Sequence[Thing], sheet: Sheet, outward: int) -> list[tuple[Thing, Label, Flat]]:
    marks = [to for thing in lane if (to := anchor_of(thing, sheet)) is not None]
    edge = sheet.head - 4 if outward < 0 else sheet.height - sheet.foot + 4
    labels = place(marks, edge, outward, MARGIN, WIDTH - MARGIN)
    return list(zip(lane, labels, marks, strict=True))


def _layers(
    airframe: Airframe,
    outline: Outline,
    shown: Sequence[Thing],
    sheet: Sheet,
    numbers: Sequence[tuple[Thing, Label, Flat]],
    href: Href,
) -> Iterator[str]:
    placed = {thing.number: (label, to) for thing, label, to in numbers}
    for layer in dict.fromkeys(thing.layer for thing in shown):
        inside = [thing for thing in shown if thing.layer == layer and thing.number in placed]
        if inside:
            yield f'<g class="layer" data-layer="{layer.replace(" ", "-")}">'
            for thing in inside:
                yield "".join(strokes(thing, sheet, outline)) + _directions(airframe, thing, sheet)
            yield from (_number(thing, *placed[thing.number], href) for thing in inside)
            yield "</g>"


def _number(thing: Thing, label: Label, to: Flat, href: Href) -> str:
    """The number with its leader: straight out of the lane, then to the mark."""
    (x, y), (bend_x, bend_y) = label.at, label.bend
    leader = f"M{number(x)},{number(y)}L{number(bend_x)},{number(bend_y)}L{number(to[0])},{number(to[1])}"
    words = escape(f"{thing.number}: {thing.words}")
    kind = "mark mark--unknown" if thing.unknown else "mark mark--other" if thing.other else "mark"
    return (
        f'<path class="leader" d="{leader}"/><a class="{kind}" href="{escape(href(thing.path))}"><title>{words}</title>'
        f'<circle cx="{number(x)}" cy="{number(y)}" r="{RADIUS:g}"/>'
        f'<text x="{number(x)}" y="{number(y + 4.3)}" text-anchor="middle">{thing.number}</text></a>'
    )


def _directions(airframe: Airframe, thing: Thing, sheet: Sheet) -> str:
    """The cone of a load point, the sector of a device."""
    if thing.layer == "load points":
        point = entries(airframe.load_points).get(str(thing.path[1]))
        return _cone(point, thing, sheet) if point else ""
    if thing.layer == "devices":
        device = entries(airframe.pyrotechnics).get(str(thing.path[1]))
        return _sector(device, thing, sheet) if device else ""
    return ""


def _cone(point: LoadPoint, thing: Thing, sheet: Sheet) -> str:
    axis, cone = said(point.axis), said(point.cone)
    if axis is None or cone is None or axis not in AXES:
        return ""
    direction = _on_sheet(AXES[cast(Axis, axis)], sheet)
    if direction is None:
        return ""
    edges = "".join(wedge(flat(at, sheet), direction, cone.si[0]) for at in seen(thing, sheet))
    return f'<path class="cone" d="{edges}"/>'


def _sector(device: Pyrotechnic, thing: Thing, sheet: Sheet) -> str:
    exit_ = said(device.exit_direction)
    raised = said(exit_.raised) if exit_ else None
    if exit_ is None or raised is None:
        return ""
    along = AXES[exit_.towards]
    level, rise = math.cos(raised.si[0]), math.sin(raised.si[0])
    direction = _on_sheet((along[0] * level, along[1] * level, rise), sheet)
    return "".join(sector(flat(at, sheet), direction) for at in seen(thing, sheet)) if direction else ""


def _on_sheet(direction: tuple[float, float, float], sheet: Sheet) -> Flat | None:
    """A direction (aft, pilot's right, towards canopy) as it lies on the sheet; None where it points at the reader."""
    aft, right, canopy = direction
    x = -aft if sheet.view == "right" else aft
    y = -right if sheet.view == "plan" else -canopy
    return (x, y) if math.hypot(x, y) > 0.05 else None


# --- What is written around it ----------------------------------------------------------------------------------------


def _beyond(outline: Outline, sheet: Sheet) -> Iterator[str]:
    """Where a plan breaks the wings off, how far they go on: in metres and feet from the plane of symmetry."""
    tip = outline.plan_area.bounds[3]
    if sheet.view != "plan" or tip <= sheet.upper + 1:
        return
    words = escape(say("wing goes on to {metres} m ({feet} ft)", metres=f"{tip / 1000:.1f}", feet=f"{tip / 304.8:.0f}"))
    x = WIDTH - MARGIN
    for y in (sheet.at(0, sheet.upper)[1] + 12, sheet.at(0, sheet.lower)[1] - 4):
        yield f'<text class="end" x="{x:g}" y="{number(y)}" text-anchor="end">{words}</text>'


def ruler(sheet: Sheet, unit: str) -> Iterator[str]:
    """Stations as ticks, each whole metre or forty inches written in the unit of the record."""
    step = 1000.0 if unit == "mm" else 1016.0
    step *= max(1, math.ceil(38 / (step * sheet.units_per_mm)))
    base = sheet.height - RULER + 10
    first = math.ceil(sheet.first / step)
    stations = [step * count for count in range(first, math.floor(sheet.last / step) + 1)]
    ticks = "".join(f"M{number(sheet.at(fs, 0)[0])},{number(base - 5)}v5" for fs in stations)
    start, end = sorted((sheet.at(sheet.first, 0)[0], sheet.at(sheet.last, 0)[0]))
    yield f'<path class="ruler" d="M{number(start)},{number(base)}H{number(end)}{ticks}"/>'
    for fs in stations:
        text = f"{fs / (1.0 if unit == 'mm' else 25.4):.0f}"
        x = number(sheet.at(fs, 0)[0])
        yield f'<text class="tick" x="{x}" y="{number(base + 12)}" text-anchor="middle">{text}</text>'


def written_ends(sheet: Sheet) -> Iterator[str]:
    """NOSE and TAIL at their ends, which side it is, one metre and one foot."""
    base = sheet.height - 4
    words = [say("NOSE"), say("TAIL")]
    left, right = words if sheet.view != "right" else reversed(words)
    yield f'<text class="end" x="{MARGIN:g}" y="{number(base)}">{escape(left)}</text>'
    yield f'<text class="end" x="{WIDTH - MARGIN:g}" y="{number(base)}" text-anchor="end">{escape(right)}</text>'
    if sheet.view == "plan":
        for word, y in ((say("RIGHT"), sheet.head + 10), (say("LEFT"), sheet.height - sheet.foot - 2)):
            yield f'<text class="end" x="{MARGIN:g}" y="{number(y)}">{escape(word)}</text>'
    yield from _scale_bar(sheet, base)


def _scale_bar(sheet: Sheet, base: float) -> Iterator[str]:
    metre, foot = 1000 * sheet.units_per_mm, 304.8 * sheet.units_per_mm
    x = 74.0
    yield f'<path class="measure" d="M{x:g},{number(base - 8)}v5h{number(metre)}v-5"/>'
    yield f'<text class="end" x="{number(x + metre + 4)}" y="{number(base)}">1 m</text>'
    x += metre + 34
    yield f'<path class="measure" d="M{number(x)},{number(base - 8)}v5h{number(foot)}v-5"/>'
    yield f'<text class="end" x="{number(x + foot + 4)}" y="{number(base)}">1 ft</text>'
