"""The station's tools against what they have to go through: skins of zones, canopies and panes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.windows import thickness_to_spare
from hardpoint.figures.worked import Case, Figure, Input, MissingError, Topic, Unsaid, Worked, quantity, spoken
from hardpoint.findings import Path
from hardpoint.records.known import NonValue, entries, said
from hardpoint.records.materials import Material
from hardpoint.records.quantities import Length
from hardpoint.records.station import Station, Tool
from hardpoint.records.structure import Skin, Zone
from hardpoint.words import Later, later, mark

_METHOD = "windows"
_TUBES: tuple[Material, ...] = ("steel tube", "titanium")
"""What tubes under a skin are made of at the hardest: the record has their size, not their material."""
_EDGES = later("splinters and sharp edges; away from heads, cover the edge")


@dataclass(frozen=True)
class Through:
    """A tool that goes through a skin: the width it needs (None: no jaw), sparks, what to say of tubes under the skin.

    ``inputs`` are all that was read for this, the width included.
    """

    tool: str
    jaw: Input | None
    sparks: Literal["sparks", "no sparks"] | NonValue
    tubes: Later | None
    inputs: tuple[Input, ...]


def skin_cutters(station: Station | None, zone: Zone, path: Path) -> tuple[list[Through], dict[str, MissingError]]:
    """The tools that go through the skin of a zone, and those of which nobody knows whether or where they do.

    MissingError: something about the skin is unknown, the station has not said which tools it has, or none does.
    """
    skin = said(zone.skin)
    if skin is None:
        raise MissingError(later("its skin is unknown"), path)
    if isinstance(skin.material, NonValue):
        raise MissingError(later("the material of its skin is unknown"), (*path, "material"))
    thick = quantity(skin.thickness, (*path, "thickness"), later("the thickness of its skin is unknown"))
    found: list[Through] = []
    unknown: dict[str, MissingError] = {}
    for name, tool in cutting(station, skin.material).items():
        try:
            reach = _reach_of(name, tool)
            if _goes_through(reach, thick):
                found.append(_through(name, tool, reach, thick, skin, path))
        except MissingError as missing:
            unknown[name] = missing
    if not found and not unknown:
        none = later(
            "no tool of the station goes through {material} of {thickness}",
            material=later(str(skin.material)),
            thickness=thick.said,
        )
        raise MissingError(none, ("station", "tools"))
    return found, unknown


def cutting(station: Station | None, material: str) -> dict[str, Tool]:
    """The station's tools that are made for a material. MissingError where it has not said which tools it has."""
    if station is None or isinstance(station.tools, NonValue):
        raise MissingError(later("the station has not said which tools it has"), ("station", "tools"))
    return {name: tool for name, tool in entries(station.tools).items() if material in (said(tool.cuts) or ())}


def _reach_of(name: str, tool: Tool) -> Input:
    """The thickest that a tool goes through."""
    missing = later("how thick this tool cuts is unknown")
    return quantity(tool.thickest, ("station", "tools", name, "thickest"), missing)


def _width_of(name: str, tool: Tool) -> Input | None:
    """The width that a tool needs; None where it has no jaw. MissingError where nobody knows: it then fits nowhere."""
    if tool.jaw in (NonValue.NOT_APPLICABLE, NonValue.NOT_FITTED):
        return None
    return quantity(tool.jaw, ("station", "tools", name, "jaw"), later("how wide this tool is is unknown"))


def _goes_through(reach: Input, thick: Input) -> bool:
    try:
        thickness_to_spare(1000 * reach.value[0], 1000 * thick.value[1])
    except ValueError:
        return False
    return True


def _through(name: str, tool: Tool, reach: Input, thick: Input, skin: Skin, path: Path) -> Through:
    jaw = _width_of(name, tool)
    tube = said(skin.tube)
    given = [thick, reach, *([jaw] if jaw else [])]
    if tube:
        given.append(Input((*path, "tube"), tube.text, tube.si, "m"))
    return Through(name, jaw, tool.sparks, _tubes(tool, reach, skin), tuple(given))


