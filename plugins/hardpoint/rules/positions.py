"""Rules about positions and masses."""

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
    for path, part in parts_of(record.airframe):
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
    for path, part in parts_of(record.airframe):
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
    for path, part in parts_of(record.airframe):
        fs = said(part.fs) if isinstance(part, Place) else None
        if not isinstance(part, Place) or fs is None or part.near not in landmarks:
            continue
        mark = landmarks[part.near].fs
        if fs.middle is not None and mark.middle is not None and abs(fs.middle - mark.middle) > reach:
            yield Hit((*path, "near"), part.near, f"a landmark near FS {fs.text}; {part.near} is at FS {mark.text}", "")


@AIRFRAME.rule("length-disagrees", "warning", "The stated length and the stations of nose and tail agree within 20 mm.")
def length_disagrees(record: Record) -> Iterator[Hit]:
    """Length against tail minus nose."""
    size = record.airframe.size
    length, nose, tail = said(size.length), said(size.nose), said(size.tail)
    if length is None or nose is None or tail is None:
        return
    unit_m = Decimal("0.001") if record.airframe.datum.unit == "mm" else Decimal("0.0254")
    by_stations = float((tail - nose) * unit_m)
    low, high = length.si
    if by_stations < low - 0.02 or by_stations > high + 0.02:
        yield Hit(
            ("size", "length"),
            length.text,
            f"the length between nose and tail, {by_stations:.2f} m",
            f"{by_stations:.2f} m",
        )


@AIRFRAME.rule("centre-of-gravity-outside", "warning", "The empty centre of gravity lies within the airframe.")
def centre_of_gravity_outside(record: Record) -> Iterator[Hit]:
    """Empty CG against nose and tail: a slip in the arithmetic, not a claim that something is there."""
    cg, nose, tail = (
        said(record.airframe.masses.empty_cg),
        said(record.airframe.size.nose),
        said(record.airframe.size.tail),
    )
    fs = said(cg.fs) if cg else None
    if fs is None or nose is None or tail is None:
        return
    if (fs.low is not None and fs.low < nose) or (fs.high is not None and fs.high > tail):
        yield Hit(("masses", "empty_cg", "fs"), fs.text, f"a station between nose and tail, {nose} to {tail}")


@AIRFRAME.rule(
    "empty-mass-below-items", "warning", "The empty mass is not less than the sum of the heavy items that it contains."
)
def empty_mass_below_items(record: Record) -> Iterator[Hit]:
    """Sum of the stated items, the lighter reading of each, against the heavier reading of the empty mass."""
    empty = said(record.airframe.masses.empty)
    items = entries(record.airframe.masses.items)
    known = [(item.count, said(item.mass)) for item in items.values()]
    total = sum(count * mass.si[0] for count, mass in known if mass is not None)
    if empty is not None and total > empty.si[1]:
        yield Hit(("masses", "empty"), empty.text, f"at least the sum of its items, {total:.0f} kg", f"{total:.0f} kg")


@AIRFRAME.rule(
    "pair-without-buttock-line", "warning", "A pair (`side: both`) says how far from the centre line each one is."
)
def pair_without_buttock_line(record: Record) -> Iterator[Hit]:
    """Load points given as a pair without bl."""
    for name, point in entries(record.airframe.load_points).items():
        place = said(point.place)
        if place and place.side == "both" and said(place.bl) is None:
            yield Hit(("load_points", name, "place"), "side: both", "the buttock line of each of the pair", "bl: 310")
