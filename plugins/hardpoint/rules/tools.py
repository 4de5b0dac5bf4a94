"""Rules about what the station works with: its tools, and how far it keeps from what lies behind a skin."""

from __future__ import annotations

import re
from collections.abc import Iterator

from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.station import Tool
from hardpoint.records.texts import Span
from hardpoint.rules.measure import unit_m
from hardpoint.rules.rule import AIRFRAME, Hit, Record
from hardpoint.units import Quantity

_SIDES = ("left", "right", "top", "floor")


def _tools(record: Record) -> dict[str, Tool]:
    """The cutting tools of the station; none where it does not say."""
    return entries(record.fleet.house.station.tools) if record.fleet.house else {}


@AIRFRAME.rule(
    "no-tool-for-this-cut",
    "warning",
    "Where cutting is `preferred`, some tool of the station cuts that skin, thick as it is, and fits into the stretch.",
)
def no_tool_for_this_cut(record: Record) -> Iterator[Hit]:
    """Zones with a preferred side whose skin no tool of the station gets through."""
    tools = _tools(record)
    for name, zone in entries(record.airframe.zones).items():
        sides = [side for side in _SIDES if (listed := said(getattr(zone, side))) and listed.cut == "preferred"]
        skin = said(zone.skin)
        material, thickness = (said(skin.material), said(skin.thickness)) if skin else (None, None)
        if not tools or not sides or material is None or any(tool.cuts is NonValue.UNKNOWN for tool in tools.values()):
            continue
        cutting = [tool for tool in tools.values() if material in (said(tool.cuts) or ())]
        strong = [tool for tool in cutting if _goes_through(tool, thickness)]
        room = _length_m(record.airframe, zone.fs)
        if not cutting or not strong:
            what = f"of {thickness.text}" if cutting and thickness else ""
            wanted = f"a skin that a tool of the station cuts; none cuts {material} {what}".rstrip()
            yield Hit(("zones", name, "skin"), material, wanted)
        elif room is not None and not any(_fits(tool, room) for tool in strong):
            wanted = "a stretch as long as a tool is wide; no tool of the station fits"
            yield Hit(("zones", name, "fs"), zone.fs.text, wanted)


def _goes_through(tool: Tool, thickness: Quantity | None) -> bool:
    thickest = said(tool.thickest)
    return thickest is None or thickness is None or thickest.si[1] >= thickness.si[0]


def _fits(tool: Tool, room_m: float) -> bool:
    jaw = said(tool.jaw)
    return jaw is None or jaw.si[0] <= room_m


def _length_m(airframe: Airframe, fs: Span) -> float | None:
    return None if fs.low is None or fs.high is None else float(fs.high - fs.low) * unit_m(airframe)


@AIRFRAME.rule(
    "margin-not-stated",
    "warning",
    "For whatever lies behind a `preferred` side the station says how far a blade stays away (margins).",
)
def margin_not_stated(record: Record) -> Iterator[Hit]:
    """Things behind a preferred side of a kind for which the station keeps no distance."""
    margins = said(record.fleet.house.station.margins) if record.fleet.house else None
    for name, zone in entries(record.airframe.zones).items():
        for side in _SIDES:
            listed = said(getattr(zone, side))
            behind = entries(listed.behind or {}) if listed and listed.cut == "preferred" else {}
            for id_, thing in behind.items():
                if margins is not None and thing.kind not in margins:
                    wanted = "a kind for which station.yaml has a margin; add it there"
                    yield Hit(("zones", name, side, "behind", id_, "kind"), thing.kind, wanted, f"{thing.kind}: 50 mm")


_TOOLS = (
    "shears", "side cutters", "bolt cutters", "saw", "knife", "spanner", "screwdriver", "pliers", "crowbar", "axe",
    "blunt tool", "spring punch",
)  # fmt: skip
_NAMED = re.compile(rf"\b(?:{'|'.join(_TOOLS)})\b")


@AIRFRAME.rule(
    "tool-not-at-the-station",
    "warning",
    "A tool that an exit, a tie or a strap needs (shears, side cutters, a screwdriver) is among the station's tools.",
)
def tool_not_at_the_station(record: Record) -> Iterator[Hit]:
    """Tools named under `using`, `needs` and `freed_by`, none of which the station lists."""
    tools = _tools(record)
    had = " ".join(f"{id_.replace('-', ' ')} {tool.what}" for id_, tool in tools.items()).lower()
    for path, words in record.words if tools else ():
        named = _NAMED.findall(words.lower()) if path[-1] in ("using", "needs", "freed_by") else []
        if named and not any(tool in had for tool in named):
            yield Hit(path, words, f"a tool of the station; it lists no {named[0]}")
