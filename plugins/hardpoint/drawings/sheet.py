"""A view of an airframe on a sheet: where a station, a buttock line and a waterline come to lie, and SVG text for it.

The sheet is as wide as a phone: one unit is about one pixel at 360 px, so that a text of 12 units is legible there.
LEFT shows the left side, nose to the left; RIGHT the right side, nose to the right; PLAN is seen from the canopy side,
nose to the left, so that pilot's right is its upper half.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from shapely import LineString, MultiLineString, MultiPolygon, Polygon, box
from shapely.geometry.base import BaseGeometry

from hardpoint.drawings.geometry import Flat, Outline, Shape

View = Literal["left", "right", "plan"]
VIEWS: tuple[View, ...] = ("left", "right", "plan")
WIDTH = 340.0
MARGIN = 12.0
TEXT = 12.0
"""Height of the drawings' text in units; not to be made smaller."""
_TALLEST = 390.0
"""Units that a plan may be high: wings that go on beyond are broken off, and the drawing says how far they go."""


@dataclass(frozen=True)
class Sheet:
    """A view with its scale and its place: everything of it lies in a box of ``WIDTH`` by ``height`` units."""

    view: View
    units_per_mm: float
    first: float
    """Station at the edge where the nose is, mm."""
    last: float
    upper: float
    """Waterline (or, in plan, buttock line to the right) at the upper edge of the airframe, mm."""
    lower: float
    head: float
    """Units above the airframe, for labels."""
    foot: float

    @property
    def height(self) -> float:
        """Units from the upper to the lower edge of the sheet."""
        return self.head + (self.upper - self.lower) * self.units_per_mm + self.foot

    def at(self, fs: float, across: float) -> Flat:
        """Place on the sheet of a station and a waterline (in plan: a buttock line to the right), in mm."""
        along = (self.last - fs) if self.view == "right" else (fs - self.first)
        return MARGIN + along * self.units_per_mm, self.head + (self.upper - across) * self.units_per_mm

    def back(self, x: float, y: float) -> Flat:
        """What lies at a place of the sheet: the inverse of ``at``."""
        along = (x - MARGIN) / self.units_per_mm
        fs = self.last - along if self.view == "right" else self.first + along
        return fs, self.upper - (y - self.head) / self.units_per_mm

    @property
    def window(self) -> Polygon:
        """What of the airframe is on the sheet, in mm."""
        return box(self.first, self.lower, self.last, self.upper)


def sheet_of(outline: Outline, view: View, head: float, foot: float, reach: float = 0.0) -> Sheet:
    """The view at the scale at which the whole length fits; ``reach``: the furthest buttock line that must show, mm."""
    area = outline.plan_area if view == "plan" else outline.side_area
    side, plan = outline.side_area.bounds, outline.plan_area.bounds
    first, last = min(side[0], plan[0]), max(side[2], plan[2])
    scale = (WIDTH - 2 * MARGIN) / (last - first)
    lower, upper = area.bounds[1], area.bounds[3]
    if view == "plan":
        half = min(upper, max(_TALLEST / 2 / scale, reach + 20 / scale))
        lower, upper = -half, half
    return Sheet(view, scale, first, last, upper, lower, head, foot)


def drawn(shapes: Iterable[Shape], sheet: Sheet) -> Iterator[str]:
    """The outline as SVG paths, each with its kind as class; what lies beyond the sheet is cut off."""
    for shape in shapes:
        seen = shape.area.intersection(sheet.window) if sheet.view == "plan" else shape.area
        if way := path(seen, sheet):
            yield f'<path class="{shape.kind}" d="{way}"/>'


def path(area: BaseGeometry, sheet: Sheet) -> str:
    """Path data of a geometry in mm."""
    return "".join(_pieces(area, sheet))


def _pieces(area: BaseGeometry, sheet: Sheet) -> Iterator[str]:
    if isinstance(area, Polygon) and not area.is_empty:
        for ring in (area.exterior, *area.interiors):
            yield way(sheet.at(*point) for point in ring.coords[:-1]) + "Z"
    elif isinstance(area, LineString) and not area.is_empty:
        yield way(sheet.at(*point) for point in area.coords)
    elif isinstance(area, MultiPolygon | MultiLineString) or hasattr(area, "geoms"):
        for piece in area.geoms:
            yield from _pieces(piece, sheet)


def way(points: Iterable[Flat]) -> str:
    """Straight strokes through points of the sheet."""
    return "M" + "L".join(f"{number(x)},{number(y)}" for x, y in points)


def number(value: float) -> str:
    """A coordinate to a hundredth of a unit: a fifth of a millimetre of the smallest airframe."""
    return f"{value:.2f}".rstrip("0").rstrip(".")
