"""How each kind of thing is drawn: plain strokes of an engineer's drawing, told by their words and not by a code.

What the record leaves open (a height, a stretch) is drawn broken; where nobody knows, it is hatched and says UNKNOWN.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from html import escape

from shapely import LineString, box
from shapely.geometry.base import BaseGeometry

from hardpoint.drawings.geometry import Flat, Outline
from hardpoint.drawings.sheet import Sheet, number, path, way
from hardpoint.drawings.spots import At, Stretch
from hardpoint.drawings.things import Thing
from hardpoint.words import say

_CONE = 34.0
"""Units that the edges of a cone or of an exit sector are drawn long: a direction, not a reach."""
_SECTOR = math.radians(25)
"""To each side of the stated direction; only drawn wide so that it reads as a sector, no measure of it."""


def seen(thing: Thing, sheet: Sheet) -> tuple[At, ...]:
    """The points of a thing that this view shows: the near side and what is on the centre line; in plan all."""
    if sheet.view == "plan":
        return thing.points
    hand = -1 if sheet.view == "left" else 1
    return tuple(at for at in thing.points if at.bl * hand >= 0)


def boxes_seen(thing: Thing, sheet: Sheet) -> tuple[Stretch, ...]:
    """The boxes of a thing that this view shows."""
    if sheet.view == "plan":
        return thing.boxes
    hand = -1 if sheet.view == "left" else 1
    return tuple(part for part in thing.boxes if max(part.bl[0] * hand, part.bl[1] * hand) > 0)


def flat(at: At, sheet: Sheet) -> Flat:
    """Where a point lies on the sheet."""
    return sheet.at(at.fs, at.bl if sheet.view == "plan" else at.wl)


def anchor_of(thing: Thing, sheet: Sheet) -> Flat | None:
    """Where the leader of a thing's number ends in this view; None where the view shows nothing of it."""
    points = seen(thing, sheet)
    if points:
        return flat(points[0], sheet)
    if areas := boxes_seen(thing, sheet):
        return _middle(areas[0], sheet)
    for line in thing.ways:
        near = [at for at in line if sheet.view == "plan" or at.bl * (-1 if sheet.view == "left" else 1) >= 0]
        if near:
            return flat(near[len(near) // 2], sheet)
    if thing.lost:
        low, high = thing.lost[0]
        return sheet.at((low + high) / 2, (sheet.upper + sheet.lower) / 2 if sheet.view == "plan" else 0.0)
    return None


def _middle(part: Stretch, sheet: Sheet) -> Flat:
    across = part.bl if sheet.view == "plan" else part.wl
    return sheet.at(sum(part.fs) / 2, sum(across) / 2)


def strokes(thing: Thing, sheet: Sheet, outline: Outline) -> Iterator[str]:
    """A thing without its number: areas first, then lines, then points."""
    yield from (_lost(stretch, sheet, outline) for stretch in thing.lost)
    yield from (_box(part, sheet, thing) for part in boxes_seen(thing, sheet))
    yield from (_line(line, sheet, thing) for line in thing.ways if _near(line, sheet))
    for at in seen(thing, sheet):
        yield _POINTS[thing.layer](flat(at, sheet), at, thing)
    yield from (_lost_word(stretch, sheet, outline) for stretch in thing.lost)


def _near(line: tuple[At, ...], sheet: Sheet) -> bool:
    hand = -1 if sheet.view == "left" else 1
    return sheet.view == "plan" or any(at.bl * hand >= 0 for at in line)


def _lost(stretch: tuple[float, float], sheet: Sheet, outline: Outline) -> str:
    """A stretch in which something runs, nobody knows where: over the whole fuselage, hatched."""
    return f'<path class="lost" d="{path(_stretch(stretch, sheet, outline), sheet)}"/>'


def _lost_word(stretch: tuple[float, float], sheet: Sheet, outline: Outline) -> str:
    """The word for it, over everything else and beside what is drawn in its middle."""
    area = _stretch(stretch, sheet, outline)
    low, high = (area.bounds[1], area.bounds[3]) if not area.is_empty else (0.0, 0.0)
    x, y = sheet.at(sum(stretch) / 2, low + (high - low) * 0.22)
    word = escape(say("UNKNOWN"))
    return f'<text class="word" x="{number(x)}" y="{number(y + 4)}" text-anchor="middle">{word}</text>'


def _stretch(stretch: tuple[float, float], sheet: Sheet, outline: Outline) -> BaseGeometry:
    body = outline.width if sheet.view == "plan" else outline.fuselage
    return body.intersection(box(stretch[0], -1e5, stretch[1], 1e5))


def _box(part: Stretch, sheet: Sheet, thing: Thing) -> str:
    across = part.bl if sheet.view == "plan" else part.wl
    area = box(part.fs[0], across[0], part.fs[1], across[1])
    kind = "tank" if thing.layer == "tanks" else "pack"
    return f'<path class="{kind}{_broken(part.open)}" d="{path(area, sheet)}"/>'


def _line(line: tuple[At, ...], sheet: Sheet, thing: Thing) -> str:
    kind = {"tanks": "pipe", "bottles": "pipe", "electrics": "cable", "devices": "linkage"}[thing.layer]
    course = LineString([(at.fs, at.bl if sheet.view == "plan" else at.wl) for at in line])
    return f'<path class="{kind}{_broken(any(at.open for at in line))}" d="{path(course, sheet)}"/>'


def _broken(open_: bool) -> str:
    return " broken" if open_ else ""


# --- Points -----------------------------------------------------------------------------------------------------------


def _eye(at: Flat, where: At, thing: Thing) -> str:
    """A point for load: a full dot where it lifts, a broken ring where it does not."""
    x, y = map(number, at)
    if thing.other:
        return f'<circle class="ring broken" cx="{x}" cy="{y}" r="4"/>'
    return f'<circle class="dot{_broken(where.open)}" cx="{x}" cy="{y}" r="4"/>'


def _centre(at: Flat, where: At, thing: Thing) -> str:
    """A circle of four quarters, two of them full: the usual sign for a centre of gravity on a drawing."""
    x, y = at
    radius = 7.0
    quarters = (
        f"M{number(x)},{number(y)}V{number(y - radius)}A{radius:g},{radius:g} 0 0 1 {number(x + radius)},{number(y)}Z"
        f"M{number(x)},{number(y)}V{number(y + radius)}A{radius:g},{radius:g} 0 0 1 {number(x - radius)},{number(y)}Z"
    )
    ring = f'<circle class="ring{_broken(where.open)}" cx="{number(x)}" cy="{number(y)}" r="{radius:g}"/>'
    return f'{ring}<path class="full" d="{quarters}"/>'


def _square(at: Flat, where: At, thing: Thing) -> str:
    return _polygon(at, where, "full", ((-4, -4), (4, -4), (4, 4), (-4, 4)))


def _battery(at: Flat, where: At, thing: Thing) -> str:
    """A box with its two poles."""
    x, y = at
    body = _polygon(at, where, "pack", ((-7, -4), (7, -4), (7, 5), (-7, 5)))
    poles = f"M{number(x - 4)},{number(y - 4)}v-3M{number(x + 4)},{number(y - 4)}v-3"
    return f'{body}<path class="stroke" d="{poles}"/>'


def _bottle(at: Flat, where: At, thing: Thing) -> str:
    """A cylinder with a neck."""
    x, y = at
    body = f"M{number(x - 7)},{number(y - 4)}h11a4,4 0 0 1 0,8h-11a4,4 0 0 1 0,-8Z"
    return (
        f'<path class="pack{_broken(where.open)}" d="{body}"/><path class="stroke" d="M{number(x + 8)},{number(y)}h4"/>'
    )


def _device(at: Flat, where: At, thing: Thing) -> str:
    """A full triangle."""
    return _polygon(at, where, "full", ((0, -7), (6, 5), (-6, 5)))


def _handle(at: Flat, where: At, thing: Thing) -> str:
    """A bow on two feet, as a handle stands out of a skin."""
    x, y = at
    bow = f"M{number(x - 6)},{number(y + 4)}v-5a6,5 0 0 1 12,0v5"
    return f'<path class="bow{_broken(where.open)}" d="{bow}"/>'


def _control(at: Flat, where: At, thing: Thing) -> str:
    """A lever on its pivot."""
    x, y = at
    ring = f'<circle class="ring{_broken(where.open)}" cx="{number(x)}" cy="{number(y)}" r="4"/>'
    return f'{ring}<path class="stroke" d="M{number(x)},{number(y)}l5,-8"/>'


def _polygon(at: Flat, where: At, kind: str, corners: tuple[Flat, ...]) -> str:
    way_ = way((at[0] + dx, at[1] + dy) for dx, dy in corners)
    return f'<path class="{kind}{_broken(where.open)}" d="{way_}Z"/>'


_POINTS = {
    "load points": _eye,
    "centre of gravity": _centre,
    "heavy items": _square,
    "tanks": _square,
    "electrics": _battery,
    "bottles": _bottle,
    "devices": _device,
    "ways in": _handle,
    "controls": _control,
}


# --- Directions -------------------------------------------------------------------------------------------------------


def wedge(at: Flat, direction: Flat, half: float) -> str:
    """Two strokes from a point, ``half`` (rad) to each side of a direction of the sheet: a cone, or a sector."""
    x, y = at
    course = math.atan2(direction[1], direction[0])
    edges = ((math.cos(course + turn) * _CONE, math.sin(course + turn) * _CONE) for turn in (-half, half))
    return "".join(f"M{number(x)},{number(y)}l{number(dx)},{number(dy)}" for dx, dy in edges)


def sector(at: Flat, direction: Flat) -> str:
    """The sector in which a device fires; its width is no measure."""
    return f'<path class="sector" d="{wedge(at, direction, _SECTOR)}"/>'