def _tubes(tool: Tool, reach: Input, skin: Skin) -> Later | None:
    """What to say of tubes under the skin: a window lies between those that are listed, a blade can still meet one."""
    tube = said(skin.tube)
    if skin.tube is NonValue.UNKNOWN:
        return later("whether tubes lie under the skin, and how thick, is unknown")
    if tube is None:
        return None
    if set(_TUBES) & {*(said(tool.cuts) or ())} and _goes_through(reach, Input((), tube.text, tube.si, "m")):
        return None
    return later("tubes of {tube} lie under the skin, and this tool is not made for them", tube=tube.text)


def _work(case: Case) -> Iterator[Worked]:
    """Every canopy, door and hatch, and every pane that is broken to get in where it is of another thickness."""
    canopies = entries(case.airframe.canopies)
    for name, canopy in canopies.items():
        what = later("Pane or panel of: {name}", name=spoken(name))
        yield from _pane(case, f"tools.{name}", what, canopy.material, canopy.thickness, ("canopies", name))
    for name, exit_ in entries(case.airframe.exits).items():
        opened, pane = canopies.get(exit_.opens), exit_.pane_thickness
        asked = exit_.way_in == "break in" and opened is not None and pane not in _DOES_NOT_ARISE
        if asked and opened is not None and pane is not None and not _as_thick(pane, opened.thickness):
            what = later("Pane that is broken: {name}", name=spoken(name))
            path: Path = ("exits", name)
            yield from _pane(case, f"tools.{name}.pane", what, opened.material, pane, path, "pane_thickness")


def _as_thick(pane: Length | NonValue, canopy: Length | NonValue) -> bool:
    if isinstance(pane, NonValue) or isinstance(canopy, NonValue):
        return pane is canopy
    return pane.si == canopy.si


_DOES_NOT_ARISE = (NonValue.NOT_APPLICABLE, NonValue.NOT_FITTED)


def _pane(
    case: Case,
    id_: str,
    what: Later,
    material: Material | NonValue,
    thickness: Length | NonValue,
    path: Path,
    key: str = "thickness",
) -> Iterator[Worked]:
    """What each tool that is made for the material has left of its thickest."""
    try:
        if isinstance(material, NonValue):
            raise MissingError(later("what it is made of is unknown"), (*path, "material"))
        thick = quantity(thickness, (*path, key), later("how thick it is is unknown"))
        tools = cutting(case.station, material)
    except MissingError as missing:
        yield missing.of(id_, what, _METHOD)
        return
    if not tools:
        reason = later("no tool of the station is made for {material}", material=later(str(material)))
        yield Unsaid(id_, what, reason, ("station", "tools"), _METHOD, refused=True)
    for name, tool in tools.items():
        yield _spare(
            f"{id_}.{name}", later("{what}, {tool}: to spare", what=what, tool=spoken(name)), name, tool, thick
        )


def _spare(id_: str, what: Later, name: str, tool: Tool, thick: Input) -> Worked:
    try:
        reach = _reach_of(name, tool)
    except MissingError as missing:
        return missing.of(id_, what, _METHOD)
    try:
        left = [thickness_to_spare(1000 * far, 1000 * deep) / 1000 for far in reach.value for deep in thick.value]
    except ValueError:
        reason = later("it is {thick} thick, and this tool goes through {reach}", thick=thick.said, reach=reach.said)
        return Unsaid(id_, what, reason, reach.path, _METHOD, refused=True)
    ends = (min(left), max(left))
    formula = "s = T − d"
    return Figure(id_, what, ends, "m", "mm", "down", (thick, reach), formula, _METHOD, (COMMON_PRACTICE,), _EDGES)


TOPIC = Topic("tools", mark("Tools against canopies and panes"), _METHOD, _work)
