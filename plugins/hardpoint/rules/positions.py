"""Rules about where things are."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from decimal import Decimal

from hardpoint.findings import Path
from hardpoint.records.airframe import Airframe
from hardpoint.records.base import Part
from hardpoint.records.known import entries, said
from hardpoint.records.places import Landmark, Place, Spot
from hardpoint.records.texts import Span
from hardpoint.records.walk import parts_of
from hardpoint.rules.measure import in_units
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


@AIRFRAME.rule(
    "other-side-in-id",
    "warning",
    "What is called left or right is on that side: a name copied from its twin sends crews to the other one.",
)
def other_side_in_id(record: Record) -> Iterator[Hit]:
    """Ids and landmark names with left or right in them whose side is the other one.

    Not of controls: the switch of the right magneto may well be on the left.
    """
    for path, part in record.parts:
        if isinstance(part, Landmark) or (isinstance(part, Place) and path[-1] == "place" and path[0] != "controls"):
            name = str(path[-1] if isinstance(part, Landmark) else path[-2])
            sides = set(re.split(r"[ -]", name)) & {"left", "right"}
            if part.side in ("left", "right") and len(sides) == 1 and part.side not in sides:
                wanted = f"{sides.pop()}, as its name {name} says, or another name"
                yield Hit((*path, "side"), str(part.side), wanted)


_REACH = {"finger": 150, "thumb": 150, "palm": 450, "hand": 450, "forearm": 1200, "arm": 1800}
"""Millimetres; about three times as long as each is, so that only what is plainly another place is found."""
_TIMES = {"two": 2, "three": 3, "four": 4}
_BEHIND, _AHEAD = ("aft of", "behind"), ("forward of", "ahead of", "in front of")
_TOLD = re.compile(
    rf"(?:\b(?P<times>{'|'.join(_TIMES)}) )?(?:\b(?P<measure>{'|'.join(_REACH)})s?(?:'s)?(?: widths?| lengths?)? )?"
    rf"(?P<way>{'|'.join((*_BEHIND, *_AHEAD))}) (?:the )?(?P<rest>.+)"
)


@AIRFRAME.rule(
    "feel-contradicts-station",
    "warning",
    "Where words lead from a landmark (`a palm behind the canopy bow`), the stations say that way and about as far.",
)
def feel_contradicts_station(record: Record) -> Iterator[Hit]:
    """Words of a place against the stations of the place and of the landmark that they start from."""
    landmarks = {name: mark.fs for name, mark in entries(record.airframe.landmarks).items()}
    for path, part in record.parts:
        fs = said(part.fs) if isinstance(part, Place) else None
        for key in ("feel", "panel") if isinstance(part, Place) and fs else ():
            words = str(getattr(part, key) or "")
            told = _TOLD.search(words)
            name = _first_named(told["rest"], landmarks) if told else ""
            if told and fs and name and _contradicts(told, fs, landmarks[name], record.airframe):
                related = ((("landmarks", name, "fs"), landmarks[name].text),)
                wanted = f"words that fit FS {fs.text}; {name} is at FS {landmarks[name].text}"
                yield Hit((*path, key), words, wanted, related=related)


def _first_named(words: str, names: Iterable[str]) -> str:
    """The longest of the names that the words begin with."""
    return next((name for name in sorted(names, key=len, reverse=True) if words.startswith(name)), "")


def _contradicts(told: re.Match[str], fs: Span, mark: Span, airframe: Airframe) -> bool:
    """True where the place lies clearly to the other side of the landmark, or much too far from it."""
    if fs.low is None or fs.high is None or mark.low is None or mark.high is None:
        return False
    along = fs.high - mark.low if told["way"] in _BEHIND else mark.high - fs.low
    gap = max(fs.low - mark.high, mark.low - fs.high, Decimal(0))
    reach = _REACH.get(told["measure"] or "", 10**6) * _TIMES.get(told["times"] or "", 1)
    return along < -in_units(airframe, 50) or gap > in_units(airframe, reach)
