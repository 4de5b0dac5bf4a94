"""Every place of a record that has a station, by its distance from the two landmarks that are nearest to it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal

from hardpoint.figures.citations import COMMON_PRACTICE
from hardpoint.figures.landmarks import Apart, nearest_two
from hardpoint.figures.worked import (
    Case,
    Figure,
    Input,
    MissingError,
    Topic,
    Unsaid,
    Worked,
    convert_to_m,
    position,
    spoken,
    stretch_said,
)
from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.known import NonValue, entries
from hardpoint.records.locate import kinds_of
from hardpoint.records.places import Landmark, Place
from hardpoint.records.walk import parts_of
from hardpoint.words import Later, later, later_in, mark

_METHOD = "landmarks"
_LONGEST_M = 0.6
"""A landmark that is longer is everywhere near: it tells no place. Two forearms, a choice of this book."""
_OPPOSITE = {"left": "right", "right": "left"}
_ORDER = ("nearest", "next")


def telling(airframe: Airframe, side: str | NonValue | None) -> dict[str, tuple[float, float]]:
    """The landmarks that tell a place on a side: short ones, none that is on the other side; stations in m."""
    unit = airframe.datum.unit
    return {
        name: (convert_to_m(low, unit), convert_to_m(high, unit))
        for name, landmark in entries(airframe.landmarks).items()
        if (ends := _ends(landmark, unit)) and not (landmark.side and landmark.side == _OPPOSITE.get(str(side)))
        for low, high in [ends]
    }


def _ends(landmark: Landmark, unit: str) -> tuple[Decimal, Decimal] | None:
    low, high = landmark.fs.low, landmark.fs.high
    if low is None or high is None:
        return None
    return (low, high) if float(high - low) * {"mm": 0.001, "in": 0.0254}[unit] <= _LONGEST_M else None


def _work(case: Case) -> Iterator[Worked]:
    airframe = case.airframe
    if airframe.landmarks is NonValue.UNKNOWN:
        reason = later("which landmarks it has is unknown")
        yield Unsaid("landmarks", later("Places told from landmarks"), reason, ("landmarks",), _METHOD)
        return
    by_side = {side: telling(airframe, side) for side in ("left", "right", "")}
    for path, place in parts_of(airframe):
        if isinstance(place, Place) and place.fs is not None and place.on != "occupant":
            yield from _place(case, path, place, by_side.get(str(place.side), by_side[""]))


def _place(case: Case, path: Path, place: Place, landmarks: Mapping[str, tuple[float, float]]) -> Iterator[Worked]:
    id_, words = ".".join(["landmarks", *map(str, path)]), _place_words(path)
    try:
        here = position(place.fs, (*path, "fs"), case.airframe.datum.unit, later("its station is unknown"))
        if not landmarks:
            raise MissingError(later("no landmark is recorded that tells it"), ("landmarks",))
    except MissingError as missing:
        yield missing.of(id_, words, _METHOD)
        return
    for order, found in zip(_ORDER, nearest_two(here.value, landmarks), strict=False):
        yield _figure(case, f"{id_}.{order}", words, here, found, landmarks[found.landmark])


def _figure(case: Case, id_: str, words: Later, here: Input, found: Apart, landmark: tuple[float, float]) -> Figure:
    if found.near > 0:
        what = later("{place}: aft of the {landmark}", place=words, landmark=found.landmark)
    elif found.near < 0:
        what = later("{place}: forward of the {landmark}", place=words, landmark=found.landmark)
    else:
        what = later("{place}: beside the {landmark}", place=words, landmark=found.landmark)
    unit = case.airframe.datum.unit
    value = (abs(found.near), abs(found.far))
    stated = stretch_said(entries(case.airframe.landmarks)[found.landmark].fs)
    given = (here, Input(("landmarks", found.landmark, "fs"), stated, landmark, "m"))
    source, formula = (COMMON_PRACTICE,), "d = |p − l|"
    return Figure(id_, what, value, "m", unit, "nearest", given, formula, _METHOD, source, digits=4)


def _place_words(path: Path) -> Later:
    """``exits, sill handle``: the record's own ids, its keys in the reader's language; that it is a place is clear."""
    kinds = kinds_of(Airframe, path)
    parts = [_part(part, kind) for part, kind in zip(path, kinds, strict=True) if part != "place"]
    told = parts[0] if isinstance(parts[0], Later) else later("{part}", part=parts[0])
    for part in parts[1:]:
        told = later("{first}, {then}", first=told, then=part)
    return told


def _part(part: str | int, kind: str) -> str:
    if isinstance(part, int):
        return str(part + 1)
    return later_in("key", part.replace("_", " ")) if kind == "key" else spoken(part)


TOPIC = Topic("landmarks", mark("Places told from landmarks"), _METHOD, _work, folded=True)
