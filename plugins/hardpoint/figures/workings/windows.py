"""Cutting windows by zone and side, for each tool of the station that goes through the skin; or why there is none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from hardpoint.figures.behind import behind_skin
from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.construction import above
from hardpoint.figures.hazards import CutHazard
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Topic, Unsaid, Worked, spoken
from hardpoint.figures.workings.reaching import (
    Clear,
    Reach,
    Skin,
    clear_of,
    height_of,
    may_be_cut,
    met_in,
    reaches,
    shown,
    skin_of,
)
from hardpoint.figures.workings.tools import Through, skin_cutters
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries
from hardpoint.records.structure import Zone, ZoneSide
from hardpoint.units import Rounding
from hardpoint.words import Later, later, mark

_METHOD = "windows"
_FORMULA = later("[S1, S2] without every [fᵢ − mᵢ, tᵢ + mᵢ], kept where t − f ≥ j")
SIDES = ("left", "right", "top", "floor")
_WORDS = {
    "left": mark("left side"),
    "right": mark("right side"),
    "floor": mark("floor side"),
    "canopy": mark("canopy side"),
    "roof": mark("roof side"),
    "open": mark("side away from the floor"),
}
_LOOK = later("nothing recorded lies there; damage moves things and people: look before the blade")
_SPARKS = later("{caution}; this tool throws sparks", caution=_LOOK)
_SPARKS_UNKNOWN = later("{caution}; whether this tool throws sparks is unknown", caution=_LOOK)


@dataclass(frozen=True)
class Window:
    """A stretch of skin that a tool can cut in; what its stations, and what its heights, were worked out from."""

    tool: str
    clear: Clear
    along: tuple[Input, ...]
    upright: tuple[Input, ...]
    caution: Later


@dataclass(frozen=True)
class SideWindows:
    """What comes out for one side of a zone: windows by tool, and the reasons where there is none."""

    zone: str
    side: str
    windows: tuple[Window, ...] = ()
    reasons: tuple[Unsaid, ...] = ()


class _NoWindowError(Exception):
    """Why a side has no window. ``refused``: it is known well enough to say no."""

    def __init__(self, reason: str, path: Path, *, refused: bool = False) -> None:
        super().__init__(reason)
        self.reason, self.path, self.refused = reason, path, refused


def side_words(airframe: Airframe, side: str) -> Later:
    """A side of a zone in words; the one towards the canopy by what is there."""
    return later(_WORDS[above(airframe) if side == "top" else side])


def side_windows(case: Case) -> Iterator[SideWindows]:
    """Every side of every zone that the record speaks of, in its order; a side that does not arise is left out."""
    zones = case.airframe.zones
    if isinstance(zones, NonValue):
        return
    behind = _behind_of(case.airframe)
    for name, zone in zones.items():
        for side in SIDES:
            listed: ZoneSide | NonValue | None = getattr(zone, side)
            if listed is not None and listed is not NonValue.NOT_APPLICABLE:
                yield _side(case, behind, name, zone, side, listed)


def _behind_of(airframe: Airframe) -> tuple[CutHazard, ...]:
    """Worked out only where some side can have a window at all."""
    open_ = any(may_be_cut(getattr(zone, side)) for zone in entries(airframe.zones).values() for side in SIDES)
    return behind_skin(airframe) if open_ else ()


def _side(
    case: Case, behind: Sequence[CutHazard], name: str, zone: Zone, side: str, listed: ZoneSide | NonValue
) -> SideWindows:
    path: Path = ("zones", name, side)
    what = later("{zone}, {side}", zone=spoken(name), side=side_words(case.airframe, side))
    try:
        _verdict(path, listed)
        skin = skin_of(case.airframe, name, zone, side)
        reached = reaches(case, behind, name, side, skin)
        _something_left(skin, reached, path)
        cutters, unknown = skin_cutters(case.station, zone, ("zones", name, "skin"))
    except MissingError as missing:
        return SideWindows(name, side, (), (missing.of(f"windows.{name}.{side}", what, _METHOD),))
    except _NoWindowError as none:
        reason = Unsaid(f"windows.{name}.{side}", what, none.reason, none.path, _METHOD, none.refused)
        return SideWindows(name, side, (), (reason,))
    windows: list[Window] = []
    reasons = [
        missing.of(f"windows.{name}.{side}.{tool}", _with_tool(what, tool), _METHOD)
        for tool, missing in unknown.items()
    ]
    for cutter in cutters:
        found = _cutter(case, name, cutter, skin, reached)
        windows += found
        if not found:
            reasons.append(_too_narrow(name, side, what, cutter))
    return SideWindows(name, side, tuple(windows), tuple(reasons))


def _verdict(path: Path, listed: ZoneSide | NonValue) -> None:
    """Only a side that may be cut, and behind which somebody has walked and listed everything, has windows."""
    if isinstance(listed, NonValue) or isinstance(listed.cut, NonValue):
        at = path if isinstance(listed, NonValue) else (*path, "cut")
        raise _NoWindowError(later("whether it may be cut is unknown"), at)
    if listed.cut not in ("preferred", "possible"):
        raise _NoWindowError(_says(listed), (*path, "cut"), refused=True)
    if not may_be_cut(listed):
        how = later(str(listed.listing))
        reason = later("what lies behind is known in part only (listing: {how})", how=how)
        raise _NoWindowError(reason, (*path, "listing"))
    if listed.behind is None or isinstance(listed.behind, NonValue):
        raise _NoWindowError(later("what lies behind is unknown"), (*path, "behind"))


def _says(listed: ZoneSide) -> Later:
    verdict = later(str(listed.cut))
    if listed.why:
        return later("the record says {verdict}: {why}", verdict=verdict, why=listed.why)
    return later("the record says {verdict}", verdict=verdict)


def _something_left(skin: Skin, reached: Sequence[Reach], path: Path) -> None:
    """Raises _NoWindowError where not even a tool without width fits: for what is there, or for what can be there."""
    if clear_of(skin, reached, 0.0):
        return
    certain = [reach for reach in reached if reach.item.certain]
    if clear_of(skin, certain, 0.0):
        first = next(reach.item for reach in reached if not reach.item.certain)
        raise _NoWindowError(later("it can lie anywhere behind it: {what}", what=first.what), first.path)
    things = _all_of([reach.item.what for reach in certain])
    told = later("with the station's margins nothing is left beside: {things}", things=things)
    raise _NoWindowError(told, path, refused=True)


_MOST = 4
"""Things named in a reason; the cutting hazards of the type list them all."""


def _all_of(names: Sequence[str]) -> str:
    different = list(dict.fromkeys(names))
    told = different[0]
    for name in different[1:_MOST]:
        told = later("{first}; {then}", first=told, then=name)
    return later("{things} and {count} more", things=told, count=len(different) - _MOST) if different[_MOST:] else told


def _cutter(case: Case, zone: str, cutter: Through, skin: Skin, reached: Sequence[Reach]) -> list[Window]:
    """The windows of one tool."""
    jaw, unit = cutter.jaw.value[1] if cutter.jaw else 0.0, case.airframe.datum.unit
    parting = [reach for reach in reached if reach.is_lengthwise(skin)]
    upright = (*height_of(case.airframe, zone, skin), *cutter.inputs, *shown(parting, skin, unit))
    found = []
    for clear in clear_of(skin, reached, jaw):
        along = (skin.span, *cutter.inputs, *shown([*met_in(clear.heights, reached)], skin, unit))
        found.append(Window(cutter.tool, clear, along, upright, _caution(cutter)))
    return found


def _caution(cutter: Through) -> Later:
    told = {"sparks": _SPARKS, "no sparks": _LOOK}.get(str(cutter.sparks), _SPARKS_UNKNOWN)
    return later("{first}; {then}", first=told, then=cutter.tubes) if cutter.tubes else told


def _too_narrow(name: str, side: str, what: str, cutter: Through) -> Unsaid:
    reason = later("nothing that is left is as wide as the tool: {jaw}", jaw=cutter.jaw.said if cutter.jaw else "")
    path: Path = ("station", "tools", cutter.tool, "jaw")
    id_ = f"windows.{name}.{side}.{cutter.tool}"
    return Unsaid(id_, _with_tool(what, cutter.tool), reason, path, _METHOD, refused=True)


def _with_tool(what: str, tool: str) -> Later:
    return later("{where}, {tool}", where=what, tool=spoken(tool))


def _work(case: Case) -> Iterator[Worked]:
    if isinstance(case.airframe.zones, NonValue):
        yield Unsaid("windows", later("Cutting windows"), later("its zones are unknown"), ("zones",), _METHOD)
    for side in side_windows(case):
        numbers: dict[str, int] = {}
        for window in side.windows:
            number = numbers[window.tool] = numbers.get(window.tool, 0) + 1
            yield from _ends(case, side, window, number)
        yield from side.reasons


def _ends(case: Case, side: SideWindows, window: Window, number: int) -> Iterator[Figure]:
    """The ends of a window, each rounded into it: stations, then waterlines where the skin has heights."""
    names = {
        "zone": spoken(side.zone),
        "side": side_words(case.airframe, side.side),
        "tool": spoken(window.tool),
        "number": number,
    }
    clear = window.clear
    along, upright = window.along, window.upright
    ends: list[tuple[str, Later, float, Rounding, tuple[Input, ...]]] = [
        ("from", later("{zone}, {side}, {tool}: window {number} begins at FS", **names), clear.start, "up", along),
        ("to", later("{zone}, {side}, {tool}: window {number} ends at FS", **names), clear.end, "down", along),
    ]
    if clear.heights:
        low, high = clear.heights
        ends += [
            ("above", later("{zone}, {side}, {tool}: window {number} lies above WL", **names), low, "up", upright),
            ("below", later("{zone}, {side}, {tool}: window {number} lies below WL", **names), high, "down", upright),
        ]
    id_, unit = f"windows.{side.zone}.{side.side}.{window.tool}.{number}", case.airframe.datum.unit
    for end, what, at, rounded, given in ends:
        yield Figure(
            f"{id_}.{end}",
            what,
            (at, at),
            "m",
            unit,
            rounded,
            given,
            _FORMULA,
            _METHOD,
            (COMMON_PRACTICE,),
            window.caution,
            digits=5,
        )


TOPIC = Topic("windows", mark("Cutting windows"), _METHOD, _work)
