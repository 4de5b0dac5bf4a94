"""Rules about where things are."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal

from hardpoint.findings import Path
from hardpoint.records.base import Part
from hardpoint.records.known import entries, said
from hardpoint.records.places import Place, Spot
from hardpoint.records.texts import Span
from hardpoint.records.walk import parts_of
from hardpoint.rules.rule import AIRFRAME, Hit, Record

_REACH_OUT = {"propeller", "rotor"}


@AIRFRAME.rule(
    "position-outside",
    "error",
    "A position lies between the nose and the tail of the airframe that it claims to be in.",
)
def position_outside(record: Record) -> Iterator[Hit]:
    """Every place, spot, zone and landmark against nose and tail."""
    nose, tail = said(record.airframe.size.nose), said(record.airframe.size.tail)
    if nose is None or tail is None:
        return
    for path, fs in _stations(record.airframe):
        if (fs.low is not None and fs.low < nose) or (fs.high is not None and fs.high > tail):
            yield Hit(path, fs.text, f"a station of this airframe, {nose} to {tail}", str(int((nose + tail) / 2)))


def _stations(airframe: Part) -> Iterator[tuple[Path, Span]]:
    for path, part in parts_of(airframe):
        if isinstance(part, Place) and part.on in _REACH_OUT:
            continue
        if path[:1] == ("profile",):
            continue
        fs = getattr(part, "fs", None)
        if isinstance(fs, Span) and (isinstance(part, Place | Spot) or path[:1] in (("zones",), ("landmarks",))):
            yield (*path, "fs"), fs


@AIRFRAME.rule(
    "station-for-a-hand",
    "warning",
    "What a hand goes by (`feel`, `panel`) is told by landmark and touch, not by stations or millimetres.",
)
def station_for_a_hand(record: Record) -> Iterator[Hit]:
    """FS, BL, WL or a length with its unit in the words of a place."""
    for path, part in record.parts:
        for key in ("feel", "panel") if isinstance(part, Place) else ():
            words = getattr(part, key) or ""
            if re.search(r"\b(?:FS|BL|WL) ?-?\d|\b\d+ ?(?:mm|cm)\b", words):
                yield Hit(
                    (*path, key), words, "a landmark and what a hand feels", "a hand's width behind the canopy bow"
                )


@AIRFRAME.rule(
    "other-side-in-words",
    "warning",
    "The words of a place (`feel`, `panel`) name the side that `side` names: the airframe's own left and right.",
)
def other_side_in_words(record: Record) -> Iterator[Hit]:
    """Places whose words name only the opposite side."""
    for path, part in record.parts:
        if not isinstance(part, Place) or part.side not in ("left", "right"):
            continue
        other = "right" if part.side == "left" else "left"
        for key in ("feel", "panel"):
            words = str(getattr(part, key) or "")
            sides = set(re.findall(r"\b(?:left|right)\b", words))
            if sides == {other}:
                yield Hit((*path, key), words, f"words that fit side: {part.side}, or the other side", "")


@AIRFRAME.rule(
    "landmark-far-off", "warning", "The landmark that a place is told from (`near`) lies within two metres of it."
)
def landmark_far_off(record: Record) -> Iterator[Hit]:
    """Places whose landmark lies too far off to find them by."""
    landmarks = entries(record.airframe.landmarks)
    reach = Decimal(2000) if record.airframe.datum.unit == "mm" else Decimal(79)
    for path, part in record.parts:
        fs = said(part.fs) if isinstance(part, Place) else None
        if not isinstance(part, Place) or fs is None or part.near not in landmarks:
            continue
        mark = landmarks[part.near].fs
        if fs.middle is not None and mark.middle is not None and abs(fs.middle - mark.middle) > reach:
            yield Hit((*path, "near"), part.near, f"a landmark near FS {fs.text}; {part.near} is at FS {mark.text}", "")
