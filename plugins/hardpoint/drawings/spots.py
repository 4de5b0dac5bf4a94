"""Where a recorded place is on the airframe: points and boxes in mm, and what of it the record leaves open.

Nothing is guessed in silence. A place without a station cannot be drawn. Where only its height or its buttock line is
missing, the drawing needs some, so it takes the skin of the stated side and the middle of the part that carries the
thing, and says by ``open`` that this was not recorded; open things are drawn broken.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from hardpoint.drawings.geometry import Outline, ends
from hardpoint.records.known import NonValue, said
from hardpoint.records.places import Place, Side, Spot
from hardpoint.records.texts import Span


@dataclass(frozen=True)
class At:
    """A point of the airframe in mm; ``bl`` towards pilot's right. ``open``: height or buttock line not recorded."""

    fs: float
    bl: float
    wl: float
    open: bool = False


@dataclass(frozen=True)
class Stretch:
    """A box of the airframe in mm, least and greatest of each; ``bl`` towards pilot's right."""

    fs: tuple[float, float]
    bl: tuple[float, float]
    wl: tuple[float, float]
    open: bool = False


def points(place: Place | NonValue | None, outline: Outline) -> tuple[At, ...]:
    """Where it is: one point, two for a pair, none where no station is recorded. A stretch counts by its middle."""
    fs = _span(place, "fs")
    if not isinstance(place, Place) or fs is None:
        return ()
    along = sum(ends(fs, outline.mm)) / 2
    wl, high = _height(place, along, outline)
    across, wide = _across(place, along, outline)
    return tuple(At(along, bl, wl, high or wide) for bl in across)


def stretches(place: Place | NonValue | None, outline: Outline, count: int = 1) -> tuple[Stretch, ...]:
    """The boxes that a thing fills; ``both`` is one box across, or one on each side where there are two of them."""
    fs = _span(place, "fs")
    if not isinstance(place, Place) or fs is None:
        return ()
    low, high = ends(fs, outline.mm)
    wl = _span(place, "wl")
    levels = ends(wl, outline.mm) if wl else (outline.edge((low + high) / 2, "floor"), outline.edge(low, "top"))
    if wl is None and place.on != "fuselage":
        level = _level_of(place.on, outline)
        levels = (level - 60, level + 60)
    return tuple(
        Stretch((low, high), across, levels, wl is None) for across in _widths(place, (low + high) / 2, outline, count)
    )


def spot(place: Spot, outline: Outline) -> At | None:
    """A point on the way of a line or cable; None where no station is recorded."""
    fs = said(place.fs)
    if fs is None:
        return None
    along = sum(ends(fs, outline.mm)) / 2
    wl, bl = said(place.wl) if place.wl else None, said(place.bl) if place.bl else None
    level = sum(ends(wl, outline.mm)) / 2 if wl else outline.middle(along)
    hand = {"left": -1.0, "right": 1.0}.get(str(place.side), 0.0)
    across = sum(ends(bl, outline.mm)) / 2 if bl else outline.half_width(along) * 0.9
    return At(along, hand * across, level, wl is None or (bl is None and hand != 0))


def _span(place: Place | NonValue | None, key: str) -> Span | None:
    return said(getattr(place, key)) if isinstance(place, Place) else None


def _height(place: Place, along: float, outline: Outline) -> tuple[float, bool]:
    wl = said(place.wl)
    if wl is not None:
        return sum(ends(wl, outline.mm)) / 2, False
    return _level(place, along, outline), True


def _level(place: Place, along: float, outline: Outline) -> float:
    if place.on == "canopy" and outline.profile.canopy_top is not None:
        return (outline.edge(along, "top") + float(outline.profile.canopy_top) * outline.mm) / 2
    return outline.middle(along) if place.on in ("fuselage", "occupant", "canopy") else _level_of(place.on, outline)


def _level_of(part: str, outline: Outline) -> float:
    """The middle height of a part of the airframe; the fuselage's where the outline does not have it."""
    levels = list(_levels(part, outline))
    middle = (outline.profile.sections[0].floor + outline.profile.sections[0].top) / 2
    return sum(levels) / len(levels) if levels else float(middle) * outline.mm


def _levels(part: str, outline: Outline) -> Iterator[float]:
    profile, mm = outline.profile, outline.mm
    for name, surface in profile.surfaces.items():
        low, high = ends(surface.wl, mm)
        wing = surface.kind == "wing" and part.endswith("wing") and (part == "wing" or part.split()[0] in name)
        if wing or surface.kind == part:
            yield (low + high) / 2 if surface.kind in ("fin", "winglet") else low
    if part == "gear":
        yield from (float(wheel.wl) * mm for wheel in profile.gear.values())
    for body in profile.bodies.values():
        if body.kind == part:
            yield sum(ends(body.wl, mm)) / 2


def _across(place: Place, along: float, outline: Outline) -> tuple[tuple[float, ...], bool]:
    """Buttock lines of a place, and whether they are not recorded."""
    bl = said(place.bl)
    side: Side | None = said(place.side)
    far = sum(ends(bl, outline.mm)) / 2 if bl else outline.half_width(along) * 0.9
    if side == "both":
        return (-far, far), bl is None
    if side in ("left", "right"):
        return ((-far if side == "left" else far),), bl is None
    return (0.0,), side is None


def _widths(place: Place, along: float, outline: Outline, count: int) -> Iterator[tuple[float, float]]:
    bl = said(place.bl)
    side: Side | None = said(place.side)
    half = outline.half_width(along) * 0.9
    inner, outer = ends(bl, outline.mm) if bl else (0.0, half)
    if side == "both" and (count > 1 or bl is not None):
        yield from ((-outer, -inner), (inner, outer))
    elif side == "left":
        yield (-outer, -inner)
    elif side == "right":
        yield (inner, outer)
    elif side == "both":
        yield (-half, half)
    else:
        narrow = min(half, 120.0)
        yield (-narrow, narrow)
