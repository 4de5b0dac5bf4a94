"""A small silhouette of an airframe from its left side: filled, without words, for telling types apart at a glance."""

from __future__ import annotations

from functools import lru_cache

from hardpoint.drawings.geometry import outline_of
from hardpoint.drawings.sheet import MARGIN, WIDTH, path, sheet_of
from hardpoint.records.airframe import Airframe

_SHOWN = 112.0
"""Width in pixels; drawn in the units of a sheet, so that the scale is that of the whole length."""
_FINE_MM = 8.0
"""What a pixel at that width does not show is left out of the way: half of one on the smallest airframe."""


def silhouette(airframe: Airframe) -> str:
    """SVG text that says nothing to a screen reader: the name stands beside it. "" where the record has no outline."""
    return _of(_Held(airframe))


class _Held:
    """The airframe beside the key that it is remembered by: records are large, and their identity does for a build."""

    def __init__(self, airframe: Airframe) -> None:
        self.airframe = airframe

    def __hash__(self) -> int:
        return id(self.airframe)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Held) and other.airframe is self.airframe


@lru_cache(maxsize=4096)
def _of(held: _Held) -> str:
    outline = outline_of(held.airframe)
    if outline is None:
        return ""
    sheet = sheet_of(outline, "left", 0, 0)
    way = path(outline.side_area.simplify(_FINE_MM), sheet)
    high = sheet.height
    shown = _SHOWN * high / (WIDTH - 2 * MARGIN)
    size = f'viewBox="{MARGIN:g} 0 {WIDTH - 2 * MARGIN:g} {high:.1f}" width="{_SHOWN:g}" height="{shown:.0f}"'
    return f'<svg class="silhouette" aria-hidden="true" focusable="false" {size}><path d="{way}"/></svg>'
