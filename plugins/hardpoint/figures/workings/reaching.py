"""What reaches into the skin of one side of a zone with its margin, and what is left of that skin."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from hardpoint.figures.hazards import ANYWHERE, CutHazard
from hardpoint.figures.windows import cutting_windows
from hardpoint.figures.worked import Case, Input, MissingError, convert_to_m, position, spoken
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.structure import Behind, Zone, ZoneSide
from hardpoint.records.texts import Span
from hardpoint.units import Quantity
from hardpoint.words import later

_COMPLETE = "walked and complete"
Ends = tuple[float, float]


@dataclass(frozen=True)
class Skin:
    """One side of a zone: its stretch, and its height where that is known; in m. ``height`` is None for the sides
    towards canopy and floor, and where nobody has drawn the outline: nothing then lies beside anything else."""

    span: Input
    height: Ends | None


@dataclass(frozen=True)
class Reach:
    """Something behind the skin with the margin that the station keeps from it; in m, without end where it is open."""

    item: CutHazard
    stretch: Ends
    heights: Ends
    margin: Input

    @property
    def kept(self) -> float:
        """The margin on its safe side."""
        return self.margin.value[1]

    def is_lengthwise(self, skin: Skin) -> bool:
        """True of what runs behind the whole length of the skin at a height that is known: it parts the height."""
        over = self.stretch[0] - self.kept <= skin.span.value[0] and self.stretch[1] + self.kept >= skin.span.value[1]
        return skin.height is not None and over and all(map(math.isfinite, self.heights))


@dataclass(frozen=True)
class Clear:
    """A stretch of skin with nothing recorded behind it: stations in m, and heights where the skin has some."""

    start: float
    end: float
    heights: Ends | None


def may_be_cut(listed: ZoneSide | NonValue | None) -> bool:
    """Whether a side can have windows at all: it may be cut, and somebody walked it and listed everything."""
    return isinstance(listed, ZoneSide) and listed.cut in ("preferred", "possible") and listed.listing == _COMPLETE


def skin_of(airframe: Airframe, name: str, zone: Zone, side: str) -> Skin:
    """The skin of a side; a zone that is open at an end ends where the airframe does."""
    low = said(airframe.size.nose) if zone.fs.low is None else zone.fs.low
    high = said(airframe.size.tail) if zone.fs.high is None else zone.fs.high
    missing = later("where it ends is unknown")
    span = position(Span(zone.fs.text, low, high), ("zones", name, "fs"), airframe.datum.unit, missing)
    return Skin(span, _height(airframe, zone, span.value) if side in ("left", "right") else None)


def _height(airframe: Airframe, zone: Zone, span: Ends) -> Ends | None:
    """The zone's own band of heights; where it is open, as far as the outline goes along its stretch."""
    bottom, top = _in_m(zone.wl or ANYWHERE, airframe)
    profile, unit = said(airframe.profile), airframe.datum.unit
    if profile and not (math.isfinite(bottom) and math.isfinite(top)):
        stations = [convert_to_m(section.fs, unit) for section in profile.sections]
        here = [at for at, fs in enumerate(stations) if span[0] <= fs <= span[1]]
        first = max((at for at, fs in enumerate(stations) if fs <= span[0]), default=0)
        last = min((at for at, fs in enumerate(stations) if fs >= span[1]), default=len(stations) - 1)
        met = [profile.sections[at] for at in {first, last, *here}]
        bottom = max(bottom, convert_to_m(min(section.floor for section in met), unit))
        top = min(top, convert_to_m(max(section.top for section in met), unit))
    return (bottom, top) if math.isfinite(bottom) and math.isfinite(top) and bottom <= top else None


def reaches(case: Case, behind: Sequence[CutHazard], name: str, side: str, skin: Skin) -> list[Reach]:
    """Everything that can lie behind a side and that reaches into its skin with its margin, and other zones over it.

    MissingError: the station keeps no margin from something that lies on this side.
    """
    zone = entries(case.airframe.zones)[name]
    found = [
        reach
        for reach in _margined(case, behind, side)
        if _into(reach, skin, _in_m(zone.wl or ANYWHERE, case.airframe))
    ]
    return [*found, *_other_zones(case, name, zone, side)]


def _margined(case: Case, behind: Sequence[CutHazard], side: str) -> Iterator[Reach]:
    margins = _margins(case)
    for item in behind:
        if not _near(item, side):
            continue
        margin = margins.get(item.kind)
        path: Path = ("station", "margins", item.kind)
        if margin is None:
            raise MissingError(later("the station keeps no margin from: {kind}", kind=later(str(item.kind))), path)
        stretch, heights = _in_m(item.fs, case.airframe), _in_m(item.wl, case.airframe)
        yield Reach(item, stretch, heights, Input(path, margin.text, margin.si, "m"))


def _margins(case: Case) -> Mapping[Behind, Quantity]:
    if case.station is None or isinstance(case.station.margins, NonValue):
        raise MissingError(later("the station has stated no margins"), ("station", "margins"))
    return case.station.margins


def _near(item: CutHazard, side: str) -> bool:
    """What runs along the centre counts for every side, and everything for the canopy and the floor side."""
    return side in ("top", "floor") or side in item.sides or "centre" in item.sides


def _into(reach: Reach, skin: Skin, band: Ends) -> bool:
    """Whether it reaches into the stretch and, with its margin, into the band of heights of the zone."""
    low, high = skin.span.value
    along = reach.stretch[0] - reach.kept < high and reach.stretch[1] + reach.kept > low
    return along and reach.heights[0] - reach.kept <= band[1] and reach.heights[1] + reach.kept >= band[0]


def _in_m(span: Span, airframe: Airframe) -> Ends:
    low = -math.inf if span.low is None else convert_to_m(span.low, airframe.datum.unit)
    high = math.inf if span.high is None else convert_to_m(span.high, airframe.datum.unit)
    return low, high


def _other_zones(case: Case, name: str, zone: Zone, side: str) -> Iterator[Reach]:
    """The stretches of other zones over the same skin that are not to be cut, or behind which nobody has walked."""
    for other, overlapping in entries(case.airframe.zones).items():
        same = overlapping.fs.overlaps(zone.fs) and (overlapping.wl or ANYWHERE).overlaps(zone.wl or ANYWHERE)
        listed = getattr(overlapping, side)
        if other == name or not same or listed is NonValue.NOT_APPLICABLE or may_be_cut(listed):
            continue
        path: Path = ("zones", other, side)
        words = later("zone {zone}", zone=spoken(other))
        item = CutHazard(path, "equipment", words, overlapping.fs, ANYWHERE, frozenset({side}), certain=True)
        none = Input((*path, "cut"), words, (0.0, 0.0), "m")
        yield Reach(item, _in_m(overlapping.fs, case.airframe), (-math.inf, math.inf), none)


def clear_of(skin: Skin, reached: Sequence[Reach], jaw_m: float) -> list[Clear]:
    """What is left of a skin for a tool: between what parts its height, then along it, foremost first.

    In a height that is left, everything else that comes near it counts from the lowest to the highest.
    """
    found: list[Clear] = []
    for band in _bands(skin, reached, jaw_m):
        things = [(reach.stretch, reach.kept) for reach in met_in(band, reached)]
        found += [Clear(start, end, band) for start, end in _windows(skin.span.value, things, jaw_m)]
    return sorted(found, key=lambda clear: (clear.start, clear.end, clear.heights or ()))


def _bands(skin: Skin, reached: Sequence[Reach], jaw_m: float) -> list[Ends] | list[None]:
    if skin.height is None:
        return [None]
    lengthwise = [(reach.heights, reach.kept) for reach in reached if reach.is_lengthwise(skin)]
    return _windows(skin.height, lengthwise, jaw_m)


def met_in(band: Ends | None, reached: Sequence[Reach]) -> list[Reach]:
    """What does not lie, with its margin, below or above a band of heights; everything where there is none."""
    return [
        reach
        for reach in reached
        if band is None
        or not (
            reach.heights[1] + reach.kept <= band[0] + _NOISE_M or reach.heights[0] - reach.kept >= band[1] - _NOISE_M
        )
    ]


_NOISE_M = 1e-9
"""The last bits of a float, which are no distance: the edge of a band is the edge of what it was parted by."""


def _windows(span: Ends, things: Sequence[tuple[Ends, float]], jaw_m: float) -> list[Ends]:
    """Windows in m."""
    blocked = [(1000 * low, 1000 * high, 1000 * kept) for (low, high), kept in things]
    windows = cutting_windows((1000 * span[0], 1000 * span[1]), blocked, 1000 * jaw_m)
    return [(start / 1000, end / 1000) for start, end in windows]


def shown(reached: Sequence[Reach], skin: Skin, unit: Literal["mm", "in"]) -> Iterator[Input]:
    """What lies behind a skin, each thing once, and the margin of its kind; without end: as far as the skin goes."""
    ends: dict[Path, Ends] = {}
    for reach in reached:
        low, high = ends.get(reach.item.path, (math.inf, -math.inf))
        ends[reach.item.path] = (min(low, reach.stretch[0]), max(high, reach.stretch[1]))
    for path, (low, high) in ends.items():
        reach = next(reach for reach in reached if reach.item.path == path)
        start = low if math.isfinite(low) else skin.span.value[0]
        end = high if math.isfinite(high) else skin.span.value[1]
        first, last = (_number(at, unit) for at in (start, end))
        words = later("{what}, FS {low} to {high}", what=reach.item.what, low=first, high=last)
        alike = {one.heights for one in reached if one.item.path == path}
        if len(alike) == 1 and all(map(math.isfinite, reach.heights)):
            bottom, top = (_number(at, unit) for at in reach.heights)
            words = later("{what}, WL {low} to {high}", what=words, low=bottom, high=top)
        yield Input(path, words, (start, end), "m")
        yield reach.margin


def _number(at_m: float, unit: Literal["mm", "in"]) -> str:
    """A position in the unit of the datum."""
    return f"{at_m / convert_to_m(1, unit):g}"


def height_of(airframe: Airframe, name: str, skin: Skin) -> Iterator[Input]:
    """The height of a skin as an input: the zone's own band, or as far as the outline goes."""
    if skin.height:
        zone = entries(airframe.zones)[name]
        path: Path = ("zones", name, "wl") if zone.wl else ("profile", "sections")
        low, high = (_number(at, airframe.datum.unit) for at in skin.height)
        yield Input(path, later("WL {low} to {high}", low=low, high=high), skin.height, "m")
